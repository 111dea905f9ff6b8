//! The job before and after, row by row, each with its difference in words.

use crate::language::{either, in_units, say};
use crate::{room_name, value};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Kind, System, Value};
use finrun_engine::what_if::{RoomSide, Side, Weighed, Year};

/// The rows of the house: the end of its figures' names, its name, before, after, and the difference.
pub fn weighed_rows(
    weighed: &Weighed,
    draft: &Draft,
    system: System,
) -> Vec<(&'static str, &'static str, [String; 3])> {
    let Weighed { before, after, .. } = weighed;
    let of = |name: &'static str, words, kind, get: &dyn Fn(&Side) -> Option<f64>| {
        (name, either(words), cells(kind, [get(before), get(after)], system))
    };
    let count = Kind::Count;
    let mut rows = vec![
        of(
            "load",
            ("Heat loss on the design day", "Pérdida de calor el día de diseño"),
            Kind::Power,
            &|s| Some(s.load.si()),
        ),
        of("boiler", ("The boiler must give", "La caldera debe dar"), Kind::Power, &|s| {
            s.boiler.map(|power| power.si())
        }),
        of("element", ("Element", "Elemento"), Kind::Length, &|s| Some(s.element.si())),
        of("pieces", ("Pieces", "Piezas"), count, &|s| Some(s.pieces as f64)),
        of("short", ("Rooms that get too little", "Habitaciones con poco calor"), count, &|s| {
            Some(s.short as f64)
        }),
    ];
    // Where a piece has no price there is no sum to show.
    let priced = |side: &Side| side.pieces_cost.map(|cost| cost.si());
    if priced(before).is_some() && priced(after).is_some() {
        let words = ("The pieces cost", "Las piezas cuestan");
        rows.insert(4, of("pieces-cost", words, Kind::Money, &priced));
    }
    let year = |get: fn(&Year) -> Option<f64>| {
        move |side: &Side| side.year.as_ref().and_then(|year| get(year.as_ref().ok()?))
    };
    let years = [before, after].map(|side| matches!(side.year, Some(Ok(_))));
    if years == [true, true] {
        let fuel = [before, after].map(|side| year(|year| year.fuel)(side));
        rows.push(("fuel", either(("Fuel in a typical year", "Combustible en un año típico")), {
            fuel_cells(draft, fuel)
        }));
        let cost = year(|year| year.fuel_cost.map(|cost| cost.si()));
        if cost(before).is_some() {
            let words = ("The fuel costs", "El combustible cuesta");
            rows.push(of("fuel-cost", words, Kind::Money, &cost));
        }
        let hours = |words, name, get: fn(&Year) -> f64| {
            let both = [before, after]
                .map(|side| side.year.as_ref().and_then(|year| year.as_ref().ok()).map(get));
            (name, either(words), hour_cells(both))
        };
        rows.push(hours(
            ("Hours too cold, worst room", "Horas de frío, peor habitación"),
            "cold",
            |year| year.cold_h,
        ));
        rows.push(hours(
            ("Hours too warm, worst room", "Horas de calor, peor habitación"),
            "warm",
            |year| year.warm_h,
        ));
    }
    rows
}

/// Each room of either job: its id, its name, and load, element, hours too cold and too warm, before and
/// after. `changed` is the job with the changes made.
pub fn weighed_rooms(
    weighed: &Weighed,
    (draft, changed): (&Draft, &Draft),
    system: System,
) -> Vec<(u32, String, [[String; 2]; 4])> {
    let before = |after: &RoomSide| weighed.before.rooms.iter().find(|r| r.room == after.room);
    let of = |after: &RoomSide| {
        let was = before(after);
        let names = if was.is_some() { draft } else { changed };
        let shown = |kind, get: &dyn Fn(&RoomSide) -> f64| {
            [was, Some(after)].map(|side| match side {
                Some(side) => value(Value::new(kind, get(side)), system),
                None => "–".to_string(),
            })
        };
        let hours = |get: &dyn Fn(&RoomSide) -> Option<f64>| {
            [was, Some(after)].map(|side| side.and_then(get).map_or("–".to_string(), hours))
        };
        let cells = [
            shown(Kind::Power, &|side| side.load.si()),
            shown(Kind::Length, &|side| side.element.si()),
            hours(&|side| side.cold_h),
            hours(&|side| side.warm_h),
        ];
        (after.room.0, room_name(names, after.room), cells)
    };
    weighed.after.rooms.iter().map(of).collect()
}

/// Over the columns of the rooms.
pub fn weighed_room_heads() -> [&'static str; 5] {
    [
        ("Room", "Habitación"),
        ("Heat loss", "Pérdida de calor"),
        ("Element", "Elemento"),
        ("Too cold in a year", "Frío en un año"),
        ("Too warm in a year", "Calor en un año"),
    ]
    .map(either)
}

/// Before and after in one cell.
pub fn then_now(before: &str, after: &str) -> String {
    match before == after {
        true => say!("{after}, as before", "{after}, como antes"),
        false => say!("{before}, then {after}", "{before}, después {after}"),
    }
}

fn cells(kind: Kind, both: [Option<f64>; 2], system: System) -> [String; 3] {
    let shown = |si: f64| value(Value::new(kind, si), system);
    row(both, &shown)
}

fn hour_cells(both: [Option<f64>; 2]) -> [String; 3] {
    row(both, &hours)
}

/// Whole hours: finer is not known.
fn hours(hours: f64) -> String {
    in_units(&format!("{hours:.0} h")).replace(' ', "\u{a0}")
}

/// In the unit that the bills count.
fn fuel_cells(draft: &Draft, both: [Option<f64>; 2]) -> [String; 3] {
    use finrun_engine::bills::Fuel;
    let unit = either(match draft.bills.fuel {
        Fuel::NaturalGasTherm => ("therms", "therms"),
        Fuel::NaturalGasCcf => ("CCF", "CCF"),
        Fuel::HeatingOilGallon | Fuel::PropaneGallon => ("gal", "gal"),
        Fuel::ElectricityKwh => ("kWh", "kWh"),
    });
    row(both, &|amount: f64| format!("{}\u{a0}{unit}", in_units(&format!("{amount:.0}"))))
}

/// Before, after, and how much more or less: in words, so that no sign or color has to say it.
fn row(both: [Option<f64>; 2], shown: &dyn Fn(f64) -> String) -> [String; 3] {
    let [Some(before), Some(after)] = both else {
        let [before, after] = both.map(|side| side.map_or("–".to_string(), shown));
        return [before, after, "–".to_string()];
    };
    let size = shown((after - before).abs());
    let difference = match after - before {
        _ if size == shown(0.0) => either(("the same", "igual")).to_string(),
        more if more > 0.0 => say!("{size} more", "{size} más"),
        _ => say!("{size} less", "{size} menos"),
    };
    [shown(before), shown(after), difference]
}
