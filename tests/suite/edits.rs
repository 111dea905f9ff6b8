//! Changes to a draft: what they add, and that every thing keeps an id of its own.

mod hung;
mod walls;

use crate::support::{V2_FIXTURE, open, set};
use finrun_engine::building::{
    Assembly, Level, OpeningKind, Position, RoomId, RoomUse, SurfaceKind,
};
use finrun_engine::job::{
    Behind, BillField, Choice, Draft, Field, LayerDraft, LayerField, Pick, Problem, PumpKind,
    PumpPointField, SurfaceField, UValue, read,
};
use finrun_engine::network::TypicalPump;
use finrun_engine::quantity::System;

fn all_ids(draft: &Draft) -> Vec<u32> {
    let mut ids = Vec::new();
    ids.extend(draft.assemblies.iter().map(|assembly| assembly.id.0));
    ids.extend(draft.bills.list.iter().map(|bill| bill.id.0));
    for room in draft.all_rooms() {
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
fn a_copied_room_follows_its_original_with_ids_of_its_own() {
    let mut draft = open(V2_FIXTURE);
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

/// What stands around a room, as `wall outdoors` or `floor ground`.
fn around(draft: &Draft, room: RoomId) -> Vec<String> {
    let surfaces = &draft.room(room).expect("the room").surfaces;
    let behind = |behind: Behind| match behind {
        Behind::Room(id) => draft.room(id).expect("its neighbour").name.clone(),
        other => format!("{other:?}").to_lowercase(),
    };
    surfaces.iter().map(|s| format!("{:?} {}", s.kind, behind(s.behind)).to_lowercase()).collect()
}

fn shell(draft: &mut Draft, room: RoomId) -> Vec<String> {
    draft.add_shell(room);
    check_ids(draft);
    let found = around(draft, room);
    // An attic has a roof alone.
    let Some(rest) = found.get(4..) else { return found };
    assert!(found[..4].iter().all(|wall| *wall == found[0]), "{found:?}");
    [&found[..1], rest].concat()
}

/// A room in a house of one storey lies under the sky and on the ground, until the house has an
/// attic, a crawl space or storeys; and like the room before it on its storey.
#[test]
fn a_shell_is_what_such_houses_have() {
    let new = || Draft::new("", System::Us);
    let mut draft = new();
    let first = draft.add_room("first");
    let found = shell(&mut draft, first);
    assert_eq!(found, ["wall outdoors", "ceiling outdoors", "floor ground"]);

    let mut draft = new();
    for (used, name) in [
        (RoomUse::Attic, "attic"),
        (RoomUse::CrawlSpace, "crawl"),
        (RoomUse::Garage, "garage"),
        (RoomUse::Basement, "cellar"),
        (RoomUse::Other, "porch"),
    ] {
        let space = draft.add_space(used, name);
        let expected: &[&str] = match used {
            RoomUse::Attic => &["ceiling outdoors"],
            RoomUse::Garage | RoomUse::Other => {
                &["wall outdoors", "ceiling outdoors", "floor ground"]
            }
            _ => &["wall ground", "floor ground"],
        };
        assert_eq!(shell(&mut draft, space), expected, "{name}");
    }
    let ground_floor = draft.add_room("ground floor");
    let found = shell(&mut draft, ground_floor);
    assert_eq!(found, ["wall outdoors", "ceiling attic", "floor crawl"]);
    // A room above it is warm below; the one beside that likewise.
    for name in ["above", "beside"] {
        let upstairs = draft.add_room(name);
        draft.room_mut(upstairs).expect("the room").level = Level::Second;
        assert_eq!(shell(&mut draft, upstairs), ["wall outdoors", "ceiling attic"]);
    }
    // And a new one downstairs is as the one beside it was entered, under an attic.
    let kitchen = draft.add_room("kitchen");
    draft.room_mut(kitchen).expect("the room").level = Level::First;
    assert_eq!(shell(&mut draft, kitchen), ["wall outdoors", "ceiling attic", "floor crawl"]);
    let cellar = draft.add_room("family room");
    draft.room_mut(cellar).expect("the room").level = Level::Basement;
    assert_eq!(shell(&mut draft, cellar), ["wall outdoors", "floor ground"]);

    // What leads to this very room is no pattern for it.
    let mut draft = new();
    let (upper, lower) = (draft.add_room("upper"), draft.add_room("lower"));
    draft.add_surface_to(upper, SurfaceKind::Floor, Behind::Room(lower)).expect("a floor");
    let found = shell(&mut draft, lower);
    assert_eq!(found, ["wall outdoors", "ceiling outdoors", "floor ground"]);
}

/// What now lies elsewhere is built as is usual there; a typed value stays as it was typed.
#[test]
fn a_surface_that_is_moved_is_built_for_its_place() {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("");
    let wall = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
    let floor = draft.add_surface_to(room, SurfaceKind::Floor, Behind::Unheated).expect("a floor");
    let built = |draft: &Draft, surface| draft.surface(room, surface).expect("it").u_value;
    assert_eq!(built(&draft, wall), UValue::Listed(Assembly::FrameWallR11));
    assert_eq!(built(&draft, floor), UValue::Listed(Assembly::JoistFloorEmpty));
    draft.set_behind(room, wall, Behind::Ground);
    draft.set_behind(room, floor, Behind::Ground);
    assert_eq!(built(&draft, wall), UValue::Listed(Assembly::BasementConcrete));
    assert_eq!(built(&draft, floor), UValue::Listed(Assembly::SlabBare));
    draft.set_behind(room, wall, Behind::Outdoors);
    assert_eq!(built(&draft, wall), UValue::Listed(Assembly::FrameWallR11));
    draft.surface_mut(room, wall).expect("the wall").u_value = UValue::TypedR;
    draft.set_behind(room, wall, Behind::Ground);
    assert_eq!(built(&draft, wall), UValue::TypedR);
    assert_eq!(draft.surface(room, wall).expect("the wall").behind, Behind::Ground);
}

/// Nothing new is built of an assembly that is gone.
#[test]
fn a_removed_assembly_is_not_passed_on() {
    let mut draft = Draft::new("", System::Us);
    let room = draft.add_room("");
    let own = draft.add_assembly(Position::Wall, "Ours");
    let wall = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
    draft.pick(Choice::SurfaceBuild(room, wall), Pick::Build(UValue::Own(own)));
    let built = |draft: &mut Draft| {
        let next = draft.add_surface(room, SurfaceKind::Wall).expect("a wall");
        let built = draft.surface(room, next).expect("the wall").u_value;
        draft.remove_surface(room, next);
        built
    };
    assert_eq!(built(&mut draft), UValue::Own(own));
    draft.remove_assembly(own);
    assert_eq!(built(&mut draft), UValue::Listed(Assembly::FrameWallR11));
    assert_eq!(draft.surface(room, wall).expect("the wall").u_value, UValue::Own(own));
}

#[test]
fn layers_and_bills_come_and_go() {
    let mut draft = Draft::new("", System::Us);
    let own = draft.add_assembly(Position::Roof, "");
    for thickness in ["1", "2", "3"] {
        draft.add_layer(own);
        let row = draft.assembly(own).expect("it").layers.len() - 1;
        set(&mut draft, Field::Layer(own, row, LayerField::Thickness), thickness);
    }
    draft.remove_layer(own, 1);
    draft.remove_layer(own, 9);
    let left: Vec<&str> = draft.assembly(own).expect("it").layers.iter().map(thickness).collect();
    assert_eq!(left, ["1", "3"]);
    // A bill begins where the one before it ends.
    let first = draft.add_bill();
    draft.bill_mut(first).expect("the bill").to = "2025-01-17".to_string();
    let second = draft.add_bill();
    assert_eq!(draft.bill(second).expect("the bill").from, "2025-01-17");
    check_ids(&draft);
    draft.remove_bill(first);
    assert_eq!(draft.bills.list.len(), 1);
    assert_eq!(draft.bill(first), None);
    // What is gone takes no entry.
    let before = draft.clone();
    set(&mut draft, Field::Bill(first, BillField::Amount), "12");
    set(&mut draft, Field::Layer(own, 9, LayerField::R), "12");
    assert_eq!(draft, before);
}

fn thickness(layer: &LayerDraft) -> &str {
    &layer.entries.get(LayerField::Thickness).expect("its thickness").text
}

#[test]
fn a_curve_of_ones_own_begins_with_three_rows() {
    let mut draft = Draft::new("", System::Us);
    let zone = draft.zones[0].id;
    for choice in [Choice::Pump, Choice::ZonePump(zone)] {
        draft.pump.points.clear();
        draft.pick(choice, Pick::Pump(PumpKind::Typical(TypicalPump::Medium)));
        assert!(draft.pump.points.is_empty());
        draft.pick(choice, Pick::Pump(PumpKind::Points));
        assert_eq!(draft.pump.points.len(), 3, "{choice:?}");
    }
    // What is typed stays.
    let field = Field::PumpPoint(3, PumpPointField::Flow);
    draft.pump.points.push(Default::default());
    set(&mut draft, field, "4");
    draft.pick(Choice::Pump, Pick::Pump(PumpKind::Points));
    assert_eq!(draft.pump.points.len(), 4);
    assert_eq!(draft.entry(field).map(|entry| entry.text.as_str()), Some("4"));
}
