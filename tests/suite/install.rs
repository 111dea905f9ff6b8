//! The steps of the installation: those that a job needs and no others, each with its numbers, and
//! what is noted of them.

use crate::shipped::SHIPPED;
use crate::support::{V4_FIXTURE, add_room, add_wall, cold_day, open, set, solve};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::install::{Danger, Of, Phase, Step, Task, steps, straight_runs};
use finrun_engine::job::{
    Antifreeze, Arrangement, Balancing, CircuitField, Done, Draft, Field, LegDraft, LegKind,
    PlantField, PumpSet, RoomField, StepDraft, Zoning,
};
use finrun_engine::named::Named as _;
use finrun_engine::pipe::{Material, Tube};
use finrun_engine::plant::movement::movement;
use finrun_engine::quantity::{Length, TemperatureDifference, Unit};
use finrun_text as text;

fn steps_of(draft: &Draft) -> Vec<Step> {
    let (job, design) = solve(draft);
    steps(&job, &design)
}

fn has(steps: &[Step], name: &str) -> bool {
    steps.iter().any(|step| step.task.name() == name)
}

/// Three rooms on one series loop, each way described or not.
fn three_rooms() -> Draft {
    let mut draft = cold_day();
    for name in ["A", "B", "C"] {
        let room = add_room(&mut draft, name, "14", "12");
        add_wall(&mut draft, room, "14", "0.5");
    }
    draft
}

fn leg(draft: &mut Draft, at: usize, kind: LegKind) {
    draft.rooms[at].route.push(LegDraft { kind, entries: Default::default() });
}

#[test]
fn shipped_houses_step_by_step() {
    let mut out = String::new();
    for file in SHIPPED {
        let draft = open(file);
        out += &format!("{}\n", draft.name);
        let (mut phase, mut kind) = (None, "");
        for step in steps_of(&draft) {
            if phase != Some(step.task.phase()) {
                phase = Some(step.task.phase());
                out += &format!("  {}\n", text::phase(step.task.phase()));
            }
            let title = text::step_title(&draft, &step);
            let numbers = text::step_numbers(&draft, &step, draft.units);
            // As the page has it: once for all of a kind.
            if step.task.name() != kind {
                kind = step.task.name();
                out += &format!("    ({})\n", text::step_how(&step, draft.units));
            }
            out += &format!("    {}: {title}. {numbers}\n", step.id());
        }
    }
    insta::assert_snapshot!(out.replace('\u{a0}', " ").replace(" \n", "\n"));
}

/// Phases come in the order in which the work is done, none twice, and no id stands for two steps.
#[test]
fn steps_stand_in_working_order_each_with_an_id_of_its_own() {
    let mut drafts: Vec<Draft> = SHIPPED.iter().map(|file| open(file)).collect();
    drafts.push(open(V4_FIXTURE));
    for &arrangement in Arrangement::ALL {
        let mut draft = three_rooms();
        draft.arrange(ZoneId(0), arrangement);
        draft.zones[0].balancing = Balancing::Valves;
        drafts.push(draft.clone());
        draft.zones[0].pipe = Tube::PexHalf;
        draft.plant.antifreeze = Antifreeze::PropyleneGlycol;
        drafts.push(draft);
    }
    for draft in drafts {
        let steps = steps_of(&draft);
        assert!(steps.len() > 20, "{}", draft.name);
        let phases: Vec<Phase> = steps.iter().map(|step| step.task.phase()).collect();
        assert!(phases.is_sorted(), "{phases:?}");
        let mut ids: Vec<String> = steps.iter().map(Step::id).collect();
        let count = ids.len();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), count, "{}", draft.name);
        // What can kill is heeded in every job.
        for danger in [
            Danger::Scald,
            Danger::Relief,
            Danger::Fire,
            Danger::Gas,
            Danger::Mains,
            Danger::OldHouse,
            Danger::DrinkingWater,
            Danger::Pressure,
        ] {
            assert!(steps.iter().any(|step| step.task.danger() == Some(danger)), "{danger:?}");
        }
    }
}

