//! Ways out for short rooms: each is taken by hand, and does what it says; a hair less of it does not.

use super::cases::{typed_flow, wall};
use super::{FIRST, FIRST_WALL, SECOND, sound};
use crate::support::{job_of, set, solve};
use finrun_engine::building::{RoomId, SurfaceKind, WallUse};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{
    Arrangement, Balancing, Behind, Draft, Field, Flow, FlowBasis, Job, PriceField, SizedField,
    StockField, SurfaceField,
};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Length, Money, Power, Resistance, Temperature, Unit, VolumeFlow};
use finrun_engine::remedy::{Circulator, Does, Remedies, Step, Way, Worked};
use finrun_engine::takeoff::item::Class;

/// An inside wall of 5 ft in a room, where baseboard may stand or not.
fn inside(draft: &mut Draft, room: RoomId, wall_use: WallUse) {
    let wall = draft.add_surface_to(room, SurfaceKind::Wall, Behind::SameTemperature);
    let wall = wall.expect("the room is there");
    set(draft, Field::Surface(room, wall, SurfaceField::Length), "5");
    draft.surface_mut(room, wall).expect("just added").wall_use = wall_use;
}

/// Jobs with a short room in them, by what is wrong.
fn short_houses() -> Vec<(&'static str, Draft)> {
    let mut out = Vec::new();
    let mut add = |name, change: fn(&mut Draft)| {
        let mut draft = sound();
        change(&mut draft);
        out.push((name, draft));
    };
    add("far too little wall", |draft| wall(draft, SurfaceField::Free, "4", "12"));
    add("nearly enough wall", |draft| wall(draft, SurfaceField::Free, "5' 6\"", "12"));
    add("both nearly", |draft| wall(draft, SurfaceField::Free, "5' 6\"", "5' 6\""));
    add("cool by the second room", |draft| {
        typed_flow(draft, "0.9");
        wall(draft, SurfaceField::Free, "12", "7' 4\"");
    });
    add("hardly any flow", |draft| typed_flow(draft, "0.05"));
    add("a wall ruled out", |draft| {
        wall(draft, SurfaceField::Free, "4", "12");
        inside(draft, FIRST, WallUse::Never);
    });
    add("only the short wall", |draft| {
        wall(draft, SurfaceField::Free, "4", "12");
        inside(draft, FIRST, WallUse::AsNeeded);
        draft.surface_mut(FIRST, FIRST_WALL).expect("its wall").wall_use = WallUse::Only;
    });
    add("no wall", |draft| wall(draft, SurfaceField::Free, "0", "12"));
    add("each a zone, both short", |draft| {
        wall(draft, SurfaceField::Free, "5' 6\"", "5' 6\"");
        let zone = draft.add_zone();
        draft.room_mut(SECOND).expect("its room").zone = zone;
    });
    out
}

/// How many rooms are short, and whether this one is.
fn short(design: &Design, id: RoomId) -> (usize, Power) {
    let all = design.rooms.iter().filter(|room| room.short() > Power::ZERO).count();
    (all, design.room(id).expect("its room").short())
}

