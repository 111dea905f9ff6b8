//! Workings of the water side: flow, lengths, temperatures, pressure.

use super::{Formula, Found, Steps};
use crate::building::RoomId;
use crate::design::{Design, RoomDesign};
use crate::emitter::{FLOW_EXPONENT, output_per_length};
use crate::fluid::Stream;
use crate::job::{Flow, Job};
use crate::network::Place;
use crate::pipe::{self, Regime, pipe_flow};
use crate::quantity::{MassFlow, Power, Temperature};

pub(super) fn flow(steps: &mut Steps, job: &Job, design: &Design) -> Found {
    let circuit = &design.piping;
    let (mass, fluid) = (circuit.mass_flow.si(), job.circuit.fluid);
    let density = fluid.density(circuit.supply).si();
    match job.circuit.flow {
        Flow::Typed(flow) => steps.give(Formula::MassFlow, &[flow.si(), density], "m", mass),
        Flow::FromPump => {
            let pump = circuit.pumps.first().filter(|_| circuit.pumps.len() == 1)?;
            // What the curve gives and what the system takes are one there.
            steps.give(Formula::VolumeFlow, &[pump.mass_flow.si(), density], "V", pump.flow.si())
        }
        Flow::FromDrop(drop) => {
            let specific_heat = fluid.specific_heat(circuit.supply - drop / 2.0).si();
            let on =
                |room: &&RoomDesign| circuit.circuits.iter().any(|c| c.rooms.contains(&room.room));
            let heat: Power = design
                .rooms
                .iter()
                .filter(on)
                .map(|room| room.load.wanted().max(Power::ZERO))
                .sum();
            steps.give(Formula::FlowFromDrop, &[heat.si(), specific_heat, drop.si()], "m", mass);
            steps.give(Formula::VolumeFlow, &[mass, density], "V", circuit.flow.si())
        }
    }
}

/// Specific heat at the mean of two water temperatures.
fn specific_heat(job: &Job, water_in: Temperature, water_out: Temperature) -> f64 {
    job.circuit.fluid.specific_heat(water_in + (water_out - water_in) / 2.0).si()
}

/// The element's output a metre at `water`, with the step that works it out.
fn local_output(
    steps: &mut Steps,
    job: &Job,
    flow: MassFlow,
    (water, air): (Temperature, Temperature),
) -> f64 {
    let element = job.baseboard.element;
    let rating = element.rating;
    debug_assert_eq!(FLOW_EXPONENT, 0.04, "the formula's text states the exponent");
    let numbers = [
        rating.output.si(),
        water.si(),
        air.si(),
        rating.water.si(),
        rating.air.si(),
        rating.exponent,
        flow.si(),
        rating.flow.si(),
        element.derate * rating.effect.water_share(),
    ];
    let output = output_per_length(&element, water, air, flow).from_water.si();
    steps.give(Formula::OutputPerLength, &numbers, "q", output);
    output
}

pub(super) fn needed(steps: &mut Steps, job: &Job, design: &Design, room: RoomId) -> Found {
    let solved = design.room(room)?;
    let needed = solved.element.needed?.si();
    let air = job.house.rooms.iter().find(|r| r.id == room)?.temperature;
    let load = solved.load.wanted();
    if load <= Power::ZERO {
        return None;
    }
    let water_in = solved.element.water_in;
    let rating = job.baseboard.element.rating;
    let share = rating.effect.room_share() / rating.effect.water_share();
    let flow = solved.element.flow;
    // The water that leaves an element of exactly the needed length.
    let heat = load / share;
    let c = job.circuit.fluid.specific_heat_at_own_mean(water_in, |c| water_in - heat / (flow * c));
    let leaves = (water_in - heat / (flow * c)).si();
    let (t_w, t_a, m, c) = (water_in.si(), air.si(), flow.si(), c.si());
    let q = local_output(steps, job, flow, (water_in, air));
    steps.give(Formula::WaterNeeded, &[t_w, load.si(), m, c, share], "T_x", leaves);
    // At n = 1 the power law's solution becomes an exponential.
    match is_linear(job) {
        true => {
            let numbers = [m, c, t_w, t_a, q, leaves];
            steps.give(Formula::LengthNeededLinear, &numbers, "L", needed)
        }
        false => {
            let numbers = [m, c, t_w, t_a, rating.exponent, q, leaves];
            steps.give(Formula::LengthNeeded, &numbers, "L", needed)
        }
    }
}

