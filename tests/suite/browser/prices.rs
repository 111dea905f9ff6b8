//! The user's own prices: kept for other jobs, out as a table and in again, nothing lost on the way.

use std::fs;

use serde_json::{Value, json};

use super::house::type_all;
use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::FOUR_ROOMS;

const LIST: &str = "finrun.prices.1";

#[test]
fn prices_kept_in_one_job_stand_in_the_next() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Prices);
        page.wait_for_text("kinds of material that this job needs have no price");
        type_all(page, &[("End cap", "6.25"), ("Tee, soldered in", "4,10")]);
        page.press("Keep these prices for other jobs");
        page.wait_for("p.banner[role=status]");
        page.wait_until_saved();

        page.open("/#/");
        page.wait_for(".jobs");
        page.press("New job");
        page.wait_for_text("Rooms, in the order");
        page.go(Place::Prices);
        assert_eq!(page.value_of("End cap"), "6.25");
        assert_eq!(page.value_of("Tee, soldered in"), "4,10", "as it was typed");

        // What is typed in this job stays when the kept prices come in, until it is wished otherwise.
        type_all(page, &[("End cap", "7"), ("Tee, soldered in", "")]);
        page.press("Fill in from my kept prices");
        page.settle();
        assert_eq!(page.value_of("End cap"), "7");
        assert_eq!(page.value_of("Tee, soldered in"), "4,10");
        page.press("Undo");
        page.settle();
        assert_eq!(page.value_of("Tee, soldered in"), "", "one step back");
    });
}

#[test]
fn prices_go_out_as_a_table_and_come_back() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Prices);
        type_all(page, &[("End cap", "6.25"), ("Coupling", "1,75")]);
        page.wait_until_saved();
        page.press("Save prices as CSV");
        let name = "Four-rooms-worked-by-hand-invented-numbers-prices.csv";
        let table = page.downloaded(name);
        let text = String::from_utf8(table.clone()).expect("text");
        assert!(text.contains("end-cap") && text.contains("6.25"), "{text}");

        type_all(page, &[("End cap", ""), ("Coupling", "")]);
        let folder = tempfile::tempdir().expect("the temporary folder is writable");
        let file = folder.path().join("prices.csv");
        fs::write(&file, &table).expect("it can be written");
        page.give_file("Open CSV", &file);
        page.wait("the prices come back", || match page.value_of("End cap").as_str() {
            "6.25" => Ok(()),
            other => Err(other.to_owned()),
        });
        assert_eq!(page.value_of("Coupling"), "1,75");

        // A file that is no list says so and changes nothing.
        fs::write(&file, "no,list\n\"open").expect("it can be written");
        page.give_file("Open CSV", &file);
        page.wait_for(".banner.loud[role=alert]");
        assert_eq!(page.value_of("End cap"), "6.25");
    });
}

#[test]
fn a_damaged_list_is_kept_and_handed_out() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let damaged = "key,price\n\"never closed";
        page.script("localStorage.setItem(...arguments)", vec![json!(LIST), json!(damaged)]);
        page.go(Place::Prices);
        page.wait_for(".banner.loud[role=alert]");
        type_all(page, &[("End cap", "6.25")]);
        page.press("Keep these prices for other jobs");
        page.settle();
        assert_eq!(kept(page), json!(damaged), "not written over before it is wished");
        page.press("Download what is stored");
        assert_eq!(page.downloaded("finrun-damaged-prices.csv"), damaged.as_bytes());
        page.press("Keep these prices instead");
        page.wait_until_gone("Download what is stored");
        assert!(kept(page).as_str().is_some_and(|list| list.contains("6.25")));
    });
}

fn kept(page: &Page) -> Value {
    page.script("return localStorage.getItem(arguments[0])", vec![json!(LIST)])
}
