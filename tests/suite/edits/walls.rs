//! Walls that are added by the floor's sides, and follow them.

use super::check_ids;
use crate::support::{room as type_room, set};
use finrun_engine::building::{RoomId, SurfaceKind};
use finrun_engine::job::{Behind, Draft, Entry, Field, RoomField, Shape, SurfaceField, resolve};
use finrun_engine::quantity::{System, Unit};

#[test]
fn four_walls_are_as_long_as_the_floor() {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("Kitchen");
    let typed = |text: &str| Entry { text: text.to_string(), unit: Unit::Foot };
    draft.set_entry(Field::Room(room, RoomField::FloorLength), typed("12' 6\""));
    draft.set_entry(Field::Room(room, RoomField::FloorWidth), typed("3,5 m"));
    draft.add_walls(room);
    let walls = &draft.room(room).expect("the room").surfaces;
    let lengths: Vec<&str> = walls
        .iter()
        .map(|wall| wall.entries.get(SurfaceField::Length).expect("its length").text.as_str())
        .collect();
    assert_eq!(lengths, ["12' 6\"", "3,5 m", "12' 6\"", "3,5 m"]);
    assert!(walls.iter().all(|wall| wall.behind == Behind::Outdoors));
    check_ids(&draft);
}

/// Round an outline the sides that face each other add up: 11 and 5 to 16 ft, 4 and 9 to 13 ft.
#[test]
fn the_walls_of_an_l_go_round_its_corner() {
    for (system, expected) in [
        (System::Us, ["16", "13", "11'", "4", "5", "9'"]),
        (System::Si, ["16 ft", "13 ft", "3.3528", "4 ft", "5 ft", "2.7432"]),
    ] {
        let mut draft = Draft::new("", system);
        let room = draft.add_room("");
        draft.room_mut(room).expect("the room").shape = Shape::LShape;
        let typed =
            |text: &str| if system == System::Us { text.into() } else { format!("{text} ft") };
        for (field, text) in [
            (RoomField::FloorLength, "16"),
            (RoomField::FloorWidth, "13"),
            (RoomField::CutLength, "5"),
            (RoomField::CutWidth, "4"),
        ] {
            type_room(&mut draft, room, field, &typed(text));
        }
        draft.add_walls(room);
        let walls = &draft.room(room).expect("the room").surfaces;
        let lengths: Vec<&str> = walls
            .iter()
            .map(|wall| wall.entries.get(SurfaceField::Length).expect("its length").text.as_str())
            .collect();
        assert_eq!(lengths, expected);
        let area = resolve(&draft, Field::Room(room, RoomField::FloorArea)).si().expect("its area");
        assert!((Unit::SquareFoot.from_si(area) - (16.0 * 13.0 - 5.0 * 4.0)).abs() < 1e-9);
    }
}

#[test]
fn four_walls_of_an_unmeasured_room_wait_for_their_lengths() {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("");
    draft.add_walls(room);
    let walls = &draft.room(room).expect("the room").surfaces;
    assert_eq!(walls.len(), 4);
    assert!(walls.iter().all(|wall| wall.entries.get(SurfaceField::Length).is_none()));
}

#[test]
fn walls_follow_the_side_of_the_floor_key_by_key() {
    let (length, width) = (RoomField::FloorLength, RoomField::FloorWidth);
    let (mut draft, room) = walled("10", "12");
    // On the way it is as long as the width.
    type_keys(&mut draft, room, length, "12' 6\"");
    assert_eq!(wall_lengths(&draft, room), ["12' 6\"", "12", "12' 6\"", "12"]);

    // One that was typed by itself stays, also where the floor is as long on the way.
    let wall = draft.room(room).expect("the room").surfaces[2].id;
    set(&mut draft, Field::Surface(room, wall, SurfaceField::Length), "8");
    type_keys(&mut draft, room, length, "8.5");
    assert_eq!(wall_lengths(&draft, room), ["8.5", "12", "8", "12"]);

    // One is gone; the others still know their side.
    draft.remove_surface(room, wall);
    type_keys(&mut draft, room, width, "9");
    assert_eq!(wall_lengths(&draft, room), ["8.5", "9", "9"]);

    // A typed area moves none, and a blank side leaves them as they were.
    type_keys(&mut draft, room, RoomField::FloorArea, "90");
    type_room(&mut draft, room, width, "");
    type_keys(&mut draft, room, width, "11");
    assert_eq!(wall_lengths(&draft, room), ["8.5", "9", "9"]);
}

#[test]
fn the_walls_of_a_square_room_take_its_sides_in_turn() {
    let (mut draft, room) = walled("10", "10");
    type_keys(&mut draft, room, RoomField::FloorWidth, "7");
    assert_eq!(wall_lengths(&draft, room), ["10", "7", "10", "7"]);
    let (mut draft, room) = walled("10", "10");
    type_keys(&mut draft, room, RoomField::FloorLength, "7");
    assert_eq!(wall_lengths(&draft, room), ["7", "10", "7", "10"]);
}

#[test]
fn the_walls_of_a_copy_follow_its_floor_and_not_the_originals() {
    let (mut draft, room) = walled("10", "12");
    let copy = draft.copy_room(room, "Again").expect("a copy");
    type_keys(&mut draft, copy, RoomField::FloorLength, "9'");
    type_keys(&mut draft, copy, RoomField::FloorWidth, "7");
    assert_eq!(wall_lengths(&draft, copy), ["9'", "7", "9'", "7"]);
    assert_eq!(wall_lengths(&draft, room), ["10", "12", "10", "12"]);
}

fn wall_lengths(draft: &Draft, room: RoomId) -> Vec<&str> {
    let surfaces = draft.room(room).expect("the room").surfaces.iter();
    let walls = surfaces.filter(|surface| surface.kind == SurfaceKind::Wall);
    walls
        .map(|wall| wall.entries.get(SurfaceField::Length).map_or("", |entry| entry.text.as_str()))
        .collect()
}

/// A rectangle with its walls.
fn walled(length: &str, width: &str) -> (Draft, RoomId) {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("Kitchen");
    type_room(&mut draft, room, RoomField::FloorLength, length);
    type_room(&mut draft, room, RoomField::FloorWidth, width);
    draft.add_walls(room);
    (draft, room)
}

/// Empties a box and types a text key by key, as a page hands it on.
fn type_keys(draft: &mut Draft, room: RoomId, side: RoomField, text: &str) {
    let began = draft.clone();
    for end in 0..=text.len() {
        let entry = Entry { text: text[..end].to_string(), unit: Unit::Foot };
        draft.type_entry(&began, Field::Room(room, side), entry);
    }
}
