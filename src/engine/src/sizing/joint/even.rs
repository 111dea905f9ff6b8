//! The most even choice: depth first from room to room, the spread of shares so far as the bound.
//!
//! Hotter water is neither better nor worse for evenness, so no choice for the first rooms beats
//! another: in a house of many rooms the nodes run out, and the first choices are what counts.

use super::answer::{self, Bound, Found, Plan};
use super::fills::{Bounds, Candidate, Source};
use super::flow::Wish;
use super::known::{Budget, Known, Stream};
use super::limits::Used;
use super::model::{Picometres, Weight, metres};
use super::rents::{self, Goal, Tables};
use super::room::{Way, Ways, pieces};
use crate::order;

/// A room's ways, the shortest first.
#[derive(Debug)]
struct Choices {
    at: usize,
    room: usize,
    ways: Vec<Candidate>,
    /// Beside the ways, where there are as many pieces as wanted.
    cells: Vec<Way>,
}

/// What was chosen up to and with a room.
#[derive(Debug, Clone, Copy)]
struct Sofar {
    water_k: f64,
    part_k: f64,
    /// The least and the most share of its load that a room gets at part load.
    least: f64,
    most: f64,
    weight: Weight,
    used: Used,
}

impl Sofar {
    const START: Sofar = Sofar {
        water_k: 0.0,
        part_k: 0.0,
        least: f64::INFINITY,
        most: 0.0,
        weight: 0,
        used: Used::NONE,
    };

    fn ratio(&self) -> f64 {
        if self.most > 0.0 { self.most / self.least } else { 1.0 }
    }
}

struct Even<'a, 'b> {
    known: &'b Known<'a>,
    rooms: Vec<Choices>,
    /// By room: the least weight of those after it.
    later: Vec<Weight>,
    /// What the shortage and the inner walls come to, and no more.
    before: Weight,
    /// Ratio, weight, and the ways; without ways what was given.
    best: (f64, Weight, Option<Vec<usize>>),
    chosen: Vec<usize>,
    /// The least ratio of what was left out.
    open: f64,
}

/// The most even of the choices that leave no more missing and use no more inner walls than `found`.
pub(super) fn best(known: &mut Known, goals: &[Goal], found: Found, budget: &mut Budget) -> Found {
    let model = known.model;
    let is_settled = match found.bound {
        Bound::Weight(bound) => {
            model.scale.before_objective(bound) == model.scale.before_objective(found.weight)
        }
        _ => false,
    };
    let is_endless = model.kinds.iter().all(|kind| kind.limit.is_none());
    let tables = match is_endless {
        true => Tables::of(model, goals, vec![0; model.kinds.len()]),
        false => rents::raised(model, goals, known, budget),
    };
    let known = &*known;
    let mut source = Source::of(model, &model.limits, &tables);
    let (rooms, is_whole) = choices(known, goals, &mut source, found.weight, budget);
    let mut later = vec![0; rooms.len() + 1];
    for (room, least) in tables.rooms.iter().enumerate().rev() {
        later[room] = later[room + 1] + least;
    }
    let told = answer::of(model, known.water, &found, 0);
    let mut even = Even {
        known,
        rooms,
        later,
        before: model.scale.before_objective(found.weight),
        best: (told.value, found.weight, None),
        chosen: Vec::new(),
        open: if is_whole { f64::INFINITY } else { 1.0 },
    };
    let widths: &[f64] = if is_endless { &[0.0] } else { &[0.0, 0.02, 0.05, 0.1, 0.2] };
    let floors = budget.left() / (4 * (widths.len() * even.rooms.len()) as u64 * NODES_A_STEP + 1);
    let floors = floors.clamp(LEAST_FLOORS.into(), MOST_FLOORS.into()) as u32;
    for &width in widths {
        even.floors(floors, width, budget);
    }
    even.go(Sofar::START, budget);
    let Even { rooms, best: (ratio, weight, chosen), open, .. } = even;
    let mut plan = Plan::new();
    for (choices, way) in rooms.iter().zip(chosen.iter().flatten()) {
        let room = &model.circuits[choices.at][choices.room];
        plan.extend(match choices.cells.get(*way) {
            Some(way) => pieces(model, room, &tables.fills, way),
            None => source.pieces(room, &choices.ways[*way]),
        });
    }
    if chosen.is_none() {
        plan = found.plan;
    }
    let bound = if is_settled { Bound::Ratio(open.min(ratio)) } else { Bound::Unknown };
    Found { plan, weight, bound }
}

