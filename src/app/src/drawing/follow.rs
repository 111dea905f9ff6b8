//! The way of the water along the pieces: which stretch of wall comes first in a room, and at which
//! end of it the water enters. A job does not know; taken is what makes the way short.

use super::plan::{arrange, placed};
use super::stand::{Point, Stand, stands};
use finrun_engine::building::{Level, RoomId, Run, SurfaceId};
use finrun_engine::design::Design;
use finrun_engine::job::{BackPath, Draft, Field, Job, LegField, LegKind, resolve};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::Length;
use finrun_engine::sizing::RunPieces;

/// The pieces on one stretch of a wall.
#[derive(Debug, Clone)]
pub(super) struct Step {
    pub(super) surface: SurfaceId,
    pub(super) run: Run,
    pub(super) pieces: Vec<Length>,
    /// Whether the water goes from left to right as seen from the room.
    pub(super) forward: bool,
    /// On the plan: its left end, its right end, and a metre into the room; whether the wall's place
    /// is known.
    pub(super) left: Point,
    pub(super) right: Point,
    pub(super) inward: Point,
    pub(super) known: bool,
    /// Whether the return runs above its pieces.
    pub(super) back: BackPath,
    /// How the baseboard ends at its left and at its right.
    pub(super) ends: [End; 2],
}

impl Step {
    pub(super) fn length(&self) -> Length {
        self.pieces.iter().copied().sum()
    }

    /// From the wall's left corner to the first piece: pieces stand in the middle of their run.
    pub(super) fn start(&self) -> Length {
        self.run.start + (self.run.length - self.length()) / 2.0
    }

    /// Where the water enters, or leaves.
    pub(super) fn end(&self, leaving: bool) -> Point {
        if self.forward == leaving { self.right } else { self.left }
    }
}

/// How baseboard ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum End {
    /// With a cap; the pipe leaves through the floor.
    Capped,
    /// With a cap; the pipe turns back above the pieces.
    Turned,
    /// The enclosure runs on this far without an element, and is capped there.
    Stub(Length),
    /// It runs on round a corner.
    Corner(LegKind, Beyond),
    /// It runs on this far, to the baseboard of the next room.
    RunsOn(Length),
}

/// What is round a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Beyond {
    /// The baseboard of the next room.
    Baseboard,
    /// The enclosure's end, with its cap, on a wall that has no sheet.
    Cap,
}

/// A room with baseboard, in the order of the water.
#[derive(Debug, Clone)]
pub(super) struct Visit {
    /// By its place in the job.
    pub(super) room: usize,
    pub(super) steps: Vec<Step>,
}

/// A loop of a zone.
#[derive(Debug, Clone)]
pub(super) struct Loop {
    /// By its place in the job.
    pub(super) zone: usize,
    pub(super) visits: Vec<Visit>,
}

/// Every loop of every zone.
pub(super) fn follow(draft: &Draft, job: &Job, design: &Design) -> Vec<Loop> {
    let walls = walls(draft, job, design);
    let mut all = Vec::new();
    for (index, zone) in job.zones.iter().enumerate() {
        for rooms in &zone.loops {
            let mut at = None;
            let mut visits = Vec::new();
            for &room in rooms {
                let steps = steps_of(design, &walls, room);
                let steps = in_order(steps, at);
                if let Some(last) = steps.last() {
                    at = Some(last.end(true));
                    visits.push(Visit { room, steps });
                }
            }
            if !zone.arrangement.has_branches() {
                join(draft, job, rooms, &mut visits);
                if zone.back == BackPath::InEnclosure {
                    turn_back(&mut visits);
                }
            }
            all.push(Loop { zone: index, visits });
        }
    }
    all
}

/// A wall on the plan, and the middle of its room.
type Wall = (RoomId, SurfaceId, Option<Stand>, Point);

fn walls(draft: &Draft, job: &Job, design: &Design) -> Vec<Wall> {
    let mut all = Vec::new();
    for &level in Level::ALL {
        let mut rooms = placed(draft, job, design, level);
        let (_, deep_m) = arrange(&mut rooms);
        for placed in &rooms {
            let Some(room) = draft.room(placed.id) else { continue };
            // Words stand in the middle, so what has no place stands above them.
            let middle = (
                placed.x + placed.outline.length.si() / 2.0,
                placed.y + placed.outline.width.si() * 0.22,
            );
            for (wall, stand) in stands(draft, room, placed, deep_m) {
                all.push((room.id, wall, stand, middle));
            }
        }
    }
    all
}

fn steps_of(design: &Design, walls: &[Wall], room: usize) -> Vec<Step> {
    let Some(solved) = design.rooms.get(room) else { return Vec::new() };
    let mut nowhere = 0.0;
    let choice = &solved.element.choice;
    choice.runs.iter().map(|run| step(run, walls, solved.room, &mut nowhere)).collect()
}

