//! What is tried, and how each changes the draft.

use super::Change;
use crate::building::{RoomId, ZoneId};
use crate::design::Design;
use crate::job::{
    Arrangement, Balancing, Draft, Entry, Field, Holds, Hung, Job, RoomField, SupplyBy, Zone,
};
use crate::order;
use crate::quantity::{Length, Power, Unit};
use crate::season::SeasonRun;

/// A changed draft.
#[derive(Debug)]
pub(super) struct Try {
    pub(super) change: Change,
    /// Those of one number are ways to the same end.
    pub(super) kind: usize,
    pub(super) draft: Draft,
    /// Whether the design is another then.
    pub(super) designs_anew: bool,
}

/// A room that is nearer than this on the average is left alone, K: judgement.
const NEAR_K: f64 = 0.3;

/// What dampers are set to, in percent.
const DAMPERS: [u32; 6] = [90, 80, 70, 60, 50, 40];

struct List<'a> {
    draft: &'a Draft,
    all: Vec<Try>,
    kind: usize,
}

impl List<'_> {
    fn add(&mut self, change: Change, designs_anew: bool, edit: impl FnOnce(&mut Draft)) {
        let mut draft = self.draft.clone();
        edit(&mut draft);
        if draft != *self.draft {
            self.all.push(Try { change, kind: self.kind, draft, designs_anew });
        }
    }

    fn next_kind(&mut self) {
        self.kind += 1;
    }
}

pub(super) fn tries(draft: &Draft, job: &Job, design: &Design, run: &SeasonRun) -> Vec<Try> {
    let mut list = List { draft, all: Vec::new(), kind: 0 };
    let off_k = off_k(job, run);
    for zone in &job.zones {
        of_zone(&mut list, job, zone, &off_k);
    }
    if design.plant.as_ref().is_some_and(|plant| plant.reset.is_some()) {
        list.add(Change::Reset, false, |draft| draft.control.supply = SupplyBy::Reset);
        list.next_kind();
    }
    let heated = |room: &usize| design.rooms[*room].element.output > Power::ZERO;
    let rooms = || (0..off_k.len()).filter(heated);
    let farthest = |a: usize, b: usize| if off_k[b].abs() > off_k[a].abs() { b } else { a };
    if let Some(warm) = rooms().filter(|&room| off_k[room] > NEAR_K).reduce(farthest) {
        dampers(&mut list, job.house.rooms[warm].id);
        shorten(&mut list, job, design, warm);
    }
    if let Some(far) = rooms().filter(|&room| off_k[room].abs() > NEAR_K).reduce(farthest) {
        own_zone(&mut list, job, far);
    }
    list.all
}

/// By how much each room is warmer than it is meant to be, on the average while the house is heated, K.
fn off_k(job: &Job, run: &SeasonRun) -> Vec<f64> {
    let heated = || run.bins.iter().filter(|bin| bin.runs > 0.0);
    let hours: f64 = heated().map(|bin| bin.hours).sum();
    let rooms = job.house.rooms.iter().enumerate();
    let mean = rooms.map(|(at, room)| {
        let sum: f64 =
            heated().map(|bin| (bin.rooms[at] - room.temperature).si() * bin.hours).sum();
        if hours > 0.0 { sum / hours } else { 0.0 }
    });
    mean.collect()
}

