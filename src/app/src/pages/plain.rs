//! Pages that only say something: the cautions, and what the calculation rests on.

use crate::parts::{button, live, when};
use crate::state::use_app;
use finrun_text as text;
use leptos::prelude::*;

/// The foot of the pages outside a job: where offline stands, and the way to the plain pages.
pub(crate) fn foot() -> AnyView {
    let app = use_app();
    let update = when(
        move || app.update.get(),
        move || {
            view! {
                <div class="banner" role="status">
                    <p>{text::update_waiting()}</p>
                    {button("", text::update_now(), move || app.accept_update())}
                </div>
            }
            .into_any()
        },
    );
    view! {
        <footer>
            <p class="offline">{live(move || app.offline.get())}</p>
            {update}
            <p class="links">
                <a href="#/safety">{text::safety_title()}</a>
                <a href="#/about">{text::about()}</a>
            </p>
        </footer>
    }
    .into_any()
}

fn plain_top() -> AnyView {
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs_title()>"‹"</a>
            <p class="job">{text::app_name()}</p>
        </header>
    }
    .into_any()
}

pub(crate) fn safety() -> AnyView {
    let cautions = text::CAUTIONS.iter().map(|caution| {
        view! { <section class="caution"><h2>{caution.title}</h2><p>{caution.text}</p></section> }
    });
    view! {
        {plain_top()}
        <main id="content" tabindex="-1" class="plain">
            <h1>{text::safety_title()}</h1>
            {cautions.collect_view()}
        </main>
    }
    .into_any()
}

pub(crate) fn about() -> AnyView {
    view! {
        {plain_top()}
        <main id="content" tabindex="-1" class="plain">
            <h1>{text::about_title()}</h1>
            {text::ABOUT.iter().map(|paragraph| view! { <p>{*paragraph}</p> }).collect_view()}
            {foot()}
        </main>
    }
    .into_any()
}
