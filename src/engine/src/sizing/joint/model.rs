//! The problem in the search's own units: lengths in the stock's common divisor, one weight a piece
//! in which everything that counts stands in its order.

use super::limits::Limits;
use super::{Objective, Problem, Run, Wall};
use crate::order;

/// Everything that counts, the most important in the highest bits; less is better.
pub(super) type Weight = i128;
/// From here on something cannot be made.
pub(super) const NEVER: Weight = Weight::MAX / 4;

/// Finned lengths are whole picometres: a sixteenth of an inch is a whole number of them.
pub(super) type Picometres = i64;
const PER_SIXTEENTH: Picometres = 1_587_500_000;
const PER_METRE: f64 = 1e12;

/// A stock length that is there, fits somewhere and has fins.
#[derive(Debug, Clone)]
pub(super) struct Kind {
    /// In the model's units.
    pub length: u32,
    pub weight: Weight,
    /// `None` where no more than this can ever be used.
    pub limit: Option<u32>,
    /// Its place among the model's kinds, and in the problem's list.
    pub place: usize,
    pub typed: usize,
}

#[derive(Debug, Clone)]
pub(super) struct ModelRun {
    /// What is free beside the fixed pieces, in the model's units.
    pub hold: u32,
    /// Of the first piece that comes to it.
    pub opening: Weight,
}

#[derive(Debug, Clone)]
pub(super) struct ModelRoom {
    pub runs: Vec<ModelRun>,
    /// Of the fixed pieces.
    pub fixed: Picometres,
}

#[derive(Debug, Clone)]
pub(super) struct Model<'a> {
    pub problem: &'a Problem,
    /// Longest first, of equal lengths the lighter first.
    pub kinds: Vec<Kind>,
    pub circuits: Vec<Vec<ModelRoom>>,
    pub scale: Scale,
    pub limits: Limits,
    /// Whether all that the problem offers is in the model.
    pub is_whole: bool,
    /// The longest run.
    pub longest: u32,
    pub bare: Picometres,
    pub unit: u32,
}

/// How far each field of a weight is shifted.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scale {
    pieces: u32,
    second: u32,
    objective: u32,
    inner: u32,
    short: u32,
}

/// Microwatts of a house's heat and of what it is short, at the most: a megawatt.
const HEAT_BITS: u32 = 40;

impl Scale {
    /// With room in each field for all that a problem can need.
    fn of(problem: &Problem) -> Scale {
        let runs = || problem.circuits.iter().flatten().flat_map(|room| &room.runs);
        let length: u64 = runs().map(|run| u64::from(run.hold_sixteenths)).sum();
        let shortest = problem.stock.iter().map(|stock| stock.length_sixteenths).min();
        let pieces = length / u64::from(shortest.unwrap_or(1).max(1));
        let dearest = problem.stock.iter().filter_map(|stock| stock.price_cents).max();
        let joints = pieces + runs().count() as u64;
        let costs = u64::from(problem.costs.joint_cents) + u64::from(problem.costs.run_cents);
        let cents = joints.saturating_mul(u64::from(dearest.unwrap_or(0)) + costs);
        let (second, objective) = match problem.objective {
            Objective::Closest => (0, HEAT_BITS),
            Objective::LeastCost => (0, bits(cents.max(pieces))),
            Objective::FewestJoints => (bits(cents), bits(joints)),
            Objective::MostEven => (0, 0),
        };
        let inner = bits(runs().count() as u64);
        // Beyond any house the fields that only tell equal choices apart give way.
        let taken = second + objective + inner + HEAT_BITS;
        let small = bits(length) + bits(pieces);
        let (length, pieces) =
            if taken + small <= 118 { (bits(length), bits(pieces)) } else { (0, 0) };
        let second_at = length + pieces;
        let objective_at = second_at + second;
        let inner_at = objective_at + objective;
        Scale {
            pieces: length,
            second: second_at,
            objective: objective_at,
            inner: inner_at,
            short: inner_at + inner,
        }
    }

