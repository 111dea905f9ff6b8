//! From room to room with the water, where there are as many pieces of each kind as wanted.

use super::answer::Plan;
use super::model::{Model, NEVER, Picometres, Weight, least, metres, microwatts};
use super::room::{Fills, Way, Ways, pieces};
use super::{Objective, Water};
use crate::order;

/// What a room is to be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wish {
    /// What is there is enough.
    Nothing,
    /// Its runs are too short even for the hottest water that can reach it: the most they take.
    Most,
    Enough,
    /// Enough if possible; what is missing weighs.
    Weighed,
}

/// A room with the hottest water that can reach it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hot {
    pub wish: Wish,
    pub water_k: f64,
    /// No choice has less.
    pub need: Picometres,
}

/// What each room wishes, going with the shortest lengths that do: these leave the hottest water.
pub(super) fn hottest(water: &dyn Water, at: usize, ways: &[Ways]) -> Vec<Hot> {
    let mut water_k = water.enters_k(at);
    let mut rooms = Vec::new();
    for (room, ways) in ways.iter().enumerate() {
        let needed = water.needed_m(at, room, water_k);
        let first = needed.map_or(ways.list.len(), |needed| ways.from(least(needed)));
        let (wish, way) = match needed {
            Some(needed) if needed <= 0.0 => (Wish::Nothing, ways.list.first()),
            _ if first < ways.list.len() => (Wish::Enough, ways.list.get(first)),
            _ => (Wish::Most, ways.list.last()),
        };
        let need = way.map_or(0, |way| way.finned);
        rooms.push(Hot { wish, water_k, need });
        water_k = water.after(at, room, water_k, metres(need)).water_k;
    }
    rooms
}

/// A circuit without limits on the stock.
#[derive(Debug)]
pub(super) struct Circuit {
    pub ways: Vec<Ways>,
    pub hot: Vec<Hot>,
}

/// All circuits with the weights of `fills`.
pub(super) fn circuits(model: &Model, water: &dyn Water, fills: &Fills) -> Vec<Circuit> {
    let circuit = |(at, rooms): (usize, &Vec<super::model::ModelRoom>)| {
        let ways: Vec<Ways> = rooms.iter().map(|room| Ways::of(model, room, fills)).collect();
        let hot = hottest(water, at, &ways);
        Circuit { ways, hot }
    };
    model.circuits.iter().enumerate().map(circuit).collect()
}

/// The best plan, and its weight with the weights of `fills`; `None` where a room that may stay
/// short would.
pub(super) fn cheapest(
    model: &Model,
    water: &dyn Water,
    fills: &Fills,
    circuits: &[Circuit],
) -> Option<(Plan, Weight)> {
    let (mut plan, mut weight) = (Plan::new(), 0);
    for (at, (rooms, circuit)) in model.circuits.iter().zip(circuits).enumerate() {
        let (ways, least) = best(model, water, at, circuit)?;
        weight += least;
        for (room, way) in rooms.iter().zip(ways) {
            plan.extend(pieces(model, room, fills, &way));
        }
    }
    Some((plan, weight))
}

/// What was chosen up to and with a room.
#[derive(Debug, Clone, Copy)]
struct Label {
    /// The label of the room before, in its list.
    from: usize,
    way: usize,
    weight: Weight,
    water_k: f64,
}

/// One circuit's best ways, and what they weigh.
pub(super) fn best(
    model: &Model,
    water: &dyn Water,
    at: usize,
    circuit: &Circuit,
) -> Option<(Vec<Way>, Weight)> {
    let Circuit { ways, hot } = circuit;
    let later = later(circuit);
    // Of these the first is always possible, the second mostly lighter.
    let [shortest, lightest] =
        [Take::Shortest, Take::Lightest].map(|take| at_once(model, water, at, circuit, take));
    let limit = shortest.min(lightest);
    let start = Label { from: 0, way: 0, weight: 0, water_k: water.enters_k(at) };
    let mut layers = vec![vec![start]];
    for (room, (ways, hot)) in ways.iter().zip(hot).enumerate() {
        let mut next = Vec::new();
        for (from, label) in layers[room].iter().enumerate() {
            each(model, water, (at, room), ways, (hot.wish, label.water_k), &mut |way, one| {
                if label.weight + one.cell.weight + later[room + 1] > limit {
                    return;
                }
                let after = water.after(at, room, label.water_k, metres(one.finned));
                let weight = label.weight + one.cell.weight + heat(model, after.output_w);
                next.push(Label { from, way, weight, water_k: after.water_k });
            });
        }
        layers.push(thinned(next));
    }
    let mut place = 0;
    let mut chosen = Vec::new();
    for (layer, ways) in layers.iter().skip(1).zip(ways).rev() {
        let label = layer.get(place)?;
        chosen.push(ways.list[label.way]);
        place = label.from;
    }
    chosen.reverse();
    let weight = layers.last().and_then(|layer| layer.first()).map_or(0, |label| label.weight);
    Some((chosen, weight))
}

