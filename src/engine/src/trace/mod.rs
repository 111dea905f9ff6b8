//! The working behind each result: formula, numbers, source.
//!
//! Neutral: symbols and values, no words. The page writes it out in the reader's units; a test
//! evaluates each formula's text and compares it with the engine's number.

mod air;
mod evaluate;
mod formula;
mod ground;
mod heat;
mod layers;
mod spaces;
mod water;

pub use formula::{Formula, Source};
pub use layers::built_u;

use crate::building::{Assembly, Path, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::network::Place;
use crate::quantity::{Kind, Value};
use evaluate::evaluate;
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
    /// Heat along one path of a room or an unheated space.
    PathLoss(RoomId, Path),
    /// The temperature of an unheated space, from its balance.
    SpaceTemperature(RoomId),
    /// What leaks into the whole house, with what fans draw in.
    HouseAir,
    /// How sure the house's load is.
    Band,
    /// The U of a listed assembly that is built up from layers.
    ListedU(Assembly),
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
        Topic::SpaceTemperature(space) => spaces::temperature(job, design, space),
        Topic::HouseAir => Some(air::house_air(job)),
        Topic::Band => Some(heat::band(design)),
        Topic::ListedU(assembly) => assembly.build().map(|build| built_u(&build)),
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

/// Steps in the making. Numbers are in SI; which quantity each is follows from its symbol.
#[derive(Default)]
struct Steps(Vec<Step>);

/// A symbol with its number.
type Part = (&'static str, f64);

impl Steps {
    /// Adds a step, unless it is there, with `numbers` in the order in which the formula first names
    /// their symbols; gives its result.
    fn add(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str) -> f64 {
        let (result, names) = evaluate(formula.text(), numbers);
        let parts = names.into_iter().zip(numbers.iter().copied());
        self.push(formula, parts.map(term).collect(), (symbol, result))
    }

    /// Adds a step whose result counts as nothing where it is not positive; it is then left out.
    fn positive(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str) -> f64 {
        let result = self.add(formula, numbers, symbol);
        // Rounding leaves no layers.
        if result > 1e-9 {
            return result;
        }
        self.0.pop();
        0.0
    }

    /// Adds parts of one kind; a single one is the sum itself, under its name.
    fn sum(&mut self, parts: &mut dyn Iterator<Item = Part>, symbol: &'static str) -> f64 {
        let terms: Vec<Term> = parts.map(term).collect();
        if let [only] = terms[..] {
            if let Some(last) = self.0.last_mut().filter(|last| last.result == only) {
                last.result.symbol = symbol;
            }
            return only.value.si;
        }
        let sum = terms.iter().map(|term| term.value.si).sum();
        match terms.is_empty() {
            true => sum,
            false => self.push(Formula::Sum, terms, (symbol, sum)),
        }
    }

    /// Adds a step whose result the design holds.
    fn give(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str, si: f64) {
        self.add(formula, numbers, symbol);
        if let Some(last) = self.0.last_mut() {
            last.result.value.si = si;
        }
    }

    /// The steps, ended by the one that gives a number of the design.
    fn end(
        mut self,
        formula: Formula,
        numbers: &[f64],
        symbol: &'static str,
        si: f64,
    ) -> Vec<Step> {
        self.give(formula, numbers, symbol, si);
        self.0
    }

    fn push(&mut self, formula: Formula, terms: Vec<Term>, result: Part) -> f64 {
        let step = Step { formula, terms, result: term(result) };
        if !self.0.contains(&step) {
            self.0.push(step);
        }
        result.1
    }
}

fn term((symbol, si): Part) -> Term {
    Term { symbol, value: Value::new(kind(symbol), si) }
}

/// What a symbol stands for everywhere.
fn kind(symbol: &str) -> Kind {
    match symbol {
        "V" => Kind::VolumeFlow,
        "d" | "e" => Kind::SmallLength,
        "h" | "H" => Kind::Head,
        "s" => Kind::Share,
        "v_w" => Kind::Wind,
        "q_A" => Kind::PowerDensity,
        "U_p" | "F_edge" => Kind::LinearTransmittance,
        "A_L" | "A_50" | "A_flue" | "A_v" => Kind::SmallArea,
        // The gas law counts from absolute zero, so that the page must not show this in °C.
        "T_abs" => Kind::TemperatureDifference,
        _ => match symbol.split('_').next().unwrap_or_default() {
            "Q" => Kind::Power,
            "q" => Kind::LinearPower,
            "T" => Kind::Temperature,
            "dT" => Kind::TemperatureDifference,
            "U" => Kind::Transmittance,
            "R" => Kind::Resistance,
            "G" => Kind::LossCoefficient,
            "psi" => Kind::LinearTransmittance,
            "lambda" => Kind::Conductivity,
            "A" => Kind::Area,
            "Vol" => Kind::Volume,
            "V" => Kind::AirFlow,
            "N" => Kind::ChangeRate,
            "L" | "P" | "B" | "D" | "d" | "w" | "z" | "h" | "delta" => Kind::Length,
            "m" => Kind::MassFlow,
            "rho" => Kind::Density,
            "c" => Kind::SpecificHeat,
            "v" => Kind::Velocity,
            "mu" => Kind::Viscosity,
            "dp" => Kind::Pressure,
            _ => Kind::Number,
        },
    }
}
