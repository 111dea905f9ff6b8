//! What holds of all workings: each step is taken up, each number can be what it is called, and
//! units leave one factor to a formula.

use super::houses::all;
use super::{near, slow, topics};
use crate::support::{FOUR_ROOMS, open, solve};
use finrun_engine::quantity::{Kind, System, Value, display_unit};
use finrun_engine::trace::{Formula, Topic, working};

/// No step leads nowhere: what each gives, a later one takes under the same symbol, be it to take it
/// off, until the number itself.
#[test]
fn each_step_is_taken_up_by_a_later_one() {
    let mut count = 0;
    for draft in all().iter().chain(&[open(FOUR_ROOMS)]) {
        let (job, design) = solve(draft);
        for (topic, _) in topics(&job, &design) {
            // These are more than one number.
            if matches!(topic, Topic::Pressure(_) | Topic::Band) {
                continue;
            }
            let steps = working(&job, &design, topic);
            let ends = steps.last().map(|last| last.formula);
            for (index, step) in steps.iter().enumerate().take(steps.len().saturating_sub(1)) {
                // R stands beside its U, of two thicknesses the lesser is taken, and what would be
                // a gain is only shown to be one.
                if step.formula == Formula::Reciprocal
                    || step.result.symbol == "d_f"
                    || ends == Some(Formula::NoGroundLoss)
                {
                    continue;
                }
                let given = step.result.value.si;
                let mut later = steps[index + 1..].iter().flat_map(|step| &step.terms);
                let taken = later.any(|term| {
                    let si = term.value.si;
                    term.symbol == step.result.symbol && (near(si, given) || near(-si, given))
                });
                assert!(taken, "{topic:?}: {step:?} leads nowhere: {steps:#?}");
                count += 1;
            }
        }
    }
    assert!(count > 2000, "{count}");
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
        ("V", 1e-6, 0.01),
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
    for draft in all().iter().chain(&[open(FOUR_ROOMS), slow("0.05")]) {
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
    for draft in all().iter().chain(&[open(FOUR_ROOMS)]) {
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
