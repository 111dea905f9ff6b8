//! The air of the whole house: how it leaks, how it is driven, what fans do.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, figure, live_view, number_field, when, working};
use crate::state::use_app;
use finrun_engine::job::{AirBasis, AirField, Choice, Field, HouseField};
use finrun_engine::quantity::{Kind, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn air(job: &JobKey) -> AnyView {
    let app = use_app();
    let basis = move |basis| move || app.typed(|draft| draft.air.basis == basis);
    let field = |field| number_field(Field::Air(field));
    let by_class = || {
        view! {
            {choice_field(Choice::AirClass)}
            {number_field(Field::House(HouseField::AirChanges))}
        }
        .into_any()
    };
    let by_door = move || {
        view! { {field(AirField::BlowerFlow)} {field(AirField::BlowerExponent)} }.into_any()
    };
    let flow = live_view(move || match app.design(|s| s.as_ref().map(|(_, d)| d.air.leaked)) {
        Some(leaked) => {
            let leaked = figure("air.leaked", Value::new(Kind::AirFlow, leaked.si()));
            let row = view! { <span class="row"><span>{text::air_leaked()}</span> {leaked}</span> };
            working(Topic::HouseAir, row.into_any())
        }
        None => ().into_any(),
    });
    let inside = view! {
        {flow}
        <section class="columns">
            <div>
                <h2>{text::leaks()}</h2>
                {choice_field(Choice::AirBasis)}
                {when(basis(AirBasis::Class), by_class)}
                {when(basis(AirBasis::BlowerDoor), by_door)}
                {when(basis(AirBasis::LeakageArea), move || field(AirField::LeakageArea))}
                {choice_field(Choice::Flue)}
            </div>
            <div>
                <h2>{text::drives()}</h2>
                {choice_field(Choice::Storeys)}
                {choice_field(Choice::Shelter)}
                <h2>{text::fans()}</h2>
                {field(AirField::Supply)}
                {field(AirField::Exhaust)}
                {field(AirField::Recovery)}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Air, inside)
}
