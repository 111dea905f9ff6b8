//! The exact choice of stock pieces for all rooms together. Water cools on its way, so each foot in
//! one room raises what the rooms after it need; and rooms may share pieces of which there are few.
//!
//! Whole sixteenths of an inch, whole cents, whole microwatts and picometres: sums do not depend on
//! their order, and an answer is the same everywhere.

mod ahead;
mod answer;
mod even;
mod export;
mod fills;
mod flow;
mod known;
mod leftover;
mod limited;
mod limits;
mod model;
mod rents;
mod room;
mod search;
mod short;

pub use answer::{Answer, Proof};
pub use export::{Instance, Length, RoomRow, RunRow, StockRow, export};

use known::Budget;
use model::Model;
use room::Fills;

/// A length that can be bought, or that lies there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stock {
    /// Lengths may stand more than once: pieces that were bought already are a row of their own
    /// with no price to pay and a limit.
    pub length_sixteenths: u32,
    /// Where one length has no price, pieces are counted instead of cents.
    pub price_cents: Option<u32>,
    /// How many there are for all rooms together; `None` is as many as wanted.
    pub available: Option<u32>,
}

/// Inner walls are used only where nothing else will do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wall {
    Outer,
    Inner,
}

/// A stretch of wall for baseboard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    pub hold_sixteenths: u32,
    pub wall: Wall,
    /// Pieces that stand there whatever is chosen. They cost nothing here, take of what the run
    /// holds, give heat, and count as pieces and joints.
    pub fixed_sixteenths: Vec<u32>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Room {
    pub runs: Vec<Run>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Costs {
    /// Of each soldered joint: a run of some pieces has one more than pieces.
    pub joint_cents: u32,
    /// Of each run that holds pieces: its two end caps.
    pub run_cents: u32,
}

/// What is sought once every room has its heat and as few inner walls as can be are used. Equal
/// choices are told apart by the fewest pieces, then by the least length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Objective {
    /// The least heat beyond the loads.
    Closest,
    /// The least sum of prices, joints and runs; where a length has no price, the fewest pieces.
    LeastCost,
    /// The fewest joints, then the least cost.
    FewestJoints,
    /// At part load, the least ratio of the best served room's share of its load to the worst's.
    MostEven,
}

#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// The rooms of each circuit in the order in which the water comes to them.
    pub circuits: Vec<Vec<Room>>,
    pub stock: Vec<Stock>,
    /// Bare tube on each piece: it takes wall and gives no heat.
    pub bare_per_piece_m: f64,
    pub costs: Costs,
    pub objective: Objective,
}

/// How the water goes through each circuit.
///
/// The choice is exact if these hold: `needed_m` never rises with hotter water; `after` never falls
/// with hotter water and never rises with length; output rises with both. For
/// [`Objective::Closest`] the heat of a circuit's rooms must besides follow how far its water cools.
pub trait Water {
    /// Before the first room.
    fn enters_k(&self, circuit: usize) -> f64;
    /// The finned length that gives a room its load with water of this temperature; `None` where
    /// no length would do, 0 where nothing is wanted.
    fn needed_m(&self, circuit: usize, room: usize, water_k: f64) -> Option<f64>;
    /// Behind a room with this finned length.
    fn after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After;
    fn load_w(&self, circuit: usize, room: usize) -> f64;
    /// As `enters_k` at part load.
    fn part_enters_k(&self, circuit: usize) -> f64;
    /// As `after` at part load.
    fn part_after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After;
}

/// What leaves a room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct After {
    /// Of the water that goes on to the next room.
    pub water_k: f64,
    /// What the room gets.
    pub output_w: f64,
}

/// Nodes that are plenty for a house.
pub const NODES: u64 = 200_000;

/// Chooses pieces for every room. `nodes` bounds the search where stock is limited; it is counted,
/// not timed, so that an answer is the same everywhere.
///
/// A room whose runs are too short even for the hottest water that can reach it gets the most finned
/// length that they take, and the others go on; a room that wants nothing keeps its fixed pieces
/// only. Where there are not pieces enough for the other rooms too, the least heat in all is left
/// missing.
///
/// Without limits the rooms touch each other by the water alone: labels of (weight, water) go from
/// room to room, and those that another is as light and as hot as are dropped. A limit is first
/// relaxed to a rent, which gives a bound for every part of a choice; then labels of (weight, water,
/// pieces used) go from room to room within a band above the bound.
pub fn choose_all(problem: &Problem, water: &dyn Water, nodes: u64) -> Answer {
    let model = Model::of(problem);
    let mut budget = Budget::of(nodes);
    let fills = Fills::of(&model, &model.kinds);
    let circuits = flow::circuits(&model, water, &fills);
    let endless = flow::cheapest(&model, water, &fills, &circuits);
    let found = limited::best(&model, water, &circuits, endless, &mut budget);
    answer::of(&model, water, &found, budget.taken())
}
