//! The materials list of a job: what to buy, why, and what that comes to.

use super::cost::{Line, Price, cost, is_bought};
use super::count::count;
use super::cutting::{Cutting, cuttings};
use super::item::{Amount, Class, Item, Reason, Whose};
use crate::building::RoomId;
use crate::design::Design;
use crate::job::{Group, Job, PriceField, Zone};
use crate::named::Named;
use crate::order;
use crate::quantity::{Length, Money, Unit};

#[derive(Debug, Clone, PartialEq)]
pub struct TakeOff {
    /// In the order of the groups, within them as the costing has them.
    pub lines: Vec<Entry>,
    /// Of what is bought, each group that has lines.
    pub groups: Vec<(Group, Money)>,
    /// Of what is needed: each room, then what zones, loops and the house need of their own.
    pub by_subject: Vec<(Whose, Money)>,
    /// Of what is needed: each loop with its rooms, where a zone has several what they share, and the
    /// house.
    pub by_circuit: Vec<(Whose, Money)>,
    /// Without anything to spare and with pipe by its length: what a comparison shows of this job.
    pub needed: Money,
    /// Of what is bought.
    pub sum: Money,
    /// Lines that have no price.
    pub unpriced: usize,
    pub cuttings: Vec<Cutting>,
    pub notes: Vec<Note>,
}

/// A line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// What is needed, with its price.
    pub line: Line,
    pub group: Group,
    /// As a share of the need.
    pub spare: f64,
    pub buy: Buy,
    /// Of what is bought; none without a price.
    pub sum: Option<Money>,
    pub reasons: Vec<Because>,
}

/// What is bought, with what is to spare and without what there is.
#[derive(Debug, Clone, PartialEq)]
pub enum Buy {
    Count(u32),
    /// In whole feet.
    Length(Length),
    /// Sticks or coils, how many of each length.
    Lengths(Vec<(Length, u32)>),
}

/// Why something is on the list, and for whom how much.
#[derive(Debug, Clone, PartialEq)]
pub struct Because {
    pub reason: Reason,
    pub parts: Vec<(Whose, Amount)>,
}

/// What the list cannot tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Note {
    /// Boiler, and pipe between the parts of the boiler room.
    BoilerRoom,
    /// Thermostats whose wire is not measured.
    WireNotMeasured(u32),
    /// Stretches whose way is not described leg by leg.
    WaysInOneLine(u32),
    /// Holes that are taken.
    HolesTaken,
}

/// All that a designed job needs to be bought.
pub fn list(job: &Job, design: &Design) -> TakeOff {
    let items = count(job, design);
    let cost = cost(job, &items);
    let cuttings = cuttings(job, design);
    let mut lines: Vec<Entry> =
        cost.lines.iter().map(|line| entry(job, &items, &cuttings, *line)).collect();
    order::sort_by_key(&mut lines, |entry| entry.group as u32);
    let bought = |lines: &mut dyn Iterator<Item = &Entry>| {
        Money::ZERO + lines.filter_map(|entry| entry.sum).sum::<Money>()
    };
    let of_group = |&group: &Group| {
        let own = || lines.iter().filter(move |entry| entry.group == group);
        (own().count() > 0).then(|| (group, bought(&mut own())))
    };
    let shares = shares(job, &items, &cost.lines);
    TakeOff {
        groups: Group::ALL.iter().filter_map(of_group).collect(),
        by_subject: by_subject(job, &shares),
        by_circuit: by_circuit(job, &shares),
        needed: cost.known,
        sum: bought(&mut lines.iter()),
        unpriced: lines.iter().filter(|entry| entry.sum.is_none()).count(),
        notes: notes(job, &items, &cuttings),
        cuttings,
        lines,
    }
}

/// The kind of material of a class.
pub fn group(class: Class) -> Group {
    match class {
        Class::Piece(_) | Class::Kept(_) => Group::Element,
        Class::Part(field) => field.group(),
    }
}

