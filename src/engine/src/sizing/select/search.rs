//! States from segment to segment, for stock that is limited.

use super::Plan;
use super::bound::{Tables, reach};
use super::fills::{self, Fill};
use super::model::{Counts, MAKES, MOST_STOCK, Model, SHORT};
use std::cmp::Ordering;

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
        self.taken += nodes;
    }

    pub(super) fn is_spent(&self) -> bool {
        self.taken >= self.nodes
    }

    pub(super) fn spent(&self) -> u64 {
        self.taken
    }
}

/// The lightest plan within the limit, and whether all were looked at.
#[derive(Debug)]
pub(super) enum Round {
    Whole(Option<(Plan, i64)>),
    Part(Option<(Plan, i64)>),
}

/// When the nodes are spent, this many states go on from a segment.
const NARROW: usize = 64;
/// Then about so many states are made at a segment.
pub(super) const MOST_NARROW: usize = 20_000;
/// Each state is compared with so many lighter ones (judgement: more take longer than they spare).
pub(super) const COMPARED: usize = 128;

/// What was chosen up to and with a segment.
#[derive(Debug, Clone)]
struct State {
    /// The state of the segment before, in its list.
    from: u32,
    /// The way its segment is filled.
    fill: u32,
    /// What the room still wants.
    need: u32,
    weight: i64,
    /// Of limited kinds; nothing of others.
    used: Counts,
}

#[derive(Debug)]
pub(super) struct Search<'a> {
    model: &'a Model,
    tables: &'a Tables,
    /// Nothing heavier is looked for.
    limit: i64,
    /// By what a segment holds; empty until wanted.
    fills: Vec<Vec<Fill>>,
    /// By segment.
    states: Vec<Vec<State>>,
    /// Each segment's place in `fills`.
    segments: Vec<usize>,
    whole: bool,
}