#[test]
fn only_steps_that_the_job_needs() {
    let plain = three_rooms();
    let steps = steps_of(&plain);
    for absent in [
        "doorways",
        "oxygen-barrier",
        "transitions",
        "plastic-moves",
        "glycol",
        "insulate",
        "balance",
    ] {
        assert!(!has(&steps, absent), "{absent}");
    }
    assert!(has(&steps, "pipe-moves"));
    // One loop is one circuit, and is purged as its zone.
    let purged = |steps: &[Step]| {
        let purges = steps.iter().filter(|step| step.task.name() == "purge");
        purges.map(|step| step.of).collect::<Vec<_>>()
    };
    assert_eq!(purged(&steps), [Of::Zone(ZoneId(0))]);

    let mut doors = plain.clone();
    leg(&mut doors, 1, LegKind::Doorway);
    leg(&mut doors, 1, LegKind::Along);
    leg(&mut doors, 2, LegKind::Along);
    let steps = steps_of(&doors);
    let ways: Vec<&Step> = steps.iter().filter(|step| step.task.name() == "doorways").collect();
    let [way] = ways[..] else { panic!("{ways:?}") };
    assert_eq!((way.of, &way.task), (Of::Room(doors.rooms[1].id), &Task::Doorways { count: 1 }));
    // Down and up are two holes; a way along the wall has none.
    let holes = |room: RoomId| {
        steps.iter().find_map(|step| match step.task {
            Task::Bore { holes, .. } if step.of == Of::Room(room) => Some(holes),
            _ => None,
        })
    };
    assert_eq!(holes(doors.rooms[0].id), Some(None));
    assert_eq!(holes(doors.rooms[1].id), Some(Some(2)));
    assert_eq!(holes(doors.rooms[2].id), None);

    let mut plastic = plain.clone();
    plastic.zones[0].pipe = Tube::PexThreeQuarter;
    let steps = steps_of(&plastic);
    assert!(has(&steps, "oxygen-barrier") && has(&steps, "plastic-moves"));
    let transitions = steps.iter().find_map(|step| match step.task {
        Task::Transitions { count, .. } => Some(count),
        _ => None,
    });
    // Three elements with two ends each, and where the zone leaves the copper of the boiler room and
    // comes back to it, counted by hand.
    assert_eq!(transitions, Some(8));

    let mut glycol = plain.clone();
    glycol.plant.antifreeze = Antifreeze::PropyleneGlycol;
    assert!(has(&steps_of(&glycol), "glycol"));

    let mut mains = plain.clone();
    mains.arrange(ZoneId(0), Arrangement::HomeRun);
    mains.zones[0].balancing = Balancing::Valves;
    let steps = steps_of(&mains);
    let firsts: Vec<Of> = mains.rooms.iter().map(|room| Of::Circuit(room.id)).collect();
    assert_eq!(purged(&steps), firsts);
    let turns: Vec<u32> = steps
        .iter()
        .filter_map(|step| match step.task {
            Task::Balance { order, .. } => Some(order),
            _ => None,
        })
        .collect();
    assert_eq!(turns, [1, 2, 3]);
    assert!(steps_of(&cold_day()).is_empty());
}