/// What a room's heat adds to a weight.
pub(super) fn heat(model: &Model, output_w: f64) -> Weight {
    match model.problem.objective {
        Objective::Closest => model.scale.objective_of(microwatts(output_w)),
        _ => 0,
    }
}

/// By room, and after the last: what it and those after it weigh at the least.
pub(super) fn later(circuit: &Circuit) -> Vec<Weight> {
    let mut later = vec![0; circuit.ways.len() + 1];
    for (room, (ways, hot)) in circuit.ways.iter().zip(&circuit.hot).enumerate().rev() {
        let least = match hot.wish {
            Wish::Nothing => 0,
            Wish::Most | Wish::Enough | Wish::Weighed => {
                ways.onward.get(ways.from(hot.need)).copied().unwrap_or(NEVER)
            }
        };
        later[room] = least + later[room + 1];
    }
    later
}

/// Which of a room's ways is taken as the water comes to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Take {
    Shortest,
    Lightest,
}

/// A circuit's weight, with one way taken in each room as it comes.
fn at_once(model: &Model, water: &dyn Water, at: usize, circuit: &Circuit, take: Take) -> Weight {
    let (mut weight, mut water_k) = (0, water.enters_k(at));
    for (room, (ways, hot)) in circuit.ways.iter().zip(&circuit.hot).enumerate() {
        let mut taken: Option<Way> = None;
        each(model, water, (at, room), ways, (hot.wish, water_k), &mut |_, one| {
            if taken.is_none() || take == Take::Lightest {
                taken = Some(*one);
            }
        });
        let Some(one) = taken else {
            return NEVER;
        };
        let after = water.after(at, room, water_k, metres(one.finned));
        weight += one.cell.weight + heat(model, after.output_w);
        water_k = after.water_k;
    }
    weight
}

/// Each way that a room's wish leaves: of those that are enough the ones that are lighter than every
/// shorter one, since a longer one leaves the water cooler. Where heat counts, which a longer one
/// gives more of, only what counts before it can make it the lighter.
pub(super) fn each(
    model: &Model,
    water: &dyn Water,
    place: (usize, usize),
    ways: &Ways,
    wished: (Wish, f64),
    go: &mut dyn FnMut(usize, &Way),
) {
    let uncounted = match model.problem.objective {
        Objective::Closest => model.scale.up_to_objective(0),
        _ => 0,
    };
    each_by(uncounted, water, place, ways, wished, go);
}

/// As [`each`], with all that ways weigh by themselves: rents may make a longer one the lighter.
pub(super) fn each_rented(
    water: &dyn Water,
    place: (usize, usize),
    ways: &Ways,
    wished: (Wish, f64),
    go: &mut dyn FnMut(usize, &Way),
) {
    each_by(0, water, place, ways, wished, go);
}

/// Weights are compared without the bits of `uncounted`.
fn each_by(
    uncounted: Weight,
    water: &dyn Water,
    (at, room): (usize, usize),
    ways: &Ways,
    (wish, water_k): (Wish, f64),
    go: &mut dyn FnMut(usize, &Way),
) {
    let first = match wish {
        Wish::Nothing => ways.list.len(),
        Wish::Most => ways.list.len().saturating_sub(1),
        Wish::Enough | Wish::Weighed => {
            let needed = water.needed_m(at, room, water_k);
            needed.map_or(ways.list.len(), |needed| ways.from(least(needed)))
        }
    };
    if let (Wish::Nothing, Some(way)) = (wish, ways.list.first()) {
        go(0, way);
    }
    let counted = |weight: Weight| weight & !uncounted;
    let mut best = NEVER;
    for (place, way) in ways.list.iter().enumerate().skip(first) {
        if counted(ways.onward[place]) >= counted(best) {
            break;
        }
        if counted(way.cell.weight) < counted(best) {
            best = way.cell.weight;
            go(place, way);
        }
    }
}

/// The labels that no other is as light as and as hot as, the lightest first. What follows a label
/// can follow a hotter one with the same pieces, which then are enough all the more; and where heat
/// counts, the whole circuit gives no more of it, for its water ends no cooler.
fn thinned(mut labels: Vec<Label>) -> Vec<Label> {
    order::sort_by(&mut labels, |a, b| {
        a.weight.cmp(&b.weight).then(b.water_k.total_cmp(&a.water_k))
    });
    let mut hottest = f64::NEG_INFINITY;
    labels.retain(|label| {
        let keeps = label.water_k > hottest;
        hottest = hottest.max(label.water_k);
        keeps
    });
    labels
}
