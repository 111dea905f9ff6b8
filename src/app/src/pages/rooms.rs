//! The first station: the house, and its rooms in the order of the loop.

use crate::page::{JobKey, Page};
use crate::parts::{Choice, NumberField, TextBox, in_system};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::{AirClass, RoomId};
use finrun_engine::job::{Field, FieldError, HouseField};
use finrun_engine::quantity::Length;
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn Rooms(job: JobKey) -> impl IntoView {
    let app = use_app();
    let ids = Memo::new(move |_| {
        app.draft.with(|draft| draft.rooms.iter().map(|room| room.id).collect::<Vec<_>>())
    });
    let job_for_rows = StoredValue::new(job.clone());
    view! {
        <h1>{text::station_rooms()}</h1>
        <MendList/>
        <section class="columns">
            <div>
                <h2>{text::house()}</h2>
                <TextBox
                    id="job-name"
                    label=text::job_name()
                    value=Signal::derive(move || app.draft.with(|draft| draft.name.clone()))
                    on_text=move |name: String| app.edit(EditKey::Name(0), |draft| draft.name = name)
                />
                <NumberField field=Field::House(HouseField::Outdoors)/>
                <NumberField field=Field::House(HouseField::Indoors)/>
                <AirChoice/>
                <NumberField field=Field::House(HouseField::AirChanges)/>
                <NumberField field=Field::House(HouseField::Altitude)/>
            </div>
            <div>
                <h2>{text::rooms_order()}</h2>
                {move || ids.with(Vec::is_empty).then(|| view! { <p>{text::no_rooms()}</p> })}
                <ol class="rooms">
                    <For each=move || ids.get() key=|id| *id let:id>
                        <RoomRow job=job_for_rows.get_value() id/>
                    </For>
                </ol>
                <NewRoom job/>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn AirChoice() -> impl IntoView {
    let app = use_app();
    let options = AirClass::ALL.map(|class| text::air_class(class).to_string()).to_vec();
    let chosen = Signal::derive(move || {
        app.draft.with(|draft| {
            AirClass::ALL.iter().position(|class| *class == draft.air_class).unwrap_or(0)
        })
    });
    let choose = move |index: usize| {
        if let Some(class) = AirClass::ALL.get(index) {
            app.edit(EditKey::Single, |draft| draft.air_class = *class);
        }
    };
    view! {
        <Choice id="air-class" label=text::how_tight() options=Signal::stored(options) chosen on_choose=choose/>
    }
    .into_any()
}

#[component]
fn NewRoom(job: JobKey) -> impl IntoView {
    let app = use_app();
    let name = RwSignal::new(String::new());
    let add = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let typed = name.get_untracked();
        let mut id = None;
        app.edit(EditKey::Single, |draft| id = Some(draft.add_room(typed.trim())));
        name.set(String::new());
        if let Some(id) = id {
            app.go(&Page::Room(job.clone(), id));
        }
    };
    view! {
        <form class="new-room" on:submit=add>
            <TextBox id="new-room" label=text::new_room_name() value=name on_text=move |text| name.set(text)/>
            <button type="submit" class="main-act">{text::add_room()}</button>
        </form>
    }
    .into_any()
}

#[component]
fn RoomRow(job: JobKey, id: RoomId) -> impl IntoView {
    let app = use_app();
    let name = Memo::new(move |_| app.draft.with(|draft| text::room_name(draft, id)));
    let href = Page::Room(job, id).to_hash();
    let under = move || app.room_line(id);
    let act = move |act: &str| text::act_on(act, &name.get());
    let edit = move |change: fn(&mut finrun_engine::job::Draft, RoomId)| {
        app.edit(EditKey::Single, |draft| change(draft, id));
    };
    let copy = move |_| {
        app.edit(EditKey::Single, |draft| {
            let name = text::copy_name(&text::room_name(draft, id));
            draft.copy_room(id, &name);
        });
    };
    view! {
        <li>
            <a class="room-link" href=href>
                <b>{move || name.get()}</b>
                <small>{under}</small>
                <span class="change">{text::change()}<span class="said">" " {move || name.get()}</span></span>
            </a>
            <div class="row-acts">
                <button type="button" aria-label=move || act(text::earlier())
                    on:click=move |_| edit(|draft, id| draft.move_room_earlier(id))>"↑"</button>
                <button type="button" aria-label=move || act(text::later())
                    on:click=move |_| edit(|draft, id| draft.move_room_later(id))>"↓"</button>
                <button type="button" aria-label=move || act(text::copy()) on:click=copy>
                    {text::copy()}
                </button>
                <button type="button" aria-label=move || act(text::remove())
                    on:click=move |_| edit(|draft, id| draft.remove_room(id))>
                    {text::remove()}
                </button>
            </div>
        </li>
    }
    .into_any()
}

/// Errors and blanks of the whole job, each a link to its field.
#[component]
fn MendList() -> impl IntoView {
    let app = use_app();
    let errors = move || {
        app.outcome.with(|outcome| {
            let system = app.system();
            app.draft.with(|draft| {
                outcome
                    .errors
                    .iter()
                    .map(|error| (error.field, text::problem_at(draft, error, system)))
                    .collect::<Vec<_>>()
            })
        })
    };
    view! {
        {move || {
            let errors = errors();
            (!errors.is_empty()).then(|| view! {
                <section class="mend" aria-labelledby="mend-title">
                    <h2 id="mend-title">{text::mend_first()}</h2>
                    <ul>
                        {errors
                            .into_iter()
                            .map(|(field, sentence)| view! {
                                <li><button type="button" class="link" on:click=move |_| app.go_to_field(field)>
                                    {sentence}
                                </button></li>
                            })
                            .collect_view()}
                    </ul>
                </section>
            })
        }}
    }
    .into_any()
}

/// Whether an error belongs to a room.
pub(super) fn in_room(error: &FieldError, id: RoomId) -> bool {
    matches!(
        error.field,
        Field::Room(room, _) | Field::Surface(room, _, _) | Field::Opening(room, _, _, _) if room == id
    )
}

impl App {
    /// One line on a room in the list: what is missing, or its size and load.
    fn room_line(self, id: RoomId) -> String {
        let system = self.system();
        self.outcome.with(|outcome| {
            let missing = outcome.errors.iter().filter(|error| in_room(error, id)).count();
            if missing > 0 {
                return text::missing_count(missing);
            }
            let bare =
                self.draft.with(|draft| draft.room(id).is_some_and(|r| r.surfaces.is_empty()));
            let Some((job, design)) = &outcome.solved else { return text::complete().to_string() };
            let room = job.rooms.iter().find(|room| room.id == id);
            match (room, design.room(id)) {
                (Some(room), Some(solved)) => {
                    let size = in_system(room.floor_area, system);
                    let load = in_system(solved.load.total, system);
                    let note = if bare { text::nothing_between() } else { "" };
                    let length = match solved.element.choice.nominal > Length::ZERO {
                        true => format!(" · {}", in_system(solved.element.choice.nominal, system)),
                        false => String::new(),
                    };
                    format!("{size} · {load}{length} {note}").trim_end().to_string()
                }
                _ => text::complete().to_string(),
            }
        })
    }
}
