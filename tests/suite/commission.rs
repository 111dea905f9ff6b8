//! What is measured, judged: readings that the engine makes of a system with a known fault give that
//! fault back.

mod rooms;

use crate::support::{add_room, add_wall, cold_day, job_of, set, solve};
use finrun_engine::arrangement::{RunDesign, run};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::commission::{AtTop, By, CircuitFinding, FillingFinding, Judged, judge};
use finrun_engine::design::Design;
use finrun_engine::fluid::Fluid;
use finrun_engine::job::{
    Arrangement, Balancing, CircuitField, Draft, Field, FlowBasis, Job, Measured, PlantField, Spot,
    measured, read,
};
use finrun_engine::job::{MeasuredField, SpotField};
use finrun_engine::network::Place;
use finrun_engine::quantity::{Pressure, Temperature, Unit, VolumeFlow};

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

fn psi(value: f64) -> Pressure {
    Pressure::of(value, Unit::Psi)
}

/// Four equal rooms for a day of 0 °F, on one zone.
fn four_rooms(arrangement: Arrangement) -> (Job, Design) {
    let mut draft = four_rooms_draft();
    draft.arrange(ZoneId(0), arrangement);
    solve(&draft)
}

fn four_rooms_draft() -> Draft {
    let mut draft = cold_day();
    for name in ["A", "B", "C", "D"] {
        let room = add_room(&mut draft, name, "14", "12");
        add_wall(&mut draft, room, "14", "0.5");
    }
    draft
}

/// The system as it is built with a fault: other water, another flow.
fn faulty(job: &Job, design: &Design, supply: Temperature, flow_share: f64) -> RunDesign {
    let mut job = job.clone();
    let meant = design.piping.mass_flow * flow_share;
    job.circuit.flow = finrun_engine::job::Flow::Typed(meant / job.circuit.fluid.density(supply));
    job.circuit.supply = supply;
    run(&job, design, &job.zones.iter().map(|zone| zone.id).collect::<Vec<_>>())
}

/// What comes back from each circuit, by its last own stretch.
fn backs(design: &Design, ran: &RunDesign) -> Vec<(RoomId, Temperature)> {
    let back = |circuit: &finrun_engine::arrangement::CircuitDesign| {
        let last = *circuit.rooms.last().expect("a room");
        let places = [Place::Back(last), Place::BranchBack(last)];
        let own = ran.passages.iter().find(|passage| places.contains(&passage.place));
        (circuit.rooms[0], own.expect("its way back").water_out)
    };
    design.piping.circuits.iter().map(back).collect()
}

fn at(room: RoomId, spot: Spot) -> (RoomId, Spot) {
    (room, spot)
}

fn read_water(design: &Design, ran: &RunDesign, supply: Temperature) -> Measured {
    let spots = backs(design, ran).into_iter().map(|(first, back)| {
        at(first, Spot { supply: Some(supply), back: Some(back), ..Spot::default() })
    });
    Measured { spots: spots.collect(), ..Measured::default() }
}

fn only(judged: &Judged) -> &CircuitFinding {
    let [circuit] = &judged.circuits[..] else { panic!("{judged:?}") };
    let [finding] = &circuit.findings[..] else { panic!("{circuit:?}") };
    finding
}

/// The last digit of a share that is estimated by the mean water.
fn about(found: f64, expected: f64) {
    assert!((found / expected - 1.0).abs() < 0.06, "{found} instead of {expected}");
}

/// On the design day and on any other water, a sound system is found sound.
#[test]
fn a_sound_system_is_found_sound() {
    for arrangement in [Arrangement::Series, Arrangement::Split, Arrangement::HomeRun] {
        let (job, design) = four_rooms(arrangement);
        for supply in [180.0, 150.0, 125.0].map(fahrenheit) {
            let ran = faulty(&job, &design, supply, 1.0);
            let judged = judge(&job, &design, &read_water(&design, &ran, supply));
            assert_eq!(judged.circuits.len(), design.piping.circuits.len());
            for (circuit, (_, back)) in judged.circuits.iter().zip(backs(&design, &ran)) {
                let fits = matches!(circuit.findings[..], [CircuitFinding::Fits { .. }]);
                assert!(fits, "{arrangement:?} {circuit:?}");
                // It would bring back just this.
                let expected = circuit.back.expect("a return");
                assert!((expected - back).abs().si() < 0.05, "{expected:?} {back:?}");
            }
        }
    }
}

