//! The release page in a real browser, driven as a person would use it.
//!
//! A test calls [`visit`], which gives it a server, a browser and a fresh profile of its own, so that
//! tests can run side by side. Programs come from variables that `cargo xtask test` sets.

mod acts;
mod assembly;
mod axe;
mod climate;
mod compare;
mod demos;
mod drawings;
mod driver;
mod existing;
mod figures;
mod find;
mod fuel;
mod harness;
mod house;
mod jobs;
mod keyboard;
mod kills;
mod language;
mod leaving;
mod looks;
mod materials;
mod media;
mod network;
mod offline_update;
mod one_file;
mod open_to_all;
mod page;
mod pdf;
mod piping;
mod place;
mod prices;
mod process;
mod remedies;
mod report;
mod rows;
mod screenshots;
mod server;
mod share;
mod shop;
mod site;
mod smoke;
mod solved;
mod speed;
mod storage;
mod storeys;
mod suggested;
mod tenth_room;
mod what_if;
mod words;
mod year;

use std::path::PathBuf;

use page::{Page, View};

/// Does `act` on a page of its own. Afterwards nothing may stand in the console, and nothing may have
/// been asked of another origin, whatever the test was about.
#[track_caller]
fn visit(view: View, act: impl FnOnce(&mut Page)) {
    visit_on(Page::start(view), act);
}

/// As [`visit`], on a page that was started in another way.
#[track_caller]
fn visit_on(mut page: Page, act: impl FnOnce(&mut Page)) {
    act(&mut page);
    let complaints = page.close();
    assert!(complaints.is_empty(), "{}", complaints.join("\n"));
}

/// The path in a variable that `cargo xtask test` sets.
fn path_from(variable: &str) -> PathBuf {
    std::env::var_os(variable).map_or_else(
        || panic!("{variable} is not set: run cargo xtask test, which finds or installs a browser"),
        PathBuf::from,
    )
}
