//! Reads what a person typed into a quantity, or says exactly what cannot be read.
//!
//! The decimal digits are kept as whole numbers until one last division, so that the same length
//! typed in feet and in metres gives the same bits.

use super::unit::{Kind, Unit};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// What was read: the value in SI, and the unit that the person used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    pub si: f64,
    pub unit: Unit,
}

/// Why a text is no quantity.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum ReadError {
    /// Nothing but spaces.
    Empty,
    /// More than [`LONGEST`] characters.
    TooLong,
    /// A part that is neither number nor unit.
    NotANumber { part: String },
    /// `1,200` may be twelve hundred or one point two.
    AmbiguousComma { part: String, thousands: String, decimal: String },
    /// A unit that does not exist, or measures something else.
    UnknownUnit { part: String },
    /// `7 6`: two numbers without the marks that tell feet from inches.
    UnitsMissing,
    /// Inches before feet, or two feet.
    OutOfOrder,
    /// `1/0`.
    ZeroDenominator,
}

/// More characters than any honest number has.
pub(super) const LONGEST: usize = 40;

/// Reads `text`; a bare number is in `default`.
///
/// Accepts a decimal point or comma, fractions (`1/2`, `½`, `6 1/2`), feet and inches with straight
/// or curly marks, a leading sign, any unit of the same kind behind the number, and `R-13`.
///
/// ```
/// use finrun_engine::quantity::{read, Unit};
/// let length = read("7' 6 1/2\"", Unit::Foot).expect("feet and inches");
/// assert_eq!(length.si, 2.2987);
/// assert!(read("seven", Unit::Foot).is_err());
/// ```
pub fn read(text: &str, default: Unit) -> Result<Reading, ReadError> {
    if text.len() > LONGEST && text.chars().count() > LONGEST {
        return Err(ReadError::TooLong);
    }
    let normal = normalise(text);
    // Labels print R-13: the letter is the US unit, the hyphen no minus.
    let (text, default) = match (default.kind(), normal.strip_prefix('r')) {
        (Kind::Resistance, Some(value)) => (value.trim_start_matches(['-', ' ']), Unit::UsR),
        _ => (&*normal, default),
    };
    if text.is_empty() {
        return Err(ReadError::Empty);
    }
    let (negative, rest) = match text.strip_prefix('-') {
        Some(rest) => (true, rest.trim_ascii_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text).trim_ascii_start()),
    };
    if rest.is_empty() {
        return Err(ReadError::NotANumber { part: clip(text) });
    }
    let parts = split_parts(rest, default)?;
    let mut total = join_parts(&parts)?;
    if negative {
        total.num = -total.num;
    }
    let unit = parts[0].unit;
    let shifted = match unit.offset() {
        (0, _) => total,
        offset => total.plus(Ratio::of(offset))?,
    };
    Ok(Reading { si: shifted.times(Ratio::of(unit.factor()))?.to_f64(), unit })
}

/// Curly marks, typographic fractions, odd spaces and minus signs as a keyboard has them.
fn normalise(text: &str) -> Cow<'_, str> {
    let text = text.trim();
    let normal = |b: u8| matches!(b, b' '..=b'~') && !matches!(b, b'`' | b'A'..=b'Z');
    if text.bytes().all(normal) {
        return Cow::Borrowed(text);
    }
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '’' | '‘' | '′' | '`' | '´' => out.push('\''),
            '”' | '“' | '″' => out.push('"'),
            '−' | '–' | '—' => out.push('-'),
            '½' => out.push_str(" 1/2"),
            '¼' => out.push_str(" 1/4"),
            '¾' => out.push_str(" 3/4"),
            '⅓' => out.push_str(" 1/3"),
            '⅔' => out.push_str(" 2/3"),
            '⅛' => out.push_str(" 1/8"),
            '⅜' => out.push_str(" 3/8"),
            '⅝' => out.push_str(" 5/8"),
            '⅞' => out.push_str(" 7/8"),
            '⁄' => out.push('/'),
            c if c.is_whitespace() => out.push(' '),
            c => out.push(c.to_ascii_lowercase()),
        }
    }
    out.trim().to_string().into()
}

/// A number with its unit: `7'`, or `6 1/2"`.
struct Part {
    value: Ratio,
    unit: Unit,
}

fn split_parts(text: &str, default: Unit) -> Result<Vec<Part>, ReadError> {
    let kind = default.kind();
    let mut parts: Vec<Part> = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (value, after) = take_number(rest)?;
        let after = after.trim_ascii_start();
        let end = after.bytes().position(|b| b.is_ascii_digit()).filter(|_| measures_length(kind));
        let (name, next) = after.split_at(end.unwrap_or(after.len()));
        // Builders write 7'-6": the hyphen belongs to neither.
        let name = if next.is_empty() { name } else { name.trim_ascii_end().trim_end_matches('-') };
        let name = name.trim_ascii();
        let unit = match (name, parts.last().map(|p| p.unit)) {
            // Feet given, then a bare number: inches.
            ("", Some(Unit::Foot)) => Unit::Inch,
            ("", Some(_)) => return Err(ReadError::UnitsMissing),
            ("", None) if !next.is_empty() => return Err(ReadError::UnitsMissing),
            ("", None) => default,
            (name, _) => {
                find_unit(name, kind).ok_or_else(|| ReadError::UnknownUnit { part: clip(name) })?
            }
        };
        parts.push(Part { value, unit });
        rest = next.trim_ascii_start();
    }
    Ok(parts)
}

