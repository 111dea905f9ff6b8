//! Every arrangement of the house side by side.

mod run;

use self::run::Running;
use super::section;
use crate::markup::{Markup, scrolled};
use crate::page::{JobKey, Section};
use crate::parts::{button_on, each, live, live_button, live_view, when, words, yes};
use crate::state::{App, EditKey, use_app};
use finrun_engine::compare::{Arranged, Column, Direction, Layout};
use finrun_engine::job::Arrangement;
use finrun_engine::named::Named;
use finrun_engine::quantity::System;
use finrun_text as text;
use leptos::prelude::*;

/// The rows as they are looked at.
#[derive(Debug, Clone, Copy)]
struct Table {
    app: App,
    running: Running,
    sort: RwSignal<Option<(Column, Direction)>>,
    /// Of the rows that are kept, the earlier first.
    kept: RwSignal<Vec<u32>>,
}

pub(super) fn compare(job: &JobKey) -> AnyView {
    let app = use_app();
    let table = Table {
        app,
        running: Running::start(app),
        sort: RwSignal::new(None),
        kept: RwSignal::new(Vec::new()),
    };
    let several = when(super::piping::several, || {
        view! { <p class="note">{text::compare_one_zone()}</p> }.into_any()
    });
    let status = live(move || table.running.status());
    let waiting = yes(move || !table.running.status().is_empty());
    let inside = view! {
        <p class="note">{text::compare_note()}</p>
        {several}
        <p class="working-on" class:spins=waiting role="status">{status}</p>
        {when(move || table.running.is_empty(), || {
            view! { <p>{text::compare_nothing()}</p> }.into_any()
        })}
        {when(move || !table.running.is_empty(), move || table.rows())}
        <h2>{text::kept_rows()}</h2>
        <p class="note">{text::kept_note()}</p>
        {when(
            move || table.kept.with(|kept| !kept.is_empty()),
            move || scrolled(text::kept_rows(), move || table.beside()),
        )}
    }
    .into_any();
    section(job, Section::Compare, inside)
}

impl Table {
    fn rows(self) -> AnyView {
        let heads = Column::ALL.iter().map(|&column| self.head(column)).collect_view();
        let order = move || self.running.rows(|rows| self.in_order(rows));
        view! {
            <div class="scroll sides" tabindex="0" role="region" aria-label=text::side_by_side()>
                <table>
                    <thead>
                        <tr><th scope="col">{text::arrangement_word()}</th>{heads}</tr>
                    </thead>
                    <tbody>{each(order, move |number| self.row(number))}</tbody>
                </table>
            </div>
        }
        .into_any()
    }

    fn in_order(self, rows: &[Arranged]) -> Vec<u32> {
        let places = match self.sort.get() {
            Some((column, direction)) => column.order(rows, direction),
            None => (0..rows.len()).collect(),
        };
        places
            .into_iter()
            .filter_map(|place| rows.get(place))
            .map(|row| number(row.layout))
            .collect()
    }

    /// The first press sorts the better values to the top, the next one the others.
    fn head(self, column: Column) -> AnyView {
        let sorted = move || self.sort.get().filter(|(by, _)| *by == column);
        let press = move || {
            let first = column.better().unwrap_or(Direction::Rising);
            let direction = match self.sort.get_untracked() {
                Some((by, direction)) if by == column && direction == first => other(first),
                _ => first,
            };
            self.sort.set(Some((column, direction)));
            self.app.say(text::sorted_by(column, direction));
        };
        let aria = words(move || {
            match sorted() {
                None => "none",
                Some((_, Direction::Rising)) => "ascending",
                Some((_, Direction::Falling)) => "descending",
            }
            .to_string()
        });
        let sign = live(move || {
            match sorted() {
                None => "",
                Some((_, Direction::Rising)) => "\u{a0}↑",
                Some((_, Direction::Falling)) => "\u{a0}↓",
            }
            .to_string()
        });
        let label = view! { {text::column(column)} <span aria-hidden="true">{sign}</span> };
        view! { <th scope="col" aria-sort=aria>{live_button("sort", label.into_any(), press)}</th> }
            .into_any()
    }

