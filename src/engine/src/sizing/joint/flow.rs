//! From room to room with the water, where there are as many pieces of each kind as wanted.

use super::Water;
use super::model::{Model, NEVER, Weight, least, metres, microwatts};
use super::room::{Fills, Way, Ways, pieces};
use super::{Objective, answer::Plan};

/// What a room is given, by the hottest water that can reach it.
#[derive(Debug, Clone, Copy)]
enum Wish {
    /// What is there is enough.
    Nothing,
    /// Its runs are too short: this way, the most finned length.
    Most(usize),
    Enough,
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

/// The best plan without limits on the stock.
pub(super) fn cheapest(model: &Model, water: &dyn Water) -> Plan {
    let longest = model.circuits.iter().flatten().flat_map(|room| &room.runs);
    let fills = Fills::of(&model.kinds, longest.map(|run| run.hold).max().unwrap_or(0));
    let mut plan = Vec::new();
    for (at, rooms) in model.circuits.iter().enumerate() {
        let ways: Vec<Ways> = rooms.iter().map(|room| Ways::of(model, room, &fills)).collect();
        for (room, way) in rooms.iter().zip(circuit(model, water, at, &ways)) {
            plan.extend(pieces(room, &fills, &way));
        }
    }
    plan
}

/// One circuit's best ways.
fn circuit(model: &Model, water: &dyn Water, at: usize, ways: &[Ways]) -> Vec<Way> {
    let hot = hottest(water, at, ways);
    let start = Label { from: 0, way: 0, weight: 0, water_k: water.enters_k(at) };
    let mut layers = vec![vec![start]];
    for (room, (ways, wish)) in ways.iter().zip(&hot).enumerate() {
        let mut next = Vec::new();
        for (from, label) in layers[room].iter().enumerate() {
            let mut go = |way: usize| {
                let one = &ways.list[way];
                let after = water.after(at, room, label.water_k, metres(one.finned));
                let heat = match model.problem.objective {
                    Objective::Closest => model.scale.heat(microwatts(after.output_w)),
                    _ => 0,
                };
                let weight = label.weight + one.weight + heat;
                next.push(Label { from, way, weight, water_k: after.water_k });
            };
            match wish {
                Wish::Nothing => go(0),
                Wish::Most(way) => go(*way),
                Wish::Enough => {
                    let need = water.needed_m(at, room, label.water_k);
                    let from = need.map_or(ways.list.len(), |need| ways.from(least(need)));
                    lighter(model, ways, from, &mut go);
                }
            }
        }
        layers.push(thinned(next));
    }
    let mut place = 0;
    let mut chosen = Vec::new();
    for (layer, ways) in layers.iter().skip(1).zip(ways).rev() {
        let label = &layer[place];
        chosen.push(ways.list[label.way]);
        place = label.from;
    }
    chosen.reverse();
    chosen
}

/// Of the ways from a place on those that are lighter than every shorter one: a longer one leaves
/// the water cooler, so it must be lighter. Where heat counts, which a longer one gives more of,
/// only what counts before it can make it so.
fn lighter(model: &Model, ways: &Ways, from: usize, go: &mut impl FnMut(usize)) {
    let counted = |weight: Weight| match model.problem.objective {
        Objective::Closest => model.scale.before_objective(weight),
        _ => weight,
    };
    let mut best = NEVER;
    for place in from..ways.list.len() {
        if counted(ways.onward[place]) >= counted(best) {
            break;
        }
        let weight = ways.list[place].weight;
        if counted(weight) < counted(best) {
            best = weight;
            go(place);
        }
    }
}

/// What each room wishes, going with the shortest lengths that do: these leave the hottest water.
fn hottest(water: &dyn Water, at: usize, ways: &[Ways]) -> Vec<Wish> {
    let mut water_k = water.enters_k(at);
    let mut wishes = Vec::new();
    for (room, ways) in ways.iter().enumerate() {
        let last = ways.list.len() - 1;
        let (wish, way) = match water.needed_m(at, room, water_k) {
            Some(need) if need <= 0.0 => (Wish::Nothing, 0),
            Some(need) if ways.from(least(need)) <= last => (Wish::Enough, ways.from(least(need))),
            _ => (Wish::Most(last), last),
        };
        wishes.push(wish);
        water_k = water.after(at, room, water_k, metres(ways.list[way].finned)).water_k;
    }
    wishes
}

/// The labels that no other is as light as and as hot as, the lightest first. What follows a label
/// can follow a hotter one with the same pieces, which then are enough all the more; and where heat
/// counts, the whole circuit gives no more of it, for its water ends no cooler.
fn thinned(mut labels: Vec<Label>) -> Vec<Label> {
    labels.sort_by(|a, b| a.weight.cmp(&b.weight).then(b.water_k.total_cmp(&a.water_k)));
    let mut hottest = f64::NEG_INFINITY;
    labels.retain(|label| {
        let keeps = label.water_k > hottest;
        hottest = hottest.max(label.water_k);
        keeps
    });
    labels
}
