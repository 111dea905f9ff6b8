//! Air that leaks through the gaps of a house, driven by its warmth and by the wind.
//!
//! The basic model of M. Sherman and D. Grimsrud (LBL-10163, 1980) with the coefficients of the
//! ASHRAE Handbook of Fundamentals (2001 chapter 26, 2005 chapter 27), read as a manual of the
//! U.S. Department of Energy quotes them.

use super::air_density;
use crate::named::names;
use crate::numeric::pow;
use crate::quantity::{
    Area, Length, Pressure, Temperature, TemperatureDifference, Velocity, VolumeFlow,
};

/// Outdoor air that leaks in: `Q = A_L sqrt(C_s |dT| + C_w v^2)`.
///
/// `wind` is that of a weather station, at 10 m in the open; the coefficients hold what the
/// surroundings take from it.
pub fn infiltration(
    leakage: Leakage,
    storeys: Storeys,
    shelter: Shelter,
    difference: TemperatureDifference,
    wind: Velocity,
) -> VolumeFlow {
    let stack = stack_coefficient_m2_s2k(storeys) * difference.si().abs();
    let blown = wind_coefficient(storeys, shelter) * wind.si() * wind.si();
    leakage.area() * Velocity::from_si((stack + blown).sqrt())
}

/// Effective leakage area: the one opening, without contraction or friction, that would let as
/// much air through as all gaps together under 4 Pa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leakage(Area);

/// The pressures of a blower door test and of the definition of the area.
const TEST: Pressure = Pressure::from_si(50.0);
const EFFECTIVE: Pressure = Pressure::from_si(4.0);

/// How the flow through a house's gaps goes with pressure, where a test did not measure it
/// (common practice; 0.65 in the handbook, from memory).
pub const USUAL_EXPONENT: f64 = 0.65;

/// Leakage area as a share of the floor: NOAA, technical documentation of ALOHA, section 4.6, as
/// quoted in a public source file.
const SHARE_OF_FLOOR: f64 = 0.00059;

impl Leakage {
    /// An area that is known.
    pub const fn of(area: Area) -> Leakage {
        Leakage(area)
    }

    pub const fn area(self) -> Area {
        self.0
    }

    /// From the flow that a blower door measures at 50 Pa: `Q_4 = Q_50 (4/50)^n`, and by Bernoulli
    /// `A_L = Q_4 sqrt(rho / (2 x 4 Pa))`.
    ///
    /// `rho` is that of air at 20 °C and sea level, to which testers reduce their readings (ASTM
    /// E779, from memory).
    pub fn from_blower_door(flow_at_50_pa: VolumeFlow, exponent: f64) -> Leakage {
        let density = air_density(Temperature::from_si(293.15), Length::ZERO);
        let flow = flow_at_50_pa * pow(EFFECTIVE / TEST, exponent);
        Leakage(flow / Velocity::from_si((2.0 * EFFECTIVE.si() / density.si()).sqrt()))
    }

    /// Where nothing is known but the size of the house.
    pub fn default_area(floor_area: Area) -> Leakage {
        Leakage(floor_area * SHARE_OF_FLOOR)
    }

    /// With an opening to a chimney besides. A test is made with chimneys shut, so one that stands
    /// open in winter comes on top of it.
    pub fn with(self, flue: OpenFlue) -> Leakage {
        Leakage(self.0 + flue.area())
    }
}

/// What leads from the rooms to a chimney.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OpenFlue {
    None,
    FireplaceDamperClosed,
    FireplaceOpen,
    /// A boiler or water heater with a draft hood, within the heated space.
    Flue,
}

names!(OpenFlue {
    None = "none",
    FireplaceDamperClosed = "fireplace-damper-closed",
    FireplaceOpen = "fireplace-open",
    Flue = "flue",
});

impl OpenFlue {
    /// Leakage area at 4 Pa. Per square metre of the fireplace's opening 69 cm2 with the damper
    /// closed and 350 cm2 with it open, 30 cm2 for an appliance's flue: the handbook's table of
    /// components, from memory. The opening of 0.6 m2 is judgement.
    pub fn area(self) -> Area {
        Area::from_si(match self {
            OpenFlue::None => 0.0,
            OpenFlue::FireplaceDamperClosed => 0.6 * 0.0069,
            OpenFlue::FireplaceOpen => 0.6 * 0.0350,
            OpenFlue::Flue => 0.0030,
        })
    }
}

/// Heated storeys above ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Storeys {
    One,
    Two,
    Three,
}

names!(Storeys {
    One = "one",
    Two = "two",
    Three = "three",
});

/// What stands between the house and the wind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shelter {
    /// Class 1: nothing.
    Open,
    /// Class 2: a house alone in the country.
    Light,
    /// Class 3: houses across the street.
    Moderate,
    /// Class 4: a town house on a large lot.
    Heavy,
    /// Class 5: buildings right beside it.
    VeryHeavy,
}

names!(Shelter {
    Open = "open",
    Light = "light",
    Moderate = "moderate",
    Heavy = "heavy",
    VeryHeavy = "very-heavy",
});

/// The tables are in (L/s)2/cm4 a kelvin or a (m/s)2: 1000 L in a m3, 10 000 cm2 in a m2.
const TABLE_TO_SI: f64 = 100.0;

/// `C_s` in m2/(s2 K).
///
/// The model gives it too: `((1 + R/2)/3)^2 (1 - X^2/(2 - R)^2)^3 g H/T` with half of the leakage in
/// floor and ceiling alike (R 0.5, X 0), 2.5 m a storey and 293 K comes within 0.2 % of the table.
pub fn stack_coefficient_m2_s2k(storeys: Storeys) -> f64 {
    TABLE_TO_SI
        * match storeys {
            Storeys::One => 0.000145,
            Storeys::Two => 0.000290,
            Storeys::Three => 0.000435,
        }
}

/// `C_w`, a pure number.
///
/// The model, `(C (1 - R)^(1/3) A (H/10)^B)^2` with terrain A 0.85 and B 0.20 and shielding C 0.324,
/// 0.285, 0.240, 0.185, 0.102 (from memory), gives evenly 8 % less flow under wind alone. The table
/// is what is used.
pub fn wind_coefficient(storeys: Storeys, shelter: Shelter) -> f64 {
    let [one, two, three] = match shelter {
        Shelter::Open => [0.000319, 0.000420, 0.000494],
        Shelter::Light => [0.000246, 0.000325, 0.000382],
        Shelter::Moderate => [0.000174, 0.000231, 0.000271],
        Shelter::Heavy => [0.000104, 0.000137, 0.000161],
        Shelter::VeryHeavy => [0.000032, 0.000042, 0.000049],
    };
    TABLE_TO_SI
        * match storeys {
            Storeys::One => one,
            Storeys::Two => two,
            Storeys::Three => three,
        }
}
