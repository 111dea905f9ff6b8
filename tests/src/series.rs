//! Kind d: water cooling along series loops of elements and bare tube.

use crate::tally::{Tally, Tolerance};
use finrun_engine::emitter::{self, Element, HeatingEffect, Rating};
use finrun_engine::fluid::{Fluid, Stream};
use finrun_engine::pipe;
use finrun_engine::quantity::{
    Length, LinearPower, LinearTransmittance, MassFlow, Power, SpecificHeat, Temperature,
    TemperatureDifference, Unit,
};
use serde::Deserialize;

const KELVIN: Tolerance = Tolerance::Kelvin(0.01);
const HEAT: Tolerance = Tolerance::Share(0.0005);

#[derive(Debug, Deserialize)]
struct File {
    cases: Vec<Case>,
}

#[derive(Debug, Deserialize)]
struct Case {
    id: String,
    inputs: Inputs,
    #[serde(rename = "exact_cp_of_T")]
    varying: Answer,
    #[serde(rename = "exact_cp_const")]
    constant: Answer,
}

#[derive(Debug, Deserialize)]
struct Inputs {
    #[serde(rename = "m_kg_s")]
    flow: MassFlow,
    #[serde(rename = "T_supply_C")]
    supply_celsius: f64,
    #[serde(rename = "cp_const_J_kgK")]
    specific_heat: SpecificHeat,
    segments: Vec<Segment>,
}

#[derive(Debug, Deserialize)]
#[serde(tag = "type", rename_all = "lowercase")]
enum Segment {
    Bare {
        #[serde(rename = "L_m")]
        length: Length,
        #[serde(rename = "U_W_per_mK")]
        transmittance: LinearTransmittance,
        #[serde(rename = "Ta_C")]
        air_celsius: f64,
    },
    Emitter {
        #[serde(rename = "L_m")]
        length: Length,
        #[serde(rename = "q0_W_per_m")]
        output: LinearPower,
        #[serde(rename = "dTref_K")]
        excess: TemperatureDifference,
        n: f64,
        #[serde(rename = "Ta_C")]
        air_celsius: f64,
    },
}

#[derive(Debug, Deserialize)]
struct Answer {
    segments: Vec<SegmentAnswer>,
    #[serde(rename = "T_return_C")]
    return_celsius: f64,
    #[serde(rename = "Q_total_W")]
    total: f64,
    #[serde(rename = "Q_emitters_W")]
    emitters: Option<f64>,
}

#[derive(Debug, Deserialize)]
struct SegmentAnswer {
    #[serde(rename = "T_out_C")]
    outlet_celsius: f64,
    #[serde(rename = "Q_W")]
    heat: f64,
}

/// Where a march takes its specific heat from.
#[derive(Debug, Clone, Copy)]
enum Capacity {
    OwnMean,
    Constant,
}

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let mut tally = Tally::default();
    for case in &file.cases {
        for (capacity, answer) in
            [(Capacity::OwnMean, &case.varying), (Capacity::Constant, &case.constant)]
        {
            if answer.segments.len() != case.inputs.segments.len() {
                return Err(format!("{}: segments and answers differ in number", case.id));
            }
            compare(&mut tally, case, capacity, answer);
        }
        tally.case();
    }
    Ok(tally)
}

fn compare(tally: &mut Tally, case: &Case, capacity: Capacity, answer: &Answer) {
    let [outlet, heat, back, total, emitters] = match capacity {
        Capacity::OwnMean => {
            ["outlet", "heat of a segment", "return", "heat of the loop", "heat of all elements"]
        }
        Capacity::Constant => [
            "outlet at constant cp",
            "heat of a segment at constant cp",
            "return at constant cp",
            "heat of the loop at constant cp",
            "heat of all elements at constant cp",
        ],
    };
    let mut water = Temperature::of(case.inputs.supply_celsius, Unit::Celsius);
    let (mut all, mut from_elements) = (Power::ZERO, Power::ZERO);
    for (index, (segment, expected)) in
        case.inputs.segments.iter().zip(&answer.segments).enumerate()
    {
        let (next, given) = pass(segment, &case.inputs, water, capacity);
        water = next;
        all += given;
        if matches!(segment, Segment::Emitter { .. }) {
            from_elements += given;
        }
        let id = format!("{} segment {}", case.id, index + 1);
        tally.compare(outlet, KELVIN, &id, water.to(Unit::Celsius), expected.outlet_celsius);
        tally.compare(heat, HEAT, &id, given.si(), expected.heat);
    }
    tally.compare(back, KELVIN, &case.id, water.to(Unit::Celsius), answer.return_celsius);
    tally.compare(total, HEAT, &case.id, all.si(), answer.total);
    if let Some(expected) = answer.emitters {
        tally.compare(emitters, HEAT, &case.id, from_elements.si(), expected);
    }
}

/// The water after a segment, and the heat it left there.
fn pass(
    segment: &Segment,
    inputs: &Inputs,
    water: Temperature,
    capacity: Capacity,
) -> (Temperature, Power) {
    let stream = Stream { fluid: Fluid::Water, flow: inputs.flow, temperature: water };
    let (flow, given) = (inputs.flow, inputs.specific_heat);
    match *segment {
        Segment::Bare { length, transmittance, air_celsius } => {
            let air = Temperature::of(air_celsius, Unit::Celsius);
            let cooling = match capacity {
                Capacity::OwnMean => pipe::cool(transmittance, stream, air, length),
                Capacity::Constant => {
                    pipe::cool_at_specific_heat(transmittance, given, flow, water, air, length)
                }
            };
            (cooling.outlet, cooling.heat)
        }
        Segment::Emitter { length, output, excess, n, air_celsius } => {
            let air = Temperature::of(air_celsius, Unit::Celsius);
            let effect = HeatingEffect::AsTyped;
            let rating = Rating { output, water: air + excess, air, exponent: n, flow, effect };
            let element = Element { rating, derate: 1.0 };
            let cooling = match capacity {
                Capacity::OwnMean => emitter::cool(&element, stream, air, length),
                Capacity::Constant => {
                    emitter::cool_at_specific_heat(&element, given, flow, water, air, length)
                }
            };
            (cooling.outlet, cooling.from_water)
        }
    }
}
