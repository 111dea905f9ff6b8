//! Heat loss: air against the trade's rule, assemblies against published values, and what must
//! hold between rooms.

mod shared_air;

use crate::support::{add_opening, add_room, add_wall, cold_day, job_of, room, set};
use finrun_engine::building::assembly::{HeatFlow, Layer, OUTSIDE_FILM, combined};
use finrun_engine::building::{
    Assembly, Behind, House, OpeningKind, Part, Path, Room, RoomLoad, SurfaceKind, losses,
    ventilation_loss,
};
use finrun_engine::job::{self, Field, OpeningField, RoomField, SurfaceField, UValue};
use finrun_engine::quantity::{
    Length, Power, Resistance, Temperature, Transmittance, Unit, VolumeFlow,
};

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

/// Btu/h for each cfm and °F at sea level, in a room of this temperature.
fn air_factor(room: f64, outdoors: f64) -> f64 {
    let flow = VolumeFlow::of(100.0, Unit::CubicFootPerMinute);
    let heat = ventilation_loss(flow, fahrenheit(room), fahrenheit(outdoors), Length::ZERO);
    heat.to(Unit::BtuPerHour) / (100.0 * (room - outdoors))
}

/// The US rule of 1.08 Btu/h per cfm and °F (ASHRAE Handbook of Fundamentals, ventilation), which
/// holds at 70 °F and sea level.
#[test]
fn air_follows_the_us_rule() {
    let off = |room, outdoors| (air_factor(room, outdoors) / 1.08 - 1.0).abs();
    for outdoors in [-30.0, 0.0, 40.0] {
        assert!(off(70.0, outdoors) < 0.001, "{}", air_factor(70.0, outdoors));
        // The density is that of the room's own air, which goes with 1/T: 1 % holds from 65 to 75 °F.
        for room in [65.0, 68.0, 72.0, 75.0] {
            assert!(off(room, outdoors) < 0.01, "{room}: {}", air_factor(room, outdoors));
        }
    }
}

/// U.S. Standard Atmosphere 1976: 84 556 Pa at 1500 m, 83.45 % of sea level, from memory.
#[test]
fn air_thins_with_altitude() {
    let flow = VolumeFlow::from_si(0.1);
    let at =
        |metres| ventilation_loss(flow, fahrenheit(70.0), fahrenheit(0.0), Length::from_si(metres));
    assert!((at(1500.0) / at(0.0) - 0.8345).abs() < 2e-4, "{}", at(1500.0) / at(0.0));
}

fn us_r(value: f64) -> Resistance {
    Resistance::of(value, Unit::UsR)
}

/// An assembly of ASHRAE 90.1, normative appendix A: layers, share of framing and U, from memory.
struct Published {
    name: &'static str,
    /// Even layers, ft2 F h/Btu.
    even: &'static [f64],
    cavity: f64,
    /// Softwood of R 1.25 an inch over the cavity's depth.
    wood: f64,
    framing: f64,
    films: (f64, f64),
    u: f64,
}

