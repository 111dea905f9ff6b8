//! How cool the water may be: what the supply must be on each day, and what it takes to run a system
//! that is piped for hot water with less.

mod need;
mod supply;

pub use supply::{CoolRoom, CoolSupply};

use crate::arrangement::{Heating, Tried};
use crate::building::{Exchange, RoomId, mean_temperature};
use crate::climate::Bin;
use crate::design::Design;
use crate::job::Job;
use crate::numeric::pow;
use crate::plant::reset::{Point, Setting, setting};
use crate::quantity::{Power, Temperature, TemperatureDifference};
use crate::season::{Controls, Gains, NoSeason, SeasonRun, Supply, season};
use need::Needs;
use serde::Serialize;

/// Supplies that a cooler boiler or a heat pump is run at: common practice, no source. 140, 130 and
/// 120 °F.
pub const USUAL_SUPPLIES: [Temperature; 3] =
    [Temperature::from_si(333.15), Temperature::from_si(327.594_444_444_444_45), COOLEST];

const COOLEST: Temperature = Temperature::from_si(322.038_888_888_888_9);

/// How cool the water of a designed system may be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cooler {
    /// From the design day to the mildest on which the house is heated.
    pub days: Vec<CoolDay>,
    /// The line to set on an outdoor reset control: nowhere below what a day asks. None where the
    /// boiler's limit is not enough for every day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<Setting>,
    /// The year as it is controlled now, and by that line.
    pub now: CoolYear,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by_line: Option<CoolYear>,
    /// What it takes to run at each of these.
    pub supplies: Vec<CoolSupply>,
}

/// The least supply for a day on which the water runs throughout.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CoolDay {
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    /// None where the boiler's limit is not enough.
    #[serde(rename = "supply_k", skip_serializing_if = "Option::is_none")]
    pub supply: Option<Temperature>,
    /// The room that asks for it.
    pub limiting: RoomId,
}

/// What a year does to a condensing boiler.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CoolYear {
    pub running_h: f64,
    /// Of these, with a return below [`crate::plant::return_protection::LEAST_RETURN`]: it condenses.
    pub condensing_h: f64,
    /// The share of the year's heat that is given then.
    pub condensing_share: f64,
}

/// Below the outdoor temperature from which on the house needs no heat, by how much heating begins:
/// judgement, 10 °F, as for the plant's own line.
const BEGINS_BELOW: TemperatureDifference = TemperatureDifference::from_si(10.0 / 1.8);

/// Days of the line, as many as the plant's own has.
const DAYS: usize = 6;

/// A supply is found to this, K.
const CLOSE_K: f64 = 0.05;

/// Many more than any day has taken.
const MOST_TRIES: usize = 60;

/// How cool the water may be, by the loads of each day, less the gains of these controls; the supplies of
/// `at` on the design day without gains.
///
/// # Errors
/// As [`season`].
pub fn cooler(
    job: &Job,
    design: &Design,
    bins: &[Bin],
    controls: &Controls,
    at: &[Temperature],
) -> Result<Cooler, NoSeason> {
    let mut search = Cooling::new(at);
    loop {
        if let Some(found) = search.step(job, design, bins, controls)? {
            return Ok(found);
        }
    }
}

/// The same a step at a time: a year, a day or a supply each, so that a page can go on meanwhile.
#[derive(Debug)]
pub struct Cooling {
    at: Vec<Temperature>,
    last: Option<Heating>,
    known: Vec<(f64, Vec<f64>)>,
    now: Option<CoolYear>,
    days: Vec<CoolDay>,
    line: Option<Option<Setting>>,
    by_line: Option<CoolYear>,
    supplies: Vec<CoolSupply>,
}

impl Cooling {
    pub fn new(at: &[Temperature]) -> Cooling {
        Cooling {
            at: at.to_vec(),
            last: None,
            known: Vec::new(),
            now: None,
            days: Vec::new(),
            line: None,
            by_line: None,
            supplies: Vec::new(),
        }
    }

