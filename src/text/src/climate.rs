//! Climate stations in words.

use crate::language::say;
use crate::{in_units, value};
use finrun_engine::climate::Station;
use finrun_engine::quantity::{Kind, Length, System, TemperatureDifference, Unit, Value};

pub fn station_name(station: &Station) -> String {
    format!("{}, {}", station.name, station.state)
}

/// Height, both design temperatures, mean and degree days, in one line.
pub fn station_facts(station: &Station, system: System) -> String {
    let degree_days = Value::new(Kind::DegreeDays, station.degree_days_65_k());
    say!(
        "99 % {}, {} {}, mean {}, {} a year, {} high",
        "99 % {}, {} {}, media {}, {} al año, {} de altura";
        value(station.design_99(), system), in_units("99.6 %"), value(station.design_996(), system), value(station.mean(), system), value(degree_days, system), height(station.elevation(), system)
    )
}

/// Heights in whole feet or metres.
fn height(height: Length, system: System) -> String {
    match system {
        System::Us => in_units(&format!("{:.0} ft", height.to(Unit::Foot))),
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
        System::Us => format!("{:.0} mi", distance.si() / 1609.344),
        System::Si => format!("{:.0} km", distance.si() / 1000.0),
    };
    say!(
        "{away} away, good to about {}",
        "a {away}, con un error de unos {}";
        value(uncertainty, system)
    )
}

pub fn station_taken(station: &Station) -> String {
    say!("{} is chosen.", "Se eligió {}."; station_name(station))
}

pub fn zip_spread(zip: &str, spread: Length, system: System) -> String {
    let far = match system {
        System::Us => format!("{:.0} mi", spread.si() / 1609.344),
        System::Si => format!("{:.0} km", spread.si() / 1000.0),
    };
    say!(
        "{zip}: distances from the middle of an area that reaches {far} out.",
        "{zip}: distancias desde el centro de un área que llega hasta {far}."
    )
}

pub fn not_a_zip(digits: usize) -> String {
    say!(
        "A ZIP code has five digits; this has {digits}. Type all five, or a town's name.",
        "Un código ZIP tiene cinco dígitos; este tiene {digits}. Escriba los cinco, o el nombre de \
         una ciudad."
    )
}

pub fn no_such_zip(zip: &str) -> String {
    say!(
        "No ZIP code begins with {}. Correct it, or type a town's name.",
        "Ningún código ZIP empieza con {}. Corríjalo, o escriba el nombre de una ciudad.";
        &zip[..3.min(zip.len())]
    )
}

pub fn more_stations(count: usize) -> String {
    say!(
        "{count} more of that name. Add the state to narrow it down.",
        "{count} más con ese nombre. Agregue el estado para reducirlos."
    )
}

pub fn stations_failed(reason: &str) -> String {
    say!(
        "The table of stations cannot be read ({reason}). Type the temperatures, or load the page \
         again.",
        "La tabla de estaciones no se puede leer ({reason}). Escriba las temperaturas, o vuelva a \
         cargar la página."
    )
}
