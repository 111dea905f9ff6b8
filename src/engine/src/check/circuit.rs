//! Rules on the loop: drop, velocity, what the tube carries, the boiler's water.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::arrangement::{CircuitDesign, ZoneDesign};
use crate::building::ZoneId;
use crate::design::Design;
use crate::job::{Flow, Job};
use crate::pipe::{Nominal, Tube};
use crate::quantity::{
    Length, MassFlow, Power, Temperature, TemperatureDifference, Unit, Velocity, VolumeFlow,
};

/// Common practice, no source: below about 2 ft/s air may not be carried to the eliminator.
pub(crate) const LEAST_VELOCITY: Velocity = Velocity::from_si(2.0 * 0.3048);
/// Common practice, no source: above 4 ft/s the loop is heard.
pub(crate) const MOST_VELOCITY: Velocity = Velocity::from_si(4.0 * 0.3048);

fn check(severity: Severity, subject: Subject, finding: Finding, remedies: Vec<Remedy>) -> Check {
    Check { severity, subject, finding, remedies }
}

/// Whether there is anything to judge.
fn has_elements(design: &Design) -> bool {
    design.element_length() > Length::ZERO && design.piping.not_solved.is_none()
}

/// Whether a zone's water moves past elements.
fn runs(zone: &ZoneDesign) -> bool {
    zone.element > Length::ZERO && zone.mass_flow > MassFlow::ZERO
}

/// A zone, or the loop where there is but one.
fn subject(job: &Job, zone: ZoneId) -> Subject {
    match job.zones.len() {
        1 => Subject::Loop,
        _ => Subject::Zone(zone),
    }
}

/// The drop that is planned: chosen, or 20 F (common practice, no source).
fn planned(job: &Job) -> TemperatureDifference {
    job.circuit.drop
}

/// The real drop of each zone against the one planned. A quarter more is let pass: whole feet and
/// pipe losses add that much before anyone notices.
pub(super) fn drop(job: &Job, design: &Design) -> Vec<Check> {
    let planned = planned(job);
    let limit = planned * 1.25;
    let one = |zone: &ZoneDesign| {
        if !has_elements(design) || !runs(zone) {
            return None;
        }
        let drop = match job.zones.len() {
            1 => design.piping.drop(),
            _ => job.circuit.supply - zone.back,
        };
        let finding = Finding::Drop { planned, drop, limit };
        let subject = subject(job, zone.zone);
        if drop <= limit {
            return Some(check(Severity::Holds, subject, finding, Vec::new()));
        }
        let flow = flow_of(job, zone) * (drop / planned);
        let remedies = vec![Remedy::MoreFlow { flow }, Remedy::SecondCircuit];
        Some(check(Severity::Watch, subject, finding, remedies))
    };
    design.piping.zones.iter().filter_map(one).collect()
}

/// At the supply temperature.
fn flow_of(job: &Job, zone: &ZoneDesign) -> VolumeFlow {
    zone.mass_flow / job.circuit.fluid.density(job.circuit.supply)
}

/// The velocity of each zone against practice's band, with the flow that would reach it.
pub(super) fn velocity(job: &Job, design: &Design) -> Vec<Check> {
    let one = |zone: &ZoneDesign| {
        if !has_elements(design) || !runs(zone) {
            return None;
        }
        Some(zone_velocity(job, design, zone))
    };
    design.piping.zones.iter().filter_map(one).collect()
}

fn zone_velocity(job: &Job, design: &Design, zone: &ZoneDesign) -> Check {
    let subject = subject(job, zone.zone);
    // With one zone the boiler room counts too: its water is the hottest, and so a little faster.
    let velocity = match job.zones.len() {
        1 => design.piping.velocity,
        _ => zone.velocity,
    };
    let finding = Finding::Velocity { velocity, least: LEAST_VELOCITY, most: MOST_VELOCITY };
    let flow_at = |target: Velocity| -> VolumeFlow { flow_of(job, zone) * (target / velocity) };
    let tube = fastest_tube(job, design, velocity);
    let neighbour = |step: isize| resized(tube, step).map(|tube| Remedy::OtherTube { tube });
    let from_drop = matches!(job.circuit.flow, Flow::FromDrop(_));
    if velocity < LEAST_VELOCITY {
        let mut remedies = vec![Remedy::MoreFlow { flow: flow_at(LEAST_VELOCITY) }];
        remedies.extend(from_drop.then_some(Remedy::SmallerDrop));
        remedies.extend(neighbour(-1));
        remedies.push(Remedy::PurgeAtHighFlow);
        return check(Severity::Watch, subject, finding, remedies);
    }
    if velocity > MOST_VELOCITY {
        let mut remedies = vec![Remedy::LessFlow { flow: flow_at(MOST_VELOCITY) }];
        remedies.extend(from_drop.then_some(Remedy::LargerDrop));
        remedies.extend(neighbour(1));
        remedies.push(Remedy::SecondCircuit);
        return check(Severity::Watch, subject, finding, remedies);
    }
    check(Severity::Holds, subject, finding, Vec::new())
}

