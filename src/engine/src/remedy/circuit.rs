//! A loop parted in two before one of its rooms, with the pipe that takes.

use super::Case;
use crate::building::RoomId;
use crate::job::{Arrangement, BackPath, Balancing, Job, PipeLeg};
use crate::quantity::Length;

/// A loop in two.
#[derive(Debug, Clone)]
pub(super) struct Split {
    zone: usize,
    /// Its place among the zone's.
    of: usize,
    first: Vec<usize>,
    second: Vec<usize>,
    from: RoomId,
    /// From where the loops part to the second one's first room.
    there: PipeLeg,
    /// From the first one's last room to where they join.
    back: PipeLeg,
    /// More than there is now.
    pub(super) pipe: Length,
    /// Balancing valves that are fitted for it.
    pub(super) valves: u32,
}

/// The loop of the room at `at`, parted before its room at `place`.
///
/// How the new pipe would run is not known: it is taken to lie beside the loop, by the shorter way round,
/// and to pass the elements there.
pub(super) fn split(case: &Case, at: usize, place: usize) -> Option<Split> {
    let job = &case.job;
    let holds = |rooms: &Vec<usize>| rooms.contains(&at);
    let zone = job.zones.iter().position(|zone| zone.loops.iter().any(holds))?;
    let of = job.zones.get(zone)?.loops.iter().position(holds)?;
    let zoned = job.zones.get(zone)?;
    let rooms = zoned.loops.get(of)?;
    if place == 0 || place >= rooms.len() {
        return None;
    }
    let (first, second) = rooms.split_at(place);
    let (&before, &from) = (first.last()?, second.first()?);
    let to_before = way(case, first);
    let to_from = plus(to_before, plus(element(case, before), approach(case, from)));
    let back_from_end = job.approaches.get(*rooms.last()?)?.back;
    let behind = plus(way(case, second.get(1..)?), back_from_end);
    let behind = match second.len() {
        1 => behind,
        _ => plus(behind, second.last().map_or(NONE, |&last| element(case, last))),
    };
    let there = shorter(to_from, plus(behind, element(case, from)));
    let back = match zoned.back {
        BackPath::InEnclosure => NONE,
        BackPath::OwnWay => shorter(
            plus(to_before, element(case, before)),
            plus(approach(case, from), plus(element(case, from), behind)),
        ),
    };
    let valves = match (zoned.balancing, zoned.loops.len() as u32) {
        (Balancing::Valves, _) => 1,
        (Balancing::None, loops) => loops + 1,
    };
    Some(Split {
        zone,
        of,
        first: first.to_vec(),
        second: second.to_vec(),
        from: job.house.rooms.get(from)?.id,
        there,
        back,
        // What led from the one room to the other is left out.
        pipe: (there.length + back.length - approach(case, from).length).max(Length::ZERO),
        valves,
    })
}

impl Split {
    /// The room from which on the new circuit runs.
    pub(super) fn from(&self) -> RoomId {
        self.from
    }

    /// Parts the loop in `job`, with a balancing valve in each.
    pub(super) fn apply(&self, job: &mut Job) {
        if let Some(approach) = self.second.first().and_then(|&room| job.approaches.get_mut(room)) {
            (approach.outside, approach.inside) = (self.there, NONE);
        }
        if let Some(approach) = self.first.last().and_then(|&room| job.approaches.get_mut(room)) {
            approach.back = self.back;
        }
        let Some(zone) = job.zones.get_mut(self.zone) else { return };
        zone.arrangement = Arrangement::Split;
        zone.balancing = Balancing::Valves;
        if let Some(rooms) = zone.loops.get_mut(self.of) {
            rooms.clone_from(&self.first);
            zone.loops.insert(self.of + 1, self.second.clone());
        }
    }
}

const NONE: PipeLeg = PipeLeg { length: Length::ZERO, elbows: 0 };

fn plus(a: PipeLeg, b: PipeLeg) -> PipeLeg {
    PipeLeg { length: a.length + b.length, elbows: a.elbows + b.elbows }
}

fn shorter(a: PipeLeg, b: PipeLeg) -> PipeLeg {
    if b.length < a.length { b } else { a }
}

/// The pipe to a room from the one before.
fn approach(case: &Case, room: usize) -> PipeLeg {
    let approach = case.job.approaches.get(room);
    approach.map_or(NONE, |approach| plus(approach.outside, approach.inside))
}

/// Past a room's element.
fn element(case: &Case, room: usize) -> PipeLeg {
    let room = case.design.rooms.get(room);
    PipeLeg { length: room.map_or(Length::ZERO, |r| r.element.choice.nominal), elbows: 0 }
}

/// Along these rooms, up to the element of the last.
fn way(case: &Case, rooms: &[usize]) -> PipeLeg {
    let mut sum = NONE;
    for (nth, &room) in rooms.iter().enumerate() {
        if nth > 0 {
            let before = rooms.get(nth - 1).map_or(NONE, |&before| element(case, before));
            sum = plus(sum, before);
        }
        sum = plus(sum, approach(case, room));
    }
    sum
}
