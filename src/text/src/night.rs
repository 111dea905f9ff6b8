//! Words of the design day in time: setback and recovery.

use crate::language::{either, say, sentences};
use crate::{in_units, value, zone_name};
use finrun_engine::building::ZoneId;
use finrun_engine::job::{Draft, Setback};
use finrun_engine::quantity::{Kind, System, TemperatureDifference, Value};
use finrun_engine::transient::DayRun;

sentences! { NIGHT_WORDS;
    section_design_day: "Design day", "Día de diseño";
    night_fact: "night setback and recovery", "reducción nocturna y recuperación";
    night_note: "The coldest day the system is made for, from the hour at which the thermostats are turned down. While a zone calls, its water is taken to be at the supply temperature.",
        "El día más frío para el que se hace el sistema, desde la hora en que se bajan los termostatos. Mientras una zona pide calor, su agua se toma a la temperatura de suministro.";
    night_working: "Working out the day …", "Calculando el día …";
    night_chart_title: "Rooms through the day", "Las habitaciones a lo largo del día";
    night_rooms: "Rooms built otherwise than the house", "Habitaciones construidas de otro modo que la casa";
    turned_up: "turned up", "se sube";
    hour_word: "hour", "hora";
    night_zones: "Warm again", "Vuelve a estar cálido";
}

/// A stretch of hours: "1 h 40 min".
pub fn duration(hours: f64) -> String {
    if !hours.is_finite() {
        return "–".to_string();
    }
    let minutes = (hours * 60.0).round().max(0.0);
    let (whole, left) = ((minutes / 60.0).floor(), minutes % 60.0);
    match (whole, left) {
        (0.0, left) => format!("{left:.0}\u{a0}min"),
        (whole, 0.0) => format!("{whole:.0}\u{a0}h"),
        (whole, left) => format!("{whole:.0}\u{a0}h\u{a0}{left:.0}\u{a0}min"),
    }
}

pub fn night_picture(rooms: usize) -> String {
    say!(
        "The temperature of {rooms} rooms through 24 hours from turning the thermostats down, one line a \
         room. The same numbers stand in the table.",
        "La temperatura de {rooms} habitaciones durante 24 horas desde que se bajan los termostatos, una línea \
         por habitación. Los mismos números están en la tabla."
    )
}

/// When a zone is warm again.
pub fn recovered(hours: Option<f64>) -> String {
    match hours {
        Some(hours) => duration(hours),
        None => either(("not within the day", "no en ese día")).to_string(),
    }
}

/// What the night comes to: the end of each figure's name, and a sentence.
pub fn night_said(
    draft: &Draft,
    run: &DayRun,
    setback: Setback,
    system: System,
) -> Vec<(&'static str, String)> {
    if setback.by <= TemperatureDifference::ZERO || setback.hours <= 0.0 {
        let never = either((
            "Nothing is turned down: every room stays as it is all day.",
            "No se baja nada: todas las habitaciones quedan igual todo el día.",
        ));
        return vec![("recovery", never.to_string())];
    }
    vec![
        ("recovery", recovery(draft, run, setback)),
        ("strength", strength(run, setback, system)),
        ("saved", saved(run)),
    ]
}

fn recovery(draft: &Draft, run: &DayRun, setback: Setback) -> String {
    let late: Vec<String> = run
        .zones
        .iter()
        .filter(|zone| zone.recovered_h.is_none())
        .map(|zone| named(draft, zone.zone))
        .collect();
    if !late.is_empty() {
        let late = late.join(", ");
        return say!(
            "On a day as cold as this {late} is not warm again that day: in such weather leave the \
             thermostat where it is.",
            "En un día tan frío {late} no vuelve a calentarse ese día: con ese tiempo deje el termostato \
             donde está."
        );
    }
    let longest = run.zones.iter().filter_map(|zone| zone.recovered_h).fold(0.0, f64::max);
    let (longest_said, wanted) = (duration(longest), duration(setback.recover_h));
    match longest <= setback.recover_h {
        true => say!(
            "Warm again {longest_said} after turning up, within the {wanted} that are meant.",
            "Cálido otra vez {longest_said} después de subirlo, dentro de las {wanted} previstas."
        ),
        false => say!(
            "Warm again only {longest_said} after turning up, not within the {wanted} that are meant.",
            "Cálido otra vez apenas {longest_said} después de subirlo, no en las {wanted} previstas."
        ),
    }
}

fn named(draft: &Draft, zone: ZoneId) -> String {
    match draft.zones.len() {
        1 => either(("the house", "la casa")).to_string(),
        _ => zone_name(draft, zone),
    }
}

fn strength(run: &DayRun, setback: Setback, system: System) -> String {
    let within = duration(setback.recover_h);
    match (run.strength, run.boiler) {
        (Some(strength), boiler) if strength <= 1.0 => {
            let boiler = boiler.map(|boiler| value(boiler, system)).unwrap_or_default();
            say!(
                "The elements do it as they are, if the boiler gives {boiler} while they recover.",
                "Los elementos lo logran como están si la caldera da {boiler} mientras se recuperan."
            )
        }
        (Some(strength), Some(boiler)) => {
            let (times, boiler) = (in_units(&format!("{strength:.1}")), value(boiler, system));
            say!(
                "For {within} the elements would have to give {times} times what they do, and the boiler \
                 {boiler}.",
                "Para {within} los elementos tendrían que dar {times} veces lo que dan, y la caldera \
                 {boiler}."
            )
        }
        _ => say!(
            "No element recovers it in {within}, not even ten times as strong.",
            "Ningún elemento lo recupera en {within}, ni siquiera diez veces más fuerte."
        ),
    }
}

fn saved(run: &DayRun) -> String {
    let share = 1.0 - run.heat_j / run.steady_heat_j;
    let share = value(Value::new(Kind::Share, share), System::Us);
    say!("Heat of that day saved by it: {share}.", "Calor de ese día que se ahorra: {share}.")
}
