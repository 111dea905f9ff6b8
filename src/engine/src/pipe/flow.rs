//! Water flowing in a tube: how fast, and what pressure it costs.

use super::friction::{Regime, friction};
use super::tube::Bore;
use crate::fluid::{Fluid, Stream};
use crate::quantity::{Density, Length, MassFlow, Pressure, Temperature, Velocity, VolumeFlow};
use serde::{Deserialize, Serialize};

/// The conventional standard value, in m/s² (CGPM 1901).
pub const STANDARD_GRAVITY: f64 = 9.80665;

/// The flow in one tube. Velocity and pressure drops carry the sign of the flow.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PipeFlow {
    #[serde(rename = "velocity_m_per_s")]
    pub velocity: Velocity,
    /// From zero up, whatever the direction.
    pub reynolds: f64,
    /// Darcy's.
    pub friction_factor: f64,
    pub regime: Regime,
    #[serde(rename = "density_kg_per_m3")]
    pub density: Density,
    #[serde(rename = "pressure_gradient_pa_per_m")]
    pressure_gradient: f64,
}

/// The flow of `stream` through a tube of this bore: Darcy and Weisbach, with properties at the
/// stream's temperature.
pub fn pipe_flow(bore: Bore, stream: Stream) -> PipeFlow {
    let density = stream.fluid.density(stream.temperature);
    let viscosity = stream.fluid.viscosity(stream.temperature);
    let velocity = stream.flow / density / bore.area();
    let diameter = bore.diameter.si();
    let reynolds = density.si() * velocity.si().abs() * diameter / viscosity.si();
    let friction = friction(reynolds, bore.relative_roughness());
    let dynamic = 0.5 * density.si() * velocity.si() * velocity.si().abs();
    PipeFlow {
        velocity,
        reynolds,
        friction_factor: friction.factor,
        regime: friction.regime,
        density,
        pressure_gradient: friction.factor * dynamic / diameter,
    }
}

impl PipeFlow {
    /// Pressure lost to friction over `length` of straight tube.
    pub fn pressure_drop(&self, length: Length) -> Pressure {
        Pressure::from_si(self.pressure_gradient * length.si())
    }

    /// `rho v²/2`, from zero up.
    pub fn dynamic_pressure(&self) -> Pressure {
        Pressure::from_si(0.5 * self.density.si() * self.velocity.si() * self.velocity.si())
    }

    /// Pressure lost in fittings whose loss coefficients sum to `k`: `k rho v²/2`.
    pub fn fitting_drop(&self, k: f64) -> Pressure {
        let dynamic = self.dynamic_pressure();
        if self.velocity < Velocity::ZERO { dynamic * -k } else { dynamic * k }
    }
}

/// The mass flow of a volume flow measured at `temperature`.
pub fn mass_flow(fluid: Fluid, flow: VolumeFlow, temperature: Temperature) -> MassFlow {
    flow * fluid.density(temperature)
}

/// The volume flow of a mass flow at `temperature`.
pub fn volume_flow(fluid: Fluid, flow: MassFlow, temperature: Temperature) -> VolumeFlow {
    flow / fluid.density(temperature)
}

/// The height of a column of liquid of this density that a pressure holds up.
pub fn head(pressure: Pressure, density: Density) -> Length {
    Length::from_si(pressure.si() / (density.si() * STANDARD_GRAVITY))
}

#[cfg(test)]
mod tests {
    use super::super::tube::Tube;
    use super::*;
    use crate::quantity::Unit;

    fn at_180_f(flow: f64) -> PipeFlow {
        let temperature = Temperature::of(180.0, Unit::Fahrenheit);
        let flow = VolumeFlow::of(flow, Unit::GallonPerMinute);
        let stream = Stream {
            fluid: Fluid::Water,
            flow: mass_flow(Fluid::Water, flow, temperature),
            temperature,
        };
        pipe_flow(Tube::CopperMThreeQuarter.bore(), stream)
    }

    /// 4 gpm in 3/4 in type M: area pi/4 (0.811 in)², so 4 × 231 in³/min / 0.51657 in² / 12 / 60.
    #[test]
    fn velocity_is_flow_over_area() {
        let velocity = at_180_f(4.0).velocity.to(Unit::FootPerSecond);
        assert!((velocity - 2.484322).abs() < 1e-5, "{velocity}");
    }

    #[test]
    fn still_water_costs_nothing() {
        let flow = at_180_f(0.0);
        assert_eq!(flow.regime, Regime::Still);
        assert_eq!(flow.pressure_drop(Length::from_si(10.0)), Pressure::ZERO);
        assert_eq!(flow.fitting_drop(3.0), Pressure::ZERO);
    }

    #[test]
    fn reversed_flow_reverses_every_drop() {
        let (forth, back) = (at_180_f(3.0), at_180_f(-3.0));
        let length = Length::from_si(7.0);
        assert_eq!(back.pressure_drop(length), -forth.pressure_drop(length));
        assert_eq!(back.fitting_drop(2.0), -forth.fitting_drop(2.0));
        assert_eq!(back.reynolds, forth.reynolds);
    }

    #[test]
    fn laminar_drop_is_that_of_hagen_and_poiseuille() {
        let bore = Tube::PexOne.bore();
        let temperature = Temperature::of(20.0, Unit::Celsius);
        let stream = Stream { fluid: Fluid::Water, flow: MassFlow::from_si(0.02), temperature };
        let flow = pipe_flow(bore, stream);
        assert_eq!(flow.regime, Regime::Laminar);
        let viscosity = Fluid::Water.viscosity(temperature).si();
        let expected = 32.0 * viscosity * flow.velocity.si() / (bore.diameter * bore.diameter).si();
        let found = flow.pressure_drop(Length::from_si(1.0)).si();
        assert!((found / expected - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_foot_of_cool_water_weighs_0_433_psi() {
        let density = Fluid::Water.density(Temperature::of(60.0, Unit::Fahrenheit));
        let head = head(Pressure::of(0.4331, Unit::Psi), density);
        assert!((head.to(Unit::Foot) - 1.0).abs() < 1e-3, "{head:?}");
    }
}