/// `job` with a way out taken: as it says, or with `less` of a hundred hairs less of it. None where
/// there is no less.
fn taken(job: &Job, id: RoomId, way: Way, less: f64) -> Option<Job> {
    let before = design(job);
    let mut job = job.clone();
    let at = job.house.rooms.iter().position(|room| room.id == id)?;
    let room = &mut job.house.rooms[at];
    match way {
        Way::HotterWater { supply } => {
            job.circuit.supply = Temperature::from_si(supply.si() - 0.3 * less);
        }
        Way::BetterElement { factor, .. } => {
            let rating = &mut job.baseboard.element.rating;
            rating.output = rating.output * (factor - 0.012 * less);
        }
        Way::RuledOutWall { wall, .. } => {
            let only = room.surfaces.iter().any(|wall| wall.wall_use == WallUse::Only);
            let wall = room.surfaces.iter_mut().find(|s| s.id == wall)?;
            wall.wall_use = if only { WallUse::Only } else { WallUse::AsNeeded };
        }
        Way::NewWall { length } => {
            let mut wall = room.surfaces[0].clone();
            wall.id.0 = 999;
            wall.behind = finrun_engine::building::Behind::SameTemperature;
            wall.runs = vec![finrun_engine::building::Run {
                start: Length::ZERO,
                length: length - Length::from_si(0.03 * less),
            }];
            wall.openings.clear();
            room.surfaces.push(wall);
        }
        Way::MoreFlow { flow, .. } => {
            job.circuit.flow = Flow::Typed(flow * (1.0 - 0.015 * less));
        }
        // What is lost less is as good as heat from elsewhere.
        Way::LessLoss { by } => room.other_heat += by * (1.0 - 0.03 * less),
        Way::Insulate { surface, resistance, .. } => {
            let surface = room.surfaces.iter_mut().find(|s| s.id == surface)?;
            let resistance = Resistance::from_si(resistance.si() - 0.025 * less);
            surface.transmittance = resistance.transmittance();
        }
        Way::MoveFirst => {
            let rooms = &mut job.zones[0].loops[0];
            rooms.retain(|&room| room != at);
            rooms.insert(0, at);
        }
        Way::SecondCircuit { from, .. } => {
            let from = job.house.rooms.iter().position(|room| room.id == from)?;
            let zone = job.zones.iter_mut().find(|zone| zone.loops[0].contains(&from))?;
            let place = zone.loops[0].iter().position(|&room| room == from)?;
            let second = zone.loops[0].split_off(place);
            // There on the way back from the end, back on the way there from the beginning.
            let (first, nominal) =
                (zone.loops[0][place - 1], |room: usize| before.rooms[room].element.choice.nominal);
            let mut there = job.approaches[from].back;
            there.length += nominal(from);
            job.approaches[from].outside = there;
            let mut back = job.approaches[first].outside;
            back.length += nominal(first);
            job.approaches[first].back = back;
            zone.loops.push(second);
            zone.arrangement = Arrangement::Split;
            zone.balancing = Balancing::Valves;
        }
    }
    let same = matches!(way, Way::MoveFirst | Way::SecondCircuit { .. } | Way::RuledOutWall { .. });
    (less == 0.0 || !same).then_some(job)
}

/// Every way out comes true when it is taken, and with a hair less of it does not.
#[test]
fn ways_out_do_what_they_say_and_only_just() {
    let (mut told, mut kinds) = (0, std::collections::BTreeSet::new());
    for (name, draft) in short_houses() {
        let (job, before) = solve(&draft);
        let all = Remedies::all(&job, &before);
        assert!(!all.is_empty(), "{name}");
        for Worked { room, way, does, .. } in all {
            let (_, was) = short(&before, room);
            assert!(was > Power::ZERO, "{name}: {room:?} is not short");
            let after = design(&taken(&job, room, way, 0.0).expect("a change"));
            let (count, remains) = short(&after, room);
            let expected = match does {
                Does::HeatsAll => count == 0,
                Does::HeatsRoom => count > 0 && remains == Power::ZERO,
                Does::NotEnough { remains: said } => (said / remains - 1.0).abs() < 1e-3,
            };
            assert!(expected, "{name}: {way:?} {does:?}, but {count} short, {remains:?}");
            told += 1;
            kinds.insert(super::tag(way));
            if matches!(does, Does::NotEnough { .. }) {
                continue;
            }
            let Some(weaker) = taken(&job, room, way, 1.0) else { continue };
            let (count, remains) = short(&design(&weaker), room);
            let fails = match does {
                Does::HeatsAll => count > 0,
                _ => remains > Power::ZERO,
            };
            assert!(fails, "{name}: less than {way:?} would do");
        }
    }
    assert!(told > 40, "{told}");
    assert_eq!(kinds.len(), 9, "{kinds:?}");
}

/// The first short room of each circuit has ways out, and no other.
#[test]
fn each_circuit_has_its_first_short_room() {
    let rooms = |name: &str| {
        let (_, draft) = short_houses().into_iter().find(|(n, _)| *n == name).expect("a house");
        let (job, design) = solve(&draft);
        let mut rooms: Vec<RoomId> =
            Remedies::all(&job, &design).iter().map(|worked| worked.room).collect();
        rooms.dedup();
        rooms
    };
    assert_eq!(rooms("both nearly"), [FIRST]);
    assert_eq!(rooms("each a zone, both short"), [FIRST, SECOND]);
    assert_eq!(rooms("cool by the second room"), [SECOND]);
}

