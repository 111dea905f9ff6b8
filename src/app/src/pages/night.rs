//! The design day in time: a night's setback and the recovery.

use super::later::{Seen, page_of};
use super::season::{close_table, of_room, open_table, row};
use crate::drawing::{Lines, lines_chart};
use crate::markup::Markup;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, each, in_system, number_field};
use crate::state::use_app;
use finrun_engine::job::{Choice, ControlField, Field};
use finrun_engine::quantity::{Kind, display_unit};
use finrun_engine::season::{Controls, NoSeason};
use finrun_engine::transient::{DayRun, Sample};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn design_day(job: &JobKey) -> AnyView {
    let app = use_app();
    let rooms = move || app.typed(|draft| draft.in_order().into_iter().map(|id| id.0).collect());
    let field = |field| number_field(Field::Control(field));
    let own = of_room(|id| choice_field(Choice::RoomMass(id)));
    let settings = view! {
        <div class="pair">
            {field(ControlField::Setback)}
            {field(ControlField::SetbackHours)}
            {field(ControlField::Recover)}
            {choice_field(Choice::Mass)}
        </div>
        <details class="more">
            <summary>{text::night_rooms()}</summary>
            <div class="pair">{each(rooms, own)}</div>
        </details>
    }
    .into_any();
    page_of(
        job,
        Section::DesignDay,
        text::night_note(),
        settings,
        text::night_working(),
        |seen| Box::new(move || Some(worked(&seen))),
        ().into_any(),
    )
}

fn worked(seen: &Seen) -> Result<String, NoSeason> {
    let Seen { draft, job, design } = seen;
    let system = draft.units;
    let Some(control) = &job.control else { return Ok(String::new()) };
    if design.piping.not_solved.is_some() {
        return Err(NoSeason::NoFlows);
    }
    if design.rooms.is_empty() || design.piping.heat <= finrun_engine::quantity::Power::ZERO {
        return Err(NoSeason::NothingHeated);
    }
    let controls = Controls::of(job, design);
    let run = finrun_engine::transient::design_day(
        job,
        design,
        &controls,
        &control.masses,
        control.setback,
    )?;
    let mut markup = Markup::new();
    for (end, said) in text::night_said(draft, &run, control.setback, system) {
        let class = if end == "recovery" { "verdict" } else { "" };
        let key = format!("night.{end}");
        markup.leaf("p", &[("class", class), ("data-figure", &key)], &said);
    }
    markup.leaf("h2", &[], text::night_chart_title());
    markup.open("div", &[("class", "drawing")]);
    markup.put(&lines_chart(&chart(seen, &run, control.setback.hours)));
    markup.close("div");
    if job.zones.len() > 1 {
        open_table(&mut markup, text::night_zones(), &["", text::night_zones()]);
        for zone in &run.zones {
            let cells = [("recovered", text::recovered(zone.recovered_h))];
            let key = format!("night-zone-{}", zone.zone.0);
            row(&mut markup, &text::zone_name(draft, zone.zone), &key, &cells);
        }
        close_table(&mut markup);
    }
    samples(&mut markup, seen, &run);
    Ok(markup.done())
}

fn chart(seen: &Seen, run: &DayRun, turned_up: f64) -> Lines {
    let Seen { draft, job, .. } = seen;
    let degrees = display_unit(Kind::Temperature, draft.units);
    let lines = job.house.rooms.iter().enumerate().map(|(room, of)| {
        let points = run.samples.iter().map(|sample| (sample.at_h, sample.rooms[room].to(degrees)));
        (text::room_name(draft, of.id), points.collect())
    });
    Lines {
        said: text::night_picture(job.house.rooms.len()),
        along: "h",
        up: degrees.symbol(),
        lines: lines.collect(),
        mark: Some((turned_up, text::turned_up().to_string())),
        ..Lines::default()
    }
}

/// Every two hours, as text takes it.
fn every_two_hours(run: &DayRun) -> impl Iterator<Item = &Sample> {
    run.samples.iter().filter(|sample| {
        let twos = sample.at_h / 2.0;
        (twos - twos.round()).abs() < 1e-9
    })
}

fn samples(markup: &mut Markup, seen: &Seen, run: &DayRun) {
    let Seen { draft, job, .. } = seen;
    let names: Vec<String> =
        job.house.rooms.iter().map(|room| text::room_name(draft, room.id)).collect();
    let mut heads = vec![text::hour_word()];
    heads.extend(names.iter().map(String::as_str));
    markup.open("details", &[("class", "more")]);
    markup.leaf("summary", &[], text::season_table());
    open_table(markup, text::season_table(), &heads);
    for sample in every_two_hours(run) {
        let rooms = job.house.rooms.iter().zip(&sample.rooms);
        let cells: Vec<(String, String)> = rooms
            .map(|(room, at)| (format!("room-{}", room.id.0), in_system(*at, draft.units)))
            .collect();
        let hour = format!("{:.0}", sample.at_h);
        row(markup, &hour, &format!("night-{hour}"), &cells);
    }
    close_table(markup);
    markup.close("details");
}
