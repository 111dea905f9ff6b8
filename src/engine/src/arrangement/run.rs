//! A system as it is built, running with some of its zones: flow and temperature found together.

use super::balance::as_head;
use super::lower::{Drive, Plan, Plumbing, lower};
use super::pumping::Built;
use super::{PumpDesign, RunDesign};
use crate::building::ZoneId;
use crate::design::Design;
use crate::job::{Flow, Job};
use crate::network::{NotSolved, Solved, Source, Walked, solve, solve_from, walk};
use crate::quantity::{Length, MassFlow, Power, Pressure, Velocity};

/// Flow and temperature are solved in turn until no flow changes by more than this share of the
/// largest: each round changes it a hundredth as much as the one before.
const AGREE: f64 = 1e-8;

/// More rounds than any network has taken.
const MOST_ROUNDS: usize = 20;

/// A system at rest in its state.
#[derive(Debug)]
pub(super) struct Running {
    pub(super) plumbing: Plumbing,
    pub(super) solved: Result<Solved, NotSolved>,
    pub(super) walked: Walked,
}

/// What drives a job's circulators.
pub(super) fn usual_drive(job: &Job) -> Drive<'static> {
    match job.circuit.flow {
        Flow::FromPump => Drive::Curves { speed: 1.0 },
        Flow::FromDrop(_) | Flow::Typed(_) => Drive::Sums,
    }
}

/// Runs a system whose elements and valves are known.
pub(super) fn running(plan: Plan<'_>) -> Running {
    running_from(plan, None, AGREE)
}

/// The same from flows that it had in a state much like this, until none changes by more than a share
/// `close` of the largest.
pub(super) fn running_from(plan: Plan<'_>, mut before: Option<Solved>, close: f64) -> Running {
    let mut means = plan.means.to_vec();
    let mut rounds = 0;
    loop {
        rounds += 1;
        let mut plumbing = lower(Plan { means: &means, ..plan });
        let solved = rest(&plan, &plumbing, before.as_ref());
        let source = source(plan.job, &plumbing);
        let (flows, stretches) = (solved.as_ref().ok(), &mut plumbing.stretches);
        let walked = walk(&plumbing.network, flows, source, stretches, &mut |_, _, _| {});
        let agrees = match (&solved, &before) {
            (Ok(now), Some(before)) => agree_within(now, before, close),
            (Ok(_), None) => false,
            (Err(_), _) => true,
        };
        if agrees || rounds == MOST_ROUNDS {
            return Running { plumbing, solved, walked };
        }
        means = walked.passages.iter().map(|passage| passage.mean_water()).collect();
        before = solved.ok();
    }
}

/// Where a job's water comes from.
pub(super) fn source(job: &Job, plumbing: &Plumbing) -> Source {
    let circuit = &job.circuit;
    Source { fluid: circuit.fluid, boiler: plumbing.boiler, supply: circuit.supply }
}

/// The flows; none where nothing is to flow.
pub(super) fn rest(
    plan: &Plan<'_>,
    plumbing: &Plumbing,
    before: Option<&Solved>,
) -> Result<Solved, NotSolved> {
    let wanted = plan.circuits.iter().any(|circuit| {
        circuit.target > MassFlow::ZERO && plan.on.get(circuit.zone).copied().unwrap_or(true)
    });
    if !wanted {
        let network = &plumbing.network;
        return Ok(Solved {
            flows: vec![MassFlow::ZERO; network.links().len()],
            pressures: vec![Pressure::ZERO; network.nodes()],
            iterations: 0,
            residual: 0.0,
        });
    }
    match before {
        Some(before) => solve_from(&plumbing.network, before),
        None => solve(&plumbing.network),
    }
}

pub(super) fn agree(now: &Solved, before: &Solved) -> bool {
    agree_within(now, before, AGREE)
}

fn agree_within(now: &Solved, before: &Solved, close: f64) -> bool {
    let most = now.flows.iter().fold(0.0, |most: f64, flow| most.max(flow.si().abs()));
    now.flows.iter().zip(&before.flows).all(|(a, b)| (*a - *b).si().abs() <= close * most)
}

/// The circulators of a running system.
pub(super) fn pumps(job: &Job, running: &Running) -> Vec<PumpDesign> {
    let density = job.circuit.fluid.density(job.circuit.supply);
    let Ok(solved) = &running.solved else { return Vec::new() };
    let one = |pump: &super::lower::PumpLink| {
        // One that is off is no link.
        let ends = running.plumbing.network.ends(pump.id);
        let lift = ends.map_or(Pressure::ZERO, |(from, to)| {
            (solved.pressure(to) - solved.pressure(from)).max(Pressure::ZERO)
        });
        let mass_flow = solved.flow(pump.id);
        let hydraulic = Power::from_si(lift.si() * (mass_flow / density).si());
        PumpDesign {
            zone: pump.zone.map(|zone| job.zones[zone].id),
            mass_flow,
            flow: mass_flow / density,
            head: as_head(job, lift),
            hydraulic,
            electric: hydraulic / job.circuit.parts.pump_efficiency,
        }
    };
    running.plumbing.pumps.iter().map(one).collect()
}

/// How a designed system runs while these zones call.
pub fn run(job: &Job, design: &Design, zones: &[ZoneId]) -> RunDesign {
    let built = Built::of(job, design);
    let on: Vec<bool> = job.zones.iter().map(|zone| zones.contains(&zone.id)).collect();
    let plan = built.plan(&on, usual_drive(job));
    ran(job, zones, &running(plan))
}

pub(super) fn ran(job: &Job, zones: &[ZoneId], running: &Running) -> RunDesign {
    let density = job.circuit.fluid.density(job.circuit.supply);
    let passages = running.walked.passages.clone();
    let pumps = pumps(job, running);
    let mass_flow = passages.first().map_or(MassFlow::ZERO, |boiler| boiler.mass_flow);
    RunDesign {
        zones: zones.to_vec(),
        mass_flow,
        flow: mass_flow / density,
        head: pumps.iter().fold(Length::ZERO, |most, pump| most.max(pump.head)),
        velocity: fastest(&passages),
        back: running.walked.back,
        heat: passages.iter().map(|passage| passage.heat).sum(),
        electric: pumps.iter().map(|pump| pump.electric).sum(),
        passages,
        not_solved: running.solved.as_ref().err().copied(),
    }
}

pub(super) fn fastest(passages: &[crate::network::Passage]) -> Velocity {
    passages.iter().fold(Velocity::ZERO, |most, passage| most.max(passage.velocity.abs()))
}
