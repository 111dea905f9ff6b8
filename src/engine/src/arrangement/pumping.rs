//! The circulator against the system: both curves, and what another circulator would do.

use super::balance::{Circuit, circuits};
use super::lower::{Drive, Plan};
use super::run::{pumps, running};
use super::{PipingDesign, PumpDesign};
use crate::building::ZoneId;
use crate::design::Design;
use crate::job::{Job, Zoning};
use crate::named::Named;
use crate::network::{PumpCurve, TypicalPump};
use crate::pipe::Cv;
use crate::quantity::{Length, Temperature, VolumeFlow};
use crate::sizing::Choice;
use serde::Serialize;

/// Another circulator in the place of the job's.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Alternative {
    pub pump: Other,
    /// What it does there; none where the system then finds no rest.
    pub does: Option<PumpDesign>,
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Other {
    Typical(TypicalPump),
    /// The job's own, slowed to the flow that is meant: its share of full speed.
    Slowed(f64),
}

/// A designed system, ready to be run in other ways.
#[derive(Debug)]
pub(super) struct Built<'a> {
    pub(super) job: &'a Job,
    pub(super) circuits: Vec<Circuit>,
    pub(super) choices: Vec<Choice>,
    pub(super) valves: Vec<Option<Cv>>,
    pub(super) means: Vec<Temperature>,
}

impl<'a> Built<'a> {
    pub(super) fn of(job: &'a Job, design: &Design) -> Built<'a> {
        let loads: Vec<_> = design.rooms.iter().map(|room| room.load.clone()).collect();
        let choices = design.rooms.iter().map(|room| room.element.choice.clone());
        let valves = design.piping.circuits.iter().map(|c| c.valve.cv.and_then(Cv::new));
        let means = design.piping.passages.iter().map(|passage| passage.mean_water());
        Built {
            job,
            circuits: circuits(job, &loads),
            choices: choices.collect(),
            valves: valves.collect(),
            means: means.collect(),
        }
    }

    /// With these zones on, driven so.
    pub(super) fn plan<'b>(&'b self, on: &'b [bool], drive: Drive<'b>) -> Plan<'b> {
        Plan {
            job: self.job,
            circuits: &self.circuits,
            choices: &self.choices,
            valves: &self.valves,
            on,
            means: &self.means,
            drive,
        }
    }

    /// What the circulator at `index` does while these zones call.
    fn pump(&self, drive: Drive<'_>, zones: &[ZoneId], index: usize) -> Option<PumpDesign> {
        let on: Vec<bool> = self.job.zones.iter().map(|zone| zones.contains(&zone.id)).collect();
        let running = running(self.plan(&on, drive));
        pumps(self.job, &running).into_iter().nth(index)
    }
}

/// Points of the head that the circulator at `index` has to give at shares of the meant flow, from
/// nothing to `most`, while these zones call. The other circulators keep the same share.
pub fn system_curve(
    job: &Job,
    design: &Design,
    zones: &[ZoneId],
    index: usize,
    most: f64,
) -> Vec<(VolumeFlow, Length)> {
    const POINTS: u32 = 8;
    let built = Built::of(job, design);
    let mut points = vec![(VolumeFlow::ZERO, Length::ZERO)];
    for step in 1..=POINTS {
        let share = most * f64::from(step) / f64::from(POINTS);
        if let Some(pump) = built.pump(Drive::Share(share), zones, index) {
            points.push((pump.flow, pump.head));
        }
    }
    points
}

/// Points of the curve of the circulator at `index`, from rest to its last flow; all its equals
/// together.
pub fn curve_points(job: &Job, index: usize) -> Vec<(VolumeFlow, Length)> {
    const POINTS: u32 = 16;
    let (flows, heads) = pushing(job);
    let Some(curve) = curve(job, index) else { return Vec::new() };
    (0..=POINTS)
        .map(|step| {
            let flow = curve.end() * (f64::from(step) / f64::from(POINTS));
            (flow * flows, (curve.head(flow) * heads).max(Length::ZERO))
        })
        .collect()
}

/// By how much flow and head of all its equals are more than of one.
fn pushing(job: &Job) -> (f64, f64) {
    match (own_pumps(job), job.circuit.pumps) {
        (true, _) | (false, crate::job::PumpSet::One) => (1.0, 1.0),
        (false, crate::job::PumpSet::TwoInParallel) => (2.0, 1.0),
        (false, crate::job::PumpSet::TwoInSeries) => (1.0, 2.0),
    }
}

/// Whether the job's circulators give the head that each of `piping` has to, at its flow.
pub(crate) fn gives(job: &Job, piping: &PipingDesign) -> bool {
    let (flows, heads) = pushing(job);
    let one = |(index, pump): (usize, &PumpDesign)| {
        let flow = pump.flow / flows;
        curve(job, index)
            .is_some_and(|curve| flow <= curve.end() && curve.head(flow) * heads >= pump.head)
    };
    piping.pumps.iter().enumerate().all(one)
}

fn own_pumps(job: &Job) -> bool {
    job.zones.len() > 1 && job.circuit.zoning == Zoning::Circulators
}

/// The curve of the circulator at `index`.
fn curve(job: &Job, index: usize) -> Option<&PumpCurve> {
    match own_pumps(job) {
        true => job.zones.get(index).map(|zone| &zone.pump),
        false => Some(&job.circuit.pump),
    }
}

/// What the typical circulators would do in place of the one at `index`, and its own slowed down.
pub fn alternatives(job: &Job, design: &Design, index: usize) -> Vec<Alternative> {
    let built = Built::of(job, design);
    let zones: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    let mut others: Vec<Alternative> = TypicalPump::ALL
        .iter()
        .map(|&typical| Alternative {
            pump: Other::Typical(typical),
            does: built.pump(Drive::Instead(&typical.curve()), &zones, index),
        })
        .collect();
    let Some(meant) = built.pump(Drive::Sums, &zones, index) else { return others };
    // The flow rises with the speed, so halving finds it; a fortieth of a percent is enough.
    let (mut low, mut high) = (0.05, 1.0);
    let at = |speed: f64| built.pump(Drive::Curves { speed }, &zones, index);
    let enough = |does: &Option<PumpDesign>| does.as_ref().is_some_and(|d| d.flow >= meant.flow);
    if !enough(&at(high)) {
        return others;
    }
    for _ in 0..12 {
        let middle = 0.5 * (low + high);
        if enough(&at(middle)) {
            high = middle;
        } else {
            low = middle;
        }
    }
    others.push(Alternative { pump: Other::Slowed(high), does: at(high) });
    others
}
