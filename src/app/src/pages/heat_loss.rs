//! The second station: what the house loses, room by room and path by path.

use crate::drawing::plans;
use crate::markup::{Markup, live_markup, num, still_markup};
use crate::page::{JobKey, Page, Section};
use crate::parts::{figure, in_system, live, live_view, number_field, working};
use crate::state::{App, use_app};
use finrun_engine::building::{Band, Part, Path, PathLoss, RoomId, RoomLoad};
use finrun_engine::check::Finding;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Field, HouseField, Job};
use finrun_engine::quantity::{Kind, Power, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn heat_loss(key: &JobKey) -> AnyView {
    let app = use_app();
    let solved = app.solved;
    let key = key.clone();
    let results = live_view(move || match solved.get().as_ref() {
        Some((job, design)) if !job.house.rooms.is_empty() => {
            app.typed_now(|draft| all(&key, draft, job, design))
        }
        _ => view! {
            <h1>{text::station_heat_loss()}</h1>
            <p>{text::no_load_yet()}</p>
        }
        .into_any(),
    });
    view! {
        {results}
        <section class="settings">{number_field(Field::House(HouseField::Margin))}</section>
    }
    .into_any()
}

fn all(key: &JobKey, draft: &Draft, job: &Job, design: &Design) -> AnyView {
    let most = design.rooms.iter().fold(Power::from_si(1.0), |most, r| most.max(r.load.total));
    let rooms = job
        .house
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
    let app = use_app();
    let (house, band) = (design.clone(), design.certainty.house);
    let band = live(move || text::band(band, app.system()));
    let links = [Section::Certainty, Section::Bills, Section::WhatIf].map(|section| {
        let href = Page::Section(key.clone(), section).to_hash();
        view! { <a class="act" href=href>{section.label()}</a> }.into_any()
    });
    let (draft_now, job_now) = (draft.clone(), job.clone());
    let plans = live_markup("plans", move || {
        let draft = Draft { units: app.system(), ..draft_now.clone() };
        plans(&draft, &job_now, &house)
    });
    let slabs = design.slabs.map(|slabs| {
        let method = draft.ground.method;
        let said = live(move || text::slabs_compared(slabs, method, app.system()));
        view! { <p class="note" data-figure="slabs">{said}</p> }.into_any()
    });
    view! {
        {working(Topic::HouseLoad, title.into_any())}
        {working(Topic::Band, view! { <span data-figure="load.band">{band}</span> }.into_any())}
        <p class="note" data-figure="second-opinion">{live(move || app.second_opinion())}</p>
        <div class="acts">{links.into_iter().collect_view()}</div>
        {legend()}
        {rooms}
        {spaces(draft, design)}
        {slabs}
        <h2>{text::plans()}</h2>
        {plans}
        {table(draft, job, design)}
    }
    .into_any()
}

/// Unheated spaces, each at its temperature.
fn spaces(draft: &Draft, design: &Design) -> AnyView {
    if design.spaces.is_empty() {
        return ().into_any();
    }
    let rows = design
        .spaces
        .iter()
        .map(|space| {
            let name = text::room_name(draft, space.space);
            let id = space.space.0;
            let temperature = figure(&format!("room-{id}.temperature"), space.temperature);
            let title = view! {
                <h3 class="row in-summary"><span>{name}</span> {temperature}</h3>
            };
            view! {
                {working(Topic::SpaceTemperature(space.space), title.into_any())}
                <details class="more">
                    <summary>{text::path_by_path()}</summary>
                    {paths(draft, space.space, &space.paths)}
                </details>
            }
            .into_any()
        })
        .collect_view();
    view! {
        <section class="room-load">
            <h2>{text::spaces()}</h2>
            {rows}
        </section>
    }
    .into_any()
}

/// Each way that heat takes out of a room or a space, open to its working.
fn paths(draft: &Draft, room: RoomId, paths: &[PathLoss]) -> AnyView {
    let id = room.0;
    paths
        .iter()
        .enumerate()
        .map(|(index, path)| {
            let name = path_name(draft, room, path);
            let loss = figure(&format!("room-{id}.path-{index}"), path.loss);
            let row = view! { <span class="row"><span>{name}</span> {loss}</span> };
            working(Topic::PathLoss(room, path.path), row.into_any())
        })
        .collect_view()
        .into_any()
}

/// Room by room in numbers: floor, load, load on each part of the floor, band.
fn table(draft: &Draft, job: &Job, design: &Design) -> AnyView {
    let rows: Vec<(String, [Value; 3], Band)> = job
        .house
        .rooms
        .iter()
        .zip(&design.rooms)
        .zip(&design.certainty.rooms)
        .map(|((room, solved), band)| {
            let per_area = solved.load.total.si() / room.floor_area.si();
            let values = [
                room.floor_area.into(),
                solved.load.total.into(),
                Value::new(Kind::PowerDensity, per_area),
            ];
            (text::room_name(draft, room.id), values, *band)
        })
        .collect();
    let app = use_app();
    let table = live_markup("", move || {
        let system = app.system();
        let mut out = Markup::new();
        out.open("table", &[]);
        out.open("tr", &[]);
        let heads = [
            text::room(),
            text::floor_word(),
            text::load(),
            text::per_area_short(),
            text::band_head(),
        ];
        for head in heads {
            out.leaf("th", &[("scope", "col")], head);
        }
        out.close("tr");
        for (name, values, band) in &rows {
            out.open("tr", &[]);
            out.leaf("th", &[("scope", "row")], name);
            for value in values {
                out.leaf("td", &[], &in_system(*value, system));
            }
            out.leaf("td", &[], &text::from_to(band.low, band.high, system));
            out.close("tr");
        }
        out.close("table");
        out.done()
    });
    view! {
        <h2>{text::room_by_room()}</h2>
        <div class="scroll" tabindex="0" role="region" aria-label=text::room_by_room()>{table}</div>
    }
    .into_any()
}

impl App {
    /// What such houses lose, held against this one.
    fn second_opinion(self) -> String {
        let system = self.system();
        self.design(|solved| {
            let (_, design) = solved.as_ref()?;
            let check =
                design.checks.iter().find(|c| matches!(c.finding, Finding::PerArea { .. }))?;
            Some(self.typed_now(|draft| {
                let title = text::check_title(check, draft, system);
                format!("{title}. {}", text::check_detail(check, system))
            }))
        })
        .unwrap_or_default()
    }
}

/// What the fills of the bars stand for.
fn legend() -> AnyView {
    let mut markup = Markup::new();
    for part in Part::ALL {
        markup.open("span", &[]);
        markup.open(
            "svg",
            &[("class", "key-box"), ("viewBox", "0 0 12 12"), ("aria-hidden", "true")],
        );
        markup.leaf("rect", &[("class", part_class(part)), ("width", "12"), ("height", "12")], "");
        markup.close("svg");
        markup.text(text::part(part));
        markup.close("span");
    }
    still_markup("parts", markup.done())
}

fn part_class(part: Part) -> &'static str {
    match part {
        Part::Wall => "part-wall",
        Part::Window => "part-window",
        Part::Door => "part-door",
        Part::Ceiling => "part-ceiling",
        Part::Floor => "part-floor",
        Part::Ground => "part-ground",
        Part::Air => "part-air",
    }
}

