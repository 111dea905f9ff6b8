//! Words of the house through the year.

use crate::language::{either, say, sentences};
use crate::{room_name, value};
use finrun_engine::bills::Fuel;
use finrun_engine::job::{Control, Draft};
use finrun_engine::quantity::{Kind, System, Value};
use finrun_engine::season::{BinRun, COLD_BELOW, NoSeason, RoomSeason, SeasonRun, WARM_ABOVE};

sentences! { SEASON_WORDS;
    section_season: "Through the year", "A lo largo del año";
    in_use: "Once it is heated", "Cuando se calienta";
    season_fact: "rooms cold or too warm, fuel", "habitaciones frías o demasiado calientes, combustible";
    season_note: "The place\u{2019}s typical year, one outdoor temperature after another: where every room comes to rest with the thermostats that are really there. What sun and people give is counted as the balance temperature of Boiler and fill says.",
        "El año típico del lugar, una temperatura exterior tras otra: dónde se asienta cada habitación con los termostatos que hay de verdad. Lo que dan el sol y las personas se cuenta según la temperatura de equilibrio de Caldera y llenado.";
    season_how_run: "How the house is run", "Cómo se maneja la casa";
    dampers: "Dampers of the enclosures", "Compuertas de las carcasas";
    season_working: "Working out the year …", "Calculando el año …";
    season_needs_station: "The year comes from a weather station, and this job has none. Choose one under Place and climate.",
        "El año viene de una estación meteorológica y este proyecto no tiene ninguna. Elija una en Lugar y clima.";
    season_cannot_read: "How the house is run cannot be read. Correct what is marked in the fields.",
        "No se puede leer cómo se maneja la casa. Corrija los campos marcados.";
    season_chart_title: "Rooms against the weather", "Las habitaciones frente al clima";
    season_rooms: "Room by room", "Habitación por habitación";
    season_table: "All the numbers", "Todos los números";
    season_sums_title: "The whole year", "El año entero";
    season_water_runs: "water runs", "corre el agua";
    hours_word: "hours", "horas";
    cold_word: "too cold", "demasiado frío";
    warm_word: "too warm", "demasiado caliente";
    coldest_word: "coldest", "lo más frío";
    warmest_word: "warmest while heated", "lo más cálido con calefacción";
    meant_to_be: "meant to be", "debe tener";
}

/// Hours of a year, whole.
pub fn hours(hours: f64, system: System) -> String {
    format!("{}\u{a0}h", value(Value::new(Kind::Count, hours), system))
}

/// Why there is no year, no day and no answer, and what to do.
pub fn no_season(why: NoSeason) -> &'static str {
    either(match why {
        NoSeason::NothingHeated => (
            "Nothing is heated yet: give a room its measures and surfaces, and leave it a wall for \
             baseboard.",
            "Todavía no se calienta nada: dé a una habitación sus medidas y superficies, y déjele una \
             pared para el zócalo.",
        ),
        NoSeason::NoFlows => (
            "The flow of the water was not found. See what the checks on the Loop page say, and try \
             another circulator or arrangement.",
            "No se encontró el caudal del agua. Vea lo que dicen las revisiones en la página del \
             circuito y pruebe otro circulador u otra disposición.",
        ),
        NoSeason::NotSettled => (
            "The rooms did not come to rest for some outdoor temperature. A room that is hardly heated, \
             or a very strange size, may be the cause: look at its loss and its element.",
            "Las habitaciones no se asentaron para alguna temperatura exterior. La causa puede ser una habitación \
             que casi no se calienta o una medida muy extraña: revise su pérdida y su elemento.",
        ),
    })
}

/// What counts as cold and as too warm.
pub fn season_limits(system: System) -> String {
    let (cold, warm) = (value(COLD_BELOW, system), value(WARM_ABOVE, system));
    say!(
        "Too cold is more than {cold} below what the room is meant to be, too warm more than {warm} \
         above while it is still heated: a judgement.",
        "Demasiado frío es más de {cold} por debajo de lo que debe tener la habitación, demasiado caliente más \
         de {warm} por encima mientras aún se calienta: a nuestro juicio."
    )
}

/// The whole picture in a sentence, for those who cannot see it.
pub fn season_picture(rooms: usize) -> String {
    say!(
        "The temperature of {rooms} rooms against the outdoor temperature, one line a room, and the hours \
         of a year below. The same numbers stand in the tables.",
        "La temperatura de {rooms} habitaciones según la temperatura exterior, una línea por habitación, y abajo las \
         horas del año. Los mismos números están en las tablas."
    )
}

/// Beside the bars: the tallest.
pub fn most_hours(hours: &str) -> String {
    say!("up to {hours} a year", "hasta {hours} al año")
}

