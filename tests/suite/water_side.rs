//! Properties that hold for any element and any tube.

use finrun_engine::emitter::{
    Element, HeatingEffect, Rating, cool, cool_at_specific_heat, length_for,
};
use finrun_engine::fluid::{Fluid, Stream};
use finrun_engine::pipe::{
    self, Fitting, Insulation, Nominal, OUTSIDE_FILM, Tube, friction, linear_transmittance,
    pipe_flow,
};
use finrun_engine::quantity::{
    Conductivity, Length, LinearPower, LinearTransmittance, MassFlow, SpecificHeat, Temperature,
    Unit,
};
use proptest::prelude::*;

/// 200 to 900 Btu/h·ft at 180 °F, exponents around one and beyond what is sold.
fn elements() -> impl Strategy<Value = Element> {
    let effects = prop_oneof![
        Just(HeatingEffect::AsTyped),
        Just(HeatingEffect::CertifiedCredited),
        Just(HeatingEffect::CertifiedStrict),
        Just(HeatingEffect::Unknown),
    ];
    (200.0..900.0, prop_oneof![Just(1.0), 0.95..1.05, 1.2..1.6], 0.5..1.0, effects).prop_map(
        |(output, exponent, derate, effect)| {
            let rating = Rating {
                output: LinearPower::of(output, Unit::BtuPerHourFoot),
                water: Temperature::of(180.0, Unit::Fahrenheit),
                air: Temperature::of(65.0, Unit::Fahrenheit),
                exponent,
                flow: MassFlow::of(500.0, Unit::PoundPerHour),
                effect,
            };
            Element { rating, derate }
        },
    )
}

/// 0.2 to 6 gpm, warmer than any room.
fn streams() -> impl Strategy<Value = Stream> {
    (100.0..3000.0, 90.0..215.0).prop_map(|(flow, temperature)| Stream {
        fluid: Fluid::Water,
        flow: MassFlow::of(flow, Unit::PoundPerHour),
        temperature: Temperature::of(temperature, Unit::Fahrenheit),
    })
}

fn airs() -> impl Strategy<Value = Temperature> {
    (50.0..80.0).prop_map(|air| Temperature::of(air, Unit::Fahrenheit))
}

fn lengths() -> impl Strategy<Value = Length> {
    (0.5..80.0).prop_map(|length| Length::of(length, Unit::Foot))
}

fn tubes() -> impl Strategy<Value = Tube> {
    proptest::sample::select(&Tube::ALL[..])
}

