//! Suggested loops: the best of all splits by trying them all, and what they do to a house.

use crate::support::{add_room, add_wall, cold_day, room, set, solve};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, BackPath, CircuitField, Draft, Field, FlowBasis, PriceField, PumpKind, RoomField,
    SizedField, StockField, ZoneField,
};
use finrun_engine::network::TypicalPump;
use finrun_engine::quantity::{Money, Power, Unit};
use finrun_engine::suggest::{
    Change, Direction, End, Gain, MOST_LOOPS, Part, Score, Suggestion, Trouble, Verdict, suggest,
};
use proptest::prelude::*;

const ZONE: ZoneId = ZoneId(0);

/// Rooms of one outside wall each, by its length in feet and its U.
fn house(walls: &[(u32, &str)]) -> Draft {
    let mut draft = cold_day();
    for (at, (length, u)) in walls.iter().enumerate() {
        let id = add_room(&mut draft, &format!("Room {at}"), &length.to_string(), "10");
        add_wall(&mut draft, id, &length.to_string(), u);
    }
    draft
}

pub(crate) fn changes(draft: &Draft) -> Change {
    match suggest(draft, ZONE).expect("a zone on loops") {
        Verdict::Changes(change) => change,
        Verdict::Stays(figures) => panic!("stays: {figures:?}"),
    }
}

fn stays(draft: &Draft) {
    match suggest(draft, ZONE).expect("a zone on loops") {
        Verdict::Stays(_) => {}
        Verdict::Changes(change) => panic!("{change:?}"),
    }
}

fn apply(draft: &Draft, change: &Change) -> Draft {
    let mut draft = draft.clone();
    let loops: Vec<&[RoomId]> = change.loops.iter().map(|l| l.rooms.as_slice()).collect();
    draft.hang_on_loops(ZONE, &loops);
    draft
}

fn short(design: &Design) -> usize {
    design.rooms.iter().filter(|room| room.short() > Power::ZERO).count()
}

/// Every split of so many rooms into loops next to one another, each walked both ways.
fn every_split(rooms: usize) -> Vec<Vec<Part>> {
    let mut all = Vec::new();
    // Bit by bit: whether a loop ends behind a room, and which way each of its loops is walked.
    for ends in 0..1usize << (rooms - 1) {
        let count = ends.count_ones() as usize + 1;
        if count > MOST_LOOPS {
            continue;
        }
        for turned in 0..1usize << count {
            let (mut parts, mut first) = (Vec::new(), 0);
            for last in 0..rooms {
                if last + 1 == rooms || ends >> last & 1 == 1 {
                    let direction = match turned >> parts.len() & 1 {
                        0 => Direction::AsNow,
                        _ => Direction::Reversed,
                    };
                    parts.push(Part { first, last, direction });
                    first = last + 1;
                }
            }
            all.push(parts);
        }
    }
    all
}

/// Follows every loop that could be.
fn followed(draft: &Draft) -> Suggestion {
    let mut suggestion = Suggestion::begin(draft, ZONE).expect("a zone on loops");
    while suggestion.step().is_none() {}
    suggestion
}

fn by_trying_all(suggestion: &mut Suggestion, loops: usize) -> Score {
    let splits = every_split(suggestion.rooms().len());
    let of_count = splits.iter().filter(|parts| parts.len() == loops);
    of_count.filter_map(|parts| suggestion.score(parts)).min().expect("one split at least")
}

fn is_the_best_of_all(draft: &Draft) {
    let mut suggestion = followed(draft);
    let rooms = suggestion.rooms().len();
    let best = suggestion.best_splits();
    assert_eq!(best.len(), MOST_LOOPS.min(rooms));
    for (nth, split) in best.iter().enumerate() {
        assert_eq!(split.parts.len(), nth + 1);
        assert_eq!(suggestion.score(&split.parts), Some(split.score), "{split:?}");
        assert_eq!(split.score, by_trying_all(&mut suggestion, nth + 1), "{split:?}");
        let joined: Vec<usize> = split.parts.iter().flat_map(|p| p.first..=p.last).collect();
        assert_eq!(joined, (0..rooms).collect::<Vec<_>>());
    }
}

