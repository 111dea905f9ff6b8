//! Climate stations in words.

use crate::value;
use finrun_engine::climate::Station;
use finrun_engine::quantity::{Kind, Length, System, TemperatureDifference, Unit, Value};

pub fn station_name(station: &Station) -> String {
    format!("{}, {}", station.name, station.state)
}

/// Height, both design temperatures, mean and degree days, in one line.
pub fn station_facts(station: &Station, system: System) -> String {
    let degree_days = Value::new(Kind::DegreeDays, station.degree_days_65_k());
    format!(
        "99 % {}, 99.6 % {}, mean {}, {} a year, {} high",
        value(station.design_99(), system),
        value(station.design_996(), system),
        value(station.mean(), system),
        value(degree_days, system),
        height(station.elevation(), system)
    )
}

/// Heights in whole feet or metres.
fn height(height: Length, system: System) -> String {
    match system {
        System::Us => format!("{:.0} ft", height.to(Unit::Foot)),
        System::Si => format!("{:.0} m", height.si()),
    }
}

/// How far it stands, and what that may cost in certainty.
pub fn station_away(
    distance: Length,
    uncertainty: TemperatureDifference,
    system: System,
) -> String {
    let away = match system {
        System::Us => format!("{:.0} mi away", distance.si() / 1609.344),
        System::Si => format!("{:.0} km away", distance.si() / 1000.0),
    };
    format!("{away}, good to about {}", value(uncertainty, system))
}

pub fn station_taken(station: &Station) -> String {
    format!("{} is chosen.", station_name(station))
}

pub fn zip_spread(zip: &str, spread: Length, system: System) -> String {
    let far = match system {
        System::Us => format!("{:.0} mi", spread.si() / 1609.344),
        System::Si => format!("{:.0} km", spread.si() / 1000.0),
    };
    format!("{zip}: distances from the middle of an area that reaches {far} out.")
}

pub fn not_a_zip(digits: usize) -> String {
    format!("A ZIP code has five digits; this has {digits}. Type all five, or a town's name.")
}

pub fn no_such_zip(zip: &str) -> String {
    format!(
        "No ZIP code begins with {}. Correct it, or type a town's name.",
        &zip[..3.min(zip.len())]
    )
}

pub fn more_stations(count: usize) -> String {
    format!("{count} more of that name. Add the state to narrow it down.")
}

pub fn stations_failed(reason: &str) -> String {
    format!(
        "The table of stations cannot be read ({reason}). Type the temperatures, or load the page \
         again."
    )
}
