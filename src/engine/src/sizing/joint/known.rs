//! The best choice met so far, and the nodes that are left for a better one.

use super::Water;
use super::answer::Plan;
use super::flow::{Hot, Wish, heat};
use super::model::{Model, ModelRoom, Picometres, Weight, least, metres, microwatts};
use super::rents::is_within;

/// How many nodes may still be looked at. Counted, not timed: the same everywhere.
#[derive(Debug, Clone, Copy)]
pub(super) struct Budget {
    nodes: u64,
    taken: u64,
}

impl Budget {
    pub(super) fn of(nodes: u64) -> Budget {
        Budget { nodes, taken: 0 }
    }

    pub(super) fn take(&mut self, nodes: u64) {
        self.taken = self.taken.saturating_add(nodes);
    }

    pub(super) fn is_spent(&self) -> bool {
        self.taken >= self.nodes
    }

    /// Some more, for another search after one that came to nothing.
    pub(super) fn give_half(&mut self) {
        self.nodes = self.nodes.max(self.taken).saturating_add(self.nodes / 2);
    }

    pub(super) fn left(&self) -> u64 {
        self.nodes.saturating_sub(self.taken)
    }

    /// One of so many parts of what is left.
    pub(super) fn share(&self, parts: u64) -> Budget {
        Budget::of(self.left() / parts.max(1))
    }

    pub(super) fn taken(&self) -> u64 {
        self.taken
    }
}

/// What every choice has to keep to, and the best met that does.
pub(super) struct Known<'a> {
    pub model: &'a Model<'a>,
    pub water: &'a dyn Water,
    /// By circuit and room.
    pub hot: Vec<Vec<Hot>>,
    pub plan: Option<Plan>,
    pub weight: Option<Weight>,
}

impl std::fmt::Debug for Known<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Known").field("weight", &self.weight).finish_non_exhaustive()
    }
}

impl Known<'_> {
    /// Keeps a plan that is lighter than the one known, if it is one.
    pub(super) fn meet(&mut self, plan: &Plan) {
        if !is_within(self.model, plan) {
            return;
        }
        if let Some(weight) = self.weight_of(plan)
            && self.weight.is_none_or(|known| weight < known)
        {
            self.plan = Some(plan.clone());
            self.weight = Some(weight);
        }
    }

    /// What a plan weighs; `None` where a room has not what it is to have.
    fn weight_of(&self, plan: &Plan) -> Option<Weight> {
        let mut weight = 0;
        let mut runs = plan.iter();
        for (at, circuit) in self.model.circuits.iter().enumerate() {
            let mut water_k = self.water.enters_k(at);
            for (room, (one, hot)) in circuit.iter().zip(&self.hot[at]).enumerate() {
                let (finned, own) = new(self.model, one, &mut runs);
                let stream = Stream { at, room, water_k };
                let needed = self.needed(stream, hot);
                let (after_k, more) = self.given(stream, hot, needed, finned)?;
                weight += own + more;
                water_k = after_k;
            }
        }
        Some(weight)
    }

    /// What a room needs of the water that comes to it; `None` where no length would do.
    pub(super) fn needed(&self, stream: Stream, hot: &Hot) -> Option<Picometres> {
        match hot.wish {
            Wish::Nothing => Some(0),
            Wish::Most => Some(hot.need),
            Wish::Enough | Wish::Weighed => {
                self.water.needed_m(stream.at, stream.room, stream.water_k).map(least)
            }
        }
    }

    /// The water after a room with this finned length, and what its heat weighs and what it is
    /// short; `None` where it has not what it is to have.
    pub(super) fn given(
        &self,
        Stream { at, room, water_k }: Stream,
        hot: &Hot,
        needed: Option<Picometres>,
        finned: Picometres,
    ) -> Option<(f64, Weight)> {
        let is_met = needed.is_some_and(|needed| finned >= needed);
        if !is_met && hot.wish != Wish::Weighed {
            return None;
        }
        let after = self.water.after(at, room, water_k, metres(finned));
        let mut weight = heat(self.model, after.output_w);
        if !is_met {
            let missing_w = self.water.load_w(at, room) - after.output_w;
            weight += self.model.scale.short(microwatts(missing_w).max(0));
        }
        Some((after.water_k, weight))
    }
}

/// The water that comes to a room.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stream {
    pub at: usize,
    pub room: usize,
    pub water_k: f64,
}

/// The finned length of a room with its new pieces, and their weight.
fn new<'a>(
    model: &Model,
    room: &ModelRoom,
    runs: &mut impl Iterator<Item = &'a Vec<u16>>,
) -> (Picometres, Weight) {
    let (mut finned, mut weight) = (room.fixed, 0);
    for (run, counts) in room.runs.iter().zip(runs) {
        if counts.iter().any(|&count| count > 0) {
            weight += run.opening;
        }
        for (kind, &count) in model.kinds.iter().zip(counts) {
            finned += Picometres::from(count) * model.finned(kind.length, 1);
            weight += Weight::from(count) * kind.weight;
        }
    }
    (finned, weight)
}
