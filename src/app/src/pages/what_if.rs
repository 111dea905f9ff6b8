//! What if: changes to the house that are only weighed, and the house before and after them.

mod change;
mod weighed;

use self::weighed::weighed;
use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{button, choice_field, each, number_field};
use crate::state::{EditKey, use_app};
use finrun_engine::building::ChangeId;
use finrun_engine::job::{BillsField, ChangeKind, Choice, Field};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn what_if(job: &JobKey) -> AnyView {
    let app = use_app();
    let ids = move || app.typed(|draft| draft.what_if.iter().map(|change| change.id.0).collect());
    let add = move || {
        app.edit(EditKey::Single, |draft| {
            draft.add_change(ChangeKind::Windows);
        });
    };
    let inside = view! {
        <p class="note">{text::what_if_note()}</p>
        <section class="columns">
            <div>
                <h2>{text::changes_title()}</h2>
                {each(ids, move |id| change::change(ChangeId(id)))}
                <div class="acts">{button("", text::add_change(), add)}</div>
                <h2>{text::weigh_fuel()}</h2>
                {choice_field(Choice::Fuel)}
                {number_field(Field::Bills(BillsField::Efficiency))}
                {number_field(Field::Bills(BillsField::Price))}
            </div>
            <div>
                <h2>{text::before_and_after()}</h2>
                {weighed()}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::WhatIf, inside)
}
