//! The pieces of a whole house chosen together, against every choice that there is.

use crate::support::{DEMO, FOUR_ROOMS, V4_FIXTURE};
use crate::support::{add_room, add_wall, cold_day, job_of, open, set, solve};
use finrun_engine::arrangement::{Counted, Proof, solve_piping};
use finrun_engine::building::{FixedPieces, RoomLoad, WallUse, losses};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, Field, Job, Objective, PriceField, StockField};
use finrun_engine::quantity::{Length, Power, Unit};

const STOCK_FT: [u8; 3] = [3, 4, 7];
/// Invented, and such that a longer piece may be the cheaper one.
const CENTS: [u32; 3] = [2900, 2750, 4100];
const JOINT_CENTS: u32 = 350;
const CAP_CENTS: u32 = 425;

/// Three rooms on a loop of 1/2 in tube, whose water cools so much that a foot more in the first is
/// felt in the last.
fn three_rooms(objective: Objective) -> Draft {
    let mut draft = cold_day();
    for (name, u) in [("A", "0.42"), ("B", "0.30"), ("C", "0.47")] {
        let room = add_room(&mut draft, name, "16", "12");
        add_wall(&mut draft, room, "17", u);
    }
    draft.element.stock_ft = STOCK_FT.to_vec();
    draft.element.objective = objective;
    for (feet, cents) in STOCK_FT.into_iter().zip(CENTS) {
        set(&mut draft, Field::Stocked(feet, StockField::Price), &money(cents));
    }
    set(&mut draft, Field::Price(PriceField::Joint), &money(JOINT_CENTS));
    set(&mut draft, Field::Price(PriceField::EndCap), &money(CAP_CENTS));
    draft
}

fn money(cents: u32) -> String {
    format!("{}.{:02}", cents / 100, cents % 100)
}

/// Every way to fill a wall of so many whole feet.
fn fills(feet: u8) -> Vec<Vec<u8>> {
    fn more(left: u8, longest: u8, so_far: &[u8], out: &mut Vec<Vec<u8>>) {
        out.push(so_far.to_vec());
        for piece in STOCK_FT.into_iter().filter(|&piece| piece <= longest.min(left)) {
            more(left - piece, piece, &[so_far, &[piece]].concat(), out);
        }
    }
    let mut out = Vec::new();
    more(feet, u8::MAX, &[], &mut out);
    out
}

/// The job with just these pieces, and nothing to be added.
fn built(job: &Job, pieces: &[&Vec<u8>]) -> Job {
    let mut job = job.clone();
    for (room, pieces) in job.house.rooms.iter_mut().zip(pieces) {
        let wall = &mut room.surfaces[0];
        wall.wall_use = WallUse::Never;
        let pieces = pieces.iter().map(|&feet| Length::of(f64::from(feet), Unit::Foot)).collect();
        wall.fixed = vec![FixedPieces { run: 0, pieces }];
    }
    job
}

fn cost_cents(pieces: &[&Vec<u8>]) -> u32 {
    let price = |feet: &u8| CENTS[STOCK_FT.iter().position(|other| other == feet).expect("listed")];
    let room = |pieces: &&Vec<u8>| {
        let joints = JOINT_CENTS * (pieces.len() as u32 + 1) + 2 * CAP_CENTS;
        pieces.iter().map(price).sum::<u32>() + if pieces.is_empty() { 0 } else { joints }
    };
    pieces.iter().map(room).sum()
}

/// Of all choices that heat every room: cost, joints, heat of all elements.
fn all_that_heat(job: &Job, loads: &[RoomLoad]) -> Vec<(u32, usize, f64)> {
    let fills = fills(16);
    let mut found = Vec::new();
    for a in &fills {
        for b in &fills {
            for c in &fills {
                let pieces = [a, b, c];
                let solved = solve_piping(&built(job, &pieces), loads);
                let heats = solved.elements.iter().zip(loads).all(|(element, load)| {
                    element.output.si() >= load.wanted().si() * (1.0 - 1e-9)
                });
                if heats {
                    let joints = pieces.iter().filter(|p| !p.is_empty()).map(|p| p.len() + 1).sum();
                    let heat = solved.elements.iter().map(|element| element.output.si()).sum();
                    found.push((cost_cents(&pieces), joints, heat));
                }
            }
        }
    }
    found
}

