//! What heat must do in a house of rooms and unheated spaces, whatever the numbers: it goes nowhere
//! unless it comes from somewhere, and grows with what drives it.

mod earth;
mod spaces;

use crate::shipped::SHIPPED;
use crate::support::{job_of, open};
use finrun_engine::building::{
    Behind, BlowerDoor, Built, Ground, House, HouseAir, Leaks, Level, OpenFlue, Ranges, Room,
    RoomId, RoomLoad, RoomUse, Shelter, Site, SlabMethod, Soil, Space, Storeys, Surface, SurfaceId,
    SurfaceKind, Ventilation, losses,
};
use finrun_engine::quantity::{
    Area, ChangeRate, Length, Power, Temperature, TemperatureDifference, Transmittance, Velocity,
    VolumeFlow,
};
use proptest::prelude::*;

/// A house without air at sea level, 0 °C outdoors, 10 °C the year round in the ground.
fn house(rooms: Vec<Room>, spaces: Vec<Space>) -> House {
    let iso = SlabMethod::Iso(None);
    House {
        site: Site {
            outdoors: celsius(0.0),
            altitude: Length::ZERO,
            wind: Velocity::from_si(4.0),
            mean: celsius(10.0),
            coldest_month: celsius(10.0),
        },
        rooms,
        spaces,
        air: HouseAir {
            leaks: Leaks::Changes(ChangeRate::ZERO),
            storeys: Storeys::One,
            shelter: Shelter::Moderate,
            flue: OpenFlue::None,
            ventilation: Ventilation {
                supply: VolumeFlow::ZERO,
                exhaust: VolumeFlow::ZERO,
                recovery: 0.0,
            },
        },
        ground: Ground {
            soil: Soil::Sand.ground(),
            wall_thickness: Length::from_si(0.2),
            slab: iso,
            other: iso,
        },
        ranges: Ranges {
            measured: 0.02,
            label: 0.1,
            listed: 0.2,
            assumed: 0.4,
            air: 0.4,
            soil: 0.3,
            outdoors: TemperatureDifference::from_si(1.0),
        },
        margin: 0.0,
    }
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_si(273.15 + degrees)
}

fn room(id: u32, degrees: f64, surfaces: Vec<Surface>) -> Room {
    Room {
        id: RoomId(id),
        name: String::new(),
        level: Level::First,
        floor_area: Area::from_si(12.0),
        height: Length::from_si(2.5),
        temperature: celsius(degrees),
        least_air: None,
        other_heat: Power::ZERO,
        surfaces,
    }
}

/// An unheated space without air of its own.
fn space(id: u32, surfaces: Vec<Surface>) -> Space {
    Space {
        id: RoomId(id),
        name: String::new(),
        used: RoomUse::Other,
        floor_area: Area::from_si(20.0),
        height: Length::from_si(2.0),
        temperature: None,
        air_changes: ChangeRate::ZERO,
        vent_area: Area::ZERO,
        surfaces,
    }
}

/// A wall 2.5 m high.
fn wall(id: u32, length_m: f64, u_w_m2k: f64, behind: Behind) -> Surface {
    Surface {
        id: SurfaceId(id),
        kind: SurfaceKind::Wall,
        gross_area: Area::from_si(2.5 * length_m),
        along: Length::from_si(length_m),
        transmittance: Transmittance::from_si(u_w_m2k),
        built: Built::Typed,
        behind,
        openings: Vec::new(),
        runs: Vec::new(),
        wall_use: Default::default(),
        fixed: Vec::new(),
    }
}

/// A floor or ceiling.
fn slab(id: u32, kind: SurfaceKind, area_m2: f64, u_w_m2k: f64, behind: Behind) -> Surface {
    let gross_area = Area::from_si(area_m2);
    Surface { kind, gross_area, along: Length::ZERO, ..wall(id, 0.0, u_w_m2k, behind) }
}

fn behind(id: u32) -> Behind {
    Behind::Room(RoomId(id))
}

fn total(house: &House) -> Power {
    losses(house).rooms.iter().map(|room| room.total).sum()
}

