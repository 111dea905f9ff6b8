//! The fourth station: the loop as the water travels it, and what holds.

use super::elements::Pick;
use crate::drawing::LoopDrawing;
use crate::parts::{NumberField, Working, figure, in_system};
use crate::state::use_app;
use finrun_engine::check::{Check, Severity};
use finrun_engine::design::Design;
use finrun_engine::job::{CircuitField, Draft, Field, FlowBasis};
use finrun_engine::network::{Passage, Place};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Kind, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn LoopCheck() -> impl IntoView {
    let app = use_app();
    let solved = app.solved;
    view! {
        <h1>{text::follow_the_water()}</h1>
        {move || match solved.get() {
            Some((_, design)) if !design.rooms.is_empty() => {
                app.draft.with_untracked(|draft| all(draft, &design))
            }
            _ => view! { <p>{text::no_loop_yet()}</p> }.into_any(),
        }}
        <LoopSettings/>
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
    .map(|(topic, name, figure)| {
        view! {
            <Working topic><span class="row"><span>{name}</span> {figure}</span></Working>
        }
    });
    let checks = design.checks.iter().map(show_check).collect_view();
    view! {
        <section class="columns">
            <div>
                <LoopDrawing/>
                <Numbers passages=circuit.passages.clone() names=names(draft, &circuit.passages)/>
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
    let title = move || {
        app.draft.with(|draft| kept.with_value(|c| text::check_title(c, draft, app.system())))
    };
    let detail = move || kept.with_value(|c| text::check_detail(c, app.system()));
    let remedies = move || {
        let system = app.system();
        kept.with_value(|check| {
            (!check.remedies.is_empty()).then(|| {
                let items = check
                    .remedies
                    .iter()
                    .map(|remedy| view! { <li>{text::remedy(*remedy, system)}</li> })
                    .collect_view();
                view! {
                    <p class="ways">{text::remedies()}</p>
                    <ul>{items}</ul>
                }
            })
        })
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
#[component]
fn Numbers(passages: Vec<Passage>, names: Vec<String>) -> impl IntoView {
    let app = use_app();
    let rows = passages
        .iter()
        .zip(&names)
        .map(|(passage, name)| {
            let passage = *passage;
            let name = name.clone();
            let cell = move |value: Value| move || in_system(value, app.system());
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
        })
        .collect_view();
    let workings = passages
        .iter()
        .zip(&names)
        .map(|(passage, name)| {
            let place = passage.place;
            let is_pipe = matches!(place, Place::To(_) | Place::Back);
            let pressure = text::pressure_lost(name);
            let water = text::water_after(name);
            view! {
                <Working topic=Topic::Pressure(place)>{pressure}</Working>
                {is_pipe.then(|| view! { <Working topic=Topic::Pipe(place)>{water}</Working> })}
            }
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

#[component]
fn LoopSettings() -> impl IntoView {
    let app = use_app();
    let basis = Memo::new(move |_| app.draft.with(|draft| draft.flow_basis));
    let field = |field| Field::Circuit(field);
    view! {
        <section class="settings">
            <h2>{text::loop_settings()}</h2>
            <Pick
                id="tube"
                label=text::tube_label()
                all=Tube::ALL.to_vec()
                name=text::tube
                get=|draft| draft.tube
                set=|draft, tube| draft.tube = tube
            />
            <NumberField field=field(CircuitField::Supply)/>
            <NumberField field=field(CircuitField::BoilerLimit)/>
            <Pick
                id="flow-basis"
                label=text::flow_from()
                all=vec![FlowBasis::FromDrop, FlowBasis::Typed]
                name=text::flow_basis
                get=|draft| draft.flow_basis
                set=|draft, basis| draft.flow_basis = basis
            />
            {move || match basis.get() {
                FlowBasis::FromDrop => view! { <NumberField field=field(CircuitField::Drop)/> },
                FlowBasis::Typed => view! { <NumberField field=field(CircuitField::Flow)/> },
            }}
            <details class="more">
                <summary>{text::pipes()}</summary>
                <NumberField field=field(CircuitField::PipeSurroundings)/>
                <NumberField field=field(CircuitField::PipeFilm)/>
                <NumberField field=field(CircuitField::ReturnPipe)/>
                <NumberField field=field(CircuitField::ReturnElbows)/>
                <NumberField field=field(CircuitField::BoilerElbows)/>
                <NumberField field=field(CircuitField::BoilerTees)/>
                <NumberField field=field(CircuitField::BoilerValves)/>
                <NumberField field=field(CircuitField::EquipmentHead)/>
            </details>
        </section>
    }
    .into_any()
}
