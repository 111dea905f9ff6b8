//! The working behind each number: what a reader sees of a formula, evaluated by a stranger to the
//! engine, gives the engine's number.

mod ground;
mod houses;
mod properties;

use crate::random_house::houses;
use crate::support::{DEMO, FOUR_ROOMS, V1_FIXTURE, V3_FIXTURE, open, set, solve};
use finrun_engine::building::{Assembly, Place, Position, house_flow};
use finrun_engine::design::Design;
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{
    CircuitField, Draft, ElementField, Field, Flow, FlowBasis, Job, LayerField, LayerMaterial,
    own_build, own_transmittance,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::Value;
use finrun_engine::trace::{Formula, Step, Topic, built_u, working};
use finrun_text::{source, symbol_meaning};
use proptest::prelude::*;
use std::collections::BTreeMap;

/// The value of a formula's text with the step's terms, in SI.
///
/// The evaluator knows `+ - * / ^` and brackets of itself; functions and symbols are given.
fn evaluate(step: &Step) -> f64 {
    let symbols: BTreeMap<&str, f64> =
        step.terms.iter().map(|term| (term.symbol, term.value.si)).collect();
    let mut lookup = |name: &str, arguments: Vec<f64>| match (name, arguments.as_slice()) {
        ("exp", &[x]) => Some(std_exp(x)),
        ("ln", &[x]) => Some(std_ln(x)),
        ("pi", &[]) => Some(std::f64::consts::PI),
        ("log10", &[x]) => Some(std_log10(x)),
        (symbol, []) => symbols.get(symbol).copied(),
        _ => None,
    };
    match step.formula {
        // Their text is their terms with a plus between, which may bear one symbol.
        Formula::Sum => step.terms.iter().map(|term| term.value.si).sum(),
        Formula::RootOfSquares => {
            step.terms.iter().map(|term| term.value.si * term.value.si).sum::<f64>().sqrt()
        }
        formula => fasteval::ez_eval(formula.text(), &mut lookup)
            .unwrap_or_else(|error| panic!("{}: {error:?}", formula.text())),
    }
}

fn near(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= 1e-9 * expected.abs()
}

/// Holds every step to its text, its code, its symbols and its source.
fn check(step: &Step) {
    let result = step.result.value.si;
    let terms: Vec<f64> = step.terms.iter().map(|term| term.value.si).collect();
    let (by_text, by_code) = (evaluate(step), step.formula.evaluate(&terms));
    assert!(near(by_text, result), "{step:?}: the text gives {by_text}");
    assert!(near(by_code, result), "{step:?}: the code gives {by_code}");
    for term in step.terms.iter().chain([&step.result]) {
        assert!(!symbol_meaning(term.symbol).is_empty(), "{} means nothing", term.symbol);
    }
    assert!(!source(step.formula.source()).is_empty());
    if !step.formula.is_spread() {
        let named: Vec<&str> = step.terms.iter().map(|term| term.symbol).collect();
        assert_eq!(symbols_of(step.formula.text()), named, "{:?}", step.formula);
    }
}

/// The symbols of a formula in the order in which it first names them.
fn symbols_of(text: &str) -> Vec<&str> {
    let mut out: Vec<&str> = Vec::new();
    let names = text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '_'));
    for name in names.filter(|name| name.starts_with(|c: char| c.is_ascii_alphabetic())) {
        if !matches!(name, "exp" | "ln" | "log10" | "pi") && !out.contains(&name) {
            out.push(name);
        }
    }
    out
}

