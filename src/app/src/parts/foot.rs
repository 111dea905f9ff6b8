//! The foot of every page.

use super::{button, live, when};
use crate::state::use_app;
use finrun_text as text;
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
    view! {
        <footer>
            <p class="offline">{live(move || app.offline.get())}</p>
            {update}
            <p class="links">
                <a href="#/safety">{text::safety_title()}</a>
                <a href="#/words">{text::terms_title()}</a>
                <a href="#/about">{text::about()}</a>
            </p>
        </footer>
    }
    .into_any()
}
