//! Workings of the water side: flow, lengths, temperatures, pressure.

use super::{Formula, Step, Term, number, step, term};
use crate::building::RoomId;
use crate::design::Design;
use crate::emitter::{FLOW_EXPONENT, output_per_length};
use crate::fluid::{Fluid, Stream};
use crate::job::{Flow, Job};
use crate::network::{Passage, Place};
use crate::pipe::{self, Regime, pipe_flow};
use crate::quantity::{
    Kind, LinearPower, Power, Pressure, SpecificHeat, Temperature, TemperatureDifference, Value,
};

pub(super) fn flow(job: &Job, design: &Design) -> Vec<Step> {
    let circuit = &design.circuit;
    let density = Fluid::Water.density(circuit.supply);
    let volume = step(
        Formula::VolumeFlow,
        vec![term("m", circuit.mass_flow), term("rho", density)],
        term("V", circuit.flow),
    );
    match job.circuit.flow {
        Flow::Typed(flow) => vec![step(
            Formula::MassFlow,
            vec![term("V", flow), term("rho", density)],
            term("m", circuit.mass_flow),
        )],
        Flow::FromDrop(drop) => {
            let specific_heat = Fluid::Water.specific_heat(circuit.supply - drop / 2.0);
            let heat: Power =
                design.rooms.iter().map(|room| room.load.total.max(Power::ZERO)).sum();
            let terms = vec![term("Q", heat), term("c", specific_heat), term("dT", drop)];
            vec![step(Formula::FlowFromDrop, terms, term("m", circuit.mass_flow)), volume]
        }
    }
}

/// Specific heat at the mean of two water temperatures.
fn specific_heat(water_in: Temperature, water_out: Temperature) -> SpecificHeat {
    Fluid::Water.specific_heat(water_in + (water_out - water_in) / 2.0)
}

/// The element's output a metre at `water`, with the step that works it out for the room or water.
fn local_output(
    job: &Job,
    design: &Design,
    water: Temperature,
    air: Temperature,
) -> (LinearPower, Step) {
    let element = job.baseboard.element;
    let rating = element.rating;
    let flow = design.circuit.mass_flow;
    let output = output_per_length(&element, water, air, flow).from_water;
    let factor = element.derate * rating.effect.water_share();
    debug_assert_eq!(FLOW_EXPONENT, 0.04, "the formula's text states the exponent");
    let terms = vec![
        term("q_r", rating.output),
        term("T_w", water),
        term("T_a", air),
        term("T_r", rating.water),
        term("T_e", rating.air),
        number("n", rating.exponent),
        term("m", flow),
        term("m_r", rating.flow),
        number("F", factor),
    ];
    (output, step(Formula::OutputPerLength, terms, term("q", output)))
}

pub(super) fn needed(job: &Job, design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let solved = design.room(room)?;
    let needed = solved.element.needed?;
    let air = job.house.rooms.iter().find(|r| r.id == room)?.temperature;
    let load = solved.load.total;
    if load <= Power::ZERO {
        return None;
    }
    let water_in = solved.element.water_in;
    let rating = job.baseboard.element.rating;
    let share = rating.effect.room_share() / rating.effect.water_share();
    let flow = design.circuit.mass_flow;
    // The water that leaves an element of exactly the needed length.
    let heat = load / share;
    let c = Fluid::Water.specific_heat_at_own_mean(water_in, |c| water_in - heat / (flow * c));
    let leaves = water_in - heat / (flow * c);
    let (output, first) = local_output(job, design, water_in, air);
    let water = step(
        Formula::WaterNeeded,
        vec![
            term("T_w", water_in),
            term("Q", load),
            term("m", flow),
            term("c", c),
            number("E", share),
        ],
        term("T_x", leaves),
    );
    // At n = 1 the power law's solution becomes an exponential.
    let exponent = [number("n", rating.exponent)].into_iter().filter(|_| !is_linear(job));
    let terms = [term("m", flow), term("c", c), term("T_w", water_in), term("T_a", air)];
    let terms = terms.into_iter().chain(exponent).chain([term("q", output), term("T_x", leaves)]);
    let formula = match is_linear(job) {
        true => Formula::LengthNeededLinear,
        false => Formula::LengthNeeded,
    };
    Some(vec![first, water, step(formula, terms.collect(), term("L", needed))])
}

