//! What a room's pipe follows from while it is not typed: its route, its arrangement.

use super::draft::{Draft, RoomDraft};
use super::field::{CircuitField, Field, LegField, RoomField, ZoneField};
use super::piping::{Arrangement, LegKind};
use super::resolve::resolve;
use crate::building::{RoomId, ZoneId};
use crate::quantity::Unit;

/// Feet and elbows of the pipe to a room whose way is not described: judgement.
const USUAL_FT: f64 = 10.0;
const USUAL_ELBOWS: f64 = 4.0;

pub(super) fn follow_leg(draft: &Draft, room: RoomId, row: usize) -> Option<f64> {
    Some(Unit::Foot.to_si(draft.room(room)?.route.get(row)?.kind.usual_ft()))
}

/// A trunk leads from the boiler to where the loops part, or to the manifold: judgement. Any other
/// way begins at the boiler.
pub(super) fn follow_zone(draft: &Draft, zone: ZoneId, field: ZoneField) -> Option<f64> {
    let apart = matches!(draft.zone(zone)?.arrangement, Arrangement::Split | Arrangement::HomeRun);
    Some(match (field, apart) {
        (_, false) => 0.0,
        (ZoneField::Trunk, true) => Unit::Foot.to_si(USUAL_FT),
        (ZoneField::TrunkElbows, true) => USUAL_ELBOWS,
    })
}

/// Pipe and elbows that are not typed.
pub(super) fn follow_pipe(draft: &Draft, room: &RoomDraft, field: RoomField) -> Option<f64> {
    let described = !room.route.is_empty();
    match field {
        RoomField::PipeTo if described => Some(0.0),
        RoomField::Elbows if described => Some(0.0),
        RoomField::PipeTo => Some(Unit::Foot.to_si(USUAL_FT)),
        RoomField::Elbows => Some(USUAL_ELBOWS),
        RoomField::PipeBack | RoomField::ElbowsBack => {
            let length = field == RoomField::PipeBack;
            if returns_alike(draft, room) {
                let to = if length { RoomField::PipeTo } else { RoomField::Elbows };
                let own = resolve(draft, Field::Room(room.id, to)).si()?;
                return Some(own + legs(draft, room, length)?);
            }
            let back = if length { CircuitField::ReturnPipe } else { CircuitField::ReturnElbows };
            resolve(draft, Field::Circuit(back)).si()
        }
        _ => None,
    }
}

/// Whether what leads back from a room lies beside what leads there.
fn returns_alike(draft: &Draft, room: &RoomDraft) -> bool {
    let arrangement = draft.zone_of(room).map(|zone| zone.arrangement);
    matches!(arrangement, Some(Arrangement::DirectReturn | Arrangement::HomeRun))
}

/// Length, or elbows, of the whole route.
fn legs(draft: &Draft, room: &RoomDraft, length: bool) -> Option<f64> {
    let (inside, outside) = route(draft, room)?;
    Some(if length {
        inside.length_m + outside.length_m
    } else {
        f64::from(inside.elbows + outside.elbows)
    })
}

/// Part of a route, added up.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Sum {
    pub(super) length_m: f64,
    pub(super) elbows: u32,
}

/// A room's route: what of it lies in the enclosure, and what outside the rooms.
pub(super) fn route(draft: &Draft, room: &RoomDraft) -> Option<(Sum, Sum)> {
    let (mut inside, mut outside) = (Sum::default(), Sum::default());
    for (row, leg) in room.route.iter().enumerate() {
        let length = resolve(draft, Field::Leg(room.id, row, LegField::Length)).si()?;
        let sum = if LegKind::is_inside(leg.kind) { &mut inside } else { &mut outside };
        sum.length_m += length;
        sum.elbows += leg.kind.elbows();
    }
    Some((inside, outside))
}
