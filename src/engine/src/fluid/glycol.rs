//! Propylene glycol in water, 0 to 50 % by mass: what it makes of water's properties, when it
//! freezes, and how much of it a loop takes.
//!
//! Fitted by `tests/reference/scripts/fit_glycol.py` to the data of Melinder (2010) as CoolProp 8.0.0
//! gives them, 10 to 50 % and 0 to 100 °C; `tests/reference/a2_propylene_glycol_properties.csv` holds
//! some of them. ASHRAE's data differ from these by up to 0.6 % in density and specific heat, 4 % in
//! conductivity and 8 % in viscosity, so a worst error below speaks of the fit and not of the glycol.
//! What a product adds against corrosion is in neither.

use super::Fluid;
use crate::numeric::{polynomial, root};
use crate::quantity::{Density, Temperature, TemperatureDifference, Unit, Volume};
use serde::{Deserialize, Serialize};

/// The largest share by mass that the fits cover.
pub const MOST: f64 = 0.5;

/// A row a power of the share, from the first on; in a row powers of water's `x`, from none on. A
/// share of nothing is so water to the last digit.
pub(super) type Effect = [&'static [f64]];

/// Worst error with water's part: 0.10 %.
pub(super) const DENSITY: &Effect =
    &[&[0.03393, -0.00663, 0.00846], &[-0.00548, -0.00665, -0.00106]];

/// Worst error with water's part: 0.21 %.
pub(super) const SPECIFIC_HEAT: &Effect =
    &[&[-0.04764, 0.08029, -0.05196], &[-0.06927, -0.0872, 0.07639], &[-0.00577, 0.04991, -0.0342]];

/// Worst error with water's part: 2.1 %.
pub(super) const LN_VISCOSITY: &Effect =
    &[&[1.34709, -0.39168, 0.19948, -0.09914], &[-0.03315, -0.15964, 0.09995, 0.01922]];

/// Worst error with water's part: 0.51 %.
pub(super) const CONDUCTIVITY: &Effect =
    &[&[-0.50519, 0.0042, 0.09644], &[0.08844, -0.01503, -0.07122]];

/// What a share of glycol adds to one (to the logarithm, for viscosity). Outside 0 to [`MOST`] it is
/// that at the nearer end.
pub(super) fn effect(rows: &Effect, share: f64, x: f64) -> f64 {
    let y = scaled(share);
    y * rows.iter().rev().fold(0.0, |sum, row| sum * y + polynomial(row, x))
}

/// From 0 to 1 over the shares covered. NaN stays NaN.
fn scaled(share: f64) -> f64 {
    share.clamp(0.0, MOST) / MOST
}

/// Kelvin by which a share of glycol lowers the freezing point, when the first crystals form. Worst
/// error 0.22 K, from 5 to 50 %.
pub(super) fn freezing_drop(share: f64) -> TemperatureDifference {
    TemperatureDifference::from_si(polynomial(&[0.0, 13.744, 3.388, 14.846], scaled(share)))
}

/// Of the pure liquid at 20 °C, from memory.
pub const PURE_DENSITY: Density = Density::from_si(1036.0);

/// What a loop is filled with, both liquids measured at 20 °C.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Charge {
    /// Of glycol in the mixture, by mass.
    pub share: f64,
    /// Pure: a product that is diluted already takes this over its own share by volume.
    #[serde(rename = "glycol_m3")]
    pub glycol: Volume,
    /// Together with the glycol up to 2.5 % more than the loop holds: mixing takes up less room.
    #[serde(rename = "water_m3")]
    pub water: Volume,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum ChargeError {
    /// The loop's volume is not above zero.
    Volume,
    /// Half of glycol freezes before it is as cold as that.
    TooCold,
}

/// The glycol for a loop of this volume that shall not begin to freeze above `freezing`.
///
/// Water alone does for freezing points of 0 °C and more.
pub fn charge(system: Volume, freezing: Temperature) -> Result<Charge, ChargeError> {
    if !(system > Volume::ZERO && system.is_finite()) {
        return Err(ChargeError::Volume);
    }
    let share = share_for(freezing).ok_or(ChargeError::TooCold)?;
    charge_of(system, share)
}

/// The same for a share by mass that is chosen.
pub fn charge_of(system: Volume, share: f64) -> Result<Charge, ChargeError> {
    if !(system > Volume::ZERO && system.is_finite()) {
        return Err(ChargeError::Volume);
    }
    let filling = Temperature::of(20.0, Unit::Celsius);
    let mixture = system * Fluid::PropyleneGlycol { share }.density(filling).si();
    let glycol = mixture * share / PURE_DENSITY.si();
    let water = mixture * (1.0 - share) / Fluid::Water.density(filling).si();
    Ok(Charge { share, glycol, water })
}

/// The least share that freezes no sooner than at `freezing`; `None` if that is beyond [`MOST`].
pub fn share_for(freezing: Temperature) -> Option<f64> {
    let needed = Fluid::Water.freezing_point() - freezing;
    if needed <= TemperatureDifference::ZERO {
        return Some(0.0);
    }
    root(|share| (freezing_drop(share) - needed).si(), 0.0, MOST, 1e-9)
}
