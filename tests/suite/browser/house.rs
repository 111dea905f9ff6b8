//! The main job as a person does it on a phone: a house of four rooms, typed from nothing, every
//! figure as `solve` has it, in both units, without a server, and on another day.

use std::collections::BTreeMap;

use serde_json::json;

use super::figures::{compare, compare_all};
use super::page::{Page, View};
use super::place::Place;
use super::solved::solve;
use super::visit;

/// O1.
#[test]
fn a_house_is_typed_solved_and_kept_without_a_server() {
    visit(View::Phone, |page| {
        page.open("/");
        page.press("New job");
        type_house(page);
        type_rooms(page);
        type_loop(page);
        page.wait_until_saved();

        let solved = solve(page);
        assert_eq!(solved.rooms().len(), 4);
        let compared = compare_all(page, &solved);
        assert!(compared > 150, "only {compared} figures were seen");
        assert_no_room_is_trivial(&solved.design);

        let places = solved.places();
        let typed = boxes(page, &places);
        for text in ["-8", "12ft 6in", "3.5 m", "3' 6 1/2\"", "7’6½”", "48 in", "150 m", "0,4"]
        {
            assert!(typed.values().any(|held| held == text), "{text} in {typed:?}");
        }
        page.press("Units");
        page.wait_until_saved();
        let metric = solve(page);
        assert_eq!(metric.design, solved.design, "units change nothing that is calculated");
        compare_all(page, &metric);
        assert_ne!(boxes(page, &places), typed);
        page.press("Units");
        page.wait_until_saved();
        assert_eq!(boxes(page, &places), typed, "what was typed is what stands there again");

        page.wait_for("html[data-offline=ready]");
        page.server.stop();
        page.reload();
        compare(page, &solve(page), Place::Loop);
        assert_eq!(boxes(page, &places), typed);

        a_longer_room_loses_more(page);
        let address = page.script("return location.hash", vec![]);
        page.close_and_reopen();
        page.open(&format!("/{}", address.as_str().unwrap_or_default()));
        page.wait_for(".plate");
        let again = solve(page);
        assert!(again.design["load_w"].as_f64() > solved.design["load_w"].as_f64());
        compare_all(page, &again);
    });
}

fn type_house(page: &Page) {
    page.type_into("Name of the job", "Birch Road 7");
    page.type_into("Outdoor temperature on the design day", "8");
    page.press("Change the sign of Outdoor temperature");
    assert_eq!(page.value_of("Outdoor temperature on the design day"), "-8");
    page.type_into("Room temperature", "70");
    page.choose("How tight is the house?", "Leaky: draughts near windows and baseboards in wind");
    page.press("Place and climate");
    page.type_into("Height above sea level", "150 m");
    page.press("Back to Rooms");
}

pub(super) fn type_all(page: &Page, fields: &[(&str, &str)]) {
    for (label, text) in fields {
        page.type_into(label, text);
        page.leave();
    }
}

fn add_room(page: &Page, name: &str, sizes: &[(&str, &str)]) {
    page.type_into("Name of the new room", name);
    page.press("Add a room");
    page.wait_for_text("Walls, ceiling, floor");
    type_all(page, sizes);
}

fn add_wall(page: &Page, side: &str, length: &str) {
    page.press("Add an outside wall");
    page.within("Wall", || {
        page.type_into("Which wall", side);
    });
    page.within(&format!("{side} wall"), || type_all(page, &[("Length", length)]));
}

fn add_ceiling_and_floor(page: &Page, below: &str) {
    page.press("Add a ceiling");
    page.within("Ceiling", || page.choose("Built like", "Ceiling under attic, R-19"));
    page.press("Add a floor");
    page.within("Floor", || {
        assert_eq!(page.value_of("Behind it"), "Ground");
        page.choose("Behind it", "Unheated, temperature known or guessed");
        type_all(page, &[("Temperature behind it", below)]);
    });
}

