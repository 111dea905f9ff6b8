//! The browser dies while someone types, and what was typed is there again.
//!
//! Two deaths by turns: of the process that shows the page, as when a phone lacks memory, and of all
//! of the browser's processes, as when the battery is out. A few here; `cargo xtask kills` does many
//! and tells how much was lost.

use std::process::Command;
use std::thread;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use super::find::Kind;
use super::looks::keep;
use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::FOUR_ROOMS;

/// What may be lost at most: what was typed in the last moments (Excalidraw saves after 300 ms, tldraw
/// after 350 ms).
const WINDOW: Duration = Duration::from_millis(350);
/// Beside other tests the machine is busy, and timers and keys come late.
const WINDOW_OF_A_BUSY_MACHINE: Duration = Duration::from_millis(1000);
const FEW: u64 = 6;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Death {
    OfThePage,
    OfTheBrowser,
}

/// Whole numbers that look random and are the same each time (splitmix64, Steele and others 2014).
struct Random(u64);

impl Random {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % end
    }
}

/// A state of the name that was typed, and when it surely stood on the page.
struct Typed {
    name: String,
    at: Instant,
}

impl Typed {
    fn now(letters: &[u8]) -> Self {
        Self { name: String::from_utf8_lossy(letters).into_owned(), at: Instant::now() }
    }
}

fn number_from(variable: &str) -> Option<u64> {
    std::env::var(variable).ok()?.parse().ok()
}

/// F8.
#[test]
fn a_browser_that_is_killed_while_someone_types_loses_moments() {
    let many = number_from("FINRUN_KILLS");
    let window = many.map_or(WINDOW_OF_A_BUSY_MACHINE, |_| WINDOW);
    let mut random = Random(number_from("FINRUN_KILLS_SEED").unwrap_or(1));
    let mut losses: [Vec<Duration>; 2] = Default::default();
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        // Written by this program, and so in its own form.
        page.type_into("Name of the job", "Before");
        page.wait_until_saved();
        let original = without_name(&page.stored("given"));
        // It stands on the disk before anyone dies.
        page.close_and_reopen();
        for round in 0..many.unwrap_or(FEW) {
            let death = [Death::OfThePage, Death::OfTheBrowser][round as usize % 2];
            let lost = killed(page, death, round, &mut random);
            assert_eq!(without_name(&page.stored("given")), original, "all else is as it was");
            losses[death as usize].push(lost);
        }
    });
    let told =
        told(Death::OfThePage, &losses[0], window) + &told(Death::OfTheBrowser, &losses[1], window);
    print!("{told}");
    keep("kills.txt", told.as_bytes()).expect("the counts are kept");
    assert!(losses.iter().flatten().all(|lost| *lost <= window), "{told}");
}

#[test]
fn a_deleted_job_stays_deleted_when_the_browser_dies() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.type_into("Name of the job", "To go");
        page.wait_until_saved();
        page.close_and_reopen();
        page.open("/");
        page.press("Delete To go");
        page.wait_for_text("Deleted To go");
        thread::sleep(WINDOW);
        let victims = victims(page, Death::OfTheBrowser);
        let done = Command::new("kill").arg("-9").args(&victims).status();
        assert!(done.is_ok(), "kill can be run");
        for _ in 0..2 {
            page.reopen_after_death();
            page.open("/");
            page.wait_for("html[data-boot=started]");
            assert_eq!(
                page.script("return localStorage.getItem('finrun.job.given')", vec![]),
                Value::Null
            );
        }
    });
}

