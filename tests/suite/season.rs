//! A house through the year: heat against degree-hours, rest against the design's own steady answer and
//! against scipy, and what each control must do.

mod bins;
mod control;
mod rest;
mod scipy;
mod water;

use crate::support::solve;
use finrun_engine::building::{HouseAir, Leaks};
use finrun_engine::climate::{Bin, Season, Station};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::{ChangeRate, Temperature, TemperatureDifference, Unit};
use finrun_engine::season::{Controls, Gains, SeasonRun, season};

pub(crate) fn fahrenheit(degrees: f64) -> Temperature {
    Temperature::of(degrees, Unit::Fahrenheit)
}

/// A cold place; the numbers are invented.
pub(crate) fn station() -> Station {
    Station {
        state: "VT".to_string(),
        name: "Somewhere".to_string(),
        elevation_m: 0,
        t99_f: 2,
        t996_f: -4,
        mean_f: 46,
        coldest_month_f: 20,
        degree_days_65_f: 7400,
        wind_mph: 8,
    }
}

pub(crate) fn bins() -> Vec<Bin> {
    Season::of(&station()).bins()
}

/// A thousand hours at this temperature.
pub(crate) fn one_bin(outdoors: Temperature) -> [Bin; 1] {
    let from = outdoors - TemperatureDifference::from_si(1.0);
    [Bin { from, outdoors, hours: 1000.0 }]
}

/// The usual controls of a house without gains.
pub(crate) fn plain(job: &Job) -> Controls {
    Controls { gains: Gains::None, ..Controls::usual(job) }
}

pub(crate) fn run(job: &Job, design: &Design, bins: &[Bin], controls: &Controls) -> SeasonRun {
    season(job, design, bins, controls, None).expect("a season")
}

/// The job and its design without outdoor air, whose heat follows what rooms are meant to have.
pub(crate) fn airless(draft: &Draft) -> (Job, Design) {
    let (mut job, _) = solve(draft);
    job.house.air = HouseAir { leaks: Leaks::Changes(ChangeRate::ZERO), ..job.house.air };
    job.house.air.ventilation.supply = finrun_engine::quantity::VolumeFlow::ZERO;
    job.house.air.ventilation.exhaust = finrun_engine::quantity::VolumeFlow::ZERO;
    for room in &mut job.house.rooms {
        room.least_air = None;
    }
    let design = finrun_engine::design::design(&job);
    (job, design)
}
