//! A place is found by its ZIP code, also without a network, and gives the design temperature until
//! another is typed.

use finrun_engine::climate::{Found, Table, search};
use finrun_engine::quantity::{Length, System};
use finrun_text as text;
use serde_json::Value;

use super::figures::compare;
use super::jobs::burlington;
use super::page::{Page, View};
use super::place::Place;
use super::solved::solve;
use super::visit;
use crate::support::FOUR_ROOMS;

const ZIP: &str = "ZIP code or town";
const OUTDOORS: &str = "Outdoor temperature on the design day";
/// What is read from its box, or assumed while it is blank.
const READ: &str = "[id='house.outdoors-read']";
const LOAD: &str = "[data-figure='plate.load']";

fn stored(page: &Page) -> Value {
    page.wait_until_saved();
    serde_json::from_str(&page.stored("given")).expect("a job file")
}

#[track_caller]
fn reads(page: &Page, says: &str) {
    page.wait(&format!("{says} beside the outdoor temperature"), || {
        let seen = page.texts_of(READ).join(" ");
        if seen == says { Ok(()) } else { Err(format!("{seen:?} stands there")) }
    });
}

/// The stations listed, by name, in their order.
fn listed(page: &Page) -> Vec<String> {
    page.texts_of(".stations-found li b")
}

#[test]
fn a_station_gives_the_design_temperature_until_another_is_typed() {
    let station = burlington();
    let [usual, stricter] = [station.design_99(), station.design_996()]
        .map(|t| text::value(t, System::Us).replace('\u{a0}', " "));
    assert_ne!(usual, stricter);
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Climate);
        page.type_into(OUTDOORS, "");
        page.leave();
        page.type_into(ZIP, "05401");
        page.press("Choose Burlington International AP, VT");
        reads(page, &format!("assumed {usual}"));
        page.wait_for_text("Chosen station");
        compare(page, &solved(page), Place::Climate);
        let load = page.text_of(LOAD);

        page.choose("Design temperature", "99.6 % of hours are warmer (stricter)");
        reads(page, &format!("assumed {stricter}"));
        assert_ne!(page.text_of(LOAD), load);

        page.type_into(OUTDOORS, "5");
        page.leave();
        page.wait(&format!("the load at another temperature than {load}"), || {
            if page.text_of(LOAD) == load { Err(load.clone()) } else { Ok(()) }
        });
        assert_eq!(stored(page)["job"]["house"]["outdoors"]["text"], "5");
        compare(page, &solved(page), Place::Climate);
        page.type_into(OUTDOORS, "");
        page.leave();
        reads(page, &format!("assumed {stricter}"));
        page.choose("Design temperature", "99 % of hours are warmer (usual)");
        assert_eq!(page.text_of(LOAD), load);

        page.press("Choose none");
        page.wait_for_text("No station chosen yet");
        reads(page, "");
        assert_eq!(stored(page)["job"]["station"], Value::Null);
        page.press("Undo");
        reads(page, &format!("assumed {usual}"));
        assert_eq!(page.text_of(LOAD), load);
    });
}

fn solved(page: &Page) -> super::solved::Solved {
    page.wait_until_saved();
    solve(page)
}

#[test]
fn a_zip_code_that_is_none_says_so_and_takes_nothing_away() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Climate);
        page.type_into(ZIP, "05401");
        page.press("Choose Burlington International AP, VT");
        let before = stored(page);
        let load = page.text_of(LOAD);
        for (typed, says) in [
            ("00000", "No ZIP code begins with 000. Correct it, or type a town's name."),
            ("0540", "A ZIP code has five digits; this has 4. Type all five, or a town's name."),
            ("054011", "A ZIP code has five digits; this has 6."),
            ("Nowhere at all", "No station of that name."),
        ] {
            page.type_into(ZIP, typed);
            page.wait_for_text(says);
            assert_eq!(listed(page), [""; 0], "{typed}");
            assert_eq!(page.value_of(ZIP), typed);
            assert_eq!(page.text_of(LOAD), load);
        }
        assert_eq!(stored(page), before);
        // Told to those who cannot see it, too.
        let alerts = page.texts_of("[role=alert]");
        assert_eq!(alerts.len(), 1, "{alerts:?}");
        page.type_into(ZIP, "burlington vt");
        page.wait_for_text("Chosen station");
        assert_eq!(page.texts_of("[role=alert]"), [""; 0]);
        assert!(listed(page)[0].starts_with("Burlington International"), "{:?}", listed(page));
    });
}

#[test]
fn stations_are_found_without_a_server_after_one_visit() {
    let table = Table::parse(include_str!("../../../public/climate.txt")).expect("the table");
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.wait_for("html[data-offline=ready]");
        page.server.stop();
        page.reload();
        page.press("Place and climate");
        for zip in ["05401", "59715", "99701"] {
            page.type_into(ZIP, zip);
            // The house stands at sea level.
            let Found::Zip { hits, .. } = search(&table, zip, Some(Length::ZERO)) else {
                panic!("{zip}")
            };
            let expected: Vec<_> =
                hits.iter().map(|hit| text::station_name(&hit.station)).collect();
            page.wait(&format!("the stations near {zip}"), || match listed(page) {
                seen if seen == expected => Ok(()),
                seen => Err(format!("{seen:?}, not {expected:?}")),
            });
        }
    });
}
