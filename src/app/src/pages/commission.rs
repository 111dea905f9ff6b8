//! The commissioning sheet: what was calculated beside what is measured, what the difference tells,
//! and the page that is handed over.

use super::section;
use crate::markup::{Markup, live_markup, still_markup};
use crate::page::{JobKey, Section};
use crate::parts::{button, each, in_system, kept, live, number_field, when};
use crate::state::{App, use_app};
use finrun_engine::arrangement::CircuitDesign;
use finrun_engine::building::RoomId;
use finrun_engine::commission::{Judged, judge};
use finrun_engine::design::Design;
use finrun_engine::job::{Balancing, Field, Job, MeasuredField, SpotField, measured};
use finrun_engine::quantity::{System, Value};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn commission(job: &JobKey) -> AnyView {
    let app = use_app();
    let judged = Memo::new(move |_| {
        let measured = app.typed(measured);
        app.design(|solved| match solved {
            Some((job, design)) => judge(job, design, &measured),
            None => Judged::default(),
        })
    });
    let none = when(
        move || app.circuit_ids().is_empty(),
        || view! { <p>{text::no_loop_yet()}</p> }.into_any(),
    );
    let circuits = each(move || app.circuit_ids(), move |id| circuit(RoomId(id), judged));
    let rooms = each(move || app.room_ids(), move |id| room(RoomId(id), judged));
    let inside = view! {
        <p class="note">{text::commission_note()}</p>
        <h2>{text::readings_whole()}</h2>
        <div class="readings">
            {reading(Field::Measured(MeasuredField::PreCharge))}
            {reading(Field::Measured(MeasuredField::Fill))}
            {reading(Field::Measured(MeasuredField::Outdoors))}
        </div>
        {live_markup("findings", move || judged.with(|judged| filling_said(judged, app.system())))}
        <h2>{text::readings_circuits()}</h2>
        <p class="note">{text::readings_circuits_note()}</p>
        {none}
        {circuits}
        <h2>{text::readings_rooms()}</h2>
        <p class="note">{text::readings_rooms_note()}</p>
        <div class="rooms-read">{rooms}</div>
        {still_markup("handed", handed_over())}
        <div class="acts">{button("", text::print_sheet(), || {
            // A browser that cannot print has said so by itself.
            let _ = window().print();
        })}</div>
    }
    .into_any();
    section(job, Section::Commission, inside)
}

/// A box with what was calculated beside it.
fn reading(field: Field) -> AnyView {
    let app = use_app();
    let figure = format!("{field}.calculated");
    let word = match field {
        Field::Measured(MeasuredField::Outdoors) => text::planned_for(),
        _ => text::calculated(),
    };
    let calculated = kept(move || app.calculated(field).unwrap_or_default());
    view! {
        <div class="reading">
            {number_field(field)}
            <p class="note">{word} " "
                <b data-figure=figure>{live(move || calculated.get())}</b></p>
        </div>
    }
    .into_any()
}

fn circuit(first: RoomId, judged: Memo<Judged>) -> AnyView {
    let app = use_app();
    let at = move |field| reading(Field::Spot(first, field));
    let valve = when(
        move || app.circuit(first, |_, circuit| circuit.valve.fitted) == Some(Balancing::Valves),
        move || at(SpotField::Valve),
    );
    let said = live_markup("findings", move || app.circuit_said(first, judged));
    let name = kept(move || app.typed(|draft| text::circuit_at(draft, first)));
    view! {
        <fieldset class="spot">
            <legend>{live(move || name.get())}</legend>
            <div class="readings">
                {at(SpotField::Supply)} {at(SpotField::Back)} {at(SpotField::Flow)} {valve}
            </div>
            {said}
        </fieldset>
    }
    .into_any()
}

fn room(id: RoomId, judged: Memo<Judged>) -> AnyView {
    let app = use_app();
    let name = kept(move || app.typed(|draft| text::room_name(draft, id)));
    view! {
        <fieldset class="spot one">
            <legend>{live(move || name.get())}</legend>
            {reading(Field::Spot(id, SpotField::Air))}
            {live_markup("findings", move || app.room_said(id, judged))}
        </fieldset>
    }
    .into_any()
}

fn filling_said(judged: &Judged, system: System) -> String {
    let mut markup = Markup::new();
    for finding in &judged.filling {
        markup.leaf("p", &[], &text::filling_finding(*finding, system));
    }
    markup.done()
}