/// A year in one sentence: which rooms are cold or too warm, for how long.
pub fn season_verdict(draft: &Draft, run: &SeasonRun, system: System) -> String {
    let list = |of: fn(&RoomSeason) -> f64| {
        let some = run.rooms.iter().filter(|room| of(room) > 0.5);
        let one = |room: &RoomSeason| {
            format!("{} {}", room_name(draft, room.room), hours(of(room), system))
        };
        some.map(one).collect::<Vec<String>>().join(", ")
    };
    let (cold, warm) = (list(|room| room.cold_h), list(|room| room.warm_h));
    let part = |list: String, what: &str| (!list.is_empty()).then(|| format!("{what}: {list}."));
    let said = [part(cold, &capital(cold_word())), part(warm, &capital(warm_word()))];
    let said: Vec<String> = said.into_iter().flatten().collect();
    match said.is_empty() {
        true => either((
            "No room is cold or too warm in any weather of the year.",
            "Ninguna habitación queda fría ni demasiado caliente en ningún clima del año.",
        ))
        .to_string(),
        false => said.join(" "),
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    first + letters.as_str()
}

/// The year's sums: the end of each figure's name, what it is, and how much.
pub fn season_sums(
    run: &SeasonRun,
    control: Option<&Control>,
    system: System,
) -> Vec<(&'static str, &'static str, String)> {
    let starts: Option<f64> = run.bins.iter().map(|bin| Some(bin.cycles_per_h? * bin.hours)).sum();
    let mut all = vec![
        (
            "heat",
            either(("Heat from the boiler", "Calor de la caldera")),
            energy(run.heat_j, system),
        ),
        (
            "lost",
            either(("of it lost outside the rooms", "de él, perdido fuera de las habitaciones")),
            energy(run.pipe_loss_j, system),
        ),
        ("running", either(("Water runs", "Corre el agua")), hours(run.running_h, system)),
    ];
    if let Some(firing_h) = run.firing_h {
        let name = either(("Burner, at its full output", "Quemador, a plena potencia"));
        all.push(("firing", name, hours(firing_h, system)));
    }
    if let Some(starts) = starts {
        let name = either(("Starts of the burner", "Arranques del quemador"));
        all.push(("starts", name, value(Value::new(Kind::Count, starts), system)));
    }
    all.push((
        "cold-return",
        either(("Return so cool that flue gas condenses", "Retorno tan frío que el humo condensa")),
        hours(run.cold_return_h, system),
    ));
    all.push((
        "pumps",
        either(("Electricity of circulators", "Electricidad de los circuladores")),
        kilowatt_hours(run.pump_j, system),
    ));
    if let (Some(fuel), Some(control)) = (run.fuel, control) {
        let name = either(("Fuel", "Combustible"));
        all.push(("fuel", name, fuel_amount(fuel, control.fuel, system)));
        if let Some(price) = control.fuel_price {
            let name = either(("Cost of the fuel", "Costo del combustible"));
            all.push(("cost", name, value(price * fuel, system)));
        }
    }
    all
}

/// An amount of fuel as it is sold.
pub fn fuel_amount(amount: f64, of: Fuel, system: System) -> String {
    let number = value(Value::new(Kind::Count, amount), system);
    let unit = match of {
        Fuel::NaturalGasTherm => either(("therms of gas", "therms de gas")),
        Fuel::NaturalGasCcf => either(("CCF of gas", "CCF de gas")),
        Fuel::HeatingOilGallon => either(("gallons of oil", "galones de gasóleo")),
        Fuel::PropaneGallon => either(("gallons of propane", "galones de propano")),
        Fuel::ElectricityKwh => "kWh",
    };
    format!("{number}\u{a0}{unit}")
}

fn energy(joules: f64, system: System) -> String {
    match system {
        System::Us => {
            let millions = value(Value::new(Kind::Count, joules / 1.055_055_852_62e9), system);
            say!("{millions} million Btu", "{millions} millones de Btu")
        }
        System::Si => kilowatt_hours(joules, system),
    }
}

fn kilowatt_hours(joules: f64, system: System) -> String {
    format!("{}\u{a0}kWh", value(Value::new(Kind::Count, joules / 3.6e6), system))
}

/// A bin's figures but for the rooms': the end of each one's name, and it.
pub fn season_bin(bin: &BinRun, system: System) -> Vec<(&'static str, String)> {
    let back = bin.back.map_or_else(|| "–".to_string(), |back| value(back, system));
    vec![
        ("hours", hours(bin.hours, system)),
        ("runs", value(Value::share(bin.runs), system)),
        ("supply", value(bin.supply, system)),
        ("back", back),
    ]
}

/// A room's year, in the same way.
pub fn season_room(room: &RoomSeason, system: System) -> Vec<(&'static str, String)> {
    let warmest = room.warmest.map_or_else(|| "–".to_string(), |warmest| value(warmest, system));
    vec![
        ("cold", hours(room.cold_h, system)),
        ("warm", hours(room.warm_h, system)),
        ("coldest", value(room.coldest, system)),
        ("warmest", warmest),
    ]
}
