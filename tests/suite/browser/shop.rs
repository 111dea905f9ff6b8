//! Prices and counts, what the pieces are chosen for, walls and pieces that stay: typed, followed by
//! the results, and there on another day.

use finrun_engine::arrangement::{Counted, Proof};
use finrun_engine::quantity::Unit;
use serde_json::json;

use super::figures::compare;
use super::house::type_all;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Solved, solve};
use super::visit;
use crate::support::FOUR_ROOMS;

const BATH: Place = Place::Room(18);

/// The stock lengths of the job, each with a price of our own invention.
const PRICES: [(&str, &str); 7] = [
    ("2 ft", "24.50"),
    ("3 ft", "31"),
    ("4 ft", "39.90"),
    ("5 ft", "45"),
    ("6 ft", "52"),
    ("7 ft", "63"),
    ("8 ft", "70"),
];

fn type_stock(page: &Page) {
    page.press("Price and count of each length");
    for (length, price) in PRICES {
        page.within(length, || type_all(page, &[("Price of one", price)]));
    }
    page.within("6 ft", || type_all(page, &[("In the shop", "1"), ("Bought already", "1")]));
}

/// The pieces of a room in feet, longest first.
fn pieces(solved: &Solved, room: usize) -> Vec<u32> {
    let pieces = solved.typed.rooms[room].element.choice.pieces();
    let mut feet: Vec<u32> = pieces.map(|piece| piece.to(Unit::Foot).round() as u32).collect();
    feet.sort_unstable_by(|a, b| b.cmp(a));
    feet
}

#[test]
fn prices_are_typed_and_kept_and_pieces_follow() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Lengths);
        page.choose("Choose the pieces for", "Least cost");
        page.wait_for_text("where the price of a length is missing");
        page.wait_until_saved();
        assert_eq!(solve(page).typed.together.counted, Counted::Pieces);
        compare(page, &solve(page), Place::Loop);
        page.wait_for_text("7 stock lengths have no price");

        page.go(Place::Lengths);
        type_stock(page);
        page.press("Prices");
        page.wait_for_text("all in one currency");
        type_all(page, &[("End cap", "6.25")]);
        page.within("Pipe", || type_all(page, &[("Pipe", "2,40")]));
        page.type_into("Soldered joint, with coupling and time", "3 50");
        page.leave();
        let error = page.text_of("[id='price.joint-error']");
        assert!(error.contains("“3 50”"), "{error}");
        type_all(page, &[("Soldered joint, with coupling and time", "3.50")]);
        page.press("Back to Lengths");
        page.wait_for_text("Proven: no other choice costs less than");
        page.wait_until_saved();
        let solved = solve(page);
        assert_eq!(solved.typed.together.counted, Counted::Cost);
        assert_eq!(solved.typed.together.proof, Proof::Best);
        compare(page, &solved, Place::Lengths);

        page.wait_until_saved();
        page.reload();
        compare(page, &solved, Place::Lengths);
        assert_eq!(page.value_of("Choose the pieces for"), "Least cost");
        for (length, price) in PRICES {
            page.within(length, || assert_eq!(page.value_of("Price of one"), price));
        }
        page.within("6 ft", || assert_eq!(page.value_of("Bought already"), "1"));
        page.go(Place::Prices);
        assert_eq!(page.value_of("Soldered joint"), "3.50");
        page.within("Pipe", || assert_eq!(page.value_of("Pipe"), "2,40"));
    });
}

/// The three boxes of a length stand in one line on a phone, under each other none.
#[test]
fn prices_and_counts_stand_as_in_a_table() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Lengths);
        page.press("Price and count of each length");
        let tops = "return [...document.querySelectorAll('.stocked')].map((row) =>
            new Set([...row.querySelectorAll('input')].map((box) => box.getBoundingClientRect().top)).size)";
        assert_eq!(page.script(tops, vec![]), json!([1, 1, 1, 1, 1, 1, 1]));
        // A length that comes on the list comes into the table, one that leaves it goes.
        page.press("9 ft");
        page.within("9 ft", || type_all(page, &[("Price of one", "80")]));
        page.press("2 ft");
        let rows = page.texts_of(".stocked legend");
        assert_eq!(rows, ["3 ft", "4 ft", "5 ft", "6 ft", "7 ft", "8 ft", "9 ft"]);
        // What was typed of it waits.
        page.press("9 ft");
        page.press("9 ft");
        page.within("9 ft", || assert_eq!(page.value_of("Price of one"), "80"));
    });
}

