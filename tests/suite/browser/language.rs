//! The page in Spanish: as the browser asks for it or by the button at the foot, and nothing of it left
//! in English.

use std::fs;

use finrun_text as text;
use finrun_text::{DecimalMark, Language, speak};
use serde_json::{Value, json};

use super::open_to_all::{State, show};
use super::page::{Page, View};
use super::place::Place;
use super::{path_from, visit_on};
use crate::messages::book::ENGLISH_ONLY;
use crate::support::open;

/// On a phone that is set to languages of which the first is a Spanish. What the test looks for is in
/// Spanish too.
fn in_spanish(languages: &'static str, mark: DecimalMark, act: impl FnOnce(&mut Page)) {
    visit_on(Page::start_in(View::Phone, languages), |page| {
        speak(Language::Spanish, mark);
        page.open("/");
        page.press(text::demo_two_storey());
        page.wait_for(".plate b");
        act(page);
    });
}

fn spoken(page: &Page) -> Value {
    page.script("return document.documentElement.lang", vec![])
}

#[test]
fn a_browser_set_to_spanish_is_spoken_to_in_it_with_the_decimals_of_its_country() {
    let languages =
        [("es-ES,es,en", DecimalMark::Comma, "3,1"), ("es-MX,es,en", DecimalMark::Point, "3.1")];
    for (languages, mark, expected) in languages {
        in_spanish(languages, mark, |page| {
            assert_eq!(spoken(page), json!("es"));
            page.wait_for_text("Habitaciones, en el orden");
            // What this country makes of a number is asked of the browser.
            let script = "return (3.1).toLocaleString(navigator.language)";
            assert_eq!(page.script(script, vec![]), json!(expected), "{languages}");
            page.go(Place::Loop);
            let flow = page.text_of("[data-figure='flow']");
            let between: String = flow.chars().filter(|c| ".,".contains(*c)).collect();
            assert_eq!(between, expected[1..2], "{languages}: {flow}");
        });
    }
}

#[test]
fn the_button_at_the_foot_changes_the_language_for_good_and_nothing_that_was_typed() {
    in_spanish("es-ES,es", DecimalMark::Comma, |page| {
        page.type_into("Temperatura de las habitaciones", "69,5 F");
        page.press("English");
        page.wait_for_text("Rooms, in the order");
        assert_eq!(spoken(page), json!("en"));
        speak(Language::English, DecimalMark::Point);
        assert_eq!(page.value_of("Room temperature"), "69,5 F");
        page.wait_until_saved();
        page.reload();
        page.wait_for_text("Rooms, in the order");
        assert_eq!(spoken(page), json!("en"), "chosen above the browser's languages");
        assert_eq!(page.value_of("Room temperature"), "69,5 F");
        page.press("Español");
        page.wait_for_text("Habitaciones, en el orden");
        assert_eq!(spoken(page), json!("es"));
        assert_eq!(page.value_of("Temperatura de las habitaciones"), "69,5 F");
    });
}

/// All that is seen, and what a screen reader says besides.
const SAID: &str = "
    const said = [document.title, ...document.body.innerText.split('\\n')];
    for (const e of document.querySelectorAll('main *, header *, nav *, footer *, aside *')) {
      if (!e.checkVisibility()) continue;
      for (const name of ['aria-label', 'title', 'alt', 'placeholder'])
        if (e.hasAttribute(name)) said.push(e.getAttribute(name));
      if (['text', 'title', 'desc'].includes(e.localName)) said.push(e.textContent);
    }
    return said;";

/// What is said on the page that holds a word of English or one of `names`.
fn english(page: &Page, names: &[String]) -> Vec<String> {
    let said: Vec<String> =
        serde_json::from_value(page.script(SAID, vec![])).expect("the script answers so");
    assert!(said.len() > 20, "little is said: {said:?}");
    let mut found: Vec<String> = said
        .into_iter()
        .filter(|said| {
            let mut words = said.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase);
            words.any(|word| ENGLISH_ONLY.contains(&word.as_str()))
                || names.iter().any(|name| said.contains(name))
        })
        .collect();
    found.sort();
    found.dedup();
    found
}

#[test]
fn nothing_is_left_in_english_and_nothing_is_too_wide() {
    let file = path_from("FINRUN_DIST").join("demo/two-storey.json");
    let job = fs::read_to_string(file).expect("the demo is there");
    let mut job = open(&job);
    let rooms: Vec<Place> = job.all_rooms().map(|room| Place::Room(u64::from(room.id.0))).collect();
    assert!(rooms.len() > 8, "{rooms:?}");
    // One word may be Spanish, too.
    let names = job.names_mut().filter(|name| name.contains(' ')).map(|name| name.clone());
    let names: Vec<String> = names.collect();
    assert!(names.len() > 5, "{names:?}");
    let mut found = Vec::new();
    in_spanish("es-ES,es", DecimalMark::Comma, |page| {
        let mut look = |here: String| {
            let wide = page.sideways();
            let wide = (!wide.is_empty()).then_some(wide);
            let wrong = english(page, &names).into_iter().chain(wide);
            found.extend(wrong.map(|what| format!("{here}: {what}")));
        };
        for place in Place::without_rooms().chain(rooms) {
            show(page, State::Empty, place);
            // What takes its time must have come.
            for still in [text::working_out(), text::stations_coming()] {
                page.wait_until_gone(still);
            }
            look(format!("{place:?}"));
        }
        for address in ["/#/", "/#/safety", "/#/about", "/#/words"] {
            page.open(address);
            page.wait_for("main h1");
            look(address.to_owned());
        }
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}
