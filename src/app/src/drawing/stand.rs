//! Where each wall stands on the plan, as far as the job tells: by the room or space behind it, or by
//! a name that says to which side it faces. A job knows nothing else of a wall's place.

use super::plan::Placed;
use finrun_engine::building::{SurfaceId, SurfaceKind};
use finrun_engine::job::{Behind, Draft, Outline, RoomDraft, Side, outline, wall_shape};
use finrun_text as text;

/// Metres from the left and from the back of the house.
pub(super) type Point = (f64, f64);

/// Walls are as thick as this at most, and lengths are measured no better than that.
const THICK_M: f64 = 0.4;
const NEAR_M: f64 = 0.06;

/// A side of a room's outline, from left to right as seen from the room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Edge {
    pub(super) side: Side,
    pub(super) start: Point,
    pub(super) length_m: f64,
}

impl Edge {
    /// A metre to the right along it.
    pub(super) fn step(&self) -> Point {
        match self.side {
            Side::Back => (1.0, 0.0),
            Side::Right => (0.0, 1.0),
            Side::Front => (-1.0, 0.0),
            Side::Left => (0.0, -1.0),
        }
    }

    /// A metre into the room.
    pub(super) fn inward(&self) -> Point {
        let (x, y) = self.step();
        (-y, x)
    }

    pub(super) fn at(&self, along_m: f64) -> Point {
        let (x, y) = self.step();
        (self.start.0 + x * along_m, self.start.1 + y * along_m)
    }
}

/// A wall's left end on an edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stand {
    pub(super) edge: Edge,
    pub(super) from_m: f64,
}

/// The sides of an outline whose back left corner is at a point, clockwise.
pub(super) fn edges(outline: &Outline, (x, y): Point) -> Vec<Edge> {
    let (length, width) = (outline.length.si(), outline.width.si());
    let (cut_long, cut_wide) = outline.cut.map_or((0.0, 0.0), |cut| (cut.0.si(), cut.1.si()));
    let edge = |side, start, length_m| Edge { side, start, length_m };
    let mut all = vec![edge(Side::Back, (x, y), length - cut_long)];
    if cut_wide > 0.0 {
        all.push(edge(Side::Right, (x + length - cut_long, y), cut_wide));
        all.push(edge(Side::Back, (x + length - cut_long, y + cut_wide), cut_long));
    }
    all.push(edge(Side::Right, (x + length, y + cut_wide), width - cut_wide));
    all.push(edge(Side::Front, (x + length, y + width), length));
    all.push(edge(Side::Left, (x, y + width), width));
    all
}

/// The walls of a room, those that can be placed with their places. `deep_m` is how far the plan's
/// foot lies from its head.
pub(super) fn stands(
    draft: &Draft,
    room: &RoomDraft,
    placed: &Placed,
    deep_m: f64,
) -> Vec<(SurfaceId, Option<Stand>)> {
    let edges = edges(&placed.outline, (placed.x, placed.y));
    let mut all: Vec<(SurfaceId, Option<Stand>)> = Vec::new();
    let mut taken: Vec<(Edge, f64, f64)> = Vec::new();
    // What is behind a wall says more than its name does.
    for named in [false, true] {
        for wall in room.surfaces.iter().filter(|surface| surface.kind == SurfaceKind::Wall) {
            if all.iter().any(|(id, _)| *id == wall.id) {
                continue;
            }
            let length_m = wall_shape(draft, room.id, wall.id).map_or(0.0, |wall| wall.length.si());
            let side = if named { text::side_said(&wall.name) } else { None };
            let found: Vec<Stand> = edges
                .iter()
                .filter(|edge| edge.length_m > length_m - NEAR_M)
                .filter_map(|&edge| {
                    let from_m = match named {
                        false => touches(draft, placed, wall.behind, edge, deep_m)?,
                        true => (side? == edge.side)
                            .then_some(())
                            .and_then(|()| first_gap(&taken, edge, length_m))?,
                    };
                    Some(Stand { edge, from_m: from_m.min(edge.length_m - length_m).max(0.0) })
                })
                .collect();
            let whole = |stand: &&Stand| (stand.edge.length_m - length_m).abs() < NEAR_M;
            let stand = match found.iter().filter(whole).count() {
                1 => found.iter().find(whole).copied(),
                _ => found.first().copied().filter(|_| found.len() == 1),
            };
            if let Some(stand) = stand {
                taken.push((stand.edge, stand.from_m, stand.from_m + length_m));
            }
            if stand.is_some() || named {
                all.push((wall.id, stand));
            }
        }
    }
    all
}

/// How far along an edge the room behind it begins, if that is where its place says.
fn touches(draft: &Draft, placed: &Placed, behind: Behind, edge: Edge, deep_m: f64) -> Option<f64> {
    let Behind::Room(id) = behind else { return None };
    placed.outline.place?;
    let other = outline(draft, id)?;
    let (left, front) = other.place?;
    let corner = (left.si(), deep_m - front.si() - other.width.si());
    edges(&other, corner).into_iter().find_map(|far| {
        // The two faces of one wall look at each other.
        let faces = far.step().0 == -edge.step().0 && far.step().1 == -edge.step().1;
        let (x, y) = edge.step();
        let along = |point: Point| (point.0 - edge.start.0) * x + (point.1 - edge.start.1) * y;
        let across = (far.start.0 - edge.start.0) * y - (far.start.1 - edge.start.1) * x;
        // On its way the far face runs from right to left.
        let (begin, end) =
            (along(far.at(far.length_m)).max(0.0), along(far.start).min(edge.length_m));
        (faces && across.abs() < THICK_M && end - begin > 2.0 * NEAR_M).then_some(begin)
    })
}

/// The first place on an edge where a wall of this length fits between those already placed.
fn first_gap(taken: &[(Edge, f64, f64)], edge: Edge, length_m: f64) -> Option<f64> {
    let mut from = 0.0;
    // A wall moves on past whatever it would stand on, each at most once.
    for _ in 0..=taken.len() {
        let hit = taken.iter().find(|(other, begin, end)| {
            *other == edge && *begin < from + length_m - NEAR_M && *end > from + NEAR_M
        });
        match hit {
            Some((_, _, end)) => from = *end,
            None => break,
        }
    }
    (from + length_m < edge.length_m + NEAR_M).then_some(from)
}
