//! Changes to a draft: what they add, and that every thing keeps an id of its own.

use crate::support::{FOUR_ROOMS, open};
use finrun_engine::building::{Assembly, OpeningKind, RoomId, RoomUse, SurfaceKind};
use finrun_engine::job::{
    Behind, Choice, Draft, Entry, Field, Pick, Problem, RoomField, SurfaceField, UValue, read,
};
use finrun_engine::quantity::{System, Unit};

fn all_ids(draft: &Draft) -> Vec<u32> {
    let mut ids = Vec::new();
    for room in &draft.rooms {
        ids.push(room.id.0);
        for surface in &room.surfaces {
            ids.push(surface.id.0);
            ids.extend(surface.openings.iter().map(|opening| opening.id.0));
        }
    }
    ids
}

/// Ids are unique and below the next one to give out.
fn check_ids(draft: &Draft) {
    let mut ids = all_ids(draft);
    assert!(ids.iter().all(|id| *id < draft.next_id), "{ids:?} of {}", draft.next_id);
    ids.sort_unstable();
    let count = ids.len();
    ids.dedup();
    assert_eq!(ids.len(), count, "an id stands for two things");
}

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
fn a_copied_room_follows_its_original_with_ids_of_its_own() {
    let mut draft = open(FOUR_ROOMS);
    let first = draft.rooms[0].id;
    let copy = draft.copy_room(first, "Again").expect("a copy");
    assert_eq!(draft.rooms[1].id, copy);
    assert_eq!(draft.rooms[1].name, "Again");
    assert_eq!(draft.rooms[1].entries, draft.rooms[0].entries);
    assert_eq!(draft.rooms[1].surfaces.len(), draft.rooms[0].surfaces.len());
    check_ids(&draft);
    assert_eq!(draft.copy_room(RoomId(99_999), ""), None);
}

/// Both a room and a space: what led to it keeps its word until something else is chosen, so that
/// undo brings everything back.
#[test]
fn what_led_to_a_removed_room_says_that_it_is_gone() {
    let mut draft = Draft::new("", System::Us);
    let (hall, bath) = (draft.add_room("Hall"), draft.add_room("Bath"));
    let attic = draft.add_space(RoomUse::Attic, "Attic");
    for (gone, kind) in [(bath, SurfaceKind::Wall), (attic, SurfaceKind::Ceiling)] {
        let behind = Behind::Room(gone);
        let surface = draft.add_surface_to(hall, kind, behind).expect("a surface");
        let named = |draft: &Draft| {
            let errors = read(draft).errors;
            errors.into_iter().find(|error| error.problem == Problem::NeighbourGone)
        };
        assert_eq!(named(&draft), None);
        draft.remove_room(gone);
        assert_eq!(draft.room(gone), None);
        assert_eq!(draft.surface(hall, surface).expect("the surface").behind, behind);
        let error = named(&draft).expect("an error");
        assert_eq!(error.field, Field::Surface(hall, surface, SurfaceField::Behind));
        // It stays on the list as what is chosen, and another choice mends it.
        let choice = Choice::Behind(hall, surface);
        assert!(draft.picks(choice).contains(&Pick::Behind(behind)));
        draft.pick(choice, Pick::Behind(Behind::SameTemperature));
        assert_eq!(named(&draft), None);
        assert!(!draft.picks(choice).contains(&Pick::Behind(behind)));
    }
}

#[test]
fn rooms_move_along_the_loop_and_stop_at_its_ends() {
    let mut draft = Draft::new("", System::Us);
    let rooms = ["a", "b", "c"].map(|name| draft.add_room(name));
    let order = |draft: &Draft| -> String { draft.rooms.iter().map(|r| r.name.as_str()).collect() };
    for (step, expected) in [(0, "abc"), (1, "bac"), (1, "bac"), (2, "bca")] {
        draft.move_room_earlier(rooms[step]);
        assert_eq!(order(&draft), expected);
    }
    draft.move_room_later(rooms[0]);
    assert_eq!(order(&draft), "bca");
    draft.move_room_later(rooms[1]);
    assert_eq!(order(&draft), "cba");
}

#[test]
fn new_surfaces_and_openings_are_built_like_the_last_ones() {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("");
    let wall = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
    draft.surface_mut(room, wall).expect("the wall").u_value = UValue::Listed(Assembly::BrickWall);
    let next = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
    let built = draft.surface(room, next).expect("the wall").u_value;
    assert_eq!(built, UValue::Listed(Assembly::BrickWall));
    // A typed value is not handed on without its number.
    draft.surface_mut(room, next).expect("the wall").u_value = UValue::TypedU;
    let third = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
    let built = draft.surface(room, third).expect("the wall").u_value;
    assert_eq!(built, UValue::Listed(Assembly::BrickWall));
    let window = draft.add_opening(room, wall, OpeningKind::Window).expect("a window");
    let metal = UValue::Listed(Assembly::WindowMetalSingle);
    draft.opening_mut(room, wall, window).expect("the window").u_value = metal;
    let second = draft.add_opening(room, next, OpeningKind::Window).expect("a window");
    assert_eq!(draft.opening(room, next, second).expect("the window").u_value, metal);
    check_ids(&draft);
}
