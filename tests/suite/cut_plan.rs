//! The cut plan of pipe against exhaustive search, and what must hold of every plan. `published.rs`
//! holds it to optima that HiGHS proved.

use finrun_engine::takeoff::cut_plan::{CutError, CutPlan, NODES, cut_plan};
use finrun_tests::cuts::fault;
use proptest::prelude::*;

fn proven(pieces: &[u32], sticks: &[u32], kerf: u32) -> CutPlan {
    let plan = cut_plan(pieces, sticks, kerf, NODES).expect("a plan");
    assert!(plan.is_proven(), "{plan:?}");
    assert_eq!(fault(&plan, pieces, sticks, kerf), None);
    plan
}

/// Total length, then sticks, of the best way to cut: every piece into every stick begun, or a new.
fn exhaustive(pieces: &[u32], sticks: &[u32], kerf: u32) -> (u32, usize) {
    fn place(
        pieces: &[u32],
        begun: &mut Vec<(u32, u32)>,
        (sticks, kerf): (&[u32], u32),
        best: &mut (u32, usize),
    ) {
        let total = begun.iter().map(|&(stick, _)| stick).sum();
        if (total, begun.len()) >= *best {
            return;
        }
        let Some((&piece, rest)) = pieces.split_first() else {
            *best = (total, begun.len());
            return;
        };
        for at in 0..begun.len() {
            let (stick, used) = begun[at];
            if used + kerf + piece <= stick {
                begun[at].1 = used + kerf + piece;
                place(rest, begun, (sticks, kerf), best);
                begun[at].1 = used;
            }
        }
        for &stick in sticks.iter().filter(|&&stick| piece <= stick) {
            begun.push((stick, piece));
            place(rest, begun, (sticks, kerf), best);
            begun.pop();
        }
    }
    let mut best = (u32::MAX, 0);
    place(pieces, &mut Vec::new(), (sticks, kerf), &mut best);
    best
}

fn first_fit_decreasing(pieces: &[u32], stick: u32, kerf: u32) -> usize {
    let mut pieces = pieces.to_vec();
    pieces.sort();
    let mut sticks: Vec<u32> = Vec::new();
    for &piece in pieces.iter().rev() {
        match sticks.iter_mut().find(|used| **used + kerf + piece <= stick) {
            Some(used) => *used += kerf + piece,
            None => sticks.push(piece),
        }
    }
    sticks.len()
}

fn lengths(plan: &CutPlan) -> Vec<(u32, Vec<u32>)> {
    let cuts = |stick: &finrun_engine::takeoff::cut_plan::CutStick| {
        stick.cuts.iter().map(|cut| cut.length_sixteenths).collect()
    };
    plan.sticks.iter().map(|stick| (stick.stick_sixteenths, cuts(stick))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_plan_is_better(
        pieces in prop::collection::vec(3..21_u32, 1..9),
        sticks in prop_oneof![Just(vec![20]), Just(vec![20, 40]), Just(vec![27, 20, 33])],
        kerf in 0..3_u32,
    ) {
        let plan = proven(&pieces, &sticks, kerf);
        let found = (plan.total_sixteenths as u32, plan.sticks.len());
        let best = exhaustive(&pieces, &sticks, kerf);
        prop_assert_eq!(found, best);
    }

    #[test]
    fn first_fit_decreasing_is_never_better(
        pieces in prop::collection::vec(100..1921_u32, 1..60),
        nodes in 0..5000_u64,
    ) {
        for stick in [1920, 3840] {
            let plan = cut_plan(&pieces, &[stick], 2, nodes).expect("a plan");
            prop_assert_eq!(fault(&plan, &pieces, &[stick], 2), None);
            prop_assert!(plan.sticks.len() <= first_fit_decreasing(&pieces, stick, 2));
            prop_assert!(plan.bound_sixteenths <= plan.total_sixteenths);
        }
    }

    /// However few nodes: the bound is no more than what is best.
    #[test]
    fn a_stop_tells_what_can_be_hoped(
        pieces in prop::collection::vec(3..41_u32, 1..9),
        nodes in 0..40_u64,
    ) {
        let best = u64::from(exhaustive(&pieces, &[20, 40], 1).0);
        let plan = cut_plan(&pieces, &[20, 40], 1, nodes).expect("a plan");
        prop_assert!(plan.bound_sixteenths <= best && best <= plan.total_sixteenths, "{:?}", plan);
    }

    #[test]
    fn the_order_does_not_matter(
        pieces in prop::collection::vec(100..1921_u32, 1..25),
        by in any::<prop::sample::Index>(),
    ) {
        let mut other = pieces.clone();
        other.rotate_left(by.index(pieces.len()));
        let one = cut_plan(&pieces, &[1920, 3840], 2, 20_000).expect("a plan");
        let other = cut_plan(&other, &[3840, 1920, 3840], 2, 20_000).expect("a plan");
        prop_assert_eq!(lengths(&one), lengths(&other));
        prop_assert_eq!(one.bound_sixteenths, other.bound_sixteenths);
    }
}

#[test]
fn the_last_piece_needs_no_cut() {
    // Two pieces and one cut are a stick; a sixteenth more is not.
    assert_eq!(proven(&[959, 959], &[1920], 2).sticks.len(), 1);
    assert_eq!(proven(&[960, 959], &[1920], 2).sticks.len(), 2);
    // A remainder thinner than the saw goes to dust; a thicker one is left but for the cut.
    assert_eq!(proven(&[1919], &[1920], 2).sticks[0].offcut_sixteenths, 0);
    assert_eq!(proven(&[1900], &[1920], 2).sticks[0].offcut_sixteenths, 18);
}

#[test]
fn of_equal_lengths_the_fewest_sticks_are_cut() {
    let plan = proven(&[900, 900, 900, 900], &[1920, 3840], 2);
    assert_eq!(lengths(&plan), [(3840, vec![900, 900, 900, 900])]);
}

#[test]
fn what_cannot_be_cut_is_refused() {
    let too_long = CutError::TooLong { piece: 1, over_sixteenths: 1 };
    for (pieces, sticks, why) in [
        (&[][..], &[1920][..], CutError::NoPieces),
        (&[5], &[], CutError::NoSticks),
        (&[5, 0], &[1920], CutError::NoLength { piece: 1 }),
        (&[5], &[1920, 0], CutError::NoStick { stick: 1 }),
        (&[5, 1921], &[1920, 960], too_long),
        (&[5], &[u32::MAX], CutError::TooLarge),
        (&[5; 401], &[1920], CutError::TooLarge),
    ] {
        assert_eq!(cut_plan(pieces, sticks, 2, NODES), Err(why));
    }
}
