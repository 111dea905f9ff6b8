//! Cooler water: how cool it may be in each weather, and what it takes to run at usual supplies.

use super::later::{Seen, Steps, page_of};
use super::rooms::section_links;
use super::season::{close_table, open_table, row};
use crate::drawing::{Lines, lines_chart};
use crate::markup::Markup;
use crate::page::{JobKey, Section};
use crate::parts::in_system;
use finrun_engine::building::mean_temperature;
use finrun_engine::climate::Season;
use finrun_engine::cooler::{Cooler, Cooling, USUAL_SUPPLIES};
use finrun_engine::job::BoilerKind;
use finrun_engine::quantity::{Kind, Temperature, display_unit};
use finrun_engine::season::Controls;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn cooler(job: &JobKey) -> AnyView {
    let links = section_links(job, &[Section::Season, Section::Plant]);
    page_of(
        job,
        Section::Cooler,
        text::cooler_note(),
        ().into_any(),
        text::cooler_working(),
        steps,
        links,
    )
}

fn steps(seen: Seen) -> Steps {
    let bins = seen.draft.station.as_ref().map(|station| Season::of(station).bins());
    let bins = bins.unwrap_or_default();
    let controls = Controls::of(&seen.job, &seen.design);
    let mut search = Cooling::new(&USUAL_SUPPLIES);
    Box::new(move || {
        let step = search.step(&seen.job, &seen.design, &bins, &controls);
        step.map(|found| found.map(|found| said(&seen, &found))).transpose()
    })
}

fn said(seen: &Seen, found: &Cooler) -> String {
    let Seen { draft, job, .. } = seen;
    let system = draft.units;
    let mut markup = Markup::new();
    markup.open("section", &[("class", "columns")]);
    markup.open("div", &[]);
    markup.leaf("h2", &[], text::cooler_chart_title());
    markup.open("div", &[("class", "drawing")]);
    markup.put(&lines_chart(&chart(seen, found)));
    markup.close("div");
    let heads = [text::outdoors_word(), text::least_supply(), text::limiting_word()];
    open_table(&mut markup, text::cooler_chart_title(), &heads);
    for (nth, day) in found.days.iter().enumerate() {
        let supply = day.supply.map(|supply| in_system(supply, system));
        let cells = [
            ("supply", supply.unwrap_or_else(|| text::beyond_limit().to_string())),
            ("limiting", text::room_name(draft, day.limiting)),
        ];
        row(&mut markup, &in_system(day.outdoors, system), &format!("cool-{nth}"), &cells);
    }
    close_table(&mut markup);
    markup.close("div");
    markup.open("div", &[]);
    markup.leaf("h2", &[], text::reset_to_set());
    let room = mean_temperature(&job.house);
    // The design's supply, unless a day asks for more.
    let asks_more = found.days.iter().any(|day| day.supply.is_none_or(|t| t > job.circuit.supply));
    let most = if asks_more { job.circuit.boiler_limit } else { job.circuit.supply };
    let line = text::cooler_line(found.line.as_ref(), room, most, system);
    markup.leaf("p", &[("data-figure", "cool.line")], &line);
    if job.plant.boiler == BoilerKind::NonCondensing {
        markup.leaf("p", &[("class", "verdict")], text::must_not_condense());
    }
    markup.leaf("h2", &[], text::condensing_title());
    let heads = ["", text::season_water_runs(), text::condensing_word(), text::of_the_heat()];
    open_table(&mut markup, text::condensing_title(), &heads);
    row(&mut markup, text::as_now(), "cool-now", &text::cool_year(&found.now, system));
    if let Some(by_line) = &found.by_line {
        row(&mut markup, text::by_the_line(), "cool-by-line", &text::cool_year(by_line, system));
    }
    close_table(&mut markup);
    markup.close("div");
    markup.close("section");
    for (nth, supply) in found.supplies.iter().enumerate() {
        let title = text::at_supply(supply.supply, system);
        markup.leaf("h2", &[], &title);
        let said = text::supply_said(supply, system);
        markup.leaf("p", &[("data-figure", &format!("cool-at-{nth}"))], &said);
        let heads = [text::room_word(), text::gets_word(), text::to_add(), text::to_cut()];
        open_table(&mut markup, &title, &heads);
        for room in &supply.rooms {
            let key = format!("cool-at-{nth}.room-{}", room.room.0);
            let name = text::room_name(draft, room.room);
            row(&mut markup, &name, &key, &text::cool_room(room, system));
        }
        close_table(&mut markup);
    }
    markup.done()
}

fn chart(seen: &Seen, found: &Cooler) -> Lines {
    let Seen { draft, job, .. } = seen;
    let degrees = display_unit(Kind::Temperature, draft.units);
    let at = |t: Temperature| t.to(degrees);
    let points = found.days.iter().filter_map(|day| Some((at(day.outdoors), at(day.supply?))));
    let mut lines = vec![(text::least_supply().to_string(), points.collect())];
    if let Some(line) = &found.line {
        let room = mean_temperature(&job.house);
        let by_line = |outdoors| room + line.shift + (room - outdoors) * line.slope;
        let points = found.days.iter().map(|day| (at(day.outdoors), at(by_line(day.outdoors))));
        lines.push((text::line_of_control().to_string(), points.collect()));
    }
    Lines {
        said: text::cooler_picture().to_string(),
        along: degrees.symbol(),
        up: degrees.symbol(),
        lines,
        ..Lines::default()
    }
}
