//! Writes a quantity for people: a number of sensible precision, and its unit.
//!
//! Rounding happens here and nowhere else; a shown number is never calculated with.

use super::Value;
use super::unit::{Kind, System, Unit};

/// A number as text, and the unit that stands behind it (empty for pure numbers and feet-inches).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    pub number: String,
    pub unit: &'static str,
}

impl Shown {
    /// Number and unit with a space between, no space before a percent sign's absence of unit.
    pub fn text(&self) -> String {
        if self.unit.is_empty() {
            self.number.clone()
        } else {
            format!("{} {}", self.number, self.unit)
        }
    }
}

/// The unit in which a system shows a kind.
pub const fn display_unit(kind: Kind, system: System) -> Unit {
    use Unit::*;
    let (us, si) = match kind {
        Kind::Length => (Foot, Metre),
        Kind::SmallLength => (InchSmall, MillimetreSmall),
        Kind::Area => (SquareFoot, SquareMetre),
        Kind::Volume => (CubicFoot, CubicMetre),
        Kind::Temperature => (Fahrenheit, Celsius),
        Kind::TemperatureDifference => (FahrenheitDegree, Kelvin),
        Kind::Power => (BtuPerHour, Watt),
        Kind::LinearPower => (BtuPerHourFoot, WattPerMetre),
        Kind::Transmittance => (UsU, SiU),
        Kind::Resistance => (UsR, SiR),
        Kind::LossCoefficient => (BtuPerHourFahrenheit, WattPerKelvin),
        Kind::LinearTransmittance => (BtuPerHourFootFahrenheit, WattPerMetreKelvin),
        Kind::Conductivity => (UsConductivity, SiConductivity),
        Kind::MassFlow => (PoundPerHour, KilogramPerSecond),
        Kind::VolumeFlow => (GallonPerMinute, LitrePerMinute),
        Kind::Velocity => (FootPerSecond, MetrePerSecond),
        Kind::Pressure => (Psi, Kilopascal),
        Kind::Head => (HeadFoot, HeadMetre),
        Kind::Density => (PoundPerCubicFoot, KilogramPerCubicMetre),
        Kind::SpecificHeat => (BtuPerPoundFahrenheit, JoulePerKilogramKelvin),
        Kind::Viscosity => (Centipoise, MillipascalSecond),
        Kind::ChangeRate => (PerHour, PerHour),
        Kind::PowerDensity => (BtuPerHourSquareFoot, WattPerSquareMetre),
        Kind::LiquidVolume => (LiquidGallon, LiquidLitre),
        Kind::AirFlow => (AirCubicFootPerMinute, AirLitrePerSecond),
        Kind::Wind => (MilePerHour, WindMetrePerSecond),
        Kind::SmallArea => (SquareInch, SquareCentimetre),
        Kind::DegreeDays => (FahrenheitDay, KelvinDay),
        Kind::Time => (Hour, Hour),
        Kind::Money => (Currency, Currency),
        Kind::LinearMoney => (CurrencyPerFoot, CurrencyPerMetre),
        Kind::AreaMoney => (CurrencyPerSquareFoot, CurrencyPerSquareMetre),
        Kind::Number => (One, One),
        Kind::Share => (Percent, Percent),
        Kind::Count => (Piece, Piece),
    };
    match system {
        System::Us => us,
        System::Si => si,
    }
}

/// How many decimals a kind is shown with, in `unit`.
pub const fn decimals(unit: Unit) -> usize {
    use Unit::*;
    match unit {
        Fahrenheit
        | FahrenheitDegree
        | Watt
        | BtuPerHour
        | BtuPerHourFoot
        | WattPerMetre
        | JoulePerKilogramKelvin
        | PoundPerHour
        | Percent
        | Piece
        | Millimetre
        | MillimetreSmall
        | SquareFoot
        | CubicFoot
        | BtuPerHourSquareFoot
        | WattPerSquareMetre
        | CubicFootPerMinute
        | Pascal
        | AirCubicFootPerMinute
        | AirCubicMetrePerHour
        | MilePerHour
        | KilometrePerHour
        | SquareInch
        | SquareCentimetre
        | FahrenheitDay
        | KelvinDay
        | BtuPerHourFahrenheit => 0,
        Celsius
        | Kelvin
        | Hour
        | SquareMetre
        | Gallon
        | Litre
        | LiquidGallon
        | LiquidLitre
        | GallonPerMinute
        | LitrePerMinute
        | FootPerSecond
        | HeadFoot
        | Psi
        | Kilopascal
        | UsR
        | WattPerKelvin
        | Centimetre
        | CentimetreSmall
        | AirLitrePerSecond
        | WindMetrePerSecond
        | KilogramPerCubicMetre
        | CubicMetre => 1,
        Metre | MetrePerSecond | HeadMetre | SiR | PerHour | LitrePerSecond | Inch | InchSmall
        | Foot | SiU | CubicMetrePerHour | PoundPerCubicFoot | Kilowatt => 2,
        UsU
        | WattPerMetreKelvin
        | BtuPerHourFootFahrenheit
        | UsConductivity
        | SiConductivity
        | BtuPerPoundFahrenheit
        | Centipoise
        | MillipascalSecond
        | One => 3,
        Currency
        | CurrencyPerFoot
        | CurrencyPerMetre
        | CurrencyPerSquareFoot
        | CurrencyPerSquareMetre => 2,
        KilogramPerSecond => 4,
    }
}