fn one_room(draft: &Draft, load: &RoomLoad, most: Power, per_area: Value) -> AnyView {
    let name = text::room_name(draft, load.room);
    let id = load.room.0;
    let paths = paths(draft, load.room, &load.paths);
    let density = figure(&format!("room-{id}.per-area"), per_area);
    let density = view! { <span class="row"><span>{text::per_area()}</span> {density}</span> };
    let total = figure(&format!("room-{id}.load"), load.total);
    let title = view! {
        <h2 class="row in-summary">
            <span>{name}</span>
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
                {working(Topic::PerArea(load.room), density.into_any())}
            </details>
        </section>
    }
    .into_any()
}

/// The room's load as a bar of its parts, as long as its share of the largest room.
fn bar(load: &RoomLoad, most: Power) -> AnyView {
    let app = use_app();
    let parts: Vec<(Part, Power)> = Part::ALL
        .into_iter()
        .map(|part| (part, load.of(part)))
        .filter(|(_, loss)| *loss > Power::ZERO)
        .collect();
    live_markup("drawing", move || {
        let system = app.system();
        let said: Vec<String> = parts
            .iter()
            .map(|(part, loss)| format!("{} {}", text::part(*part), in_system(*loss, system)))
            .collect();
        let label = said.join(", ");
        let mut svg = Markup::new();
        svg.open(
            "svg",
            &[
                ("class", "bar"),
                ("role", "img"),
                ("aria-label", &label),
                ("viewBox", "0 0 360 12"),
                ("preserveAspectRatio", "none"),
            ],
        );
        let mut x = 0.0;
        for (part, loss) in &parts {
            let wide = 360.0 * (*loss / most);
            let (left, width) = (num(x), num((wide - 1.0).max(0.5)));
            let shape =
                [("class", part_class(*part)), ("x", &*left), ("width", &width), ("height", "12")];
            svg.leaf("rect", &shape, "");
            x += wide;
        }
        svg.close("svg");
        svg.done()
    })
}

pub(super) fn path_name(draft: &Draft, room: RoomId, path: &PathLoss) -> String {
    match path.path {
        Path::Surface(surface) => text::surface_name(draft, room, surface),
        Path::Ground(surface) => text::through_ground(&text::surface_name(draft, room, surface)),
        Path::GroundSwing(surface) => {
            text::coldest_month_adds(&text::surface_name(draft, room, surface))
        }
        Path::SlabEdge(surface) => text::slab_edge_of(&text::surface_name(draft, room, surface)),
        Path::Opening(surface, opening) => format!(
            "{}, {}",
            text::opening_name(draft, room, surface, opening),
            text::surface_name(draft, room, surface)
        ),
        Path::Neighbour(other, _) => {
            format!("{} ({})", text::from_neighbour(), text::room_name(draft, other))
        }
        Path::Air => text::path_air().to_string(),
        Path::Ventilation => text::path_ventilation().to_string(),
    }
}
