//! How high to fill the system when cold, how far the relief valve then is, and whether the water
//! boils at the top.

use super::static_pressure;
use crate::fluid::{Fluid, boiling_point, vapour_pressure};
use crate::quantity::{Length, Pressure, Temperature, TemperatureDifference};
use serde::Serialize;

/// What should be left at the highest point, so that air goes out and none comes in: 4 to 5 psi,
/// common practice.
pub const LEAST_AT_TOP: Pressure = Pressure::from_si(27_579.03);
pub const USUAL_AT_TOP: Pressure = Pressure::from_si(34_473.79);

/// The usual setting in a house, 30 psi: practice under section IV of the ASME Boiler and Pressure
/// Vessel Code.
pub const USUAL_RELIEF: Pressure = Pressure::from_si(206_842.72);

/// The gauge pressure to fill to where the gauge stands `height` below the highest point: the
/// liquid's weight, and `at_top` besides. A gauge that is itself the highest point shows `at_top`.
pub fn fill_pressure(
    fluid: Fluid,
    cold: Temperature,
    height: Length,
    at_top: Pressure,
) -> Pressure {
    static_pressure(fluid, cold, height.max(Length::ZERO)) + at_top
}

/// How far a pressure is below the relief valve's setting.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Relief {
    #[serde(rename = "margin_pa")]
    pub margin: Pressure,
    pub verdict: ReliefVerdict,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum ReliefVerdict {
    Clear,
    /// Within a tenth of the setting, where valves begin to weep: common practice.
    Near,
    /// At the setting or above; also what is not a number.
    Lifts,
}

/// Both gauge pressures at the valve.
pub fn relief_margin(setting: Pressure, at_valve: Pressure) -> Relief {
    let margin = setting - at_valve;
    let tenth = setting * (1.0 - super::expansion::RELIEF_SHARE);
    // A tank sized for just that comes back to it but for the last digits.
    let verdict = if margin >= tenth * (1.0 - 1e-9) {
        ReliefVerdict::Clear
    } else if margin > Pressure::ZERO {
        ReliefVerdict::Near
    } else {
        ReliefVerdict::Lifts
    };
    Relief { margin, verdict }
}

/// The hot system at the place where it boils first: its highest point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Top {
    pub fluid: Fluid,
    pub supply: Temperature,
    /// Above the tank.
    pub height: Length,
    /// At the tank, gauge. The fill pressure, to be on the safe side: the tank's rises as the system
    /// warms up.
    pub at_tank: Pressure,
    /// What the pump takes away there: nothing when it pumps away from the tank, at most its head
    /// when it pumps towards it. The tank's own pressure stays.
    pub pump: Pressure,
    pub atmosphere: Pressure,
}

/// How far from boiling.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Boiling {
    /// The lowest pressure in the system, absolute.
    #[serde(rename = "lowest_pa")]
    pub lowest: Pressure,
    /// At which the supply water boils, absolute.
    #[serde(rename = "vapour_pa")]
    pub vapour: Pressure,
    /// At the lowest pressure.
    #[serde(rename = "boils_at_k")]
    pub boils_at: Temperature,
    #[serde(rename = "margin_k")]
    pub margin: TemperatureDifference,
    pub verdict: BoilingVerdict,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum BoilingVerdict {
    Clear,
    /// Within [`NEAR_BOILING`]: a control that overshoots brings it to boil.
    Near,
    /// Also what is not a number.
    Boils,
    /// Below the pressure of the air: an air vent lets air in.
    DrawsAir,
}

/// 10 °F, about what a boiler's limit control overshoots by: judgement.
pub const NEAR_BOILING: TemperatureDifference = TemperatureDifference::from_si(10.0 / 1.8);

/// Whether the water boils at the top. Glycol counts as water here: it boils a little later.
pub fn boiling(top: &Top) -> Boiling {
    let Top { fluid, supply, height, at_tank, pump, atmosphere } = *top;
    let gauge = at_tank - static_pressure(fluid, supply, height) - pump;
    let lowest = gauge + atmosphere;
    let boils_at = boiling_point(lowest);
    let margin = boils_at - supply;
    let verdict = if margin > TemperatureDifference::ZERO && gauge < Pressure::ZERO {
        BoilingVerdict::DrawsAir
    } else if margin >= NEAR_BOILING {
        BoilingVerdict::Clear
    } else if margin > TemperatureDifference::ZERO {
        BoilingVerdict::Near
    } else {
        BoilingVerdict::Boils
    };
    Boiling { lowest, vapour: vapour_pressure(supply), boils_at, margin, verdict }
}
