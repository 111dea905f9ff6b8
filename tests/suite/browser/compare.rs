//! The page on which every arrangement stands side by side.

use finrun_engine::building::RoomId;
use finrun_engine::compare::{Arranged, Column, Direction, Layout, side_by_side};
use finrun_engine::job::{Arrangement, Draft, Hung};
use finrun_engine::named::Named as _;
use finrun_text as text;

use super::axe::axe;
use super::figures::compare;
use super::looks::Theme;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Figure, Solved, solve};
use super::visit;
use crate::support::{DEMO, FOUR_ROOMS};

fn number(layout: Layout) -> usize {
    match layout {
        Layout::AsDrawn => 0,
        Layout::OneZone(of) => 1 + Arrangement::ALL.iter().position(|a| *a == of).expect("listed"),
    }
}

/// What every cell says, worked out from the stored job.
pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let rows = side_by_side(&solved.draft);
    assert!(rows.len() >= Arrangement::ALL.len());
    let cell = |row: &Arranged, column: Column| {
        let name = format!("arranged-{}.{}", number(row.layout), column.name());
        (name, Figure::Words(text::cell(column, row, solved.draft.units)))
    };
    let of_row = |row| Column::ALL.iter().map(move |&column| cell(row, column));
    rows.iter().flat_map(of_row).collect()
}

/// The names of the rows from the top.
fn order(page: &Page) -> Vec<String> {
    let script = "return [...document.querySelectorAll('.sides tbody th')]
        .map((head) => head.firstChild.textContent.trim())";
    let names = page.script(script, Vec::new());
    serde_json::from_value(names).expect("a list of names")
}

fn saved(page: &Page) -> Solved {
    page.settle();
    page.wait_until_saved();
    solve(page)
}

/// Waits until all rows are of the draft of now.
fn filled(page: &Page, rows: usize) {
    page.wait("waiting for every row", || {
        let fresh = page.texts_of(".sides tbody tr:not(.stale) th").len();
        if fresh == rows { Ok(()) } else { Err(format!("{fresh} of {rows} stand there")) }
    });
}

/// Two zones, for which their own row stands above those of one zone.
fn two_zones() -> Draft {
    let mut draft = crate::support::open(FOUR_ROOMS);
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    let zone = draft.add_zone();
    draft.place_room(rooms[2], Hung { zone, branch: 0 }, None);
    draft
}

#[test]
fn arrangements_are_sorted_kept_and_used() {
    visit(View::Phone, |page| {
        page.open_job(DEMO, Place::Loop);
        page.press("Compare arrangements");
        filled(page, 6);
        let solved = saved(page);
        compare(page, &solved, Place::Compare);
        let rows = side_by_side(&solved.draft);
        let names = |places: Vec<usize>| -> Vec<String> {
            places.iter().map(|&at| text::layout(&solved.draft, rows[at].layout)).collect()
        };
        assert_eq!(order(page), names((0..6).collect()));

        // The better values first, then the others.
        for column in [Column::Joints, Column::Electric, Column::Control] {
            let first = column.better().expect("one is better");
            let (second, words) = match first {
                Direction::Rising => (Direction::Falling, ["ascending", "descending"]),
                Direction::Falling => (Direction::Rising, ["descending", "ascending"]),
            };
            for (direction, aria) in [first, second].into_iter().zip(words) {
                page.press(text::column(column));
                page.settle();
                assert_eq!(order(page), names(column.order(&rows, direction)), "{column:?}");
                let sorted = page.texts_of(&format!(".sides th[aria-sort='{aria}']"));
                assert_eq!(sorted.len(), 1);
                assert!(sorted[0].starts_with(text::column(column)), "{sorted:?}");
            }
        }
        // The best is said in words, and only there.
        let fewest = Column::Joints.best(&rows).expect("one has the fewest joints");
        for (at, row) in rows.iter().enumerate() {
            let best = format!(".sides td:has([data-figure='arranged-{}.joints']) .best", at + 1);
            let said = page.texts_of(&best);
            match Column::Joints.value(row) == Some(fewest) {
                true => assert_eq!(said, [text::best()], "{at}"),
                false => assert_eq!(said, [""; 0], "{at}"),
            }
        }

        // Two are kept beside each other; a third takes the place of the first.
        let kept = |page: &Page| page.texts_of("table.beside th[scope=col]");
        let named = |of: Arrangement| text::arrangement(of);
        let keep = |of: Arrangement| page.press(&format!("Keep {}", named(of)));
        keep(Arrangement::Series);
        keep(Arrangement::DirectReturn);
        page.settle();
        let heads = [named(Arrangement::Series), named(Arrangement::DirectReturn), "Difference"];
        assert_eq!(kept(page), heads);
        let joints = |of: Arrangement| {
            rows.iter().find(|row| row.layout == Layout::OneZone(of)).expect("its row").joints
        };
        let more = joints(Arrangement::DirectReturn) - joints(Arrangement::Series);
        let lines = page.texts_of("table.beside tr");
        let line = lines.iter().find(|line| line.starts_with(text::column(Column::Joints)));
        assert!(line.is_some_and(|line| line.ends_with(&format!("{more} more"))), "{line:?}");
        keep(Arrangement::Split);
        page.settle();
        assert_eq!(kept(page)[..2], [named(Arrangement::DirectReturn), named(Arrangement::Split)]);
        page.press(&format!("Let go {}", named(Arrangement::DirectReturn)));
        page.settle();
        assert_eq!(kept(page), [named(Arrangement::Split)]);

        // One is used, and undone.
        page.press(&format!("Use this {}", named(Arrangement::HomeRun)));
        let used = saved(page);
        assert_eq!(used.draft.zones[0].arrangement, Arrangement::HomeRun);
        filled(page, 6);
        compare(page, &used, Place::Compare);
        assert_eq!(used.typed.element_length(), rows[5].element);
        page.press("Undo");
        assert_eq!(saved(page).draft, solved.draft);
    });
}

#[test]
fn several_zones_are_given_up_only_when_asked() {
    visit(View::Desk, |page| {
        let draft = two_zones();
        page.open_job(&super::jobs::file(draft.clone()), Place::Compare);
        filled(page, 7);
        compare(page, &saved(page), Place::Compare);
        page.wait_for_text(text::compare_one_zone());
        let split = "Split loop, one zone";
        page.press(&format!("Use this {split}"));
        let used = saved(page);
        assert_eq!((used.draft.zones.len(), used.draft.rooms.len()), (1, draft.rooms.len()));
        // Their own row is gone with the zones.
        filled(page, 6);
        compare(page, &used, Place::Compare);
        page.press("Undo");
        filled(page, 7);
        assert_eq!(saved(page).draft, draft);
        let own = text::layout(&draft, Layout::AsDrawn);
        assert_eq!(order(page)[0], own);
    });
}

#[test]
fn the_comparison_shuts_nobody_out() {
    for view in [View::Phone, View::Narrow] {
        visit(view, |page| {
            page.open_job(&super::jobs::file(two_zones()), Place::Compare);
            filled(page, 7);
            for keep in ["Keep Zones as drawn", "Keep Split loop, one zone"] {
                page.press(keep);
            }
            page.press(text::column(Column::Joints));
            page.settle();
            assert_eq!(page.sideways(), "");
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                let broken: Vec<String> = axe(page).iter().map(|rule| rule.to_string()).collect();
                assert!(broken.is_empty(), "{broken:?}");
                page.picture_of_all(&format!("compare-{view:?}-{theme:?}").to_lowercase());
            }
        });
    }
}
