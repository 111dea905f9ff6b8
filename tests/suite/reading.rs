//! What a person may type, and exactly what is made of it.

use finrun_engine::quantity::{ReadError, Unit, read};
use proptest::prelude::*;

/// What `text` reads as in a box of `unit`.
fn check(text: &str, unit: Unit, expected: Result<f64, ReadError>) {
    let shown: String = text.chars().take(60).collect();
    assert_eq!(read(text, unit).map(|reading| reading.si), expected, "{shown:?} in {unit:?}");
}

/// Values are exact: the double nearest to the true value, worked out by hand.
#[test]
fn lengths_as_people_write_them() {
    let cases = [
        // Seven feet, six and a half inches are 90.5 in.
        ("7' 6 1/2\"", 2.2987),
        ("7’6½”", 2.2987),
        ("7′ 6 ½″", 2.2987),
        ("7'6-1/2\"", 2.2987),
        ("7ft 6.5in", 2.2987),
        ("7 feet 6 1/2 inches", 2.2987),
        ("90 1/2 in", 2.2987),
        ("90.5\"", 2.2987),
        ("7′ 6″", 2.286),
        ("7'-6\"", 2.286),
        ("7' - 6\"", 2.286),
        ("7' 6", 2.286),
        ("7'6''", 2.286),
        ("7.5", 2.286),
        ("7,5", 2.286),
        ("7½", 2.286),
        ("7 1/2", 2.286),
        ("7 1⁄2", 2.286),
        ("15/2", 2.286),
        ("90 in", 2.286),
        ("2,286 m", 2.286),
        ("0 ft 90 in", 2.286),
        ("  7 FT 6 In  ", 2.286),
        ("7\u{a0}ft", 2.1336),
        ("2,3 m", 2.3),
        ("2.3m", 2.3),
        ("230cm", 2.3),
        ("2300 mm", 2.3),
        ("½\"", 0.0127),
        ("1/2", 0.1524),
        (".5", 0.1524),
        ("0,500", 0.1524),
        ("5.", 1.524),
        ("+5", 1.524),
        ("-5", -1.524),
        ("- 5", -1.524),
        ("−5", -1.524),
        ("–5", -1.524),
        ("-7' 6\"", -2.286),
        ("0", 0.0),
        ("1/3", 0.1016),
        ("1.234,5", 376.2756),
        ("1,234.5", 376.2756),
        ("1,234,567", 376_296.021_6),
        ("1.234.567", 376_296.021_6),
        ("1,2345", 0.376_275_6),
        ("1234,500", 376.2756),
    ];
    for (text, expected) in cases {
        // A comma before three digits has its own test; here it is told apart by its unit or place.
        let expected = if text == "2,286 m" { Err(ambiguous(text)) } else { Ok(expected) };
        check(text, Unit::Foot, expected);
    }
}

fn ambiguous(text: &str) -> ReadError {
    let part = text.split(' ').next().unwrap_or_default();
    ReadError::AmbiguousComma {
        part: part.to_string(),
        thousands: part.replace(',', ""),
        decimal: part.replace(',', ".").trim_end_matches('0').to_string(),
    }
}

#[test]
fn a_comma_before_three_digits_is_asked_about() {
    for text in ["1,200", "12,345", "999,999", "2,286 m"] {
        check(text, Unit::Foot, Err(ambiguous(text)));
    }
    let named = ReadError::AmbiguousComma {
        part: "1,200".to_string(),
        thousands: "1200".to_string(),
        decimal: "1.2".to_string(),
    };
    check("1,200", Unit::BtuPerHour, Err(named));
}

#[test]
fn other_quantities_as_people_write_them() {
    let cases = [
        ("68", Unit::Fahrenheit, 293.15),
        ("20 °C", Unit::Fahrenheit, 293.15),
        ("20C", Unit::Fahrenheit, 293.15),
        ("68 deg F", Unit::Celsius, 293.15),
        ("-40", Unit::Fahrenheit, 233.15),
        ("−40 °C", Unit::Fahrenheit, 233.15),
        ("212", Unit::Fahrenheit, 373.15),
        ("0.1", Unit::Fahrenheit, 255.427_777_777_777_78),
        ("18", Unit::FahrenheitDegree, 10.0),
        ("10 K", Unit::FahrenheitDegree, 10.0),
        ("12 sq ft", Unit::SquareMetre, 1.114_836_48),
        ("12ft2", Unit::SquareMetre, 1.114_836_48),
        ("1,5 kW", Unit::BtuPerHour, 1500.0),
        ("600", Unit::BtuPerHourFoot, 576.911_555_457_130_4),
        ("600 Btu/hr/ft", Unit::WattPerMetre, 576.911_555_457_130_4),
        ("0.05", Unit::UsU, 0.283_913_167_055_674_4),
        ("13 R", Unit::SiR, 2.289_432_387_869_976),
        ("R-13", Unit::UsR, 2.289_432_387_869_976),
        ("R13", Unit::UsR, 2.289_432_387_869_976),
        // As on a label, whichever units the page shows.
        ("r 13", Unit::SiR, 2.289_432_387_869_976),
        ("2,5 RSI", Unit::UsR, 2.5),
        ("85 %", Unit::Percent, 0.85),
        ("85%", Unit::Percent, 0.85),
        ("4 gpm", Unit::LitrePerMinute, 15.141_647_136 / 60_000.0),
        ("1.4", Unit::One, 1.4),
        ("7/5", Unit::One, 1.4),
        ("12", Unit::Piece, 12.0),
        ("1/2 in", Unit::MillimetreSmall, 0.0127),
        ("4 ft", Unit::HeadMetre, 1.2192),
    ];
    for (text, unit, expected) in cases {
        check(text, unit, Ok(expected));
    }
}

