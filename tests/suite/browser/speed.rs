//! How long a keystroke takes in a large job: measured and kept in target/browser/speed.txt, not
//! judged here, since other work on the machine would decide.

use serde_json::json;
use std::sync::Mutex;

use super::jobs::{many_rooms, many_rooms_on_zones};
use super::looks::keep;
use super::page::View;
use super::place::Place;
use super::visit;
use crate::support::{DEMO, open};

const ROOMS: usize = 40;
const TIMES: usize = 20;

/// Types a digit into the box as the keyboard would, and takes three times in milliseconds: until the
/// page's own work at once is done, until the figure has changed, and until it has been drawn.
const TYPE: &str = "
    const [id, text, done] = arguments;
    const box = document.getElementById(id);
    const figure = () => document.querySelector('[data-figure=\"plate.load\"]')?.textContent;
    const before = figure();
    box.focus();
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(box, text);
    requestAnimationFrame(() => {
      const start = performance.now();
      let changed;
      const since = () => performance.now() - start;
      const watch = new MutationObserver(() => { if (figure() !== before) changed ??= since(); });
      watch.observe(document.querySelector('.plate'), { subtree: true, childList: true, characterData: true });
      box.dispatchEvent(new InputEvent('input', { bubbles: true }));
      const atOnce = since();
      const wait = () => {
        if (changed === undefined && since() < 5000) return setTimeout(wait);
        requestAnimationFrame(() => setTimeout(() => {
          watch.disconnect();
          done([atOnce, changed ?? -1, since(), before, figure()]);
        }));
      };
      wait();
    });";

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

#[test]
fn a_keystroke_in_a_house_of_forty_rooms_is_timed() {
    let told: String =
        [("one loop", many_rooms(ROOMS)), ("eight zones", many_rooms_on_zones(ROOMS))]
            .into_iter()
            .map(|(piped, job)| timed(piped, &job))
            .collect();
    print!("{told}");
    keep("speed.txt", told.as_bytes()).expect("the times are kept");
}

fn timed(piped: &str, job: &str) -> String {
    let told = Mutex::new(String::new());
    visit(View::Phone, |page| {
        let room = open(DEMO).rooms[0].id;
        page.open_job(job, Place::Room(u64::from(room.0)));
        let id = format!("room-{}.floor-length", room.0);
        let mut taken = [Vec::new(), Vec::new(), Vec::new()];
        for time in 0..TIMES {
            let text = if time % 2 == 0 { "19" } else { "18" };
            let arguments = vec![json!(id), json!(text)];
            let answer = page.wait_on(page.client.execute_async(TYPE, arguments));
            let answer = page.asked("a keystroke", answer);
            let (at_once, changed, drawn, before, after): (f64, f64, f64, String, String) =
                serde_json::from_value(answer).expect("the script answers so");
            assert_ne!(before, after, "the result follows");
            for (all, one) in taken.iter_mut().zip([at_once, changed, drawn]) {
                all.push(one);
            }
        }
        let [at_once, changed, drawn] = taken.map(median);
        *told.lock().expect("one visitor") = format!(
            "One digit typed into a room of {ROOMS} on {piped}, median of {TIMES} in ms:\n\
             {at_once:.1} until the page's own work at once was done\n\
             {changed:.1} until the result had changed\n\
             {drawn:.1} until it was drawn\n"
        );
    });
    told.into_inner().expect("one visitor")
}

/// What a key may change of the page: its results and what was read, not what stays as it is. Each
/// change of the document is work for the browser, whatever else the machine does.
const MOST_CHANGES: u64 = 50;

#[test]
fn a_key_changes_little_of_the_page() {
    visit(View::Phone, |page| {
        let room = open(DEMO).rooms[0].id;
        page.open_job(&many_rooms(ROOMS), Place::Room(u64::from(room.0)));
        page.script(
            "window.changes = 0;
             const count = (list) => { changes += list.length; };
             const all = { subtree: true, childList: true, characterData: true, attributes: true };
             new MutationObserver(count).observe(document.body, all);",
            vec![],
        );
        let id = format!("room-{}.floor-length", room.0);
        let answer = page.wait_on(page.client.execute_async(TYPE, vec![json!(id), json!("19")]));
        page.asked("a keystroke", answer);
        let changes = page.script("return changes", vec![]).as_u64().expect("a count");
        assert!((5..=MOST_CHANGES).contains(&changes), "{changes} changes of the document");
    });
}

/// A fold that was empty at first is never drawn so: what it holds is there before the browser, a task
/// later, tells that it opened.
#[test]
fn a_fold_is_full_as_it_opens() {
    visit(View::Phone, |page| {
        let room = open(DEMO).rooms[0].id;
        page.open_job(&many_rooms(ROOMS), Place::Room(u64::from(room.0)));
        let answer = page.script(
            "const fold = document.querySelector('main details[data-holds]:not([open])');
             const fields = () => fold.querySelectorAll('input').length;
             const before = fields();
             fold.querySelector('summary').click();
             return Promise.resolve().then(() => [before, fields()]);",
            vec![],
        );
        let [before, after]: [u64; 2] =
            serde_json::from_value(answer).expect("the script answers so");
        assert_eq!(before, 0, "nothing that costs at a key");
        assert!(after > 0, "it opened empty");
    });
}
