//! The pages on which the piping is chosen: arrangements, zones, rooms that are moved and dragged, the
//! way to a room, the circulator.

mod figures;

use std::time::Duration;

use fantoccini::Locator;
use fantoccini::actions::{
    InputSource, MOUSE_BUTTON_LEFT, MouseActions, PointerAction, TouchActions,
};
use fantoccini::key::Key;
use finrun_engine::arrangement;
use finrun_engine::building::RoomId;
use finrun_engine::job::{Arrangement, Hung, way_to};
use finrun_engine::named::Named as _;
use finrun_text as text;

use super::axe::axe;
use super::figures::compare;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Solved, solve};
use super::visit;
use crate::support::FOUR_ROOMS;
pub(super) use figures::figures;
use figures::run;

/// The order of the rooms by their names, each zone and loop a list.
pub(super) fn order(solved: &Solved) -> Vec<Vec<String>> {
    let draft = &solved.draft;
    let mut lists: Vec<(Hung, Vec<String>)> = Vec::new();
    for id in draft.in_order() {
        let room = draft.room(id).expect("a room");
        let hung = draft.hung(room);
        match lists.iter_mut().find(|(known, _)| *known == hung) {
            Some((_, list)) => list.push(room.name.clone()),
            None => lists.push((hung, vec![room.name.clone()])),
        }
    }
    lists.into_iter().map(|(_, list)| list).collect()
}

pub(super) fn solve_saved(page: &Page) -> Solved {
    page.settle();
    page.wait_until_saved();
    solve(page)
}

#[test]
fn another_arrangement_needs_no_room_typed_again() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Piping);
        let before = solve_saved(page);
        let rooms = |solved: &Solved| {
            let rooms = solved.draft.rooms.iter();
            rooms
                .map(|room| (room.id, room.entries.clone(), room.surfaces.clone()))
                .collect::<Vec<_>>()
        };
        let mut lengths = Vec::new();
        for &arrangement in Arrangement::ALL {
            page.go(Place::Piping);
            page.choose("Arrangement", text::arrangement(arrangement));
            page.wait_for_text(text::arrangement_note(arrangement));
            let solved = solve_saved(page);
            assert_eq!(solved.draft.zones[0].arrangement, arrangement);
            assert_eq!(rooms(&solved), rooms(&before), "{arrangement:?}");
            for place in [Place::Piping, Place::Lengths, Place::Circulator] {
                compare(page, &solved, place);
            }
            let element = solved.typed.element_length().si();
            assert!(element > 1.0, "{arrangement:?}");
            lengths.push(element);
        }
        // A room on tees has part of the flow, which cools more: it needs more element.
        assert!(lengths[2] > lengths[0], "{lengths:?}");
        assert!(solve(page).draft.zones.len() == 1);
    });
}

#[test]
fn a_room_moves_to_another_zone_by_its_list_and_by_buttons() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Piping);
        let names: Vec<String> = order(&solve_saved(page)).concat();
        page.press("Add a zone");
        page.wait_for_text("No room hangs here");
        page.within("Zone 2", || page.type_into("Name of the zone", "Upstairs"));
        page.within(&names[0], || page.choose("Zone", "Upstairs"));
        page.within(&names[3], || page.choose("Zone", "Upstairs"));
        let lists = |wanted: [&[usize]; 2]| {
            wanted.map(|list| list.iter().map(|&at| names[at].clone()).collect::<Vec<_>>()).to_vec()
        };
        let solved = solve_saved(page);
        assert_eq!(order(&solved), lists([&[1, 2], &[0, 3]]));
        assert_eq!(solved.typed.piping.alone.len(), 2);
        for place in [Place::Piping, Place::Circulator] {
            compare(page, &solved, place);
        }

        page.go(Place::Piping);
        page.press(&format!("Later {}", names[0]));
        page.press(&format!("Earlier {}", names[2]));
        let solved = solve_saved(page);
        assert_eq!(order(&solved), lists([&[2, 1], &[3, 0]]));
        compare(page, &solved, Place::Piping);
        // The list of rooms says where each hangs, in the same order.
        page.go(Place::Rooms);
        let shown = page.texts_of(".rooms .room-link b");
        let at = [2, 1, 3, 0].map(|at| names[at].clone());
        assert_eq!(
            shown.iter().filter(|name| names.contains(name)).cloned().collect::<Vec<_>>(),
            at
        );
        page.wait_for_text("Upstairs ·");

        page.go(Place::Piping);
        page.choose("Zones are started by", "A circulator for each zone");
        page.within("Upstairs", || page.choose("Circulator", "High head, a typical curve"));
        let solved = solve_saved(page);
        assert_eq!(solved.typed.piping.pumps.len(), 2);
        compare(page, &solved, Place::Circulator);

        page.go(Place::Piping);
        page.press("Remove Upstairs");
        assert_eq!(order(&solve_saved(page)).len(), 1);
        page.press("Undo");
        assert_eq!(order(&solve_saved(page)), lists([&[2, 1], &[3, 0]]));
    });
}

