//! What was chosen, told by the problem alone.

use super::model::{Model, least};
use super::{Objective, Water};

/// By run, all rooms' in a row: how many of each of the model's kinds.
pub(super) type Plan = Vec<Vec<u16>>;

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
    pub pieces: u32,
    pub joints: u32,
    /// Runs on inner walls that hold new pieces.
    pub inner_runs: u32,
    /// By circuit and room: what is missing of its load, in watts; `None` where nothing is.
    pub short_w: Vec<Vec<Option<f64>>>,
    /// By stock as typed: how many are used.
    pub used: Vec<u32>,
    pub nodes: u64,
}

/// Follows a plan through the problem.
pub(super) fn of(model: &Model, water: &dyn Water, plan: &Plan) -> Answer {
    let problem = model.problem;
    let mut answer = Answer {
        pieces_sixteenths: Vec::new(),
        value: 0.0,
        bound: 0.0,
        proof: Proof::Optimal,
        cost_cents: None,
        pieces: 0,
        joints: 0,
        inner_runs: 0,
        short_w: Vec::new(),
        used: vec![0; problem.stock.len()],
        nodes: 0,
    };
    let mut openings: u64 = 0;
    let mut new_joints: u64 = 0;
    let mut runs = plan.iter();
    let (mut beyond_w, mut least_share, mut most_share) = (0.0, f64::INFINITY, 0.0_f64);
    for (at, circuit) in problem.circuits.iter().enumerate() {
        let (mut of_circuit, mut shorts) = (Vec::new(), Vec::new());
        let (mut water_k, mut part_k) = (water.enters_k(at), water.part_enters_k(at));
        for (place, room) in circuit.iter().enumerate() {
            let mut of_room = Vec::new();
            let mut finned_m = 0.0;
            for (run, counts) in room.runs.iter().zip(&mut runs) {
                let mut pieces = run.fixed_sixteenths.clone();
                for (kind, &count) in model.kinds.iter().zip(counts) {
                    let length = problem.stock[kind.typed].length_sixteenths;
                    pieces.extend(std::iter::repeat_n(length, usize::from(count)));
                    answer.used[kind.typed] += u32::from(count);
                }
                let new = (pieces.len() - run.fixed_sixteenths.len()) as u64;
                new_joints += new;
                if new > 0 && run.fixed_sixteenths.is_empty() {
                    openings += 1;
                    new_joints += 1;
                }
                if new > 0 && run.wall == super::Wall::Inner {
                    answer.inner_runs += 1;
                }
                answer.pieces += pieces.len() as u32;
                answer.joints += if pieces.is_empty() { 0 } else { pieces.len() as u32 + 1 };
                pieces.sort_unstable_by(|a, b| b.cmp(a));
                finned_m += pieces.iter().map(|&piece| finned_m_of(problem, piece)).sum::<f64>();
                of_room.push(pieces);
            }
            let needed = water.needed_m(at, place, water_k);
            let load_w = water.load_w(at, place).max(0.0);
            let after = water.after(at, place, water_k, finned_m);
            let met =
                needed.is_some_and(|needed| super::model::picometres(finned_m) >= least(needed));
            let short = (!met).then(|| (load_w - after.output_w).max(0.0));
            let part = water.part_after(at, place, part_k, finned_m);
            if met && load_w > 0.0 {
                least_share = least_share.min(part.output_w / load_w);
                most_share = most_share.max(part.output_w / load_w);
            }
            beyond_w += after.output_w - load_w;
            (water_k, part_k) = (after.water_k, part.water_k);
            shorts.push(short);
            of_circuit.push(of_room);
        }
        answer.pieces_sixteenths.push(of_circuit);
        answer.short_w.push(shorts);
    }
    let prices = problem
        .stock
        .iter()
        .zip(&answer.used)
        .map(|(stock, &used)| Some(u64::from(stock.price_cents?) * u64::from(used)));
    let costs = problem.costs;
    let others = new_joints * u64::from(costs.joint_cents) + openings * u64::from(costs.run_cents);
    answer.cost_cents = prices.sum::<Option<u64>>().map(|prices| prices + others);
    answer.value = match problem.objective {
        Objective::Closest => beyond_w,
        Objective::LeastCost => {
            answer.cost_cents.map_or(f64::from(answer.pieces), |cents| cents as f64)
        }
        Objective::FewestJoints => f64::from(answer.joints),
        Objective::MostEven if most_share > 0.0 => most_share / least_share,
        Objective::MostEven => 1.0,
    };
    answer.bound = answer.value;
    answer
}

fn finned_m_of(problem: &super::Problem, piece_sixteenths: u32) -> f64 {
    let length_m = f64::from(piece_sixteenths) * 254.0 / 160_000.0;
    (length_m - problem.bare_per_piece_m).max(0.0)
}
