//! The plant that the loop hangs on: boiler and its control, expansion tank, filling, transformer.
//!
//! But for [`design`] all are functions of numbers alone. Each checks what it is given and says what
//! is wrong with it; a number that is not finite counts as wrong, or comes out as not a number.

pub mod boiler;
pub mod contents;
pub mod design;
pub mod electric;
pub mod expansion;
pub mod fill;
pub mod movement;
pub mod reset;
pub mod return_protection;

pub use crate::building::air::atmosphere;

use crate::fluid::Fluid;
use crate::pipe::STANDARD_GRAVITY;
use crate::quantity::{Length, Pressure, Temperature};

/// What a column of the liquid at rest weighs on the place `height` below its top.
pub fn static_pressure(fluid: Fluid, temperature: Temperature, height: Length) -> Pressure {
    Pressure::from_si(fluid.density(temperature).si() * STANDARD_GRAVITY * height.si())
}
