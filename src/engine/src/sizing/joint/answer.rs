//! What was chosen, told by the problem and the water.

use super::model::{Model, Picometres, Weight, least, metres};
use super::{Objective, Run, Wall, Water};
use crate::order;

/// By run, all rooms' in a row: how many of each of the model's kinds.
pub(super) type Plan = Vec<Vec<u16>>;

/// A plan and what is known of better ones.
#[derive(Debug)]
pub(super) struct Found {
    pub plan: Plan,
    pub weight: Weight,
    pub bound: Bound,
}

/// What no choice is below.
#[derive(Debug, Clone, Copy)]
pub(super) enum Bound {
    Weight(Weight),
    /// Of the even choice, among those that are as good in what counts before.
    Ratio(f64),
    /// The nodes ran out before it was known whether more rooms than must be are short.
    Unknown,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Proof {
    /// No choice is better.
    Optimal,
    /// The nodes ran out: there may be a better one.
    Stopped,
}

/// Pieces for every room.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// By circuit, room and run: lengths, longest first, the fixed ones included.
    pub pieces_sixteenths: Vec<Vec<Vec<Vec<u32>>>>,
    /// In the objective's unit: heat beyond the loads in watts, cents (pieces where a length has no
    /// price), joints, or the ratio at part load.
    pub value: f64,
    /// What no choice can be below that is as good in what counts before the objective.
    pub bound: f64,
    pub proof: Proof,
    /// Of the pieces that are new, with their joints and runs; `None` where a length has no price.
    pub cost_cents: Option<u64>,
    /// These and the joints with the fixed ones.
    pub pieces: u32,
    pub joints: u32,
    /// Runs on inner walls that hold new pieces.
    pub inner_runs: u32,
    /// By circuit and room: what is missing of its load, in watts; `None` where nothing is.
    pub short_w: Vec<Vec<Option<f64>>>,
    /// By stock as typed: how many are used.
    pub used: Vec<u32>,
    /// What was looked at; none where no limit on stock was felt.
    pub nodes: u64,
}

/// Follows a plan through the problem.
pub(super) fn of(model: &Model, water: &dyn Water, found: &Found, nodes: u64) -> Answer {
    let problem = model.problem;
    let mut answer = Answer {
        pieces_sixteenths: Vec::new(),
        value: 0.0,
        bound: 0.0,
        proof: Proof::Stopped,
        cost_cents: None,
        pieces: 0,
        joints: 0,
        inner_runs: 0,
        short_w: Vec::new(),
        used: vec![0; problem.stock.len()],
        nodes,
    };
    // Joints and runs that are paid for.
    let mut others_cents = 0;
    let mut served = Served { heat_w: 0.0, loads_w: 0.0, least: f64::INFINITY, most: 0.0 };
    let mut runs = found.plan.iter();
    for (at, circuit) in problem.circuits.iter().enumerate() {
        let (mut of_circuit, mut shorts) = (Vec::new(), Vec::new());
        let (mut water_k, mut part_k) = (water.enters_k(at), water.part_enters_k(at));
        for (place, room) in circuit.iter().enumerate() {
            let mut of_room = Vec::new();
            let mut finned: Picometres = 0;
            for (run, counts) in room.runs.iter().zip(&mut runs) {
                others_cents += answer.count(model, run, counts);
                let pieces = pieces(model, run, counts);
                finned += pieces.iter().map(|&piece| model.finned_of(piece)).sum::<Picometres>();
                of_room.push(pieces);
            }
            let needed = water.needed_m(at, place, water_k);
            let after = water.after(at, place, water_k, metres(finned));
            let part = water.part_after(at, place, part_k, metres(finned));
            let load_w = water.load_w(at, place).max(0.0);
            let is_met = needed.is_some_and(|needed| finned >= least(needed));
            served.add(is_met, load_w, after.output_w, part.output_w);
            shorts.push((!is_met).then(|| (load_w - after.output_w).max(0.0)));
            of_circuit.push(of_room);
            (water_k, part_k) = (after.water_k, part.water_k);
        }
        answer.pieces_sixteenths.push(of_circuit);
        answer.short_w.push(shorts);
    }
    let stock = problem.stock.iter().zip(&answer.used);
    let prices = stock.map(|(stock, &used)| Some(u64::from(stock.price_cents?) * u64::from(used)));
    answer.cost_cents = prices.sum::<Option<u64>>().map(|prices| prices + others_cents);
    answer.value = match (problem.objective, answer.cost_cents) {
        (Objective::Closest, _) => served.heat_w - served.loads_w,
        (Objective::LeastCost, Some(cents)) => cents as f64,
        (Objective::LeastCost, None) => f64::from(answer.pieces),
        (Objective::FewestJoints, _) => f64::from(answer.joints),
        (Objective::MostEven, _) => served.ratio(),
    };
    // What comes to the objective of every choice.
    let offset = match (problem.objective, answer.cost_cents) {
        (Objective::Closest, _) => -served.loads_w,
        (Objective::LeastCost, Some(_)) | (Objective::MostEven, _) => 0.0,
        (Objective::LeastCost, None) => model.fixed_pieces() as f64,
        (Objective::FewestJoints, _) => model.fixed_joints() as f64,
    };
    let proven = Some((answer.value, Proof::Optimal));
    let stopped = |bound: f64| Some((bound.min(answer.value), Proof::Stopped));
    let scale = &model.scale;
    let told = match found.bound {
        _ if !model.is_whole => None,
        Bound::Weight(bound) if bound >= found.weight => proven,
        Bound::Ratio(bound) if bound >= answer.value => proven,
        Bound::Ratio(bound) => stopped(bound),
        // What counts before has to be known before the objective can be compared.
        Bound::Weight(bound)
            if scale.before_objective(bound) == scale.before_objective(found.weight) =>
        {
            let unit = if problem.objective == Objective::Closest { 1e-6 } else { 1.0 };
            stopped(scale.objective(bound) as f64 * unit + offset)
        }
        Bound::Weight(_) | Bound::Unknown => None,
    };
    let least = if problem.objective == Objective::MostEven { 1.0 } else { offset };
    (answer.bound, answer.proof) = told.unwrap_or((least.min(answer.value), Proof::Stopped));
    answer
}

