//! What was measured when the system was started, against what the design would do at the same water
//! and weather, and what the difference tells.
//!
//! The judgement is by energy balance and by plain rules with limits that say how far a reading may
//! be off. It works for readings taken together, every zone calling, when they no longer change.

mod at;
mod circuit;
mod filling;
mod room;

pub use circuit::{By, CircuitFinding};
pub use filling::{AtTop, FillingFinding};
pub use room::{Beside, RoomFinding};

use crate::building::RoomId;
use crate::design::Design;
use crate::job::{Job, Measured};
use crate::quantity::{Temperature, TemperatureDifference};
use at::Runs;

/// How far one reading of a temperature may be off, 2 °F: judgement, for a good thermometer that is
/// strapped to the pipe under insulation.
pub const READING: TemperatureDifference = TemperatureDifference::from_si(2.0 / 1.8);

/// What the readings tell.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Judged {
    pub filling: Vec<FillingFinding>,
    /// Each circuit of which something was measured, by its first room.
    pub circuits: Vec<CircuitJudged>,
    /// Each room that was measured.
    pub rooms: Vec<(RoomId, RoomFinding)>,
}

#[derive(Debug, Clone, PartialEq)]
pub struct CircuitJudged {
    pub first: RoomId,
    /// What should come back at the supply that was measured.
    pub back: Option<Temperature>,
    pub findings: Vec<CircuitFinding>,
}

/// Judges what was measured; what was not is not judged. Nothing without a design that is solved.
pub fn judge(job: &Job, design: &Design, measured: &Measured) -> Judged {
    let filling = filling::filling(job, design, measured);
    if design.piping.not_solved.is_some() {
        return Judged { filling, ..Judged::default() };
    }
    let mut runs = Runs::new(job, design, measured);
    let circuits = circuit::circuits(&mut runs);
    let rooms = room::rooms(&mut runs, &circuits);
    Judged { filling, circuits, rooms }
}
