//! How much heat a house stores.

use crate::building::House;
use crate::named::names;
use crate::quantity::Area;

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

/// Of each node, J/K. Unheated spaces count as light, whatever the house is: judgement.
pub(super) fn capacities_j_k(house: &House, mass: Mass) -> Vec<f64> {
    let of = |floor: Area, mass: Mass| mass.per_floor_j_m2k() * floor.max(LEAST_FLOOR).si();
    let rooms = house.rooms.iter().map(|room| of(room.floor_area, mass));
    rooms.chain(house.spaces.iter().map(|space| of(space.floor_area, Mass::Light))).collect()
}
