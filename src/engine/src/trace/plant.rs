//! Workings of the plant: what the boiler must give, what is filled, the tank.

use super::{Formula, Found, Steps};
use crate::design::Design;
use crate::job::Job;
use crate::pipe::Tube;
use crate::plant::boiler::IndirectTank;
use crate::plant::design::{heated, pressures};
use crate::plant::fill::{self, USUAL_AT_TOP};
use crate::quantity::Length;

pub(super) fn needed_output(steps: &mut Steps, job: &Job, design: &Design) -> Found {
    let needed = design.plant.as_ref()?.needed?;
    let house = needed.loads + needed.pipe_loss;
    let tank = match job.plant.tank {
        IndirectTank::None => None,
        IndirectTank::AtOnce(tank) => Some(tank),
        // Only the larger counts.
        IndirectTank::Priority(tank) if tank > house => {
            steps.part("Q_tank", tank.si());
            return steps.total("Q", needed.output.si());
        }
        IndirectTank::Priority(_) => None,
    };
    for load in heated(design) {
        steps.part("Q_n", load.wanted().si());
    }
    if needed.pipe_loss.si() > 0.0 {
        steps.part("Q_pipe", needed.pipe_loss.si());
    }
    if let Some(tank) = tank {
        steps.part("Q_tank", tank.si());
    }
    steps.total("Q", needed.output.si())
}

pub(super) fn volume(steps: &mut Steps, job: &Job, design: &Design) -> Found {
    let volume = design.plant.as_ref()?.volume?;
    let mut parts = Vec::new();
    for tube in Tube::ALL {
        let own = design.piping.passages.iter().filter(|passage| passage.tube == tube);
        let length: Length = own.map(|passage| passage.length).sum();
        if length.si() > 0.0 {
            let numbers = [tube.inside_diameter().si(), length.si()];
            parts.push(steps.add(Formula::TubeVolume, &numbers, "Vol_p"));
        }
    }
    parts.push(job.plant.boiler_volume.si());
    parts.push(job.plant.other_volume.si());
    for part in parts {
        if part > 0.0 {
            steps.part("Vol_p", part);
        }
    }
    steps.total("Vol_s", volume.total.si())
}

pub(super) fn tank_size(steps: &mut Steps, job: &Job, design: &Design) -> Found {
    let plant = design.plant.as_ref()?;
    let (tank, volume) = (plant.tank?, plant.volume?);
    if tank.acceptance.si() <= 0.0 {
        return None;
    }
    let (fluid, cold, hot) = (job.circuit.fluid, job.plant.cold, job.circuit.supply);
    let metal = job.plant.metal.expansion_per_k();
    let (cold_density, hot_density) = (fluid.density(cold).si(), fluid.density(hot).si());
    let numbers = [volume.total.si(), cold_density, hot_density, metal, (hot - cold).si()];
    steps.give(Formula::Acceptance, &numbers, "Vol_g", tank.acceptance.si())?;
    let at = pressures(job);
    let altitude = job.house.site.altitude.si();
    steps.give(Formula::AirPressure, &[altitude], "p_air", at.atmosphere.si())?;
    let (first, last) = (at.fill + at.atmosphere, at.highest + at.atmosphere);
    steps.part("p_fill", at.fill.si());
    steps.part("p_air", at.atmosphere.si());
    steps.total("p_1", first.si())?;
    let numbers = [job.plant.relief.si(), at.atmosphere.si()];
    steps.give(Formula::HighestPressure, &numbers, "p_2", last.si())?;
    let numbers = [tank.acceptance.si(), first.si(), last.si()];
    steps.give(Formula::TankVolume, &numbers, "Vol_t", tank.volume.si())
}

pub(super) fn fill_pressure(steps: &mut Steps, job: &Job) -> Found {
    let plant = &job.plant;
    let fluid = job.circuit.fluid;
    let found = fill::fill_pressure(fluid, plant.cold, plant.top_height, USUAL_AT_TOP);
    if (found - plant.fill).abs() > found * 1e-9 {
        return None;
    }
    let numbers = [fluid.density(plant.cold).si(), plant.top_height.si()];
    let weight = steps.add(Formula::Weight, &numbers, "p_w");
    steps.part("p_w", weight);
    steps.part("p_top", USUAL_AT_TOP.si());
    steps.total("p_fill", plant.fill.si())
}
