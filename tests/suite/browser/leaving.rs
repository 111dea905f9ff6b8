//! A page is left in the middle of typing, by its address or by the way back: nothing stops, and
//! nothing typed is lost.

use serde_json::json;

use super::jobs::whole;
use super::page::{Page, View};
use super::place::Place;
use super::visit;

/// What is typed into a box of each page that has boxes.
const TYPED: [(Place, &str, &str); 9] = [
    (Place::Rooms, "house.outdoors", "-4"),
    (Place::Climate, "house.altitude", "200"),
    (Place::Air, "air.blower-flow", "2300"),
    (Place::Ground, "ground.edge-r", "7.5"),
    (Place::Certainty, "certainty.air", "30"),
    (Place::Lengths, "element.output", "590"),
    (Place::Loop, "circuit.supply", "172"),
    (Place::Plant, "plant.fill", "14"),
    (Place::Commission, "measured.outdoors", "31"),
];

fn focus(page: &Page, id: &str) {
    page.wait(&format!("the box {id}"), || {
        let script = "const box = document.getElementById(arguments[0]);
            box?.focus(); box?.select(); return document.activeElement === box";
        match page.script(script, vec![json!(id)]) == json!(true) {
            true => Ok(()),
            false => Err("it does not take the focus".to_owned()),
        }
    });
}

fn typed(page: &Page, place: Place, id: &str, text: &str) {
    page.go(place);
    focus(page, id);
    page.press_keys(text);
    let held = page.script("return document.activeElement.value", vec![]);
    assert_eq!(held, json!(text), "{place:?}, {id}");
}

/// Neither stopped nor empty, with nothing in the console.
#[track_caller]
fn goes_on(page: &Page, after: &str) {
    page.settle();
    page.wait_for(".stations");
    page.wait_for(".plate b");
    let state = page.script("return document.documentElement.dataset.boot", vec![]);
    assert_eq!(state, json!("started"), "{after}");
    let errors = page.console_errors();
    assert!(errors.is_empty(), "{after}: {errors:?}");
}

#[test]
fn a_page_may_be_left_with_the_focus_in_a_box() {
    let job = whole();
    visit(View::Phone, |page| {
        page.open_job(&job.text, Place::Rooms);
        let bill = page.script(
            "return JSON.parse(localStorage.getItem('finrun.job.given')).job.bills.list[0].id",
            vec![],
        );
        let Place::Room(kitchen) = job.kitchen else { panic!("a room") };
        let length = format!("room-{kitchen}.floor-length");
        let amount = format!("bill-{bill}.amount");
        let mut all = TYPED.to_vec();
        all.push((job.kitchen, &length, "21"));
        all.push((Place::Bills, &amount, "96"));

        for (place, id, text) in &all {
            // By the address.
            typed(page, *place, id, text);
            page.go(if *place == Place::Loop { Place::Lengths } else { Place::Loop });
            goes_on(page, &format!("{id}, another address"));
            // By the way back, and forward again.
            typed(page, *place, id, text);
            page.script("history.back()", vec![]);
            goes_on(page, &format!("{id}, back"));
            page.script("history.forward()", vec![]);
            goes_on(page, &format!("{id}, forward"));
            // To another part of the page that has no job.
            typed(page, *place, id, text);
            page.script("location.hash = '#/safety'", vec![]);
            page.settle();
            page.wait_for_text("Before you build");
            assert_eq!(page.console_errors(), [""; 0], "{id}, safety");
            page.script("history.back()", vec![]);
            goes_on(page, &format!("{id}, back from safety"));
        }
        // All of it was kept.
        for (place, id, text) in &all {
            page.go(*place);
            let script = "return document.getElementById(arguments[0]).value";
            assert_eq!(page.script(script, vec![json!(id)]), json!(text), "{place:?}, {id}");
        }
    });
}

#[test]
fn a_thing_may_go_with_the_focus_in_its_box() {
    let job = whole();
    visit(View::Phone, |page| {
        page.open_job(&job.text, Place::Rooms);
        // Undo takes the room away under its own page.
        page.type_into("Name of the new room", "Study");
        page.press("Add a room");
        page.wait_for_text("Walls, ceiling, floor");
        page.type_into("Floor, length", "9");
        // A press by script leaves the focus where it is.
        for _ in 0..2 {
            page.script("document.querySelector('[aria-label=Undo]').click()", vec![]);
        }
        page.wait_for_text("This room is gone");
        goes_on(page, "undone");
        // A layer, a bill and an assembly are removed while one of their boxes holds the focus.
        page.go(Place::Assemblies);
        page.press("Bedroom wall, filled");
        page.within("Layer 3", || page.type_into("Thickness", "1"));
        page.press("Remove Layer 3");
        goes_on(page, "a layer is removed");
        page.within("Layer 2", || page.type_into("Thickness", "4"));
        page.press("Remove Bedroom wall, filled");
        goes_on(page, "an assembly is removed");
        page.go(Place::Bills);
        // Half a date.
        let date = page.script("return document.querySelector('[type=date]').id", vec![]);
        focus(page, date.as_str().unwrap_or_default());
        page.press_keys("0");
        page.go(Place::Loop);
        goes_on(page, "half a date");
        page.script("history.back()", vec![]);
        goes_on(page, "back to half a date");
        page.within("Bill 5", || page.type_into("Amount", "23"));
        page.press("Remove Bill 1");
        page.press("Remove Bill 4");
        goes_on(page, "bills are removed");
        page.wait_until_gone("Bill 4");
        assert_eq!(page.texts_of("main fieldset").len(), 3);
    });
}