/// Drags the handle of one room by mouse or finger to a place of another's row, as a share of its
/// height from the top.
#[track_caller]
pub(super) fn drag(page: &Page, room: &str, to: &str, share: f64) {
    let row = |name: &str| {
        let css = format!("//li[.//b[text()='{name}']]");
        page.wait_on(page.client.find(Locator::XPath(&css))).expect("a row of that name")
    };
    let (from, target) = (row(room), row(to));
    let grip = page.wait_on(from.find(Locator::Css(".grip"))).expect("a handle");
    // Both rows in sight, clear of the bars.
    page.script(
        "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })",
        vec![serde_json::json!(target)],
    );
    let (_, _, _, height) = page.wait_on(target.rectangle()).expect("its size");
    let moment = Some(Duration::from_millis(60));
    let steps = [
        PointerAction::MoveToElement { element: grip, duration: moment, x: 0.0, y: 0.0 },
        PointerAction::Down { button: MOUSE_BUTTON_LEFT },
        PointerAction::MoveBy { duration: moment, x: 4.0, y: 4.0 },
        PointerAction::MoveToElement {
            element: target,
            duration: moment,
            x: 0.0,
            y: height * (share - 0.5),
        },
        PointerAction::Up { button: MOUSE_BUTTON_LEFT },
    ];
    let dragged = match page.view.touch() {
        true => {
            let finger = TouchActions::new("finger".to_owned());
            page.wait_on(
                page.client
                    .perform_actions(steps.into_iter().fold(finger, |all, step| all.then(step))),
            )
        }
        false => {
            let mouse = MouseActions::new("mouse".to_owned());
            page.wait_on(
                page.client
                    .perform_actions(steps.into_iter().fold(mouse, |all, step| all.then(step))),
            )
        }
    };
    page.asked("dragging", dragged);
}

#[test]
fn a_room_is_dragged_by_mouse_and_by_finger() {
    for view in [View::Desk, View::Phone] {
        visit(view, |page| {
            page.open_job(FOUR_ROOMS, Place::Piping);
            let names: Vec<String> = order(&solve_saved(page)).concat();
            let named = |list: [usize; 4]| vec![list.map(|at| names[at].clone()).to_vec()];
            // Onto the upper part of a row: before it; onto the lower part: behind it.
            drag(page, &names[1], &names[0], 0.2);
            assert_eq!(order(&solve_saved(page)), named([1, 0, 2, 3]), "{view:?}");
            drag(page, &names[1], &names[2], 0.8);
            assert_eq!(order(&solve_saved(page)), named([0, 2, 1, 3]), "{view:?}");
            drag(page, &names[2], &names[3], 0.8);
            assert_eq!(order(&solve_saved(page)), named([0, 1, 3, 2]), "{view:?}");
            page.press("Undo");
            let solved = solve_saved(page);
            assert_eq!(order(&solved), named([0, 2, 1, 3]), "one drag is one step");
            compare(page, &solved, Place::Piping);
        });
    }
}

