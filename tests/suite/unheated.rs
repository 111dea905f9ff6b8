//! Unheated spaces and the ground under a house: temperatures worked by hand, what must hold
//! between a space and its neighbours, and houses that have no answer.

use crate::random_house::full_houses;
use crate::support::{
    V2_FIXTURE, add_room, add_wall, cold_day, house, job_of, open, room, set, solve,
};
use finrun_engine::building::{
    HouseLoss, Part, Path, RoomId, RoomUse, SlabMethod, SurfaceId, SurfaceKind, losses,
};
use finrun_engine::job::{
    Behind, Draft, EdgeBasis, Field, GroundField, GroundMethod, HouseField, RoomField,
    SurfaceField, UValue,
};
use finrun_engine::quantity::{LinearTransmittance, Power, Unit};
use proptest::prelude::*;

/// A surface of a typed U and a typed area.
fn surface(
    draft: &mut Draft,
    room: RoomId,
    kind: SurfaceKind,
    behind: Behind,
    (u, square_feet): (&str, &str),
) -> SurfaceId {
    let id = draft.add_surface_to(room, kind, behind).expect("the room is there");
    draft.surface_mut(room, id).expect("just added").u_value = UValue::TypedU;
    set(draft, Field::Surface(room, id, SurfaceField::U), u);
    set(draft, Field::Surface(room, id, SurfaceField::Area), square_feet);
    id
}

/// A space of 100 ft2 and 10 ft without air changes.
fn space(draft: &mut Draft, used: RoomUse) -> RoomId {
    let id = draft.add_space(used, "");
    room(draft, id, RoomField::FloorArea, "100");
    room(draft, id, RoomField::Height, "10");
    room(draft, id, RoomField::AirChanges, "0");
    id
}

/// A day of 0 °F and a room of 70 °F under one space of each of these uses.
fn under(uses: &[RoomUse]) -> (Draft, RoomId, Vec<RoomId>) {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Room", "10", "10");
    let spaces = uses.iter().map(|&used| space(&mut draft, used)).collect();
    (draft, room, spaces)
}

fn fahrenheit(loss: &HouseLoss, space: usize) -> f64 {
    loss.spaces[space].temperature.to(Unit::Fahrenheit)
}

fn check(what: &str, found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-8 * expected.abs().max(1.0),
        "{what}: {found} {expected}"
    );
}

/// 100 ft2 of ceiling of U 0.1 below, 120 ft2 of roof of 0.5 above: 10 and 60 Btu/h F, so 10/70 of
/// 70 °F is left, and 10 x (70 - 10) = 600 Btu/h go through.
#[test]
fn a_space_lies_between_its_neighbours() {
    let (mut draft, room_id, spaces) = under(&[RoomUse::Attic]);
    let (room_kind, attic) = (SurfaceKind::Ceiling, spaces[0]);
    surface(&mut draft, room_id, room_kind, Behind::Room(attic), ("0.1", "100"));
    surface(&mut draft, attic, SurfaceKind::Ceiling, Behind::Outdoors, ("0.5", "120"));
    let loss = losses(&job_of(&draft).house);
    check("attic", fahrenheit(&loss, 0), 10.0);
    check("room", loss.rooms[0].total.to(Unit::BtuPerHour), 600.0);
    // Entered on the attic's side it is the same.
    let mut turned = draft.clone();
    turned.room_mut(room_id).expect("the room").surfaces.clear();
    surface(&mut turned, attic, SurfaceKind::Floor, Behind::Room(room_id), ("0.1", "100"));
    let loss = losses(&job_of(&turned).house);
    check("attic", fahrenheit(&loss, 0), 10.0);
    check("room", loss.rooms[0].total.to(Unit::BtuPerHour), 600.0);
    // Measured, it is what was measured, and its heat is no balance of its own any more.
    room(&mut draft, attic, RoomField::Temperature, "-5");
    let loss = losses(&job_of(&draft).house);
    check("attic", fahrenheit(&loss, 0), -5.0);
    check("room", loss.rooms[0].total.to(Unit::BtuPerHour), 750.0);
}

