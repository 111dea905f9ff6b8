//! What must hold of every joint choice, in houses too large to try everything.

use finrun_engine::sizing::joint::{
    Answer, Costs, NODES, Objective, Problem, Proof, Room, Run, Stock, Wall, Water, choose_all,
};
use finrun_tests::element::{Element, Heated, Loop};
use proptest::prelude::*;
use std::collections::BTreeSet;

prop_compose! {
    /// Up to three circuits of up to four rooms, runs like a house's, on outer walls only.
    pub(super) fn house(limited: bool)(
        stock in prop::collection::vec((300..2000_u32, 0..6_u32), 7),
        circuits in prop::collection::vec(
            prop::collection::vec((prop::collection::vec(600..3400_u32, 1..4), 200..1500_u32), 1..5),
            1..4,
        ),
        bare in prop_oneof![Just(0.0), Just(0.0762)],
        joint_cents in 0..1500_u32,
        run_cents in 0..1500_u32,
        capacity in 40.0..200.0_f64,
        enters_k in 340.0..362.0_f64,
    ) -> (Problem, Element) {
        let stock = stock.into_iter().enumerate().map(|(at, (price, available))| {
            let feet = at as u32 + 2;
            Stock {
                length_sixteenths: 192 * feet,
                price_cents: Some(price + 500 * feet),
                // Of some as many as wanted.
                available: (limited && available < 5).then_some(available + 2),
            }
        });
        let run = |&hold_sixteenths: &u32| Run {
            hold_sixteenths,
            wall: Wall::Outer,
            fixed_sixteenths: Vec::new(),
        };
        let rooms = |rooms: &Vec<(Vec<u32>, u32)>| -> Vec<Room> {
            rooms.iter().map(|(runs, _)| Room { runs: runs.iter().map(run).collect() }).collect()
        };
        let water = |rooms: &Vec<(Vec<u32>, u32)>| Loop {
            enters_k,
            capacity_w_per_k: capacity,
            rooms: rooms
                .iter()
                .map(|&(_, load)| Heated { load_w: f64::from(load), air_k: 293.15 })
                .collect(),
        };
        let problem = Problem {
            circuits: circuits.iter().map(rooms).collect(),
            stock: stock.collect(),
            bare_per_piece_m: bare,
            costs: Costs { joint_cents, run_cents },
            objective: Objective::LeastCost,
        };
        let loops = circuits.iter().map(water).collect();
        (problem, Element { per_metre_w: 1.6, part_lower_k: 18.0, circuits: loops })
    }
}

fn is_met(answer: &Answer) -> bool {
    answer.short_w.iter().flatten().all(Option::is_none)
}

/// An answer in which no room is short and none is better; other cases are given up.
fn met(problem: &Problem, water: &Element) -> Result<Answer, TestCaseError> {
    let answer = choose_all(problem, water, NODES);
    match is_met(&answer) && answer.proof == Proof::Optimal {
        true => Ok(answer),
        false => Err(TestCaseError::reject("a room is short, or the nodes ran out")),
    }
}

/// Metres with fins.
pub(super) fn finned_m(problem: &Problem, pieces: &[Vec<u32>]) -> f64 {
    let length_m = |&piece: &u32| f64::from(piece) / 16.0 * 0.0254 - problem.bare_per_piece_m;
    pieces.iter().flatten().map(length_m).sum()
}

