//! The rooms of a zone along the way that its pipe takes now, and the pipe that other loops would have
//! there.

use super::split::{Direction, Part};
use crate::job::{BackPath, Job, PipeLeg, Zone};
use crate::quantity::Length;

/// The pipe to a room's element.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Way {
    pub(super) outside: PipeLeg,
    /// In the enclosure, in this room by its place in the house.
    pub(super) inside: PipeLeg,
    pub(super) room: usize,
}

/// A room on the route.
struct Stop {
    /// By its place in the house.
    room: usize,
    /// From the room before it on its loop, or from where the loops part.
    before: Way,
    /// Along the route from where the loops part to where its element begins, and to where it ends.
    to_start: PipeLeg,
    to_end: PipeLeg,
    place: PlaceOnLoop,
}

/// Where a room stands on its loop today.
#[derive(Clone, Copy, PartialEq, Eq)]
struct PlaceOnLoop {
    nth: usize,
    of: usize,
}

impl PlaceOnLoop {
    fn is_first(self) -> bool {
        self.nth == 0
    }

    fn is_last(self) -> bool {
        self.nth + 1 == self.of
    }
}

/// A zone's loops joined in their order.
pub(super) struct Route {
    stops: Vec<Stop>,
    pub(super) back: BackPath,
}

/// The pipe of a loop: before each of its rooms in the order of the water, and back from the last.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ways {
    pub(super) to: Vec<Way>,
    pub(super) back: PipeLeg,
}

/// A part of the house's pipe that is not typed, since no loop begins or ends there today.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unknown {
    pub room: crate::building::RoomId,
    pub end: End,
    /// The shorter way along the route, past the elements that stand there now.
    pub length: Length,
}

/// Which end of a loop a pipe leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    Supply,
    Return,
}

impl Route {
    /// With the elements as they are now, by room, which the pipe has to pass.
    pub(super) fn of(job: &Job, zone: &Zone, elements: &[Length]) -> Route {
        let mut stops = Vec::new();
        for rooms in &zone.loops {
            let first = stops.len();
            let mut way = NONE;
            for (nth, &room) in rooms.iter().enumerate() {
                let Some(approach) = job.approaches.get(room) else { continue };
                let before = Way { outside: approach.outside, inside: approach.inside, room };
                way = sum(way, before.all());
                stops.push(Stop {
                    room,
                    before,
                    to_start: way,
                    to_end: NONE,
                    place: PlaceOnLoop { nth, of: rooms.len() },
                });
                way = sum(way, past(elements, room));
            }
            // And round from the other end.
            let last = rooms.last().and_then(|&room| job.approaches.get(room));
            let mut way = last.map_or(NONE, |approach| approach.back);
            for stop in stops.iter_mut().skip(first).rev() {
                let along = sum(stop.to_start, past(elements, stop.room));
                stop.to_end = match zone.back {
                    BackPath::OwnWay => shorter(way, along),
                    // The way back lies above the way there.
                    BackPath::InEnclosure => along,
                };
                let round = sum(way, past(elements, stop.room));
                if zone.back == BackPath::OwnWay && !stop.place.is_first() {
                    stop.to_start = shorter(stop.to_start, round);
                }
                if stop.place.is_last() && zone.back == BackPath::OwnWay {
                    stop.to_end = way;
                }
                way = sum(round, stop.before.all());
            }
        }
        Route { stops, back: zone.back }
    }

    pub(super) fn len(&self) -> usize {
        self.stops.len()
    }

    /// The room at a place, by its place in the house.
    pub(super) fn room(&self, place: usize) -> Option<usize> {
        self.stops.get(place).map(|stop| stop.room)
    }

    /// Today's loops.
    pub(super) fn today(&self) -> Vec<Part> {
        let mut parts: Vec<Part> = Vec::new();
        for (at, stop) in self.stops.iter().enumerate() {
            match parts.last_mut() {
                Some(part) if !stop.place.is_first() => part.last = at,
                _ => parts.push(Part { first: at, last: at, direction: Direction::AsNow }),
            }
        }
        parts
    }

    /// The pipe of a loop of these rooms. What is typed stands where the loop begins, ends or runs on as
    /// one does today; from one of today's loops to the next it leads by where they part.
    pub(super) fn ways(&self, part: &Part) -> Ways {
        let stops = self.stops.get(part.first..=part.last).unwrap_or_default();
        let (Some(first), Some(last)) = (stops.first(), stops.last()) else {
            return Ways { to: Vec::new(), back: NONE };
        };
        let plain = |outside, room| Way { outside, inside: NONE, room };
        let between = |pair: &[Stop]| match pair {
            [a, b] if b.place.is_first() => plain(sum(a.to_end, b.to_start), b.room),
            [_, b] => b.before,
            _ => plain(NONE, 0),
        };
        let mut to: Vec<Way> = stops.windows(2).map(between).collect();
        match part.direction {
            Direction::AsNow => {
                let begins = match first.place.is_first() {
                    true => first.before,
                    false => plain(first.to_start, first.room),
                };
                to.insert(0, begins);
                let back = match self.back {
                    BackPath::OwnWay => last.to_end,
                    // Above the elements and along the pipe between them.
                    BackPath::InEnclosure => to.iter().fold(NONE, |all, way| sum(all, way.outside)),
                };
                Ways { to, back }
            }
            Direction::Reversed => {
                to.push(plain(last.to_end, last.room));
                to.reverse();
                Ways { to, back: first.to_start }
            }
        }
    }

    /// Where these loops begin and end but none does today.
    pub(super) fn unknown(&self, job: &Job, parts: &[Part]) -> Vec<Unknown> {
        let mut unknown = Vec::new();
        for part in parts {
            let ends = match part.direction {
                Direction::AsNow => [End::Supply, End::Return],
                Direction::Reversed => [End::Return, End::Supply],
            };
            let mut add = |stop: Option<&Stop>, end, way: fn(&Stop) -> PipeLeg| {
                let room = stop.and_then(|stop| Some((stop, job.house.rooms.get(stop.room)?)));
                if let Some((stop, room)) = room {
                    unknown.push(Unknown { room: room.id, end, length: way(stop).length });
                }
            };
            let first = self.stops.get(part.first).filter(|stop| !stop.place.is_first());
            add(first, ends[0], |stop| stop.to_start);
            let last = self.stops.get(part.last).filter(|stop| !stop.place.is_last());
            let own = self.back == BackPath::OwnWay;
            add(last.filter(|_| own), ends[1], |stop| stop.to_end);
        }
        unknown
    }
}

impl Way {
    pub(super) fn all(&self) -> PipeLeg {
        sum(self.outside, self.inside)
    }
}

pub(super) const NONE: PipeLeg = PipeLeg { length: Length::ZERO, elbows: 0 };

pub(super) fn sum(a: PipeLeg, b: PipeLeg) -> PipeLeg {
    PipeLeg { length: a.length + b.length, elbows: a.elbows + b.elbows }
}

fn past(elements: &[Length], room: usize) -> PipeLeg {
    PipeLeg { length: elements.get(room).copied().unwrap_or(Length::ZERO), elbows: 0 }
}

fn shorter(a: PipeLeg, b: PipeLeg) -> PipeLeg {
    if b.length < a.length { b } else { a }
}
