//! Units, with exact factors.

use crate::named::{Named, names, stored_by_name};
use serde::{Deserialize, Serialize};

/// Which family of units the page shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum System {
    Us,
    Si,
}

names!(System {
    Us = "us",
    Si = "si",
});

/// What a number measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Kind {
    Length,
    Area,
    Volume,
    Temperature,
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
    /// Heat given off by a square metre of floor.
    PowerDensity,
    /// Pressure expressed as the height of a column of the flowing water.
    Head,
    /// A short length that is measured in inches or millimetres.
    SmallLength,
    /// A flow of air, which is measured otherwise than a flow of water.
    AirFlow,
    /// A volume of liquid, which is measured otherwise than that of a room.
    LiquidVolume,
    /// The speed of wind.
    Wind,
    /// A small area, such as that of all gaps of a house together.
    SmallArea,
    /// A difference of temperature held for some days.
    DegreeDays,
    /// A stretch of time that is counted in hours.
    Time,
    /// What a thing costs, in whatever currency the user counts.
    Money,
    /// Money for each unit of length.
    LinearMoney,
    /// Money for each unit of area.
    AreaMoney,
    Number,
    Share,
    Count,
}

/// Declares the units: kind, symbol as written, other spellings a reader accepts (lower case),
/// and the exact factor to SI as a ratio of whole numbers, with an offset for temperatures.
macro_rules! units {
    ($($name:ident: $kind:ident, $symbol:literal, [$($alias:literal),*], $num:literal / $den:literal $(, offset $off:literal / $offden:literal)?;)+) => {
        /// A unit of measurement.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Unit { $($name),+ }

        impl Named for Unit {
            const ALL: &'static [Unit] = Unit::ALL;
            fn name(self) -> &'static str {
                match self { $(Unit::$name => stringify!($name)),+ }
            }
        }
        stored_by_name!(Unit);

        impl Unit {
            pub const ALL: &[Unit] = &[$(Unit::$name),+];

            pub const fn kind(self) -> Kind {
                match self { $(Unit::$name => Kind::$kind),+ }
            }

            /// As written behind a number; empty for pure numbers.
            pub const fn symbol(self) -> &'static str {
                match self { $(Unit::$name => $symbol),+ }
            }

            pub(super) const fn aliases(self) -> &'static [&'static str] {
                match self { $(Unit::$name => &[$($alias),*]),+ }
            }

            /// The exact factor to SI: numerator, denominator.
            pub(super) const fn factor(self) -> (i64, i64) {
                match self { $(Unit::$name => ($num, $den)),+ }
            }

            /// What is added before the factor applies, in this unit: numerator, denominator.
            pub(super) const fn offset(self) -> (i64, i64) {
                match self { $(Unit::$name => units!(@offset $($off / $offden)?)),+ }
            }
        }
    };
    (@offset) => { (0, 1) };
    (@offset $off:literal / $offden:literal) => { ($off, $offden) };
}

