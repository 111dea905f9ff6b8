//! How cool the supply may be for a system as it is built.

use super::balance::circuits;
use super::pumping::Built;
use super::run::{running_from, usual_drive};
use crate::building::RoomLoad;
use crate::design::Design;
use crate::job::Job;
use crate::network::Solved;
use crate::numeric::pow;
use crate::quantity::{Power, Temperature};

/// The answer is at most this far above the least, K.
const CLOSE_K: f64 = 0.25;

/// Flows settle to this share of the largest: it turns a room's heat by a thousandth of what a quarter
/// of a kelvin does.
const SETTLED: f64 = 1e-5;

/// The lowest supply temperature at which every room still gets its load, with the pieces and the
/// valves as they are; none where the boiler's limit does not do either. At most a quarter of a kelvin
/// too high.
///
/// Flow and temperature are solved anew at each supply that is tried.
pub fn lowest_supply(job: &Job, design: &Design) -> Option<Temperature> {
    let loads: Vec<RoomLoad> = design.rooms.iter().map(|room| room.load.clone()).collect();
    let given: Vec<Power> = design.rooms.iter().map(|room| room.element.output).collect();
    let beyond_now = beyond(job, &loads, &given)?;
    let (limit, now) = (job.circuit.boiler_limit.si(), job.circuit.supply.si());
    let mut trial = Trial { built: Built::of(job, design), job: job.clone(), loads, before: None };
    let mut low = (warmest_k(job), -1.0);
    let mut high = (limit, f64::INFINITY);
    if beyond_now < 0.0 {
        low = (now, beyond_now);
    } else if now <= limit {
        high = (now, beyond_now);
    }
    if !high.1.is_finite() {
        high.1 = trial.beyond(limit).filter(|beyond| *beyond >= 0.0)?;
    }
    let mut tries = 0;
    while high.0 - low.0 > CLOSE_K {
        tries += 1;
        // A little beside the line's zero, so that both ends close in on it; every third time the
        // middle, so that a bent curve cannot stall the search.
        let line = low.0 + (high.0 - low.0) * low.1 / (low.1 - high.1);
        let aside = if high.0 - line > 0.5 * CLOSE_K { 0.4 * CLOSE_K } else { -0.4 * CLOSE_K };
        let at = match tries % 3 {
            0 => 0.5 * (low.0 + high.0),
            _ => (line + aside).clamp(low.0 + 0.1 * CLOSE_K, high.0 - 0.1 * CLOSE_K),
        };
        match trial.beyond(at) {
            Some(beyond) if beyond >= 0.0 => high = (at, beyond),
            beyond => low = (at, beyond.unwrap_or(-1.0)),
        }
    }
    Some(Temperature::from_si(high.0))
}

/// No room gets heat from water that is no warmer.
fn warmest_k(job: &Job) -> f64 {
    job.house.rooms.iter().map(|room| room.temperature.si()).fold(0.0, f64::max)
}

/// A system that is tried at other supplies.
struct Trial<'a> {
    built: Built<'a>,
    /// The job at the supply of now.
    job: Job,
    loads: Vec<RoomLoad>,
    before: Option<Solved>,
}

impl Trial<'_> {
    /// What the worst served room has beyond its load; none where the flows are not found.
    fn beyond(&mut self, supply_k: f64) -> Option<f64> {
        self.job.circuit.supply = Temperature::from_si(supply_k);
        let circuits = circuits(&self.job, &self.loads);
        let on = vec![true; self.job.zones.len()];
        let mut plan = self.built.plan(&on, usual_drive(&self.job));
        (plan.job, plan.circuits) = (&self.job, &circuits);
        let running = running_from(plan, self.before.take(), SETTLED);
        let mut given = vec![Power::ZERO; self.loads.len()];
        for (tag, passage) in running.plumbing.tags.iter().zip(&running.walked.passages) {
            if let Some(of) = tag.element.and_then(|room| given.get_mut(room)) {
                *of = passage.to_room;
            }
        }
        self.before = Some(running.solved.ok()?);
        beyond(&self.job, &self.loads, &given)
    }
}

/// The least share of its load that a room gets, less one; as the excess of its water over its air
/// goes, which makes it nearly a line over the supply. None without a load.
fn beyond(job: &Job, loads: &[RoomLoad], given: &[Power]) -> Option<f64> {
    let shares = loads.iter().zip(given).filter(|(load, _)| load.wanted() > Power::ZERO);
    let least = shares.map(|(load, given)| *given / load.wanted()).fold(f64::INFINITY, f64::min);
    // A billionth of the load is rounding, not cold.
    let least = (least + 1e-9).max(0.0);
    least.is_finite().then(|| pow(least, 1.0 / job.baseboard.element.rating.exponent) - 1.0)
}
