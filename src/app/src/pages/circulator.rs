//! How the flow is fixed, the circulator and its curve, valves and boiler room.

use super::loop_check::flow_settings;
use super::running::results;
use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{button, choice_field, each, live, live_view, number_field, when, yes};
use crate::state::{EditKey, use_app};
use finrun_engine::building::ZoneId;
use finrun_engine::job::{
    Choice, CircuitField, Draft, Field, PartField, PipeCover, PumpKind, PumpPointField, Zoning,
};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn circulator(job: &JobKey) -> AnyView {
    let app = use_app();
    let has_rooms =
        move || app.design(|solved| solved.as_ref().is_some_and(|(_, d)| !d.rooms.is_empty()));
    let results = when(has_rooms, results);
    let none = when(move || !has_rooms(), || view! { <p>{text::no_loop_yet()}</p> }.into_any());
    let inside = view! {
        <section class="columns">
            <div>{settings()}</div>
            <div>{none} {results}</div>
        </section>
    }
    .into_any();
    section(job, Section::Circulator, inside)
}

fn settings() -> AnyView {
    let app = use_app();
    let part = |field| number_field(Field::Part(field));
    let pipe = |field| number_field(Field::Circuit(field));
    let insulated = move || app.typed(|draft| draft.pipe_cover == PipeCover::Insulated);
    view! {
        {flow_settings()}
        {pumps()}
        <details class="more">
            <summary>{text::valves_and_parts()}</summary>
            {part(PartField::ZoneValveCv)}
            {part(PartField::FlowCheckCv)}
            {part(PartField::BalancingCv)}
            {part(PartField::DiverterK)}
            {part(PartField::PumpEfficiency)}
        </details>
        <details class="more">
            <summary>{text::pipes()}</summary>
            {choice_field(Choice::PipeCover)}
            {when(insulated, move || part(PartField::InsulationThickness))}
            {pipe(CircuitField::PipeSurroundings)}
            {pipe(CircuitField::PipeFilm)}
            {pipe(CircuitField::BoilerElbows)}
            {pipe(CircuitField::BoilerTees)}
            {pipe(CircuitField::BoilerValves)}
            {pipe(CircuitField::EquipmentHead)}
        </details>
    }
    .into_any()
}

/// Whether each zone has a circulator of its own.
fn own_pumps(draft: &Draft) -> bool {
    draft.zones.len() > 1 && draft.zoning == Zoning::Circulators
}

/// One circulator for all, or one a zone; and the curve that is typed, if any has it.
fn pumps() -> AnyView {
    let app = use_app();
    let own = yes(move || app.typed(own_pumps));
    let lists = live_view(move || match own.get() {
        false => view! {
            <div class="pair">
                {choice_field(Choice::Pump)}
                {choice_field(Choice::PumpSet)}
            </div>
        }
        .into_any(),
        true => {
            let ids = move || app.typed(|draft| draft.zones.iter().map(|zone| zone.id.0).collect());
            each(ids, move |id| {
                let name = move || app.typed(|draft| text::zone_name(draft, ZoneId(id)));
                view! {
                    <fieldset>
                        <legend>{live(name)}</legend>
                        {choice_field(Choice::ZonePump(ZoneId(id)))}
                    </fieldset>
                }
                .into_any()
            })
        }
    });
    let typed = move || {
        app.typed(|draft| match own_pumps(draft) {
            true => draft.zones.iter().any(|zone| zone.pump == PumpKind::Points),
            false => draft.pump.kind == PumpKind::Points,
        })
    };
    view! { {lists} {when(typed, points)} }.into_any()
}

fn points() -> AnyView {
    let app = use_app();
    let rows = move || app.typed(|draft| (0..draft.pump.points.len() as u32).collect());
    let add = move || app.edit(EditKey::Single, |draft| draft.pump.points.push(Default::default()));
    let row = move |row: u32| {
        let row = row as usize;
        let remove = move || {
            app.edit(EditKey::Single, |draft| {
                if row < draft.pump.points.len() {
                    draft.pump.points.remove(row);
                }
            });
        };
        view! {
            <fieldset class="opening">
                <legend>{text::table_row(row + 1)}</legend>
                <div class="pair">
                    {number_field(Field::PumpPoint(row, PumpPointField::Flow))}
                    {number_field(Field::PumpPoint(row, PumpPointField::Head))}
                </div>
                {button("", &text::table_row_remove(row + 1), remove)}
            </fieldset>
        }
        .into_any()
    };
    view! {
        <h2>{text::curve_points()}</h2>
        <p class="note">{text::curve_note()}</p>
        {each(rows, row)}
        <div class="acts">{button("", text::table_row_add(), add)}</div>
    }
    .into_any()
}