/// Stucco 0.08, gypsum of 5/8 in 0.56 on both sides; 25 % studs, plates and headers; films 0.68
/// and 0.17. A batt of R-19 pressed into 5 1/2 in has 18. Attic: gypsum 0.56, films 0.61 and 0.46,
/// 7 % joists of 5 1/2 in with the rest of the insulation over them. Floor: carpet and pad 1.23,
/// 3/4 in of wood 0.94, 10 % joists, films 0.92 and 0.46.
const PUBLISHED: &[Published] = &[
    Published {
        name: "2 x 4 wall, R-11",
        even: &[0.08, 0.56, 0.56],
        cavity: 11.0,
        wood: 4.375,
        framing: 0.25,
        films: (0.68, 0.17),
        u: 0.096,
    },
    Published {
        name: "2 x 4 wall, R-13",
        even: &[0.08, 0.56, 0.56],
        cavity: 13.0,
        wood: 4.375,
        framing: 0.25,
        films: (0.68, 0.17),
        u: 0.089,
    },
    Published {
        name: "2 x 6 wall, R-19",
        even: &[0.08, 0.56, 0.56],
        cavity: 18.0,
        wood: 6.875,
        framing: 0.25,
        films: (0.68, 0.17),
        u: 0.067,
    },
    Published {
        name: "2 x 6 wall, R-21",
        even: &[0.08, 0.56, 0.56],
        cavity: 21.0,
        wood: 6.875,
        framing: 0.25,
        films: (0.68, 0.17),
        u: 0.063,
    },
    Published {
        name: "attic, R-30",
        even: &[0.56, 11.0],
        cavity: 19.0,
        wood: 6.875,
        framing: 0.07,
        films: (0.61, 0.46),
        u: 0.034,
    },
    Published {
        name: "attic, R-38",
        even: &[0.56, 19.0],
        cavity: 19.0,
        wood: 6.875,
        framing: 0.07,
        films: (0.61, 0.46),
        u: 0.027,
    },
    Published {
        name: "joist floor, R-19",
        even: &[1.23, 0.94],
        cavity: 19.0,
        wood: 6.875,
        framing: 0.10,
        films: (0.92, 0.46),
        u: 0.051,
    },
];

#[test]
fn published_assemblies_come_out_within_five_percent() {
    for case in PUBLISHED {
        let mut layers: Vec<Layer> = case.even.iter().map(|&r| Layer::Even(us_r(r))).collect();
        layers.push(Layer::Framed { cavity: us_r(case.cavity), framing: us_r(case.wood) });
        let (inside, outside) = case.films;
        let found = combined(&layers, case.framing, us_r(inside), us_r(outside)).to(Unit::UsU);
        assert!((found / case.u - 1.0).abs() < 0.05, "{}: {found} against {}", case.name, case.u);
    }
}

/// The starter list's own layers are not the appendix's: half an inch each of plywood and wood
/// siding for gypsum and stucco, 23 % framing for 25 %, the ISO films, batts at their label, floors
/// of boards and plywood without carpet over 2 x 10 joists. How far each then stands from the
/// appendix is held here, so that a change of a layer is seen; the floor is the one beyond 5 %.
#[test]
fn the_starter_list_stands_where_it_is_said_to_stand() {
    let cases = [
        (Assembly::FrameWallR11, 0.096, 0.007),
        (Assembly::FrameWallR13, 0.089, 0.007),
        (Assembly::FrameWallR19, 0.067, -0.036),
        (Assembly::FrameWallR21, 0.063, -0.021),
        (Assembly::AtticCeilingR30, 0.034, -0.002),
        (Assembly::AtticCeilingR38, 0.027, -0.014),
        (Assembly::JoistFloorR19, 0.051, -0.062),
    ];
    for (assembly, published, share) in cases {
        let found = assembly.transmittance().to(Unit::UsU) / published - 1.0;
        assert!((found - share).abs() < 0.0006, "{assembly:?}: {found} instead of {share}");
    }
}

