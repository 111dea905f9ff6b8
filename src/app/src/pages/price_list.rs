//! The list of prices: kept for other jobs, filled in from there, saved as a file and opened.

use crate::files;
use crate::parts::{button, live, live_view, when};
use crate::state::prices::{self, Count, Kept, NotKept};
use crate::state::{App, EditKey, use_app};
use finrun_engine::csv;
use finrun_engine::job::{ListFault, PriceList, Typed, box_text, read_table};
use finrun_text as text;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What was done last, and what is still to be said of it.
#[derive(Debug, Clone, PartialEq)]
enum Notice {
    Nothing,
    Kept(Count),
    Refused(String),
    /// With the list, of which some may be typed otherwise or were not taken.
    Filled(usize, PriceList),
    /// With the table, which can be brought back.
    Forgotten(String),
}

/// More rows than these are only counted.
const MOST_ROWS_SAID: usize = 12;

#[derive(Debug, Clone, Copy)]
struct Panel {
    app: App,
    kept: RwSignal<Kept>,
    notice: RwSignal<Notice>,
}

pub(super) fn price_list() -> AnyView {
    let kept = RwSignal::new(prices::kept());
    let panel = Panel { app: use_app(), kept, notice: RwSignal::new(Notice::Nothing) };
    let app = panel.app;
    let has_list = move || kept.with(|kept| matches!(kept, Kept::List(_)));
    let of_list = when(has_list, move || {
        view! {
            {button("", text::fill_in_prices(), move || panel.fill_from_kept())}
            {button("", text::forget_prices(), move || panel.forget())}
        }
        .into_any()
    });
    let save = move || {
        app.typed_now(|draft| {
            let name = files::table_name(&draft.name, "prices");
            files::download(&name, &prices::table(draft));
        });
    };
    let choose = move |event: web_sys::Event| {
        if let Some(input) = event.target() {
            files::read_chosen(&input.unchecked_into(), csv::MOST_BYTES, move |content| {
                panel.fill_from_file(content);
            });
        }
    };
    view! {
        <h2>{text::prices_of_jobs()}</h2>
        {live_view(move || panel.what_is_kept())}
        <div class="acts">
            {button("", text::keep_prices(), move || panel.keep(prices::keep))}
            {of_list}
        </div>
        <div class="acts">
            {button("", text::save_prices(), save)}
            <label class="file" for="open-prices">{text::open_prices()}</label>
            <input id="open-prices" type="file" accept=".csv,text/csv,text/plain" on:change=choose/>
        </div>
        <p class="note">{text::prices_file_note()}</p>
        {live_view(move || panel.noticed())}
    }
    .into_any()
}

impl Panel {
    fn keep(self, keep: fn(&finrun_engine::job::Draft) -> Result<Count, NotKept>) {
        let notice = match self.app.typed_now(keep) {
            Ok(count) => Notice::Kept(count),
            // The words over the buttons say it, and offer a way.
            Err(NotKept::Damaged) => Notice::Nothing,
            Err(NotKept::Refused(reason)) => Notice::Refused(text::cannot_keep_prices(&reason)),
        };
        self.notice.set(notice);
        self.kept.set(prices::kept());
    }

    fn forget(self) {
        if let Some(table) = prices::raw() {
            prices::forget();
            self.notice.set(Notice::Forgotten(table));
        }
        self.kept.set(prices::kept());
    }

    fn remember(self, table: &str) {
        self.notice.set(match prices::remember(table) {
            Ok(()) => Notice::Nothing,
            Err(reason) => Notice::Refused(text::cannot_keep_prices(&reason)),
        });
        self.kept.set(prices::kept());
    }

    fn fill_from_kept(self) {
        // Another tab may have kept others since.
        self.kept.set(prices::kept());
        if let Kept::List(list) = self.kept.get_untracked() {
            self.fill_from(list);
        }
    }

    fn fill_from_file(self, content: Option<String>) {
        let too_large = ListFault::Table(csv::Fault::TooLarge);
        match content.ok_or(too_large).and_then(|table| read_table(&table)) {
            Ok(list) => self.fill_from(list),
            Err(fault) => {
                let said = format!("{} {}", text::list_fault(fault), text::nothing_changed());
                self.notice.set(Notice::Refused(said));
            }
        }
    }

