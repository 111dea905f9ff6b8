//! The house's outdoor air among its rooms, worked by hand in cubic feet a minute.

use super::air_factor;
use crate::support::{add_opening, add_room, add_wall, cold_day, house, job_of, room, set};
use finrun_engine::building::{
    OpeningKind, Part, Path, RoomId, RoomUse, SurfaceId, SurfaceKind, losses,
};
use finrun_engine::job::{
    AirBasis, AirField, Behind, Draft, Field, HouseField, OpeningField, RoomField, SurfaceField,
};
use finrun_engine::quantity::{Unit, VolumeFlow};

const LARGE: RoomId = RoomId(1);
const SMALL: RoomId = RoomId(2);

/// Rooms of 1600 and 800 ft3, 0.6 changes an hour: 24 cfm.
///
/// The large one shows a wall of 20 x 8 ft with its window and a floor of 200 ft2 over a cellar of
/// a known temperature, 360 ft2; its ceiling is as warm as it. The small one shows the 3 ft of a
/// wall of 10 ft that stand above the ground, 30 ft2, and the attic, whose floor of 100 ft2 was
/// entered on the attic's side: 130 ft2. Not the 5 ft in the ground, nor its floor there, nor the
/// wall between the two.
fn two_rooms() -> Draft {
    let mut draft = cold_day();
    assert_eq!(add_room(&mut draft, "Large", "20", "10"), LARGE);
    assert_eq!(add_room(&mut draft, "Small", "10", "10"), SMALL);
    let attic = draft.add_space(RoomUse::Attic, "");
    house(&mut draft, HouseField::AirChanges, "0.6");
    house(&mut draft, HouseField::MeanTemperature, "50");
    house(&mut draft, HouseField::ColdestMonth, "25");
    let wall = add_wall(&mut draft, LARGE, "20", "0.1");
    add_opening(&mut draft, LARGE, wall, OpeningKind::Window, &[(OpeningField::Width, "6")]);
    let mut add = |room, kind, behind| draft.add_surface_to(room, kind, behind).expect("a room");
    add(LARGE, SurfaceKind::Ceiling, Behind::SameTemperature);
    add(LARGE, SurfaceKind::Floor, Behind::Unheated);
    let between = add(LARGE, SurfaceKind::Wall, Behind::Room(SMALL));
    let buried: SurfaceId = add(SMALL, SurfaceKind::Wall, Behind::Ground);
    add(SMALL, SurfaceKind::Floor, Behind::Ground);
    add(attic, SurfaceKind::Floor, Behind::Room(SMALL));
    add(attic, SurfaceKind::Ceiling, Behind::Outdoors);
    room(&mut draft, attic, RoomField::FloorArea, "100");
    for (room, wall) in [(LARGE, between), (SMALL, buried)] {
        set(&mut draft, Field::Surface(room, wall, SurfaceField::Length), "10");
    }
    set(&mut draft, Field::Surface(SMALL, buried, SurfaceField::Depth), "5");
    draft
}

/// The outdoor air that each room takes through its gaps and by fans, as heat needs it, in cfm.
fn cfm(draft: &Draft) -> [(f64, f64); 2] {
    let loads = losses(&job_of(draft).house).rooms;
    [0, 1].map(|index| {
        let load = &loads[index];
        let by = |path: Path| -> f64 {
            let heat = load.paths.iter().filter(|p| p.path == path).map(|p| p.loss);
            heat.map(|heat| heat.to(Unit::BtuPerHour)).sum::<f64>() / (air_factor(70.0, 0.0) * 70.0)
        };
        let flows = (by(Path::Air), by(Path::Ventilation));
        let air = load.of(Part::Air).to(Unit::BtuPerHour) / (air_factor(70.0, 0.0) * 70.0);
        assert!((flows.0 + flows.1 - air).abs() < 1e-9, "{flows:?} of {air}");
        flows
    })
}

fn check(draft: &Draft, expected: [(f64, f64); 2]) {
    for (found, expected) in cfm(draft).into_iter().zip(expected) {
        let near = |a: f64, b: f64| (a - b).abs() < 1e-6 * b.max(1.0);
        assert!(near(found.0, expected.0) && near(found.1, expected.1), "{found:?} {expected:?}");
    }
}

const LARGE_SHARE: f64 = 360.0 / 490.0;
const SMALL_SHARE: f64 = 130.0 / 490.0;

#[test]
fn rooms_share_the_leakage_by_what_they_show() {
    check(&two_rooms(), [(24.0 * LARGE_SHARE, 0.0), (24.0 * SMALL_SHARE, 0.0)]);
}

/// One change an hour of 800 ft3 is 13.3 cfm, more than its share of 6.4; the other keeps its own.
#[test]
fn a_room_takes_at_least_what_is_typed() {
    let mut draft = two_rooms();
    room(&mut draft, SMALL, RoomField::AirChanges, "1");
    check(&draft, [(24.0 * LARGE_SHARE, 0.0), (800.0 / 60.0, 0.0)]);
    // Less than its share changes nothing.
    room(&mut draft, SMALL, RoomField::AirChanges, "0.2");
    check(&draft, [(24.0 * LARGE_SHARE, 0.0), (24.0 * SMALL_SHARE, 0.0)]);
}

/// 60 cfm in and 40 out: 40 balanced, of whose heat 70 % is kept, by volume; the other 20 and the
/// leakage add as the sides of a right angle.
#[test]
fn fans_add_to_the_leakage() {
    let mut draft = two_rooms();
    for (field, text) in
        [(AirField::Supply, "60"), (AirField::Exhaust, "40"), (AirField::Recovery, "70")]
    {
        set(&mut draft, Field::Air(field), text);
    }
    let leaked = (20.0_f64 * 20.0 + 24.0 * 24.0).sqrt();
    let cold = 40.0 * 0.3;
    check(
        &draft,
        [
            (leaked * LARGE_SHARE, cold * 1600.0 / 2400.0),
            (leaked * SMALL_SHARE, cold * 800.0 / 2400.0),
        ],
    );
}

/// A leakage area of 50 in2 = 322.58 cm2 in one storey and moderate shelter, 70 °F = 38.889 K and 10
/// mph = 4.4704 m/s: 322.58 x sqrt(0.000145 x 38.889 + 0.000174 x 19.984) = 30.80 L/s (ASHRAE
/// Handbook of Fundamentals, basic model, coefficients from memory).
#[test]
fn a_leakage_area_takes_cold_and_wind() {
    let mut draft = two_rooms();
    draft.air.basis = AirBasis::LeakageArea;
    set(&mut draft, Field::Air(AirField::LeakageArea), "50");
    house(&mut draft, HouseField::Wind, "10");
    let litres = 322.58 * (0.000145 * 38.888_888_9 + 0.000174 * 4.4704 * 4.4704_f64).sqrt();
    assert!((litres - 30.80).abs() < 0.005, "{litres}");
    let cfm = VolumeFlow::of(litres, Unit::LitrePerSecond).to(Unit::CubicFootPerMinute);
    check(&draft, [(cfm * LARGE_SHARE, 0.0), (cfm * SMALL_SHARE, 0.0)]);
}
