//! Every unit against its definition, and there and back.

use finrun_engine::quantity::{
    FeetInches, Kind, Reading, System, Unit, Value, display_unit, read, show_in,
};

/// The factor to SI as NIST Special Publication 811 (2008), appendix B.8 prints it, to its seven
/// figures, from memory; `Exact` where the appendix has it in bold or a definition fixes it.
#[derive(Debug, Clone, Copy)]
enum Factor {
    Exact(f64),
    SevenFigures(f64),
}

/// Every unit stands here: a new one does not compile until its factor is looked up.
fn published(unit: Unit) -> Factor {
    use Factor::{Exact, SevenFigures};
    use Unit::*;
    match unit {
        // The international foot and inch: bold in the appendix.
        Foot | HeadFoot | FootPerSecond => Exact(0.3048),
        Inch | InchSmall => Exact(0.0254),
        SquareFoot => Exact(9.290304e-2),
        SquareInch => Exact(6.4516e-4),
        CurrencyPerFoot => Exact(1.0 / 0.3048),
        CurrencyPerSquareFoot => Exact(1.0 / 9.290304e-2),
        CubicFoot => SevenFigures(2.831685e-2),
        Gallon | LiquidGallon => SevenFigures(3.785412e-3),
        // Degrees Fahrenheit: (t + 459.67)/1.8, and an interval divided by 1.8.
        Fahrenheit | FahrenheitDegree => Exact(1.0 / 1.8),
        // A degree day as that interval held for a day, in kelvins and days.
        FahrenheitDay => Exact(1.0 / 1.8),
        // British thermal unit (International Table) per hour, per foot and so on.
        BtuPerHour => SevenFigures(2.930711e-1),
        BtuPerHourSquareFoot => SevenFigures(3.154591),
        UsU => SevenFigures(5.678263),
        UsR => SevenFigures(1.761102e-1),
        BtuPerHourFootFahrenheit | UsConductivity => SevenFigures(1.730735),
        BtuPerPoundFahrenheit => Exact(4.1868e3),
        // Not in the appendix: 0.2930711/0.3048 and 0.2930711/(5/9).
        BtuPerHourFoot => SevenFigures(9.615193e-1),
        BtuPerHourFahrenheit => SevenFigures(5.275279e-1),
        PoundPerHour => SevenFigures(1.259979e-4),
        GallonPerMinute => SevenFigures(6.309020e-5),
        CubicFootPerMinute | AirCubicFootPerMinute => SevenFigures(4.719474e-4),
        MilePerHour => Exact(4.4704e-1),
        KilometrePerHour => SevenFigures(2.777778e-1),
        Psi => SevenFigures(6.894757e3),
        PoundPerCubicFoot => SevenFigures(1.601846e1),
        Centipoise | MillipascalSecond => Exact(1.0e-3),
        // Decimal multiples and SI itself, by definition.
        Metre
        | SquareMetre
        | CubicMetre
        | Celsius
        | Kelvin
        | Watt
        | WattPerMetre
        | WattPerSquareMetre
        | SiU
        | SiR
        | WattPerKelvin
        | WattPerMetreKelvin
        | SiConductivity
        | KilogramPerSecond
        | MetrePerSecond
        | WindMetrePerSecond
        | KelvinDay
        | Pascal
        | HeadMetre
        | KilogramPerCubicMetre
        | JoulePerKilogramKelvin
        // A currency is whatever the user counts.
        | Currency
        | CurrencyPerMetre
        | CurrencyPerSquareMetre
        | One
        | Piece => Exact(1.0),
        Centimetre | CentimetreSmall | Percent => Exact(0.01),
        SquareCentimetre => Exact(1e-4),
        Millimetre | MillimetreSmall | Litre | LiquidLitre | LitrePerSecond | AirLitrePerSecond => {
            Exact(0.001)
        }
        Kilowatt | Kilopascal => Exact(1000.0),
        LitrePerMinute => Exact(0.001 / 60.0),
        // The hour is 3600 s.
        Hour => Exact(3600.0),
        CubicMetrePerHour | AirCubicMetrePerHour | PerHour => Exact(1.0 / 3600.0),
    }
}

