//! The second station: what the house loses, room by room and path by path.

use crate::parts::{figure, in_system, live_view, words, working};
use crate::state::use_app;
use finrun_engine::building::{Part, Path, PathLoss, RoomLoad};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::{Kind, Power, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn heat_loss() -> AnyView {
    let app = use_app();
    let solved = app.solved;
    live_view(move || match solved.get() {
        Some((job, design)) if !job.rooms.is_empty() => {
            app.draft.with_untracked(|draft| all(draft, &job, &design))
        }
        _ => view! {
            <h1>{text::station_heat_loss()}</h1>
            <p>{text::no_load_yet()}</p>
        }
        .into_any(),
    })
}

fn all(draft: &Draft, job: &Job, design: &Design) -> AnyView {
    let most = design.rooms.iter().fold(Power::from_si(1.0), |most, r| most.max(r.load.total));
    let rooms = job
        .rooms
        .iter()
        .zip(&design.rooms)
        .map(|(room, solved)| {
            let area = room.floor_area.si();
            let per_area = Value::new(Kind::PowerDensity, solved.load.total.si() / area);
            one_room(draft, &solved.load, most, per_area)
        })
        .collect_view();
    let total = figure("load", design.load);
    let title = view! {
        <h1 class="in-summary">{total} " " <small>{text::house_loses()}</small></h1>
    };
    view! {
        {working(Topic::HouseLoad, title.into_any())}
        {legend()}
        {rooms}
    }
    .into_any()
}

/// What the colours and hatchings of the bars stand for.
fn legend() -> AnyView {
    let keys = Part::ALL.map(|part| {
        view! {
            <li>
                <svg class="key-box" aria-hidden="true" viewBox="0 0 12 12">
                    <rect class=part_class(part) width="12" height="12"/>
                </svg>
                {text::part(part)}
            </li>
        }
        .into_any()
    });
    view! { <ul class="parts">{keys.into_iter().collect_view()}</ul> }.into_any()
}

fn part_class(part: Part) -> &'static str {
    match part {
        Part::Wall => "part-wall",
        Part::Window => "part-window",
        Part::Door => "part-door",
        Part::Ceiling => "part-ceiling",
        Part::Floor => "part-floor",
        Part::Air => "part-air",
    }
}

fn one_room(draft: &Draft, load: &RoomLoad, most: Power, per_area: Value) -> AnyView {
    let name = text::room_name(draft, load.room);
    let id = load.room.0;
    let paths = load
        .paths
        .iter()
        .enumerate()
        .map(|(index, path)| {
            let name = path_name(draft, load, path);
            let loss = figure(&format!("room-{id}.path-{index}"), path.loss);
            let row = view! { <span class="row"><span>{name}</span> {loss}</span> };
            working(Topic::PathLoss(load.room, path.path), row.into_any())
        })
        .collect_view();
    let density = figure(&format!("room-{id}.per-area"), per_area);
    let total = figure(&format!("room-{id}.load"), load.total);
    let title = view! {
        <h2 class="row in-summary">
            <span>{name} " " <small>{density}</small></span>
            {total}
        </h2>
    };
    view! {
        <section class="room-load">
            {working(Topic::RoomLoad(load.room), title.into_any())}
            {bar(load, most)}
            <details class="more">
                <summary>{text::path_by_path()}</summary>
                {paths}
            </details>
        </section>
    }
    .into_any()
}

/// The room's load as a bar of its parts, as long as its share of the largest room.
fn bar(load: &RoomLoad, most: Power) -> AnyView {
    let app = use_app();
    let width = 360.0;
    let mut x = 0.0;
    let mut said = Vec::new();
    let rects = Part::ALL
        .into_iter()
        .filter_map(|part| {
            let loss = load.of(part);
            if loss <= Power::ZERO {
                return None;
            }
            said.push((part, loss));
            let wide = width * (loss / most);
            let left = x;
            x += wide;
            Some(
                view! {
                    <rect class=part_class(part) x=format!("{left:.1}") y="0"
                        width=format!("{:.1}", (wide - 1.0).max(0.5)) height="12"/>
                }
                .into_any(),
            )
        })
        .collect_view();
    let label = words(move || {
        let system = app.system();
        let parts: Vec<String> = said
            .iter()
            .map(|(part, loss)| format!("{} {}", text::part(*part), in_system(*loss, system)))
            .collect();
        parts.join(", ")
    });
    view! {
        <svg class="bar" role="img" aria-label=label viewBox="0 0 360 12" preserveAspectRatio="none">
            {rects}
        </svg>
    }
    .into_any()
}

fn path_name(draft: &Draft, load: &RoomLoad, path: &PathLoss) -> String {
    match path.path {
        Path::Surface(surface) => text::surface_name(draft, load.room, surface),
        Path::Opening(surface, opening) => format!(
            "{}, {}",
            text::opening_name(draft, load.room, surface, opening),
            text::surface_name(draft, load.room, surface)
        ),
        Path::Neighbour(room, _) => {
            format!("{} ({})", text::from_neighbour(), text::room_name(draft, room))
        }
        Path::Air => text::path_air().to_string(),
    }
}