/// Rooms, unlike pipe, little wall, cool water, and prices, as they come.
fn houses() -> impl Strategy<Value = Draft> {
    let rooms = prop::collection::vec((4..30u32, 1..9u32, 0..40u32, 0..9u32), 2..=6);
    (rooms, 120..200u32, 0..4u32, any::<[bool; 3]>()).prop_map(
        |(rooms, supply, split_after, [priced, from_pump, over])| {
            let u: Vec<String> = rooms.iter().map(|(_, u, ..)| format!("0.{u}")).collect();
            let walls: Vec<(u32, &str)> =
                rooms.iter().zip(&u).map(|((length, ..), u)| (*length, u.as_str())).collect();
            let mut draft = house(&walls);
            let ids: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
            for (id, (_, _, pipe, elbows)) in ids.iter().zip(&rooms) {
                room(&mut draft, *id, RoomField::PipeTo, &pipe.to_string());
                room(&mut draft, *id, RoomField::Elbows, &elbows.to_string());
            }
            set(&mut draft, Field::Circuit(CircuitField::Supply), &supply.to_string());
            if split_after > 0 && (split_after as usize) < ids.len() {
                let (a, b) = ids.split_at(split_after as usize);
                draft.hang_on_loops(ZONE, &[a, b]);
            }
            if priced {
                price(&mut draft, "25");
            }
            if from_pump {
                draft.flow_basis = FlowBasis::FromPump;
            }
            if over {
                draft.zone_mut(ZONE).expect("the zone").back = BackPath::InEnclosure;
            }
            draft
        },
    )
}

pub(crate) fn price(draft: &mut Draft, loop_valves: &str) {
    for feet in draft.element.stock_ft.clone() {
        set(
            draft,
            Field::Stocked(feet, StockField::Price),
            &(10 + 8 * u32::from(feet)).to_string(),
        );
    }
    set(draft, Field::Price(PriceField::LoopValves), loop_valves);
    set(draft, Field::Price(PriceField::Pipe), "3");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..Default::default() })]

    /// Against trying every split of up to six rooms.
    #[test]
    fn the_best_split_is_the_best_of_all(draft in houses()) {
        is_the_best_of_all(&draft);
    }

    #[test]
    fn suggested_loops_leave_no_more_rooms_short(draft in houses()) {
        if let Some(Verdict::Changes(change)) = suggest(&draft, ZONE) {
            let (_, before) = solve(&draft);
            let (_, after) = solve(&apply(&draft, &change));
            prop_assert!(short(&after) <= short(&before), "{change:?}");
            prop_assert_eq!(short(&after), change.after.short_rooms);
            prop_assert_eq!(short(&before), change.before.short_rooms);
        }
    }
}

/// Where pipe loses no heat, a loop followed by itself is what the whole system makes of it: each
/// split of four rooms designed as a whole has the same element and the same rooms short.
#[test]
fn a_loop_by_itself_is_as_in_the_whole_system() {
    let mut draft = house(&[(14, "0.5"), (30, "0.3"), (9, "0.7"), (22, "0.4")]);
    // Little wall in one room, so that directions differ in who is short.
    let (id, wall) = (draft.rooms[2].id, draft.rooms[2].surfaces[0].id);
    set(&mut draft, Field::Surface(id, wall, finrun_engine::job::SurfaceField::Free), "8");
    for id in draft.rooms.iter().map(|room| room.id).collect::<Vec<_>>() {
        for field in
            [RoomField::PipeTo, RoomField::Elbows, RoomField::PipeBack, RoomField::ElbowsBack]
        {
            room(&mut draft, id, field, "0");
        }
    }
    for field in [ZoneField::Trunk, ZoneField::TrunkElbows] {
        set(&mut draft, Field::Zone(ZONE, field), "0");
    }
    // Past other elements the pipe has a length of its own: it must not cool there.
    set(&mut draft, Field::Circuit(CircuitField::PipeFilm), "0");
    let mut suggestion = followed(&draft);
    let rooms = suggestion.rooms();
    let mut seen = std::collections::BTreeSet::new();
    for parts in every_split(4) {
        let score = suggestion.score(&parts).expect("every room has a load");
        let loops: Vec<Vec<RoomId>> =
            parts.iter().map(|part| part.places().map(|at| rooms[at]).collect()).collect();
        let mut changed = draft.clone();
        changed.hang_on_loops(ZONE, &loops.iter().map(Vec::as_slice).collect::<Vec<_>>());
        let (_, design) = solve(&changed);
        let element_um = (design.element_length().si() * 1e6).round() as u64;
        assert!(score.element_um.abs_diff(element_um) <= 4, "{parts:?}: {score:?} {element_um}");
        assert_eq!(score.short_rooms, short(&design) as u64, "{parts:?}");
        seen.insert((score.short_rooms, element_um));
    }
    assert!(seen.len() > 3, "the splits are all alike: {seen:?}");
}