/// What one of the unit is in SI, apart from where its scale begins.
fn step(unit: Unit) -> f64 {
    unit.to_si(1.0) - unit.to_si(0.0)
}

#[test]
fn factors_are_the_published_ones() {
    for &unit in Unit::ALL {
        let (expected, tolerance) = match published(unit) {
            // Two temperatures some hundred kelvins apart from zero leave thirteen figures.
            Factor::Exact(value) => (value, 2e-13),
            Factor::SevenFigures(value) => (value, 5e-7),
        };
        let found = step(unit);
        assert!((found / expected - 1.0).abs() < tolerance, "{unit:?}: {found} against {expected}");
    }
}

/// Derived units are the quotients of those they are made of, to the last bits.
#[test]
fn derived_units_follow_from_their_parts() {
    let [btu, foot, fahrenheit] =
        [Unit::BtuPerHour, Unit::Foot, Unit::FahrenheitDegree].map(|unit| unit.to_si(1.0));
    let inch = Unit::Inch.to_si(1.0);
    let gallon = 231.0 * inch * inch * inch;
    let pound = 0.45359237;
    let cases = [
        (Unit::SquareFoot, foot * foot),
        (Unit::CurrencyPerFoot, 1.0 / foot),
        (Unit::CurrencyPerSquareFoot, 1.0 / (foot * foot)),
        (Unit::CubicFoot, foot * foot * foot),
        (Unit::Gallon, gallon),
        (Unit::BtuPerHour, 1055.05585262 / 3600.0),
        (Unit::BtuPerHourFoot, btu / foot),
        (Unit::BtuPerHourSquareFoot, btu / (foot * foot)),
        (Unit::BtuPerHourFahrenheit, btu / fahrenheit),
        (Unit::BtuPerHourFootFahrenheit, btu / foot / fahrenheit),
        (Unit::UsConductivity, btu / foot / fahrenheit),
        (Unit::UsU, btu / (foot * foot) / fahrenheit),
        (Unit::UsR, foot * foot * fahrenheit / btu),
        // The International Table Btu is defined by 4186.8 J/(kg K).
        (Unit::BtuPerPoundFahrenheit, 1055.05585262 / pound / fahrenheit),
        (Unit::PoundPerHour, pound / 3600.0),
        (Unit::GallonPerMinute, gallon / 60.0),
        (Unit::CubicFootPerMinute, foot * foot * foot / 60.0),
        (Unit::AirCubicFootPerMinute, foot * foot * foot / 60.0),
        (Unit::MilePerHour, 5280.0 * foot / 3600.0),
        (Unit::SquareInch, inch * inch),
        (Unit::FahrenheitDay, fahrenheit),
        (Unit::FootPerSecond, foot),
        (Unit::Psi, pound * 9.80665 / (inch * inch)),
        (Unit::PoundPerCubicFoot, pound / (foot * foot * foot)),
    ];
    for (unit, expected) in cases {
        let found = unit.to_si(1.0);
        assert!((found / expected - 1.0).abs() < 1e-15, "{unit:?}: {found} against {expected}");
    }
}

/// Fixed points of the temperature scales, by definition.
#[test]
fn temperature_scales_meet_where_they_should() {
    let cases = [
        (Unit::Fahrenheit, 32.0, 273.15),
        (Unit::Fahrenheit, 212.0, 373.15),
        (Unit::Fahrenheit, -40.0, 233.15),
        (Unit::Celsius, -40.0, 233.15),
        (Unit::Fahrenheit, -459.67, 0.0),
        (Unit::Celsius, 0.0, 273.15),
        // An interval has no zero of its own.
        (Unit::FahrenheitDegree, 18.0, 10.0),
        (Unit::Kelvin, 10.0, 10.0),
    ];
    for (unit, value, kelvins) in cases {
        assert!((unit.to_si(value) - kelvins).abs() < 1e-12, "{value} {unit:?}");
    }
}

const VALUES: [f64; 9] = [-40.0, -0.5, 0.0, 0.125, 1.0, 7.5, 98.6, 1234.5678, 9999.0];

#[test]
fn every_unit_comes_back_from_si() {
    for &unit in Unit::ALL {
        for value in VALUES {
            let back = unit.from_si(unit.to_si(value));
            let slack = 1e-12 * (value.abs() + 500.0);
            assert!((back - value).abs() < slack, "{value} {unit:?} came back as {back}");
        }
    }
}

