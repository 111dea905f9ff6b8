//! The fourth station: the loop as the water travels it, and what holds.

use super::lengths::row;
use super::remedies::{self, WorkedOut, work_out};
use super::rooms::section_links;
use crate::drawing::{pump_charts, schematic, temperature_chart};
use crate::markup::{Markup, live_markup};
use crate::page::{JobKey, Page, Section};
use crate::parts::{choice_field, figure, in_system, live_view, number_field, working, yes};
use crate::state::use_app;
use finrun_engine::check::{Check, Severity, Subject};
use finrun_engine::design::Design;
use finrun_engine::job::{Choice, CircuitField, Draft, Field, FlowBasis, Job};
use finrun_engine::network::{Passage, Place};
use finrun_engine::quantity::{Kind, Length, System, Value};
use finrun_engine::remedy::Worked;
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn loop_check(job: &JobKey) -> AnyView {
    let app = use_app();
    let solved = app.solved;
    let drawings = Page::Section(job.clone(), Section::Drawings).to_hash();
    let results = live_view(move || match solved.get().as_ref() {
        Some((job, design)) if !design.rooms.is_empty() => {
            app.typed_now(|draft| all(draft, job, design))
        }
        _ => view! { <p>{text::no_loop_yet()}</p> }.into_any(),
    });
    view! {
        <h1>{text::follow_the_water()}</h1>
        {results}
        <p><a class="act" href=drawings>{text::section_drawings()}</a></p>
        {loop_settings(job)}
    }
    .into_any()
}

fn all(draft: &Draft, job: &Job, design: &Design) -> AnyView {
    let circuit = &design.piping;
    let head = Value::new(Kind::Head, circuit.head.si());
    let rows = [
        (Topic::Flow, text::flow(), figure("flow", circuit.flow)),
        (Topic::Drop, text::drop(), figure("drop", circuit.drop())),
        (Topic::Velocity, text::velocity(), figure("velocity", circuit.velocity)),
        (Topic::Head, text::head(), figure("head", head)),
        (Topic::BoilerHeat, text::boiler_gives(), figure("boiler-heat", circuit.heat)),
    ]
    .map(|(topic, name, figure)| working(topic, row(name, figure)));
    let worked = work_out(job, design);
    view! {
        <section class="columns">
            <div>
                {schematic()}
                {numbers(&circuit.passages, &names(draft, &circuit.passages))}
            </div>
            <div>
                {rows.into_iter().collect_view()}
                <h2>{text::checks()}</h2>
                {check_list(design, worked)}
                {remedies::busy(worked)}
            </div>
        </section>
        <section class="columns">
            <div>
                <h2>{text::water_along()}</h2>
                {temperature_chart()}
            </div>
            <div>
                <h2>{text::pump_and_system()}</h2>
                {pump_charts()}
            </div>
        </section>
    }
    .into_any()
}

/// Every check, with its remedies. Nothing in it is touched, so it is markup.
fn check_list(design: &Design, worked: WorkedOut) -> AnyView {
    let app = use_app();
    let checks = design.checks.clone();
    live_markup("checks", move || {
        let system = app.system();
        let mut markup = Markup::new();
        markup.open("ul", &[]);
        app.typed(|draft| {
            worked.seen(|worked| {
                for check in &checks {
                    show_check(&mut markup, check, worked, draft, system);
                }
            });
        });
        markup.close("ul");
        markup.done()
    })
}

fn show_check(
    markup: &mut Markup,
    check: &Check,
    worked: &[Worked],
    draft: &Draft,
    system: System,
) {
    let (class, mark) = match check.severity {
        Severity::Holds => ("holds", "M3 12l5 5L19 5"),
        Severity::Watch => ("watch", "M11 3v10M11 17v2"),
        Severity::Stop => ("stop", "M5 5l12 12M17 5L5 17"),
    };
    let label = text::severity(check.severity);
    markup.open("li", &[("class", class)]);
    markup.open(
        "svg",
        &[("class", "mark"), ("viewBox", "0 0 22 22"), ("role", "img"), ("aria-label", label)],
    );
    markup.leaf("path", &[("d", mark)], "");
    markup.close("svg");
    markup.open("div", &[]);
    markup.leaf("b", &[], &text::check_title(check, draft, system));
    markup.leaf("p", &[], &text::check_detail(check, system));
    // What was tried says more than what one might try.
    let tried: Vec<&Worked> =
        worked.iter().filter(|worked| check.subject == Subject::Room(worked.room)).collect();
    if !check.remedies.is_empty() {
        markup.leaf("p", &[("class", "ways")], text::remedies());
        markup.open("ul", &[]);
        match tried.is_empty() {
            true => {
                for remedy in &check.remedies {
                    markup.leaf("li", &[], &text::remedy(*remedy, system));
                }
            }
            false => remedies::list(markup, &tried, draft, system),
        }
        markup.close("ul");
    }
    markup.close("div");
    markup.close("li");
}