/// 8 rooms of 3,920 Btu/h, 31,360 Btu/h in all, and what bare pipe loses. By hand, 3/4 in copper M
/// (0.811 in inside) at 4 ft/s has 6.4 gpm, which at a drop of 10 °F carries about 31,000 Btu/h.
pub(crate) fn too_long() -> Draft {
    let mut draft = house(&[(14, "0.5"); 8]);
    set(&mut draft, Field::Circuit(CircuitField::Drop), "10");
    draft
}

#[test]
fn a_loop_too_long_for_its_tube_becomes_two() {
    let draft = too_long();
    let change = changes(&draft);
    assert_eq!(change.gain, Gain::WithinLimits);
    assert_eq!(change.loops.len(), 2);
    let of_loops = |trouble: &Trouble| matches!(trouble, Trouble::Carries { at: 0, .. });
    assert!(change.before.problems.iter().any(of_loops), "{:?}", change.before.problems);
    assert_eq!(change.after.problems.iter().filter(|t| of_loops(t)).count(), 0);
    // Loads alike, so that halves are the evenest.
    assert_eq!(change.loops.iter().map(|l| l.rooms.len()).collect::<Vec<_>>(), [4, 4]);
    // A loop ends behind the fourth room and another begins at the fifth, where none does today.
    let ends: Vec<End> = change.unknown.iter().map(|unknown| unknown.end).collect();
    assert_eq!(ends.len(), 2, "{:?}", change.unknown);
    // The whole of what stands on the way: four pipes of 10 ft and more than four elements of 7 ft.
    for unknown in &change.unknown {
        assert!(unknown.length.to(Unit::Foot) > 40.0 + 4.0 * 7.0, "{unknown:?}");
    }
    // Nothing typed is touched, and what is suggested is what then stands.
    let after = apply(&draft, &change);
    for room in &after.rooms {
        assert_eq!(draft.room(room.id).expect("kept").entries, room.entries);
    }
    let (_, design) = solve(&after);
    let off = design.element_length() - change.after.element;
    assert!(off.si().abs() < 1e-9, "{off:?}");
    assert_eq!(design.piping.zones[0].back, change.after.back);
    assert_eq!(after.zone(ZONE).expect("the zone").arrangement, Arrangement::Split);
    // Asked again, it is content.
    stays(&after);
}

/// 8 rooms of 5,600 Btu/h want more than 44,800 / 600 = 75 ft of element, which the tube carries; but
/// it is usual to stop at 4 gpm x 10,000 / 600 = 67 ft.
#[test]
fn a_loop_longer_than_is_usual_becomes_two() {
    let draft = house(&[(20, "0.5"); 8]);
    let change = changes(&draft);
    assert_eq!((change.gain, change.loops.len()), (Gain::WithinPractice, 2));
    assert!(
        change.before.problems.iter().any(|t| matches!(t, Trouble::Long { at: 0, .. })),
        "{:?}",
        change.before.problems
    );
}

#[test]
fn a_house_that_is_fine_stays_as_it_is() {
    stays(&house(&[(12, "0.5"), (14, "0.4"), (10, "0.5")]));
}

/// By hand: the last room loses 5,600 Btu/h (20 ft x 8 ft x 0.5 x 70 °F) and has 11 ft of wall for
/// pieces. First in the loop, in water of some 175 °F on the way through it, its element gives about
/// 600 x (105/115)^1.4 = 528 Btu/h a foot, so that 11 ft do; behind the others, in some 158 °F, it
/// gives about 413 and 11 ft do not.
pub(crate) fn largest_last() -> Draft {
    let mut draft = house(&[(12, "0.5"), (12, "0.5"), (12, "0.5"), (20, "0.5")]);
    let (id, wall) = (draft.rooms[3].id, draft.rooms[3].surfaces[0].id);
    set(&mut draft, Field::Surface(id, wall, finrun_engine::job::SurfaceField::Free), "11.5");
    draft
}

#[test]
fn the_other_way_round_helps_where_the_largest_load_is_last() {
    let draft = largest_last();
    let last = draft.rooms[3].id;
    let change = changes(&draft);
    assert_eq!(change.gain, Gain::RoomsHeated);
    assert!(
        matches!(change.before.problems[0], Trouble::Short { room, .. } if room == last),
        "{:?}",
        change.before.problems
    );
    assert_eq!(change.after.short_rooms, 0);
    let [one] = change.loops.as_slice() else { panic!("{:?}", change.loops) };
    assert_eq!(one.direction, Direction::Reversed);
    assert_eq!(one.rooms[0], last);
    // One loop has the ends that it has now.
    assert_eq!(change.unknown, []);
}

