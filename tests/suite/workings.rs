//! The working behind each number: what a reader sees of a formula, evaluated by a stranger to the
//! engine, gives the engine's number.

mod ground;
mod houses;

use crate::random_house::houses;
use crate::support::{DEMO, FOUR_ROOMS, V1_FIXTURE, open, set, solve};
use finrun_engine::building::{Assembly, house_flow};
use finrun_engine::design::Design;
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{CircuitField, Draft, ElementField, Field, FlowBasis, Job};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Kind, System, Value, display_unit};
use finrun_engine::trace::{Formula, Step, Topic, working};
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
    let circuit = &design.circuit;
    let mut out = vec![
        (Topic::HouseLoad, design.load.si()),
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
            let passage = design.circuit.passages.iter().find(|p| p.place == place);
            let expected = passage.expect("its stretch").pressure_drop().si();
            let parts = steps.iter().filter(|step| step.result.symbol == "dp");
            let sum: f64 = parts.map(|step| step.result.value.si).sum();
            assert!(near(sum, expected), "{place:?}: {sum} of {expected}");
        }
    }
    for step in working(job, design, Topic::Flow) {
        check(&step);
        met.push(step.formula);
        count += 1;
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

/// Two numbers of a product could change places without changing it, so each is held to what its
/// symbol can be in a house: in SI, wide, and apart from its neighbours in any product.
#[test]
fn each_symbol_has_a_number_that_it_can_have() {
    let ranges = [
        ("U", 0.05, 20.0),
        ("U_g", 0.0, 5.0),
        ("psi", -3.0, 0.0),
        ("psi_p", 0.01, 3.0),
        ("F_edge", 0.3, 1.5),
        ("lambda", 1.5, 3.5),
        ("delta", 2.2, 4.2),
        ("R_si", 0.1, 0.17),
        ("R_se", 0.04, 0.17),
        ("w", 0.2, 0.21),
        ("rho", 0.8, 1000.0),
        ("c", 1006.0, 4400.0),
        ("N", 0.0, 0.002),
        ("Vol", 10.0, 1000.0),
        ("Vol_r", 1.0, 500.0),
        ("V_r", 0.0, 0.2),
        ("V_h", 0.0, 0.5),
        ("V_50", 1.0, 1.2),
        ("A_L", 0.001, 0.2),
        ("A_v", 0.1, 0.2),
        ("C_s", 0.0145, 0.0435),
        ("C_w", 0.0032, 0.0494),
        ("f_v", 0.02, 0.1),
        ("v_w", 0.5, 10.0),
        ("eta", 0.7, 0.7),
        ("m", 0.0001, 1.0),
        ("q", 0.01, 2000.0),
        ("E", 0.8, 1.2),
        ("F", 0.5, 1.2),
        ("f", 0.01, 1.5),
        ("mu", 0.0002, 0.002),
        ("T_0", 250.0, 270.0),
        ("T_in", 255.0, 300.0),
        ("h_alt", 0.0, 3000.0),
    ];
    let mut met = ranges.map(|_| false);
    for draft in houses::all().iter().chain(&[open(FOUR_ROOMS), slow("0.05")]) {
        let (job, design) = solve(draft);
        let topics = topics(&job, &design);
        for step in topics.iter().flat_map(|(topic, _)| working(&job, &design, *topic)) {
            for term in &step.terms {
                let place = ranges.iter().position(|(symbol, ..)| *symbol == term.symbol);
                let Some(place) = place else { continue };
                let (_, least, most) = ranges[place];
                let si = term.value.si;
                assert!(least - 1e-9 <= si && si <= most + 1e-9, "{} in {step:?}", term.symbol);
                met[place] = true;
            }
        }
    }
    let missed = ranges.iter().zip(met).find(|(_, met)| !met);
    assert!(missed.is_none(), "{missed:?}");
}

/// The factor that the units shown leave over belongs to a formula and its kinds of quantity: were
/// it another in another place, a sum in the formula would add feet to inches.
#[test]
fn units_leave_each_formula_one_factor() {
    let mut factors: Vec<(Formula, Vec<Kind>, System, f64)> = Vec::new();
    for draft in houses::all().iter().chain(&[open(FOUR_ROOMS)]) {
        let (job, design) = solve(draft);
        let topics = topics(&job, &design);
        for step in topics.iter().flat_map(|(topic, _)| working(&job, &design, *topic)) {
            for system in [System::Us, System::Si] {
                let system = if step.formula.needs_si() { System::Si } else { system };
                let shown = |value: Value| display_unit(value.kind, system).from_si(value.si);
                let numbers: Vec<f64> = step.terms.iter().map(|term| shown(term.value)).collect();
                let factor = shown(step.result.value) / step.formula.evaluate(&numbers);
                let kinds = step.terms.iter().map(|term| term.value.kind);
                // How many terms a sum has does not matter.
                let mut kinds: Vec<Kind> = kinds.chain([step.result.value.kind]).collect();
                kinds.dedup();
                if !factor.is_finite() || factor == 0.0 {
                    continue;
                }
                let same = |known: &&(Formula, Vec<Kind>, System, f64)| {
                    (known.0, &known.1, known.2) == (step.formula, &kinds, system)
                };
                match factors.iter().find(same) {
                    Some((.., known)) => assert!(
                        (factor / known - 1.0).abs() < 1e-6,
                        "{step:?}: a factor of {factor} in {system:?}, elsewhere {known}"
                    ),
                    None => factors.push((step.formula, kinds, system, factor)),
                }
            }
        }
    }
    assert!(factors.len() > 60, "{}", factors.len());
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