/// CDA Copper Tube Handbook: 100 ft of copper grow by 1.128 in for each 100 °F; and of a run of a
/// job, from water of 50 °F in a room of 70 °F to a supply of 180 °F, by as much for 130 °F.
#[test]
fn copper_grows_as_the_handbook_says() {
    let rise = TemperatureDifference::of(100.0, Unit::FahrenheitDegree);
    let hundred = movement(Material::CopperL, Length::of(100.0, Unit::Foot), rise).whole;
    assert!((hundred.to(Unit::Inch) - 1.128).abs() < 0.001, "{}", hundred.to(Unit::Inch));
    let (job, design) = solve(&three_rooms());
    let runs = straight_runs(&job, &design);
    assert_eq!(runs.len(), 3);
    for (run, room) in runs.iter().zip(&design.rooms) {
        assert_eq!(run.long, room.element.choice.nominal);
        let inches = 1.128 * run.long.to(Unit::Foot) / 100.0 * 1.3;
        let found = run.growth.whole.to(Unit::Inch);
        assert!((found / inches - 1.0).abs() < 0.001, "{found} instead of {inches}");
        // What is measured out is enough, a whole number of sixteenths, and not much more.
        let (gap, half) = (run.gap.to(Unit::Inch), inches / 2.0);
        assert!(gap >= half && gap < (half + 1.0 / 16.0).max(0.126), "{gap} for {half}");
        assert!((gap * 16.0).fract().abs() < 1e-9, "{gap}");
    }
}

/// By hand: 24 ft in a row grow by 1.128 x 0.24 x 1.3 = 0.352 in, half of it at each end: 0.176 in are no
/// less than 3/16.
#[test]
fn a_long_run_has_more_than_the_least_gap() {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Hall", "26", "12");
    let wall = add_wall(&mut draft, room, "26", "0.05");
    draft.fix_pieces(room, wall, 0, vec![10, 10, 4]);
    let (job, design) = solve(&draft);
    let [run] = straight_runs(&job, &design)[..] else { panic!("one run") };
    assert!((run.gap.to(Unit::Inch) - 3.0 / 16.0).abs() < 1e-9, "{:?}", run.gap);
}

/// PEX grows some 1.1 in by 100 ft and 10 °F (the trade's figure, from memory): 10 ft by 130 °F some 1.4 in,
/// many times as much as copper.
#[test]
fn plastic_grows_as_plastic() {
    let mut draft = three_rooms();
    draft.zones[0].pipe = Tube::PexThreeQuarter;
    let growth = steps_of(&draft).iter().find_map(|step| match step.task {
        Task::PlasticMoves { growth, .. } => Some(growth.to(Unit::Inch)),
        _ => None,
    });
    let growth = growth.expect("it moves");
    assert!((1.1..1.6).contains(&growth), "{growth}");
}

/// A hole lets the pipe move by the gap on either side: 7/8 in tube and 1/8 in twice.
#[test]
fn holes_leave_room_for_the_riser() {
    let steps = steps_of(&three_rooms());
    let wide = steps.iter().find_map(|step| match step.task {
        Task::Bore { wide, .. } => Some(wide.to(Unit::Inch)),
        _ => None,
    });
    let wide = wide.expect("a hole");
    assert!((1.125 - 1e-9..1.3).contains(&wide), "{wide}");
}

/// The test is above the fill and a tenth below the relief valve; where the two are too near, none
/// can lie between.
#[test]
fn the_pressure_test_lies_between_fill_and_relief() {
    let test = |fill: &str, relief: &str| {
        let mut draft = three_rooms();
        set(&mut draft, Field::Plant(PlantField::Fill), fill);
        set(&mut draft, Field::Plant(PlantField::Relief), relief);
        let steps = steps_of(&draft);
        steps.iter().find_map(|step| match step.task {
            Task::PressureTest { test, .. } => Some(test.map(|test| test.to(Unit::Psi))),
            _ => None,
        })
    };
    let usual = test("12", "30").flatten().expect("a test");
    assert!((usual - 27.0).abs() < 1e-6, "{usual}");
    assert_eq!(test("24", "30"), Some(None));
}

/// Water at 2 ft/s in 3/4 in type M tube of 0.811 in: 0.811² π/4 in² × 24 in/s = 12.40 in³/s, of which
/// 231 in³ are a gallon: 3.22 gpm.
#[test]
fn purging_takes_water_that_carries_air() {
    let steps = steps_of(&three_rooms());
    let flow = steps.iter().find_map(|step| match step.task {
        Task::Purge { flow, .. } => Some(flow.to(Unit::GallonPerMinute)),
        _ => None,
    });
    let flow = flow.expect("a purge");
    assert!((flow - 3.22).abs() < 0.01, "{flow}");
}

