//! One job in every arrangement.

use crate::shipped::SHIPPED;
use crate::support::{open, solve};
use finrun_engine::compare::side_by_side;
use finrun_engine::job::{Arrangement, Field, HouseField};
use finrun_engine::named::Named;

/// Each row is the job so arranged, the rooms as they were, and the shipped houses are heated by every
/// arrangement.
#[test]
fn shipped_houses_are_heated_in_every_arrangement() {
    for text in SHIPPED {
        let draft = open(text);
        let rows = side_by_side(&draft);
        let arrangements: Vec<Arrangement> = rows.iter().map(|row| row.arrangement).collect();
        assert_eq!(arrangements, Arrangement::ALL);
        for row in &rows {
            assert!(row.solved && row.short == 0, "{}: {row:?}", draft.name);
            assert!(row.least >= 1.0 - 1e-9 && row.most < 1.5, "{}: {row:?}", draft.name);
            let mut changed = draft.clone();
            changed.arrange(draft.zones[0].id, row.arrangement);
            let (_, design) = solve(&changed);
            assert_eq!((row.flow, row.head), (design.piping.flow, design.piping.head));
            assert_eq!(row.element, design.element_length());
        }
        // A valve for each room between mains, for each half of a split loop, none on one loop.
        let rooms = draft.rooms.len();
        let valves: Vec<usize> = rows.iter().map(|row| row.valves).collect();
        assert_eq!(valves, [0, 2, 0, rooms, rooms, rooms], "{}", draft.name);
    }
}

#[test]
fn a_job_that_cannot_be_read_has_no_rows() {
    let mut draft = open(SHIPPED[0]);
    crate::support::set(&mut draft, Field::House(HouseField::Indoors), "warm");
    assert_eq!(side_by_side(&draft), []);
}
