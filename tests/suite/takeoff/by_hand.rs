//! The cottage, counted by hand.
//!
//! Three rooms: great room with 10 ft and 2 ft of element on one run of wall, bath with 3 ft, bedroom
//! with 9 ft. Typed are 8, 5 and 6 ft of pipe to them and 12 ft back; no way is described, so that each
//! takes four elbows and leaves the enclosure. The boiler room is as it is taken: six elbows, two tees.
//!
//! Shipped, on one loop: joints 3 + 2 + 2 at the pieces; 24 ft of enclosure, two caps a room; pipe
//! 8 + 5 + 6 + 12 ft; elbows 6 + 3 x 4 to the rooms + 4 back; the boiler room's tees.
//!
//! Between two mains with direct return the mains are 8 + 5 + 6 ft each way, with four elbows to each
//! room and four back. Each room hangs on 6 ft of branch with four elbows, taken; the two before the last
//! on a tee each way.

use super::{counted, part, sum};
use crate::shipped::COTTAGE;
use crate::support::{open, solve};
use finrun_engine::job::{Arrangement, Draft, PriceField};
use finrun_engine::quantity::Unit;
use finrun_engine::takeoff::count::{Class, joints};

/// The pieces in whole feet, by room.
fn pieces(draft: &Draft) -> Vec<Vec<f64>> {
    let (_, design) = solve(draft);
    let feet = |room: &finrun_engine::design::RoomDesign| {
        room.element.choice.pieces().map(|piece| piece.to(Unit::Foot).round()).collect()
    };
    design.rooms.iter().map(feet).collect()
}

fn is_counted(draft: &Draft, expected: &[(PriceField, f64)], all_joints: u32) {
    let items = counted(draft);
    for &field in finrun_engine::named::Named::ALL {
        let by_hand = expected.iter().find(|(other, _)| *other == field).map_or(0.0, |(_, n)| *n);
        assert_eq!(part(&items, field), by_hand, "{field:?}");
    }
    assert_eq!(joints(&items), all_joints);
    assert_eq!(sum(&items, |item| matches!(item.class, Class::Piece(_))), 4.0);
}

#[test]
fn the_cottage_as_it_is_shipped() {
    use PriceField::*;
    let draft = open(COTTAGE);
    assert_eq!(pieces(&draft), [vec![10.0, 2.0], vec![3.0], vec![9.0]], "count these anew");
    let expected = [
        (Joint, 7.0),
        (Enclosure, 24.0),
        (EndCap, 6.0),
        (Pipe, 31.0),
        (Elbow, 22.0),
        (Tee, 2.0),
        (Circulator, 1.0),
        (Thermostat, 1.0),
        (LoopValves, 1.0),
    ];
    is_counted(&draft, &expected, 7 + 2 * 22 + 3 * 2);
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
    ];
    is_counted(&draft, &expected, 7 + 2 * elbows as u32 + 3 * 6);
}