/// Every number of a design that opens to its working, with the number itself.
fn topics(job: &Job, design: &Design) -> Vec<(Topic, f64)> {
    let circuit = &design.piping;
    let flow = match job.circuit.flow {
        Flow::Typed(_) => circuit.mass_flow.si(),
        Flow::FromDrop(_) | Flow::FromPump => circuit.flow.si(),
    };
    let mut out = vec![
        (Topic::HouseLoad, design.load.si()),
        (Topic::Flow, flow),
        (Topic::Drop, circuit.drop().si()),
        (Topic::Velocity, circuit.velocity.si()),
        (Topic::Head, circuit.head.si()),
        (Topic::BoilerHeat, circuit.heat.si()),
        (Topic::Element, design.element_length().si()),
    ];
    for room in &design.rooms {
        let (id, element) = (room.room, &room.element);
        out.push((Topic::RoomLoad(id), room.load.total.si()));
        out.push((Topic::RuleOfThumb(id), element.rule_of_thumb.si()));
        out.push((Topic::Pieces(id), element.choice.nominal.si()));
        out.push((Topic::PerArea(id), f64::NAN));
        let over = match room.short().si() > 0.0 {
            true => room.short().si(),
            false => element.output / room.load.total - 1.0,
        };
        out.push((Topic::Over(id), over));
        out.push((Topic::Output(id), element.output.si()));
        out.extend(element.needed.map(|length| (Topic::Needed(id), length.si())));
        out.extend(room.load.paths.iter().map(|p| (Topic::PathLoss(id, p.path), p.loss.si())));
    }
    for space in &design.spaces {
        let id = space.space;
        out.extend(space.paths.iter().map(|p| (Topic::PathLoss(id, p.path), p.loss.si())));
        out.push((Topic::SpaceTemperature(id), space.temperature.si()));
    }
    out.push((Topic::HouseAir, house_flow(&job.house).leaked.si()));
    out.push((Topic::Band, design.certainty.house.high.si()));
    if let Some(plant) = &design.plant {
        out.extend(plant.needed.map(|needed| (Topic::NeededOutput, needed.output.si())));
        out.extend(plant.volume.map(|volume| (Topic::SystemVolume, volume.total.si())));
        out.extend(plant.tank.map(|tank| (Topic::TankSize, tank.volume.si())));
        out.push((Topic::FillPressure, job.plant.fill.si()));
    }
    for passage in &circuit.passages {
        out.push((Topic::Pipe(passage.place), passage.water_out.si()));
        out.push((Topic::Pressure(passage.place), f64::NAN));
    }
    out
}

/// Whether a number may be there without a working.
fn may_be_empty(job: &Job, topic: Topic) -> bool {
    match topic {
        Topic::HouseLoad
        | Topic::RoomLoad(_)
        | Topic::PathLoss(..)
        | Topic::HouseAir
        | Topic::PerArea(_)
        | Topic::Band => false,
        // One that was typed follows from nothing.
        Topic::SpaceTemperature(id) => {
            job.house.spaces.iter().any(|space| space.id == id && space.temperature.is_some())
        }
        _ => true,
    }
}

/// Checks every working of a design; adds the formulas it met to `met`.
fn check_all(job: &Job, design: &Design, met: &mut Vec<Formula>) -> usize {
    let mut count = 0;
    for (topic, number) in topics(job, design) {
        let steps = working(job, design, topic);
        assert!(!steps.is_empty() || may_be_empty(job, topic), "{topic:?} opens to nothing");
        for step in &steps {
            check(step);
            met.push(step.formula);
            count += 1;
        }
        // Pressure ends in up to three parts, whose sum is the stretch's.
        if let Some(last) = steps.last()
            && !number.is_nan()
        {
            assert!(near(last.result.value.si, number), "{topic:?}: {last:?}, not {number}");
        }
        if let Topic::Pressure(place) = topic {
            let passage = design.piping.passages.iter().find(|p| p.place == place);
            let expected = passage.expect("its stretch").pressure_drop().si();
            let parts = steps.iter().filter(|step| step.result.symbol == "dp");
            let sum: f64 = parts.map(|step| step.result.value.si).sum();
            assert!(near(sum, expected), "{place:?}: {sum} of {expected}");
        }
    }
    count
}

/// Four rooms at a typed flow, for the regimes of a slow stream.
fn slow(gpm: &str) -> Draft {
    let mut draft = open(FOUR_ROOMS);
    draft.flow_basis = FlowBasis::Typed;
    set(&mut draft, Field::Circuit(CircuitField::Flow), gpm);
    draft
}

