//! Figures in the reader's units.

use super::live;
use crate::state::use_app;
use finrun_engine::quantity::{System, Value};
use finrun_text as text;
use leptos::prelude::*;

/// A value that follows the reader's choice of units, named for those who look it up.
pub(crate) fn figure(name: &str, value: impl Into<Value>) -> AnyView {
    let app = use_app();
    let value = value.into();
    let shown = live(move || text::value(value, app.system()));
    view! { <span class="figure" data-figure=name.to_string()>{shown}</span> }.into_any()
}

/// A value as text in the units of now.
pub(crate) fn in_system(value: impl Into<Value>, system: System) -> String {
    text::value(value, system)
}