/// Between mains a circuit's air has to pass the widest of its tubes: at 2 ft/s 1 in type M tube of 1.055 in
/// takes 1.055² π/4 in² × 24 in/s = 20.98 in³/s, 5.45 gpm.
#[test]
fn purging_is_for_the_widest_tube() {
    let mut draft = three_rooms();
    draft.arrange(ZoneId(0), Arrangement::DirectReturn);
    (draft.zones[0].main, draft.zones[0].pipe) = (Tube::CopperMOne, Tube::CopperMHalf);
    let steps = steps_of(&draft);
    let mut purges = 0;
    for step in &steps {
        if let Task::Purge { tube, flow } = step.task {
            assert_eq!(tube, Tube::CopperMOne);
            let flow = flow.to(Unit::GallonPerMinute);
            assert!((flow - 5.45).abs() < 0.01, "{flow}");
            purges += 1;
        }
    }
    assert!(purges > 0);
}

/// What is wired: one circulator, or the pair that shares the work; with two zones by valves a valve each
/// beside it, by circulators a circulator each and no valve.
#[test]
fn what_is_wired_is_counted() {
    let wired = |draft: &Draft| {
        let steps = steps_of(draft);
        let wire = steps.iter().find_map(|step| match step.task {
            Task::Wire { circulators, zone_valves, .. } => Some((circulators, zone_valves)),
            _ => None,
        });
        wire.expect("something to wire")
    };
    let mut draft = three_rooms();
    assert_eq!(wired(&draft), (1, 0));
    draft.pump.set = PumpSet::TwoInSeries;
    assert_eq!(wired(&draft), (2, 0));
    draft.pump.set = PumpSet::One;
    let (zone, last) = (draft.add_zone(), draft.rooms[2].id);
    draft.room_mut(last).expect("it").zone = zone;
    assert_eq!(wired(&draft), (1, 2));
    draft.zoning = Zoning::Circulators;
    assert_eq!(wired(&draft), (2, 0));
}

fn tick(draft: &mut Draft, id: &str) {
    draft.note_step(id, &mut |step| {
        step.done = Done::Done;
        step.note = "wet cloth used".to_string();
    });
}

#[test]
fn ticks_stay_with_their_step_and_come_back_with_it() {
    let mut draft = three_rooms();
    let b = draft.rooms[1].id;
    let id = Step { of: Of::Room(b), task: Task::Solder { joints: 2 } }.id();
    assert!(steps_of(&draft).iter().any(|step| step.id() == id));
    tick(&mut draft, &id);

    // Other pieces, another supply, another order: the same step.
    let mut hotter = draft.clone();
    set(&mut hotter, Field::Circuit(CircuitField::Supply), "150");
    hotter.rooms.swap(0, 1);
    let same = steps_of(&hotter);
    let same: Vec<&Step> = same.iter().filter(|step| step.id() == id).collect();
    assert_eq!(same.len(), 1);
    assert!(hotter.progress.is_done(&id));

    // A room without a load has no element and no joints; with its load the tick is there again.
    let mut warm = draft.clone();
    set(&mut warm, Field::Room(b, RoomField::OtherHeat), "50000");
    assert!(!steps_of(&warm).iter().any(|step| step.id() == id));
    assert!(warm.progress.is_done(&id));
    set(&mut warm, Field::Room(b, RoomField::OtherHeat), "");
    assert!(steps_of(&warm).iter().any(|step| step.id() == id));
    assert_eq!(warm.progress.step(&id).map(|step| step.note.as_str()), Some("wet cloth used"));

    // Nothing noted is nothing kept.
    draft.note_step(&id, &mut |step| *step = StepDraft { step: id.clone(), ..Default::default() });
    assert_eq!(draft.progress.steps, []);
}
