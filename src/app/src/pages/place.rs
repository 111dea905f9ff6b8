//! .

use super::section;
use crate::page::{JobKey, Section};
use leptos::prelude::*;

pub(super) fn place(job: &JobKey) -> AnyView {
    section(job, Section::Place, ().into_any())
}
