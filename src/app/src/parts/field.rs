//! The one field for numbers: label, hint, error, and what was read, tied together for everyone.

use super::{button_on, kept, live, pushed, when, words, yes};
use crate::state::use_app;
use finrun_engine::job::{Draft, Entry, Field, Problem, ReadBack, box_text, read_back};
use finrun_engine::quantity::{Kind, System, Unit};
use finrun_text as text;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

pub(crate) fn number_field(field: Field) -> AnyView {
    let app = use_app();
    let id = field.to_string();
    // One look at the draft for all that the field shows: a page holds a hundred fields, and a key in
    // one of them asks them all.
    let seen = pushed(move || app.typed(|draft| Seen::of(draft, field)));
    let unit = move || seen.with(|seen| seen.unit);
    let typed = kept(move || seen.with(|seen| seen.typed.clone()));
    let error = kept(move || {
        // An error shows once the field was left, not while it is being typed.
        let left = app.left.with(|left| left.contains(&field));
        left.then(|| app.error_of(field)).flatten().unwrap_or_default()
    });
    let bad = yes(move || error.with(|error| !error.is_empty()));
    let assumed = yes(move || seen.with(|seen| matches!(seen.back, ReadBack::Assumed(_))));
    let read = live(move || seen.with(|seen| read_back_text(&seen.back)));
    let type_text = move |text: String| {
        app.type_into(field, Entry { text, unit: untrack(unit) });
    };
    let described = format!("{id}-note {id}-error {id}-read");
    let marks = yes(move || seen.with(|seen| seen.marks));
    // The decimal pad of some phones has no marks for feet and inches.
    let pad = words(move || if marks.get() { "text" } else { "decimal" }.to_string());
    let sign = when(
        move || unit().from_si(field.spec().least) < 0.0,
        move || {
            let name = move || text::act_on(text::change_sign(), text::field_label(field));
            button_on("key", "±", name, move || {
                type_text(with_other_sign(&typed.get_untracked()));
            })
        },
    );
    let mark_keys = {
        let id = id.clone();
        when(move || marks.get(), move || marks_row(id.clone(), type_text))
    };
    view! {
        <div class="field" class:bad=bad>
            <label for=id.clone()>
                {text::field_label(field)}
                <span class="unit-said">{live(move || unit_said(&text::in_units(unit().symbol())))}</span>
            </label>
            <p class="note" id=format!("{id}-note")>{text::field_note(field)}</p>
            <p class="error" id=format!("{id}-error")>{live(move || error.get())}</p>
            <div class="box">
                <input
                    id=id.clone()
                    type="text"
                    inputmode=pad
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    aria-describedby=described
                    aria-invalid=words(move || bad.get().to_string())
                    prop:value=words(move || typed.get())
                    on:input=move |event| type_text(event_target_value(&event))
                    on:blur=move |_| {
                        // Also fired while the page goes away, when nothing of its own is left.
                        if app.typed_now(|draft| draft.entry(field).is_some()) {
                            app.mark_left(field);
                        }
                    }
                />
                <span class="unit" aria-hidden="true">
                    {live(move || text::in_units(unit().symbol()))}
                </span>
                {sign}
                <span class="read" class:assumed=assumed id=format!("{id}-read")>{read}</span>
            </div>
            {mark_keys}
        </div>
    }
    .into_any()
}

/// What a field shows of the draft.
#[derive(Clone, PartialEq)]
struct Seen {
    unit: Unit,
    typed: String,
    back: ReadBack,
    /// Whether feet and inches may be typed.
    marks: bool,
}

impl Seen {
    fn of(draft: &Draft, field: Field) -> Self {
        Self {
            unit: draft.box_unit(field),
            typed: box_text(draft, field),
            back: read_back(draft, field),
            marks: field.spec().kind == Kind::Length && draft.units == System::Us,
        }
    }
}

fn read_back_text(back: &ReadBack) -> String {
    match back {
        ReadBack::Nothing => String::new(),
        ReadBack::Echo(text) => text::in_units(text),
        ReadBack::Assumed(text) => text::assumed_value(&text::in_units(text)),
    }
}

/// The unit inside the label, for those who hear it.
fn unit_said(symbol: &str) -> String {
    match symbol.is_empty() {
        true => String::new(),
        false => format!(", {symbol}"),
    }
}

fn with_other_sign(text: &str) -> String {
    let bare = text.trim_start();
    match bare.strip_prefix(['-', '−', '–']) {
        Some(rest) => rest.to_string(),
        None => format!("-{bare}"),
    }
}

/// Keys for feet, inches and fractions, shown under a focused box on a touch screen.
fn marks_row(id: String, type_text: impl Fn(String) + Copy + Send + Sync + 'static) -> AnyView {
    const KEYS: [(&str, &str); 5] =
        [("ft", "' "), ("in", "\""), ("½", " 1/2"), ("¼", " 1/4"), ("¾", " 3/4")];
    let key = move |(shown, mark): (&'static str, &'static str)| {
        let id = id.clone();
        let add = Callback::new(move |()| {
            let Some(input) = document().get_element_by_id(&id) else { return };
            let input: HtmlInputElement = input.unchecked_into();
            type_text(format!("{}{mark}", input.value().trim_end()));
        });
        view! {
            // The focus stays in the box, so that typing goes on behind the mark.
            <button type="button" class="key" tabindex="-1"
                on:pointerdown=|event| event.prevent_default()
                on:click=move |_| add.run(())
            >{text::in_units(shown)}</button>
        }
        .into_any()
    };
    let keys = KEYS.into_iter().map(key).collect_view();
    view! { <div class="marks">{keys}</div> }.into_any()
}

impl crate::state::App {
    /// The error of a field, as a sentence.
    pub(crate) fn error_of(self, field: Field) -> Option<String> {
        let system = self.system();
        let asked = self.asked.with(|asked| asked.contains(&field));
        self.follows(|outcome| {
            let error = outcome.errors.iter().find(|error| error.field == field)?;
            // A blank is an error only once the reader said to be done.
            (asked || error.problem != Problem::Missing).then(|| text::problem(error, system))
        })
    }
}
