//! Rooms and spaces on the ground: one plot, shared; and what stands partly in it.

use super::{behind, celsius, house, room, same, slab, space, total, wall};
use crate::support::{add_room, cold_day, job_of, room as type_room, set};
use finrun_engine::building::ground::{
    EdgeInsulation, Floor, Footprint, Placement, Shield, Underfloor, floor_u_w_m2k,
    periodic_basement_w_mk, suspended_ground_u_w_m2k, suspended_u_w_m2k, vented_u_w_m2k,
    wall_u_w_m2k,
};
use finrun_engine::building::{
    Behind, House, OpeningId, OpeningKind, Path, Room, RoomUse, SlabEdge, SlabMethod, Soil,
    Surface, SurfaceKind, losses, slab_compared,
};
use finrun_engine::building::{Built, Known, Opening, air_density};
use finrun_engine::job::{
    self, Field, GroundMethod, HouseField, RoomField, Shape, SurfaceField, UValue, resolve,
};
use finrun_engine::quantity::{Area, Length, Power, Transmittance, Unit};

const ON_GRADE: Behind = Behind::Ground { depth: Length::ZERO };

fn in_earth(depth_m: f64) -> Behind {
    Behind::Ground { depth: Length::from_si(depth_m) }
}

/// A floor of U 0.8 W/m2K with its films, as a slab with some insulation has.
fn on_ground(id: u32, area_m2: f64, depth_m: f64) -> Surface {
    slab(id, SurfaceKind::Floor, area_m2, 0.8, in_earth(depth_m))
}

fn edge(placement: Placement) -> SlabMethod {
    SlabMethod::Iso(Some(EdgeInsulation {
        placement,
        depth_m: 0.6,
        thickness_m: 0.05,
        resistance_m2k_w: 1.75,
    }))
}

/// A winter that reaches into the ground.
fn cold(mut house: House) -> House {
    house.site.outdoors = celsius(-15.0);
    house.site.coldest_month = celsius(-5.0);
    house
}

fn ground_loss(house: &House) -> f64 {
    let paths = losses(house).rooms.into_iter().flat_map(|room| room.paths);
    paths
        .filter(|path| {
            matches!(path.path, Path::Ground(_) | Path::GroundSwing(_) | Path::SlabEdge(_))
        })
        .map(|path| path.loss.si())
        .sum()
}

/// Two rooms of 5 m by 4 m and 3 m by 4 m, and one of 8 m by 4 m: the same slab, the same edge.
#[test]
fn rooms_on_one_slab_share_what_one_room_would_lose() {
    let wall = |id, length| wall(id, length, 0.4, Behind::Outdoors);
    let apart = || {
        vec![
            room(1, 20.0, vec![wall(1, 5.0), wall(2, 4.0), wall(3, 5.0), on_ground(4, 20.0, 0.0)]),
            room(2, 20.0, vec![wall(5, 3.0), wall(6, 4.0), wall(7, 3.0), on_ground(8, 12.0, 0.0)]),
        ]
    };
    let whole = || {
        let walls = [(1, 8.0), (2, 4.0), (3, 8.0), (4, 4.0)].map(|(id, length)| wall(id, length));
        vec![room(1, 20.0, [walls.to_vec(), vec![on_ground(5, 32.0, 0.0)]].concat())]
    };
    let f_factor = SlabMethod::FFactor(SlabEdge::Vertical2FtR10.f_factor());
    let ways =
        [SlabMethod::Iso(None), edge(Placement::Horizontal), edge(Placement::Vertical), f_factor];
    for way in ways {
        let with = |rooms: Vec<Room>| {
            let mut house = cold(house(rooms, Vec::new()));
            house.ground.slab = way;
            house.ground.other = f_factor;
            house
        };
        let (apart, whole) = (with(apart()), with(whole()));
        same("the slab", ground_loss(&apart), ground_loss(&whole));
        assert!(ground_loss(&whole) > 0.0);
        let compared = slab_compared(&whole).expect("a slab");
        same("as it is compared", compared.used.si(), ground_loss(&whole));
        // The floor of a room without an outside wall takes its share by area and no edge.
        let shares = losses(&apart).rooms;
        let steady = |room: usize| {
            let paths = shares[room].paths.iter();
            paths.filter(|p| matches!(p.path, Path::Ground(_))).map(|p| p.loss.si()).sum::<f64>()
        };
        if way == SlabMethod::Iso(None) {
            same("by area", steady(0) / steady(1), 20.0 / 12.0);
        }
    }
}