impl Answer {
    /// Counts a run's pieces; gives what its new joints and its two ends cost.
    fn count(&mut self, model: &Model, run: &Run, counts: &[u16]) -> u64 {
        for (kind, &count) in model.kinds.iter().zip(counts) {
            self.used[kind.typed] += u32::from(count);
        }
        let new: u32 = counts.iter().map(|&count| u32::from(count)).sum();
        let all = new + run.fixed_sixteenths.len() as u32;
        self.pieces += all;
        self.joints += if all == 0 { 0 } else { all + 1 };
        if new == 0 {
            return 0;
        }
        self.inner_runs += u32::from(run.wall == Wall::Inner);
        let costs = model.problem.costs;
        let (joints, ends) = if all == new { (new + 1, costs.run_cents) } else { (new, 0) };
        u64::from(joints) * u64::from(costs.joint_cents) + u64::from(ends)
    }
}

/// A run's lengths, longest first.
fn pieces(model: &Model, run: &Run, counts: &[u16]) -> Vec<u32> {
    let mut pieces = run.fixed_sixteenths.clone();
    for (kind, &count) in model.kinds.iter().zip(counts) {
        let length = model.problem.stock[kind.typed].length_sixteenths;
        pieces.extend(std::iter::repeat_n(length, usize::from(count)));
    }
    order::sort_by(&mut pieces, |a, b| b.cmp(a));
    pieces
}

/// How the rooms are served.
struct Served {
    heat_w: f64,
    loads_w: f64,
    /// At part load, the heat of a room that is met for its load: the least and the most.
    least: f64,
    most: f64,
}

impl Served {
    fn add(&mut self, is_met: bool, load_w: f64, output_w: f64, part_w: f64) {
        self.heat_w += output_w;
        self.loads_w += load_w;
        if is_met && load_w > 0.0 {
            self.least = self.least.min(part_w / load_w);
            self.most = self.most.max(part_w / load_w);
        }
    }

    fn ratio(&self) -> f64 {
        if self.most > 0.0 { self.most / self.least } else { 1.0 }
    }
}
