//! The pages on which the piping is chosen: arrangements, zones, rooms that are moved and dragged, the
//! way to a room, the circulator.

use std::time::Duration;

use fantoccini::Locator;
use fantoccini::actions::{
    InputSource, MOUSE_BUTTON_LEFT, MouseActions, PointerAction, TouchActions,
};
use fantoccini::key::Key;
use finrun_engine::arrangement::{self, CircuitDesign, RunDesign};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::check::practice_length;
use finrun_engine::job::{Arrangement, Balancing, Hung, way_to};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Kind, Length, MassFlow, Value};
use finrun_text as text;

use super::axe::axe;
use super::figures::compare;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Figure, Solved, solve};
use super::visit;
use crate::support::FOUR_ROOMS;

/// What the pages of the piping say, worked out from the stored job.
pub(super) fn figures(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    match place {
        Place::Room(id) => way(solved, id).into_iter().collect(),
        Place::Piping => {
            let mut all = zones(solved);
            all.extend(super::suggested::figures(solved));
            all
        }
        Place::Circulator => {
            let mut all = runs(solved);
            all.extend(balancing(solved));
            all.extend(circulators(solved));
            all.extend(practice(solved));
            all
        }
        _ => Vec::new(),
    }
}

fn number(value: impl Into<Value>) -> Figure {
    Figure::Number(value.into())
}

fn head(head: Length) -> Figure {
    number(Value::new(Kind::Head, head.si()))
}

fn flow(solved: &Solved, flow: MassFlow) -> Figure {
    let circuit = &solved.job.circuit;
    number(flow / circuit.fluid.density(circuit.supply))
}

fn way(solved: &Solved, room: u64) -> Option<(String, Figure)> {
    let way = way_to(&solved.draft, RoomId(room.try_into().ok()?))?;
    let words = text::way(way, solved.draft.units);
    Some((format!("room-{room}.way"), Figure::Words(words)))
}

fn element(solved: &Solved, element: Length, limited: bool) -> Figure {
    let most = limited.then(|| practice_length(solved.job.circuit.tube));
    Figure::Words(text::element_of_usual(element, most, solved.draft.units))
}

fn zones(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let mut all = Vec::new();
    for (zone, of) in design.piping.zones.iter().zip(&job.zones) {
        assert_eq!(zone.zone, of.id);
        let name = |end: &str| format!("zone-{}.{end}", zone.zone.0);
        let series = of.arrangement == Arrangement::Series;
        all.extend([
            (name("flow"), flow(solved, zone.mass_flow)),
            (name("drop"), number(job.circuit.supply - zone.back)),
            (name("head"), head(arrangement::zone_head(job, design, zone.zone))),
            (name("velocity"), number(zone.velocity)),
            (name("element"), element(solved, zone.element, series)),
        ]);
    }
    let split = |circuit: &&CircuitDesign| {
        let of = job.zones.iter().find(|zone| zone.id == circuit.zone);
        of.is_some_and(|zone| zone.arrangement == Arrangement::Split)
    };
    for circuit in design.piping.circuits.iter().filter(split) {
        let room = solved.draft.room(circuit.rooms[0]).expect("its first room");
        let name = |end: &str| format!("zone-{}-{}.{end}", circuit.zone.0, room.branch);
        all.extend([
            (name("flow"), flow(solved, circuit.mass_flow)),
            (name("drop"), number(job.circuit.supply - circuit.back)),
            (name("element"), element(solved, design.element_in(&circuit.rooms), true)),
        ]);
    }
    all
}

fn run(key: &str, run: &RunDesign) -> Vec<(String, Figure)> {
    let name = |end: &str| format!("run-{key}.{end}");
    vec![
        (name("flow"), number(run.flow)),
        (name("head"), head(run.head)),
        (name("velocity"), number(run.velocity)),
        (name("back"), number(run.back)),
        (name("heat"), number(run.heat)),
        (name("watts"), Figure::Words(text::watts(run.electric))),
    ]
}

/// All zones together are worked out anew here: a system that runs as it is designed must give what
/// the design gives.
fn runs(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let every: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    let mut all = run("all", &arrangement::run(job, design, &every));
    for alone in &design.piping.alone {
        all.extend(run(&alone.zones[0].0.to_string(), alone));
    }
    all
}

fn balancing(solved: &Solved) -> Vec<(String, Figure)> {
    let circuits = &solved.typed.piping.circuits;
    let mut all = Vec::new();
    for (at, circuit) in circuits.iter().enumerate().filter(|_| circuits.len() > 1) {
        let name = |end: &str| format!("circuit-{at}.{end}");
        let valve = &circuit.valve;
        let full = solved.job.circuit.parts.balancing.gallons_per_minute();
        let open = valve
            .cv
            .is_none_or(|cv| valve.fitted == Balancing::Valves && (cv / full - 1.0).abs() < 1e-5);
        let cv = valve.cv.map_or(Figure::Words(String::new()), |cv| number(Value::number(cv)));
        all.extend([
            (name("meant"), flow(solved, circuit.target)),
            (name("now"), flow(solved, circuit.mass_flow)),
            (name("valve"), number(valve.pressure)),
            (name("cv"), cv),
            (name("order"), Figure::Words(text::valve_order(valve.order, open))),
            (name("back"), number(circuit.back)),
        ]);
    }
    all
}

fn circulators(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let mut all = Vec::new();
    let mut add = |key: String, does: Option<&arrangement::PumpDesign>| match does {
        Some(does) => all.extend([
            (format!("{key}.flow"), number(does.flow)),
            (format!("{key}.head"), head(does.head)),
            (format!("{key}.watts"), Figure::Words(text::watts(does.electric))),
        ]),
        None => all.push((format!("{key}.flow"), Figure::Words(text::no_rest().to_owned()))),
    };
    for (index, pump) in design.piping.pumps.iter().enumerate() {
        add(format!("pump-{index}"), Some(pump));
        let others = arrangement::alternatives(job, design, index);
        assert!(others.len() >= 3, "the three typical ones");
        for (nth, other) in others.iter().enumerate() {
            add(format!("pump-{index}-{nth}"), other.does.as_ref());
        }
    }
    all
}

fn practice(solved: &Solved) -> Vec<(String, Figure)> {
    let rules = arrangement::practice(&solved.job, &solved.typed);
    let both = rules.iter().enumerate().flat_map(|(at, rule)| {
        [
            (format!("rule-{at}.usual"), number(rule.usual)),
            (format!("rule-{at}.here"), number(rule.here)),
        ]
    });
    both.collect()
}

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
