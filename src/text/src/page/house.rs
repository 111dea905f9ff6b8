//! Sentences of the rooms, of what lies around them and of their heat loss.

use crate::value;
use finrun_engine::building::{Band, RoomUse, SlabCompared};
use finrun_engine::job::GroundMethod;
use finrun_engine::quantity::{Power, System};

pub fn bill_name(index: usize) -> String {
    format!("Bill {}", index + 1)
}

pub fn through_ground(surface: &str) -> String {
    format!("{surface}, through the ground")
}

pub fn coldest_month_adds(surface: &str) -> String {
    format!("{surface}, what the coldest month adds")
}

pub fn slab_edge_of(surface: &str) -> String {
    format!("{surface}, slab's edge by F-factor")
}

/// A range of heat, such as a 10 to 90 % band.
pub fn from_to(low: Power, high: Power, system: System) -> String {
    format!("{} to {}", value(low, system), value(high, system))
}

pub fn band(band: Band, system: System) -> String {
    format!("Eight times in ten between {}.", from_and(band, system))
}

fn from_and(band: Band, system: System) -> String {
    format!("{} and {}", value(band.low, system), value(band.high, system))
}

pub fn plan_picture(level: &str) -> String {
    format!("{level}: each room, shaded by the heat that a part of its floor loses")
}

/// What a slab loses, by either way.
pub fn slabs_compared(slabs: SlabCompared, method: GroundMethod, system: System) -> String {
    let (used, other) = (value(slabs.used, system), value(slabs.other, system));
    match method {
        GroundMethod::Iso => {
            format!("Slabs on the ground: {used} by ISO 13370; F-factors would say {other}.")
        }
        GroundMethod::FFactor => {
            format!("Slabs on the ground: {used} by F-factor; ISO 13370 would say {other}.")
        }
    }
}

pub fn add_space(used: RoomUse) -> String {
    format!("Add: {}", crate::room_use(used).to_ascii_lowercase())
}

pub fn space_at(temperature: &str) -> String {
    format!("{temperature} on the design day")
}

pub fn layer_name(row: usize) -> String {
    format!("Layer {}", row + 1)
}

pub fn own_assemblies(count: usize) -> String {
    match count {
        0 => "Walls and roofs of your own, layer by layer".to_string(),
        1 => "1 of your own".to_string(),
        count => format!("{count} of your own"),
    }
}

pub fn rooms_done(done: usize, all: usize) -> String {
    match (done, all) {
        (_, 0) => "none yet".to_string(),
        (done, all) if done == all => format!("{done} done"),
        (done, all) => format!("{done} of {all}"),
    }
}

pub fn free_for_baseboard(length: &str) -> String {
    format!("free for baseboard {length}")
}

pub fn wall_picture(name: &str) -> String {
    format!("{name}, as you stand before it")
}
