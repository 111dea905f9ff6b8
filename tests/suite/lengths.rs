//! The choice of stock pieces against every possible choice, on cases small enough to try them all.

use crate::support::{add_room, add_wall, cold_day, set, solve};
use finrun_engine::building::{Run, SurfaceId};
use finrun_engine::emitter::{Element, HeatingEffect, Rating};
use finrun_engine::job::{Baseboard, Behind, Field, Objective, Stock, SurfaceField};
use finrun_engine::quantity::{Length, LinearPower, MassFlow, Temperature, Unit};
use finrun_engine::sizing::{Choice, choose};
use proptest::prelude::*;
use proptest::sample::subsequence;

fn feet(value: f64) -> Length {
    Length::of(value, Unit::Foot)
}

/// Stock in whole feet, bare tube and end allowance in inches; the rating plays no part here.
fn baseboard(stock: &[u8], bare: f64, ends: f64) -> Baseboard {
    let rating = Rating {
        output: LinearPower::from_si(577.0),
        water: Temperature::from_si(355.0),
        air: Temperature::from_si(291.0),
        exponent: 1.4,
        flow: MassFlow::from_si(0.063),
        effect: HeatingEffect::AsTyped,
    };
    Baseboard {
        worst_residual: None,
        element: Element { rating, derate: 1.0 },
        stock: stock
            .iter()
            .map(|&l| Stock { length: feet(f64::from(l)), price: None, available: None, have: 0 })
            .collect(),
        objective: Objective::Closest,
        bare_per_piece: Length::of(bare, Unit::Inch),
        end_allowance: Length::of(ends, Unit::Inch),
    }
}

fn runs(lengths: &[f64]) -> Vec<(SurfaceId, Run)> {
    let run = |(index, &length): (usize, &f64)| {
        (SurfaceId(index as u32), Run { start: Length::ZERO, length: feet(length) })
    };
    lengths.iter().enumerate().map(run).collect()
}

/// Nominal feet and pieces of each run.
type Packing = Vec<(u32, u32)>;

/// Every way to fill a run of `room` feet, as feet and fewest pieces.
fn fillings(stock: &[u8], room: f64) -> Vec<(u32, u32)> {
    let mut all = vec![(0, 0)];
    let mut index = 0;
    while let Some(&(feet, pieces)) = all.get(index) {
        for &piece in stock {
            let next = (feet + u32::from(piece), pieces + 1);
            if f64::from(next.0) <= room + 1e-6 && !all.contains(&next) {
                all.push(next);
            }
        }
        index += 1;
    }
    all
}

fn packings(stock: &[u8], lengths: &[f64], ends: f64) -> Vec<Packing> {
    lengths.iter().fold(vec![Vec::new()], |before, length| {
        let here = fillings(stock, length - ends / 12.0);
        let extend = |packing: &Packing| -> Vec<Packing> {
            here.iter().map(|&filling| [packing.as_slice(), &[filling]].concat()).collect()
        };
        before.iter().flat_map(extend).collect()
    })
}

fn finned(packing: &Packing, bare: f64) -> f64 {
    packing.iter().map(|&(feet, pieces)| f64::from(feet) - f64::from(pieces) * bare / 12.0).sum()
}

/// The order of preference: feet, pieces, runs used, then the earlier runs fuller.
fn rank(packing: &Packing) -> (u32, u32, usize, Vec<i64>) {
    let nominal = packing.iter().map(|p| p.0).sum();
    let pieces = packing.iter().map(|p| p.1).sum();
    let used = packing.iter().filter(|p| p.1 > 0).count();
    let before = |count: usize| -i64::from(packing.iter().take(count).map(|p| p.0).sum::<u32>());
    (nominal, pieces, used, (1..packing.len()).rev().map(before).collect())
}

fn packing_of(choice: &Choice, count: usize) -> Packing {
    (0..count)
        .map(|index| {
            let here = choice.runs.iter().find(|run| run.surface == SurfaceId(index as u32));
            here.map_or((0, 0), |run| {
                let nominal: Length = run.pieces.iter().copied().sum();
                (nominal.to(Unit::Foot).round() as u32, run.pieces.len() as u32)
            })
        })
        .collect()
}

#[derive(Debug, Clone)]
struct Case {
    stock: Vec<u8>,
    lengths: Vec<f64>,
    bare: f64,
    ends: f64,
    needed: f64,
}

