//! The foot of every page.

use super::{button, live, when};
use crate::state::use_app;
use finrun_text as text;
use finrun_text::Language;
use leptos::prelude::*;

/// The foot of every page: where offline stands, a new version that waits, and the plain pages.
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
    let spoken = app.language.get_untracked();
    let others = Language::ALL.into_iter().filter(|language| *language != spoken);
    let others = others
        .map(|language| {
            view! {
                <button type="button" lang=language.tag() on:click=move |_| app.choose_language(language)>
                    {language.name()}
                </button>
            }
        })
        .collect_view();
    view! {
        <footer>
            <p class="offline">{live(move || app.offline.get())}</p>
            {update}
            <p class="links">
                <a href="#/safety">{text::safety_title()}</a>
                <a href="#/words">{text::terms_title()}</a>
                <a href="#/about">{text::about()}</a>
            </p>
            <p class="links">{others}</p>
        </footer>
    }
    .into_any()
}
