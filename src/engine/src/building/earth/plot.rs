//! Which rooms share a footprint, and which part of it is theirs.

use crate::building::assembly::{HeatFlow, OUTSIDE_FILM};
use crate::building::certainty::Subject;
use crate::building::conductor::{Nodes, built, exposed_length, surfaces};
use crate::building::ground::{EdgeInsulation, Footprint};
use crate::building::{Behind, House, Level, RoomId, Surface, SurfaceKind};
use crate::quantity::{Resistance, Transmittance};

/// A room's part of a footprint.
pub(crate) struct Member<'a> {
    pub(super) node: usize,
    pub(crate) room: RoomId,
    /// Its floors on the ground.
    pub(crate) floors: Vec<&'a Surface>,
    pub(crate) edges: Vec<Edge<'a>>,
}

/// A stretch of outside wall above a floor on the ground.
pub(crate) struct Edge<'a> {
    /// The wall; none where only the length of a floor's edge was typed.
    pub(crate) wall: Option<&'a Surface>,
    pub(crate) length_m: f64,
    pub(crate) depth_m: f64,
}

/// Ground under rooms of one storey, or under one unheated space.
pub(crate) struct Plot<'a> {
    pub(crate) members: Vec<Member<'a>>,
    pub(crate) footprint: Footprint,
    /// Mean U of the floors with films, weighed by area, and the first one's subject for all.
    pub(crate) floor_u: Transmittance,
    pub(super) floor_subject: Subject,
}

impl<'a> Member<'a> {
    pub(super) fn length_m(&self) -> f64 {
        self.edges.iter().map(|edge| edge.length_m).sum()
    }

    fn area_m2(&self) -> f64 {
        self.floors.iter().map(|floor| floor.gross_area.si()).sum()
    }

    /// The edges of a slab, which go with its first floor; a wall in the earth goes by itself.
    pub(crate) fn strip(&self) -> impl Iterator<Item = &Edge<'a>> {
        self.edges.iter().filter(|edge| edge.depth_m == 0.0 || edge.wall.is_none())
    }

    /// Insulation along those edges, which only a slab on grade has.
    pub(crate) fn edge_insulation(&self, edge: Option<EdgeInsulation>) -> Option<EdgeInsulation> {
        edge.filter(|_| self.strip().all(|strip| strip.depth_m == 0.0))
    }
}

/// The ground under and beside a room or a space.
pub(crate) fn plot_of(house: &House, room: RoomId) -> Option<Plot<'_>> {
    plots(house).into_iter().find(|plot| plot.members.iter().any(|member| member.room == room))
}

/// One footprint a storey of heated rooms, and one an unheated space.
pub(super) fn plots(house: &House) -> Vec<Plot<'_>> {
    let mut groups: Vec<(Option<Level>, Vec<Member<'_>>)> = Vec::new();
    let beside = beside_spaces_m(house);
    for (node, (room, surfaces)) in surfaces(house).enumerate() {
        let beside_m = beside.get(node).copied().unwrap_or(0.0);
        let Some(member) = member(node, room, surfaces, beside_m) else { continue };
        let level = house.rooms.get(node).map(|room| room.level);
        let known = groups.iter_mut().find(|(known, _)| level.is_some() && *known == level);
        match known {
            Some((_, members)) => members.push(member),
            None => groups.push((level, vec![member])),
        }
    }
    groups.into_iter().map(|(_, members)| plot(members, house)).collect()
}

/// The length of each heated room's walls to unheated spaces, on whichever side they were entered.
fn beside_spaces_m(house: &House) -> Vec<f64> {
    let nodes = Nodes::of(house);
    let rooms = house.rooms.len();
    let mut lengths_m = vec![0.0; rooms];
    for (node, (_, surfaces)) in surfaces(house).enumerate() {
        for wall in surfaces.iter().filter(|s| s.kind == SurfaceKind::Wall) {
            let of = match wall.behind {
                Behind::Unheated(..) => Some(node),
                Behind::Room(id) => match nodes.find(id) {
                    Some(other) if node < rooms && other >= rooms => Some(node),
                    Some(other) if node >= rooms => Some(other),
                    _ => None,
                },
                _ => None,
            };
            if let Some(length_m) = of.and_then(|of| lengths_m.get_mut(of)) {
                *length_m += wall.along.si();
            }
        }
    }
    lengths_m
}

