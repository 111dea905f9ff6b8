//! .

use super::section;
use crate::page::{JobKey, Section};
use leptos::prelude::*;

pub(super) fn certainty(job: &JobKey) -> AnyView {
    section(job, Section::Certainty, ().into_any())
}
