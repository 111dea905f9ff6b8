//! The inputs of each room and space: the room in a line, its surfaces and openings in a table.

use super::Seen;
use super::inputs::{lettered, shown, u_origin};
use super::table::{Of, Row, table};
use crate::markup::Markup;
use finrun_engine::building::SurfaceKind;
use finrun_engine::job::{
    Behind, Field, Input, OpeningDraft, OpeningField, RoomDraft, SurfaceDraft, SurfaceField,
    UValue, own_transmittance,
};
use finrun_engine::quantity::{Resistance, Transmittance};
use finrun_text as text;

pub(super) fn rooms(out: &mut Markup, seen: &Seen<'_>, all: &[Input]) {
    out.leaf("h3", &[], text::inputs_rooms());
    for room in seen.draft.all_rooms() {
        let name = text::room_name(seen.draft, room.id);
        out.open("div", &[("class", "one-room")]);
        out.leaf("h4", &[], &name);
        out.leaf("p", &[], &line(seen, room, all));
        let mut rows = Vec::new();
        for surface in &room.surfaces {
            rows.push(of_surface(seen, room, surface, all));
            for opening in &surface.openings {
                rows.push(of_opening(seen, room, surface, opening, all));
            }
        }
        let heads = [
            text::surfaces(),
            text::column_wide(),
            text::column_height(),
            text::column_area(),
            text::column_built(),
            text::column_behind(),
        ];
        table(out, Of::Words, &name, &heads, &rows);
        out.close("div");
    }
}

/// What is said of the room itself: its sides, its height, its temperature, the pipe that reaches it.
fn line(seen: &Seen<'_>, room: &RoomDraft, all: &[Input]) -> String {
    let mut parts = Vec::new();
    for input in all {
        let what = match input.field {
            Field::Room(id, _) if id == room.id => text::whole_label(input.field).to_string(),
            Field::Leg(id, row, _) if id == room.id => match room.route.get(row) {
                Some(leg) => text::leg_kind(leg.kind).to_string(),
                None => continue,
            },
            _ => continue,
        };
        let shown = text::with_origin(&shown(input.value, seen.system), input.origin);
        parts.push(text::named(&what, &shown));
    }
    parts.join("; ")
}

fn of_surface(seen: &Seen<'_>, room: &RoomDraft, surface: &SurfaceDraft, all: &[Input]) -> Row {
    let field = |field| Field::Surface(room.id, surface.id, field);
    let number = |at| lettered(all, field(at), seen.system);
    let typed = all.iter().find(|input| {
        input.field == field(SurfaceField::U) || input.field == field(SurfaceField::R)
    });
    let or_blank = |text: Option<String>| text.unwrap_or_default();
    let mut behind = vec![text::behind(seen.draft, surface.behind)];
    let more = [
        SurfaceField::BehindTemperature,
        SurfaceField::Depth,
        SurfaceField::Perimeter,
        SurfaceField::Free,
    ];
    for at in more {
        if at == SurfaceField::BehindTemperature && surface.behind != Behind::Unheated {
            continue;
        }
        behind.extend(number(at).map(|shown| text::named(text::field_label(field(at)), &shown)));
    }
    if surface.kind == SurfaceKind::Wall && surface.wall_use != Default::default() {
        behind.push(text::wall_use(surface.wall_use).to_string());
    }
    Row::plain(
        text::surface_name(seen.draft, room.id, surface.id),
        vec![
            or_blank(number(SurfaceField::Length)),
            or_blank(number(SurfaceField::Height)),
            or_blank(number(SurfaceField::Area)),
            built(seen, surface.u_value, typed),
            behind.join("; "),
        ],
    )
}

fn of_opening(
    seen: &Seen<'_>,
    room: &RoomDraft,
    surface: &SurfaceDraft,
    opening: &OpeningDraft,
    all: &[Input],
) -> Row {
    let field = |field| Field::Opening(room.id, surface.id, opening.id, field);
    let number = |at| lettered(all, field(at), seen.system);
    let typed = all.iter().find(|input| {
        input.field == field(OpeningField::U) || input.field == field(OpeningField::R)
    });
    let from_left = number(OpeningField::FromLeft)
        .map(|shown| text::named(text::field_label(field(OpeningField::FromLeft)), &shown));
    Row::plain(
        text::inside_of(&text::opening_name(seen.draft, room.id, surface.id, opening.id)),
        vec![
            number(OpeningField::Width).unwrap_or_default(),
            number(OpeningField::Height).unwrap_or_default(),
            String::new(),
            built(seen, opening.u_value, typed),
            from_left.unwrap_or_default(),
        ],
    )
}

/// Of what something is built, and its U.
fn built(seen: &Seen<'_>, value: UValue, typed: Option<&Input>) -> String {
    let u = match value {
        UValue::Listed(listed) => Some(listed.transmittance()),
        UValue::Own(id) => own_transmittance(seen.draft, id),
        UValue::TypedU => typed.map(|input| Transmittance::from_si(input.value.si)),
        UValue::TypedR => typed.map(|input| Resistance::from_si(input.value.si).transmittance()),
    };
    let name = match value {
        UValue::Listed(listed) => text::assembly(listed).to_string(),
        UValue::Own(id) => text::assembly_name(seen.draft, id),
        UValue::TypedU | UValue::TypedR => String::new(),
    };
    let u = u.map(|u| {
        let shown = text::with_origin(&text::value(u, seen.system), u_origin(value, typed));
        text::named("U", &shown)
    });
    [name, u.unwrap_or_default()]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(", ")
}
