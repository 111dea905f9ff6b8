//! The houses that are shipped to look around in: `../../public/demo`, made by `../jobs/make_*.py`.

use crate::support::{DEMO, open, solve};
use finrun_engine::building::{Band, RoomId};
use finrun_engine::check::{Finding, Severity};
use finrun_engine::job::{Draft, File};
use finrun_engine::quantity::{Area, Power, Unit};
use serde_json::Value;
use std::fmt::Write;

pub(crate) const TWO_STOREY: &str = include_str!("../../public/demo/two-storey.json");
pub(crate) const COTTAGE: &str = include_str!("../../public/demo/cottage.json");

pub(crate) const SHIPPED: [&str; 3] = [DEMO, TWO_STOREY, COTTAGE];

#[test]
fn shipped_houses_read_and_heat_every_room() {
    for text in SHIPPED {
        let draft = open(text);
        let (_, design) = solve(&draft);
        assert!(draft.name.ends_with("(demo)"), "{}", draft.name);
        let heated = Finding::RoomsHeated { rooms: draft.rooms.len() };
        assert!(design.checks.iter().any(|check| check.finding == heated), "{}", draft.name);
        let stops = design.checks.iter().filter(|check| check.severity == Severity::Stop);
        assert_eq!(stops.count(), 0, "{}", draft.name);
        assert_eq!(design.spaces.len(), draft.spaces.len(), "{}", draft.name);
    }
}

/// Common practice, no source: ordinary houses of the colder states lose 20 to 45 Btu/h for each
/// square foot of heated floor, and a loop of 3/4 in tube carries 40,000 Btu/h.
#[test]
fn shipped_houses_are_ordinary_houses() {
    for text in SHIPPED {
        let draft = open(text);
        let (job, design) = solve(&draft);
        let floor: Area = job.house.rooms.iter().map(|room| room.floor_area).sum();
        let load = design.load.to(Unit::BtuPerHour);
        let per_area = load / floor.to(Unit::SquareFoot);
        assert!((20.0..45.0).contains(&per_area), "{}: {per_area}", draft.name);
        assert!(load < 40_000.0, "{}: {load}", draft.name);
    }
}

/// Nothing in the files is lost or left to a default that may change.
#[test]
fn shipped_houses_come_back_to_the_letter() {
    for text in SHIPPED {
        let draft = open(text);
        let before: Value = serde_json::from_str(text).expect("JSON");
        let after = serde_json::to_value(File::new(draft.clone())).expect("a file");
        assert_eq!(before, after, "{}", draft.name);
    }
}

fn btu_h(power: Power) -> f64 {
    power.to(Unit::BtuPerHour)
}

fn band(of: &Band) -> String {
    format!("{:.0} to {:.0}", btu_h(of.low), btu_h(of.high))
}

/// Loads, temperatures and bands, in Btu/h and degrees Fahrenheit.
fn headline(draft: &Draft) -> String {
    let (_, design) = solve(draft);
    let name = |id: RoomId| draft.room(id).map_or("?", |room| room.name.as_str());
    let mut out = String::new();
    let certainty = &design.certainty;
    let (load, house) = (btu_h(design.load), band(&certainty.house));
    writeln!(out, "{}: {load:.1}, {house}", draft.name).expect("a string");
    for (room, within) in design.rooms.iter().zip(&certainty.rooms) {
        let (name, load) = (name(room.room), btu_h(room.load.total));
        writeln!(out, "  {name}: {load:.1}, {}", band(within)).expect("a string");
    }
    for space in &design.spaces {
        let (name, at) = (name(space.space), space.temperature.to(Unit::Fahrenheit));
        writeln!(out, "  {name}: {at:.2} °F").expect("a string");
    }
    if let Some(slabs) = design.slabs {
        let (used, other) = (btu_h(slabs.used), btu_h(slabs.other));
        writeln!(out, "  slabs: {used:.1}, the other way {other:.1}").expect("a string");
    }
    let first: Vec<String> = certainty
        .effects
        .iter()
        .filter(|effect| effect.narrows > Power::ZERO)
        .take(3)
        .map(|effect| format!("{:?} by {:.0}", effect.subject, btu_h(effect.narrows)))
        .collect();
    writeln!(out, "  measure next: {}", first.join(", ")).expect("a string");
    out
}

#[test]
fn shipped_houses_in_headlines() {
    let headlines = SHIPPED.map(|text| headline(&open(text))).concat();
    insta::assert_snapshot!(headlines);
}
