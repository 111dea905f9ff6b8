//! The house through the year: every room against the weather, and what a year comes to.

use super::comfort::comfort;
use super::later::{Seen, page_of};
use super::piping::several;
use super::rooms::section_links;
use crate::drawing::{Lines, lines_chart};
use crate::markup::Markup;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, each, in_system, live, live_view, number_field, yes};
use crate::state::use_app;
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::climate::{Season, Station};
use finrun_engine::design::Design;
use finrun_engine::job::{BillsField, Choice, Field, Job, RoomField};
use finrun_engine::quantity::{Kind, Temperature, display_unit};
use finrun_engine::season::{BinRun, Burning, Controls, NoSeason, SeasonRun};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn season(job: &JobKey) -> AnyView {
    let app = use_app();
    let zones = move || app.typed(|draft| draft.zones.iter().map(|zone| zone.id.0).collect());
    let rooms = move || app.typed(|draft| draft.in_order().into_iter().map(|id| id.0).collect());
    let settings = view! {
        <details class="more" open>
            <summary>{text::season_how_run()}</summary>
            {each(zones, |id| held(ZoneId(id)))}
            {choice_field(Choice::SupplyBy)}
            <div class="pair">
                {choice_field(Choice::Fuel)}
                {number_field(Field::Bills(BillsField::Efficiency))}
                {number_field(Field::Bills(BillsField::Price))}
            </div>
        </details>
        <details class="more">
            <summary>{text::dampers()}</summary>
            <div class="pair">{each(rooms, of_room(|id| number_field(Field::Room(id, RoomField::Damper))))}</div>
        </details>
    }
    .into_any();
    let below = view! {
        {comfort()}
        {section_links(job, &[Section::Place, Section::Plant])}
    }
    .into_any();
    page_of(
        job,
        Section::Season,
        text::season_note(),
        settings,
        text::season_working(),
        |seen| Box::new(move || Some(worked(&seen))),
        below,
    )
}

/// What holds a zone, under its name where there are several.
fn held(zone: ZoneId) -> AnyView {
    let app = use_app();
    let several = yes(several);
    live_view(move || match several.get() {
        false => choice_field(Choice::Holds(zone)),
        true => {
            let name = live(move || app.typed(|draft| text::zone_name(draft, zone)));
            view! {
                <fieldset class="opening">
                    <legend>{name}</legend>
                    {choice_field(Choice::Holds(zone))}
                </fieldset>
            }
            .into_any()
        }
    })
}

/// A room's own field under its name.
pub(super) fn of_room(field: fn(RoomId) -> AnyView) -> impl Fn(u32) -> AnyView + Copy {
    move |id| {
        let app = use_app();
        let id = RoomId(id);
        let name = live(move || app.typed(|draft| text::room_name(draft, id)));
        view! { <fieldset class="opening"><legend>{name}</legend> {field(id)}</fieldset> }
            .into_any()
    }
}

/// The year of a job at its station.
pub(super) fn year(station: &Station, job: &Job, design: &Design) -> Result<SeasonRun, NoSeason> {
    let bins = Season::of(station).bins();
    finrun_engine::season::season(job, design, &bins, &Controls::of(job, design), Burning::of(job))
}

fn worked(seen: &Seen) -> Result<String, NoSeason> {
    let Seen { draft, job, design } = seen;
    let station = draft.station.as_ref().ok_or(NoSeason::NothingHeated)?;
    let run = year(station, job, design)?;
    let system = draft.units;
    let mut markup = Markup::new();
    let verdict = text::season_verdict(draft, &run, system);
    markup.leaf("p", &[("class", "verdict"), ("data-figure", "season.verdict")], &verdict);
    markup.leaf("p", &[("class", "note")], &text::season_limits(system));
    markup.open("section", &[("class", "columns")]);
    markup.open("div", &[]);
    markup.leaf("h2", &[], text::season_chart_title());
    markup.open("div", &[("class", "drawing")]);
    markup.put(&lines_chart(&chart(seen, &run)));
    markup.close("div");
    markup.close("div");
    markup.open("div", &[]);
    markup.leaf("h2", &[], text::season_sums_title());
    open_scroll(&mut markup, text::season_sums_title());
    markup.open("table", &[]);
    for (end, name, shown) in text::season_sums(&run, job.control.as_ref(), system) {
        markup.open("tr", &[]);
        markup.leaf("th", &[("scope", "row")], name);
        markup.leaf("td", &[("data-figure", &format!("season.{end}"))], &shown);
        markup.close("tr");
    }
    close_table(&mut markup);
    markup.close("div");
    markup.close("section");
    by_room(&mut markup, seen, &run);
    by_bin(&mut markup, seen, &run);
    Ok(markup.done())
}

