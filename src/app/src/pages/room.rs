//! One room: its size, its surfaces, the pipe that reaches it.

use super::rooms::in_room;
use super::surface::SurfaceCard;
use crate::page::{JobKey, Page, Station};
use crate::parts::{NumberField, TextBox, figure};
use crate::state::{EditKey, use_app};
use finrun_engine::building::{Assembly, RoomId, SurfaceId, SurfaceKind};
use finrun_engine::job::{Behind, Draft, Field, RoomField, UValue};
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn RoomPage(job: JobKey, room: RoomId) -> impl IntoView {
    let app = use_app();
    let exists = Memo::new(move |_| app.draft.with(|draft| draft.room(room).is_some()));
    let job = StoredValue::new(job);
    move || match exists.get() {
        true => view! { <Whole job=job.get_value() room/> }.into_any(),
        // Undone or removed in the meantime.
        false => view! {
            <p>{text::no_such_room()}</p>
            <a class="act" href=Page::Station(job.get_value(), Station::Rooms).to_hash()>
                {text::station_rooms()}
            </a>
        }
        .into_any(),
    }
}

#[component]
fn Whole(job: JobKey, room: RoomId) -> impl IntoView {
    let app = use_app();
    let title = Memo::new(move |_| app.draft.with(|draft| text::room_name(draft, room)));
    let name = Signal::derive(move || {
        app.draft.with(|draft| draft.room(room).map(|r| r.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(room.0), |draft| {
            if let Some(room) = draft.room_mut(room) {
                room.name = name;
            }
        });
    };
    let load = move || {
        app.outcome.with(|outcome| {
            let (_, design) = outcome.solved.as_ref()?;
            let solved = design.room(room)?;
            Some(figure(&format!("room-{}.load", room.0), solved.load.total))
        })
    };
    view! {
        <h1>{move || title.get()} <small>{load}</small></h1>
        <section class="columns">
            <div>
                <TextBox id="room-name" label=text::room_name_label() value=name on_text=rename/>
                <div class="pair">
                    <NumberField field=Field::Room(room, RoomField::FloorLength)/>
                    <NumberField field=Field::Room(room, RoomField::FloorWidth)/>
                </div>
                <NumberField field=Field::Room(room, RoomField::Height)/>
                <details class="more">
                    <summary>{text::more_of_room()}</summary>
                    <NumberField field=Field::Room(room, RoomField::FloorArea)/>
                    <NumberField field=Field::Room(room, RoomField::Temperature)/>
                    <NumberField field=Field::Room(room, RoomField::AirChanges)/>
                </details>
                <details class="more">
                    <summary>{text::pipe_to_room()}</summary>
                    <NumberField field=Field::Room(room, RoomField::PipeTo)/>
                    <NumberField field=Field::Room(room, RoomField::Elbows)/>
                </details>
            </div>
            <div>
                <h2>{text::surfaces()}</h2>
                <p class="note">{text::surfaces_note()}</p>
                <Surfaces room/>
            </div>
        </section>
        <Done job room/>
    }
    .into_any()
}

#[component]
fn Surfaces(room: RoomId) -> impl IntoView {
    let app = use_app();
    let ids = Memo::new(move |_| {
        app.draft.with(|draft| {
            let surfaces =
                draft.room(room).map(|room| room.surfaces.as_slice()).unwrap_or_default();
            surfaces.iter().map(|surface| surface.id).collect::<Vec<_>>()
        })
    });
    // The one that was just added stands open.
    let fresh: RwSignal<Option<SurfaceId>> = RwSignal::new(None);
    let add = move |change: fn(&mut Draft, RoomId) -> Option<SurfaceId>| {
        let mut id = None;
        app.edit(EditKey::Single, |draft| id = change(draft, room));
        fresh.set(id);
    };
    view! {
        <For each=move || ids.get() key=|id| *id let:id>
            <SurfaceCard room surface=id open=fresh.get_untracked() == Some(id)/>
        </For>
        <div class="acts">
            <button type="button" on:click=move |_| {
                add(|draft, room| draft.add_surface(room, SurfaceKind::Wall));
            }>{text::add_outside_wall()}</button>
            <button type="button" on:click=move |_| add(add_inside_wall)>
                {text::add_inside_wall()}
            </button>
            <button type="button" on:click=move |_| {
                add(|draft, room| draft.add_surface(room, SurfaceKind::Ceiling));
            }>{text::add_ceiling()}</button>
            <button type="button" on:click=move |_| add(add_floor)>{text::add_floor()}</button>
        </div>
    }
    .into_any()
}

/// A wall to a space of the same temperature: there only for its baseboard.
fn add_inside_wall(draft: &mut Draft, room: RoomId) -> Option<SurfaceId> {
    let id = draft.add_surface(room, SurfaceKind::Wall)?;
    let surface = draft.surface_mut(room, id)?;
    surface.behind = Behind::SameTemperature;
    surface.u_value = UValue::Listed(Assembly::Partition);
    Some(id)
}

/// A floor is seldom open to outdoors below.
fn add_floor(draft: &mut Draft, room: RoomId) -> Option<SurfaceId> {
    let id = draft.add_surface(room, SurfaceKind::Floor)?;
    draft.surface_mut(room, id)?.behind = Behind::Unheated;
    Some(id)
}

/// Back to the rooms, or on to the next; what is missing is said first, once.
#[component]
fn Done(job: JobKey, room: RoomId) -> impl IntoView {
    let app = use_app();
    let said = RwSignal::new(false);
    let next = {
        let job = job.clone();
        move || {
            app.draft.with(|draft| {
                let index = draft.rooms.iter().position(|r| r.id == room)?;
                let id = draft.rooms.get(index + 1)?.id;
                Some(Page::Room(job.clone(), id).to_hash())
            })
        }
    };
    let errors = Memo::new(move |_| {
        let system = app.system();
        app.outcome.with(|outcome| {
            outcome
                .errors
                .iter()
                .filter(|error| in_room(error, room))
                .map(|error| (error.field, app.draft.with(|d| text::problem_at(d, error, system))))
                .collect::<Vec<_>>()
        })
    });
    let done = move |_| {
        let fields: Vec<Field> =
            errors.with_untracked(|e| e.iter().map(|(field, _)| *field).collect());
        // A second press goes all the same: nothing locks the reader in.
        if fields.is_empty() || said.get_untracked() {
            app.go(&Page::Station(job.clone(), Station::Rooms));
        } else {
            said.set(true);
            app.ask_for(fields);
        }
    };
    view! {
        {move || (said.get() && errors.with(|e| !e.is_empty())).then(|| view! {
            <section class="mend" role="alert">
                <h2>{text::done_with_errors()}</h2>
                <ul>
                    {errors
                        .get()
                        .into_iter()
                        .map(|(field, sentence)| view! {
                            <li><button type="button" class="link" on:click=move |_| app.go_to_field(field)>
                                {sentence}
                            </button></li>
                        })
                        .collect_view()}
                </ul>
            </section>
        })}
        <div class="acts">
            <button type="button" class="main-act" on:click=done>{text::done_room()}</button>
            {move || next().map(|href| view! { <a class="act" href=href>{text::next_room()}</a> })}
        </div>
    }
    .into_any()
}
