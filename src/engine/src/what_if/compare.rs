//! The job before and after, a step at a time, so that a page stays alive between them.

use super::apply::apply;
use super::payback::{Payback, payback};
use crate::building::RoomId;
use crate::climate::{self, Bin};
use crate::design::{Design, planned};
use crate::job::{ChangeField, Counted, Draft, Field, FieldError, Job, read, resolve};
use crate::quantity::{Length, Money, Power};
use crate::season::{Burning, Controls, NoSeason, SeasonRun, season};
use crate::takeoff::item::Class;
use crate::takeoff::{cost, count};
use serde::Serialize;

/// A job with its changes and without.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Weighed {
    pub before: Side,
    pub after: Side,
    /// Of the changes that are on, by the user: the sum of what is typed.
    pub cost: Money,
    /// Changes that are on without a cost.
    pub uncosted: usize,
    pub payback: Payback,
}

/// What a job comes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Side {
    #[serde(rename = "load_w")]
    pub load: Power,
    #[serde(rename = "element_m")]
    pub element: Length,
    pub pieces: usize,
    /// Of the pieces; none while one has no price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pieces_cost: Option<Money>,
    /// What the boiler must give on the design day.
    #[serde(rename = "boiler_w", skip_serializing_if = "Option::is_none")]
    pub boiler: Option<Power>,
    /// Rooms that get too little.
    pub short: usize,
    /// In the order of the job.
    pub rooms: Vec<RoomSide>,
    /// None without a weather station.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub year: Option<Result<Year, NoSeason>>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomSide {
    pub room: RoomId,
    #[serde(rename = "load_w")]
    pub load: Power,
    #[serde(rename = "element_m")]
    pub element: Length,
    #[serde(rename = "short_w")]
    pub short: Power,
    /// Hours of the year in which it is colder, or heated and warmer, than it is meant to be; none
    /// without a year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cold_h: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm_h: Option<f64>,
}

/// The house through the year of its station.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Year {
    pub heat_j: f64,
    /// In units of the fuel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel_cost: Option<Money>,
    /// Of the room with the most of them.
    pub cold_h: f64,
    pub warm_h: f64,
}

/// Why nothing is weighed.
#[derive(Debug, Clone, PartialEq)]
pub enum NotWeighed {
    /// No change is on.
    NothingOn,
    /// The job itself is not whole.
    NoJob,
    /// A change that is on lacks something, or holds what cannot be read: said at its field.
    Unread,
    /// The changed job has these errors, which the job has not.
    Wrong(Box<Draft>, Vec<FieldError>),
}

/// A comparison under way.
#[derive(Debug, Clone)]
pub struct Weighing {
    draft: Draft,
    bins: Option<Vec<Bin>>,
    /// The jobs still to be designed, the next one last; then the same with their designs.
    jobs: Vec<Job>,
    designed: Vec<(Job, Design)>,
    /// Before, and after.
    sides: Vec<Side>,
}

impl Weighing {
    /// # Errors
    /// [`NotWeighed`] says why there is nothing to compare.
    pub fn of(draft: &Draft) -> Result<Weighing, NotWeighed> {
        if draft.what_if.iter().all(|change| change.counted == Counted::Off) {
            return Err(NotWeighed::NothingOn);
        }
        let now = read(draft);
        if now.errors.iter().any(|error| stops(draft, error)) {
            return Err(NotWeighed::Unread);
        }
        let changed = apply(draft);
        let then = read(&changed);
        let wrong: Vec<FieldError> =
            then.errors.into_iter().filter(|error| !now.errors.contains(error)).collect();
        if now.job.is_none() {
            return Err(NotWeighed::NoJob);
        }
        if !wrong.is_empty() {
            return Err(NotWeighed::Wrong(Box::new(changed), wrong));
        }
        let jobs: Vec<Job> = then.job.into_iter().chain(now.job).collect();
        let bins = draft.station.as_ref().map(|station| climate::Season::of(station).bins());
        Ok(Weighing { draft: draft.clone(), bins, jobs, designed: Vec::new(), sides: Vec::new() })
    }

