//! What the boot file tells: ready without a network, a new version waiting, whether the browser keeps
//! the jobs, whether it can install the page.

use super::App;
use finrun_text as text;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What has happened before we listen stands in attributes of the root element.
pub(super) fn follow_worker(app: App) {
    let look = move || {
        let attribute =
            |name: &str| document().document_element().and_then(|root| root.get_attribute(name));
        let sentence = match attribute("data-offline").as_deref() {
            Some("ready") => text::offline_ready(),
            Some("failed") => text::offline_failed(),
            _ => text::offline_pending(),
        };
        app.offline.set(sentence.to_string());
        app.update.set(attribute("data-update").is_some());
        app.kept.set(match attribute("data-kept").as_deref() {
            Some("surely") => text::kept_for_good(),
            Some(_) => text::kept_perhaps(),
            None => "",
        });
        app.installable.set(attribute("data-install").as_deref() == Some("possible"));
    };
    // Again in another language.
    Effect::new(move |_| {
        app.language.track();
        look();
    });
    for event in [
        "finrun-offline-ready",
        "finrun-offline-failed",
        "finrun-update-waiting",
        "finrun-update-taken",
        "finrun-kept-surely",
        "finrun-kept-perhaps",
        "finrun-install-possible",
        "finrun-install-done",
    ] {
        let event: leptos::ev::Custom<web_sys::CustomEvent> = leptos::ev::Custom::new(event);
        window_event_listener(event, move |_| look());
    }
}

impl App {
    /// Saves, then lets the new version in; the boot file reloads the page.
    pub fn accept_update(self) {
        self.save_now();
        tell("finrun-update-accept");
    }

    /// Lets the browser ask whether to install the page.
    pub fn accept_install(self) {
        tell("finrun-install-accept");
    }
}

/// Answers the boot file.
pub(super) fn tell(event: &str) {
    let Ok(event) = web_sys::CustomEvent::new(event) else { return };
    // Refused only when a listener cancels it, and none does.
    let _ = window().dispatch_event(event.unchecked_ref());
}