#[test]
fn no_choice_of_pieces_is_better() {
    let job = job_of(&three_rooms(Objective::Closest));
    let loads = losses(&job.house).rooms;
    let all = all_that_heat(&job, &loads);
    assert!(all.len() > 1000, "{}", all.len());
    let least = |of: fn(&(u32, usize, f64)) -> f64| all.iter().map(of).fold(f64::MAX, f64::min);
    let wanted: f64 = loads.iter().map(|load| load.wanted().si()).sum();
    let cases = [
        (Objective::LeastCost, Counted::Cost, least(|one| f64::from(one.0) / 100.0)),
        (Objective::FewestJoints, Counted::Joints, least(|one| one.1 as f64)),
        (Objective::Closest, Counted::Surplus, least(|one| one.2) - wanted),
    ];
    for (objective, counted, best) in cases {
        let (_, design) = solve(&three_rooms(objective));
        let together = design.together;
        assert_eq!((together.counted, together.proof), (counted, Proof::Best), "{objective:?}");
        assert!(
            (together.value / best - 1.0).abs() < 1e-5,
            "{objective:?} {} {best}",
            together.value
        );
        heated(&design);
    }
    // The three differ, or the test says little.
    let (_, closest) = solve(&three_rooms(Objective::Closest));
    let (_, cheapest) = solve(&three_rooms(Objective::LeastCost));
    assert!(cheapest.element_length() > closest.element_length());
}

fn heated(design: &Design) {
    assert!(design.rooms.iter().all(|room| room.short() == Power::ZERO));
}

/// Pieces that stay are where they were put, in every arrangement's shipped job.
#[test]
fn fixed_pieces_stay() {
    for text in [DEMO, FOUR_ROOMS, V4_FIXTURE] {
        let draft = open(text);
        let (_, before) = solve(&draft);
        let room = before.rooms.iter().find(|room| !room.element.choice.runs.is_empty());
        let (room, run) = room.map(|r| (r.room, r.element.choice.runs[0].clone())).expect("a run");
        let mut fixed = draft.clone();
        fixed.fix_pieces(room, run.surface, 0, vec![3, 2]);
        for objective in [Objective::Closest, Objective::LeastCost, Objective::FewestJoints] {
            fixed.element.objective = objective;
            let (_, design) = solve(&fixed);
            let choice = &design.room(room).expect("the room").element.choice;
            let on =
                choice.runs.iter().find(|other| other.surface == run.surface).expect("its run");
            let feet: Vec<f64> =
                on.pieces.iter().map(|piece| piece.to(Unit::Foot).round()).collect();
            assert!(feet.contains(&3.0) && feet.contains(&2.0), "{feet:?}");
        }
    }
}

/// Walls that are ruled out hold nothing, and a wall that alone may hold pieces holds them all.
#[test]
fn walls_are_honoured() {
    let mut job = job_of(&open(DEMO));
    for objective in [Objective::Closest, Objective::LeastCost] {
        job.baseboard.objective = objective;
        for at in 0..job.house.rooms.len() {
            for wall in 0..job.house.rooms[at].surfaces.len() {
                let mut marked = job.clone();
                let surface = &mut marked.house.rooms[at].surfaces[wall];
                let id = surface.id;
                surface.wall_use = WallUse::Never;
                let on = |design: &Design| {
                    design.rooms[at]
                        .element
                        .choice
                        .runs
                        .iter()
                        .map(|run| run.surface)
                        .collect::<Vec<_>>()
                };
                assert!(!on(&design(&marked)).contains(&id));
                marked.house.rooms[at].surfaces[wall].wall_use = WallUse::Only;
                assert!(on(&design(&marked)).iter().all(|&other| other == id));
            }
        }
    }
}
/// Of each length no more is used than there is, and those bought already come first.
#[test]
fn counts_are_kept() {
    let mut draft = three_rooms(Objective::LeastCost);
    let stocked = |feet, field| Field::Stocked(feet, field);
    set(&mut draft, stocked(4, StockField::Available), "2");
    set(&mut draft, stocked(7, StockField::Available), "1");
    set(&mut draft, stocked(7, StockField::Have), "1");
    let (_, design) = solve(&draft);
    heated(&design);
    assert_eq!(design.together.proof, Proof::Best);
    let used = |feet: f64| {
        let pieces = design.rooms.iter().flat_map(|room| room.element.choice.pieces());
        pieces.filter(|piece| (piece.to(Unit::Foot) - feet).abs() < 1e-9).count()
    };
    assert!(used(4.0) <= 2 && used(7.0) == 2, "{} {}", used(4.0), used(7.0));
    // None left: what heats is not there, and the rooms say so.
    for feet in STOCK_FT {
        set(&mut draft, stocked(feet, StockField::Available), "1");
    }
    let (_, design) = solve(&draft);
    assert!(design.rooms.iter().any(|room| room.short() > Power::ZERO));
    assert_eq!(design.piece_count(), 4);
}
