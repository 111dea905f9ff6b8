//! One wall, ceiling or floor, with its windows and doors.

use crate::drawing::{Shows, wall_drawing};
use crate::parts::{
    button, choice_field, each, fold, kept, live, live_button, number_field, text_box, when, words,
    working_of,
};
use crate::state::{EditKey, use_app};
use finrun_engine::building::{OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind};
use finrun_engine::job::{
    Behind, Choice, Draft, Field, OpeningField, Pick, SurfaceField, UValue, own_transmittance,
};
use finrun_engine::trace::built_u;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn surface_card(room: RoomId, surface: SurfaceId, open: bool) -> AnyView {
    let app = use_app();
    let seen = app.typed_now(|draft| draft.surface(room, surface).map(|s| s.kind));
    let Some(kind) = seen else { return ().into_any() };
    let title = kept(move || app.typed(|draft| text::surface_name(draft, room, surface)));
    let facts = live(move || app.typed(|draft| facts(draft, room, surface)));
    let summary =
        view! { <b>{live(move || title.get())}</b> " " <small>{facts}</small> }.into_any();
    let holds = [format!("room-{}.surface-{}.", room.0, surface.0)];
    fold("surface", &holds, open, summary, move || contents(room, surface, kind, title))
}

fn contents(room: RoomId, surface: SurfaceId, kind: SurfaceKind, title: Memo<String>) -> AnyView {
    let app = use_app();
    let is_wall = kind == SurfaceKind::Wall;
    let field = move |field| number_field(Field::Surface(room, surface, field));
    let u = Field::Surface(room, surface, SurfaceField::U);
    let r = Field::Surface(room, surface, SurfaceField::R);
    let size = match is_wall {
        true => view! {
            {side_box(room, surface)}
            <div class="pair">
                {field(SurfaceField::Length)}
                {field(SurfaceField::Height)}
            </div>
        }
        .into_any(),
        false => field(SurfaceField::Area),
    };
    // Baseboard stands in heated rooms only.
    let heated = app.typed_now(|draft| draft.rooms.iter().any(|r| r.id == room));
    let rest = match is_wall {
        true => view! {
            {wall_drawing(room, surface, Shows::Free)}
            {heated.then(|| choice_field(Choice::WallUse(room, surface)))}
            <details class="more">
                <summary>{text::more_of_surface()}</summary>
                {field(SurfaceField::Free)}
                {field(SurfaceField::Area)}
            </details>
        }
        .into_any(),
        false => ().into_any(),
    };
    let lies = move |behind: Behind| {
        move || app.typed(|d| d.surface(room, surface).is_some_and(|s| s.behind == behind))
    };
    let unheated = when(lies(Behind::Unheated), move || field(SurfaceField::BehindTemperature));
    let ground = when(lies(Behind::Ground), move || {
        let edge = (kind == SurfaceKind::Floor).then(|| field(SurfaceField::Perimeter));
        view! { {field(SurfaceField::Depth)} {edge} }.into_any()
    });
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_surface(room, surface));
    let remove_label = live(move || text::act_on(text::remove(), &title.get()));
    view! {
        {size}
        {choice_field(Choice::Behind(room, surface))}
        {unheated}
        {ground}
        {build(Choice::SurfaceBuild(room, surface), u, r)}
        {openings(room, surface, kind)}
        {rest}
        <div class="acts">{live_button("", remove_label, remove)}</div>
    }
    .into_any()
}

/// Which of the walls this is, in the reader's words.
fn side_box(room: RoomId, surface: SurfaceId) -> AnyView {
    let app = use_app();
    let name = words(move || {
        app.typed(|d| d.surface(room, surface).map(|s| s.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(surface.0), |draft| {
            if let Some(surface) = draft.surface_mut(room, surface) {
                surface.name = name;
            }
        });
    };
    let id = format!("room-{}.surface-{}.name", room.0, surface.0);
    text_box(id, text::which_side(), name, rename)
}

/// What is behind it and how long it is, for the closed card.
fn facts(draft: &Draft, room: RoomId, id: SurfaceId) -> String {
    let Some(surface) = draft.surface(room, id) else { return String::new() };
    let mut facts = vec![text::behind(draft, surface.behind)];
    let length = Field::Surface(room, id, SurfaceField::Length);
    if let Some(entry) = draft.entry(length) {
        facts.push(entry.text.clone());
    }
    facts.extend(surface.openings.iter().map(|o| text::opening_kind(o.kind).to_string()));
    facts.join(" · ")
}

/// How something is built: from the list with its U and source, or a typed U or R.
fn build(at: Choice, u: Field, r: Field) -> AnyView {
    let app = use_app();
    let now = move || app.typed(|draft| draft.picked(at));
    let listed = live(move || match now() {
        Some(Pick::Build(UValue::Listed(assembly))) => text::listed_u(assembly, app.system()),
        Some(Pick::Build(UValue::Own(id))) => {
            let u = app.typed(|draft| own_transmittance(draft, id));
            u.map(|u| text::own_u(u, app.system())).unwrap_or_default()
        }
        _ => String::new(),
    });
    let is = move |value: UValue| move || now() == Some(Pick::Build(value));
    // The user's own open on their page.
    let layers = move || match now() {
        Some(Pick::Build(UValue::Listed(assembly))) => assembly.build(),
        _ => None,
    };
    let steps = move || layers().map(|build| built_u(&build)).unwrap_or_default();
    view! {
        {choice_field(at)}
        <p class="note">{listed}</p>
        {when(move || layers().is_some(), move || working_of(steps, text::u_from_layers().into_any()))}
        {when(is(UValue::TypedU), move || number_field(u))}
        {when(is(UValue::TypedR), move || number_field(r))}
    }
    .into_any()
}

fn openings(room: RoomId, surface: SurfaceId, kind: SurfaceKind) -> AnyView {
    let app = use_app();
    let ids = move || {
        app.typed(|draft| {
            let openings =
                draft.surface(room, surface).map(|s| s.openings.as_slice()).unwrap_or_default();
            openings.iter().map(|opening| opening.id.0).collect()
        })
    };
    let add = move |kind| {
        move || {
            app.edit(EditKey::Single, |draft| {
                draft.add_opening(room, surface, kind);
            });
        }
    };
    let on_wall = kind == SurfaceKind::Wall;
    view! {
        {each(ids, move |id| opening_card(room, surface, OpeningId(id), on_wall))}
        <div class="acts">
            {button("", text::add_window(), add(OpeningKind::Window))}
            {button("", text::add_door(), add(OpeningKind::Door))}
        </div>
    }
    .into_any()
}

fn opening_card(room: RoomId, surface: SurfaceId, opening: OpeningId, on_wall: bool) -> AnyView {
    let app = use_app();
    let seen = app.typed_now(|d| d.opening(room, surface, opening).map(|o| o.kind));
    let Some(kind) = seen else { return ().into_any() };
    let field = move |field| Field::Opening(room, surface, opening, field);
    let remove =
        move || app.edit(EditKey::Single, |draft| draft.remove_opening(room, surface, opening));
    let built = Choice::OpeningBuild(room, surface, opening);
    let name = text::opening_kind(kind);
    view! {
        <fieldset class="opening">
            <legend>{name}</legend>
            <div class="pair">
                {number_field(field(OpeningField::Width))}
                {number_field(field(OpeningField::Height))}
            </div>
            {on_wall.then(|| number_field(field(OpeningField::FromLeft)))}
            {build(built, field(OpeningField::U), field(OpeningField::R))}
            {button("", &text::act_on(text::remove(), name), remove)}
        </fieldset>
    }
    .into_any()
}
