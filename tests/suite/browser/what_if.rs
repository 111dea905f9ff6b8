//! What if, on the page: windows changed, the house before and after by the numbers of `solve`, switched
//! off, made so, undone.

use std::fs;
use std::process::Command;

use finrun_engine::job::File;
use finrun_engine::quantity::{Kind, Value};
use finrun_engine::what_if::{Weighing, apply, reach};
use finrun_text as text;
use serde_json::Value as Json;

use super::axe::axe;
use super::figures::compare;
use super::looks::Theme;
use super::page::{Page, View};
use super::piping::solve_saved;
use super::place::Place;
use super::solved::{Figure, Solved};
use super::{path_from, visit};
use crate::support::{DEMO, open};

/// What stands on the page, worked out from the stored job.
pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let draft = &solved.draft;
    let system = draft.units;
    let words = |words: String| Figure::Words(words);
    let mut all = Vec::new();
    for change in &draft.what_if {
        let said = match change.kind.used() {
            Some(_) => text::reached(&reach(draft, change), system),
            None => String::new(),
        };
        all.push((format!("change-{}.reach", change.id.0), words(said)));
    }
    let weighed = Weighing::of(draft).ok().and_then(Weighing::all);
    let pays = weighed.as_ref().map(|weighed| text::paid_back(weighed, system));
    all.push(("what-if.payback".to_owned(), words(pays.unwrap_or_default())));
    let Some(weighed) = weighed else { return all };
    for (key, _, cells) in text::weighed_rows(&weighed, draft, system) {
        for (end, cell) in ["before", "after", "difference"].iter().zip(cells) {
            all.push((format!("what-if.{key}.{end}"), words(cell)));
        }
    }
    let rooms = text::weighed_rooms(&weighed, (draft, &apply(draft)), system);
    for (id, _, cells) in rooms {
        for (key, [before, after]) in ["load", "element", "cold", "warm"].iter().zip(cells) {
            let shown = text::then_now(&before, &after);
            all.push((format!("what-if.room-{id}.{key}"), words(shown)));
        }
    }
    all
}

