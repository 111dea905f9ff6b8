//! All drawings of a job, a sheet each.

use super::section;
use crate::drawing::all_drawings;
use crate::page::{JobKey, Section};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn drawings(job: &JobKey) -> AnyView {
    let inside = view! {
        <p class="note">{text::drawings_note()}</p>
        {all_drawings()}
    }
    .into_any();
    section(job, Section::Drawings, inside)
}
