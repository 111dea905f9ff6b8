//! Reference d (an independent integration along series loops) through a network: its tubes in a ring
//! with a circulator of the given flow, followed by the water.

use finrun_engine::emitter::{Element, HeatingEffect, Rating};
use finrun_engine::fluid::Fluid;
use finrun_engine::network::{
    Component, Equipment, Link, Liquid, Network, Place, Source, Stretch, Surface, Warms, Way,
    solve, walk,
};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{
    Length, LinearPower, MassFlow, Pressure, Temperature, TemperatureDifference, Transmittance,
    Unit,
};
use serde_json::Value;
use std::f64::consts::PI;

const TUBE: Tube = Tube::CopperMThreeQuarter;

fn celsius(value: &Value) -> Temperature {
    Temperature::of(value.as_f64().expect("a number"), Unit::Celsius)
}

fn link(segment: &Value, flow: MassFlow) -> Link {
    let number = |name: &str| segment[name].as_f64().unwrap_or_else(|| panic!("no {name}"));
    let length = Length::from_si(number("L_m"));
    let air = celsius(&segment["Ta_C"]);
    let surface = match segment["type"].as_str() {
        // The film that gives the tube its U': the wall of copper is nothing beside it.
        Some("bare") => Surface::Bare {
            film: Transmittance::from_si(
                number("U_W_per_mK") / (PI * TUBE.outside_diameter().si()),
            ),
            cover: None,
            warms: Warms::Nothing,
        },
        _ => Surface::Finned {
            element: Element {
                rating: Rating {
                    output: LinearPower::from_si(number("q0_W_per_m")),
                    water: air + TemperatureDifference::from_si(number("dTref_K")),
                    air,
                    exponent: number("n"),
                    flow,
                    effect: HeatingEffect::AsTyped,
                },
                derate: 1.0,
            },
            finned: length,
        },
    };
    Link {
        place: Place::BoilerRoom,
        tube: TUBE,
        length,
        surface,
        surroundings: air,
        fittings: Vec::new(),
        extra_k: 0.0,
        equipment: Equipment::None,
    }
}

#[test]
fn a_ring_of_links_cools_its_water_as_the_reference_does() {
    let text = include_str!("../../reference/d_series_loop_thermal.json");
    let file: Value = serde_json::from_str(text).expect("JSON");
    let mut count = 0;
    for case in file["cases"].as_array().expect("cases") {
        let inputs = &case["inputs"];
        let flow = MassFlow::from_si(inputs["m_kg_s"].as_f64().expect("a flow"));
        let supply = celsius(&inputs["T_supply_C"]);
        let mut network = Network::new();
        let boiler = network.node();
        network.fix(boiler, Pressure::ZERO);
        let first = network.node();
        network.link(boiler, first, Component::Circulation(flow), Way::Both);
        let segments = inputs["segments"].as_array().expect("segments");
        let mut from = first;
        let mut stretches = Vec::new();
        for (nth, segment) in segments.iter().enumerate() {
            let link = link(segment, flow);
            let to = if nth + 1 == segments.len() { boiler } else { network.node() };
            let liquid = Liquid::at(Fluid::Water, supply);
            let pipe = Component::Pipe { length: link.length, bore: TUBE.bore(), k: 0.0, liquid };
            let id = network.link(from, to, pipe, Way::Both);
            stretches.push(Stretch { link, id });
            from = to;
        }
        let solved = solve(&network).expect("a ring rests");
        let source = Source { fluid: Fluid::Water, boiler, supply };
        let walked = walk(&network, Some(&solved), source, &mut stretches, &mut |_, _, _| {});
        let answer = &case["exact_cp_of_T"];
        for (passage, expected) in
            walked.passages.iter().zip(answer["segments"].as_array().expect("answers"))
        {
            let off = (passage.water_out - celsius(&expected["T_out_C"])).si().abs();
            assert!(off < 0.01, "{}: {off} K", case["id"]);
            let heat = expected["Q_W"].as_f64().expect("a heat");
            assert!((passage.heat.si() - heat).abs() < 5e-4 * heat.abs() + 1e-3, "{}", case["id"]);
        }
        assert!((walked.back - celsius(&answer["T_return_C"])).si().abs() < 0.01);
        count += 1;
    }
    assert!(count >= 10, "{count}");
}
