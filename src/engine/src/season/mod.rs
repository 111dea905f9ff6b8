//! The house through a year: at each outdoor temperature the steady state of every room, with the
//! thermostats that it really has.
//!
//! Steady means that no warmth is stored: a day is taken at its mean temperature. While a zone calls,
//! its water is at the supply temperature all along; how it warms up first and what it still gives
//! when the call has ended are left out, and even out but for what pipes outside the rooms lose.

pub(crate) mod balance;
pub(crate) mod bin;
mod sums;
pub(crate) mod system;

pub use crate::job::Holds;
pub use sums::{RoomSeason, ZoneSeason};

use crate::bills::Fuel;
use crate::building::{Exchange, ZoneId};
use crate::climate::Bin;
use crate::design::Design;
use crate::job::{Job, SupplyBy};
use crate::plant::reset::Setting;
use crate::quantity::{Power, Temperature, TemperatureDifference};
use bin::{Place, run_bin};
use serde::Serialize;
use sums::sums;

/// Farther below what it is meant to be a room is called cold, farther above it too warm: judgement.
pub const COLD_BELOW: TemperatureDifference = TemperatureDifference::from_si(1.5);
pub const WARM_ABOVE: TemperatureDifference = TemperatureDifference::from_si(1.5);

/// How the house is run.
#[derive(Debug, Clone, PartialEq)]
pub struct Controls {
    /// What holds the rooms of a zone; one that is not named has its thermostat in its first room.
    pub zones: Vec<(ZoneId, Holds)>,
    pub supply: Supply,
    pub gains: Gains,
    /// The share of its output that each room's damper leaves, in the order of the job; all are open
    /// where there are none.
    pub dampers: Vec<f64>,
}

/// The water that the boiler sends out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Supply {
    /// The design's, whatever the weather.
    Fixed,
    /// By a line over the outdoors: no hotter than the design's, and no cooler than the least that the
    /// boiler takes, where it has one.
    Reset(Setting, Option<Temperature>),
}

/// The heat of sun, people and devices.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Gains {
    /// Only what rooms have from elsewhere on the design day.
    None,
    /// As much in each room, all year, as keeps it warm from this outdoor temperature on; where it has
    /// more from elsewhere, that.
    From(Temperature),
}

impl Controls {
    /// A thermostat in each zone's first room, the design's supply, and gains that carry the house from
    /// the outdoor temperature that the plant's reset counts with.
    pub fn usual(job: &Job) -> Controls {
        let gains = Gains::From(job.plant.balance);
        Controls { zones: Vec::new(), supply: Supply::Fixed, gains, dampers: Vec::new() }
    }

    /// As the job has them; the usual ones while that cannot be read, and a fixed supply where there is
    /// no reset line.
    pub fn of(job: &Job, design: &Design) -> Controls {
        let usual = Controls::usual(job);
        let Some(control) = &job.control else { return usual };
        let reset = design.plant.as_ref().and_then(|plant| plant.reset.as_ref());
        let supply = match (control.supply, reset) {
            (SupplyBy::Reset, Some(reset)) => Supply::Reset(reset.setting, reset.least_supply),
            _ => Supply::Fixed,
        };
        Controls { zones: control.holds.clone(), supply, dampers: control.dampers.clone(), ..usual }
    }

    pub(crate) fn holds(&self, zone: ZoneId) -> Holds {
        self.zones.iter().find(|(id, _)| *id == zone).map_or(Holds::default(), |(_, holds)| *holds)
    }
}

/// What is burnt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Burning {
    pub fuel: Fuel,
    /// Heat in the water over heat in the fuel, the whole year's.
    pub efficiency: f64,
}

impl Burning {
    /// What the job says of it; none while that cannot be read.
    pub fn of(job: &Job) -> Option<Burning> {
        let control = job.control.as_ref()?;
        Some(Burning { fuel: control.fuel, efficiency: control.efficiency })
    }
}

