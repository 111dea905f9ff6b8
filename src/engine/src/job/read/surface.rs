//! One wall, ceiling or floor.

use super::{Problem, Reader, openings, shop};
use crate::building::{self, Built, Known, RoomId, Run, Surface, SurfaceKind};
use crate::job::draft::{Behind, SurfaceDraft, UValue};
use crate::job::field::{Field, SurfaceField};
use crate::job::own::own_transmittance;
use crate::job::resolve::runs_between_doors;
use crate::quantity::{Area, Kind, Length, Resistance, Transmittance, Value};

pub(super) fn read_surface(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
) -> Option<Surface> {
    let field = |field| Field::Surface(room, draft.id, field);
    let is_wall = draft.kind == SurfaceKind::Wall;
    let area_typed = reader.draft.entry(field(SurfaceField::Area)).is_some();
    let wall_length = match is_wall {
        // A wall whose area is typed needs no length, unless baseboard is to stand there.
        true if !area_typed || reader.draft.entry(field(SurfaceField::Length)).is_some() => {
            reader.length(field(SurfaceField::Length))
        }
        _ => None,
    };
    let wall_height = match is_wall {
        true => reader.length(field(SurfaceField::Height)),
        false => None,
    };
    let gross_area = reader.si(field(SurfaceField::Area)).map(Area::from_si);
    let u = read_u(reader, draft.u_value, field(SurfaceField::U), field(SurfaceField::R));
    let behind = read_behind(reader, room, draft, wall_height);
    let along = read_along(reader, room, draft, (wall_length, wall_height, gross_area));
    let openings =
        openings::read_openings(reader, room, draft, wall_length, wall_height, gross_area);
    let runs = match is_wall {
        true => read_runs(reader, room, draft, wall_length),
        false => Some(Vec::new()),
    };
    let runs = runs?;
    let fixed = shop::read_fixed(reader, room, draft, &runs);
    let (transmittance, built) = u?;
    Some(Surface {
        id: draft.id,
        kind: draft.kind,
        gross_area: gross_area?,
        along: along?,
        transmittance,
        built,
        behind: behind?,
        openings: openings?,
        runs,
        wall_use: draft.wall_use,
        fixed: fixed?,
    })
}

fn read_behind(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    wall_height: Option<Length>,
) -> Option<building::Behind> {
    let field = |field| Field::Surface(room, draft.id, field);
    match draft.behind {
        Behind::Outdoors => Some(building::Behind::Outdoors),
        Behind::SameTemperature => Some(building::Behind::SameTemperature),
        Behind::Room(id) if id == room => {
            reader.fail(field(SurfaceField::Behind), Problem::BehindItself);
            None
        }
        Behind::Room(id) if reader.draft.room(id).is_none() => {
            reader.fail(field(SurfaceField::Behind), Problem::NeighbourGone);
            None
        }
        Behind::Room(id) => Some(building::Behind::Room(id)),
        Behind::Unheated => {
            let at = field(SurfaceField::BehindTemperature);
            let known = match reader.draft.entry(at) {
                Some(_) => Known::Typed,
                None => Known::Assumed,
            };
            reader.temperature(at).map(|t| building::Behind::Unheated(t, known))
        }
        Behind::Ground => {
            let depth = reader.length(field(SurfaceField::Depth))?;
            if let Some(wall) = wall_height
                && depth.si() > wall.si() + 1e-6
            {
                let wall = Value::new(Kind::Length, wall.si());
                reader.fail(field(SurfaceField::Depth), Problem::DeeperThanWall { wall });
                return None;
            }
            Some(building::Behind::Ground { depth })
        }
    }
}

/// A wall's length, if need be from its area; the typed length of edge of a floor on the ground.
fn read_along(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    (length, height, area): (Option<Length>, Option<Length>, Option<Area>),
) -> Option<Length> {
    match (draft.kind, draft.behind) {
        (SurfaceKind::Wall, _) => match (length, height, area) {
            (Some(length), ..) => Some(length),
            (None, Some(height), Some(area)) => Some(area / height),
            _ => None,
        },
        (SurfaceKind::Floor, Behind::Ground) => {
            let field = Field::Surface(room, draft.id, SurfaceField::Perimeter);
            match reader.draft.entry(field) {
                Some(_) => reader.length(field),
                None => Some(Length::ZERO),
            }
        }
        _ => Some(Length::ZERO),
    }
}

pub(super) fn read_u(
    reader: &mut Reader<'_>,
    value: UValue,
    u: Field,
    r: Field,
) -> Option<(Transmittance, Built)> {
    match value {
        UValue::Listed(assembly) => Some((assembly.transmittance(), Built::Listed(assembly))),
        UValue::Own(id) => {
            let own = own_transmittance(reader.draft, id);
            if own.is_none() && reader.draft.assembly(id).is_none() {
                reader.fail(u, Problem::AssemblyGone);
            }
            // What is wrong with one that is there is said where it is built.
            Some((own?, Built::Own(id)))
        }
        UValue::TypedU => reader.si(u).map(|si| (Transmittance::from_si(si), Built::Typed)),
        UValue::TypedR => {
            reader.si(r).map(|si| (Resistance::from_si(si).transmittance(), Built::Typed))
        }
    }
}

/// The runs between doors, or the one free length that the user typed instead.
fn read_runs(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    wall: Option<Length>,
) -> Option<Vec<Run>> {
    let field = Field::Surface(room, draft.id, SurfaceField::Free);
    if reader.draft.entry(field).is_none() {
        return match wall {
            Some(_) => runs_between_doors(reader.draft, room, draft.id),
            None => Some(Vec::new()),
        };
    }
    let length = reader.length(field)?;
    if let Some(wall) = wall
        && length.si() > wall.si() + 1e-6
    {
        let wall = Value::new(Kind::Length, wall.si());
        reader.fail(field, Problem::LongerThanWall { wall });
        return None;
    }
    match length.si() > 0.0 {
        true => Some(vec![Run { start: Length::ZERO, length }]),
        false => Some(Vec::new()),
    }
}
