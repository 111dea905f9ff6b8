//! Small circuits against every choice, tried.

use super::brute;
use finrun_engine::sizing::joint::{
    Costs, NODES, Objective, Problem, Proof, Room, Run, Stock, Wall, choose_all,
};
use finrun_tests::element::{Element, Heated, Loop};
use proptest::prelude::*;

/// The unit of lengths: six inches.
const UNIT: u32 = 96;

fn run() -> impl Strategy<Value = Run> {
    let wall = prop_oneof![3 => Just(Wall::Outer), 1 => Just(Wall::Inner)];
    let fixed = prop_oneof![5 => Just(Vec::new()), 1 => prop::collection::vec(2..5_u32, 1..3)];
    (4..20_u32, 0..UNIT, wall, fixed).prop_map(|(units, more, wall, fixed)| Run {
        hold_sixteenths: units * UNIT + more,
        wall,
        fixed_sixteenths: fixed.into_iter().map(|units| units * UNIT).collect(),
    })
}

fn stock() -> impl Strategy<Value = Vec<Stock>> {
    let limit = prop_oneof![1 => Just(None), 2 => (0..4_u32).prop_map(Some)];
    // Few prices, so that many choices cost the same.
    let row = (3..11_u32, 0..8_u32, limit);
    (prop::collection::vec(row, 1..5), 0..8_u32).prop_map(|(rows, priced)| {
        let stock = rows.into_iter().map(|(length, price, available)| Stock {
            length_sixteenths: length * UNIT,
            price_cents: (priced > 0).then_some(100 * price),
            available,
        });
        stock.collect()
    })
}

prop_compose! {
    /// Two to four rooms on up to two circuits, small enough to try everything.
    pub(super) fn small()(
        rooms in prop::collection::vec((prop::collection::vec(run(), 1..4), 0..1100_u32, 0..8_u32), 2..5),
        stock in stock(),
        bare in prop_oneof![Just(0.0), Just(0.0635), Just(0.11)],
        joint_cents in 0..3_u32,
        run_cents in 0..3_u32,
        second_from in 1..9_usize,
        capacity in 15.0..70.0_f64,
        enters_k in 335.0..362.0_f64,
    ) -> (Problem, Element) {
        let mut circuits: Vec<Vec<Room>> = vec![Vec::new()];
        let mut loops: Vec<Loop> = Vec::new();
        let new = |enters_k| Loop { enters_k, capacity_w_per_k: capacity, rooms: Vec::new() };
        loops.push(new(enters_k));
        for (at, (runs, load, idle)) in rooms.into_iter().enumerate() {
            if at == second_from {
                circuits.push(Vec::new());
                loops.push(new(enters_k - 3.0));
            }
            let last = circuits.len() - 1;
            circuits[last].push(Room { runs });
            let load_w = if idle == 0 { 0.0 } else { f64::from(load) };
            let air_k = 291.15 + f64::from(load % 5);
            loops[last].rooms.push(Heated { load_w, air_k });
        }
        let problem = Problem {
            circuits,
            stock,
            bare_per_piece_m: bare,
            costs: Costs { joint_cents: 50 * joint_cents, run_cents: 50 * run_cents },
            objective: Objective::LeastCost,
        };
        (problem, Element { per_metre_w: 1.6, part_lower_k: 18.0, circuits: loops })
    }
}

fn holds(problem: Problem, water: &Element, objective: Objective) -> Result<(), TestCaseError> {
    let problem = Problem { objective, ..problem };
    prop_assume!(brute::count(&problem) < 8_000.0);
    let answer = choose_all(&problem, water, NODES);
    let best = brute::best(&problem, water).expect("there is always a choice");
    let told = brute::merit(&problem, water, &answer, best.short > 0);
    let told = told.map_err(TestCaseError::fail)?;
    prop_assert_eq!(answer.proof, Proof::Optimal, "{:?}", answer);
    let apart =
        (told.short - best.short).abs() < 20 && (told.objective - best.objective).abs() < 20;
    prop_assert!(apart && told.inner == best.inner, "{told:?} for {best:?}: {answer:?}");
    if matches!(objective, Objective::LeastCost | Objective::FewestJoints) && best.short == 0 {
        prop_assert_eq!(told, best);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, max_global_rejects: 20_000, ..ProptestConfig::default() })]

    #[test]
    fn no_choice_costs_less((problem, water) in small()) {
        holds(problem, &water, Objective::LeastCost)?;
    }

    #[test]
    fn no_choice_has_fewer_joints((problem, water) in small()) {
        holds(problem, &water, Objective::FewestJoints)?;
    }

    #[test]
    fn no_choice_is_closer((problem, water) in small()) {
        holds(problem, &water, Objective::Closest)?;
    }

    #[test]
    fn no_choice_is_more_even((problem, water) in small()) {
        holds(problem, &water, Objective::MostEven)?;
    }
}

/// A room of runs at outside walls, by what they hold.
fn room(holds: &[u32]) -> Room {
    let run =
        |hold_sixteenths| Run { hold_sixteenths, wall: Wall::Outer, fixed_sixteenths: vec![] };
    Room { runs: holds.iter().copied().map(run).collect() }
}

/// Pieces that cost nothing, nor do joints; some of them are few.
fn free_of_cost(circuits: Vec<Vec<Room>>, stock: &[(u32, Option<u32>)]) -> Problem {
    let one = |&(length_sixteenths, available): &(u32, Option<u32>)| Stock {
        length_sixteenths,
        price_cents: None,
        available,
    };
    Problem {
        circuits,
        stock: stock.iter().map(one).collect(),
        bare_per_piece_m: 0.0,
        costs: Costs { joint_cents: 0, run_cents: 0 },
        objective: Objective::LeastCost,
    }
}

/// Circuits by the water that enters them, and loads and air of their rooms.
fn heated(circuits: &[(f64, &[(f64, f64)])]) -> Element {
    let circuit = |&(enters_k, rooms): &(f64, &[(f64, f64)])| Loop {
        enters_k,
        capacity_w_per_k: 15.0,
        rooms: rooms.iter().map(|&(load_w, air_k)| Heated { load_w, air_k }).collect(),
    };
    Element {
        per_metre_w: 1.6,
        part_lower_k: 18.0,
        circuits: circuits.iter().map(circuit).collect(),
    }
}

/// A room that is short beside scarce pieces: rents are no weight of the rooms to come.
#[test]
fn the_evenest_choice_is_found_where_a_room_is_short() {
    let problem = free_of_cost(
        vec![vec![room(&[480, 1440])], vec![room(&[960, 960]), room(&[960])]],
        &[(960, Some(1)), (288, None)],
    );
    let water = heated(&[(335.0, &[(1.0, 292.15)]), (332.0, &[(629.0, 295.15), (1.0, 292.15)])]);
    holds(problem, &water, Objective::MostEven).expect("as every choice has it");
}

/// Two of three lengths are there once only. A rent on one of them makes a longer one the lighter, and
/// what the rooms to come weigh at the least has to see that.
#[test]
fn a_scarce_piece_goes_where_it_is_closer() {
    let problem = free_of_cost(
        vec![vec![room(&[864]), room(&[480])], vec![room(&[864])]],
        &[(576, Some(1)), (672, None), (288, Some(1))],
    );
    let water = heated(&[(335.0, &[(1.0, 292.15), (1.0, 292.15)]), (332.0, &[(80.0, 291.15)])]);
    holds(problem, &water, Objective::Closest).expect("as every choice has it");
}
