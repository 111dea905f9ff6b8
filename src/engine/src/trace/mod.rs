//! The working behind each result: formula, numbers, source.
//!
//! Neutral: symbols and values, no words. The page writes it out in the reader's units; a test
//! evaluates each formula's text and compares it with the engine's number.

mod formula;
mod heat;
mod water;

pub use formula::{Formula, Source};

use crate::building::{Path, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::network::Place;
use crate::quantity::Value;
use serde::Serialize;

/// A symbol with its value.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Term {
    pub symbol: &'static str,
    pub value: Value,
}

/// One step: a formula with its numbers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    pub formula: Formula,
    /// In the order in which the formula's text names them.
    pub terms: Vec<Term>,
    pub result: Term,
}

/// A number on the page that opens to its working.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Topic {
    HouseLoad,
    RoomLoad(RoomId),
    /// Heat along one path of a room.
    PathLoss(RoomId, Path),
    /// A room's load on each part of its floor.
    PerArea(RoomId),
    /// The finned length that a room needs.
    Needed(RoomId),
    /// What a room's element gives, and the water that leaves it.
    Output(RoomId),
    /// What the element gives beyond the load, as a share of it; or what it is short of.
    Over(RoomId),
    /// The nominal length of a room's pieces.
    Pieces(RoomId),
    /// The nominal length of all pieces.
    Element,
    RuleOfThumb(RoomId),
    Flow,
    /// Temperature after a stretch of bare pipe.
    Pipe(Place),
    Drop,
    Velocity,
    /// Pressure lost on one stretch.
    Pressure(Place),
    Head,
    /// What the boiler puts back.
    BoilerHeat,
}

/// The steps that lead to the number `topic`, in the order of calculation; empty when the design
/// has no such number.
pub fn working(job: &Job, design: &Design, topic: Topic) -> Vec<Step> {
    let steps = match topic {
        Topic::HouseLoad => Some(heat::house_load(design)),
        Topic::RoomLoad(room) => heat::room_load(design, room),
        Topic::PathLoss(room, path) => heat::path_loss(job, design, room, path),
        Topic::PerArea(room) => heat::per_area(job, design, room),
        Topic::Over(room) => water::over(design, room),
        Topic::Pieces(room) => water::pieces(design, room),
        Topic::Element => Some(water::element(design)),
        Topic::BoilerHeat => Some(water::boiler_heat(design)),
        Topic::Needed(room) => water::needed(job, design, room),
        Topic::Output(room) => water::output(job, design, room),
        Topic::RuleOfThumb(room) => water::rule_of_thumb(job, design, room),
        Topic::Flow => Some(water::flow(job, design)),
        Topic::Pipe(place) => water::pipe(job, design, place),
        Topic::Drop => Some(water::drop(design)),
        Topic::Velocity => water::velocity(job, design),
        Topic::Pressure(place) => water::pressure(job, design, place),
        Topic::Head => Some(water::head(design)),
    };
    steps.unwrap_or_default()
}

fn term(symbol: &'static str, value: impl Into<Value>) -> Term {
    Term { symbol, value: value.into() }
}

fn number(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value: Value::number(value) }
}

fn step(formula: Formula, terms: Vec<Term>, result: Term) -> Step {
    Step { formula, terms, result }
}