/// What heats all rooms stands before what heats this one, the cheaper before the dearer, what has no
/// price behind.
#[test]
fn the_best_stands_first() {
    for (name, mut draft) in short_houses() {
        for (field, price) in [
            (PriceField::BetterElement, "9"),
            (PriceField::Insulation, "3"),
            (PriceField::LoopValves, "80"),
            (PriceField::Pipe, "4"),
        ] {
            set(&mut draft, Field::Price(field), price);
        }
        let (job, design) = solve(&draft);
        let all = Remedies::all(&job, &design);
        for pair in all.windows(2).filter(|pair| pair[0].room == pair[1].room) {
            let key = |worked: &Worked| {
                let does = match worked.does {
                    Does::HeatsAll => 0,
                    Does::HeatsRoom => 1,
                    Does::NotEnough { .. } => 2,
                };
                let priced = worked.cost.filter(|_| worked.unpriced.is_empty());
                (does, priced.map_or(f64::INFINITY, Money::si))
            };
            assert!(key(&pair[0]) <= key(&pair[1]), "{name}: {pair:#?}");
        }
    }
}

/// The steps find what all at once finds, and nothing is done while no room is short.
#[test]
fn steps_come_to_the_whole() {
    for (name, draft) in short_houses() {
        let (job, design) = solve(&draft);
        let (mut remedies, mut found, mut steps) = (Remedies::new(&job, &design), Vec::new(), 0);
        loop {
            steps += 1;
            assert!(steps < 1000, "{name}");
            match remedies.step() {
                Step::Working => {}
                Step::Found(worked) => found.push(worked),
                Step::Done => break,
            }
        }
        let all = Remedies::all(&job, &design);
        assert_eq!(found.len(), all.len(), "{name}");
        assert!(found.iter().all(|worked| all.contains(worked)), "{name}");
    }
    let (job, design) = solve(&sound());
    assert_eq!(Remedies::new(&job, &design).step(), Step::Done);
}

fn find(draft: &Draft, pick: fn(&Way) -> bool) -> Worked {
    let job = job_of(draft);
    let all = Remedies::all(&job, &design(&job));
    all.iter().find(|worked| pick(&worked.way)).unwrap_or_else(|| panic!("{all:#?}")).clone()
}