/// What is signed, and what the owner keeps.
fn handed_over() -> String {
    let mut markup = Markup::new();
    markup.leaf("h2", &[], text::care());
    markup.open("dl", &[]);
    for (title, how) in text::care_items() {
        markup.leaf("dt", &[], title);
        markup.leaf("dd", &[], how);
    }
    markup.close("dl");
    markup.open("div", &[("class", "signs")]);
    markup.leaf("h2", &[], text::hand_over());
    markup.leaf("p", &[], text::hand_over_said());
    let lines = [text::signed_by_installer(), text::signed_by_licensed(), text::signed_by_owner()];
    for line in lines {
        markup.leaf("p", &[("class", "sign")], line);
    }
    markup.close("div");
    markup.done()
}

impl App {
    /// The first room of each circuit.
    pub(super) fn circuit_ids(self) -> Vec<u32> {
        self.design(|solved| match solved {
            Some((_, design)) => {
                let firsts = design.piping.circuits.iter().filter_map(|c| c.rooms.first());
                firsts.map(|room| room.0).collect()
            }
            None => Vec::new(),
        })
    }

    pub(super) fn room_ids(self) -> Vec<u32> {
        self.design(|solved| match solved {
            Some((_, design)) => design.rooms.iter().map(|room| room.room.0).collect(),
            None => Vec::new(),
        })
    }

    /// Looks at a circuit of the design.
    fn circuit<T>(self, first: RoomId, look: impl FnOnce(&Job, &CircuitDesign) -> T) -> Option<T> {
        self.design(|solved| {
            let (job, design) = solved.as_ref()?;
            Some(look(job, circuit_at(design, first)?))
        })
    }

    /// What was calculated for a reading.
    fn calculated(self, field: Field) -> Option<String> {
        let system = self.system();
        self.design(|solved| {
            let (job, design) = solved.as_ref()?;
            Some(in_system(planned(job, design, field)?, system))
        })
    }

    fn circuit_said(self, first: RoomId, judged: Memo<Judged>) -> String {
        let system = self.system();
        let mut markup = Markup::new();
        judged.with(|judged| {
            let Some(of) = judged.circuits.iter().find(|of| of.first == first) else { return };
            if let Some(back) = of.back {
                markup.leaf("p", &[], &text::expected_back(&in_system(back, system)));
            }
            self.typed(|draft| {
                for (nth, finding) in of.findings.iter().enumerate() {
                    let how = text::circuit_finding(draft, finding, system);
                    let key = format!("judged-circuit-{}.{nth}", first.0);
                    judgement(&mut markup, &key, text::circuit_verdict(finding), &how);
                }
            });
        });
        markup.done()
    }

    fn room_said(self, id: RoomId, judged: Memo<Judged>) -> String {
        let system = self.system();
        let mut markup = Markup::new();
        judged.with(|judged| {
            let Some((_, finding)) = judged.rooms.iter().find(|(of, _)| *of == id) else { return };
            let how = self.typed(|draft| text::room_finding(draft, finding, system));
            let key = format!("judged-room-{}", id.0);
            judgement(&mut markup, &key, text::room_verdict(finding), &how);
        });
        markup.done()
    }
}

fn judgement(markup: &mut Markup, key: &str, verdict: &str, how: &str) {
    markup.open("p", &[("data-figure", key)]);
    markup.leaf("b", &[], verdict);
    markup.text(". ");
    markup.text(how);
    markup.close("p");
}

fn circuit_at(design: &Design, first: RoomId) -> Option<&CircuitDesign> {
    design.piping.circuits.iter().find(|circuit| circuit.rooms.first() == Some(&first))
}

/// The calculated value of a reading, on the design day.
fn planned(job: &Job, design: &Design, field: Field) -> Option<Value> {
    Some(match field {
        Field::Measured(MeasuredField::Outdoors) => job.house.site.outdoors.into(),
        Field::Measured(MeasuredField::Fill) => job.plant.fill.into(),
        Field::Measured(MeasuredField::PreCharge) => design.plant.as_ref()?.tank?.pre_charge.into(),
        Field::Spot(room, SpotField::Air) => {
            job.house.rooms.iter().find(|of| of.id == room)?.temperature.into()
        }
        Field::Spot(_, SpotField::Supply) => job.circuit.supply.into(),
        Field::Spot(first, SpotField::Back) => circuit_at(design, first)?.back.into(),
        Field::Spot(first, SpotField::Flow) => {
            let density = job.circuit.fluid.density(job.circuit.supply);
            (circuit_at(design, first)?.mass_flow / density).into()
        }
        Field::Spot(first, SpotField::Valve) => {
            let open = job.circuit.parts.balancing.gallons_per_minute();
            Value::number(circuit_at(design, first)?.valve.cv.map_or(open, |cv| cv.min(open)))
        }
        _ => return None,
    })
}
