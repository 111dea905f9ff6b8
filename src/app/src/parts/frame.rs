//! What stands around every page of a job: name and saving above, stations, three figures below.

use crate::page::{JobKey, Page, Station};
use crate::parts::in_system;
use crate::state::{App, SaveState, Standing, use_app};
use finrun_engine::check::Severity;
use finrun_engine::design::Design;
use finrun_engine::quantity::{Power, System};
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn Frame(job: JobKey, children: Children) -> impl IntoView {
    let app = use_app();
    let name = move || app.draft.with(|draft| draft.name.clone());
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs()>"‹"</a>
            <p class="job">{name}</p>
            <p class="saved" class:loud=move || matches!(app.save.get(), SaveState::Failed(_))>
                {move || match app.save.get() {
                    SaveState::Saved => text::saved(),
                    SaveState::Pending => text::saving(),
                    SaveState::Failed(_) | SaveState::Conflict => text::not_saved(),
                }}
            </p>
            <div class="tools">
                <button type="button" class="tool" aria-label=text::undo() title=text::undo()
                    disabled=move || !app.can_undo() on:click=move |_| app.undo()>"↶"</button>
                <button type="button" class="tool" aria-label=text::redo() title=text::redo()
                    disabled=move || !app.can_redo() on:click=move |_| app.redo()>"↷"</button>
                <UnitsSwitch/>
            </div>
        </header>
        <nav class="stations" aria-label=text::stations()>
            {Station::ALL
                .into_iter()
                .map(|station| view! { <StationLink job=job.clone() station/> })
                .collect_view()}
        </nav>
        <Banners/>
        <main id="content" tabindex="-1">{children()}</main>
        <Plate/>
    }
    .into_any()
}

#[component]
fn UnitsSwitch() -> impl IntoView {
    let app = use_app();
    let switch = move |_| {
        app.edit(crate::state::EditKey::Single, |draft| {
            draft.units = match draft.units {
                System::Us => System::Si,
                System::Si => System::Us,
            };
        });
    };
    view! {
        <button type="button" class="tool wide" on:click=switch>
            <span class="said">{text::units()} " "</span>
            {move || text::units_name(app.system())}
        </button>
    }
    .into_any()
}

#[component]
fn StationLink(job: JobKey, station: Station) -> impl IntoView {
    let app = use_app();
    let href = Page::Station(job, station).to_hash();
    let here = move || {
        app.page.with(|page| match page {
            Page::Station(_, at) => *at == station,
            Page::Room(..) => station == Station::Rooms,
            _ => false,
        })
    };
    let name = match station {
        Station::Rooms => text::station_rooms(),
        Station::HeatLoss => text::station_heat_loss(),
        Station::Lengths => text::station_lengths(),
        Station::Loop => text::station_loop(),
    };
    view! {
        <a href=href aria-current=move || here().then_some("page")>
            {name}
            <small>{move || station_figure(app, station)}</small>
        </a>
    }
    .into_any()
}

/// The figure under a station's name: the head of the page is already the summary.
fn station_figure(app: App, station: Station) -> String {
    let system = app.system();
    let rooms = app.draft.with(|draft| draft.rooms.len());
    app.outcome.with(|outcome| {
        let Some((job, design)) = outcome.solved.as_ref() else {
            return match station {
                Station::Rooms => text::rooms_done(0, rooms),
                _ => "–".to_string(),
            };
        };
        match station {
            Station::Rooms => text::rooms_done(job.rooms.len(), rooms),
            _ if job.rooms.is_empty() => "–".to_string(),
            Station::HeatLoss => in_system(design.load, system),
            Station::Lengths => in_system(design.element_length(), system),
            Station::Loop => text::checks_to_see(to_see(design)),
        }
    })
}

/// Checks that do not hold.
fn to_see(design: &Design) -> usize {
    design.checks.iter().filter(|check| check.severity != Severity::Holds).count()
}

/// The result line, always in view.
#[component]
fn Plate() -> impl IntoView {
    let app = use_app();
    let figures = Memo::new(move |_| {
        let system = app.system();
        app.outcome.with(|outcome| {
            outcome.solved.as_ref().filter(|(job, _)| !job.rooms.is_empty()).map(|(_, design)| {
                let short = design.rooms.iter().filter(|r| r.short() > Power::ZERO).count();
                let checks = match to_see(design) {
                    0 => text::checks_hold(design.checks.len()),
                    count => text::checks_to_see(count),
                };
                [
                    (in_system(design.load, system), text::house_loses().to_string()),
                    (
                        in_system(design.element_length(), system),
                        text::pieces(design.piece_count()),
                    ),
                    (checks, text::rooms_short(short)),
                ]
            })
        })
    });
    let stale = move || app.outcome.with(|outcome| outcome.standing == Standing::LastGood);
    // Spoken a moment after typing stops, without moving the focus.
    Effect::new(move |_| {
        if let Some([load, length, checks]) = figures.get() {
            app.say(text::spoken_result(&load.0, &length.0, &checks.0));
        }
    });
    view! {
        <aside class="plate" class:stale=stale aria-label=text::result_line()>
            {move || match figures.get() {
                Some(figures) => figures
                    .into_iter()
                    .zip(["load", "element", "checks"])
                    .map(|((figure, under), name)| view! {
                        <div>
                            <b data-figure=format!("plate.{name}")>{figure}</b>
                            <span>{under}</span>
                        </div>
                    })
                    .collect_view()
                    .into_any(),
                None => view! { <p>{text::no_load_yet()}</p> }.into_any(),
            }}
        </aside>
    }
    .into_any()
}

/// What must not be missed, loud and with what to do.
#[component]
fn Banners() -> impl IntoView {
    let app = use_app();
    let stale = move || app.outcome.with(|outcome| outcome.standing == Standing::LastGood);
    view! {
        <Show when=stale>
            <p class="banner" role="status">{text::last_good()}</p>
        </Show>
        {move || match app.save.get() {
            SaveState::Failed(reason) => view! {
                <div class="banner loud" role="alert">
                    <p>{text::cannot_save(&reason)}</p>
                    <button type="button" on:click=move |_| app.download_open()>
                        {text::download()}
                    </button>
                </div>
            }.into_any(),
            SaveState::Conflict => view! {
                <div class="banner loud" role="alert">
                    <p>{text::another_tab()}</p>
                    <button type="button" on:click=move |_| app.take_theirs()>
                        {text::take_theirs()}
                    </button>
                    <button type="button" on:click=move |_| app.keep_mine()>
                        {text::keep_mine()}
                    </button>
                </div>
            }.into_any(),
            SaveState::Saved | SaveState::Pending => ().into_any(),
        }}
    }
    .into_any()
}
