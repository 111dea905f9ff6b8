//! Sentences around the stations: jobs, files, what was saved.

use super::{storage_full, units_si, units_us};
use crate::language::say;
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

pub fn bad_file(reason: &str) -> String {
    format!("This file is no Finrun job, or it is damaged ({reason}). Nothing was changed.")
}

pub fn units_name(system: System) -> &'static str {
    match system {
        System::Us => units_us(),
        System::Si => units_si(),
    }
}

pub fn missing_count(count: usize) -> String {
    match count {
        1 => "1 thing missing".to_string(),
        count => format!("{count} things missing"),
    }
}

/// Spoken after a recalculation.
pub fn spoken_result(load: &str, length: &str, checks: &str) -> String {
    format!("House {load}, {length} of element, {checks}.")
}

/// The window's title, the nearest thing first.
/// How long a link is.
pub fn link_letters(letters: usize) -> String {
    format!("{letters} letters")
}

/// What a job holds, before it is kept.
pub fn offered_facts(draft: &Draft) -> String {
    let counted = |count: usize, one: &str, more: &str| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {more}"),
    };
    let mut facts = vec![counted(draft.rooms.len(), "room", "rooms")];
    if !draft.spaces.is_empty() {
        facts.push(counted(draft.spaces.len(), "unheated space", "unheated spaces"));
    }
    facts.push(counted(draft.zones.len(), "zone", "zones"));
    facts.join(", ")
}

pub fn title(parts: &[&str]) -> String {
    parts.join(" – ")
}