fn measures_length(kind: Kind) -> bool {
    matches!(kind, Kind::Length | Kind::SmallLength)
}

fn find_unit(name: &str, kind: Kind) -> Option<Unit> {
    Unit::of_kind(kind).find(|unit| unit.aliases().contains(&name))
}

/// One part stands alone; two must be feet, then inches. The sum is in the first part's unit.
fn join_parts(parts: &[Part]) -> Result<Ratio, ReadError> {
    match parts {
        [only] => Ok(only.value),
        [Part { value: feet, unit: Unit::Foot }, Part { value: inches, unit: Unit::Inch }] => {
            feet.plus(inches.times(Ratio { num: 1, den: 12 })?)
        }
        _ => Err(ReadError::OutOfOrder),
    }
}

/// Takes `12`, `12.5`, `12,5`, `1/2` or `6 1/2` from the front.
fn take_number(text: &str) -> Result<(Ratio, &str), ReadError> {
    let (first, rest) = take_digits(text)?;
    if let Some(denominator) = rest.strip_prefix('/') {
        return fraction(first, denominator);
    }
    // `6 1/2`: a whole number, a space (or builders' hyphen), a fraction.
    let spaced = rest.trim_start_matches([' ', '-']);
    let is_fraction = spaced.len() < rest.len()
        && spaced.split_once('/').is_some_and(|(top, bottom)| {
            !top.is_empty()
                && top.bytes().all(|b| b.is_ascii_digit())
                && bottom.starts_with(|c: char| c.is_ascii_digit())
        });
    if is_fraction && first.den == 1 {
        let (top, after) = take_digits(spaced)?;
        let (part, rest) = fraction(top, after.trim_start_matches('/'))?;
        return Ok((first.plus(part)?, rest));
    }
    Ok((first, rest))
}

fn fraction(top: Ratio, text: &str) -> Result<(Ratio, &str), ReadError> {
    let (bottom, rest) = take_digits(text)?;
    if bottom.num == 0 {
        return Err(ReadError::ZeroDenominator);
    }
    Ok((Ratio { num: top.num * bottom.den, den: top.den * bottom.num }, rest))
}

/// Takes digits with at most one decimal mark and sensible thousands marks.
fn take_digits(text: &str) -> Result<(Ratio, &str), ReadError> {
    let of_number = |b: u8| b.is_ascii_digit() || b == b'.' || b == b',';
    let end = text.bytes().position(|b| !of_number(b)).unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    let not_a_number = || ReadError::NotANumber { part: clip(text) };
    if !digits.bytes().any(|b| b.is_ascii_digit()) {
        return Err(not_a_number());
    }
    let plain = plain_decimal(digits).ok_or_else(not_a_number)??;
    let (whole, fraction) = plain.split_once('.').unwrap_or((&plain, ""));
    // Seventeen significant digits are more than a double holds.
    if whole.len() + fraction.len() > 17 {
        return Err(ReadError::TooLong);
    }
    let digit = |sum: i64, b: u8| sum * 10 + i64::from(b - b'0');
    let num = whole.bytes().chain(fraction.bytes()).fold(0, digit);
    let den = fraction.bytes().fold(1, |power: i64, _| power * 10);
    Ok((Ratio { num: num.into(), den: den.into() }, rest))
}

/// Resolves points and commas into one decimal point. `None` when the marks make no sense.
fn plain_decimal(digits: &str) -> Option<Result<Cow<'_, str>, ReadError>> {
    let count = |mark: u8| digits.bytes().filter(|b| *b == mark).count();
    let (commas, points) = (count(b','), count(b'.'));
    let grouped = |text: &str, mark: char| {
        let mut groups = text.split(mark);
        let first = groups.next().unwrap_or("");
        (1..=3).contains(&first.len()) && groups.all(|g| g.len() == 3)
    };
    match (commas, points) {
        (0, 0 | 1) => Some(Ok(digits.into())),
        (1, 0) => {
            let (whole, fraction) = digits.split_once(',')?;
            let doubtful = fraction.len() == 3 && (1..=3).contains(&whole.len()) && whole != "0";
            Some(if doubtful {
                Err(ReadError::AmbiguousComma {
                    part: digits.to_string(),
                    thousands: format!("{whole}{fraction}"),
                    decimal: format!("{whole}.{}", fraction.trim_end_matches('0')),
                })
            } else {
                Ok(format!("{whole}.{fraction}").into())
            })
        }
        (_, 0) if grouped(digits, ',') => Some(Ok(digits.replace(',', "").into())),
        (0, _) if grouped(digits, '.') => Some(Ok(digits.replace('.', "").into())),
        // `1,234.5` and `1.234,5`: the last mark is the decimal one.
        (_, 1) if digits.rfind('.') > digits.rfind(',') => {
            let (whole, fraction) = digits.rsplit_once('.')?;
            grouped(whole, ',').then(|| Ok(format!("{}.{fraction}", whole.replace(',', "")).into()))
        }
        (1, _) => {
            let (whole, fraction) = digits.rsplit_once(',')?;
            grouped(whole, '.').then(|| Ok(format!("{}.{fraction}", whole.replace('.', "")).into()))
        }
        _ => None,
    }
}