#[test]
fn low_flow_is_found_in_proportion() {
    let (job, design) = four_rooms(Arrangement::Series);
    for share in [0.75, 0.6, 0.45] {
        let supply = fahrenheit(170.0);
        let ran = faulty(&job, &design, supply, share);
        let judged = judge(&job, &design, &read_water(&design, &ran, supply));
        match only(&judged) {
            CircuitFinding::FlowLow { share: found, by: By::Drop { .. } } => about(*found, share),
            other => panic!("{share}: {other:?}"),
        }
    }
    let supply = fahrenheit(170.0);
    let judged =
        judge(&job, &design, &read_water(&design, &faulty(&job, &design, supply, 0.15), supply));
    assert!(matches!(only(&judged), CircuitFinding::Still { .. }), "{judged:?}");
    let judged =
        judge(&job, &design, &read_water(&design, &faulty(&job, &design, supply, 1.7), supply));
    match only(&judged) {
        CircuitFinding::FlowHigh { share, .. } => about(*share, 1.7),
        other => panic!("{other:?}"),
    }
}

/// Of four home runs one is starved: that one is named.
#[test]
fn one_starved_circuit_among_others_is_named() {
    let (job, design) = four_rooms(Arrangement::HomeRun);
    let supply = fahrenheit(180.0);
    let sound = read_water(&design, &faulty(&job, &design, supply, 1.0), supply);
    let starved = read_water(&design, &faulty(&job, &design, supply, 0.5), supply);
    let mut mixed = sound.clone();
    mixed.spots[2] = starved.spots[2];
    let judged = judge(&job, &design, &mixed);
    for (nth, circuit) in judged.circuits.iter().enumerate() {
        match (nth, &circuit.findings[..]) {
            (2, [CircuitFinding::FlowLow { share, .. }]) => about(*share, 0.5),
            (2, other) => panic!("{other:?}"),
            (_, findings) => assert!(matches!(findings, [CircuitFinding::Fits { .. }])),
        }
    }
}

/// A return as hot as the supply: no heat is given. Hotter than that: read the wrong way round.
#[test]
fn hot_returns_are_told_apart() {
    let (job, design) = four_rooms(Arrangement::Series);
    let first = design.piping.circuits[0].rooms[0];
    let reading = |supply: f64, back: Option<f64>, flow: Option<f64>| {
        let spot = Spot {
            supply: Some(fahrenheit(supply)),
            back: back.map(fahrenheit),
            flow: flow.map(|flow| VolumeFlow::of(flow, Unit::GallonPerMinute)),
            ..Spot::default()
        };
        let measured = Measured { spots: vec![at(first, spot)], ..Measured::default() };
        *only(&judge(&job, &design, &measured))
    };
    let meant = design.piping.flow.to(Unit::GallonPerMinute);
    let drop = (design.piping.supply - design.piping.circuits[0].back).to(Unit::FahrenheitDegree);
    assert!(matches!(reading(180.0, Some(178.0), None), CircuitFinding::HardlyCools { .. }));
    assert!(matches!(reading(160.0, Some(179.0), None), CircuitFinding::Backward { .. }));
    assert!(matches!(reading(90.0, Some(85.0), None), CircuitFinding::TooCool { .. }));
    assert_eq!(reading(180.0, None, None), CircuitFinding::HalfRead);
    // A flow tells by itself whether it is the one that is meant.
    let flow_alone = |flow: f64| {
        let flow = Some(VolumeFlow::of(flow, Unit::GallonPerMinute));
        let spot = Spot { flow, ..Spot::default() };
        let measured = Measured { spots: vec![at(first, spot)], ..Measured::default() };
        *only(&judge(&job, &design, &measured))
    };
    assert!(matches!(flow_alone(meant), CircuitFinding::FlowFits { .. }));
    assert!(matches!(flow_alone(meant * 0.5), CircuitFinding::FlowLow { .. }));
    // Flow times drop: with the flow that is meant, half the drop is half the heat.
    match reading(180.0, Some(180.0 - drop / 2.0), Some(meant)) {
        CircuitFinding::LessHeat { share } => about(share, 0.5),
        other => panic!("{other:?}"),
    }
    assert!(matches!(reading(180.0, Some(145.0), Some(meant)), CircuitFinding::MoreHeat { .. }));
    match reading(180.0, Some(150.0), Some(meant * 0.6)) {
        CircuitFinding::FlowLow { share, by: By::Meter { .. } } => about(share, 0.6),
        other => panic!("{other:?}"),
    }
    assert!(matches!(reading(180.0, Some(180.0 - drop), Some(meant)), CircuitFinding::Fits { .. }));
}

