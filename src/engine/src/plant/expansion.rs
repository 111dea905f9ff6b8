//! The diaphragm tank that takes up what the liquid grows by.
//!
//! `V_t = V_s ((v_2/v_1 - 1) - 3 alpha dT)/(1 - p_1/p_2)`, absolute pressures at the tank: ASHRAE
//! Handbook, HVAC Systems and Equipment, "Hydronic heating and cooling system design". All the liquid
//! counts as being at the supply temperature, and the gas in the tank as staying at its own.

use crate::fluid::Fluid;
use crate::named::names;
use crate::quantity::{Pressure, Temperature, Unit, Volume};
use serde::Serialize;

/// What most of the system is made of: it grows too, and holds more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Metal {
    #[default]
    Copper,
    /// Also for a system of plastic tube, which grows more than either metal: on the safe side.
    Steel,
}

names!(Metal {
    Copper = "copper",
    Steel = "steel",
});

impl Metal {
    /// Linear, a kelvin: 9.5e-6 and 6.5e-6 a °F in the ASHRAE chapter.
    pub(crate) fn expansion_per_k(self) -> f64 {
        match self {
            Metal::Copper => 17.1e-6,
            Metal::Steel => 11.7e-6,
        }
    }
}

/// What is heated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct System {
    pub fluid: Fluid,
    /// Of all that is filled, cold.
    pub volume: Volume,
    /// The liquid when filled. Not below 0 °C.
    pub cold: Temperature,
    /// The supply temperature at its highest. Not above what the fluid's properties cover.
    pub hot: Temperature,
    pub metal: Metal,
}

/// Pressures at the tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pressures {
    /// Gauge, cold; the tank is charged to the same before it is filled.
    pub fill: Pressure,
    /// Gauge, hot. See [`highest`].
    pub highest: Pressure,
    pub atmosphere: Pressure,
}

/// The tank that is needed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Tank {
    /// What it has to take up; a tank's own greatest acceptance must not be less.
    #[serde(rename = "acceptance_m3")]
    pub acceptance: Volume,
    /// The share of its volume that a tank can take up between the two pressures, `1 - p_1/p_2`.
    pub acceptance_factor: f64,
    /// The least that does.
    #[serde(rename = "volume_m3")]
    pub volume: Volume,
    /// The next larger of [`USUAL_GAL`]; none if they end before.
    #[serde(rename = "usual_m3", skip_serializing_if = "Option::is_none")]
    pub usual: Option<Volume>,
    /// Of the gas before filling, gauge.
    #[serde(rename = "pre_charge_pa")]
    pub pre_charge: Pressure,
}

/// Why there is no tank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum TankError {
    /// The system's volume is not above zero.
    Volume,
    /// The cold liquid is below 0 °C.
    Cold,
    /// The hot liquid is hotter than the fluid's properties cover.
    Hot,
    /// The hot liquid is not warmer than the cold.
    NotWarmer,
    /// The fill pressure is below that of the air, or the air's own is not above zero.
    Fill,
    /// The highest pressure is not above the fill pressure: no tank is large enough.
    NotAboveFill,
}

/// Sizes in which such tanks are sold, US gallons: common practice, no source.
pub const USUAL_GAL: [f64; 9] = [2.0, 4.4, 7.6, 14.0, 20.0, 32.0, 44.0, 62.0, 86.0];

/// The share of the relief valve's setting that the hot system may reach: common practice.
pub const RELIEF_SHARE: f64 = 0.9;

/// The least tank for a system.
pub fn tank(system: &System, pressures: &Pressures) -> Result<Tank, TankError> {
    let acceptance = growth(system)?;
    let Pressures { fill, highest, atmosphere } = *pressures;
    if !(fill >= Pressure::ZERO && atmosphere > Pressure::ZERO && atmosphere.is_finite()) {
        return Err(TankError::Fill);
    }
    if !(highest > fill && highest.is_finite()) {
        return Err(TankError::NotAboveFill);
    }
    let acceptance_factor = 1.0 - (fill + atmosphere) / (highest + atmosphere);
    let volume = acceptance / acceptance_factor;
    Ok(Tank { acceptance, acceptance_factor, volume, usual: next_usual(volume), pre_charge: fill })
}

/// What the tank has to take up: `V_s ((v_2/v_1 - 1) - 3 alpha dT)`, and not less than nothing, as
/// near 4 °C water grows less than the metal.
///
/// Water's density is that of 5 °C from there down to 0 °C: 0.01 % of the system.
pub fn growth(system: &System) -> Result<Volume, TankError> {
    let System { fluid, volume, cold, hot, metal } = *system;
    if !(volume > Volume::ZERO && volume.is_finite()) {
        return Err(TankError::Volume);
    }
    if cold < Fluid::Water.freezing_point() || !cold.is_finite() {
        return Err(TankError::Cold);
    }
    if hot > *fluid.range().end() || !hot.is_finite() {
        return Err(TankError::Hot);
    }
    if hot <= cold {
        return Err(TankError::NotWarmer);
    }
    let liquid = fluid.density(cold) / fluid.density(hot) - 1.0;
    let metal = 3.0 * metal.expansion_per_k() * (hot - cold).si();
    Ok((volume * (liquid - metal)).max(Volume::ZERO))
}

/// The highest pressure at the tank, gauge: [`RELIEF_SHARE`] of the relief valve's setting, and the
/// liquid that stands between, which weighs on the tank where the valve is above it
/// ([`static_pressure`](super::static_pressure), negative where it is below).
pub fn highest(relief: Pressure, above_tank: Pressure) -> Pressure {
    relief * RELIEF_SHARE + above_tank
}

/// The gauge pressure that a tank of this volume comes to when it has taken up `acceptance`; `None`
/// if it cannot hold that much.
pub fn hot_pressure(
    volume: Volume,
    acceptance: Volume,
    fill: Pressure,
    atmosphere: Pressure,
) -> Option<Pressure> {
    let gas = volume - acceptance;
    (gas > Volume::ZERO).then(|| (fill + atmosphere) * (volume / gas) - atmosphere)
}

fn next_usual(volume: Volume) -> Option<Volume> {
    let sizes = USUAL_GAL.iter().map(|&gallons| Volume::of(gallons, Unit::Gallon));
    sizes.into_iter().find(|&size| size >= volume)
}
