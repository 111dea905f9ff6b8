//! How much a straight run grows when it is heated, and the room to leave for it.

use crate::pipe::Material;
use crate::quantity::{Length, TemperatureDifference};
use serde::Serialize;

/// The growth of a run.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Movement {
    #[serde(rename = "whole_m")]
    pub whole: Length,
    /// The clearance at each end of a run that is held at its middle; one that is held at an end
    /// takes the whole at the other.
    #[serde(rename = "each_end_m")]
    pub each_end: Length,
}

/// `alpha L dT`, from the temperature at which the run was put up.
pub fn movement(material: Material, run: Length, rise: TemperatureDifference) -> Movement {
    let whole = run * (linear_expansion_per_k(material) * rise.si());
    Movement { whole, each_end: whole / 2.0 }
}

/// Share of the length a kelvin.
fn linear_expansion_per_k(material: Material) -> f64 {
    match material {
        // CDA Copper Tube Handbook: 9.4e-6 a °F from 70 to 212 °F, which is 1.128 in for 100 ft and
        // 100 °F.
        Material::CopperL | Material::CopperM => 16.92e-6,
        // 1.1 in for 100 ft and 10 °F: common practice, from memory.
        Material::Pex => 165.0e-6,
    }
}
