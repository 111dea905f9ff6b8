//! What fuel bills say of a house: its heat loss a kelvin, to set against the calculated one.
//!
//! In each period the fuel burnt is `H/efficiency` times the degree-days below the balance
//! temperature, and a constant for other things. Degree-days are those of the station's typical
//! year, or of the bill's own weather where that was typed.

mod compare;
mod fuel;
mod line;
mod period;

pub use compare::{Compared, Verdict, compare};
pub use fuel::Fuel;

use crate::climate::{Day, Season};
use crate::quantity::{LossCoefficient, Power, Temperature, TemperatureDifference, Unit};
use line::{Line, Sample, fit_line, slope_error};
use period::{Period, read_periods};
use serde::{Deserialize, Serialize};

/// The fuel of one period.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bill {
    /// The day of the first reading, or of the filling before.
    pub from: Day,
    /// The day of the last reading, on which the next period begins.
    pub to: Day,
    /// In the fuel's unit.
    pub amount: f64,
    /// Degree-days at 65 °F of the very period, in K·days.
    pub degree_days_65_k: Option<f64>,
}

/// The house that comes nearest to the bills.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fit {
    /// Heat lost a kelvin.
    #[serde(rename = "coefficient_w_per_k")]
    pub coefficient: LossCoefficient,
    /// One standard error of it, by the scatter of the bills; none without a bill to spare.
    #[serde(rename = "coefficient_error_w_per_k")]
    pub coefficient_error: Option<LossCoefficient>,
    /// Outdoors, from which on down the house is heated.
    #[serde(rename = "balance_k")]
    pub balance: Temperature,
    /// Fuel burnt at all times, as the heat in it.
    #[serde(rename = "other_use_w")]
    pub other_use: Power,
    pub fitted: Fitted,
    /// The best balance temperature stands at an end of what was searched: it may be beyond.
    pub balance_at_limit: bool,
    /// Root mean square of what is left over, as a share of the mean use.
    pub residual: f64,
}

/// What the bills determined. The rest was assumed: a balance temperature 5 K below indoors, and no
/// use for other things.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Fitted {
    Coefficient,
    CoefficientAndOtherUse,
    CoefficientAndBalance,
    All,
}

impl Fitted {
    pub fn balance(self) -> bool {
        matches!(self, Fitted::CoefficientAndBalance | Fitted::All)
    }

    pub fn other_use(self) -> bool {
        matches!(self, Fitted::CoefficientAndOtherUse | Fitted::All)
    }
}

/// Why bills tell nothing; `index` counts from zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BillsError {
    NoBills,
    /// The efficiency is not between 0.01 and 10.
    Efficiency,
    /// Indoors is not between 10 and 40 °C.
    Indoor,
    /// The period ends before it begins, or with it.
    Reversed {
        index: usize,
    },
    /// Less than a week.
    TooShort {
        index: usize,
    },
    /// More than 400 days.
    TooLong {
        index: usize,
    },
    /// Below zero, a thousand millions or no number.
    Amount {
        index: usize,
    },
    /// Degree-days below zero or no number.
    DegreeDays {
        index: usize,
    },
    /// No weather of the place has such degree-days in such a period.
    UnlikelyDegreeDays {
        index: usize,
    },
    Overlap {
        first: usize,
        second: usize,
    },
    /// The periods are too mild to tell a house's loss.
    NoHeating,
    /// The use does not grow with the cold.
    NotWithTheCold,
}

/// A house's own warmth and the sun carry it 5 K: judgement; a usual house at 70 °F has a balance
/// temperature near 61 °F.
pub const ASSUMED_BELOW_INDOORS: TemperatureDifference = TemperatureDifference::from_si(5.0);

/// Fewer degree-days than this, in K·days below the assumed balance temperature, are all chance:
/// judgement, some three cold days.
const LEAST_HEATING_K: f64 = 50.0;

/// The house that comes nearest to the bills by least squares of the mean use of each period, in
/// proportion to its days.
///
/// # Errors
/// [`BillsError`] names the bill, or what is wanting.
pub fn fit(
    bills: &[Bill],
    season: &Season,
    fuel: Fuel,
    efficiency: f64,
    indoor: Temperature,
) -> Result<Fit, BillsError> {
    // Ten is more than any heat pump gives; below a hundredth, something else is meant.
    if !(0.01..=10.0).contains(&efficiency) {
        return Err(BillsError::Efficiency);
    }
    if !(indoor.to(Unit::Celsius) >= 10.0 && indoor.to(Unit::Celsius) <= 40.0) {
        return Err(BillsError::Indoor);
    }
    let periods = read_periods(bills, season, fuel)?;
    let house = House { periods: &periods, season, assumed: indoor - ASSUMED_BELOW_INDOORS };
    let samples = house.samples(house.assumed);
    if samples.iter().map(|s| s.cold_k * s.days).sum::<f64>() < LEAST_HEATING_K {
        return Err(BillsError::NoHeating);
    }
    let mut fitted = determinable(&samples);
    if fitted == Fitted::CoefficientAndOtherUse && fit_line(&samples, true).constant == 0.0 {
        // Use falls faster than the cold below the assumed balance, so that is what is wrong.
        fitted = Fitted::CoefficientAndBalance;
    }
    // Ten kelvins below indoors for a cool house, and no warmer than 45 °F: judgement.
    let lowest =
        Temperature::of(45.0, Unit::Fahrenheit).min(indoor - TemperatureDifference::from_si(10.0));
    let balance = if fitted.balance() {
        let misfit = |balance| fit_line(&house.samples(balance), fitted.other_use()).misfit;
        lowest_between(misfit, lowest, indoor)
    } else {
        house.assumed
    };
    house.report(balance, fitted, efficiency, (lowest, indoor))
}

