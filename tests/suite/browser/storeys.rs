//! A house of two storeys with attic, garage and basement in a few steps, every figure as `solve` has
//! it for the file that is downloaded.

use serde_json::json;

use super::figures::compare_all;
use super::house::type_all;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Solved, solve};
use super::visit;

const LENGTH: &str = "Floor, length";
const WIDTH: &str = "Floor, width";
const SHELL: &str = "Add walls, ceiling and floor";

/// More than this for seven rooms and spaces would be no few steps: judgement.
const FEW: usize = 80;

fn add_space(page: &Page, kind: &str, sizes: [&str; 2]) {
    page.press(&format!("Add: {kind}"));
    page.wait_for_text("Walls, ceiling, floor");
    type_all(page, &[(LENGTH, sizes[0]), (WIDTH, sizes[1])]);
    page.press(SHELL);
    page.press("Done with this room");
}

fn add_room(page: &Page, name: &str, sizes: [&str; 2], storey: Option<&str>) {
    page.type_into("Name of the new room", name);
    page.press("Add a room");
    page.wait_for_text("Walls, ceiling, floor");
    if let Some(storey) = storey {
        page.choose("Storey", storey);
    }
    type_all(page, &[(LENGTH, sizes[0]), (WIDTH, sizes[1])]);
}

fn type_house(page: &Page) {
    page.press("New job");
    page.type_into("Name of the job", "Two storeys");
    page.press("Place and climate");
    page.type_into("ZIP code or town", "05401");
    page.press("Choose Burlington International AP, VT");
    page.press("Back to Rooms");

    add_space(page, "attic", ["32", "24"]);
    add_space(page, "unheated basement", ["32", "24"]);
    add_space(page, "garage", ["24", "12"]);

    // An L: eight by six feet are cut out of its corner.
    add_room(page, "Living room", ["20", "24"], None);
    page.choose("Shape", "L: a rectangle with a corner cut out");
    type_all(page, &[("Cut out of a corner, length", "8"), ("Cut out of a corner, width", "6")]);
    page.press(SHELL);
    page.press("Wall 1");
    page.within("Wall 1", || {
        page.press("Add a window");
        page.within("Window", || type_all(page, &[("Width", "6"), ("Height", "4")]));
    });
    page.press("Done with this room");

    add_room(page, "Kitchen", ["12", "16"], None);
    page.press(SHELL);
    page.press("Wall 2");
    page.within("Wall 2", || page.choose("Behind it", "Garage"));
    page.press("Done with this room");

    add_room(page, "Bedroom", ["18", "14"], Some("Second floor"));
    page.press(SHELL);
    page.press("Done with this room");

    add_room(page, "Bath", ["9", "8"], None);
    page.press(SHELL);
    page.press("Done with this room");
    page.wait_for_text("Rooms, in the order");
}

/// What the buttons are to have made of it.
fn assert_whole(solved: &Solved) {
    let file = serde_json::to_value(&solved.draft).expect("a draft is JSON");
    let behind = |room: &serde_json::Value, kind: &str| -> Vec<String> {
        let surfaces = room["surfaces"].as_array().cloned().unwrap_or_default();
        let alike = surfaces.iter().filter(|surface| surface["kind"] == kind);
        alike.map(|surface| surface["behind"].to_string()).collect()
    };
    let space = |index: usize| json!({ "room": file["spaces"][index]["id"] }).to_string();
    let outdoors = json!("outdoors").to_string();
    let ground = json!("ground").to_string();
    let (attic, basement, garage) = (space(0), space(1), space(2));
    let rooms: Vec<_> = file["rooms"].as_array().cloned().unwrap_or_default();
    let [living, kitchen, bedroom, bath] = rooms.as_slice() else { panic!("{rooms:?}") };

    // The living room was made before there was anything over it.
    assert_eq!(behind(living, "wall"), vec![outdoors.clone(); 6]);
    assert_eq!(behind(living, "floor"), std::slice::from_ref(&basement));
    assert_eq!(behind(living, "ceiling"), std::slice::from_ref(&attic));
    assert_eq!(
        behind(kitchen, "wall"),
        [outdoors.clone(), garage, outdoors.clone(), outdoors.clone()]
    );
    for room in [bedroom, bath] {
        assert_eq!(room["level"], "second");
        assert_eq!(behind(room, "wall").len(), 4);
        assert_eq!(behind(room, "ceiling"), std::slice::from_ref(&attic));
        assert_eq!(behind(room, "floor"), [""; 0], "a heated room lies under it");
    }
    assert_eq!(behind(&file["spaces"][0], "ceiling"), [outdoors]);
    assert_eq!(behind(&file["spaces"][1], "wall"), vec![ground.clone(); 4]);
    assert_eq!(behind(&file["spaces"][1], "floor"), [ground]);
}

#[test]
fn a_house_of_two_storeys_takes_few_steps_and_is_as_solve_has_it() {
    visit(View::Phone, |page| {
        page.open("/");
        type_house(page);
        let steps = page.steps.get();
        assert!(steps <= FEW, "{steps} steps");
        page.wait_until_saved();
        let stored = page.stored(&page.job_key());
        let solved = solve(page);
        assert_whole(&solved);
        assert_eq!(solved.spaces().len(), 3);

        let compared = compare_all(page, &solved);
        assert!(compared > 200, "only {compared} figures were seen");
        // In other units too, and each storey has its plan.
        page.press("Units");
        page.wait_until_saved();
        compare_all(page, &solve(page));
        page.go(Place::HeatLoss);
        let plans = page.texts_of(".plans figcaption");
        assert!(
            matches!(&*plans, [first, second]
                if first.starts_with("First floor") && second.starts_with("Second floor")),
            "{plans:?}"
        );
        page.press("Units");
        page.wait_until_saved();

        page.open("/#/");
        page.press("Download Two storeys");
        let file = page.downloaded("Two-storeys.finrun.json");
        assert_eq!(String::from_utf8_lossy(&file), stored, "the file is what was solved");
    });
}
