//! The choice of stock pieces against exhaustive search, and what must hold of every such choice.
//! `cargo xtask reference` and `published.rs` hold it to optima that HiGHS proved.

use finrun_engine::sizing::select::{
    NODES, Outcome, Problem, Room, SelectError, Selection, Stock, select,
};
use finrun_tests::stock::fault;
use proptest::prelude::*;
use std::cmp::Reverse;

fn stock(length_sixteenths: u32, price_cents: u32) -> Stock {
    Stock { length_sixteenths, price_cents: Some(price_cents), available: None }
}

fn room(segments: &[u32], need_sixteenths: u32) -> Room {
    Room { segments_sixteenths: segments.to_vec(), need_sixteenths }
}

fn outcome(problem: &Problem) -> Outcome {
    select(problem, NODES).expect("a problem").outcome
}

fn optimum(problem: &Problem) -> Option<Selection> {
    match outcome(problem) {
        Outcome::Optimal(found) => {
            assert_eq!(fault(problem, &found), None);
            Some(found)
        }
        Outcome::Infeasible { .. } => None,
        stopped @ Outcome::Stopped { .. } => panic!("{stopped:?}"),
    }
}

/// The same, but gives a case up that the nodes do not suffice for: some of a house's do not.
fn optimum_if_proven(problem: &Problem) -> Result<Option<Selection>, TestCaseError> {
    match outcome(problem) {
        Outcome::Stopped { .. } => Err(TestCaseError::reject("the nodes ran out")),
        _ => Ok(optimum(problem)),
    }
}

/// Cost, or pieces and length; then pieces.
fn merit(problem: &Problem, pieces: &[Vec<Vec<u32>>]) -> (u64, u64) {
    let all = || pieces.iter().flatten().flatten();
    let count = all().count() as u64;
    let cost = |&piece: &u32| {
        let kind = problem.stock.iter().find(|stock| stock.length_sixteenths == piece)?;
        Some(u64::from(kind.price_cents? + problem.joint_cents))
    };
    match all().map(cost).sum() {
        Some(cost) if problem.stock[0].price_cents.is_some() => (cost, count),
        _ => (count, all().map(|&piece| u64::from(piece)).sum()),
    }
}

/// The order that the engine promises: merit, then earlier segments fuller, then longer pieces.
type Order = ((u64, u64), Reverse<Vec<u32>>, Reverse<Vec<Vec<u32>>>);

fn order(problem: &Problem, pieces: &[Vec<Vec<u32>>]) -> Order {
    let mut rooms: Vec<usize> = (0..problem.rooms.len()).collect();
    rooms.sort_by_key(|&at| {
        let Room { segments_sixteenths, need_sixteenths } = &problem.rooms[at];
        Reverse((need_sixteenths, segments_sixteenths))
    });
    let segments: Vec<Vec<u32>> = rooms.iter().flat_map(|&at| pieces[at].clone()).collect();
    let fill = segments.iter().map(|pieces| pieces.iter().sum()).collect();
    (merit(problem, pieces), Reverse(fill), Reverse(segments))
}

/// Every way to lay pieces, tried; the first by the order promised.
fn exhaustive(problem: &Problem) -> Option<Vec<Vec<Vec<u32>>>> {
    let mut kinds: Vec<(u32, u32)> = problem
        .stock
        .iter()
        .map(|stock| (stock.length_sixteenths, stock.available.unwrap_or(u32::MAX)))
        .collect();
    kinds.sort_by_key(|kind| Reverse(kind.0));
    let mut pieces: Vec<Vec<Vec<u32>>> =
        problem.rooms.iter().map(|room| vec![vec![]; room.segments_sixteenths.len()]).collect();
    let mut best = None;
    lay(problem, &mut kinds, &mut pieces, (0, 0, 0), &mut best);
    best.map(|(_, pieces)| pieces)
}

type Laid = Vec<Vec<Vec<u32>>>;

