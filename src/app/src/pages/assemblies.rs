//! .

use super::section;
use crate::page::{JobKey, Section};
use leptos::prelude::*;

pub(super) fn assemblies(job: &JobKey) -> AnyView {
    section(job, Section::Assemblies, ().into_any())
}
