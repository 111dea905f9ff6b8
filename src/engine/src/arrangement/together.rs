//! The pieces of all rooms chosen together, once the flows are known.

mod chains;

use self::chains::{Chains, way};
use super::balance::Circuit;
use super::run::Running;
use super::size::is_outer;
use crate::building::{Room, RoomLoad, Run, Surface, SurfaceId};
use crate::job::{Job, Objective, PriceField, Stock};
use crate::quantity::{Length, Money, Power};
use crate::sizing::joint::{self, Answer, Costs, Instance, Problem, Wall};
use crate::sizing::{Choice, RunPieces, from_sixteenths, sixteenths};
use serde::Serialize;

/// Whether no other choice of pieces is better for what they are chosen for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Proof {
    Best,
    /// The search was stopped: no choice is better than the bound.
    Within {
        bound: f64,
    },
    /// The flows, which depend on the pieces, came to no rest, or water stands still or runs backward:
    /// these pieces are not known to be best.
    Unsettled,
}

/// What the value of a choice of pieces counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Counted {
    /// Heat of all elements beyond the loads on the design day, in watts.
    Surplus,
    /// Money.
    Cost,
    /// Pieces, since prices are missing.
    Pieces,
    Joints,
    /// The highest over the lowest share that a room gets of its load in mild weather.
    Spread,
}

/// How the pieces of all rooms were chosen.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Together {
    pub objective: Objective,
    pub counted: Counted,
    /// Of the pieces that were chosen; no number when it is not known.
    #[serde(skip_serializing_if = "is_unknown")]
    pub value: f64,
    pub proof: Proof,
}

impl Together {
    /// Each room's least length in the order of flow, which leaves the hottest water for those that
    /// follow.
    pub(super) fn room_by_room(job: &Job, surplus: Power) -> Together {
        Together {
            objective: job.baseboard.objective,
            counted: Counted::Surplus,
            value: surplus.si(),
            proof: Proof::Best,
        }
    }

    pub(super) fn unsettled(job: &Job) -> Together {
        Together {
            objective: job.baseboard.objective,
            counted: Counted::Surplus,
            value: f64::NAN,
            proof: Proof::Unsettled,
        }
    }
}

/// So many that most houses' choice is proven, and few enough to type on beside it: the choice is made
/// anew with every key.
const NODES: u64 = 10_000;

/// Whether choosing each room's least length by itself, in the order of flow, may not be best.
pub(super) fn is_asked(job: &Job) -> bool {
    let limited = |stock: &Stock| stock.available.is_some() || stock.have > 0;
    job.baseboard.objective != Objective::Closest
        || job.baseboard.stock.iter().any(limited)
        || job.house.rooms.iter().flat_map(|room| &room.surfaces).any(|s| !s.fixed.is_empty())
}

/// The pieces of each room by its place in the house, for the flows of `running`; `None` where water
/// stands still or runs backward.
pub(super) fn choose_together(
    job: &Job,
    loads: &[RoomLoad],
    circuits: &[Circuit],
    running: &Running,
    before: &[Choice],
) -> Option<(Vec<Choice>, Together)> {
    let (chains, places) = chains(job, loads, circuits, running)?;
    let problem = problem(job, &places);
    let answer = joint::choose_all(&problem, &chains, NODES);
    let mut choices = before.to_vec();
    // Rooms that want nothing keep their fixed pieces.
    for (at, room) in job.house.rooms.iter().enumerate() {
        if loads.get(at).is_none_or(|load| load.wanted() <= Power::ZERO)
            && let Some(choice) = choices.get_mut(at)
        {
            *choice = fixed_only(job, room);
        }
    }
    for ((way, places), pieces) in chains.ways.iter().zip(&places).zip(&answer.pieces_sixteenths) {
        for ((stop, places), pieces) in way.iter().zip(places).zip(pieces) {
            if let Some(choice) = choices.get_mut(stop.room) {
                *choice = chosen(job, places, pieces);
            }
        }
    }
    Some((choices, together(job, &problem, &answer)))
}

