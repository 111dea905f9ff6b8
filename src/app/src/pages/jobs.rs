//! The list of jobs.

use super::plain::Foot;
use crate::files;
use crate::page::{JobKey, Page, Station};
use crate::state::{App, Listed, store, use_app};
use finrun_engine::job::Draft;
use finrun_text as text;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A house of our own invention; its numbers are invented and stay there.
const DEMO: &str = include_str!("../../demo/heron-lane.json");

#[component]
pub(crate) fn Jobs() -> impl IntoView {
    let app = use_app();
    let new_job = move |_| app.add_job(Draft::new(text::new_job_name(), app.units.get_untracked()));
    let demo = move |_| {
        // The demo is a file like any other; a test reads it.
        if let Ok(draft) = store::parse(DEMO) {
            app.add_job(draft);
        }
    };
    let choose = move |event: web_sys::Event| {
        if let Some(input) = event.target() {
            files::open_chosen(app, &input.unchecked_into());
        }
    };
    view! {
        <header class="top start">
            <p class="job">{text::app_name()}</p>
        </header>
        <main id="content" tabindex="-1" class="start">
            <h1>{text::jobs()}</h1>
            <p>{text::app_job()}</p>
            {move || app.trouble.get().map(|trouble| view! {
                <p class="banner loud" role="alert">{trouble}</p>
            })}
            {move || app.deleted.get().map(|(_, name, _)| view! {
                <div class="banner" role="status">
                    <p>{text::deleted(&name)}</p>
                    <button type="button" on:click=move |_| app.undelete_job()>
                        {text::undo_delete()}
                    </button>
                    <button type="button" on:click=move |_| app.deleted.set(None)>
                        {text::remove_deleted()}
                    </button>
                </div>
            })}
            <ul class="jobs">
                <For each=move || app.jobs.get() key=|listed| (listed.key.clone(), listed.name.clone().ok()) let:listed>
                    <JobRow listed/>
                </For>
            </ul>
            {move || app.jobs.with(Vec::is_empty).then(|| view! { <p>{text::no_jobs()}</p> })}
            <div class="acts">
                <button type="button" class="main-act" on:click=new_job>{text::new_job()}</button>
                <button type="button" on:click=demo>{text::demo()}</button>
                <label class="file" for="open-file">{text::open_file()}</label>
                <input id="open-file" type="file" accept=".json,application/json" on:change=choose/>
            </div>
            <p class="note">{text::demo_note()}</p>
            <p class="note">{text::kept_here()}</p>
            <Foot/>
        </main>
    }
    .into_any()
}

#[component]
fn JobRow(listed: Listed) -> impl IntoView {
    let app = use_app();
    let key = StoredValue::new(listed.key.clone());
    match listed.name {
        Ok(name) => view! { <li><SoundJob app key name/></li> }.into_any(),
        Err(fault) => {
            let save = move |_| {
                if let Some(raw) = store::raw(&key.get_value()) {
                    files::download("finrun-damaged.json", &raw);
                }
            };
            view! {
                <li class="damaged">
                    <p><b>{text::cannot_open()}</b> " " {files::fault_text(&fault)}</p>
                    <button type="button" on:click=save>{text::download_raw()}</button>
                </li>
            }
            .into_any()
        }
    }
}

#[component]
fn SoundJob(app: App, key: StoredValue<JobKey>, name: String) -> impl IntoView {
    let renaming = RwSignal::new(false);
    let shown = match name.trim().is_empty() {
        true => text::new_job_name().to_string(),
        false => name.clone(),
    };
    let label = StoredValue::new(shown.clone());
    let href = Page::Station(key.get_value(), Station::Rooms).to_hash();
    let copy = move |_| {
        if let Some(Ok(mut draft)) = store::load(&key.get_value()) {
            draft.name = text::copy_name(&draft.name);
            app.add_copy(draft);
        }
    };
    let save = move |_| {
        if let Some(raw) = store::raw(&key.get_value()) {
            files::download(&files::file_name(&label.get_value()), &raw);
        }
    };
    let rename = move |name: String| {
        renaming.set(false);
        app.change_stored(&key.get_value(), |draft| draft.name = name);
    };
    let act = move |act: &str| text::act_on(act, &label.get_value());
    view! {
        <Show
            when=move || renaming.get()
            fallback=move || view! {
                <a class="job-link" href=href.clone()>{label.get_value()}</a>
            }
        >
            <div class="field">
                <label for="rename-job">{text::job_name()}</label>
                <input id="rename-job" class="name" type="text" maxlength="200" autofocus
                    prop:value=name.clone()
                    on:change=move |event| rename(event_target_value(&event))/>
            </div>
        </Show>
        <div class="row-acts">
            <button type="button" aria-label=act(text::copy()) on:click=copy>{text::copy()}</button>
            <button type="button" aria-label=act(text::rename())
                on:click=move |_| renaming.update(|on| *on = !*on)>{text::rename()}</button>
            <button type="button" aria-label=act(text::download()) on:click=save>
                {text::download()}
            </button>
            <button type="button" aria-label=act(text::delete())
                on:click=move |_| app.delete_job(key.get_value(), label.get_value())>
                {text::delete()}
            </button>
        </div>
    }
    .into_any()
}
