//! How the house is run through night and year: as typed, and as calculated with. No design depends on
//! it, so that it may be changed as one looks at what comes of it.

use super::entries::Entries;
use super::field::ControlField;
use crate::bills::Fuel;
use crate::building::{RoomId, ZoneId};
use crate::named::names;
use crate::quantity::{Money, TemperatureDifference};
use crate::stored::{stored, stored_choice};

/// A job's control with every value valid.
#[derive(Debug, Clone, PartialEq)]
pub struct Control {
    /// What holds the rooms of each zone.
    pub holds: Vec<(ZoneId, Holds)>,
    pub supply: SupplyBy,
    /// The share of its output that each room's damper leaves, in the order of the house's rooms.
    pub dampers: Vec<f64>,
    /// How heavy each of them is built.
    pub masses: Vec<Mass>,
    pub setback: Setback,
    pub fuel: Fuel,
    /// Heat in the water over heat in the fuel, the whole year's.
    pub efficiency: f64,
    /// Of a unit of the fuel, where it is typed.
    pub fuel_price: Option<Money>,
}

/// What holds the temperature of a zone's rooms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Holds {
    /// A thermostat in the first of its rooms that has an element.
    #[default]
    FirstRoom,
    /// A thermostat in this room of the zone; in the first where it is none of them.
    Thermostat(RoomId),
    /// A valve in each room that closes as it warms. Where a loop has no way around a room, that is a
    /// thermostat in the first.
    RoomValves,
}

stored_choice!(Holds {
    FirstRoom = "first-room",
    Thermostat(room: RoomId) = "thermostat",
    RoomValves = "room-valves",
});

/// What says how warm the boiler's water is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SupplyBy {
    /// The design's temperature, whatever the weather.
    #[default]
    Fixed,
    /// The reset line that is worked out for the system, between the design's temperature and the least
    /// that the boiler takes.
    Reset,
}

names!(SupplyBy {
    Fixed = "fixed",
    Reset = "reset",
});

/// How heavy a house is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Mass {
    /// Wood frame with gypsum board.
    #[default]
    Light,
    /// Wood frame with some masonry, a slab or a plaster on lath.
    Medium,
    /// Masonry or concrete inside the insulation.
    Heavy,
}

names!(Mass {
    Light = "light",
    Medium = "medium",
    Heavy = "heavy",
});

impl Mass {
    pub const ALL: [Mass; 3] = [Mass::Light, Mass::Medium, Mass::Heavy];
}

/// How heavy a room is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RoomMass {
    #[default]
    AsHouse,
    Own(Mass),
}

stored_choice!(RoomMass {
    AsHouse = "as-house",
    Own(mass: Mass) = "own",
});

impl RoomMass {
    pub const ALL: [RoomMass; 4] = [
        RoomMass::AsHouse,
        RoomMass::Own(Mass::Light),
        RoomMass::Own(Mass::Medium),
        RoomMass::Own(Mass::Heavy),
    ];
}

/// A thermostat turned down for some hours of the night.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setback {
    pub by: TemperatureDifference,
    pub hours: f64,
    /// In which the house should be warm again.
    pub recover_h: f64,
}

impl Setback {
    /// 8 °F for eight hours, and two to recover: common practice, no source.
    pub const USUAL: Setback =
        Setback { by: TemperatureDifference::from_si(8.0 / 1.8), hours: 8.0, recover_h: 2.0 };
}

/// As typed; what belongs to a zone or a room stands there.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ControlDraft {
    pub supply: SupplyBy,
    pub mass: Mass,
    pub entries: Entries<ControlField>,
}

stored!(ControlDraft { supply: default, mass: default, entries: default });