fn of_zone(list: &mut List<'_>, job: &Job, zone: &Zone, off_k: &[f64]) {
    let id = zone.id;
    let rooms: Vec<usize> = zone.loops.iter().flatten().copied().collect();
    if rooms.len() < 2 {
        return;
    }
    let hold = |draft: &mut Draft, holds| {
        if let Some(zone) = draft.zone_mut(id) {
            zone.holds = holds;
        }
    };
    let valves = list.draft.zone(id).is_some_and(|zone| zone.holds == Holds::RoomValves);
    if !(valves && zone.arrangement.has_branches()) {
        for &room in &rooms {
            let room = job.house.rooms[room].id;
            let holds = Holds::Thermostat(room);
            list.add(Change::Thermostat(id, room), false, |draft| hold(draft, holds));
        }
        list.next_kind();
    }
    if zone.arrangement.has_branches() {
        list.add(Change::RoomValves(id), false, |draft| hold(draft, Holds::RoomValves));
        list.next_kind();
    }
    let circuits = if zone.arrangement.has_branches() { rooms.len() } else { zone.loops.len() };
    if circuits > 1 && zone.balancing == Balancing::None {
        list.add(Change::Balance(id), true, |draft| {
            if let Some(zone) = draft.zone_mut(id) {
                zone.balancing = Balancing::Valves;
            }
        });
        list.next_kind();
    }
    if zone.arrangement == Arrangement::Series {
        reorder(list, job, id, &rooms, off_k);
        list.add(Change::Split(id), true, |draft| draft.arrange(id, Arrangement::Split));
        list.next_kind();
    }
}

/// The coldest room first, or all the other way round.
fn reorder(list: &mut List<'_>, job: &Job, zone: ZoneId, rooms: &[usize], off_k: &[f64]) {
    let ids: Vec<RoomId> = rooms.iter().map(|&room| job.house.rooms[room].id).collect();
    let coldest = rooms.iter().copied().reduce(|a, b| if off_k[b] < off_k[a] { b } else { a });
    if let Some(coldest) = coldest.map(|room| job.house.rooms[room].id) {
        let mut order: Vec<RoomId> = ids.iter().copied().filter(|id| *id != coldest).collect();
        order.insert(0, coldest);
        list.add(Change::First(coldest), true, |draft| draft.hang_on_loops(zone, &[&order]));
    }
    let turned: Vec<RoomId> = ids.into_iter().rev().collect();
    list.add(Change::TurnRound(zone), true, |draft| draft.hang_on_loops(zone, &[&turned]));
    list.next_kind();
}

fn dampers(list: &mut List<'_>, room: RoomId) {
    for percent in DAMPERS {
        let entry = Entry { text: percent.to_string(), unit: Unit::Percent };
        let field = Field::Room(room, RoomField::Damper);
        let change = Change::Damper(room, f64::from(percent) / 100.0);
        list.add(change, false, |draft| draft.set_entry(field, entry));
    }
    list.next_kind();
}

/// The present pieces stay, but for one, two or three feet of them.
fn shorten(list: &mut List<'_>, job: &Job, design: &Design, at: usize) {
    let room = &job.house.rooms[at];
    for less in 1..=3_u8 {
        let mut left = less;
        let mut fixed = Vec::new();
        for run in &design.rooms[at].element.choice.runs {
            let wall = room.surfaces.iter().find(|surface| surface.id == run.surface);
            let Some(nth) = wall.and_then(|wall| wall.runs.iter().position(|of| *of == run.run))
            else {
                return;
            };
            let mut pieces: Vec<u8> = Vec::new();
            for piece in &run.pieces {
                let feet = piece.to(Unit::Foot).round() as u8;
                let cut = left.min(feet.saturating_sub(2));
                left -= cut;
                pieces.push(feet - cut);
            }
            order::sort_by_key(&mut pieces, |feet| std::cmp::Reverse(*feet));
            fixed.push((run.surface, nth as u32, pieces));
        }
        if left > 0 {
            return;
        }
        let by = Length::of(f64::from(less), Unit::Foot);
        list.add(Change::Shorten(room.id, by), true, |draft| {
            for (wall, run, pieces) in fixed {
                draft.fix_pieces(room.id, wall, run, pieces);
            }
        });
    }
    list.next_kind();
}

fn own_zone(list: &mut List<'_>, job: &Job, at: usize) {
    let room = job.house.rooms[at].id;
    let alone = job.zones.iter().any(|zone| zone.loops.concat() == [at]);
    if alone {
        return;
    }
    list.add(Change::OwnZone(room), true, |draft| {
        let zone = draft.add_zone();
        draft.arrange(zone, Arrangement::Series);
        if let Some(of) = draft.zone_mut(zone) {
            of.holds = Holds::FirstRoom;
        }
        draft.place_room(room, Hung { zone, branch: 0 }, None);
    });
    list.next_kind();
}
