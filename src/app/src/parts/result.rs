//! Figures in the reader's units.

use crate::state::use_app;
use finrun_engine::quantity::{System, Value};
use finrun_text as text;
use leptos::prelude::*;

/// A value that follows the reader's choice of units, named for those who look it up.
pub(crate) fn figure(name: &str, value: impl Into<Value>) -> AnyView {
    let app = use_app();
    let value = value.into();
    view! {
        <span class="figure" data-figure=name.to_string()>
            {move || text::value(value, app.system())}
        </span>
    }
    .into_any()
}

/// A value as text in the units of now.
pub(crate) fn in_system(value: impl Into<Value>, system: System) -> String {
    text::value(value, system)
}
