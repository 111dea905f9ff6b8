//! The report: a job with all its numbers, inputs and workings, for paper or a PDF; and a short form
//! of two pages for the site. It is made only while its page is open.

mod assumed;
mod heed;
mod inputs;
mod results;
mod rooms;
mod short;
mod table;
#[cfg(test)]
mod tests;
mod worked;
mod year;

use super::install::today;
use super::materials::materials_markup;
use super::section;
use crate::drawing::draw;
use crate::markup::{Markup, live_markup};
use crate::page::{JobKey, Section};
use crate::parts::{button, choice};
use crate::state::{App, Outcome, use_app};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, FieldError, Job};
use finrun_engine::quantity::System;
use finrun_text as text;
use leptos::prelude::*;

/// What a report says it of, in which units.
struct Seen<'a> {
    draft: &'a Draft,
    job: &'a Job,
    design: &'a Design,
    errors: &'a [FieldError],
    system: System,
    /// The date that it is given.
    today: String,
}

/// How much is printed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    Full,
    Short,
}

/// On which paper.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Paper {
    Letter,
    A4,
}

pub(super) fn report(job: &JobKey) -> AnyView {
    let app = use_app();
    let form = RwSignal::new(Form::Full);
    let paper = RwSignal::new(match app.typed_now(|draft| draft.units) {
        System::Us => Paper::Letter,
        System::Si => Paper::A4,
    });
    let list = |words: [&'static str; 2]| Signal::derive(move || words.map(String::from).to_vec());
    let forms = list([text::report_full(), text::report_short()]);
    let papers = list([text::paper_letter(), text::paper_a4()]);
    let form_now = Signal::derive(move || usize::from(form.get() == Form::Short));
    let paper_now = Signal::derive(move || usize::from(paper.get() == Paper::A4));
    let set_form = move |index| form.set(if index == 0 { Form::Full } else { Form::Short });
    let set_paper = move |index| paper.set(if index == 0 { Paper::Letter } else { Paper::A4 });
    let inside = view! {
        <div class="picks">
            <p class="note">{text::report_note()}</p>
            <div class="pair">
                {choice("report-form".into(), text::report_form(), forms, form_now, set_form)}
                {choice("report-paper".into(), text::report_paper(), papers, paper_now, set_paper)}
            </div>
            <div class="acts">{button("", text::print_sheet(), || {
                // A browser that cannot print has said so by itself.
                let _ = window().print();
            })}</div>
        </div>
        {live_markup("", move || app.report(form.get(), paper.get()))}
    }
    .into_any();
    section(job, Section::Report, inside)
}

impl App {
    fn report(self, form: Form, paper: Paper) -> String {
        self.follows(|outcome| self.typed(|draft| of_outcome(draft, outcome, form, paper)))
    }
}

fn of_outcome(draft: &Draft, outcome: &Outcome, form: Form, paper: Paper) -> String {
    let mut out = Markup::new();
    match outcome.solved.as_ref() {
        Some((job, design)) if !design.rooms.is_empty() => {
            let errors = &outcome.errors;
            let system = draft.units;
            let seen = Seen { draft, job, design, errors, system, today: today() };
            sheet(&mut out, &seen, form, paper);
        }
        _ => out.leaf("p", &[], text::no_loop_yet()),
    }
    out.done()
}

fn sheet(out: &mut Markup, seen: &Seen<'_>, form: Form, paper: Paper) {
    out.open("div", &[("class", class(form, paper))]);
    match form {
        Form::Full => full(out, seen),
        Form::Short => short::short(out, seen),
    }
    out.close("div");
}

fn class(form: Form, paper: Paper) -> &'static str {
    match (form, paper) {
        (Form::Full, Paper::Letter) => "report letter",
        (Form::Full, Paper::A4) => "report a4",
        (Form::Short, Paper::Letter) => "report brief letter",
        (Form::Short, Paper::A4) => "report brief a4",
    }
}

/// The parts in their order.
fn full(out: &mut Markup, seen: &Seen<'_>) {
    title(out, seen, &text::report_title(&seen.draft.name));
    results::results(out, seen);
    year::year(out, seen);
    inputs::inputs(out, seen);
    assumed::assumptions(out, seen);
    worked::calculations(out, seen);
    drawings(out, seen);
    materials(out, seen);
    heed::outstanding(out, seen);
    heed::limits(out);
}

/// What a sheet of paper must say of itself: which job, when, by what, and who answers for it.
fn title(out: &mut Markup, seen: &Seen<'_>, title: &str) {
    out.open("header", &[("class", "title-block")]);
    out.leaf("h2", &[], title);
    out.open("dl", &[]);
    let place = match &seen.draft.station {
        Some(station) => text::station_name(station),
        None => text::no_station().to_string(),
    };
    let facts = [
        (text::title_place(), place),
        (text::title_date(), seen.today.clone()),
        (text::title_made(), made_by()),
    ];
    for (name, fact) in facts {
        out.leaf("dt", &[], name);
        out.leaf("dd", &[], &fact);
    }
    for name in [text::prepared_by(), text::checked_by()] {
        out.leaf("dt", &[], name);
        out.leaf("dd", &[("class", "blank")], "");
    }
    out.close("dl");
    out.close("header");
}

fn made_by() -> String {
    use finrun_engine::climate::TABLE_VERSION;
    use finrun_engine::job::CURRENT_VERSION;
    let climate = TABLE_VERSION.rsplit(' ').next().unwrap_or_default();
    text::made_by(env!("CARGO_PKG_VERSION"), CURRENT_VERSION, climate)
}

fn drawings(out: &mut Markup, seen: &Seen<'_>) {
    out.leaf("h2", &[], text::report_drawings());
    out.open("div", &[("class", "sheets")]);
    out.put(&draw(seen.draft, seen.job, seen.design, seen.system));
    out.close("div");
}

fn materials(out: &mut Markup, seen: &Seen<'_>) {
    out.leaf("h2", &[], text::section_materials());
    out.open("div", &[("class", "materials")]);
    out.put(&materials_markup(seen.draft, seen.job, seen.design, seen.system, "h3"));
    out.close("div");
}

impl Seen<'_> {
    /// The rooms in the order of the water, by their place in the job, zone after zone.
    fn in_order(&self) -> impl Iterator<Item = usize> {
        self.job.zones.iter().flat_map(|zone| zone.loops.iter().flatten().copied())
    }
}