/// A year of a designed house.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SeasonRun {
    /// From the coldest on, as far as anything is heated.
    pub bins: Vec<BinRun>,
    /// In the order of the job.
    pub rooms: Vec<RoomSeason>,
    pub zones: Vec<ZoneSeason>,
    /// From the boiler in a year: to the rooms and lost from pipes outside them.
    pub heat_j: f64,
    pub pipe_loss_j: f64,
    /// In which water goes through the boiler.
    pub running_h: f64,
    /// Of the burner at its full output, where that is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub firing_h: Option<f64>,
    /// In which water comes back colder than [`crate::plant::return_protection::LEAST_RETURN`].
    pub cold_return_h: f64,
    /// From the mains for circulators, estimated.
    pub pump_j: f64,
    /// In units of the fuel; none where it is not known how it is burnt.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel: Option<f64>,
}

/// The house at one outdoor temperature, at rest.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BinRun {
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    /// Of a year.
    pub hours: f64,
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
    /// In the order of the job; above what they are meant to be with no window opened.
    #[serde(rename = "rooms_k")]
    pub rooms: Vec<Temperature>,
    #[serde(rename = "spaces_k")]
    pub spaces: Vec<Temperature>,
    /// Mean heat to each room, from its element and the pipe in it.
    #[serde(rename = "to_rooms_w")]
    pub to_rooms: Vec<Power>,
    /// From elsewhere: sun, people, devices, and what is typed of each room.
    #[serde(rename = "gains_w")]
    pub gains: Vec<Power>,
    /// Of the time that the water of each zone runs.
    pub zones_run: Vec<f64>,
    /// Of the time that any does.
    pub runs: f64,
    /// While it runs, mixed; none where it never does.
    #[serde(rename = "back_k", skip_serializing_if = "Option::is_none")]
    pub back: Option<Temperature>,
    /// From the boiler: mean of all the time, and what of it pipes lose outside the rooms.
    #[serde(rename = "heat_w")]
    pub heat: Power,
    #[serde(rename = "pipe_loss_w")]
    pub pipe_loss: Power,
    /// What is asked beyond the boiler's output, where that is known. The temperatures are as if it
    /// came.
    #[serde(rename = "beyond_boiler_w")]
    pub beyond_boiler: Power,
    /// Starts of the burner an hour, where its least output is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cycles_per_h: Option<f64>,
    /// Mean electric power of the circulators.
    #[serde(rename = "pumps_w")]
    pub pumps: Power,
    /// The rooms' and spaces' loss, less all that they get: what the solution leaves over.
    #[serde(rename = "unbalanced_w")]
    pub unbalanced: Power,
}

/// Why there is no season.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoSeason {
    /// Nothing to heat, or nothing to heat it with.
    NothingHeated,
    /// The flows of the design, or of a zone alone, were not found.
    NoFlows,
    /// A bin's temperatures were not found.
    NotSettled,
}

/// A designed house through the bins of a year.
///
/// # Errors
/// [`NoSeason`] says why there is none.
pub fn season(
    job: &Job,
    design: &Design,
    bins: &[Bin],
    controls: &Controls,
    burning: Option<Burning>,
) -> Result<SeasonRun, NoSeason> {
    if design.piping.not_solved.is_some() {
        return Err(NoSeason::NoFlows);
    }
    if design.rooms.is_empty() || design.piping.heat <= Power::ZERO {
        return Err(NoSeason::NothingHeated);
    }
    let exchange = Exchange::of(&job.house);
    let mut place = Place::of(job, design, controls, &exchange)?;
    let warmest = job.house.rooms.iter().fold(0.0, |most: f64, r| most.max(r.temperature.si()));
    let mut runs = Vec::new();
    for bin in bins.iter().filter(|bin| bin.outdoors.si() < warmest) {
        let run = run_bin(&mut place, bin)?;
        runs.push(run);
    }
    Ok(sums(job, runs, burning))
}