/// What `cargo xtask solve --what-if` prints for the stored job.
fn printed(page: &Page) -> Json {
    page.settle();
    page.wait_until_saved();
    let folder = tempfile::tempdir().expect("the temporary folder is writable");
    let job = folder.path().join("job.json");
    fs::write(&job, page.stored(&page.job_key())).expect("the temporary folder is writable");
    let mut command = Command::new(path_from("FINRUN_XTASK"));
    let output = command.arg("solve").arg(&job).arg("--what-if").output();
    let output = output.expect("the developer command starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).expect("JSON")
}

fn load_after(page: &Page) -> String {
    page.text_of("[data-figure='what-if.load.after']")
}

#[test]
fn windows_are_changed_weighed_made_so_and_undone() {
    visit(View::Phone, |page| {
        page.open_job(DEMO, Place::HeatLoss);
        page.press("What if");
        page.wait_for_text(text::what_if_note());
        page.wait_for_text("No change counts yet. Add one, or switch one on.");
        page.press("Add a change");
        page.wait_for_text("7 of them, 98 ft² together.");
        page.choose("Then built like", "Triple glass, low-e");
        page.type_into("What it costs you", "5200");
        page.type_into("Price of one unit of the fuel", "1.60");
        page.leave();
        page.wait_for(".weighed:not(.stale) [data-figure='what-if.load.after']");
        page.wait_for_text("simple payback.");
        let before = solve_saved(page);
        compare(page, &before, Place::WhatIf);
        // What `solve` prints of the two houses stands on the page.
        let json = printed(page);
        let shown = |side: &str| {
            let load = json[side]["load_w"].as_f64().expect("a load");
            let shown = text::value(Value::new(Kind::Power, load), before.draft.units);
            shown.replace('\u{a0}', " ")
        };
        assert_eq!(page.text_of("[data-figure='what-if.load.before']"), shown("before"));
        assert_eq!(load_after(page), shown("after"));
        let less = page.text_of("[data-figure='what-if.load.difference']");
        assert!(less.ends_with("less"), "{less}");
        assert!(json["payback"]["years"].as_f64().expect("years") > 1.0);
        // Nothing of the job has changed.
        assert_eq!(page.text_of("[data-figure='plate.load']"), shown("before"));

        page.press("Counts in the comparison");
        page.wait_for_text("No change counts yet. Add one, or switch one on.");
        page.wait_for_text("Change 1: Windows (does not count)");
        assert_eq!(page.texts_of("[data-figure='what-if.load.after']"), [""; 0]);
        page.press("Counts in the comparison");
        page.wait_for("[data-figure='what-if.load.after']");
        let counted = solve_saved(page);
        assert_eq!(counted.draft, before.draft);

        page.press("Make it so");
        page.wait_for_text("No change counts yet. Add one, or switch one on.");
        let made = solve_saved(page);
        assert_eq!(made.draft, apply(&before.draft));
        let load = json["after"]["load_w"].as_f64().expect("a load");
        assert!((made.typed.load.si() - load).abs() < 1e-9);
        assert_eq!(page.text_of("[data-figure='plate.load']"), shown("after"));
        page.press("Undo");
        assert_eq!(solve_saved(page).draft, before.draft);
        page.wait_for(".weighed:not(.stale) [data-figure='what-if.load.after']");
        assert_eq!(load_after(page), shown("after"));
    });
}

/// A cost that is no number is said at its field, and the houses stand all the same; a size that is
/// missing is said there, and they wait for it.
#[test]
fn what_is_wrong_is_said_at_its_field() {
    visit(View::Phone, |page| {
        page.open_job(DEMO, Place::WhatIf);
        page.wait_for_text("No change counts yet. Add one, or switch one on.");
        page.press("Add a change");
        page.wait_for_text("Change 1: Windows");
        page.type_into("What it costs you", "cheap");
        page.leave();
        page.wait_for_text("“cheap” cannot be read");
        page.wait_for("[data-figure='what-if.load.after']");
        page.type_into("What it costs you", "900");
        page.choose("What changes?", "One more room, measured");
        page.wait_for_text("A change lacks a number, or holds one that cannot be read.");
        page.type_into("Name of the room", "Sewing room");
        page.type_into("Floor, length", "12");
        page.type_into("Floor, width", "10' 6\"");
        page.leave();
        page.wait_for("[data-figure='what-if.load.after']");
        let solved = solve_saved(page);
        assert_eq!(solved.draft.rooms.len(), 5);
        compare(page, &solved, Place::WhatIf);
        assert!(page.text_of("main").contains("Sewing room"));
        // More windows than its walls are long.
        page.type_into("Windows of 3 by 4 ft (91 by 122 cm)", "19");
        page.leave();
        page.wait_for_text("With these changes the job has errors:");
    });
}

/// A bungalow with changes of several kinds, one of them off.
fn several() -> String {
    let mut draft = open(DEMO);
    use finrun_engine::job::{BillsField, ChangeField, ChangeKind, Counted, Field};
    for (kind, cost) in [
        (ChangeKind::Windows, "7800"),
        (ChangeKind::Ceilings, "2100"),
        (ChangeKind::Air, "650"),
        (ChangeKind::OutsideWalls, "9000"),
    ] {
        let id = draft.add_change(kind);
        crate::support::set(&mut draft, Field::Change(id, ChangeField::Cost), cost);
    }
    draft.what_if[3].counted = Counted::Off;
    crate::support::set(&mut draft, Field::Bills(BillsField::Price), "1.60");
    serde_json::to_string(&File::new(draft)).expect("a file")
}

#[test]
fn what_if_shuts_nobody_out() {
    for view in [View::Phone, View::Desk] {
        visit(view, |page| {
            page.open_job(&several(), Place::WhatIf);
            page.wait_for(".weighed:not(.stale) [data-figure='what-if.load.after']");
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                page.wait_for("[data-figure='what-if.load.after']");
                page.unfold();
                assert_eq!(page.sideways(), "");
                let broken: Vec<String> = axe(page).iter().map(|rule| rule.to_string()).collect();
                assert!(broken.is_empty(), "{theme:?}: {broken:?}");
                page.picture_of_all(&format!("what-if-{view:?}-{theme:?}").to_lowercase());
            }
        });
    }
}
