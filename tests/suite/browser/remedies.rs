//! Ways out for a short room, which fill in after the page stands; and what is built beyond the loads.

use fantoccini::key::Key;
use finrun_engine::building::RoomId;
use finrun_engine::job::{CircuitField, Draft, Field, FlowBasis, SurfaceField};
use finrun_engine::oversize::oversize;
use finrun_engine::quantity::Value;
use finrun_engine::remedy::Remedies;
use finrun_text as text;

use super::axe::axe;
use super::figures::compare;
use super::jobs::file;
use super::page::View;
use super::place::Place;
use super::solved::{Figure, Solved, solve};
use super::visit;
use crate::support::{add_room, add_wall, cold_day, set};

/// What stands of both on a page, worked out from the stored job.
pub(super) fn figures(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    match place {
        Place::Loop => ways(solved),
        Place::Lengths => excess(solved),
        _ => Vec::new(),
    }
}

fn ways(solved: &Solved) -> Vec<(String, Figure)> {
    let Solved { draft, job, typed, .. } = solved;
    let all = Remedies::all(job, typed);
    let name = |at: usize| {
        let nth = all.iter().take(at).filter(|before| before.room == all[at].room).count();
        format!("room-{}.way-{nth}", all[at].room.0)
    };
    let words = |at: usize| Figure::Words(text::worked(&all[at], draft, draft.units));
    (0..all.len()).map(|at| (name(at), words(at))).collect()
}

fn excess(solved: &Solved) -> Vec<(String, Figure)> {
    let Some(over) = oversize(&solved.job, &solved.typed) else { return Vec::new() };
    let system = solved.draft.units;
    let number = |value: Value| Figure::Number(value);
    let mut all = vec![
        ("over.note".to_owned(), Figure::Words(text::oversize_note().to_owned())),
        ("over.supply".to_owned(), Figure::Words(text::supply_enough(&over, system))),
        ("over.calls".to_owned(), Figure::Words(text::calls_at_half(&over, system))),
        ("over.back".to_owned(), number(over.back.into())),
        ("over.back-exact".to_owned(), number(over.back_exact.into())),
        ("over.length".to_owned(), number(over.length.into())),
        ("over.pieces".to_owned(), number(over.pieces.into())),
        ("over.margin".to_owned(), number(over.margin.into())),
    ];
    if let Some(burner) = &over.burner {
        all.push(("over.burner".to_owned(), Figure::Words(text::burner_runs(burner))));
    }
    for room in &over.rooms {
        let name = |end: &str| format!("over-{}.{end}", room.room.0);
        all.extend([
            (name("length"), number(room.length.into())),
            (name("pieces"), number(room.pieces.into())),
            (name("margin"), number(room.margin.into())),
        ]);
    }
    all
}

/// One room, whose wall takes 5 ft where 6 are needed.
fn short() -> (Draft, RoomId) {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Study", "12", "10");
    let wall = add_wall(&mut draft, room, "12", "0.5");
    set(&mut draft, Field::Surface(room, wall, SurfaceField::Free), "5' 6\"");
    draft.flow_basis = FlowBasis::Typed;
    set(&mut draft, Field::Circuit(CircuitField::Flow), "4");
    (draft, room)
}

#[test]
fn ways_out_come_and_go_with_the_shortage() {
    let (draft, room) = short();
    for view in [View::Phone, View::Desk] {
        visit(view, |page| {
            page.open_job(&file(draft.clone()), Place::Loop);
            let solved = {
                page.settle();
                solve(page)
            };
            let ways = format!("[data-figure^='room-{}.way-']", room.0);
            let expected = Remedies::all(&solved.job, &solved.typed).len();
            assert!(expected > 5, "{expected}");
            // Each as it is found, the best on top; and the line that says so is gone at the end.
            compare(page, &solved, Place::Loop);
            assert_eq!(page.texts_of(&ways).len(), expected);
            page.wait_until_gone(text::working_out());
            page.screenshot(&format!("ways-out-{view:?}").to_lowercase());
            assert_eq!(page.sideways(), "");
            let broken: Vec<String> = axe(page).iter().map(|rule| rule.to_string()).collect();
            assert!(broken.is_empty(), "{broken:?}");
            page.type_into("Supply", "200");
            page.press_key(Key::Tab);
            page.wait_until_gone(text::remedies());
            assert_eq!(page.texts_of(&ways), [""; 0]);
            page.wait_until_saved();
            compare(page, &solve(page), Place::Lengths);
            page.screenshot(&format!("oversize-{view:?}").to_lowercase());
            assert_eq!(page.sideways(), "");
        });
    }
}