fn cases() -> impl Strategy<Value = Case> {
    (
        subsequence((2..=10).collect::<Vec<u8>>(), 1..=5),
        proptest::collection::vec(1.0..14.0, 1..4),
        prop_oneof![Just(0.0), 0.0..20.0],
        0.0..8.0,
        0.1..35.0,
    )
        .prop_map(|(stock, lengths, bare, ends, needed)| Case {
            stock,
            lengths,
            bare,
            ends,
            needed,
        })
}

fn chosen(case: &Case) -> Choice {
    let baseboard = baseboard(&case.stock, case.bare, case.ends);
    choose(&runs(&case.lengths), &baseboard, feet(case.needed))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn the_choice_is_the_best_of_all(case in cases()) {
        let all = packings(&case.stock, &case.lengths, case.ends);
        let found = packing_of(&chosen(&case), case.lengths.len());
        let enough = |packing: &&Packing| finned(packing, case.bare) >= case.needed;
        match all.iter().filter(enough).min_by_key(|packing| rank(packing)) {
            Some(best) => prop_assert_eq!(&found, best),
            None => {
                let most = all.iter().map(|p| finned(p, case.bare)).fold(0.0, f64::max);
                let got = finned(&found, case.bare);
                prop_assert!((got - most).abs() < 1e-9, "{} of {}", got, most);
            }
        }
    }

    #[test]
    fn another_stock_length_never_raises_the_nominal_length(case in cases(), more in 2..=10_u8) {
        // What the walls do not take cannot be needed here.
        let most = chosen(&Case { needed: 1000.0, ..case.clone() }).finned.to(Unit::Foot);
        let case = Case { needed: case.needed.min(most), ..case };
        let before = chosen(&case);
        let mut richer = case.clone();
        richer.stock.push(more);
        richer.stock.sort_unstable();
        richer.stock.dedup();
        let after = chosen(&richer);
        prop_assert!(after.finned >= feet(case.needed) * (1.0 - 1e-9));
        prop_assert!(after.nominal <= before.nominal, "{:?} {:?}", before, after);
    }
}

/// A length needed exactly is met by pieces of exactly that length; a hair more needs the next.
#[test]
fn exact_lengths_are_met_exactly() {
    let board = baseboard(&[2, 3, 4, 5, 6, 7, 8, 9, 10], 0.0, 4.0);
    let cases: [(f64, &[f64], &[f64]); 7] = [
        (8.0, &[12.0], &[8.0]),
        (8.001, &[12.0], &[9.0]),
        (11.0, &[12.0], &[9.0, 2.0]),
        // 10 ft 4 in takes 10 ft and its end caps; a sixteenth less does not.
        (10.0, &[10.0 + 4.0 / 12.0], &[10.0]),
        (10.0, &[10.0 + 3.9 / 12.0, 4.4], &[8.0, 2.0]),
        // One piece on the second wall stands before two on the first.
        (8.0, &[5.4, 9.0], &[8.0]),
        (0.5, &[12.0], &[2.0]),
    ];
    for (needed, lengths, expected) in cases {
        let choice = choose(&runs(lengths), &board, feet(needed));
        let found: Vec<f64> = choice.pieces().map(|l| l.to(Unit::Foot).round()).collect();
        assert_eq!(found, expected, "{needed} ft in {lengths:?}");
    }
    assert_eq!(choose(&runs(&[2.0]), &board, feet(3.0)), Choice::none());
}

/// Outside walls, and walls to unheated spaces, come first: baseboard belongs under the cold.
/// Inside walls are used only where those do not take the length.
#[test]
fn outside_walls_come_before_inside_walls() {
    for (outside, free, expected) in [
        (Behind::Outdoors, "12", vec![true]),
        (Behind::Unheated, "12", vec![true]),
        (Behind::Outdoors, "3' 4\"", vec![false, true]),
    ] {
        let mut draft = cold_day();
        let room = add_room(&mut draft, "Room", "12", "10");
        // The inside wall is entered first, and would be taken first by its place.
        let inside = add_wall(&mut draft, room, "5' 6\"", "0.3");
        let cold = add_wall(&mut draft, room, "12", "0.5");
        draft.surface_mut(room, inside).expect("just added").behind = Behind::SameTemperature;
        draft.surface_mut(room, cold).expect("just added").behind = outside;
        set(&mut draft, Field::Surface(room, cold, SurfaceField::Free), free);
        let (_, design) = solve(&draft);
        let element = &design.rooms[0].element;
        assert!(element.choice.finned >= element.needed.expect("a length"), "{outside:?}");
        let used: Vec<bool> = element.choice.runs.iter().map(|run| run.surface == cold).collect();
        let mut sorted = used.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, expected, "{outside:?} {free}");
    }
}
