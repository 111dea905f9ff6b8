//! The third station: which pieces go where.

use super::elements::ElementSettings;
use crate::drawing::{Shows, WallDrawing};
use crate::parts::{Working, figure, in_system};
use crate::state::use_app;
use finrun_engine::design::{Design, RoomDesign};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Length, Power, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn Lengths() -> impl IntoView {
    let app = use_app();
    let solved = app.solved;
    view! {
        {move || match solved.get() {
            Some((_, design)) if !design.rooms.is_empty() => {
                app.draft.with_untracked(|draft| all(draft, &design))
            }
            _ => view! {
                <h1>{text::station_lengths()}</h1>
                <p>{text::no_lengths_yet()}</p>
            }
            .into_any(),
        }}
        <ElementSettings/>
    }
    .into_any()
}

fn all(draft: &Draft, design: &Design) -> AnyView {
    let rooms = design.rooms.iter().map(|room| one_room(draft, room)).collect_view();
    view! {
        <h1>
            {figure("element", design.element_length())}
            " " <small>{text::in_pieces()} " " {text::pieces(design.piece_count())}</small>
        </h1>
        <div class="cards">{rooms}</div>
    }
    .into_any()
}

fn one_room(draft: &Draft, room: &RoomDesign) -> AnyView {
    let app = use_app();
    let id = room.room;
    let name = text::room_name(draft, id);
    let element = &room.element;
    let choice = &element.choice;
    let walls = {
        let mut surfaces: Vec<_> = choice.runs.iter().map(|run| run.surface).collect();
        surfaces.dedup();
        surfaces
    };
    let drawings = walls
        .into_iter()
        .map(|surface| {
            let side = text::surface_name(draft, id, surface);
            view! {
                <p class="side">{side}</p>
                <WallDrawing room=id surface shows=Shows::Pieces/>
            }
        })
        .collect_view();
    let pieces: Vec<Length> = choice.pieces().collect();
    let pieces = move || {
        let system = app.system();
        pieces.iter().map(|piece| in_system(*piece, system)).collect::<Vec<_>>().join(" + ")
    };
    let load = room.load.total;
    let needs_element = load > Power::ZERO;
    let short = room.short();
    let over = Value::share((element.output - load) / load);
    let what = move |name: &str| format!("room-{}.{name}", id.0);
    let needed = element.needed.map(|needed| {
        view! {
            <Working topic=Topic::Needed(id)>
                <span class="row">
                    <span>{text::finned_needed()}</span> {figure(&what("needed"), needed)}
                </span>
            </Working>
        }
    });
    let verdict = match short > Power::ZERO {
        true => view! {
            <p class="verdict stop">{text::short_word()} " " {figure(&what("short"), short)}</p>
        }
        .into_any(),
        false if needs_element => view! {
            <p class="verdict ok">"+" {figure(&what("over"), over)} " " {text::over_load()}</p>
        }
        .into_any(),
        false => ().into_any(),
    };
    let needs = figure(&what("load"), load);
    let gets = figure(&what("output"), element.output);
    let thumb = figure(&what("rule-of-thumb"), element.rule_of_thumb);
    view! {
        <section class="room-lengths">
            <h2 class="row">
                <span>{name}</span>
                {match choice.nominal > Length::ZERO {
                    true => figure(&what("nominal"), choice.nominal),
                    false => text::no_element().into_any(),
                }}
            </h2>
            <p class="pieces" data-figure=what("pieces")>{pieces}</p>
            {drawings}
            <Working topic=Topic::Output(id)>
                <span class="row">
                    <span>{text::needs()} " " {needs} ", " {text::gets()}</span>
                    {gets}
                </span>
            </Working>
            {verdict}
            {needed}
            <Working topic=Topic::RuleOfThumb(id)>
                <span class="row">
                    <span>{text::rule_of_thumb()}</span>
                    {thumb}
                </span>
            </Working>
            <p class="row">
                <span>{text::water_in_out()}</span>
                <span>
                    {figure(&what("water-in"), element.water_in)} " → "
                    {figure(&what("water-out"), element.water_out)}
                </span>
            </p>
        </section>
    }
    .into_any()
}