/// Whether output goes straight with the excess temperature, to within what can be told apart.
fn is_linear(job: &Job) -> bool {
    (job.baseboard.element.rating.exponent - 1.0).abs() <= 1e-6
}

pub(super) fn output(job: &Job, design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let solved = design.room(room)?;
    let air = job.house.rooms.iter().find(|r| r.id == room)?.temperature;
    let element = &solved.element;
    if element.output <= Power::ZERO {
        return None;
    }
    let rating = job.baseboard.element.rating;
    let flow = design.circuit.mass_flow;
    let c = specific_heat(element.water_in, element.water_out);
    let (output, first) = local_output(job, design, element.water_in, air);
    let exponent = [number("n", rating.exponent)].into_iter().filter(|_| !is_linear(job));
    let terms =
        [term("T_a", air), term("T_w", element.water_in)].into_iter().chain(exponent).chain([
            term("q", output),
            term("L", element.choice.finned),
            term("m", flow),
            term("c", c),
        ]);
    let formula = match is_linear(job) {
        true => Formula::FinnedOutLinear,
        false => Formula::FinnedOut,
    };
    let mut steps = vec![first, step(formula, terms.collect(), term("T_x", element.water_out))];
    let given = flow * c * (element.water_in - element.water_out);
    steps.push(step(
        Formula::HeatGiven,
        vec![
            term("m", flow),
            term("c", c),
            term("T_w", element.water_in),
            term("T_x", element.water_out),
        ],
        term("Q_w", given),
    ));
    let share = rating.effect.room_share() / rating.effect.water_share();
    if share != 1.0 {
        let terms = vec![term("Q_w", given), number("E", share)];
        steps.push(step(Formula::Credited, terms, term("Q", element.output)));
    }
    Some(steps)
}

pub(super) fn over(design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let solved = design.room(room)?;
    let (load, output) = (solved.load.total, solved.element.output);
    if load <= Power::ZERO {
        return None;
    }
    if solved.short() > Power::ZERO {
        let terms = vec![term("Q", load), term("Q_x", -output)];
        return Some(vec![step(Formula::Sum, terms, term("Q_short", solved.short()))]);
    }
    let over = Term { symbol: "s", value: Value::share((output - load) / load) };
    Some(vec![step(Formula::Over, vec![term("Q_x", output), term("Q", load)], over)])
}

pub(super) fn pieces(design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let choice = &design.room(room)?.element.choice;
    let terms = choice.pieces().map(|piece| term("L_i", piece)).collect();
    Some(vec![step(Formula::Sum, terms, term("L", choice.nominal))])
}

pub(super) fn element(design: &Design) -> Vec<Step> {
    let rooms = design.rooms.iter().map(|room| room.element.choice.nominal);
    let terms = rooms.filter(|length| length.si() > 0.0).map(|length| term("L_i", length));
    vec![step(Formula::Sum, terms.collect(), term("L", design.element_length()))]
}

pub(super) fn boiler_heat(design: &Design) -> Vec<Step> {
    let passages = design.circuit.passages.iter().filter(|passage| passage.heat.si() != 0.0);
    let terms = passages.map(|passage| term("Q_i", passage.heat)).collect();
    vec![step(Formula::Sum, terms, term("Q", design.circuit.heat))]
}

pub(super) fn rule_of_thumb(job: &Job, design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let solved = design.room(room)?;
    let terms = vec![
        term("Q", solved.load.total.max(Power::ZERO)),
        term("q_r", job.baseboard.element.rating.output),
    ];
    Some(vec![step(Formula::RuleOfThumb, terms, term("L", solved.element.rule_of_thumb))])
}

fn passage(design: &Design, place: Place) -> Option<&Passage> {
    design.circuit.passages.iter().find(|passage| passage.place == place)
}

pub(super) fn pipe(job: &Job, design: &Design, place: Place) -> Option<Vec<Step>> {
    let passage = passage(design, place)?;
    if matches!(place, Place::Element(_)) {
        return None;
    }
    let transmittance = pipe::linear_transmittance(job.circuit.tube, None, job.circuit.pipe_film);
    let terms = vec![
        term("T_a", job.circuit.pipe_surroundings),
        term("T_w", passage.water_in),
        term("U", transmittance),
        term("L", passage.length),
        term("m", design.circuit.mass_flow),
        term("c", specific_heat(passage.water_in, passage.water_out)),
    ];
    Some(vec![step(Formula::PipeOut, terms, term("T_x", passage.water_out))])
}

