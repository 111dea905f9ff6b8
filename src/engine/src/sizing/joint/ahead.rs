//! What the rooms to come weigh at the least, by the water that goes on to them.

use super::Objective;
use super::flow::{self, Circuit, Wish, each_rented};
use super::known::Known;
use super::model::{NEVER, Weight, least, metres};

/// Steps of water temperature for each room.
const STEPS: usize = 32;

/// The least weights from a room on, for water no hotter than each step, the hottest first.
#[derive(Debug)]
struct Steps {
    waters_k: Vec<f64>,
    least: Vec<Weight>,
}

#[derive(Debug)]
pub(super) struct Ahead<'a> {
    circuits: &'a [Circuit],
    /// By circuit and room; after the last room there is nothing to come.
    steps: Vec<Vec<Steps>>,
}

impl<'a> Ahead<'a> {
    /// With the weights of `circuits`; `rooms` is what each room weighs at the least.
    pub(super) fn of(known: &Known, circuits: &'a [Circuit], rooms: &[Weight]) -> Ahead<'a> {
        let mut rest = rooms;
        let mut all = Vec::new();
        for (at, circuit) in circuits.iter().enumerate() {
            let (own, after) = rest.split_at(circuit.ways.len());
            all.push(steps(known, at, circuit, own));
            rest = after;
        }
        Ahead { circuits, steps: all }
    }

    /// At least this do the rooms from `room` on weigh, in this water.
    pub(super) fn least(&self, known: &Known, (at, room): (usize, usize), water_k: f64) -> Weight {
        let Some(steps) = self.steps[at].get(room) else {
            return 0;
        };
        let place = steps.waters_k.partition_point(|&step_k| step_k >= water_k).saturating_sub(1);
        steps.least[place] + self.heat(known, (at, room), water_k)
    }

    /// At least this do they weigh in any water.
    pub(super) fn least_of_all(&self, (at, room): (usize, usize)) -> Weight {
        self.steps[at].get(room).map_or(0, |steps| steps.least[0])
    }

    /// The heat of the rooms from `room` on that is given whatever is chosen, where heat counts:
    /// that of the shortest lengths, which leave the water hottest. Where rooms may be short no heat
    /// is certain.
    pub(super) fn heat(&self, known: &Known, (at, room): (usize, usize), water_k: f64) -> Weight {
        let (model, water) = (known.model, known.water);
        if model.problem.objective != Objective::Closest {
            return 0;
        }
        let (mut weight, mut water_k) = (0, water_k);
        let circuit = &self.circuits[at];
        for (place, (ways, hot)) in circuit.ways.iter().zip(&circuit.hot).enumerate().skip(room) {
            let way = match hot.wish {
                Wish::Nothing => ways.list.first(),
                Wish::Most => ways.list.last(),
                Wish::Weighed => return 0,
                Wish::Enough => {
                    let needed = water.needed_m(at, place, water_k);
                    needed.and_then(|needed| ways.list.get(ways.from(least(needed))))
                }
            };
            let Some(way) = way else {
                return NEVER;
            };
            let after = water.after(at, place, water_k, metres(way.finned));
            // Rounded to microwatts elsewhere, in each room.
            weight += flow::heat(model, after.output_w - 2e-6);
            water_k = after.water_k;
        }
        weight
    }
}

/// From the last room to the first.
fn steps(known: &Known, at: usize, circuit: &Circuit, rooms: &[Weight]) -> Vec<Steps> {
    let waters: Vec<Vec<f64>> = waters(known, at, circuit);
    let mut all: Vec<Steps> = Vec::new();
    for (room, mut waters_k) in waters.into_iter().enumerate().rev() {
        let (ways, hot) = (&circuit.ways[room], &circuit.hot[room]);
        let least = |&water_k: &f64| {
            let mut best = NEVER;
            each_rented(known.water, (at, room), ways, (hot.wish, water_k), &mut |_, way| {
                let finned_m = metres(way.finned);
                let onward = all.last().map_or(0, |next| {
                    let after_k = known.water.after(at, room, water_k, finned_m).water_k;
                    let place = next.waters_k.partition_point(|&step_k| step_k >= after_k);
                    next.least[place.saturating_sub(1)]
                });
                best = best.min(way.cell.weight + onward);
            });
            best
        };
        // What staying short weighs would have to be reckoned for every length.
        if hot.wish == Wish::Weighed {
            waters_k.truncate(1);
        }
        let least = match hot.wish {
            Wish::Weighed => vec![rooms[room] + all.last().map_or(0, |next| next.least[0])],
            _ => waters_k.iter().map(least).collect(),
        };
        all.push(Steps { waters_k, least });
    }
    all.reverse();
    all
}

/// For each room waters from the hottest that can reach it to the coolest, closer together near the
/// hottest, where good choices lie.
fn waters(known: &Known, at: usize, circuit: &Circuit) -> Vec<Vec<f64>> {
    let mut coolest_k = known.water.enters_k(at);
    let mut all = Vec::new();
    for (room, (ways, hot)) in circuit.ways.iter().zip(&circuit.hot).enumerate() {
        let span = (hot.water_k - coolest_k).max(0.0);
        let step = |step: usize| {
            let share = step as f64 / STEPS as f64;
            hot.water_k - span * share * share
        };
        let steps = if span > 0.0 { STEPS } else { 1 };
        all.push((0..steps).map(step).collect());
        let way = match hot.wish {
            Wish::Nothing => ways.list.first(),
            _ => ways.list.last(),
        };
        let most = way.map_or(0, |way| way.finned);
        coolest_k = known.water.after(at, room, coolest_k, metres(most)).water_k;
    }
    all
}
