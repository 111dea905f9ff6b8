//! Fans and leakage together, and what of the house's air each room has to warm.

use crate::quantity::{Area, Volume, VolumeFlow};

/// Fans that run on the design day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ventilation {
    pub supply: VolumeFlow,
    pub exhaust: VolumeFlow,
    /// The share of the heat that a recovery unit hands from the exhaust to the supply.
    pub recovery: f64,
}

/// The outdoor air of a house.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Combined {
    /// Comes in cold: through gaps, or by a fan that has no counterpart.
    pub leaked: VolumeFlow,
    /// Comes in by a fan while as much goes out by another.
    pub balanced: VolumeFlow,
    /// The share of the heat of `balanced` that is won back.
    pub recovery: f64,
}

impl Combined {
    /// The flow of outdoor air that takes as much heat without recovery: `V = V_l + (1 - eff) V_b`.
    pub fn to_warm(self) -> VolumeFlow {
        self.leaked + self.balanced * (1.0 - self.recovery)
    }
}

/// Balanced air adds to what leaks in; a fan alone changes the pressure in the house, so that it
/// takes the place of leaks in part: `V_l = sqrt(V_unbalanced^2 + V_infiltration^2)` (ASHRAE Handbook
/// of Fundamentals and standard 62.2, from memory).
///
/// Only balanced air is credited with recovery: what has no counterpart meets no warm air.
pub fn combine(infiltration: VolumeFlow, ventilation: Ventilation) -> Combined {
    let Ventilation { supply, exhaust, recovery } = ventilation;
    let (unbalanced, leaks) = ((supply - exhaust).si(), infiltration.si());
    Combined {
        leaked: VolumeFlow::from_si((unbalanced * unbalanced + leaks * leaks).sqrt()),
        balanced: supply.min(exhaust),
        recovery,
    }
}

/// The house's flow among its rooms, one of each list a room: by the gross area that faces
/// outdoors or an unheated space, since that is where the gaps are.
///
/// By volume when no room has any such area, and evenly when no volume is known either: the heat of
/// the house's air must stay somewhere.
pub fn share(house: VolumeFlow, exposed: &[Area], volumes: &[Volume]) -> Vec<VolumeFlow> {
    let area: Area = exposed.iter().copied().sum();
    if area > Area::ZERO {
        return exposed.iter().map(|part| house * (*part / area)).collect();
    }
    let volume: Volume = volumes.iter().copied().sum();
    if volume > Volume::ZERO {
        return volumes.iter().map(|part| house * (*part / volume)).collect();
    }
    volumes.iter().map(|_| house / volumes.len() as f64).collect()
}
