//! The whole job by the keyboard alone: Tab, Enter and typing, nothing pointed at.

use super::figures::compare;
use super::page::{Page, View};
use super::place::Place;
use super::solved::solve;
use super::visit;
use fantoccini::key::Key;

/// F7, undo and redo by keys.
#[test]
fn a_room_is_entered_solved_and_undone_by_keys_alone() {
    visit(View::Desk, |page| {
        page.open("/");
        page.wait_for("html[data-boot=started]");
        enter(page, "New job");
        page.wait_for_text("Rooms, in the order");
        type_at(page, "Outdoor temperature on the design day", "8");
        type_at(page, "Name of the new room", "Kitchen");
        enter(page, "Add a room");
        page.wait_for_text("Walls, ceiling, floor");
        type_at(page, "Floor, length", "14");
        type_at(page, "Floor, width", "11");
        enter(page, "Add an outside wall");
        type_at(page, "Length", "14");
        enter(page, "Add a window");
        type_at(page, "Width", "4");
        type_at(page, "Height", "3");
        enter(page, "Add a ceiling");
        page.wait_until_saved();

        for place in [Place::HeatLoss, Place::Lengths, Place::Loop] {
            let station = match place {
                Place::HeatLoss => "Heat loss",
                Place::Lengths => "Lengths",
                _ => "Loop",
            };
            enter(page, station);
            page.settle();
            assert!(compare(page, &solve(page), place) > 3, "{station}");
        }
        // What folds opens and closes where the focus stands.
        let is_open = || page.script("return document.querySelector('.terms').open", vec![]);
        tab_to(page, "Words on this page");
        let before = is_open();
        page.press_key(Key::Enter);
        assert_ne!(is_open(), before);
        page.press_key(Key::Enter);
        assert_eq!(is_open(), before);

        enter(page, "Rooms");
        page.wait_for_text("Kitchen");
        enter(page, "Undo");
        page.wait_until_saved();
        assert_eq!(solve(page).rooms()[0]["load"]["paths"].as_array().map(Vec::len), Some(3));
    });
}

/// Tabs on until the focus stands at what is called so; once round the page at most.
#[track_caller]
fn tab_to(page: &Page, name: &str) {
    let mut met = Vec::new();
    for _ in 0..250 {
        let here = page.script(FOCUSED, vec![]).as_str().unwrap_or_default().to_owned();
        if here == name || here.strip_prefix(name).is_some_and(|rest| rest.starts_with([',', ' ']))
        {
            return;
        }
        met.push(here);
        page.press_key(Key::Tab);
    }
    page.fail(&format!("no way to {name:?} by Tab, only to {met:?}"));
}

/// The name of what has the focus, which must be seen to have it.
const FOCUSED: &str = "
    const here = document.activeElement;
    if (!here || here === document.body || here.tagName === 'MAIN') return '';
    const label = here.getAttribute('aria-label') ?? here.labels?.[0]?.innerText ?? here.innerText;
    const seen = getComputedStyle(here);
    if (parseFloat(seen.outlineWidth) < 2 || seen.outlineStyle === 'none') return 'no outline: ' + label;
    return (label ?? '').replace(/\\s+/g, ' ').trim();
";

#[track_caller]
fn enter(page: &Page, name: &str) {
    tab_to(page, name);
    page.press_key(Key::Enter);
    page.settle();
}

#[track_caller]
fn type_at(page: &Page, name: &str, text: &str) {
    tab_to(page, name);
    page.press_keys(text);
}
