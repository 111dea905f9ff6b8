//! A station's typical year as hours at each outdoor temperature.

use super::Season;
use crate::numeric::{cos, erfc, exp};
use crate::quantity::{Temperature, TemperatureDifference, Unit};
use serde::Serialize;
use std::f64::consts::{FRAC_1_SQRT_2, PI};

/// The hours of a year whose days have a mean temperature within 5 °F.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bin {
    /// The lower edge; the coldest bin has all that is colder too.
    #[serde(rename = "from_k")]
    pub from: Temperature,
    /// The mean of its hours.
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    /// Of a year of 8765.82 hours.
    pub hours: f64,
}

/// Hours in the mean year of the Gregorian calendar; exact.
pub const YEAR_H: f64 = 24.0 * 365.2425;

/// The usual width of published bins.
const WIDTH_F: i32 = 5;

/// A bin of fewer hours goes with its milder neighbour: judgement.
const LEAST_H: f64 = 0.5;

impl Season {
    /// The year in bins of 5 °F with edges at whole multiples of it, from the coldest on.
    ///
    /// Each bin stands at the mean of its own hours, so that degree-days at any edge come out as
    /// [`Season::degree_days_k`] has them. The temperatures are those of days, not of hours: a house
    /// carries the warmth of noon into the night.
    pub fn bins(&self) -> Vec<Bin> {
        let reach = self.amplitude + self.spread * 5.0;
        let edge = |at: i32| Temperature::of(f64::from(at * WIDTH_F), Unit::Fahrenheit);
        let count = |t: Temperature| (t.to(Unit::Fahrenheit) / f64::from(WIDTH_F)).floor() as i32;
        let (first, last) = (count(self.mean - reach), count(self.mean + reach) + 1);
        let mut bins: Vec<Bin> = Vec::new();
        // What lies below the last edge that ended a bin: share of the year, and degree-kelvins of
        // excess of that edge over it.
        let mut below = (0.0, 0.0);
        let mut from = edge(first);
        for at in first + 1..=last {
            let (share, excess_k) = self.below(edge(at));
            let part = share - below.0;
            if part * YEAR_H < LEAST_H && at < last {
                continue;
            }
            // Of what is new, the sum of distances below the upper edge.
            let distance_k = excess_k - below.1 - below.0 * (edge(at) - from).si();
            if part * YEAR_H >= LEAST_H {
                let outdoors = edge(at) - TemperatureDifference::from_si(distance_k / part);
                bins.push(Bin { from: edge(at - 1), outdoors, hours: part * YEAR_H });
            } else if let Some(warmest) = bins.last_mut() {
                // The last few hours of all.
                warmest.hours += part * YEAR_H;
            }
            (below, from) = ((share, excess_k), edge(at));
        }
        bins
    }

    /// The share of the year that is colder than `base`, and the year's mean of how far.
    fn below(&self, base: Temperature) -> (f64, f64) {
        // Evenly spaced points give the mean of so smooth and periodic a function to many digits.
        const POINTS: i32 = 96;
        let spread_k = self.spread.si();
        let (mut share, mut excess_k) = (0.0, 0.0);
        for i in 0..POINTS {
            let turn = 2.0 * PI * f64::from(i) / f64::from(POINTS);
            let z = (base - (self.mean - self.amplitude * cos(turn))).si() / spread_k;
            let colder = 0.5 * erfc(-z * FRAC_1_SQRT_2);
            share += colder;
            excess_k += spread_k * (z * colder + exp(-0.5 * z * z) / (2.0 * PI).sqrt());
        }
        (share / f64::from(POINTS), excess_k / f64::from(POINTS))
    }
}