/// A garage beside a slab takes nothing off its edge: ISO 13370 counts the wall to it as if the garage
/// were not there (from memory), whichever side it is entered on. In a basement it counts for nothing.
#[test]
fn a_slabs_edge_at_a_garage_is_an_edge() {
    let outside = |length| wall(1, length, 0.4, Behind::Outdoors);
    let garage = |surfaces: Vec<Surface>| {
        space(2, [vec![wall(9, 12.0, 2.0, Behind::Outdoors)], surfaces].concat())
    };
    let floor = |depth_m| on_ground(3, 32.0, depth_m);
    let alone = house(vec![room(1, 20.0, vec![outside(24.0), floor(0.0)])], Vec::new());
    let here = house(
        vec![room(1, 20.0, vec![outside(18.0), wall(2, 6.0, 0.5, behind(2)), floor(0.0)])],
        vec![garage(Vec::new())],
    );
    let there = house(
        vec![room(1, 20.0, vec![outside(18.0), floor(0.0)])],
        vec![garage(vec![wall(2, 6.0, 0.5, behind(1))])],
    );
    let guessed = Behind::Unheated(celsius(5.0), Known::Assumed);
    let porch = house(
        vec![room(1, 20.0, vec![outside(18.0), wall(2, 6.0, 0.5, guessed), floor(0.0)])],
        Vec::new(),
    );
    for method in [SlabMethod::Iso(None), SlabMethod::FFactor(SlabEdge::Uninsulated.f_factor())] {
        let with = |house: &House| {
            let mut house = cold(house.clone());
            house.ground.slab = method;
            ground_loss(&house)
        };
        for beside in [&here, &there, &porch] {
            same("the edge", with(beside), with(&alone));
        }
    }
    // The garage's own slab, where it has one, has its own outside walls for edges.
    let deep = |walls: Vec<Surface>| {
        let stone = wall(1, 18.0, 0.9, in_earth(2.0));
        let surfaces = [vec![stone, floor(2.0)], walls].concat();
        ground_loss(&cold(house(vec![room(1, 20.0, surfaces)], vec![garage(Vec::new())])))
    };
    same("a basement", deep(vec![wall(2, 6.0, 0.5, behind(2))]), deep(Vec::new()));
}

/// What the form shows beside a blank box is the edge that the load has: by its F-factor a load tells.
#[test]
fn the_edge_shown_is_the_edge_counted() {
    let mut draft = cold_day();
    set(&mut draft, Field::House(HouseField::MeanTemperature), "50");
    set(&mut draft, Field::House(HouseField::ColdestMonth), "30");
    draft.ground.method = GroundMethod::FFactor;
    let id = add_room(&mut draft, "Room", "20", "16");
    draft.add_walls(id);
    let floor = draft.add_surface_to(id, SurfaceKind::Floor, job::Behind::Ground).expect("a room");
    let garage = draft.add_space(RoomUse::Garage, "Garage");
    type_room(&mut draft, garage, RoomField::FloorArea, "400");
    let walls: Vec<_> = draft.room(id).expect("the room").surfaces.iter().map(|s| s.id).collect();
    let beyond = [
        (job::Behind::Room(garage), 72.0),
        (job::Behind::Unheated, 72.0),
        (job::Behind::SameTemperature, 56.0),
    ];
    for (behind, feet) in beyond {
        draft.set_behind(id, walls[1], behind);
        let shown = resolve(&draft, Field::Surface(id, floor, SurfaceField::Perimeter)).si();
        same("shown", shown.map_or(0.0, |si| Length::from_si(si).to(Unit::Foot)), feet);
        let counted = Power::from_si(ground_loss(&job_of(&draft).house));
        // 0.73 Btu/(h ft F) by 70 F.
        same("counted", counted.to(Unit::BtuPerHour) / (0.73 * 70.0), feet);
    }
    // Entered on the garage's side it is the same edge.
    let wall = draft.add_surface_to(garage, SurfaceKind::Wall, job::Behind::Room(id));
    set(&mut draft, Field::Surface(garage, wall.expect("a space"), SurfaceField::Length), "16");
    let shown = resolve(&draft, Field::Surface(id, floor, SurfaceField::Perimeter)).si();
    same("shown", shown.map_or(0.0, |si| Length::from_si(si).to(Unit::Foot)), 72.0);
    let counted = Power::from_si(ground_loss(&job_of(&draft).house));
    same("counted", counted.to(Unit::BtuPerHour) / (0.73 * 70.0), 72.0);
}

