//! What is built beyond the loads, and what it does: whole pieces, and a margin that the user wants.

use crate::arrangement::{lowest_supply, solve_exact};
use crate::building::{RoomId, RoomLoad};
use crate::design::Design;
use crate::job::Job;
use crate::plant::boiler::{PartLoad, Running, part_load};
use crate::plant::design::volumes;
use crate::quantity::{Length, Power, Temperature};
use serde::Serialize;

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Oversize {
    /// Those with an element.
    pub rooms: Vec<RoomOversize>,
    /// Of fins that whole pieces have beyond what is needed.
    #[serde(rename = "length_m")]
    pub length: Length,
    /// That they give beyond loads and margin.
    #[serde(rename = "pieces_w")]
    pub pieces: Power,
    /// Of all rooms.
    #[serde(rename = "margin_w")]
    pub margin: Power,
    /// The water that comes back.
    #[serde(rename = "back_k")]
    pub back: Temperature,
    /// Were the elements just as long as the loads ask, without margin and in no whole pieces.
    #[serde(rename = "back_exact_k")]
    pub back_exact: Temperature,
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
    /// At which these pieces just meet the loads: an outdoor reset may be set as much lower.
    #[serde(rename = "supply_enough_k", skip_serializing_if = "Option::is_none")]
    pub supply_enough: Option<Temperature>,
    /// Share of the time that the thermostats call when the house loses half of its load, at the design
    /// supply. Elements that just meet the loads are called half of the time.
    pub calls_at_half: f64,
    /// Where the burner's least output is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub burner: Option<Burner>,
}

/// One room's excess.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RoomOversize {
    pub room: RoomId,
    #[serde(rename = "length_m")]
    pub length: Length,
    #[serde(rename = "pieces_w")]
    pub pieces: Power,
    #[serde(rename = "margin_w")]
    pub margin: Power,
}

/// The burner while all zones call, at the design supply.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Burner {
    pub built: Running,
    /// With elements that just meet the loads.
    pub exact: Running,
}

/// The excess of a design; none while a room is short or the flows are not found.
pub fn oversize(job: &Job, design: &Design) -> Option<Oversize> {
    let short = design.rooms.iter().any(|room| {
        let short = room.short();
        short > Power::ZERO || !short.is_finite()
    });
    if short || design.piping.not_solved.is_some() || design.element_length() <= Length::ZERO {
        return None;
    }
    let heated = design.rooms.iter().filter(|room| room.load.wanted() > Power::ZERO);
    let rooms: Vec<RoomOversize> = heated
        .filter(|room| room.element.choice.finned > Length::ZERO)
        .filter_map(|room| {
            Some(RoomOversize {
                room: room.room,
                length: room.element.choice.finned - room.element.needed?,
                pieces: room.element.output - room.load.wanted(),
                margin: room.load.margin,
            })
        })
        .collect();
    let bare = without_margin(design);
    let loads: Vec<RoomLoad> = bare.rooms.iter().map(|room| room.load.clone()).collect();
    let exact = solve_exact(job, &loads).piping;
    let given: Power = design.rooms.iter().map(|room| room.element.output).sum();
    let asked: Power = loads.iter().map(|load| load.wanted().max(Power::ZERO)).sum();
    let burner = || {
        let built = cycle(job, &design.piping)?;
        Some(Burner { built, exact: cycle(job, &exact)? })
    };
    Some(Oversize {
        length: rooms.iter().map(|room| room.length).sum(),
        pieces: rooms.iter().map(|room| room.pieces).sum(),
        margin: rooms.iter().map(|room| room.margin).sum(),
        rooms,
        back: design.piping.back,
        back_exact: exact.back,
        supply: job.circuit.supply,
        supply_enough: lowest_supply(job, &bare),
        calls_at_half: 0.5 * (asked / given),
        burner: burner(),
    })
}

/// The design with the same pieces, its rooms wanting no more than they lose.
fn without_margin(design: &Design) -> Design {
    let mut bare = design.clone();
    for room in &mut bare.rooms {
        room.load.margin = Power::ZERO;
    }
    bare
}

/// How the burner runs at its least output while all zones call.
fn cycle(job: &Job, piping: &crate::arrangement::PipingDesign) -> Option<Running> {
    let least_output = match (job.plant.least_output?, job.plant.output) {
        (least, Some(most)) => least.min(most),
        (least, None) => least,
    };
    part_load(&PartLoad {
        least_output,
        load: piping.heat,
        volume: volumes(job, &piping.passages)?.total,
        fluid: job.circuit.fluid,
        differential: job.plant.differential,
        water: job.circuit.supply - job.plant.differential / 2.0,
    })
    .ok()
}
