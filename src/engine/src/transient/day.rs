//! A night's setback on the design day, and the recovery.

use super::RECOVERED_WITHIN;
use super::mass::capacities_j_k;
use super::steps::{Held, March, Moment, STEP_S};
use crate::building::{Day, Exchange, RoomId, ZoneId};
use crate::design::Design;
use crate::job::{Job, Mass, Setback};
use crate::quantity::{Power, Temperature};
use crate::season::bin::Place;
use crate::season::{Controls, NoSeason};
use serde::Serialize;

/// A day and night from the hour at which the thermostats are turned down.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayRun {
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    /// Every ten minutes, from the start on.
    pub samples: Vec<Sample>,
    /// In the order of the job.
    pub rooms: Vec<RoomDay>,
    pub zones: Vec<ZoneDay>,
    /// From the boiler in the 24 hours, to rooms and pipes; and what it would be without setback.
    pub heat_j: f64,
    pub steady_heat_j: f64,
    /// What the elements would have to give, as a multiple of what they do, for every thermostat's room
    /// to be warm again in time; one where they do. None where ten times would not do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength: Option<f64>,
    /// From the boiler while all zones call, at the coldest moment, that much stronger.
    #[serde(rename = "boiler_w", skip_serializing_if = "Option::is_none")]
    pub boiler: Option<Power>,
    /// What all rooms and spaces got, less what they lost and store: what the steps leave over.
    pub unbalanced_j: f64,
}

