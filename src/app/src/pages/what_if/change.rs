//! One change: a few questions, whether it counts, and what it costs.

use crate::parts::{
    choice_field, each, kept, live, live_button, number_field, text_box, when, words, yes,
};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::ChangeId;
use finrun_engine::job::{AirBasis, ChangeField, ChangeKind, Choice, Counted, Field};
use finrun_engine::named::Named;
use finrun_engine::what_if::reach;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn change(id: ChangeId) -> AnyView {
    let app = use_app();
    let title = kept(move || app.typed(|draft| text::change_title(draft, id)));
    let name = move || app.typed(|draft| text::change_name(draft, id));
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_change(id));
    let remove_label = live(move || text::act_on(text::remove(), &name()));
    let is_air = move || app.kind(id) == Some(ChangeKind::Air);
    view! {
        <fieldset class="opening">
            <legend>{live(move || title.get())}</legend>
            {counts(id)}
            {choice_field(Choice::ChangeKind(id))}
            {each(move || app.questions(id), move |at| question(id, at))}
            <p class="note" data-figure=format!("change-{}.reach", id.0)>
                {live(move || app.reach_said(id))}
            </p>
            {when(is_air, || view! { <p class="note">{text::tight_house_caution()}</p> }.into_any())}
            {number_field(Field::Change(id, ChangeField::Cost))}
            {live_button("", remove_label, remove)}
        </fieldset>
    }
    .into_any()
}

/// Switches it on and off.
fn counts(id: ChangeId) -> AnyView {
    let app = use_app();
    let on = yes(move || {
        app.typed(|draft| draft.change(id).is_some_and(|of| of.counted == Counted::On))
    });
    let toggle = move |_| {
        app.edit(EditKey::Single, |draft| {
            if let Some(change) = draft.change_mut(id) {
                change.counted = match change.counted {
                    Counted::On => Counted::Off,
                    Counted::Off => Counted::On,
                };
            }
        });
    };
    let element = format!("change-{}.counted", id.0);
    let box_id = element.clone();
    view! {
        <label class="tick" for=element>
            <input id=box_id type="checkbox" prop:checked=on on:change=toggle/>
            {text::change_counts()}
        </label>
    }
    .into_any()
}

/// The questions by their numbers: lists first, then the name of a room, then fields.
const WHOSE: u32 = 0;
const BUILD: u32 = 1;
const LEAKS: u32 = 2;
const CLASS: u32 = 3;
const LEVEL: u32 = 4;
const OUTSIDE: u32 = 5;
const NAME: u32 = 6;
const FIELDS: u32 = 7;

fn question(id: ChangeId, at: u32) -> AnyView {
    match at {
        WHOSE => choice_field(Choice::ChangeWhose(id)),
        BUILD => choice_field(Choice::ChangeBuild(id)),
        LEAKS => choice_field(Choice::ChangeLeaks(id)),
        CLASS => choice_field(Choice::ChangeAirClass(id)),
        LEVEL => choice_field(Choice::ChangeLevel(id)),
        OUTSIDE => choice_field(Choice::OutsideWalls(id)),
        NAME => room_name(id),
        _ => match ChangeField::ALL.get((at - FIELDS) as usize) {
            Some(&field) => number_field(Field::Change(id, field)),
            None => ().into_any(),
        },
    }
}

fn room_name(id: ChangeId) -> AnyView {
    let app = use_app();
    let name = words(move || {
        app.typed(|draft| draft.change(id).map(|of| of.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(id.0), |draft| {
            if let Some(change) = draft.change_mut(id) {
                change.name = name;
            }
        });
    };
    text_box(format!("change-{}.name", id.0), text::new_room_called(), name, rename)
}

impl App {
    fn kind(self, id: ChangeId) -> Option<ChangeKind> {
        self.typed(|draft| draft.change(id).map(|change| change.kind))
    }

    /// What a change of this kind asks.
    fn questions(self, id: ChangeId) -> Vec<u32> {
        self.typed(|draft| {
            let Some(change) = draft.change(id) else { return Vec::new() };
            let mut all = match change.kind {
                ChangeKind::Air if change.leaks == AirBasis::Class => vec![LEAKS, CLASS],
                ChangeKind::Air => vec![LEAKS],
                ChangeKind::RoomLike => vec![WHOSE, NAME],
                ChangeKind::NewRoom => vec![NAME, LEVEL, OUTSIDE],
                _ => vec![WHOSE, BUILD],
            };
            all.extend(change.asked().iter().map(|&field| FIELDS + field as u32));
            all
        })
    }

    fn reach_said(self, id: ChangeId) -> String {
        let system = self.system();
        self.typed(|draft| match draft.change(id) {
            Some(change) if change.kind.used().is_some() => {
                text::reached(&reach(draft, change), system)
            }
            _ => String::new(),
        })
    }
}
