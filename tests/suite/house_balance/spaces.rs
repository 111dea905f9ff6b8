//! Unheated spaces: each as warm as makes its heat come out even.

use super::{behind, celsius, house, room, same, slab, space, total, wall};
use finrun_engine::building::{Behind, House, SurfaceKind, losses};
use finrun_engine::quantity::{Area, ChangeRate, Length, Temperature};
use proptest::prelude::*;

/// A room of 20 °C with a garage beside it and an attic above, which is also above the garage:
/// garage G and attic A solve
/// `(a + b + c) G - c A = a T_room + b T_out` and `-c G + (c + d + e) A = d T_room + e T_out`.
#[test]
fn two_spaces_beside_each_other_are_solved_together() {
    let (to_garage, garage_out, between) = (10.0 * 0.5, 15.0 * 2.0, 20.0 * 1.2);
    let (to_attic, attic_out) = (12.0 * 0.2, 30.0 * 2.5);
    let house = house(
        vec![room(
            1,
            20.0,
            vec![wall(1, 4.0, 0.5, behind(2)), slab(2, SurfaceKind::Ceiling, 12.0, 0.2, behind(3))],
        )],
        vec![
            space(
                2,
                vec![
                    wall(3, 6.0, 2.0, Behind::Outdoors),
                    slab(4, SurfaceKind::Ceiling, 20.0, 1.2, behind(3)),
                ],
            ),
            space(3, vec![slab(5, SurfaceKind::Ceiling, 30.0, 2.5, Behind::Outdoors)]),
        ],
    );
    // Cramer's rule, in °C with 0 °C outdoors.
    let (m11, m12) = (to_garage + garage_out + between, -between);
    let (m21, m22) = (-between, between + to_attic + attic_out);
    let (r1, r2) = (to_garage * 20.0, to_attic * 20.0);
    let determinant = m11 * m22 - m12 * m21;
    let garage = (r1 * m22 - m12 * r2) / determinant;
    let attic = (m11 * r2 - r1 * m21) / determinant;
    let found = losses(&house);
    let at = |index: usize| found.spaces[index].temperature.si() - 273.15;
    same("garage", at(0), garage);
    same("attic", at(1), attic);
    same("load", total(&house).si(), to_garage * (20.0 - garage) + to_attic * (20.0 - attic));
    // Roughly: the garage takes from the room and gives to outdoors and the attic.
    assert!(0.0 < attic && attic < garage && garage < 3.0, "{attic} {garage}");
}

#[test]
fn a_typed_temperature_wins() {
    let mut house = house(
        vec![room(1, 20.0, vec![wall(1, 4.0, 0.5, behind(2))])],
        vec![space(2, vec![wall(2, 6.0, 2.0, Behind::Outdoors)])],
    );
    let found = losses(&house).spaces[0].temperature;
    assert!(celsius(0.0) < found && found < celsius(20.0));
    house.spaces[0].temperature = Some(celsius(12.0));
    let typed = losses(&house);
    assert_eq!(typed.spaces[0].temperature, celsius(12.0));
    // 10 m2 by 0.5 W/m2K by 8 K, and its own balance is left open.
    same("load", typed.rooms[0].total.si(), 40.0);
    let sum: f64 = typed.spaces[0].paths.iter().map(|path| path.loss.si()).sum();
    same("what it is short of", sum, 15.0 * 2.0 * 12.0 - 40.0);
}

/// Whichever side a surface is entered on, the same heat goes the same way.
#[test]
fn a_surface_may_be_entered_on_the_spaces_side() {
    let outside = || wall(2, 6.0, 2.0, Behind::Outdoors);
    let on_the_room = house(
        vec![room(1, 20.0, vec![wall(1, 4.0, 0.5, behind(2))])],
        vec![space(2, vec![outside()])],
    );
    let on_the_space = house(
        vec![room(1, 20.0, Vec::new())],
        vec![space(2, vec![outside(), wall(1, 4.0, 0.5, behind(1))])],
    );
    let (a, b) = (losses(&on_the_room), losses(&on_the_space));
    same("space", a.spaces[0].temperature.si(), b.spaces[0].temperature.si());
    same("room", a.rooms[0].total.si(), b.rooms[0].total.si());
    assert!(a.rooms[0].total.si() > 0.0);
}

