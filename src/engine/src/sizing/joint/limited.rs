//! The choice where some pieces are few.

use super::Water;
use super::ahead::Ahead;
use super::answer::{Bound, Found};
use super::flow::{self, Circuit, Hot, Wish};
use super::known::{Budget, Known};
use super::leftover;
use super::limits::Limits;
use super::model::{Model, ModelRoom, NEVER, Weight, least, metres, microwatts};
use super::rents::{self, Goal, Point, Tables};
use super::room::{Fills, Ways};
use super::search::{Round, Search};

/// First a plan in which only those rooms are short whose runs are; if there is none or the nodes
/// run out before one is met, the one that leaves the least heat missing.
pub(super) fn best(
    model: &Model,
    water: &dyn Water,
    circuits: &[Circuit],
    budget: &mut Budget,
) -> Found {
    let limits = &model.limits;
    let hot = circuits.iter().map(|circuit| circuit.hot.clone()).collect();
    let mut known = Known { model, water, hot, plan: None, weight: None };
    let all = model.circuits.iter().flatten().zip(known.hot.iter().flatten());
    let goals: Vec<Goal> = all.map(|(room, hot)| Goal::of(room, hot)).collect();
    let bound = within(&mut known, limits, &goals, budget);
    if let Some((plan, weight)) = known.plan.zip(known.weight) {
        return Found { plan, weight, bound: Bound::Weight(bound.min(weight)) };
    }
    let is_settled = !budget.is_spent();
    budget.give_half();
    let (hot, goals) = weighed(model, water, circuits);
    let mut known = Known { model, water, hot, plan: None, weight: None };
    let bound = within(&mut known, limits, &goals, budget);
    let Some((plan, weight)) = known.plan.zip(known.weight) else {
        // Room by room of what is left always ends with a plan where rooms may stay short.
        let runs = model.circuits.iter().flatten().map(|room| room.runs.len()).sum();
        return Found {
            plan: vec![vec![0; model.kinds.len()]; runs],
            weight: NEVER,
            bound: Bound::Unknown,
        };
    };
    let bound = if is_settled { Bound::Weight(bound.min(weight)) } else { Bound::Unknown };
    Found { plan, weight, bound }
}

/// The band above the bound that is searched first, as a part of the bound in powers of two.
const FIRST_BAND: u32 = 8;

/// Looks for the best plan; gives what none is lighter than.
fn within(known: &mut Known, limits: &Limits, goals: &[Goal], budget: &mut Budget) -> Weight {
    let model = known.model;
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
    let mut band = (bound >> FIRST_BAND).max(1);
    while !budget.is_spent() && known.weight.is_none_or(|weight| weight > bound) {
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
        band = band.saturating_mul(4);
    }
    if known.plan.is_none() && bound <= most {
        // A last look, narrow, for something to show.
        Search { limits, tables: &tables, goals, ahead: &ahead, limit: most }.run(known, budget);
    }
    bound
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

/// Steps of what a room may be short, in the bound.
const SHORT_STEPS: i64 = 64;

/// Every room that wants something may stay short, at the weight of what is missing. The hottest
/// water is that after rooms with no new pieces.
fn weighed(model: &Model, water: &dyn Water, circuits: &[Circuit]) -> (Vec<Vec<Hot>>, Vec<Goal>) {
    let (mut all, mut goals) = (Vec::new(), Vec::new());
    for (at, (rooms, circuit)) in model.circuits.iter().zip(circuits).enumerate() {
        let mut water_k = water.enters_k(at);
        let mut hot = Vec::new();
        for (room, (one, ways)) in rooms.iter().zip(&circuit.ways).enumerate() {
            let needed = water.needed_m(at, room, water_k);
            let most = ways.list.last().map_or(0, |way| way.finned);
            let need = needed.map_or(most, |needed| least(needed).min(most));
            let wish = match needed {
                Some(needed) if needed <= 0.0 => Wish::Nothing,
                _ => Wish::Weighed,
            };
            let new = (need - one.fixed).max(0);
            let mut short = Vec::new();
            if wish == Wish::Weighed {
                for step in 0..=SHORT_STEPS {
                    // With so much missing it is at least as short as with a step less.
                    let missing = new * (step - 1).max(0) / SHORT_STEPS;
                    let finned = one.fixed + new - missing;
                    let is_met = needed.is_some_and(|needed| finned >= least(needed));
                    let output_w = water.after(at, room, water_k, metres(finned)).output_w;
                    let short_w = if is_met { 0.0 } else { water.load_w(at, room) - output_w };
                    let weight = model.scale.short(microwatts(short_w).max(0));
                    short.push(Point { finned: new * step / SHORT_STEPS, weight });
                }
            }
            if short.is_empty() {
                short.push(Point { finned: 0, weight: 0 });
            }
            goals.push(Goal {
                need: if wish == Wish::Weighed { new } else { 0 },
                short: rents::rising(short),
            });
            hot.push(Hot { wish, water_k, need });
            water_k = water.after(at, room, water_k, metres(one.fixed)).water_k;
        }
        all.push(hot);
    }
    (all, goals)
}