pub(super) fn drop(design: &Design) -> Vec<Step> {
    let circuit = &design.circuit;
    let terms = vec![term("T_s", circuit.supply), term("T_b", circuit.back)];
    let drop: TemperatureDifference = circuit.drop();
    vec![step(Formula::Drop, terms, term("dT", drop))]
}

/// A bore, as it is measured.
fn diameter(job: &Job) -> Term {
    let bore = job.circuit.tube.inside_diameter();
    Term { symbol: "d", value: Value::new(Kind::SmallLength, bore.si()) }
}

pub(super) fn velocity(job: &Job, design: &Design) -> Option<Vec<Step>> {
    let fastest = design
        .circuit
        .passages
        .iter()
        .max_by(|a, b| a.velocity.si().total_cmp(&b.velocity.si()))?;
    let flow = fastest.velocity * job.circuit.tube.flow_area();
    let terms = vec![term("V", flow), diameter(job)];
    Some(vec![step(Formula::Velocity, terms, term("v", fastest.velocity))])
}

pub(super) fn pressure(job: &Job, design: &Design, place: Place) -> Option<Vec<Step>> {
    let passage = passage(design, place)?;
    let mean = passage.water_in + (passage.water_out - passage.water_in) / 2.0;
    let stream = Stream { fluid: Fluid::Water, flow: design.circuit.mass_flow, temperature: mean };
    let tube = job.circuit.tube;
    let flow = pipe_flow(tube.bore(), stream);
    let density = Fluid::Water.density(mean);
    let viscosity = Fluid::Water.viscosity(mean);
    let mut steps = Vec::new();
    if passage.length.si() > 0.0 && flow.regime != Regime::Still {
        steps.push(step(
            Formula::Reynolds,
            vec![
                term("rho", density),
                term("v", passage.velocity),
                diameter(job),
                term("mu", viscosity),
            ],
            number("Re", passage.reynolds),
        ));
        let roughness =
            Term { symbol: "e", value: Value::new(Kind::SmallLength, tube.roughness().si()) };
        let factor = number("f", passage.friction_factor);
        steps.push(match flow.regime {
            Regime::Turbulent => step(
                Formula::Colebrook,
                vec![roughness, diameter(job), number("Re", passage.reynolds), factor],
                factor,
            ),
            Regime::Transition => {
                let start = pipe::friction(pipe::TURBULENT_START, tube.bore().relative_roughness());
                let terms = vec![number("f_t", start.factor), number("Re", passage.reynolds)];
                step(Formula::Bridge, terms, factor)
            }
            Regime::Laminar | Regime::Still => {
                step(Formula::Laminar, vec![number("Re", passage.reynolds)], factor)
            }
        });
        steps.push(step(
            Formula::Friction,
            vec![
                factor,
                term("L", passage.length),
                diameter(job),
                term("rho", density),
                term("v", passage.velocity),
            ],
            term("dp", passage.friction),
        ));
    }
    if passage.fittings.si() > 0.0 {
        let k = passage.fittings / flow.dynamic_pressure();
        steps.push(step(
            Formula::Fittings,
            vec![number("K", k), term("rho", density), term("v", passage.velocity)],
            term("dp", passage.fittings),
        ));
    }
    if passage.equipment.si() > 0.0 {
        let head = pipe::head(passage.equipment, density);
        steps.push(step(
            Formula::Equipment,
            vec![
                term("rho", density),
                Term { symbol: "h", value: Value::new(Kind::Head, head.si()) },
            ],
            term("dp", passage.equipment),
        ));
    }
    Some(steps)
}

pub(super) fn head(design: &Design) -> Vec<Step> {
    let circuit = &design.circuit;
    let density = Fluid::Water.density(circuit.supply);
    let total: Pressure = circuit.passages.iter().map(Passage::pressure_drop).sum();
    let terms = circuit
        .passages
        .iter()
        .filter(|passage| passage.pressure_drop().si() > 0.0)
        .map(|passage| term("dp_i", passage.pressure_drop()))
        .collect();
    vec![
        step(Formula::Sum, terms, term("dp", total)),
        step(
            Formula::Head,
            vec![term("dp", total), term("rho", density)],
            Term { symbol: "H", value: Value::new(Kind::Head, circuit.head.si()) },
        ),
    ]
}