/// Worked by hand after ISO 6946, section on thermally inhomogeneous layers:
///
/// plasterboard 12.5 mm of 0.25 W/m K            R = 0.05
/// studs 89 mm of 0.13, wool of 0.04 between     R = 0.6846 and 2.225, studs 15 % of the area
/// sheathing 13 mm of 0.13                       R = 0.10
/// films 0.13 and 0.04                           R = 0.17
///
/// Upper limit, two paths: cavity 0.17 + 0.05 + 2.225 + 0.10 = 2.545, studs 1.00462;
/// 1/R = 0.85/2.545 + 0.15/1.00462 = 0.333988 + 0.149311 = 0.483299, R = 2.069112.
/// Lower limit, layer by layer: 1/R = 0.85/2.225 + 0.15/0.684615 = 0.382022 + 0.219101 = 0.601124,
/// R = 1.663551; with the rest 0.32: 1.983551.
/// R = (2.069112 + 1.983551)/2 = 2.026332, U = 0.493502.
#[test]
fn the_combined_method_as_worked_by_hand() {
    let si = |value| Resistance::from_si(value);
    let layers = [
        Layer::Even(si(0.05)),
        Layer::Framed { cavity: si(0.089 / 0.04), framing: si(0.089 / 0.13) },
        Layer::Even(si(0.10)),
    ];
    let inside = HeatFlow::Horizontal.inside_film();
    let found = combined(&layers, 0.15, inside, OUTSIDE_FILM).si();
    assert!((found - 0.493502).abs() < 1e-6, "{found}");
    // Without framing both limits are the plain sum of resistances.
    let plain = combined(&[Layer::Even(si(1.83))], 0.15, inside, OUTSIDE_FILM).si();
    assert!((plain - 0.5).abs() < 1e-15, "{plain}");
}

/// Two rooms of 74 and 66 °F with an inside wall and a door between them, entered in the first.
fn neighbours() -> House {
    let mut draft = cold_day();
    let warm = add_room(&mut draft, "Warm", "12", "10");
    let cool = add_room(&mut draft, "Cool", "11", "10");
    room(&mut draft, warm, RoomField::Temperature, "74");
    room(&mut draft, cool, RoomField::Temperature, "66");
    add_wall(&mut draft, warm, "12", "0.09");
    add_wall(&mut draft, cool, "11", "0.07");
    let between = add_wall(&mut draft, warm, "10", "0.3");
    add_opening(&mut draft, warm, between, OpeningKind::Door, &[(OpeningField::Width, "2' 8\"")]);
    draft.surface_mut(warm, between).expect("just added").behind = job::Behind::Room(cool);
    job_of(&draft).house
}

#[test]
fn what_one_room_loses_to_another_the_other_gains() {
    let house = neighbours();
    let rooms = &house.rooms;
    let both = losses(&house).rooms;
    let between = |load: &RoomLoad, beyond: &Room| -> Power {
        load.paths.iter().filter(|p| p.beyond == beyond.temperature).map(|p| p.loss).sum()
    };
    // Wall and door are two paths on either side, each known by what it goes through.
    let known: Vec<Path> = both[1].paths.iter().map(|path| path.path).collect();
    assert!(known.iter().all(|path| known.iter().filter(|p| *p == path).count() == 1), "{known:?}");
    let (lost, gained) = (between(&both[0], &rooms[1]), between(&both[1], &rooms[0]));
    // Wall of 80 ft2 less a door of 2' 8" by 6' 8", each by its U and 8 °F.
    let door = 8.0 / 3.0 * 20.0 / 3.0;
    let expected = (0.3 * (80.0 - door) + 0.50 * door) * 8.0;
    assert!((lost.to(Unit::BtuPerHour) - expected).abs() < 1e-9, "{lost:?} {expected}");
    assert_eq!(lost, -gained);
    // Entered from the other side it is the same heat.
    let mut turned = house.clone();
    let mut wall = turned.rooms[0].surfaces.pop().expect("the inside wall");
    wall.behind = Behind::Room(turned.rooms[0].id);
    turned.rooms[1].surfaces.push(wall);
    let other_way = losses(&turned).rooms;
    for (a, b) in both.iter().zip(&other_way) {
        assert!((a.total - b.total).abs().si() < 1e-9, "{a:?} {b:?}");
    }
    // Between rooms heat only moves: the house loses what it would without that wall.
    turned.rooms[1].surfaces.pop();
    let total = |loads: &[RoomLoad]| -> Power { loads.iter().map(|load| load.total).sum() };
    let apart = losses(&turned).rooms;
    assert!((total(&both) - total(&apart)).abs().si() < 1e-9);
    assert!(total(&both) > Power::ZERO);
}

