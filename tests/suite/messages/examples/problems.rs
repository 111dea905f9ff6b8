//! One of each problem with what is typed, and with files: a new one does not compile until it stands
//! here.

use super::{fahrenheit, feet};
use crate::support::{FOUR_ROOMS, fields, open};
use finrun_engine::building::{AssemblyId, BillId, ChangeId, RoomId};
use finrun_engine::emitter::{FitError, PointFault};
use finrun_engine::job::{
    AssemblyField, BillField, ChangeField, CircuitField, ElementField, Field, FieldError,
    HouseField, OpenError, PointField, Problem, PumpPointField, RoomField,
};
use finrun_engine::quantity::{Kind, ReadError, Value};

/// Every problem, at a field where it comes up.
pub(in crate::messages) fn problems() -> Vec<(String, FieldError)> {
    let wall = "room-6.surface-2.length";
    let (width, left) =
        ("room-6.surface-2.opening-1.width", "room-6.surface-2.opening-1.from-left");
    let height = "room-6.surface-2.opening-1.height";
    let free = "room-6.surface-2.free";
    let fixed = "room-6.surface-2.fixed";
    let output = Field::Point(0, PointField::Output);
    let part = |part: &str| part.to_string();
    let outdoors = Field::House(HouseField::Outdoors);
    let indoors = Field::House(HouseField::Indoors);
    let coldest = Field::House(HouseField::ColdestMonth);
    let cut = Field::Room(RoomId(6), RoomField::CutLength);
    let temperature = |degrees: f64| Value::from(fahrenheit(degrees));
    let water = Field::Element(ElementField::Water);
    let elbows = Field::Circuit(CircuitField::BoilerElbows);
    let area = |square_feet: f64| Value::new(Kind::Area, square_feet * 0.09290304);
    let unreadable = Problem::Unreadable;
    let at = |path: &str, typed: &str, problem| (field(path), typed.to_string(), problem);
    let on = |field, typed: &str, problem| (field, typed.to_string(), problem);
    let mut all = vec![
        at(wall, "", Problem::Missing),
        on(outdoors, "", Problem::Missing),
        at("room-6.floor-area", "", Problem::Missing),
        at("room-6.surface-2.u", "", Problem::Missing),
        at(wall, "0' 1\"", Problem::BelowLeast { least: length(0.5) }),
        on(outdoors, "75", Problem::AboveMost { most: Value::from(fahrenheit(65.0)) }),
        on(elbows, "2.5", Problem::NotWhole),
        at(width, "30", Problem::OpeningsTooLarge { openings: area(150.0), surface: area(128.0) }),
        at(height, "9", Problem::TallerThanWall { wall: length(8.0) }),
        at(left, "12", Problem::PastWallEnd { end: length(18.0), wall: length(16.0) }),
        at(left, "6", Problem::Overlaps { ends: length(8.5) }),
        at(fixed, "", Problem::FixedRunGone),
        at(fixed, "", Problem::FixedTooLong { pieces: length(12.0), run: length(9.5) }),
        at(free, "20", Problem::LongerThanWall { wall: length(16.0) }),
        at("room-6.surface-2.depth", "9", Problem::DeeperThanWall { wall: length(8.0) }),
        on(cut, "17", Problem::CutTooLarge { room: length(16.0) }),
        on(indoors, "45", Problem::NotAboveOutdoors { outdoors: temperature(50.0) }),
        at("room-18.temperature", "40", Problem::NotAboveOutdoors { outdoors: temperature(50.0) }),
        on(coldest, "60", Problem::ColdestAboveMean { mean: temperature(51.0) }),
        at("room-6.surface-2.behind", "", Problem::BehindItself),
        at("room-6.surface-2.behind", "", Problem::NeighbourGone),
        at("room-6.surface-2.u", "", Problem::AssemblyGone),
        on(Field::Change(ChangeId(110), ChangeField::Whose), "", Problem::RoomGone),
        on(Field::Assembly(AssemblyId(3), AssemblyField::U), "", Problem::NoLayers),
        on(Field::Bill(BillId(41), BillField::To), "", Problem::Missing),
        on(Field::Bill(BillId(41), BillField::From), "2025-02-30", Problem::NotADate),
        on(Field::Bill(BillId(41), BillField::To), "2025-01-01", Problem::EndsBeforeStart),
        on(Field::Bill(BillId(41), BillField::From), "", Problem::BillsOverlap { other: 2 }),
        on(water, "60", Problem::NotAboveAir { air: Value::from(fahrenheit(65.0)) }),
        on(Field::Point(0, PointField::Water), "", Problem::TooFewPoints),
        on(Field::Stock, "", Problem::NoStock),
        at(wall, "  ", unreadable(ReadError::Empty)),
        at(wall, "1111111111111111111", unreadable(ReadError::TooLong)),
        at(wall, "twelve", unreadable(ReadError::NotANumber { part: part("twelve") })),
        at(wall, "12 kg", unreadable(ReadError::UnknownUnit { part: part("kg") })),
        on(outdoors, "5 ft", unreadable(ReadError::UnknownUnit { part: part("ft") })),
        on(elbows, "many", unreadable(ReadError::NotANumber { part: part("many") })),
        on(output, "x", unreadable(ReadError::NotANumber { part: part("x") })),
        on(
            Field::Element(ElementField::EndAllowance),
            "4 C",
            unreadable(ReadError::UnknownUnit { part: part("c") }),
        ),
        at(wall, "7 6", unreadable(ReadError::UnitsMissing)),
        at(wall, "6\" 7'", unreadable(ReadError::OutOfOrder)),
        at(wall, "1/0", unreadable(ReadError::ZeroDenominator)),
        at(
            wall,
            "1,200",
            unreadable(ReadError::AmbiguousComma {
                part: part("1,200"),
                thousands: part("1200"),
                decimal: part("1.2"),
            }),
        ),
    ];
    let pump = |row, field| Field::PumpPoint(row, field);
    all.extend([
        on(pump(2, PumpPointField::Flow), "", Problem::TooFewPumpPoints),
        on(pump(1, PumpPointField::Flow), "4", Problem::PumpFlowRepeated),
        on(
            pump(1, PumpPointField::Head),
            "12",
            Problem::PumpCurveRises { head: Value::new(Kind::Head, feet(12.0).si()) },
        ),
        on(pump(0, PumpPointField::Head), "0", Problem::PumpWithoutHead),
    ]);
    let faults = [
        PointFault::NotFinite,
        PointFault::WaterNotAboveAir,
        PointFault::OutputNotPositive,
        PointFault::FlowNotPositive,
    ];
    let mut errors =
        vec![FitError::Reference, FitError::TooFewTemperatures, FitError::NoConvergence];
    errors.extend(faults.map(|fault| FitError::Point { index: 0, fault }));
    all.extend(errors.into_iter().map(|error| on(output, "300", Problem::NoFit(error))));
    all.into_iter()
        .map(|(field, typed, problem)| {
            (format!("{field} {}", problem_name(&problem)), FieldError { field, typed, problem })
        })
        .collect()
}