    fn piece(&self, length_sixteenths: u32) -> Weight {
        match self.second {
            0 => 0,
            _ => Weight::from(length_sixteenths) + (1 << self.pieces),
        }
    }

    /// An amount of the objective, for heat in microwatts, as part of a weight.
    pub(super) fn objective_of(&self, amount: i64) -> Weight {
        Weight::from(amount) << self.objective
    }

    /// A difference as a way to go for rents: one of inner walls alone, which no price makes up
    /// for, counts as some of the rest.
    pub(super) fn apart(&self, way: Weight) -> Weight {
        let below = 1 << self.inner;
        if way >= below && way >> self.short == 0 { below >> 4 } else { way }
    }

    /// What is missing of a load, as part of a weight.
    pub(super) fn short(&self, microwatts: i64) -> Weight {
        Weight::from(microwatts) << self.short
    }

    /// What counts before the objective: the shortage and the inner walls.
    pub(super) fn before_objective(&self, weight: Weight) -> Weight {
        weight >> self.inner
    }

    /// The objective's part of a weight; for heat in microwatts.
    pub(super) fn objective(&self, weight: Weight) -> i64 {
        ((weight >> self.objective) & ((1 << (self.inner - self.objective)) - 1)) as i64
    }

    /// The objective and what is less than it.
    pub(super) fn objective_and_less(&self, weight: Weight) -> Weight {
        weight & ((1 << self.inner) - 1)
    }

    /// The greatest weight that is as good in what counts before the objective.
    pub(super) fn up_to_objective(&self, weight: Weight) -> Weight {
        weight | ((1 << self.inner) - 1)
    }
}

fn bits(most: u64) -> u32 {
    64 - most.leading_zeros()
}

/// Whole microwatts.
pub(super) fn microwatts(watts: f64) -> i64 {
    (watts * 1e6).round() as i64
}