#[test]
fn the_newer_of_storage_and_copy_counts_and_a_deletion_is_newer() {
    // What storage holds and when it was written, what the copy holds and when, and what comes of it.
    let cases = json!([
        ["a", "old", 1, "new", 2, "new"],
        ["b", "new", 2, "old", 1, "new"],
        ["c", "same", 1, "other", 1, "same"],
        ["d", null, 0, "new", 1, "new"],
        ["e", null, 2, "deleted later", 1, null],
        ["f", "deleted later", 1, null, 2, null],
        ["g", "by hand", 0, null, 0, "by hand"],
    ]);
    const PUT: &str = "const [cases, done] = arguments;
        const request = indexedDB.open('finrun');
        request.onsuccess = () => {
          const deal = request.result.transaction('jobs', 'readwrite');
          for (const [key, stored, at, text, time] of cases) {
            if (stored !== null) localStorage.setItem('finrun.job.' + key, stored);
            if (at) localStorage.setItem('finrun.time.' + key, at);
            if (time) deal.objectStore('jobs').put({ key, text, time });
          }
          deal.oncomplete = () => { request.result.close(); done(true); };
        };";
    visit(View::Phone, |page| {
        page.open("/");
        page.wait_for("html[data-boot=started]");
        let put = page.wait_on(page.client.execute_async(PUT, vec![cases.clone()]));
        page.asked("the copies", put);
        // Once more shows that nothing comes back later.
        for _ in 0..2 {
            page.reload();
            page.wait_for("html[data-boot=started]");
            for case in cases.as_array().expect("a list") {
                let key = format!("finrun.job.{}", case[0].as_str().unwrap_or_default());
                let stored =
                    page.script("return localStorage.getItem(arguments[0])", vec![json!(key)]);
                assert_eq!(stored, case[5], "{case}");
            }
        }
    });
}

/// Types until the browser is dead, opens the job anew, and returns how old the oldest letter is that
/// is not there.
fn killed(page: &mut Page, death: Death, round: u64, random: &mut Random) -> Duration {
    page.open("/#/job/given/rooms");
    let mut states = vec![Typed { name: page.value_of("Name of the job"), at: Instant::now() }];
    let field = page.asked("the name", page.find(Kind::Field, "Name of the job"));
    let mut letters = format!("{round}-").into_bytes();
    page.type_into("Name of the job", &String::from_utf8_lossy(&letters));
    for end in 1..=letters.len() {
        states.push(Typed::now(&letters[..end]));
    }
    let victims = victims(page, death);
    let after = Duration::from_millis(200 + random.below(3_000));
    let killer = thread::spawn(move || {
        thread::sleep(after);
        let done = Command::new("kill").arg("-9").args(&victims).status();
        // One of many may have gone by itself: how it went does not matter.
        assert!(done.is_ok(), "kill can be run");
        Instant::now()
    });
    while !killer.is_finished() {
        letters.push(b'a' + random.below(26) as u8);
        let key = String::from_utf8_lossy(&letters[letters.len() - 1..]).into_owned();
        let sent = page.wait_on(field.send_keys(&key));
        // The letter that was on its way may have come, or not.
        states.push(Typed::now(&letters));
        if sent.is_err() {
            break;
        }
        // Mostly a quick hand; now and then it rests.
        let rest = if random.below(10) == 0 { 700 } else { 120 };
        thread::sleep(Duration::from_millis(random.below(rest)));
    }
    let dead = killer.join().expect("the killer ends");
    page.reopen_after_death();
    page.open("/#/job/given/rooms");
    page.wait_for(".stations");
    let found = page.value_of("Name of the job");
    let Some(place) = states.iter().position(|state| state.name == found) else {
        page.fail(&format!("{found:?} was never typed"));
    };
    states.get(place + 1).map_or(Duration::ZERO, |lost| dead.saturating_duration_since(lost.at))
}

/// The processes that die.
fn victims(page: &Page, death: Death) -> Vec<String> {
    let all = page.browser_processes();
    let dying = all.into_iter().filter(|(_, command)| match death {
        Death::OfThePage => command.contains("--type=renderer"),
        Death::OfTheBrowser => true,
    });
    let victims: Vec<String> = dying.map(|(id, _)| id.to_string()).collect();
    assert!(!victims.is_empty(), "nobody to kill");
    victims
}

fn without_name(text: &str) -> Value {
    let mut file: Value = serde_json::from_str(text).expect("a job file");
    file["job"]["name"] = Value::Null;
    file
}

fn told(death: Death, losses: &[Duration], window: Duration) -> String {
    let mut times: Vec<u128> = losses.iter().map(Duration::as_millis).collect();
    times.sort_unstable();
    let at = |percent: usize| {
        times.get((times.len() * percent / 100).min(times.len().saturating_sub(1)))
    };
    let over = losses.iter().filter(|lost| **lost > window).count();
    format!(
        "{death:?}: {} kills, {over} lost more than {} ms; lost at the median {:?}, 95 % {:?}, most {:?} ms\n",
        times.len(),
        window.as_millis(),
        at(50).unwrap_or(&0),
        at(95).unwrap_or(&0),
        at(100).unwrap_or(&0),
    )
}