/// Every finned length that a room's runs take of endless stock, with its pieces' count: by adding
/// one piece after another.
fn lengths_m(problem: &Problem, room: &Room) -> Vec<f64> {
    let mut all: BTreeSet<(u32, u32)> = BTreeSet::from([(0, 0)]);
    for run in &room.runs {
        let mut of_run: BTreeSet<(u32, u32)> = BTreeSet::from([(0, 0)]);
        let mut fresh: Vec<(u32, u32)> = vec![(0, 0)];
        while let Some((sum, count)) = fresh.pop() {
            for stock in &problem.stock {
                let more = (sum + stock.length_sixteenths, count + 1);
                if more.0 <= run.hold_sixteenths && of_run.insert(more) {
                    fresh.push(more);
                }
            }
        }
        let with = |&(sum, count): &(u32, u32)| -> Vec<(u32, u32)> {
            of_run.iter().map(|&(more, pieces)| (sum + more, count + pieces)).collect()
        };
        all = all.iter().flat_map(with).collect();
    }
    let bare = problem.bare_per_piece_m;
    let metres = |(sum, count)| f64::from(sum) / 16.0 * 0.0254 - bare * f64::from(count);
    let mut lengths: Vec<f64> = all.into_iter().map(metres).collect();
    lengths.sort_by(f64::total_cmp);
    lengths
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, max_global_rejects: 20_000, ..ProptestConfig::default() })]

    #[test]
    fn one_length_more_costs_no_more((problem, water) in house(true), left_out in 0..7_usize) {
        let mut less = problem.clone();
        less.stock.remove(left_out);
        let less = choose_all(&less, &water, NODES);
        prop_assume!(is_met(&less));
        let more = choose_all(&problem, &water, NODES);
        prop_assert!(is_met(&more) || more.proof == Proof::Stopped);
        if more.proof == Proof::Optimal {
            prop_assert!(more.cost_cents <= less.cost_cents);
        }
    }

    #[test]
    fn hotter_water_costs_no_more((problem, water) in house(true), by_k in 0.1..5.0_f64) {
        let cooler = met(&problem, &water)?;
        let mut hot = water.clone();
        hot.circuits.iter_mut().for_each(|one| one.enters_k += by_k);
        let hotter = met(&problem, &hot)?;
        prop_assert!(hotter.cost_cents <= cooler.cost_cents);
    }

    /// Of the closest choice only this is true: the nominal length may grow where more pieces, each
    /// with its bare tube, come closer.
    #[test]
    fn hotter_water_gives_no_room_more_fins((problem, water) in house(false), by_k in 0.1..5.0_f64) {
        let problem = Problem { objective: Objective::Closest, ..problem };
        let cooler = choose_all(&problem, &water, NODES);
        let mut hot = water.clone();
        hot.circuits.iter_mut().for_each(|one| one.enters_k += by_k);
        let hotter = choose_all(&problem, &hot, NODES);
        for (one, other) in hotter.pieces_sixteenths.iter().flatten().zip(cooler.pieces_sixteenths.iter().flatten()) {
            prop_assert!(finned_m(&problem, one) <= finned_m(&problem, other) + 1e-9);
        }
    }

    #[test]
    fn a_larger_load_costs_no_less((problem, water) in house(true), room in 0..4_usize, by in 1..300_u32) {
        let less = met(&problem, &water)?;
        let mut larger = water.clone();
        let rooms = &mut larger.circuits[0].rooms;
        let at = room % rooms.len();
        rooms[at].load_w += f64::from(by);
        let more = met(&problem, &larger)?;
        prop_assert!(more.cost_cents >= less.cost_cents);
    }

    #[test]
    fn the_order_typed_changes_no_value(
        (problem, water) in house(true),
        turn in 0..3_usize,
        by in 1..7_usize,
        objective in 0..3_usize,
    ) {
        let objectives = [Objective::Closest, Objective::LeastCost, Objective::FewestJoints];
        let problem = Problem { objective: objectives[objective], ..problem };
        let (mut other, mut cooled) = (problem.clone(), water.clone());
        let turn = turn % problem.circuits.len();
        other.circuits.rotate_left(turn);
        cooled.circuits.rotate_left(turn);
        other.stock.rotate_left(by);
        other.stock.reverse();
        let one = met(&problem, &water)?;
        let other = met(&other, &cooled)?;
        prop_assert!((one.value - other.value).abs() < 1e-6, "{} and {}", one.value, other.value);
    }

    /// The shortest finned length that does, room by room from the first, leaves the hottest water.
    #[test]
    fn the_closest_choice_is_the_shortest_that_does((problem, water) in house(false)) {
        let problem = Problem { objective: Objective::Closest, ..problem };
        let answer = choose_all(&problem, &water, NODES);
        for (at, rooms) in problem.circuits.iter().enumerate() {
            let mut water_k = water.enters_k(at);
            for (place, room) in rooms.iter().enumerate() {
                let lengths = lengths_m(&problem, room);
                let needed = water.needed_m(at, place, water_k);
                let does = |&&length: &&f64| needed.is_some_and(|m| length >= m * (1.0 - 1e-9));
                let shortest = *lengths.iter().find(does).unwrap_or(&lengths[lengths.len() - 1]);
                let chosen = finned_m(&problem, &answer.pieces_sixteenths[at][place]);
                prop_assert!((chosen - shortest).abs() < 1e-9, "{chosen} for {shortest}");
                water_k = water.after(at, place, water_k, shortest).water_k;
            }
        }
    }
}
