//! What can be throttled by itself, the flow it is meant to have, and the valve that gives it.

use super::lower::{Drive, Plan, Plumbing, lower};
use crate::building::RoomLoad;
use crate::fluid::Fluid;
use crate::job::{Arrangement, Balancing, Flow, Job, ShutOff, Zoning};
use crate::network::{NotSolved, solve};
use crate::pipe::{Cv, cv_pressure_drop};
use crate::quantity::{
    Density, Length, MassFlow, Power, Pressure, Temperature, TemperatureDifference,
};
use crate::sizing::Choice;
use serde::Serialize;

/// A circuit, by the places of its zone and rooms in the job.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Circuit {
    pub(super) zone: usize,
    /// That need heat and are not shut off.
    pub(super) rooms: Vec<usize>,
    pub(super) target: MassFlow,
}

/// A balancing valve, fitted or not.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ValveSetting {
    /// What it takes at the flow that is meant; without a valve, what it would have to take.
    #[serde(rename = "pressure_pa")]
    pub pressure: Pressure,
    /// Flow coefficient at that setting; none where there is nothing to throttle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cv: Option<f64>,
    pub fitted: Balancing,
    /// In which place to set it, from one: the most throttled first, the open one last.
    pub order: u32,
}

/// The circuits of a job, each with its flow.
///
/// A flow from a drop is `m = sum(Q) / (c_p dT)` with the specific heat at the mean of supply and
/// return; a typed flow is shared by the loads.
pub(super) fn circuits(job: &Job, loads: &[RoomLoad]) -> Vec<Circuit> {
    let heat = |room: usize| loads[room].wanted().max(Power::ZERO);
    let needs = |room: &usize| heat(*room) > Power::ZERO;
    let mut circuits = Vec::new();
    for (zone, of) in job.zones.iter().enumerate() {
        let mut add = |rooms: Vec<usize>| {
            if !rooms.is_empty() {
                circuits.push(Circuit { zone, rooms, target: MassFlow::ZERO });
            }
        };
        // A shut-off in a loop that has no other way is no shut-off.
        let open = |room: &usize| job.approaches[*room].shut_off == ShutOff::Open;
        let all = of.loops.iter().flatten().copied();
        match of.arrangement {
            Arrangement::Series | Arrangement::Split => {
                for rooms in &of.loops {
                    add(rooms.iter().copied().filter(needs).collect());
                }
            }
            Arrangement::DiverterTees => {
                add(all.filter(needs).filter(open).collect());
            }
            Arrangement::DirectReturn | Arrangement::ReverseReturn | Arrangement::HomeRun => {
                all.filter(needs).filter(open).for_each(|room| add(vec![room]));
            }
        }
    }
    let whole: Power = circuits.iter().flat_map(|c| &c.rooms).map(|&room| heat(room)).sum();
    let flow = flow_for(job, whole);
    for circuit in &mut circuits {
        let own: Power = circuit.rooms.iter().map(|&room| heat(room)).sum();
        circuit.target = flow * (own / whole);
    }
    circuits
}

/// The flow for this heat, and a typed one whatever the heat.
fn flow_for(job: &Job, heat: Power) -> MassFlow {
    let (supply, fluid) = (job.circuit.supply, job.circuit.fluid);
    let losing = |drop: TemperatureDifference| -> MassFlow {
        heat / drop / fluid.specific_heat(supply - drop / 2.0)
    };
    match job.circuit.flow {
        Flow::Typed(flow) => flow * fluid.density(supply),
        Flow::FromDrop(drop) => losing(drop),
        Flow::FromPump => losing(job.circuit.drop),
    }
}

/// The valve of each circuit that gives every circuit its flow, the least throttled one fully open.
///
/// All circuits are given their flows; what each then asks of its circulator is known, and what
/// another asks more is what its valve has to take.
pub(super) fn settings(
    job: &Job,
    circuits: &[Circuit],
    choices: &[Choice],
    means: &[Temperature],
) -> Result<Vec<ValveSetting>, NotSolved> {
    let on = vec![true; job.zones.len()];
    let plan = Plan { job, circuits, choices, valves: &[], on: &on, means, drive: Drive::Targets };
    let plumbing = lower(plan);
    let asked = asked(&plumbing)?;
    // A valve stands in the return, whose water is denser than the supply.
    let density = |at: usize| {
        let valve = plumbing.circuits[at].valve;
        let water = valve.and_then(|valve| means.get(valve)).copied();
        job.circuit.fluid.density(water.unwrap_or(job.circuit.supply))
    };
    let open: Vec<Pressure> = circuits
        .iter()
        .enumerate()
        .map(|(at, circuit)| match job.zones[circuit.zone].balancing {
            Balancing::None => Pressure::ZERO,
            Balancing::Valves => {
                let flow = circuit.target / density(at);
                cv_pressure_drop(flow, density(at), job.circuit.parts.balancing)
            }
        })
        .collect();
    // Circuits of one circulator are balanced against one another.
    let own_pumps = job.zones.len() > 1 && job.circuit.zoning == Zoning::Circulators;
    let together = |a: usize, b: usize| !own_pumps || circuits[a].zone == circuits[b].zone;
    let mut settings: Vec<ValveSetting> = (0..circuits.len())
        .map(|at| {
            let most = (0..circuits.len())
                .filter(|&other| together(at, other))
                .map(|other| asked[other] + open[other])
                .fold(Pressure::from_si(f64::MIN), Pressure::max);
            // Rounding must not make a valve of nothing.
            let pressure = match most - asked[at] {
                left if left.si() < 1e-6 * most.si().abs() => open[at],
                left => left,
            };
            ValveSetting {
                pressure,
                cv: flow_coefficient(circuits[at].target, density(at), pressure),
                fitted: job.zones[circuits[at].zone].balancing,
                order: 0,
            }
        })
        .collect();
    for at in 0..settings.len() {
        let before = |&&other: &&usize| {
            let (a, b) = (settings[other].pressure, settings[at].pressure);
            a > b || (a == b && other < at)
        };
        let order = (0..settings.len()).collect::<Vec<_>>().iter().filter(before).count();
        settings[at].order = order as u32 + 1;
    }
    Ok(settings)
}

/// What each circuit asks of its circulator at its flow.
fn asked(plumbing: &Plumbing) -> Result<Vec<Pressure>, NotSolved> {
    if plumbing.circuits.is_empty() {
        return Ok(Vec::new());
    }
    let solved = solve(&plumbing.network)?;
    let lift = |id: crate::network::LinkId| {
        let (from, to) = plumbing.network.ends(id)?;
        Some(solved.pressure(to) - solved.pressure(from))
    };
    let given = plumbing.circuits.iter().map(|circuit| circuit.given.and_then(lift));
    Ok(given.map(|lift| lift.unwrap_or(Pressure::ZERO)).collect())
}

/// The flow coefficient that takes `pressure` at `flow`.
fn flow_coefficient(flow: MassFlow, density: Density, pressure: Pressure) -> Option<f64> {
    let at_one = cv_pressure_drop(flow / density, density, Cv::new(1.0)?);
    let cv = (at_one / pressure).sqrt();
    (pressure > Pressure::ZERO && cv > 0.0 && cv.is_finite()).then_some(cv)
}

/// The head that a pressure is at the supply temperature.
pub(super) fn as_head(job: &Job, pressure: Pressure) -> Length {
    let fluid: Fluid = job.circuit.fluid;
    crate::pipe::head(pressure, fluid.density(job.circuit.supply))
}
