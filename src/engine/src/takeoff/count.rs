//! How many of each thing a design is built with, each with what it is there for: from a job and its
//! design alone.

use crate::arrangement::laid;
use crate::building::{RoomId, ZoneId};
use crate::design::{Design, RoomDesign};
use crate::job::{Arrangement, Balancing, Diverters, Job, PriceField, PumpSet, Zone, Zoning};
use crate::network::Place;
use crate::quantity::Length;
use crate::sizing::RunPieces;
use serde::Serialize;

/// What is counted together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// A stock length of finned tube.
    Piece(Length),
    /// One that the user keeps where it is, whatever is chosen beside it.
    Kept(Length),
    Part(PriceField),
}

/// What a thing is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Whose {
    House,
    Zone(ZoneId),
    /// A loop of a zone, by its first room.
    Loop(ZoneId, RoomId),
    Room(RoomId),
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    Count(u32),
    #[serde(rename = "length_m")]
    Length(Length),
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Item {
    pub class: Class,
    pub whose: Whose,
    pub amount: Amount,
}

/// What a design is built with; nothing of it has an amount of zero.
///
/// Soldered joints are those of the pieces: a run of `k` pieces has `k + 1`. The two of an elbow and
/// the three of a tee are not listed beside it, since it is priced soldered in; [`joints`] has them
/// all.
pub fn count(job: &Job, design: &Design) -> Vec<Item> {
    let mut counting = Counting { job, design, items: Vec::new() };
    for room in &design.rooms {
        counting.element(room);
    }
    counting.pipe();
    for zone in &job.zones {
        counting.end_caps(zone);
        counting.zone(zone);
    }
    counting.boiler_room();
    counting.items
}

/// All joints to be made: at pieces, and by common practice two at an elbow and three at a tee.
///
/// Where an elbow stands right at a piece, one joint is counted with both: the places of the drops
/// are not known.
pub fn joints(items: &[Item]) -> u32 {
    let at = |item: &Item| match (item.class, item.amount) {
        (Class::Part(PriceField::Joint), Amount::Count(count)) => count,
        (Class::Part(PriceField::Elbow), Amount::Count(count)) => 2 * count,
        (Class::Part(PriceField::Tee | PriceField::DiverterTee), Amount::Count(count)) => 3 * count,
        _ => 0,
    };
    items.iter().map(at).sum()
}

struct Counting<'a> {
    job: &'a Job,
    design: &'a Design,
    items: Vec<Item>,
}

