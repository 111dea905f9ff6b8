//! How many of each thing a design is built with, each with what it is there for: from a job and its
//! design alone.

mod boiler_room;
mod element;
mod pipe;
pub mod supplies;
mod zone;

use super::item::{Amount, Class, Form, Item, Reason, Whose};
use super::straights::{self, Straight};
use crate::arrangement::{Laid, laid};
use crate::building::{RoomId, ZoneId};
use crate::design::Design;
use crate::job::{Arrangement, Job, PriceField, Zone};
use crate::network::Place;
use crate::pipe::{Material, Tube};
use crate::quantity::Length;

/// What a design is built with; nothing of it has an amount of zero.
///
/// Not counted is what no rule of ours gives: the pipe within the boiler room, the boiler itself, wire
/// that is not measured. Of a design without its plant that rests on it is missing: tank size, glycol,
/// what protects the return.
pub fn count(job: &Job, design: &Design) -> Vec<Item> {
    let laid = laid(job, design);
    let straights = straights::of_laid(job, design, &laid);
    let mut counting = Counting { job, design, laid, straights, items: Vec::new() };
    for (room, way) in design.rooms.iter().zip(&job.approaches) {
        counting.element(room);
        counting.holes(room.room, way);
    }
    counting.pipe();
    for zone in &job.zones {
        counting.enclosures(zone);
        counting.meetings(zone);
        counting.zone(zone);
    }
    if !design.rooms.is_empty() && !job.zones.is_empty() {
        counting.boiler_room();
        counting.supplies();
    }
    counting.items
}

/// All joints to be soldered. Common practice: two at an elbow, a reducer or a valve, three at a tee, one
/// at an adapter or a transition; PEX is not soldered.
///
/// Where an elbow stands right at a piece, one joint is counted with both: the places of the drops
/// are not known.
pub fn joints(items: &[Item]) -> u32 {
    items.iter().map(soldered).sum()
}

fn soldered(item: &Item) -> u32 {
    use PriceField::*;
    let (Class::Part(field), Amount::Count(count)) = (item.class, item.amount) else { return 0 };
    let each = match field {
        Joint | Transition => 1,
        _ if item.tube.is_none_or(is_pex) => 0,
        Adapter => 1,
        Elbow | Reducer | BalancingValve | ZoneValve | ShutOffValve | PurgeValve | FlowCheck => 2,
        Tee | DiverterTee => 3,
        _ => 0,
    };
    each * count
}

pub(super) fn is_pex(tube: Tube) -> bool {
    tube.material() == Material::Pex
}

/// Joints between copper and PEX in a zone.
pub fn transitions(items: &[Item], job: &Job, zone: &Zone) -> u32 {
    let own = |item: &&Item| match item.whose {
        Whose::House => false,
        Whose::Zone(of) | Whose::Loop(of, _) => of == zone.id,
        Whose::Room(room) => {
            let id = |at: &usize| job.house.rooms.get(*at).map(|room| room.id);
            zone.loops.iter().flatten().any(|at| id(at) == Some(room))
        }
    };
    let is_one = |item: &&Item| item.class == Class::Part(PriceField::Transition);
    items.iter().filter(own).filter(is_one).map(|item| item.amount.number() as u32).sum()
}

struct Counting<'a> {
    job: &'a Job,
    design: &'a Design,
    laid: Vec<Laid>,
    straights: Vec<Straight>,
    items: Vec<Item>,
}

impl Counting<'_> {
    fn add(&mut self, item: Item) {
        let is_some = match item.amount {
            Amount::Count(count) => count > 0,
            Amount::Length(length) => length.si() > 0.0,
        };
        if is_some {
            self.items.push(item);
        }
    }

    /// Things of one size, or of no size.
    fn part(
        &mut self,
        field: PriceField,
        tube: impl Into<Option<Tube>>,
        whose: Whose,
        reason: Reason,
        count: usize,
    ) {
        self.form(field, tube.into(), Form::Only, whose, reason, count);
    }

    fn form(
        &mut self,
        field: PriceField,
        tube: Option<Tube>,
        form: Form,
        whose: Whose,
        reason: Reason,
        count: usize,
    ) {
        let amount = Amount::Count(count.try_into().unwrap_or(u32::MAX));
        self.add(Item { class: Class::Part(field), tube, form, whose, amount, reason });
    }

    fn length(
        &mut self,
        field: PriceField,
        tube: Option<Tube>,
        whose: Whose,
        reason: Reason,
        length: Length,
    ) {
        let (class, amount) = (Class::Part(field), Amount::Length(length));
        self.add(Item { class, tube, form: Form::Only, whose, amount, reason });
    }

    /// Fittings where two tubes meet so many times: for another size, for another material.
    fn meet(&mut self, a: Tube, b: Tube, whose: Whose, times: usize) {
        if a.nominal() != b.nominal() {
            let (large, small) = if a.nominal() > b.nominal() { (a, b) } else { (b, a) };
            let form = Form::To(small);
            self.form(PriceField::Reducer, Some(large), form, whose, Reason::SizesMeet, times);
        }
        if is_pex(a) != is_pex(b) {
            let pex = if is_pex(a) { a } else { b };
            self.part(PriceField::Transition, pex, whose, Reason::MaterialsMeet, times);
        }
    }

    fn room_at(&self, at: usize) -> Option<RoomId> {
        self.job.house.rooms.get(at).map(|room| room.id)
    }

    /// The rooms of a zone that are meant to get heat.
    fn connected(&self, zone: ZoneId) -> Vec<RoomId> {
        let circuits = self.design.piping.circuits.iter().filter(|circuit| circuit.zone == zone);
        circuits.flat_map(|circuit| &circuit.rooms).copied().collect()
    }

    /// Of the boiler room.
    fn boiler_tube(&self) -> Tube {
        let passage = self.design.piping.passage(Place::BoilerRoom);
        passage.map_or(self.job.circuit.tube, |passage| passage.tube)
    }

    /// By which a zone leaves the boiler room.
    fn first_tube(&self, zone: &Zone) -> Tube {
        let trunk = zone.trunk.length > Length::ZERO || zone.trunk.elbows > 0;
        let shares = match zone.arrangement {
            Arrangement::Series => trunk,
            Arrangement::Split => trunk || zone.loops.len() > 1,
            _ => true,
        };
        if shares { zone.main } else { zone.pipe }
    }

    /// A loop of several by itself, the zone where it has but one.
    fn of_loop(&self, zone: &Zone, first: RoomId) -> Whose {
        match zone.loops.len() {
            2.. => Whose::Loop(zone.id, first),
            _ => Whose::Zone(zone.id),
        }
    }
}