/// What is typed with its unit's symbol is read in that unit, whichever unit stands by the box.
#[test]
fn every_symbol_is_read_as_its_unit() {
    for &unit in Unit::ALL {
        for default in Unit::of_kind(unit.kind()) {
            let Reading { si, unit: found } = read(&format!("7.5 {}", unit.symbol()), default)
                .unwrap_or_else(|error| panic!("7.5 {}: {error:?}", unit.symbol()));
            // A pure number has no symbol to tell it by.
            let expected = if unit.symbol().is_empty() { default } else { unit };
            assert_eq!(found, expected, "7.5 {}", unit.symbol());
            let exact = expected.to_si(7.5);
            assert!((si - exact).abs() <= 4.0 * f64::EPSILON * exact.abs(), "{unit:?}");
        }
    }
}

/// What the page shows can be typed back, to the last place shown.
#[test]
fn what_is_shown_reads_back() {
    for &unit in Unit::ALL {
        for value in VALUES {
            let shown = show_in(Value::new(unit.kind(), unit.to_si(value)), unit);
            let back = read(&shown.text(), unit)
                .unwrap_or_else(|error| panic!("{}: {error:?}", shown.text()));
            let digits = shown.number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
            let place = (0..digits).fold(1.0, |place, _| place / 10.0);
            let found = unit.from_si(back.si);
            assert!((found - value).abs() <= 0.5001 * place, "{value} {unit:?}: {shown:?}");
        }
    }
}

/// Each mark of a tape divided into sixteenths, to 60 ft, reads back as exactly that mark.
#[test]
fn every_sixteenth_of_an_inch_reads_back_exactly() {
    for sixteenths in 0..=60 * 12 * 16_u64 {
        let metres = (sixteenths * 254) as f64 / 160_000.0;
        for (metres, sign) in [(metres, 1.0), (-metres, -1.0)] {
            let text = FeetInches::nearest(metres, 16).to_string();
            let back = read(&text, Unit::Metre).unwrap_or_else(|e| panic!("{text}: {e:?}"));
            assert_eq!(back.si.abs().to_bits(), metres.abs().to_bits(), "{text}");
            assert!(sixteenths == 0 || back.si * sign > 0.0, "{text}");
        }
    }
}

#[test]
fn each_system_shows_every_kind_in_a_unit_of_that_kind() {
    let mut kinds: Vec<Kind> = Unit::ALL.iter().map(|unit| unit.kind()).collect();
    kinds.sort();
    kinds.dedup();
    for kind in kinds {
        for system in [System::Us, System::Si] {
            assert_eq!(display_unit(kind, system).kind(), kind, "{system:?}");
        }
    }
}

/// Spanish: a comma or a point by the country, a space between thousands (the Academy's orthography
/// and ISO 80000-1), pies and pulgadas (NOM-008-SCFI names them; from memory).
#[test]
fn spanish_writes_numbers_and_units_in_its_form() {
    use finrun_text::{DecimalMark, Language, in_units, speak};
    let comma = [
        ("7 ft 6 1/2 in", "7 pies 6 1/2 pulg"),
        ("1 ft", "1 pie"),
        ("12,500 Btu/h", "12\u{a0}500 Btu/h"),
        ("12,500.5 ft²", "12\u{a0}500,5 pie²"),
        ("0.25 per hour", "0,25 por hora"),
        ("3.1 ft/s", "3,1 pie/s"),
        ("2.40 per ft", "2,40 por pie"),
        ("−4 °F", "−4 °F"),
        ("30 mph", "30 mi/h"),
        ("ft", "pies"),
        ("", ""),
    ];
    speak(Language::Spanish, DecimalMark::Comma);
    for (english, spanish) in comma {
        assert_eq!(in_units(english), spanish);
    }
    speak(Language::Spanish, DecimalMark::Point);
    assert_eq!(in_units("12,500.5 ft²"), "12\u{a0}500.5 pie²");
    speak(Language::English, DecimalMark::Point);
    assert_eq!(in_units("12,500.5 ft²"), "12,500.5 ft²");
}