/// Air of 32 °F at sea level (101 325/(287.055 x 273.15) kg/m3, 1006 J/kg K) carries 1.16304 Btu/h
/// per cfm and °F. 1000 ft3 twice an hour are 33.333 cfm, 38.768 Btu/h F: with 10 from the room the
/// attic is at 70 x 10/48.768 = 14.354 °F.
#[test]
fn a_space_is_cooled_by_its_air() {
    let (mut draft, room_id, spaces) = under(&[RoomUse::Attic]);
    surface(&mut draft, room_id, SurfaceKind::Ceiling, Behind::Room(spaces[0]), ("0.1", "100"));
    room(&mut draft, spaces[0], RoomField::AirChanges, "2");
    let loss = losses(&job_of(&draft).house);
    let kilograms = 101_325.0 / (287.055 * 273.15);
    let btu = 1055.05585262 / 3600.0;
    let carried = 1000.0 / 30.0 * (0.3048_f64 * 0.3048 * 0.3048 / 60.0) * kilograms * 1006.0;
    let carried = carried * 5.0 / 9.0 / btu;
    assert!((carried - 38.768).abs() < 0.001, "{carried}");
    check("attic", fahrenheit(&loss, 0), 700.0 / (10.0 + carried));
    assert!((fahrenheit(&loss, 0) - 14.354).abs() < 0.001);
}

/// Two spaces in a row: 10 Btu/h F from the room to the porch, 20 on to the garage, 30 outdoors.
/// 1/(1/10 + 1/20 + 1/30) = 60/11 from 70 to 0 °F: 4200/11 Btu/h, so the porch is at 70 - 420/11 and
/// the garage at 140/11 °F.
#[test]
fn spaces_beside_each_other_are_solved_together() {
    let (mut draft, room_id, spaces) = under(&[RoomUse::Other, RoomUse::Garage]);
    let (porch, garage) = (spaces[0], spaces[1]);
    let wall = SurfaceKind::Wall;
    surface(&mut draft, room_id, wall, Behind::Room(porch), ("0.1", "100"));
    surface(&mut draft, porch, wall, Behind::Room(garage), ("0.2", "100"));
    surface(&mut draft, garage, wall, Behind::Outdoors, ("0.3", "100"));
    let loss = losses(&job_of(&draft).house);
    check("porch", fahrenheit(&loss, 0), 70.0 - 420.0 / 11.0);
    check("garage", fahrenheit(&loss, 1), 140.0 / 11.0);
    check("room", loss.rooms[0].total.to(Unit::BtuPerHour), 4200.0 / 11.0);
}

/// Whatever leaves the rooms arrives outdoors or in the ground: spaces keep nothing.
#[test]
fn spaces_hand_on_what_they_take() {
    let mut draft = open(V2_FIXTURE);
    // The porch's temperature is typed in the fixture; here it finds its own.
    room(&mut draft, RoomId(109), RoomField::Temperature, "");
    let (_, design) = solve(&draft);
    let mut outward = Power::ZERO;
    let rooms = design.rooms.iter().map(|room| &room.load.paths);
    for path in rooms.chain(design.spaces.iter().map(|space| &space.paths)).flatten() {
        let to_a_neighbour = matches!(path.path, Path::Neighbour(..))
            || design.spaces.iter().any(|space| space.temperature == path.beyond);
        if !to_a_neighbour {
            outward += path.loss;
        }
    }
    check("outward", outward.si(), design.load.si());
    for space in &design.spaces {
        let sum: Power = space.paths.iter().map(|path| path.loss).sum();
        assert!(sum.si().abs() < 1e-9, "{space:?}");
        // Never colder than outdoors, nor warmer than the warmest room.
        let found = space.temperature.to(Unit::Fahrenheit);
        assert!((-1.0..=69.0).contains(&found), "{found}");
    }
}

