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

fn number_from(variable: &str) -> Option<u64> {
    std::env::var(variable).ok()?.parse().ok()
}

#[test]
fn a_browser_that_is_killed_while_someone_types_loses_moments() {
    let many = number_from("FINRUN_KILLS");
    let window = many.map_or(WINDOW_OF_A_BUSY_MACHINE, |_| WINDOW);
    let mut random = Random(number_from("FINRUN_KILLS_SEED").unwrap_or(1));
    let mut losses: [Vec<Duration>; 2] = Default::default();
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
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
    let told = told(Death::OfThePage, &losses[0], window)
        + &told(Death::OfTheBrowser, &losses[1], window);
    print!("{told}");
    keep("kills.txt", told.as_bytes()).expect("the counts are kept");
    assert!(losses.iter().flatten().all(|lost| *lost <= window), "{told}");
}

/// Types until the browser is dead, opens the job anew, and returns how old the oldest letter is that
/// is not there.
fn killed(page: &mut Page, death: Death, round: u64, random: &mut Random) -> Duration {
    page.open("/#/job/given/rooms");
    let mut states = vec![Typed { name: page.value_of("Name of the job"), at: Instant::now() }];
    let field = page.asked("the name", page.find(Kind::Field, "Name of the job"));
    page.script("arguments[0].focus(); arguments[0].select()", vec![json!(field)]);
    let victims = victims(page, death);
    let after = Duration::from_millis(200 + random.below(3_000));
    let killer = thread::spawn(move || {
        thread::sleep(after);
        let done = Command::new("kill").arg("-9").args(&victims).status();
        // One of many may have gone by itself.
        // One of many may have gone by itself: how it went does not matter.
        assert!(done.is_ok(), "kill can be run");
        Instant::now()
    });
    let mut letters = format!("{round} ").into_bytes();
    while !killer.is_finished() {
        letters.push(b'a' + random.below(26) as u8);
        // The first key takes the place of the whole name, so the number goes with it.
        let new = if states.len() == 1 { 0 } else { letters.len() - 1 };
        let keys = String::from_utf8_lossy(&letters[new..]).into_owned();
        let sent = page.wait_on(field.send_keys(&keys));
        // The letter that was on its way may have come, or not.
        states.push(Typed {
            name: String::from_utf8_lossy(&letters).into_owned(),
            at: Instant::now(),
        });
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
    let at = |percent: usize| times.get((times.len() * percent / 100).min(times.len().saturating_sub(1)));
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
