//! Jobs in the browser's storage and in files: none is lost, whatever happens to either.

use std::fs;

use finrun_engine::job::CURRENT_VERSION;
use serde_json::{Value, json};

use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::FOUR_ROOMS;

const NAME: &str = "Four rooms, worked by hand";

/// All jobs that stand in storage, by key.
fn everything(page: &Page) -> Value {
    page.script(
        "return Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith('finrun.job.')))",
        vec![],
    )
}

fn count(page: &Page) -> usize {
    everything(page).as_object().map_or(0, |entries| entries.len())
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

#[test]
fn jobs_are_copied_renamed_deleted_and_brought_back() {
    visit(View::Phone, |page| {
        page.open_with("first", FOUR_ROOMS);
        page.press("Copy Four rooms, worked by hand (invented numbers)");
        page.wait_for_text("(invented numbers), copy");
        assert_eq!(count(page), 2);

        page.press("Rename Four rooms, worked by hand (invented numbers), copy");
        page.type_into("Name of the job", "Plan B");
        page.leave();
        page.wait_for_text("Plan B");
        let before = everything(page);

        page.press("Delete Plan B");
        page.wait_for_text("Deleted Plan B");
        assert_eq!(count(page), 1);
        page.press("Bring it back");
        page.wait_until_gone("Deleted Plan B");
        assert_eq!(everything(page), before, "to the last character");
        page.press("Plan B");
        page.wait_for_text("Rooms, in the order");
        assert_eq!(page.texts_of("ol.rooms > li").len(), 4);
    });
}

/// O9, O10.
#[test]
fn a_job_goes_out_as_a_file_and_comes_back_the_same() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.type_into("Name of the job", "Out and back");
        page.wait_until_saved();
        let stored = page.stored("given");
        page.open("/#/");
        page.press("Download Out and back");
        let file = page.downloaded("Out-and-back.finrun.json");
        assert_eq!(String::from_utf8_lossy(&file), stored);

        let folder = tempfile::tempdir().expect("the temporary folder is writable");
        let path = folder.path().join("job.json");
        fs::write(&path, &file).expect("the temporary folder is writable");
        page.give_file("Open a job file", &path);
        page.wait_for_text("Rooms, in the order");
        let key = page.job_key();
        assert_ne!(key, "given", "nothing is replaced");
        assert_eq!(page.stored(&key), stored);
        assert_eq!(page.stored("given"), stored);
    });
}

#[test]
fn a_file_that_is_no_job_changes_nothing() {
    let newer = FOUR_ROOMS.replacen("\"finrun\": 1", "\"finrun\": 99", 1);
    let half = &FOUR_ROOMS[..FOUR_ROOMS.len() / 2];
    let cases = [
        (half, "damaged"),
        ("", "damaged"),
        ("PK\u{3}\u{4} not text", "damaged"),
        (newer.as_str(), "newer Finrun (file version 99)"),
        ("{\"finrun\":1,\"job\":{}}", "damaged"),
    ];
    visit(View::Phone, |page| {
        page.open_with("first", FOUR_ROOMS);
        let before = everything(page);
        let folder = tempfile::tempdir().expect("the temporary folder is writable");
        let path = folder.path().join("job.json");
        let open = |text: &str, says: &str| {
            fs::write(&path, text).expect("the temporary folder is writable");
            page.give_file("Open a job file", &path);
            page.wait(&format!("what is said of {:.20}", text), || {
                let said = page.texts_of("main .banner").join(" ");
                if said.contains(says) {
                    Ok(())
                } else {
                    Err(format!("{says:?} is not in {said:?}"))
                }
            });
            assert_eq!(everything(page), before);
            page.press(NAME);
            page.wait_for(".stations");
            page.open("/#/");
            page.wait_for(".jobs");
        };
        for (text, says) in cases {
            open(text, says);
        }
        open(&" ".repeat(2_000_001), "too large");
        // Refused by its size: not a byte of it is read.
        page.script("window.read = 0; Blob.prototype.text = () => { read += 1; }", vec![]);
        fs::write(&path, " ".repeat(50_000_000)).expect("the temporary folder is writable");
        page.give_file("Open a job file", &path);
        page.wait_for_text("too large");
        assert_eq!(page.script("return read", vec![]), json!(0));
        assert_eq!(everything(page), before);
    });
}

/// O8.
#[test]
fn a_damaged_entry_is_kept_listed_and_handed_out() {
    const DAMAGED: &str = "{\"finrun\":1,\"job\":{\"name\":\"Half a jo";
    visit(View::Phone, |page| {
        page.open_with("broken", DAMAGED);
        let version = CURRENT_VERSION + 1;
        let newer = FOUR_ROOMS.replacen("\"finrun\": 1", &format!("\"finrun\": {version}"), 1);
        page.open_with("later", &newer);
        page.open_with("sound", FOUR_ROOMS);
        let seen = page.texts_of(".jobs > li.damaged");
        assert_eq!(seen.len(), 2, "{seen:?}");
        assert!(seen[0].contains("Cannot be opened"), "{seen:?}");
        assert!(seen[1].contains(&format!("newer Finrun (file version {version})")), "{seen:?}");

        let save = "document.querySelector('.jobs > li.damaged button').click()";
        page.script(save, vec![]);
        assert_eq!(page.downloaded("finrun-damaged.json"), DAMAGED.as_bytes());
        // Its address leads to the list, not over it.
        page.script("location.hash = '#/job/broken/rooms'", vec![]);
        page.settle();
        page.wait_for_text("not in this browser");
        page.press(NAME);
        page.wait_for_text("Rooms, in the order");
        page.type_into("Name of the job", "Sound");
        page.wait_until_saved();
        assert_eq!(page.stored("broken"), DAMAGED);
        assert_eq!(page.stored("later"), newer);
    });
}