/// Equal but for rounding.
fn same(what: &str, found: f64, expected: f64) {
    assert!(
        (found - expected).abs() <= 1e-9 * expected.abs().max(1.0),
        "{what}: {found} {expected}"
    );
}

/// The shipped houses: slab, basement, garage, attic, crawl space, measured and estimated leaks.
fn shipped() -> impl Iterator<Item = House> {
    SHIPPED.into_iter().map(|text| job_of(&open(text)).house)
}

#[test]
fn what_two_rooms_exchange_cancels_exactly_from_either_side() {
    let walls = |inner: Option<Surface>| {
        let mut walls = vec![wall(1, 5.0, 0.5, Behind::Outdoors)];
        walls.extend(inner);
        walls
    };
    let here = house(
        vec![room(1, 23.0, walls(Some(wall(2, 4.0, 1.7, behind(2))))), room(2, 19.0, walls(None))],
        Vec::new(),
    );
    let there = house(
        vec![room(1, 23.0, walls(None)), room(2, 19.0, walls(Some(wall(2, 4.0, 1.7, behind(1)))))],
        Vec::new(),
    );
    let apart = house(vec![room(1, 23.0, walls(None)), room(2, 19.0, walls(None))], Vec::new());
    // The inner wall, as each room sees it.
    let inner = |house: &House| -> Vec<Power> {
        let rooms = losses(house).rooms;
        let paths = |load: &RoomLoad| {
            let inner = load.paths.iter().find(|path| path.beyond != celsius(0.0));
            inner.expect("the inner wall").loss
        };
        rooms.iter().map(paths).collect()
    };
    // 4 m by 2.5 m by 1.7 W/m2K by 4 K.
    let between = inner(&here);
    same("between", between[0].si(), 4.0 * 2.5 * 1.7 * 4.0);
    assert_eq!(between[1], -between[0]);
    assert_eq!(inner(&there), between);
    same("the house", total(&here).si(), total(&apart).si());
    same("the house", total(&there).si(), total(&apart).si());
}

/// Everything that lies outside moves away from the rooms by `factor`. Rooms of one temperature.
fn away(house: &House, inside: Temperature, factor: f64) -> House {
    let mut house = house.clone();
    let moved = |t: Temperature| inside + (t - inside) * factor;
    let site = &mut house.site;
    site.outdoors = moved(site.outdoors);
    site.mean = moved(site.mean);
    site.coldest_month = moved(site.coldest_month);
    house
}

fn even(house: &House, inside: Temperature) -> House {
    let mut house = house.clone();
    for room in &mut house.rooms {
        room.temperature = inside;
    }
    house
}

/// Loads are sums of conductances and differences, as long as the leakage asks for none: typed air
/// changes. Spaces find their temperature in between, and keep to the proportion.
#[test]
fn loads_grow_with_the_difference() {
    let inside = celsius(21.0);
    for mut house in shipped() {
        house.air.leaks = Leaks::Changes(ChangeRate::from_si(0.5 / 3600.0));
        let house = even(&house, inside);
        for factor in [0.5, 2.0] {
            let (once, more) = (losses(&house), losses(&away(&house, inside, factor)));
            for (once, more) in once.rooms.iter().zip(&more.rooms) {
                same("a room", more.total.si(), factor * once.total.si());
            }
            for (once, more) in once.spaces.iter().zip(&more.spaces) {
                let below = |t: Temperature| (inside - t).si();
                same("a space", below(more.temperature), factor * below(once.temperature));
            }
        }
    }
}

