//! Rents for limited pieces: what a piece costs on top (a Lagrangian multiplier). With rents instead
//! of limits the least weight of all rooms is a lower bound for every choice within the limits.

use super::answer::Plan;
use super::flow::{Hot, Wish};
use super::known::{Budget, Known};
use super::model::{Kind, Model, ModelRoom, NEVER, Picometres, Weight};
use super::room::{Cell, Fills};
use crate::order;

/// A finned length with the least weight of a way to it; in a list both rise.
#[derive(Debug, Clone, Copy)]
pub(super) struct Point {
    pub finned: Picometres,
    pub weight: Weight,
}

/// The weights of all rooms at the hottest water that can reach each, with rents.
#[derive(Debug)]
pub(super) struct Tables {
    /// By kind.
    pub rents: Vec<Weight>,
    pub fills: Fills,
    /// By room and run: the least weight of this run and those after, by the new finned length that
    /// they reach. The list after the last run tells what staying short weighs.
    pub rest: Vec<Vec<Vec<Point>>>,
    /// By room: its least weight.
    pub rooms: Vec<Weight>,
    /// The rents of everything limited.
    pub rent: Weight,
    /// No choice weighs less.
    pub bound: Weight,
}

/// What a room wants of new pieces at the hottest water, and what staying short of it weighs.
#[derive(Debug, Clone)]
pub(super) struct Goal {
    pub need: Picometres,
    pub short: Vec<Point>,
}

impl Goal {
    /// Where nothing may stay short.
    pub(super) fn of(room: &ModelRoom, hot: &Hot) -> Goal {
        let need = match hot.wish {
            Wish::Nothing => 0,
            _ => (hot.need - room.fixed).max(0),
        };
        Goal { need, short: vec![Point { finned: 0, weight: 0 }] }
    }
}

/// The least weight that reaches `need`.
pub(super) fn reach(points: &[Point], need: Picometres) -> Weight {
    let place = points.partition_point(|point| point.finned < need);
    points.get(place).map_or(NEVER, |point| point.weight)
}

impl Tables {
    pub(super) fn of(model: &Model, goals: &[Goal], rents: Vec<Weight>) -> Tables {
        let rented = |kind: &Kind| Kind { weight: kind.weight + rents[kind.place], ..kind.clone() };
        let rented: Vec<Kind> = model.kinds.iter().map(rented).collect();
        let fills = Fills::of(model, &rented);
        let mut longest_first = fills.cells.clone();
        order::sort_by_key(&mut longest_first, |cell| -model.finned(cell.sum, cell.count));
        let mut rest = Vec::new();
        let mut rooms = Vec::new();
        for (room, goal) in model.circuits.iter().flatten().zip(goals) {
            let mut lists = vec![goal.short.clone()];
            for run in room.runs.iter().rev() {
                let after = &lists[lists.len() - 1];
                let mut sums: Vec<Point> = after.clone();
                let mut least = NEVER;
                for cell in longest_first.iter().filter(|cell| cell.sum <= run.hold) {
                    if cell.weight >= least {
                        continue;
                    }
                    least = cell.weight;
                    let finned = model.finned(cell.sum, cell.count);
                    for point in after {
                        let finned = (finned + point.finned).min(goal.need);
                        let weight = cell.weight + run.opening + point.weight;
                        sums.push(Point { finned, weight });
                        if finned == goal.need {
                            break;
                        }
                    }
                }
                lists.push(rising(sums));
            }
            lists.reverse();
            rooms.push(reach(&lists[0], goal.need));
            rest.push(lists);
        }
        let rent = model.kinds.iter().zip(&rents);
        let rent = rent.map(|(kind, rent)| rent * Weight::from(kind.limit.unwrap_or(0))).sum();
        let sum: Weight = rooms.iter().fold(0, |sum: Weight, room| (sum + room).min(NEVER));
        let bound = if sum >= NEVER { NEVER } else { sum - rent };
        Tables { rents, fills, rest, rooms, rent, bound }
    }

