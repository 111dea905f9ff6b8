//! What things cost, as far as the user types it; what is bought to spare, and how pipe is cut.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, number_field};
use finrun_engine::job::{Choice, CutField, Field, Group, PriceField};
use finrun_engine::named::Named;
use finrun_text as text;
use leptos::prelude::*;

/// What would be bought to get out of a shortage only.
const REMEDIES: &[PriceField] = &[PriceField::Insulation, PriceField::BetterElement];

pub(super) fn prices(job: &JobKey) -> AnyView {
    let groups = Group::ALL.iter().map(|&group| of_group(group)).collect_view();
    let remedies = REMEDIES.iter().map(|&field| number_field(Field::Price(field))).collect_view();
    let spare = Group::ALL.iter().filter(|&&group| group != Group::Labor);
    let spare = spare.map(|&group| number_field(Field::Spare(group))).collect_view();
    let inside = view! {
        <p class="note">{text::prices_note()}</p>
        <section class="prices">{groups}</section>
        <h2>{text::prices_of_remedies()}</h2>
        <div class="pair">{remedies}</div>
        <h2>{text::to_spare()}</h2>
        <p class="note">{text::to_spare_note()}</p>
        <div class="pair">{spare}</div>
        <h2>{text::cutting()}</h2>
        <div class="pair">{choice_field(Choice::Sticks)} {number_field(Field::Cut(CutField::Kerf))}</div>
    }
    .into_any();
    section(job, Section::Prices, inside)
}

fn of_group(group: Group) -> AnyView {
    let fields = PriceField::ALL.iter().copied();
    let own = fields.filter(|field| field.group() == group && !REMEDIES.contains(field));
    let fields = own.map(|field| number_field(Field::Price(field))).collect::<Vec<_>>();
    if fields.is_empty() {
        return ().into_any();
    }
    view! { <div><h2>{text::group(group)}</h2> {fields}</div> }.into_any()
}
