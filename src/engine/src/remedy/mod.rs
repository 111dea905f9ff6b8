//! Ways out for rooms that are short, worked out and priced: each is tried on the job, which is sized
//! anew with it.
//!
//! That takes as long as many designs, so it is done after the design and in steps, none of which sizes
//! the job more than once.

mod circuit;
mod price;
mod search;
mod tries;

use self::search::{Search, Turn};
use self::tries::{Try, tries};
use crate::building::{RoomId, RoomLoad, SurfaceId};
use crate::design::{Design, RoomElement};
use crate::job::Job;
use crate::quantity::{Area, Length, Money, Power, Resistance, Temperature, VolumeFlow};
use crate::takeoff::item::Class;
use serde::Serialize;
use std::collections::VecDeque;

/// A way out that was tried, with how much of it is needed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Way {
    /// To be set at the boiler.
    HotterWater {
        #[serde(rename = "supply_k")]
        supply: Temperature,
    },
    /// So many times the output a foot, in all rooms.
    BetterElement {
        factor: f64,
        /// Of element in the house, then.
        #[serde(rename = "element_m")]
        element: Length,
    },
    /// Baseboard also at a wall of the room that is ruled out.
    RuledOutWall {
        wall: SurfaceId,
        /// Of pieces there.
        #[serde(rename = "pieces_m")]
        pieces: Length,
    },
    /// Baseboard also at an inside wall that is not entered.
    NewWall {
        /// That must be free there.
        #[serde(rename = "length_m")]
        length: Length,
    },
    MoreFlow {
        /// Through the boiler.
        #[serde(rename = "flow_m3_s")]
        flow: VolumeFlow,
        circulator: Circulator,
    },
    /// A circuit of its own from this room on.
    SecondCircuit {
        from: RoomId,
        /// That is needed besides: there from the boiler, and back from the room before.
        #[serde(rename = "pipe_m")]
        pipe: Length,
    },
    /// By whatever means.
    LessLoss {
        #[serde(rename = "by_w")]
        by: Power,
    },
    Insulate {
        surface: SurfaceId,
        /// Of the whole assembly, as it must become.
        #[serde(rename = "resistance_m2k_w")]
        resistance: Resistance,
        #[serde(rename = "area_m2")]
        area: Area,
    },
    /// The room as the first of its loop.
    MoveFirst,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Circulator {
    GivesIt,
    TooSmall,
}

/// What a way out comes to.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Does {
    /// No room is short.
    HeatsAll,
    /// This one is heated, another is not.
    HeatsRoom,
    /// As much as can be had of it is too little.
    NotEnough {
        #[serde(rename = "remains_w")]
        remains: Power,
    },
}

/// A way out of one room's shortage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Worked {
    pub room: RoomId,
    pub way: Way,
    pub does: Does,
    /// Of what has a price; none where nothing of it has, or nobody knows what would be bought.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<Money>,
    pub unpriced: Vec<Class>,
}

impl Worked {
    /// By which ways out are put in order: those that heat all rooms, then those that heat this one; of
    /// these the priced, cheapest first.
    fn rank(&self) -> (u8, bool, f64) {
        let does = match self.does {
            Does::HeatsAll => 0,
            Does::HeatsRoom => 1,
            Does::NotEnough { .. } => 2,
        };
        let priced = self.cost.filter(|_| self.unpriced.is_empty());
        (does, priced.is_none(), self.cost.map_or(0.0, Money::si))
    }

    /// Puts another in its place among those of its room.
    pub fn insert_into(self, list: &mut Vec<Worked>) {
        let rank = self.rank();
        let after = |known: &Worked| known.room != self.room || known.rank() <= rank;
        let from = list.iter().position(|known| known.room == self.room).unwrap_or(list.len());
        let later = list.iter().skip(from).position(|known| !after(known));
        let end = list.iter().rposition(|known| known.room == self.room).map_or(from, |at| at + 1);
        list.insert(later.map_or(end, |at| from + at), self);
    }
}

