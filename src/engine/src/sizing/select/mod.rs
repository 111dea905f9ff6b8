//! The exact choice of stock pieces: rooms with segments of wall, each room with a least total
//! length, stock with prices and perhaps a limited number of each, shared by all rooms.
//!
//! Whole sixteenths of an inch and whole cents, so that an answer is exact and the same everywhere.
//!
//! Without limits on the stock the rooms do not touch each other, and dynamic programming over the
//! lengths of a segment, then over the segments of a room, ends it. A limit is first relaxed: each
//! piece of it costs a rent more (a Lagrangian multiplier), which gives a lower bound for every
//! part of a choice; then states of (length still wanted, pieces used) go from segment to segment,
//! those that the bound or another state beats are dropped, and what is left is the optimum.

mod bound;
mod fills;
mod model;
mod search;

use bound::Tables;
use model::{Counts, MAKES, Model};
use search::{Budget, Round, Search};

/// A length that can be bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stock {
    pub length_sixteenths: u32,
    /// All lengths have a price or none has. Without, the fewest pieces are chosen, and of these
    /// the least total length.
    pub price_cents: Option<u32>,
    /// How many there are for all rooms together; `None` is as many as wanted.
    pub available: Option<u32>,
}

/// A room: what each segment of its walls holds, and the least sum of its pieces' lengths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Room {
    pub segments_sixteenths: Vec<u32>,
    pub need_sixteenths: u32,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    pub rooms: Vec<Room>,
    pub stock: Vec<Stock>,
    /// What each piece costs beyond its price: coupling, solder, time. Unused without prices.
    pub joint_cents: u32,
}

/// Pieces for every segment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Selection {
    /// By room and segment as typed: the pieces' lengths, longest first.
    pub pieces_sixteenths: Vec<Vec<Vec<u32>>>,
    /// By stock as typed: how many are used.
    pub used: Vec<u32>,
    /// Prices and joints; `None` without prices.
    pub cost_cents: Option<u64>,
    pub pieces: u32,
    pub length_sixteenths: u64,
}

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// No selection is better. Of equal cost it has the fewest pieces, then the earlier segments
    /// fuller, then the longer pieces on them; of rooms the one that needs more comes first, then
    /// the one whose first unequal segment is longer, so that the order typed does not matter.
    Optimal(Selection),
    /// The nodes ran out. `bound` is what no selection can be below, in cents, or in pieces where
    /// there are no prices; a `best` that costs this costs the least, though one before it in the
    /// order may cost the same. `best` is `None` when no selection was met: there may be one.
    Stopped { best: Option<Selection>, bound: u64 },
    /// No selection meets every room. This room, by its place as typed, is the first that cannot
    /// be met together with all before it; with those met it stays short by this, at the least.
    Infeasible { room: usize, short_sixteenths: u32 },
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    pub outcome: Outcome,
    /// States and parts of states looked at; none where no limit on stock was felt.
    pub nodes: u64,
}

/// Why a problem is not one. Places are those of the lists as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SelectError {
    NoStock,
    NoRooms,
    NoSegments {
        room: usize,
    },
    NoNeed {
        room: usize,
    },
    /// A stock length of nothing.
    NoLength {
        stock: usize,
    },
    /// A stock length that is in the list before.
    Repeated {
        stock: usize,
    },
    /// This length has no price though another has.
    NoPrice {
        stock: usize,
    },
    /// Every stock length is longer than every segment.
    NoneFits,
    /// More than [`model::MOST_STOCK`] lengths, or numbers beyond any house.
    TooLarge,
}

/// Nodes that are plenty for a house, and take well below a second.
pub const NODES: u64 = 200_000;

/// Chooses pieces so that each room's sum reaches its need, at the least cost.
///
/// `nodes` bounds the search where stock is limited; the time without is that of the dynamic
/// programmes. With lengths in units of the stock's common divisor these take (stock x longest
/// segment) + sum over segments of (segment x need); a node takes (stock) at most.
pub fn select(problem: &Problem, nodes: u64) -> Result<Answer, SelectError> {
    model::check(problem)?;
    let mut budget = Budget::of(nodes);
    let outcome = match Model::of(problem) {
        None => first_short(problem, &mut budget),
        Some(model) => match optimum(&model, &mut budget) {
            Best::Proven(plan, _) => Outcome::Optimal(model.selection(problem, &plan)),
            Best::Impossible => first_short(problem, &mut budget),
            Best::Stopped { plan, bound } => Outcome::Stopped {
                best: plan.map(|plan| model.selection(problem, &plan)),
                bound: model.shown(bound),
            },
        },
    };
    Ok(Answer { outcome, nodes: budget.spent() })
}

/// Pieces by segment in the model's order.
type Plan = Vec<Counts>;

/// What became of a model, in its own weights.
enum Best {
    Proven(Plan, i64),
    Stopped { plan: Option<Plan>, bound: i64 },
    Impossible,
}

fn optimum(model: &Model, budget: &mut Budget) -> Best {
    let free = Tables::of(model, &[0; model::MOST_STOCK]);
    if free.bound >= MAKES || model.is_short() {
        return Best::Impossible;
    }
    let plan = free.relaxed(model);
    if model.allowed(&plan) {
        return Best::Proven(plan, free.bound);
    }
    let (tables, mut known) = bound::raised(model, free, budget);
    let mut bound = tables.bound;
    // The band above the bound that is searched grows until the optimum lies in it: its states are
    // few as long as it is narrow.
    let mut band = (bound >> 6).max(model.whole);
    while !budget.is_spent() {
        let limit = known.as_ref().map_or(i64::MAX, |&(_, weight)| weight);
        let limit = limit.min(tables.bound.saturating_add(band)).min(model.most(&tables));
        match Search::new(model, &tables, limit).run(budget) {
            Round::Whole(Some((plan, weight))) if weight <= limit => {
                return Best::Proven(plan, weight);
            }
            Round::Whole(found) => {
                if limit >= model.most(&tables) && found.is_none() && known.is_none() {
                    return Best::Impossible;
                }
                bound = bound.max(limit.saturating_add(1));
                lighter(&mut known, found);
            }
            Round::Part(found) => lighter(&mut known, found),
        }
        band = band.saturating_mul(4);
    }
    // A last look, narrow, for something to show: near the bound first, then wherever.
    for limit in [bound.saturating_add(bound >> 2), model.most(&tables)] {
        if known.is_none() {
            let (Round::Whole(found) | Round::Part(found)) =
                Search::new(model, &tables, limit).run(budget);
            lighter(&mut known, found);
        }
    }
    Best::Stopped { plan: known.map(|(plan, _)| plan), bound }
}

fn lighter(known: &mut Option<(Plan, i64)>, found: Option<(Plan, i64)>) {
    if let Some((plan, weight)) = found
        && known.as_ref().is_none_or(|&(_, before)| weight < before)
    {
        *known = Some((plan, weight));
    }
}

/// The first room that cannot be met together with those before it.
fn first_short(problem: &Problem, budget: &mut Budget) -> Outcome {
    for room in 0..problem.rooms.len() {
        let need = problem.rooms[room].need_sixteenths;
        let Some(model) = Model::of_shortage(problem, room) else {
            return Outcome::Infeasible { room, short_sixteenths: need };
        };
        match optimum(&model, budget) {
            Best::Proven(_, weight) => match model.short(need, weight) {
                0 => {}
                short_sixteenths => return Outcome::Infeasible { room, short_sixteenths },
            },
            Best::Stopped { .. } | Best::Impossible => break,
        }
    }
    Outcome::Stopped { best: None, bound: 0 }
}
