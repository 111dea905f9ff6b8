//! The problem without limits on the stock, and the rents that make its answer a bound.

use super::Plan;
use super::model::{Counts, Kind, MAKES, MOST_STOCK, Model, SHORT, totals};
use super::search::Budget;

/// A rent for each kind: what a limited piece costs on top.
pub(super) type Rents = [i64; MOST_STOCK];

/// A length with the least weight of a way to it; in a list both rise.
#[derive(Debug, Clone, Copy)]
pub(super) struct Point {
    pub length: u32,
    pub weight: i64,
}

/// Weights with rents; rents for what is there are taken off in the end.
#[derive(Debug, Clone)]
pub(super) struct Tables {
    pub rents: Rents,
    rented: Vec<Piece>,
    /// The least weight of pieces with exactly this sum.
    pub exact: Vec<i64>,
    /// By what a segment holds: the lengths that no longer one beats.
    pub fills: Vec<Vec<Point>>,
    /// By room and segment: the least weight of this segment and those after, by what they reach.
    /// The list after a room's last segment tells what staying short weighs.
    pub rest: Vec<Vec<Vec<Point>>>,
    /// By room: the least weight of all rooms after it.
    pub later: Vec<i64>,
    /// The rents of everything limited.
    pub rent: i64,
    /// No selection weighs less. At least `MAKES` where a room cannot be met.
    pub bound: i64,
}

/// The least weight that reaches `need`.
pub(super) fn reach(points: &[Point], need: u32) -> i64 {
    let place = points.partition_point(|point| point.length < need);
    points.get(place).map_or(MAKES, |point| point.weight)
}

impl Tables {
    pub(super) fn of(model: &Model, rents: &Rents) -> Tables {
        let longest = model.holds.iter().copied().max().unwrap_or(0);
        let rented = rented(model, rents);
        let exact = exact(&rented, longest);
        let fills: Vec<Vec<Point>> =
            model.holds.iter().map(|&hold| rising(&exact[..=hold as usize])).collect();
        let mut rest = Vec::with_capacity(model.rooms.len());
        for room in &model.rooms {
            let end = if room.soft { room.need } else { 0 };
            let end =
                (0..=end).map(|short| Point { length: short, weight: SHORT * i64::from(short) });
            let mut lists = vec![end.collect::<Vec<Point>>()];
            let mut sums = vec![MAKES; room.need as usize + 1];
            for &segment in room.segments.iter().rev() {
                let before = added(&fills[segment], &lists[lists.len() - 1], &mut sums);
                lists.push(before);
            }
            lists.reverse();
            rest.push(lists);
        }
        let mut later = vec![0; model.rooms.len()];
        let mut sum: i64 = 0;
        for (at, room) in model.rooms.iter().enumerate().rev() {
            later[at] = sum;
            sum = sum.saturating_add(reach(&rest[at][0], room.need)).min(MAKES);
        }
        let rent = model.kinds.iter().zip(rents);
        let rent = rent.map(|(kind, rent)| rent * i64::from(kind.limit.unwrap_or(0))).sum();
        let bound = if sum >= MAKES { MAKES } else { sum - rent };
        Tables { rents: *rents, rented, exact, fills, rest, later, rent, bound }
    }

    /// The best plan with these rents and no limits: earlier segments fuller, longer pieces.
    pub(super) fn relaxed(&self, model: &Model) -> Plan {
        let mut plan = Vec::new();
        for (room, rest) in model.rooms.iter().zip(&self.rest) {
            let mut need = room.need;
            for (place, &segment) in room.segments.iter().enumerate() {
                let least = reach(&rest[place], need);
                let after = |length: u32| reach(&rest[place + 1], need.saturating_sub(length));
                let best = self.fills[segment].iter().rev();
                let best = best.copied().find(|point| point.weight + after(point.length) == least);
                let length = best.map_or(0, |point| point.length);
                plan.push(pieces(&self.rented, &self.exact, length));
                need = need.saturating_sub(length);
            }
        }
        plan
    }

    /// What the rents make of a number of pieces.
    pub(super) fn rent_of(&self, used: &Counts) -> i64 {
        used.iter().zip(&self.rents).map(|(&used, rent)| i64::from(used) * rent).sum()
    }
}

/// A piece as the tables take it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    /// Its place among the model's kinds.
    kind: usize,
    length: u32,
    /// With its rent.
    weight: i64,
}

/// All kinds, longest first, with their rents.
fn rented(model: &Model, rents: &Rents) -> Vec<Piece> {
    let piece = |(kind, (one, rent)): (usize, (&Kind, &i64))| Piece {
        kind,
        length: one.length,
        weight: one.weight + rent,
    };
    model.kinds.iter().zip(rents).enumerate().map(piece).collect()
}