// Sources of the factors: the international foot, pound and US gallon and the International Table
// Btu of 1055.05585262 J, as in NIST Special Publication 811, appendix B. All are exact.
units! {
    Foot: Length, "ft", ["ft", "feet", "foot", "'", "pie", "pies"], 3048 / 10000;
    Inch: Length, "in", ["in", "inch", "inches", "\"", "''", "pulg", "pulgada", "pulgadas"], 254 / 10000;
    Metre: Length, "m", ["m", "metre", "meter", "metres", "meters", "metro", "metros"], 1 / 1;
    Centimetre: Length, "cm", ["cm"], 1 / 100;
    Millimetre: Length, "mm", ["mm"], 1 / 1000;

    InchSmall: SmallLength, "in", ["in", "inch", "inches", "\"", "''", "pulg", "pulgada", "pulgadas"], 254 / 10000;
    MillimetreSmall: SmallLength, "mm", ["mm"], 1 / 1000;
    CentimetreSmall: SmallLength, "cm", ["cm"], 1 / 100;

    SquareFoot: Area, "ft²", ["ft2", "ft²", "sq ft", "sqft", "sf", "pie²", "pie2"], 9290304 / 100000000;
    SquareMetre: Area, "m²", ["m2", "m²", "sq m", "sqm"], 1 / 1;

    CubicFoot: Volume, "ft³", ["ft3", "ft³", "cu ft", "pie³", "pie3"], 28316846592 / 1000000000000;
    CubicMetre: Volume, "m³", ["m3", "m³"], 1 / 1;
    Gallon: Volume, "gal", ["gal", "gallon", "gallons", "galón", "galones"], 3785411784 / 1000000000000;
    Litre: Volume, "L", ["l", "litre", "liter", "litres", "liters", "litro", "litros"], 1 / 1000;
    LiquidGallon: LiquidVolume, "gal", ["gal", "gallon", "gallons", "galón", "galones"], 3785411784 / 1000000000000;
    LiquidLitre: LiquidVolume, "L", ["l", "litre", "liter", "litres", "liters", "litro", "litros"], 1 / 1000;

    Fahrenheit: Temperature, "°F", ["f", "°f", "deg f", "degf"], 5 / 9, offset 45967 / 100;
    Celsius: Temperature, "°C", ["c", "°c", "deg c", "degc"], 1 / 1, offset 27315 / 100;
    FahrenheitDegree: TemperatureDifference, "°F", ["f", "°f", "deg f", "degf"], 5 / 9;
    Kelvin: TemperatureDifference, "K", ["k", "c", "°c"], 1 / 1;

    BtuPerHour: Power, "Btu/h", ["btu/h", "btu/hr", "btuh", "btu"], 105505585262 / 360000000000;
    Watt: Power, "W", ["w", "watt", "watts"], 1 / 1;
    Kilowatt: Power, "kW", ["kw"], 1000 / 1;

    BtuPerHourFoot: LinearPower, "Btu/h·ft", ["btu/h·ft", "btu/h ft", "btu/hr ft", "btu/h/ft", "btuh/ft", "btu/hr/ft", "btu/ft"], 105505585262 / 109728000000;
    WattPerMetre: LinearPower, "W/m", ["w/m"], 1 / 1;

    // Btu/h divided by a square foot: the foot squared is 0.09290304 m2.
    BtuPerHourSquareFoot: PowerDensity, "Btu/h·ft²", ["btu/h·ft²", "btu/h ft2"], 105505585262 / 33445094400;
    WattPerSquareMetre: PowerDensity, "W/m²", ["w/m²", "w/m2"], 1 / 1;

    // U in Btu/(h ft2 F): Btu/h per ft2 per 5/9 K.
    UsU: Transmittance, "Btu/h·ft²·°F", ["btu/h·ft²·°f", "btu/h ft2 f", "btu/hr ft2 f"], 949550267358 / 167225472000;
    SiU: Transmittance, "W/m²·K", ["w/m²·k", "w/m2k", "w/m²k", "w/m2 k"], 1 / 1;
    UsR: Resistance, "ft²·°F·h/Btu", ["ft²·°f·h/btu", "r", "ft2 f h/btu"], 167225472000 / 949550267358;
    SiR: Resistance, "m²·K/W", ["m²·k/w", "m2k/w", "m²k/w", "rsi", "m2 k/w"], 1 / 1;

    BtuPerHourFahrenheit: LossCoefficient, "Btu/h·°F", ["btu/h·°f"], 949550267358 / 1800000000000;
    WattPerKelvin: LossCoefficient, "W/K", ["w/k"], 1 / 1;

    BtuPerHourFootFahrenheit: LinearTransmittance, "Btu/h·ft·°F", ["btu/h·ft·°f", "btu/h ft f"], 949550267358 / 548640000000;
    WattPerMetreKelvin: LinearTransmittance, "W/m·K", ["w/m·k", "w/mk"], 1 / 1;
    UsConductivity: Conductivity, "Btu/h·ft·°F", ["btu/h·ft·°f"], 949550267358 / 548640000000;
    SiConductivity: Conductivity, "W/m·K", ["w/m·k", "w/mk"], 1 / 1;

    PoundPerHour: MassFlow, "lb/h", ["lb/h", "lb/hr"], 45359237 / 360000000000;
    KilogramPerSecond: MassFlow, "kg/s", ["kg/s"], 1 / 1;

    GallonPerMinute: VolumeFlow, "gpm", ["gpm", "gal/min"], 3785411784 / 60000000000000;
    CubicFootPerMinute: VolumeFlow, "cfm", ["cfm", "ft³/min", "ft3/min", "pie³/min"], 28316846592 / 60000000000000;
    LitrePerMinute: VolumeFlow, "L/min", ["l/min", "lpm"], 1 / 60000;
    LitrePerSecond: VolumeFlow, "L/s", ["l/s"], 1 / 1000;
    CubicMetrePerHour: VolumeFlow, "m³/h", ["m³/h", "m3/h"], 1 / 3600;

    FootPerSecond: Velocity, "ft/s", ["ft/s", "fps", "pie/s"], 3048 / 10000;
    MetrePerSecond: Velocity, "m/s", ["m/s"], 1 / 1;

    // The pound-force is 0.45359237 kg times 9.80665 m/s2; the square inch is 0.00064516 m2.
    Psi: Pressure, "psi", ["psi"], 44482216152605 / 6451600000;
    Pascal: Pressure, "Pa", ["pa"], 1 / 1;
    Kilopascal: Pressure, "kPa", ["kpa"], 1000 / 1;

    HeadFoot: Head, "ft", ["ft", "pie", "pies"], 3048 / 10000;
    HeadMetre: Head, "m", ["m"], 1 / 1;

    PoundPerCubicFoot: Density, "lb/ft³", ["lb/ft³"], 45359237000000 / 2831684659200;
    KilogramPerCubicMetre: Density, "kg/m³", ["kg/m³"], 1 / 1;

    BtuPerPoundFahrenheit: SpecificHeat, "Btu/lb·°F", ["btu/lb·°f"], 41868 / 10;
    JoulePerKilogramKelvin: SpecificHeat, "J/kg·K", ["j/kg·k"], 1 / 1;

    Centipoise: Viscosity, "cP", ["cp"], 1 / 1000;
    MillipascalSecond: Viscosity, "mPa·s", ["mpa·s"], 1 / 1000;

    AirCubicFootPerMinute: AirFlow, "cfm", ["cfm", "ft³/min", "ft3/min", "pie³/min"], 28316846592 / 60000000000000;
    AirLitrePerSecond: AirFlow, "L/s", ["l/s"], 1 / 1000;
    AirCubicMetrePerHour: AirFlow, "m³/h", ["m³/h", "m3/h"], 1 / 3600;
    MilePerHour: Wind, "mph", ["mph", "mi/h"], 1609344 / 3600000;
    WindMetrePerSecond: Wind, "m/s", ["m/s"], 1 / 1;
    KilometrePerHour: Wind, "km/h", ["km/h", "kmh"], 1000 / 3600;
    SquareInch: SmallArea, "in²", ["in²", "in2", "sq in", "pulg²", "pulg2"], 64516 / 100000000;
    SquareCentimetre: SmallArea, "cm²", ["cm²", "cm2"], 1 / 10000;
    FahrenheitDay: DegreeDays, "°F·day", ["°f·day", "f day", "f"], 5 / 9;
    KelvinDay: DegreeDays, "K·day", ["k·day", "k day", "k"], 1 / 1;

    Hour: Time, "h", ["h", "hr", "hrs", "hour", "hours"], 3600 / 1;

    // The user's own currency.
    Currency: Money, "", [], 1 / 1;
    CurrencyPerFoot: LinearMoney, "per ft", ["per ft", "/ft", "por pie"], 10000 / 3048;
    CurrencyPerMetre: LinearMoney, "per m", ["per m", "/m", "por m"], 1 / 1;
    CurrencyPerSquareFoot: AreaMoney, "per ft²", ["per ft²", "per ft2", "por pie²", "/ft2", "/ft²"], 100000000 / 9290304;
    CurrencyPerSquareMetre: AreaMoney, "per m²", ["per m²", "per m2", "por m²", "/m2", "/m²"], 1 / 1;

    PerHour: ChangeRate, "per hour", ["per hour", "/h", "1/h", "ach", "por hora"], 1 / 3600;

    One: Number, "", [], 1 / 1;
    Percent: Share, "%", ["%", "percent"], 1 / 100;
    Piece: Count, "", [], 1 / 1;
}

impl Unit {
    /// The factor to SI as a number.
    fn scale(self) -> f64 {
        let (num, den) = self.factor();
        num as f64 / den as f64
    }

    fn shift(self) -> f64 {
        let (num, den) = self.offset();
        num as f64 / den as f64
    }

    pub fn to_si(self, value: f64) -> f64 {
        (value + self.shift()) * self.scale()
    }

    pub fn from_si(self, si: f64) -> f64 {
        si / self.scale() - self.shift()
    }

    /// Every unit that measures `kind`, in the order of declaration.
    pub fn of_kind(kind: Kind) -> impl Iterator<Item = Unit> {
        Unit::ALL.iter().copied().filter(move |unit| unit.kind() == kind)
    }
}
