//! The liquid in the loop and its properties.
//!
//! Each property is a short polynomial in temperature, fitted for the least worst relative error to
//! IAPWS-95 (density, specific heat) and the IAPWS 2008 and 2011 releases (viscosity, conductivity)
//! at 200 kPa absolute, 5 to 105 °C every 2.5 K: `tests/reference/a1_water_properties.csv`. Pressure
//! within what a house has changes none of them by as much as the fit does.

use crate::numeric::{exp, polynomial};
use crate::quantity::{
    Conductivity, Density, MassFlow, SpecificHeat, Temperature, TemperatureDifference, Viscosity,
};
use serde::{Deserialize, Serialize};
use std::ops::RangeInclusive;

/// What fills the loop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fluid {
    #[default]
    Water,
}

/// Liquid on the move: what flows into a pipe or an element.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stream {
    pub fluid: Fluid,
    #[serde(rename = "flow_kg_per_s")]
    pub flow: MassFlow,
    #[serde(rename = "temperature_k")]
    pub temperature: Temperature,
}

impl Fluid {
    /// The temperatures that the fits cover. Outside them every property is that at the nearer end;
    /// whoever designs with such a temperature has to say so.
    pub fn range(self) -> RangeInclusive<Temperature> {
        match self {
            Fluid::Water => Temperature::from_si(278.15)..=Temperature::from_si(378.15),
        }
    }

    /// Worst error 0.0004 %.
    pub fn density(self, temperature: Temperature) -> Density {
        let x = self.scaled(temperature);
        Density::from_si(match self {
            Fluid::Water => {
                polynomial(&[985.7328, -24.20043, -7.698446, 1.301012, -0.6521779, 0.2628061], x)
            }
        })
    }

    /// At constant pressure. Worst error 0.0008 %.
    pub fn specific_heat(self, temperature: Temperature) -> SpecificHeat {
        let x = self.scaled(temperature);
        SpecificHeat::from_si(match self {
            Fluid::Water => polynomial(
                &[4182.718, 17.96035, 19.34582, -1.91681, 7.064115, -7.562762, 3.937022],
                x,
            ),
        })
    }

    /// Dynamic viscosity. Worst error 0.019 %.
    pub fn viscosity(self, temperature: Temperature) -> Viscosity {
        let x = self.scaled(temperature);
        Viscosity::from_si(match self {
            Fluid::Water => exp(polynomial(
                &[-7.593467, -0.796252, 0.2049372, -0.05803536, 0.02998427, -0.01373578],
                x,
            )),
        })
    }

    /// Thermal conductivity. Worst error 0.013 %.
    pub fn conductivity(self, temperature: Temperature) -> Conductivity {
        let x = self.scaled(temperature);
        Conductivity::from_si(match self {
            Fluid::Water => {
                polynomial(&[0.6460284, 0.05154313, -0.02046321, 0.003940744, -0.00214873], x)
            }
        })
    }

    /// The specific heat at the mean of `inlet` and the outlet that this same specific heat leads
    /// to by `outlet`.
    ///
    /// Taken at the supply temperature alone it puts the return of a series loop off by up to
    /// 0.07 K. Each round shrinks the error some hundredfold, since c_p changes little between
    /// the two ends.
    pub fn specific_heat_at_own_mean(
        self,
        inlet: Temperature,
        outlet: impl Fn(SpecificHeat) -> Temperature,
    ) -> SpecificHeat {
        let mut specific_heat = self.specific_heat(inlet);
        for _ in 0..30 {
            let drop = outlet(specific_heat) - inlet;
            let next = self.specific_heat(inlet + drop * 0.5);
            let change = (next - specific_heat).abs();
            specific_heat = next;
            if change.si() <= 1e-13 * next.si() {
                break;
            }
        }
        specific_heat
    }

    /// The temperature on a scale from -1 to 1 over the range, which keeps the coefficients of a
    /// like size.
    fn scaled(self, temperature: Temperature) -> f64 {
        let range = self.range();
        // NaN has to stay NaN: `max` and `min` would turn it into an end of the range.
        if temperature < *range.start() {
            return -1.0;
        }
        if temperature > *range.end() {
            return 1.0;
        }
        let half: TemperatureDifference = (*range.end() - *range.start()) * 0.5;
        (temperature - (*range.start() + half)) / half
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;

    #[test]
    fn outside_its_range_a_property_is_that_of_the_nearer_end() {
        let at = |celsius| Fluid::Water.viscosity(Temperature::of(celsius, Unit::Celsius));
        assert_eq!(at(-20.0), at(5.0));
        assert_eq!(at(140.0), at(105.0));
        assert!(at(5.0) > at(105.0));
    }

    #[test]
    fn not_a_number_stays_not_a_number() {
        assert!(Fluid::Water.density(Temperature::from_si(f64::NAN)).si().is_nan());
    }

    #[test]
    fn specific_heat_at_own_mean_is_that_of_the_mean() {
        let inlet = Temperature::of(90.0, Unit::Celsius);
        let flow = MassFlow::from_si(0.05);
        let heat = crate::quantity::Power::from_si(9000.0);
        let outlet = |specific_heat: SpecificHeat| inlet - heat / (flow * specific_heat);
        let found = Fluid::Water.specific_heat_at_own_mean(inlet, outlet);
        let mean = inlet + (outlet(found) - inlet) * 0.5;
        let expected = Fluid::Water.specific_heat(mean);
        assert!((found - expected).abs().si() < 1e-9, "{found:?} {expected:?}");
        assert!((found - Fluid::Water.specific_heat(inlet)).abs().si() > 1.0);
    }
}