    /// Goes on, always with the same job and all that belongs to it; gives what is found once it is.
    ///
    /// # Errors
    /// As [`season`].
    pub fn step(
        &mut self,
        job: &Job,
        design: &Design,
        bins: &[Bin],
        controls: &Controls,
    ) -> Result<Option<Cooler>, NoSeason> {
        let Some(now) = self.now else {
            self.now = Some(year(&season(job, design, bins, controls, None)?));
            return Ok(None);
        };
        if let Some(&outdoors) = days_between(job, controls).get(self.days.len()) {
            let day = self.trial(job, design, controls, |trial| trial.day(outdoors))?;
            self.days.push(day);
            return Ok(None);
        }
        let Some(line) = self.line else {
            let point = |day: &CoolDay| Some(Point { outdoors: day.outdoors, supply: day.supply? });
            let points: Option<Vec<Point>> = self.days.iter().map(point).collect();
            let line = points.and_then(|points| setting(mean_temperature(&job.house), &points));
            if let Some(line) = line {
                let supply = Supply::Reset(line, None);
                let controls = Controls { supply, ..controls.clone() };
                self.by_line = Some(year(&season(job, design, bins, &controls, None)?));
            }
            self.line = Some(line);
            return Ok(None);
        };
        if let Some(&supply) = self.at.get(self.supplies.len()) {
            let found = self.trial(job, design, controls, |trial| trial.at(supply, bins))?;
            self.supplies.push(found);
            return Ok(None);
        }
        let (days, supplies) = (self.days.clone(), self.supplies.clone());
        Ok(Some(Cooler { days, line, now, by_line: self.by_line, supplies }))
    }

    /// Tries something with what is known from before.
    fn trial<T>(
        &mut self,
        job: &Job,
        design: &Design,
        controls: &Controls,
        of: impl FnOnce(&mut Trial<'_>) -> Option<T>,
    ) -> Result<T, NoSeason> {
        let exchange = Exchange::of(&job.house);
        let needs = Needs::of(job, design, &exchange, controls).ok_or(NoSeason::NotSettled)?;
        let (last, known) = (self.last.take(), std::mem::take(&mut self.known));
        let mut trial = Trial { job, design, needs, tried: Tried::of(job, design), last, known };
        let found = of(&mut trial).ok_or(NoSeason::NoFlows);
        (self.last, self.known) = (trial.last, trial.known);
        found
    }
}

fn year(run: &SeasonRun) -> CoolYear {
    let least = crate::plant::return_protection::LEAST_RETURN;
    let cold = run.bins.iter().filter(|bin| bin.back.is_some_and(|back| back < least));
    let cold_j: f64 = cold.map(|bin| bin.heat.si() * bin.hours * 3600.0).sum();
    CoolYear {
        running_h: run.running_h,
        condensing_h: run.cold_return_h,
        condensing_share: if run.heat_j > 0.0 { cold_j / run.heat_j } else { 0.0 },
    }
}

fn days_between(job: &Job, controls: &Controls) -> Vec<Temperature> {
    let coldest = job.house.site.outdoors;
    let indoors = mean_temperature(&job.house);
    let balance = match controls.gains {
        Gains::None => indoors,
        Gains::From(balance) => balance.min(indoors),
    };
    let mildest = balance - BEGINS_BELOW;
    if mildest <= coldest {
        return vec![coldest];
    }
    let step = (mildest - coldest) / (DAYS - 1) as f64;
    (0..DAYS).map(|at| coldest + step * at as f64).collect()
}

/// A designed system that is tried at supplies.
#[derive(Debug)]
struct Trial<'a> {
    job: &'a Job,
    design: &'a Design,
    needs: Needs<'a>,
    tried: Tried<'a>,
    last: Option<Heating>,
    /// Supplies in K that were tried, and what each room gets there as it is meant to be, W. No day asks
    /// for that: it is the same on each.
    known: Vec<(f64, Vec<f64>)>,
}

