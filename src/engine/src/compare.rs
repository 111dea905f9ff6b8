//! One job in every arrangement, side by side.

use crate::design::design;
use crate::job::{Arrangement, Balancing, Draft, read};
use crate::named::Named;
use crate::quantity::{Length, Power, Temperature, Velocity, VolumeFlow};
use serde::Serialize;

/// What a job comes to when all its zones are piped in one arrangement, with the tubes and valves usual
/// there.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Arranged {
    pub arrangement: Arrangement,
    /// Whether its flows were found; without them nothing that follows means anything.
    pub solved: bool,
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    #[serde(rename = "head_m")]
    pub head: Length,
    /// All circulators, estimated.
    #[serde(rename = "electric_w")]
    pub electric: Power,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    #[serde(rename = "element_m")]
    pub element: Length,
    /// What a room's element gives of its load: the least and the most of all rooms with a load.
    pub least: f64,
    pub most: f64,
    /// Rooms that get too little.
    pub short: usize,
    pub valves: usize,
}

/// The job of `draft` in each arrangement, in the order of the list; empty while the draft is no whole
/// job.
pub fn side_by_side(draft: &Draft) -> Vec<Arranged> {
    Arrangement::ALL.iter().filter_map(|&arrangement| arranged(draft, arrangement)).collect()
}

fn arranged(draft: &Draft, arrangement: Arrangement) -> Option<Arranged> {
    let mut changed = draft.clone();
    for zone in draft.zones.iter().map(|zone| zone.id) {
        changed.arrange(zone, arrangement);
    }
    let design = design(&read(&changed).job?);
    let piping = &design.piping;
    let shares = design.rooms.iter().filter(|room| room.load.wanted() > Power::ZERO);
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for share in shares.map(|room| room.element.output / room.load.wanted()) {
        least = least.min(share);
        most = most.max(share);
    }
    Some(Arranged {
        arrangement,
        solved: piping.not_solved.is_none() && least.is_finite(),
        flow: piping.flow,
        head: piping.head,
        electric: piping.pumps.iter().map(|pump| pump.electric).sum(),
        back: piping.back,
        velocity: piping.velocity,
        element: design.element_length(),
        least: if least.is_finite() { least } else { 0.0 },
        most,
        short: design.rooms.iter().filter(|room| room.short() > Power::ZERO).count(),
        valves: piping.circuits.iter().filter(|c| c.valve.fitted == Balancing::Valves).count(),
    })
}
