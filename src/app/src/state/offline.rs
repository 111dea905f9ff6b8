//! What the boot file tells of the service worker: ready without a network, a new version waiting.

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
    };
    look();
    for event in [
        "finrun-offline-ready",
        "finrun-offline-failed",
        "finrun-update-waiting",
        "finrun-update-taken",
    ] {
        let event: leptos::ev::Custom<web_sys::CustomEvent> = leptos::ev::Custom::new(event);
        window_event_listener(event, move |_| look());
    }
}

impl App {
    /// Saves, then lets the new version in; the boot file reloads the page.
    pub fn accept_update(self) {
        self.save_now();
        let Ok(event) = web_sys::CustomEvent::new("finrun-update-accept") else { return };
        // Refused only when a listener cancels it, and none does.
        let _ = window().dispatch_event(event.unchecked_ref());
    }
}
