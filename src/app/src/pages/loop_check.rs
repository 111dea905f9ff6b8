//! The fourth station: the loop as the water travels it, and what holds.

use super::elements::pick;
use super::lengths::row;
use crate::drawing::loop_drawing;
use crate::parts::{figure, in_system, live, live_view, number_field, working, yes};
use crate::state::use_app;
use finrun_engine::check::{Check, Remedy, Severity};
use finrun_engine::design::Design;
use finrun_engine::job::{CircuitField, Draft, Field, FlowBasis};
use finrun_engine::network::{Passage, Place};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Kind, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn loop_check() -> AnyView {
    let app = use_app();
    let solved = app.solved;
    let results = live_view(move || match solved.get() {
        Some((_, design)) if !design.rooms.is_empty() => {
            app.draft.with_untracked(|draft| all(draft, &design))
        }
        _ => view! { <p>{text::no_loop_yet()}</p> }.into_any(),
    });
    view! {
        <h1>{text::follow_the_water()}</h1>
        {results}
        {loop_settings()}
    }
    .into_any()
}

fn all(draft: &Draft, design: &Design) -> AnyView {
    let circuit = &design.circuit;
    let head = Value::new(Kind::Head, circuit.head.si());
    let rows = [
        (Topic::Flow, text::flow(), figure("flow", circuit.flow)),
        (Topic::Drop, text::drop(), figure("drop", circuit.drop())),
        (Topic::Velocity, text::velocity(), figure("velocity", circuit.velocity)),
        (Topic::Head, text::head(), figure("head", head)),
    ]
    .map(|(topic, name, figure)| working(topic, row(name, figure)));
    let checks = design.checks.iter().map(show_check).collect_view();
    view! {
        <section class="columns">
            <div>
                {loop_drawing()}
                {numbers(&circuit.passages, &names(draft, &circuit.passages))}
            </div>
            <div>
                {rows.into_iter().collect_view()}
                <p class="row">
                    <span>{text::boiler_gives()}</span> {figure("boiler-heat", circuit.heat)}
                </p>
                <h2>{text::checks()}</h2>
                <ul class="checks">{checks}</ul>
            </div>
        </section>
    }
    .into_any()
}

fn show_check(check: &Check) -> AnyView {
    let app = use_app();
    let (class, mark) = match check.severity {
        Severity::Holds => ("holds", "M3 12l5 5L19 5"),
        Severity::Watch => ("watch", "M11 3v10M11 17v2"),
        Severity::Stop => ("stop", "M5 5l12 12M17 5L5 17"),
    };
    let kept = StoredValue::new(check.clone());
    let title = live(move || {
        app.draft.with(|draft| kept.with_value(|c| text::check_title(c, draft, app.system())))
    });
    let detail = live(move || kept.with_value(|c| text::check_detail(c, app.system())));
    let way = |remedy: Remedy| {
        let sentence = live(move || text::remedy(remedy, app.system()));
        view! { <li>{sentence}</li> }.into_any()
    };
    let remedies = match check.remedies.is_empty() {
        true => ().into_any(),
        false => view! {
            <p class="ways">{text::remedies()}</p>
            <ul>{check.remedies.iter().copied().map(way).collect_view()}</ul>
        }
        .into_any(),
    };
    view! {
        <li class=class>
            <svg class="mark" viewBox="0 0 22 22" role="img" aria-label=text::severity(check.severity)>
                <path d=mark/>
            </svg>
            <div>
                <b>{title}</b>
                <p>{detail}</p>
                {remedies}
            </div>
        </li>
    }
    .into_any()
}

fn names(draft: &Draft, passages: &[Passage]) -> Vec<String> {
    passages
        .iter()
        .map(|passage| match passage.place {
            Place::BoilerRoom => text::boiler_room().to_string(),
            Place::To(room) => text::pipe_to(&text::room_name(draft, room)),
            Place::Element(room) => text::room_name(draft, room),
            Place::Back => text::back_pipe().to_string(),
        })
        .collect()
}

/// The drawing's numbers as a table, with the working of each stretch.
fn numbers(passages: &[Passage], names: &[String]) -> AnyView {
    let app = use_app();
    let rows = passages
        .iter()
        .zip(names)
        .map(|(passage, name)| {
            let passage = *passage;
            let name = name.clone();
            let cell = move |value: Value| live(move || in_system(value, app.system()));
            view! {
                <tr>
                    <th scope="row">{name}</th>
                    <td>{cell(passage.length.into())}</td>
                    <td>{cell(passage.water_in.into())}</td>
                    <td>{cell(passage.water_out.into())}</td>
                    <td>{cell(passage.heat.into())}</td>
                    <td>{cell(Value::new(Kind::Head, passage.head().si()))}</td>
                </tr>
            }
            .into_any()
        })
        .collect_view();
    let workings = passages
        .iter()
        .zip(names)
        .map(|(passage, name)| {
            let place = passage.place;
            let is_pipe = matches!(place, Place::To(_) | Place::Back);
            let pressure = text::pressure_lost(name);
            let water = text::water_after(name);
            view! {
                {working(Topic::Pressure(place), pressure.into_any())}
                {is_pipe.then(|| working(Topic::Pipe(place), water.into_any()))}
            }
            .into_any()
        })
        .collect_view();
    view! {
        <details class="more numbers-table">
            <summary>{text::numbers()}</summary>
            <div class="scroll" tabindex="0" role="region" aria-label=text::numbers()>
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{text::stretch()}</th>
                            <th scope="col">{text::length_word()}</th>
                            <th scope="col">{text::water_in()}</th>
                            <th scope="col">{text::water_out()}</th>
                            <th scope="col">{text::heat()}</th>
                            <th scope="col">{text::head_word()}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
            {workings}
        </details>
    }
    .into_any()
}

fn loop_settings() -> AnyView {
    let app = use_app();
    let field = |field| number_field(Field::Circuit(field));
    let typed = yes(move || app.draft.with(|draft| draft.flow_basis == FlowBasis::Typed));
    let flow = live_view(move || match typed.get() {
        false => field(CircuitField::Drop),
        true => field(CircuitField::Flow),
    });
    view! {
        <section class="settings">
            <h2>{text::loop_settings()}</h2>
            {pick(
                "tube",
                text::tube_label(),
                &Tube::ALL,
                text::tube,
                |draft| draft.tube,
                |draft, tube| draft.tube = tube,
            )}
            {field(CircuitField::Supply)}
            {field(CircuitField::BoilerLimit)}
            {pick(
                "flow-basis",
                text::flow_from(),
                &[FlowBasis::FromDrop, FlowBasis::Typed],
                text::flow_basis,
                |draft| draft.flow_basis,
                |draft, basis| draft.flow_basis = basis,
            )}
            {flow}
            <details class="more">
                <summary>{text::pipes()}</summary>
                {field(CircuitField::PipeSurroundings)}
                {field(CircuitField::PipeFilm)}
                {field(CircuitField::ReturnPipe)}
                {field(CircuitField::ReturnElbows)}
                {field(CircuitField::BoilerElbows)}
                {field(CircuitField::BoilerTees)}
                {field(CircuitField::BoilerValves)}
                {field(CircuitField::EquipmentHead)}
            </details>
        </section>
    }
    .into_any()
}
