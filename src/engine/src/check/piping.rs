//! Rules on the network: zones, valves, circulators, mains.

use super::circuit::MOST_VELOCITY;
use super::{Check, Finding, Remedy, Severity, Subject};
use crate::arrangement::CircuitDesign;
use crate::design::Design;
use crate::job::{Balancing, Flow, Job, Zoning};
use crate::quantity::{Length, MassFlow};

/// Short of what is meant by more than this, a circulator does not reach it: judgement.
pub(crate) const PUMP_REACHES: f64 = 0.9;
/// Off what is meant by more than this share, a circuit wants a valve: judgement.
const UNEVEN: f64 = 0.25;
/// Less than this share of what is meant is as good as nothing: judgement.
const STILL: f64 = 0.02;

fn watch(subject: Subject, finding: Finding, remedies: Vec<Remedy>) -> Check {
    Check { severity: Severity::Watch, subject, finding, remedies }
}

/// Why the flows were not found.
pub(super) fn not_solved(design: &Design) -> Option<Check> {
    let reason = design.piping.not_solved?;
    let finding = Finding::NotSolved { reason };
    let remedies = vec![Remedy::OpenValve];
    Some(Check { severity: Severity::Stop, subject: Subject::Loop, finding, remedies })
}

/// A zone that heats nothing.
pub(super) fn empty_zones(job: &Job) -> Vec<Check> {
    let one = |zone: &_| watch(Subject::Zone(*zone), Finding::EmptyZone, vec![Remedy::AddRooms]);
    // A single zone without rooms is a job not yet begun.
    match job.zones.is_empty() {
        true => Vec::new(),
        false => job.empty_zones.iter().map(one).collect(),
    }
}

/// A main narrower than what hangs on it.
pub(super) fn mains(job: &Job) -> Vec<Check> {
    let narrow = job.zones.iter().filter(|zone| {
        zone.arrangement.has_main() && zone.main.flow_area() < zone.pipe.flow_area()
    });
    narrow
        .map(|zone| {
            let finding = Finding::MainSmaller { main: zone.main, branch: zone.pipe };
            watch(Subject::Zone(zone.id), finding, vec![Remedy::OtherTube { tube: zone.pipe }])
        })
        .collect()
}

/// What the circulators move against what is meant.
pub(super) fn pumps(job: &Job, design: &Design) -> Vec<Check> {
    if job.circuit.flow != Flow::FromPump {
        return Vec::new();
    }
    let density = job.circuit.fluid.density(job.circuit.supply);
    let one = |pump: &crate::arrangement::PumpDesign| {
        let circuits = design.piping.circuits.iter();
        let meant: MassFlow = circuits
            .filter(|circuit| pump.zone.is_none_or(|zone| zone == circuit.zone))
            .map(|circuit| circuit.target)
            .sum();
        let subject = pump.zone.map_or(Subject::Circulator, Subject::Zone);
        (pump.mass_flow < meant * PUMP_REACHES).then(|| {
            let finding =
                Finding::PumpShort { meant: meant / density, flow: pump.flow, head: pump.head };
            watch(subject, finding, vec![Remedy::LargerPump, Remedy::LargerDrop])
        })
    };
    design.piping.pumps.iter().filter_map(one).collect()
}

/// Circuits whose flow is far from what is meant, or as good as nothing.
pub(super) fn uneven(job: &Job, design: &Design) -> Vec<Check> {
    if design.piping.circuits.len() < 2 || design.piping.not_solved.is_some() {
        return Vec::new();
    }
    let density = job.circuit.fluid.density(job.circuit.supply);
    // Against its fair share of what its circulator moves: too small a one has a check of its own.
    let own_pumps = job.zones.len() > 1 && job.circuit.zoning == Zoning::Circulators;
    let one = |circuit: &CircuitDesign| {
        let beside = || {
            let circuits = design.piping.circuits.iter();
            circuits.filter(|other| !own_pumps || other.zone == circuit.zone)
        };
        let moved: MassFlow = beside().map(|other| other.mass_flow).sum();
        let meant: MassFlow = beside().map(|other| other.target).sum();
        // One that is alone on its circulator, and moves nothing, has no other share than what is meant.
        let fair = match moved > MassFlow::ZERO {
            true => circuit.target * (moved / meant),
            false => circuit.target,
        };
        let (flow, target) = (circuit.mass_flow / density, fair / density);
        let subject = Subject::Circuit(circuit.zone, *circuit.rooms.first()?);
        if circuit.mass_flow < fair * STILL {
            let finding = Finding::NoFlow { meant: target };
            let remedies = vec![Remedy::OpenValve, Remedy::LargerPump];
            return Some(Check { severity: Severity::Stop, subject, finding, remedies });
        }
        let off = (flow / target - 1.0).abs() > UNEVEN;
        let fitted = circuit.valve.fitted == Balancing::Valves;
        (off && !fitted).then(|| {
            let finding = Finding::Uneven { flow, meant: target };
            watch(subject, finding, vec![Remedy::BalancingValves])
        })
    };
    design.piping.circuits.iter().filter_map(one).collect()
}

/// A zone that is heard when it runs alone, though not with the others.
pub(super) fn alone(design: &Design) -> Vec<Check> {
    let with_others =
        |id| design.piping.zones.iter().find(|zone| zone.zone == id).map(|zone| zone.velocity);
    let one = |run: &crate::arrangement::RunDesign| {
        let zone = *run.zones.first()?;
        let element = design.piping.zones.iter().find(|z| z.zone == zone)?.element;
        let loud = run.velocity > MOST_VELOCITY && with_others(zone)? <= MOST_VELOCITY;
        (loud && element > Length::ZERO).then(|| {
            let finding = Finding::FastAlone { velocity: run.velocity, most: MOST_VELOCITY };
            watch(Subject::Zone(zone), finding, vec![Remedy::VariablePump, Remedy::SmallerPump])
        })
    };
    design.piping.alone.iter().filter_map(one).collect()
}
