//! What each room of a system gets on the design day, and what limits it.

use super::model::Model;
use crate::building::RoomId;
use crate::design::{Design, RoomDesign};
use crate::emitter::output_per_length;
use crate::job::{Job, Measured, Ran};
use crate::quantity::{MassFlow, Power, Temperature, TemperatureDifference};
use serde::Serialize;

/// One room on the design day, the water running without a stop.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RoomGets {
    pub room: RoomId,
    /// That it wants from its element to be as warm as it is meant to be.
    #[serde(rename = "wants_w")]
    pub wants: Power,
    /// That its element gives it then.
    #[serde(rename = "gets_w")]
    pub gets: Power,
    /// Where it comes to rest, its neighbours as they come to rest too; none where that was not found.
    #[serde(rename = "reaches_k", skip_serializing_if = "Option::is_none")]
    pub reaches: Option<Temperature>,
    pub limit: Limit,
}

/// Why a room gets no more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Limit {
    /// It has enough.
    None,
    /// No water reaches it.
    NotConnected,
    /// Too little element: even with the boiler's own water all along it.
    Element,
    /// The water has cooled in the rooms before it.
    Water,
    /// The water cools too much in its own element: too little flow.
    Flow,
}

/// A room that comes to rest no more than this below what it is meant to be has enough, 1 °F: judgement.
const ENOUGH: TemperatureDifference = TemperatureDifference::from_si(1.0 / 1.8);

/// All rooms of a designed system on the design day.
pub fn gets(job: &Job, design: &Design) -> Vec<RoomGets> {
    let site = &job.house.site;
    let found = match design.piping.not_solved {
        Some(_) => None,
        None => {
            let measured = Measured::default();
            let mut model = Model::of(job, design, &[], &measured, Ran::Throughout);
            let state = model.as_entered(job.circuit.supply, site.outdoors);
            model.rooms_k(&state)
        }
    };
    let rooms = job.house.rooms.iter().zip(&design.rooms).enumerate();
    let one = |(at, (room, designed)): (usize, (&crate::building::Room, &RoomDesign))| {
        let reaches = found.as_ref().and_then(|all| all.get(at)).map(|k| Temperature::from_si(*k));
        let cold = reaches.is_some_and(|reaches| room.temperature - reaches > ENOUGH);
        // Neighbours may keep a room warm that has too little of its own; and the other way about.
        let wants = wants(designed);
        let short = cold && designed.element.output < wants;
        RoomGets {
            room: room.id,
            wants,
            gets: designed.element.output,
            reaches,
            limit: match cold {
                true if short => limit(job, room.temperature, designed),
                true if designed.element.flow <= MassFlow::ZERO => Limit::NotConnected,
                _ => Limit::None,
            },
        }
    };
    rooms.map(one).collect()
}

/// The loss alone: what stands is not held to a margin.
fn wants(designed: &RoomDesign) -> Power {
    (designed.load.total - designed.load.other).max(Power::ZERO)
}

fn limit(job: &Job, air: Temperature, designed: &RoomDesign) -> Limit {
    let element = &designed.element;
    if element.flow <= MassFlow::ZERO {
        return Limit::NotConnected;
    }
    // All along the element as warm as this.
    let gives = |water: Temperature| {
        let output = output_per_length(&job.baseboard.element, water, air, element.flow);
        output.to_room * element.choice.finned
    };
    let wants = wants(designed);
    if gives(job.circuit.supply) < wants {
        return Limit::Element;
    }
    // Its mean water is cooler than the boiler's by what was lost before it, and by half of its own drop.
    let before = job.circuit.supply - element.water_in;
    match before > (element.water_in - element.water_out) / 2.0 {
        true => Limit::Water,
        false => Limit::Flow,
    }
}