/// The whole of the second fixture, worked by `../jobs/v2_fixture.py`, which shares nothing with the
/// engine: assemblies from their layers, leakage from a blower door, fans, slab, basement and crawl
/// space by ISO 13370, four spaces by their own balance.
#[test]
fn a_house_with_everything_is_that_of_the_hand() {
    let (_, design) = solve(&open(V2_FIXTURE));
    // Watts, and of it with the air.
    let rooms = [
        (1483.8432, 505.5690),
        (3126.1950, 1654.0449),
        (1515.0069, 752.5697),
        (1390.2507, 957.0400),
    ];
    for (room, (load, air)) in design.rooms.iter().zip(rooms) {
        let found = (room.load.total.si(), room.load.of(Part::Air).si());
        let off = (found.0 - load).abs().max((found.1 - air).abs());
        assert!(off < 2e-4, "{:?}: {found:?} against {load} {air}", room.room);
    }
    let kelvins = [255.951415, 258.800345, 263.971739, 280.130309, 277.15];
    assert_eq!((design.rooms.len(), design.spaces.len()), (rooms.len(), kelvins.len()));
    for (space, expected) in design.spaces.iter().zip(kelvins) {
        let found = space.temperature.si();
        assert!((found - expected).abs() < 2e-6, "{:?}: {found} against {expected}", space.space);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// In any house a space that finds its own temperature hands on all it takes, and the band of a
    /// load has the load in its middle.
    #[test]
    fn any_space_hands_on_what_it_takes(draft in full_houses()) {
        let (job, design) = solve(&draft);
        for (space, solved) in job.house.spaces.iter().zip(&design.spaces) {
            let sum: Power = solved.paths.iter().map(|path| path.loss).sum();
            let scale: Power = solved.paths.iter().map(|path| path.loss.abs()).sum();
            let rounding = 1e-9 * (1.0 + scale.si());
            prop_assert!(space.temperature.is_some() || sum.si().abs() < rounding, "{:?}", solved);
        }
        let bands = design.certainty.rooms.iter().zip(&design.rooms);
        for (band, room) in bands {
            prop_assert!(band.low <= room.load.total && room.load.total <= band.high, "{:?}", band);
        }
        let house = design.certainty.house;
        prop_assert!(house.low <= design.load && design.load <= house.high, "{:?}", house);
    }
}

/// Two spaces that lead to each other alone, one that leads nowhere: there is no balance, so they
/// are as cold as outdoors, and every number of the house stays a number.
#[test]
fn spaces_that_no_heat_reaches_are_as_cold_as_outdoors() {
    let (mut draft, room_id, spaces) =
        under(&[RoomUse::Garage, RoomUse::Attic, RoomUse::Other, RoomUse::Basement]);
    add_wall(&mut draft, room_id, "10", "0.1");
    surface(&mut draft, spaces[0], SurfaceKind::Ceiling, Behind::Room(spaces[1]), ("0.1", "100"));
    // The last one does have a balance, and is not disturbed: 10 to 10.
    surface(&mut draft, room_id, SurfaceKind::Floor, Behind::Room(spaces[3]), ("0.1", "100"));
    surface(&mut draft, spaces[3], SurfaceKind::Wall, Behind::Outdoors, ("0.1", "100"));
    let (job, design) = solve(&draft);
    let loss = losses(&job.house);
    for cut_off in 0..3 {
        check("cut off", fahrenheit(&loss, cut_off), 0.0);
    }
    check("basement", fahrenheit(&loss, 3), 35.0);
    let band = loss.certainty.house;
    assert!(band.low.is_finite() && band.high.is_finite() && band.low < band.high, "{band:?}");
    let json = serde_json::to_string(&design).expect("a design");
    // serde writes what is no number as null.
    let spaces = serde_json::to_string(&design.spaces).expect("its spaces");
    let certainty = serde_json::to_string(&design.certainty).expect("its certainty");
    assert!(!certainty.contains("null"), "{certainty}");
    assert!(!spaces.contains("\"loss_w\":null") && json.len() > spaces.len(), "{spaces}");
}

/// A room of 30 by 20 ft on a slab, with walls along two of its sides.
fn on_a_slab() -> (Draft, RoomId, SurfaceId) {
    let mut draft = cold_day();
    let id = add_room(&mut draft, "Room", "30", "20");
    for length in ["30", "20"] {
        add_wall(&mut draft, id, length, "0.1");
    }
    let slab = draft.add_surface_to(id, SurfaceKind::Floor, Behind::Ground).expect("a floor");
    house(&mut draft, HouseField::MeanTemperature, "50");
    house(&mut draft, HouseField::ColdestMonth, "26");
    (draft, id, slab)
}

fn ground(draft: &Draft) -> f64 {
    losses(&job_of(draft).house).rooms[0].of(Part::Ground).to(Unit::BtuPerHour)
}

/// 50 ft of edge by F 0.73 (the code's bare slab) and 70 °F are 2555 Btu/h.
#[test]
fn an_f_factor_takes_the_whole_difference_along_the_edge() {
    let (mut draft, id, slab) = on_a_slab();
    let iso = ground(&draft);
    draft.ground.method = GroundMethod::FFactor;
    check("bare", ground(&draft), 0.73 * 50.0 * 70.0);
    assert!(iso > 0.0 && iso < ground(&draft), "{iso}");
    set(&mut draft, Field::Ground(GroundField::FFactor), "0.5");
    check("typed", ground(&draft), 0.5 * 50.0 * 70.0);
    set(&mut draft, Field::Surface(id, slab, SurfaceField::Perimeter), "60");
    check("typed edge", ground(&draft), 0.5 * 60.0 * 70.0);
    let job = job_of(&draft);
    let factor = LinearTransmittance::of(0.5, Unit::BtuPerHourFootFahrenheit);
    assert_eq!(job.house.ground.slab, SlabMethod::FFactor(factor));
}

/// A wall in the earth loses what ISO 13370 says whichever way slabs are reckoned, also in a room
/// that has no slab.
#[test]
fn a_wall_in_the_earth_needs_no_slab() {
    let mut draft = cold_day();
    let id = add_room(&mut draft, "Room", "30", "20");
    let wall = draft.add_surface_to(id, SurfaceKind::Wall, Behind::Ground).expect("a wall");
    set(&mut draft, Field::Surface(id, wall, SurfaceField::Length), "30");
    set(&mut draft, Field::Surface(id, wall, SurfaceField::Depth), "4");
    house(&mut draft, HouseField::MeanTemperature, "50");
    house(&mut draft, HouseField::ColdestMonth, "26");
    let iso = ground(&draft);
    assert!(iso > 0.0);
    draft.ground.method = GroundMethod::FFactor;
    check("wall", ground(&draft), iso);
}

/// Edge insulation along more edge than a floor has ground beneath it: nothing is gained from it.
#[test]
fn no_floor_gains_heat_from_its_edge_insulation() {
    let (mut draft, id, slab) = on_a_slab();
    draft.ground.edge = EdgeBasis::Vertical;
    set(&mut draft, Field::Ground(GroundField::EdgeDepth), "4");
    set(&mut draft, Field::Ground(GroundField::EdgeR), "30");
    let steady = |draft: &Draft| {
        let rooms = losses(&job_of(draft).house).rooms;
        let path = rooms[0].paths.iter().find(|path| path.path == Path::Ground(slab));
        path.expect("its floor").conductance.si()
    };
    let saved = steady(&draft);
    assert!(saved > 0.0, "{saved}");
    set(&mut draft, Field::Surface(id, slab, SurfaceField::Area), "10");
    check("narrow", steady(&draft), 0.0);
}
