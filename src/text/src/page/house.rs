//! Sentences of the rooms, of what lies around them and of their heat loss.

use crate::language::{either, say};
use crate::value;
use finrun_engine::building::{Band, RoomUse, SlabCompared};
use finrun_engine::job::GroundMethod;
use finrun_engine::quantity::{Power, System};

pub fn bill_name(index: usize) -> String {
    say!("Bill {}", "Factura {}"; index + 1)
}

pub fn through_ground(surface: &str) -> String {
    say!("{surface}, through the ground", "{surface}, por el suelo")
}

pub fn coldest_month_adds(surface: &str) -> String {
    say!("{surface}, what the coldest month adds", "{surface}, lo que agrega el mes más frío")
}

pub fn slab_edge_of(surface: &str) -> String {
    say!("{surface}, slab's edge by F-factor", "{surface}, borde de la losa por factor F")
}

/// A range of heat, such as a 10 to 90 % band.
pub fn from_to(low: Power, high: Power, system: System) -> String {
    say!("{} to {}", "{} a {}"; value(low, system), value(high, system))
}

pub fn band(band: Band, system: System) -> String {
    say!(
        "Eight times in ten between {}.",
        "Ocho de cada diez veces entre {}.";
        from_and(band, system)
    )
}

fn from_and(band: Band, system: System) -> String {
    say!("{} and {}", "{} y {}"; value(band.low, system), value(band.high, system))
}

pub fn plan_picture(level: &str) -> String {
    say!(
        "{level}: each room, shaded by the heat that a part of its floor loses",
        "{level}: cada habitación, sombreada según el calor que pierde cada parte de su piso"
    )
}

/// What a slab loses, by either way.
pub fn slabs_compared(slabs: SlabCompared, method: GroundMethod, system: System) -> String {
    let (used, other) = (value(slabs.used, system), value(slabs.other, system));
    match method {
        GroundMethod::Iso => {
            say!(
                "Slabs on the ground: {used} by ISO 13370; F-factors would say {other}.",
                "Losas sobre el suelo: {used} por ISO 13370; los factores F dirían {other}."
            )
        }
        GroundMethod::FFactor => {
            say!(
                "Slabs on the ground: {used} by F-factor; ISO 13370 would say {other}.",
                "Losas sobre el suelo: {used} por factor F; ISO 13370 diría {other}."
            )
        }
    }
}

pub fn add_space(used: RoomUse) -> String {
    // Of the capitals that names of spaces begin with, only one has an accent.
    let space = crate::room_use(used).to_ascii_lowercase().replace('Á', "á");
    say!("Add: {space}", "Agregar: {space}")
}

pub fn space_at(temperature: &str) -> String {
    say!("{temperature} on the design day", "{temperature} en el día de diseño")
}

pub fn layer_name(row: usize) -> String {
    say!("Layer {}", "Capa {}"; row + 1)
}

pub fn own_assemblies(count: usize) -> String {
    match count {
        0 => either((
            "Walls and roofs of your own, layer by layer",
            "Paredes y techos propios, capa por capa",
        ))
        .to_string(),
        1 => either(("1 of your own", "1 propia")).to_string(),
        count => say!("{count} of your own", "{count} propias"),
    }
}

pub fn rooms_done(done: usize, all: usize) -> String {
    match (done, all) {
        (_, 0) => either(("none yet", "ninguna todavía")).to_string(),
        (done, all) if done == all => say!("{done} done", "listas: {done}"),
        (done, all) => say!("{done} of {all}", "{done} de {all}"),
    }
}

pub fn free_for_baseboard(length: &str) -> String {
    say!("free for baseboard {length}", "libre para zócalo {length}")
}

pub fn wall_picture(name: &str) -> String {
    say!("{name}, as you stand before it", "{name}, vista de frente")
}