/// Shows `value` in the units of `system`. Lengths in the US system are feet and inches.
pub fn show(value: Value, system: System) -> Shown {
    if value.kind == Kind::Length && system == System::Us && value.si.is_finite() {
        return Shown { number: FeetInches::nearest(value.si, 2).to_string(), unit: "" };
    }
    show_in(value, display_unit(value.kind, system))
}

/// Shows `value` in `unit`, which must measure its kind.
pub fn show_in(value: Value, unit: Unit) -> Shown {
    let number = unit.from_si(value.si);
    Shown { number: rounded(number, decimals(unit)), unit: unit.symbol() }
}

/// Shows `value` in `unit` with five significant digits, as a working needs to be followed.
pub fn show_precise(value: Value, unit: Unit) -> Shown {
    let number = unit.from_si(value.si);
    let size = number.abs();
    let whole = match size > 0.0 && size.is_finite() {
        true => (libm::log10(size).floor() as i32 + 1).clamp(-8, 5),
        false => 5,
    };
    let text = rounded(number, (5 - whole) as usize);
    let number = match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_string(),
        false => text,
    };
    Shown { number, unit: unit.symbol() }
}

/// Rounded half away from zero, with thousands marks from 10 000 on, and a true minus sign.
fn rounded(number: f64, decimals: usize) -> String {
    if !number.is_finite() {
        return "–".to_string();
    }
    let text = format!("{:.decimals$}", number.abs());
    let zero = text.bytes().all(|b| matches!(b, b'0' | b'.'));
    let text = group_thousands(&text);
    if number < 0.0 && !zero { format!("−{text}") } else { text }
}

/// Sets commas between thousands when the whole part has five digits or more.
pub fn group_thousands(text: &str) -> String {
    let (whole, fraction) = match text.split_once('.') {
        Some((whole, fraction)) => (whole, Some(fraction)),
        None => (text, None),
    };
    let mut out = String::new();
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i).is_multiple_of(3) && whole.len() > 4 {
            out.push(',');
        }
        out.push(digit);
    }
    if let Some(fraction) = fraction {
        out.push('.');
        out.push_str(fraction);
    }
    out
}

/// A length as a tape measure reads it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeetInches {
    pub negative: bool,
    pub feet: u64,
    pub inches: u64,
    /// The fraction of an inch: numerator and denominator, in lowest terms; `(0, 1)` for none.
    pub fraction: (u64, u64),
}

impl FeetInches {
    /// The nearest mark on a tape divided into `parts` of an inch.
    pub fn nearest(metres: f64, parts: u64) -> FeetInches {
        let parts = parts.max(1);
        let marks = (metres.abs() / 0.0254 * parts as f64).round() as u64;
        let (inches, rest) = (marks / parts, marks % parts);
        let mut fraction = (rest, parts);
        while fraction.0 != 0 && fraction.0.is_multiple_of(2) && fraction.1.is_multiple_of(2) {
            fraction = (fraction.0 / 2, fraction.1 / 2);
        }
        if rest == 0 {
            fraction = (0, 1);
        }
        FeetInches {
            negative: metres < 0.0 && marks > 0,
            feet: inches / 12,
            inches: inches % 12,
            fraction,
        }
    }
}

impl std::fmt::Display for FeetInches {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.negative {
            f.write_str("−")?;
        }
        let fraction = match self.fraction {
            (0, _) => None,
            (top, bottom) => Some(format!("{top}/{bottom}")),
        };
        match (self.feet, self.inches, fraction) {
            (0, 0, None) => f.write_str("0 ft"),
            (0, 0, Some(part)) => write!(f, "{part} in"),
            (0, inches, None) => write!(f, "{inches} in"),
            (0, inches, Some(part)) => write!(f, "{inches} {part} in"),
            (feet, 0, None) => write!(f, "{feet} ft"),
            (feet, inches, None) => write!(f, "{feet} ft {inches} in"),
            (feet, 0, Some(part)) => write!(f, "{feet} ft {part} in"),
            (feet, inches, Some(part)) => write!(f, "{feet} ft {inches} {part} in"),
        }
    }
}
