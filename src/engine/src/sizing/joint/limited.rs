//! The choice where some pieces are few.

use super::ahead::Ahead;
use super::answer::{Bound, Found, Plan};
use super::flow::{self, Circuit, Hot, Wish};
use super::known::{Budget, Known};
use super::model::{Model, ModelRoom, NEVER, Weight, metres, microwatts};
use super::rents::{self, Goal, Tables};
use super::room::{Fills, Ways};
use super::search::{Round, Search};
use super::{Objective, Problem, Water, even, leftover, short};

/// First a plan in which only those rooms are short whose runs are; if there is none or the nodes
/// run out before one is met, the one that leaves the least heat missing. `endless` is the best plan
/// without limits.
pub(super) fn best(
    model: &Model,
    water: &dyn Water,
    circuits: &[Circuit],
    endless: Option<(Plan, Weight)>,
    budget: &mut Budget,
) -> Found {
    let hot = circuits.iter().map(|circuit| circuit.hot.clone()).collect();
    let mut known = Known { model, water, hot, plan: None, weight: None };
    let all = model.circuits.iter().flatten().zip(known.hot.iter().flatten());
    let goals: Vec<Goal> = all.map(|(room, hot)| Goal::of(room, hot)).collect();
    if let Some((plan, weight)) = endless
        && rents::is_within(model, &plan)
    {
        return found(&mut known, &goals, (plan, weight), Bound::Weight(weight), budget);
    }
    let mut rooms = model.circuits.iter().flatten().zip(&goals);
    let is_possible = rooms.all(|(room, goal)| short::longest(model, room) >= goal.need);
    if is_possible {
        guided(&mut known, &goals, budget);
        let bound = within(&mut known, &goals, budget);
        if let Some(best) = known.plan.take().zip(known.weight) {
            return found(&mut known, &goals, best, Bound::Weight(bound), budget);
        }
    }
    let is_settled = !is_possible || !budget.is_spent();
    budget.give_half();
    let (hot, goals) = short::weighed(model, water);
    let mut known = Known { model, water, hot, plan: None, weight: None };
    guided(&mut known, &goals, budget);
    let bound = within(&mut known, &goals, budget);
    let bound = if is_settled { Bound::Weight(bound) } else { Bound::Unknown };
    // Room by room of what is left always ends with a plan where rooms may stay short.
    let runs = model.circuits.iter().flatten().map(|room| room.runs.len()).sum();
    let nothing = || vec![vec![0; model.kinds.len()]; runs];
    let best = known.plan.take().zip(known.weight).unwrap_or_else(|| (nothing(), NEVER));
    found(&mut known, &goals, best, bound, budget)
}

fn found(
    known: &mut Known,
    goals: &[Goal],
    (plan, weight): (Plan, Weight),
    bound: Bound,
    budget: &mut Budget,
) -> Found {
    let found = Found { plan, weight, bound };
    match known.model.problem.objective {
        Objective::MostEven => even::best(known, goals, found, budget),
        _ => found,
    }
}

/// Where heat counts, no rent tells which pieces are worth keeping for later rooms, since heat
/// depends on the water. So first the least finned length is sought, at about the heat it gives.
fn guided(known: &mut Known, goals: &[Goal], budget: &mut Budget) {
    let Known { model, water, ref hot, .. } = *known;
    if model.problem.objective != Objective::Closest {
        return;
    }
    let (mut heat_w, mut finned) = (0.0, 0);
    for (at, rooms) in hot.iter().enumerate() {
        for (room, hot) in rooms.iter().enumerate() {
            heat_w += water.after(at, room, hot.water_k, metres(hot.need)).output_w;
            finned += hot.need;
        }
    }
    let per_metre_w = heat_w / metres(finned).max(1e-3);
    let problem = Problem { objective: Objective::LeastCost, ..model.problem.clone() };
    let mut guide = Model { problem: &problem, ..model.clone() };
    for kind in &mut guide.kinds {
        let finned_m = metres(model.finned(kind.length, 1));
        kind.weight += model.scale.objective_of(microwatts(per_metre_w * finned_m));
    }
    let mut found = Known { model: &guide, water, hot: hot.clone(), plan: None, weight: None };
    let mut share = budget.share(2);
    within(&mut found, goals, &mut share);
    budget.take(share.taken());
    if let Some(plan) = found.plan {
        known.meet(&plan);
    }
}

