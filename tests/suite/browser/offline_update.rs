//! A new version comes in whole, with consent, after a save; one that fails on the way leaves the old
//! one as it was.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use tempfile::TempDir;

use super::page::{Page, View};
use super::place::Place;
use super::{path_from, visit};
use crate::support::FOUR_ROOMS;

/// The page's own copy in a folder that a test may change.
fn copied() -> TempDir {
    fn copy(from: &Path, to: &Path) {
        fs::create_dir_all(to).expect("the temporary folder is writable");
        for entry in fs::read_dir(from).expect("the page is built").flatten() {
            match entry.path() {
                folder if folder.is_dir() => copy(&folder, &to.join(entry.file_name())),
                file => drop(fs::copy(&file, to.join(entry.file_name())).expect("room for a copy")),
            }
        }
    }
    let folder = tempfile::tempdir().expect("the temporary folder is writable");
    copy(&path_from("FINRUN_DIST"), folder.path());
    folder
}

/// Makes the copy a new version whose style says so; returns the text of the style it had.
fn renew(page: &Page, dist: &Path) -> String {
    let style = dist.join("style.css");
    let old = fs::read_to_string(&style).expect("a style");
    let new = format!("{old}\n:root {{ --version: new; }}\n");
    let worker = dist.join("sw.js");
    let text = fs::read_to_string(&worker).expect("a worker");
    let (before, after) = (digest(page, &old), digest(page, &new));
    assert!(text.contains(&before), "the worker knows the style");
    let text = text.replace(&before, &after).replacen("const VERSION = '", "const VERSION = 'x", 1);
    fs::write(&worker, text).expect("the copy is writable");
    fs::write(&style, new).expect("the copy is writable");
    old
}

/// The browser works out what the build would write down.
fn digest(page: &Page, text: &str) -> String {
    const SCRIPT: &str = "const [text, done] = arguments;
        crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))
          .then((hash) => done(btoa(String.fromCharCode(...new Uint8Array(hash)))));";
    let answer = page.wait_on(page.client.execute_async(SCRIPT, vec![json!(text)]));
    page.asked("a digest", answer).as_str().unwrap_or_default().to_owned()
}

fn is_new(page: &Page) -> bool {
    let script = "return getComputedStyle(document.documentElement).getPropertyValue('--version')";
    page.script(script, vec![]).as_str().is_some_and(|version| version.trim() == "new")
}

const WAITING: &str = "A new version of Finrun is ready";

/// O2, O3.
#[test]
fn a_new_version_waits_for_consent_and_saves_first() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.wait_for("html[data-offline=ready]");
        let dist = copied();
        renew(page, dist.path());
        page.server.publish(dist.path());
        page.reload();
        page.wait_for_text(WAITING);
        assert!(!is_new(page), "nobody agreed yet");
        page.reload();
        page.wait_for_text(WAITING);
        assert!(!is_new(page), "loading again is no consent");

        page.type_into("Name of the job", "Typed just before");
        page.press("Save and reload");
        page.wait("the new version", || match is_new(page) {
            true => Ok(()),
            false => Err("the old one is still there".to_owned()),
        });
        page.wait_for_text("Typed just before");
        page.wait_until_gone(WAITING);
        let stored: Value = serde_json::from_str(&page.stored("given")).expect("a job file");
        assert_eq!(stored["job"]["name"], "Typed just before");

        // It is whole: nothing of it has to be fetched.
        page.server.stop();
        page.reload();
        page.wait_for_text("Typed just before");
        assert!(is_new(page));
        let caches = "const [done] = arguments; caches.keys().then((names) => done(names.length))";
        let caches = page.wait_on(page.client.execute_async(caches, vec![]));
        assert_eq!(page.asked("the caches", caches), json!(1), "the old one is dropped");
    });
}

/// O2, O4.
#[test]
fn an_update_that_fails_on_the_way_leaves_the_old_version_whole() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.wait_for("html[data-offline=ready]");

        let missing = copied();
        renew(page, missing.path());
        fs::remove_file(missing.path().join("finrun_bg.wasm")).expect("it was there");
        // Half of the files are those of another version, as while a host is being updated.
        let mixed = copied();
        let old = renew(page, mixed.path());
        fs::write(mixed.path().join("style.css"), old).expect("the copy is writable");

        for dist in [&missing, &mixed] {
            page.server.publish(dist.path());
            assert_eq!(outcome(page), json!("redundant"));
            page.settle();
            assert_eq!(page.texts_of("footer .banner"), [""; 0]);
        }
        page.server.stop();
        page.reload();
        page.wait_for_text("Rooms, in the order");
        assert!(!is_new(page));
        assert_eq!(page.texts_of("footer .banner"), [""; 0]);
        page.go(Place::Loop);
        page.wait_for("svg.loop");
        // The browser notes files that a worker asked for in vain; that was the point.
        page.console_errors();
    });
}

/// Looks for a new version, and tells how its installation ends.
fn outcome(page: &Page) -> Value {
    const SCRIPT: &str = "const [done] = arguments;
        navigator.serviceWorker.getRegistration().then((registration) => {
          registration.addEventListener('updatefound', () => {
            const worker = registration.installing;
            worker.addEventListener('statechange', () => done(worker.state));
          }, { once: true });
          return registration.update();
        }).catch((error) => done(String(error)));";
    let answer = page.wait_on(page.client.execute_async(SCRIPT, vec![]));
    page.asked("the end of an update", answer)
}
