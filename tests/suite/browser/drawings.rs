//! The sheets of a job: all there, each with a name, each on a page of its own in print.

use std::fs;

use super::axe::axe;
use super::page::View;
use super::place::Place;
use super::visit;

const TWO_STOREY: &str = include_str!("../../../public/demo/two-storey.json");

#[test]
fn every_sheet_is_named_and_prints_on_a_page_of_its_own() {
    visit(View::Desk, |page| {
        page.open_job(TWO_STOREY, Place::Loop);
        page.press("Drawings");
        page.wait_for(".sheet svg");
        assert_eq!(
            page.texts_of(".sheets h2"),
            ["Plans", "Piping", "Walls, as seen from the room"]
        );
        let titles = page.texts_of(".sheet h3");
        for title in [
            "First floor, plan with the way of the water",
            "Second floor, plan with the way of the water",
            "Piping schematic",
            "Boiler-room piping",
            "Kitchen, West wall",
        ] {
            assert!(titles.iter().any(|shown| shown == title), "{title} is not among {titles:?}");
        }
        let script = "return [...document.querySelectorAll('.sheet')]
            .filter((sheet) => sheet.querySelectorAll('svg[role=img][aria-label]').length === 1).length";
        let named = page.script(script, Vec::new());
        assert_eq!(named.as_u64(), Some(titles.len() as u64));
        let pdf = fs::read(page.print_pdf("drawings")).expect("the print is kept");
        // Each page is an object of its own, unlike the tree of pages.
        let pages = String::from_utf8_lossy(&pdf).matches("/Type /Page\n").count();
        assert_eq!(pages, titles.len(), "{titles:?}");
    });
}

/// What a sheet shows follows what is typed, at once and in the other units.
#[test]
fn sheets_follow_the_job() {
    visit(View::Phone, |page| {
        page.open_job(TWO_STOREY, Place::Drawings);
        page.wait_for(".sheet svg");
        assert_eq!(page.sideways(), "");
        assert!(page.texts_of(".sheet text").iter().any(|text| text == "14 ft"));
        page.press("Units");
        page.wait_for_text("4.27 m");
        assert_eq!(axe(page).iter().map(ToString::to_string).collect::<Vec<_>>(), [""; 0]);
    });
}