#[test]
fn pieces_are_kept_and_let_go() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Lengths);
        page.wait_until_saved();
        let before = pieces(&solve(page), 0);
        page.press("Keep these pieces Living room, South wall");
        page.wait_for("[id='room-6.surface-2.run-0']:focus");
        let said = page.text_of("[id='room-6.surface-2.run-0'] > span");
        assert!(said.starts_with("Kept: "), "{said}");
        page.wait_until_saved();
        assert_eq!(pieces(&solve(page), 0), before);

        // They stay where other pieces would be chosen now.
        for length in ["7 ft", "8 ft"] {
            page.press(length);
        }
        page.wait_until_saved();
        let solved = solve(page);
        assert_eq!(pieces(&solved, 0), before);
        compare(page, &solved, Place::Lengths);
        page.reload();
        assert_eq!(page.text_of("[id='room-6.surface-2.run-0'] > span"), said);

        page.press("Let them go Living room, South wall");
        page.wait_until_saved();
        assert_ne!(pieces(&solve(page), 0), before);
        page.press("Undo");
        page.wait_until_saved();
        assert_eq!(pieces(&solve(page), 0), before);
    });
}

/// A wall that became too short for what is kept on it says so, and leads to the way out.
#[test]
fn kept_pieces_that_no_longer_fit_are_named_and_let_go() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Lengths);
        page.press("Keep these pieces Living room, South wall");
        page.go(Place::Room(6));
        page.press("South wall");
        page.within("South wall", || {
            type_all(page, &[("Length", "7")]);
            page.within("Window", || type_all(page, &[("From the left", "1")]));
        });
        page.press("Show the field");
        page.wait_for("[id='room-6.surface-2.fixed']:focus");
        let said = page.text_of("[id='room-6.surface-2.fixed'] p");
        for words in
            ["Living room, South wall, Pieces that stay", "the stretch of wall takes 6 ft 8 in"]
        {
            assert!(said.contains(words), "{words} in {said}");
        }
        page.press("Let them go South wall");
        page.wait_until_gone("Kept pieces that no longer fit");
        page.wait_until_saved();
        compare(page, &solve(page), Place::Lengths);
    });
}

#[test]
fn a_wall_is_ruled_out_and_other_heat_counted_on() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, BATH);
        page.press("North wall");
        page.wait_for(".surface[open] .free");
        page.within("North wall", || {
            assert_eq!(page.texts_of(".surface[open] .free").len(), 1);
            page.choose("Baseboard at this wall", "Not at this wall");
            page.wait("the free length is gone", || {
                match page.texts_of(".surface[open] .free").len() {
                    0 => Ok(()),
                    some => Err(format!("{some} are drawn")),
                }
            });
        });
        page.wait_until_saved();
        let walls: Vec<u32> = solve(page).typed.rooms[2]
            .element
            .choice
            .runs
            .iter()
            .map(|run| run.surface.0)
            .collect();
        assert_eq!(walls, [15], "the inside wall alone");
        page.press("Shape, temperature and air");
        type_all(page, &[("Other heat on the design day", "300")]);
        page.wait_until_saved();
        compare(page, &solve(page), Place::Lengths);
        page.wait_for_text("beside 300 Btu/h from elsewhere");
        page.go(BATH);
        page.press("Shape, temperature and air");
        type_all(page, &[("Other heat on the design day", "9000")]);
        page.wait_until_saved();
        let solved = solve(page);
        assert_eq!(pieces(&solved, 2), [0_u32; 0]);
        compare(page, &solved, Place::Lengths);
        compare(page, &solved, Place::Loop);
        page.wait_for_text("Bath has all its heat from elsewhere");
    });
}