proptest! {
    #[test]
    fn heat_is_flow_times_specific_heat_times_drop(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
    ) {
        let cooling = cool(&element, stream, air, length);
        let drop = stream.temperature - cooling.outlet;
        let mean = cooling.outlet + drop * 0.5;
        let expected = stream.flow * stream.fluid.specific_heat(mean) * drop;
        prop_assert!((cooling.from_water / expected - 1.0).abs() < 1e-9);
        prop_assert!(cooling.outlet >= air && cooling.outlet < stream.temperature);
    }

    #[test]
    fn more_flow_never_lowers_the_heat(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
        more in 1.0001..3.0,
    ) {
        let faster = Stream { flow: stream.flow * more, ..stream };
        let (slow, fast) = (cool(&element, stream, air, length), cool(&element, faster, air, length));
        prop_assert!(fast.to_room >= slow.to_room, "{slow:?} {fast:?}");
    }

    #[test]
    fn more_length_never_lowers_the_heat(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
        more in 1.0001..3.0,
    ) {
        let short = cool(&element, stream, air, length);
        let long = cool(&element, stream, air, length * more);
        prop_assert!(long.to_room >= short.to_room && long.outlet <= short.outlet);
    }

    #[test]
    fn warmer_water_never_lowers_the_heat(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
        more in 0.01..20.0,
    ) {
        let temperature = Temperature::from_si(stream.temperature.si() + more);
        let warmer = Stream { temperature, ..stream };
        let (cool_run, warm_run) =
            (cool(&element, stream, air, length), cool(&element, warmer, air, length));
        prop_assert!(warm_run.to_room > cool_run.to_room, "{cool_run:?} {warm_run:?}");
        prop_assert!(warm_run.outlet > cool_run.outlet);
    }

    /// The march is a closed solution, so where it is cut does not matter.
    #[test]
    fn two_lengths_in_a_row_are_one(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
        share in 0.01..0.99,
    ) {
        let specific_heat = SpecificHeat::from_si(4190.0);
        let march = |inlet, length| {
            cool_at_specific_heat(&element, specific_heat, stream.flow, inlet, air, length)
        };
        let whole = march(stream.temperature, length);
        let first = march(stream.temperature, length * share);
        let second = march(first.outlet, length * (1.0 - share));
        let parts = first.to_room + second.to_room;
        prop_assert!((parts / whole.to_room - 1.0).abs() < 1e-9, "{parts:?} {whole:?}");
        prop_assert!((second.outlet - whole.outlet).abs().si() < 1e-9);
    }

    /// Each part takes the specific heat at its own mean, which differs a little from the whole's.
    #[test]
    fn two_lengths_in_a_row_are_nearly_one_with_their_own_specific_heats(
        element in elements(), stream in streams(), air in airs(), length in lengths(),
    ) {
        let whole = cool(&element, stream, air, length);
        let first = cool(&element, stream, air, length * 0.5);
        let between = Stream { temperature: first.outlet, ..stream };
        let second = cool(&element, between, air, length * 0.5);
        let parts = first.to_room + second.to_room;
        prop_assert!((parts / whole.to_room - 1.0).abs() < 1e-3, "{parts:?} {whole:?}");
    }

    #[test]
    fn the_length_found_gives_the_heat_asked(
        element in elements(), stream in streams(), air in airs(), share in 0.001..0.95,
    ) {
        let excess = stream.temperature - air;
        let carried = stream.flow * stream.fluid.specific_heat(air + excess * 0.5) * excess;
        let heat = carried * share;
        if let Some(length) = length_for(&element, stream, air, heat) {
            let found = cool(&element, stream, air, length).to_room;
            prop_assert!((found / heat - 1.0).abs() < 1e-9, "{found:?} {heat:?} {length:?}");
        } else {
            prop_assert!(share * 1.15 > 0.9, "refused {share} of what the water carries");
        }
    }

    #[test]
    fn bare_tube_moves_its_water_towards_the_surroundings(
        tube in tubes(), stream in streams(), air in airs(), length in lengths(),
    ) {
        let transmittance = linear_transmittance(tube, None, OUTSIDE_FILM);
        let cooling = pipe::cool(transmittance, stream, air, length);
        let drop = stream.temperature - cooling.outlet;
        prop_assert!(cooling.outlet >= air && cooling.outlet < stream.temperature);
        let mean = cooling.outlet + drop * 0.5;
        let expected = stream.flow * stream.fluid.specific_heat(mean) * drop;
        prop_assert!((cooling.heat / expected - 1.0).abs() < 1e-9);
    }

    /// A run of tube is an element with exponent 1: the two marches must agree.
    #[test]
    fn bare_tube_is_an_element_of_exponent_one(
        stream in streams(), air in airs(), length in lengths(), transmittance in 0.1..2.0,
    ) {
        let transmittance = LinearTransmittance::from_si(transmittance);
        let excess = stream.temperature - air;
        let rating = Rating {
            output: transmittance * excess,
            water: stream.temperature,
            air,
            exponent: 1.0,
            flow: stream.flow,
            effect: HeatingEffect::AsTyped,
        };
        let element = Element { rating, derate: 1.0 };
        let by_element = cool(&element, stream, air, length);
        let by_tube = pipe::cool(transmittance, stream, air, length);
        prop_assert!((by_element.from_water / by_tube.heat - 1.0).abs() < 1e-12);
    }

    #[test]
    fn insulation_lowers_the_loss_of_these_tubes(tube in tubes(), inches in 0.25..2.0) {
        let thickness = Length::of(inches, Unit::Inch);
        let sleeve = Insulation { thickness, conductivity: Conductivity::from_si(0.04) };
        let bare = linear_transmittance(tube, None, OUTSIDE_FILM);
        let sleeved = linear_transmittance(tube, Some(sleeve), OUTSIDE_FILM);
        prop_assert!(sleeved < bare);
    }

    /// What keeps a solver from swinging between two flows.
    #[test]
    fn reynolds_squared_times_friction_rises(
        reynolds in prop_oneof![1.0..1e6, 1500.0..4500.0], step in 1e-6..1.0, roughness in 0.0..0.05,
    ) {
        let loss = |reynolds: f64| reynolds * reynolds * friction(reynolds, roughness).factor;
        let next = reynolds * (1.0 + step);
        prop_assert!(loss(next) > loss(reynolds), "{reynolds} {next} {roughness}");
    }

    #[test]
    fn more_flow_costs_more_pressure(tube in tubes(), stream in streams(), more in 1.0001..3.0) {
        let faster = Stream { flow: stream.flow * more, ..stream };
        let (slow, fast) = (pipe_flow(tube.bore(), stream), pipe_flow(tube.bore(), faster));
        let length = Length::from_si(10.0);
        prop_assert!(fast.pressure_drop(length) > slow.pressure_drop(length));
        let k = Fitting::Elbow90.k(Nominal::ThreeQuarter);
        prop_assert!(fast.fitting_drop(k) > slow.fitting_drop(k));
    }
}

#[test]
fn reynolds_squared_times_friction_rises_through_the_transition() {
    for roughness in [0.0, 1e-4, 1e-3] {
        let losses: Vec<f64> = (1500..5000)
            .map(f64::from)
            .map(|reynolds| reynolds * reynolds * friction(reynolds, roughness).factor)
            .collect();
        assert!(losses.windows(2).all(|pair| pair[1] > pair[0]), "{roughness}");
    }
}

#[test]
fn stored_names_of_tubes_do_not_change() {
    let names: Vec<String> =
        Tube::ALL.iter().map(|tube| serde_json::to_string(tube).expect("a name")).collect();
    let expected = [
        "copper-l-1/2",
        "copper-l-3/4",
        "copper-l-1",
        "copper-l-1-1/4",
        "copper-m-1/2",
        "copper-m-3/4",
        "copper-m-1",
        "copper-m-1-1/4",
        "pex-1/2",
        "pex-3/4",
        "pex-1",
    ];
    assert_eq!(names, expected.map(|name| format!("\"{name}\"")));
}

#[test]
fn stored_names_of_fittings_do_not_change() {
    let names: Vec<String> = Fitting::ALL
        .iter()
        .map(|fitting| serde_json::to_string(fitting).expect("a name"))
        .collect();
    let expected = [
        "elbow-90",
        "elbow-45",
        "tee-run",
        "tee-branch",
        "ball-valve",
        "gate-valve",
        "globe-valve",
        "swing-check-valve",
    ];
    assert_eq!(names, expected.map(|name| format!("\"{name}\"")));
}
