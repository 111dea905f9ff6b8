//! Suggested loops on the page: what they say, that they are used by a tap and undone, and what a moved
//! room changes.

use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::design::Design;
use finrun_engine::job::{Arrangement, Draft};
use finrun_engine::suggest::{Change, Verdict, suggest};
use finrun_text as text;

use super::axe::axe;
use super::figures::compare;
use super::jobs::file;
use super::looks::Theme;
use super::page::{Page, View};
use super::piping::{drag, order, solve_saved};
use super::place::Place;
use super::solved::{Figure, Solved};
use super::visit;
use crate::suggest::{largest_last, too_long};
use crate::support::{FOUR_ROOMS, open};

/// What the page says of each zone's loops, worked out from the stored job.
pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let mut all = Vec::new();
    for zone in &solved.draft.zones {
        let name = |end: &str| format!("suggest-{}.{end}", zone.id.0);
        let said = |words: &str| Figure::Words(words.to_owned());
        match suggest(&solved.draft, zone.id) {
            None => {}
            Some(Verdict::Stays(_)) => all.push((name("verdict"), said(text::loops_stay()))),
            Some(Verdict::Changes(change)) => {
                all.push((name("verdict"), said(text::gain(&change))));
                for (end, _, [before, after]) in text::loop_figures(&change, solved.draft.units) {
                    all.push((name(&format!("{end}.before")), said(&before)));
                    all.push((name(&format!("{end}.after")), said(&after)));
                }
            }
        }
    }
    all
}

fn open_suggestion(page: &Page) {
    page.wait_for_text(text::suggest_loops());
    let script = "for (const line of document.querySelectorAll('.zone summary'))
        if (line.textContent.trim() === arguments[0]) line.parentElement.open = true";
    page.script(script, vec![serde_json::json!(text::suggest_loops())]);
}

fn change(draft: &Draft) -> Change {
    match suggest(draft, draft.zones[0].id) {
        Some(Verdict::Changes(change)) => change,
        other => panic!("{other:?}"),
    }
}

fn named(draft: &Draft, loops: &[Vec<RoomId>]) -> Vec<Vec<String>> {
    let name = |id: &RoomId| draft.room(*id).expect("a room").name.clone();
    loops.iter().map(|rooms| rooms.iter().map(name).collect()).collect()
}

#[test]
fn suggested_loops_are_used_by_a_tap_and_undone() {
    for draft in [too_long(), largest_last()] {
        let change = change(&draft);
        let loops: Vec<Vec<RoomId>> = change.loops.iter().map(|l| l.rooms.clone()).collect();
        visit(View::Phone, |page| {
            page.open_job(&file(draft.clone()), Place::Piping);
            let before = solve_saved(page);
            open_suggestion(page);
            page.wait_for_text(text::gain(&change));
            for line in text::loop_lines(&draft, &change.after, draft.units) {
                page.wait_for_text(&line.replace('\u{a0}', " "));
            }
            compare(page, &before, Place::Piping);
            page.press(text::use_loops());
            let after = solve_saved(page);
            assert_eq!(order(&after), named(&draft, &loops));
            let wanted = if loops.len() > 1 { Arrangement::Split } else { Arrangement::Series };
            assert_eq!(after.draft.zones[0].arrangement, wanted);
            // What was said of them is what they do; and asked again it is content.
            let element = after.typed.element_length() - change.after.element;
            assert!(element.si().abs() < 1e-9);
            page.wait_for_text(text::loops_stay());
            compare(page, &after, Place::Piping);
            page.press("Undo");
            assert_eq!(solve_saved(page).draft, before.draft);
            page.wait_for_text(text::gain(&change));
        });
    }
}

#[test]
fn what_is_suggested_shuts_nobody_out() {
    visit(View::Phone, |page| {
        page.open_job(&file(too_long()), Place::Piping);
        for theme in [Theme::Light, Theme::Dark] {
            page.emulate(theme);
            open_suggestion(page);
            page.wait_for_text(text::use_loops());
            assert_eq!(page.sideways(), "");
            let broken: Vec<String> = axe(page).iter().map(|rule| rule.to_string()).collect();
            assert!(broken.is_empty(), "{theme:?}: {broken:?}");
            page.picture_of_all(&format!("suggested-phone-{theme:?}").to_lowercase());
        }
    });
    visit(View::Desk, |page| {
        page.open_job(&file(largest_last()), Place::Piping);
        open_suggestion(page);
        page.wait_for_text(text::use_loops());
        page.picture_of_all("suggested-desk-light");
    });
}

fn zoned(draft: &Draft, design: &Design) -> text::Zoned {
    let zone = ZoneId(0);
    let job = crate::support::job_of(draft);
    text::Zoned {
        element: design.element_length(),
        head: finrun_engine::arrangement::zone_head(&job, design, zone),
        back: design.piping.zones[0].back,
        short: design.rooms.iter().filter(|room| room.short().si() > 0.0).count(),
    }
}

#[test]
fn a_moved_room_says_what_it_changes_until_something_else_is_chosen() {
    visit(View::Desk, |page| {
        page.open_job(FOUR_ROOMS, Place::Piping);
        let draft: Draft = open(FOUR_ROOMS);
        let before = solve_saved(page);
        let names: Vec<String> = order(&before).concat();
        assert_eq!(page.texts_of(".moved").concat(), "");
        drag(page, &names[3], &names[0], 0.2);
        let after = solve_saved(page);
        assert_ne!(order(&after), order(&before));
        let line = text::moved(
            &zoned(&draft, &before.typed),
            &zoned(&after.draft, &after.typed),
            draft.units,
        );
        page.wait_for_text(&line.replace('\u{a0}', " "));
        // By buttons as well; back again it is the same the other way.
        page.press("Undo");
        let line = text::moved(
            &zoned(&after.draft, &after.typed),
            &zoned(&draft, &before.typed),
            draft.units,
        );
        page.wait_for_text(&line.replace('\u{a0}', " "));
        page.choose("The way back", "Above the elements, in the enclosure");
        page.settle();
        page.wait_until_gone("By the last move");
    });
}