impl<'a> Search<'a> {
    pub(super) fn new(model: &'a Model, tables: &'a Tables, limit: i64) -> Search<'a> {
        let fills = vec![Vec::new(); model.holds.len()];
        let states = Vec::new();
        Search { model, tables, limit, fills, states, segments: Vec::new(), whole: true }
    }

    pub(super) fn run(mut self, budget: &mut Budget) -> Round {
        let model = self.model;
        let start = State { from: 0, fill: 0, need: 0, weight: 0, used: [0; MOST_STOCK] };
        let mut before = vec![start];
        for (at, room) in model.rooms.iter().enumerate() {
            for state in &mut before {
                state.need = room.need;
            }
            for (place, &segment) in room.segments.iter().enumerate() {
                if self.fills[segment].is_empty() {
                    let over = self.limit - self.tables.bound;
                    let hold = model.holds[segment];
                    let (fills, whole) = fills::of(model, self.tables, (hold, over), budget);
                    self.fills[segment] = fills;
                    self.whole &= whole;
                }
                self.segments.push(segment);
                let mut states = self.next(&before, (at, place), budget);
                self.thin(&mut states, budget);
                if budget.is_spent() {
                    self.narrow(&mut states, (at, place));
                }
                self.states.push(states.clone());
                before = states;
            }
            if room.soft {
                for state in &mut before {
                    state.weight += SHORT * i64::from(state.need);
                }
            }
        }
        // They are sorted, but for what staying short adds.
        let best = before.iter().min_by(|a, b| a.weight.cmp(&b.weight));
        let found = best.map(|state| (self.plan(state), state.weight));
        if self.whole { Round::Whole(found) } else { Round::Part(found) }
    }

    /// Every state with every way to fill the segment, but for those beyond the limit.
    fn next(
        &mut self,
        before: &[State],
        (at, place): (usize, usize),
        budget: &mut Budget,
    ) -> Vec<State> {
        let segment = self.model.rooms[at].segments[place];
        let mut states = Vec::new();
        for (from, state) in before.iter().enumerate() {
            for (fill, one) in self.fills[segment].iter().enumerate() {
                let mut next = State {
                    from: from as u32,
                    fill: fill as u32,
                    need: state.need.saturating_sub(one.length),
                    weight: state.weight + one.weight,
                    used: state.used,
                };
                if self.allow(&mut next.used, &one.counts)
                    && self.bound(&next, (at, place)) <= self.limit
                {
                    states.push(next);
                }
            }
            budget.take(1 + self.fills[segment].len() as u64 / 8);
            if budget.is_spent() && states.len() > MOST_NARROW {
                self.whole = false;
                break;
            }
        }
        budget.take(states.len() as u64);
        states
    }

    /// Adds to what is used; false where there is not so much.
    fn allow(&self, used: &mut Counts, more: &Counts) -> bool {
        self.model.kinds.iter().enumerate().all(|(at, kind)| match kind.limit {
            None => true,
            Some(limit) => {
                used[at] = used[at].saturating_add(more[at]);
                used[at] <= limit
            }
        })
    }

    /// What no plan with this beginning is lighter than.
    fn bound(&self, state: &State, (at, place): (usize, usize)) -> i64 {
        let rest = reach(&self.tables.rest[at][place + 1], state.need);
        if rest >= MAKES {
            return MAKES;
        }
        let rents = self.tables.rent_of(&state.used) - self.tables.rent;
        state.weight + rents + rest + self.tables.later[at]
    }

    /// Sorts states, the lightest first and of these the best, and drops those for which another
    /// wants no more, has used no more of anything, and comes first: whatever follows the one can
    /// follow the other.
    fn thin(&self, states: &mut Vec<State>, budget: &mut Budget) {
        states.sort_unstable_by(|a, b| a.weight.cmp(&b.weight).then_with(|| self.order(a, b)));
        let mut same = Same::of(states.len());
        let mut kept: Vec<State> = Vec::new();
        let mut compared = 0;
        for state in states.drain(..) {
            let beats = |one: &State| {
                one.need <= state.need && one.used.iter().zip(&state.used).all(|(a, b)| a <= b)
            };
            compared += 1;
            if same.is_known(&kept, &state) || kept.iter().rev().take(COMPARED).any(beats) {
                continue;
            }
            same.add(&state, &kept);
            kept.push(state);
        }
        budget.take(compared);
        *states = kept;
    }

    /// Which of two states of the last segment comes first: earlier segments fuller, then the
    /// longer pieces on the earliest that differ.
    fn order(&self, a: &State, b: &State) -> Ordering {
        let (mut a, mut b) = (a, b);
        let (mut fuller, mut longer) = (Ordering::Equal, Ordering::Equal);
        let mut segment = self.segments.len() - 1;
        loop {
            let fills = &self.fills[self.segments[segment]];
            let (one, other) = (&fills[a.fill as usize], &fills[b.fill as usize]);
            if one.length != other.length {
                fuller = other.length.cmp(&one.length);
            }
            if one.counts != other.counts {
                longer = other.counts.cmp(&one.counts);
            }
            if segment == 0 || a.from == b.from {
                return fuller.then(longer);
            }
            segment -= 1;
            a = &self.states[segment][a.from as usize];
            b = &self.states[segment][b.from as usize];
        }
    }

    /// Keeps the few states of which most can be hoped.
    fn narrow(&mut self, states: &mut Vec<State>, place: (usize, usize)) {
        if states.len() > NARROW {
            self.whole = false;
            let merit = |state: &State| (self.bound(state, place), state.weight, state.need);
            states.sort_unstable_by(|a, b| merit(a).cmp(&merit(b)).then_with(|| self.order(a, b)));
            states.truncate(NARROW);
            states.sort_unstable_by(|a, b| a.weight.cmp(&b.weight).then_with(|| self.order(a, b)));
        }
    }

    fn plan(&self, last: &State) -> Plan {
        let mut plan = Vec::new();
        let mut state = last;
        for (segment, &fills) in self.segments.iter().enumerate().rev() {
            plan.push(self.fills[fills][state.fill as usize].counts);
            if segment > 0 {
                state = &self.states[segment - 1][state.from as usize];
            }
        }
        plan.reverse();
        plan
    }
}

/// Places of states by what they want and have used.
struct Same {
    places: Vec<u32>,
}

impl Same {
    fn of(states: usize) -> Same {
        Same { places: vec![u32::MAX; (2 * states + 1).next_power_of_two()] }
    }

    /// The place of a state like this one, or the free place where it belongs.
    fn place(&self, state: &State, kept: &[State]) -> usize {
        let mut mixed = u64::from(state.need);
        for &count in &state.used {
            // Knuth's multiplier by the golden section, from memory.
            mixed = (mixed ^ u64::from(count)).wrapping_mul(0x9E37_79B9_7F4A_7C15).rotate_left(23);
        }
        let mask = self.places.len() - 1;
        let mut place = mixed as usize & mask;
        loop {
            match kept.get(self.places[place] as usize) {
                Some(other) if other.need != state.need || other.used != state.used => {
                    place = (place + 1) & mask;
                }
                _ => return place,
            }
        }
    }

    fn is_known(&self, kept: &[State], state: &State) -> bool {
        self.places[self.place(state, kept)] != u32::MAX
    }

    /// Notes that `state` comes next in `kept`.
    fn add(&mut self, state: &State, kept: &[State]) {
        let place = self.place(state, kept);
        self.places[place] = kept.len() as u32;
    }
}
