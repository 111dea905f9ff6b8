//! Words of cooler water: how cool it may be, and what it takes.

use crate::language::{either, say, sentences};
use crate::{hours, value};
use finrun_engine::cooler::{CoolRoom, CoolSupply, CoolYear};
use finrun_engine::plant::reset::Setting;
use finrun_engine::quantity::{Length, System, Temperature, Value};

sentences! { COOLER_WORDS;
    section_cooler: "Cooler water", "Agua menos caliente";
    cooler_fact: "for a condensing boiler or a heat pump", "para una caldera de condensación o una bomba de calor";
    cooler_note: "The least supply temperature that still gives every room what it needs, in every weather. Cooler water lets a boiler condense and a heat pump work; it also takes more element, or less loss.",
        "La menor temperatura de suministro que todavía da a cada habitación lo que necesita, en todo clima. El agua menos caliente deja condensar a una caldera y trabajar a una bomba de calor; también pide más elemento o menos pérdida.";
    cooler_working: "Working out cooler water …", "Calculando el agua menos caliente …";
    cooler_chart_title: "Least supply against the weather", "Menor suministro frente al clima";
    least_supply: "least supply", "menor suministro";
    limiting_word: "the room that asks for it", "la habitación que la pide";
    reset_to_set: "The line to set", "La línea que se ajusta";
    line_of_control: "line of the control", "línea del control";
    condensing_title: "Condensing", "Condensación";
    must_not_condense: "The boiler of this job must not condense: water this cool would eat it. It needs a mixing valve that keeps its return warm, or another boiler; flue and fuel are licensed work.",
        "La caldera de este proyecto no debe condensar: un agua tan fría la corroería. Necesita una válvula mezcladora que mantenga caliente su retorno, u otra caldera; humos y combustible son trabajo con licencia.";
    as_now: "as now", "como ahora";
    by_the_line: "by the line", "según la línea";
    condensing_word: "condenses", "condensa";
    of_the_heat: "of the year\u{2019}s heat", "del calor del año";
    room_word: "room", "habitación";
    gets_word: "gets of its need", "recibe de lo que necesita";
    to_add: "element to add", "elemento a añadir";
    to_cut: "or loss to cut", "o pérdida a reducir";
    beyond_limit: "more than the boiler\u{2019}s limit", "más que el límite de la caldera";
}

pub fn cooler_picture() -> &'static str {
    either((
        "The least supply temperature against the outdoor temperature, and the line of a reset control \
         above it. The same numbers stand in the table.",
        "La menor temperatura de suministro según la temperatura exterior y, por encima, la línea de un \
         control de compensación. Los mismos números están en la tabla.",
    ))
}

/// A line for the control, or why there is none.
pub fn cooler_line(
    line: Option<&Setting>,
    room: Temperature,
    most: Temperature,
    system: System,
) -> String {
    let Some(line) = line else {
        return either((
            "There is no line: on the coldest days the boiler\u{2019}s limit is not enough. Mend what is \
             short on the Lengths page first.",
            "No hay línea: en los días más fríos no basta el límite de la caldera. Arregle primero lo que \
             falta en la página de longitudes.",
        ))
        .to_string();
    };
    let (room, most) = (value(room, system), value(most, system));
    let slope = value(Value::number(line.slope), system);
    let (shift, excess) = (value(line.shift, system), value(line.excess, system));
    say!(
        "Slope {slope}, shift {shift} about a room of {room}; high limit at {most}. The line is above what is \
         needed by up to {excess}.",
        "Pendiente {slope}, desplazamiento {shift} sobre una habitación de {room}; límite alto a {most}. La línea \
         queda por encima de lo necesario hasta en {excess}."
    )
}

/// Over the rooms at one supply.
pub fn at_supply(supply: Temperature, system: System) -> String {
    let supply = value(supply, system);
    say!("At {supply}", "A {supply}")
}

/// What one supply does as things are.
pub fn supply_said(of: &CoolSupply, system: System) -> String {
    match of.enough_from {
        Some(_) if of.short_h <= 0.0 => either((
            "It heats every room all year as things are.",
            "Calienta todas las habitaciones todo el año tal como están.",
        ))
        .to_string(),
        Some(from) => {
            let (from, short) = (value(from, system), hours(of.short_h, system));
            say!(
                "As things are it is enough from {from} outdoors on; it is not in {short} a year.",
                "Tal como están basta desde {from} afuera; no basta en {short} al año."
            )
        }
        None => either((
            "As things are it is never enough for every room.",
            "Tal como están nunca basta para todas las habitaciones.",
        ))
        .to_string(),
    }
}

/// A room at one supply: the end of each figure's name, and it.
pub fn cool_room(room: &CoolRoom, system: System) -> Vec<(&'static str, String)> {
    let share = value(Value::share(room.share), system);
    let add = match room.add {
        Some(Length::ZERO) => "–".to_string(),
        Some(add) if room.fits => value(add, system),
        Some(add) => {
            let add = value(add, system);
            say!("{add}, more than its walls take", "{add}, más de lo que admiten sus paredes")
        }
        None => either(("no length does", "ninguna longitud basta")).to_string(),
    };
    let cut = match room.share < 1.0 {
        true => value(Value::share(1.0 - room.share), system),
        false => "–".to_string(),
    };
    vec![("share", share), ("add", add), ("cut", cut)]
}

/// A year, as a condensing boiler has it.
pub fn cool_year(year: &CoolYear, system: System) -> Vec<(&'static str, String)> {
    vec![
        ("running", hours(year.running_h, system)),
        ("condensing", hours(year.condensing_h, system)),
        ("share", value(Value::share(year.condensing_share), system)),
    ]
}
