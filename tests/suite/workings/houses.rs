//! Jobs whose heat goes every way that there is: the ground, unheated spaces, air by each method.

use crate::support::{add_opening, add_room, add_wall, cold_day, house, room, set};
use finrun_engine::building::{
    Level, OpenFlue, OpeningKind, RoomId, RoomUse, Shelter, Soil, Storeys, SurfaceId, SurfaceKind,
};
use finrun_engine::job::{
    AirBasis, AirField, Behind, Draft, EdgeBasis, Field, GroundField, GroundMethod, HouseField,
    OpeningField, RoomField, SurfaceField, UValue,
};
use proptest::prelude::*;
use proptest::sample::Index;

/// One of each kind; together they use every formula of the heat loss.
pub(super) fn all() -> Vec<Draft> {
    let mut drafts = vec![basement(), spaces(), narrow(), middle_room(), draughts()];
    for edge in [EdgeBasis::None, EdgeBasis::Horizontal, EdgeBasis::Vertical] {
        for soil in [Soil::Clay, Soil::Sand, Soil::Rock] {
            let mut draft = slab();
            draft.ground.soil = soil;
            draft.ground.edge = edge;
            drafts.push(draft);
        }
    }
    let mut poor_edge = slab();
    poor_edge.ground.edge = EdgeBasis::Vertical;
    // Less than the ground whose place it takes.
    set(&mut poor_edge, Field::Ground(GroundField::EdgeR), "0.5");
    set(&mut poor_edge, Field::Ground(GroundField::EdgeThickness), "24");
    let mut good_edge = slab();
    good_edge.ground.edge = EdgeBasis::Vertical;
    set(&mut good_edge, Field::Ground(GroundField::EdgeR), "60");
    set(&mut good_edge, Field::Ground(GroundField::EdgeDepth), "12");
    let mut by_factor = slab();
    by_factor.ground.method = GroundMethod::FFactor;
    let mut deep_by_factor = basement();
    deep_by_factor.ground.method = GroundMethod::FFactor;
    let mut alike = narrow();
    type_air(&mut alike, AirBasis::LeakageArea, OpenFlue::None, ("0", "0"));
    drafts.extend([poor_edge, good_edge, by_factor, deep_by_factor, alike]);
    for (basis, flue) in [
        (AirBasis::Class, OpenFlue::FireplaceOpen),
        (AirBasis::BlowerDoor, OpenFlue::None),
        (AirBasis::BlowerDoor, OpenFlue::Flue),
        (AirBasis::LeakageArea, OpenFlue::FireplaceDamperClosed),
    ] {
        for (supply, exhaust) in [("0", "0"), ("60", "60"), ("0", "90"), ("110", "70")] {
            let mut draft = spaces();
            type_air(&mut draft, basis, flue, (supply, exhaust));
            drafts.push(draft);
        }
    }
    drafts
}

fn type_air(draft: &mut Draft, basis: AirBasis, flue: OpenFlue, (supply, exhaust): (&str, &str)) {
    draft.air.basis = basis;
    draft.air.flue = flue;
    draft.air.storeys = Storeys::Two;
    draft.air.shelter = Shelter::Light;
    for (field, text) in [
        (AirField::BlowerFlow, "2300"),
        (AirField::BlowerExponent, "0.62"),
        (AirField::Supply, supply),
        (AirField::Exhaust, exhaust),
        (AirField::Recovery, "70"),
    ] {
        set(draft, Field::Air(field), text);
    }
}

/// A cold day on which the house leaks as most do.
fn windy_day() -> Draft {
    let mut draft = cold_day();
    house(&mut draft, HouseField::AirChanges, "");
    draft
}

/// A house on a day whose ground has temperatures.
fn on_ground() -> Draft {
    let mut draft = windy_day();
    house(&mut draft, HouseField::MeanTemperature, "48");
    house(&mut draft, HouseField::ColdestMonth, "21");
    house(&mut draft, HouseField::Altitude, "2400");
    draft
}

fn floor(draft: &mut Draft, room: RoomId, u: &str) -> SurfaceId {
    let floor = draft.add_surface_to(room, SurfaceKind::Floor, Behind::Ground).expect("a room");
    draft.surface_mut(room, floor).expect("just added").u_value = UValue::TypedU;
    set(draft, Field::Surface(room, floor, SurfaceField::U), u);
    floor
}

fn ground_wall(draft: &mut Draft, room: RoomId, length: &str, u: &str, depth: &str) -> SurfaceId {
    let wall = add_wall(draft, room, length, u);
    draft.set_behind(room, wall, Behind::Ground);
    set(draft, Field::Surface(room, wall, SurfaceField::Depth), depth);
    wall
}

