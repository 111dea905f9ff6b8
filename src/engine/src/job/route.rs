//! What a room's pipe follows from while it is not typed: its route, its arrangement.

use super::draft::{Draft, RoomDraft};
use super::field::{CircuitField, Field, LegField, RoomField, ZoneField};
use super::piping::{Arrangement, BackPath, LegKind};
use super::resolve::resolve;
use crate::building::{RoomId, ZoneId};
use crate::quantity::{Length, Unit};

/// Feet and elbows of the pipe to a room whose way is not described: judgement.
const USUAL_FT: f64 = 10.0;
const USUAL_ELBOWS: f64 = 4.0;

/// What the way to a room comes to: its route, with the other pipe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    pub length: Length,
    pub elbows: u32,
    /// Ends of the enclosure on the way, and behind the room where it is the last of its loop: all
    /// ways together have the caps of the whole zone.
    pub end_caps: u32,
}

/// The way to a room; none while something of it cannot be read.
pub fn way_to(draft: &Draft, id: RoomId) -> Option<Way> {
    let room = draft.rooms.iter().find(|room| room.id == id)?;
    let si = |field| resolve(draft, Field::Room(id, field)).si();
    let (inside, outside) = route(draft, room)?;
    let length_m = si(RoomField::PipeTo)? + inside.length_m + outside.length_m;
    Some(Way {
        length: Length::from_si(length_m),
        elbows: si(RoomField::Elbows)? as u32 + inside.elbows + outside.elbows,
        end_caps: end_caps(draft, room),
    })
}

/// The enclosure runs on with the pipe along walls and round corners, and ends wherever the pipe
/// leaves it; a way that is not described leaves it. Rooms without an element are not known here.
pub(super) fn end_caps(draft: &Draft, room: &RoomDraft) -> u32 {
    let zone = draft.zone_of(room);
    // Between two mains each element stands by itself.
    if zone.is_some_and(|zone| zone.arrangement.has_branches()) {
        return 2;
    }
    let (first, last) = ends(draft, room);
    let mut caps = u32::from(last);
    let mut inside = !first;
    let mut pass = |next: bool| {
        caps += u32::from(next != inside);
        inside = next;
    };
    if room.route.is_empty() {
        pass(false);
    }
    for leg in &room.route {
        pass(leg.kind.is_inside());
    }
    pass(true);
    caps
}

/// Whether a room is the first of its loop, and whether it is the last.
fn ends(draft: &Draft, room: &RoomDraft) -> (bool, bool) {
    let hung = draft.hung(room);
    let mut alike = draft.rooms.iter().filter(|other| draft.hung(other) == hung);
    let first = alike.next().map(|first| first.id);
    let last = alike.next_back().map(|last| last.id).or(first);
    (first == Some(room.id), last == Some(room.id))
}

/// What may be asked of the pipe to a room, all told.
pub const PIPE_FIELDS: [RoomField; 7] = [
    RoomField::PipeTo,
    RoomField::Elbows,
    RoomField::PipeBack,
    RoomField::ElbowsBack,
    RoomField::BranchPipe,
    RoomField::BranchElbows,
    RoomField::TeeSpacing,
];

/// The pipe that a room has where it hangs, beside its route.
pub fn pipe_fields(draft: &Draft, id: RoomId) -> Vec<RoomField> {
    use RoomField::*;
    let mut fields = vec![PipeTo, Elbows];
    let Some(room) = draft.rooms.iter().find(|room| room.id == id) else { return Vec::new() };
    let Some(zone) = draft.zone_of(room) else { return fields };
    let (_, last) = ends(draft, room);
    let leads_back = match zone.arrangement {
        Arrangement::Series | Arrangement::Split => last && zone.back == BackPath::OwnWay,
        Arrangement::DiverterTees | Arrangement::ReverseReturn => last,
        Arrangement::DirectReturn | Arrangement::HomeRun => true,
    };
    if leads_back {
        fields.extend([PipeBack, ElbowsBack]);
    }
    if zone.arrangement.has_branches() && zone.arrangement != Arrangement::HomeRun {
        fields.extend([BranchPipe, BranchElbows]);
    }
    if zone.arrangement == Arrangement::DiverterTees {
        fields.push(TeeSpacing);
    }
    fields
}

pub(super) fn follow_leg(draft: &Draft, room: RoomId, row: usize) -> Option<f64> {
    Some(Unit::Foot.to_si(draft.room(room)?.route.get(row)?.kind.usual_ft()))
}

/// A trunk leads from the boiler to where the loops part, or to the manifold: judgement. Any other
/// way begins at the boiler.
pub(super) fn follow_zone(draft: &Draft, zone: ZoneId, field: ZoneField) -> Option<f64> {
    let apart = matches!(draft.zone(zone)?.arrangement, Arrangement::Split | Arrangement::HomeRun);
    Some(match (field, apart) {
        // That of the thermostat is measured or not known.
        (ZoneField::Wire, _) => return None,
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
