//! A station's typical year, day by day.

use super::{Day, Station, published_base};
use crate::numeric::{cos, erfc, exp, root};
use crate::quantity::{Temperature, TemperatureDifference};
use std::f64::consts::PI;

/// The mean temperature of any day of a typical year: a cosine through the year, and about it a
/// normal spread, the same all year.
///
/// The day's mean, not the hour's: a house carries the warmth of noon into the night, and published
/// degree-days are of days too.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Season {
    pub mean: Temperature,
    /// From the mean to the coldest day's expected temperature.
    pub amplitude: TemperatureDifference,
    /// Standard deviation of a day's temperature about that expected.
    pub spread: TemperatureDifference,
}

/// Days in the mean year of the Gregorian calendar; exact.
const YEAR: f64 = 365.2425;

/// The coldest time, in days after the start of 1 January: noon of the 20th. The ground goes on
/// cooling for some weeks after the solstice of 21 December, until the sun's gain overtakes the loss.
/// By the monthly normals (from memory), December against February, the plains are coldest near
/// 15 January, the Northeast near the 23rd, the Pacific coast before the 10th; one date for all is
/// judgement.
const COLDEST: f64 = 19.5;

/// The mean of a cosine over the 31 days about its peak: `sin(x)/x` for `x = 31 pi/365.2425`.
const MONTH_OF_PEAK: f64 = 0.9882;

/// Of the distance from the annual mean to the coldest month, this much is the season's; the rest is
/// that the coldest of twelve uneven months is picked. Judgement: the stations' hours below 55 °F
/// come out best with 0.8 to 1, and hardly tell these apart.
const SEASONAL: f64 = 0.9;

/// The spread is at least this, and at least so much of the distance from the coldest month's mean to
/// the 99 % temperature: judgement. Winter's days have half of that distance, summer's less.
const LEAST_SPREAD_K: f64 = 1.5;
const LEAST_SHARE: f64 = 1.0 / 3.0;

/// The mean is not raised by more than this: judgement.
const MOST_RAISED_K: f64 = 1.5;

/// Beyond what any station of the table has.
const MOST_SPREAD_K: f64 = 15.0;

impl Season {
    /// The season that has the station's annual mean, coldest month and degree-days at 65 °F.
    ///
    /// The spread is what makes up the degree-days. Where the least spread already gives more, the
    /// mean is raised: it is a whole number of °F and the mean of hours, while published degree-days
    /// are of half the sum of maximum and minimum, which at many stations is higher.
    pub fn of(station: &Station) -> Season {
        let depth = (station.mean() - station.coldest_month()) * (SEASONAL / MONTH_OF_PEAK);
        let season = |raised_k: f64, spread_k: f64| Season {
            mean: station.mean() + TemperatureDifference::from_si(raised_k),
            amplitude: depth.max(TemperatureDifference::ZERO),
            spread: TemperatureDifference::from_si(spread_k),
        };
        let over = |raised_k: f64, spread_k: f64| {
            season(raised_k, spread_k).year_k() - station.degree_days_65_k()
        };
        let below = (station.coldest_month() - station.design_99()).si();
        let least_k = (LEAST_SHARE * below).clamp(LEAST_SPREAD_K, MOST_SPREAD_K);
        if over(0.0, least_k) > 0.0 {
            let raised = |raised_k: f64| over(raised_k, least_k);
            let raised_k = root(raised, 0.0, MOST_RAISED_K, TOLERANCE_K).unwrap_or(MOST_RAISED_K);
            return season(raised_k, least_k);
        }
        let spread = |spread_k: f64| over(0.0, spread_k);
        let spread_k = root(spread, least_k, MOST_SPREAD_K, TOLERANCE_K);
        season(0.0, spread_k.unwrap_or(MOST_SPREAD_K))
    }

    /// Degree-days from the start of one day to the start of another, in K·days; zero when that is
    /// not later. Adds up day by day, so keep to a few years.
    pub fn degree_days_k(&self, from: Day, to: Day, base: Temperature) -> f64 {
        let days = from.days_since_1970()..to.days_since_1970();
        days.map(|day| self.below_k(self.expected(f64::from(day) + 0.5), base)).sum()
    }

    /// Degree-days at 65 °F of a year, in K·days.
    fn year_k(&self) -> f64 {
        // Evenly spaced points give the mean of so smooth and periodic a function to many digits.
        const POINTS: i32 = 48;
        let point = |i: i32| self.expected(YEAR * f64::from(i) / f64::from(POINTS));
        let sum: f64 = (0..POINTS).map(|i| self.below_k(point(i), published_base())).sum();
        sum * YEAR / f64::from(POINTS)
    }

    /// Expected temperature so many days after the start of 1970.
    fn expected(&self, days: f64) -> Temperature {
        // One year is like another, so the count of days needs no calendar: within 10,000 years the
        // leap years shift the season by a day or so.
        self.mean - self.amplitude * cos(2.0 * PI * (days - COLDEST) / YEAR)
    }

    /// How far days of this expected temperature are below the base, on the average: with
    /// `z = (base - expected)/spread`, spread times `z Phi(z) + phi(z)`.
    fn below_k(&self, expected: Temperature, base: Temperature) -> f64 {
        let spread_k = self.spread.si();
        let z = (base - expected).si() / spread_k;
        let share_below = 0.5 * erfc(-z * std::f64::consts::FRAC_1_SQRT_2);
        let density = exp(-0.5 * z * z) / (2.0 * PI).sqrt();
        spread_k * (z * share_below + density)
    }
}

const TOLERANCE_K: f64 = 1e-9;
