//! The materials list: what to buy and why, what that comes to, and how the pipe is cut.

use super::section;
use crate::drawing::cut_drawing;
use crate::files;
use crate::markup::{Markup, live_markup};
use crate::page::{JobKey, Section};
use crate::parts::button;
use crate::state::{App, use_app};
use finrun_engine::csv;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Group, Job};
use finrun_engine::quantity::{Money, System};
use finrun_engine::takeoff::cutting::Cutting;
use finrun_engine::takeoff::list::{Entry, TakeOff, list};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn materials(job: &JobKey) -> AnyView {
    let app = use_app();
    let markup = live_markup("materials", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((job, design)) if !design.rooms.is_empty() => {
                app.typed(|draft| materials_markup(draft, job, design, system, "h2"))
            }
            _ => {
                let mut markup = Markup::new();
                markup.leaf("p", &[], text::no_materials_yet());
                markup.done()
            }
        })
    });
    let inside = view! {
        <p class="note">{text::materials_note()}</p>
        {markup}
        <div class="acts">
            {button("", text::print_list(), || {
                // A browser that cannot print has said so by itself.
                let _ = window().print();
            })}
            {button("", text::save_csv(), move || app.save_materials())}
        </div>
    }
    .into_any();
    section(job, Section::Materials, inside)
}

impl App {
    /// Hands the list to the reader as a table for a spreadsheet.
    fn save_materials(self) {
        let system = self.system();
        self.design(|solved| {
            let Some((job, design)) = solved else { return };
            self.typed_now(|draft| {
                let rows = text::materials_table(draft, &list(job, design), system);
                let name = files::table_name(&draft.name, "materials");
                files::download(&name, &csv::write(&rows, csv::Separator::Comma));
            });
        });
    }
}

/// The whole list with its sums and the cut plan, also for whoever shows it elsewhere, under headings
/// of a level, such as "h2".
pub(super) fn materials_markup(
    draft: &Draft,
    job: &Job,
    design: &Design,
    system: System,
    heading: &'static str,
) -> String {
    let take_off = list(job, design);
    let mut page = Page { markup: Markup::new(), draft, take_off: &take_off, system, heading };
    page.figure("p", "verdict", "materials.sum", &text::list_sum(&take_off, system));
    if take_off.sum > Money::ZERO {
        page.figure("p", "", "materials.needed", &text::sum_and_need(&take_off, system));
    }
    if take_off.unpriced > 0 {
        page.figure("p", "", "materials.unpriced", &text::unpriced_lines(&take_off));
    }
    for note in &take_off.notes {
        page.markup.leaf("p", &[("class", "note")], &text::list_note(*note));
    }
    for &(group, sum) in &take_off.groups {
        page.group(group, sum);
    }
    page.sums();
    page.cuts()
}

struct Page<'a> {
    markup: Markup,
    draft: &'a Draft,
    take_off: &'a TakeOff,
    system: System,
    heading: &'static str,
}