/// The ground has temperatures of its own: what the day outdoors, the year's mean and the coldest
/// month each do to a load adds up.
#[test]
fn outdoors_and_ground_act_each_by_itself() {
    let inside = celsius(21.0);
    for mut house in shipped() {
        house.air.leaks = Leaks::Changes(ChangeRate::from_si(0.5 / 3600.0));
        let house = even(&house, inside);
        let with = |outdoors: f64, mean: f64, coldest: f64| {
            let mut house = house.clone();
            house.site.outdoors = celsius(outdoors);
            house.site.mean = celsius(mean);
            house.site.coldest_month = celsius(coldest);
            total(&house).si()
        };
        let all = with(-15.0, 9.0, -4.0);
        // Without a swing, without outdoors as well, and the ground left as warm as the rooms.
        let (day, year) = (with(-15.0, 21.0, 21.0), with(21.0, 9.0, 9.0));
        let swing = with(21.0, 21.0, 8.0);
        same("the sum", all, day + year + swing);
        // A crawl space's and a slab's swing are losses; they reach the rooms.
        assert!(day > 0.0 && year > 0.0 && swing > 0.0, "{day} {year} {swing}");
        // Twice the swing alone, twice what it takes.
        same("the swing", with(21.0, 21.0, -5.0), 2.0 * swing);
    }
}

/// Two such houses side by side: the slabs lie on one plot of twice the area and twice the edge.
#[test]
fn two_houses_lose_twice_the_heat() {
    for one in shipped() {
        let mut two = one.clone();
        let shift = |id: RoomId| RoomId(id.0 + 10_000);
        let turn = |surfaces: &mut Vec<Surface>| {
            for surface in surfaces {
                surface.id = SurfaceId(surface.id.0 + 10_000);
                if let Behind::Room(id) = surface.behind {
                    surface.behind = Behind::Room(shift(id));
                }
            }
        };
        for mut room in one.rooms.clone() {
            room.id = shift(room.id);
            turn(&mut room.surfaces);
            two.rooms.push(room);
        }
        for mut space in one.spaces.clone() {
            space.id = shift(space.id);
            turn(&mut space.surfaces);
            two.spaces.push(space);
        }
        two.air.leaks = match two.air.leaks {
            Leaks::Measured(door) => Leaks::Measured(BlowerDoor { flow: door.flow * 2.0, ..door }),
            Leaks::Estimated(leakage) => {
                Leaks::Estimated(finrun_engine::building::air::Leakage::of(leakage.area() * 2.0))
            }
            changes @ Leaks::Changes(_) => changes,
        };
        let fans = &mut two.air.ventilation;
        (fans.supply, fans.exhaust) = (fans.supply * 2.0, fans.exhaust * 2.0);
        let (one, two) = (losses(&one), losses(&two));
        for (index, room) in two.rooms.iter().enumerate() {
            let single = &one.rooms[index % one.rooms.len()];
            same("a room", room.total.si(), single.total.si());
        }
        for (index, space) in two.spaces.iter().enumerate() {
            let single = &one.spaces[index % one.spaces.len()];
            same("a space", space.temperature.si(), single.temperature.si());
        }
    }
}

/// What each surface of a house is multiplied by.
fn less_insulated(house: &House, factors: &[f64]) -> House {
    let mut house = house.clone();
    let mut factors = factors.iter().cycle();
    let rooms = house.rooms.iter_mut().map(|room| &mut room.surfaces);
    for surface in rooms.chain(house.spaces.iter_mut().map(|space| &mut space.surfaces)).flatten() {
        surface.transmittance = surface.transmittance * *factors.next().expect("endless");
        for opening in &mut surface.openings {
            opening.transmittance = opening.transmittance * *factors.next().expect("endless");
        }
    }
    house
}

proptest! {
    /// With rooms of one temperature all heat goes outwards, so that no way out made wider, nor any
    /// wider way into a space, saves any.
    #[test]
    fn taking_insulation_away_never_saves(
        factors in proptest::collection::vec(prop_oneof![Just(1.0), 1.0..1.5], 1..80),
        more_air in 1.0..2.0,
    ) {
        for house in shipped() {
            let house = even(&house, celsius(21.0));
            let mut worse = less_insulated(&house, &factors);
            for space in &mut worse.spaces {
                space.air_changes = space.air_changes * more_air;
                space.vent_area = space.vent_area * more_air;
            }
            prop_assert!(total(&worse).si() >= total(&house).si() * (1.0 - 1e-12));
            if let SlabMethod::Iso(Some(_)) = worse.ground.slab {
                let with_edge = total(&worse);
                worse.ground.slab = SlabMethod::Iso(None);
                prop_assert!(total(&worse) > with_edge);
            }
        }
    }
}
