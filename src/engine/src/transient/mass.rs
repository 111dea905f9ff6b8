//! How much heat a house stores.

use crate::building::House;
use crate::job::Mass;
use crate::quantity::Area;

impl Mass {
    /// Heat stored a kelvin and square metre of floor: ISO 13790:2008 table 12, classes light, medium
    /// and heavy (from memory); which construction belongs to which class is judgement.
    pub fn per_floor_j_m2k(self) -> f64 {
        match self {
            Mass::Light => 110e3,
            Mass::Medium => 165e3,
            Mass::Heavy => 260e3,
        }
    }
}

/// Without a floor a node stores at least the heat of so much: judgement; a square metre of light floor.
const LEAST_FLOOR: Area = Area::from_si(1.0);

/// Of each node, J/K, for how heavy each room is built. Unheated spaces count as light: judgement.
pub(super) fn capacities_j_k(house: &House, masses: &[Mass]) -> Vec<f64> {
    let of = |floor: Area, mass: Mass| mass.per_floor_j_m2k() * floor.max(LEAST_FLOOR).si();
    let mass = |room: usize| masses.get(room).copied().unwrap_or_default();
    let rooms = house.rooms.iter().enumerate().map(|(at, room)| of(room.floor_area, mass(at)));
    rooms.chain(house.spaces.iter().map(|space| of(space.floor_area, Mass::Light))).collect()
}