fn names(draft: &Draft, passages: &[Passage]) -> Vec<String> {
    passages.iter().map(|passage| text::place(draft, passage.place)).collect()
}

/// The drawing's numbers as a table, with the working of each stretch.
fn numbers(passages: &[Passage], names: &[String]) -> AnyView {
    let app = use_app();
    let workings = passages
        .iter()
        .zip(names)
        .map(|(passage, name)| {
            let place = passage.place;
            let is_pipe = passage.length > Length::ZERO && !matches!(place, Place::Element(_));
            let pressure = text::pressure_lost(name).into_any();
            let water = text::water_after(name).into_any();
            let cooling = match is_pipe {
                true => working(Topic::Pipe(place), water),
                false => ().into_any(),
            };
            // A stretch without length or fittings loses none.
            let pressure = match passage.pressure_drop().si() > 0.0 {
                true => working(Topic::Pressure(place), pressure),
                false => ().into_any(),
            };
            view! {
                {pressure}
                {cooling}
            }
            .into_any()
        })
        .collect_view();
    let rows: Vec<(String, Passage)> =
        names.iter().cloned().zip(passages.iter().copied()).collect();
    let table = live_markup("", move || table(&rows, app.system()));
    view! {
        <details class="more">
            <summary>{text::numbers()}</summary>
            <div class="scroll" tabindex="0" role="region" aria-label=text::numbers()>{table}</div>
            {workings}
        </details>
    }
    .into_any()
}

fn table(rows: &[(String, Passage)], system: System) -> String {
    let mut markup = Markup::new();
    markup.open("table", &[]);
    markup.open("tr", &[]);
    for head in [
        text::stretch(),
        text::length_word(),
        text::water_in(),
        text::water_out(),
        text::heat(),
        text::head_word(),
    ] {
        markup.leaf("th", &[("scope", "col")], head);
    }
    markup.close("tr");
    for (name, passage) in rows {
        markup.open("tr", &[]);
        markup.leaf("th", &[("scope", "row")], name);
        let values: [Value; 5] = [
            passage.length.into(),
            passage.water_in.into(),
            passage.water_out.into(),
            passage.heat.into(),
            Value::new(Kind::Head, passage.head().si()),
        ];
        for value in values {
            markup.leaf("td", &[], &in_system(value, system));
        }
        markup.close("tr");
    }
    markup.close("table");
    markup.done()
}

/// What has a page of its own.
const OF_THE_LOOP: [Section; 4] =
    [Section::Piping, Section::Circulator, Section::Plant, Section::Compare];

/// What the house does once it is heated.
const IN_USE: [Section; 3] = [Section::Season, Section::DesignDay, Section::Cooler];

/// From the design to a warm house.
const TO_BUILD: [Section; 6] = [
    Section::Materials,
    Section::Install,
    Section::Commission,
    Section::Existing,
    Section::Report,
    Section::Share,
];

fn loop_settings(job: &JobKey) -> AnyView {
    let field = |field| number_field(Field::Circuit(field));
    view! {
        <section class="settings">
            <h2>{text::piping()}</h2>
            {section_links(job, &OF_THE_LOOP)}
            <h2>{text::in_use()}</h2>
            {section_links(job, &IN_USE)}
            <h2>{text::loop_settings()}</h2>
            {field(CircuitField::Supply)}
            {field(CircuitField::BoilerLimit)}
            {flow_settings()}
            <h2>{text::on_site()}</h2>
            {section_links(job, &TO_BUILD)}
        </section>
    }
    .into_any()
}

/// How the flow is fixed, and by what number. A circulator's flow has a drop that is meant, too.
pub(super) fn flow_settings() -> AnyView {
    let app = use_app();
    let typed = yes(move || app.typed(|draft| draft.flow_basis == FlowBasis::Typed));
    let number = live_view(move || {
        let field = if typed.get() { CircuitField::Flow } else { CircuitField::Drop };
        number_field(Field::Circuit(field))
    });
    view! { {choice_field(Choice::FlowBasis)} {number} }.into_any()
}
