//! What stands in the way of a job: each problem by a draft made for it, and every field at its
//! bounds.

use crate::support::{FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, fields, holds_number, open, set};
use finrun_engine::emitter::FitError;
use finrun_engine::job::{
    Blank, Draft, Entries, Field, FieldError, PointField, Problem, RatingBasis, read,
};
use finrun_engine::quantity::{Kind, Unit, Value};

/// The field of a draft with this path.
fn field(draft: &Draft, path: &str) -> Field {
    fields(draft).into_iter().find(|field| field.to_string() == path).expect(path)
}

fn feet(value: f64) -> Value {
    Value::new(Kind::Length, Unit::Foot.to_si(value))
}

fn square_feet(value: f64) -> Value {
    Value::new(Kind::Area, Unit::SquareFoot.to_si(value))
}

/// The kind of problem and its values, in SI.
fn parts(problem: &Problem) -> (String, Vec<Value>) {
    let name = format!("{problem:?}");
    let name = name.split([' ', '(']).next().unwrap_or_default().to_string();
    let values = match problem {
        Problem::BelowLeast { least: value }
        | Problem::AboveMost { most: value }
        | Problem::TallerThanWall { wall: value }
        | Problem::Overlaps { ends: value }
        | Problem::LongerThanWall { wall: value }
        | Problem::NotAboveAir { air: value } => vec![*value],
        Problem::OpeningsTooLarge { openings, surface } => vec![*openings, *surface],
        Problem::PastWallEnd { end, wall } => vec![*end, *wall],
        _ => Vec::new(),
    };
    (name, values)
}

/// Four-room job with these fields typed anew has these problems and no others.
fn check(changes: &[(&str, &str)], expected: &[(&str, Problem)]) {
    let mut draft = open(FOUR_ROOMS);
    for (path, text) in changes {
        let field = field(&draft, path);
        set(&mut draft, field, text);
    }
    check_draft(&draft, expected);
}

fn check_draft(draft: &Draft, expected: &[(&str, Problem)]) {
    let found = read(draft).errors;
    let paths: Vec<String> = found.iter().map(|error| error.field.to_string()).collect();
    let wanted: Vec<&str> = expected.iter().map(|(path, _)| *path).collect();
    assert_eq!(paths, wanted, "{found:?}");
    for (FieldError { problem, .. }, (path, expected)) in found.iter().zip(expected) {
        let ((name, values), (wanted, limits)) = (parts(problem), parts(expected));
        assert_eq!(name, wanted, "{path}");
        assert_eq!(values.len(), limits.len(), "{path}");
        for (value, limit) in values.iter().zip(limits) {
            assert_eq!(value.kind, limit.kind, "{path}");
            assert!((value.si - limit.si).abs() < 1e-9, "{path}: {value:?} {limit:?}");
        }
    }
}

const WALL: &str = "room-6.surface-2";
const WINDOW: &str = "room-6.surface-2.opening-1";

#[test]
fn openings_are_held_against_their_wall_and_each_other() {
    let at = |field: &str| format!("{WINDOW}.{field}");
    // The living room's window is 6 x 4 ft, 5 ft from the left of a wall of 16 x 8 ft.
    let (width, height, left) = (at("width"), at("height"), at("from-left"));
    check(&[(&height, "8")], &[]);
    check(&[(&height, "8.1")], &[(&height, Problem::TallerThanWall { wall: feet(8.0) })]);
    check(&[(&width, "16"), (&left, "0")], &[]);
    check(&[(&width, "16.1")], &[(&width, Problem::LongerThanWall { wall: feet(16.0) })]);
    check(&[(&left, "10")], &[]);
    let past = Problem::PastWallEnd { end: feet(16.5), wall: feet(16.0) };
    check(&[(&left, "10.5")], &[(&left, past)]);
    // The bedroom's windows are 3 ft wide, at 2 and 7 ft; a door may stand beside a window.
    let second = "room-100.surface-21.opening-20.from-left";
    check(&[(second, "5")], &[]);
    check(&[(second, "4.5")], &[(second, Problem::Overlaps { ends: feet(5.0) })]);
    // The kitchen's door stands from 0' 6" to 3' 6", its window from 7' 6".
    check(&[("room-12.surface-9.opening-7.from-left", "1")], &[]);
}

#[test]
fn openings_are_no_larger_than_their_surface() {
    let area = format!("{WALL}.area");
    check(&[(&area, "24")], &[]);
    let too_large =
        Problem::OpeningsTooLarge { openings: square_feet(24.0), surface: square_feet(23.0) };
    check(&[(&area, "23")], &[(&format!("{WINDOW}.width"), too_large)]);
}

#[test]
fn a_free_length_is_no_longer_than_its_wall() {
    let free = format!("{WALL}.free");
    check(&[(&free, "16")], &[]);
    check(&[(&free, "16.1")], &[(&free, Problem::LongerThanWall { wall: feet(16.0) })]);
}

