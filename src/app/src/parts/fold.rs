//! A fold, whose contents are made when it is first opened.

use super::when;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Most folds of a page are never opened, and each field that is there costs at every key, in the
/// browser too. `holds` are the beginnings of the ids of the fields inside, for those who look for one.
pub(crate) fn fold(
    class: &'static str,
    holds: &[String],
    open: bool,
    summary: AnyView,
    contents: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let opened = RwSignal::new(open);
    let contents = when(move || opened.get(), contents);
    view! {
        <details
            class=class
            data-holds=holds.join(" ")
            open=open
            on:toggle=move |event| {
                let details: web_sys::Element = event_target(&event);
                if details.has_attribute("open") {
                    opened.set(true);
                }
            }
        >
            // A press fills it before it opens: the browser tells of opening a task later, and a fold
            // would be seen empty until then.
            <summary on:click=move |_| opened.set(true)>{summary}</summary>
            {contents}
        </details>
    }
    .into_any()
}

/// Opens the closed folds that hold a field, and tells whether there were any. What is inside is there
/// in the next task.
pub(crate) fn open_folds_of(id: &str) -> bool {
    let mut found = false;
    let Ok(closed) = document().query_selector_all("details[data-holds]:not([open])") else {
        return false;
    };
    for index in 0..closed.length() {
        let Some(fold) = closed.item(index) else { continue };
        let fold: web_sys::Element = fold.unchecked_into();
        let holds = fold.get_attribute("data-holds").unwrap_or_default();
        if holds.split(' ').any(|begins| id.starts_with(begins)) {
            // An attribute without a value; setting it cannot fail.
            let _ = fold.set_attribute("open", "");
            found = true;
        }
    }
    found
}