/// The work on all ways out of a design.
#[derive(Debug)]
pub struct Remedies {
    case: Case,
    todo: VecDeque<(usize, Try)>,
    now: Option<Search>,
}

/// What came of a step.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// Something is still being tried.
    Working,
    Found(Worked),
    Done,
}

/// The job that is in trouble.
#[derive(Debug)]
struct Case {
    job: Job,
    design: Design,
    loads: Vec<RoomLoad>,
}

/// A job tried: what its rooms get.
#[derive(Debug, Clone)]
struct Tried {
    elements: Vec<RoomElement>,
    does: Does,
}

impl Remedies {
    /// For the first room of each circuit that is short. What is done for it changes the water of those
    /// behind it, so that numbers for them would hold only until then.
    pub fn new(job: &Job, design: &Design) -> Remedies {
        let loads: Vec<RoomLoad> = design.rooms.iter().map(|room| room.load.clone()).collect();
        let case = Case { job: job.clone(), design: design.clone(), loads };
        let short = first_short(&case);
        let todo =
            short.into_iter().flat_map(|at| tries(&case, at).into_iter().map(move |t| (at, t)));
        Remedies { todo: todo.collect(), case, now: None }
    }

    /// Takes one step.
    pub fn step(&mut self) -> Step {
        let mut search = match self.now.take() {
            Some(search) => search,
            None => match self.todo.pop_front() {
                Some((at, what)) => match Search::begin(&self.case, at, what) {
                    Some(search) => search,
                    // Nothing of it can be had.
                    None => return Step::Working,
                },
                None => return Step::Done,
            },
        };
        match search.turn(&self.case) {
            Turn::On => {
                self.now = Some(search);
                Step::Working
            }
            Turn::Nothing => Step::Working,
            Turn::Found(worked) => Step::Found(worked),
        }
    }

    /// All steps at once.
    pub fn all(job: &Job, design: &Design) -> Vec<Worked> {
        let mut remedies = Remedies::new(job, design);
        let mut list = Vec::new();
        loop {
            match remedies.step() {
                Step::Working => {}
                Step::Found(worked) => worked.insert_into(&mut list),
                Step::Done => return list,
            }
        }
    }
}

/// The first room of each circuit that is short, by its place; none while the flows are not found.
fn first_short(case: &Case) -> Vec<usize> {
    let Case { job, design, .. } = case;
    if design.piping.not_solved.is_some() {
        return Vec::new();
    }
    let is_short = |at: &usize| {
        let short = design.rooms.get(*at).map_or(Power::ZERO, |room| room.short());
        short > Power::ZERO && short.is_finite()
    };
    let mut found = Vec::new();
    for zone in &job.zones {
        match zone.arrangement.has_branches() {
            // Between two mains each is a circuit.
            true => found.extend(zone.loops.iter().flatten().copied().filter(is_short)),
            false => found
                .extend(zone.loops.iter().filter_map(|rooms| rooms.iter().copied().find(is_short))),
        }
    }
    found
}

/// What the rooms of `elements` are short of: the one at `at`, and all together.
fn does(loads: &[RoomLoad], elements: &[RoomElement], at: usize) -> Does {
    let short = |load: &RoomLoad, element: &RoomElement| {
        let short = load.wanted() - element.output;
        // A billionth of the load is rounding, not cold.
        if short.si() <= 1e-9 * load.total.si().abs() { Power::ZERO } else { short }
    };
    let mut does = Does::HeatsAll;
    for (index, (load, element)) in loads.iter().zip(elements).enumerate() {
        let remains = short(load, element);
        match (index == at, remains > Power::ZERO) {
            (true, true) => return Does::NotEnough { remains },
            (false, true) => does = Does::HeatsRoom,
            (_, false) => {}
        }
    }
    does
}
