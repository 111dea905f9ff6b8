//! Where something can be measured, what was, and how far it may be off.

use crate::arrangement::CircuitDesign;
use crate::building::RoomId;
use crate::design::Design;
use crate::job::{Job, Measured};
use crate::numeric::ln;
use crate::quantity::{Temperature, TemperatureDifference, VolumeFlow};
use serde::Serialize;

/// The standard error of a thermometer that is strapped to a clean pipe under insulation, 1 °F, which is
/// half of what [`crate::commission::READING`] allows: judgement.
pub const WATER: TemperatureDifference = TemperatureDifference::from_si(1.0 / 1.8);

/// Of one in the middle of a room, away from sun and element, 1 °F: judgement.
pub const AIR: TemperatureDifference = TemperatureDifference::from_si(1.0 / 1.8);

/// Of one outdoors in the shade, with what the last hours' weather leaves in the walls, 2 °F: judgement.
pub const OUTDOORS: TemperatureDifference = TemperatureDifference::from_si(2.0 / 1.8);

/// Of a flow meter, as a share: judgement.
const FLOW: f64 = 0.05;

/// A place where something is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum At {
    BoilerSupply,
    BoilerBack,
    /// Of a circuit, which its first room stands for.
    Supply(RoomId),
    Back(RoomId),
    Flow(RoomId),
    /// Before and behind a room's element.
    WaterIn(RoomId),
    WaterOut(RoomId),
    Air(RoomId),
}

/// One number at one place: K, and of a flow the logarithm of kg/s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Reading {
    pub(super) at: At,
    pub(super) value: f64,
}

impl At {
    /// The standard error of one reading.
    pub(super) fn error(self) -> f64 {
        match self {
            At::Flow(_) => FLOW,
            At::Air(_) => AIR.si(),
            _ => WATER.si(),
        }
    }

    pub(super) fn is_supply(self) -> bool {
        matches!(self, At::BoilerSupply | At::Supply(_))
    }
}

/// Every place of a system, in the order in which the page asks.
pub(super) fn places(job: &Job, design: &Design) -> Vec<At> {
    let mut all = vec![At::BoilerSupply, At::BoilerBack];
    let firsts = design.piping.circuits.iter().filter_map(first);
    for first in firsts {
        all.extend([At::Supply(first), At::Back(first), At::Flow(first)]);
    }
    for (room, designed) in job.house.rooms.iter().zip(&design.rooms) {
        if designed.element.choice.finned.si() > 0.0 {
            all.extend([At::WaterIn(room.id), At::WaterOut(room.id)]);
        }
        all.push(At::Air(room.id));
    }
    all
}

/// The room that stands for a circuit.
pub(super) fn first(circuit: &CircuitDesign) -> Option<RoomId> {
    circuit.rooms.first().copied()
}

/// What was measured there, as it can be compared.
pub(super) fn value(job: &Job, measured: &Measured, at: At) -> Option<f64> {
    let k = |temperature: Option<Temperature>| temperature.map(Temperature::si);
    let value = match at {
        At::BoilerSupply => k(measured.boiler_supply),
        At::BoilerBack => k(measured.boiler_back),
        At::Supply(room) => k(measured.at(room).supply),
        At::Back(room) => k(measured.at(room).back),
        At::WaterIn(room) => k(measured.at(room).water_in),
        At::WaterOut(room) => k(measured.at(room).water_out),
        At::Air(room) => k(measured.at(room).air),
        At::Flow(room) => measured.at(room).flow.map(|flow| ln(mass_kg_s(job, flow))),
    };
    // No flow at all has no logarithm: it tells by the water.
    value.filter(|value| value.is_finite())
}

fn mass_kg_s(job: &Job, flow: VolumeFlow) -> f64 {
    (flow * job.circuit.fluid.density(job.circuit.supply)).si()
}