fn type_rooms(page: &Page) {
    let (length, width, height) = ("Floor, length", "Floor, width", "Ceiling height");

    add_room(page, "Kitchen", &[(length, "12ft 6in"), (width, "3.5 m"), (height, "7’6½”")]);
    add_wall(page, "North", "12ft 6in");
    page.within("North wall", || {
        // Before there are windows, whose lists have the same name.
        page.choose("Built like", "Wood frame 2×4, R-13 batt");
        page.press("Add a window");
        page.within("Window", || {
            type_all(
                page,
                &[("Width", "3' 6 1/2\""), ("Height", "48 in"), ("From the left", "1'")],
            );
        });
        page.press("Add a door");
        page.within("Door", || {
            type_all(page, &[("Width", "3"), ("Height", "6' 8\""), ("From the left", "2,8 m")]);
            page.choose("Built like", "Wood door");
        });
    });
    add_wall(page, "East", "350cm");
    add_ceiling_and_floor(page, "50");
    page.press("Pipe to this room");
    type_all(page, &[("Pipe from the room before", "14"), ("Elbows on it", "5")]);
    page.press("Done with this room");

    add_room(page, "Living room", &[(length, "18' 6\""), (width, "13.5")]);
    add_wall(page, "Street", "18' 6\"");
    page.within("Street wall", || {
        page.choose("Built like", "I know the U-value");
        type_all(page, &[("U-value", "0.085")]);
        page.press("Add a window");
        page.within("Window", || type_all(page, &[("Width", "6"), ("Height", "4' 6")]));
    });
    add_ceiling_and_floor(page, "50");
    page.press("Done with this room");

    // Warmer than the room behind its wall.
    add_room(page, "Bath", &[(length, "8"), (width, "6' 3\"")]);
    page.press("Shape, temperature and air");
    type_all(page, &[("Temperature of this room", "75"), ("Air changes of this room", "0,4")]);
    add_wall(page, "West", "6' 3\"");
    page.press("Add an inside wall");
    page.within("Wall", || {
        page.choose("Behind it", "Room: Living room");
        type_all(page, &[("Length", "8"), ("Which wall", "Parlour side")]);
    });
    add_ceiling_and_floor(page, "10 °C");
    page.press("Done with this room");

    add_room(page, "Bedroom", &[(length, "132 in"), (width, "10' 0\"")]);
    add_wall(page, "South", "11");
    page.within("South wall", || {
        page.press("Add a window");
        page.within("Window", || type_all(page, &[("Width", "1,1 m"), ("Height", "4")]));
    });
    add_ceiling_and_floor(page, "50");
    page.press("Done with this room");
    page.wait_for_text("Rooms, in the order");
}

fn type_loop(page: &Page) {
    page.go(Place::Lengths);
    for length in ["9 ft", "10 ft"] {
        page.press(length);
    }
    type_all(page, &[("Rated output", "580")]);
    page.go(Place::Piping);
    page.choose("Tube of the elements", "½ in copper, type L");
    page.choose("Tube of the elements", "¾ in copper, type L");
    page.go(Place::Loop);
    type_all(page, &[("Supply water from the boiler", "170")]);
}

/// Every kind of path is there, one of them between rooms, and every room has pieces.
fn assert_no_room_is_trivial(design: &serde_json::Value) {
    let text = design.to_string();
    for part in ["\"wall\"", "\"window\"", "\"door\"", "\"ceiling\"", "\"floor\"", "\"neighbour\""]
    {
        assert!(text.contains(part), "{part} in {text}");
    }
    for room in design["rooms"].as_array().into_iter().flatten() {
        assert_ne!(room["element"]["choice"]["nominal_m"], json!(0.0), "{room}");
    }
}

/// What stands in every box and list of every page.
fn boxes(page: &Page, places: &[Place]) -> BTreeMap<String, String> {
    let read = "return [...document.querySelectorAll('main input[id], main select[id]')]
        .map((box) => [box.id, box.type === 'checkbox' ? String(box.checked) : box.value])";
    let mut all = BTreeMap::new();
    for place in places {
        page.go(*place);
        page.unfold();
        let held: Vec<(String, String)> =
            serde_json::from_value(page.script(read, vec![])).expect("the script answers so");
        all.extend(held.into_iter().map(|(id, held)| (format!("{place:?} {id}"), held)));
    }
    all
}

fn a_longer_room_loses_more(page: &Page) {
    page.go(Place::Rooms);
    page.press("Living room");
    let before = page.text_of("[data-figure='plate.load']");
    type_all(page, &[("Floor, length", "21' 6\"")]);
    page.wait_until_saved();
    let solved = solve(page);
    let living = solved.rooms()[1]["room"].as_u64().expect("a number");
    compare(page, &solved, Place::Room(living));
    assert_ne!(page.text_of("[data-figure='plate.load']"), before);
}
