//! The first station: the house, and its rooms in the order of the loop.

use crate::page::{JobKey, Page, Section};
use crate::parts::{
    button, button_on, choice_field, each, in_system, kept, live, live_view, number_field,
    text_box, when, words,
};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::{RoomId, RoomUse};
use finrun_engine::job::{AirBasis, Choice, Draft, Field, FieldError, HouseField, Pick};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::Length;
use finrun_text as text;
use leptos::prelude::*;

pub(crate) fn rooms(job: &JobKey) -> AnyView {
    let app = use_app();
    let none = when(
        move || app.typed(|draft| draft.rooms.is_empty()),
        || view! { <p>{text::no_rooms()}</p> }.into_any(),
    );
    let ids = move || app.typed(|draft| draft.in_order().into_iter().map(|id| id.0).collect());
    let rows = {
        let job = job.clone();
        each(ids, move |id| room_row(&job, RoomId(id)))
    };
    let spaces = {
        let job = job.clone();
        let ids = move || app.typed(|draft| draft.spaces.iter().map(|space| space.id.0).collect());
        each(ids, move |id| room_row(&job, RoomId(id)))
    };
    let house = |field| number_field(Field::House(field));
    let by_class = when(
        move || app.typed(|draft| draft.air.basis == AirBasis::Class),
        move || {
            view! { {choice_field(Choice::AirClass)} {house(HouseField::AirChanges)} }.into_any()
        },
    );
    let name = words(move || app.typed(|draft| draft.name.clone()));
    let rename = move |name: String| app.edit(EditKey::Name(0), |draft| draft.name = name);
    view! {
        <h1>{text::station_rooms()}</h1>
        {mend_list()}
        <section class="columns">
            <div>
                <h2>{text::house()}</h2>
                {text_box("job-name".to_string(), text::job_name(), name, rename)}
                {section_links(job, &OF_THE_HOUSE)}
                {house(HouseField::Outdoors)}
                {house(HouseField::Indoors)}
                {house(HouseField::CeilingHeight)}
                {by_class}
            </div>
            <div>
                <h2>{text::rooms_order()}</h2>
                {none}
                <ol class="rooms">{rows}</ol>
                {new_room(job)}
                <h2>{text::spaces()}</h2>
                <p class="note">{text::spaces_note()}</p>
                <ul class="rooms">{spaces}</ul>
                {new_spaces(job)}
            </div>
        </section>
    }
    .into_any()
}

/// What the whole house shares.
const OF_THE_HOUSE: [Section; 4] =
    [Section::Place, Section::Air, Section::Ground, Section::Assemblies];

/// What has a page of its own: name and what it says now.
pub(super) fn section_links(job: &JobKey, sections: &[Section]) -> AnyView {
    let app = use_app();
    let link = |section: Section| {
        let href = Page::Section(job.clone(), section).to_hash();
        let fact = live(move || app.section_fact(section));
        view! {
            <li>
                <a class="room-link" href=href>
                    <b>{section.label()}</b>
                    <small>{fact}</small>
                    <span class="change" aria-hidden="true">{text::change()}</span>
                </a>
            </li>
        }
        .into_any()
    };
    let links = sections.iter().copied().map(link).collect_view();
    view! { <ul class="rooms sections">{links}</ul> }.into_any()
}

/// One button a kind of unheated space.
fn new_spaces(job: &JobKey) -> AnyView {
    let app = use_app();
    let add = |used: RoomUse| {
        let job = job.clone();
        let press = move || {
            let mut id = None;
            app.edit(EditKey::Single, |draft| id = Some(draft.add_space(used, "")));
            if let Some(id) = id {
                app.go(&Page::Room(job.clone(), id));
            }
        };
        button("", &text::add_space(used), press)
    };
    let kinds = RoomUse::ALL.iter().copied().filter(|used| *used != RoomUse::Heated);
    view! { <div class="acts">{kinds.map(add).collect_view()}</div> }.into_any()
}

fn new_room(job: &JobKey) -> AnyView {
    let app = use_app();
    let job = job.clone();
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
    let id = "new-room".to_string();
    view! {
        <form class="new-room" on:submit=add>
            {text_box(id, text::new_room_name(), name.into(), move |text| name.set(text))}
            <button type="submit" class="main-act">{text::add_room()}</button>
        </form>
    }
    .into_any()
}