/// A short piece of the text, to quote in a message.
fn clip(text: &str) -> String {
    text.trim().chars().take(16).collect()
}

/// An exact ratio of whole numbers; `den` is positive.
#[derive(Debug, Clone, Copy)]
struct Ratio {
    num: i128,
    den: i128,
}

impl Ratio {
    fn of((num, den): (i64, i64)) -> Ratio {
        Ratio { num: num.into(), den: den.into() }
    }

    fn reduced(self) -> Ratio {
        match gcd(self.num.unsigned_abs(), self.den.unsigned_abs()) as i128 {
            0 | 1 => self,
            divisor => Ratio { num: self.num / divisor, den: self.den / divisor },
        }
    }

    fn plus(self, other: Ratio) -> Result<Ratio, ReadError> {
        let (left, right) = (product(self.num, other.den)?, product(other.num, self.den)?);
        let num = left.checked_add(right).ok_or(ReadError::TooLong)?;
        Ok(Ratio { num, den: product(self.den, other.den)? }.reduced())
    }

    fn times(self, other: Ratio) -> Result<Ratio, ReadError> {
        if let (Some(num), Some(den)) =
            (short_product(self.num, other.num), short_product(self.den, other.den))
        {
            return Ok(Ratio { num, den });
        }
        let (a, b) = (self.reduced(), other.reduced());
        // Cross-reduction keeps the products of ordinary numbers far inside 128 bits.
        let left = Ratio { num: a.num, den: b.den }.reduced();
        let right = Ratio { num: b.num, den: a.den }.reduced();
        Ok(Ratio { num: product(left.num, right.num)?, den: product(left.den, right.den)? })
    }

    /// The nearest double: 64 bits of quotient with the remainder folded into the last one.
    fn to_f64(self) -> f64 {
        const EXACT: u64 = 1 << f64::MANTISSA_DIGITS;
        if let (Ok(num), Ok(den)) = (i64::try_from(self.num), i64::try_from(self.den))
            && num.unsigned_abs().max(den.unsigned_abs()) < EXACT
        {
            // Both are doubles themselves, and a division of doubles gives the nearest one.
            return num as f64 / den as f64;
        }
        let Ratio { num, den } = self.reduced();
        let (magnitude, den) = (num.unsigned_abs(), den.unsigned_abs());
        if magnitude == 0 {
            return 0.0;
        }
        // Shift both into place so that the quotient has at least 60 significant bits.
        let up = magnitude.leading_zeros();
        let down = (den.ilog2() + 64).saturating_sub(127);
        let scaled = magnitude << up;
        let den = den >> down;
        let (quotient, remainder) = (scaled / den, scaled % den);
        let sticky = quotient | u128::from(remainder != 0);
        let value = sticky as f64 * libm::exp2(-f64::from(up) - f64::from(down));
        if num < 0 { -value } else { value }
    }
}

/// A fraction of two numbers of seventeen digits can pass 128 bits: no honest measure does.
fn product(a: i128, b: i128) -> Result<i128, ReadError> {
    a.checked_mul(b).ok_or(ReadError::TooLong)
}

/// The product of two numbers that surely fits 63 bits: hardly a number needs more, and what is short
/// needs no reducing.
fn short_product(a: i128, b: i128) -> Option<i128> {
    let (a, b) = (i64::try_from(a).ok()?, i64::try_from(b).ok()?);
    let spare = a.unsigned_abs().leading_zeros() + b.unsigned_abs().leading_zeros();
    (spare > 64).then(|| (a * b).into())
}

/// Wide divisions are slow, and hardly a number needs more than a first one: every field of a job is
/// read again at each key.
fn gcd(a: u128, b: u128) -> u128 {
    match (u64::try_from(a), u64::try_from(b)) {
        (Ok(mut a), Ok(mut b)) => {
            while b != 0 {
                (a, b) = (b, a % b);
            }
            a.into()
        }
        _ if b == 0 => a,
        _ => gcd(b, a % b),
    }
}
