//! All sheets of a job, in the order in which one builds.

use super::boiler_room::boiler_room;
use super::elevation::elevations;
use super::follow::follow;
use super::route::route_plans;
use super::schematic;
use super::sheet::{Sheet, figure};
use crate::markup::{Markup, live_markup};
use crate::state::use_app;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::System;
use finrun_text as text;
use leptos::prelude::*;

pub(crate) fn all_drawings() -> AnyView {
    let app = use_app();
    live_markup("sheets", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((job, design)) if !design.rooms.is_empty() => {
                app.typed(|draft| draw(draft, job, design, system))
            }
            _ => {
                let mut markup = Markup::new();
                markup.leaf("p", &[], text::no_loop_yet());
                markup.done()
            }
        })
    })
}

pub(crate) fn draw(draft: &Draft, job: &Job, design: &Design, system: System) -> String {
    let loops = follow(draft, job, design);
    let mut out = String::new();
    part(&mut out, text::drawings_plans());
    for sheet in route_plans(draft, job, design, &loops, system) {
        out.push_str(&sheet.into_markup());
    }
    part(&mut out, text::drawings_piping());
    let whole = schematic::draw(draft, job, design, system);
    out.push_str(&figure(text::schematic_title(), &whole, &[text::schematic_note()]));
    out.push_str(&boiler_room(draft, job, design, system).into_markup());
    let walls: Vec<Sheet> = loops
        .iter()
        .flat_map(|one| &one.visits)
        .filter_map(|visit| Some((job.house.rooms.get(visit.room)?.id, visit)))
        .flat_map(|(room, visit)| elevations(draft, room, visit, system))
        .collect();
    if !walls.is_empty() {
        part(&mut out, text::drawings_walls());
    }
    for sheet in walls {
        out.push_str(&sheet.into_markup());
    }
    out
}

fn part(out: &mut String, title: &str) {
    let mut markup = Markup::new();
    markup.leaf("h2", &[], title);
    out.push_str(&markup.done());
}