/// Three rooms on one slab: floors that differ, one edge typed, one room with two floors, and one
/// so small that a good edge would save more than its floor loses.
pub(super) fn slab() -> Draft {
    let mut draft = on_ground();
    let den = add_room(&mut draft, "Den", "20", "15");
    add_wall(&mut draft, den, "20", "0.08");
    add_wall(&mut draft, den, "15", "0.08");
    floor(&mut draft, den, "0.3");
    let shop = add_room(&mut draft, "Shop", "12", "15");
    add_wall(&mut draft, shop, "12", "0.08");
    let edged = floor(&mut draft, shop, "0.1");
    set(&mut draft, Field::Surface(shop, edged, SurfaceField::Perimeter), "14.5");
    let second = floor(&mut draft, shop, "0.9");
    set(&mut draft, Field::Surface(shop, second, SurfaceField::Area), "40");
    let closet = add_room(&mut draft, "Closet", "8", "1");
    add_wall(&mut draft, closet, "8", "0.08");
    add_wall(&mut draft, closet, "1", "0.08");
    floor(&mut draft, closet, "0.3");
    room(&mut draft, closet, RoomField::Temperature, "66");
    draft
}

/// A strip of a floor, insulated more than it is wide.
fn narrow() -> Draft {
    let mut draft = on_ground();
    let hall = add_room(&mut draft, "Hall", "30", "4");
    add_wall(&mut draft, hall, "30", "0.08");
    add_wall(&mut draft, hall, "4", "0.08");
    let only = floor(&mut draft, hall, "0.02");
    // Its edge is typed, and no wall of it is entered deeper.
    set(&mut draft, Field::Surface(hall, only, SurfaceField::Perimeter), "64");
    draft
}

/// A room on the ground with no outside wall, whose floor loses nothing.
fn middle_room() -> Draft {
    let mut draft = on_ground();
    let bath = add_room(&mut draft, "Bath", "8", "8");
    floor(&mut draft, bath, "0.3");
    draft
}

/// A heated basement: a wall in the earth with a window above it, one that stands in the open, one
/// whose typed area is less than its length gives, and a room without a floor on the ground.
pub(super) fn basement() -> Draft {
    let mut draft = on_ground();
    let den = add_room(&mut draft, "Den", "24", "16");
    draft.room_mut(den).expect("there").level = Level::Basement;
    let high = ground_wall(&mut draft, den, "24", "0.5", "5.5");
    let window = [(OpeningField::Width, "3"), (OpeningField::Height, "1' 6\"")];
    add_opening(&mut draft, den, high, OpeningKind::Window, &window);
    let less = ground_wall(&mut draft, den, "16", "0.07", "6");
    set(&mut draft, Field::Surface(den, less, SurfaceField::Area), "80");
    add_wall(&mut draft, den, "24", "0.08");
    floor(&mut draft, den, "1.5");
    let stair = add_room(&mut draft, "Stair", "10", "4");
    draft.room_mut(stair).expect("there").level = Level::First;
    ground_wall(&mut draft, stair, "10", "0.3", "3");
    let study = add_room(&mut draft, "Study", "10", "9");
    draft.room_mut(study).expect("there").level = Level::Second;
    let only = floor(&mut draft, study, "0.2");
    set(&mut draft, Field::Surface(study, only, SurfaceField::Perimeter), "19");
    set(&mut draft, Field::Surface(study, only, SurfaceField::Depth), "2");
    draft
}

/// Two rooms among one unheated space of each kind, which also touch each other.
fn spaces() -> Draft {
    let mut draft = on_ground();
    let den = add_room(&mut draft, "Den", "20", "15");
    let bed = add_room(&mut draft, "Bed", "14", "12");
    room(&mut draft, bed, RoomField::Temperature, "66");
    add_wall(&mut draft, den, "20", "0.08");
    add_wall(&mut draft, bed, "26", "0.08");
    let partition = add_wall(&mut draft, den, "12", "0.3");
    draft.set_behind(den, partition, Behind::Room(bed));
    let mut over = |kind, used, above: RoomId| {
        let space = draft.add_space(used, "");
        room(&mut draft, space, RoomField::FloorLength, "20");
        room(&mut draft, space, RoomField::FloorWidth, "12");
        draft.add_shell(space);
        draft.add_surface_to(above, kind, Behind::Room(space));
        space
    };
    let attic = over(SurfaceKind::Ceiling, RoomUse::Attic, den);
    let crawl = over(SurfaceKind::Floor, RoomUse::CrawlSpace, den);
    let basement = over(SurfaceKind::Floor, RoomUse::Basement, bed);
    let garage = over(SurfaceKind::Wall, RoomUse::Garage, bed);
    let shed = over(SurfaceKind::Wall, RoomUse::Other, den);
    // The wall that the last two stand at.
    for (room, length) in [(bed, "12"), (den, "15")] {
        let walls = &draft.room(room).expect("there").surfaces;
        let wall = walls.iter().rfind(|s| s.kind == SurfaceKind::Wall).expect("just added").id;
        set(&mut draft, Field::Surface(room, wall, SurfaceField::Length), length);
    }
    room(&mut draft, crawl, RoomField::VentArea, "220");
    room(&mut draft, shed, RoomField::Temperature, "30");
    // Entered on the spaces' side: what they share with each other and with a room.
    let ceiling = draft.surface_mut(garage, last(&draft, garage, SurfaceKind::Ceiling));
    ceiling.expect("a ceiling").behind = Behind::Room(attic);
    let wall = add_wall(&mut draft, garage, "10", "0.1");
    draft.set_behind(garage, wall, Behind::Room(den));
    let shared = add_wall(&mut draft, basement, "8", "0.4");
    draft.set_behind(basement, shared, Behind::SameTemperature);
    let hatch = [(OpeningField::Width, "3"), (OpeningField::Height, "3")];
    add_opening(&mut draft, garage, wall, OpeningKind::Door, &hatch);
    draft
}

