//! How sure a load is: each uncertain input's range carried through to every room, to first order.
//!
//! Ranges are 10 to 90 % ranges of inputs that are independent of each other; what stands in many
//! places (a listed assembly, the leakage, the soil) moves all of them at once. Derivatives are exact,
//! through the balance of the unheated spaces too, with this held:
//! - the way the leakage goes with the temperature difference;
//! - which rooms share the air, and its volume, while the measures of a room change;
//! - a floor's shape on the ground, area to edge, while the measures of a room change;
//! - how deep a year's swing reaches into the soil, while its conductivity changes.
//!
//! Of floors on one plot that are built differently, the first one's assembly stands for all.

use super::balance::Balance;
use super::conductor::{Beyond, Conductor, Near};
use super::loss::ends;
use super::{Assembly, AssemblyId, House, Leaks, RoomId};
use crate::quantity::{Power, Temperature, TemperatureDifference};
use serde::Serialize;

/// Something that a load depends on and that nobody knows exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Subject {
    Outdoors,
    /// Gaps of the heated rooms.
    Leakage,
    /// Fans and what they recover.
    Ventilation,
    Soil,
    /// Air changes of all unheated spaces.
    SpaceAir,
    /// U of a listed assembly, wherever it stands.
    Listed(Assembly),
    /// U of an assembly of the user's own.
    Own(AssemblyId),
    /// A typed U, as the bits of its number in SI; wherever the same number stands.
    TypedU(u64),
    /// The measures of one room.
    Size(RoomId),
    /// The measures of all rooms, each by itself.
    Sizes,
    /// Windows and doors whose size was not measured.
    GuessedOpenings,
    /// Temperatures taken halfway for want of better.
    GuessedTemperature,
}

/// How an input came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    Measured,
    Label,
    Listed,
    Assumed,
}

/// Half the 10 to 90 % range of inputs, by how they came about: a share of the value, but for the
/// outdoor temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ranges {
    pub measured: f64,
    pub label: f64,
    pub listed: f64,
    pub assumed: f64,
    pub air: f64,
    pub soil: f64,
    pub outdoors: TemperatureDifference,
}

/// A 10 to 90 % band.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Band {
    #[serde(rename = "low_w")]
    pub low: Power,
    #[serde(rename = "high_w")]
    pub high: Power,
}

/// What one uncertain input does to the house's load.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Effect {
    pub subject: Subject,
    pub source: Source,
    /// Half its range: a share of its value, or kelvin for the outdoor temperature.
    pub range: f64,
    /// Half the band that it would give the load by itself.
    #[serde(rename = "alone_w")]
    pub alone: Power,
    /// How much narrower the house's band would be, from its middle, once this is measured.
    #[serde(rename = "narrows_w")]
    pub narrows: Power,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Certainty {
    pub house: Band,
    /// In the order of the rooms.
    pub rooms: Vec<Band>,
    /// What to measure next first.
    pub effects: Vec<Effect>,
}

impl Subject {
    pub fn source(self, house: &House) -> Source {
        match self {
            Subject::Leakage => match house.air.leaks {
                Leaks::Measured(_) => Source::Measured,
                Leaks::Changes(_) | Leaks::Estimated(_) => Source::Assumed,
            },
            Subject::Size(_) | Subject::Sizes => Source::Measured,
            Subject::Own(_) | Subject::TypedU(_) | Subject::Ventilation => Source::Label,
            Subject::Listed(_) | Subject::Outdoors => Source::Listed,
            Subject::Soil
            | Subject::SpaceAir
            | Subject::GuessedOpenings
            | Subject::GuessedTemperature => Source::Assumed,
        }
    }

    /// Half its range as it stands.
    pub fn range(self, house: &House) -> f64 {
        let ranges = &house.ranges;
        match self {
            Subject::Outdoors => ranges.outdoors.si(),
            Subject::Soil => ranges.soil,
            // A measured leakage still goes through a model of wind and stack.
            Subject::Leakage => match house.air.leaks {
                Leaks::Measured(_) => ranges.listed.min(ranges.air),
                Leaks::Changes(_) | Leaks::Estimated(_) => ranges.air,
            },
            _ => match self.source(house) {
                Source::Measured => ranges.measured,
                Source::Label => ranges.label,
                Source::Listed => ranges.listed,
                Source::Assumed => ranges.assumed,
            },
        }
    }

    /// Half its range once it is measured, or read from a label; as it stands where neither is to be
    /// had.
    fn range_measured(self, house: &House) -> f64 {
        let ranges = &house.ranges;
        let best = match self {
            Subject::Leakage => ranges.listed,
            Subject::Listed(_) | Subject::Own(_) => ranges.label,
            Subject::GuessedOpenings | Subject::GuessedTemperature => ranges.measured,
            _ => return self.range(house),
        };
        best.min(self.range(house))
    }
}

/// Something uncertain, and what it moves.
struct Input {
    subject: Subject,
    /// What each node loses more for the whole of a relative change, or for a kelvin, at fixed
    /// temperatures; a node may come up several times.
    moves: Vec<(usize, f64)>,
}

