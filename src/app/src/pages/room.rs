//! One room: its size, its surfaces, the pipe that reaches it.

use super::rooms::{error_links, in_room};
use super::route::way_to_room;
use super::surface::surface_card;
use crate::page::{JobKey, Page, Station};
use crate::parts::{
    button, choice_field, each, figure, fold, live, live_view, number_field, text_box, when, words,
    yes,
};
use crate::state::{EditKey, use_app};
use finrun_engine::building::{RoomId, RoomUse, SurfaceId, SurfaceKind};
use finrun_engine::job::{Behind, Choice, Draft, Field, RoomField, Shape};
use finrun_engine::quantity::Value;
use finrun_text as text;
use leptos::prelude::*;

pub(crate) fn room_page(job: &JobKey, room: RoomId) -> AnyView {
    let app = use_app();
    let exists = yes(move || app.typed(|draft| draft.room(room).is_some()));
    let job = job.clone();
    live_view(move || match exists.get() {
        true => untrack(|| whole(&job, room)),
        // Undone or removed in the meantime.
        false => view! {
            <p>{text::no_such_room()}</p>
            <a class="act" href=Page::Station(job.clone(), Station::Rooms).to_hash()>
                {text::station_rooms()}
            </a>
        }
        .into_any(),
    })
}

fn whole(job: &JobKey, room: RoomId) -> AnyView {
    let app = use_app();
    let title = live(move || app.typed(|draft| text::room_name(draft, room)));
    let name = words(move || {
        app.typed(|draft| draft.room(room).map(|r| r.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(room.0), |draft| {
            if let Some(room) = draft.room_mut(room) {
                room.name = name;
            }
        });
    };
    let result = move || {
        app.design(|solved| {
            let (_, design) = solved.as_ref()?;
            let load = design.room(room).map(|solved| ("load", Value::from(solved.load.total)));
            load.or_else(|| Some(("temperature", Value::from(design.space(room)?.temperature))))
        })
    };
    let load = live_view(move || match result() {
        Some((what, value)) => figure(&format!("room-{}.{what}", room.0), value),
        None => ().into_any(),
    });
    let field = move |field| number_field(Field::Room(room, field));
    let cut = when(
        move || app.typed(|draft| draft.room(room).is_some_and(|r| r.shape == Shape::LShape)),
        move || {
            view! {
                <div class="pair">
                    {field(RoomField::CutLength)}
                    {field(RoomField::CutWidth)}
                </div>
            }
            .into_any()
        },
    );
    let used = app.typed_now(|draft| draft.room(room).map(|r| r.used)).unwrap_or_default();
    let heated = used == RoomUse::Heated;
    let approach = heated.then(|| way_to_room(room));
    let vents = (used == RoomUse::CrawlSpace).then(|| field(RoomField::VentArea));
    let on_plan = heated.then(|| {
        let fields = [RoomField::FromLeft, RoomField::FromFront];
        let holds = fields.map(|field| Field::Room(room, field).to_string());
        fold("more", &holds, false, text::plan_place().into_any(), move || {
            view! { <div class="pair">{fields.map(field).collect_view()}</div> }.into_any()
        })
    });
    let more = {
        let mut fields = vec![RoomField::FloorArea, RoomField::Temperature, RoomField::AirChanges];
        fields.extend(heated.then_some(RoomField::OtherHeat));
        let holds: Vec<String> =
            fields.iter().map(|one| Field::Room(room, *one).to_string()).collect();
        fold("more", &holds, false, text::more_of_room().into_any(), move || {
            fields.iter().map(|one| field(*one)).collect_view().into_any()
        })
    };
    view! {
        <h1>{title} " " <small>{load}</small></h1>
        <section class="columns">
            <div>
                {text_box("room-name".to_string(), text::room_name_label(), name, rename)}
                <div class="pair">
                    {heated.then(|| choice_field(Choice::Level(room)))}
                    {choice_field(Choice::Shape(room))}
                </div>
                <div class="pair">
                    {field(RoomField::FloorLength)}
                    {field(RoomField::FloorWidth)}
                </div>
                {cut}
                {field(RoomField::Height)}
                {vents}
                {more}
                {approach}
                {on_plan}
            </div>
            <div>
                <h2>{text::surfaces()}</h2>
                <p class="note">{text::surfaces_note()}</p>
                {surfaces(room)}
            </div>
        </section>
        {done(job, room)}
    }
    .into_any()
}

fn surfaces(room: RoomId) -> AnyView {
    let app = use_app();
    let ids = move || {
        app.typed(|draft| {
            let surfaces =
                draft.room(room).map(|room| room.surfaces.as_slice()).unwrap_or_default();
            surfaces.iter().map(|surface| surface.id.0).collect()
        })
    };
    let add = move |change: fn(&mut Draft, RoomId) -> Option<SurfaceId>| {
        move || {
            app.edit(EditKey::Single, |draft| {
                change(draft, room);
            });
        }
    };
    let cards = each(ids, move |id| {
        // The one that was just added stands open.
        let newest = app.typed_now(|draft| draft.next_id == id + 1);
        surface_card(room, SurfaceId(id), newest)
    });
    // Each is offered while there is nothing yet of what it adds.
    let has_none = move |kind: fn(SurfaceKind) -> bool| {
        move || {
            app.typed(|draft| {
                draft.room(room).is_none_or(|r| !r.surfaces.iter().any(|s| kind(s.kind)))
            })
        }
    };
    let shell = when(has_none(|_| true), move || {
        let add = move || app.edit(EditKey::Single, |draft| draft.add_shell(room));
        button("", text::add_shell(), add)
    });
    let walls = when(has_none(|kind| kind == SurfaceKind::Wall), move || {
        let add = move || app.edit(EditKey::Single, |draft| draft.add_walls(room));
        button("", text::add_four_walls(), add)
    });
    view! {
        {cards}
        <div class="acts">
            {shell}
            {walls}
            {button("", text::add_outside_wall(), add(|draft, room| {
                draft.add_surface(room, SurfaceKind::Wall)
            }))}
            {button("", text::add_inside_wall(), add(add_inside_wall))}
            {button("", text::add_ceiling(), add(|draft, room| {
                draft.add_surface(room, SurfaceKind::Ceiling)
            }))}
            {button("", text::add_floor(), add(add_floor))}
        </div>
    }
    .into_any()
}

/// A wall to a space of the same temperature: there only for its baseboard.
fn add_inside_wall(draft: &mut Draft, room: RoomId) -> Option<SurfaceId> {
    draft.add_surface_to(room, SurfaceKind::Wall, Behind::SameTemperature)
}

/// A floor is seldom open to outdoors below.
fn add_floor(draft: &mut Draft, room: RoomId) -> Option<SurfaceId> {
    draft.add_surface_to(room, SurfaceKind::Floor, Behind::Ground)
}

/// Back to the rooms, or on to the next; what is missing is said first, once.
fn done(job: &JobKey, room: RoomId) -> AnyView {
    let app = use_app();
    let said = RwSignal::new(false);
    let next = {
        let job = job.clone();
        let id = Memo::new(move |_| {
            app.typed(|draft| {
                let order = draft.in_order();
                let index = order.iter().position(|id| *id == room)?;
                order.get(index + 1).copied()
            })
        });
        live_view(move || match id.get() {
            Some(id) => {
                let href = Page::Room(job.clone(), id).to_hash();
                view! { <a class="act" href=href>{text::next_room()}</a> }.into_any()
            }
            None => ().into_any(),
        })
    };
    let errors = move || app.errors_where(|error| in_room(error, room));
    let job = job.clone();
    let finish = move || {
        let fields: Vec<Field> = untrack(errors).into_iter().map(|(field, _)| field).collect();
        // A second press goes all the same: nothing locks the reader in.
        if fields.is_empty() || said.get_untracked() {
            app.go(&Page::Station(job.clone(), Station::Rooms));
        } else {
            said.set(true);
            app.ask_for(fields);
        }
    };
    let list = live_view(move || match errors() {
        errors if said.get() && !errors.is_empty() => view! {
            <section class="mend" role="alert">
                <h2>{text::done_with_errors()}</h2>
                {error_links(errors)}
            </section>
        }
        .into_any(),
        _ => ().into_any(),
    });
    view! {
        {list}
        <div class="acts">
            {button("main-act", text::done_room(), finish)}
            {next}
        </div>
    }
    .into_any()
}