fn room_row(job: &JobKey, id: RoomId) -> AnyView {
    let app = use_app();
    let name = kept(move || app.typed(|draft| text::room_name(draft, id)));
    let href = Page::Room(job.clone(), id).to_hash();
    let act = move |act: &'static str| move || text::act_on(act, &name.get());
    let edit = move |change: fn(&mut Draft, RoomId)| {
        move || app.edit(EditKey::Single, |draft| change(draft, id))
    };
    let copy = edit(|draft, id| {
        let name = text::copy_name(&text::room_name(draft, id));
        draft.copy_room(id, &name);
    });
    let remove = edit(|draft, id| draft.remove_room(id));
    let earlier = edit(|draft, id| draft.move_room_earlier(id));
    let later = edit(|draft, id| draft.move_room_later(id));
    // The water does not pass an unheated space.
    let heated = app.typed_now(|draft| draft.rooms.iter().any(|room| room.id == id));
    let on_loop = heated.then(|| {
        view! {
            {button_on("", "↑", act(text::earlier()), earlier)}
            {button_on("", "↓", act(text::later()), later)}
            {button_on("", text::copy(), act(text::copy()), copy)}
        }
        .into_any()
    });
    let line = move || {
        let line = app.room_line(id);
        app.typed(|draft| text::hung_line(draft, id, &line))
    };
    view! {
        <li>
            <a class="room-link" href=href>
                <b>{live(move || name.get())}</b>
                <small>{live(line)}</small>
                <span class="change">
                    {text::change()} <span class="said">" " {live(move || name.get())}</span>
                </span>
            </a>
            <div class="row-acts">
                {on_loop}
                {button_on("", text::remove(), act(text::remove()), remove)}
            </div>
        </li>
    }
    .into_any()
}

/// Errors and blanks of the whole job, each a link to its field.
fn mend_list() -> AnyView {
    let app = use_app();
    live_view(move || match app.errors_where(|_| true) {
        errors if errors.is_empty() => ().into_any(),
        errors => view! {
            <section class="mend" aria-labelledby="mend-title">
                <h2 id="mend-title">{text::mend_first()}</h2>
                {error_links(errors)}
            </section>
        }
        .into_any(),
    })
}

/// Sentences that lead to their fields.
pub(super) fn error_links(errors: Vec<(Field, String)>) -> AnyView {
    let app = use_app();
    let link = |(field, sentence): (Field, String)| {
        view! { <li>{button("link", &sentence, move || app.go_to_field(field))}</li> }.into_any()
    };
    view! { <ul>{errors.into_iter().map(link).collect_view()}</ul> }.into_any()
}

/// Whether an error belongs to a room.
pub(super) fn in_room(error: &FieldError, id: RoomId) -> bool {
    matches!(
        error.field,
        Field::Room(room, _)
            | Field::Surface(room, _, _)
            | Field::Opening(room, _, _, _)
            | Field::Leg(room, _, _) if room == id
    )
}

impl App {
    /// One line on what a section says now.
    fn section_fact(self, section: Section) -> String {
        self.typed(|draft| match section {
            Section::Place => match &draft.station {
                Some(station) => text::station_name(station),
                None => text::no_station().to_string(),
            },
            Section::Air => text::pick(draft, Pick::AirBasis(draft.air.basis)),
            Section::Ground => text::soil(draft.ground.soil).to_string(),
            Section::Assemblies => text::own_assemblies(draft.assemblies.len()),
            Section::Prices => text::prices_fact(draft),
            Section::Piping => text::piping_fact(draft),
            Section::Circulator => text::pick(draft, Pick::FlowBasis(draft.flow_basis)),
            Section::Plant => text::pick(draft, Pick::BoilerKind(draft.plant.boiler)),
            Section::Certainty
            | Section::Bills
            | Section::WhatIf
            | Section::Drawings
            | Section::Materials => String::new(),
            Section::Compare => text::compare_fact().to_string(),
            Section::Share => text::share_fact().to_string(),
            Section::Commission => text::readings(draft.progress.readings()),
            Section::Existing => text::pick(draft, Pick::Standing(draft.existing.standing)),
            Section::Install => self.install_fact(),
            Section::Report => text::report_fact().to_string(),
            Section::Season => text::season_fact().to_string(),
            Section::DesignDay => text::night_fact().to_string(),
            Section::Cooler => text::cooler_fact().to_string(),
        })
    }

    /// The errors that `wanted` lets through, each as a sentence.
    pub(super) fn errors_where(self, wanted: impl Fn(&FieldError) -> bool) -> Vec<(Field, String)> {
        let system = self.system();
        let sentence = |error: &FieldError| {
            (error.field, self.typed(|draft| text::problem_at(draft, error, system)))
        };
        self.follows(|outcome| {
            outcome.errors.iter().filter(|error| wanted(error)).map(sentence).collect()
        })
    }

    /// One line on a room in the list: what is missing, or its size and load.
    fn room_line(self, id: RoomId) -> String {
        let system = self.system();
        self.follows(|outcome| {
            let missing = outcome.errors.iter().filter(|error| in_room(error, id)).count();
            if missing > 0 {
                return text::missing_count(missing);
            }
            let bare = self.typed(|draft| draft.room(id).is_some_and(|r| r.surfaces.is_empty()));
            let Some((job, design)) = outcome.solved.as_ref() else {
                return text::complete().to_string();
            };
            let room = job.house.rooms.iter().find(|room| room.id == id);
            match (room, design.room(id)) {
                (None, None) => match design.space(id) {
                    Some(space) => text::space_at(&in_system(space.temperature, system)),
                    None => text::complete().to_string(),
                },
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
