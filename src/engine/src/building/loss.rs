//! Heat loss of each room on the design day, path by path.

use super::{Behind, OpeningId, OpeningKind, Room, RoomId, Site, SurfaceId, SurfaceKind};
use super::{Surface, ventilation_loss};
use crate::quantity::{Area, Power, Temperature, Transmittance};
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
    Air,
}

impl Part {
    pub const ALL: [Part; 6] =
        [Part::Wall, Part::Window, Part::Door, Part::Ceiling, Part::Floor, Part::Air];
}

/// The way the heat goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Path {
    /// Through a surface of this room.
    Surface(SurfaceId),
    /// Through a window or door of this room.
    Opening(SurfaceId, OpeningId),
    /// Through something that was entered in the neighbouring room.
    Neighbour(RoomId, Through),
    /// With the air that leaks in.
    Air,
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
    pub paths: Vec<PathLoss>,
}

impl RoomLoad {
    /// The sum over one part.
    pub fn of(&self, part: Part) -> Power {
        self.paths.iter().filter(|p| p.part == part).map(|p| p.loss).sum()
    }
}

/// The load of every room, in the order of `rooms`.
///
/// A surface between two rooms is entered once: its room loses what the other gains. The heat that
/// a room takes from a warmer neighbour counts as a loss of that neighbour.
pub fn loads(rooms: &[Room], site: &Site) -> Vec<RoomLoad> {
    let own: Vec<Vec<PathLoss>> = rooms.iter().map(|room| own_paths(room, rooms, site)).collect();
    rooms
        .iter()
        .enumerate()
        .map(|(index, room)| {
            let gains = rooms.iter().zip(&own).flat_map(|(other, paths)| {
                paths.iter().filter_map(|path| mirrored(path, other, room))
            });
            let paths: Vec<PathLoss> = own[index].iter().copied().chain(gains).collect();
            RoomLoad { room: room.id, total: paths.iter().map(|p| p.loss).sum(), paths }
        })
        .collect()
}

fn own_paths(room: &Room, rooms: &[Room], site: &Site) -> Vec<PathLoss> {
    let mut paths = Vec::new();
    for surface in &room.surfaces {
        let beyond = match surface.behind {
            Behind::Outdoors => site.outdoors,
            Behind::Unheated(temperature) => temperature,
            Behind::SameTemperature => room.temperature,
            // A room that is still incomplete is taken as warm as this one.
            Behind::Room(id) => rooms
                .iter()
                .find(|other| other.id == id)
                .map_or(room.temperature, |other| other.temperature),
        };
        surface_paths(room, surface, beyond, &mut paths);
    }
    let flow = room.air_changes * room.volume();
    paths.push(PathLoss {
        path: Path::Air,
        part: Part::Air,
        area: None,
        transmittance: None,
        inside: room.temperature,
        beyond: site.outdoors,
        loss: ventilation_loss(flow, room.temperature, site.outdoors, site.altitude),
    });
    paths
}

fn surface_paths(room: &Room, surface: &Surface, beyond: Temperature, out: &mut Vec<PathLoss>) {
    let mut push = |path, part, area: Area, transmittance: Transmittance| {
        out.push(PathLoss {
            path,
            part,
            area: Some(area),
            transmittance: Some(transmittance),
            inside: room.temperature,
            beyond,
            loss: transmittance * area * (room.temperature - beyond),
        });
    };
    let part = match surface.kind {
        SurfaceKind::Wall => Part::Wall,
        SurfaceKind::Ceiling => Part::Ceiling,
        SurfaceKind::Floor => Part::Floor,
    };
    push(Path::Surface(surface.id), part, surface.net_area(), surface.transmittance);
    for opening in &surface.openings {
        let part = match opening.kind {
            OpeningKind::Window => Part::Window,
            OpeningKind::Door => Part::Door,
        };
        let path = Path::Opening(surface.id, opening.id);
        push(path, part, opening.area(), opening.transmittance);
    }
}

/// `path` of `owner` as `room` sees it from the other side, if that is where it leads.
fn mirrored(path: &PathLoss, owner: &Room, room: &Room) -> Option<PathLoss> {
    let (surface_id, through) = match path.path {
        Path::Surface(id) => (id, Through::Surface(id)),
        Path::Opening(id, opening) => (id, Through::Opening(id, opening)),
        Path::Neighbour(..) | Path::Air => return None,
    };
    let surface = owner.surfaces.iter().find(|s| s.id == surface_id)?;
    (surface.behind == Behind::Room(room.id) && owner.id != room.id).then_some(PathLoss {
        path: Path::Neighbour(owner.id, through),
        inside: path.beyond,
        beyond: path.inside,
        loss: -path.loss,
        ..*path
    })
}
