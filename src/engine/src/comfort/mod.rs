//! What would leave rooms less cold or less warm through the year, tried one after another on the whole
//! house: a change to its draft, its design anew where that changes, and its year.
//!
//! In steps, so that a page can go on meanwhile. Of several ways of one kind only the best is given, and
//! only where it is better than the house as it is.

mod tries;

use crate::building::{RoomId, ZoneId};
use crate::climate::{Bin, Season};
use crate::design::{Design, design};
use crate::job::{Draft, Job, read};
use crate::quantity::{Length, Power, TemperatureDifference};
use crate::season::{Burning, Controls, SeasonRun, season};
use serde::Serialize;
use std::fmt;
use tries::{Try, tries};

/// How a house is through the year, all rooms together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Comfort {
    /// Hours of all rooms in which they are too cold, and too warm.
    pub cold_h: f64,
    pub warm_h: f64,
    /// How far rooms are from what they are meant to be, on the average of all rooms and of the hours in
    /// which the house is heated.
    #[serde(rename = "off_k")]
    pub off: TemperatureDifference,
    /// In units of the fuel; none where it is not known how it is burnt.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel: Option<f64>,
    #[serde(rename = "element_m")]
    pub element: Length,
}

/// What is changed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub enum Change {
    /// The thermostat of this zone hangs in this room.
    Thermostat(ZoneId, RoomId),
    /// Each room of the zone has a valve.
    RoomValves(ZoneId),
    /// The supply goes by the reset line.
    Reset,
    /// Balancing valves in the zone's circuits.
    Balance(ZoneId),
    /// The water passes this room first.
    First(RoomId),
    /// It passes the zone's rooms the other way round.
    TurnRound(ZoneId),
    /// The zone's loop becomes two.
    Split(ZoneId),
    /// So much element less in this room.
    Shorten(RoomId, Length),
    /// The damper of this room leaves so much of its output.
    Damper(RoomId, f64),
    /// The room becomes a zone of its own.
    OwnZone(RoomId),
}

/// A change that helps.
#[derive(Debug, Clone, PartialEq)]
pub struct Relief {
    pub change: Change,
    pub after: Comfort,
    /// The draft so changed.
    pub draft: Draft,
}

/// What a step comes to.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    Working,
    Found(Box<Relief>),
    Done,
}

/// A search that goes on step by step.
pub struct Reliefs {
    bins: Vec<Bin>,
    /// Of the house as it is.
    design: Design,
    before: Comfort,
    /// The next to try is the last; those of one kind stand together.
    left: Vec<Try>,
    /// Designed, its year still to come.
    designed: Option<(Try, Job, Design)>,
    /// Of the kind that is being tried.
    best: Option<Relief>,
}

impl fmt::Debug for Reliefs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Reliefs")
    }
}

/// Less of the average distance is not worth a change: judgement.
const WORTH: f64 = 0.05;

impl Reliefs {
    /// None where the house has no year: nothing to heat, or no station.
    pub fn begin(draft: &Draft, job: &Job, design: &Design) -> Option<Reliefs> {
        let bins = Season::of(draft.station.as_ref()?).bins();
        let run = year(job, design, &bins)?;
        let before = Comfort::of(job, design, &run);
        let mut left = tries(draft, job, design, &run);
        left.reverse();
        let design = design.clone();
        Some(Reliefs { bins, design, before, left, designed: None, best: None })
    }

    /// The house as it is.
    pub fn before(&self) -> Comfort {
        self.before
    }

    /// Goes a little further: a design, or a year.
    pub fn step(&mut self) -> Step {
        if let Some((tried, job, design)) = self.designed.take() {
            return self.judge(tried, &job, &design);
        }
        let Some(tried) = self.left.pop() else { return Step::Done };
        let reading = read(&tried.draft);
        let Some(job) = reading.job.filter(|_| reading.errors.is_empty()) else {
            return self.next_kind(&tried);
        };
        if !tried.designs_anew {
            let design = self.design.clone();
            return self.judge(tried, &job, &design);
        }
        let design = design(&job);
        self.designed = Some((tried, job, design));
        Step::Working
    }

    fn judge(&mut self, tried: Try, job: &Job, design: &Design) -> Step {
        let shortens = matches!(tried.change, Change::Shorten(..));
        if !self.leaves_more_short(design, usize::from(shortens))
            && let Some(run) = year(job, design, &self.bins)
        {
            let after = Comfort::of(job, design, &run);
            let counts = !shortens || after.element < self.before.element;
            let best = self.best.as_ref().map_or(self.before, |best| best.after);
            if counts && after.is_better(&self.before) && after.is_before(&best) {
                let (change, draft) = (tried.change, tried.draft.clone());
                self.best = Some(Relief { change, after, draft });
            }
        }
        self.next_kind(&tried)
    }

    /// Gives the best of a kind once all of it were tried.
    fn next_kind(&mut self, tried: &Try) -> Step {
        match self.left.last() {
            Some(next) if next.kind == tried.kind => Step::Working,
            _ => self.best.take().map_or(Step::Working, |best| Step::Found(Box::new(best))),
        }
    }

    /// Whether more rooms than so many do not get their heat on the design day any more; what shortens an
    /// element is meant to give its room less, and is judged by the year.
    fn leaves_more_short(&self, design: &Design, allowed: usize) -> bool {
        let short =
            |design: &Design| design.rooms.iter().filter(|room| room.short() > Power::ZERO).count();
        design.piping.not_solved.is_some() || short(design) > short(&self.design) + allowed
    }
}

fn year(job: &Job, design: &Design, bins: &[Bin]) -> Option<SeasonRun> {
    season(job, design, bins, &Controls::of(job, design), Burning::of(job)).ok()
}

impl Comfort {
    pub fn of(job: &Job, design: &Design, run: &SeasonRun) -> Comfort {
        let (mut off, mut weight) = (0.0, 0.0);
        for bin in run.bins.iter().filter(|bin| bin.runs > 0.0) {
            for (room, at) in job.house.rooms.iter().zip(&bin.rooms) {
                off += (*at - room.temperature).si().abs() * bin.hours;
                weight += bin.hours;
            }
        }
        Comfort {
            cold_h: run.rooms.iter().map(|room| room.cold_h).sum(),
            warm_h: run.rooms.iter().map(|room| room.warm_h).sum(),
            off: TemperatureDifference::from_si(if weight > 0.0 { off / weight } else { 0.0 }),
            fuel: run.fuel,
            element: design.element_length(),
        }
    }

    fn troubled_h(&self) -> f64 {
        self.cold_h + self.warm_h
    }

    /// Whether it is better by what is worth a change: fewer hours; or as few, and nearer to what is meant.
    fn is_better(&self, than: &Comfort) -> bool {
        let (own, other) = (self.troubled_h(), than.troubled_h());
        if own < other * (1.0 - WORTH) - 0.5 {
            return true;
        }
        own <= other + 0.5 && self.off < than.off * (1.0 - WORTH)
    }

    fn is_before(&self, other: &Comfort) -> bool {
        (self.troubled_h(), self.off.si()) < (other.troubled_h(), other.off.si())
    }
}
