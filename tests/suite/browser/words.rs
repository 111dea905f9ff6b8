//! What a person types wrong or strangely: it is kept as typed, named with what to do about it, and
//! takes nothing away.

use finrun_text::{last_good, show_field};
use serde_json::{Value, json};

use super::jobs::file;
use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::{FOUR_ROOMS, open};

const LIVING: Place = Place::Room(6);
const LOAD: &str = "[data-figure='plate.load']";

/// What is typed into a field of the living room, and what the page must say of it.
struct Slip {
    field: &'static str,
    label: &'static str,
    text: &'static str,
    says: &'static [&'static str],
}

const SLIPS: [Slip; 7] = [
    Slip {
        field: "room-6.floor-length",
        label: "Floor, length",
        text: "12x",
        says: &["“12x” cannot be read", "Write 7' 6 1/2\""],
    },
    Slip {
        field: "room-6.floor-length",
        label: "Floor, length",
        text: "7 6",
        says: &["“7 6”", "two numbers without marks", "Write 7' 6 1/2\""],
    },
    Slip {
        field: "room-6.floor-width",
        label: "Floor, width",
        text: "1,200",
        says: &["“1,200” may be 1200 or 1.2", "Write the one you mean"],
    },
    Slip {
        field: "room-6.floor-width",
        label: "Floor, width",
        text: "-5",
        says: &["“-5” is less than 1 ft", "It takes 1 ft to 200 ft"],
    },
    Slip {
        field: "room-6.height",
        label: "Ceiling height",
        text: "1e9",
        says: &["“1e9”", "Write 7' 6 1/2\""],
    },
    Slip {
        field: "room-6.height",
        label: "Ceiling height",
        text: "99999999",
        says: &["“99999999” is more than 40 ft", "It takes 1 ft to 40 ft"],
    },
    Slip {
        field: "room-6.floor-length",
        label: "Floor, length",
        text: "16' 6\" 3\"",
        says: &["“16' 6\" 3\"”", "Write 7' 6 1/2\""],
    },
];

/// F5.
#[test]
fn a_slip_is_named_once_its_field_is_left_and_costs_nothing() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, LIVING);
        let load = page.text_of(LOAD);
        for slip in &SLIPS {
            slip_once(page, slip, &load);
        }
        // A window wider than its wall, inside a card that is folded.
        page.press("South wall");
        page.within("South wall", || {
            page.within("Window", || page.type_into("Width", "17"));
        });
        page.leave();
        let error = page.text_of("[id='room-6.surface-2.opening-1.width-error']");
        for words in ["longer than the wall of 16 ft", "Shorten it"] {
            assert!(error.contains(words), "{words} in {error}");
        }
        page.wait_for_text(last_good());
        page.press(show_field());
        wait_for_focus(page, "room-6.surface-2.opening-1.width");

        // On another day the slip still stands there, and the list of what to mend leads to it.
        page.wait_until_saved();
        page.reload();
        page.go(Place::Rooms);
        let mend = page.text_of(".mend");
        assert!(mend.contains("Living room, South wall, Window"), "{mend}");
        page.press("Living room, South wall, Window");
        wait_for_focus(page, "room-6.surface-2.opening-1.width");
        let held = page.script("return document.activeElement.value", vec![]);
        assert_eq!(held, json!("17"));
        let still = page.text_of("[id='room-6.surface-2.opening-1.width-error']");
        assert_eq!(still, error);
    });
}

fn slip_once(page: &Page, slip: &Slip, load: &str) {
    let error = format!("[id='{}-error']", slip.field);
    let before = page.value_of(slip.label);
    page.type_into(slip.label, slip.text);
    page.settle();
    assert_eq!(page.texts_of(&error), [""; 0], "{} is told while it is typed", slip.text);
    page.wait_for_text(last_good());
    page.wait_for(".plate.stale");
    // Of the last keystroke that could be read: "12" on the way to "12x".
    let kept = page.text_of(LOAD);
    assert!(kept.ends_with(" Btu/h"), "{kept}");

    page.leave();
    assert_eq!(page.text_of(LOAD), kept);
    let said = page.text_of(&error);
    for words in slip.says {
        assert!(said.contains(words), "{}: {words} is not in {said}", slip.text);
    }
    assert_eq!(page.value_of(slip.label), slip.text, "what was typed stays");
    let told = "const box = document.getElementById(arguments[0]);
        return [box.getAttribute('aria-invalid'), box.getAttribute('aria-describedby')
          .split(' ').some((id) => id === `${arguments[0]}-error`)]";
    assert_eq!(page.script(told, vec![json!(slip.field)]), json!(["true", true]));

    // The list on the first page names room, field and value.
    page.go(Place::Rooms);
    let mend = page.text_of(".mend");
    for words in ["Living room", slip.label, slip.text] {
        assert!(mend.contains(words), "{words} in {mend}");
    }
    page.go(LIVING);
    page.type_into(slip.label, &before);
    page.leave();
    page.wait_until_gone(last_good());
    assert_eq!(page.texts_of(&error), [""; 0], "{} is mended", slip.text);
    assert_eq!(page.text_of(LOAD), load);
}

