//! The houses to look around in: files of the page's own, there without a server too.

use std::fs;

use serde_json::Value;

use super::page::View;
use super::{path_from, visit};

const DEMOS: [(&str, &str); 3] = [
    ("Bungalow on a slab", "bungalow"),
    ("Two storeys, basement, garage and attic", "two-storey"),
    ("Cottage over a crawl space", "cottage"),
];

/// O1.
#[test]
fn every_demo_opens_whole_and_without_a_server() {
    let file = |name: &str| -> Value {
        let path = path_from("FINRUN_DIST").join("demo").join(name).with_extension("json");
        let text = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path:?}: {error}"));
        serde_json::from_str(&text).expect("a job file")
    };
    visit(View::Phone, |page| {
        page.open("/");
        for (count, (label, name)) in DEMOS.iter().enumerate() {
            page.press(label);
            page.wait_for_text("Rooms, in the order");
            page.wait_for(".plate b");
            let rooms = file(name)["job"]["rooms"].as_array().map_or(0, Vec::len);
            assert_eq!(page.texts_of("ol.rooms > li").len(), rooms, "{name}");
            assert_eq!(page.texts_of(".mend"), [""; 0], "{name} has nothing to mend");
            let title = file(name)["job"]["name"].as_str().unwrap_or_default().to_owned();
            assert_eq!(page.value_of("Name of the job"), title);
            if count == 0 {
                page.wait_for("html[data-offline=ready]");
                page.server.stop();
            }
            page.open("/#/");
            page.wait_for(".jobs");
            assert_eq!(page.texts_of(".jobs > li").len(), count + 1);
        }
    });
}
