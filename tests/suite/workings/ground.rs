//! What the earth takes where the ways of finding it meet.

use super::houses::{basement, slab};
use crate::support::{set, solve};
use finrun_engine::building::Path;
use finrun_engine::design::Design;
use finrun_engine::job::{
    Behind, Draft, EdgeBasis, Field, GroundField, GroundMethod, SurfaceField,
};

/// Losses through the ground: the steady ones, and those of the coldest month.
fn ground(design: &Design, room: usize) -> (f64, f64) {
    let of = |which: fn(&Path) -> bool| {
        let paths = design.rooms[room].load.paths.iter().filter(|p| which(&p.path));
        paths.map(|p| p.loss.si()).sum()
    };
    (of(|p| matches!(p, Path::Ground(_))), of(|p| matches!(p, Path::GroundSwing(_))))
}

/// The F-factor is a slab's; what lies deeper follows ISO 13370 by either method, also in a room
/// that has no floor on the ground.
#[test]
fn a_wall_in_the_earth_loses_alike_by_either_method_for_slabs() {
    let iso = basement();
    let mut by_factor = basement();
    by_factor.ground.method = GroundMethod::FFactor;
    let (iso, by_factor) = (solve(&iso).1, solve(&by_factor).1);
    for room in 0..iso.rooms.len() {
        let (steady, swing) = ground(&iso, room);
        assert!(steady > 0.0 && swing > 0.0, "{room}");
        assert_eq!((steady, swing), ground(&by_factor, room), "{room}");
    }
}

/// A closet's share of a good edge would save more than its share of the floor loses.
#[test]
fn no_floor_gains_heat_from_the_ground() {
    let mut draft = slab();
    let (bare, _) = ground(&solve(&draft).1, 2);
    draft.ground.edge = EdgeBasis::Vertical;
    let (usual, _) = ground(&solve(&draft).1, 2);
    set(&mut draft, Field::Ground(GroundField::EdgeR), "60");
    set(&mut draft, Field::Ground(GroundField::EdgeDepth), "12");
    let design = solve(&draft).1;
    assert!(bare > usual && usual >= 0.0, "{bare}, {usual}");
    assert_eq!(ground(&design, 2).0, 0.0);
    assert!(ground(&design, 0).0 > 0.0);
}

/// A house that stands in the earth on one side has a slab's edge on the others: insulation there
/// counts in the steady part and in the coldest month's alike.
#[test]
fn an_edge_counts_where_it_lies_on_grade() {
    let walk_out = |edge: EdgeBasis| -> Draft {
        let mut draft = slab();
        draft.ground.edge = edge;
        let (room, walls) = (draft.rooms[0].id, draft.rooms[0].surfaces.clone());
        draft.set_behind(room, walls[0].id, Behind::Ground);
        set(&mut draft, Field::Surface(room, walls[0].id, SurfaceField::Depth), "5");
        draft
    };
    let (bare, bare_swing) = ground(&solve(&walk_out(EdgeBasis::None)).1, 0);
    let (good, good_swing) = ground(&solve(&walk_out(EdgeBasis::Vertical)).1, 0);
    assert!(good < bare && good_swing < bare_swing, "{bare} {bare_swing}: {good} {good_swing}");
}