/// From the next load on, storage answers as when it is full, or as when it is forbidden.
fn refuse(page: &Page, script: &str) {
    page.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script }));
}

/// O5.
#[test]
fn without_storage_the_job_goes_on_and_leaves_as_a_file() {
    const FULL: &str = "Storage.prototype.setItem = () => {
        throw new DOMException('exceeded the quota', 'QuotaExceededError') };";
    const FORBIDDEN: &str = "Object.defineProperty(window, 'localStorage', {
        get() { throw new DOMException('denied', 'SecurityError') } });";
    for (script, reason) in [(FULL, "exceeded the quota"), (FORBIDDEN, "full or blocked")] {
        visit(View::Phone, |page| {
            refuse(page, script);
            page.open("/");
            page.press("New job");
            page.wait_for_text(reason);
            page.type_into("Name of the job", "Kept nowhere");
            page.type_into("Outdoor temperature on the design day", "5");
            page.wait("waiting for the word that it is not saved", || {
                let said = page.text_of(".saved");
                if said == "not saved" { Ok(()) } else { Err(format!("the page says {said:?}")) }
            });
            page.press("Download");
            let file = page.downloaded("Kept-nowhere.finrun.json");
            let job = parsed(&String::from_utf8_lossy(&file));
            assert_eq!(job["job"]["house"]["outdoors"]["text"], "5");
            // The banner stays on every page of the job.
            page.go(Place::Loop);
            page.wait_for_text(reason);
            page.go(Place::Rooms);
            assert_eq!(page.value_of("Outdoor temperature on the design day"), "5");
        });
    }
}

/// F7, a failed save is loud; O5.
#[test]
fn storage_that_fills_up_loses_nothing_that_was_typed() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let before = page.stored("given");
        page.script(
            "window.kept = Storage.prototype.setItem;
            Storage.prototype.setItem = () => { throw new DOMException('exceeded', 'QuotaExceededError') }",
            vec![],
        );
        page.type_into("Name of the job", "Too much");
        page.wait_for_text("Download the job to keep it");
        assert_eq!(page.stored("given"), before);
        // Room again: the next change is written, and the banner goes.
        page.script("Storage.prototype.setItem = window.kept", vec![]);
        page.type_into("Name of the job", "Room again");
        page.wait_until_saved();
        page.wait_until_gone("Download the job to keep it");
        assert_eq!(parsed(&page.stored("given"))["job"]["name"], "Room again");
    });
}

/// O7.
#[test]
fn two_tabs_never_overwrite_each_other_silently() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let first = page.asked("the first tab", page.wait_on(page.client.window()));
        let second = page.asked("a second tab", page.wait_on(page.client.new_window(true)));
        let switch = |tab: &fantoccini::wd::WindowHandle| {
            page.asked("another tab", page.wait_on(page.client.switch_to_window(tab.clone())));
        };
        let name = |text: &str| page.type_into("Name of the job", text);
        let stored = || parsed(&page.stored("given"))["job"]["name"].clone();

        switch(&second.handle);
        page.open("/#/job/given/rooms");
        name("Second tab");
        page.wait_until_saved();

        switch(&first);
        page.wait_for_text("changed in another tab");
        name("First tab");
        page.wait_for_text("not saved");
        page.go(Place::Loop);
        page.wait_for_text("changed in another tab");
        page.open("/#/");
        page.wait_for(".jobs");
        assert_eq!(stored(), "Second tab", "nothing is written until the person chooses");

        page.script("location.hash = '#/job/given/rooms'", vec![]);
        page.press("Keep mine");
        page.wait_until_saved();
        assert_eq!(stored(), "First tab");

        switch(&second.handle);
        page.wait_for_text("changed in another tab");
        page.press("Show the other one");
        page.wait_until_gone("changed in another tab");
        assert_eq!(page.value_of("Name of the job"), "First tab");
        name("Together");
        page.wait_until_saved();
        assert_eq!(stored(), "Together");
    });
}

/// O7.
#[test]
fn a_tab_of_an_older_program_stops_writing() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let newer =
            json!({"finrun": CURRENT_VERSION + 1, "job": {"anything": "at all"}}).to_string();
        // As the newer program's tab would write it: the event comes to the tabs that did not write.
        let script = "const [text] = arguments; localStorage.setItem('finrun.job.given', text);
            dispatchEvent(new StorageEvent('storage', { key: 'finrun.job.given', newValue: text }))";
        page.script(script, vec![json!(newer)]);
        page.wait_for_text("A newer Finrun wrote this job in another tab");
        page.type_into("Name of the job", "Typed in the old tab");
        page.wait_for_text("not saved");
        page.go(Place::Loop);
        page.open("/#/");
        page.wait_for(".jobs");
        assert_eq!(page.stored("given"), newer, "the older program may not write over it");
    });
}

/// O6.
#[test]
fn the_browser_is_asked_to_keep_the_jobs_and_its_answer_is_shown() {
    visit(View::Phone, |page| {
        page.open("/");
        page.wait_for("html[data-kept]");
        assert_eq!(page.script("return document.documentElement.dataset.kept", vec![]), "perhaps");
        page.wait_for_text("This browser may clear the jobs");
        page.script(
            "window.asked = 0; navigator.storage.persist = async () => { window.asked += 1; return true; }",
            vec![],
        );
        page.press("New job");
        page.wait_for_text("Rooms, in the order");
        page.wait_for("html[data-kept=surely]");
        assert_eq!(page.script("return window.asked", vec![]), 1);
        page.script("location.hash = '#/'", vec![]);
        page.wait_for_text("This browser has promised to keep the jobs");
        page.press("Keep Finrun on this device");
        page.wait_for_text("Add to Home Screen");
    });
}
