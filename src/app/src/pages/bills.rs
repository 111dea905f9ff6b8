//! .

use super::section;
use crate::page::{JobKey, Section};
use leptos::prelude::*;

pub(super) fn bills(job: &JobKey) -> AnyView {
    section(job, Section::Bills, ().into_any())
}