impl Page<'_> {
    fn figure(&mut self, tag: &str, class: &str, name: &str, said: &str) {
        self.markup.leaf(tag, &[("class", class), ("data-figure", name)], said);
    }

    fn heads(&mut self, heads: &[&str]) {
        self.markup.open("thead", &[]);
        self.markup.open("tr", &[]);
        for head in heads {
            self.markup.leaf("th", &[("scope", "col")], head);
        }
        self.markup.close("tr");
        self.markup.close("thead");
    }

    fn group(&mut self, group: Group, sum: Money) {
        self.markup.leaf(self.heading, &[], text::group(group));
        self.markup.open("table", &[]);
        let (buy, why) = (text::head_buy(), text::head_what_and_why());
        self.heads(&[why, buy, text::head_price_and_sum()]);
        let take_off = self.take_off;
        for (nth, entry) in take_off.lines.iter().enumerate() {
            if entry.group == group {
                self.line(nth, entry);
            }
        }
        if sum > Money::ZERO {
            self.row(text::total_word(), sum);
        }
        self.markup.close("table");
    }

    fn line(&mut self, nth: usize, entry: &Entry) {
        let system = self.system;
        let name = |what: &str| format!("materials-{nth}.{what}");
        let markup = &mut self.markup;
        markup.open("tr", &[]);
        markup.open("th", &[("scope", "row")]);
        markup.leaf("b", &[], &text::thing(&entry.line, system));
        for because in &entry.reasons {
            // A space, for whoever reads the words without their lines.
            markup.text(" ");
            markup.leaf("small", &[], &text::because(self.draft, because, system));
        }
        markup.close("th");
        markup.open("td", &[]);
        let is_coil = entry.line.tube.is_some_and(text::comes_in_coils);
        let buy = text::to_buy(entry, is_coil, system);
        markup.leaf("b", &[("data-figure", &name("buy"))], &buy);
        markup.text(" ");
        markup.leaf("small", &[], &text::need_and_spare(entry, system));
        markup.close("td");
        markup.open("td", &[]);
        let sum = text::line_sum(entry.sum, system);
        markup.leaf("b", &[("data-figure", &name("sum"))], &sum);
        markup.text(" ");
        markup.leaf("small", &[], &text::line_price(&entry.line, system));
        markup.close("td");
        markup.close("tr");
    }

    fn row(&mut self, name: &str, sum: Money) {
        let sum = text::value(sum, self.system);
        self.markup.open("tr", &[]);
        self.markup.leaf("th", &[("scope", "row")], name);
        self.markup.leaf("td", &[], "");
        self.markup.leaf("td", &[], &sum);
        self.markup.close("tr");
    }

    /// By kind, room and circuit, where anything has a price.
    fn sums(&mut self) {
        let take_off = self.take_off;
        if take_off.sum <= Money::ZERO {
            return;
        }
        self.markup.leaf(self.heading, &[], text::totals_title());
        let named = |&(whose, sum)| (text::subject_of(self.draft, whose), sum);
        let by_group = take_off.groups.iter();
        let groups: Vec<(String, Money)> =
            by_group.map(|&(group, sum)| (text::group(group).to_string(), sum)).collect();
        let rooms = take_off.by_subject.iter().map(named).collect();
        let circuits = take_off.by_circuit.iter().map(named).collect();
        for (title, rows, all) in [
            (text::totals_by_group(), groups, take_off.sum),
            (text::totals_by_room(), rooms, take_off.needed),
            (text::totals_by_circuit(), circuits, take_off.needed),
        ] {
            self.markup.leaf("h3", &[], title);
            self.markup.open("table", &[]);
            for (name, sum) in rows {
                self.row(&name, sum);
            }
            self.row(text::total_word(), all);
            self.markup.close("table");
        }
    }

    /// The cut plan of each tube, drawn and as a table.
    fn cuts(mut self) -> String {
        let take_off = self.take_off;
        if take_off.cuttings.is_empty() {
            return self.markup.done();
        }
        self.markup.leaf(self.heading, &[], text::cut_plan_title());
        self.markup.leaf("p", &[("class", "note")], text::cut_plan_note());
        let mut out = self.markup.done();
        for cutting in &take_off.cuttings {
            self.markup = Markup::new();
            self.markup.leaf("h3", &[], text::cut_title(cutting.tube));
            let proof = text::cut_proof(cutting, self.system);
            self.markup.leaf("p", &[], &proof);
            out.push_str(&self.markup.done());
            out.push_str("<div class=\"drawing cuts\">");
            out.push_str(&cut_drawing(self.draft, cutting, self.system));
            out.push_str("</div>");
            self.markup = Markup::new();
            self.cut_table(cutting);
            out.push_str(&self.markup.done());
            self.markup = Markup::new();
        }
        out
    }

    fn cut_table(&mut self, cutting: &Cutting) {
        let Ok(plan) = &cutting.plan else { return };
        let system = self.system;
        self.markup.open("table", &[]);
        self.heads(&[text::head_stick(), text::head_cut(), text::head_cut_for()]);
        for (nth, stick) in plan.sticks.iter().enumerate() {
            let name = text::stick_name(nth, stick.stick_sixteenths, cutting.is_coil(), system);
            let mut row = |long: &str, what: &str| {
                self.markup.open("tr", &[]);
                self.markup.leaf("th", &[("scope", "row")], &name);
                self.markup.leaf("td", &[], long);
                self.markup.leaf("td", &[], what);
                self.markup.close("tr");
            };
            for cut in &stick.cuts {
                let long = text::cut_length(cut.length_sixteenths, system);
                let piece = cutting.pieces.get(cut.piece);
                let what = piece.map(|piece| text::cut_for(self.draft, piece)).unwrap_or_default();
                row(&long, &what);
            }
            if stick.offcut_sixteenths > 0 {
                row(&text::cut_length(stick.offcut_sixteenths, system), text::offcut_word());
            }
        }
        self.markup.close("table");
    }
}