fn lay(
    problem: &Problem,
    kinds: &mut Vec<(u32, u32)>,
    pieces: &mut Laid,
    (at, segment, kind): (usize, usize, usize),
    best: &mut Option<(Order, Laid)>,
) {
    let Some(room) = problem.rooms.get(at) else {
        let order = order(problem, pieces);
        if best.as_ref().is_none_or(|(before, _)| order < *before) {
            *best = Some((order, pieces.clone()));
        }
        return;
    };
    let Some(&hold) = room.segments_sixteenths.get(segment) else {
        if pieces[at].iter().flatten().sum::<u32>() >= room.need_sixteenths {
            lay(problem, kinds, pieces, (at + 1, 0, 0), best);
        }
        return;
    };
    let Some(&(length, left)) = kinds.get(kind) else {
        return lay(problem, kinds, pieces, (at, segment + 1, 0), best);
    };
    lay(problem, kinds, pieces, (at, segment, kind + 1), best);
    if left > 0 && pieces[at][segment].iter().sum::<u32>() + length <= hold {
        kinds[kind].1 -= 1;
        pieces[at][segment].push(length);
        lay(problem, kinds, pieces, (at, segment, kind), best);
        pieces[at][segment].pop();
        kinds[kind].1 += 1;
    }
}

/// Small enough to try everything: up to two rooms of two segments, four lengths.
fn small() -> impl Strategy<Value = Problem> {
    let limit = prop_oneof![2 => Just(None), 3 => (0..4_u32).prop_map(Some)];
    // Few prices, so that many selections cost the same.
    let stock = prop::collection::vec((2..9_u32, 1..6_u32, limit), 1..5);
    let room = (prop::collection::vec(1..17_u32, 1..3), 1..22_u32);
    let rooms = prop::collection::vec(room, 1..3);
    (stock, rooms, 0..3_u32, any::<bool>(), 1..4_u32).prop_map(
        |(stock, rooms, joint_cents, priced, unit)| {
            let mut all: Vec<Stock> = Vec::new();
            for (length, price, available) in stock {
                let length_sixteenths = length * unit;
                if all.iter().all(|one| one.length_sixteenths != length_sixteenths) {
                    let price_cents = priced.then_some(price);
                    all.push(Stock { length_sixteenths, price_cents, available });
                }
            }
            // Off the unit by one here and there, since walls are not as stock is.
            let rooms = rooms.into_iter().map(|(segments, need)| Room {
                segments_sixteenths: segments.iter().map(|s| s * unit + s % 2).collect(),
                need_sixteenths: need * unit - need % 2,
            });
            let rooms = rooms.filter(|room| room.need_sixteenths > 0).collect();
            Problem { rooms, stock: all, joint_cents }
        },
    )
}