/// The kinds without a limit, longest first.
pub(super) fn free_pieces(model: &Model) -> Vec<Piece> {
    let mut pieces = rented(model, &[0; MOST_STOCK]);
    pieces.retain(|piece| model.kinds[piece.kind].limit.is_none());
    pieces
}

/// The least weight of pieces with each sum up to `longest`.
pub(super) fn exact(kinds: &[Piece], longest: u32) -> Vec<i64> {
    let mut exact = vec![MAKES; longest as usize + 1];
    exact[0] = 0;
    for piece in kinds {
        let length = piece.length as usize;
        for sum in length..exact.len() {
            exact[sum] = exact[sum].min(exact[sum - length] + piece.weight);
        }
    }
    exact
}

/// The pieces behind a sum of `exact`, longest first. The sum is one that can be made.
pub(super) fn pieces(kinds: &[Piece], exact: &[i64], length: u32) -> Counts {
    let mut counts = [0; MOST_STOCK];
    let mut left = length as usize;
    for piece in kinds {
        let length = piece.length as usize;
        while length <= left && exact[left - length] + piece.weight == exact[left] {
            left -= length;
            counts[piece.kind] += 1;
        }
    }
    counts
}

/// Of a table by length the points that no longer one beats.
fn rising(table: &[i64]) -> Vec<Point> {
    let mut points = Vec::new();
    let mut least = MAKES;
    for (length, &weight) in table.iter().enumerate().rev() {
        if weight < least {
            least = weight;
            points.push(Point { length: length as u32, weight });
        }
    }
    points.reverse();
    points
}

/// One segment more before `rest`; `sums` is scratch as long as the need, plus one.
fn added(fills: &[Point], rest: &[Point], sums: &mut [i64]) -> Vec<Point> {
    sums.fill(MAKES);
    let need = sums.len() - 1;
    for fill in fills {
        for after in rest {
            let sum = (fill.length + after.length) as usize;
            let place = sum.min(need);
            sums[place] = sums[place].min(fill.weight + after.weight);
            // What is longer still only weighs more.
            if sum >= need {
                break;
            }
        }
    }
    rising(sums)
}

/// Rounds of raising the rents: beyond these the bound hardly moves (measured on random problems).
const ROUNDS: usize = 15;
/// Four times the heaviest piece, so that no sum of rents reaches `MAKES`.
const HIGHEST_RENT: i64 = 1 << 38;

/// Raises the rents where more is used than is there, and lowers them where less is, as long as
/// that raises the bound (Held, Wolfe and Crowder's subgradient method, 1974, from memory). Returns
/// the highest bound's tables and the lightest plan met that is allowed.
pub(super) fn raised(
    model: &Model,
    free: Tables,
    budget: &mut Budget,
) -> (Tables, Option<(Plan, i64)>) {
    let mut known: Option<(Plan, i64)> = None;
    let mut best = free.clone();
    let mut here = free;
    // The step in sixteenths of the whole way to the goal.
    let (mut step, mut idle) = (16_i64, 0);
    for _ in 0..ROUNDS {
        let plan = here.relaxed(model);
        if model.allowed(&plan) {
            let weight = here.bound + here.rent - charged(&here, &plan);
            super::lighter(&mut known, Some((plan.clone(), weight)));
        }
        let used = totals(&plan);
        let excess = |at: usize, kind: &Kind| {
            kind.limit.map_or(0, |limit| i64::from(used[at]) - i64::from(limit))
        };
        let over: Vec<i64> = model.kinds.iter().enumerate().map(|(at, k)| excess(at, k)).collect();
        // What is free already cannot get cheaper.
        let moves = |at: usize| if here.rents[at] == 0 { over[at].max(0) } else { over[at] };
        let square: i64 = (0..over.len()).map(|at| moves(at) * moves(at)).sum();
        let goal = known.as_ref().map_or(best.bound + (best.bound >> 5) + 2, |&(_, weight)| weight);
        let way = (goal - here.bound).max(0);
        if square == 0 || way == 0 || budget.is_spent() {
            break;
        }
        let mut rents = here.rents;
        for (at, rent) in rents.iter_mut().enumerate().take(over.len()) {
            let change = (i128::from(way) * i128::from(step * moves(at))) / i128::from(16 * square);
            *rent = (*rent + change as i64).clamp(0, HIGHEST_RENT);
        }
        here = Tables::of(model, &rents);
        budget.take(1 + here.exact.len() as u64 / 64);
        if here.bound > best.bound {
            best = here.clone();
            idle = 0;
        } else {
            idle += 1;
            if idle == 3 {
                idle = 0;
                step /= 2;
                here = best.clone();
            }
        }
        if step == 0 {
            break;
        }
    }
    (best, known)
}

/// The rents of a plan.
fn charged(tables: &Tables, plan: &[Counts]) -> i64 {
    plan.iter().map(|counts| tables.rent_of(counts)).sum()
}