/// All rooms' ways, and whether none was left out.
fn choices(
    known: &Known,
    goals: &[Goal],
    source: &mut Source,
    weight: Weight,
    budget: &mut Budget,
) -> (Vec<Choices>, bool) {
    let model = known.model;
    let tables = source.tables;
    let is_endless = model.kinds.iter().all(|kind| kind.limit.is_none());
    // All that counts before the evenness may be as found, and everything else anything.
    let limit = model.scale.up_to_objective(weight);
    let (mut all, mut is_whole) = (Vec::new(), true);
    let mut rooms = goals.iter().zip(&tables.rest).zip(&tables.rooms);
    for (at, circuit) in model.circuits.iter().enumerate() {
        for (room, (one, ((goal, rest), least))) in circuit.iter().zip(&mut rooms).enumerate() {
            let mut choices = Choices { at, room, ways: Vec::new(), cells: Vec::new() };
            if known.hot[at][room].wish == Wish::Nothing {
                choices.ways.push(Candidate::NOTHING);
            } else if is_endless {
                choices.cells = Ways::of(model, one, &tables.fills).list;
                let way = |way: &Way| Candidate {
                    finned: way.finned - one.fixed,
                    weight: way.cell.weight,
                    ..Candidate::NOTHING
                };
                choices.ways = choices.cells.iter().map(way).collect();
            } else {
                let bounds = Bounds {
                    base: tables.bound - least,
                    limit,
                    over: limit - tables.bound,
                    most_need: Picometres::MAX,
                    is_last: false,
                };
                let mut share = budget.share(SHARES * goals.len() as u64);
                let (ways, whole) = source.room((one, goal, rest), bounds, &mut share);
                budget.take(share.taken());
                is_whole &= whole;
                choices.ways = ways;
                order::sort_by_key(&mut choices.ways, |way| (way.finned, way.weight));
            }
            all.push(choices);
        }
    }
    (all, is_whole)
}

/// Of the nodes one part in so many goes to the rooms' ways, the rest to the search.
const SHARES: u64 = 4;
/// Floors of shares that are tried first, and again about the best of these: in all as many as take half
/// of the nodes.
const MOST_FLOORS: u32 = 96;
const LEAST_FLOORS: u32 = 8;
/// A step from a way to a way costs about so many nodes of other searches (measured).
const NODES_A_STEP: u64 = 4;

impl Even<'_, '_> {
    /// What a room's way makes of a choice so far, and its share of its load at part load where it
    /// counts; `None` where it may not have it.
    fn after(&self, sofar: &Sofar, place: usize, way: &Candidate) -> Option<(Sofar, Option<f64>)> {
        let Known { model, water, hot, .. } = self.known;
        let Choices { at, room, .. } = self.rooms[place];
        let finned = model.circuits[at][room].fixed + way.finned;
        let stream = Stream { at, room, water_k: sofar.water_k };
        let needed = self.known.needed(stream, &hot[at][room]);
        let (water_k, missing) = self.known.given(stream, &hot[at][room], needed, finned)?;
        let weight = sofar.weight + way.weight + missing;
        if model.scale.before_objective(weight + self.later[place + 1]) > self.before {
            return None;
        }
        let used = model.limits.sum(&sofar.used, &way.used)?;
        let part = water.part_after(at, room, sofar.part_k, metres(finned));
        let load_w = water.load_w(at, room);
        // One that gets the most its runs take is short all the same.
        let is_met = hot[at][room].wish != Wish::Most
            && needed.is_some_and(|needed| finned >= needed)
            && load_w > 0.0;
        let share = is_met.then_some(part.output_w / load_w);
        let least = share.map_or(sofar.least, |share| share.min(sofar.least));
        let most = share.map_or(sofar.most, |share| share.max(sofar.most));
        let next = Sofar { water_k, part_k: part.water_k, least, most, weight, used };
        Some((next, share))
    }