/// As far as anything is heated: beyond, a room is as warm as the weather makes it.
fn heated(run: &SeasonRun) -> impl Iterator<Item = (usize, &BinRun)> {
    run.bins.iter().enumerate().filter(|(_, bin)| bin.runs > 0.0)
}

fn chart(seen: &Seen, run: &SeasonRun) -> Lines {
    let Seen { draft, job, .. } = seen;
    let degrees = display_unit(Kind::Temperature, draft.units);
    let at = |t: Temperature| t.to(degrees);
    let lines = job.house.rooms.iter().enumerate().map(|(room, of)| {
        let points = heated(run).map(|(_, bin)| (at(bin.outdoors), at(bin.rooms[room])));
        (text::room_name(draft, of.id), points.collect())
    });
    // Half way to the neighbours on both sides.
    let places: Vec<f64> = heated(run).map(|(_, bin)| at(bin.outdoors)).collect();
    let edge = |nth: usize| match (places.get(nth.wrapping_sub(1)), places.get(nth)) {
        (Some(a), Some(b)) => 0.5 * (a + b),
        (Some(a), None) | (None, Some(a)) => *a,
        _ => 0.0,
    };
    let bars = heated(run).enumerate().map(|(nth, (_, bin))| (edge(nth), edge(nth + 1), bin.hours));
    let most = heated(run).fold(0.0, |most: f64, (_, bin)| most.max(bin.hours));
    Lines {
        said: text::season_picture(job.house.rooms.len()),
        along: degrees.symbol(),
        up: degrees.symbol(),
        lines: lines.collect(),
        bars: bars.collect(),
        bars_said: text::most_hours(&text::hours(most, draft.units)),
        mark: None,
    }
}

/// Opens a box that scrolls by itself where what is in it is too wide.
pub(super) fn open_scroll(markup: &mut Markup, label: &str) {
    let scroll =
        [("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", label)];
    markup.open("div", &scroll);
}

/// Opens such a box, with a table in it that has these heads.
pub(super) fn open_table(markup: &mut Markup, label: &str, heads: &[&str]) {
    open_scroll(markup, label);
    markup.open("table", &[("class", "folds")]);
    markup.open("tr", &[]);
    for head in heads {
        match head.is_empty() {
            true => markup.leaf("td", &[], ""),
            false => markup.leaf("th", &[("scope", "col")], head),
        }
    }
    markup.close("tr");
}

pub(super) fn close_table(markup: &mut Markup) {
    markup.close("table");
    markup.close("div");
}

/// A row whose figures are named by its key and their own ends.
pub(super) fn row(markup: &mut Markup, name: &str, key: &str, cells: &[(impl AsRef<str>, String)]) {
    markup.open("tr", &[]);
    markup.leaf("th", &[("scope", "row")], name);
    for (end, shown) in cells {
        let key = format!("{key}.{}", end.as_ref());
        markup.leaf("td", &[("data-figure", &key)], shown);
    }
    markup.close("tr");
}

fn by_room(markup: &mut Markup, seen: &Seen, run: &SeasonRun) {
    let Seen { draft, job, .. } = seen;
    let system = draft.units;
    markup.leaf("h2", &[], text::season_rooms());
    let heads = [
        "",
        text::meant_to_be(),
        text::cold_word(),
        text::warm_word(),
        text::coldest_word(),
        text::warmest_word(),
    ];
    open_table(markup, text::season_rooms(), &heads);
    for (room, of) in run.rooms.iter().zip(&job.house.rooms) {
        let mut cells = vec![("meant", in_system(of.temperature, system))];
        cells.extend(text::season_room(room, system));
        let key = format!("year-{}", room.room.0);
        row(markup, &text::room_name(draft, room.room), &key, &cells);
    }
    close_table(markup);
}

fn by_bin(markup: &mut Markup, seen: &Seen, run: &SeasonRun) {
    let Seen { draft, job, .. } = seen;
    let system = draft.units;
    markup.open("details", &[("class", "more")]);
    markup.leaf("summary", &[], text::season_table());
    let names: Vec<String> =
        job.house.rooms.iter().map(|room| text::room_name(draft, room.id)).collect();
    let mut heads = vec![
        text::outdoors_word(),
        text::hours_word(),
        text::season_water_runs(),
        text::supply(),
        text::return_word(),
    ];
    heads.extend(names.iter().map(String::as_str));
    open_table(markup, text::season_table(), &heads);
    for (nth, bin) in heated(run) {
        let mut cells: Vec<(String, String)> = text::season_bin(bin, system)
            .into_iter()
            .map(|(end, shown)| (end.to_string(), shown))
            .collect();
        for (room, at) in job.house.rooms.iter().zip(&bin.rooms) {
            cells.push((format!("room-{}", room.id.0), in_system(*at, system)));
        }
        row(markup, &in_system(bin.outdoors, system), &format!("bin-{nth}"), &cells);
    }
    close_table(markup);
    markup.close("details");
}