impl Trial<'_> {
    /// All zones calling at this supply; none where the flows are not found.
    fn heating(&mut self, supply: Temperature) -> Option<&mut Heating> {
        let on = vec![true; self.job.zones.len()];
        self.last = Some(self.tried.heating(&on, supply, self.last.as_ref())?);
        self.last.as_mut()
    }

    fn given_w(&mut self, supply_k: f64) -> Option<Vec<f64>> {
        if let Some((_, given)) = self.known.iter().find(|(known, _)| *known == supply_k) {
            return Some(given.clone());
        }
        let (rooms_k, zones) = (self.needs.rooms_k.clone(), self.job.zones.len());
        let heating = self.heating(Temperature::from_si(supply_k))?;
        // The second time with the water's heat at its own mean.
        heating.give(&rooms_k, zones);
        let given = heating.give(&rooms_k, zones).to_room_w;
        self.known.push((supply_k, given.clone()));
        Some(given)
    }

    /// The least supply for a day, at most [`CLOSE_K`] too high.
    fn day(&mut self, outdoors: Temperature) -> Option<CoolDay> {
        let need_w = self.needs.on(outdoors)?;
        let limit_k = self.job.circuit.boiler_limit.si();
        let warmest_k = self.needs.rooms_k.iter().copied().fold(0.0, f64::max);
        let id = |room: usize| self.job.house.rooms[room].id;
        let at_limit = self.given_w(limit_k)?;
        let Some((share, mut room)) = self.worst(&at_limit, &need_w) else {
            // No room needs heat.
            let supply = Some(Temperature::from_si(warmest_k));
            return Some(CoolDay { outdoors, supply, limiting: id(0) });
        };
        // A billionth of the load is rounding, not cold.
        if share < 1.0 - 1e-9 {
            return Some(CoolDay { outdoors, supply: None, limiting: id(room) });
        }
        let (mut low, mut high) = ((warmest_k, -1.0), (limit_k, self.beyond(share)));
        for (at, given) in &self.known {
            let Some((share, of)) = self.worst(given, &need_w) else { continue };
            let beyond = self.beyond(share);
            if beyond < 0.0 && *at > low.0 {
                low = (*at, beyond);
            } else if beyond >= 0.0 && *at < high.0 {
                (high, room) = ((*at, beyond), of);
            }
        }
        for tries in 1..MOST_TRIES {
            if high.0 - low.0 <= CLOSE_K {
                break;
            }
            // A little beside the line's zero, so that both ends close in on it; every third time the
            // middle, so that a bent curve cannot stall the search.
            let line = low.0 + (high.0 - low.0) * low.1 / (low.1 - high.1);
            let aside = if high.0 - line > 0.5 * CLOSE_K { 0.4 * CLOSE_K } else { -0.4 * CLOSE_K };
            let at = match tries % 3 {
                0 => 0.5 * (low.0 + high.0),
                _ => (line + aside).clamp(low.0 + 0.1 * CLOSE_K, high.0 - 0.1 * CLOSE_K),
            };
            let given = self.given_w(at)?;
            let (share, of) = self.worst(&given, &need_w)?;
            match self.beyond(share) {
                beyond if beyond >= 0.0 => (high, room) = ((at, beyond), of),
                beyond => low = (at, beyond),
            }
        }
        let supply = Some(Temperature::from_si(high.0));
        Some(CoolDay { outdoors, supply, limiting: self.job.house.rooms[room].id })
    }

    /// The share less one, as the excess of water over air goes, which makes it nearly a line over the
    /// supply.
    fn beyond(&self, share: f64) -> f64 {
        pow((share + 1e-9).max(0.0), 1.0 / self.job.baseboard.element.rating.exponent) - 1.0
    }

    /// The room that gets the least share of what it needs, and that share; none where no room that hangs
    /// on the water needs any.
    fn worst(&self, given_w: &[f64], need_w: &[f64]) -> Option<(f64, usize)> {
        let mut worst: Option<(f64, usize)> = None;
        for (at, (given, need)) in given_w.iter().zip(need_w).enumerate() {
            if self.hangs(at) && *need > 0.0 {
                let share = given / need;
                if worst.is_none_or(|(least, _)| share < least) {
                    worst = Some((share, at));
                }
            }
        }
        worst
    }

    /// Whether a room has an element: one without is cold whatever the water is.
    fn hangs(&self, room: usize) -> bool {
        self.design.rooms[room].element.output > Power::ZERO
    }
}