impl Counting<'_> {
    fn add(&mut self, class: Class, whose: Whose, count: usize) {
        if count > 0 {
            let amount = Amount::Count(count.try_into().unwrap_or(u32::MAX));
            self.items.push(Item { class, whose, amount });
        }
    }

    fn part(&mut self, field: PriceField, whose: Whose, count: usize) {
        self.add(Class::Part(field), whose, count);
    }

    fn length(&mut self, field: PriceField, whose: Whose, length: Length) {
        if length > Length::ZERO {
            let amount = Amount::Length(length);
            self.items.push(Item { class: Class::Part(field), whose, amount });
        }
    }

    /// A room's pieces, their joints and their enclosure.
    fn element(&mut self, room: &RoomDesign) {
        let whose = Whose::Room(room.room);
        let mut classes: Vec<(Class, usize)> = Vec::new();
        let mut add = |class: Class| match classes.iter_mut().find(|(known, _)| *known == class) {
            Some((_, count)) => *count += 1,
            None => classes.push((class, 1)),
        };
        let choice = &room.element.choice;
        for run in &choice.runs {
            let mut kept = self.kept(room.room, run);
            for &piece in &run.pieces {
                match kept.iter().position(|other| alike(*other, piece)) {
                    Some(at) => {
                        kept.swap_remove(at);
                        add(Class::Kept(piece));
                    }
                    None => add(Class::Piece(piece)),
                }
            }
        }
        for (class, count) in classes {
            self.add(class, whose, count);
        }
        self.part(PriceField::Joint, whose, choice.pieces().count() + choice.runs.len());
        self.length(PriceField::Enclosure, whose, choice.pieces().sum());
    }

    /// The pieces that are kept on a run.
    fn kept(&self, room: RoomId, run: &RunPieces) -> Vec<Length> {
        let rooms = self.job.house.rooms.iter().filter(|of| of.id == room);
        let mut walls = rooms.flat_map(|of| &of.surfaces).filter(|wall| wall.id == run.surface);
        let kept = walls.find_map(|wall| {
            let on_run = |at: usize| wall.runs.get(at) == Some(&run.run);
            wall.fixed.iter().find(|kept| on_run(kept.run))
        });
        kept.map(|kept| kept.pieces.clone()).unwrap_or_default()
    }

    fn pipe(&mut self) {
        for laid in laid(self.job, self.design) {
            let whose = whose(laid.place);
            self.length(PriceField::Pipe, whose, laid.length);
            self.part(PriceField::Elbow, whose, laid.elbows as usize);
            if matches!(laid.place, Place::Inside(_)) {
                self.length(PriceField::Enclosure, whose, laid.length);
                self.part(PriceField::Corner, whose, laid.elbows as usize);
            }
        }
    }

    /// Between two mains each run of a room stands by itself, with a cap at each end. On a loop one
    /// run of each room is on the way, and shares its caps with the room before where the enclosure
    /// runs on; a room without an element has none. Where the enclosure runs on to a room that has no
    /// element, it is capped as if there were one.
    fn end_caps(&mut self, zone: &Zone) {
        for rooms in &zone.loops {
            // The room behind whose element the enclosure is not capped yet.
            let mut open = None;
            for (nth, &at) in rooms.iter().enumerate() {
                let Some((room, way)) = self.design.rooms.get(at).zip(self.job.approaches.get(at))
                else {
                    continue;
                };
                let runs = room.element.choice.runs.len();
                let runs_on = way.inside.length > Length::ZERO || way.inside.elbows > 0;
                let is_last = nth + 1 == rooms.len();
                let caps = if zone.arrangement.has_branches() {
                    2 * runs
                } else {
                    let on_way = if runs_on {
                        // The last room's way has the cap behind it, too.
                        (way.end_caps as usize).saturating_sub(usize::from(is_last))
                    } else {
                        if let Some(before) = open {
                            self.part(PriceField::EndCap, before, 1);
                        }
                        usize::from(runs > 0)
                    };
                    open = (runs_on || runs > 0).then_some(Whose::Room(room.room));
                    let behind = open.is_some() && is_last;
                    on_way + usize::from(behind) + 2 * runs.saturating_sub(1)
                };
                self.part(PriceField::EndCap, Whose::Room(room.room), caps);
            }
        }
    }

    /// Tees, valves, manifold, thermostat. Where one way parts into `n`, or `n` join, stand `n - 1`
    /// tees.
    fn zone(&mut self, zone: &Zone) {
        let design = self.design;
        let circuits = design.piping.circuits.iter().filter(|circuit| circuit.zone == zone.id);
        let connected: Vec<RoomId> =
            circuits.clone().flat_map(|circuit| &circuit.rooms).copied().collect();
        match zone.arrangement {
            Arrangement::Series | Arrangement::Split => {
                for first in zone.loops.iter().skip(1).filter_map(|rooms| rooms.first()) {
                    if let Some(room) = design.rooms.get(*first) {
                        self.part(PriceField::Tee, Whose::Loop(zone.id, room.room), 2);
                    }
                }
            }
            Arrangement::DiverterTees => {
                for &room in &connected {
                    let diverters = match self.diverters(room) {
                        Diverters::One => 1,
                        Diverters::Two => 2,
                    };
                    self.part(PriceField::DiverterTee, Whose::Room(room), diverters);
                    self.part(PriceField::Tee, Whose::Room(room), 2 - diverters);
                }
            }
            Arrangement::DirectReturn | Arrangement::ReverseReturn => {
                // Where the mains end at the last room, its branch is their end.
                let parting = connected.split_last().map_or(&[][..], |(_, before)| before);
                for &room in parting {
                    self.part(PriceField::Tee, Whose::Room(room), 2);
                }
            }
            Arrangement::HomeRun => {
                for &room in &connected {
                    self.part(PriceField::ManifoldPorts, Whose::Room(room), 1);
                }
            }
        }
        // What can be purged by itself: a loop, or all that hangs between the same mains.
        for first in zone.loops.iter().filter_map(|rooms| rooms.first()) {
            let whose = match (zone.loops.len(), design.rooms.get(*first)) {
                (2.., Some(room)) => Whose::Loop(zone.id, room.room),
                _ => Whose::Zone(zone.id),
            };
            self.part(PriceField::LoopValves, whose, 1);
        }
        for circuit in circuits.filter(|circuit| circuit.valve.fitted == Balancing::Valves) {
            let whose = match circuit.rooms.first() {
                Some(&room) if zone.loops.len() > 1 => Whose::Loop(zone.id, room),
                Some(&room) if zone.arrangement.has_branches() && circuit.rooms.len() == 1 => {
                    Whose::Room(room)
                }
                _ => Whose::Zone(zone.id),
            };
            self.part(PriceField::BalancingValve, whose, 1);
        }
        self.part(PriceField::Thermostat, Whose::Zone(zone.id), 1);
    }

    fn diverters(&self, room: RoomId) -> Diverters {
        let place = self.job.house.rooms.iter().position(|of| of.id == room);
        let way = place.and_then(|place| self.job.approaches.get(place));
        way.map(|way| way.diverters).unwrap_or_default()
    }

    fn boiler_room(&mut self) {
        let circuit = &self.job.circuit;
        self.part(PriceField::Tee, Whose::House, circuit.boiler_tees as usize);
        let several = self.job.zones.len() > 1;
        for (nth, zone) in self.job.zones.iter().enumerate().filter(|_| several) {
            let part = match circuit.zoning {
                Zoning::Valves => PriceField::ZoneValve,
                Zoning::Circulators => PriceField::Circulator,
            };
            self.part(part, Whose::Zone(zone.id), 1);
            if nth > 0 {
                self.part(PriceField::Tee, Whose::Zone(zone.id), 2);
            }
        }
        let shared = match circuit.pumps {
            PumpSet::One => 1,
            PumpSet::TwoInSeries | PumpSet::TwoInParallel => 2,
        };
        let own = several && circuit.zoning == Zoning::Circulators;
        if !own && !self.job.zones.is_empty() {
            self.part(PriceField::Circulator, Whose::House, shared);
        }
    }
}

fn whose(place: Place) -> Whose {
    use Place::*;
    match place {
        BoilerRoom => Whose::House,
        ZoneValve(zone) | FlowCheck(zone) | Trunk(zone) | TrunkBack(zone) => Whose::Zone(zone),
        To(room) | Inside(room) | Branch(room) | BranchBack(room) | Element(room)
        | Between(room) | ReturnMain(room) | Above(room) | Back(room) | Balance(room) => {
            Whose::Room(room)
        }
    }
}

/// Whether two stock lengths are the same one.
pub(super) fn alike(a: Length, b: Length) -> bool {
    // A sixteenth of an inch is the least that stock differs by.
    (a - b).abs() < Length::from_si(0.0254 / 32.0)
}