/// Costs by hand: First has 3 ft of pieces where some 6 are needed, and an inside wall that takes 4.
#[test]
fn costs_add_up() {
    let mut draft = sound();
    wall(&mut draft, SurfaceField::Free, "4", "12");
    inside(&mut draft, FIRST, WallUse::Never);
    let ruled_out = |way: &Way| matches!(way, Way::RuledOutWall { .. });
    let unpriced = find(&draft, ruled_out);
    let Way::RuledOutWall { pieces, .. } = unpriced.way else { unreachable!() };
    // 3360 Btu/h at some 550 a foot, of which 3 ft stand.
    assert!((pieces.to(Unit::Foot) - 4.0).abs() < 1e-9, "{pieces:?}");
    assert_eq!(unpriced.cost, None);
    assert_eq!(
        unpriced.unpriced,
        [Class::Piece(pieces), Class::Part(PriceField::Joint), Class::Part(PriceField::EndCap)]
    );
    for (field, price) in [
        (PriceField::Joint, "6"),
        (PriceField::EndCap, "5"),
        (PriceField::Enclosure, "8"),
        (PriceField::Insulation, "2.50"),
        (PriceField::BetterElement, "11"),
        (PriceField::LoopValves, "75"),
        (PriceField::BalancingValve, "40"),
        (PriceField::Pipe, "3"),
        (PriceField::Circulator, "160"),
    ] {
        set(&mut draft, Field::Price(field), price);
    }
    set(&mut draft, Field::Stocked(4, StockField::Price), "30");
    let cost = |worked: &Worked| worked.cost.expect("a cost").si();
    // A piece of 4 ft, its enclosure, two joints and two caps.
    let priced = find(&draft, ruled_out);
    assert_eq!(priced.unpriced, []);
    assert!((cost(&priced) - (30.0 + 4.0 * 8.0 + 2.0 * 6.0 + 2.0 * 5.0)).abs() < 1e-9);
    // One bought already and used nowhere.
    set(&mut draft, Field::Stocked(4, StockField::Have), "1");
    let bought = find(&draft, ruled_out);
    assert!((cost(&bought) - (4.0 * 8.0 + 12.0 + 10.0)).abs() < 1e-9, "{bought:?}");
    let hotter = find(&draft, |way| matches!(way, Way::HotterWater { .. }));
    assert_eq!(hotter.cost, Some(Money::ZERO));
    let insulated = find(&draft, |way| matches!(way, Way::Insulate { .. }));
    // The wall's 96 ft2.
    assert!((cost(&insulated) - 240.0).abs() < 1e-6, "{insulated:?}");
    let better = find(&draft, |way| matches!(way, Way::BetterElement { .. }));
    let Way::BetterElement { element, .. } = better.way else { unreachable!() };
    assert!((cost(&better) - 11.0 * element.to(Unit::Foot)).abs() < 1e-6, "{better:?}");

    // Slow water, Second short: ways of 10 ft each, so that 10 + 10 + 10 less 10 remain and both elements.
    let mut draft = sound();
    typed_flow(&mut draft, "0.9");
    wall(&mut draft, SurfaceField::Free, "12", "7' 4\"");
    for (field, price) in [
        (PriceField::LoopValves, "75"),
        (PriceField::BalancingValve, "40"),
        (PriceField::Pipe, "3"),
    ] {
        set(&mut draft, Field::Price(field), price);
    }
    let elements = solve(&draft).1.element_length();
    let split = find(&draft, |way| matches!(way, Way::SecondCircuit { .. }));
    let Way::SecondCircuit { from, pipe } = split.way else { unreachable!() };
    assert_eq!(from, SECOND);
    let by_hand = elements + Length::of(10.0, Unit::Foot);
    assert!((pipe - by_hand).abs().si() < 1e-9, "{pipe:?} {by_hand:?}");
    let by_hand = 75.0 + 2.0 * 40.0 + 3.0 * by_hand.to(Unit::Foot);
    assert!((cost(&split) - by_hand).abs() < 1e-6, "{split:?} {by_hand}");
    // What the zone's own size costs stands above that; another's does not.
    let tube = draft.zones[0].pipe;
    let other = Tube::ALL.iter().copied().find(|other| *other != tube).expect("more than one");
    for (tube, pipe, valve) in [(tube, "5", "60"), (other, "900", "900")] {
        set(&mut draft, Field::SizedPrice(tube, SizedField::Pipe), pipe);
        set(&mut draft, Field::SizedPrice(tube, SizedField::BalancingValve), valve);
    }
    let split = find(&draft, |way| matches!(way, Way::SecondCircuit { .. }));
    let Way::SecondCircuit { pipe, .. } = split.way else { unreachable!() };
    let by_hand = 75.0 + 2.0 * 60.0 + 5.0 * pipe.to(Unit::Foot);
    assert!((cost(&split) - by_hand).abs() < 1e-6, "{split:?} {by_hand}");
}

/// More flow names the circulator: a small one gives 3 gpm through two short rooms, and no 6.
#[test]
fn more_flow_asks_for_its_circulator() {
    let mut draft = sound();
    typed_flow(&mut draft, "0.05");
    let found = find(&draft, |way| matches!(way, Way::MoreFlow { .. }));
    let Way::MoreFlow { flow, circulator } = found.way else { unreachable!() };
    assert_eq!(circulator, Circulator::GivesIt, "{found:?}");
    assert_eq!(found.cost, Some(Money::ZERO));
    assert!(flow < VolumeFlow::of(1.0, Unit::GallonPerMinute), "{flow:?}");
    // Half a mile of pipe: the same circulator moves a trickle.
    set(&mut draft, Field::Room(FIRST, finrun_engine::job::RoomField::PipeTo), "1000");
    set(&mut draft, Field::Room(SECOND, finrun_engine::job::RoomField::PipeTo), "1000");
    set(&mut draft, Field::Circuit(finrun_engine::job::CircuitField::PipeFilm), "0");
    draft.pump.kind =
        finrun_engine::job::PumpKind::Typical(finrun_engine::network::TypicalPump::Small);
    draft.flow_basis = FlowBasis::FromPump;
    let moved = solve(&draft).1.piping.flow;
    wall(&mut draft, SurfaceField::Free, "7", "5' 6\"");
    let all = Remedies::all(&job_of(&draft), &solve(&draft).1);
    for worked in &all {
        if let Way::MoreFlow { flow, circulator } = worked.way {
            assert!(flow > moved);
            assert_eq!(circulator, Circulator::TooSmall, "{worked:?}");
            assert_eq!(worked.unpriced, [Class::Part(PriceField::Circulator)]);
        }
    }
    assert!(all.iter().any(|w| matches!(w.way, Way::MoreFlow { .. })), "{all:#?}");
}