/// Two loops need more pipe and valves than the shorter elements save, and with dear elements they do
/// not: by the typed prices alone.
#[test]
fn prices_decide_where_all_else_is_well() {
    let mut draft = house(&[(13, "0.5"); 4]);
    price(&mut draft, "50");
    stays(&draft);
    let ids: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    draft.hang_on_loops(ZONE, &[&ids[..2], &ids[2..]]);
    let change = changes(&draft);
    assert_eq!((change.gain, change.loops.len()), (Gain::Cheaper, 1));
    let (before, after) = (change.before.cost.expect("priced"), change.after.cost.expect("priced"));
    // One set of valves, two tees' worth of nothing: at least the valves are saved but for the pieces.
    let pieces = |draft: &Draft| {
        let (job, design) = solve(draft);
        let price = |piece| {
            let stock =
                job.baseboard.stock.iter().find(|stock| (stock.length - piece).si().abs() < 1e-4);
            stock.and_then(|stock| stock.price).expect("priced").si()
        };
        design.rooms.iter().flat_map(|r| r.element.choice.pieces()).map(price).sum::<f64>()
    };
    let saved = (before - after).si();
    let of_pieces = pieces(&draft) - pieces(&apply(&draft, &change));
    // Today: 10 ft to each room, 10 ft and 10 ft back. As one loop the pipe between the two leads by
    // where they parted: the return of the first and the way of the second. So the pipe is the same.
    assert!((saved - of_pieces - 50.0).abs() < 1e-6, "{saved} {of_pieces}");
}

/// The pipe between the rooms in a size that has its own price, and in none else.
#[test]
fn loops_cost_what_their_size_of_tube_does() {
    let mut draft = house(&[(13, "0.5"); 4]);
    price(&mut draft, "50");
    let ids: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    draft.hang_on_loops(ZONE, &[&ids[..2], &ids[2..]]);
    let cost = |draft: &Draft| changes(draft).before.cost.map(Money::si);
    let for_any_size = cost(&draft).expect("priced");
    let tube = draft.zones[0].pipe;
    set(&mut draft, Field::Price(PriceField::Pipe), "");
    assert_eq!(cost(&draft), None, "half a cost would decide wrongly");
    set(&mut draft, Field::SizedPrice(tube, SizedField::Pipe), "3");
    let the_same = cost(&draft).expect("priced");
    assert!((the_same - for_any_size).abs() < 1e-6, "{the_same} {for_any_size}");
    // 60 ft by the ways typed: 10 ft to each room and 10 ft back from each loop.
    set(&mut draft, Field::SizedPrice(tube, SizedField::Pipe), "4");
    let dearer = cost(&draft).expect("priced");
    assert!((dearer - for_any_size - 60.0).abs() < 1e-6, "{dearer} {for_any_size}");
}

#[test]
fn a_circulator_too_weak_for_one_loop_gets_two() {
    let mut draft = house(&[(24, "0.5"); 5]);
    draft.flow_basis = FlowBasis::FromPump;
    draft.pump.kind = PumpKind::Typical(TypicalPump::Small);
    for id in draft.rooms.iter().map(|room| room.id).collect::<Vec<_>>() {
        room(&mut draft, id, RoomField::PipeTo, "40");
        room(&mut draft, id, RoomField::Elbows, "20");
    }
    let change = changes(&draft);
    assert!(
        change.before.problems.iter().any(|t| matches!(t, Trouble::PumpShort { .. })),
        "{:?}",
        change.before.problems
    );
    assert!(change.loops.len() > 1);
    assert!(!change.after.problems.iter().any(|t| matches!(t, Trouble::PumpShort { .. })));
}

#[test]
fn a_zone_that_does_not_hang_on_loops_has_none_to_suggest() {
    for arrangement in [Arrangement::DiverterTees, Arrangement::DirectReturn, Arrangement::HomeRun]
    {
        let mut draft = too_long();
        draft.arrange(ZONE, arrangement);
        assert_eq!(suggest(&draft, ZONE), None);
    }
    assert_eq!(suggest(&cold_day(), ZONE), None);
    assert_eq!(suggest(&too_long(), ZoneId(7)), None);
}

/// No step is long: it follows a bounded number of rooms, or solves one system.
#[test]
fn it_goes_in_many_steps() {
    let mut suggestion = Suggestion::begin(&too_long(), ZONE).expect("a zone on loops");
    let steps = 1 + (0..).take_while(|_| suggestion.step().is_none()).count();
    // 36 loops of 120 rooms in all, both ways, at most 64 and one loop in a step; then the systems.
    assert!(steps >= 4, "{steps}");
}
