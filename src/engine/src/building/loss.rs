//! Heat loss of each room on the design day, path by path.

use super::balance::temperatures;
use super::certainty::{Certainty, certainty};
use super::conductor::{Beyond, Conductor, Near, Nodes, conductors};
use super::flows::{HouseFlow, house_flow};
use super::{House, OpeningId, RoomId, SurfaceId};
use crate::quantity::{Area, LossCoefficient, Power, Temperature, Transmittance};
use serde::{Deserialize, Serialize};

/// The parts that a load is summed by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    Wall,
    Window,
    Door,
    Ceiling,
    Floor,
    /// Through the earth: slab, basement floor and basement wall.
    Ground,
    Air,
}

impl Part {
    pub const ALL: [Part; 7] =
        [Part::Wall, Part::Window, Part::Door, Part::Ceiling, Part::Floor, Part::Ground, Part::Air];
}

/// The way the heat goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Path {
    /// Through a surface of this room.
    Surface(SurfaceId),
    /// Through a window or door of this room.
    Opening(SurfaceId, OpeningId),
    /// Through the earth, to the mean temperature of the year.
    Ground(SurfaceId),
    /// What the coldest month adds to that.
    GroundSwing(SurfaceId),
    /// Through a slab's edge, by its F-factor.
    SlabEdge(SurfaceId),
    /// Through something that was entered in the neighbouring room or space.
    Neighbour(RoomId, Through),
    /// With the air that leaks in.
    Air,
    /// With the air that fans bring in, less what is recovered from it.
    Ventilation,
}

/// What of a neighbour's the heat goes through.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Through {
    Surface(SurfaceId),
    Opening(SurfaceId, OpeningId),
}

/// Heat along one path; negative when the room gains.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PathLoss {
    pub path: Path,
    pub part: Part,
    /// Area and U of the path; none for air.
    #[serde(rename = "area_m2")]
    pub area: Option<Area>,
    #[serde(rename = "u_w_m2k")]
    pub transmittance: Option<Transmittance>,
    #[serde(rename = "conductance_w_k")]
    pub conductance: LossCoefficient,
    #[serde(rename = "inside_k")]
    pub inside: Temperature,
    #[serde(rename = "beyond_k")]
    pub beyond: Temperature,
    #[serde(rename = "loss_w")]
    pub loss: Power,
}

/// What one room loses.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomLoad {
    pub room: RoomId,
    #[serde(rename = "total_w")]
    pub total: Power,
    /// That it has from elsewhere.
    #[serde(rename = "other_w")]
    pub other: Power,
    /// That its element is to give beyond the loss, as the user wants it.
    #[serde(rename = "margin_w")]
    pub margin: Power,
    pub paths: Vec<PathLoss>,
}

impl RoomLoad {
    /// What is left for its element.
    pub fn wanted(&self) -> Power {
        self.total + self.margin - self.other
    }

    /// The sum over one part.
    pub fn of(&self, part: Part) -> Power {
        self.paths.iter().filter(|p| p.part == part).map(|p| p.loss).sum()
    }
}

/// An unheated space on the design day: what it takes from the rooms it loses again.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpaceBalance {
    pub space: RoomId,
    #[serde(rename = "temperature_k")]
    pub temperature: Temperature,
    /// They sum to nothing, unless the temperature was typed.
    pub paths: Vec<PathLoss>,
}

/// The heat loss of a whole house.
#[derive(Debug, Clone, PartialEq)]
pub struct HouseLoss {
    /// In the order of the rooms.
    pub rooms: Vec<RoomLoad>,
    pub spaces: Vec<SpaceBalance>,
    pub flow: HouseFlow,
    pub certainty: Certainty,
}

/// The load of every room and the temperature of every unheated space.
///
/// A surface between two rooms is entered once: its room loses what the other gains. The heat that
/// a room takes from a warmer neighbour counts as a loss of that neighbour.
pub fn losses(house: &House) -> HouseLoss {
    let nodes = Nodes::of(house);
    let all = conductors(house, &nodes);
    let (temperatures, balance) = temperatures(house, &all);
    let mut paths: Vec<Vec<PathLoss>> = all
        .iter()
        .enumerate()
        .map(|(node, own)| own.iter().map(|c| path_loss(c, node, house, &temperatures)).collect())
        .collect();
    let ids: Vec<RoomId> =
        house.rooms.iter().map(|r| r.id).chain(house.spaces.iter().map(|s| s.id)).collect();
    for (node, own) in all.iter().enumerate() {
        for (index, conductor) in own.iter().enumerate() {
            if let Beyond::Node(other) = conductor.beyond
                && let Some(mirrored) = mirrored(&paths[node][index], ids[node])
            {
                paths[other].push(mirrored);
            }
        }
    }
    let mut paths = paths.into_iter();
    let rooms: Vec<RoomLoad> = house
        .rooms
        .iter()
        .zip(paths.by_ref())
        .map(|(room, paths)| {
            let total: Power = paths.iter().map(|p| p.loss).sum();
            RoomLoad {
                room: room.id,
                total,
                other: room.other_heat,
                margin: total.max(Power::ZERO) * house.margin,
                paths,
            }
        })
        .collect();
    let spaces = house
        .spaces
        .iter()
        .zip(paths)
        .zip(temperatures.iter().skip(house.rooms.len()))
        .map(|((space, paths), &temperature)| SpaceBalance { space: space.id, temperature, paths })
        .collect();
    let totals: Vec<Power> = rooms.iter().map(|room| room.total).collect();
    let certainty = certainty(house, &all, &temperatures, &balance, &totals);
    HouseLoss { rooms, spaces, flow: house_flow(house), certainty }
}

fn path_loss(
    conductor: &Conductor,
    node: usize,
    house: &House,
    temperatures: &[Temperature],
) -> PathLoss {
    let (inside, beyond) = ends(conductor, node, house, temperatures);
    PathLoss {
        path: conductor.path,
        part: conductor.part,
        area: conductor.area,
        transmittance: conductor.transmittance,
        conductance: conductor.conductance,
        inside,
        beyond,
        loss: conductor.conductance * (inside - beyond),
    }
}

/// The temperatures at a conductor's two ends.
pub(super) fn ends(
    conductor: &Conductor,
    node: usize,
    house: &House,
    temperatures: &[Temperature],
) -> (Temperature, Temperature) {
    let at = |node: usize| temperatures.get(node).copied().unwrap_or(house.site.outdoors);
    let inside = match conductor.near {
        Near::Node => at(node),
        Near::At(temperature) => temperature,
    };
    let beyond = match conductor.beyond {
        Beyond::Outdoors => house.site.outdoors,
        Beyond::At(temperature) => temperature,
        Beyond::Node(other) => at(other),
        Beyond::Same => inside,
    };
    (inside, beyond)
}

/// A path of `owner` as its neighbour sees it.
fn mirrored(path: &PathLoss, owner: RoomId) -> Option<PathLoss> {
    let through = match path.path {
        Path::Surface(id) => Through::Surface(id),
        Path::Opening(id, opening) => Through::Opening(id, opening),
        _ => return None,
    };
    Some(PathLoss {
        path: Path::Neighbour(owner, through),
        inside: path.beyond,
        beyond: path.inside,
        loss: -path.loss,
        ..*path
    })
}
