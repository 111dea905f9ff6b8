//! The climate of the United States without a network: [`Table`] holds the weather stations,
//! [`search`] finds those near a ZIP code or a place, [`Season`] spreads a station's year over its
//! days. A job keeps a copy of its [`Station`], so that it stands alone.

mod bins;
mod day;
mod place;
mod search;
mod season;
mod table;

pub use bins::{Bin, YEAR_H};
pub use day::{Day, DayError};
pub use search::{Found, Hit, search};
pub use season::Season;
pub use table::{Listed, Position, Table, TableError, TableFault, VERSION as TABLE_VERSION};

use crate::quantity::{Length, Temperature, TemperatureDifference, Unit, Velocity};
use crate::stored::stored;

/// What a job keeps of a weather station. Whole numbers in the units of the table, so that a copy
/// equals its original.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Station {
    /// Two letters.
    pub state: String,
    pub name: String,
    pub elevation_m: i32,
    /// All but 1 % of the year's hours are warmer than this.
    pub t99_f: i32,
    /// All but 0.4 % of the year's hours are warmer than this.
    pub t996_f: i32,
    /// Mean of the year.
    pub mean_f: i32,
    /// Mean of the coldest month.
    pub coldest_month_f: i32,
    /// °F·days of a year below 65 °F, of days' means as half of maximum and minimum.
    pub degree_days_65_f: i32,
    /// Mean of the coldest month, 10 m above the ground.
    pub wind_mph: i32,
}

impl Station {
    /// Whether each number is one that a place may have: a harmed file may hold any.
    pub(crate) fn is_on_earth(&self) -> bool {
        let temperatures = [self.t99_f, self.t996_f, self.mean_f, self.coldest_month_f];
        (-500..=6000).contains(&self.elevation_m)
            && temperatures.iter().all(|f| (-130..=130).contains(f))
            && (0..=40_000).contains(&self.degree_days_65_f)
            && (0..=100).contains(&self.wind_mph)
    }
}

stored!(Station {
    state,
    name,
    elevation_m,
    t99_f,
    t996_f,
    mean_f,
    coldest_month_f,
    degree_days_65_f,
    wind_mph,
});

/// The base of published degree-days.
pub const PUBLISHED_BASE_F: f64 = 65.0;

/// A mile of 1609.344 m in an hour; exact (NIST Special Publication 811, from memory).
const MILE_PER_HOUR: Velocity = Velocity::from_si(0.44704);

/// A degree-day of 1 °F as one of 1 K; exact.
const KELVIN_OF_FAHRENHEIT: f64 = 5.0 / 9.0;

impl Station {
    pub fn elevation(&self) -> Length {
        Length::from_si(f64::from(self.elevation_m))
    }

    /// The usual outdoor design temperature.
    pub fn design_99(&self) -> Temperature {
        fahrenheit(self.t99_f)
    }

    pub fn design_996(&self) -> Temperature {
        fahrenheit(self.t996_f)
    }

    pub fn mean(&self) -> Temperature {
        fahrenheit(self.mean_f)
    }

    pub fn coldest_month(&self) -> Temperature {
        fahrenheit(self.coldest_month_f)
    }

    pub fn wind(&self) -> Velocity {
        MILE_PER_HOUR * f64::from(self.wind_mph)
    }

    /// Degree-days of a year below [`published_base`], in K·days.
    pub fn degree_days_65_k(&self) -> f64 {
        f64::from(self.degree_days_65_f) * KELVIN_OF_FAHRENHEIT
    }
}

/// 65 °F.
pub fn published_base() -> Temperature {
    Temperature::of(PUBLISHED_BASE_F, Unit::Fahrenheit)
}

fn fahrenheit(degrees: i32) -> Temperature {
    Temperature::of(f64::from(degrees), Unit::Fahrenheit)
}

fn fahrenheit_degrees(degrees: f64) -> TemperatureDifference {
    TemperatureDifference::of(degrees, Unit::FahrenheitDegree)
}
