//! The one field for numbers: label, hint, error, and what was read, tied together for everyone.

use crate::state::use_app;
use finrun_engine::job::{Entry, Field, Problem, Resolved, assumed_text, box_text, echo, resolve};
use finrun_engine::quantity::{Kind, System};
use finrun_text as text;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

#[component]
pub(crate) fn NumberField(field: Field) -> impl IntoView {
    let app = use_app();
    let id = field.to_string();
    let kind = field.spec().kind;
    let unit = Memo::new(move |_| app.draft.with(|draft| draft.box_unit(field)));
    let typed = Memo::new(move |_| app.draft.with(|draft| box_text(draft, field)));
    let error = Memo::new(move |_| {
        // An error shows once the field was left, not while it is being typed.
        let left = app.left.with(|left| left.contains(&field));
        left.then(|| app.error_of(field)).flatten()
    });
    let read = Memo::new(move |_| {
        app.draft.with(|draft| match resolve(draft, field) {
            Resolved::Typed { .. } => Read::Echo(echo(draft, field)),
            Resolved::Assumed { .. } => Read::Assumed(assumed_text(draft, field)),
            _ => Read::Nothing,
        })
    });
    let type_text =
        move |text: String| app.type_into(field, Entry { text, unit: unit.get_untracked() });
    let described = format!("{id}-note {id}-error {id}-read");
    let note = text::field_note(field);
    let signed = Memo::new(move |_| unit.get().from_si(field.spec().least) < 0.0);
    let marks = Memo::new(move |_| kind == Kind::Length && app.system() == System::Us);
    view! {
        <div class="field" class:bad=move || error.with(Option::is_some)>
            <label for=id.clone()>
                {text::field_label(field)}
                <span class="unit-said">{move || unit_said(unit.get().symbol())}</span>
            </label>
            <p class="note" id=format!("{id}-note")>{note}</p>
            <p class="error" id=format!("{id}-error")>
                {move || error.get().unwrap_or_default()}
            </p>
            <div class="box">
                <input
                    id=id.clone()
                    type="text"
                    // The decimal pad of some phones has no marks for feet and inches.
                    inputmode=move || if marks.get() { "text" } else { "decimal" }
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    aria-describedby=described
                    aria-invalid=move || error.with(Option::is_some).to_string()
                    prop:value=move || typed.get()
                    on:input=move |event| type_text(event_target_value(&event))
                    on:blur=move |_| if !typed.get_untracked().trim().is_empty() { app.mark_left(field) }
                />
                <span class="unit" aria-hidden="true">{move || unit.get().symbol()}</span>
                <Show when=move || signed.get()>
                    <button
                        type="button"
                        class="key"
                        aria-label=text::act_on(text::change_sign(), text::field_label(field))
                        on:click=move |_| type_text(with_other_sign(&typed.get_untracked()))
                    >"±"</button>
                </Show>
                <span class="read" id=format!("{id}-read")>
                    {move || match read.get() {
                        Read::Echo(text) => view! { <span class="echo">{text}</span> }.into_any(),
                        Read::Assumed(value) => view! {
                            <span class="assumed">{text::assumed()} " " {value}</span>
                        }.into_any(),
                        Read::Nothing => ().into_any(),
                    }}
                </span>
            </div>
            <Show when=move || marks.get()>
                <Marks id=field.to_string() on_text=Callback::new(type_text)/>
            </Show>
        </div>
    }
    .into_any()
}

/// What stands behind the box.
#[derive(Debug, Clone, PartialEq)]
enum Read {
    Echo(String),
    Assumed(String),
    Nothing,
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
#[component]
fn Marks(id: String, on_text: Callback<String>) -> impl IntoView {
    const KEYS: [(&str, &str); 5] =
        [("ft", "' "), ("in", "\""), ("½", " 1/2"), ("¼", " 1/4"), ("¾", " 3/4")];
    let keys = KEYS.into_iter().map(move |(shown, typed)| {
        let id = id.clone();
        let add = move |_| {
            let Some(input) = document().get_element_by_id(&id) else { return };
            let input: HtmlInputElement = input.unchecked_into();
            on_text.run(format!("{}{typed}", input.value().trim_end()));
            // The focus stayed in the box, so typing goes on behind the mark.
        };
        view! {
            <button
                type="button"
                class="key"
                tabindex="-1"
                on:pointerdown=|event| event.prevent_default()
                on:click=add
            >{shown}</button>
        }
    });
    view! { <div class="marks">{keys.collect_view()}</div> }.into_any()
}

impl crate::state::App {
    /// The error of a field, as a sentence.
    fn error_of(self, field: Field) -> Option<String> {
        let system = self.system();
        let asked = self.asked.with(|asked| asked.contains(&field));
        self.outcome.with(|outcome| {
            let error = outcome.errors.iter().find(|error| error.field == field)?;
            // A blank is an error only once the reader said to be done.
            (asked || error.problem != Problem::Missing).then(|| text::problem(error, system))
        })
    }
}
