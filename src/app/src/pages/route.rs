//! The pipe that reaches a room: its way step by step, and what else counts where the room hangs.

use crate::parts::{button, choice_field, each, fold, live, number_field, when};
use crate::state::{EditKey, use_app};
use finrun_engine::building::RoomId;
use finrun_engine::job::{
    Choice, Field, LegField, LegKind, PIPE_FIELDS, RoomField, pipe_fields, way_to,
};
use finrun_engine::named::Named as _;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn way_to_room(room: RoomId) -> AnyView {
    let mut holds = vec![format!("room-{}.leg-", room.0)];
    holds.extend(PIPE_FIELDS.map(|field| Field::Room(room, field).to_string()));
    fold("more", &holds, false, text::pipe_to_room().into_any(), move || way(room))
}

fn way(room: RoomId) -> AnyView {
    let app = use_app();
    let rows = move || {
        let count = app.typed(|draft| draft.room(room).map_or(0, |room| room.route.len()));
        (0..count as u32).collect()
    };
    let add = move || app.edit(EditKey::Single, |draft| draft.add_leg(room, LegKind::Along));
    let fields = move || {
        let fields = app.typed(|draft| pipe_fields(draft, room));
        fields.into_iter().map(|field| field as u32).collect()
    };
    let field = move |at: u32| match RoomField::ALL.get(at as usize) {
        Some(field) => number_field(Field::Room(room, *field)),
        None => ().into_any(),
    };
    let described =
        move || app.typed(|draft| draft.room(room).is_some_and(|r| !r.route.is_empty()));
    let beside = when(described, || view! { <p class="note">{text::other_pipe()}</p> }.into_any());
    let comes_to = live(move || {
        let system = app.system();
        let way = app.typed(|draft| way_to(draft, room));
        way.map(|way| text::way(way, system)).unwrap_or_default()
    });
    view! {
        <h2>{text::way_there()}</h2>
        <p class="note">{text::way_there_note()}</p>
        {each(rows, move |row| step(room, row as usize))}
        <div class="acts">{button("", text::add_step(), add)}</div>
        {beside}
        <div class="pair">{each(fields, field)}</div>
        <p><b data-figure=format!("room-{}.way", room.0)>{comes_to}</b></p>
    }
    .into_any()
}

fn step(room: RoomId, row: usize) -> AnyView {
    let app = use_app();
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_leg(room, row));
    let name = text::step_name(row);
    view! {
        <fieldset class="opening">
            <legend>{name.clone()}</legend>
            <div class="pair">
                {choice_field(Choice::Leg(room, row))}
                {number_field(Field::Leg(room, row, LegField::Length))}
            </div>
            {button("", &text::act_on(text::remove(), &name), remove)}
        </fieldset>
    }
    .into_any()
}
