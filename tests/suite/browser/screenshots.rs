//! Pictures and prints of every page in target/browser, for people to look at.

use std::fs;

use super::jobs::whole;
use super::looks::Theme;
use super::open_to_all::{STATES, open, show};
use super::page::View;
use super::place::Place;
use super::visit;

#[test]
fn every_page_is_pictured_and_none_is_blank() {
    let job = whole();
    let rooms = [job.kitchen, job.attic];
    for view in [View::Phone, View::Desk] {
        visit(view, |page| {
            page.script("document.documentElement.style.background = '#808080'", vec![]);
            let blank = fs::metadata(page.screenshot("blank")).expect("it is kept").len();
            let keep = |name: &str, theme: Theme| {
                let name = format!("{name}-{view:?}-{theme:?}").to_lowercase();
                let size = fs::metadata(page.screenshot(&name)).expect("it is kept").len();
                assert!(size > 5 * blank, "{name}: {size} bytes, a blank one has {blank}");
            };
            page.open("/");
            page.wait_for("html[data-boot=started]");
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                keep("start", theme);
            }
            page.open_job(&job.text, Place::Rooms);
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                for place in Place::without_rooms().chain(rooms) {
                    page.go(place);
                    page.wait_for(".plate b");
                    keep(&place.word(), theme);
                }
            }
            page.go(Place::Climate);
            page.type_into("ZIP code or town", "05401");
            page.leave();
            page.wait_for(".stations-found li");
            keep("stations", Theme::Dark);
        });
    }
}

/// Whole pages, all that opens being open: what is long, and what errors look like.
#[test]
fn every_state_is_pictured_from_top_to_bottom() {
    for (view, theme) in [(View::Phone, Theme::Light), (View::Desk, Theme::Dark)] {
        visit(view, |page| {
            page.emulate(theme);
            for state in STATES {
                for place in open(page, state) {
                    show(page, state, place);
                    let name = format!("all-{state:?}-{}-{view:?}", place.word()).to_lowercase();
                    let size = fs::metadata(page.picture_of_all(&name)).expect("it is kept").len();
                    assert!(size > 20_000, "{name}: {size} bytes");
                }
            }
        });
    }
}

#[test]
fn every_station_prints() {
    let job = whole();
    visit(View::Desk, |page| {
        page.open_job(&job.text, Place::Rooms);
        for place in Place::STATIONS.into_iter().chain([
            Place::Certainty,
            Place::Bills,
            Place::Install,
            Place::Commission,
        ]) {
            page.go(place);
            page.wait_for(".plate b");
            let pdf = fs::read(page.print_pdf(&place.word())).expect("the print is kept");
            let pdf = String::from_utf8_lossy(&pdf);
            // Each page is an object of its own, unlike the tree of pages.
            let pages = pdf.matches("/Type /Page\n").count();
            assert!((1..10).contains(&pages), "{place:?} prints on {pages} pages");
            assert!(pdf.contains("/FontDescriptor"), "{place:?} prints without a letter");
        }
    });
}
