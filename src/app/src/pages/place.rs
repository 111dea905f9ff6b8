//! Where the house stands: the nearest climate stations, which one was chosen, and its numbers.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{
    button, button_on, choice_field, live, live_view, number_field, text_box, when, yes,
};
use crate::state::{App, Climate, EditKey, use_app};
use finrun_engine::climate::{Found, Hit, Station, search};
use finrun_engine::job::{Choice, Field, HouseField, resolve};
use finrun_engine::quantity::{Length, System};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn place(job: &JobKey) -> AnyView {
    let app = use_app();
    app.want_climate();
    let query = RwSignal::new(String::new());
    let typed = text_box("place".to_string(), text::zip_or_town(), query.into(), move |text| {
        query.set(text);
    });
    // A choice changes the job; the list, and the focus in it, must outlive that.
    let us = yes(move || app.system() == System::Us);
    let found = live_view(move || {
        let query = query.get();
        match app.climate.get() {
            Climate::NotAsked | Climate::Coming => words(text::stations_coming()),
            Climate::Failed(reason) => words(&text::stations_failed(&reason)),
            Climate::Here(table) => {
                let system = if us.get() { System::Us } else { System::Si };
                let altitude = untrack(|| app.typed_altitude());
                results(app, search(&table, &query, altitude), system)
            }
        }
    });
    let house = |field| number_field(Field::House(field));
    let chosen = live(move || app.station_line());
    let forget = when(
        move || app.typed(|draft| draft.station.is_some()),
        move || {
            button("", text::forget_station(), move || {
                app.edit(EditKey::Single, |draft| draft.station = None);
            })
        },
    );
    let inside = view! {
        <section class="columns">
            <div>
                {typed}
                <p class="note">{text::zip_or_town_note()}</p>
                {found}
                <p class="note">{text::outside_the_us()}</p>
            </div>
            <div>
                <h2>{text::chosen_station()}</h2>
                <p data-figure="station">{chosen}</p>
                {forget}
                {choice_field(Choice::DesignHours)}
                {house(HouseField::Outdoors)}
                {house(HouseField::Altitude)}
                {house(HouseField::MeanTemperature)}
                {house(HouseField::ColdestMonth)}
                {house(HouseField::Wind)}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Place, inside)
}

fn words(text: &str) -> AnyView {
    view! { <p>{text.to_string()}</p> }.into_any()
}

/// What a search came to.
fn results(app: App, found: Found, system: System) -> AnyView {
    match found {
        Found::Blank => ().into_any(),
        Found::NotAZip { digits } => trouble(text::not_a_zip(digits)),
        Found::NoSuchZip { zip } => trouble(text::no_such_zip(&zip)),
        Found::NoSuchPlace => trouble(text::no_such_place().to_string()),
        Found::Zip { zip, spread, hits } => view! {
            <p class="note">{text::zip_spread(&zip, spread, system)}</p>
            {list(app, hits, system)}
        }
        .into_any(),
        Found::Place { named, more, near } => view! {
            {list(app, named, system)}
            {(more > 0).then(|| words(&text::more_stations(more)))}
            {(!near.is_empty()).then(|| words(text::neighbours()))}
            {list(app, near, system)}
        }
        .into_any(),
    }
}

fn trouble(text: String) -> AnyView {
    view! { <p class="error" role="alert">{text}</p> }.into_any()
}

fn list(app: App, hits: Vec<Hit>, system: System) -> AnyView {
    let one = |hit: Hit| {
        let name = text::station_name(&hit.station);
        let facts = text::station_facts(&hit.station, system);
        let away = text::station_away(hit.distance, hit.uncertainty, system);
        let label = text::act_on(text::choose(), &name);
        let station = hit.station.clone();
        let chosen = live(move || {
            let is = app.typed(|draft| draft.station.as_ref() == Some(&station));
            if is { text::chosen_station() } else { "" }.to_string()
        });
        let take = move || app.take_station(hit.station.clone());
        view! {
            <li>
                <div>
                    <b>{name}</b>
                    <p class="note">{away}" · "{facts}</p>
                    <p class="verdict ok">{chosen}</p>
                </div>
                {button_on("", text::choose(), move || label.clone(), take)}
            </li>
        }
        .into_any()
    };
    view! { <ul class="stations-found">{hits.into_iter().map(one).collect_view()}</ul> }.into_any()
}

impl App {
    fn take_station(self, station: Station) {
        self.say(text::station_taken(&station));
        self.edit(EditKey::Single, |draft| draft.station = Some(station));
    }

    fn typed_altitude(self) -> Option<Length> {
        let field = Field::House(HouseField::Altitude);
        self.typed(|draft| {
            draft.entry(field)?;
            Some(Length::from_si(resolve(draft, field).si()?))
        })
    }

    fn station_line(self) -> String {
        let system = self.system();
        self.typed(|draft| match &draft.station {
            Some(station) => {
                let (name, facts) =
                    (text::station_name(station), text::station_facts(station, system));
                format!("{name}: {facts}")
            }
            None => text::no_station().to_string(),
        })
    }
}
