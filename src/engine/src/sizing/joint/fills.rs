//! The ways to give one room its pieces where some are few.

use super::known::Budget;
use super::limits::{Limits, Used};
use super::model::{Kind, Model, ModelRoom, Picometres, Weight};
use super::rents::{Goal, Point, Tables, reach};
use super::room::Fills;
use crate::order;

/// One way to fill a run, or a room.
#[derive(Debug, Clone)]
pub(super) struct Candidate {
    /// Of the new pieces.
    pub finned: Picometres,
    pub weight: Weight,
    /// With rents.
    pub rented: Weight,
    pub used: Used,
    /// By run: the place of its way in the list of what fills it; of a run's way nothing.
    pub runs: Vec<u32>,
}

impl Candidate {
    pub(super) const NOTHING: Candidate =
        Candidate { finned: 0, weight: 0, rented: 0, used: Used::NONE, runs: Vec::new() };
}

/// The ways to fill a run that holds so much, the lightest first with rents.
#[derive(Debug)]
pub(super) struct RunFills {
    hold: u32,
    list: Vec<Candidate>,
    counts: Vec<Vec<u16>>,
}

/// What all rooms' ways are made from.
#[derive(Debug)]
pub(super) struct Source<'a> {
    pub model: &'a Model<'a>,
    pub limits: &'a Limits,
    pub tables: &'a Tables,
    /// The kinds without limits, by themselves.
    free: Fills,
    runs: Vec<RunFills>,
}

/// When the nodes are spent, ways are looked for in so many steps.
const NARROW_STEPS: u64 = 1024;
/// Each way is compared with so many lighter ones (judgement: more take longer than they spare).
pub(super) const COMPARED: usize = 128;

impl<'a> Source<'a> {
    pub(super) fn of(model: &'a Model, limits: &'a Limits, tables: &'a Tables) -> Source<'a> {
        let free: Vec<Kind> =
            model.kinds.iter().filter(|kind| kind.limit.is_none()).cloned().collect();
        Source { model, limits, tables, free: Fills::of(model, &free), runs: Vec::new() }
    }

    /// The pieces of a room's way, by run.
    pub(super) fn pieces(&self, room: &ModelRoom, way: &Candidate) -> Vec<Vec<u16>> {
        let of_run = |(at, run): (usize, &super::model::ModelRun)| {
            let fills = self.runs.iter().find(|fills| fills.hold == run.hold)?;
            fills.counts.get(*way.runs.get(at)? as usize).cloned()
        };
        let nothing = || vec![0; self.model.kinds.len()];
        let runs = room.runs.iter().enumerate();
        runs.map(|run| of_run(run).unwrap_or_else(nothing)).collect()
    }

    /// The ways to fill runs that hold `hold`: of the limited kinds any numbers, of the rest the
    /// lightest. Left out are those that weigh more than `over` above the lightest of their sum: so
    /// much more weighs every choice with them. Also whether all were looked at.
    fn run(&mut self, hold: u32, over: Weight, budget: &mut Budget) -> (usize, bool) {
        if let Some(place) = self.runs.iter().position(|fills| fills.hold == hold) {
            return (place, true);
        }
        let nothing = Part { sum: 0, count: 0, weight: 0, rented: 0, used: Used::NONE };
        let counts = vec![0; self.model.kinds.len()];
        let mut search =
            Filling { source: self, hold, over, steps: 0, whole: true, found: Vec::new(), counts };
        search.from(0, &nothing, budget);
        let Filling { mut found, whole, .. } = search;
        order::sort_by_key(&mut found, |(way, _)| way.rented);
        let (list, counts) = found.into_iter().unzip();
        self.runs.push(RunFills { hold, list, counts });
        (self.runs.len() - 1, whole)
    }

    /// The ways to fill a room, the lightest first with rents, whose weight with that of the rest of
    /// the house, `base`, is no more than `limit`. Also whether all were looked at.
    pub(super) fn room(
        &mut self,
        (room, goal, rest): (&ModelRoom, &Goal, &[Vec<Point>]),
        Bounds { base, limit, over, most_need, is_last }: Bounds,
        budget: &mut Budget,
    ) -> (Vec<Candidate>, bool) {
        let mut whole = true;
        let mut partial = vec![Candidate::NOTHING];
        for (run, rest) in room.runs.iter().zip(rest.iter().skip(1)) {
            let (place, all) = self.run(run.hold, over, budget);
            whole &= all;
            let mut next = Vec::new();
            for before in &partial {
                for (fill, one) in self.runs[place].list.iter().enumerate() {
                    let opening = if one.finned == 0 { 0 } else { run.opening };
                    let rented = before.rented + one.rented + opening;
                    if base + rented > limit {
                        break;
                    }
                    let finned = before.finned + one.finned;
                    if base + rented + reach(rest, goal.need - finned) > limit {
                        continue;
                    }
                    let Some(used) = self.limits.sum(&before.used, &one.used) else {
                        continue;
                    };
                    let mut runs = before.runs.clone();
                    runs.push(fill as u32);
                    let weight = before.weight + one.weight + opening;
                    next.push(Candidate { finned, weight, rented, used, runs });
                }
                budget.take(1 + self.runs[place].list.len() as u64 / 8);
                if budget.is_spent() && next.len() as u64 > NARROW_STEPS {
                    whole = false;
                    break;
                }
            }
            budget.take(next.len() as u64);
            partial = self.thin(next, most_need, false);
        }
        (self.thin(partial, most_need, is_last), whole)
    }

    /// Without the ways for which another weighs no more, uses no more of anything and is as long,
    /// or longer than any need where what follows does not ask how long. Lightest first with rents.
    fn thin(
        &self,
        mut ways: Vec<Candidate>,
        most_need: Picometres,
        is_last: bool,
    ) -> Vec<Candidate> {
        order::sort_by(&mut ways, |a, b| {
            let order = a.finned.cmp(&b.finned).then(a.weight.cmp(&b.weight));
            order.then(a.used.cmp(&b.used))
        });
        let mut ways = self.kept(ways, |one, way| one.finned == way.finned);
        order::sort_by_key(&mut ways, |way| way.weight);
        let mut ways = self.kept(ways, |one, way| {
            (is_last && one.finned >= way.finned.min(most_need))
                || (one.finned >= most_need && one.finned <= way.finned)
        });
        order::sort_by_key(&mut ways, |way| way.rented);
        ways
    }

    /// Without the ways for which another before it does, and uses no more of anything.
    fn kept(
        &self,
        ways: Vec<Candidate>,
        does: impl Fn(&Candidate, &Candidate) -> bool,
    ) -> Vec<Candidate> {
        let mut kept: Vec<Candidate> = Vec::new();
        for way in ways {
            let beats =
                |one: &Candidate| does(one, &way) && self.limits.no_more(&one.used, &way.used);
            if !kept.iter().rev().take(COMPARED).any(beats) {
                kept.push(way);
            }
        }
        kept
    }
}

/// What bounds the ways of a room.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    /// What all else weighs at the least.
    pub base: Weight,
    pub limit: Weight,
    /// The limit above what everything weighs at the least.
    pub over: Weight,
    /// No new finned length above this is needed, in any water.
    pub most_need: Picometres,
    /// Whether nothing follows that asks how long its finned length is.
    pub is_last: bool,
}