    /// The water that comes to a room: at the first of a circuit the supply.
    fn entering(&self, sofar: &Sofar, place: usize) -> Sofar {
        let Choices { at, room, .. } = self.rooms[place];
        let water = self.known.water;
        match room {
            0 => Sofar { water_k: water.enters_k(at), part_k: water.part_enters_k(at), ..*sofar },
            _ => *sofar,
        }
    }

    fn is_better(&self, ratio: f64, weight: Weight) -> bool {
        let (known, lightest, _) = &self.best;
        ratio < *known || (ratio == *known && weight < *lightest)
    }

    /// First choices: every room gets the least share above a floor, for many floors.
    fn floors(&mut self, floors: u32, width: f64, budget: &mut Budget) {
        let Some(lowest) = self.floor((0.0, 0.0), budget) else {
            return;
        };
        let (mut low, mut high) = (lowest.least, lowest.most * 1.25);
        for _ in 0..2 {
            let step = (high - low) / f64::from(floors);
            let mut best: Option<(f64, f64)> = None;
            for at in 0..=floors {
                let floor = low + step * f64::from(at);
                if let Some(found) = self.floor((floor, floor * (1.0 + width)), budget)
                    && best.is_none_or(|(ratio, _)| found.ratio() < ratio)
                {
                    best = Some((found.ratio(), floor));
                }
            }
            let Some((_, floor)) = best else {
                return;
            };
            (low, high) = (floor - step, floor + step);
        }
    }

    /// In every room the way that is lightest with rents and whose share is from `low` to `high`; if
    /// none is, the least share above, or else the most below.
    fn floor(&mut self, (low, high): (f64, f64), budget: &mut Budget) -> Option<Sofar> {
        let mut sofar = Sofar::START;
        let mut chosen = Vec::new();
        for place in 0..self.rooms.len() {
            let here = self.entering(&sofar, place);
            let Choices { at, room, ref ways, .. } = self.rooms[place];
            let Known { model, water, .. } = self.known;
            let fixed = model.circuits[at][room].fixed;
            let load_w = water.load_w(at, room);
            let share_of = |way: &Candidate| {
                let finned_m = metres(fixed + way.finned);
                water.part_after(at, room, here.part_k, finned_m).output_w / load_w.max(1e-9)
            };
            let first = ways.partition_point(|way| share_of(way) < low);
            let end = ways.partition_point(|way| share_of(way) <= high).max(first);
            let mut between: Vec<usize> = (first..end).collect();
            order::sort_by_key(&mut between, |&way| ways[way].rented);
            let others = (end..ways.len()).chain((0..first).rev());
            let allowed = |way: usize| Some((way, self.after(&here, place, &ways[way])?.0));
            let (way, next) = between.into_iter().chain(others).find_map(allowed)?;
            chosen.push(way);
            sofar = next;
        }
        budget.take(self.rooms.len() as u64 * NODES_A_STEP);
        self.meet(&sofar, chosen);
        Some(sofar)
    }

    fn meet(&mut self, sofar: &Sofar, chosen: Vec<usize>) {
        if self.is_better(sofar.ratio(), sofar.weight) {
            self.best = (sofar.ratio(), sofar.weight, Some(chosen));
        }
    }

    /// Goes on from what is chosen for the first rooms.
    fn go(&mut self, sofar: Sofar, budget: &mut Budget) {
        let place = self.chosen.len();
        if place == self.rooms.len() {
            return self.meet(&sofar, self.chosen.clone());
        }
        let here = self.entering(&sofar, place);
        let mut next = Vec::new();
        for (way, one) in self.rooms[place].ways.iter().enumerate() {
            budget.take(NODES_A_STEP);
            let Some((after, share)) = self.after(&here, place, one) else {
                continue;
            };
            if self.is_better(after.ratio(), after.weight + self.later[place + 1]) {
                next.push((way, after));
            } else if share.is_some_and(|share| share > self.best.0 * after.least) {
                // Longer ways give a greater share still.
                break;
            }
        }
        order::sort_by(&mut next, |(_, a), (_, b)| {
            a.ratio().total_cmp(&b.ratio()).then(a.weight.cmp(&b.weight))
        });
        for (way, after) in next {
            if budget.is_spent() {
                self.open = self.open.min(after.ratio());
                return;
            }
            if self.is_better(after.ratio(), after.weight + self.later[place + 1]) {
                self.chosen.push(way);
                self.go(after, budget);
                self.chosen.pop();
            }
        }
    }
}
