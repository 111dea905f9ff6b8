//! Rooms hung on zones and loops, and moved among them.

use crate::support::set;
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::job::{Arrangement, Choice, Draft, Field, Hung, Pick, RoomField};
use finrun_engine::quantity::System;

/// Rooms of two zones, the second split: five rooms, each loop as a list of names.
fn hung() -> (Draft, [Hung; 4]) {
    let mut draft = Draft::new("", System::Us);
    let first = draft.zones[0].id;
    let second = draft.add_zone();
    draft.arrange(second, Arrangement::Split);
    let places = [(first, 0), (second, 0), (second, 1), (second, 2)]
        .map(|(zone, branch)| Hung { zone, branch });
    // Mixed on purpose: a loop's rooms need not stand side by side in the list.
    for (name, place) in [("a", 0), ("p", 1), ("b", 0), ("q", 1), ("x", 2)] {
        let room = draft.add_room(name);
        draft.pick(Choice::Hung(room), Pick::Hung(places[place]));
    }
    (draft, places)
}

fn lists(draft: &Draft, places: &[Hung; 4]) -> [Vec<RoomId>; 4] {
    places.map(|place| {
        draft.rooms.iter().filter(|room| draft.hung(room) == place).map(|room| room.id).collect()
    })
}

/// Every room to every place before every other, as a person would with slips of paper.
#[test]
fn a_room_is_hung_wherever_it_is_dropped() {
    let (draft, places) = hung();
    let before = lists(&draft, &places);
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    let mut tried = 0;
    for &room in &rooms {
        for (to, &place) in places.iter().enumerate() {
            for target in rooms.iter().map(|&other| Some(other)).chain([None]) {
                let mut draft = draft.clone();
                draft.place_room(room, place, target);
                let mut expected = before.clone();
                if target != Some(room) {
                    for list in &mut expected {
                        list.retain(|other| *other != room);
                    }
                    let list = &mut expected[to];
                    let at = list.iter().position(|other| Some(*other) == target);
                    list.insert(at.unwrap_or(list.len()), room);
                }
                assert_eq!(lists(&draft, &places), expected, "{room:?} to {place:?}, {target:?}");
                assert_eq!(draft.rooms.len(), rooms.len());
                tried += 1;
            }
        }
    }
    assert_eq!(tried, 5 * 4 * 6);
}

#[test]
fn a_room_is_not_hung_on_what_is_gone() {
    let (mut draft, places) = hung();
    let before = draft.clone();
    let gone = Hung { zone: ZoneId(99), branch: 0 };
    draft.place_room(draft.rooms[0].id, gone, None);
    draft.place_room(RoomId(99_999), places[0], None);
    assert_eq!(draft, before);
}

/// As they stand on the list of rooms: zone by zone, loop by loop, each in the order of its water.
#[test]
fn rooms_stand_in_the_order_of_the_water() {
    let (draft, _) = hung();
    let names: Vec<&str> = draft
        .in_order()
        .into_iter()
        .filter_map(|id| draft.room(id).map(|room| room.name.as_str()))
        .collect();
    assert_eq!(names, ["a", "b", "p", "q", "x"]);
    assert_eq!(draft.branches(draft.zones[0].id), [0]);
    assert_eq!(draft.branches(draft.zones[1].id), [0, 1]);
    let mut empty = draft.clone();
    let zone = empty.add_zone();
    assert_eq!(empty.branches(zone), [0], "a place to drop the first room");
}

/// Whatever is named, in whatever order: the loops are as named, nobody is lost, and other zones keep
/// their rooms.
#[test]
fn a_zone_is_hung_on_the_loops_that_are_named() {
    let (draft, places) = hung();
    let zone = places[1].zone;
    let [others, p, q, x] = lists(&draft, &places);
    let all = [p.as_slice(), q.as_slice(), x.as_slice()].concat();
    let [a, b, c] = all[..] else { panic!("{all:?}") };
    let named = |loops: &[&[RoomId]]| {
        let mut draft = draft.clone();
        draft.hang_on_loops(zone, loops);
        assert_eq!(draft.rooms.len(), 5);
        let now = lists(&draft, &places);
        assert_eq!(now[0], others, "the other zone's");
        (draft.zone(zone).expect("it stays").arrangement, now[1..].to_vec())
    };
    let split = Arrangement::Split;
    assert_eq!(named(&[&[c, a], &[b]]), (split, vec![vec![c, a], vec![b], vec![]]));
    assert_eq!(named(&[&[b], &[c], &[a]]), (split, vec![vec![b], vec![c], vec![a]]));
    // One loop is a series loop.
    assert_eq!(named(&[&[c, b, a]]).0, Arrangement::Series);
    assert_eq!(named(&[&[c, b, a]]).1[0], [c, b, a]);
    // What is not named stays behind what it follows; what is named twice, or elsewhere, counts once.
    assert_eq!(named(&[&[a, c]]).1[0], [a, b, c]);
    assert_eq!(named(&[&[c], &[a]]), (split, vec![vec![c], vec![a, b], vec![]]));
    assert_eq!(
        named(&[&[a, a, others[0]], &[a, b, c]]),
        (split, vec![vec![a], vec![b, c], vec![]])
    );
}

#[test]
fn a_draft_whose_rooms_only_moved_is_known() {
    let (draft, places) = hung();
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    let changed = |change: &dyn Fn(&mut Draft)| {
        let mut changed = draft.clone();
        change(&mut changed);
        draft.only_moved(&changed)
    };
    assert!(!changed(&|_| {}), "nothing moved");
    assert!(changed(&|draft| draft.place_room(rooms[0], places[2], None)));
    assert!(changed(&|draft| draft.move_room_later(rooms[0])));
    assert!(!changed(&|draft| {
        draft.move_room_later(rooms[0]);
        draft.name = "Another".to_string();
    }));
    assert!(!changed(&|draft| draft.remove_room(rooms[0])));
    assert!(!changed(&|draft| set(draft, Field::Room(rooms[0], RoomField::FloorLength), "9")));
}
