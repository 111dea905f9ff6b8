//! How cool the supply may be for a system as it is built.

use super::balance::circuits;
use super::pumping::Built;
use super::run::{running, usual_drive};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Power, Temperature};

/// The answer is at most this far above the least, K.
const CLOSE_K: f64 = 0.25;

/// The lowest supply temperature at which every room still gets its load, with the pieces and the
/// valves as they are; none where the boiler's limit does not do either. At most a quarter of a kelvin
/// too high.
///
/// Flow and temperature are solved anew at each supply that is tried.
pub fn lowest_supply(job: &Job, design: &Design) -> Option<Temperature> {
    let built = Built::of(job, design);
    let loads: Vec<_> = design.rooms.iter().map(|room| room.load.clone()).collect();
    let on = vec![true; job.zones.len()];
    let mut tried = job.clone();
    // The least of all rooms' share of their load, less one.
    let mut beyond = |supply_k: f64| -> Option<f64> {
        tried.circuit.supply = Temperature::from_si(supply_k);
        let circuits = circuits(&tried, &loads);
        let mut plan = built.plan(&on, usual_drive(&tried));
        (plan.job, plan.circuits) = (&tried, &circuits);
        let running = running(plan);
        running.solved.as_ref().ok()?;
        let mut given = vec![Power::ZERO; loads.len()];
        for (tag, passage) in running.plumbing.tags.iter().zip(&running.walked.passages) {
            if let Some(of) = tag.element.and_then(|room| given.get_mut(room)) {
                *of = passage.to_room;
            }
        }
        let shares = loads.iter().zip(&given).filter(|(load, _)| load.wanted() > Power::ZERO);
        let least =
            shares.map(|(load, given)| *given / load.wanted()).fold(f64::INFINITY, f64::min);
        // A billionth of the load is rounding, not cold.
        least.is_finite().then_some(least - 1.0 + 1e-9)
    };
    let warmest = job.house.rooms.iter().map(|room| room.temperature.si()).fold(0.0, f64::max);
    let (mut low, mut high) = (warmest, job.circuit.boiler_limit.si());
    let mut too_little = -1.0;
    let mut enough = beyond(high).filter(|enough| *enough >= 0.0)?;
    let mut halve = false;
    while high - low > CLOSE_K {
        // Every second step halves what is left, so that a bent curve cannot stall the search; the
        // other steps aim a little beside the line's zero, for the ends to close from both sides.
        let line = low + (high - low) * too_little / (too_little - enough);
        let middle = 0.5 * (low + high);
        let aside = if line < middle { 0.4 * CLOSE_K } else { -0.4 * CLOSE_K };
        let at = match halve {
            true => middle,
            false => (line + aside).clamp(low + 0.1 * CLOSE_K, high - 0.1 * CLOSE_K),
        };
        halve = !halve;
        match beyond(at) {
            Some(share) if share >= 0.0 => (high, enough) = (at, share),
            share => (low, too_little) = (at, share.unwrap_or(-1.0)),
        }
    }
    Some(Temperature::from_si(high))
}
