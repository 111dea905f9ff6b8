//! What things cost, as far as the user types it; what is bought to spare, and how pipe is cut.

use super::price_list::price_list;
use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, each, live, number_field};
use crate::state::use_app;
use finrun_engine::job::{Choice, CutField, Field, Group, PriceField, SizedField};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::takeoff::{cost, count};
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
        <p>{live(unpriced)}</p>
        {price_list()}
        {groups}
        {by_size()}
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

/// How much of what the job needs has no price; nothing while the job is not solved.
fn unpriced() -> String {
    use_app().design(|solved| {
        let said = solved.as_ref().map(|(job, design)| {
            let items = count::count(job, design);
            text::kinds_unpriced(cost::cost(job, &items).unpriced.len())
        });
        said.unwrap_or_default()
    })
}

fn of_group(group: Group) -> AnyView {
    let fields = PriceField::ALL.iter().copied();
    let own = fields.filter(|field| field.group() == group && !REMEDIES.contains(field));
    let fields = own.map(|field| number_field(Field::Price(field))).collect::<Vec<_>>();
    if fields.is_empty() {
        return ().into_any();
    }
    view! { <h2>{text::group(group)}</h2> <div class="prices">{fields}</div> }.into_any()
}

/// Prices that hold for one size of tube only.
fn by_size() -> AnyView {
    let app = use_app();
    // A size stays while something is typed for it, so that it can be seen and taken out.
    let tubes = move || app.typed(|draft| draft.tubes_to_price());
    let place = |tube: &Tube| Tube::ALL.iter().position(|other| other == tube);
    let places = move || tubes().iter().filter_map(place).map(|place| place as u32).collect();
    let of_tube = |place: u32| {
        let Some(&tube) = Tube::ALL.get(place as usize) else { return ().into_any() };
        let fields = SizedField::ALL.iter().copied();
        let fields = fields.map(|field| number_field(Field::SizedPrice(tube, field)));
        view! {
            <h3>{text::tube(tube)}</h3>
            <div class="prices">{fields.collect_view()}</div>
        }
        .into_any()
    };
    view! {
        <details class="more">
            <summary>{text::prices_by_size()}</summary>
            <p class="note">{text::prices_by_size_note()}</p>
            {each(places, of_tube)}
        </details>
    }
    .into_any()
}
