//! Boiler and fill: what is asked of the plant, and what follows.

use super::lengths::row;
use super::piping::several;
use super::section;
use crate::markup::{Markup, Row, figures, live_markup, scrolled, still_markup};
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, figure, in_system, live_view, number_field, when, working};
use crate::state::{App, use_app};
use finrun_engine::design::Design;
use finrun_engine::job::{
    Antifreeze, BoilerKind, Choice, Draft, Field, Job, PlantDraft, PlantField, TankHeating, Zoning,
};
use finrun_engine::plant::design::PlantDesign;
use finrun_engine::quantity::{System, Value};
use finrun_engine::trace::Topic;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn plant(job: &JobKey) -> AnyView {
    let app = use_app();
    let solved = app.solved;
    let results = live_view(move || match solved.get().as_ref() {
        Some((_, design)) if design.plant.is_some() => results(design),
        _ => view! { <p>{text::no_loop_yet()}</p> }.into_any(),
    });
    let inside = view! {
        <section class="columns">
            <div>{settings()} {still_markup("", cautions())}</div>
            <div>{results}</div>
        </section>
    }
    .into_any();
    section(job, Section::Plant, inside)
}

fn settings() -> AnyView {
    let app = use_app();
    let field = |field| number_field(Field::Plant(field));
    let is = move |test: fn(&PlantDraft) -> bool| move || app.typed(|draft| test(&draft.plant));
    let valves = move || several() && app.typed(|draft| draft.zoning == Zoning::Valves);
    view! {
        {choice_field(Choice::BoilerKind)}
        {field(PlantField::Output)}
        {field(PlantField::LeastOutput)}
        {choice_field(Choice::TankHeating)}
        {when(is(|plant| plant.tank != TankHeating::None), move || field(PlantField::TankOutput))}
        {field(PlantField::TopHeight)}
        {field(PlantField::Fill)}
        {choice_field(Choice::Antifreeze)}
        {when(is(|plant| plant.antifreeze != Antifreeze::None), move || {
            field(PlantField::GlycolShare)
        })}
        <details class="more">
            <summary>{text::more_of_plant()}</summary>
            {field(PlantField::BoilerVolume)}
            {field(PlantField::OtherVolume)}
            {field(PlantField::Differential)}
            {when(is(|plant| plant.boiler == BoilerKind::NonCondensing), move || {
                field(PlantField::LeastReturn)
            })}
            {field(PlantField::Relief)}
            {field(PlantField::ColdFill)}
            {choice_field(Choice::Metal)}
            {field(PlantField::Balance)}
            {when(valves, || choice_field(Choice::ValveKind))}
        </details>
    }
    .into_any()
}

fn results(design: &Design) -> AnyView {
    let app = use_app();
    let Some(plant) = &design.plant else { return ().into_any() };
    let liquid = |name, volume| figure(name, Value::liquid(volume));
    let rows = [
        plant.needed.map(|needed| {
            (Topic::NeededOutput, text::needed_output(), figure("plant.needed", needed.output))
        }),
        plant.volume.map(|volume| {
            (Topic::SystemVolume, text::system_holds(), liquid("plant.volume", volume.total))
        }),
        Some((Topic::FillPressure, text::fill_cold(), figure("plant.fill", plant.filling.cold))),
        plant
            .tank
            .map(|tank| (Topic::TankSize, text::tank_least(), liquid("plant.tank", tank.volume))),
    ];
    let rows = rows.into_iter().flatten();
    let rows = rows.map(|(topic, name, figure)| working(topic, row(name, figure))).collect_view();
    let reset = plant.reset.is_some().then(|| {
        view! {
            <h2>{text::reset_title()}</h2>
            <p class="note">{text::reset_note()}</p>
            {scrolled(text::reset_title(), move || app.of_plant(reset_table))}
            {live_markup("", move || app.of_plant(reset_said))}
        }
        .into_any()
    });
    view! {
        {rows}
        {live_markup("", move || app.of_plant(said))}
        <p>{text::air_eliminator()}</p>
        {reset}
    }
    .into_any()
}

/// What is said of a plant, in the units of now.
struct Seen<'a> {
    draft: &'a Draft,
    job: &'a Job,
    plant: &'a PlantDesign,
    system: System,
}

impl App {
    fn of_plant(self, say: fn(&Seen<'_>) -> String) -> String {
        let system = self.system();
        self.design(|solved| match solved {
            Some((job, design)) => match &design.plant {
                Some(plant) => self.typed(|draft| say(&Seen { draft, job, plant, system })),
                None => String::new(),
            },
            None => String::new(),
        })
    }
}

fn said(seen: &Seen<'_>) -> String {
    let Seen { draft, job, plant, system } = *seen;
    let mut markup = Markup::new();
    let mut say = |key: &str, sentence: Option<String>| {
        if let Some(sentence) = sentence {
            markup.leaf("p", &[("data-figure", key)], &sentence);
        }
    };
    say("plant.boiler", plant.size.map(|judged| text::boiler_judged(judged, system)));
    say(
        "plant.burner",
        plant.part_load.map(|alone| {
            let zone = (job.zones.len() > 1).then(|| text::zone_name(draft, alone.zone));
            text::burner_alone(&alone, zone.as_deref(), system)
        }),
    );
    say("plant.back", plant.back.map(|verdict| text::back_verdict(verdict, system)));
    say("plant.parts", plant.volume.map(|volumes| text::volume_parts(&volumes, system)));
    say("plant.pressures", Some(text::pressures_said(&plant.filling, system)));
    say("plant.expansion", plant.tank.map(|tank| text::tank_said(&tank, system)));
    say("plant.no-tank", plant.no_tank.map(|error| text::no_tank(error).to_string()));
    say("plant.boiling", plant.boiling.map(|boiling| text::boiling_margin(&boiling, system)));
    say(
        "plant.glycol",
        plant.glycol.map(|charge| text::glycol_charge(&charge, plant.freezes_at, system)),
    );
    say("plant.control", plant.control.map(|control| text::control_power(&control)));
    markup.done()
}

fn reset_table(seen: &Seen<'_>) -> String {
    let Some(reset) = &seen.plant.reset else { return String::new() };
    let row = |(at, point): (usize, &finrun_engine::plant::reset::Point)| Row {
        name: in_system(point.outdoors, seen.system),
        key: format!("reset-{at}"),
        cells: vec![("supply", in_system(point.supply, seen.system))],
    };
    let rows: Vec<Row> = reset.points.iter().enumerate().map(row).collect();
    figures(&[text::outdoors_word(), text::supply()], &rows)
}

fn reset_said(seen: &Seen<'_>) -> String {
    let Some(reset) = &seen.plant.reset else { return String::new() };
    let mut markup = Markup::new();
    let line = text::reset_line(reset, seen.job.circuit.supply, seen.system);
    markup.leaf("p", &[("data-figure", "plant.reset")], &line);
    markup.done()
}

fn cautions() -> String {
    let mut markup = Markup::new();
    markup.leaf("h2", &[], text::to_heed());
    markup.open("ul", &[]);
    for caution in text::plant_cautions() {
        markup.leaf("li", &[], caution);
    }
    markup.close("ul");
    markup.open("p", &[]);
    markup.leaf("a", &[("href", "#/safety"), ("class", "act")], text::safety_title());
    markup.close("p");
    markup.done()
}
