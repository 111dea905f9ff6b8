//! A system that stands: its pieces as they are, what each room gets, and what explains what is measured.

mod stands;
mod told;

use super::rooms::section_links;
use super::section;
use crate::markup::{Markup, live_markup, still_markup};
use crate::page::{JobKey, Section};
use crate::parts::{
    Pace, Slice, Work, choice_field, each, in_slices, kept, live, number_field, pace_said, when,
    yes,
};
use crate::state::{App, use_app};
use finrun_engine::building::RoomId;
use finrun_engine::existing::{Explained, Explaining, NoExplanation, RoomGets, gets};
use finrun_engine::job::{Choice, Field, MeasuredField, SpotField, measured};
use finrun_text as text;
use leptos::prelude::*;

/// What was worked out last: in slices, since it takes as long as many designs.
#[derive(Debug, Clone, Default)]
struct Found {
    gets: Vec<RoomGets>,
    /// None while nothing was asked.
    told: Option<Result<Explained, NoExplanation>>,
}

pub(super) fn existing(job: &JobKey) -> AnyView {
    let app = use_app();
    let found = RwSignal::new(Found::default());
    let pace = in_slices(move || work(app, found));
    let rooms = live_markup("found", move || found.with(|found| told::gets(app, &found.gets)));
    let done = move || matches!(pace.get(), Pace::Done | Pace::Still);
    let said = live_markup("found told", move || match done() {
        true => found.with(|found| told::told(app, found.told.as_ref())),
        false => String::new(),
    });
    let inside = view! {
        <p class="note">{text::existing_note()}</p>
        {choice_field(Choice::Standing)}
        <h2>{text::existing_entered()}</h2>
        {stands::pieces()}
        {section_links(job, &[Section::Piping, Section::Circulator])}
        <h2>{text::existing_gets()}</h2>
        <p class="note">{text::existing_gets_note()}</p>
        {rooms}
        <h2>{text::existing_read()}</h2>
        {still_markup("heed", cautions())}
        <p class="note">{text::existing_read_note()}</p>
        <p class="note">{text::existing_read_least()}</p>
        {readings()}
        <h2>{text::existing_explained()}</h2>
        {pace_said(pace, text::existing_weighing())}
        {said}
        <p class="note">{text::existing_how()}</p>
    }
    .into_any();
    section(job, Section::Existing, inside)
}

/// First what the rooms get, then an explanation at a time.
fn work(app: App, found: RwSignal<Found>) -> Option<Work> {
    let measured = app.typed(measured);
    let solved = app.design(Clone::clone);
    let Some((job, design)) = solved else {
        found.set(Found::default());
        return None;
    };
    let mut explaining: Option<Explaining> = None;
    Some(Box::new(move || {
        let Some(explaining) = &mut explaining else {
            let all = gets(&job, &design);
            found.update(|found| found.gets = all);
            explaining = Some(Explaining::new(&job, &design));
            return Slice::More;
        };
        match explaining.step(&job, &design, &measured) {
            Ok(None) => Slice::More,
            Ok(Some(explained)) => {
                found.update(|found| found.told = Some(Ok(explained)));
                Slice::Last
            }
            Err(why) => {
                found.update(|found| found.told = Some(Err(why)));
                Slice::Last
            }
        }
    }))
}

fn cautions() -> String {
    let mut markup = Markup::new();
    markup.leaf("h3", &[], text::existing_caution());
    for caution in text::existing_cautions() {
        markup.leaf("p", &[], caution);
    }
    markup.done()
}

/// Boxes for what is measured: at the boiler, at each circuit where there are several, in each room.
fn readings() -> AnyView {
    let app = use_app();
    let several = yes(move || app.circuit_ids().len() > 1);
    let circuits = each(
        move || app.circuit_ids(),
        move |id| {
            let first = RoomId(id);
            let name = kept(move || app.typed(|draft| text::circuit_at(draft, first)));
            let at = move |field| number_field(Field::Spot(first, field));
            let water = when(
                move || several.get(),
                move || view! { {at(SpotField::Supply)} {at(SpotField::Back)} }.into_any(),
            );
            view! {
                <fieldset class="spot">
                    <legend>{live(move || name.get())}</legend>
                    <div class="readings">{water} {at(SpotField::Flow)}</div>
                </fieldset>
            }
            .into_any()
        },
    );
    let rooms = each(
        move || app.room_ids(),
        move |id| {
            let room = RoomId(id);
            let name = kept(move || app.typed(|draft| text::room_name(draft, room)));
            let at = move |field| number_field(Field::Spot(room, field));
            view! {
                <fieldset class="spot">
                    <legend>{live(move || name.get())}</legend>
                    <div class="readings">
                        {at(SpotField::WaterIn)} {at(SpotField::WaterOut)} {at(SpotField::Air)}
                    </div>
                </fieldset>
            }
            .into_any()
        },
    );
    let whole = move |field| number_field(Field::Measured(field));
    view! {
        {choice_field(Choice::Ran)}
        <div class="readings">
            {whole(MeasuredField::Outdoors)}
            {whole(MeasuredField::BoilerSupply)}
            {whole(MeasuredField::BoilerBack)}
        </div>
        {circuits}
        {rooms}
    }
    .into_any()
}
