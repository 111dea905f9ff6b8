//! Floors over a vented crawl space.

use super::{Floor, Footprint, beneath};
use crate::named::names;
use crate::numeric::dual::Scalar;

/// How the wind reaches the vents: ISO 13370's wind shielding factor (table 8, as read in the
/// public implementations; what each stands for from memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shield {
    /// In a town's centre.
    Sheltered,
    /// In a suburb.
    Average,
    /// In open country.
    Exposed,
}

names!(Shield {
    Sheltered = "sheltered",
    Average = "average",
    Exposed = "exposed",
});

impl Shield {
    pub fn factor(self) -> f64 {
        match self {
            Shield::Sheltered => 0.02,
            Shield::Average => 0.05,
            Shield::Exposed => 0.10,
        }
    }
}

/// The space under a suspended floor, where it meets outdoor air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Underfloor<S = f64> {
    /// Of the floor above the ground outside (its upper side, from memory).
    pub height_m: f64,
    /// Of the walls of the space above ground.
    pub wall_u_w_m2k: S,
    /// Area of the vents per metre of perimeter.
    pub vent_m2_m: f64,
    /// The mean wind at 10 m above ground.
    pub wind_m_s: f64,
    pub shield: Shield,
}

/// From the space under a suspended floor into the ground, `U_g`. The floor's resistance is that
/// of insulation on the ground, if any.
///
/// There is no second formula for `d_g >= B`, as a slab has: over ground that is insulated well, a
/// narrow floor comes out with too small a `U_g`.
///
/// From memory, the standard lets this stand to half a metre below the
/// ground outside; deeper, use [`super::floor_u_w_m2k`] and [`super::wall_u_w_m2k`] for its sides.
pub fn suspended_ground_u_w_m2k<S: Scalar>(floor: &Floor<S>) -> S {
    let b = floor.footprint.characteristic_m();
    match b.is_finite() {
        true => beneath(floor.ground.conductivity_w_mk, b, floor.equivalent_m()),
        false => S::from(0.0),
    }
}

/// From the space under a suspended floor to outdoor air, through its walls and vents, per area of
/// floor: `U_x = 2 h U_w / B + 1450 eps v f_w / B`.
///
/// It follows outdoor air within hours: on the design day it sees the design temperature.
pub fn vented_u_w_m2k<S: Scalar>(footprint: &Footprint, under: &Underfloor<S>) -> S {
    let b = footprint.characteristic_m();
    let air = 1450.0 * under.vent_m2_m * under.wind_m_s * under.shield.factor();
    (under.wall_u_w_m2k * (2.0 * under.height_m) + air) / b
}

/// From the room through a suspended floor and the space under it:
/// `1 / U = 1 / U_f + 1 / (U_g + U_x)`, with `floor_u_w_m2k` that of the floor and both its films.
pub fn suspended_u_w_m2k<S: Scalar>(floor_u_w_m2k: S, ground_u_w_m2k: S, vented_u_w_m2k: S) -> S {
    let under = ground_u_w_m2k + vented_u_w_m2k;
    floor_u_w_m2k * under / (floor_u_w_m2k + under)
}
