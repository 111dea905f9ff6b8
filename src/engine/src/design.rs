//! The one function from a job to everything that follows from it.

use crate::arrangement::{self, PipingDesign, Together};
use crate::bills::{Compared, compare};
use crate::building::{
    Certainty, HouseFlow, RoomId, RoomLoad, SlabCompared, SpaceBalance, losses, mean_temperature,
    slab_compared,
};
use crate::check::{Check, checks};
use crate::job::Job;
use crate::plant::design::{PlantDesign, plan};
use crate::quantity::{Length, MassFlow, Power, Temperature};
use crate::sizing::Choice;
use serde::Serialize;

/// All results of a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Design {
    /// What the house loses on the design day.
    #[serde(rename = "load_w")]
    pub load: Power,
    /// In the order of the job.
    pub rooms: Vec<RoomDesign>,
    /// Unheated spaces, each at its temperature.
    pub spaces: Vec<SpaceBalance>,
    pub certainty: Certainty,
    /// Outdoor air through the whole house.
    pub air: HouseFlow,
    /// The house as calculated, against its fuel bills.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bills: Option<Compared>,
    /// Slabs on the ground, by the way that was chosen and by the other.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slabs: Option<SlabCompared>,
    /// How the pieces were chosen.
    pub together: Together,
    pub piping: PipingDesign,
    /// None until the end of the design, and none without rooms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plant: Option<PlantDesign>,
    pub checks: Vec<Check>,
}

/// One room's load and its baseboard.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomDesign {
    pub room: RoomId,
    pub load: RoomLoad,
    pub element: RoomElement,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomElement {
    /// Finned length that gives the load at this room's water temperature; `None` when no length does.
    #[serde(rename = "needed_m")]
    pub needed: Option<Length>,
    pub choice: Choice,
    /// Heat credited to the room.
    #[serde(rename = "output_w")]
    pub output: Power,
    #[serde(rename = "water_in_k")]
    pub water_in: Temperature,
    #[serde(rename = "water_out_k")]
    pub water_out: Temperature,
    /// Through the element.
    #[serde(rename = "flow_kg_s")]
    pub flow: MassFlow,
    /// The load over the rated output a foot: what is done without regard to cooling water.
    #[serde(rename = "rule_of_thumb_m")]
    pub rule_of_thumb: Length,
}

impl RoomDesign {
    /// Load that the element leaves uncovered; zero when there is none, no number when a result is
    /// none.
    pub fn short(&self) -> Power {
        let short = self.load.wanted() - self.element.output;
        // A billionth of the load is rounding, not cold.
        match short.si() <= 1e-9 * self.load.total.si().abs() {
            true => Power::ZERO,
            false => short,
        }
    }
}

impl Design {
    pub fn room(&self, id: RoomId) -> Option<&RoomDesign> {
        self.rooms.iter().find(|room| room.room == id)
    }

    pub fn space(&self, id: RoomId) -> Option<&SpaceBalance> {
        self.spaces.iter().find(|space| space.space == id)
    }

    /// Nominal length of all pieces.
    pub fn element_length(&self) -> Length {
        self.rooms.iter().map(|room| room.element.choice.nominal).sum()
    }

    /// Nominal length of the pieces in these rooms.
    pub fn element_in(&self, rooms: &[RoomId]) -> Length {
        let own = self.rooms.iter().filter(|room| rooms.contains(&room.room));
        own.map(|room| room.element.choice.nominal).sum()
    }

    pub fn piece_count(&self) -> usize {
        self.rooms.iter().map(|room| room.element.choice.pieces().count()).sum()
    }
}

/// The design load over the design day's difference, against what the bills say.
fn against_bills(job: &Job, load: Power) -> Option<Compared> {
    let fit = job.bills.as_ref()?.as_ref().ok()?;
    let difference = mean_temperature(&job.house) - job.house.site.outdoors;
    compare(load / difference, fit)
}

/// Designs a job.
///
/// Never panics. A job without rooms gives an empty design; whatever cannot be met is a check with
/// its subject, value, limit and remedies.
pub fn design(job: &Job) -> Design {
    let mut design = planned(job);
    design.checks = checks(job, &design);
    design
}

/// The same without checks, for whoever compares what jobs are built with.
pub(crate) fn planned(job: &Job) -> Design {
    let mut design = unchecked(job);
    design.plant = (!design.rooms.is_empty()).then(|| plan(job, &design));
    design
}

/// The same without plant and checks, for whoever compares many jobs.
pub(crate) fn unchecked(job: &Job) -> Design {
    let losses = losses(&job.house);
    let loads = losses.rooms;
    let solved = arrangement::solve_piping(job, &loads);
    let rooms = loads
        .into_iter()
        .zip(solved.elements)
        .map(|(load, element)| RoomDesign { room: load.room, load, element })
        .collect::<Vec<_>>();
    let load: Power = rooms.iter().map(|room| room.load.total).sum();
    Design {
        load,
        rooms,
        spaces: losses.spaces,
        certainty: losses.certainty,
        air: losses.flow,
        bills: against_bills(job, load),
        slabs: slab_compared(&job.house),
        together: solved.together,
        piping: solved.piping,
        plant: None,
        checks: Vec::new(),
    }
}
