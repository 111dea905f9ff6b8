//! Physical quantities: a private SI number each, and only the operators that mean something.
//!
//! A `Temperature` is a point on a scale, a `TemperatureDifference` a distance between two points;
//! points subtract to a distance and never add. Values enter through [`Unit`]s or as SI numbers
//! and leave the same way, so that a raw number outside this module always carries its unit.

mod read;
mod show;
mod unit;

pub use read::{ReadError, Reading, read};
pub use show::{
    FeetInches, Shown, decimals, display_unit, group_thousands, show, show_in, show_precise,
};
pub use unit::{Kind, System, Unit};

use serde::{Deserialize, Serialize};
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

/// Declares quantities: the name, its SI unit (for the reader), and its [`Kind`].
macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident in $si:literal),+ $(,)?) => {$(
        $(#[$doc])*
        #[doc = concat!("\n\nHeld in ", $si, ".")]
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(f64);

        impl $name {
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("From a number in ", $si, ".")]
            pub const fn from_si(value: f64) -> Self { Self(value) }

            #[doc = concat!("The number in ", $si, ".")]
            pub const fn si(self) -> f64 { self.0 }

            /// From a number in `unit`, which must be a unit of this quantity.
            pub fn of(value: f64, unit: Unit) -> Self {
                debug_assert_eq!(unit.kind(), Kind::$name, "{unit:?} does not measure this");
                Self(unit.to_si(value))
            }

            /// The number in `unit`, which must be a unit of this quantity.
            pub fn to(self, unit: Unit) -> f64 {
                debug_assert_eq!(unit.kind(), Kind::$name, "{unit:?} does not measure this");
                unit.from_si(self.0)
            }

            pub fn max(self, other: Self) -> Self { Self(self.0.max(other.0)) }
            pub fn min(self, other: Self) -> Self { Self(self.0.min(other.0)) }
            pub fn is_finite(self) -> bool { self.0.is_finite() }
        }

        impl From<$name> for Value {
            fn from(quantity: $name) -> Value { Value { kind: Kind::$name, si: quantity.0 } }
        }
    )+};
}

/// Adds what a linear quantity can do: sums, scaling, ratios.
macro_rules! linear {
    ($($name:ident),+ $(,)?) => {$(
        impl $name {
            pub fn abs(self) -> Self { Self(self.0.abs()) }
        }
        impl Add for $name { type Output = Self; fn add(self, o: Self) -> Self { Self(self.0 + o.0) } }
        impl Sub for $name { type Output = Self; fn sub(self, o: Self) -> Self { Self(self.0 - o.0) } }
        impl Neg for $name { type Output = Self; fn neg(self) -> Self { Self(-self.0) } }
        impl AddAssign for $name { fn add_assign(&mut self, o: Self) { self.0 += o.0; } }
        impl Mul<f64> for $name { type Output = Self; fn mul(self, o: f64) -> Self { Self(self.0 * o) } }
        impl Mul<$name> for f64 { type Output = $name; fn mul(self, o: $name) -> $name { $name(self * o.0) } }
        impl Div<f64> for $name { type Output = Self; fn div(self, o: f64) -> Self { Self(self.0 / o) } }
        impl Div for $name { type Output = f64; fn div(self, o: Self) -> f64 { self.0 / o.0 } }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self { Self(values.map(|v| v.0).sum()) }
        }
    )+};
}

/// Declares `A * B = C` with its mirror image and both divisions.
macro_rules! products {
    ($($a:ident * $b:ident = $c:ident),+ $(,)?) => {$(
        impl Mul<$b> for $a { type Output = $c; fn mul(self, o: $b) -> $c { $c(self.0 * o.0) } }
        impl Mul<$a> for $b { type Output = $c; fn mul(self, o: $a) -> $c { $c(self.0 * o.0) } }
        impl Div<$a> for $c { type Output = $b; fn div(self, o: $a) -> $b { $b(self.0 / o.0) } }
        impl Div<$b> for $c { type Output = $a; fn div(self, o: $b) -> $a { $a(self.0 / o.0) } }
    )+};
}

