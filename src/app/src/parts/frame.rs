//! What stands around every page of a job: name and saving above, stations, three figures below.

use super::{button, foot, in_system, kept, live, live_button, live_view, terms_here, when, yes};
use crate::page::{JobKey, Page, Station};
use crate::state::{App, SaveState, Standing, use_app};
use finrun_engine::check::Severity;
use finrun_engine::design::Design;
use finrun_engine::quantity::{Power, System};
use finrun_text as text;
use leptos::prelude::*;

pub(crate) fn frame(job: &JobKey, inside: AnyView) -> AnyView {
    let app = use_app();
    let name = live(move || app.typed(|draft| draft.name.clone()));
    let stations =
        Station::ALL.into_iter().map(|station| station_link(job, station)).collect_view();
    let saved = live(move || {
        match app.save.get() {
            SaveState::Saved => text::saved(),
            SaveState::Pending => text::saving(),
            SaveState::Failed(_) | SaveState::Conflict | SaveState::Outdated => text::not_saved(),
        }
        .to_string()
    });
    let loud = yes(move || matches!(app.save.get(), SaveState::Failed(_)));
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs_title()>"‹"</a>
            <div class="job">
                <p>{name}</p>
                <p class="saved" class:loud=loud>{saved}</p>
            </div>
            <div class="tools">
                {tool("↶", text::undo(), yes(move || app.can_undo()), move || app.undo())}
                {tool("↷", text::redo(), yes(move || app.can_redo()), move || app.redo())}
                {units_switch()}
            </div>
        </header>
        <nav class="stations" aria-label=text::stations()>
            {stations}
        </nav>
        {banners()}
        <main id="content" tabindex="-1">
            {inside}
            {terms_here(&app.page.get_untracked())}
            {foot()}
        </main>
        {plate()}
    }
    .into_any()
}

/// A button of the head, greyed while it would do nothing.
fn tool(
    sign: &'static str,
    name: &'static str,
    can: Memo<bool>,
    press: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    let press = Callback::new(move |()| press());
    let cannot = yes(move || !can.get());
    view! {
        <button type="button" class="tool" aria-label=name title=name
            disabled=cannot on:click=move |_| press.run(())>{sign}</button>
    }
    .into_any()
}

fn units_switch() -> AnyView {
    let app = use_app();
    let switch = move || {
        app.edit(crate::state::EditKey::Single, |draft| {
            draft.units = match draft.units {
                System::Us => System::Si,
                System::Si => System::Us,
            };
        });
    };
    let label = view! {
        <span class="said">{text::units()} " "</span>
        {live(move || text::units_name(app.system()).to_string())}
    };
    live_button("tool wide", label.into_any(), switch)
}

fn station_link(job: &JobKey, station: Station) -> AnyView {
    let app = use_app();
    let href = Page::Station(job.clone(), station).to_hash();
    let here = move || {
        app.page.with(|page| match page {
            Page::Station(_, at) => *at == station,
            Page::Section(_, section) => section.station() == station,
            Page::Room(..) => station == Station::Rooms,
            _ => false,
        })
    };
    let name = station.label();
    view! {
        <a href=href aria-current=Signal::derive(move || here().then_some("page"))>
            {name}
            <small>{live(move || station_figure(app, station))}</small>
        </a>
    }
    .into_any()
}

/// The figure under a station's name: the head of the page is already the summary.
fn station_figure(app: App, station: Station) -> String {
    let system = app.system();
    let rooms = app.typed(|draft| draft.rooms.len());
    app.follows(|outcome| {
        let Some((job, design)) = outcome.solved.as_ref() else {
            return match station {
                Station::Rooms => text::rooms_done(0, rooms),
                _ => "–".to_string(),
            };
        };
        match station {
            Station::Rooms => text::rooms_done(job.house.rooms.len(), rooms),
            _ if job.house.rooms.is_empty() => "–".to_string(),
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
fn plate() -> AnyView {
    let app = use_app();
    let figures = move || {
        let system = app.system();
        app.design(|solved| {
            solved.as_ref().filter(|(job, _)| !job.house.rooms.is_empty()).map(|(_, design)| {
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
    };
    // Spoken a moment after typing stops, without moving the focus.
    let sentence = kept(move || match figures() {
        Some([load, length, checks]) => text::spoken_result(&load.0, &length.0, &checks.0),
        None => String::new(),
    });
    Effect::new(move |_| app.say(sentence.get()));
    let one = |((figure, under), name): ((String, String), &str)| {
        view! {
            <div>
                <b data-figure=format!("plate.{name}")>{figure}</b>
                <span>{under}</span>
            </div>
        }
        .into_any()
    };
    let shown = live_view(move || match figures() {
        Some(figures) => figures
            .into_iter()
            .zip(["load", "element", "checks"])
            .map(one)
            .collect_view()
            .into_any(),
        None => view! { <p>{text::no_load_yet()}</p> }.into_any(),
    });
    view! {
        <aside class="plate" class:stale=stale() aria-label=text::result_line()>{shown}</aside>
    }
    .into_any()
}

/// What must not be missed, loud and with what to do.
fn banners() -> AnyView {
    let app = use_app();
    let stale = stale();
    let show_field = move || {
        let field = app.follows(|outcome| {
            outcome.errors.iter().find(|error| !error.is_missing()).map(|error| error.field)
        });
        if let Some(field) = field {
            app.go_to_field(field);
        }
    };
    let last_good = when(
        move || stale.get(),
        move || {
            view! {
                <div class="banner" role="status">
                    <p>{text::last_good()}</p>
                    {button("", text::show_field(), show_field)}
                </div>
            }
            .into_any()
        },
    );
    let saving = live_view(move || match app.save.get() {
        SaveState::Failed(reason) => view! {
            <div class="banner loud" role="alert">
                <p>{text::cannot_save(&reason)}</p>
                {button("", text::download(), move || app.download_open())}
            </div>
        }
        .into_any(),
        SaveState::Conflict => view! {
            <div class="banner loud" role="alert">
                <p>{text::another_tab()}</p>
                {button("", text::take_theirs(), move || app.take_theirs())}
                {button("", text::keep_mine(), move || app.keep_mine())}
            </div>
        }
        .into_any(),
        SaveState::Outdated => view! {
            <div class="banner loud" role="alert">
                <p>{text::newer_tab()}</p>
                {button("", text::download(), move || app.download_open())}
                {button("", text::load_again(), load_again)}
            </div>
        }
        .into_any(),
        SaveState::Saved | SaveState::Pending => ().into_any(),
    });
    view! { {last_good} {saving} }.into_any()
}

fn load_again() {
    // A browser that cannot load a page again has lost it already.
    let _ = window().location().reload();
}

/// Whether the results belong to an earlier draft than the one on the page.
fn stale() -> Memo<bool> {
    let app = use_app();
    yes(move || app.follows(|outcome| outcome.standing == Standing::LastGood))
}
