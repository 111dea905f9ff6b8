//! One file a page.

mod air;
mod assemblies;
mod bills;
mod certainty;
mod circulator;
mod comfort;
mod commission;
mod compare;
mod cooler;
mod drawings;
mod elements;
mod existing;
mod ground;
mod heat_loss;
mod hung;
mod install;
mod jobs;
mod kept;
mod later;
mod lengths;
mod loop_check;
mod materials;
mod night;
mod offered;
mod oversize;
mod piping;
mod place;
mod plain;
mod plant;
mod price_list;
mod prices;
mod remedies;
mod report;
mod room;
mod rooms;
mod route;
mod running;
mod season;
mod share;
mod suggested;
mod surface;
mod what_if;

use crate::page::{JobKey, Page, Section, Station};
use crate::parts::{frame, live, live_view};
use crate::state::App;
use finrun_text as text;
use finrun_text::Language;
use leptos::prelude::*;

/// The whole page: state into context, then whatever the address names.
pub(crate) fn root() -> AnyView {
    let app = App::new();
    provide_context(app);
    app.start();
    live_view(move || in_language(app, app.language.get()))
}

/// All of it, made anew when the language changes.
fn in_language(app: App, _spoken: Language) -> AnyView {
    view! {
        <a class="skip" href="#content" on:click=|event| {
            event.prevent_default();
            crate::state::focus_content();
        }>{text::skip_to_content()}</a>
        {live_view(move || one_page(app.page.get()))}
        <p class="said" role="status" aria-live="polite">{live(move || app.said.get())}</p>
    }
    .into_any()
}

/// A page is made without following signals; what follows them stands inside it.
fn one_page(page: Page) -> AnyView {
    untrack(|| match page {
        Page::Jobs => jobs::jobs(),
        Page::Safety => plain::safety(),
        Page::About => plain::about(),
        Page::Terms => plain::terms(),
        Page::Offered(packed) => offered::offered(packed),
        Page::Station(job, station) => {
            let inside = match station {
                Station::Rooms => rooms::rooms(&job),
                Station::HeatLoss => heat_loss::heat_loss(&job),
                Station::Lengths => lengths::lengths(&job),
                Station::Loop => loop_check::loop_check(&job),
            };
            frame(&job, inside)
        }
        Page::Section(job, section) => {
            let inside = match section {
                Section::Place => place::place(&job),
                Section::Air => air::air(&job),
                Section::Ground => ground::ground(&job),
                Section::Assemblies => assemblies::assemblies(&job),
                Section::Certainty => certainty::certainty(&job),
                Section::Bills => bills::bills(&job),
                Section::WhatIf => what_if::what_if(&job),
                Section::Prices => prices::prices(&job),
                Section::Piping => piping::piping(&job),
                Section::Circulator => circulator::circulator(&job),
                Section::Plant => plant::plant(&job),
                Section::Drawings => drawings::drawings(&job),
                Section::Materials => materials::materials(&job),
                Section::Compare => compare::compare(&job),
                Section::Share => share::share(&job),
                Section::Install => install::install(&job),
                Section::Commission => commission::commission(&job),
                Section::Existing => existing::existing(&job),
                Section::Report => report::report(&job),
                Section::Season => season::season(&job),
                Section::DesignDay => night::design_day(&job),
                Section::Cooler => cooler::cooler(&job),
            };
            frame(&job, inside)
        }
        Page::Room(job, room) => frame(&job, room::room_page(&job, room)),
    })
}

/// A page that belongs to a station: its title, what is in it, the way back.
fn section(job: &JobKey, section: Section, inside: AnyView) -> AnyView {
    let station = section.station();
    let back = Page::Station(job.clone(), station).to_hash();
    view! {
        <h1>{section.label()}</h1>
        {inside}
        <p><a class="act" href=back>{text::back_to(station.label())}</a></p>
    }
    .into_any()
}