#[test]
fn the_way_to_a_room_is_told_step_by_step() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let before = solve_saved(page);
        let room = before.rooms()[1]["room"].as_u64().expect("a number");
        compare(page, &before, Place::Room(room));
        page.press("Add a step");
        page.press("Add a step");
        page.within("Step 2", || {
            page.choose("Step", "Under a doorway: down and up again");
            page.type_into("Pipe on this step", "7 ft");
            page.press_key(Key::Tab);
        });
        let solved = solve_saved(page);
        compare(page, &solved, Place::Room(room));
        let way = way_to(&solved.draft, RoomId(room as u32)).expect("a way");
        let typed = way_to(&before.draft, RoomId(room as u32)).expect("a way");
        // 2 ft along the wall, 7 ft and four elbows by the door, a cap on each side of it.
        let more = way.length - typed.length;
        assert!((more.si() - 9.0 * 0.3048).abs() < 1e-9, "{way:?}");
        assert_eq!((way.elbows, way.end_caps), (typed.elbows + 4, 2));
        assert_ne!(solved.typed.piping, before.typed.piping);
        page.press("Remove Step 2");
        page.wait_until_gone("Step 2");
        compare(page, &solve_saved(page), Place::Room(room));
    });
}

#[test]
fn a_curve_that_rises_is_told_at_its_point() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Circulator);
        page.choose("How is the flow fixed?", "By the circulator's curve");
        page.choose("Circulator", "I have its curve");
        for (row, flow, head) in [("Row 1", "0", "12"), ("Row 2", "6", "14"), ("Row 3", "12", "2")]
        {
            page.within(row, || {
                page.type_into("Flow", flow);
                page.type_into("Head", head);
                page.press_key(Key::Tab);
            });
        }
        let error = page.text_of("#pump\\.point-2\\.head-error");
        assert!(!error.is_empty());
        assert_eq!(page.texts_of("#pump\\.point-1\\.head-error"), [""; 0]);
        page.within("Row 2", || {
            page.type_into("Head", "9");
            page.press_key(Key::Tab);
        });
        let solved = solve_saved(page);
        compare(page, &solved, Place::Circulator);
        assert_eq!(page.texts_of("#pump\\.point-2\\.head-error"), [""; 0]);
    });
}

#[test]
fn any_zones_are_tried_together() {
    visit(View::Desk, |page| {
        page.open_job(FOUR_ROOMS, Place::Piping);
        let names: Vec<String> = order(&solve_saved(page)).concat();
        for (nth, zone) in [(1, "Zone 2"), (2, "Zone 3")] {
            page.press("Add a zone");
            page.within(&names[nth], || page.choose("Zone", zone));
        }
        let solved = solve_saved(page);
        compare(page, &solved, Place::Circulator);
        page.press("Zone 2");
        let on = [solved.job.zones[0].id, solved.job.zones[2].id];
        let tried = arrangement::run(&solved.job, &solved.typed, &on);
        for (name, figure) in run("tried", &tried) {
            let css = format!("[data-figure='{name}']");
            assert_eq!(page.text_of(&css), figure.text(solved.draft.units), "{name}");
        }
        // Looked at, not stored.
        assert_eq!(solve_saved(page).draft, solved.draft);
        page.press("Zone 2");
        page.settle();
        assert_eq!(page.texts_of("[data-figure='run-tried.flow']"), [""; 0]);
    });
}

/// The pages with one zone are looked at by whoever looks at all pages; here with all kinds at once.
#[test]
fn pages_of_many_zones_shut_nobody_out() {
    use finrun_engine::job::{Choice, Draft, Pick, PumpKind, Zoning};
    let mut draft: Draft = crate::support::open(FOUR_ROOMS);
    draft.zoning = Zoning::Circulators;
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    draft.arrange(draft.zones[0].id, Arrangement::Split);
    let tees = draft.add_zone();
    draft.arrange(tees, Arrangement::DiverterTees);
    draft.place_room(rooms[3], Hung { zone: tees, branch: 0 }, None);
    draft.add_zone();
    draft.pick(Choice::ZonePump(tees), Pick::Pump(PumpKind::Points));
    visit(View::Phone, |page| {
        page.open_job(&super::jobs::file(draft), Place::Piping);
        for place in [Place::Piping, Place::Circulator] {
            page.go(place);
            page.unfold();
            page.settle();
            assert_eq!(page.sideways(), "", "{place:?}");
            let broken: Vec<String> = axe(page).iter().map(|rule| rule.to_string()).collect();
            assert!(broken.is_empty(), "{place:?}: {broken:?}");
        }
    });
}
