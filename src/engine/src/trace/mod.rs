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
mod plant;
mod spaces;
mod water;

pub use formula::{Formula, Source};

use crate::building::{Assembly, Build, Path, RoomId};
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
    /// What the boiler must be able to give.
    NeededOutput,
    /// The liquid in all of the system.
    SystemVolume,
    /// The least expansion tank.
    TankSize,
    /// Cold, where it was not typed.
    FillPressure,
}

/// The steps that lead to the number `topic`, in the order of calculation; empty when the design
/// has no such number.
pub fn working(job: &Job, design: &Design, topic: Topic) -> Vec<Step> {
    let mut steps = Steps::default();
    let to = &mut steps;
    let found = match topic {
        Topic::HouseLoad => heat::house_load(to, design),
        Topic::RoomLoad(room) => heat::room_load(to, design, room),
        Topic::PathLoss(room, path) => heat::path_loss(to, job, design, room, path),
        Topic::SpaceTemperature(space) => spaces::temperature(to, job, design, space),
        Topic::HouseAir => air::house_air(to, job),
        Topic::Band => heat::band(to, design),
        Topic::ListedU(assembly) => assembly.build().map(|build| layers::built(to, &build)),
        Topic::PerArea(room) => heat::per_area(to, job, design, room),
        Topic::Over(room) => water::over(to, design, room),
        Topic::Pieces(room) => water::pieces(to, design, room),
        Topic::Element => water::element(to, design),
        Topic::BoilerHeat => water::boiler_heat(to, design),
        Topic::Needed(room) => water::needed(to, job, design, room),
        Topic::Output(room) => water::output(to, job, design, room),
        Topic::RuleOfThumb(room) => water::rule_of_thumb(to, job, design, room),
        Topic::Flow => water::flow(to, job, design),
        Topic::Pipe(place) => water::pipe(to, job, design, place),
        Topic::Drop => water::drop(to, design),
        Topic::Velocity => water::velocity(to, design),
        Topic::Pressure(place) => water::pressure(to, job, design, place),
        Topic::NeededOutput => plant::needed_output(to, job, design),
        Topic::SystemVolume => plant::volume(to, job, design),
        Topic::TankSize => plant::tank_size(to, job, design),
        Topic::FillPressure => plant::fill_pressure(to, job),
        Topic::Head => water::head(to, job, design),
    };
    match found {
        Some(()) => steps.done,
        None => Vec::new(),
    }
}

/// The steps from the layers of an assembly to its U.
pub fn built_u(build: &Build) -> Vec<Step> {
    let mut steps = Steps::default();
    layers::built(&mut steps, build);
    steps.done
}

/// A number of the design, found by the steps before it. `None` when the design has none such.
type Found = Option<()>;

/// Steps in the making. Numbers are in SI; which quantity each is follows from its symbol.
#[derive(Default)]
struct Steps {
    done: Vec<Step>,
    /// The terms of the sum that comes next.
    parts: Vec<Term>,
}

impl Steps {
    /// Adds a step, unless it is there, with `numbers` in the order in which the formula first names
    /// their symbols; gives its result.
    fn add(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str) -> f64 {
        let (result, names) = evaluate(formula.text(), numbers);
        let terms = names.into_iter().zip(numbers).map(|(name, si)| term(name, *si)).collect();
        self.push(Step { formula, terms, result: term(symbol, result) });
        result
    }

    /// Adds a step whose result counts as nothing where it is not positive; it is then left out.
    fn positive(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str) -> f64 {
        let result = self.add(formula, numbers, symbol);
        // Rounding leaves no layers.
        if result > 1e-9 {
            return result;
        }
        self.done.pop();
        0.0
    }

    /// Adds the step whose result is a number of the design.
    fn give(&mut self, formula: Formula, numbers: &[f64], symbol: &'static str, si: f64) -> Found {
        self.add(formula, numbers, symbol);
        self.done.last_mut()?.result.value.si = si;
        Some(())
    }

    /// A term of the sum that comes next.
    fn part(&mut self, symbol: &'static str, si: f64) {
        self.parts.push(term(symbol, si));
    }

    /// The sum of the parts; a single one is the sum itself, under its name.
    fn sum(&mut self, symbol: &'static str) -> f64 {
        let sum = self.parts.iter().map(|term| term.value.si).sum();
        if let [only] = self.parts[..] {
            if let Some(last) = self.done.last_mut().filter(|last| last.result == only) {
                last.result.symbol = symbol;
            }
            self.parts.clear();
        } else if !self.parts.is_empty() {
            self.spread(Formula::Sum, symbol, sum);
        }
        sum
    }

    /// The sum of the parts, also of a single one or none.
    fn total(&mut self, symbol: &'static str, si: f64) -> Found {
        self.spread(Formula::Sum, symbol, si);
        Some(())
    }

    fn spread(&mut self, formula: Formula, symbol: &'static str, si: f64) {
        let terms = std::mem::take(&mut self.parts);
        self.push(Step { formula, terms, result: term(symbol, si) });
    }

    fn push(&mut self, step: Step) {
        if !self.done.contains(&step) {
            self.done.push(step);
        }
    }
}

fn term(symbol: &'static str, si: f64) -> Term {
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
        "Vol_s" | "Vol_p" | "Vol_g" | "Vol_t" => Kind::LiquidVolume,
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
            "dp" | "p" => Kind::Pressure,
            _ => Kind::Number,
        },
    }
}
