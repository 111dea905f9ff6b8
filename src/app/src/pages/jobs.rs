//! The list of jobs.

use crate::files;
use crate::page::{JobKey, Page, Station};
use crate::parts::{button, button_on, foot, live, live_view, when};
use crate::state::{Deleted, Listed, fetch, focus_on, prices, store, use_app};
use finrun_engine::job::Draft;
use finrun_text as text;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::time::Duration;
use wasm_bindgen::JsCast;

/// A file of this page's own, and the words of its button.
type Demo = (&'static str, fn() -> &'static str);

/// Houses of our own invention; their numbers are invented and stay there.
const DEMOS: [Demo; 3] = [
    ("demo/bungalow.json", text::demo_bungalow),
    ("demo/two-storey.json", text::demo_two_storey),
    ("demo/cottage.json", text::demo_cottage),
];

pub(crate) fn jobs() -> AnyView {
    let app = use_app();
    let new_job = move || {
        let units = app.typed_now(|draft| draft.units);
        app.add_job(prices::begin_with_kept(Draft::new(text::new_job_name(), units)));
    };
    // A demo is a file like any other; a test reads it.
    let demo = |(path, label): Demo| {
        button("", label(), move || {
            spawn_local(async move {
                match fetch(path).await {
                    Ok(file) => match store::parse(&file) {
                        Ok(demo) => app.add_job(spoken(demo)),
                        Err(_) => app.trouble.set(text::bad_file(path)),
                    },
                    Err(reason) => app.trouble.set(text::bad_file(&reason)),
                }
            });
        })
    };
    let choose = move |event: web_sys::Event| {
        if let Some(input) = event.target() {
            files::open_chosen(app, &input.unchecked_into());
        }
    };
    let trouble = live_view(move || match app.trouble.get() {
        trouble if trouble.is_empty() => ().into_any(),
        trouble => view! { <p class="banner loud" role="alert">{trouble}</p> }.into_any(),
    });
    let deleted = live_view(move || {
        match app.shelf.get().deleted {
        Some(Deleted { name, .. }) => view! {
            <div class="banner" role="status">
                <p>{text::deleted(&name)}</p>
                {button("", text::undo_delete(), move || app.undelete_job())}
                {button("", text::remove_deleted(), move || app.shelf.update(|shelf| shelf.deleted = None))}
            </div>
        }
        .into_any(),
        None => ().into_any(),
    }
    });
    let list = live_view(move || match app.shelf.get().jobs {
        jobs if jobs.is_empty() => view! { <p>{text::no_jobs()}</p> }.into_any(),
        jobs => {
            let rows = jobs.into_iter().map(job_row).collect_view();
            view! { <ul class="jobs">{rows}</ul> }.into_any()
        }
    });
    view! {
        <header class="top start">
            <p class="job">{text::app_name()}</p>
        </header>
        <main id="content" tabindex="-1" class="start">
            <h1>{text::jobs_title()}</h1>
            <p>{text::app_job()}</p>
            {trouble}
            {deleted}
            {list}
            <div class="acts">
                {button("main-act", text::new_job(), new_job)}
                <label class="file" for="open-file">{text::open_file()}</label>
                <input id="open-file" type="file" accept=".json,.txt,application/json,text/plain" on:change=choose/>
            </div>
            <h2>{text::demos()}</h2>
            <p class="note">{text::demo_note()}</p>
            <div class="acts">{DEMOS.map(demo).collect_view()}</div>
            <p class="note">{text::kept_here()} " " {live(move || app.kept.get().to_string())}</p>
            {install()}
            {foot()}
        </main>
    }
    .into_any()
}

/// A demo with its names in the language of the page.
fn spoken(mut demo: Draft) -> Draft {
    for name in demo.names_mut() {
        if let Some(spoken) = text::demo_name(name) {
            *name = spoken.to_string();
        }
    }
    demo
}

/// For years of use without a signal; hidden by the style where the page is installed.
fn install() -> AnyView {
    let app = use_app();
    let now = when(
        move || app.installable.get(),
        move || {
            let press = move || app.accept_install();
            view! { <div class="acts">{button("", text::install_now(), press)}</div> }.into_any()
        },
    );
    view! {
        <details class="more install">
            <summary>{text::install_title()}</summary>
            <p>{text::install_words()}</p>
            {now}
        </details>
    }
    .into_any()
}

fn job_row(listed: Listed) -> AnyView {
    let key = listed.key;
    match listed.name {
        Ok(name) => sound_job(key, name),
        Err(fault) => {
            let save = move || {
                if let Some(raw) = store::raw(&key) {
                    files::download("finrun-damaged.json", &raw);
                }
            };
            view! {
                <li class="damaged">
                    <p><b>{text::cannot_open()}</b> " " {files::fault_text(&fault)}</p>
                    {button("", text::download_raw(), save)}
                </li>
            }
            .into_any()
        }
    }
}

fn sound_job(key: JobKey, name: String) -> AnyView {
    let app = use_app();
    let key = StoredValue::new(key);
    let renaming = RwSignal::new(false);
    let shown = match name.trim().is_empty() {
        true => text::new_job_name().to_string(),
        false => name.clone(),
    };
    let href = Page::Station(key.get_value(), Station::Rooms).to_hash();
    let label = StoredValue::new(shown);
    let name = StoredValue::new(name);
    let copy = move || {
        if let Some(Ok(mut draft)) = store::load(&key.get_value()) {
            draft.name = text::copy_name(&draft.name);
            app.add_copy(draft);
        }
    };
    let save = move || {
        if let Some(raw) = store::raw(&key.get_value()) {
            files::download(&files::file_name(&label.get_value()), &raw);
        }
    };
    let rename = move |name: String| {
        renaming.set(false);
        app.change_stored(&key.get_value(), |draft| draft.name = name);
    };
    let title = live_view(move || match renaming.get() {
        false => view! {
            <a class="job-link" href=href.clone()>{label.get_value()}</a>
        }
        .into_any(),
        true => view! {
            <div class="field">
                <label for="rename-job">{text::job_name()}</label>
                <input id="rename-job" class="name" type="text" maxlength="200"
                    prop:value=name.get_value()
                    on:change=move |event| rename(event_target_value(&event))/>
            </div>
        }
        .into_any(),
    });
    let act = move |act: &'static str| move || text::act_on(act, &label.get_value());
    let delete = move || app.delete_job(key.get_value(), label.get_value());
    let start_rename = move || {
        renaming.update(|on| *on = !*on);
        // The box is there once this press has been dealt with.
        set_timeout(|| focus_on("rename-job"), Duration::ZERO);
    };
    view! {
        <li>
            {title}
            <div class="row-acts">
                {button_on("", text::copy(), act(text::copy()), copy)}
                {button_on("", text::rename(), act(text::rename()), start_rename)}
                {button_on("", text::download(), act(text::download()), save)}
                {button_on("", text::delete(), act(text::delete()), delete)}
            </div>
        </li>
    }
    .into_any()
}
