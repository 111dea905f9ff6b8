//! The page as one file, opened from a disk with no server behind it.

use super::page::View;
use super::place::Place;
use super::{path_from, visit};

/// O12.
#[test]
fn the_page_as_one_file_does_it_all_but_install() {
    visit(View::Phone, |page| {
        page.server.stop();
        let file = path_from("FINRUN_DIST").join("finrun.html");
        page.open_file(&file);
        page.wait_for("html[data-boot=started]");
        page.wait_for_text("Ready to work offline");

        // A demo is one of the files that are packed in.
        page.press("Bungalow on a slab");
        page.wait_for_text("Rooms, in the order");
        let rooms = page.texts_of("ol.rooms > li").len();
        assert!(rooms > 3, "{rooms}");
        // So is the table of stations.
        page.go(Place::Climate);
        page.type_into("ZIP code or town", "04101");
        page.wait_for_text("Portland");

        page.go(Place::Rooms);
        page.type_into("Name of the job", "From a stick");
        page.wait_until_saved();
        page.go(Place::Share);
        page.wait_for_text("This page was opened from a file");

        page.reload();
        page.go(Place::Lengths);
        page.wait_for_text("From a stick");
        page.wait_for("[data-figure=element]");
    });
}
