//! What is written out for another solver: `tests/benches/joint_highs.py` gives it to HiGHS.

use super::properties::{finned_m, house};
use finrun_engine::sizing::joint::{NODES, Problem, Water, choose_all, export};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(50))]

    /// Each length needs what the water after those before it asks, and the answer is among them.
    #[test]
    fn lengths_follow_the_water((problem, water) in house(false)) {
        let answer = choose_all(&problem, &water, NODES);
        for circuit in 0..problem.circuits.len() {
            let found = export(&problem, &water, circuit, 500, 50_000);
            let Some(instance) = found else {
                continue;
            };
            let mut waters_k = Vec::new();
            for length in &instance.lengths {
                let water_k = length.before.map_or(water.enters_k(circuit), |place: usize| waters_k[place]);
                let needed = water.needed_m(circuit, length.room, water_k);
                prop_assert_eq!(needed, length.needed_m);
                waters_k.push(water.after(circuit, length.room, water_k, length.finned_m).water_k);
            }
            let mut before = None;
            for (room, pieces) in answer.pieces_sixteenths[circuit].iter().enumerate() {
                let chosen = finned_m(&problem, pieces);
                let place = instance.lengths.iter().position(|length| {
                    length.room == room
                        && length.before == before
                        && (length.finned_m - chosen).abs() < 1e-9
                });
                prop_assert!(place.is_some(), "{chosen} in room {room}");
                before = place;
            }
        }
    }
}

#[test]
fn without_prices_there_is_nothing_to_export() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let tree = house(false).new_tree(&mut runner).expect("a house");
    let (problem, water) = proptest::strategy::ValueTree::current(&tree);
    let mut stock = problem.stock.clone();
    stock[0].price_cents = None;
    let bare = Problem { stock, ..problem.clone() };
    assert!(export(&problem, &water, 0, 0, 1_000_000).is_some());
    assert_eq!(export(&bare, &water, 0, 0, 1_000_000), None);
    assert_eq!(export(&problem, &water, 0, 0, 0), None, "no room for any length");
}
