//! What things cost, as far as the user types it.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::number_field;
use finrun_engine::job::{Field, PriceField};
use finrun_text as text;
use leptos::prelude::*;

const JOINTS: &[PriceField] =
    &[PriceField::Joint, PriceField::Enclosure, PriceField::EndCap, PriceField::Corner];
const PIPE: &[PriceField] =
    &[PriceField::Pipe, PriceField::Elbow, PriceField::Tee, PriceField::DiverterTee];
const PARTS: &[PriceField] = &[
    PriceField::BalancingValve,
    PriceField::ZoneValve,
    PriceField::Circulator,
    PriceField::Thermostat,
    PriceField::ManifoldPorts,
    PriceField::LoopValves,
];
const REMEDIES: &[PriceField] = &[PriceField::Insulation, PriceField::BetterElement];

pub(super) fn prices(job: &JobKey) -> AnyView {
    let inside = view! {
        <p class="note">{text::prices_note()}</p>
        <section class="columns">
            <div>
                {group(text::prices_of_joints(), JOINTS)}
                {group(text::prices_of_pipe(), PIPE)}
            </div>
            <div>
                {group(text::prices_of_parts(), PARTS)}
                {group(text::prices_of_remedies(), REMEDIES)}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Prices, inside)
}

fn group(title: &'static str, fields: &[PriceField]) -> AnyView {
    let fields = fields.iter().map(|&field| number_field(Field::Price(field))).collect_view();
    view! { <h2>{title}</h2> {fields} }.into_any()
}
