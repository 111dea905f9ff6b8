//! The third station: which pieces go where.

use super::elements::element_settings;
use super::kept::{kept_wrong, stretches, walls};
use super::oversize::oversize;
use crate::drawing::{Shows, wall_drawing};
use crate::page::JobKey;
use crate::parts::{choice_field, figure, in_system, live, live_view, working};
use crate::state::use_app;
use finrun_engine::design::{Design, RoomDesign};
use finrun_engine::job::{Choice, Draft, Job};
use finrun_engine::quantity::{Length, Power, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn lengths(job: &JobKey) -> AnyView {
    let app = use_app();
    let solved = app.solved;
    let total = live_view(move || match solved.get().as_ref() {
        Some((_, design)) if !design.rooms.is_empty() => total(design),
        _ => view! {
            <h1>{text::station_lengths()}</h1>
            <p>{text::no_lengths_yet()}</p>
        }
        .into_any(),
    });
    let rooms = live_view(move || match solved.get().as_ref() {
        Some((job, design)) => app.typed_now(|draft| {
            let rooms = design.rooms.iter().map(|room| one_room(draft, job, room));
            view! { <div class="cards">{rooms.collect_view()}</div> }.into_any()
        }),
        None => ().into_any(),
    });
    view! {
        {total}
        {objective()}
        {kept_wrong()}
        {rooms}
        {oversize()}
        {element_settings(job)}
    }
    .into_any()
}

/// What the pieces are chosen for. It stands apart from the results, which are drawn anew by each
/// choice.
fn objective() -> AnyView {
    let app = use_app();
    let note =
        live(move || app.typed(|draft| text::objective_note(draft.element.objective).to_string()));
    view! {
        <section class="settings">
            {choice_field(Choice::Objective)}
            <p class="note">{note}</p>
        </section>
    }
    .into_any()
}

fn total(design: &Design) -> AnyView {
    let total = figure("element", design.element_length());
    let title = view! {
        <h1 class="in-summary">
            {total} " " <small>{text::in_pieces()} " " {text::pieces(design.piece_count())}</small>
        </h1>
    };
    view! {
        {working(Topic::Element, title.into_any())}
        {proof(design)}
    }
    .into_any()
}

/// Whether other pieces would be better for what they are chosen for.
fn proof(design: &Design) -> AnyView {
    let app = use_app();
    let together = design.together;
    let said = live(move || text::together(&together, app.system()));
    view! { <p class="note" data-figure="together">{said}</p> }.into_any()
}

fn one_room(draft: &Draft, job: &Job, room: &RoomDesign) -> AnyView {
    let app = use_app();
    let id = room.room;
    let name = text::room_name(draft, id);
    let element = &room.element;
    let choice = &element.choice;
    let drawings = walls(draft, id, choice)
        .into_iter()
        .map(|surface| {
            let side = text::surface_name(draft, id, surface);
            view! {
                <p class="side">{side}</p>
                {wall_drawing(id, surface, Shows::Pieces)}
                {stretches(job, id, surface, choice)}
            }
            .into_any()
        })
        .collect_view();
    let pieces: Vec<Length> = choice.pieces().collect();
    let pieces = live(move || {
        let system = app.system();
        pieces.iter().map(|piece| in_system(*piece, system)).collect::<Vec<_>>().join(" + ")
    });
    // Other heat is not the element's to give.
    let load = room.load.wanted().max(Power::ZERO);
    let needs_element = load > Power::ZERO;
    let short = room.short();
    let over = Value::share((element.output - load) / load);
    let what = move |name: &str| format!("room-{}.{name}", id.0);
    // What needs no element has nothing worked out.
    let opens = |topic, line| if needs_element { working(topic, line) } else { line };
    let needed = element.needed.map(|needed| {
        let row = row(text::finned_needed(), figure(&what("needed"), needed));
        opens(Topic::Needed(id), row)
    });
    let verdict = match short > Power::ZERO {
        true => {
            let short = figure(&what("short"), short);
            let line = view! { <b class="verdict stop">{text::short_word()} " " {short}</b> };
            working(Topic::Over(id), line.into_any())
        }
        false if needs_element => {
            let over = figure(&what("over"), over);
            let line = view! { <b class="verdict ok">"+" {over} " " {text::over_load()}</b> };
            working(Topic::Over(id), line.into_any())
        }
        false => ().into_any(),
    };
    let nominal = match choice.nominal > Length::ZERO {
        true => figure(&what("nominal"), choice.nominal),
        false => text::no_element().into_any(),
    };
    let title = view! { <h2 class="row in-summary"><span>{name}</span> {nominal}</h2> };
    let water_in = figure(&what("water-in"), element.water_in);
    let water_out = figure(&what("water-out"), element.water_out);
    let water = view! {
        <span class="row">
            <span>{text::water_in_out()}</span>
            <span>{water_in} " → " {water_out}</span>
        </span>
    };
    let needs = figure(&what("load"), load);
    let other = (room.load.other > Power::ZERO).then(|| {
        let other = figure(&what("other"), room.load.other);
        view! { " " {text::beside()} " " {other} " " {text::from_elsewhere()} }.into_any()
    });
    let gets = figure(&what("output"), element.output);
    let thumb = figure(&what("rule-of-thumb"), element.rule_of_thumb);
    let balance = view! {
        <span class="row">
            <span>{text::needs()} " " {needs} {other} ", " {text::gets()}</span>
            {gets}
        </span>
    };
    view! {
        <section class="room-lengths">
            {working(Topic::Pieces(id), title.into_any())}
            <p class="pieces" data-figure=what("pieces")>{pieces}</p>
            {drawings}
            {opens(Topic::Output(id), balance.into_any())}
            {verdict}
            {needed}
            {opens(Topic::RuleOfThumb(id), row(text::rule_of_thumb(), thumb))}
            {opens(Topic::Output(id), water.into_any())}
        </section>
    }
    .into_any()
}

/// A name and its figure, at the two ends of a line.
pub(super) fn row(name: &'static str, figure: AnyView) -> AnyView {
    view! { <span class="row"><span>{name}</span> {figure}</span> }.into_any()
}