#[track_caller]
fn wait_for_focus(page: &Page, id: &str) {
    page.wait(&format!("the focus in {id}"), || {
        match page.script("return document.activeElement.id", vec![]).as_str() {
            Some(focus) if focus == id => Ok(()),
            other => Err(format!("it is in {other:?}")),
        }
    });
}

/// F1, F5: the linked summary.
#[test]
fn an_unfinished_room_says_what_it_lacks_and_leads_there() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let load = page.text_of(LOAD);
        page.type_into("Name of the new room", "Attic");
        page.press("Add a room");
        page.wait_for_text("Attic");
        page.press("Add an outside wall");
        assert_eq!(page.texts_of(".mend"), [""; 0], "nobody has asked yet");
        assert_eq!(page.text_of(LOAD), load, "the other rooms are whole");

        page.press("Done with this room");
        let list = page.text_of(".mend");
        for words in ["not complete", "Floor, length", "Floor, width", "Attic, Wall, Length"] {
            assert!(list.contains(words), "{words} in {list}");
        }
        page.press("Attic, Wall, Length");
        page.wait("the focus in the wall's length", || {
            let id = page.script("return document.activeElement.id", vec![]);
            let id = id.as_str().unwrap_or_default().to_owned();
            if id.ends_with(".length") { Ok(()) } else { Err(format!("it is in {id}")) }
        });
        page.leave();

        // Nobody is locked in.
        page.press("Done with this room");
        page.wait_for_text("Rooms, in the order");
        assert!(page.text_of(".mend").contains("Attic"));
    });
}

/// F7.
#[test]
fn what_is_deleted_comes_back_by_undo() {
    visit(View::Phone, |page| {
        // As the page writes it, so that it can be compared with what the page writes back.
        page.open_job(&file(open(FOUR_ROOMS)), Place::Rooms);
        let key = page.job_key();
        let stored = || -> Value { serde_json::from_str(&page.stored(&key)).expect("a job file") };
        let (load, job) = (page.text_of(LOAD), stored());
        page.press("Remove Kitchen");
        page.wait_until_gone("Kitchen");
        assert_ne!(page.text_of(LOAD), load);
        page.wait_until_saved();
        let without = stored();

        page.press("Undo");
        page.wait_for_text("Kitchen");
        assert_eq!(page.text_of(LOAD), load);
        page.wait_until_saved();
        assert_eq!(stored(), job, "all of it is back");

        page.press("Redo");
        page.wait_until_gone("Kitchen");
        page.wait_until_saved();
        assert_eq!(stored(), without);
        // By keys, too.
        page.leave();
        let keys = "document.body.dispatchEvent(new KeyboardEvent('keydown', \
            { key: 'z', ctrlKey: true, bubbles: true, cancelable: true }))";
        page.script(keys, vec![]);
        page.wait_for_text("Kitchen");
        page.wait_until_saved();
        assert_eq!(stored(), job);
    });
}

#[test]
fn names_are_shown_as_they_are_whatever_they_hold() {
    const MARKUP: &str = "<img src=x onerror=\"document.title='broken'\"> & <b>co</b>";
    const RIGHT_TO_LEFT: &str = "\u{202e}مطبخ";
    const EMOJI: &str = "🛋️ Salon 👩‍👩‍👧";
    visit(View::Narrow, |page| {
        let long = "W".repeat(10_000);
        let file = FOUR_ROOMS
            .replace("\"Living room\"", &format!("\"{long}\""))
            .replace("\"Kitchen\"", &json!(MARKUP).to_string())
            .replace("\"Bath\"", &json!(RIGHT_TO_LEFT).to_string())
            .replace("\"Bedroom\"", &json!(EMOJI).to_string())
            .replace("\"south\"", &json!("<i>south</i>").to_string());
        page.open_job(&file, Place::Rooms);
        // Longer than a name can be typed.
        page.type_into("Name of the job", &long[..1000]);
        assert_eq!(page.value_of("Name of the job").len(), 200);
        page.wait_until_saved();

        for place in
            [Place::Rooms, LIVING, Place::Room(12), Place::HeatLoss, Place::Lengths, Place::Loop]
        {
            page.go(place);
            page.unfold();
            let seen = page
                .script("return document.querySelectorAll('img, #app i, main b b').length", vec![]);
            assert_eq!(seen, json!(0), "{place:?}: a name became markup");
            assert_eq!(page.sideways(), "", "{place:?}");
            if place != LIVING {
                let text = page.script("return document.body.textContent", vec![]);
                assert!(text.as_str().is_some_and(|text| text.contains(MARKUP)), "{place:?}");
            }
        }
        let text = page.text_of("svg.loop");
        for name in [RIGHT_TO_LEFT, EMOJI] {
            assert!(text.contains(name), "{name} in {text}");
        }
        assert_eq!(page.script("return document.title.includes('broken')", vec![]), json!(false));
        page.open("/#/");
        page.wait_for(".jobs");
        assert_eq!(page.sideways(), "");
    });
}
