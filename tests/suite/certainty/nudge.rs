//! One input of a house changed a little, and everything that is not that input left alone.

use finrun_engine::building::air::{Leakage, infiltration};
use finrun_engine::building::{
    Behind, Built, House, Known, Leaks, OpenFlue, Path, PathLoss, RoomId, SlabMethod, Subject,
    Surface, SurfaceId, SurfaceKind, house_flow, losses,
};
use finrun_engine::quantity::{
    Area, ChangeRate, Length, LossCoefficient, Temperature, TemperatureDifference, Transmittance,
    Volume, VolumeFlow,
};

pub(super) fn surfaces(house: &mut House) -> impl Iterator<Item = (RoomId, &mut Surface)> {
    let rooms = house.rooms.iter_mut().map(|room| (room.id, &mut room.surfaces));
    let spaces = house.spaces.iter_mut().map(|space| (space.id, &mut space.surfaces));
    rooms.chain(spaces).flat_map(|(id, surfaces)| surfaces.iter_mut().map(move |s| (id, s)))
}

fn volume(house: &House) -> Volume {
    house.rooms.iter().map(|room| room.volume()).sum()
}

/// The house with its leakage as so many air changes: as much air on this day, which no longer goes
/// with the difference of temperatures.
pub(super) fn held_air(house: &House) -> House {
    let mut house = house.clone();
    let leaked: VolumeFlow = house_flow(&house).infiltration;
    house.air.leaks = Leaks::Changes(ChangeRate::from_si(leaked.si() / volume(&house).si()));
    house.air.flue = OpenFlue::None;
    house
}

/// The house with the same leakage as an area of gaps, a flue's with them.
pub(super) fn as_gaps(house: &House) -> House {
    let mut house = house.clone();
    if let Leaks::Changes(_) = house.air.leaks {
        return house;
    }
    let leaked = house_flow(&house).infiltration;
    let metre2 = Leakage::of(Area::from_si(1.0));
    let weighed: f64 = house.rooms.iter().map(|r| r.volume().si() * r.temperature.si()).sum();
    let inside = Temperature::from_si(weighed / volume(&house).si());
    let (air, site) = (&mut house.air, &house.site);
    let of_one = infiltration(metre2, air.storeys, air.shelter, inside - site.outdoors, site.wind);
    air.leaks = Leaks::Estimated(Leakage::of(Area::from_si(leaked / of_one)));
    air.flue = OpenFlue::None;
    house
}

/// The house with this input changed by a share of itself, or by so many kelvin. What goes with a
/// size is changed as a conductance alone, so that neither the shares of air nor a floor's shape
/// move with it.
pub(super) fn nudged(house: &House, subject: Subject, change: f64) -> House {
    let mut house = match subject {
        Subject::Outdoors => held_air(house),
        _ => house.clone(),
    };
    let by = 1.0 + change;
    match subject {
        Subject::Outdoors => {
            let site = &mut house.site;
            site.outdoors = site.outdoors + TemperatureDifference::from_si(change);
        }
        Subject::Leakage => {
            house.air.leaks = match house.air.leaks {
                Leaks::Changes(rate) => Leaks::Changes(rate * by),
                Leaks::Estimated(gaps) => Leaks::Estimated(Leakage::of(gaps.area() * by)),
                Leaks::Measured(_) => unreachable!("as gaps first"),
            };
            for room in &mut house.rooms {
                room.least_air = room.least_air.map(|rate| rate * by);
            }
        }
        Subject::Ventilation => {
            let fans = &mut house.air.ventilation;
            (fans.supply, fans.exhaust) = (fans.supply * by, fans.exhaust * by);
        }
        Subject::Soil => {
            house.ground.soil.conductivity_w_mk *= by;
            // An F-factor has its soil in it.
            if let SlabMethod::FFactor(factor) = &mut house.ground.slab {
                *factor = *factor * by;
            }
        }
        Subject::SpaceAir => {
            for space in &mut house.spaces {
                space.air_changes = space.air_changes * by;
                space.vent_area = space.vent_area * by;
            }
        }
        Subject::Listed(_) | Subject::Own(_) | Subject::TypedU(_) => {
            let same = |built: Built, u: Transmittance| match subject {
                Subject::Listed(assembly) => built == Built::Listed(assembly),
                Subject::Own(id) => built == Built::Own(id),
                _ => built == Built::Typed && subject == Subject::TypedU(u.si().to_bits()),
            };
            for (_, surface) in surfaces(&mut house) {
                if same(surface.built, surface.transmittance) {
                    surface.transmittance = surface.transmittance * by;
                }
                for opening in &mut surface.openings {
                    if same(opening.built, opening.transmittance) {
                        opening.transmittance = opening.transmittance * by;
                    }
                }
            }
        }
        Subject::GuessedTemperature => {
            let mut inside: Vec<(RoomId, Temperature)> =
                house.rooms.iter().map(|room| (room.id, room.temperature)).collect();
            inside.extend(losses(&house).spaces.iter().map(|s| (s.space, s.temperature)));
            for (id, surface) in surfaces(&mut house) {
                let inside = inside.iter().find(|(known, _)| *known == id).expect("its side").1;
                if let Behind::Unheated(temperature, Known::Assumed) = &mut surface.behind {
                    *temperature = inside + (*temperature - inside) * by;
                }
            }
        }
        Subject::Size(node) => {
            for (surface, path) in paths(&house, node) {
                if let Path::Opening(_, opening) = path.path
                    && surface.openings.iter().any(|o| o.id == opening && o.size == Known::Assumed)
                {
                    continue;
                }
                lead(&mut house, node, &surface, &path, path.conductance * change);
            }
        }
        Subject::GuessedOpenings => {
            let nodes: Vec<RoomId> = surfaces(&mut house).map(|(id, _)| id).collect();
            let mut done: Vec<RoomId> = Vec::new();
            for node in nodes {
                if done.contains(&node) {
                    continue;
                }
                done.push(node);
                for (surface, path) in paths(&house, node) {
                    let Path::Opening(_, opening) = path.path else { continue };
                    let opening = surface.openings.iter().find(|o| o.id == opening);
                    let opening = opening.expect("the opening");
                    if opening.size == Known::Assumed {
                        // It takes its place in the wall.
                        let more = opening.transmittance - surface.transmittance;
                        let more = more * opening.area() * change;
                        lead(&mut house, node, &surface, &path, more);
                    }
                }
            }
        }
        Subject::Sizes => unreachable!("each room by itself"),
    }
    house
}

