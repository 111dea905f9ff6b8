//! Where baseboard can stand along a wall: everywhere but across a door.

use super::OpeningKind;
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

/// An opening's place along the wall; `from_left` is `None` when it was not measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    pub kind: OpeningKind,
    pub width: Length,
    pub from_left: Option<Length>,
}

/// Gives each opening a place. Those not measured are spread with equal gaps, which for one door
/// is the middle of the wall: the place that leaves the shortest runs, so the careful assumption.
///
/// Windows and doors are spread apart from each other: a window may stand beside a door.
pub fn place(wall: Length, openings: &[Placed]) -> Vec<Length> {
    openings
        .iter()
        .map(|opening| {
            opening.from_left.unwrap_or_else(|| {
                let alike: Vec<&Placed> = openings
                    .iter()
                    .filter(|o| o.kind == opening.kind && o.from_left.is_none())
                    .collect();
                let taken: Length = alike.iter().map(|o| o.width).sum();
                let gap = (wall - taken).max(Length::ZERO) / (alike.len() as f64 + 1.0);
                let index = alike.iter().position(|o| std::ptr::eq(*o, opening)).unwrap_or(0);
                let before: Length = alike.iter().take(index).map(|o| o.width).sum();
                before + gap * (index as f64 + 1.0)
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
