//! How likely each explanation is, and what to read next.
//!
//! Readings are Gaussian about what an explanation predicts, with the covariance of the readings' own
//! errors and of what the calculation leaves open: flow, outputs and losses are only about as calculated.
//! An explanation with a strength is worth the mean of its likelihood over its range, by Laplace's method
//! about the best strength; so one that fits the readings only at a strength of its choosing pays for the
//! choice.

mod fit;
mod next;

use self::fit::{Fitted, Weigher};
use super::explanation::{Candidate, Change, Explanation, Scale, candidates, orders};
use super::gets::{Limit, RoomGets, gets};
use super::model::Model;
use super::place::{At, Reading, value};
use crate::building::RoomId;
use crate::design::Design;
use crate::job::{Job, Measured, Ran};
use crate::numeric::{exp, pow};
use crate::quantity::Temperature;
use serde::Serialize;

/// What the readings tell.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Explained {
    /// The likeliest first; all that were weighed.
    pub likely: Vec<Likely>,
    /// Whether the first meets all readings within their errors. If not, some reading is wrong or more
    /// than one thing is the matter.
    pub fits: bool,
    /// What would tell the likeliest apart, the best first.
    pub next: Vec<Next>,
    /// Each reading beside what is calculated.
    pub compared: Vec<Compared>,
    /// Whether the rooms' temperatures were taken to tell of heat and loss.
    pub rooms_told: bool,
}

/// One explanation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Likely {
    pub explanation: Explanation,
    /// Its part of the whole likelihood.
    pub share: f64,
    pub sure: Sure,
    /// What it changes and to which share of what was calculated, at its best.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength: Option<(Scale, f64)>,
    /// Whether the first predicts so nearly the same of every reading that they do not tell the two apart.
    pub alike: bool,
}

/// How sure an explanation is, for words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sure {
    Unlikely,
    Possible,
    /// As likely as all others together, or more.
    Rather,
    Likely,
    AlmostCertain,
}

/// A place that was not read, and what the two likeliest explanations expect there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Next {
    pub at: At,
    /// K; of a flow kg/s.
    pub if_first: f64,
    pub if_second: f64,
    /// How many standard errors these are apart.
    pub apart: f64,
}

/// A reading, what would be read if all were as calculated, and what the likeliest explanation makes of
/// it: K, and of a flow kg/s.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Compared {
    pub at: At,
    pub read: f64,
    pub calculated: f64,
    pub explained: f64,
}

/// Why nothing is explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoExplanation {
    /// The flows of the system as entered were not found, or nothing is heated.
    NotSolved,
    /// No supply was read, which everything else follows from.
    NoSupply,
    /// Beside it fewer than two places were read.
    TooFew,
}

/// Two numbers beside the supply: from one anything can be explained.
const LEAST: usize = 2;

/// The limits of the words: judgement.
const SURE: [(f64, Sure); 4] =
    [(0.95, Sure::AlmostCertain), (0.8, Sure::Likely), (0.5, Sure::Rather), (0.1, Sure::Possible)];

/// Two explanations are alike where their predictions lie less than this apart, squared and in standard
/// errors, and neither is this many times as likely as the other: judgement.
const ALIKE: f64 = 2.0;
const AS_LIKELY: f64 = 10.0;

/// What the readings say of a designed system.
///
/// # Errors
/// [`NoExplanation`] says why they say nothing.
pub fn explain(
    job: &Job,
    design: &Design,
    measured: &Measured,
) -> Result<Explained, NoExplanation> {
    let mut explaining = Explaining::new(job, design);
    let mut found = None;
    set_up(job, design, measured, explaining.short, &mut |weigher, candidates| {
        for &candidate in candidates {
            explaining.fitted.extend(weigher.fit(candidate));
        }
        found = conclude(weigher, std::mem::take(&mut explaining.fitted));
    })?;
    found.ok_or(NoExplanation::NotSolved)
}

/// The same, an explanation at a time, for whoever has to leave room for other things between.
#[derive(Debug)]
pub struct Explaining {
    short: Option<RoomId>,
    fitted: Vec<Fitted>,
    tried: usize,
}

impl Explaining {
    pub fn new(job: &Job, design: &Design) -> Explaining {
        let short = short(&gets(job, design), job);
        Explaining { short, fitted: Vec::new(), tried: 0 }
    }

    /// Weighs one explanation more, always of the same readings; after the last, says what they tell.
    ///
    /// # Errors
    /// [`NoExplanation`] says why they say nothing.
    pub fn step(
        &mut self,
        job: &Job,
        design: &Design,
        measured: &Measured,
    ) -> Result<Option<Explained>, NoExplanation> {
        let mut found = None;
        set_up(job, design, measured, self.short, &mut |weigher, candidates| {
            match candidates.get(self.tried) {
                Some(&candidate) => self.fitted.extend(weigher.fit(candidate)),
                None => {
                    let concluded = conclude(weigher, std::mem::take(&mut self.fitted));
                    found = Some(concluded.ok_or(NoExplanation::NotSolved));
                }
            }
            self.tried += 1;
        })?;
        found.transpose()
    }
}

