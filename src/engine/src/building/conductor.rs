//! Every way that heat takes out of a room or a space, as a conductance between two temperatures.
//!
//! The house becomes a small network: rooms at their design temperatures, unheated spaces at
//! temperatures still to be found, outdoors and the ground. Everything else (balance of the spaces,
//! loads, how sure they are) follows from this list.

use super::certainty::Subject;
use super::earth::earth;
use super::flows::{RoomAir, house_flow, room_air};
use super::{
    Behind, Built, House, Known, Opening, OpeningKind, Part, Path, RoomId, Surface, SurfaceKind,
    air,
};
use crate::quantity::{Area, Length, LossCoefficient, Temperature, Transmittance};

/// What a conductor leads to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Beyond {
    Outdoors,
    At(Temperature),
    /// A room or a space, by its place among the nodes.
    Node(usize),
    /// As warm as this side: no heat passes.
    Same,
}

/// What the near end of a conductor is at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Near {
    Node,
    At(Temperature),
}

/// The relative change of a conductance for a relative change of something uncertain.
pub(super) type Sensitivity = (Subject, f64);

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Conductor {
    pub path: Path,
    pub part: Part,
    pub area: Option<Area>,
    pub transmittance: Option<Transmittance>,
    pub conductance: LossCoefficient,
    pub near: Near,
    pub beyond: Beyond,
    pub sensitivities: [Option<Sensitivity>; 4],
}

/// The rooms and spaces of a house: rooms first, each in its own order.
#[derive(Debug)]
pub(super) struct Nodes {
    /// Sorted by id.
    by_id: Vec<(RoomId, usize)>,
}

impl Nodes {
    pub(super) fn of(house: &House) -> Nodes {
        let ids = house.rooms.iter().map(|room| room.id).chain(house.spaces.iter().map(|s| s.id));
        let mut by_id: Vec<(RoomId, usize)> = Vec::new();
        for (index, id) in ids.enumerate() {
            let place = by_id.partition_point(|(known, _)| *known < id);
            by_id.insert(place, (id, index));
        }
        Nodes { by_id }
    }

    pub(super) fn find(&self, id: RoomId) -> Option<usize> {
        let place = self.by_id.binary_search_by_key(&id, |(known, _)| *known).ok()?;
        self.by_id.get(place).map(|(_, index)| *index)
    }
}

/// The surfaces of every node, rooms first.
pub(super) fn surfaces(house: &House) -> impl Iterator<Item = (RoomId, &[Surface])> {
    let rooms = house.rooms.iter().map(|room| (room.id, room.surfaces.as_slice()));
    rooms.chain(house.spaces.iter().map(|space| (space.id, space.surfaces.as_slice())))
}

/// The conductors of every node that were entered there, rooms first.
pub(super) fn conductors(house: &House, nodes: &Nodes) -> Vec<Vec<Conductor>> {
    let mut all: Vec<Vec<Conductor>> = surfaces(house)
        .map(|(room, surfaces)| {
            let mut out = Vec::new();
            for surface in surfaces {
                through(surface, room, nodes, &mut out);
            }
            out
        })
        .collect();
    for (node, conductor) in earth(house) {
        if let Some(own) = all.get_mut(node) {
            own.push(conductor);
        }
    }
    let indoor = room_air(house, nodes, house_flow(house));
    let spaces = house.spaces.iter().map(|space| space_air(space, house));
    for (own, air) in all.iter_mut().zip(indoor.into_iter().chain(spaces)) {
        push_air(&air, own);
    }
    all
}