quantities! {
    Length in "m",
    Area in "m2",
    Volume in "m3",
    /// A point on the thermodynamic scale.
    Temperature in "K",
    TemperatureDifference in "K",
    Power in "W",
    /// Heat given by, or lost from, a metre of tube.
    LinearPower in "W/m",
    /// Heat through a square metre a kelvin: a U-value.
    Transmittance in "W/(m2 K)",
    /// An R-value.
    Resistance in "m2 K/W",
    /// Heat lost a kelvin, of an assembly or a whole room.
    LossCoefficient in "W/K",
    /// Heat lost a kelvin from a metre of pipe.
    LinearTransmittance in "W/(m K)",
    Conductivity in "W/(m K)",
    MassFlow in "kg/s",
    VolumeFlow in "m3/s",
    Velocity in "m/s",
    Pressure in "Pa",
    Density in "kg/m3",
    SpecificHeat in "J/(kg K)",
    /// Dynamic viscosity.
    Viscosity in "Pa s",
    /// Air changes, as a rate.
    ChangeRate in "1/s",
    /// What a thing costs, in whatever currency the user counts.
    Money in "the user's currency",
    LinearMoney in "currency/m",
    AreaMoney in "currency/m2",
}

linear!(
    Length,
    Area,
    Volume,
    TemperatureDifference,
    Power,
    LinearPower,
    Transmittance,
    Resistance,
    LossCoefficient,
    LinearTransmittance,
    Conductivity,
    MassFlow,
    VolumeFlow,
    Velocity,
    Pressure,
    Density,
    SpecificHeat,
    Viscosity,
    ChangeRate,
    Money,
    LinearMoney,
    AreaMoney,
);

products!(
    Area * Length = Volume,
    LinearPower * Length = Power,
    Transmittance * Area = LossCoefficient,
    LossCoefficient * TemperatureDifference = Power,
    LinearTransmittance * TemperatureDifference = LinearPower,
    LinearTransmittance * Length = LossCoefficient,
    Conductivity * Resistance = Length,
    VolumeFlow * Density = MassFlow,
    MassFlow * SpecificHeat = LossCoefficient,
    Velocity * Area = VolumeFlow,
    ChangeRate * Volume = VolumeFlow,
    LinearMoney * Length = Money,
    AreaMoney * Area = Money,
);

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Length) -> Area {
        Area(self.0 * other.0)
    }
}

impl Div<Length> for Area {
    type Output = Length;
    fn div(self, other: Length) -> Length {
        Length(self.0 / other.0)
    }
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Temperature) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}

impl Add<TemperatureDifference> for Temperature {
    type Output = Temperature;
    fn add(self, difference: TemperatureDifference) -> Temperature {
        Temperature(self.0 + difference.0)
    }
}

impl Sub<TemperatureDifference> for Temperature {
    type Output = Temperature;
    fn sub(self, difference: TemperatureDifference) -> Temperature {
        Temperature(self.0 - difference.0)
    }
}

impl Resistance {
    /// `U = 1 / R`.
    pub fn transmittance(self) -> Transmittance {
        Transmittance(1.0 / self.0)
    }
}

impl Transmittance {
    /// `R = 1 / U`.
    pub fn resistance(self) -> Resistance {
        Resistance(1.0 / self.0)
    }
}

/// A quantity whose kind is known only at run time: what checks, workings and forms carry.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Value {
    pub kind: Kind,
    /// The number in the kind's SI unit.
    pub si: f64,
}

impl Value {
    pub const fn new(kind: Kind, si: f64) -> Value {
        Value { kind, si }
    }

    /// A pure number: a coefficient, an exponent, a ratio.
    pub const fn number(value: f64) -> Value {
        Value { kind: Kind::Number, si: value }
    }

    /// A share of one, shown as a percentage.
    pub const fn share(value: f64) -> Value {
        Value { kind: Kind::Share, si: value }
    }

    /// A volume of liquid.
    pub const fn liquid(volume: Volume) -> Value {
        Value { kind: Kind::LiquidVolume, si: volume.0 }
    }

    /// A number of things.
    pub fn count(value: usize) -> Value {
        Value { kind: Kind::Count, si: value as f64 }
    }
}