/// One moment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sample {
    /// Since the thermostats were turned down.
    pub at_h: f64,
    #[serde(rename = "rooms_k")]
    pub rooms: Vec<Temperature>,
    #[serde(rename = "spaces_k")]
    pub spaces: Vec<Temperature>,
    /// Of the last minute, that each zone's water runs.
    pub zones_run: Vec<f64>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomDay {
    pub room: RoomId,
    #[serde(rename = "coldest_k")]
    pub coldest: Temperature,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ZoneDay {
    pub zone: ZoneId,
    /// From turning the thermostats up until those of this zone have the temperature that they are set
    /// to, within [`RECOVERED_WITHIN`]; none where that takes longer than the day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recovered_h: Option<f64>,
}

const DAY_H: f64 = 24.0;
const SAMPLE_STEPS: usize = 10;

/// More than this many times the output is no answer: judgement.
const MOST_STRENGTH: f64 = 10.0;

/// A designed house through the design day, from the steady state on.
///
/// # Errors
/// [`NoSeason`] where that has none.
pub fn design_day(
    job: &Job,
    design: &Design,
    controls: &Controls,
    masses: &[Mass],
    setback: Setback,
) -> Result<DayRun, NoSeason> {
    let exchange = Exchange::of(&job.house);
    let outdoors = job.house.site.outdoors;
    let mut place = Place::of(job, design, controls, &exchange)?;
    let rest = place.rest(outdoors)?;
    let day = exchange.day(outdoors);
    let march = March::of(&day, &capacities_j_k(&job.house, masses)).ok_or(NoSeason::NotSettled)?;
    let mut night = Night { day: &day, march: &march, place: &mut place };
    let zones = job.zones.len();
    let usual: Vec<f64> = night.place.system.callers.iter().map(|caller| caller.set_k).collect();
    let lowered: Vec<f64> = usual.iter().map(|k| k - setback.by.si()).collect();
    let (steps, turned_up) = (steps_in(DAY_H), steps_in(setback.hours.clamp(0.0, DAY_H)));
    let mut moment = Moment::at_rest(&rest.at_k, &rest.shares);
    let mut samples = vec![night.sample(0, &moment)];
    let mut coldest = rest.at_k.clone();
    let mut recovered: Vec<Option<f64>> = vec![None; usual.len()];
    let mut morning = moment.clone();
    for step in 0..steps {
        if step == turned_up {
            morning = moment.clone();
        }
        let set_k = if step < turned_up { &lowered } else { &usual };
        let before = night.short_k(&moment, &usual);
        night.step(&mut moment, Held::At(set_k), 1.0);
        for (coldest, at) in coldest.iter_mut().zip(&moment.at_k) {
            *coldest = coldest.min(*at);
        }
        if step >= turned_up {
            let after = night.short_k(&moment, &usual);
            for (at, found) in recovered.iter_mut().enumerate().filter(|(_, h)| h.is_none()) {
                *found = crossed(before[at], after[at])
                    .map(|part| ((step - turned_up) as f64 + part) * STEP_S / 3600.0);
            }
        }
        if (step + 1) % SAMPLE_STEPS == 0 {
            samples.push(night.sample(step + 1, &moment));
        }
    }
    let stored = march.stored_j(&moment.at_k, &rest.at_k);
    let strength = night.strength(&morning, &usual, steps_in(setback.recover_h));
    let all = night.all_calling_w(&morning);
    let steady_w = night.heat_w(&rest.at_k, &rest.shares);
    let zone = |zone: usize| {
        let callers = night.place.system.callers.iter().zip(&recovered);
        let own = callers.filter(|(caller, _)| caller.zone == zone).map(|(_, hours)| *hours);
        // All of a zone's, where each room has its own.
        own.reduce(|a, b| Some(a?.max(b?))).flatten()
    };
    Ok(DayRun {
        outdoors,
        samples,
        rooms: job
            .house
            .rooms
            .iter()
            .zip(&coldest)
            .map(|(room, k)| RoomDay { room: room.id, coldest: Temperature::from_si(*k) })
            .collect(),
        zones: (0..zones)
            .map(|at| ZoneDay { zone: job.zones[at].id, recovered_h: zone(at) })
            .collect(),
        heat_j: moment.given_j + moment.pipe_j,
        steady_heat_j: steady_w * DAY_H * 3600.0,
        strength,
        boiler: strength.map(|strength| Power::from_si(all.0 * strength + all.1)),
        unbalanced_j: moment.given_j - moment.lost_j - stored,
    })
}

fn steps_in(hours: f64) -> usize {
    (hours * 3600.0 / STEP_S).round().max(0.0) as usize
}

/// The part of a step after which what is short falls below what counts as recovered.
fn crossed(before_k: f64, after_k: f64) -> Option<f64> {
    let within = RECOVERED_WITHIN.si();
    match after_k <= within {
        true if before_k <= within => Some(0.0),
        true => Some((before_k - within) / (before_k - after_k)),
        false => None,
    }
}

struct Night<'a, 'b> {
    day: &'a Day,
    march: &'a March,
    place: &'a mut Place<'b>,
}

impl Night<'_, '_> {
    fn step(&mut self, moment: &mut Moment, held: Held<'_>, strength: f64) {
        let Place { gains_w, system, .. } = &mut *self.place;
        self.march.step(self.day, gains_w, system, moment, held, strength);
    }

    /// By how much each caller's room is colder than it is meant to be.
    fn short_k(&self, moment: &Moment, set_k: &[f64]) -> Vec<f64> {
        let callers = self.place.system.callers.iter().zip(set_k);
        callers.map(|(caller, set_k)| set_k - moment.at_k[caller.holder]).collect()
    }

    fn sample(&self, step: usize, moment: &Moment) -> Sample {
        let kelvin = |k: &f64| Temperature::from_si(*k);
        Sample {
            at_h: step as f64 * STEP_S / 3600.0,
            rooms: moment.at_k[..self.day.rooms].iter().map(kelvin).collect(),
            spaces: moment.at_k[self.day.rooms..].iter().map(kelvin).collect(),
            zones_run: self.place.system.running(&moment.shares),
        }
    }

    /// From the boiler, W.
    fn heat_w(&mut self, at_k: &[f64], shares: &[f64]) -> f64 {
        let system = &mut self.place.system;
        let given = system.give(at_k, shares, false);
        let mut heat_w = 0.0;
        for (caller, share) in system.callers.iter().zip(shares) {
            heat_w += caller.rooms.iter().map(|&room| share * given.to_room_w[room]).sum::<f64>();
        }
        let running = system.running(shares);
        heat_w + given.zone_lost_w.iter().zip(running).map(|(w, share)| w * share).sum::<f64>()
    }

    /// To the rooms and lost from pipes, while all zones call, W.
    fn all_calling_w(&mut self, moment: &Moment) -> (f64, f64) {
        let system = &mut self.place.system;
        let given = system.give(&moment.at_k, &vec![1.0; system.callers.len()], false);
        (given.to_room_w.iter().sum(), given.zone_lost_w.iter().sum())
    }

    /// How much stronger all elements would have to be for the thermostats' rooms to be warm after so
    /// many steps.
    fn strength(&mut self, morning: &Moment, usual: &[f64], steps: usize) -> Option<f64> {
        let mut short_k = |strength: f64| {
            let mut moment = morning.clone();
            for _ in 0..steps {
                self.step(&mut moment, Held::Throughout, strength);
            }
            let short = self.short_k(&moment, usual);
            short.into_iter().fold(f64::NEG_INFINITY, f64::max) - RECOVERED_WITHIN.si()
        };
        let mut low = (1.0, short_k(1.0));
        if low.1 <= 0.0 {
            return Some(1.0);
        }
        let mut high = (MOST_STRENGTH, short_k(MOST_STRENGTH));
        if high.1 > 0.0 || high.1.is_nan() {
            return None;
        }
        // What is short falls nearly in proportion, so that a few steps of false position find it. An end
        // that stays counts for half from then on (the Illinois rule), or the other would creep.
        let mut last = 0.0;
        for _ in 0..20 {
            let at = low.0 + (high.0 - low.0) * low.1 / (low.1 - high.1);
            let found = (at, short_k(at));
            if found.1.abs() < 1e-3 {
                return Some(at);
            }
            let same_side = last * found.1 > 0.0;
            let kept = if found.1 > 0.0 { &mut high } else { &mut low };
            if same_side {
                kept.1 *= 0.5;
            }
            last = found.1;
            if found.1 > 0.0 { low = found } else { high = found }
        }
        Some(high.0)
    }
}
