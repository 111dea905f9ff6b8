//! Labels from room to room, for stock that is limited.

use super::Objective;
use super::ahead::Ahead;
use super::answer::Plan;
use super::fills::{Bounds, COMPARED, Candidate, Source};
use super::flow::Wish;
use super::known::{Budget, Known, Stream};
use super::limits::{Limits, Used};
use super::model::{Picometres, Weight};
use super::rents::{Goal, Tables};
use crate::order;

/// Whether every choice within the limit was looked at; the best goes to what is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Round {
    Whole,
    Part,
}

/// What was chosen up to and with a room.
#[derive(Debug, Clone, Copy)]
struct Label {
    /// The label of the room before, in its list.
    from: u32,
    way: u32,
    weight: Weight,
    /// Where heat counts, the weight with which its circuit began.
    begun: Weight,
    /// With rents.
    rented: Weight,
    /// No choice with this beginning weighs less.
    bound: Weight,
    water_k: f64,
    used: Used,
}

/// When the nodes are spent, so many labels go on from a room.
const NARROW: usize = 64;
/// Then so many of a room's ways are tried for each.
const NARROW_WAYS: usize = 32;

/// A room's ways, and of each of its labels the label before and the way.
type Layer = (Vec<Candidate>, Vec<(u32, u32)>);

#[derive(Debug)]
pub(super) struct Search<'a> {
    pub limits: &'a Limits,
    pub tables: &'a Tables,
    pub goals: &'a [Goal],
    pub ahead: &'a Ahead<'a>,
    /// Nothing heavier is looked for.
    pub limit: Weight,
}