impl<'a> Model<'a> {
    pub(super) fn of(problem: &'a Problem) -> Model<'a> {
        let scale = Scale::of(problem);
        let bare = picometres(problem.bare_per_piece_m.max(0.0));
        let frees: Vec<u32> =
            problem.circuits.iter().flatten().flat_map(|room| &room.runs).map(free).collect();
        let longest = frees.iter().copied().max().unwrap_or(0);
        let priced = problem.stock.iter().all(|stock| stock.price_cents.is_some());
        let usable = |at: &usize| {
            let stock = &problem.stock[*at];
            let length = stock.length_sixteenths;
            finned(length, bare) > 0 && length <= longest && stock.available != Some(0)
        };
        let usable: Vec<usize> = (0..problem.stock.len()).filter(usable).collect();
        let unit =
            usable.iter().fold(0, |unit, &at| divisor(problem.stock[at].length_sixteenths, unit));
        let unit = unit.max(1);
        let mut model = Model {
            problem,
            kinds: Vec::new(),
            circuits: Vec::new(),
            scale,
            limits: Limits::of(&mut Vec::new()).0,
            is_whole: true,
            longest: longest / unit,
            unit,
            bare,
        };
        for typed in usable {
            let stock = &problem.stock[typed];
            let most: u32 = frees.iter().map(|free| free / stock.length_sixteenths).sum();
            let cents =
                stock.price_cents.map_or(0, i128::from) + i128::from(problem.costs.joint_cents);
            let own = match problem.objective {
                Objective::LeastCost if priced => cents << scale.objective,
                Objective::LeastCost => 1 << scale.objective,
                Objective::FewestJoints if priced => {
                    (1 << scale.objective) + (cents << scale.second)
                }
                Objective::FewestJoints => 1 << scale.objective,
                Objective::Closest | Objective::MostEven => 0,
            };
            model.kinds.push(Kind {
                length: stock.length_sixteenths / unit,
                weight: own + scale.piece(stock.length_sixteenths),
                limit: stock.available.filter(|&available| available < most),
                place: 0,
                typed,
            });
        }
        order::sort_by(&mut model.kinds, |a, b| {
            b.length.cmp(&a.length).then(a.weight.cmp(&b.weight))
        });
        // Of one length nothing is taken that comes after as many as wanted.
        let mut endless = None;
        model.kinds.retain(|kind| {
            let keeps = endless != Some(kind.length);
            if kind.limit.is_none() {
                endless = Some(kind.length);
            }
            keeps
        });
        (model.limits, model.is_whole) = Limits::of(&mut model.kinds);
        for (place, kind) in model.kinds.iter_mut().enumerate() {
            kind.place = place;
        }
        let opening_cents =
            i128::from(problem.costs.joint_cents) + i128::from(problem.costs.run_cents);
        let mut free = frees.iter();
        for circuit in &problem.circuits {
            let mut rooms = Vec::new();
            for room in circuit {
                let mut runs = Vec::new();
                let mut fixed = 0;
                for (run, free) in room.runs.iter().zip(&mut free) {
                    let inner = match run.wall {
                        Wall::Outer => 0,
                        Wall::Inner => 1 << scale.inner,
                    };
                    let own = match problem.objective {
                        // End caps and the joint that a run has beyond its pieces are there.
                        _ if !run.fixed_sixteenths.is_empty() => 0,
                        Objective::LeastCost if priced => opening_cents << scale.objective,
                        Objective::FewestJoints if priced => {
                            (1 << scale.objective) + (opening_cents << scale.second)
                        }
                        Objective::FewestJoints => 1 << scale.objective,
                        _ => 0,
                    };
                    fixed += run.fixed_sixteenths.iter().map(|&p| finned(p, bare)).sum::<i64>();
                    runs.push(ModelRun { hold: free / unit, opening: inner + own });
                }
                rooms.push(ModelRoom { runs, fixed });
            }
            model.circuits.push(rooms);
        }
        model
    }

    /// The fins of one piece, of whatever length.
    pub(super) fn finned_of(&self, length_sixteenths: u32) -> Picometres {
        finned(length_sixteenths, self.bare)
    }

    pub(super) fn fixed_pieces(&self) -> usize {
        self.fixed().map(|run| run.fixed_sixteenths.len()).sum()
    }

    pub(super) fn fixed_joints(&self) -> usize {
        self.fixed().map(|run| run.fixed_sixteenths.len() + 1).sum()
    }

    /// The runs in which pieces stand already.
    fn fixed(&self) -> impl Iterator<Item = &Run> {
        let runs = self.problem.circuits.iter().flatten().flat_map(|room| &room.runs);
        runs.filter(|run| !run.fixed_sixteenths.is_empty())
    }

    /// The fins of new pieces that take this many units of wall.
    pub(super) fn finned(&self, units: u32, pieces: u32) -> Picometres {
        Picometres::from(units) * Picometres::from(self.unit) * PER_SIXTEENTH
            - Picometres::from(pieces) * self.bare
    }
}

/// What a run holds beside its fixed pieces, in sixteenths of an inch.
pub(super) fn free(run: &Run) -> u32 {
    let fixed = run.fixed_sixteenths.iter();
    fixed.fold(run.hold_sixteenths, |free, &fixed| free.saturating_sub(fixed))
}

/// The fins of a piece.
fn finned(length_sixteenths: u32, bare: Picometres) -> Picometres {
    (Picometres::from(length_sixteenths) * PER_SIXTEENTH - bare).max(0)
}

pub(super) fn metres(finned: Picometres) -> f64 {
    finned as f64 / PER_METRE
}

/// The least that counts as a need: a hair of slack, so that a length that is needed exactly is
/// reached by a piece of that length.
pub(super) fn least(needed_m: f64) -> Picometres {
    (needed_m * PER_METRE * (1.0 - 1e-9)).ceil() as Picometres
}

fn divisor(a: u32, b: u32) -> u32 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

pub(super) fn picometres(metres: f64) -> Picometres {
    (metres * PER_METRE).round() as Picometres
}
