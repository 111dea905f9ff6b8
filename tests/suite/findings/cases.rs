//! What a case is, and the changes that several make: what is changed in the sound job, and what
//! findings come and go with it.

use super::{FIRST, FIRST_WALL, SECOND, SECOND_WALL};
use crate::support::set;
use finrun_engine::job::{CircuitField, Draft, Field, FlowBasis, SurfaceField};

pub(super) struct Case {
    pub(super) change: fn(&mut Draft),
    /// Findings that the change brings.
    pub(super) brings: &'static [&'static str],
    /// Findings of the sound job that it takes away.
    pub(super) takes: &'static [&'static str],
}

pub(super) fn circuit(draft: &mut Draft, field: CircuitField, text: &str) {
    set(draft, Field::Circuit(field), text);
}

pub(super) fn typed_flow(draft: &mut Draft, gpm: &str) {
    draft.flow_basis = FlowBasis::Typed;
    circuit(draft, CircuitField::Flow, gpm);
}

pub(super) fn wall(draft: &mut Draft, field: SurfaceField, first: &str, second: &str) {
    set(draft, Field::Surface(FIRST, FIRST_WALL, field), first);
    set(draft, Field::Surface(SECOND, SECOND_WALL, field), second);
}

/// Fifty feet of wall, so that any length fits; the area stays 96 ft2.
pub(super) fn long_walls(draft: &mut Draft, u: &str) {
    wall(draft, SurfaceField::Length, "50", "50");
    wall(draft, SurfaceField::Area, "96", "96");
    wall(draft, SurfaceField::U, u, u);
}