/// The bounds already keep a rating's water above its air: 90 °F at least, 85 °F at most.
#[test]
fn counts_are_whole() {
    check(&[("element.water", "90"), ("element.air", "85")], &[]);
    check(&[("circuit.boiler-tees", "3.0")], &[]);
    check(&[("circuit.boiler-tees", "2.5")], &[("circuit.boiler-tees", Problem::NotWhole)]);
}

/// The demo's element with a table in place of its rating.
fn with_table(rows: &[(&str, &str)]) -> Draft {
    let mut draft = open(FOUR_ROOMS);
    draft.element.rating_basis = RatingBasis::Table;
    for &(water, output) in rows {
        let row = Entries::default().with(PointField::Water, water, Unit::Fahrenheit).with(
            PointField::Output,
            output,
            Unit::BtuPerHourFoot,
        );
        draft.element.points.push(row);
    }
    draft
}

#[test]
fn a_makers_table_is_checked_row_by_row() {
    check_draft(&with_table(&[("180", "600"), ("", ""), ("140", "330")]), &[]);
    let too_few = || Problem::TooFewPoints;
    check_draft(&with_table(&[("180", "600")]), &[("element.point-1.water", too_few())]);
    check_draft(&with_table(&[("", ""), ("180", "600")]), &[("element.point-2.water", too_few())]);
    check_draft(
        &with_table(&[("180", "600"), ("140", "")]),
        &[("element.point-2.output", Problem::Missing)],
    );
    let same = Problem::NoFit(FitError::TooFewTemperatures);
    check_draft(
        &with_table(&[("180", "600"), ("180", "590")]),
        &[("element.point-1.output", same)],
    );
    // A row that is no warmer than the entering air is named itself.
    let mut draft = with_table(&[("180", "600"), ("", ""), ("75", "20")]);
    let air = field(&draft, "element.air");
    set(&mut draft, air, "80");
    let errors = read(&draft).errors;
    let found: Vec<String> = errors.iter().map(|error| error.field.to_string()).collect();
    assert_eq!(found, ["element.point-3.output"], "{errors:?}");
    assert!(matches!(errors[0].problem, Problem::NoFit(FitError::Point { index: 1, .. })));
}

#[test]
fn no_stock_is_named() {
    let mut draft = open(FOUR_ROOMS);
    draft.element.stock_ft.clear();
    check_draft(&draft, &[("element.stock", Problem::NoStock)]);
}

/// An empty job asks for what it needs, and for nothing that it can assume.
#[test]
fn blank_fields_are_asked_for_only_where_nothing_can_be_assumed() {
    let mut draft = open(FOUR_ROOMS);
    for field in fields(&draft) {
        set(&mut draft, field, "");
    }
    for error in read(&draft).errors {
        assert!(error.is_missing(), "{error:?}");
        assert_eq!(error.field.spec().blank, Blank::Required, "{error:?}");
        assert_eq!(error.typed, "");
    }
    let found: Vec<String> = read(&draft).errors.iter().map(|e| e.field.to_string()).collect();
    for path in
        ["house.outdoors", "room-6.floor-length", "room-6.surface-2.length", "room-6.surface-2.u"]
    {
        assert!(found.iter().any(|found| found == path), "{path} is not in {found:?}");
    }
}

/// Every field takes its bounds and nothing beyond them, and says which bound was broken.
#[test]
fn every_field_takes_its_bounds_and_no_more() {
    let bases = [V1_FIXTURE, V2_FIXTURE].map(open);
    let mut checked = 0;
    let all =
        bases.iter().flat_map(|base| fields(base).into_iter().map(move |field| (base, field)));
    for (base, field) in all.filter(|&(_, field)| holds_number(field)) {
        let spec = field.spec();
        let unit = base.box_unit(field);
        let problem_at = |si: f64| {
            let mut draft = base.clone();
            set(&mut draft, field, &format!("{:.10}", unit.from_si(si)));
            // As the field alone sees it: whether it goes with its neighbours is another matter.
            match finrun_engine::job::resolve(&draft, field) {
                finrun_engine::job::Resolved::Bad(problem) => Some(problem),
                _ => None,
            }
        };
        for inside in [spec.least, spec.most] {
            assert_eq!(problem_at(inside), None, "{field} at {inside}");
        }
        // Whole numbers step by one; others by a hair more than the slack for rounding.
        let step = match spec.kind {
            Kind::Count => 1.0,
            _ => 1e-6 * (spec.most - spec.least),
        };
        let below = problem_at(spec.least - step);
        let least = Value::new(spec.kind, spec.least);
        assert_eq!(below, Some(Problem::BelowLeast { least }), "{field}");
        let above = problem_at(spec.most + step);
        let most = Value::new(spec.kind, spec.most);
        assert_eq!(above, Some(Problem::AboveMost { most }), "{field}");
        assert!(spec.least < spec.most, "{field}");
        if let Blank::Assumed(si) = spec.blank {
            assert!(spec.least <= si && si <= spec.most, "{field} assumes what it would refuse");
        }
        checked += 1;
    }
    assert!(checked > 500, "{checked}");
}
