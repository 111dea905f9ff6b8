//! The same quantity typed in US and in SI units gives the same bits, alone and through a design.

use crate::support::{DEMO, fields, open};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, Entry, read as read_job};
use finrun_engine::quantity::{System, Unit, read};
use proptest::prelude::*;

fn bits(text: &str, unit: Unit) -> u64 {
    read(text, unit).unwrap_or_else(|error| panic!("{text}: {error:?}")).si.to_bits()
}

#[test]
fn equal_quantities_have_equal_bits() {
    let cases = [
        ("7.5", Unit::Foot, "2.286", Unit::Metre),
        ("7' 6\"", Unit::Foot, "228.6", Unit::Centimetre),
        ("1/16 in", Unit::Foot, "1.5875", Unit::Millimetre),
        ("11' 4 1/2\"", Unit::Foot, "3,4671", Unit::Metre),
        ("4", Unit::InchSmall, "101.6", Unit::MillimetreSmall),
        ("100", Unit::SquareFoot, "9.290304", Unit::SquareMetre),
        ("68", Unit::Fahrenheit, "20", Unit::Celsius),
        ("-13", Unit::Fahrenheit, "-25", Unit::Celsius),
        ("179.6", Unit::Fahrenheit, "82", Unit::Celsius),
        ("18", Unit::FahrenheitDegree, "10", Unit::Kelvin),
        ("4", Unit::GallonPerMinute, "15.141647136", Unit::LitrePerMinute),
        ("1", Unit::HeadFoot, "0.3048", Unit::HeadMetre),
        // A Btu/h is no finite decimal of watts, 36 of them are; and 3429 Btu/h ft likewise.
        ("36", Unit::BtuPerHour, "10.5505585262", Unit::Watt),
        ("3429", Unit::BtuPerHourFoot, "3297.0495394375", Unit::WattPerMetre),
    ];
    for (us, us_unit, si, si_unit) in cases {
        assert_eq!(bits(us, us_unit), bits(si, si_unit), "{us} {us_unit:?} and {si} {si_unit:?}");
    }
}

/// `digits` with the point moved `places` to the left.
fn decimal(digits: i64, places: usize) -> String {
    let sign = if digits < 0 { "-" } else { "" };
    let text = format!("{:0>width$}", digits.abs(), width = places + 1);
    let (whole, fraction) = text.split_at(text.len() - places);
    format!("{sign}{whole}.{fraction}")
}

proptest! {
    #[test]
    fn any_decimal_of_feet_is_its_metres(thousandths in -999_999..999_999_i64) {
        let metres = decimal(thousandths * 3048, 7);
        prop_assert_eq!(bits(&decimal(thousandths, 3), Unit::Foot), bits(&metres, Unit::Metre));
    }

    #[test]
    fn any_decimal_of_celsius_is_its_fahrenheit(hundredths in -5_000..20_000_i64) {
        let fahrenheit = decimal(hundredths * 18 + 32_000, 3);
        prop_assert_eq!(
            bits(&decimal(hundredths, 2), Unit::Celsius),
            bits(&fahrenheit, Unit::Fahrenheit)
        );
    }

    #[test]
    fn any_decimal_of_gallons_a_minute_is_its_litres(hundredths in 1..9_999_i64) {
        let litres = decimal(hundredths * 3_785_411_784, 11);
        prop_assert_eq!(
            bits(&decimal(hundredths, 2), Unit::GallonPerMinute),
            bits(&litres, Unit::LitrePerMinute)
        );
    }
}

/// The same quantity as `entry`, to the last digit, in SI; `None` where nothing is to convert.
fn in_si(entry: &Entry) -> Option<(String, Unit)> {
    let si = read(&entry.text, entry.unit).expect("the demo reads").si;
    match entry.unit {
        // Half inches are 12.7 mm, so eight decimals of a metre hold any length of the demo.
        Unit::Foot => Some((trimmed(format!("{si:.8}")), Unit::Metre)),
        Unit::InchSmall => Some((trimmed(format!("{:.5}", si * 1000.0)), Unit::MillimetreSmall)),
        Unit::Fahrenheit => {
            let fahrenheit: i64 = entry.text.parse().expect("whole degrees");
            // Only every ninth of 5/9 degrees is a decimal; others stay in °F, named.
            match ((fahrenheit - 32) * 50) % 9 {
                0 => Some((decimal((fahrenheit - 32) * 50 / 9, 1), Unit::Celsius)),
                _ => Some((format!("{fahrenheit} °F"), Unit::Celsius)),
            }
        }
        Unit::FahrenheitDegree => Some(("10".to_string(), Unit::Kelvin)),
        _ => None,
    }
}

fn trimmed(text: String) -> String {
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

#[test]
fn a_whole_job_typed_in_either_system_has_one_design() {
    let mut us = open(DEMO);
    // Temperatures and a flow that both systems write exactly.
    let exact = [
        ("house.outdoors", "5", Unit::Fahrenheit),
        ("house.indoors", "68", Unit::Fahrenheit),
        ("circuit.supply", "176", Unit::Fahrenheit),
        ("circuit.drop", "18", Unit::FahrenheitDegree),
    ];
    for (name, text, unit) in exact {
        let field = fields(&us).into_iter().find(|field| field.to_string() == name);
        us.set_entry(field.expect(name), Entry { text: text.to_string(), unit });
    }
    let mut si = us.clone();
    si.units = System::Si;
    let mut changed = 0;
    for field in fields(&us) {
        if let Some(entry) = us.entry(field) {
            let Some((text, unit)) = in_si(entry) else { continue };
            changed += 1;
            si.set_entry(field, Entry { text, unit });
        }
    }
    assert!(changed > 60, "only {changed} entries were converted");
    let json = |draft: &Draft| {
        let reading = read_job(draft);
        assert!(reading.errors.is_empty(), "{:?}", reading.errors);
        // The shortest text that reads back as the same double: equal texts are equal bits.
        serde_json::to_string(&design(&reading.job.expect("a whole job"))).expect("a design")
    };
    assert_eq!(json(&us), json(&si));
}
