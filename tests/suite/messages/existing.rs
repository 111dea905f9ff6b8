//! What is said of a system that stands.

use super::{Book, in_both};
use crate::support::{FOUR_ROOMS, open};
use finrun_engine::existing::{At, Explanation, Limit, NoExplanation, Order, Scale, Sure};
use finrun_engine::quantity::System;
use finrun_text as text;

#[test]
fn words_of_a_system_that_stands() {
    let tell = |book: &mut Book| {
        for (name, words) in text::EXISTING_WORDS {
            book.add(name, words());
        }
        for limit in [Limit::None, Limit::NotConnected, Limit::Element, Limit::Water, Limit::Flow] {
            book.add(format!("{limit:?}"), text::limit_said(limit));
        }
        for why in [NoExplanation::NotSolved, NoExplanation::NoSupply, NoExplanation::TooFew] {
            book.add(format!("{why:?}"), text::nothing_explained(why));
        }
        for sure in
            [Sure::AlmostCertain, Sure::Likely, Sure::Rather, Sure::Possible, Sure::Unlikely]
        {
            book.add(format!("{sure:?}"), text::sure(sure));
        }
        for scale in [Scale::Flow, Scale::Output, Scale::Loss] {
            book.add(format!("{scale:?}"), text::strength(scale, 0.4, System::Us));
        }
        book.add("expected there", text::expected_there("160 °F", "171 °F"));
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn explanations_and_places_by_name() {
    let draft = open(FOUR_ROOMS);
    let (a, b) = (draft.rooms[1].id, draft.rooms[3].id);
    let explanations = [
        Explanation::AsCalculated,
        Explanation::TooLittle { room: a },
        Explanation::LowFlow,
        Explanation::Air { first: a },
        Explanation::Blocked { room: a },
        Explanation::WrongOrder { first: a, order: Order::Reversed },
        Explanation::WrongOrder { first: a, order: Order::Swapped { before: a, behind: b } },
        Explanation::MoreLoss { room: b },
        Explanation::HouseLoss,
    ];
    let places = [
        At::BoilerSupply,
        At::BoilerBack,
        At::Supply(a),
        At::Back(a),
        At::Flow(a),
        At::WaterIn(b),
        At::WaterOut(b),
        At::Air(b),
    ];
    // Rooms and circuits are named as they were typed: only what stands around them is held in both
    // languages.
    let mut book = Book::default();
    for explanation in explanations {
        book.add(format!("{explanation:?}"), text::explanation(&draft, explanation));
        book.add(format!("{explanation:?} look"), text::look_at(explanation));
    }
    for at in places {
        book.add(format!("{at:?}"), text::measured_at(&draft, at));
    }
    insta::assert_snapshot!(book.text());
    let looked = |book: &mut Book| {
        for explanation in explanations {
            book.add(format!("{explanation:?}"), text::look_at(explanation));
        }
    };
    in_both(looked);
}