fn entry(job: &Job, items: &[Item], cuttings: &[Cutting], line: Line) -> Entry {
    let group = group(line.class);
    let spare = job.spare.share(group);
    // A hair over a whole number is rounding.
    let up = |number: f64| (number * (1.0 + spare) - 1e-9).ceil().clamp(0.0, 1e9);
    let of_pipe = cuttings.iter().find(|cutting| {
        line.class == Class::Part(PriceField::Pipe) && line.tube == Some(cutting.tube)
    });
    let (buy, amount) = match (line.amount, of_pipe) {
        (_, Some(cutting)) => {
            let bought = cutting.bought(spare);
            let whole = bought.iter().map(|&(length, count)| length * f64::from(count)).sum();
            (Buy::Lengths(bought), Amount::Length(whole))
        }
        (Amount::Length(length), None) => {
            let whole = Length::of(up(length.to(Unit::Foot)), Unit::Foot);
            (Buy::Length(whole), Amount::Length(whole))
        }
        (Amount::Count(count), None) => {
            let amount = line.to_buy(Amount::Count(up(f64::from(count)) as u32));
            (Buy::Count(amount.number() as u32), amount)
        }
    };
    let mut reasons: Vec<Because> = Vec::new();
    for item in items.iter().filter(|item| is_bought(job, item) && line.holds(job, item)) {
        let known = reasons.iter_mut().find(|because| because.reason == item.reason);
        let part = (item.whose, item.amount);
        match known {
            None => reasons.push(Because { reason: item.reason, parts: vec![part] }),
            Some(because) => {
                let same = because.parts.iter_mut().find(|(whose, _)| *whose == item.whose);
                match same {
                    Some((_, amount)) => *amount = amount.and(item.amount),
                    None => because.parts.push(part),
                }
            }
        }
    }
    Entry { sum: line.cost(amount), line, group, spare, buy, reasons }
}

/// What each item costs. Of pieces that were bought already the first cost nothing.
fn shares(job: &Job, items: &[Item], lines: &[Line]) -> Vec<(Whose, Money)> {
    let mut left: Vec<u32> = lines.iter().map(|line| line.have).collect();
    let mut shares = Vec::new();
    for item in items.iter().filter(|item| is_bought(job, item)) {
        let Some(at) = lines.iter().position(|line| line.holds(job, item)) else { continue };
        let amount = match item.amount {
            Amount::Count(count) => {
                let have = left[at].min(count);
                left[at] -= have;
                Amount::Count(count - have)
            }
            length => length,
        };
        let price = lines[at].price.map_or(Money::ZERO, |price: Price| price.of(amount));
        shares.push((item.whose, price));
    }
    shares
}

fn add(sums: &mut Vec<(Whose, Money)>, whose: Whose, money: Money) {
    match sums.iter_mut().find(|(known, _)| *known == whose) {
        Some((_, sum)) => *sum += money,
        None => sums.push((whose, money)),
    }
}

/// The rooms in the order of the house, then the others as they come.
fn by_subject(job: &Job, shares: &[(Whose, Money)]) -> Vec<(Whose, Money)> {
    let rooms = job.house.rooms.iter().map(|room| (Whose::Room(room.id), Money::ZERO));
    let mut sums = rooms.collect();
    for &(whose, money) in shares {
        add(&mut sums, whose, money);
    }
    sums
}

fn by_circuit(job: &Job, shares: &[(Whose, Money)]) -> Vec<(Whose, Money)> {
    let mut sums = Vec::new();
    for zone in &job.zones {
        for rooms in &zone.loops {
            add(&mut sums, circuit(job, zone, rooms), Money::ZERO);
        }
    }
    for &(whose, money) in shares {
        let whose = match whose {
            Whose::Room(room) => circuit_of(job, room).unwrap_or(whose),
            other => other,
        };
        add(&mut sums, whose, money);
    }
    sums
}

/// A loop of several by itself, the zone where it has but one.
fn circuit(job: &Job, zone: &Zone, rooms: &[usize]) -> Whose {
    let first = rooms.first().and_then(|&at| job.house.rooms.get(at));
    match first {
        Some(first) if zone.loops.len() > 1 => Whose::Loop(zone.id, first.id),
        _ => Whose::Zone(zone.id),
    }
}

fn circuit_of(job: &Job, room: RoomId) -> Option<Whose> {
    let at = job.house.rooms.iter().position(|of| of.id == room)?;
    let mut loops = job.zones.iter().flat_map(|zone| zone.loops.iter().map(move |l| (zone, l)));
    loops.find(|(_, rooms)| rooms.contains(&at)).map(|(zone, rooms)| circuit(job, zone, rooms))
}

fn notes(job: &Job, items: &[Item], cuttings: &[Cutting]) -> Vec<Note> {
    let mut notes = Vec::new();
    if items.is_empty() {
        return notes;
    }
    notes.push(Note::BoilerRoom);
    let unmeasured = job.zones.iter().filter(|zone| zone.wire.is_none()).count();
    if unmeasured > 0 {
        notes.push(Note::WireNotMeasured(unmeasured as u32));
    }
    let pieces = cuttings.iter().flat_map(|cutting| &cutting.pieces);
    let in_one = pieces.filter(|piece| piece.leg.is_none() && piece.part.0 == 1).count();
    if in_one > 0 {
        notes.push(Note::WaysInOneLine(in_one as u32));
    }
    if items.iter().any(|item| item.reason == Reason::HolesTaken) {
        notes.push(Note::HolesTaken);
    }
    notes
}