/// Puts the readings beside the system as entered, with all that may explain them.
fn set_up(
    job: &Job,
    design: &Design,
    measured: &Measured,
    short: Option<RoomId>,
    look: &mut dyn FnMut(&mut Weigher<'_, '_>, &[Candidate]),
) -> Result<(), NoExplanation> {
    if design.piping.not_solved.is_some() || design.piping.circuits.is_empty() {
        return Err(NoExplanation::NotSolved);
    }
    // Without the weather nothing is known of losses.
    let ran = measured.outdoors.map_or(Ran::AWhile, |_| measured.ran);
    let orders = orders(job, design);
    let mut model = Model::of(job, design, &orders, measured, ran);
    let read: Vec<Reading> = model
        .places
        .iter()
        .filter(|at| model.rooms_tell() || !matches!(at, At::Air(_)))
        .filter_map(|&at| Some(Reading { at, value: value(job, measured, at)? }))
        .collect();
    let supply = read.iter().find(|reading| reading.at.is_supply());
    let supply = supply.ok_or(NoExplanation::NoSupply)?.value;
    if read.iter().filter(|reading| !reading.at.is_supply()).count() < LEAST {
        return Err(NoExplanation::TooFew);
    }
    let outdoors = measured.outdoors.unwrap_or(job.house.site.outdoors);
    let entered = model.as_entered(Temperature::from_si(supply), outdoors);
    let candidates = candidates(&model, &orders, short);
    let mut weigher = Weigher::of(&mut model, entered, read).ok_or(NoExplanation::NotSolved)?;
    look(&mut weigher, &candidates);
    Ok(())
}

/// What follows once all explanations are at their best; none where none of them comes to rest.
fn conclude(weigher: &Weigher<'_, '_>, mut fitted: Vec<Fitted>) -> Option<Explained> {
    let calculated = fitted.iter().find(|of| of.candidate.change == Change::Nothing).cloned();
    // Equal ones stay in the order of the list.
    fitted.sort_by(|a, b| b.ln_worth.total_cmp(&a.ln_worth));
    let first = fitted.first()?.clone();
    let worth = |of: &Fitted| exp(of.ln_worth - first.ln_worth);
    let sum: f64 = fitted.iter().map(worth).sum();
    let shares: Vec<f64> = fitted.iter().map(|of| worth(of) / sum).collect();
    let likely = fitted.iter().zip(&shares).enumerate();
    let likely = likely.map(|(nth, (of, &share))| Likely {
        explanation: of.candidate.explanation,
        share,
        sure: sure(share),
        strength: of.candidate.change.scale().map(|scale| (scale, exp(of.strength))),
        alike: nth > 0 && share * AS_LIKELY >= shares[0] && weigher.apart(&first, of) < ALIKE,
    });
    Some(Explained {
        likely: likely.collect(),
        fits: fits(first.misfit, weigher.readings.len()),
        next: next::next(weigher, &fitted, &shares),
        compared: weigher.compared(calculated.as_ref().unwrap_or(&first), &first),
        rooms_told: weigher.rooms_told(),
    })
}

fn sure(share: f64) -> Sure {
    SURE.iter().find(|(least, _)| share >= *least).map_or(Sure::Unlikely, |(_, sure)| *sure)
}

/// The coldest room on the design day of those that have too little element.
fn short(gets: &[RoomGets], job: &Job) -> Option<RoomId> {
    let wanted =
        |id| job.house.rooms.iter().find(|room| room.id == id).map(|room| room.temperature);
    let cold = gets.iter().filter(|of| of.limit == Limit::Element);
    let below = cold.filter_map(|of| Some((of.room, (wanted(of.room)? - of.reaches?).si())));
    below.max_by(|a, b| a.1.total_cmp(&b.1)).map(|(room, _)| room)
}

/// Whether a sum of squares is one that errors bring about in 99 of 100 cases: Wilson and Hilferty's
/// approximation of chi-square, "The distribution of chi-square", Proc. Natl. Acad. Sci. 17 (1931).
fn fits(misfit: f64, readings: usize) -> bool {
    const ONE_IN_A_HUNDRED: f64 = 2.326;
    let free = readings.saturating_sub(1).max(1) as f64;
    let spread = 2.0 / (9.0 * free);
    (pow(misfit.max(0.0) / free, 1.0 / 3.0) - (1.0 - spread)) / spread.sqrt() < ONE_IN_A_HUNDRED
}
