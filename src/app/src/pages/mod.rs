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
use crate::parts::Frame;
use crate::state::App;
use finrun_text as text;
use leptos::prelude::*;

/// The whole page: state into context, then whatever the address names.
#[component]
pub(crate) fn Root() -> impl IntoView {
    let app = App::new();
    provide_context(app);
    app.start();
    view! {
        <a class="skip" href="#content" on:click=|event| {
            event.prevent_default();
            focus_content();
        }>{text::skip_to_content()}</a>
        {move || match app.page.get() {
            Page::Jobs => view! { <jobs::Jobs/> }.into_any(),
            Page::Safety => view! { <plain::Safety/> }.into_any(),
            Page::About => view! { <plain::About/> }.into_any(),
            Page::Station(job, station) => {
                let inside = match station {
                    Station::Rooms => view! { <rooms::Rooms job=job.clone()/> }.into_any(),
                    Station::HeatLoss => view! { <heat_loss::HeatLoss/> }.into_any(),
                    Station::Lengths => view! { <lengths::Lengths/> }.into_any(),
                    Station::Loop => view! { <loop_check::LoopCheck/> }.into_any(),
                };
                view! { <Frame job>{inside}</Frame> }.into_any()
            }
            Page::Room(job, room) => {
                view! { <Frame job=job.clone()><room::RoomPage job room/></Frame> }.into_any()
            }
        }}
        <p class="said" role="status" aria-live="polite">{move || app.said.get()}</p>
    }
    .into_any()
}

/// Moves the focus to the page's content, past what repeats on every page.
fn focus_content() {
    use wasm_bindgen::JsCast;
    if let Some(content) = document().get_element_by_id("content") {
        // An element that cannot take the focus leaves it where it is, which is no harm.
        let _ = content.unchecked_into::<web_sys::HtmlElement>().focus();
    }
}
