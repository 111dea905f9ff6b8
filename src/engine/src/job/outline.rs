//! The outline of a room's floor, for a plan.

use super::draft::{Draft, Shape};
use super::field::{Field, RoomField};
use super::resolve::resolve;
use crate::building::RoomId;
use crate::quantity::Length;

/// A rectangle, perhaps with a corner cut out of it, and where it lies if that was typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outline {
    pub length: Length,
    pub width: Length,
    pub cut: Option<(Length, Length)>,
    /// Distances of its near left corner from the house's left side and front.
    pub place: Option<(Length, Length)>,
}

/// The side of a house that a wall faces, as the plan lies: its front at the foot of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    Back,
    Right,
    Front,
    Left,
}

/// The outline of a room, while its floor has a size. One whose area alone is known is a square.
pub fn outline(draft: &Draft, id: RoomId) -> Option<Outline> {
    let si = |field| resolve(draft, Field::Room(id, field)).si();
    let length = |field| si(field).map(Length::from_si);
    let sides = length(RoomField::FloorLength).zip(length(RoomField::FloorWidth));
    let typed_area = draft.entry(Field::Room(id, RoomField::FloorArea)).is_some();
    let (length_of, width) = match sides {
        Some(sides) if !typed_area => sides,
        _ => {
            let side = Length::from_si(si(RoomField::FloorArea)?.max(0.0).sqrt());
            (side, side)
        }
    };
    let cut = match draft.room(id)?.shape {
        Shape::LShape if !typed_area => {
            length(RoomField::CutLength).zip(length(RoomField::CutWidth))
        }
        _ => None,
    };
    let place = length(RoomField::FromLeft).zip(length(RoomField::FromFront));
    Some(Outline { length: length_of, width, cut, place })
}
