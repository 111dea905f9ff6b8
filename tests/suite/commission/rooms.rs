//! What the air of the rooms tells: which of them is cool by its water, by its losses, by its element,
//! or with all its zone.

use super::{about, at, fahrenheit, four_rooms, four_rooms_draft};
use crate::support::{set, solve};
use finrun_engine::arrangement::run;
use finrun_engine::building::ZoneId;
use finrun_engine::commission::{Beside, CircuitFinding, RoomFinding, judge};
use finrun_engine::design::Design;
use finrun_engine::job::{Arrangement, Field, Job, Measured, RoomField, Spot};
use finrun_engine::network::Place;
use finrun_engine::quantity::{Power, Temperature, Unit};

/// The same house with the loop laid the other way round.
#[test]
fn water_from_the_other_end_is_found() {
    let (job, design) = four_rooms(Arrangement::Series);
    let (supply, outdoors) = (fahrenheit(180.0), fahrenheit(15.0));
    let share = 0.8;
    let mut laid = job.clone();
    laid.zones[0].loops[0].reverse();
    let found = |of: &Job| {
        let airs = airs(of, &design, supply, outdoors, share, [1.0; 4]);
        let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
        let findings: Vec<CircuitFinding> =
            judged.circuits.iter().flat_map(|circuit| circuit.findings.clone()).collect();
        (findings, judged.rooms)
    };
    let reversed = |findings: &[CircuitFinding]| {
        findings.iter().any(|finding| matches!(finding, CircuitFinding::Reversed { .. }))
    };
    let (findings, rooms) = found(&laid);
    assert!(reversed(&findings), "{findings:?}");
    // The first room is cool as its circuit is.
    assert!(matches!(rooms[0].1, RoomFinding::BehindCircuit { .. }), "{rooms:?}");
    let (findings, _) = found(&job);
    assert!(!reversed(&findings), "{findings:?}");
}

/// Of four rooms one loses half as much again as was calculated, while the thermostat keeps the others.
#[test]
fn a_room_that_loses_more_is_found_beside_the_others() {
    let (job, design) = four_rooms(Arrangement::Series);
    let (supply, outdoors) = (fahrenheit(180.0), fahrenheit(20.0));
    let uneven = |factors| airs(&job, &design, supply, outdoors, 0.75, factors);
    let airs = uneven([1.0, 1.0, 1.5, 1.0]);
    let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
    let (_, finding) = judged.rooms[2];
    match finding {
        RoomFinding::LosesMore { times, beside: Beside::Others, .. } => about(times, 1.5),
        other => panic!("{other:?} at {airs:?}"),
    }
    // Another that loses more, too, does not hide it: the middle one of the others counts.
    let airs = uneven([1.0, 1.4, 1.5, 1.0]);
    let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
    match judged.rooms[2].1 {
        RoomFinding::LosesMore { times, .. } => about(times, 1.5),
        other => panic!("{other:?} at {airs:?}"),
    }
}

/// Water of 130 °F on the design day: the elements cannot, and it is said with watts.
#[test]
fn cool_water_on_a_cold_day_is_too_little_element() {
    let (job, design) = four_rooms(Arrangement::Series);
    let (supply, outdoors) = (fahrenheit(130.0), fahrenheit(0.0));
    let airs = airs(&job, &design, supply, outdoors, 1.0, [1.0; 4]);
    let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
    for (room, finding) in &judged.rooms {
        let RoomFinding::Undersized { gives, loses, .. } = finding else { panic!("{finding:?}") };
        // 0.5 Btu/(h ft2 F) x 14 ft x 8 ft x 70 °F = 3920 Btu/h, by hand.
        assert!((loses.to(Unit::BtuPerHour) - 3920.0).abs() < 1.0, "{room:?} {loses:?}");
        assert!(*gives < *loses * 0.7, "{gives:?}");
    }
}

/// A room with 1000 Btu/h from elsewhere wants the rest of its 3920 from its element: 2920, by hand.
#[test]
fn heat_from_elsewhere_is_no_loss() {
    let mut draft = four_rooms_draft();
    let id = draft.rooms[2].id;
    set(&mut draft, Field::Room(id, RoomField::OtherHeat), "1000");
    let (job, design) = solve(&draft);
    let (supply, outdoors) = (fahrenheit(130.0), fahrenheit(0.0));
    let airs = airs(&job, &design, supply, outdoors, 1.0, [1.0; 4]);
    let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
    let (room, RoomFinding::Undersized { loses, .. }) = judged.rooms[2] else {
        panic!("{judged:?}")
    };
    assert_eq!(room, id);
    assert!((loses.to(Unit::BtuPerHour) - 2920.0).abs() < 1.0, "{loses:?}");
}

#[test]
fn cool_rooms_without_more_readings_are_not_judged() {
    let (job, design) = four_rooms(Arrangement::Series);
    let one = |air: f64| {
        let spot = Spot { air: Some(fahrenheit(air)), ..Spot::default() };
        let room = job.house.rooms[1].id;
        let measured = Measured { spots: vec![at(room, spot)], ..Measured::default() };
        judge(&job, &design, &measured).rooms[0].1
    };
    assert!(matches!(one(70.5), RoomFinding::Fits { .. }));
    assert!(matches!(one(75.0), RoomFinding::Warm { .. }));
    assert!(matches!(one(64.0), RoomFinding::NotJudged { .. }));
}

/// A whole zone that is cool alike is no fault of one room.
#[test]
fn a_zone_that_is_cool_as_a_whole_is_told() {
    let (job, design) = four_rooms(Arrangement::Series);
    let (supply, outdoors) = (fahrenheit(180.0), fahrenheit(30.0));
    let airs = airs(&job, &design, supply, outdoors, 0.42, [1.0; 4]);
    let judged = judge(&job, &design, &with_airs(&job, outdoors, supply, &airs));
    for (_, finding) in &judged.rooms {
        assert!(matches!(finding, RoomFinding::WithZone { .. }), "{judged:?}");
    }
}

/// The air of each room, where its element runs a share of the time at this weather, and loses
/// `factor` times what was calculated: found step by step, as the element gives less to warmer air.
fn airs(
    job: &Job,
    design: &Design,
    supply: Temperature,
    outdoors: Temperature,
    share: f64,
    factors: [f64; 4],
) -> Vec<Temperature> {
    let mut now = job.clone();
    now.circuit.supply = supply;
    let zones: Vec<ZoneId> = now.zones.iter().map(|zone| zone.id).collect();
    for _ in 0..60 {
        let ran = run(&now, design, &zones);
        for (at, room) in now.house.rooms.iter_mut().enumerate() {
            let own = ran.passages.iter().filter(|p| p.place == Place::Element(room.id));
            let heat: Power = own.map(|passage| passage.to_room).sum();
            let designed = job.house.rooms[at].temperature - job.house.site.outdoors;
            let loss = design.rooms[at].load.total / designed * factors[at];
            let steady = outdoors + heat * share / loss;
            room.temperature = room.temperature + (steady - room.temperature) * 0.4;
        }
    }
    now.house.rooms.iter().map(|room| room.temperature).collect()
}

fn with_airs(
    job: &Job,
    outdoors: Temperature,
    supply: Temperature,
    airs: &[Temperature],
) -> Measured {
    let rooms = job.house.rooms.iter().zip(airs).enumerate();
    let spots = rooms.map(|(nth, (room, &air))| {
        let supply = (nth == 0).then_some(supply);
        at(room.id, Spot { air: Some(air), supply, ..Spot::default() })
    });
    Measured { outdoors: Some(outdoors), spots: spots.collect(), ..Measured::default() }
}