fn last(draft: &Draft, room: RoomId, kind: SurfaceKind) -> SurfaceId {
    let surfaces = &draft.room(room).expect("there").surfaces;
    surfaces.iter().rfind(|s| s.kind == kind).expect("one of its kind").id
}

/// Rooms that share the house's air otherwise than by area: none has any, one takes more.
fn draughts() -> Draft {
    let mut draft = on_ground();
    for (name, changes) in [("Den", "0"), ("Bath", "2.5")] {
        let id = add_room(&mut draft, name, "12", "10");
        room(&mut draft, id, RoomField::AirChanges, changes);
        let wall = add_wall(&mut draft, id, "12", "0.1");
        draft.set_behind(id, wall, Behind::SameTemperature);
    }
    draft
}

/// Any house, set on the ground and among spaces as the choices fall.
pub(super) fn anywhere() -> impl Strategy<Value = Draft> {
    let choices = proptest::collection::vec(any::<Index>(), 60);
    (crate::random_house::houses(), choices).prop_map(|(mut draft, choices)| {
        let mut choices = choices.into_iter().cycle();
        let mut pick = move |count: usize| choices.next().map_or(0, |index| index.index(count));
        house(&mut draft, HouseField::MeanTemperature, "50");
        house(&mut draft, HouseField::ColdestMonth, "28");
        let uses = [RoomUse::Attic, RoomUse::Garage, RoomUse::CrawlSpace, RoomUse::Basement];
        let spaces: Vec<RoomId> = uses
            .into_iter()
            .filter(|_| pick(2) == 0)
            .map(|used| {
                let space = draft.add_space(used, "");
                room(&mut draft, space, RoomField::FloorLength, "24");
                room(&mut draft, space, RoomField::FloorWidth, "18");
                draft.add_shell(space);
                space
            })
            .collect();
        let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
        for &id in &rooms {
            let levels = [Level::Basement, Level::First, Level::Second];
            draft.room_mut(id).expect("there").level = levels[pick(3)];
            let surfaces = draft.room(id).expect("there").surfaces.clone();
            for surface in surfaces {
                let behind = match pick(4) {
                    0 if surface.kind != SurfaceKind::Ceiling => Behind::Ground,
                    1 if !spaces.is_empty() => Behind::Room(spaces[pick(spaces.len())]),
                    _ => continue,
                };
                draft.surface_mut(id, surface.id).expect("there").behind = behind;
                if behind == Behind::Ground {
                    let depths = ["0", "2.5", "6"];
                    let depth = Field::Surface(id, surface.id, SurfaceField::Depth);
                    set(&mut draft, depth, depths[pick(3)]);
                }
            }
        }
        draft.ground.soil = [Soil::Clay, Soil::Sand, Soil::Rock][pick(3)];
        draft.ground.edge = [EdgeBasis::None, EdgeBasis::Horizontal, EdgeBasis::Vertical][pick(3)];
        draft.ground.method =
            [GroundMethod::Iso, GroundMethod::Iso, GroundMethod::FFactor][pick(3)];
        let basis = [AirBasis::Class, AirBasis::BlowerDoor, AirBasis::LeakageArea][pick(3)];
        let flue = [OpenFlue::None, OpenFlue::Flue][pick(2)];
        let fans = [("0", "0"), ("80", "80"), ("0", "50"), ("120", "60")][pick(4)];
        type_air(&mut draft, basis, flue, fans);
        draft
    })
}
