//! Straight runs of element: how much they grow, and the room to leave them.

use crate::building::{RoomId, SurfaceId};
use crate::design::Design;
use crate::job::Job;
use crate::pipe::Material;
use crate::plant::movement::{Movement, movement};
use crate::quantity::{Length, Temperature, TemperatureDifference, Unit};

/// The least gap that is measured out, an eighth of an inch: judgement.
pub const LEAST_GAP: Length = Length::from_si(0.0254 / 8.0);

/// What a gap is rounded up to, as a tape is read.
const SIXTEENTH_M: f64 = 0.0254 / 16.0;

/// Pieces of element in one line on a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StraightRun {
    pub room: RoomId,
    pub wall: SurfaceId,
    /// Among the wall's runs, from zero.
    pub run: u32,
    /// Of the pieces together.
    pub long: Length,
    pub growth: Movement,
    /// To leave at each end: half of the growth, rounded up to what a tape shows.
    pub gap: Length,
}

/// The straight runs of a design, room by room. What runs on round a corner is counted wall by wall,
/// as each wall moves along itself.
pub fn straight_runs(job: &Job, design: &Design) -> Vec<StraightRun> {
    let mut all = Vec::new();
    for (room, designed) in job.house.rooms.iter().zip(&design.rooms) {
        let rise = rise(job, room.temperature);
        for pieces in &designed.element.choice.runs {
            let wall = room.surfaces.iter().find(|wall| wall.id == pieces.surface);
            let run = wall.and_then(|wall| wall.runs.iter().position(|run| *run == pieces.run));
            let long = pieces.pieces.iter().copied().sum();
            // Fin-tube is drawn on copper, whatever the pipe between.
            let growth = movement(Material::CopperL, long, rise);
            all.push(StraightRun {
                room: room.id,
                wall: pieces.surface,
                run: run.unwrap_or(0) as u32,
                long,
                growth,
                gap: measured_out(growth.each_end),
            });
        }
    }
    all
}

/// From the coldest that a pipe has been since it was put up, in the room or by the water it was
/// filled with, to the supply: the warmest that any of it gets.
pub(super) fn rise(job: &Job, air: Temperature) -> TemperatureDifference {
    let coldest = if air < job.plant.cold { air } else { job.plant.cold };
    let rise = job.circuit.supply - coldest;
    if rise > TemperatureDifference::ZERO { rise } else { TemperatureDifference::ZERO }
}

/// Rounded up to a sixteenth of an inch, and not less than [`LEAST_GAP`].
pub(super) fn measured_out(gap: Length) -> Length {
    let sixteenths = (gap.si() / SIXTEENTH_M - 1e-9).ceil();
    Length::from_si(sixteenths * SIXTEENTH_M).max(LEAST_GAP)
}

/// Ten feet, a handy length to say a growth for.
pub(super) fn handy() -> Length {
    Length::of(10.0, Unit::Foot)
}