impl Search<'_> {
    pub(super) fn run(&self, known: &mut Known, budget: &mut Budget) -> Round {
        let model = known.model;
        let mut source = Source::of(model, self.limits, self.tables);
        let mut whole = true;
        let starts: Vec<Weight> = (0..model.circuits.len())
            .map(|at| self.ahead.least(known, (at, 0), known.water.enters_k(at)))
            .collect();
        let mut later: Weight = starts.iter().sum::<Weight>() - self.tables.rent;
        // As if the hottest water reached every room; but heat is given in any water.
        let heats: Vec<Weight> = (0..model.circuits.len())
            .map(|at| self.ahead.heat(known, (at, 0), known.water.enters_k(at)))
            .collect();
        let hottest = self.tables.bound + heats.iter().sum::<Weight>();
        let all: Weight = later;
        let start = Label {
            from: 0,
            way: 0,
            weight: 0,
            begun: 0,
            rented: 0,
            bound: later,
            water_k: 0.0,
            used: Used::NONE,
        };
        let mut labels = vec![start];
        let mut chosen: Vec<Layer> = Vec::new();
        let mut rooms = self.goals.iter().zip(&self.tables.rest).zip(&self.tables.rooms);
        for (at, circuit) in model.circuits.iter().enumerate() {
            later -= starts[at];
            let enters_k = known.water.enters_k(at);
            for label in &mut labels {
                label.water_k = enters_k;
                if model.problem.objective == Objective::Closest {
                    label.begun = label.weight;
                }
            }
            let others = all - starts[at] + self.hot_sum(known, at) + heats[at];
            for (room, (one, ((goal, rest), least))) in circuit.iter().zip(&mut rooms).enumerate() {
                let hot = known.hot[at][room];
                let stream = Stream { at, room, water_k: enters_k };
                let is_last =
                    room + 1 == circuit.len() && model.problem.objective != Objective::Closest;
                let most_need = match (hot.wish, room) {
                    (Wish::Enough | Wish::Weighed, 0) => known.needed(stream, &hot),
                    (Wish::Most | Wish::Nothing, _) => Some(hot.need),
                    _ => None,
                };
                let bounds = Bounds {
                    base: others - least,
                    limit: self.limit,
                    over: self.limit - hottest,
                    most_need: most_need.map_or(Picometres::MAX, |need| (need - one.fixed).max(0)),
                    is_last,
                };
                let (ways, all) = match hot.wish {
                    Wish::Nothing => (vec![Candidate::NOTHING], true),
                    _ => source.room((one, goal, rest), bounds, budget),
                };
                whole &= all;
                let ahead = later;
                let mut next = Vec::new();
                whole &= self.step(known, (at, room), (&labels, &ways), ahead, &mut next, budget);
                if room + 1 == circuit.len() {
                    next.iter_mut().for_each(|label| label.water_k = 0.0);
                }
                labels = self.thin(next, budget);
                if budget.is_spent() && labels.len() > NARROW {
                    whole = false;
                    order::sort_by(&mut labels, |a, b| {
                        a.bound.cmp(&b.bound).then(a.weight.cmp(&b.weight))
                    });
                    labels.truncate(NARROW);
                }
                chosen.push((ways, labels.iter().map(|label| (label.from, label.way)).collect()));
            }
        }
        if let Some(best) = (0..labels.len()).min_by_key(|&at| labels[at].weight) {
            known.meet(&plan(known, &source, &chosen, best));
        }
        if whole { Round::Whole } else { Round::Part }
    }

    /// What a circuit's rooms weigh at the hottest water.
    fn hot_sum(&self, known: &Known, at: usize) -> Weight {
        let before: usize = known.model.circuits[..at].iter().map(Vec::len).sum();
        self.tables.rooms[before..before + known.model.circuits[at].len()].iter().sum()
    }

    /// Every label with every way for the room that may lie within the limit; whether all were
    /// looked at.
    fn step(
        &self,
        known: &Known,
        (at, room): (usize, usize),
        (labels, ways): (&[Label], &[Candidate]),
        later: Weight,
        next: &mut Vec<Label>,
        budget: &mut Budget,
    ) -> bool {
        let mut whole = true;
        let hot = known.hot[at][room];
        let fixed = known.model.circuits[at][room].fixed;
        let least = later + self.ahead.least_of_all((at, room + 1));
        // Each finned length is followed once for each label.
        let mut lengths: Vec<Picometres> = ways.iter().map(|way| way.finned).collect();
        order::sort_by(&mut lengths, Ord::cmp);
        lengths.dedup();
        let place = |way: &Candidate| lengths.partition_point(|&length| length < way.finned);
        let places: Vec<usize> = ways.iter().map(place).collect();
        for (from, label) in labels.iter().enumerate() {
            let stream = Stream { at, room, water_k: label.water_k };
            let needed = known.needed(stream, &hot);
            let mut followed = vec![None; lengths.len()];
            let mut tried = 0;
            for (way, (one, &place)) in ways.iter().zip(&places).enumerate() {
                budget.take(u64::from(way % 8 == 0));
                let rented = label.rented + one.rented;
                if rented + least > self.limit {
                    break;
                }
                let finned = fixed + one.finned;
                if hot.wish != Wish::Weighed && needed.is_none_or(|needed| finned < needed) {
                    continue;
                }
                let Some(used) = self.limits.sum(&label.used, &one.used) else {
                    continue;
                };
                tried += 1;
                if tried > NARROW_WAYS && budget.is_spent() {
                    whole = false;
                    break;
                }
                let (water_k, own, onward) = *followed[place].get_or_insert_with(|| {
                    match known.given(stream, &hot, needed, finned) {
                        None => (0.0, 0, super::model::NEVER),
                        Some((water_k, own)) => {
                            (water_k, own, self.ahead.least(known, (at, room + 1), water_k))
                        }
                    }
                });
                let rented = rented + own;
                let bound = rented + onward + later;
                if bound > self.limit {
                    continue;
                }
                next.push(Label {
                    from: from as u32,
                    way: way as u32,
                    weight: label.weight + one.weight + own,
                    begun: label.begun,
                    rented,
                    bound,
                    water_k,
                    used,
                });
                budget.take(1);
            }
            if budget.is_spent() && next.len() > NARROW * NARROW_WAYS {
                return false;
            }
        }
        whole
    }

    /// Drops labels for which another is no heavier, no cooler and has used no more of anything:
    /// whatever follows the one can follow the other. Where heat counts, see `flow::thinned`: that
    /// holds within a circuit, so what the circuits before weigh must be no more either.
    fn thin(&self, mut labels: Vec<Label>, budget: &mut Budget) -> Vec<Label> {
        order::sort_by(&mut labels, |a, b| {
            let hotter = b.water_k.total_cmp(&a.water_k);
            a.weight.cmp(&b.weight).then(hotter).then(a.used.cmp(&b.used))
        });
        budget.take(labels.len() as u64);
        let mut kept: Vec<Label> = Vec::new();
        for label in labels {
            let beats = |one: &Label| {
                one.water_k >= label.water_k
                    && one.begun <= label.begun
                    && self.limits.no_more(&one.used, &label.used)
            };
            if !kept.iter().rev().take(COMPARED).any(beats) {
                kept.push(label);
            }
        }
        kept
    }
}

fn plan(known: &Known, source: &Source, chosen: &[Layer], best: usize) -> Plan {
    let mut rooms = Vec::new();
    let mut label = best;
    let all: Vec<_> = known.model.circuits.iter().flatten().collect();
    for (room, (ways, labels)) in all.into_iter().zip(chosen).rev() {
        let (from, way) = labels[label];
        rooms.push(source.pieces(room, &ways[way as usize]));
        label = from as usize;
    }
    rooms.into_iter().rev().flatten().collect()
}
