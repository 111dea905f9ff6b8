//! The way to a room: what its steps come to, and which pipe counts where it hangs.

use crate::support::{room as type_room, set};
use finrun_engine::building::RoomId;
use finrun_engine::job::{
    Arrangement, BackPath, Choice, Draft, Field, LegField, LegKind, PIPE_FIELDS, Pick, RoomField,
    pipe_fields, way_to,
};
use finrun_engine::quantity::{System, Unit};

fn three() -> (Draft, [RoomId; 3]) {
    let mut draft = Draft::new("", System::Us);
    let rooms = ["Hall", "Kitchen", "Den"].map(|name| draft.add_room(name));
    (draft, rooms)
}

/// Feet, elbows, caps.
fn way(draft: &Draft, room: RoomId) -> (f64, u32, u32) {
    let way = way_to(draft, room).expect("a way");
    (Unit::Foot.from_si(way.length.si()), way.elbows, way.end_caps)
}

fn assert_way(draft: &Draft, room: RoomId, expected: (f64, u32, u32)) {
    let (feet, elbows, caps) = way(draft, room);
    assert!((feet - expected.0).abs() < 1e-9, "{feet} ft");
    assert_eq!((elbows, caps), (expected.1, expected.2));
}

/// Counted by hand on a sketch of three rooms in a row: nothing described, each enclosure has its two
/// ends; 10 ft and 4 elbows each are what is assumed.
#[test]
fn ways_not_described_end_each_enclosure() {
    let (draft, rooms) = three();
    // The first begins one, the next ends that and begins its own, the last also ends its own.
    for (room, caps) in rooms.into_iter().zip([1, 2, 3]) {
        assert_way(&draft, room, (10.0, 4, caps));
    }
}

/// Counted by hand: the enclosure runs on round the corner, and stops before the door and begins
/// behind it.
#[test]
fn the_enclosure_runs_on_along_walls_and_stops_at_doors() {
    let (mut draft, [hall, kitchen, den]) = three();
    for kind in [LegKind::Along, LegKind::InsideCorner, LegKind::Along] {
        draft.add_leg(kitchen, kind);
    }
    set(&mut draft, Field::Leg(kitchen, 0, LegField::Length), "4");
    for kind in [LegKind::OutsideCorner, LegKind::Doorway, LegKind::Along] {
        draft.add_leg(den, kind);
    }
    // 4 typed, 1 and 2 usual; one elbow.
    assert_way(&draft, kitchen, (7.0, 1, 0));
    // 1, 6 and 2 usual; a corner, and two elbows at each end of the door; one cap on each side of the
    // door, one behind the last element.
    assert_way(&draft, den, (9.0, 5, 3));
    let all: u32 = [hall, kitchen, den].map(|room| way(&draft, room).2).iter().sum();
    assert_eq!(all, 4, "two stretches of enclosure, two ends each");
    // Pipe beside the route adds to it.
    type_room(&mut draft, den, RoomField::PipeTo, "3");
    type_room(&mut draft, den, RoomField::Elbows, "2");
    assert_way(&draft, den, (12.0, 7, 3));
}

#[test]
fn through_floors_and_below_the_enclosure_ends() {
    for (kind, elbows) in [(LegKind::ThroughFloor, 2), (LegKind::Below, 4), (LegKind::Doorway, 4)] {
        let (mut draft, [_, kitchen, _]) = three();
        draft.add_leg(kitchen, kind);
        let (_, counted, caps) = way(&draft, kitchen);
        assert_eq!((counted, caps), (elbows, 2), "{kind:?}");
    }
}

#[test]
fn between_mains_each_element_stands_by_itself() {
    let (mut draft, rooms) = three();
    draft.arrange(draft.zones[0].id, Arrangement::DirectReturn);
    draft.add_leg(rooms[1], LegKind::Along);
    for room in rooms {
        assert_eq!(way(&draft, room).2, 2);
    }
}

#[test]
fn a_way_that_cannot_be_read_comes_to_nothing() {
    let (mut draft, [hall, ..]) = three();
    type_room(&mut draft, hall, RoomField::PipeTo, "x");
    assert_eq!(way_to(&draft, hall), None);
    assert_eq!(way_to(&draft, RoomId(99_999)), None);
}

/// Every pipe that is asked for changes the system, and no other of a room's does: what is asked is
/// what counts.
#[test]
fn the_pipe_that_is_asked_for_is_the_pipe_that_counts() {
    use crate::support::{DEMO, open, solve};
    let mut counted = 0;
    for arrangement in finrun_engine::named::Named::ALL.iter().copied() {
        for back in [BackPath::OwnWay, BackPath::InEnclosure] {
            let mut draft = open(DEMO);
            let zone = draft.zones[0].id;
            draft.arrange(zone, arrangement);
            draft.pick(Choice::BackPath(zone), Pick::BackPath(back));
            let (_, base) = solve(&draft);
            for room in draft.rooms.iter().map(|room| room.id) {
                let heated = base.room(room).is_some_and(|r| r.load.total.si() > 0.0);
                assert!(heated, "every room of this house loses heat");
                let asked = pipe_fields(&draft, room);
                assert!(asked.iter().all(|field| PIPE_FIELDS.contains(field)), "{asked:?}");
                for field in PIPE_FIELDS {
                    let mut changed = draft.clone();
                    // Far from anything assumed, and much of it.
                    type_room(&mut changed, room, field, "37");
                    let (_, design) = solve(&changed);
                    let counts = design.piping != base.piping;
                    let asked = asked.contains(&field);
                    assert_eq!(counts, asked, "{arrangement:?}, {back:?}, {room:?}, {field:?}");
                    counted += usize::from(counts);
                }
            }
        }
    }
    assert!(counted > 50, "{counted}");
}