/// `Q = F P (T_in - T_out)`: 24 m of edge, 35 K, WAC 51-11C-61061 table A106.1 for two feet of
/// vertical R-10, 0.54 Btu/(h ft F).
#[test]
fn the_f_factor_stands_against_the_whole_difference() {
    let rooms = vec![room(
        1,
        20.0,
        vec![
            wall(1, 16.0, 0.4, Behind::Outdoors),
            wall(2, 8.0, 0.4, Behind::Outdoors),
            on_ground(3, 32.0, 0.0),
        ],
    )];
    let mut house = cold(house(rooms, Vec::new()));
    house.ground.other = SlabMethod::FFactor(SlabEdge::Vertical2FtR10.f_factor());
    let by_hand = Power::of(0.54 * (24.0 / 0.3048) * (35.0 * 1.8), Unit::BtuPerHour);
    let iso = ground_loss(&house);
    let compared = slab_compared(&house).expect("a slab");
    same("the other way", compared.other.si(), by_hand.si());
    same("the way used", compared.used.si(), iso);
    house.ground.slab = house.ground.other;
    same("as a load", ground_loss(&house), by_hand.si());
    assert!(by_hand.si() > iso);
}

/// A wall 10 m long and 2.5 m high, 1.8 m of it in the earth, with a window above the ground.
#[test]
fn a_wall_partly_in_the_ground_loses_both_ways() {
    let window = Opening {
        id: OpeningId(1),
        kind: OpeningKind::Window,
        width: Length::from_si(1.0),
        height: Length::from_si(0.5),
        from_left: Length::ZERO,
        transmittance: Transmittance::from_si(3.0),
        built: Built::Typed,
        size: Known::Typed,
    };
    let mut stone = wall(1, 10.0, 0.9, in_earth(1.8));
    stone.openings.push(window);
    let rooms = |stone: Surface| vec![room(1, 20.0, vec![stone, on_ground(2, 30.0, 1.8)])];
    let house_of = |stone| cold(house(rooms(stone), Vec::new()));
    let found = losses(&house_of(stone.clone()));
    let path = |wanted: Path| {
        *found.rooms[0].paths.iter().find(|path| path.path == wanted).expect("the path")
    };
    let above = path(Path::Surface(stone.id));
    same("above", above.area.expect("its area").si(), 10.0 * (2.5 - 1.8) - 0.5);
    same("above", above.loss.si(), 6.5 * 0.9 * 35.0);
    same("window", path(Path::Opening(stone.id, OpeningId(1))).loss.si(), 0.5 * 3.0 * 35.0);
    // ISO 13370 for the rest: layers behind the films of 0.17 and 0.21 m2K/W.
    let floor = Floor {
        ground: Soil::Sand.ground(),
        footprint: Footprint {
            area_m2: 30.0,
            perimeter_m: 10.0,
            wall_thickness_m: 0.2,
            depth_m: 1.8,
        },
        resistance_m2k_w: 1.0 / 0.8 - 0.21,
    };
    let layers = 1.0 / 0.9 - 0.17;
    let below = path(Path::Ground(stone.id));
    same("below", below.area.expect("its area").si(), 18.0);
    same("below", below.loss.si(), 18.0 * wall_u_w_m2k(&floor, 1.8, layers) * 10.0);
    let swing = path(Path::GroundSwing(stone.id)).loss.si();
    same("swing", swing, 10.0 * periodic_basement_w_mk(&floor, 1.8, layers) * 15.0);
    let floor_loss = path(Path::Ground(finrun_engine::building::SurfaceId(2))).loss.si();
    same("floor", floor_loss, 30.0 * floor_u_w_m2k::<f64>(&floor, None) * 10.0);
    // No deeper than it is high, and not at all in the earth.
    let kinds = |stone: Surface| {
        let paths = losses(&house_of(stone)).rooms.remove(0).paths;
        paths.iter().map(|path| (path.path, path.area)).collect::<Vec<_>>()
    };
    let mut whole = wall(1, 10.0, 0.9, in_earth(2.5));
    assert!(kinds(whole.clone()).iter().all(|(path, _)| *path != Path::Surface(whole.id)));
    whole.behind = ON_GRADE;
    let shallow = kinds(whole.clone());
    assert!(shallow.contains(&(Path::Surface(whole.id), Some(Area::from_si(25.0)))));
    assert!(shallow.iter().all(|(path, _)| *path != Path::Ground(whole.id)));
}

