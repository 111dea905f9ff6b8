//! Rooms: cool ones, and why.

use super::at::{Air, At, Runs, Way, output};
use super::circuit::{loses, loses_now};
use super::{CircuitFinding, CircuitJudged, READING};
use crate::arrangement::CircuitDesign;
use crate::building::{Room, RoomId};
use crate::quantity::{Power, Temperature};

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RoomFinding {
    Fits {
        air: Temperature,
        wanted: Temperature,
    },
    Warm {
        air: Temperature,
        wanted: Temperature,
    },
    /// Cool, and not to be judged without the outdoor temperature and the supply.
    NotJudged {
        air: Temperature,
        wanted: Temperature,
    },
    /// Cool as its circuit has a fault, which comes first.
    BehindCircuit {
        air: Temperature,
        wanted: Temperature,
        first: RoomId,
    },
    /// At the water and the weather that were measured its element cannot keep it warm.
    Undersized {
        air: Temperature,
        gives: Power,
        loses: Power,
    },
    /// Its element would do: it loses this many times what was calculated, or its element gives so
    /// much less.
    LosesMore {
        air: Temperature,
        times: f64,
        beside: Beside,
    },
    /// Cool, but no cooler than its zone: the thermostat is set lower, or the house is not warm yet.
    WithZone {
        air: Temperature,
        wanted: Temperature,
    },
}

/// What a room's heat was held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beside {
    /// Rooms of its zone, for which the same thermostat calls.
    Others,
    /// Heat that runs all the time: no other room was measured.
    AllTheTime,
}

/// Less than this much more loss than calculated is no finding: judgement.
const MORE_LOSS: f64 = 1.15;

/// A loss that the element's heat falls short of by less is rounding: judgement.
const ENOUGH: f64 = 0.95;

pub(super) fn rooms(runs: &mut Runs<'_>, circuits: &[CircuitJudged]) -> Vec<(RoomId, RoomFinding)> {
    let job = runs.job;
    let mut found = Vec::new();
    for room in &job.house.rooms {
        if let Some(air) = runs.measured.at(room.id).air {
            found.push((room.id, judge(runs, circuits, room, air)));
        }
    }
    found
}

fn judge(
    runs: &mut Runs<'_>,
    circuits: &[CircuitJudged],
    room: &Room,
    air: Temperature,
) -> RoomFinding {
    let wanted = room.temperature;
    if air > wanted + READING * 1.5 {
        return RoomFinding::Warm { air, wanted };
    }
    if air >= wanted - READING {
        return RoomFinding::Fits { air, wanted };
    }
    let not_judged = RoomFinding::NotJudged { air, wanted };
    let own = runs.design.piping.circuits.iter().find(|c| c.rooms.contains(&room.id));
    let Some(own) = own else { return not_judged };
    let first = own.rooms.first().copied();
    let of_circuit = circuits.iter().find(|judged| Some(judged.first) == first);
    if let Some(judged) = of_circuit
        && judged.findings.iter().any(is_fault)
    {
        return RoomFinding::BehindCircuit { air, wanted, first: judged.first };
    }
    cool(runs, own, room, air).unwrap_or(not_judged)
}

/// Whether a circuit's fault explains cool rooms.
fn is_fault(finding: &CircuitFinding) -> bool {
    use CircuitFinding::*;
    matches!(
        finding,
        FlowLow { .. }
            | Still { .. }
            | HardlyCools { .. }
            | Backward { .. }
            | LessHeat { .. }
            | Reversed { .. }
    )
}

/// Why a room is cool though its circuit is as it should be.
fn cool(
    runs: &mut Runs<'_>,
    circuit: &CircuitDesign,
    room: &Room,
    air: Temperature,
) -> Option<RoomFinding> {
    let wanted = room.temperature;
    let supply = runs.supply_of(circuit)?;
    let outdoors = runs.measured.outdoors?;
    let should_lose = loses(runs, room, wanted, outdoors)?;
    let as_wanted = runs.at(At { supply, air: Air::Wanted, way: Way::Designed })?;
    let gives = output(room.id, as_wanted);
    if gives < should_lose * ENOUGH {
        return Some(RoomFinding::Undersized { air, gives, loses: should_lose });
    }
    let share = share_of_time(runs, room.id, supply, outdoors)?;
    let zone = runs.job.zones.iter().find(|zone| zone.id == circuit.zone)?;
    let places = zone.loops.iter().flatten();
    let others: Vec<RoomId> = places
        .filter_map(|&at| runs.job.house.rooms.get(at))
        .map(|room| room.id)
        .filter(|&other| other != room.id && runs.measured.at(other).air.is_some())
        .collect();
    let mut shares: Vec<f64> =
        others.iter().filter_map(|&other| share_of_time(runs, other, supply, outdoors)).collect();
    shares.sort_by(f64::total_cmp);
    let (usual, beside) = match shares.get(shares.len() / 2) {
        Some(&middle) => (middle.min(1.0), Beside::Others),
        None => (1.0, Beside::AllTheTime),
    };
    let times = usual / share;
    Some(match times >= MORE_LOSS {
        true => RoomFinding::LosesMore { air, times, beside },
        false => RoomFinding::WithZone { air, wanted },
    })
}

/// The share of the time that a room's element would have to run for what the room loses.
fn share_of_time(
    runs: &mut Runs<'_>,
    room: RoomId,
    supply: Temperature,
    outdoors: Temperature,
) -> Option<f64> {
    let losses = loses_now(runs, room, outdoors)?;
    let ran = runs.at(At { supply, air: Air::Measured, way: Way::Designed })?;
    let share = losses / output(room, ran);
    (share > 0.0 && share.is_finite()).then_some(share)
}
