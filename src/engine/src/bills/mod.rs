use crate::named::names;
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Fuel {
    #[default]
    NaturalGasTherm,
    HeatingOilGallon,
}
names!(Fuel { NaturalGasTherm = "natural-gas-therm", HeatingOilGallon = "heating-oil-gallon" });
