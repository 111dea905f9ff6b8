//! Goals for hands and eyes that no other test of the browser holds, each test named by its row of the
//! table in DEVELOPERS.md; and that the table tells the truth.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::FOUR_ROOMS;

const LIVING: Place = Place::Room(6);

#[test]
fn f1_stations_are_open_in_any_order_and_say_what_is_missing() {
    visit(View::Phone, |page| {
        page.open("/");
        page.press("New job");
        page.wait_for(".stations");
        assert_eq!(page.texts_of(".stations a").len(), 4);
        for place in [Place::Loop, Place::HeatLoss, Place::Lengths, Place::Rooms] {
            page.go(place);
            let main = page.text_of("main");
            assert!(main.contains("Add a room") || main.contains("room"), "{place:?}: {main}");
        }
        // Every section says how it stands.
        let facts = "return [...document.querySelectorAll('ul.sections li')].map((section) =>
            [section.innerText, section.querySelector('small')?.innerText ?? ''])";
        let facts = page.script(facts, vec![]);
        let facts: Vec<(String, String)> = serde_json::from_value(facts).expect("pairs");
        assert!(facts.len() > 3, "{facts:?}");
        assert!(facts.iter().all(|(_, fact)| !fact.trim().is_empty()), "{facts:?}");
        page.type_into("Name of the new room", "Kitchen");
        page.press("Add a room");
        page.go(Place::Rooms);
        page.wait_for_text("missing");
    });
}

#[test]
fn f3_numbers_are_typed_as_text_with_their_unit_and_a_sign_button() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, LIVING);
        page.unfold();
        let bad = page.script(
            "const boxes = [...document.querySelectorAll('main input:not(.name)')].filter((box) => box.id.includes('.'));
             const unit = (box) => box.closest('.field').querySelector('.unit')?.textContent;
             const label = (box) => document.querySelector(`label[for=\"${box.id}\"]`)?.textContent;
             if (boxes.length < 20) return ['few boxes'];
             return boxes.filter((box) => box.type !== 'text' || !['text', 'decimal'].includes(box.inputMode)
                || box.placeholder || (unit(box) && !label(box).includes(unit(box)))).map((box) => box.id)
                .concat([...document.querySelectorAll('input[type=number], input[type=range]')].map(String))",
            vec![],
        );
        assert_eq!(bad, json!([]));
        page.go(Place::Rooms);
        page.type_into("Outdoor temperature on the design day", "12");
        page.press("Change the sign of Outdoor temperature");
        assert_eq!(page.value_of("Outdoor temperature on the design day"), "-12");
    });
}

#[test]
fn f4_lengths_are_read_as_people_write_them_and_echoed() {
    const WRITTEN: [(&str, &str); 9] = [
        ("7' 6 1/2\"", "7 ft 6 1/2 in"),
        ("7’6½”", "7 ft 6 1/2 in"),
        ("7′ 6″", "7 ft 6 in"),
        ("7ft 6.5in", "7 ft 6 1/2 in"),
        ("90 in", "7 ft 6 in"),
        ("2,3 m", "7 ft 6 9/16 in"),
        ("230cm", "7 ft 6 9/16 in"),
        ("8", "8 ft"),
        ("8' 3 pulg", "8 ft 3 in"),
    ];
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, LIVING);
        for (typed, read) in WRITTEN {
            page.type_into("Floor, length", typed);
            page.wait(&format!("reading {typed}"), || {
                let said = page.text_of("[id='room-6.floor-length-read']").replace('\u{a0}', " ");
                if said == read { Ok(()) } else { Err(format!("it says {said:?}, not {read:?}")) }
            });
        }
    });
}

#[test]
fn f6_a_blank_is_an_answer_and_what_is_assumed_is_shown() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, LIVING);
        page.type_into("Ceiling height", "");
        page.wait_for_text("assumed 8 ft");
        // What the guess costs in certainty, and what would narrow it.
        page.go(Place::Certainty);
        page.wait_for_text("±");
    });
}

#[test]
fn f8_what_is_typed_is_stored_within_350_ms_and_when_the_page_is_hidden() {
    let stored = |page: &Page| page.stored("given");
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        // From the key to the write, on the page's own clock; the machine's haste does not matter as
        // timers run late, never early, so the least of a few is taken.
        let least = page.script(
            "window.waits = [];
             const write = Storage.prototype.setItem;
             let typed;
             Storage.prototype.setItem = function (key, text) {
                 if (key === 'finrun.job.given' && typed) { waits.push(performance.now() - typed); typed = 0; }
                 return write.call(this, key, text);
             };
             addEventListener('input', () => { typed ||= performance.now(); }, true);
             return 0",
            vec![],
        );
        assert_eq!(least, json!(0));
        for name in ["a", "ab", "abc", "abcd"] {
            page.type_into("Name of the job", name);
            page.wait_until_saved();
        }
        let waits = page.script("return Math.min(...waits)", vec![]).as_f64().expect("times");
        assert!((0.0..350.0).contains(&waits), "{waits} ms");

        // Hidden before the timer: written at once.
        let before = stored(page);
        let after = page.script(
            "const box = document.querySelector('input.name');
             Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(box, 'Hidden');
             box.dispatchEvent(new InputEvent('input', { bubbles: true }));
             return new Promise((resolve) => queueMicrotask(() => setTimeout(() => {
                 const early = localStorage.getItem('finrun.job.given');
                 Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
                 document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
                 resolve([early, localStorage.getItem('finrun.job.given')]);
             })));",
            vec![],
        );
        let [early, late]: [String; 2] = serde_json::from_value(after).expect("two texts");
        assert_eq!(early, before, "the timer has not run yet");
        assert!(late.contains("Hidden"), "{late}");
    });
}

