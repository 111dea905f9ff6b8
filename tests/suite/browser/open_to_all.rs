//! Every page for everyone: the rules of axe, no sideways scroll, targets for thumbs and gloves, and a
//! focus that is never out of sight.

use fantoccini::key::Key;
use serde::Deserialize;
use serde_json::json;

use super::axe::{axe, axe_on_colours};
use super::jobs::{whole, whole_with_errors};
use super::looks::Theme;
use super::page::{Page, View};
use super::place::Place;
use super::visit;

#[derive(Clone, Copy, Debug)]
pub(super) enum State {
    /// A job of which nothing is typed but the name of a room.
    Empty,
    /// A job in which some things cannot be read.
    Errors,
    Results,
}

pub(super) const STATES: [State; 3] = [State::Empty, State::Errors, State::Results];

/// Opens a job in a state, and tells which of its pages to look at: every kind.
pub(super) fn open(page: &Page, state: State) -> Vec<Place> {
    let job = match state {
        State::Empty => {
            page.open("/");
            page.press("New job");
            page.press("Add: garage");
            page.wait_for_text("Walls, ceiling, floor");
            page.go(Place::Rooms);
            page.type_into("Name of the new room", "Attic");
            page.press("Add a room");
            page.press("Add an outside wall");
            page.press("Done with this room");
            page.go(Place::Assemblies);
            page.press("Add an assembly");
            page.go(Place::Bills);
            page.press("Add a bill");
            return Place::without_rooms().chain([Place::Room(1), Place::Room(2)]).collect();
        }
        State::Errors => whole_with_errors(),
        State::Results => whole(),
    };
    page.open_job(&job.text, Place::Rooms);
    Place::without_rooms().chain([job.kitchen, job.den, job.attic, job.crawl_space]).collect()
}

/// Goes to a page and opens all that opens; a search for stations finds what fits the state.
pub(super) fn show(page: &Page, state: State, place: Place) {
    page.go(place);
    page.unfold();
    match (place, state) {
        (Place::Climate, State::Errors) => {
            page.type_into("ZIP code or town", "0540");
            page.wait_for_text("this has 4");
        }
        (Place::Climate, State::Results) => {
            page.type_into("ZIP code or town", "05401");
            page.wait_for(".stations-found li");
        }
        _ => {}
    }
    page.leave();
    page.settle();
}

/// Does something on every page in every state, and at last says all that was found.
#[track_caller]
fn everywhere(view: View, find: impl Fn(&Page) -> Vec<String>) {
    let mut found = Vec::new();
    visit(view, |page| {
        page.open("/");
        page.wait_for("main h1");
        found.extend(find(page).into_iter().map(|what| format!("no job yet: {what}")));
        for state in STATES {
            for place in open(page, state) {
                show(page, state, place);
                let here = find(page);
                found.extend(here.into_iter().map(|what| format!("{state:?}, {place:?}: {what}")));
            }
        }
        for address in ["/#/", "/#/safety", "/#/about", "/#/words", "/#/open/x"] {
            page.open(address);
            page.wait_for("main h1");
            found.extend(find(page).into_iter().map(|what| format!("{address}: {what}")));
        }
    });
    assert!(found.is_empty(), "{view:?}\n{}", found.join("\n"));
}

fn breaks_a_rule(page: &Page) -> Vec<String> {
    page.emulate(Theme::Light);
    let mut found: Vec<_> = axe(page).iter().map(|broken| format!("light: {broken}")).collect();
    page.emulate(Theme::Dark);
    found.extend(axe_on_colours(page).iter().map(|broken| format!("dark: {broken}")));
    found
}

#[derive(Deserialize)]
struct Target {
    what: String,
    width: f64,
    height: f64,
}

/// Whatever is touched. A link in the run of a sentence is as high as its line; a box with a label
/// around it, or drawn by it, is as large as that.
const TARGETS: &str = "
    const all = document.querySelectorAll('a[href], button, input, select, summary');
    return [...all].filter((e) => e.checkVisibility({ visibilityProperty: true })).map((e) => {
      const inline = e.tagName === 'A' && getComputedStyle(e).display === 'inline';
      const drawn = ['checkbox', 'file'].includes(e.type) ? e.labels[0] : e;
      const { width, height } = drawn.getBoundingClientRect();
      const what = `${e.tagName.toLowerCase()} ${e.ariaLabel || e.id || e.textContent.trim().slice(0, 30)}`;
      return inline ? null : { what, width, height };
    }).filter(Boolean);";

/// For gloves, where the standard would be content with half of it.
const LEAST: f64 = 48.0;