fn member(
    node: usize,
    room: RoomId,
    surfaces: &[Surface],
    beside_spaces_m: f64,
) -> Option<Member<'_>> {
    let on_ground = |s: &&Surface| matches!(s.behind, Behind::Ground { .. });
    let floors: Vec<&Surface> =
        surfaces.iter().filter(|s| s.kind == SurfaceKind::Floor).filter(on_ground).collect();
    if !surfaces.iter().any(|s| on_ground(&s)) {
        return None;
    }
    let mut edges: Vec<Edge<'_>> = surfaces
        .iter()
        .filter(|s| exposed_length(s).si() > 0.0)
        .map(|wall| Edge { wall: Some(wall), length_m: wall.along.si(), depth_m: depth_m(wall) })
        .collect();
    // A slab's edge at a garage or porch counts as if that were not there (ISO 13370, from memory). A
    // basement's does not: the wall there stands in no earth.
    if beside_spaces_m > 0.0 && surfaces.iter().all(|s| depth_m(s) == 0.0) {
        edges.push(Edge { wall: None, length_m: beside_spaces_m, depth_m: 0.0 });
    }
    // A typed length of edge stands for all of them together.
    let typed: f64 = floors.iter().map(|floor| floor.along.si()).sum();
    let found: f64 = edges.iter().map(|edge| edge.length_m).sum();
    if typed > 0.0 && found > 0.0 {
        for edge in &mut edges {
            edge.length_m *= typed / found;
        }
    } else if typed > 0.0 {
        let depth_m = floors.first().map_or(0.0, |floor| depth_m(floor));
        edges.push(Edge { wall: None, length_m: typed, depth_m });
    }
    Some(Member { node, room, floors, edges })
}

/// How deep a surface reaches below the ground outside.
fn depth_m(surface: &Surface) -> f64 {
    match surface.behind {
        Behind::Ground { depth } => depth.si(),
        _ => 0.0,
    }
}

fn plot<'a>(members: Vec<Member<'a>>, house: &House) -> Plot<'a> {
    let area_m2: f64 = members.iter().map(Member::area_m2).sum();
    // Rooms without a floor on the ground lend the footprint none of their walls.
    let edges = || members.iter().filter(|m| !m.floors.is_empty()).flat_map(|m| &m.edges);
    let perimeter_m: f64 = edges().map(|edge| edge.length_m).sum();
    let deep: f64 = edges().map(|edge| edge.length_m * edge.depth_m).sum();
    let floors = || members.iter().flat_map(|member| &member.floors);
    let heat: f64 = floors().map(|f| (f.transmittance * f.gross_area).si()).sum();
    let first = floors().next();
    Plot {
        footprint: Footprint {
            area_m2,
            perimeter_m,
            wall_thickness_m: house.ground.wall_thickness.si(),
            depth_m: if perimeter_m > 0.0 { deep / perimeter_m } else { 0.0 },
        },
        // Walls in the earth without a floor there: as over bare earth.
        floor_u: match area_m2 > 0.0 {
            true => Transmittance::from_si(heat / area_m2),
            false => floor_films().transmittance(),
        },
        floor_subject: first.map_or(Subject::Soil, |f| built(f.built, f.transmittance)),
        members,
    }
}

pub(super) fn floor_films() -> Resistance {
    HeatFlow::Downward.inside_film() + OUTSIDE_FILM
}

pub(super) fn wall_films() -> Resistance {
    HeatFlow::Horizontal.inside_film() + OUTSIDE_FILM
}