/// The band above the bound that is searched first, as a part of the bound in powers of two.
const FIRST_BAND: u32 = 8;

/// Looks for the best plan; gives what none is lighter than.
fn within(known: &mut Known, goals: &[Goal], budget: &mut Budget) -> Weight {
    let model = known.model;
    let limits = &model.limits;
    leftover::choose(known, &vec![0; model.kinds.len()]);
    let tables = rents::raised(model, goals, known, budget);
    leftover::choose(known, &tables.rents);
    let rented = rented_circuits(known, &tables.fills);
    if let Some((plan, _)) = flow::cheapest(model, known.water, &tables.fills, &rented) {
        known.meet(&plan);
    }
    let ahead = Ahead::of(known, &rented, &tables.rooms);
    let start = |at| ahead.least(known, (at, 0), known.water.enters_k(at));
    let mut bound = (0..rented.len()).map(start).sum::<Weight>() - tables.rent;
    let most = most(known, &tables);
    let objective = model.scale.objective_and_less(bound).max(1 << FIRST_BAND);
    let mut band = objective >> FIRST_BAND;
    while !budget.is_spent() && !is_proven(known, bound) {
        let limit = known.weight.map_or(most, |weight| weight - 1);
        let limit = limit.min(bound.saturating_add(band));
        let search = Search { limits, tables: &tables, goals, ahead: &ahead, limit };
        let round = search.run(known, budget);
        if round == Round::Whole {
            bound = match known.weight {
                Some(weight) if weight <= limit => weight,
                _ => limit + 1,
            };
            if limit >= most {
                break;
            }
        }
        // Beyond twice the objective only what counts before it is left.
        band = band.saturating_mul(if band < objective { 4 } else { 1 << 12 });
    }
    if known.plan.is_none() && bound <= most {
        // A last look, narrow, for something to show.
        Search { limits, tables: &tables, goals, ahead: &ahead, limit: most }.run(known, budget);
    }
    bound
}

/// For the even choice only what counts before it is sought here.
fn is_proven(known: &Known, bound: Weight) -> bool {
    let is_enough = |weight| match known.model.problem.objective {
        Objective::MostEven => {
            let scale = &known.model.scale;
            scale.before_objective(bound) >= scale.before_objective(weight)
        }
        _ => bound >= weight,
    };
    known.weight.is_some_and(is_enough)
}

/// No plan weighs more, with rents.
fn most(known: &Known, tables: &Tables) -> Weight {
    let Known { model, water, .. } = known;
    let kinds = || tables.fills.kinds.iter();
    let shortest = kinds().map(|kind| kind.length).min().unwrap_or(1);
    let heaviest = kinds().map(|kind| kind.weight).max().unwrap_or(0);
    let mut most: Weight = 0;
    for (at, rooms) in model.circuits.iter().enumerate() {
        for (room, (one, hot)) in rooms.iter().zip(&known.hot[at]).enumerate() {
            for run in &one.runs {
                most += run.opening + Weight::from(run.hold / shortest) * heaviest;
            }
            let holds: u32 = one.runs.iter().map(|run| run.hold).sum();
            let finned = one.fixed + model.finned(holds, 0);
            let output_w = water.after(at, room, hot.water_k, metres(finned)).output_w;
            most += flow::heat(model, output_w);
            if hot.wish == Wish::Weighed {
                most += model.scale.short(microwatts(water.load_w(at, room)).max(0) + 1);
            }
        }
    }
    most
}

fn rented_circuits(known: &Known, fills: &Fills) -> Vec<Circuit> {
    let circuits = known.model.circuits.iter().zip(&known.hot);
    let circuit = |(rooms, hot): (&Vec<ModelRoom>, &Vec<Hot>)| Circuit {
        ways: rooms.iter().map(|room| Ways::of(known.model, room, fills)).collect(),
        hot: hot.clone(),
    };
    circuits.map(circuit).collect()
}
