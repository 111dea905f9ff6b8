//! Outdoor air that leaks in and has to be warmed.

mod leakage;
mod ventilation;

pub use leakage::{
    Leakage, OpenFlue, Shelter, Storeys, USUAL_EXPONENT, infiltration, stack_coefficient_m2_s2k,
    wind_coefficient,
};
pub use ventilation::{Combined, Ventilation, combine, share};

use crate::named::names;
use crate::numeric::pow;
use crate::quantity::{
    ChangeRate, Density, Length, Power, Pressure, SpecificHeat, Temperature, Unit, VolumeFlow,
};

/// How tight the house is, in words a person can choose by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AirClass {
    /// New or carefully sealed: no draught felt in wind.
    Tight,
    /// Ordinary: fitted windows, some gaps.
    Average,
    /// Draughts felt near windows and skirtings in wind.
    Leaky,
    /// Curtains move, smoke or dust follows the wind.
    VeryLeaky,
}

names!(AirClass {
    Tight = "tight",
    Average = "average",
    Leaky = "leaky",
    VeryLeaky = "very-leaky",
});

impl AirClass {
    pub const ALL: [AirClass; 4] =
        [AirClass::Tight, AirClass::Average, AirClass::Leaky, AirClass::VeryLeaky];

    /// Air changes an hour on the design day: judgement, no source; always editable.
    pub fn air_changes(self) -> ChangeRate {
        ChangeRate::of(
            match self {
                AirClass::Tight => 0.25,
                AirClass::Average => 0.5,
                AirClass::Leaky => 0.9,
                AirClass::VeryLeaky => 1.5,
            },
            Unit::PerHour,
        )
    }
}

/// Specific heat of dry air at room temperature.
pub const SPECIFIC_HEAT: SpecificHeat = SpecificHeat::from_si(1006.0);

/// Gas constant of dry air, J/(kg K): 8.314462618 J/(mol K) over 28.9645 g/mol (U.S. Standard
/// Atmosphere 1976).
const GAS_CONSTANT: f64 = 287.055;

/// Pressure of the air at `altitude` (U.S. Standard Atmosphere 1976, troposphere).
pub fn atmosphere(altitude: Length) -> Pressure {
    Pressure::from_si(101_325.0 * pow(1.0 - 2.25577e-5 * altitude.si(), 5.25588))
}

/// Density of dry air at the room's own temperature under the standard atmosphere's pressure at
/// `altitude`.
///
/// Taking the indoor density makes the US rule of 1.08 Btu/h per cfm and °F come out at sea level;
/// the outdoor density would add 3 to 7 % to the load.
pub fn air_density(room: Temperature, altitude: Length) -> Density {
    Density::from_si(atmosphere(altitude).si() / (GAS_CONSTANT * room.si()))
}

/// Heat that warms `flow` of outdoor air to the room: `Q = rho c_p V (T_in - T_out)`.
pub fn ventilation_loss(
    flow: VolumeFlow,
    room: Temperature,
    outdoors: Temperature,
    altitude: Length,
) -> Power {
    flow * air_density(room, altitude) * SPECIFIC_HEAT * (room - outdoors)
}