/// Sealed off from everything, also together with others, a space is as cold as outdoors; the rooms
/// do not notice.
#[test]
fn spaces_without_a_way_out_are_as_cold_as_outdoors() {
    let house = house(
        vec![room(1, 20.0, vec![wall(1, 4.0, 0.5, Behind::Outdoors)])],
        vec![
            space(2, Vec::new()),
            space(3, vec![wall(2, 4.0, 1.0, behind(4))]),
            space(4, vec![wall(3, 4.0, 2.0, behind(5))]),
            space(5, vec![wall(4, 4.0, 2.0, Behind::SameTemperature)]),
        ],
    );
    let found = losses(&house);
    for space in &found.spaces {
        same("a sealed space", space.temperature.si(), 273.15);
    }
    same("load", found.rooms[0].total.si(), 100.0);
    assert!(found.certainty.house.low.is_finite() && found.certainty.rooms[0].high.is_finite());
}

/// Rooms in a row, each with walls to outdoors and to some of the spaces; spaces with walls to each
/// other, to outdoors, and air.
fn houses() -> impl Strategy<Value = House> {
    let walls = || proptest::collection::vec((1.0..8.0, 0.1..4.0, 0..8_u32), 1..6);
    let rooms = proptest::collection::vec((15.0..26.0, walls()), 1..4);
    let spaces = proptest::collection::vec((walls(), 0.0..4.0, 0.0..0.3), 1..5);
    (rooms, spaces, -25.0..10.0).prop_map(|(rooms, spaces, outdoors)| {
        let count = spaces.len() as u32;
        let mut next = 0;
        let mut walls = |own: u32, list: Vec<(f64, f64, u32)>| {
            list.into_iter()
                .map(|(length, u, to)| {
                    next += 1;
                    let to = match 100 + to {
                        to if to < 100 + count && to != own => behind(to),
                        _ => Behind::Outdoors,
                    };
                    wall(next, length, u, to)
                })
                .collect::<Vec<_>>()
        };
        let rooms = rooms
            .into_iter()
            .enumerate()
            .map(|(index, (degrees, list))| {
                let id = index as u32;
                room(id, degrees, walls(id, list))
            })
            .collect();
        let spaces = spaces
            .into_iter()
            .enumerate()
            .map(|(index, (list, changes, vents))| {
                let id = 100 + index as u32;
                let mut space = space(id, walls(id, list));
                space.air_changes = ChangeRate::from_si(changes / 3600.0);
                space.vent_area = Area::from_si(vents);
                space
            })
            .collect();
        let mut house = house(rooms, spaces);
        house.site.outdoors = celsius(outdoors);
        house.site.altitude = Length::from_si(300.0);
        house
    })
}

proptest! {
    #[test]
    fn what_a_space_takes_in_it_gives_off(house in houses()) {
        let found = losses(&house);
        let coldest = house.site.outdoors;
        let warmest = house.rooms.iter().fold(coldest, |most, room| most.max(room.temperature));
        for space in &found.spaces {
            let sum: f64 = space.paths.iter().map(|path| path.loss.si()).sum();
            let size: f64 = space.paths.iter().map(|path| path.conductance.si()).sum();
            prop_assert!(sum.abs() <= 1e-11 * size * 300.0, "{sum} of {size}");
            let slack = |t: Temperature| t.si() * 1e-12;
            prop_assert!(space.temperature.si() >= coldest.si() - slack(coldest));
            prop_assert!(space.temperature.si() <= warmest.si() + slack(warmest));
        }
        // All that the rooms lose gets out at last, by walls or air, whoever's they are.
        let lost: f64 = found.rooms.iter().map(|room| room.total.si()).sum();
        let spaces = found.spaces.iter().flat_map(|space| &space.paths);
        let rooms = found.rooms.iter().flat_map(|room| &room.paths);
        let out: f64 = rooms
            .chain(spaces)
            .filter(|path| path.beyond == house.site.outdoors)
            .map(|path| path.loss.si())
            .sum();
        prop_assert!((lost - out).abs() <= 1e-9 * lost.abs().max(1.0), "{lost} {out}");
    }
}