#[test]
fn what_cannot_be_read_is_named() {
    let not_a_number = |part: &str| ReadError::NotANumber { part: part.to_string() };
    let unknown = |part: &str| ReadError::UnknownUnit { part: part.to_string() };
    let cases = [
        ("", ReadError::Empty),
        (" \t\u{a0}\n", ReadError::Empty),
        ("-", not_a_number("-")),
        ("+", not_a_number("+")),
        ("−", not_a_number("-")),
        ("--5", not_a_number("-5")),
        ("+-5", not_a_number("-5")),
        ("NaN", not_a_number("nan")),
        ("inf", not_a_number("inf")),
        ("-Infinity", not_a_number("infinity")),
        ("seven", not_a_number("seven")),
        ("'", not_a_number("'")),
        ("/2", not_a_number("/2")),
        ("1/", not_a_number("")),
        (",", not_a_number(",")),
        ("1..2", not_a_number("1..2")),
        ("1,2,3", not_a_number("1,2,3")),
        ("12,34.5", not_a_number("12,34.5")),
        ("🔥", not_a_number("🔥")),
        ("שבע רגל", not_a_number("שבע רגל")),
        ("\u{202e}7", not_a_number("\u{202e}7")),
        ("٧", not_a_number("٧")),
        ("0x10", unknown("x")),
        ("1e9", unknown("e")),
        ("7 🔥", unknown("🔥")),
        ("7 كيلو", unknown("كيلو")),
        ("12 kg", unknown("kg")),
        ("70 °F", unknown("°f")),
        ("7; DROP TABLE", unknown("; drop table")),
        ("7 <script>alert(1)", unknown("<script>alert(")),
        ("1/2/3", unknown("/")),
        ("5-", unknown("-")),
        ("7 6", ReadError::UnitsMissing),
        ("7 6\"", ReadError::UnitsMissing),
        ("7\" 6", ReadError::UnitsMissing),
        ("6\" 7'", ReadError::OutOfOrder),
        ("7' 6'", ReadError::OutOfOrder),
        ("7' 6\" 5\"", ReadError::OutOfOrder),
        ("7 m 6 cm", ReadError::OutOfOrder),
        ("1/0", ReadError::ZeroDenominator),
        ("7 1/0", ReadError::ZeroDenominator),
        ("1/0.0", ReadError::ZeroDenominator),
        ("123456789012345678", ReadError::TooLong),
        ("0.123456789012345678", ReadError::TooLong),
    ];
    for (text, error) in cases {
        check(text, Unit::Foot, Err(error));
    }
    check(&"7".repeat(10_000), Unit::Foot, Err(ReadError::TooLong));
    check(&"🔥".repeat(41), Unit::Foot, Err(ReadError::TooLong));
    check("1e9", Unit::BtuPerHour, Err(unknown("e9")));
    check("20 K", Unit::Celsius, Err(unknown("k")));
}

/// A number and its division may each be as long as a double holds, and still be read exactly.
#[test]
fn long_fractions_do_not_overflow() {
    let text = ".12345678901234567/98765432109876543";
    check(text, Unit::One, Ok(1.249999988609375e-18));
    for &unit in Unit::ALL {
        let found = read(text, unit).map(|reading| reading.si);
        // Too long is an honest answer; a wrong number or a panic is not.
        let sound = match found {
            Ok(si) => (si - unit.to_si(0.0)).abs() < 1e-12,
            Err(error) => error == ReadError::TooLong,
        };
        assert!(sound, "{unit:?}: {:?}", read(text, unit));
    }
}

/// Texts made of the characters that have a meaning, which random text seldom hits.
fn near_numbers() -> impl Strategy<Value = String> {
    "[0-9.,/'\"’½⅜ °FCfcinmt%+\\-]{0,40}"
}

fn units() -> impl Strategy<Value = Unit> {
    proptest::sample::select(Unit::ALL)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4096))]

    #[test]
    fn no_text_panics_or_reads_as_no_number(
        text in prop_oneof![any::<String>(), near_numbers()], unit in units(),
    ) {
        if let Ok(reading) = read(&text, unit) {
            prop_assert!(reading.si.is_finite(), "{text:?}: {reading:?}");
            prop_assert_eq!(reading.unit.kind(), unit.kind());
        }
    }

    /// Any decimal is the nearest double, as the standard library reads it.
    #[test]
    fn decimals_are_read_as_the_nearest_double(whole in 0..1_000_000_u64, fraction in "[0-9]{0,9}") {
        let text = format!("{whole}.{fraction}");
        let expected: f64 = text.parse().expect("a decimal");
        prop_assert_eq!(read(&text, Unit::One).map(|reading| reading.si), Ok(expected));
    }
}
