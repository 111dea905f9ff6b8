//! Pages that only say something: the cautions, and what the calculation rests on.

use crate::state::use_app;
use finrun_text as text;
use leptos::prelude::*;

/// The foot of the pages outside a job: where offline stands, and the way to the plain pages.
#[component]
pub(crate) fn Foot() -> impl IntoView {
    let app = use_app();
    view! {
        <footer>
            <p class="offline">{move || app.offline.get().sentence()}</p>
            <Show when=move || app.update.get()>
                <p class="banner" role="status">
                    {text::update_waiting()} " "
                    <button type="button" on:click=move |_| app.accept_update()>
                        {text::update_now()}
                    </button>
                </p>
            </Show>
            <p class="links">
                <a href="#/safety">{text::safety_title()}</a>
                <a href="#/about">{text::about()}</a>
            </p>
        </footer>
    }
    .into_any()
}

#[component]
fn PlainTop() -> impl IntoView {
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs()>"‹"</a>
            <p class="job">{text::app_name()}</p>
        </header>
    }
    .into_any()
}

#[component]
pub(crate) fn Safety() -> impl IntoView {
    let cautions = text::CAUTIONS.iter().map(|caution| {
        view! { <section class="caution"><h2>{caution.title}</h2><p>{caution.text}</p></section> }
    });
    view! {
        <PlainTop/>
        <main id="content" tabindex="-1" class="plain">
            <h1>{text::safety_title()}</h1>
            {cautions.collect_view()}
        </main>
    }
    .into_any()
}

#[component]
pub(crate) fn About() -> impl IntoView {
    view! {
        <PlainTop/>
        <main id="content" tabindex="-1" class="plain">
            <h1>{text::about_title()}</h1>
            {text::ABOUT.iter().map(|paragraph| view! { <p>{*paragraph}</p> }).collect_view()}
            <Foot/>
        </main>
    }
    .into_any()
}
