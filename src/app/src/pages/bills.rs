//! Fuel bills, and the house they tell of beside the calculated one.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{button, choice_field, each, kept, live, live_button, number_field, words, yes};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::BillId;
use finrun_engine::job::{BillDraft, BillField, BillsField, Choice, Field};
use finrun_text as text;
use leptos::prelude::*;
use web_sys::HtmlInputElement;

pub(super) fn bills(job: &JobKey) -> AnyView {
    let app = use_app();
    let ids = move || app.typed(|draft| draft.bills.list.iter().map(|bill| bill.id.0).collect());
    let add = move || {
        app.edit(EditKey::Single, |draft| {
            draft.add_bill();
        });
    };
    let inside = view! {
        <p data-figure="bills">{live(move || app.bills_said())}</p>
        <section class="columns">
            <div>
                <h2>{text::bills()}</h2>
                <p class="note">{text::bills_note()}</p>
                {each(ids, move |id| bill(BillId(id)))}
                <div class="acts">{button("", text::add_bill(), add)}</div>
            </div>
            <div>
                <h2>{text::bills_heating()}</h2>
                {choice_field(Choice::Fuel)}
                {number_field(Field::Bills(BillsField::Efficiency))}
                {number_field(Field::Bills(BillsField::Indoors))}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Bills, inside)
}

fn bill(id: BillId) -> AnyView {
    let app = use_app();
    // Its number changes when an earlier one is removed.
    let name = kept(move || {
        let index = app.typed(|draft| draft.bills.list.iter().position(|bill| bill.id == id));
        text::bill_name(index.unwrap_or(0))
    });
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_bill(id));
    let remove_label = live(move || text::act_on(text::remove(), &name.get()));
    view! {
        <fieldset class="opening">
            <legend>{live(move || name.get())}</legend>
            <div class="pair">
                {day(id, BillField::From, |bill| &mut bill.from)}
                {day(id, BillField::To, |bill| &mut bill.to)}
            </div>
            <div class="pair">
                {number_field(Field::Bill(id, BillField::Amount))}
                {number_field(Field::Bill(id, BillField::DegreeDays))}
            </div>
            {live_button("", remove_label, remove)}
        </fieldset>
    }
    .into_any()
}

/// A day from the calendar that the browser shows.
fn day(id: BillId, field: BillField, at: fn(&mut BillDraft) -> &mut String) -> AnyView {
    let app = use_app();
    let field = Field::Bill(id, field);
    let element = field.to_string();
    let error = format!("{element}-error");
    let typed = Signal::derive(move || app.typed(|draft| draft.typed_text(field)));
    // On the way to a year lie many that are wrong.
    let typing = RwSignal::new(false);
    let said = kept(move || match typing.get() {
        true => String::new(),
        false => app.error_of(field).unwrap_or_default(),
    });
    let bad = yes(move || said.with(|said| !said.is_empty()));
    let set = move |text: String| {
        app.edit(EditKey::Field(field), |draft| {
            if let Some(bill) = draft.bill_mut(id) {
                *at(bill) = text;
            }
        });
    };
    view! {
        <div class="field" class:bad=bad>
            <label for=element.clone()>{text::field_label(field)}</label>
            <p class="error" id=error.clone()>{live(move || said.get())}</p>
            <input
                id=element
                class="name"
                type="date"
                aria-describedby=error
                aria-invalid=words(move || bad.get().to_string())
                prop:value=typed
                on:input=move |event| {
                    typing.set(true);
                    // Half a date has no text, and writing that back would empty the whole box.
                    if event_target::<HtmlInputElement>(&event).check_validity() {
                        set(event_target_value(&event));
                    }
                }
                on:blur=move |event| {
                    typing.set(false);
                    set(event_target_value(&event));
                }
            />
        </div>
    }
    .into_any()
}

impl App {
    /// What the bills come to, in a few sentences.
    fn bills_said(self) -> String {
        let system = self.system();
        let station = self.typed(|draft| draft.station.is_some());
        self.design(|solved| {
            let Some((job, design)) = solved.as_ref() else {
                return text::no_load_yet().to_string();
            };
            match (&job.bills, &design.bills) {
                _ if !station => text::bills_need_a_station().to_string(),
                (Some(Ok(fit)), Some(compared)) => text::against_bills(fit, compared, system),
                (Some(Err(error)), _) => text::bills_tell_nothing(*error).to_string(),
                _ => text::no_bills_yet().to_string(),
            }
        })
    }
}