/// The bills' periods in a season.
#[derive(Debug, Clone, Copy)]
struct House<'a> {
    periods: &'a [Period],
    season: &'a Season,
    assumed: Temperature,
}

impl House<'_> {
    fn samples(&self, balance: Temperature) -> Vec<Sample> {
        let sample = |period: &Period| Sample {
            cold_k: period.cold_k(self.season, balance),
            use_w: period.use_w,
            days: period.days,
        };
        self.periods.iter().map(sample).collect()
    }

    fn report(
        &self,
        balance: Temperature,
        fitted: Fitted,
        efficiency: f64,
        (lowest, highest): (Temperature, Temperature),
    ) -> Result<Fit, BillsError> {
        let samples = self.samples(balance);
        let line = fit_line(&samples, fitted.other_use());
        if !(line.slope > 0.0 && line.slope.is_finite()) {
            return Err(BillsError::NotWithTheCold);
        }
        let near = TemperatureDifference::from_si(0.1);
        let at_limit = fitted.balance() && (balance - lowest < near || highest - balance < near);
        let error = slope_error(&samples, &self.slopes(balance, fitted, line), line);
        let [days, used] = samples
            .iter()
            .fold([0.0, 0.0], |[days, used], s| [days + s.days, used + s.days * s.use_w]);
        Ok(Fit {
            coefficient: LossCoefficient::from_si(efficiency * line.slope),
            coefficient_error: error.map(|error| LossCoefficient::from_si(efficiency * error)),
            balance,
            other_use: Power::from_si(line.constant),
            fitted,
            balance_at_limit: at_limit,
            residual: (line.misfit * days).sqrt() / used,
        })
    }

    /// The derivatives of each period's use by what was fitted: by slope, by constant, by balance
    /// temperature. One that was not fitted, or stands at its limit of zero, has zeros.
    fn slopes(&self, balance: Temperature, fitted: Fitted, line: Line) -> Vec<[f64; 3]> {
        let step = TemperatureDifference::from_si(0.1);
        let slopes = |period: &Period| {
            let [less, cold, more] = [balance - step, balance, balance + step]
                .map(|balance| period.cold_k(self.season, balance));
            let by_constant = if line.constant > 0.0 { 1.0 } else { 0.0 };
            let by_balance = line.slope * (more - less) / (2.0 * step.si());
            [cold, by_constant, if fitted.balance() { by_balance } else { 0.0 }]
        };
        self.periods.iter().map(slopes).collect()
    }
}

/// What bills of such periods can tell: judgement.
fn determinable(samples: &[Sample]) -> Fitted {
    let most = samples.iter().fold(0.0_f64, |most, s| most.max(s.cold_k));
    let least = samples.iter().fold(most, |least, s| least.min(s.cold_k));
    // A mild period shows the other use; three cold ones, unlike each other, the slope and where it
    // begins.
    let mild = samples.iter().filter(|s| s.cold_k < 0.2 * most).count();
    let cold = samples.len() - mild;
    let least_cold =
        samples.iter().filter(|s| s.cold_k >= 0.2 * most).fold(most, |l, s| l.min(s.cold_k));
    if mild >= 1 && cold >= 3 && least_cold < 0.7 * most {
        Fitted::All
    } else if least < 0.5 * most {
        Fitted::CoefficientAndOtherUse
    } else {
        Fitted::Coefficient
    }
}

/// Where `f` is lowest, to 0.01 K: the best of a grid, then golden sections about it.
fn lowest_between(
    f: impl Fn(Temperature) -> f64,
    low: Temperature,
    high: Temperature,
) -> Temperature {
    const GRID: u8 = 16;
    let step = (high - low) / f64::from(GRID);
    let at = |i: u8| low + step * f64::from(i);
    let (mut best, mut value) = (0, f64::INFINITY);
    for i in 0..=GRID {
        let here = f(at(i));
        if here < value {
            (best, value) = (i, here);
        }
    }
    // The golden section: of two inner points, one serves again after the bracket has shrunk.
    const GOLDEN: f64 = 0.618_033_988_749_894_8;
    let (mut a, mut b) = (at(best.saturating_sub(1)), at((best + 1).min(GRID)));
    let inner = |a: Temperature, b: Temperature| (b - (b - a) * GOLDEN, a + (b - a) * GOLDEN);
    let (mut c, mut d) = inner(a, b);
    let (mut fc, mut fd) = (f(c), f(d));
    for _ in 0..40 {
        if (b - a).si() <= 0.01 {
            break;
        }
        if fc < fd {
            (b, d, fd) = (d, c, fc);
            c = inner(a, b).0;
            fc = f(c);
        } else {
            (a, c, fc) = (c, d, fd);
            d = inner(a, b).1;
            fd = f(d);
        }
    }
    a + (b - a) * 0.5
}
