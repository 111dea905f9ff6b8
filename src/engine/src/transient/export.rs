//! A house and its loop as plain data, for whoever wants to march them with something else.

use super::mass::capacities_j_k;
use crate::arrangement::LoopStretch;
use crate::building::{Day, Exchange};
use crate::design::Design;
use crate::job::{Job, Mass};
use crate::quantity::Temperature;
use crate::season::bin::Place;
use crate::season::{Controls, NoSeason};
use serde::Serialize;

/// All that a single loop's house needs at one outdoor temperature.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Exported {
    pub day: Day,
    pub capacities_j_k: Vec<f64>,
    pub gains_w: Vec<f64>,
    pub set_k: Vec<f64>,
    /// The room of the thermostat, by its place among the rooms.
    pub thermostat: usize,
    pub supply_k: f64,
    pub mass_flow_kg_s: f64,
    pub stretches: Vec<LoopStretch>,
}

/// A house of one loop; none of any other.
///
/// # Errors
/// As [`crate::season::season`].
pub fn exported(
    job: &Job,
    design: &Design,
    controls: &Controls,
    masses: &[Mass],
    outdoors: Temperature,
) -> Result<Option<Exported>, NoSeason> {
    let exchange = Exchange::of(&job.house);
    let place = Place::of(job, design, controls, &exchange)?;
    let stretches = place.system.all.single_loop();
    let (Some(stretches), [caller]) = (stretches, place.system.callers.as_slice()) else {
        return Ok(None);
    };
    Ok(Some(Exported {
        day: exchange.day(outdoors),
        capacities_j_k: capacities_j_k(&job.house, masses),
        gains_w: place.gains_w.clone(),
        set_k: job.house.rooms.iter().map(|room| room.temperature.si()).collect(),
        thermostat: caller.holder,
        supply_k: job.circuit.supply.si(),
        mass_flow_kg_s: place.system.all.flow_kg_s,
        stretches,
    }))
}
