//! How sure the load is, what makes it unsure, and what to measure next.

use super::section;
use crate::markup::{Markup, live_markup};
use crate::page::{JobKey, Section};
use crate::parts::{live, number_field};
use crate::state::{App, use_app};
use finrun_engine::building::Effect;
use finrun_engine::job::{CertaintyField, Draft, Field};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Power, System};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn certainty(job: &JobKey) -> AnyView {
    let app = use_app();
    let band = live(move || app.house_band());
    let effects = live_markup("", move || app.effects());
    let fields = CertaintyField::ALL.iter().map(|&f| number_field(Field::Certainty(f)));
    let inside = view! {
        <p data-figure="certainty.load">{band}</p>
        <p class="note">{text::certainty_method()}</p>
        <section class="columns">
            <div>
                {effects}
            </div>
            <div>
                <h2>{text::ranges()}</h2>
                {fields.collect_view()}
            </div>
        </section>
    }
    .into_any();
    section(job, Section::Certainty, inside)
}

impl App {
    fn house_band(self) -> String {
        let system = self.system();
        self.design(|solved| {
            let (_, design) = solved.as_ref()?;
            Some(text::load_and_band(design.load, design.certainty.house, system))
        })
        .unwrap_or_else(|| text::no_load_yet().to_string())
    }

    /// Everything unsure, that which narrows the band most first.
    fn effects(self) -> String {
        let system = self.system();
        let effects: Vec<Effect> = self.design(|solved| {
            let effects = solved.as_ref().map(|(_, design)| design.certainty.effects.as_slice());
            effects.unwrap_or_default().to_vec()
        });
        self.typed_now(|draft| list(draft, &effects, system))
    }
}

fn list(draft: &Draft, effects: &[Effect], system: System) -> String {
    let mut out = Markup::new();
    if effects.is_empty() {
        return String::new();
    }
    out.leaf("h2", &[], text::measure_next());
    out.open("ol", &[("class", "effects")]);
    for (index, effect) in effects.iter().enumerate() {
        // What moves the load by less than a watt moves nothing.
        if effect.alone < Power::from_si(1.0) {
            continue;
        }
        let figure = format!("effect-{index}");
        out.open("li", &[("data-figure", &figure)]);
        out.leaf("b", &[], &text::subject(draft, effect.subject, system));
        out.leaf("p", &[("class", "note")], &text::effect(effect, system));
        out.close("li");
    }
    out.close("ol");
    out.done()
}