    fn row(self, number: u32) -> AnyView {
        let app = self.app;
        let layout = layout(number);
        let name = words(move || app.typed(|draft| text::layout(draft, layout)));
        let is_now = yes(move || app.typed(|draft| draft.is_laid_out(layout)));
        let use_it = move || {
            let name = app.typed_now(|draft| text::layout(draft, layout));
            app.edit(EditKey::Single, |draft| draft.lay_out(layout));
            app.say(text::laid_out(&name));
        };
        let take = live_view(move || match is_now.get() {
            true => view! { <b class="is-now">{text::as_it_is()}</b> }.into_any(),
            false => button_on("", text::use_this(), move || on(text::use_this(), name), use_it),
        });
        let is_kept = yes(move || self.kept.with(|kept| kept.contains(&number)));
        let keep = live_view(move || {
            let label = if is_kept.get() { text::let_row_go() } else { text::keep_row() };
            button_on("", label, move || on(label, name), move || self.keep(number))
        });
        let cells = Column::ALL.iter().map(|&column| self.cell(number, column)).collect_view();
        let stale = yes(move || self.running.is_stale(layout));
        view! {
            <tr class:stale=stale>
                <th scope="row">
                    {live(move || name.get())}
                    <span class="row-acts">{take} {keep}</span>
                </th>
                {cells}
            </tr>
        }
        .into_any()
    }

    fn cell(self, number: u32, column: Column) -> AnyView {
        let key = format!("arranged-{number}.{}", column.name());
        // What is shown, and whether that is the best.
        let cell = move || {
            let system = self.app.system();
            self.running.rows(|rows| match rows.iter().find(|row| row.layout == layout(number)) {
                Some(row) => {
                    let shown = text::cell(column, row, system);
                    let is_best = text::best_cell(column, rows, system).as_ref() == Some(&shown);
                    (shown, is_best)
                }
                None => (String::new(), false),
            })
        };
        let shown = live(move || cell().0);
        let best = live(move || if cell().1 { text::best() } else { "" }.to_string());
        view! { <td><span data-figure=key>{shown}</span> <b class="best">{best}</b></td> }
            .into_any()
    }

    /// Keeps a row or lets it go; of three the first one goes.
    fn keep(self, number: u32) {
        self.kept.update(|kept| match kept.iter().position(|other| *other == number) {
            Some(at) => {
                kept.remove(at);
            }
            None => {
                if kept.len() > 1 {
                    kept.remove(0);
                }
                kept.push(number);
            }
        });
    }

    /// The kept rows, column by column.
    fn beside(self) -> String {
        let system = self.app.system();
        let kept = self.kept.get();
        self.running.rows(|rows| {
            let row = |number: &u32| rows.iter().find(|row| row.layout == layout(*number));
            let kept: Vec<&Arranged> = kept.iter().filter_map(row).collect();
            let names = |row: &&Arranged| self.app.typed(|draft| text::layout(draft, row.layout));
            let names: Vec<String> = kept.iter().map(names).collect();
            match kept.is_empty() {
                true => String::new(),
                false => beside(&kept, &names, system),
            }
        })
    }
}

fn beside(kept: &[&Arranged], names: &[String], system: System) -> String {
    let mut markup = Markup::new();
    markup.open("table", &[("class", "beside")]);
    markup.open("tr", &[]);
    markup.leaf("td", &[], "");
    for name in names {
        markup.leaf("th", &[("scope", "col")], name);
    }
    if names.len() > 1 {
        markup.leaf("th", &[("scope", "col")], text::difference_word());
    }
    markup.close("tr");
    for &column in Column::ALL {
        markup.open("tr", &[]);
        markup.leaf("th", &[("scope", "row")], text::column(column));
        for row in kept {
            markup.leaf("td", &[], &text::cell(column, row, system));
        }
        if let [first, second] = kept {
            let more = text::kept_difference(column, second, first, system);
            markup.leaf("td", &[], &more);
        }
        markup.close("tr");
    }
    markup.close("table");
    markup.done()
}

fn on(act: &'static str, name: Signal<String>) -> String {
    text::act_on(act, &name.get())
}

fn other(direction: Direction) -> Direction {
    match direction {
        Direction::Rising => Direction::Falling,
        Direction::Falling => Direction::Rising,
    }
}

/// A layout by its number, and back: the zones as drawn, then the arrangements.
fn layout(number: u32) -> Layout {
    let of = (number as usize).checked_sub(1).and_then(|at| Arrangement::ALL.get(at));
    of.map_or(Layout::AsDrawn, |of| Layout::OneZone(*of))
}

fn number(layout: Layout) -> u32 {
    match layout {
        Layout::AsDrawn => 0,
        Layout::OneZone(of) => of as u32 + 1,
    }
}
