//! Sentences around the stations: jobs, files, what was saved.

use super::{storage_full, units_si, units_us};
use crate::language::{either, say};
use finrun_engine::job::Draft;
use finrun_engine::quantity::System;

pub fn back_to(station: &str) -> String {
    say!("Back to {station}", "Volver a {station}")
}

pub fn deleted(name: &str) -> String {
    say!("Deleted {name}.", "Se borró {name}.")
}

pub fn brought_back(name: &str) -> String {
    say!("{name} is back.", "{name} está de vuelta.")
}

pub fn copy_name(name: &str) -> String {
    say!("{name}, copy", "{name}, copia")
}

/// Beside a button that acts on one of many: "Remove Kitchen".
pub fn act_on(act: &str, name: &str) -> String {
    format!("{act} {name}")
}

pub fn cannot_save(reason: &str) -> String {
    match reason.is_empty() {
        true => storage_full().to_string(),
        false => format!("{} ({reason})", storage_full()),
    }
}

pub fn file_not_kept(reason: &str) -> String {
    say!(
        "The file was not kept ({reason}). Choose another place, or press Download.",
        "El archivo no se guardó ({reason}). Elija otro lugar o pulse Descargar."
    )
}

pub fn bad_file(reason: &str) -> String {
    say!(
        "This file is no Finrun job, or it is damaged ({reason}). Nothing was changed.",
        "Este archivo no es un proyecto de Finrun, o está dañado ({reason}). No cambió nada."
    )
}

pub fn units_name(system: System) -> &'static str {
    match system {
        System::Us => units_us(),
        System::Si => units_si(),
    }
}

pub fn missing_count(count: usize) -> String {
    match count {
        1 => either(("1 thing missing", "falta 1 dato")).to_string(),
        count => say!("{count} things missing", "faltan {count} datos"),
    }
}

/// Spoken after a recalculation.
pub fn spoken_result(load: &str, length: &str, checks: &str) -> String {
    say!(
        "House {load}, {length} of element, {checks}.",
        "Casa {load}, {length} de elemento, {checks}."
    )
}

/// The window's title, the nearest thing first.
/// How long a link is.
pub fn link_letters(letters: usize) -> String {
    say!("{letters} letters", "{letters} letras")
}

/// What a job holds, before it is kept.
pub fn offered_facts(draft: &Draft) -> String {
    let rooms = match draft.rooms.len() {
        1 => either(("1 room", "1 habitación")).to_string(),
        count => say!("{count} rooms", "{count} habitaciones"),
    };
    let zones = match draft.zones.len() {
        1 => either(("1 zone", "1 zona")).to_string(),
        count => say!("{count} zones", "{count} zonas"),
    };
    let mut facts = vec![rooms];
    match draft.spaces.len() {
        0 => {}
        1 => facts.push(either(("1 unheated space", "1 espacio sin calefacción")).to_string()),
        count => facts.push(say!("{count} unheated spaces", "{count} espacios sin calefacción")),
    }
    facts.push(zones);
    facts.join(", ")
}

pub fn title(parts: &[&str]) -> String {
    parts.join(" – ")
}
