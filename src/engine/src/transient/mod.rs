//! The design day in time: each room as one lump of heat, set back for the night and recovering.
//!
//! Crank and Nicolson's steps of a minute, of one matrix that is inverted once: the conductances and
//! the heat stored do not change, and what the elements give enters at each step's middle. While a zone
//! calls, its water is at the supply temperature all along, as in [`crate::season`].

mod day;
mod export;
mod mass;
mod steps;

pub use crate::job::{Mass, Setback};
pub use day::{DayRun, RoomDay, Sample, ZoneDay, design_day};
pub use export::{Exported, exported};

use crate::quantity::TemperatureDifference;

/// A thermostat's room is warm again within this of what it is meant to be: judgement, half a °F.
pub const RECOVERED_WITHIN: TemperatureDifference = TemperatureDifference::from_si(0.5 / 1.8);
