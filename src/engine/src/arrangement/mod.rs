//! Piping arrangements: how the rooms are connected. Each lowers to one kind of network, which is
//! solved for flow and temperature together.

mod balance;
mod coolest;
mod heating;
mod laid;
mod lower;
mod lowered;
mod practice;
mod pumping;
mod run;
mod size;
mod together;

pub use balance::ValveSetting;
pub use coolest::lowest_supply;
pub(crate) use heating::{Heating, Seen, Tried};
pub use heating::{LoopElement, LoopStretch};
pub use laid::{Laid, laid};
pub(crate) use lower::bare;
pub use lowered::{LoweredLink, LoweredPart, lowered};
pub(crate) use practice::zone_head_of;
pub use practice::{Practice, Rule, practice, zone_head};
pub(crate) use pumping::gives;
pub use pumping::{Alternative, Other, alternatives, curve_points, system_curve};
pub use run::run;
pub use size::exported_choices;
pub use size::{Solved, solve_piping};
pub(crate) use size::{choose_for, size_elements, solve_exact};
pub use together::{Counted, Proof, Together};

use crate::building::{RoomId, ZoneId};
use crate::network::{NotSolved, Passage};
use crate::quantity::{
    Length, MassFlow, Power, Temperature, TemperatureDifference, Velocity, VolumeFlow,
};
use serde::Serialize;

/// The water's ways, all zones calling.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PipingDesign {
    /// Through the boiler.
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    /// At the supply temperature.
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    /// What the boiler puts back: elements and pipes.
    #[serde(rename = "heat_w")]
    pub heat: Power,
    /// Lost from pipe outside the rooms.
    #[serde(rename = "pipe_loss_w")]
    pub pipe_loss: Power,
    /// The highest anywhere.
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    /// The highest head that a circulator gives, as height of the water at supply temperature.
    #[serde(rename = "head_m")]
    pub head: Length,
    /// Stretches in the order of flow, zone after zone.
    pub passages: Vec<Passage>,
    /// What can be throttled by itself, in the same order.
    pub circuits: Vec<CircuitDesign>,
    pub zones: Vec<ZoneDesign>,
    pub pumps: Vec<PumpDesign>,
    /// Each zone alone, where there are several.
    pub alone: Vec<RunDesign>,
    /// Why the flows were not found; everything that depends on them is then without meaning.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_solved: Option<NotSolved>,
}

/// A way of the water from where it parts to where it joins: a whole loop, or one room between two
/// mains.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CircuitDesign {
    pub zone: ZoneId,
    /// That are meant to get heat from it.
    pub rooms: Vec<RoomId>,
    /// The flow that it is meant to have.
    #[serde(rename = "target_kg_s")]
    pub target: MassFlow,
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    /// Where it joins others.
    #[serde(rename = "back_k")]
    pub back: Temperature,
    pub valve: ValveSetting,
    /// Its passages from the circulator round to the boiler, by their place in the list.
    pub path: Vec<usize>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ZoneDesign {
    pub zone: ZoneId,
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    /// From its elements and pipes.
    #[serde(rename = "heat_w")]
    pub heat: Power,
    /// Nominal length of its elements.
    #[serde(rename = "element_m")]
    pub element: Length,
}

/// A circulator, or several that push together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PumpDesign {
    /// Its zone; none for the one of all zones.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<ZoneId>,
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    /// At the supply temperature.
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    /// As height of the water at supply temperature.
    #[serde(rename = "head_m")]
    pub head: Length,
    /// Into the water.
    #[serde(rename = "hydraulic_w")]
    pub hydraulic: Power,
    /// From the mains, estimated.
    #[serde(rename = "electric_w")]
    pub electric: Power,
}

/// How the system runs with some of its zones.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RunDesign {
    pub zones: Vec<ZoneId>,
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    /// The highest that a circulator gives.
    #[serde(rename = "head_m")]
    pub head: Length,
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    #[serde(rename = "heat_w")]
    pub heat: Power,
    /// All circulators, estimated.
    #[serde(rename = "electric_w")]
    pub electric: Power,
    pub passages: Vec<Passage>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_solved: Option<NotSolved>,
}

impl PipingDesign {
    pub fn drop(&self) -> TemperatureDifference {
        self.supply - self.back
    }

    pub fn passage(&self, place: crate::network::Place) -> Option<&Passage> {
        self.passages.iter().find(|passage| passage.place == place)
    }

    /// The circuit with the least throttled valve of the hardest circulator: what that has to reach.
    pub fn critical(&self) -> Option<&CircuitDesign> {
        let hardest = self.pumps.iter().max_by(|a, b| a.head.si().total_cmp(&b.head.si()));
        let zone = hardest.and_then(|pump| pump.zone);
        let circuits = self.circuits.iter().filter(|c| zone.is_none_or(|zone| zone == c.zone));
        circuits.min_by(|a, b| a.valve.pressure.si().total_cmp(&b.valve.pressure.si()))
    }
}
