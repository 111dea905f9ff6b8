//! From a designed job to the work on site: what is done in which order, with the numbers that this
//! job gives, and what to heed. No words: those follow from the task.

mod list;
mod runs;
mod task;

pub use list::steps;
pub use runs::{LEAST_GAP, StraightRun, straight_runs};
pub use task::{Danger, Phase, Task};

use crate::building::{RoomId, SurfaceId, ZoneId};
use std::fmt;

/// One step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    pub of: Of,
    pub task: Task,
}

/// What a step is done to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Of {
    House,
    Zone(ZoneId),
    /// A circuit, which its first room stands for.
    Circuit(RoomId),
    Room(RoomId),
    /// A straight stretch of a wall, counted from zero.
    Run(RoomId, SurfaceId, u32),
}

impl Step {
    /// Under which what is noted of it is kept: it stays when the job changes elsewhere.
    pub fn id(&self) -> String {
        format!("{}.{}", self.task.name(), self.of)
    }
}

impl fmt::Display for Of {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Of::House => f.write_str("house"),
            Of::Zone(zone) => write!(f, "zone-{}", zone.0),
            Of::Circuit(room) => write!(f, "circuit-{}", room.0),
            Of::Room(room) => write!(f, "room-{}", room.0),
            Of::Run(room, wall, run) => write!(f, "room-{}.surface-{}.run-{run}", room.0, wall.0),
        }
    }
}
