//! The ground under and around the house.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{choice_field, number_field, when};
use crate::state::use_app;
use finrun_engine::job::{Choice, EdgeBasis, Field, GroundField, GroundMethod};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn ground(job: &JobKey) -> AnyView {
    let app = use_app();
    let field = |field| number_field(Field::Ground(field));
    let method = move |method| move || app.typed(|draft| draft.ground.method == method);
    let insulated = move || app.typed(|draft| draft.ground.edge != EdgeBasis::None);
    let iso = move || {
        let edge = when(insulated, move || {
            view! {
                {field(GroundField::EdgeDepth)}
                {field(GroundField::EdgeR)}
                {field(GroundField::EdgeThickness)}
            }
            .into_any()
        });
        view! { {choice_field(Choice::Edge)} {edge} }.into_any()
    };
    let factor =
        move || view! { {choice_field(Choice::SlabEdge)} {field(GroundField::FFactor)} }.into_any();
    let inside = view! {
        <section class="columns">
            <div>
                {choice_field(Choice::Soil)}
                {field(GroundField::WallThickness)}
            </div>
            <div>
                {choice_field(Choice::GroundMethod)}
                {when(method(GroundMethod::Iso), iso)}
                {when(method(GroundMethod::FFactor), factor)}
                <p class="note">{text::two_methods()}</p>
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Ground, inside)
}