/// Does not compile while a problem is missing here, and so perhaps above.
fn problem_name(problem: &Problem) -> String {
    let name = match problem {
        Problem::Missing => "missing",
        Problem::Unreadable(error) => return format!("unreadable {error:?}"),
        Problem::BelowLeast { .. } => "below least",
        Problem::AboveMost { .. } => "above most",
        Problem::NotWhole => "not whole",
        Problem::OpeningsTooLarge { .. } => "openings too large",
        Problem::TallerThanWall { .. } => "taller than wall",
        Problem::PastWallEnd { .. } => "past wall's end",
        Problem::Overlaps { .. } => "overlaps",
        Problem::LongerThanWall { .. } => "longer than wall",
        Problem::FixedRunGone => "fixed run gone",
        Problem::FixedTooLong { .. } => "fixed too long",
        Problem::DeeperThanWall { .. } => "deeper than wall",
        Problem::CutTooLarge { .. } => "cut too large",
        Problem::NotAboveOutdoors { .. } => "not above outdoors",
        Problem::ColdestAboveMean { .. } => "coldest above mean",
        Problem::BehindItself => "behind itself",
        Problem::NeighbourGone => "neighbour gone",
        Problem::AssemblyGone => "assembly gone",
        Problem::RoomGone => "room gone",
        Problem::NoLayers => "no layers",
        Problem::NotADate => "not a date",
        Problem::EndsBeforeStart => "ends before start",
        Problem::BillsOverlap { .. } => "bills overlap",
        Problem::NotAboveAir { .. } => "not above air",
        Problem::TooFewPoints => "too few points",
        Problem::NoFit(error) => return format!("no fit {error:?}"),
        Problem::NoStock => "no stock",
        Problem::TooFewPumpPoints => "too few pump points",
        Problem::PumpFlowRepeated => "pump flow repeated",
        Problem::PumpCurveRises { .. } => "pump curve rises",
        Problem::PumpWithoutHead => "pump without head",
        Problem::PeriodTooShort => "period too short",
        Problem::PeriodTooLong => "period too long",
        Problem::UnlikelyDegreeDays => "unlikely degree days",
    };
    name.to_string()
}

pub(in crate::messages) fn open_errors() -> Vec<OpenError> {
    let all = vec![
        OpenError::Newer { version: 4 },
        OpenError::UnknownVersion { version: 0 },
        OpenError::RepeatedId { id: 12 },
        OpenError::TooLarge { count: 201, most: 200 },
        OpenError::StockLength { feet: 11 },
        OpenError::Station,
    ];
    for error in &all {
        // A new one is to be added above.
        match error {
            OpenError::Newer { .. }
            | OpenError::UnknownVersion { .. }
            | OpenError::RepeatedId { .. }
            | OpenError::TooLarge { .. }
            | OpenError::StockLength { .. }
            | OpenError::Station => {}
        }
    }
    all
}

/// The field of the four-room job with this path.
fn field(path: &str) -> Field {
    let draft = open(FOUR_ROOMS);
    fields(&draft).into_iter().find(|field| field.to_string() == path).expect(path)
}

fn length(value: f64) -> Value {
    Value::from(feet(value))
}