#[test]
fn every_formula_stands_behind_some_number_and_gives_it() {
    let mut exponential = open(FOUR_ROOMS);
    set(&mut exponential, Field::Element(ElementField::Exponent), "1");
    let mut certified = open(FOUR_ROOMS);
    certified.element.heating_effect = HeatingEffect::CertifiedCredited;
    let drafts = [
        open(DEMO),
        open(FOUR_ROOMS),
        open(V1_FIXTURE),
        open(V3_FIXTURE),
        slow("0.05"),
        slow("0.25"),
        exponential,
        certified,
    ];
    let mut met = Vec::new();
    let mut count = 0;
    for draft in drafts.iter().chain(&houses::all()) {
        let (job, design) = solve(draft);
        count += check_all(&job, &design, &mut met);
    }
    met.extend(listed_assemblies());
    for formula in Formula::ALL {
        assert!(met.contains(formula), "{formula:?} stands behind no number");
    }
    assert!(count > 800, "{count}");
}

/// Checks the U of every listed assembly that is built up from layers; gives the formulas it met.
fn listed_assemblies() -> Vec<Formula> {
    let (job, design) = solve(&open(FOUR_ROOMS));
    let mut met = Vec::new();
    for &assembly in <Assembly as Named>::ALL {
        let steps = working(&job, &design, Topic::ListedU(assembly));
        assert_eq!(steps.is_empty(), assembly.build().is_none(), "{assembly:?}");
        if let Some(last) = steps.last() {
            assert_eq!(last.result.value, Value::from(assembly.transmittance()), "{assembly:?}");
        }
        for step in &steps {
            check(step);
            met.push(step.formula);
        }
    }
    met
}

/// An assembly of the user's own, of layers through and between framing.
#[test]
fn the_u_of_own_layers_opens_to_a_working() {
    let mut draft = open(FOUR_ROOMS);
    let id = draft.add_assembly(Position::Wall, "Mine");
    for (row, place) in [(0, Place::Through), (1, Place::BetweenFraming)] {
        draft.add_layer(id);
        let layer = &mut draft.assembly_mut(id).expect("just added").layers[row];
        layer.place = place;
        layer.material = LayerMaterial::TypedR;
        set(&mut draft, Field::Layer(id, row, LayerField::R), "13");
        set(&mut draft, Field::Layer(id, row, LayerField::Thickness), "3.5");
    }
    let steps = built_u(&own_build(&draft, id).expect("it has layers"));
    steps.iter().for_each(check);
    let u = own_transmittance(&draft, id).expect("it has layers");
    assert_eq!(steps.last().map(|last| last.result.value), Some(Value::from(u)));
    assert!(steps.iter().any(|step| step.formula == Formula::SideBySide), "{steps:?}");
}

/// The numbers that people look at first have a working, not an empty page.
#[test]
fn the_main_numbers_open_to_a_working() {
    let (job, design) = solve(&open(FOUR_ROOMS));
    for (topic, _) in topics(&job, &design) {
        // An element's outlet and pressure belong to its output; a boiler room's pipe has none.
        let may_be_empty = matches!(topic, Topic::Pipe(_));
        let steps = working(&job, &design, topic);
        assert!(may_be_empty || !steps.is_empty(), "{topic:?} opens to nothing");
    }
}

/// A wrong count of numbers is no number, rather than a wrong one.
#[test]
fn a_formula_with_terms_missing_has_no_value() {
    for formula in Formula::ALL {
        if !formula.is_spread() {
            assert!(formula.evaluate(&[]).is_nan(), "{formula:?}");
            assert!(formula.evaluate(&[1.0; 12]).is_nan(), "{formula:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn workings_of_any_house_give_its_numbers(draft in houses()) {
        let (job, design) = solve(&draft);
        prop_assert!(check_all(&job, &design, &mut Vec::new()) > 0);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn workings_of_houses_on_ground_among_spaces_give_their_numbers(draft in houses::anywhere()) {
        let (job, design) = solve(&draft);
        prop_assert!(check_all(&job, &design, &mut Vec::new()) > 0);
    }
}

// The standard library's own, not the engine's: a stranger's evaluation takes a stranger's
// functions. The lint keeps them out of what has to give the same bits everywhere, which a test
// does not.
#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
fn std_exp(x: f64) -> f64 {
    x.exp()
}

#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
fn std_ln(x: f64) -> f64 {
    x.ln()
}

#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
fn std_log10(x: f64) -> f64 {
    x.log10()
}