fn step(on: &RunPieces, walls: &[Wall], room: RoomId, nowhere: &mut f64) -> Step {
    let wall = walls.iter().find(|wall| wall.0 == room && wall.1 == on.surface);
    let mut step = Step {
        surface: on.surface,
        run: on.run,
        pieces: on.pieces.clone(),
        forward: true,
        left: (0.0, 0.0),
        right: (0.0, 0.0),
        inward: (0.0, 1.0),
        known: false,
        back: BackPath::OwnWay,
        ends: [End::Capped, End::Capped],
    };
    let (from_m, long_m) = (step.start().si(), step.length().si());
    match wall {
        Some((.., Some(stand), _)) => {
            let at = |along_m: f64| stand.edge.at(stand.from_m + along_m);
            (step.left, step.right) = (at(from_m), at(from_m + long_m));
            (step.inward, step.known) = (stand.edge.inward(), true);
        }
        Some((.., middle)) => {
            let y = middle.1 - 0.5 * *nowhere;
            step.left = (middle.0 - long_m / 2.0, y);
            step.right = (middle.0 + long_m / 2.0, y);
            *nowhere += 1.0;
        }
        None => {}
    }
    step
}

/// The nearest stretch first, from wherever it is best to begin.
fn in_order(steps: Vec<Step>, from: Option<Point>) -> Vec<Step> {
    let mut best: Option<(f64, Vec<Step>)> = None;
    for first in 0..steps.len() {
        for forward in [true, false] {
            let mut left = steps.clone();
            let mut next = left.remove(first);
            next.forward = forward;
            let mut way = from.map_or(0.0, |from| apart(from, next.end(false)));
            let mut done = vec![next];
            while let Some(here) = done.last().map(|step| step.end(true))
                && !left.is_empty()
            {
                let (mut least, mut nearest) = (f64::MAX, (0, true));
                for (at, step) in left.iter().enumerate() {
                    for (end, forward) in [(step.left, true), (step.right, false)] {
                        if apart(here, end) < least {
                            (least, nearest) = (apart(here, end), (at, forward));
                        }
                    }
                }
                let mut next = left.remove(nearest.0);
                next.forward = nearest.1;
                way += least;
                done.push(next);
            }
            if best.as_ref().is_none_or(|(shortest, _)| way < *shortest - 1e-9) {
                best = Some((way, done));
            }
        }
    }
    best.map(|(_, steps)| steps).unwrap_or_default()
}

fn apart(a: Point, b: Point) -> f64 {
    (a.0 - b.0).abs() + (a.1 - b.1).abs()
}

/// Where the enclosure runs on between two rooms of a loop, by the legs of the way between them.
fn join(draft: &Draft, job: &Job, rooms: &[usize], visits: &mut [Visit]) {
    for at in 0..visits.len() {
        let room = visits[at].room;
        let place = rooms.iter().position(|other| *other == room).unwrap_or(0);
        // The room before must be the one that the way is described from.
        let before =
            (at > 0 && place > 0 && rooms[place - 1] == visits[at - 1].room).then(|| at - 1);
        let Some(id) = job.house.rooms.get(room).map(|room| room.id) else { continue };
        let legs = legs(draft, id);
        if let Some(last) = before.and_then(|before| visits[before].steps.last_mut()) {
            last.ends[usize::from(last.forward)] = end(legs.iter(), true);
        }
        if let Some(first) = visits[at].steps.first_mut() {
            first.ends[usize::from(!first.forward)] = end(legs.iter().rev(), before.is_some());
        }
    }
}

/// The return of a loop goes back over its pieces.
fn turn_back(visits: &mut [Visit]) {
    for step in visits.iter_mut().flat_map(|visit| &mut visit.steps) {
        step.back = BackPath::InEnclosure;
    }
    if let Some(last) = visits.last_mut().and_then(|visit| visit.steps.last_mut()) {
        last.ends[usize::from(last.forward)] = End::Turned;
    }
}

fn legs(draft: &Draft, id: RoomId) -> Vec<(LegKind, Length)> {
    let Some(room) = draft.room(id) else { return Vec::new() };
    let length = |row| resolve(draft, Field::Leg(id, row, LegField::Length)).si().unwrap_or(0.0);
    let legs = room.route.iter().enumerate();
    legs.map(|(row, leg)| (leg.kind, Length::from_si(length(row)))).collect()
}

/// The end of baseboard from which these legs lead; `on` where baseboard lies behind them.
fn end<'a>(legs: impl Iterator<Item = &'a (LegKind, Length)>, on: bool) -> End {
    let mut length = Length::ZERO;
    let mut leaves = true;
    let mut corner = None;
    for (kind, long) in legs {
        match kind {
            LegKind::Along => (length, leaves) = (length + *long, !on),
            LegKind::InsideCorner | LegKind::OutsideCorner => {
                corner = corner.or(Some(*kind));
                leaves = !on;
            }
            LegKind::Doorway | LegKind::ThroughFloor | LegKind::Below => {
                leaves = true;
                break;
            }
        }
    }
    if let Some(kind) = corner {
        return End::Corner(kind, if leaves { Beyond::Cap } else { Beyond::Baseboard });
    }
    match (leaves, length > Length::ZERO) {
        (false, _) => End::RunsOn(length),
        (true, true) => End::Stub(length),
        (true, false) => End::Capped,
    }
}