/// The tube in which water runs that fast.
fn fastest_tube(job: &Job, design: &Design, velocity: Velocity) -> Tube {
    let mut passages = design.piping.passages.iter();
    let fastest = passages.rfind(|passage| passage.velocity.abs() == velocity);
    fastest.map_or(job.circuit.tube, |passage| passage.tube)
}

/// The element on each loop against what the tube carries at the highest velocity and the drop of
/// this loop, each foot giving what feet give here on average.
pub(super) fn tube_carries(job: &Job, design: &Design) -> Vec<Check> {
    if !has_elements(design) {
        return Vec::new();
    }
    let one = |circuit: &CircuitDesign| {
        let zone = job.zones.iter().find(|zone| zone.id == circuit.zone)?;
        if zone.arrangement.has_branches() {
            return None;
        }
        let subject = match zone.loops.len() {
            1 => subject(job, zone.id),
            _ => Subject::Circuit(zone.id, *circuit.rooms.first()?),
        };
        carried(job, design, circuit, subject)
    };
    design.piping.circuits.iter().filter_map(one).collect()
}

fn carried(job: &Job, design: &Design, circuit: &CircuitDesign, subject: Subject) -> Option<Check> {
    let element = design.element_in(&circuit.rooms);
    let given: Power = circuit
        .path
        .iter()
        .filter_map(|&at| design.piping.passages.get(at))
        .map(|passage| passage.heat)
        .sum();
    let tube = job.circuit.tube;
    let carried = most_carried(job, circuit.back);
    // Pipes in air warmer than the water can put in more than the elements take out.
    if given <= Power::ZERO {
        return None;
    }
    let carries = element * (carried / given);
    let finding = Finding::TubeCarries { element, carries, practice: practice_length(tube) };
    if element <= carries {
        return Some(check(Severity::Holds, subject, finding, Vec::new()));
    }
    let mut remedies = vec![Remedy::SecondCircuit];
    remedies.extend(resized(tube, 1).map(|tube| Remedy::OtherTube { tube }));
    remedies.extend(matches!(job.circuit.flow, Flow::FromDrop(_)).then_some(Remedy::LargerDrop));
    Some(check(Severity::Watch, subject, finding, remedies))
}

/// The heat that the elements' tube carries at the highest velocity and the planned drop, in water
/// between the supply and this return.
pub(crate) fn most_carried(job: &Job, back: Temperature) -> Power {
    let mean = back + (job.circuit.supply - back) / 2.0;
    let flow = MOST_VELOCITY * job.circuit.tube.flow_area() * job.circuit.fluid.density(mean);
    flow * job.circuit.fluid.specific_heat(mean) * planned(job)
}

/// The tube of the same standard that is `step` sizes larger.
fn resized(tube: Tube, step: isize) -> Option<Tube> {
    let alike: Vec<Tube> =
        Tube::ALL.into_iter().filter(|other| other.material() == tube.material()).collect();
    let index = alike.iter().position(|&other| other == tube)?;
    alike.get(index.checked_add_signed(step)?).copied()
}

/// Common practice, no source: 1.5, 4, 8 and 14 gpm in 1/2 to 1-1/4 in tube, 10,000 Btu/h a gallon
/// a minute at a drop of 20 F, 600 Btu/h a foot of element.
pub fn practice_length(tube: Tube) -> Length {
    let gpm = match tube.nominal() {
        Nominal::Half => 1.5,
        Nominal::ThreeQuarter => 4.0,
        Nominal::One => 8.0,
        Nominal::OneAndQuarter => 14.0,
    };
    Length::of(gpm * 10_000.0 / 600.0, Unit::Foot)
}

/// The supply against the boiler's limit.
pub(super) fn supply(job: &Job) -> Option<Check> {
    let (supply, limit) = (job.circuit.supply, job.circuit.boiler_limit);
    let finding = Finding::Supply { supply, limit };
    // An assumed 180 °F and a typed one may differ in the last bit.
    Some(match supply - limit <= TemperatureDifference::from_si(1e-9) {
        true => check(Severity::Holds, Subject::Boiler, finding, Vec::new()),
        false => {
            let remedies = vec![Remedy::LowerSupply { supply: limit }];
            check(Severity::Stop, Subject::Boiler, finding, remedies)
        }
    })
}

/// The property data ends where water would boil at the pressures of a house.
pub(super) fn outside_data(job: &Job) -> Option<Check> {
    let most = *job.circuit.fluid.range().end();
    let water = job.circuit.supply;
    (water > most).then(|| {
        let remedies = vec![Remedy::LowerSupply { supply: most }];
        check(Severity::Stop, Subject::Boiler, Finding::OutsideData { water, most }, remedies)
    })
}
