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

#[test]
fn tmp_write() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut n = 0;
    for limited in [false, true] {
        for _ in 0..200 {
            let tree = house(limited).new_tree(&mut runner).expect("a house");
            let (problem, water) = proptest::strategy::ValueTree::current(&tree);
            let mut problem = problem;
            let mut water = water;
            problem.circuits.truncate(1);
            water.circuits.truncate(1);
            for room in &mut problem.circuits[0] {
                if room.runs.len() > 2 {
                    room.runs[2].wall = finrun_engine::sizing::joint::Wall::Inner;
                }
            }
            let answer = choose_all(&problem, &water, NODES);
            if limited && answer.nodes == 0 {
                continue;
            }
            if answer.short_w[0].iter().any(Option::is_some)
                || answer.proof == finrun_engine::sizing::joint::Proof::Stopped
            {
                continue;
            }
            if problem.circuits[0].len() < 3 {
                continue;
            }
            let Some(instance) =
                export(&problem, &water, 0, if limited { 8000 } else { 800 }, 4000)
            else {
                continue;
            };
            let mut json = serde_json::to_value(&instance).unwrap();
            json["cost_cents"] = answer.cost_cents.into();
            std::fs::write(format!("/tmp/joint-cases/{n}.json"), json.to_string()).unwrap();
            n += 1;
        }
    }
}
