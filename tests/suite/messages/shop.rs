//! What is said of the choice of pieces.

use super::Book;
use finrun_engine::arrangement::{Counted, Proof, Together};
use finrun_engine::job::Objective;
use finrun_engine::quantity::System;
use finrun_text as text;

#[test]
fn how_the_pieces_were_chosen() {
    let mut book = Book::default();
    let cases = [
        (Objective::Closest, Counted::Surplus, 320.0, 300.0),
        (Objective::LeastCost, Counted::Cost, 1234.5, 1200.25),
        (Objective::LeastCost, Counted::Pieces, 12.0, 11.0),
        (Objective::FewestJoints, Counted::Joints, 21.0, 20.0),
        (Objective::MostEven, Counted::Spread, 1.08, 1.05),
    ];
    for (objective, counted, value, bound) in cases {
        for proof in [Proof::Best, Proof::Within { bound }, Proof::Unsettled] {
            let together = Together { objective, counted, value, proof };
            book.add(format!("{counted:?} {proof:?}"), text::together(&together, System::Us));
        }
    }
    insta::assert_snapshot!(book.text());
}
