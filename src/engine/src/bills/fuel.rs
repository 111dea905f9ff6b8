//! What a bill counts, and the heat in it.

use crate::named::names;

/// A fuel by the unit that its bills count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Fuel {
    #[default]
    NaturalGasTherm,
    /// A hundred cubic feet.
    NaturalGasCcf,
    HeatingOilGallon,
    PropaneGallon,
    ElectricityKwh,
}

names!(Fuel {
    NaturalGasTherm = "natural-gas-therm",
    NaturalGasCcf = "natural-gas-ccf",
    HeatingOilGallon = "heating-oil-gallon",
    PropaneGallon = "propane-gallon",
    ElectricityKwh = "electricity-kwh",
});

/// The International Table Btu; exact, as in `quantity`.
const BTU_J: f64 = 1055.05585262;

impl Fuel {
    /// Heat of burning a unit, with the water in the flue gas condensed.
    ///
    /// US Energy Information Administration, Energy Explained, and its Monthly Energy Review as
    /// quoted elsewhere: 1037 Btu/ft³ of gas, 138,500 Btu of No. 2 oil and 91,452 Btu of propane a
    /// US gallon. Its averages for 2012 are 1025, 138,690 and 91,333.
    pub fn heat_content_j(self) -> f64 {
        match self {
            // By definition; the gas trade's own Btu is smaller by 2 parts in 10,000.
            Fuel::NaturalGasTherm => 100_000.0 * BTU_J,
            Fuel::NaturalGasCcf => 100.0 * 1037.0 * BTU_J,
            Fuel::HeatingOilGallon => 138_500.0 * BTU_J,
            Fuel::PropaneGallon => 91_452.0 * BTU_J,
            Fuel::ElectricityKwh => 3.6e6,
        }
    }
}
