//! Where baseboard can stand: openings placed along a wall, and what doors leave free.

use crate::support::{FOUR_ROOMS, job_of, open};
use finrun_engine::building::wall::{Placed, place};
use finrun_engine::building::{SurfaceId, WallUse, free_runs};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Length, Unit};

fn feet(value: f64) -> Length {
    Length::of(value, Unit::Foot)
}

fn in_feet(length: Length) -> f64 {
    // To a thousandth, so that feet through metres and back compare.
    (length.to(Unit::Foot) * 1000.0).round() / 1000.0
}

#[test]
fn doors_interrupt_what_is_free() {
    // The wall's length, doors as (from left, width), runs as (start, length).
    type Case<'a> = (f64, &'a [(f64, f64)], &'a [(f64, f64)]);
    let cases: [Case<'_>; 10] = [
        (12.0, &[], &[(0.0, 12.0)]),
        (12.0, &[(4.0, 3.0)], &[(0.0, 4.0), (7.0, 5.0)]),
        (12.0, &[(0.0, 3.0)], &[(3.0, 9.0)]),
        (12.0, &[(9.0, 3.0)], &[(0.0, 9.0)]),
        (12.0, &[(0.0, 12.0)], &[]),
        // In whatever order they were entered.
        (20.0, &[(14.0, 3.0), (2.0, 3.0)], &[(0.0, 2.0), (5.0, 9.0), (17.0, 3.0)]),
        // Side by side, overlapping, and one within the other.
        (12.0, &[(3.0, 3.0), (6.0, 3.0)], &[(0.0, 3.0), (9.0, 3.0)]),
        (12.0, &[(3.0, 4.0), (5.0, 4.0)], &[(0.0, 3.0), (9.0, 3.0)]),
        (12.0, &[(2.0, 8.0), (4.0, 2.0)], &[(0.0, 2.0), (10.0, 2.0)]),
        // Past the corner.
        (12.0, &[(10.0, 3.0)], &[(0.0, 10.0)]),
    ];
    for (wall, doors, expected) in cases {
        let doors: Vec<_> = doors.iter().map(|&(at, width)| (feet(at), feet(width))).collect();
        let found: Vec<(f64, f64)> = free_runs(feet(wall), &doors)
            .iter()
            .map(|run| (in_feet(run.start), in_feet(run.length)))
            .collect();
        assert_eq!(found, expected, "{wall} {doors:?}");
    }
}

#[test]
fn openings_without_a_measure_are_spread() {
    // The wall's length, openings as (width, place if measured), and where each then stands.
    type Opening = (f64, Option<f64>);
    let cases: [(f64, Vec<Opening>, Vec<f64>); 6] = [
        // One alone stands in the middle, which leaves the shortest runs beside a door.
        (12.0, vec![(3.0, None)], vec![4.5]),
        (15.0, vec![(3.0, None), (3.0, None)], vec![3.0, 9.0]),
        // Windows and doors share the wall, in their order.
        (13.0, vec![(3.0, None), (4.0, None)], vec![2.0, 7.0]),
        // What is measured stays, and is not reckoned with.
        (12.0, vec![(3.0, Some(1.0)), (4.0, None)], vec![1.0, 4.0]),
        (12.0, vec![(3.0, Some(1.0)), (3.0, None)], vec![1.0, 4.5]),
        // Too wide for the wall: from the corner on, and the reader says so.
        (5.0, vec![(3.0, None), (3.0, None)], vec![0.0, 3.0]),
    ];
    for (wall, openings, expected) in cases {
        let placed: Vec<Placed> = openings
            .iter()
            .map(|&(width, from_left)| Placed {
                width: feet(width),
                from_left: from_left.map(feet),
            })
            .collect();
        let found: Vec<f64> = place(feet(wall), &placed).into_iter().map(in_feet).collect();
        assert_eq!(found, expected, "{wall} {openings:?}");
    }
}

/// What is chosen for walls means the same before and after it is read, whichever two are marked.
#[test]
fn walls_are_ruled_out_alike_in_draft_and_job() {
    let draft = open(FOUR_ROOMS);
    let mut ruled_out = 0;
    for room in &draft.rooms {
        let walls: Vec<SurfaceId> = room.surfaces.iter().map(|wall| wall.id).collect();
        for (&one, &other) in walls.iter().flat_map(|a| walls.iter().map(move |b| (a, b))) {
            for (&first, &second) in WallUse::ALL.iter().zip(WallUse::ALL.iter().rev()) {
                let mut marked = draft.clone();
                for (wall, wall_use) in [(one, first), (other, second)] {
                    marked.surface_mut(room.id, wall).expect("its wall").wall_use = wall_use;
                }
                let job = job_of(&marked);
                let read = job.house.rooms.iter().find(|r| r.id == room.id).expect("its room");
                for wall in &read.surfaces {
                    let allowed = read.allows(wall);
                    assert_eq!(marked.allows(room.id, wall.id), allowed, "{first:?} {second:?}");
                    ruled_out += usize::from(!allowed);
                }
            }
        }
    }
    assert!(ruled_out > 20, "{ruled_out}");
}
