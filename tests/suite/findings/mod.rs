//! Each finding on a small job made for it, with its subject, its remedies, and the job beside it
//! that has no such finding.

mod cases;
mod loops;
mod piping;
mod plant;
mod remedies;
mod rooms;
mod shop;
mod values;

use crate::support::{add_room, add_wall, cold_day, job_of, solve};
use cases::typed_flow;
use finrun_engine::building::{RoomId, SurfaceId};
use finrun_engine::check::{Check, Finding, Subject};
use finrun_engine::design::design;
use finrun_engine::job::Draft;
use finrun_engine::quantity::Temperature;
use loops::LOOP;
use piping::PIPING;
use plant::PLANT;
use rooms::ROOMS;
use serde_json::Value;
use shop::SHOP;

const FIRST: RoomId = RoomId(1);
const FIRST_WALL: SurfaceId = SurfaceId(2);
const SECOND: RoomId = RoomId(3);
const SECOND_WALL: SurfaceId = SurfaceId(4);

/// Two rooms, each losing 0.5 Btu/(h ft2 F) x 96 ft2 x 70 °F = 3360 Btu/h, on 4 gpm of 180 °F:
/// everything holds.
fn sound() -> Draft {
    let mut draft = cold_day();
    for (name, id, wall) in [("First", FIRST, FIRST_WALL), ("Second", SECOND, SECOND_WALL)] {
        assert_eq!(add_room(&mut draft, name, "12", "10"), id);
        assert_eq!(add_wall(&mut draft, id, "12", "0.5"), wall);
    }
    typed_flow(&mut draft, "4");
    draft
}

/// The name under which a finding or remedy is stored.
pub(crate) fn tag(value: impl serde::Serialize) -> String {
    match serde_json::to_value(value).expect("plain data") {
        Value::String(name) => name,
        Value::Object(fields) => fields.keys().next().cloned().unwrap_or_default(),
        other => other.to_string(),
    }
}

/// `stop room-1 does-not-fit: more-wall, reduce-loss`.
fn describe(check: &Check) -> String {
    let subject = match check.subject {
        Subject::Room(id) => format!("room-{}", id.0),
        other => tag(other),
    };
    let remedies: Vec<String> = check.remedies.iter().map(tag).collect();
    let line = format!("{} {subject} {}", tag(check.severity), tag(check.finding));
    if remedies.is_empty() { line } else { format!("{line}: {}", remedies.join(", ")) }
}

fn described(draft: &Draft) -> Vec<String> {
    solve(draft).1.checks.iter().map(describe).collect()
}

const SOUND: [&str; 6] = [
    "holds house rooms-heated",
    "holds house per-area",
    "holds loop drop",
    "holds loop velocity",
    "holds loop tube-carries",
    "holds boiler supply",
];

#[test]
fn a_sound_job_has_nothing_but_what_holds() {
    assert_eq!(described(&sound()), SOUND);
}

#[test]
fn each_job_has_its_findings_and_no_others() {
    let mut wrong = Vec::new();
    for (index, case) in ROOMS.iter().chain(LOOP).chain(PIPING).chain(PLANT).chain(SHOP).enumerate()
    {
        let mut draft = sound();
        (case.change)(&mut draft);
        let mut found = described(&draft);
        let kept = SOUND.iter().copied().filter(|line| !case.takes.contains(line));
        let mut expected: Vec<&str> = kept.chain(case.brings.iter().copied()).collect();
        found.sort();
        expected.sort_unstable();
        if found != expected {
            wrong.push(format!("case {index}: {found:#?} instead of {expected:#?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// No typed job leads there; one built in code does, and every number that is none is named.
#[test]
fn results_that_are_no_numbers_are_named() {
    let mut job = job_of(&sound());
    job.circuit.supply = Temperature::from_si(f64::NAN);
    let found: Vec<String> = design(&job).checks.iter().map(describe).collect();
    for subject in ["room-1", "room-3", "loop"] {
        let line = format!("stop {subject} not-finite");
        assert!(found.contains(&line), "{line} is not in {found:?}");
    }
    assert!(!found.iter().any(|line| line == "holds house rooms-heated"), "{found:?}");
}

/// Every finding of the engine has a case above. A new one does not compile here until it has.
#[test]
fn every_finding_is_made_by_a_case() {
    fn name(finding: Finding) -> &'static str {
        match finding {
            Finding::RoomsHeated { .. } => "rooms-heated",
            Finding::DoesNotFit { .. } => "does-not-fit",
            Finding::WaterTooCool { .. } => "water-too-cool",
            Finding::NoWall { .. } => "no-wall",
            Finding::NoLoad { .. } => "no-load",
            Finding::OtherHeatCovers { .. } => "other-heat-covers",
            Finding::WallsRuledOut { .. } => "walls-ruled-out",
            Finding::NoPieceFits { .. } => "no-piece-fits",
            Finding::StockUsedUp { .. } => "stock-used-up",
            Finding::PricesMissing { .. } => "prices-missing",
            Finding::FixedExceedsStock { .. } => "fixed-exceeds-stock",
            Finding::PerArea { .. } => "per-area",
            Finding::EnteredTwice { .. } => "entered-twice",
            Finding::Drop { .. } => "drop",
            Finding::Velocity { .. } => "velocity",
            Finding::TubeCarries { .. } => "tube-carries",
            Finding::Supply { .. } => "supply",
            Finding::ReturnCool { .. } => "return-cool",
            Finding::OutsideData { .. } => "outside-data",
            Finding::NotFinite => "not-finite",
            Finding::NotSolved { .. } => "not-solved",
            Finding::EmptyZone => "empty-zone",
            Finding::MainSmaller { .. } => "main-smaller",
            Finding::PumpShort { .. } => "pump-short",
            Finding::Uneven { .. } => "uneven",
            Finding::NoFlow { .. } => "no-flow",
            Finding::FastAlone { .. } => "fast-alone",
            Finding::ShutOff { .. } => "shut-off",
            Finding::BoilerSize { .. } => "boiler-size",
            Finding::ShortCycle { .. } => "short-cycle",
            Finding::Boils { .. } => "boils",
            Finding::FillLow { .. } => "fill-low",
            Finding::ReliefNear { .. } => "relief-near",
            Finding::MayFreeze { .. } => "may-freeze",
        }
    }
    // Made in code, for no typed job leads there.
    let mut seen: Vec<&str> = vec!["not-finite", "not-solved"];
    for case in ROOMS.iter().chain(LOOP).chain(PIPING).chain(PLANT).chain(SHOP) {
        let mut draft = sound();
        (case.change)(&mut draft);
        for check in solve(&draft).1.checks {
            assert_eq!(name(check.finding), tag(check.finding));
            seen.push(name(check.finding));
        }
    }
    seen.sort_unstable();
    seen.dedup();
    assert_eq!(seen.len(), 34, "{seen:?}");
}