/// A run filled in part.
#[derive(Debug, Clone, Copy)]
struct Part {
    sum: u32,
    /// As the tables count.
    count: u32,
    weight: Weight,
    rented: Weight,
    used: Used,
}

struct Filling<'a, 'b> {
    source: &'b Source<'a>,
    hold: u32,
    over: Weight,
    steps: u64,
    whole: bool,
    found: Vec<(Candidate, Vec<u16>)>,
    counts: Vec<u16>,
}

impl Filling<'_, '_> {
    /// Goes on from numbers of the kinds before `kind`.
    fn from(&mut self, kind: usize, part: &Part, budget: &mut Budget) {
        let Source { model, limits, tables, .. } = *self.source;
        self.steps += 1;
        budget.take(u64::from(self.steps.is_multiple_of(4)));
        if budget.is_spent() && self.steps > NARROW_STEPS {
            self.whole = false;
            return;
        }
        let lightest = (0..=part.count).map(|count| tables.fills.weight(part.sum, count)).min();
        if lightest.is_some_and(|lightest| part.rented - lightest > self.over) {
            return;
        }
        let Some(one) = model.kinds.get(kind) else {
            return self.end(part);
        };
        // Longer pieces first: what comes first is what there is when the nodes are spent.
        if one.limit.is_some()
            && part.sum + one.length <= self.hold
            && let Some(used) = limits.sum(&part.used, &limits.piece(kind))
        {
            let more = Part {
                sum: part.sum + one.length,
                count: part.count + u32::from(model.bare > 0),
                weight: part.weight + one.weight,
                rented: part.rented + one.weight + tables.rents[kind],
                used,
            };
            self.counts[kind] += 1;
            self.from(kind, &more, budget);
            self.counts[kind] -= 1;
        }
        self.from(kind + 1, part, budget);
    }

    /// Limited pieces with every way to fill the rest.
    fn end(&mut self, part: &Part) {
        let Source { model, tables, free, .. } = self.source;
        let nothing = super::room::Cell { sum: 0, count: 0, weight: 0 };
        let cells = free.within(self.hold - part.sum).iter();
        for cell in std::iter::once(&nothing).chain(cells) {
            let (sum, count) = (part.sum + cell.sum, part.count + cell.count);
            let rented = part.rented + cell.weight;
            let lightest = (0..=count).map(|count| tables.fills.weight(sum, count)).min();
            if lightest.is_some_and(|lightest| rented - lightest > self.over) {
                continue;
            }
            let mut counts = self.counts.clone();
            free.count(cell, &mut counts);
            let candidate = Candidate {
                finned: model.finned(sum, count),
                weight: part.weight + cell.weight,
                rented,
                used: part.used,
                runs: Vec::new(),
            };
            self.found.push((candidate, counts));
        }
    }
}