/// Rooms and limits like a house's.
fn house() -> impl Strategy<Value = Problem> {
    let limit = prop_oneof![1 => Just(None), 1 => (0..6_u32).prop_map(Some)];
    let stock = prop::collection::vec((300..2000_u32, limit), 9);
    let room = (prop::collection::vec(600..4000_u32, 1..5), 0.2..0.9_f64);
    let rooms = prop::collection::vec(room, 1..5);
    (stock, rooms, 0..1500_u32).prop_map(|(stock, rooms, joint_cents)| {
        let stock = stock.into_iter().enumerate().map(|(at, (price, available))| {
            let feet = at as u32 + 2;
            let price_cents = Some(price + 500 * feet);
            Stock { length_sixteenths: 192 * feet, price_cents, available }
        });
        let rooms = rooms.into_iter().map(|(segments, share)| {
            let sum: u32 = segments.iter().sum();
            let need_sixteenths = (f64::from(sum) * share) as u32;
            Room { segments_sixteenths: segments, need_sixteenths }
        });
        Problem { stock: stock.collect(), rooms: rooms.collect(), joint_cents }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_choice_is_better(problem in small()) {
        let found = select(&problem, NODES);
        if let Err(SelectError::NoRooms | SelectError::NoneFits) = found {
            prop_assert_eq!(exhaustive(&problem).filter(|_| !problem.rooms.is_empty()), None);
            return Ok(());
        }
        let found = optimum(&problem).map(|found| found.pieces_sixteenths);
        let best = exhaustive(&problem);
        prop_assert_eq!(&found, &best, "{:?}", found.as_ref().map(|found| order(&problem, found)));
    }

    #[test]
    fn a_room_falls_short_by_no_more_than_it_must(problem in small()) {
        let Ok(Outcome::Infeasible { room, short_sixteenths }) =
            select(&problem, NODES).map(|answer| answer.outcome)
        else {
            return Ok(());
        };
        let mut less = problem.clone();
        less.rooms.truncate(room + 1);
        less.rooms[room].need_sixteenths -= short_sixteenths;
        if less.rooms[room].need_sixteenths == 0 {
            less.rooms.pop();
            prop_assert!(less.rooms.is_empty() || exhaustive(&less).is_some());
            return Ok(());
        }
        prop_assert!(exhaustive(&less).is_some(), "room {} by {}", room, short_sixteenths);
        less.rooms[room].need_sixteenths += 1;
        prop_assert_eq!(exhaustive(&less), None, "room {} by {}", room, short_sixteenths);
    }

    #[test]
    fn one_length_more_costs_no_more(problem in house(), left_out in 0..9_usize) {
        let mut less = problem.clone();
        less.stock.remove(left_out);
        let more = optimum_if_proven(&problem)?;
        if let Outcome::Optimal(less) = outcome(&less) {
            prop_assert!(more.is_some_and(|more| more.cost_cents <= less.cost_cents));
        }
    }

    #[test]
    fn a_larger_need_costs_no_less(problem in house(), more in 1..800_u32) {
        let mut larger = problem.clone();
        larger.rooms[0].need_sixteenths += more;
        match (optimum_if_proven(&problem)?, optimum_if_proven(&larger)?) {
            (Some(less), Some(more)) => prop_assert!(more.cost_cents >= less.cost_cents),
            (None, more) => prop_assert_eq!(more, None),
            (Some(_), None) => {}
        }
    }

    #[test]
    fn the_order_typed_does_not_matter(problem in house(), rooms in any::<u8>(), by in 1..9_usize) {
        let mut other = problem.clone();
        let turn = usize::from(rooms) % problem.rooms.len();
        other.rooms.rotate_left(turn);
        other.stock.rotate_left(by);
        other.stock.reverse();
        match (optimum_if_proven(&problem)?, optimum_if_proven(&other)?) {
            (Some(mut one), Some(other)) => {
                one.pieces_sixteenths.rotate_left(turn);
                one.used.rotate_left(by);
                one.used.reverse();
                prop_assert_eq!(one, other);
            }
            (one, other) => prop_assert_eq!(one.is_some(), other.is_some()),
        }
    }

    /// However few nodes: an optimum is the optimum, a stop tells a bound that is one.
    #[test]
    fn a_stop_tells_what_can_be_hoped(problem in house(), nodes in 0..300_u64) {
        let best = optimum_if_proven(&problem)?;
        match select(&problem, nodes).expect("a problem").outcome {
            Outcome::Stopped { best: known, bound } => {
                if let Some(best) = &best {
                    prop_assert!(bound <= best.cost_cents.unwrap_or(0));
                }
                if let Some(known) = known {
                    prop_assert_eq!(fault(&problem, &known), None);
                    prop_assert!(known.cost_cents >= best.expect("there is one").cost_cents);
                }
            }
            Outcome::Optimal(found) => prop_assert_eq!(Some(found), best),
            Outcome::Infeasible { .. } => prop_assert_eq!(best, None),
        }
    }
}

#[test]
fn a_tie_goes_to_fewer_pieces_then_fuller_segments_then_longer_pieces() {
    let pieces = |stock: &[(u32, u32)], joint_cents, segments: &[u32], need| {
        let stock = stock.iter().map(|&(length, price)| self::stock(length, price)).collect();
        let problem = Problem { rooms: vec![room(segments, need)], stock, joint_cents };
        optimum(&problem).map(|found| found.pieces_sixteenths[0].clone())
    };
    assert_eq!(pieces(&[(2, 10), (4, 20)], 0, &[4], 4), Some(vec![vec![4]]), "fewer pieces");
    let fuller = pieces(&[(3, 15), (5, 15)], 0, &[5, 5], 8);
    assert_eq!(fuller, Some(vec![vec![5], vec![5]]), "as cheap as 5 and 3");
    let longer = pieces(&[(2, 10), (3, 15), (4, 20)], 0, &[6], 6);
    assert_eq!(longer, Some(vec![vec![4, 2]]), "as cheap as 3 and 3");
}

#[test]
fn without_prices_the_fewest_pieces_count_then_the_least_length() {
    let bare = |length_sixteenths| Stock { length_sixteenths, price_cents: None, available: None };
    let problem = Problem {
        rooms: vec![room(&[12], 7)],
        stock: vec![bare(2), bare(5), bare(6)],
        joint_cents: 900,
    };
    let found = optimum(&problem).expect("an answer");
    assert_eq!(found.pieces_sixteenths, [[[5, 2]]]);
    assert_eq!((found.cost_cents, found.pieces, found.length_sixteenths), (None, 2, 7));
}

#[test]
fn what_is_no_problem_is_refused() {
    let problem = |rooms: &[Room], stock: &[Stock]| Problem {
        rooms: rooms.to_vec(),
        stock: stock.to_vec(),
        joint_cents: 0,
    };
    let (one, kind) = (room(&[10], 5), stock(5, 1));
    let bare = Stock { price_cents: None, ..stock(6, 1) };
    let refused = [
        (problem(std::slice::from_ref(&one), &[]), SelectError::NoStock),
        (problem(&[], &[kind]), SelectError::NoRooms),
        (problem(&[one.clone(), room(&[], 5)], &[kind]), SelectError::NoSegments { room: 1 }),
        (problem(&[room(&[10], 0)], &[kind]), SelectError::NoNeed { room: 0 }),
        (
            problem(std::slice::from_ref(&one), &[kind, stock(0, 1)]),
            SelectError::NoLength { stock: 1 },
        ),
        (
            problem(std::slice::from_ref(&one), &[kind, stock(5, 2)]),
            SelectError::Repeated { stock: 1 },
        ),
        (problem(std::slice::from_ref(&one), &[kind, bare]), SelectError::NoPrice { stock: 1 }),
        (problem(std::slice::from_ref(&one), &[stock(11, 1)]), SelectError::NoneFits),
        (problem(std::slice::from_ref(&one), &[stock(5, u32::MAX)]), SelectError::TooLarge),
        (problem(&[room(&[u32::MAX], u32::MAX)], &[kind]), SelectError::TooLarge),
        (problem(&vec![room(&[192_000], 5); 6], &[kind]), SelectError::TooLarge),
    ];
    for (problem, why) in refused {
        assert_eq!(select(&problem, NODES), Err(why), "{problem:?}");
    }
    let gone = Stock { available: Some(0), ..kind };
    let short = Outcome::Infeasible { room: 0, short_sixteenths: 5 };
    assert_eq!(outcome(&problem(&[one], &[gone])), short);
}

#[test]
fn the_first_room_that_goes_short_is_named() {
    let problem = Problem {
        rooms: vec![room(&[20], 10), room(&[9, 9], 14), room(&[20], 10)],
        stock: vec![Stock { available: Some(4), ..stock(5, 100) }],
        joint_cents: 0,
    };
    // Two pieces are left for the second room, which fits one a segment: 10 of 14.
    assert_eq!(outcome(&problem), Outcome::Infeasible { room: 1, short_sixteenths: 4 });
}
