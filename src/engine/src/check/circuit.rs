//! Rules on the loop: drop, velocity, what the tube carries, the boiler's water.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::design::Design;
use crate::fluid::Fluid;
use crate::job::{Flow, Job};
use crate::pipe::{Nominal, Tube};
use crate::quantity::{
    Length, Power, Temperature, TemperatureDifference, Unit, Velocity, VolumeFlow,
};

/// Common practice, no source: below about 2 ft/s air may not be carried to the eliminator.
const LEAST_VELOCITY: Velocity = Velocity::from_si(2.0 * 0.3048);
/// Common practice, no source: above 4 ft/s the loop is heard.
pub(super) const MOST_VELOCITY: Velocity = Velocity::from_si(4.0 * 0.3048);

fn check(severity: Severity, subject: Subject, finding: Finding, remedies: Vec<Remedy>) -> Check {
    Check { severity, subject, finding, remedies }
}

/// Whether there is anything on the loop to judge.
fn has_elements(design: &Design) -> bool {
    design.element_length() > Length::ZERO
}

/// The real drop against the one chosen, or against 20 F (common practice, no source). A quarter
/// more is let pass: whole feet and pipe losses add that much before anyone notices.
pub(super) fn drop(job: &Job, design: &Design) -> Option<Check> {
    if !has_elements(design) {
        return None;
    }
    let planned = match job.circuit.flow {
        Flow::FromDrop(drop) => drop,
        Flow::Typed(_) => TemperatureDifference::of(20.0, Unit::FahrenheitDegree),
    };
    let limit = planned * 1.25;
    let drop = design.circuit.drop();
    let finding = Finding::Drop { planned, drop, limit };
    if drop <= limit {
        return Some(check(Severity::Holds, Subject::Loop, finding, Vec::new()));
    }
    let flow = design.circuit.flow * (drop / planned);
    let remedies = vec![Remedy::MoreFlow { flow }, Remedy::SecondCircuit];
    Some(check(Severity::Watch, Subject::Loop, finding, remedies))
}

/// The velocity against practice's band, with the flow that would reach it.
pub(super) fn velocity(job: &Job, design: &Design) -> Option<Check> {
    if !has_elements(design) {
        return None;
    }
    let velocity = design.circuit.velocity;
    let finding = Finding::Velocity { velocity, least: LEAST_VELOCITY, most: MOST_VELOCITY };
    let flow_at = |target: Velocity| -> VolumeFlow { design.circuit.flow * (target / velocity) };
    let neighbour =
        |step: isize| resized(job.circuit.tube, step).map(|tube| Remedy::OtherTube { tube });
    let from_drop = matches!(job.circuit.flow, Flow::FromDrop(_));
    if velocity < LEAST_VELOCITY {
        let mut remedies = vec![Remedy::MoreFlow { flow: flow_at(LEAST_VELOCITY) }];
        remedies.extend(from_drop.then_some(Remedy::SmallerDrop));
        remedies.extend(neighbour(-1));
        remedies.push(Remedy::PurgeAtHighFlow);
        return Some(check(Severity::Watch, Subject::Loop, finding, remedies));
    }
    if velocity > MOST_VELOCITY {
        let mut remedies = vec![Remedy::LessFlow { flow: flow_at(MOST_VELOCITY) }];
        remedies.extend(from_drop.then_some(Remedy::LargerDrop));
        remedies.extend(neighbour(1));
        remedies.push(Remedy::SecondCircuit);
        return Some(check(Severity::Watch, Subject::Loop, finding, remedies));
    }
    Some(check(Severity::Holds, Subject::Loop, finding, Vec::new()))
}

/// The element on the loop against what the tube carries at the highest velocity and the drop of
/// this loop, each foot giving what feet give here on average.
pub(super) fn tube_carries(job: &Job, design: &Design) -> Option<Check> {
    if !has_elements(design) {
        return None;
    }
    let element = design.element_length();
    let tube = job.circuit.tube;
    let mean = design.circuit.back + design.circuit.drop() / 2.0;
    let density = Fluid::Water.density(mean);
    let flow = MOST_VELOCITY * tube.flow_area() * density;
    let drop = match job.circuit.flow {
        Flow::FromDrop(drop) => drop,
        Flow::Typed(_) => TemperatureDifference::of(20.0, Unit::FahrenheitDegree),
    };
    let carried: Power = flow * Fluid::Water.specific_heat(mean) * drop;
    let given: Power = design.circuit.heat;
    // Pipes in air warmer than the water can put in more than the elements take out.
    if given <= Power::ZERO {
        return None;
    }
    let carries = element * (carried / given);
    let finding = Finding::TubeCarries { element, carries, practice: practice_length(tube) };
    if element <= carries {
        return Some(check(Severity::Holds, Subject::Loop, finding, Vec::new()));
    }
    let mut remedies = vec![Remedy::SecondCircuit];
    remedies.extend(resized(tube, 1).map(|tube| Remedy::OtherTube { tube }));
    remedies.extend(matches!(job.circuit.flow, Flow::FromDrop(_)).then_some(Remedy::LargerDrop));
    Some(check(Severity::Watch, Subject::Loop, finding, remedies))
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

/// Common practice, no source: below about 130 F of return, flue gas may condense in a boiler that
/// is not made for it.
pub(super) fn return_cool(design: &Design) -> Option<Check> {
    if !has_elements(design) {
        return None;
    }
    let least = Temperature::of(130.0, Unit::Fahrenheit);
    let back = design.circuit.back;
    (back < least).then(|| {
        let remedies = vec![Remedy::MixingValveOrBypass];
        check(Severity::Watch, Subject::Boiler, Finding::ReturnCool { back, least }, remedies)
    })
}

/// The property data ends where water would boil at the pressures of a house.
pub(super) fn outside_data(job: &Job) -> Option<Check> {
    let most = *Fluid::Water.range().end();
    let water = job.circuit.supply;
    (water > most).then(|| {
        let remedies = vec![Remedy::LowerSupply { supply: most }];
        check(Severity::Stop, Subject::Boiler, Finding::OutsideData { water, most }, remedies)
    })
}