#[test]
fn a_valve_at_another_setting_is_named() {
    let mut draft = four_rooms_draft();
    let far = draft.rooms[3].id;
    set(&mut draft, Field::Room(far, finrun_engine::job::RoomField::PipeTo), "60");
    draft.arrange(ZoneId(0), Arrangement::HomeRun);
    draft.zones[0].balancing = Balancing::Valves;
    let (job, design) = solve(&draft);
    let circuit = &design.piping.circuits[0];
    let planned = circuit.valve.cv.expect("a setting");
    let set_to = |cv: f64| {
        let spot = Spot { valve_cv: Some(cv), ..Spot::default() };
        let measured = Measured { spots: vec![at(circuit.rooms[0], spot)], ..Measured::default() };
        *only(&judge(&job, &design, &measured))
    };
    assert_eq!(set_to(planned * 1.05), CircuitFinding::ValveFits { set: planned * 1.05 });
    assert_eq!(set_to(planned * 2.0), CircuitFinding::ValveOff { set: planned * 2.0, planned });
    // The hardest circuit's stays open: a Cv of 9 as typed is what it is held against.
    set(&mut draft, Field::Part(finrun_engine::job::PartField::BalancingCv), "9");
    let (job, design) = solve(&draft);
    let open = design.piping.circuits.iter().max_by_key(|circuit| circuit.valve.order);
    let first = open.expect("one that stays open").rooms[0];
    assert_eq!(first, far);
    let set_to = |cv: f64| {
        let spot = Spot { valve_cv: Some(cv), ..Spot::default() };
        let measured = Measured { spots: vec![at(first, spot)], ..Measured::default() };
        *only(&judge(&job, &design, &measured))
    };
    assert_eq!(set_to(9.0), CircuitFinding::ValveFits { set: 9.0 });
    match set_to(4.5) {
        CircuitFinding::ValveOff { set, planned } => {
            assert!(set == 4.5 && (planned / 9.0 - 1.0).abs() < 0.01, "{planned}");
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn pressures_and_weather_are_judged() {
    let mut draft = four_rooms_draft();
    set(&mut draft, Field::Plant(PlantField::Fill), "12");
    let (job, design) = solve(&draft);
    let found = |fill: f64, charge: f64| {
        let measured = Measured {
            fill: Some(psi(fill)),
            pre_charge: Some(psi(charge)),
            outdoors: Some(fahrenheit(-8.0)),
            ..Measured::default()
        };
        judge(&job, &design, &measured).filling
    };
    let weather = |of: &FillingFinding| matches!(of, FillingFinding::ColderThanPlanned { .. });
    match &found(12.5, 11.5)[..] {
        [FillingFinding::FillFits { .. }, FillingFinding::ChargeFits { .. }, last] => {
            assert!(weather(last));
        }
        other => panic!("{other:?}"),
    }
    // A gauge is off by 1 psi, not by 2.
    assert!(matches!(
        found(10.0, 14.0)[..],
        [FillingFinding::FillLow { .. }, FillingFinding::ChargeHigh { .. }, _]
    ));
    // The top of a single storey stands 9 ft up: 3.9 psi of water, by 0.433 psi a foot.
    match &found(6.0, 15.0)[..] {
        [
            FillingFinding::FillLow { at_top, air_comes_in, .. },
            FillingFinding::ChargeHigh { .. },
            _,
        ] => {
            assert!((at_top.to(Unit::Psi) - (6.0 - 9.0 * 0.433)).abs() < 0.05, "{at_top:?}");
            assert_eq!(*air_comes_in, AtTop::TooLittle);
        }
        other => panic!("{other:?}"),
    }
    assert!(matches!(
        found(20.0, 8.0)[..],
        [FillingFinding::FillHigh { .. }, FillingFinding::ChargeLow { .. }, _]
    ));
}

/// What is typed is read in its unit; what cannot be read is said, and the job stands all the same.
#[test]
fn readings_are_read_and_stand_in_nobodys_way() {
    let mut draft = four_rooms_draft();
    let first = draft.rooms[0].id;
    set(&mut draft, Field::Spot(first, SpotField::Supply), "80 C");
    set(&mut draft, Field::Spot(first, SpotField::Back), "hot");
    set(&mut draft, Field::Measured(MeasuredField::Fill), "-3");
    let found = measured(&draft);
    assert_eq!(found.at(first).supply, Some(Temperature::of(80.0, Unit::Celsius)));
    assert_eq!((found.at(first).back, found.fill), (None, None));
    let reading = read(&draft);
    let fields: Vec<Field> = reading.errors.iter().map(|error| error.field).collect();
    assert_eq!(fields, [Field::Measured(MeasuredField::Fill), Field::Spot(first, SpotField::Back)]);
    assert_eq!(reading.job, Some(job_of(&four_rooms_draft())));
    assert_eq!(draft.progress.readings(), 3);
}

/// No readings, no findings; any readings, no panic, whatever the system.
#[test]
fn every_arrangement_and_glycol_is_judged_without_a_panic() {
    for arrangement in [
        Arrangement::Series,
        Arrangement::Split,
        Arrangement::DiverterTees,
        Arrangement::DirectReturn,
        Arrangement::ReverseReturn,
        Arrangement::HomeRun,
    ] {
        let mut draft = four_rooms_draft();
        draft.arrange(ZoneId(0), arrangement);
        draft.flow_basis = FlowBasis::FromPump;
        let (mut job, design) = solve(&draft);
        assert_eq!(judge(&job, &design, &Measured::default()), Judged::default());
        job.circuit.fluid = Fluid::PropyleneGlycol { share: 0.3 };
        for extreme in [-40.0, 32.0, 70.0, 180.0, 250.0].map(fahrenheit) {
            let spot = Spot {
                supply: Some(extreme),
                back: Some(extreme),
                flow: Some(VolumeFlow::ZERO),
                valve_cv: Some(0.0),
                air: Some(extreme),
                ..Spot::default()
            };
            let spots = job.house.rooms.iter().map(|room| at(room.id, spot)).collect();
            let measured = Measured { outdoors: Some(extreme), spots, ..Measured::default() };
            let judged = judge(&job, &design, &measured);
            assert_eq!(judged.rooms.len(), 4, "{arrangement:?}");
        }
    }
    // Water no warmer than the rooms gives a design without a flow.
    let mut draft = four_rooms_draft();
    set(&mut draft, Field::Circuit(CircuitField::Supply), "80");
    let (job, design) = solve(&draft);
    let first = job.house.rooms[0].id;
    let spot =
        Spot { supply: Some(fahrenheit(80.0)), back: Some(fahrenheit(75.0)), ..Spot::default() };
    let measured = Measured { spots: vec![at(first, spot)], ..Measured::default() };
    judge(&job, &design, &measured);
}