    /// Does a little; the result once all is done.
    pub fn step(&mut self) -> Option<Weighed> {
        if let Some(job) = self.jobs.pop() {
            let design = planned(&job);
            self.designed.insert(0, (job, design));
            return None;
        }
        if let Some((job, design)) = self.designed.pop() {
            let run = self.bins.as_ref().map(|bins| {
                season(&job, &design, bins, &Controls::of(&job, &design), Burning::of(&job))
            });
            self.sides.push(side(&job, &design, run));
            return None;
        }
        let (Some(after), Some(before)) = (self.sides.pop(), self.sides.pop()) else { return None };
        Some(weighed(&self.draft, before, after))
    }

    /// All of it at once.
    pub fn all(mut self) -> Option<Weighed> {
        // Two designs, two years, the comparison.
        (0..5).find_map(|_| self.step())
    }
}

/// Whether an error is one of a change that is on, but for its cost.
fn stops(draft: &Draft, error: &FieldError) -> bool {
    match error.field {
        Field::Change(_, ChangeField::Cost) => false,
        Field::Change(id, _) => {
            draft.change(id).is_some_and(|change| change.counted == Counted::On)
        }
        _ => false,
    }
}

fn side(job: &Job, design: &Design, run: Option<Result<SeasonRun, NoSeason>>) -> Side {
    let rooms = design.rooms.iter().map(|room| {
        let year = run.as_ref().and_then(|run| run.as_ref().ok());
        let year = year.and_then(|run| run.rooms.iter().find(|year| year.room == room.room));
        RoomSide {
            room: room.room,
            load: room.load.total,
            element: room.element.choice.nominal,
            short: room.short(),
            cold_h: year.map(|year| year.cold_h),
            warm_h: year.map(|year| year.warm_h),
        }
    });
    let rooms: Vec<RoomSide> = rooms.collect();
    let most = |of: fn(&RoomSide) -> Option<f64>| rooms.iter().filter_map(of).fold(0.0, f64::max);
    let price = job.control.as_ref().and_then(|control| control.fuel_price);
    let year = run.map(|run| {
        run.map(|run| Year {
            heat_j: run.heat_j,
            fuel: run.fuel,
            fuel_cost: run.fuel.zip(price).map(|(fuel, price)| price * fuel),
            cold_h: most(|room| room.cold_h),
            warm_h: most(|room| room.warm_h),
        })
    });
    let lines = cost::cost(job, &count::count(job, design)).lines;
    let pieces = lines.iter().filter(|line| matches!(line.class, Class::Piece(_)));
    Side {
        load: design.load,
        element: design.element_length(),
        pieces: design.piece_count(),
        pieces_cost: pieces.map(|line| line.sum).sum(),
        boiler: design.plant.as_ref().and_then(|plant| plant.needed).map(|needed| needed.output),
        short: rooms.iter().filter(|room| room.short > Power::ZERO).count(),
        rooms,
        year,
    }
}

fn weighed(draft: &Draft, before: Side, after: Side) -> Weighed {
    let on = draft.what_if.iter().filter(|change| change.counted == Counted::On);
    let costs: Vec<Option<f64>> =
        on.map(|change| resolve(draft, Field::Change(change.id, ChangeField::Cost)).si()).collect();
    let cost = Money::from_si(costs.iter().flatten().sum::<f64>() + 0.0);
    let uncosted = costs.iter().filter(|cost| cost.is_none()).count();
    let year = |side: &Side| side.year.as_ref().and_then(|year| year.as_ref().ok().copied());
    let payback = match (year(&before), year(&after)) {
        (Some(before), Some(after)) => match (before.fuel_cost, after.fuel_cost) {
            (Some(_), Some(_)) if uncosted > 0 => Payback::CostMissing,
            (Some(before), Some(after)) => payback(cost, before - after),
            _ => Payback::PriceMissing,
        },
        _ => Payback::NoYear,
    };
    Weighed { before, after, cost, uncosted, payback }
}