/// Doubling is exact in binary, so the loads double to the last bit.
#[test]
fn twice_the_house_loses_twice_the_heat() {
    let house = neighbours();
    let mut doubled = house.clone();
    for room in &mut doubled.rooms {
        room.floor_area = room.floor_area * 2.0;
        for surface in &mut room.surfaces {
            surface.gross_area = surface.gross_area * 2.0;
            for opening in &mut surface.openings {
                opening.width = opening.width * 2.0;
            }
        }
    }
    for (one, two) in losses(&house).rooms.iter().zip(losses(&doubled).rooms) {
        assert_eq!(two.total, one.total * 2.0);
        assert!(one.total > Power::ZERO);
    }
}

/// By hand, per part: wall 12 ft by 8 ft less window 4 by 3 ft and door 3 by 7 ft, ceiling and
/// floor 120 ft2, a hatch in the ceiling of 2 by 2 ft; 70 °F inside, 0 °F outdoors, 45 °F below.
#[test]
fn openings_are_subtracted_and_counted_by_their_own_u() {
    let mut draft = cold_day();
    let id = add_room(&mut draft, "Room", "12", "10");
    let wall = add_wall(&mut draft, id, "12", "0.1");
    let typed = |draft: &mut job::Draft, surface, kind, width, height, left, u| {
        let fields = [
            (OpeningField::Width, width),
            (OpeningField::Height, height),
            (OpeningField::FromLeft, left),
            (OpeningField::U, u),
        ];
        let opening = add_opening(draft, id, surface, kind, &fields);
        draft.opening_mut(id, surface, opening).expect("just added").u_value = UValue::TypedU;
    };
    typed(&mut draft, wall, OpeningKind::Window, "4", "3", "6", "0.5");
    typed(&mut draft, wall, OpeningKind::Door, "3", "7", "1", "0.4");
    let (ceiling, floor) = (
        draft.add_surface(id, SurfaceKind::Ceiling).expect("the room is there"),
        draft.add_surface(id, SurfaceKind::Floor).expect("the room is there"),
    );
    for (surface, r) in [(ceiling, "20"), (floor, "10")] {
        draft.surface_mut(id, surface).expect("just added").u_value = UValue::TypedR;
        set(&mut draft, Field::Surface(id, surface, SurfaceField::R), r);
    }
    typed(&mut draft, ceiling, OpeningKind::Door, "2", "2", "0", "0.25");
    draft.surface_mut(id, floor).expect("just added").behind = job::Behind::Unheated;
    set(&mut draft, Field::Surface(id, floor, SurfaceField::BehindTemperature), "45");
    let job = job_of(&draft);
    let load = &losses(&job.house).rooms[0];
    let expected = [
        (Part::Wall, 0.1 * (96.0 - 12.0 - 21.0) * 70.0),
        (Part::Window, 0.5 * 12.0 * 70.0),
        (Part::Door, 0.4 * 21.0 * 70.0 + 0.25 * 4.0 * 70.0),
        (Part::Ceiling, (120.0 - 4.0) / 20.0 * 70.0),
        (Part::Floor, 120.0 / 10.0 * 25.0),
        (Part::Air, 0.0),
    ];
    for (part, expected) in expected {
        let found = load.of(part).to(Unit::BtuPerHour);
        assert!((found - expected).abs() < 1e-9, "{part:?}: {found} against {expected}");
    }
    let sum: f64 = expected.iter().map(|(_, heat)| heat).sum();
    assert!((load.total.to(Unit::BtuPerHour) - sum).abs() < 1e-9);
}

/// A typed U wins over any list, and R is its reciprocal.
#[test]
fn typed_u_and_typed_r_are_two_ways_to_say_one_thing() {
    let u = Transmittance::of(0.05, Unit::UsU);
    assert!((u.resistance().to(Unit::UsR) - 20.0).abs() < 1e-12);
    assert!((us_r(20.0).transmittance() - u).abs().si() < 1e-15);
}
