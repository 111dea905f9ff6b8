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
use super::conductor::{Beyond, Conductor, Near, Nodes};
use super::loss::ends;
use super::{Assembly, AssemblyId, House, Leaks, RoomId};
use crate::quantity::{Power, Temperature, TemperatureDifference};
use serde::Serialize;

/// Something that a load depends on and that nobody knows exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
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

/// Derivatives of what each node loses, at fixed temperatures.
struct Slopes {
    /// Subjects that move many rooms.
    shared: Vec<Subject>,
    /// Of each node, by each shared subject.
    by_shared: Vec<Vec<f64>>,
    /// For each node, what its measures change: itself and the nodes beside it. Kept apart, so that
    /// the work grows with the rooms and not with their square.
    by_size: Vec<Vec<(usize, f64)>>,
    /// Conductance from each node to each space whose temperature is found by balance.
    to_unknown: Vec<Vec<f64>>,
}

fn slopes(
    house: &House,
    nodes: &Nodes,
    all: &[Vec<Conductor>],
    temperatures: &[Temperature],
    balance: &Balance,
) -> Slopes {
    let mut shared = vec![Subject::Outdoors];
    for (subject, _) in all.iter().flatten().flat_map(|c| c.sensitivities.into_iter().flatten()) {
        if !matches!(subject, Subject::Size(_)) && !shared.contains(&subject) {
            shared.push(subject);
        }
    }
    let mut by_shared = vec![vec![0.0; shared.len()]; all.len()];
    let mut by_size: Vec<Vec<(usize, f64)>> = vec![Vec::new(); all.len()];
    let mut to_unknown = vec![vec![0.0; balance.unknowns.len()]; all.len()];
    let unknown = |node: usize| balance.unknowns.iter().position(|&known| known == node);
    for (node, conductor) in
        all.iter().enumerate().flat_map(|(node, own)| own.iter().map(move |c| (node, c)))
    {
        let (near, beyond) = ends(conductor, node, house, temperatures);
        let g = conductor.conductance.si();
        let loss = g * (near - beyond).si();
        let other = match conductor.beyond {
            Beyond::Node(other) => Some(other),
            _ => None,
        };
        // What one side loses by it, the other gains.
        for (at, sign) in [(Some(node), 1.0), (other, -1.0)] {
            let Some(at) = at else { continue };
            for (subject, relative) in conductor.sensitivities.into_iter().flatten() {
                let change = sign * relative * loss;
                if let Subject::Size(id) = subject {
                    let moved = &mut by_size[nodes.find(id).unwrap_or(node)];
                    match moved.iter_mut().find(|(known, _)| *known == at) {
                        Some((_, sum)) => *sum += change,
                        None => moved.push((at, change)),
                    }
                } else if let Some(column) = shared.iter().position(|&known| known == subject) {
                    by_shared[at][column] += change;
                }
            }
        }
        if (conductor.near, conductor.beyond) == (Near::Node, Beyond::Outdoors) {
            // The outdoor temperature comes first.
            by_shared[node][0] -= g;
        }
        if let Some(other) = other {
            for (from, to) in [(node, other), (other, node)] {
                if let Some(column) = unknown(to) {
                    to_unknown[from][column] += g;
                }
            }
        }
    }
    Slopes { shared, by_shared, by_size, to_unknown }
}

/// The bands of the house and of each room, and what each input does to them.
pub(super) fn certainty(
    house: &House,
    nodes: &Nodes,
    all: &[Vec<Conductor>],
    temperatures: &[Temperature],
    balance: &Balance,
    loads: &[Power],
) -> Certainty {
    let slopes = slopes(house, nodes, all, temperatures, balance);
    let rooms = loads.len();
    let house_to_unknown: Vec<f64> = (0..balance.unknowns.len())
        .map(|u| slopes.to_unknown.iter().take(rooms).map(|row| row[u]).sum())
        .collect();
    // Half bands, squared.
    let mut room_squares = vec![0.0; rooms];
    let mut house_square = 0.0;
    let mut effects = Vec::new();
    let mut house_slopes = Vec::new();
    for (column, &subject) in slopes.shared.iter().enumerate() {
        let range = subject.range(house);
        let right: Vec<f64> =
            balance.unknowns.iter().map(|&node| -slopes.by_shared[node][column]).collect();
        let shift = balance.solve(&right);
        let mut total = 0.0;
        let nodes = slopes.by_shared.iter().zip(&slopes.to_unknown);
        // The rooms come first.
        for (room_square, (own, to)) in room_squares.iter_mut().zip(nodes) {
            let slope = own[column] - dot(to, &shift);
            *room_square += square(slope * range);
            total += slope;
        }
        house_square += square(total * range);
        house_slopes.push((subject, total.abs() * range));
    }
    let range = house.ranges.measured;
    let mut size_square = 0.0;
    let n = balance.unknowns.len();
    // The sum, over all measures, of the products of the shifts that they cause.
    let mut shifts = vec![vec![0.0; n]; n];
    for moved in &slopes.by_size {
        let mut right = vec![0.0; n];
        let mut direct = 0.0;
        for &(node, change) in moved {
            match balance.unknowns.iter().position(|&known| known == node) {
                Some(row) => right[row] -= change,
                None if node < rooms => direct += change,
                None => {}
            }
        }
        let shift = balance.solve(&right);
        for &(node, change) in moved.iter().filter(|(node, _)| *node < rooms) {
            let by_spaces = dot(&slopes.to_unknown[node], &shift);
            room_squares[node] += square(range) * (square(change) - 2.0 * change * by_spaces);
        }
        for (row, a) in shifts.iter_mut().zip(&shift) {
            for (cell, b) in row.iter_mut().zip(&shift) {
                *cell += square(range) * a * b;
            }
        }
        size_square += square(range * (direct - dot(&house_to_unknown, &shift)));
    }
    for (square, to) in room_squares.iter_mut().zip(&slopes.to_unknown) {
        *square += to.iter().zip(&shifts).map(|(a, row)| a * dot(row, to)).sum::<f64>();
    }
    house_square += size_square;
    house_slopes.push((Subject::Sizes, size_square.sqrt()));
    let half = house_square.sqrt();
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
