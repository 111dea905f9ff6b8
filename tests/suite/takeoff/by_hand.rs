//! Two shipped houses counted by hand in `../../jobs/quantities.md`, held equal here; and the cottage
//! between two mains.
//!
//! Between two mains with direct return the mains are 8 + 5 + 6 ft each way, with four elbows to each
//! room and four back. Each room hangs on 6 ft of branch with four elbows, taken; the two before the last
//! on a tee each way.

use super::{counted, part, sum};
use crate::shipped::{COTTAGE, TWO_STOREY};
use crate::support::{open, solve};
use finrun_engine::job::{Arrangement, Draft, PriceField};
use finrun_engine::named::{Named, find};
use finrun_engine::quantity::Unit;
use finrun_engine::takeoff::count::joints;
use finrun_engine::takeoff::item::Class;
use finrun_engine::takeoff::list::{Buy, list};

const BY_HAND: &str = include_str!("../../jobs/quantities.md");

/// The rows of a house's tables: what and how many.
fn rows(house: &str) -> Vec<(String, f64)> {
    let of = BY_HAND.split("\n## ").find(|part| part.starts_with(house)).expect("the house");
    let cells = |line: &str| line.split('|').map(|cell| cell.trim().to_string()).collect();
    let lines = of.lines().filter(|line| line.starts_with('|')).map(cells);
    let row = |cells: Vec<String>| Some((cells[1].clone(), cells[2].parse().ok()?));
    lines.filter_map(row).collect()
}

fn is_as_by_hand(house: &str, text: &str) {
    let draft = open(text);
    let rows = rows(house);
    assert!(rows.len() > 30, "{house}: {} rows", rows.len());
    let by_hand = |name: &str| rows.iter().find(|(n, _)| n == name).map_or(0.0, |(_, n)| *n);
    for (name, _) in &rows {
        assert!(find::<PriceField>(name).is_some() || name.starts_with("stick-"), "{name}");
    }
    let items = counted(&draft);
    for &field in PriceField::ALL {
        assert_eq!(part(&items, field), by_hand(field.name()), "{house}: {field:?}");
    }
    let (job, design) = solve(&draft);
    let take_off = list(&job, &design);
    let mut sticks = Vec::new();
    for entry in &take_off.lines {
        if let Buy::Lengths(lengths) = &entry.buy {
            let feet = |length: f64| format!("stick-{length:.0}");
            sticks.extend(lengths.iter().map(|(l, n)| (feet(l.to(Unit::Foot)), f64::from(*n))));
        }
    }
    let mut wanted = rows;
    wanted.retain(|(name, _)| name.starts_with("stick-"));
    assert_eq!(sticks, wanted, "{house}");
}

#[test]
fn the_cottage_as_it_is_shipped() {
    let feet = pieces(&open(COTTAGE));
    assert_eq!(feet, [vec![10.0, 2.0], vec![3.0], vec![9.0]], "count these anew");
    is_as_by_hand("cottage", COTTAGE);
}

#[test]
fn the_two_storey_house_as_it_is_shipped() {
    let feet = pieces(&open(TWO_STOREY));
    let by_hand: [&[f64]; 9] =
        [&[8.0], &[7.0], &[9.0, 2.0], &[9.0, 2.0], &[10.0], &[8.0], &[4.0], &[6.0], &[10.0]];
    assert_eq!(feet, by_hand, "count these anew");
    is_as_by_hand("two-storey", TWO_STOREY);
}

/// The pieces in whole feet, by room.
fn pieces(draft: &Draft) -> Vec<Vec<f64>> {
    let (_, design) = solve(draft);
    let feet = |room: &finrun_engine::design::RoomDesign| {
        room.element.choice.pieces().map(|piece| piece.to(Unit::Foot).round()).collect()
    };
    design.rooms.iter().map(feet).collect()
}

#[test]
fn the_cottage_between_two_mains() {
    use PriceField::*;
    let mut draft = open(COTTAGE);
    draft.arrange(draft.zones[0].id, Arrangement::DirectReturn);
    let feet = pieces(&draft).concat().iter().sum();
    assert_eq!(pieces(&draft).iter().map(Vec::len).collect::<Vec<_>>(), [2, 1, 1]);
    let elbows = 6.0 + 3.0 * (4.0 + 4.0 + 4.0);
    let expected = [
        (Joint, 7.0),
        (Enclosure, feet),
        (EndCap, 6.0),
        (Pipe, 2.0 * 19.0 + 3.0 * 6.0),
        (Elbow, elbows),
        (Tee, 2.0 + 2.0 * 2.0),
        (BalancingValve, 3.0),
        (Circulator, 1.0),
        (Thermostat, 1.0),
        (LoopValves, 1.0),
        // One at each element: mains and branches are of different sizes where that is usual.
        (AirVent, 3.0),
    ];
    let items = counted(&draft);
    for (field, by_hand) in expected {
        assert_eq!(part(&items, field), by_hand, "{field:?}");
    }
    assert_eq!(sum(&items, |item| matches!(item.class, Class::Piece(_))), 4.0);
    // At each room a reducer each way where main and branch differ in size, and at its element where
    // branch and element do; at the boiler's pipe where that and the main do.
    let zone = &draft.zones[0];
    let differ = |a: finrun_engine::pipe::Tube, b: finrun_engine::pipe::Tube| {
        f64::from(u8::from(a.nominal() != b.nominal()))
    };
    let at_rooms = 6.0 * (differ(zone.main, zone.pipe) + differ(zone.pipe, draft.tube));
    assert_eq!(part(&items, Reducer), at_rooms);
    let more = part(&items, Reducer);
    let valves = 3.0 + part(&items, ShutOffValve) + part(&items, PurgeValve);
    let all = 7.0 + 2.0 * elbows + 3.0 * 6.0 + 2.0 * more + 2.0 * valves + part(&items, Adapter);
    assert_eq!(f64::from(joints(&items)), all);
}
