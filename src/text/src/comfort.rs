//! Words of what would leave rooms less cold or less warm through the year.

use crate::language::{either, say, sentences};
use crate::{hours, room_name, season::fuel_amount, value, zone_name};
use finrun_engine::comfort::{Change, Comfort};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{System, Value, show_in};

sentences! { COMFORT_WORDS;
    comfort_title: "What would help", "Qué ayudaría";
    comfort_note: "Each is tried on the whole house by itself, with its own lengths and its own year. A tap makes the change; Undo takes it back.",
        "Cada cosa se prueba por sí sola en toda la casa, con sus propias longitudes y su propio año. Un toque hace el cambio; Deshacer lo revierte.";
    comfort_working: "Trying what would help …", "Probando qué ayudaría …";
    comfort_nothing: "Nothing that was tried makes the year better by as much as is worth a change.",
        "Nada de lo probado mejora el año tanto como para cambiar algo.";
    make_change: "Make this change", "Hacer este cambio";
    comfort_now: "now", "ahora";
    comfort_then: "then", "después";
    this_house: "All rooms together", "Todas las habitaciones juntas";
}

/// What is changed, as one would ask for it.
pub fn comfort_change(draft: &Draft, change: Change) -> String {
    let percent = |share: f64| value(Value::share(share), System::Us);
    match change {
        Change::Thermostat(zone, room) => {
            let (room, zone) = (room_name(draft, room), zone_name(draft, zone));
            match draft.zones.len() {
                1 => say!("Hang the thermostat in {room}", "Poner el termostato en {room}"),
                _ => say!(
                    "Hang the thermostat of {zone} in {room}",
                    "Poner el termostato de {zone} en {room}"
                ),
            }
        }
        Change::RoomValves(zone) => say!(
            "A valve in each room of {0} that closes as it warms",
            "Una válvula en cada habitación de {0} que cierra al calentarse";
            zone_name(draft, zone)
        ),
        Change::Reset => either((
            "Let the supply follow the outdoor reset line",
            "Dejar que el suministro siga la línea de compensación exterior",
        ))
        .to_string(),
        Change::Balance(zone) => say!(
            "Balancing valves in {0}",
            "Válvulas de equilibrado en {0}";
            zone_name(draft, zone)
        ),
        Change::First(room) => say!(
            "Let the water pass {0} first",
            "Hacer que el agua pase primero por {0}";
            room_name(draft, room)
        ),
        Change::TurnRound(zone) => say!(
            "Let the water of {0} go the other way round",
            "Hacer que el agua de {0} corra al revés";
            zone_name(draft, zone)
        ),
        Change::Split(zone) => say!(
            "Split the loop of {0} into two",
            "Dividir en dos el circuito de {0}";
            zone_name(draft, zone)
        ),
        Change::Shorten(room, by) => {
            let (room, by) = (room_name(draft, room), value(by, draft.units));
            say!("Take {by} of element out of {room}", "Quitar {by} de elemento de {room}")
        }
        Change::Damper(room, share) => {
            let (room, share) = (room_name(draft, room), percent(share));
            say!(
                "Set the damper in {room} so that {share} of the heat is left",
                "Ajustar la compuerta de {room} para que quede el {share} del calor"
            )
        }
        Change::OwnZone(room) => say!(
            "Give {0} a zone and a thermostat of its own",
            "Dar a {0} una zona y un termostato propios";
            room_name(draft, room)
        ),
    }
}

/// What a change is held by: the end of each figure's name, what it is, now and then.
pub fn comfort_figures(
    draft: &Draft,
    before: &Comfort,
    after: &Comfort,
) -> Vec<(&'static str, &'static str, [String; 2])> {
    let system = draft.units;
    let both = |of: &dyn Fn(&Comfort) -> String| [of(before), of(after)];
    let cold = either(("too cold, hours of rooms", "demasiado frío, horas de habitaciones"));
    let warm = either(("too warm, hours of rooms", "demasiado caliente, horas de habitaciones"));
    let off = either(("off what is meant, mean", "lejos de lo previsto, media"));
    let mut all = vec![
        ("cold", cold, both(&|of| hours(of.cold_h, system))),
        ("warm", warm, both(&|of| hours(of.warm_h, system))),
        ("off", off, both(&|of| degrees(of, system))),
        ("element", either(("element", "elemento")), both(&|of| value(of.element, system))),
    ];
    if before.fuel.is_some() {
        let fuel = |of: &Comfort| {
            of.fuel.map(|fuel| fuel_amount(fuel, draft.bills.fuel, system)).unwrap_or_default()
        };
        all.push(("fuel", either(("fuel a year", "combustible al año")), both(&fuel)));
    }
    all
}

/// To a tenth of a degree, since whole ones would hide most of what changes.
fn degrees(of: &Comfort, system: System) -> String {
    use finrun_engine::quantity::Unit;
    let (unit, number) = match system {
        System::Us => (Unit::FahrenheitDegree, of.off.to(Unit::FahrenheitDegree)),
        System::Si => (Unit::Kelvin, of.off.to(Unit::Kelvin)),
    };
    let symbol = show_in(of.off.into(), unit).unit;
    crate::in_units(&format!("{number:.1}\u{a0}{symbol}"))
}