    /// Fills in what is blank; what is typed otherwise waits for a word.
    fn fill_from(self, list: PriceList) {
        let count = self.app.typed_now(|draft| list.missing_in(draft).len());
        self.app.edit(EditKey::Single, |draft| list.put_into(draft, Typed::Stay));
        self.notice.set(Notice::Filled(count, list));
    }

    /// The list that is kept, beside what is typed; or why it cannot be read.
    fn what_is_kept(self) -> AnyView {
        match self.kept.get() {
            Kept::Nothing => view! { <p>{text::kept_prices(0, 0, 0)}</p> }.into_any(),
            Kept::List(list) => {
                let said = move || {
                    let [missing, otherwise] = self.app.typed(|draft| {
                        [list.missing_in(draft).len(), list.otherwise_in(draft).len()]
                    });
                    text::kept_prices(list.prices.len(), missing, otherwise)
                };
                view! { <p>{live(said)}</p> }.into_any()
            }
            Kept::Damaged(fault) => {
                let said = text::kept_prices_damaged(&text::list_fault(fault));
                let save = || {
                    if let Some(table) = prices::raw() {
                        files::download("finrun-damaged-prices.csv", &table);
                    }
                };
                view! {
                    <div class="banner loud" role="alert">
                        <p>{said}</p>
                        {button("", text::download_raw(), save)}
                        {button("", text::keep_prices_instead(), move || {
                            self.keep(prices::keep_instead);
                        })}
                    </div>
                }
                .into_any()
            }
        }
    }

    fn noticed(self) -> AnyView {
        match self.notice.get() {
            Notice::Nothing => ().into_any(),
            Notice::Kept(Count { kept, changed }) => view! {
                <p class="banner" role="status">{text::prices_kept(kept, changed)}</p>
            }
            .into_any(),
            Notice::Refused(said) => {
                view! { <p class="banner loud" role="alert">{said}</p> }.into_any()
            }
            Notice::Filled(count, list) => self.filled(count, list),
            Notice::Forgotten(table) => view! {
                <div class="banner" role="status">
                    <p>{text::prices_forgotten()}</p>
                    {button("", text::undo_delete(), move || self.remember(&table))}
                </div>
            }
            .into_any(),
        }
    }

    fn filled(self, count: usize, list: PriceList) -> AnyView {
        let app = self.app;
        let problems = self.not_taken(&list);
        let list = StoredValue::new(list);
        // What is typed meanwhile counts.
        let otherwise = live_view(move || {
            let lines = list.with_value(|list| {
                app.typed(|draft| {
                    let line = |price: &finrun_engine::job::ListedPrice| {
                        let here = box_text(draft, price.field);
                        text::price_otherwise(price.field, &here, &price.entry, draft.units)
                    };
                    list.otherwise_in(draft).into_iter().map(line).collect::<Vec<_>>()
                })
            });
            if lines.is_empty() {
                return ().into_any();
            }
            let take = move || {
                list.with_value(|list| {
                    app.edit(EditKey::Single, |draft| list.put_into(draft, Typed::AreReplaced));
                });
            };
            view! {
                <p>{text::prices_otherwise(lines.len())}</p>
                {rows(lines)}
                <div class="acts">{button("", text::take_listed(), take)}</div>
            }
            .into_any()
        });
        view! {
            <div class="banner listed" role="status">
                <p>{text::prices_filled(count)}</p>
                {otherwise}
                {problems}
            </div>
        }
        .into_any()
    }

    fn not_taken(self, list: &PriceList) -> AnyView {
        let count = list.problems.len();
        if count == 0 {
            return ().into_any();
        }
        let system = self.app.system();
        let lines = list.problems.iter().map(|row| text::row_problem(row, system)).collect();
        view! { <p>{text::rows_not_taken(count)}</p> {rows(lines)} }.into_any()
    }
}

fn rows(mut lines: Vec<String>) -> AnyView {
    let more = lines.len().saturating_sub(MOST_ROWS_SAID);
    lines.truncate(MOST_ROWS_SAID);
    if more > 0 {
        lines.push(text::more_rows(more));
    }
    let line = |line: String| view! { <li>{line}</li> }.into_any();
    view! { <ul>{lines.into_iter().map(line).collect_view()}</ul> }.into_any()
}