/// The paths through surfaces that were entered in this room or space.
fn paths(house: &House, node: RoomId) -> Vec<(Surface, PathLoss)> {
    let found = losses(house);
    let rooms = found.rooms.iter().map(|room| (room.room, &room.paths));
    let mut all = rooms.chain(found.spaces.iter().map(|space| (space.space, &space.paths)));
    let (_, paths) = all.find(|(id, _)| *id == node).expect("the node");
    let mut house = house.clone();
    let own: Vec<Surface> =
        surfaces(&mut house).filter(|(id, _)| *id == node).map(|(_, s)| s.clone()).collect();
    let of = |path: &PathLoss| {
        let id = match path.path {
            Path::Surface(id) | Path::Opening(id, _) | Path::SlabEdge(id) => id,
            Path::Ground(id) | Path::GroundSwing(id) => id,
            _ => return None,
        };
        own.iter().find(|surface| surface.id == id).map(|surface| (surface.clone(), *path))
    };
    paths.iter().filter_map(of).collect()
}

/// Adds so much conductance beside a path, without an area that would draw air.
fn lead(
    house: &mut House,
    node: RoomId,
    surface: &Surface,
    path: &PathLoss,
    more: LossCoefficient,
) {
    let beside = |behind: Behind, more: LossCoefficient| {
        let gross_area = Area::from_si(1e-9);
        Surface {
            id: SurfaceId(u32::MAX),
            kind: SurfaceKind::Ceiling,
            gross_area,
            along: Length::ZERO,
            transmittance: Transmittance::from_si(more.si() / gross_area.si()),
            built: Built::Typed,
            behind,
            openings: Vec::new(),
            runs: Vec::new(),
            wall_use: Default::default(),
            fixed: Vec::new(),
        }
    };
    let at = |temperature| Behind::Unheated(temperature, Known::Typed);
    let added = match path.path {
        Path::Ground(_) => vec![beside(at(path.beyond), more)],
        // More to the coldest month and as much less to the mean takes the same heat, whatever the
        // temperature here.
        Path::GroundSwing(_) => {
            vec![beside(at(path.beyond), more), beside(at(path.inside), more * -1.0)]
        }
        Path::SlabEdge(_) => vec![beside(Behind::Outdoors, more)],
        _ => vec![beside(
            match surface.behind {
                Behind::Ground { .. } => Behind::Outdoors,
                behind => behind,
            },
            more,
        )],
    };
    let rooms = house.rooms.iter_mut().map(|room| (room.id, &mut room.surfaces));
    let mut all = rooms.chain(house.spaces.iter_mut().map(|s| (s.id, &mut s.surfaces)));
    all.find(|(id, _)| *id == node).expect("the node").1.extend(added);
}