/// The water of each circuit, and the runs of each room on it.
fn chains(
    job: &Job,
    loads: &[RoomLoad],
    circuits: &[Circuit],
    running: &Running,
) -> Option<(Chains, Vec<Vec<Runs>>)> {
    let ways = circuits
        .iter()
        .enumerate()
        .map(|(at, circuit)| way(job, loads, circuit, at, running))
        .collect::<Option<Vec<_>>>()?;
    let places =
        ways.iter().map(|way| way.iter().map(|stop| runs(job, stop.room)).collect()).collect();
    Some((Chains::of(job, ways), places))
}

/// Each circuit's choice of pieces at least cost, written out for another solver, with what the
/// engine's own costs; none where prices are missing or the water does not run as it was laid.
pub(super) fn exported(
    job: &Job,
    loads: &[RoomLoad],
    circuits: &[Circuit],
    running: &Running,
) -> Vec<(Instance, Option<u64>)> {
    let Some((chains, places)) = chains(job, loads, circuits, running) else { return Vec::new() };
    let mut whole = problem(job, &places);
    whole.objective = joint::Objective::LeastCost;
    let mut out = Vec::new();
    for at in 0..whole.circuits.len() {
        // By itself, so that no other circuit takes of the stock.
        let mut alone = whole.clone();
        for (other, rooms) in alone.circuits.iter_mut().enumerate() {
            if other != at {
                rooms.clear();
            }
        }
        let cost = joint::choose_all(&alone, &chains, NODES).cost_cents;
        out.extend(joint::export(&alone, &chains, at, OVER_CENTS, MOST_LENGTHS).map(|i| (i, cost)));
    }
    out
}

/// What is written out costs no more than so much above the least; and no more lengths than so many.
const OVER_CENTS: u32 = 2000;
const MOST_LENGTHS: usize = 20_000;

fn together(job: &Job, problem: &Problem, answer: &Answer) -> Together {
    let counted = match problem.objective {
        joint::Objective::Closest => Counted::Surplus,
        joint::Objective::LeastCost if answer.cost_cents.is_some() => Counted::Cost,
        joint::Objective::LeastCost => Counted::Pieces,
        joint::Objective::FewestJoints => Counted::Joints,
        joint::Objective::MostEven => Counted::Spread,
    };
    // Money is counted in hundredths there.
    let shown = |value: f64| if counted == Counted::Cost { value / 100.0 } else { value };
    Together {
        objective: job.baseboard.objective,
        counted,
        value: shown(answer.value),
        proof: match answer.proof {
            joint::Proof::Optimal => Proof::Best,
            joint::Proof::Stopped => Proof::Within { bound: shown(answer.bound) },
        },
    }
}

/// A run of wall, and where it is.
struct RunPlace {
    surface: SurfaceId,
    run: Run,
    hold: Length,
    wall: Wall,
    fixed: Vec<Length>,
}

/// The runs of a room.
type Runs = Vec<RunPlace>;

/// The runs of a room that may hold pieces, and those whose pieces stay.
fn runs(job: &Job, room: usize) -> Runs {
    let Some(room) = job.house.rooms.get(room) else { return Vec::new() };
    let ends = job.baseboard.end_allowance;
    let mut places = Vec::new();
    for surface in &room.surfaces {
        for (nth, &run) in surface.runs.iter().enumerate() {
            let fixed = fixed_on(surface, nth);
            let long: Length = fixed.iter().copied().sum();
            let hold = match room.allows(surface) {
                true => (run.length - ends).max(long),
                false => long,
            };
            if hold > Length::ZERO {
                let wall = if is_outer(surface) { Wall::Outer } else { Wall::Inner };
                places.push(RunPlace { surface: surface.id, run, hold, wall, fixed });
            }
        }
    }
    places
}

