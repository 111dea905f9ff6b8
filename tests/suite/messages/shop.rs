//! What is said of the choice of pieces, and of what the shop has.

use super::{Book, in_both};
use finrun_engine::arrangement::{Counted, Proof, Together};
use finrun_engine::job::{Draft, Entry, Field, Objective, PriceField};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{System, Unit};
use finrun_text as text;

#[test]
fn how_the_pieces_were_chosen() {
    let tell = |book: &mut Book| {
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
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn words_of_the_shop() {
    let tell = |book: &mut Book| {
        for &objective in Objective::ALL {
            book.add(format!("{objective:?}"), text::objective(objective));
            book.add(format!("{objective:?} note"), text::objective_note(objective));
        }
        let mut draft = Draft::new("", System::Us);
        book.add("no prices", text::prices_fact(&draft));
        for field in [PriceField::Joint, PriceField::Pipe] {
            let entry = Entry { text: "3.50".to_string(), unit: Unit::Currency };
            draft.type_entry(&draft.clone(), Field::Price(field), entry);
        }
        book.add("prices", text::prices_fact(&draft));
        book.add("stretch", text::wall_stretch(1));
        book.add("stretch with pieces", text::stretch_holds(1, &text::in_units("6 ft")));
        book.add("kept", text::kept_pieces(&text::in_units("5 ft + 3 ft")));
    };
    insta::assert_snapshot!(in_both(tell));
}