/// Whether output goes straight with the excess temperature, to within what can be told apart.
fn is_linear(job: &Job) -> bool {
    (job.baseboard.element.rating.exponent - 1.0).abs() <= 1e-6
}

pub(super) fn output(steps: &mut Steps, job: &Job, design: &Design, room: RoomId) -> Found {
    let solved = design.room(room)?;
    let air = job.house.rooms.iter().find(|r| r.id == room)?.temperature;
    let element = &solved.element;
    if element.output <= Power::ZERO {
        return None;
    }
    let rating = job.baseboard.element.rating;
    let m = element.flow.si();
    let c = specific_heat(job, element.water_in, element.water_out);
    let (t_w, t_x, t_a) = (element.water_in.si(), element.water_out.si(), air.si());
    let length = element.choice.finned.si();
    let q = local_output(steps, job, element.flow, (element.water_in, air));
    match is_linear(job) {
        true => steps.give(Formula::FinnedOutLinear, &[t_a, t_w, q, length, m, c], "T_x", t_x),
        false => {
            let numbers = [t_a, t_w, rating.exponent, q, length, m, c];
            steps.give(Formula::FinnedOut, &numbers, "T_x", t_x)
        }
    };
    let given = steps.add(Formula::HeatGiven, &[m, c, t_w, t_x], "Q_w");
    let share = rating.effect.room_share() / rating.effect.water_share();
    if share != 1.0 {
        steps.give(Formula::Credited, &[given, share], "Q", element.output.si())?;
    }
    Some(())
}

pub(super) fn over(steps: &mut Steps, design: &Design, room: RoomId) -> Found {
    let solved = design.room(room)?;
    let (load, output) = (solved.load.wanted().si(), solved.element.output.si());
    if load <= 0.0 {
        return None;
    }
    let short = solved.short().si();
    if short > 0.0 {
        steps.part("Q", load);
        steps.part("Q_x", -output);
        return steps.total("Q_short", short);
    }
    steps.give(Formula::Over, &[output, load], "s", (output - load) / load)
}

pub(super) fn pieces(steps: &mut Steps, design: &Design, room: RoomId) -> Found {
    let choice = &design.room(room)?.element.choice;
    for piece in choice.pieces() {
        steps.part("L_i", piece.si());
    }
    steps.total("L", choice.nominal.si())
}

pub(super) fn element(steps: &mut Steps, design: &Design) -> Found {
    for room in &design.rooms {
        let length = room.element.choice.nominal.si();
        if length > 0.0 {
            steps.part("L_i", length);
        }
    }
    steps.total("L", design.element_length().si())
}

pub(super) fn boiler_heat(steps: &mut Steps, design: &Design) -> Found {
    for passage in &design.piping.passages {
        let heat = passage.heat.si();
        if heat != 0.0 {
            steps.part("Q_i", heat);
        }
    }
    steps.total("Q", design.piping.heat.si())
}

pub(super) fn rule_of_thumb(steps: &mut Steps, job: &Job, design: &Design, room: RoomId) -> Found {
    let solved = design.room(room)?;
    let load = solved.load.wanted().max(Power::ZERO).si();
    let numbers = [load, job.baseboard.element.rating.output.si()];
    steps.give(Formula::RuleOfThumb, &numbers, "L", solved.element.rule_of_thumb.si())
}

