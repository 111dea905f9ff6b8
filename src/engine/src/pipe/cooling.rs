//! Heat lost from plain or insulated tube on its way between elements.

use super::tube::{Material, Tube};
use crate::fluid::Stream;
use crate::numeric::{exp_m1, ln};
use crate::quantity::{
    Conductivity, Length, LinearTransmittance, MassFlow, Power, SpecificHeat, Temperature,
    Transmittance,
};
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// Outside film of a warm tube in still indoor air, natural convection and radiation together:
/// judgement, no source. Bright new copper radiates less, a tube in a draught convects more.
pub const OUTSIDE_FILM: Transmittance = Transmittance::from_si(10.0);

/// A sleeve around the tube.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Insulation {
    #[serde(rename = "thickness_m")]
    pub thickness: Length,
    #[serde(rename = "conductivity_w_per_m_k")]
    pub conductivity: Conductivity,
}

/// What the water is after a run of tube.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Cooling {
    #[serde(rename = "outlet_k")]
    pub outlet: Temperature,
    /// Heat the water gave up; below zero where the surroundings are warmer.
    #[serde(rename = "heat_w")]
    pub heat: Power,
}

/// Heat a metre of tube loses for each kelvin between its water and the surroundings.
///
/// Cylindrical resistances in series: wall, sleeve, outside film on the outermost surface (ISO
/// 12241's form). The inside film is neglected: in moving water it is under one per cent of the
/// whole.
pub fn linear_transmittance(
    tube: Tube,
    insulation: Option<Insulation>,
    film: Transmittance,
) -> LinearTransmittance {
    let outside = tube.outside_diameter();
    let mut resistance = layer(tube.inside_diameter(), outside, wall_conductivity(tube.material()));
    let mut surface = outside;
    if let Some(Insulation { thickness, conductivity }) = insulation {
        surface = outside + thickness * 2.0;
        resistance += layer(outside, surface, conductivity);
    }
    resistance += 1.0 / (film.si() * PI * surface.si());
    LinearTransmittance::from_si(1.0 / resistance)
}

/// Thermal resistance of a cylindrical layer, in m K/W.
fn layer(inside: Length, outside: Length, conductivity: Conductivity) -> f64 {
    ln(outside / inside) / (2.0 * PI * conductivity.si())
}

/// Both from memory: phosphorus-deoxidised copper and crosslinked polyethylene.
fn wall_conductivity(material: Material) -> Conductivity {
    Conductivity::from_si(match material {
        Material::CopperL | Material::CopperM => 340.0,
        Material::Pex => 0.38,
    })
}

/// Cools `stream` along a run of tube, with the specific heat at the run's own mean temperature.
///
/// The excess over the surroundings falls exponentially: `m c dT/dx = -U' (T - T_s)`. No heat moves
/// when nothing flows or the run has no length.
pub fn cool(
    transmittance: LinearTransmittance,
    stream: Stream,
    surroundings: Temperature,
    length: Length,
) -> Cooling {
    let at = |specific_heat| {
        let Stream { flow, temperature, .. } = stream;
        cool_at_specific_heat(transmittance, specific_heat, flow, temperature, surroundings, length)
    };
    let specific_heat =
        stream.fluid.specific_heat_at_own_mean(stream.temperature, |c| at(c).outlet);
    at(specific_heat)
}

/// [`cool`] with a given specific heat.
pub fn cool_at_specific_heat(
    transmittance: LinearTransmittance,
    specific_heat: SpecificHeat,
    flow: MassFlow,
    inlet: Temperature,
    surroundings: Temperature,
    length: Length,
) -> Cooling {
    if flow <= MassFlow::ZERO || length <= Length::ZERO {
        return Cooling { outlet: inlet, heat: Power::ZERO };
    }
    let capacity = flow * specific_heat;
    let drop = (inlet - surroundings) * -exp_m1(-(transmittance * length / capacity));
    Cooling { outlet: inlet - drop, heat: capacity * drop }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluid::Fluid;
    use crate::quantity::Unit;

    const HALF_INCH_FOAM: Insulation = Insulation {
        thickness: Length::from_si(0.0127),
        conductivity: Conductivity::from_si(0.04),
    };

    #[test]
    fn bare_copper_is_all_film() {
        let tube = Tube::CopperMThreeQuarter;
        let found = linear_transmittance(tube, None, OUTSIDE_FILM).si();
        let film_alone = 10.0 * PI * tube.outside_diameter().si();
        assert!(found < film_alone && found > 0.9999 * film_alone, "{found} {film_alone}");
    }

    #[test]
    fn pex_resists_by_its_wall() {
        let found = linear_transmittance(Tube::PexThreeQuarter, None, OUTSIDE_FILM).si();
        // ln(0.875/0.671)/(2 pi 0.38) + 1/(10 pi 0.022225) = 0.11118 + 1.43222 m K/W
        assert!((found - 1.0 / 1.54340).abs() < 1e-5, "{found}");
    }

    #[test]
    fn a_sleeve_resists_and_widens_the_surface() {
        let tube = Tube::CopperMThreeQuarter;
        let found = linear_transmittance(tube, Some(HALF_INCH_FOAM), OUTSIDE_FILM).si();
        // ln(0.875/0.811)/(2 pi 340) + ln(47.625/22.225)/(2 pi 0.04) + 1/(10 pi 0.047625)
        // = 0.00004 + 3.03246 + 0.66837 m K/W
        assert!((found - 1.0 / 3.70087).abs() < 1e-5, "{found}");
    }

    fn run(inlet: f64, surroundings: f64, length: f64, flow: f64) -> Cooling {
        let stream = Stream {
            fluid: Fluid::Water,
            flow: MassFlow::from_si(flow),
            temperature: Temperature::of(inlet, Unit::Celsius),
        };
        let surroundings = Temperature::of(surroundings, Unit::Celsius);
        cool(LinearTransmittance::from_si(0.7), stream, surroundings, Length::from_si(length))
    }

    #[test]
    fn a_very_long_run_reaches_its_surroundings() {
        let outlet = run(80.0, 20.0, 1e6, 0.05).outlet.to(Unit::Celsius);
        assert!((outlet - 20.0).abs() < 1e-9, "{outlet}");
    }

    #[test]
    fn warmer_surroundings_give_heat() {
        let cooling = run(10.0, 30.0, 5.0, 0.05);
        assert!(cooling.heat < Power::ZERO);
        assert!(cooling.outlet > Temperature::of(10.0, Unit::Celsius));
    }

    #[test]
    fn no_flow_and_no_length_lose_nothing() {
        for cooling in [run(80.0, 20.0, 0.0, 0.05), run(80.0, 20.0, 5.0, 0.0)] {
            assert_eq!(cooling.heat, Power::ZERO);
            assert_eq!(cooling.outlet, Temperature::of(80.0, Unit::Celsius));
        }
    }
}