    /// The best plan with these rents and no limits, as if the hottest water reached every room.
    fn relaxed(&self, model: &Model, goals: &[Goal]) -> Plan {
        let mut plan = Plan::new();
        for ((room, goal), rest) in model.circuits.iter().flatten().zip(goals).zip(&self.rest) {
            let mut need = goal.need;
            for (run, places) in room.runs.iter().zip(rest.windows(2)) {
                let least = reach(&places[0], need);
                let after = |cell: &Cell| {
                    let finned = model.finned(cell.sum, cell.count);
                    cell.weight + run.opening + reach(&places[1], need - finned)
                };
                let mut counts = vec![0; model.kinds.len()];
                let cells = self.fills.within(run.hold).iter().rev();
                if let Some(cell) = cells.into_iter().find(|cell| after(cell) == least) {
                    self.fills.count(cell, &mut counts);
                    need -= model.finned(cell.sum, cell.count);
                }
                plan.push(counts);
            }
        }
        plan
    }
}

/// Whether a plan uses no more than is there.
pub(super) fn is_within(model: &Model, plan: &Plan) -> bool {
    let used = totals(model, plan);
    model.kinds.iter().zip(used).all(|(kind, used)| kind.limit.is_none_or(|most| used <= most))
}

/// How many of each kind a plan uses.
pub(super) fn totals(model: &Model, plan: &Plan) -> Vec<u32> {
    let mut used = vec![0; model.kinds.len()];
    for counts in plan {
        for (sum, &count) in used.iter_mut().zip(counts) {
            *sum += u32::from(count);
        }
    }
    used
}

/// The points that no longer one is as light as.
pub(super) fn rising(mut points: Vec<Point>) -> Vec<Point> {
    order::sort_by(&mut points, |a, b| b.finned.cmp(&a.finned).then(a.weight.cmp(&b.weight)));
    let mut least = NEVER;
    points.retain(|point| {
        let keeps = point.weight < least;
        least = least.min(point.weight);
        keeps
    });
    points.reverse();
    points
}

/// Rounds of raising the rents: beyond these the bound hardly moves (measured on random houses).
const ROUNDS: usize = 20;

/// Raises the rents where more is used than is there, and lowers them where less is, as long as
/// that raises the bound (Held, Wolfe and Crowder's subgradient method, 1974, from memory).
pub(super) fn raised(
    model: &Model,
    goals: &[Goal],
    known: &mut Known,
    budget: &mut Budget,
) -> Tables {
    let mut best = Tables::of(model, goals, vec![0; model.kinds.len()]);
    let mut rents = best.rents.clone();
    let mut bound = best.bound;
    let mut plan = best.relaxed(model, goals);
    // The step's share of the whole way to the goal.
    let (mut step, mut idle) = (1.0, 0);
    for _ in 0..ROUNDS {
        if is_within(model, &plan) {
            known.meet(&plan);
        }
        let used = totals(model, &plan);
        let over = |kind: &Kind| {
            let over =
                kind.limit.map_or(0.0, |limit| f64::from(used[kind.place]) - f64::from(limit));
            // What is free already cannot get cheaper.
            if rents[kind.place] == 0 { over.max(0.0) } else { over }
        };
        let over: Vec<f64> = model.kinds.iter().map(over).collect();
        let square: f64 = over.iter().map(|over| over * over).sum();
        let way = known.weight.map_or((best.bound >> 5) + 1, |weight| weight - bound);
        if square == 0.0 || way <= 0 || budget.is_spent() {
            break;
        }
        let way = model.scale.apart(way) as f64 * step;
        for (rent, over) in rents.iter_mut().zip(&over) {
            *rent = (*rent + (way * over / square) as Weight).clamp(0, NEVER >> 16);
        }
        let here = Tables::of(model, goals, rents.clone());
        budget.take(1 + goals.len() as u64);
        (bound, plan) = (here.bound, here.relaxed(model, goals));
        if here.bound > best.bound {
            (best, idle) = (here, 0);
        } else {
            idle += 1;
            if idle == 3 {
                (idle, step) = (0, step / 2.0);
                rents.clone_from(&best.rents);
                bound = best.bound;
                plan = best.relaxed(model, goals);
            }
        }
    }
    best
}