pub(super) fn pipe(steps: &mut Steps, job: &Job, design: &Design, place: Place) -> Found {
    let passage = design.piping.passage(place)?;
    let (surroundings, cover) = match place {
        Place::Element(_) => return None,
        Place::Inside(room) | Place::Above(room) => {
            (job.house.rooms.iter().find(|r| r.id == room)?.temperature, None)
        }
        _ => (job.circuit.pipe_surroundings, job.circuit.cover),
    };
    let transmittance = pipe::linear_transmittance(passage.tube, cover, job.circuit.pipe_film);
    let numbers = [
        surroundings.si(),
        passage.water_in.si(),
        transmittance.si(),
        passage.length.si(),
        passage.mass_flow.si(),
        specific_heat(job, passage.water_in, passage.water_out),
    ];
    steps.give(Formula::PipeOut, &numbers, "T_x", passage.water_out.si())
}

pub(super) fn drop(steps: &mut Steps, design: &Design) -> Found {
    let circuit = &design.piping;
    let ends = [circuit.supply.si(), circuit.back.si()];
    steps.give(Formula::Drop, &ends, "dT", circuit.drop().si())
}

pub(super) fn velocity(steps: &mut Steps, design: &Design) -> Found {
    let fastest =
        design.piping.passages.iter().max_by(|a, b| a.velocity.si().total_cmp(&b.velocity.si()))?;
    let tube = fastest.tube;
    let flow = fastest.velocity * tube.flow_area();
    let numbers = [flow.si(), tube.inside_diameter().si()];
    steps.give(Formula::Velocity, &numbers, "v", fastest.velocity.si())
}

pub(super) fn pressure(steps: &mut Steps, job: &Job, design: &Design, place: Place) -> Found {
    let passage = design.piping.passage(place)?;
    let mean = passage.mean_water();
    let fluid = job.circuit.fluid;
    let stream = Stream { fluid, flow: passage.mass_flow, temperature: mean };
    let tube = passage.tube;
    let flow = pipe_flow(tube.bore(), stream);
    let density = job.circuit.fluid.density(mean);
    let (rho, v) = (density.si(), passage.velocity.si());
    if passage.length.si() > 0.0 && flow.regime != Regime::Still {
        let d = tube.inside_diameter().si();
        let reynolds = passage.reynolds;
        let viscosity = job.circuit.fluid.viscosity(mean).si();
        steps.give(Formula::Reynolds, &[rho, v, d, viscosity], "Re", reynolds);
        let factor = passage.friction_factor;
        match flow.regime {
            Regime::Turbulent => {
                let numbers = [tube.roughness().si(), d, reynolds, factor];
                steps.give(Formula::Colebrook, &numbers, "f", factor)
            }
            Regime::Transition => {
                let start = pipe::friction(pipe::TURBULENT_START, tube.bore().relative_roughness());
                steps.give(Formula::Bridge, &[start.factor, reynolds], "f", factor)
            }
            Regime::Laminar | Regime::Still => {
                steps.give(Formula::Laminar, &[reynolds], "f", factor)
            }
        }?;
        let numbers = [factor, passage.length.si(), d, rho, v];
        steps.give(Formula::Friction, &numbers, "dp", passage.friction.si());
    }
    if passage.fittings.si() > 0.0 {
        let k = passage.fittings / flow.dynamic_pressure();
        steps.give(Formula::Fittings, &[k, rho, v], "dp", passage.fittings.si());
    }
    if passage.equipment.si() > 0.0 {
        let head = pipe::head(passage.equipment, density);
        steps.give(Formula::Equipment, &[rho, head.si()], "dp", passage.equipment.si());
    }
    Some(())
}

pub(super) fn head(steps: &mut Steps, job: &Job, design: &Design) -> Found {
    let circuit = &design.piping;
    let density = job.circuit.fluid.density(circuit.supply).si();
    let mut total = 0.0;
    for &at in &circuit.critical()?.path {
        let drop = circuit.passages.get(at)?.pressure_drop().si();
        total += drop;
        if drop > 0.0 {
            steps.part("dp_i", drop);
        }
    }
    steps.total("dp", total);
    steps.give(Formula::Head, &[total, density], "H", circuit.head.si())
}
