//! The windows and doors of a surface: each read, then held against the surface and each other.

use super::surface::read_u;
use super::{Problem, Reader};
use crate::building::{Known, Opening, RoomId, SurfaceKind};
use crate::job::draft::{OpeningDraft, SurfaceDraft};
use crate::job::field::{Field, OpeningField};
use crate::quantity::{Area, Kind, Length, Value};

pub(super) fn read_openings(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    wall_length: Option<Length>,
    wall_height: Option<Length>,
    gross_area: Option<Area>,
) -> Option<Vec<Opening>> {
    // All are read before one that failed ends it: the place of an unmeasured opening waits for
    // the widths of its neighbours, and the error is theirs.
    let openings: Vec<Option<Opening>> = draft
        .openings
        .iter()
        .map(|opening| read_opening(reader, room, draft, opening, wall_length))
        .collect();
    let openings = openings.into_iter().collect::<Option<Vec<_>>>()?;
    check_openings(reader, room, draft, &openings, (wall_length, wall_height, gross_area));
    Some(openings)
}

fn read_opening(
    reader: &mut Reader<'_>,
    room: RoomId,
    surface: &SurfaceDraft,
    draft: &OpeningDraft,
    wall_length: Option<Length>,
) -> Option<Opening> {
    let field = |field| Field::Opening(room, surface.id, draft.id, field);
    let width = reader.length(field(OpeningField::Width));
    let height = reader.length(field(OpeningField::Height));
    let u = read_u(reader, draft.u_value, field(OpeningField::U), field(OpeningField::R));
    // Skylights and hatches have no place along a wall, nor has anything in a wall without length.
    let typed = reader.draft.entry(field(OpeningField::FromLeft)).is_some();
    let placed = wall_length.is_some() || typed;
    let from_left = match surface.kind == SurfaceKind::Wall && placed {
        true => reader.length(field(OpeningField::FromLeft)),
        false => Some(Length::ZERO),
    };
    let typed = |at| reader.draft.entry(field(at)).is_some();
    let size = match typed(OpeningField::Width) && typed(OpeningField::Height) {
        true => Known::Typed,
        false => Known::Assumed,
    };
    let (transmittance, built) = u?;
    Some(Opening {
        id: draft.id,
        kind: draft.kind,
        width: width?,
        height: height?,
        from_left: from_left?,
        transmittance,
        built,
        size,
    })
}

/// Names what does not fit: an opening in its wall, two of a kind beside each other, all together.
fn check_openings(
    reader: &mut Reader<'_>,
    room: RoomId,
    surface: &SurfaceDraft,
    openings: &[Opening],
    (wall_length, wall_height, gross_area): (Option<Length>, Option<Length>, Option<Area>),
) {
    // A hair of slack, so that an opening typed as wide as its wall fits.
    let slack = Length::from_si(1e-6);
    let length_value = |length: Length| Value::new(Kind::Length, length.si());
    for (index, opening) in openings.iter().enumerate() {
        let field = |field| Field::Opening(room, surface.id, opening.id, field);
        let end = opening.from_left + opening.width;
        if let Some(wall) = wall_height
            && opening.height > wall + slack
        {
            let wall = length_value(wall);
            reader.fail(field(OpeningField::Height), Problem::TallerThanWall { wall });
        }
        if let Some(wall) = wall_length {
            let before = openings.iter().take(index).find(|other| {
                other.kind == opening.kind
                    && other.from_left + slack < end
                    && opening.from_left + slack < other.from_left + other.width
            });
            if opening.width > wall + slack {
                let problem = Problem::LongerThanWall { wall: length_value(wall) };
                reader.fail(field(OpeningField::Width), problem);
            } else if end > wall + slack {
                let problem =
                    Problem::PastWallEnd { end: length_value(end), wall: length_value(wall) };
                reader.fail(field(OpeningField::FromLeft), problem);
            } else if let Some(other) = before {
                let ends = length_value(other.from_left + other.width);
                reader.fail(field(OpeningField::FromLeft), Problem::Overlaps { ends });
            }
        }
    }
    let total: Area = openings.iter().map(Opening::area).sum();
    if let (Some(gross), Some(last)) = (gross_area, openings.last())
        && total.si() > gross.si() + 1e-9
    {
        let problem = Problem::OpeningsTooLarge {
            openings: Value::new(Kind::Area, total.si()),
            surface: Value::new(Kind::Area, gross.si()),
        };
        let field = Field::Opening(room, surface.id, last.id, OpeningField::Width);
        reader.fail(field, problem);
    }
}
