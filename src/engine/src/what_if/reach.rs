//! Which surfaces and openings of a job a change is for.

use crate::building::{OpeningId, OpeningKind, RoomId, RoomUse, SurfaceId, SurfaceKind};
use crate::job::{
    Behind, ChangeDraft, ChangeKind, Draft, Field, OpeningField, RoomDraft, SurfaceDraft,
    SurfaceField, Whose, resolve,
};
use crate::quantity::Area;

/// How much of the house a change is for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    pub count: usize,
    /// Of openings their own, of surfaces without their openings; none while a measure is missing.
    pub area: Option<Area>,
}

/// What a change of surfaces or openings is for; nothing for air and rooms.
pub fn reach(draft: &Draft, change: &ChangeDraft) -> Reach {
    let surfaces = surfaces(draft, change);
    let openings = openings(draft, change);
    let area = |field| resolve(draft, field).si();
    let opening = |&(room, surface, id): &(RoomId, SurfaceId, OpeningId)| {
        let side = |field| area(Field::Opening(room, surface, id, field));
        Some(side(OpeningField::Width)? * side(OpeningField::Height)?)
    };
    let net = |&(room, id): &(RoomId, SurfaceId)| {
        let within = draft.surface(room, id)?.openings.iter();
        let within = within.map(|o| opening(&(room, id, o.id))).sum::<Option<f64>>()?;
        Some(area(Field::Surface(room, id, SurfaceField::Area))? - within)
    };
    let of_surfaces = surfaces.iter().map(net).sum::<Option<f64>>();
    let of_openings = openings.iter().map(opening).sum::<Option<f64>>();
    Reach {
        count: surfaces.len() + openings.len(),
        area: of_surfaces.zip(of_openings).map(|(a, b)| Area::from_si(a + b)),
    }
}

/// What kind of change is for a surface, as whoever stands in the heated room sees it; none where it
/// keeps no heat in.
pub fn kind_of(draft: &Draft, room: &RoomDraft, surface: &SurfaceDraft) -> Option<ChangeKind> {
    let heated = room.used == RoomUse::Heated;
    let beyond = match surface.behind {
        Behind::Room(id) => Some(draft.room(id)?.used == RoomUse::Heated),
        _ => None,
    };
    Some(match (surface.kind, surface.behind) {
        (_, Behind::SameTemperature) => return None,
        (_, Behind::Room(_)) if heated && beyond == Some(true) => return None,
        (SurfaceKind::Wall, Behind::Ground) => ChangeKind::GroundWalls,
        (SurfaceKind::Wall, Behind::Outdoors) => ChangeKind::OutsideWalls,
        (SurfaceKind::Wall, _) => ChangeKind::WallsToUnheated,
        // Entered on the other side, a room's ceiling is the attic's floor.
        (SurfaceKind::Floor, Behind::Room(_)) if beyond == Some(true) => ChangeKind::Ceilings,
        (SurfaceKind::Ceiling, Behind::Room(_)) if beyond == Some(true) => ChangeKind::Floors,
        (SurfaceKind::Ceiling, Behind::Outdoors) if room.used == RoomUse::Attic => {
            ChangeKind::Roofs
        }
        (SurfaceKind::Ceiling, _) => ChangeKind::Ceilings,
        (SurfaceKind::Floor, Behind::Ground) => ChangeKind::Slabs,
        (SurfaceKind::Floor, _) => ChangeKind::Floors,
    })
}

pub(super) fn surfaces(draft: &Draft, change: &ChangeDraft) -> Vec<(RoomId, SurfaceId)> {
    let mut found = Vec::new();
    for room in draft.all_rooms() {
        for surface in &room.surfaces {
            // A space keeps its heat in by its walls in the earth and its roof alone.
            let own = matches!(change.kind, ChangeKind::GroundWalls | ChangeKind::Roofs);
            if kind_of(draft, room, surface) == Some(change.kind)
                && is_for(draft, change.whose, room, surface, own)
            {
                found.push((room.id, surface.id));
            }
        }
    }
    found
}

pub(super) fn openings(draft: &Draft, change: &ChangeDraft) -> Vec<(RoomId, SurfaceId, OpeningId)> {
    let mut found = Vec::new();
    for room in draft.all_rooms() {
        for surface in &room.surfaces {
            if kind_of(draft, room, surface).is_none()
                || !is_for(draft, change.whose, room, surface, false)
            {
                continue;
            }
            let wanted = |kind| match change.kind {
                ChangeKind::Windows => {
                    kind == OpeningKind::Window && surface.kind == SurfaceKind::Wall
                }
                ChangeKind::Skylights => {
                    kind == OpeningKind::Window && surface.kind != SurfaceKind::Wall
                }
                ChangeKind::Doors => kind == OpeningKind::Door,
                _ => false,
            };
            let own = surface.openings.iter().filter(|opening| wanted(opening.kind));
            found.extend(own.map(|opening| (room.id, surface.id, opening.id)));
        }
    }
    found
}

/// Whether a surface is the house's, or that room's: its own, or entered in a space beside it. Those of
/// a space that lead to no room are the house's where `of_spaces` says so.
fn is_for(
    draft: &Draft,
    whose: Whose,
    room: &RoomDraft,
    surface: &SurfaceDraft,
    of_spaces: bool,
) -> bool {
    let beyond = match surface.behind {
        Behind::Room(id) => draft.room(id),
        _ => None,
    };
    match whose {
        Whose::Room(id) => {
            room.id == id
                || (room.used != RoomUse::Heated && beyond.is_some_and(|beyond| beyond.id == id))
        }
        Whose::House => {
            room.used == RoomUse::Heated
                || of_spaces
                || beyond.is_some_and(|beyond| beyond.used == RoomUse::Heated)
        }
    }
}