fn fixed_on(surface: &Surface, run: usize) -> Vec<Length> {
    let fixed = surface.fixed.iter().find(|fixed| fixed.run == run);
    fixed.map(|fixed| fixed.pieces.clone()).unwrap_or_default()
}

/// Only the pieces that stay where they are.
pub(super) fn fixed_only(job: &Job, room: &Room) -> Choice {
    let at = job.house.rooms.iter().position(|other| other.id == room.id).unwrap_or(usize::MAX);
    let places = runs(job, at);
    let pieces: Vec<Vec<u32>> = places
        .iter()
        .map(|place| place.fixed.iter().map(|&piece| sixteenths(piece)).collect())
        .collect();
    chosen(job, &places, &pieces)
}

fn problem(job: &Job, places: &[Vec<Runs>]) -> Problem {
    let run = |place: &RunPlace| joint::Run {
        hold_sixteenths: sixteenths(place.hold),
        wall: place.wall,
        fixed_sixteenths: place.fixed.iter().map(|&piece| sixteenths(piece)).collect(),
    };
    let room = |places: &Runs| joint::Room { runs: places.iter().map(run).collect() };
    let cents = |price: Money| (price.si() * 100.0).round().clamp(0.0, 1e9) as u32;
    let each = |field| job.prices.each(field).map_or(0, cents);
    Problem {
        circuits: places.iter().map(|rooms| rooms.iter().map(room).collect()).collect(),
        stock: stock(job, places, cents),
        bare_per_piece_m: job.baseboard.bare_per_piece.si(),
        costs: Costs {
            joint_cents: each(PriceField::Joint),
            run_cents: 2 * each(PriceField::EndCap),
        },
        objective: match job.baseboard.objective {
            Objective::Closest => joint::Objective::Closest,
            Objective::LeastCost => joint::Objective::LeastCost,
            Objective::FewestJoints => joint::Objective::FewestJoints,
            Objective::MostEven => joint::Objective::MostEven,
        },
    }
}

/// What is left to choose from: pieces that stay are taken from those bought already, then from the
/// shop's.
fn stock(job: &Job, places: &[Vec<Runs>], cents: impl Fn(Money) -> u32) -> Vec<joint::Stock> {
    let mut rows = Vec::new();
    for stock in &job.baseboard.stock {
        let length_sixteenths = sixteenths(stock.length);
        let all = places.iter().flatten().flatten().flat_map(|place| &place.fixed);
        let fixed = all.filter(|&&piece| sixteenths(piece) == length_sixteenths).count() as u32;
        let enclosure =
            job.prices.by_length(PriceField::Enclosure).map_or(Money::ZERO, |p| p * stock.length);
        let have = stock.have.saturating_sub(fixed);
        if have > 0 {
            rows.push(joint::Stock {
                length_sixteenths,
                price_cents: Some(cents(enclosure)),
                available: Some(have),
            });
        }
        // What the shop does not have needs no price.
        if stock.available != Some(0) {
            rows.push(joint::Stock {
                length_sixteenths,
                price_cents: stock.price.map(|price| cents(price + enclosure)),
                available: stock
                    .available
                    .map(|n| n.saturating_sub(fixed.saturating_sub(stock.have))),
            });
        }
    }
    rows
}

fn chosen(job: &Job, places: &[RunPlace], pieces: &[Vec<u32>]) -> Choice {
    let bare = job.baseboard.bare_per_piece;
    let mut choice = Choice::none();
    for (place, pieces) in places.iter().zip(pieces).filter(|(_, pieces)| !pieces.is_empty()) {
        let pieces: Vec<Length> = pieces.iter().map(|&piece| from_sixteenths(piece)).collect();
        for &piece in &pieces {
            choice.nominal += piece;
            choice.finned += (piece - bare).max(Length::ZERO);
        }
        choice.runs.push(RunPieces { surface: place.surface, run: place.run, pieces });
    }
    choice
}

fn is_unknown(value: &f64) -> bool {
    value.is_nan()
}
