//! One wall, ceiling or floor, with its windows and doors.

use crate::drawing::{Shows, wall_drawing};
use crate::parts::{
    button, choice, each, kept, live, live_button, number_field, text_box, when, words,
};
use crate::state::{EditKey, use_app};
use finrun_engine::building::{
    Assembly, OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind, Used,
};
use finrun_engine::job::{Behind, Draft, Field, OpeningField, SurfaceField, UValue};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn surface_card(room: RoomId, surface: SurfaceId, open: bool) -> AnyView {
    let app = use_app();
    let seen = app.typed_now(|draft| draft.surface(room, surface).map(|s| s.kind));
    let Some(kind) = seen else { return ().into_any() };
    let is_wall = kind == SurfaceKind::Wall;
    let title = kept(move || app.typed(|draft| text::surface_name(draft, room, surface)));
    let facts = live(move || app.typed(|draft| facts(draft, room, surface)));
    let field = move |field| number_field(Field::Surface(room, surface, field));
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
    let rest = match is_wall {
        true => view! {
            {wall_drawing(room, surface, Shows::Free)}
            <details class="more">
                <summary>{text::more_of_surface()}</summary>
                {field(SurfaceField::Free)}
                {field(SurfaceField::Area)}
            </details>
        }
        .into_any(),
        false => ().into_any(),
    };
    let unheated = when(
        move || {
            app.typed(|d| d.surface(room, surface).is_some_and(|s| s.behind == Behind::Unheated))
        },
        move || field(SurfaceField::BehindTemperature),
    );
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_surface(room, surface));
    let remove_label = live(move || text::act_on(text::remove(), &title.get()));
    view! {
        <details class="surface" open=open>
            <summary><b>{live(move || title.get())}</b> " " <small>{facts}</small></summary>
            {size}
            {behind_choice(room, surface)}
            {unheated}
            {surface_build(room, surface, kind)}
            {openings(room, surface, kind)}
            {rest}
            <div class="acts">{live_button("", remove_label, remove)}</div>
        </details>
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

fn behind_choice(room: RoomId, surface: SurfaceId) -> AnyView {
    let app = use_app();
    let choices = move || {
        let rooms = app.typed(|draft| {
            draft.rooms.iter().map(|r| r.id).filter(|id| *id != room).collect::<Vec<_>>()
        });
        let fixed = [Behind::Outdoors, Behind::Unheated, Behind::SameTemperature];
        fixed.into_iter().chain(rooms.into_iter().map(Behind::Room)).collect::<Vec<_>>()
    };
    let options = Signal::derive(move || {
        app.typed(|draft| {
            choices().into_iter().map(|behind| text::behind(draft, behind)).collect::<Vec<_>>()
        })
    });
    let chosen = Signal::derive(move || {
        let now = app.typed(|d| d.surface(room, surface).map(|s| s.behind));
        choices().into_iter().position(|behind| Some(behind) == now).unwrap_or(0)
    });
    let choose = move |index: usize| {
        let Some(behind) = untrack(choices).get(index).copied() else {
            return;
        };
        app.edit(EditKey::Single, |draft| {
            if let Some(surface) = draft.surface_mut(room, surface) {
                surface.behind = behind;
            }
        });
    };
    let id = format!("room-{}.surface-{}.behind", room.0, surface.0);
    choice(id, text::behind_label(), options, chosen, choose)
}

/// The listed assemblies of a place, then the two ways to type a value.
fn u_values(used: Used) -> Vec<UValue> {
    let listed = Assembly::used_in(used).map(UValue::Listed);
    listed.chain([UValue::TypedU, UValue::TypedR]).collect()
}

fn surface_build(room: RoomId, surface: SurfaceId, kind: SurfaceKind) -> AnyView {
    let app = use_app();
    let used = match kind {
        SurfaceKind::Wall => Used::Wall,
        SurfaceKind::Ceiling => Used::Ceiling,
        SurfaceKind::Floor => Used::Floor,
    };
    let now = move || app.typed(|d| d.surface(room, surface).map_or(UValue::TypedU, |s| s.u_value));
    let set = move |value: UValue| {
        app.edit(EditKey::Single, |draft| {
            if let Some(surface) = draft.surface_mut(room, surface) {
                surface.u_value = value;
            }
        });
    };
    let u = Field::Surface(room, surface, SurfaceField::U);
    let r = Field::Surface(room, surface, SurfaceField::R);
    let id = format!("room-{}.surface-{}.build", room.0, surface.0);
    build(id, used, now, set, u, r)
}

/// How something is built: from the list with its U and source, or a typed U or R.
fn build(
    id: String,
    used: Used,
    now: impl Fn() -> UValue + Copy + Send + Sync + 'static,
    set: impl Fn(UValue) + Send + Sync + 'static,
    u: Field,
    r: Field,
) -> AnyView {
    let app = use_app();
    let options = u_values(used).into_iter().map(|v| text::u_value_basis(v).to_string()).collect();
    let chosen = Signal::derive(move || {
        let now = now();
        u_values(used).into_iter().position(|value| value == now).unwrap_or(0)
    });
    let choose = move |index: usize| {
        if let Some(value) = u_values(used).get(index).copied() {
            set(value);
        }
    };
    let listed = live(move || match now() {
        UValue::Listed(assembly) => text::listed_u(assembly, app.system()),
        UValue::TypedU | UValue::TypedR => String::new(),
    });
    let typed_u = when(move || now() == UValue::TypedU, move || number_field(u));
    let typed_r = when(move || now() == UValue::TypedR, move || number_field(r));
    view! {
        {choice(id, text::built_like(), Signal::stored(options), chosen, choose)}
        <p class="note">{listed}</p>
        {typed_u}
        {typed_r}
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
    let used = match kind {
        OpeningKind::Window => Used::Window,
        OpeningKind::Door => Used::Door,
    };
    let now = move || {
        app.typed(|d| d.opening(room, surface, opening).map_or(UValue::TypedU, |o| o.u_value))
    };
    let set = move |value: UValue| {
        app.edit(EditKey::Single, |draft| {
            if let Some(opening) = draft.opening_mut(room, surface, opening) {
                opening.u_value = value;
            }
        });
    };
    let remove =
        move || app.edit(EditKey::Single, |draft| draft.remove_opening(room, surface, opening));
    let id = format!("room-{}.surface-{}.opening-{}.build", room.0, surface.0, opening.0);
    let name = text::opening_kind(kind);
    view! {
        <fieldset class="opening">
            <legend>{name}</legend>
            <div class="pair">
                {number_field(field(OpeningField::Width))}
                {number_field(field(OpeningField::Height))}
            </div>
            {on_wall.then(|| number_field(field(OpeningField::FromLeft)))}
            {build(id, used, now, set, field(OpeningField::U), field(OpeningField::R))}
            {button("", &text::act_on(text::remove(), name), remove)}
        </fieldset>
    }
    .into_any()
}
