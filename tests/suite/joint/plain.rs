//! What can be reckoned by hand.

use finrun_engine::sizing::joint::{
    Costs, NODES, Objective, Problem, Proof, Room, Run, Stock, Wall, Water, choose_all,
};
use finrun_tests::element::{Element, Heated, Loop};

fn stock(feet: u32, price_cents: u32) -> Stock {
    Stock { length_sixteenths: feet * 192, price_cents: Some(price_cents), available: None }
}

fn run(feet: u32) -> Run {
    Run { hold_sixteenths: feet * 192, wall: Wall::Outer, fixed_sixteenths: Vec::new() }
}

/// One circuit of small flow.
fn water(loads: &[f64]) -> Element {
    let rooms = loads.iter().map(|&load_w| Heated { load_w, air_k: 293.15 }).collect();
    let one = Loop { enters_k: 355.0, capacity_w_per_k: 60.0, rooms };
    Element { per_metre_w: 1.6, part_lower_k: 20.0, circuits: vec![one] }
}

fn feet_m(feet: f64) -> f64 {
    feet * 0.3048
}

fn two_rooms(stock: Vec<Stock>, objective: Objective) -> Problem {
    let room = Room { runs: vec![run(20)] };
    Problem {
        circuits: vec![vec![room.clone(), room]],
        stock,
        bare_per_piece_m: 0.0,
        costs: Costs { joint_cents: 0, run_cents: 0 },
        objective,
    }
}

#[test]
fn a_longer_piece_that_is_cheaper_is_bought() {
    let problem =
        two_rooms(vec![stock(3, 3000), stock(4, 2900), stock(8, 7000)], Objective::LeastCost);
    let answer = choose_all(&problem, &water(&[400.0, 400.0]), NODES);
    assert_eq!(answer.pieces_sixteenths, [[[[768]], [[768]]]]);
    assert_eq!((answer.cost_cents, answer.proof), (Some(5800), Proof::Optimal));
}

#[test]
fn a_longer_piece_that_is_cheaper_is_not_bought_where_it_costs_the_next_room_more() {
    let problem =
        two_rooms(vec![stock(3, 3000), stock(4, 2900), stock(8, 7000)], Objective::LeastCost);
    // The second room needs all but 4 ft behind 3 ft in the first, and more behind 4 ft.
    let mut water = water(&[400.0, 0.0]);
    let after_k = water.after(0, 0, 355.0, feet_m(3.0)).water_k;
    water.circuits[0].rooms[1].load_w = water.after(0, 1, after_k, feet_m(3.99)).output_w;
    let cooler_k = water.after(0, 0, 355.0, feet_m(4.0)).water_k;
    assert!(water.needed_m(0, 1, cooler_k).is_some_and(|needed| needed > feet_m(4.0)));
    let answer = choose_all(&problem, &water, NODES);
    assert_eq!(answer.pieces_sixteenths, [[[[576]], [[768]]]], "3000 + 2900, not 2900 + 6000");
    assert_eq!((answer.cost_cents, answer.proof), (Some(5900), Proof::Optimal));
}

/// Pieces that were bought already are a row of their own.
#[test]
fn pieces_that_lie_there_go_where_they_save_most() {
    let have = Stock { available: Some(1), ..stock(8, 0) };
    let problem = two_rooms(vec![stock(4, 3000), stock(8, 6100), have], Objective::LeastCost);
    let mut water = water(&[400.0, 0.0]);
    let after_k = water.after(0, 0, 355.0, feet_m(4.0)).water_k;
    water.circuits[0].rooms[1].load_w = water.after(0, 1, after_k, feet_m(7.9)).output_w;
    let answer = choose_all(&problem, &water, NODES);
    assert_eq!(answer.pieces_sixteenths, [[[[768]], [[1536]]]]);
    assert_eq!((answer.cost_cents, answer.used), (Some(3000), vec![1, 0, 1]));
}

#[test]
fn a_room_that_is_short_gets_the_most_and_the_next_goes_on() {
    let mut problem = two_rooms(vec![stock(3, 3000), stock(4, 2900)], Objective::LeastCost);
    problem.circuits[0][0].runs = vec![run(7)];
    let answer = choose_all(&problem, &water(&[3000.0, 200.0]), NODES);
    assert_eq!(answer.pieces_sixteenths, [[vec![vec![768, 576]], vec![vec![768]]]]);
    assert!(answer.short_w[0][0].is_some_and(|short_w| short_w > 0.0), "{answer:?}");
    assert_eq!((answer.short_w[0][1], answer.proof), (None, Proof::Optimal));
}

#[test]
fn nothing_at_all_is_an_answer() {
    let empty = Problem { circuits: Vec::new(), ..two_rooms(Vec::new(), Objective::MostEven) };
    let answer = choose_all(&empty, &water(&[]), NODES);
    assert_eq!((answer.value, answer.proof, answer.pieces), (1.0, Proof::Optimal, 0));
    // Without stock every room that wants something is short.
    let bare = two_rooms(Vec::new(), Objective::LeastCost);
    let answer = choose_all(&bare, &water(&[300.0, 0.0]), NODES);
    assert_eq!(answer.pieces_sixteenths, [[[[0_u32; 0]], [[0; 0]]]]);
    let [Some(short_w), None] = answer.short_w[0][..] else {
        panic!("{answer:?}");
    };
    assert!((short_w - 300.0).abs() < 1e-6, "{short_w}");
}
