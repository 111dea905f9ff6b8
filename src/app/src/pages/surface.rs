//! One wall, ceiling or floor, with its windows and doors.

use crate::drawing::{Shows, WallDrawing};
use crate::parts::{Choice, NumberField, TextBox};
use crate::state::{EditKey, use_app};
use finrun_engine::building::{
    Assembly, OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind, Used,
};
use finrun_engine::job::{Behind, Draft, Field, OpeningField, SurfaceField, UValue};
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn SurfaceCard(room: RoomId, surface: SurfaceId, open: bool) -> impl IntoView {
    let app = use_app();
    let seen = app.draft.with_untracked(|draft| draft.surface(room, surface).map(|s| s.kind));
    let Some(kind) = seen else { return ().into_any() };
    let is_wall = kind == SurfaceKind::Wall;
    let title =
        Memo::new(move |_| app.draft.with(|draft| text::surface_name(draft, room, surface)));
    let facts = Memo::new(move |_| app.draft.with(|draft| facts(draft, room, surface)));
    let field = move |field| Field::Surface(room, surface, field);
    let id = format!("room-{}.surface-{}", room.0, surface.0);
    let name = Signal::derive(move || {
        app.draft.with(|d| d.surface(room, surface).map(|s| s.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(surface.0), |draft| {
            if let Some(surface) = draft.surface_mut(room, surface) {
                surface.name = name;
            }
        });
    };
    let unheated = move || {
        app.draft.with(|d| d.surface(room, surface).is_some_and(|s| s.behind == Behind::Unheated))
    };
    let remove = move |_| app.edit(EditKey::Single, |draft| draft.remove_surface(room, surface));
    view! {
        <details class="surface" open=open>
            <summary><b>{move || title.get()}</b> <small>{move || facts.get()}</small></summary>
            {is_wall.then(|| view! {
                <TextBox id=format!("{id}.name") label=text::which_side() value=name on_text=rename/>
                <div class="pair">
                    <NumberField field=field(SurfaceField::Length)/>
                    <NumberField field=field(SurfaceField::Height)/>
                </div>
            })}
            {(!is_wall).then(|| view! { <NumberField field=field(SurfaceField::Area)/> })}
            <BehindChoice room surface/>
            <Show when=unheated><NumberField field=field(SurfaceField::BehindTemperature)/></Show>
            <SurfaceBuild room surface kind/>
            <Openings room surface kind/>
            {is_wall.then(|| view! {
                <WallDrawing room surface shows=Shows::Free/>
                <details class="more">
                    <summary>{text::more_of_surface()}</summary>
                    <NumberField field=field(SurfaceField::Free)/>
                    <NumberField field=field(SurfaceField::Area)/>
                </details>
            })}
            <div class="acts">
                <button type="button" on:click=remove>
                    {text::remove()} " " {move || title.get()}
                </button>
            </div>
        </details>
    }
    .into_any()
}

/// What is behind it and how long it is, for the closed card.
fn facts(draft: &Draft, room: RoomId, id: SurfaceId) -> String {
    let Some(surface) = draft.surface(room, id) else { return String::new() };
    let mut facts = vec![text::behind(draft, surface.behind)];
    let length = Field::Surface(room, id, SurfaceField::Length);
    if let Some(entry) = draft.entry(length) {
        facts.push(entry.text.clone());
    }
    facts.extend(surface.openings.iter().map(|o| text::opening_kind(o.kind).to_lowercase()));
    facts.join(" · ")
}

#[component]
fn BehindChoice(room: RoomId, surface: SurfaceId) -> impl IntoView {
    let app = use_app();
    let choices = Memo::new(move |_| {
        let rooms = app.draft.with(|draft| {
            draft.rooms.iter().map(|r| r.id).filter(|id| *id != room).collect::<Vec<_>>()
        });
        let fixed = [Behind::Outdoors, Behind::Unheated, Behind::SameTemperature];
        fixed.into_iter().chain(rooms.into_iter().map(Behind::Room)).collect::<Vec<_>>()
    });
    let options = Signal::derive(move || {
        app.draft.with(|draft| {
            choices.get().into_iter().map(|behind| text::behind(draft, behind)).collect::<Vec<_>>()
        })
    });
    let chosen = Signal::derive(move || {
        let now = app.draft.with(|d| d.surface(room, surface).map(|s| s.behind));
        choices.with(|choices| choices.iter().position(|b| Some(*b) == now).unwrap_or(0))
    });
    let choose = move |index: usize| {
        let Some(behind) = choices.with_untracked(|choices| choices.get(index).copied()) else {
            return;
        };
        app.edit(EditKey::Single, |draft| {
            if let Some(surface) = draft.surface_mut(room, surface) {
                surface.behind = behind;
            }
        });
    };
    let id = format!("room-{}.surface-{}.behind", room.0, surface.0);
    view! { <Choice id label=text::behind_label() options chosen on_choose=choose/> }
}

/// The listed assemblies of a place, then the two ways to type a value.
fn u_values(used: Used) -> Vec<UValue> {
    let listed = Assembly::used_in(used).map(UValue::Listed);
    listed.chain([UValue::TypedU, UValue::TypedR]).collect()
}

#[component]
fn SurfaceBuild(room: RoomId, surface: SurfaceId, kind: SurfaceKind) -> impl IntoView {
    let app = use_app();
    let used = match kind {
        SurfaceKind::Wall => Used::Wall,
        SurfaceKind::Ceiling => Used::Ceiling,
        SurfaceKind::Floor => Used::Floor,
    };
    let now = Signal::derive(move || {
        app.draft.with(|d| d.surface(room, surface).map_or(UValue::TypedU, |s| s.u_value))
    });
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
    view! { <Build id used now set=Callback::new(set) u r/> }
}

/// How something is built: from the list with its U and source, or a typed U or R.
#[component]
fn Build(
    id: String,
    used: Used,
    now: Signal<UValue>,
    set: Callback<UValue>,
    u: Field,
    r: Field,
) -> impl IntoView {
    let app = use_app();
    let values = StoredValue::new(u_values(used));
    let options = values.with_value(|values| {
        values.iter().map(|value| text::u_value_basis(*value).to_string()).collect::<Vec<_>>()
    });
    let chosen = Signal::derive(move || {
        let now = now.get();
        values.with_value(|values| values.iter().position(|v| *v == now).unwrap_or(0))
    });
    let choose = move |index: usize| {
        if let Some(value) = values.with_value(|values| values.get(index).copied()) {
            set.run(value);
        }
    };
    let kind = Memo::new(move |_| now.get());
    view! {
        <Choice id label=text::built_like() options=Signal::stored(options) chosen on_choose=choose/>
        {move || match kind.get() {
            UValue::Listed(assembly) => {
                let u = assembly.transmittance();
                let system = app.system();
                view! {
                    <p class="note">
                        "U " {text::value(u, system)} " · R " {text::value(u.resistance(), system)}
                        " · " {text::origin(assembly.origin())}
                    </p>
                }.into_any()
            }
            UValue::TypedU => view! { <NumberField field=u/> }.into_any(),
            UValue::TypedR => view! { <NumberField field=r/> }.into_any(),
        }}
    }
    .into_any()
}

#[component]
fn Openings(room: RoomId, surface: SurfaceId, kind: SurfaceKind) -> impl IntoView {
    let app = use_app();
    let ids = Memo::new(move |_| {
        app.draft.with(|draft| {
            let openings =
                draft.surface(room, surface).map(|s| s.openings.as_slice()).unwrap_or_default();
            openings.iter().map(|o| (o.id, o.kind)).collect::<Vec<_>>()
        })
    });
    let add = move |kind| {
        app.edit(EditKey::Single, |draft| {
            draft.add_opening(room, surface, kind);
        });
    };
    view! {
        <For each=move || ids.get() key=|opening| *opening let:opening>
            <OpeningCard room surface opening=opening.0 kind=opening.1 on_wall={kind == SurfaceKind::Wall}/>
        </For>
        <div class="acts">
            <button type="button" on:click=move |_| add(OpeningKind::Window)>
                {text::add_window()}
            </button>
            <button type="button" on:click=move |_| add(OpeningKind::Door)>
                {text::add_door()}
            </button>
        </div>
    }
    .into_any()
}

#[component]
fn OpeningCard(
    room: RoomId,
    surface: SurfaceId,
    opening: OpeningId,
    kind: OpeningKind,
    on_wall: bool,
) -> impl IntoView {
    let app = use_app();
    let field = move |field| Field::Opening(room, surface, opening, field);
    let used = match kind {
        OpeningKind::Window => Used::Window,
        OpeningKind::Door => Used::Door,
    };
    let now = Signal::derive(move || {
        app.draft.with(|d| d.opening(room, surface, opening).map_or(UValue::TypedU, |o| o.u_value))
    });
    let set = move |value: UValue| {
        app.edit(EditKey::Single, |draft| {
            if let Some(opening) = draft.opening_mut(room, surface, opening) {
                opening.u_value = value;
            }
        });
    };
    let remove =
        move |_| app.edit(EditKey::Single, |draft| draft.remove_opening(room, surface, opening));
    let id = format!("room-{}.surface-{}.opening-{}.build", room.0, surface.0, opening.0);
    let name = text::opening_kind(kind);
    view! {
        <fieldset class="opening">
            <legend>{name}</legend>
            <div class="pair">
                <NumberField field=field(OpeningField::Width)/>
                <NumberField field=field(OpeningField::Height)/>
            </div>
            {on_wall.then(|| view! { <NumberField field=field(OpeningField::FromLeft)/> })}
            <Build id used now set=Callback::new(set) u=field(OpeningField::U) r=field(OpeningField::R)/>
            <button type="button" on:click=remove>{text::act_on(text::remove(), name)}</button>
        </fieldset>
    }
    .into_any()
}
