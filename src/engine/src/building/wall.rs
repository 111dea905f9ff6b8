//! Where baseboard can stand along a wall: everywhere but across a door.

use crate::named::names;
use crate::quantity::Length;
use serde::{Deserialize, Serialize};

/// A stretch of wall at floor level that is free for baseboard.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Run {
    /// Distance of its left end from the wall's left corner, as seen from the room.
    #[serde(rename = "start_m")]
    pub start: Length,
    #[serde(rename = "length_m")]
    pub length: Length,
}

/// Whether baseboard may stand at a wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum WallUse {
    /// Outside walls first, others where those do not suffice.
    #[default]
    AsNeeded,
    /// In this room only at walls so marked.
    Only,
    Never,
}

names!(WallUse {
    AsNeeded = "as-needed",
    Only = "only",
    Never = "never",
});

/// Pieces that stay on one of a wall's runs.
#[derive(Debug, Clone, PartialEq)]
pub struct FixedPieces {
    /// By its place among the wall's.
    pub run: usize,
    /// Longest first.
    pub pieces: Vec<Length>,
}

/// An opening's place along the wall; `from_left` is `None` when it was not measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    pub width: Length,
    pub from_left: Option<Length>,
}

/// Gives each opening a place. Those not measured are spread over the wall with equal gaps, in
/// their order; for one door that is the middle, the place that leaves the shortest runs, so the
/// careful assumption.
pub fn place(wall: Length, openings: &[Placed]) -> Vec<Length> {
    let unmeasured = openings.iter().filter(|opening| opening.from_left.is_none());
    let taken: Length = unmeasured.clone().map(|opening| opening.width).sum();
    let gap = (wall - taken).max(Length::ZERO) / (unmeasured.count() as f64 + 1.0);
    let mut next = gap;
    openings
        .iter()
        .map(|opening| {
            opening.from_left.unwrap_or_else(|| {
                let here = next;
                next += opening.width + gap;
                here
            })
        })
        .collect()
}

/// The stretches between doors, from left to right. `doors` are (from left, width).
pub fn free_runs(wall: Length, doors: &[(Length, Length)]) -> Vec<Run> {
    let mut in_order: Vec<(Length, Length)> = Vec::new();
    for &door in doors {
        let place = in_order.partition_point(|before| before.0 <= door.0);
        in_order.insert(place, door);
    }
    let mut runs = Vec::new();
    let mut at = Length::ZERO;
    for (left, width) in in_order.into_iter().chain([(wall, Length::ZERO)]) {
        if left > at {
            runs.push(Run { start: at, length: left.min(wall) - at });
        }
        at = at.max(left + width);
    }
    runs
}
