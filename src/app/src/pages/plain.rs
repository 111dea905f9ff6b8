//! Pages that only say something: the cautions, and what the calculation rests on.

use crate::markup::{Markup, still_markup};
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

pub(crate) fn safety() -> AnyView {
    let mut markup = Markup::new();
    for caution in text::CAUTIONS {
        markup.leaf("h2", &[], caution.title);
        markup.leaf("p", &[], caution.text);
    }
    plain_page(text::safety_title(), markup.done())
}

pub(crate) fn about() -> AnyView {
    let mut markup = Markup::new();
    for paragraph in text::ABOUT {
        markup.leaf("p", &[], paragraph);
    }
    plain_page(text::about_title(), markup.done())
}

fn plain_page(title: &'static str, markup: String) -> AnyView {
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs_title()>"‹"</a>
            <p class="job">{text::app_name()}</p>
        </header>
        <main id="content" tabindex="-1" class="plain">
            <h1>{title}</h1>
            {still_markup("", markup)}
            {foot()}
        </main>
    }
    .into_any()
}