#[test]
fn o8_a_panic_shows_the_rescue_screen_with_all_that_was_typed() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.type_into("Name of the job", "Before the panic");
        page.wait_until_saved();
        // The browser refuses one element: the program cannot go on.
        page.script(
            "const make = Document.prototype.createElement;
             let forced = false;
             const refuse = function (...names) {
                 if (!forced) { forced = true; throw new Error('forced'); }
                 return make.apply(this, names);
             };
             Document.prototype.createElement = refuse;
             HTMLTemplateElement.prototype.cloneNode = refuse;
             location.hash = '#/job/given/loop'",
            vec![],
        );
        page.wait_for_text("Finrun has stopped");
        page.wait_for("html[data-boot=failed]");
        page.press("Download what is saved");
        let saved = page.downloaded("finrun-saved.json");
        let saved: Value = serde_json::from_slice(&saved).expect("JSON");
        let job = saved["finrun.job.given"].as_str().expect("the job is in it");
        assert!(job.contains("Before the panic"), "{job}");
        assert!(!page.console_errors().is_empty(), "the console tells what happened");
        page.press("Load again");
        page.wait_for("html[data-boot=started]");
        page.wait_for(".stations");
        page.go(Place::Rooms);
        assert_eq!(page.value_of("Name of the job"), "Before the panic");
    });
}

#[test]
fn o11_the_policy_lets_nothing_in_from_elsewhere() {
    visit(View::Phone, |page| {
        page.open("/");
        let policy = page.script(
            "return document.querySelector('meta[http-equiv=Content-Security-Policy]').content",
            vec![],
        );
        let policy = policy.as_str().expect("a policy");
        for part in [
            "default-src 'none'",
            "script-src 'self' 'wasm-unsafe-eval'",
            "connect-src 'self'",
            "base-uri 'none'",
            "form-action 'none'",
        ] {
            assert!(policy.split(';').any(|one| one.trim() == part), "{part} in {policy}");
        }
        assert!(!policy.contains("unsafe-inline") && !policy.contains("http"), "{policy}");
        // It is in force: what is written into the page does not run.
        let ran = page.script(
            "const script = document.createElement('script');
             script.textContent = 'window.ran = true';
             document.head.append(script);
             return window.ran ?? false",
            vec![],
        );
        assert_eq!(ran, json!(false));
        assert!(!page.console_errors().is_empty(), "the browser says what it refused");
    });
}

/// Every row stands in the table of DEVELOPERS.md with the tests that hold it; those tests exist, and
/// say the row.
#[test]
fn every_row_names_tests_that_exist() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let map = fs::read_to_string(root.join("DEVELOPERS.md")).expect("the map");
    let mut rows = BTreeSet::new();
    for line in map.lines() {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let ["", row, _, tests, ""] = cells[..] else { continue };
        let numbered = row.len() > 1 && row[1..].bytes().all(|b| b.is_ascii_digit());
        if !row.starts_with(['F', 'O']) || !numbered {
            continue;
        }
        assert!(rows.insert(row.to_owned()), "{row} stands twice");
        let tests: Vec<&str> = tests.split('`').skip(1).step_by(2).collect();
        assert!(!tests.is_empty(), "{row} has no test");
        for test in tests {
            let (file, name) = test.split_once("::").unwrap_or_else(|| panic!("{row}: {test}"));
            let path = root.join(format!("tests/suite/browser/{file}.rs"));
            assert!(says_row(&path, name, row), "{test} does not say {row} above its name");
        }
    }
    let expected = (1..=8).map(|n| format!("F{n}")).chain((1..=12).map(|n| format!("O{n}")));
    assert_eq!(rows, expected.collect());
}

/// Whether the test's name or the comment above it names the row.
fn says_row(file: &PathBuf, name: &str, row: &str) -> bool {
    let text = fs::read_to_string(file).unwrap_or_else(|error| panic!("{file:?}: {error}"));
    let Some(at) = text.find(&format!("fn {name}(")) else { return false };
    let lines: Vec<&str> = text[..at].lines().rev().take_while(|line| !line.is_empty()).collect();
    let comment = lines.iter().filter(|line| line.trim_start().starts_with("///"));
    name.starts_with(&format!("{}_", row.to_lowercase()))
        || comment
            .clone()
            .any(|line| line.split(|c: char| !c.is_ascii_alphanumeric()).any(|word| word == row))
}
