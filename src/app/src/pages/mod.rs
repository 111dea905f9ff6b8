//! One file a page.

mod elements;
mod heat_loss;
mod jobs;
mod lengths;
mod loop_check;
mod plain;
mod room;
mod rooms;
mod surface;

use crate::page::{Page, Station};
use crate::parts::{frame, live, live_view};
use crate::state::App;
use finrun_text as text;
use leptos::prelude::*;

/// The whole page: state into context, then whatever the address names.
pub(crate) fn root() -> AnyView {
    let app = App::new();
    provide_context(app);
    app.start();
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
        Page::Station(job, station) => {
            let inside = match station {
                Station::Rooms => rooms::rooms(&job),
                Station::HeatLoss => heat_loss::heat_loss(),
                Station::Lengths => lengths::lengths(),
                Station::Loop => loop_check::loop_check(),
            };
            frame(&job, inside)
        }
        Page::Room(job, room) => frame(&job, room::room_page(&job, room)),
    })
}
