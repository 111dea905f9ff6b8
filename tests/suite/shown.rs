//! How numbers are written: rounded once, and never so that something typed is lost.

use crate::support::{DEMO, FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, fields, open, set, solve};
use finrun_engine::job::{Field, HouseField, RoomField, box_text, read as read_job, resolve};
use finrun_engine::quantity::{
    FeetInches, Kind, System, Unit, Value, display_unit, read, show, show_in, show_precise,
};

#[test]
fn lengths_read_as_on_a_tape() {
    // Metres, parts of an inch, text.
    let cases = [
        (0.0, 2, "0 ft"),
        (0.0127, 2, "1/2 in"),
        (0.0126, 16, "1/2 in"),
        (0.0254, 2, "1 in"),
        (0.3048, 2, "1 ft"),
        (2.286, 2, "7 ft 6 in"),
        (2.2987, 2, "7 ft 6 1/2 in"),
        (2.1463, 2, "7 ft 1/2 in"),
        (-2.286, 2, "−7 ft 6 in"),
        (-0.001, 2, "0 ft"),
        // To the nearest mark, up as well as down, and over a whole foot.
        (2.2923, 2, "7 ft 6 in"),
        (2.2925, 2, "7 ft 6 1/2 in"),
        (2.4365, 2, "8 ft"),
        (0.015875, 16, "5/8 in"),
        (0.0079375, 16, "5/16 in"),
    ];
    for (metres, parts, expected) in cases {
        assert_eq!(FeetInches::nearest(metres, parts).to_string(), expected, "{metres} m");
    }
}

#[test]
fn numbers_are_rounded_once_and_marked() {
    let cases = [
        (Kind::Power, Unit::Watt, 0.4, "0 W"),
        (Kind::Power, Unit::Watt, -0.4, "0 W"),
        (Kind::Power, Unit::Watt, -0.6, "−1 W"),
        (Kind::Power, Unit::Watt, 9999.4, "9999 W"),
        (Kind::Power, Unit::Watt, 9999.6, "10,000 W"),
        (Kind::Power, Unit::Watt, 1_234_567.0, "1,234,567 W"),
        (Kind::Power, Unit::Watt, f64::NAN, "– W"),
        (Kind::Power, Unit::Watt, f64::INFINITY, "– W"),
        (Kind::Temperature, Unit::Celsius, 293.19, "20.0 °C"),
        (Kind::Temperature, Unit::Fahrenheit, 255.372, "0 °F"),
        (Kind::Share, Unit::Percent, 0.954, "95 %"),
        (Kind::Share, Unit::Percent, 0.956, "96 %"),
        (Kind::Number, Unit::One, 1.4, "1.400"),
    ];
    for (kind, unit, si, expected) in cases {
        let found = show_in(Value::new(kind, si), unit).text();
        assert_eq!(found, expected, "{si} {unit:?}");
    }
    assert_eq!(show(Value::new(Kind::Length, 2.286), System::Us).text(), "7 ft 6 in");
    assert_eq!(show(Value::new(Kind::Length, 2.286), System::Si).text(), "2.29 m");
    let precise = |si| show_precise(Value::new(Kind::Number, si), Unit::One).text();
    assert_eq!(precise(0.029_523_4), "0.029523");
    assert_eq!(precise(12_064.7), "12,065");
    assert_eq!(precise(1.4), "1.4");
    assert_eq!(precise(0.0), "0");
}

/// No line ends between a number and its unit, and what is shown can still be typed.
#[test]
fn a_number_and_its_unit_stay_on_one_line() {
    let cases = [
        (Kind::Temperature, 251.48, System::Us, "−7\u{a0}°F"),
        (Kind::Length, 2.2987, System::Us, "7\u{a0}ft\u{a0}6\u{a0}1/2\u{a0}in"),
        (Kind::Number, 1.4, System::Us, "1.400"),
    ];
    for (kind, si, system, expected) in cases {
        let shown = finrun_text::value(Value::new(kind, si), system);
        assert_eq!(shown, expected);
        let read = read(&shown, display_unit(kind, system)).expect("a quantity");
        assert!((read.si - si).abs() < 0.01, "{shown}");
    }
}

/// A job shown in the other system keeps what was typed, and its boxes read back as the same value
/// to the places they show.
#[test]
fn boxes_in_the_other_system_read_back_and_lose_nothing() {
    let mut converted = 0;
    for text in [DEMO, FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE] {
        let draft = open(text);
        for system in [System::Us, System::Si] {
            let mut other = draft.clone();
            other.units = system;
            for field in fields(&draft) {
                let shown = box_text(&other, field);
                let Some(entry) = draft.entry(field) else {
                    assert_eq!(shown, "", "{field}");
                    continue;
                };
                let unit = other.box_unit(field);
                if entry.unit == unit {
                    assert_eq!(shown, entry.text, "{field}");
                    continue;
                }
                let before = read(&entry.text, entry.unit).expect("a number").si;
                let after = read(&shown, unit).unwrap_or_else(|e| panic!("{field} {shown}: {e:?}"));
                let slack = match field.spec().kind {
                    // Half of a sixteenth of an inch.
                    Kind::Length if unit == Unit::Foot => 0.000_794,
                    Kind::Temperature => 0.006,
                    _ => 6e-5 * before.abs(),
                };
                assert!((after.si - before).abs() <= slack, "{field}: {shown} for {entry:?}");
                converted += 1;
            }
            // The design does not depend on what the page shows.
            assert_eq!(solve(&other).1, solve(&draft).1);
        }
    }
    assert!(converted > 150, "{converted}");
}

/// What is not typed is assumed from what is: the room's temperature from the house, an opening's
/// place from its wall, the free length from the doors.
#[test]
fn blanks_follow_from_their_neighbours() {
    let mut draft = open(FOUR_ROOMS);
    let path = |path: &str| {
        let draft = open(FOUR_ROOMS);
        fields(&draft).into_iter().find(|field| field.to_string() == path).expect(path)
    };
    let si = |draft: &_, field| resolve(draft, field).si().expect("a value");
    let room = draft.rooms[0].id;
    set(&mut draft, Field::House(HouseField::Indoors), "68");
    let cases = [
        (Field::Room(room, RoomField::Temperature), Unit::Fahrenheit, 68.0),
        (Field::Room(room, RoomField::FloorArea), Unit::SquareFoot, 208.0),
        (Field::Room(room, RoomField::Height), Unit::Foot, 8.0),
        // No least of its own: it takes its share of the house's air.
        (Field::Room(room, RoomField::AirChanges), Unit::PerHour, 0.0),
        (path("room-6.surface-2.height"), Unit::Foot, 8.0),
        (path("room-6.surface-2.area"), Unit::SquareFoot, 128.0),
        (path("room-6.surface-2.free"), Unit::Foot, 16.0),
        (path("room-6.surface-4.area"), Unit::SquareFoot, 208.0),
        // 12 ft of wall less a door of 3 ft.
        (path("room-12.surface-9.free"), Unit::Foot, 9.0),
    ];
    for (field, unit, expected) in cases {
        let found = unit.from_si(si(&draft, field));
        assert!((found - expected).abs() < 1e-9, "{field}: {found} instead of {expected}");
    }
    // An unheated space of unknown temperature lies halfway: 0 °F outdoors, 68 °F inside.
    let behind = path("room-6.surface-5.behind-temperature");
    set(&mut draft, behind, "");
    assert!((Unit::Fahrenheit.from_si(si(&draft, behind)) - 34.0).abs() < 1e-9);
    assert!(read_job(&draft).errors.is_empty());
}