fn too_wide_or_too_small(page: &Page) -> Vec<String> {
    let mut found = vec![page.sideways()];
    let targets: Vec<Target> =
        serde_json::from_value(page.script(TARGETS, vec![])).expect("the script answers so");
    found.extend(
        targets.iter().filter(|t| t.width.min(t.height) < LEAST - 0.01).map(
            |Target { what, width, height }| format!("{what} is {width:.1} by {height:.1} px"),
        ),
    );
    page.script("document.documentElement.style.fontSize = '200%'", vec![]);
    let large = page.sideways();
    if !large.is_empty() {
        found.push(format!("at twice the size of text, {large}"));
    }
    page.script("document.documentElement.style.fontSize = ''", vec![]);
    found.retain(|what| !what.is_empty());
    found
}

/// The keys that stand under a box while it has the focus must fit too.
const FOCUS_EACH: &str = "
    const widest = [...document.querySelectorAll('.field input')].map((box) => {
      box.focus({ preventScroll: true });
      return [document.documentElement.scrollWidth, box.id];
    }).sort(([a], [b]) => b - a)[0];
    document.activeElement.blur();
    return widest ?? [0, ''];";

fn everything_wrong(page: &Page) -> Vec<String> {
    let mut found = breaks_a_rule(page);
    found.extend(too_wide_or_too_small(page));
    let (width, id): (u32, String) =
        serde_json::from_value(page.script(FOCUS_EACH, vec![])).expect("the script answers so");
    if width > page.view.size().0 {
        found.push(format!("with the focus in {id} the page is {width} px wide"));
    }
    found
}

#[test]
fn nothing_shuts_anyone_out_on_a_narrow_phone() {
    everywhere(View::Narrow, everything_wrong);
}

/// Laid out as on the narrow one, where the rules of axe are held: what is left are the sizes.
#[test]
fn nothing_is_too_wide_or_too_small_on_a_phone() {
    everywhere(View::Phone, too_wide_or_too_small);
}

#[test]
fn nothing_shuts_anyone_out_on_a_desk() {
    everywhere(View::Desk, everything_wrong);
}

/// How much of the focused element the bars that stick hide, and where it stands. The link that skips
/// lies over them; of a table as high as the space between them, or higher, half of that is enough.
const HIDDEN: &str = "
    const focus = document.activeElement;
    if (focus === document.body) return null;
    const { top, bottom } = focus.getBoundingClientRect();
    const ceiling = focus.closest('.stations, .top, .skip')
      ? 0 : Math.max(0, document.querySelector('.stations').getBoundingClientRect().bottom);
    const floor = document.querySelector('.plate').getBoundingClientRect().top;
    const high = focus.matches('.scroll')
      ? 0.5 * Math.min(bottom - top, floor - ceiling) : bottom - top;
    const room = Math.min(high, floor - ceiling);
    const seen = Math.min(bottom, floor) - Math.max(top, ceiling);
    const name = focus.ariaLabel || focus.id || focus.textContent.trim().slice(0, 30);
    return { name, hidden: room - seen };";

#[derive(Debug, Deserialize)]
struct Focus {
    name: String,
    hidden: f64,
}

#[test]
fn the_focus_is_never_under_a_bar() {
    // Back on the narrow one too, where the bars take most of the height.
    let back = format!("{}{}", char::from(Key::Shift), char::from(Key::Tab));
    let on = String::from(char::from(Key::Tab));
    for (view, ways) in [(View::Narrow, vec![&on, &back]), (View::Desk, vec![&on])] {
        visit(view, |page| {
            let mut found = Vec::new();
            for place in open(page, State::Results) {
                show(page, State::Results, place);
                // A key sent there is taken by the driver for the name of a file.
                page.script(
                    "for (const e of document.querySelectorAll('[type=file]')) e.tabIndex = -1",
                    vec![],
                );
                for keys in &ways {
                    let mut seen = 0;
                    while seen < 60 {
                        page.press_keys(keys);
                        let answer = page.script(HIDDEN, vec![]);
                        let Ok(focus) = serde_json::from_value::<Focus>(answer) else { break };
                        if focus.hidden > 1.0 {
                            found.push(format!("{place:?}: {} px of {}", focus.hidden, focus.name));
                        }
                        seen += 1;
                    }
                    // The drawings are looked at; only the bars are touched there.
                    let least = if place == Place::Drawings { 2 } else { 5 };
                    assert!(seen > least, "{place:?}: only {seen} things took the focus");
                }
            }
            assert!(found.is_empty(), "{view:?}: hidden are\n{}", found.join("\n"));
            assert_eq!(page.script("return scrollX", vec![]), json!(0));
        });
    }
}