/// A plain path: all of it follows its U and its size.
fn through(surface: &Surface, room: RoomId, nodes: &Nodes, out: &mut Vec<Conductor>) {
    let (beyond, guessed) = match surface.behind {
        // Only what stands above the ground; `earth` has the rest.
        Behind::Outdoors | Behind::Ground { .. } => (Beyond::Outdoors, None),
        Behind::Unheated(temperature, known) => (
            Beyond::At(temperature),
            (known == Known::Assumed).then_some((Subject::GuessedTemperature, 1.0)),
        ),
        Behind::SameTemperature => (Beyond::Same, None),
        Behind::Room(id) => (nodes.find(id).map_or(Beyond::Same, Beyond::Node), None),
    };
    let mut push = |path, part, area: Area, u: Transmittance, of, size, wall| {
        out.push(Conductor {
            path,
            part,
            area: Some(area),
            transmittance: Some(u),
            conductance: u * area,
            near: Near::Node,
            beyond,
            sensitivities: [Some((of, 1.0)), Some((size, 1.0)), guessed, wall],
        });
    };
    let part = match surface.kind {
        SurfaceKind::Wall => Part::Wall,
        SurfaceKind::Ceiling => Part::Ceiling,
        SurfaceKind::Floor => Part::Floor,
    };
    let area = open_area(surface);
    if area.si() > 0.0 {
        let of = built(surface.built, surface.transmittance);
        let path = Path::Surface(surface.id);
        // What a guessed window has more, its wall has less.
        let guessed: Area =
            surface.openings.iter().filter(|o| o.size == Known::Assumed).map(Opening::area).sum();
        let less = (guessed > Area::ZERO).then_some((Subject::GuessedOpenings, -(guessed / area)));
        push(path, part, area, surface.transmittance, of, Subject::Size(room), less);
    }
    for opening in &surface.openings {
        let part = match opening.kind {
            OpeningKind::Window => Part::Window,
            OpeningKind::Door => Part::Door,
        };
        let path = Path::Opening(surface.id, opening.id);
        let of = built(opening.built, opening.transmittance);
        let size = opening_size(opening, room);
        push(path, part, opening.area(), opening.transmittance, of, size, None);
    }
}

fn opening_size(opening: &Opening, room: RoomId) -> Subject {
    match opening.size {
        Known::Typed => Subject::Size(room),
        Known::Assumed => Subject::GuessedOpenings,
    }
}

/// A typed U is one subject wherever the same number stands: one construction, most likely.
pub(super) fn built(built: Built, transmittance: Transmittance) -> Subject {
    match built {
        Built::Listed(assembly) => Subject::Listed(assembly),
        Built::Own(id) => Subject::Own(id),
        Built::Typed => Subject::TypedU(transmittance.si().to_bits()),
    }
}

/// The area of a surface that faces air, without its openings.
pub(super) fn open_area(surface: &Surface) -> Area {
    let openings: Area = surface.openings.iter().map(Opening::area).sum();
    (surface.gross_area - buried_area(surface) - openings).max(Area::ZERO)
}

/// The area of a surface against earth.
pub(super) fn buried_area(surface: &Surface) -> Area {
    match (surface.behind, surface.kind) {
        (Behind::Ground { depth }, SurfaceKind::Wall) => {
            (surface.along * depth).min(surface.gross_area)
        }
        (Behind::Ground { .. }, _) => surface.gross_area,
        _ => Area::ZERO,
    }
}

/// The outdoor air of an unheated space: its own changes, and the wind through its vents.
fn space_air(space: &super::Space, house: &House) -> RoomAir {
    let leaked = space.air_changes * space.volume() + super::flows::vented(space, house);
    let density = air::air_density(super::flows::SPACE_AIR, house.site.altitude);
    RoomAir {
        leaked: leaked * density * air::SPECIFIC_HEAT,
        ventilated: LossCoefficient::ZERO,
        subject: Subject::SpaceAir,
        by_fans: 0.0,
    }
}

fn push_air(air: &RoomAir, out: &mut Vec<Conductor>) {
    let fans = |part: f64| (part > 0.0).then_some((Subject::Ventilation, part));
    let mut push = |path, conductance, [by, also]: [Option<Sensitivity>; 2]| {
        out.push(Conductor {
            path,
            part: Part::Air,
            area: None,
            transmittance: None,
            conductance,
            near: Near::Node,
            beyond: Beyond::Outdoors,
            sensitivities: [by, also, None, None],
        });
    };
    let gaps = Some((air.subject, 1.0 - air.by_fans));
    push(Path::Air, air.leaked, [gaps, fans(air.by_fans)]);
    if air.ventilated > LossCoefficient::ZERO {
        push(Path::Ventilation, air.ventilated, [fans(1.0), None]);
    }
}

/// Length of a wall's foot that lies at outdoors or earth.
pub(super) fn exposed_length(surface: &Surface) -> Length {
    match (surface.kind, surface.behind) {
        (SurfaceKind::Wall, Behind::Outdoors | Behind::Ground { .. }) => surface.along,
        _ => Length::ZERO,
    }
}