/// On a day as cold as the year the balance of a crawl space and ISO 13370's closed formula are one:
/// `1/U = 1/U_f + 1/(U_g + U_x)`. Of its 1450 half is a flow of 0.59 times what a cubic metre of air
/// holds: 1229 J/(m3 K), within a thousandth the standard's 1.23 kg/m3 of 1000 J/(kg K) (from memory).
/// Air of 0 °C holds that at some 470 m.
#[test]
fn a_crawl_spaces_balance_is_the_closed_formula() {
    let (area_m2, perimeter_m, height_m, wall_u, floor_u) = (64.0, 32.0, 0.6, 1.8, 0.35);
    let carries =
        |altitude_m: f64| air_density(celsius(0.0), Length::from_si(altitude_m)).si() * 1006.0;
    let (mut low, mut high) = (0.0, 2000.0);
    while high - low > 1e-9 {
        let middle = 0.5 * (low + high);
        if carries(middle) > 725.0 / 0.59 { low = middle } else { high = middle }
    }
    let bare_earth = slab(9, SurfaceKind::Floor, area_m2, 1.0 / 0.21, ON_GRADE);
    let sides = Surface {
        gross_area: Area::from_si(perimeter_m * height_m),
        ..wall(8, perimeter_m, wall_u, Behind::Outdoors)
    };
    let mut crawl = space(2, vec![sides, bare_earth]);
    crawl.used = RoomUse::CrawlSpace;
    for vents_m2 in [0.0, 0.05, 0.4] {
        crawl.vent_area = Area::from_si(vents_m2);
        let floor = slab(1, SurfaceKind::Floor, area_m2, floor_u, behind(2));
        let mut house = house(vec![room(1, 20.0, vec![floor])], vec![crawl.clone()]);
        house.site.altitude = Length::from_si(low);
        house.site.mean = house.site.outdoors;
        house.site.coldest_month = house.site.outdoors;
        let footprint = Footprint { area_m2, perimeter_m, wall_thickness_m: 0.2, depth_m: 0.0 };
        let earth = Floor { ground: Soil::Sand.ground(), footprint, resistance_m2k_w: 0.0 };
        let under = Underfloor {
            height_m,
            wall_u_w_m2k: wall_u,
            vent_m2_m: vents_m2 / perimeter_m,
            wind_m_s: house.site.wind.si(),
            shield: Shield::Average,
        };
        let closed = suspended_u_w_m2k(
            floor_u,
            suspended_ground_u_w_m2k(&earth),
            vented_u_w_m2k(&footprint, &under),
        );
        same("through the floor", total(&house).si(), closed * area_m2 * 20.0);
    }
}

/// An L of 20 ft by 16 ft with 6 1/2 ft by 5 ft cut out: 287.5 ft2, and walls of 72 ft all round, as
/// the whole rectangle has.
#[test]
fn an_l_shape_has_its_walls_and_its_floor() {
    let mut draft = cold_day();
    let id = add_room(&mut draft, "L", "20", "16");
    draft.room_mut(id).expect("just added").shape = Shape::LShape;
    type_room(&mut draft, id, RoomField::CutLength, "6' 6\"");
    type_room(&mut draft, id, RoomField::CutWidth, "5");
    type_room(&mut draft, id, RoomField::Height, "9");
    draft.add_walls(id);
    let ceiling = draft.add_surface(id, SurfaceKind::Ceiling).expect("the room is there");
    let surfaces: Vec<_> =
        draft.room(id).expect("the room").surfaces.iter().map(|s| s.id).collect();
    for surface in surfaces {
        draft.surface_mut(id, surface).expect("there").u_value = UValue::TypedU;
        set(&mut draft, Field::Surface(id, surface, SurfaceField::U), "0.1");
    }
    let house = job_of(&draft).house;
    let room = &house.rooms[0];
    let feet2 = |area: Area| area.to(Unit::SquareFoot);
    same("floor", feet2(room.floor_area), 287.5);
    let walls = room.surfaces.iter().filter(|s| s.kind == SurfaceKind::Wall);
    let lengths: Vec<f64> = walls.map(|wall| wall.along.to(Unit::Foot)).collect();
    let hand = [20.0, 16.0, 13.5, 5.0, 6.5, 11.0];
    assert_eq!(lengths.len(), hand.len());
    for (found, hand) in lengths.iter().zip(hand) {
        same("a wall, round the room", *found, hand);
    }
    let over = room.surfaces.iter().find(|s| s.id == ceiling).expect("the ceiling");
    same("ceiling", feet2(over.gross_area), 287.5);
    let by_hand = (72.0 * 9.0 + 287.5) * 0.1 * 70.0;
    same("load", total(&house).to(Unit::BtuPerHour), by_hand);
}
