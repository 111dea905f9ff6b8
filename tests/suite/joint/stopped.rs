//! However few nodes: an optimum is the optimum, and a stop tells a bound that is one.

use super::brute;
use super::exhaustive::small;
use finrun_engine::sizing::joint::{Objective, Problem, Proof, Water, choose_all};
use finrun_tests::element::Element;
use proptest::prelude::*;

fn loads_w(problem: &Problem, water: &Element) -> f64 {
    let rooms = |at: usize| 0..problem.circuits[at].len();
    let all = (0..problem.circuits.len()).flat_map(|at| rooms(at).map(move |room| (at, room)));
    all.map(|(at, room)| water.load_w(at, room)).sum()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, max_global_rejects: 20_000, ..ProptestConfig::default() })]

    #[test]
    fn a_stop_tells_what_can_be_hoped(
        (problem, water) in small(),
        objective in 0..4_usize,
        nodes in 0..60_u64,
    ) {
        let objectives =
            [Objective::Closest, Objective::LeastCost, Objective::FewestJoints, Objective::MostEven];
        let problem = Problem { objective: objectives[objective], ..problem };
        prop_assume!(brute::count(&problem) < 4_000.0);
        let answer = choose_all(&problem, &water, nodes);
        let best = brute::best(&problem, &water).expect("there is always a choice");
        // Whether what is missing counts is the best choice's to tell: if all can be met but those
        // that cannot, what a stopped answer leaves missing is only more.
        let told = brute::merit(&problem, &water, &answer, best.short > 0);
        let told = told.map_err(TestCaseError::fail)?;
        let value = match problem.objective {
            Objective::Closest => best.objective as f64 / 1e6 - loads_w(&problem, &water),
            Objective::MostEven => best.objective as f64 / 1e9,
            _ => best.objective as f64,
        };
        prop_assert!(answer.bound <= answer.value);
        match answer.proof {
            Proof::Optimal => {
                prop_assert_eq!(answer.bound, answer.value);
                prop_assert!((told.short - best.short).abs() < 20 && told.inner == best.inner);
                prop_assert!((answer.value - value).abs() < 1e-4, "{value} for {answer:?}");
            }
            // A best that is better in what counts before may be worse in the objective.
            Proof::Stopped => prop_assert!(answer.bound <= value + 1e-4, "{value} for {answer:?}"),
        }
    }
}