/// The inputs in the order of their subjects, each room's measures for themselves: the work grows with
/// the surfaces, however many inputs they bring.
fn inputs(house: &House, all: &[Vec<Conductor>], temperatures: &[Temperature]) -> Vec<Input> {
    let mut inputs = vec![Input { subject: Subject::Outdoors, moves: Vec::new() }];
    let mut add = |subject: Subject, node: usize, change: f64| {
        let place = inputs.partition_point(|known| known.subject < subject);
        if inputs.get(place).is_none_or(|known| known.subject != subject) {
            inputs.insert(place, Input { subject, moves: Vec::new() });
        }
        inputs[place].moves.push((node, change));
    };
    for (node, conductor) in each(all) {
        let (near, beyond) = ends(conductor, node, house, temperatures);
        let g = conductor.conductance.si();
        let loss = g * (near - beyond).si();
        for (subject, relative) in conductor.sensitivities.into_iter().flatten() {
            add(subject, node, relative * loss);
            // What one side loses by it, the other gains.
            if let Beyond::Node(other) = conductor.beyond {
                add(subject, other, -relative * loss);
            }
        }
        if (conductor.near, conductor.beyond) == (Near::Node, Beyond::Outdoors) {
            add(Subject::Outdoors, node, -g);
        }
    }
    inputs
}

/// Every conductor with the node that it was entered at.
fn each(all: &[Vec<Conductor>]) -> impl Iterator<Item = (usize, &Conductor)> {
    all.iter().enumerate().flat_map(|(node, own)| own.iter().map(move |c| (node, c)))
}

/// Conductance from each node to each space whose temperature is found by balance.
fn to_unknowns(all: &[Vec<Conductor>], unknowns: &[usize]) -> Vec<Vec<f64>> {
    let mut out = vec![vec![0.0; unknowns.len()]; all.len()];
    for (node, conductor) in each(all) {
        let Beyond::Node(other) = conductor.beyond else { continue };
        for (from, to) in [(node, other), (other, node)] {
            if let Some(column) = unknowns.iter().position(|&unknown| unknown == to) {
                out[from][column] += conductor.conductance.si();
            }
        }
    }
    out
}

/// The bands of the house and of each room, and what each input does to them.
pub(super) fn certainty(
    house: &House,
    all: &[Vec<Conductor>],
    temperatures: &[Temperature],
    balance: &Balance,
    loads: &[Power],
) -> Certainty {
    let to_unknown = to_unknowns(all, &balance.unknowns);
    let rooms = loads.len();
    let n = balance.unknowns.len();
    let house_to_unknown: Vec<f64> =
        (0..n).map(|u| to_unknown.iter().take(rooms).map(|row| row[u]).sum()).collect();
    // Half bands, squared.
    let mut room_squares = vec![0.0; rooms];
    let mut house_square = 0.0;
    let mut size_square = 0.0;
    // The sum, over all inputs, of the products of the shifts that they cause in the spaces. A room
    // that an input moves by spaces alone is widened by this, so that no input asks every room.
    let mut shifts = vec![vec![0.0; n]; n];
    let mut moved = vec![0.0; all.len()];
    let mut house_slopes = Vec::new();
    for Input { subject, moves } in inputs(house, all, temperatures) {
        let range = subject.range(house);
        for &(node, change) in &moves {
            moved[node] += change;
        }
        let right: Vec<f64> = balance.unknowns.iter().map(|&node| -moved[node]).collect();
        let shift = balance.solve(&right);
        let mut slope = -dot(&house_to_unknown, &shift);
        for &(node, _) in &moves {
            let change = std::mem::take(&mut moved[node]);
            if let Some(room_square) = room_squares.get_mut(node) {
                let by_spaces = dot(&to_unknown[node], &shift);
                *room_square += square(range) * (square(change) - 2.0 * change * by_spaces);
                slope += change;
            }
        }
        for (row, a) in shifts.iter_mut().zip(&shift) {
            for (cell, b) in row.iter_mut().zip(&shift) {
                *cell += square(range) * a * b;
            }
        }
        house_square += square(slope * range);
        match subject {
            Subject::Size(_) => size_square += square(slope * range),
            _ => house_slopes.push((subject, slope.abs() * range)),
        }
    }
    for (square, to) in room_squares.iter_mut().zip(&to_unknown) {
        *square += to.iter().zip(&shifts).map(|(a, row)| a * dot(row, to)).sum::<f64>();
    }
    house_slopes.push((Subject::Sizes, size_square.sqrt()));
    let half = house_square.sqrt();
    let mut effects = Vec::new();
    for (subject, alone) in house_slopes {
        let range = subject.range(house);
        let left = if range > 0.0 { alone * subject.range_measured(house) / range } else { alone };
        let rest = (house_square - square(alone) + square(left)).max(0.0).sqrt();
        let effect = Effect {
            subject,
            source: subject.source(house),
            range,
            alone: Power::from_si(alone),
            narrows: Power::from_si(half - rest),
        };
        let key = |effect: &Effect| (effect.narrows.si(), effect.alone.si());
        let place = effects.partition_point(|known| key(known) >= key(&effect));
        effects.insert(place, effect);
    }
    let band = |load: Power, square: f64| {
        let half = Power::from_si(square.max(0.0).sqrt());
        Band { low: load - half, high: load + half }
    };
    Certainty {
        house: band(loads.iter().copied().sum(), house_square),
        rooms: loads.iter().zip(room_squares).map(|(&load, square)| band(load, square)).collect(),
        effects,
    }
}

fn square(value: f64) -> f64 {
    value * value
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
