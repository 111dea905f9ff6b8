//! What can be reckoned by hand.

use finrun_engine::sizing::joint::{
    Costs, NODES, Objective, Problem, Proof, Room, Run, Stock, Wall, choose_all,
};
use finrun_tests::element::{Element, Heated, Loop};

fn stock(feet: u32, price_cents: u32) -> Stock {
    Stock { length_sixteenths: feet * 192, price_cents: Some(price_cents), available: None }
}

fn run(feet: u32) -> Run {
    Run { hold_sixteenths: feet * 192, wall: Wall::Outer, fixed_sixteenths: Vec::new() }
}

fn water(loads: &[f64]) -> Element {
    let rooms = loads.iter().map(|&load_w| Heated { load_w, air_k: 293.15 }).collect();
    let one = Loop { enters_k: 355.0, capacity_w_per_k: 300.0, rooms };
    Element { per_metre_w: 1.6, part_lower_k: 20.0, circuits: vec![one] }
}

#[test]
fn a_longer_piece_that_is_cheaper_is_bought_unless_it_costs_the_next_room_more() {
    let room = Room { runs: vec![run(20)] };
    let problem = Problem {
        circuits: vec![vec![room.clone(), room]],
        stock: vec![stock(3, 3000), stock(4, 2900), stock(8, 7000)],
        bare_per_piece_m: 0.0,
        costs: Costs { joint_cents: 0, run_cents: 0 },
        objective: Objective::LeastCost,
    };
    // A metre gives some 520 W at 355 K.
    let answer = choose_all(&problem, &water(&[450.0, 450.0]), NODES);
    assert_eq!(answer.pieces_sixteenths, [[[[768]], [[768]]]]);
    assert_eq!((answer.cost_cents, answer.proof), (Some(5800), Proof::Optimal));
}
