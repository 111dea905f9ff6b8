//! A list to choose from, and a box for a name.

use super::{kept, live, pushed, words, yes};
use crate::markup::Markup;
use crate::state::{App, EditKey, use_app};
use finrun_engine::job::{ChangeField, Choice, Field, OpeningField, Problem, SurfaceField};
use finrun_text as text;
use leptos::prelude::*;

/// A list for a place of the job where something is chosen.
pub(crate) fn choice_field(at: Choice) -> AnyView {
    let app = use_app();
    let offered = move || {
        app.typed(|draft| {
            let picks = draft.picks(at);
            let now = draft.picked(at);
            let chosen = picks.iter().position(|pick| Some(*pick) == now).unwrap_or(0);
            let options = picks.into_iter().map(|pick| text::pick(draft, pick)).collect();
            (options, chosen)
        })
    };
    let choose = move |index: usize| {
        app.edit(EditKey::Single, |draft| {
            if let Some(pick) = draft.picks(at).get(index).copied() {
                draft.pick(at, pick);
            }
        });
    };
    let error = kept(move || app.error_of_choice(at).unwrap_or_default());
    let choose = Callback::new(choose);
    list(at.to_string(), text::choice_label(at), Box::new(offered), choose, error)
}

impl App {
    /// What is wrong with something chosen: it led to a thing that is gone, or to itself.
    fn error_of_choice(self, at: Choice) -> Option<String> {
        let field = match at {
            Choice::Behind(room, surface) => Field::Surface(room, surface, SurfaceField::Behind),
            Choice::SurfaceBuild(room, surface) => Field::Surface(room, surface, SurfaceField::U),
            Choice::OpeningBuild(room, surface, opening) => {
                Field::Opening(room, surface, opening, OpeningField::U)
            }
            Choice::ChangeWhose(id) => Field::Change(id, ChangeField::Whose),
            Choice::ChangeBuild(id) => Field::Change(id, ChangeField::U),
            _ => return None,
        };
        let system = self.system();
        self.follows(|outcome| {
            let error = outcome.errors.iter().find(|error| error.field == field)?;
            let chosen = matches!(
                error.problem,
                Problem::BehindItself
                    | Problem::NeighbourGone
                    | Problem::AssemblyGone
                    | Problem::RoomGone
            );
            chosen.then(|| text::problem(error, system))
        })
    }
}

/// A labelled select. `chosen` is an index into `options`.
pub(crate) fn choice(
    id: String,
    label: &'static str,
    options: Signal<Vec<String>>,
    chosen: Signal<usize>,
    on_choose: impl Fn(usize) + Send + Sync + 'static,
) -> AnyView {
    let offered = move || (options.get(), chosen.get());
    list(id, label, Box::new(offered), Callback::new(on_choose), kept(String::new))
}

/// `offered` tells the options and which of them is chosen.
fn list(
    id: String,
    label: &'static str,
    offered: Box<dyn Fn() -> (Vec<String>, usize) + Send + Sync>,
    on_choose: Callback<usize>,
    error: Memo<String>,
) -> AnyView {
    let bad = yes(move || error.with(|error| !error.is_empty()));
    let described = format!("{id}-error");
    // Markup, set only when it changes: a room has some hundred options, and a key in any of its fields
    // would touch them all.
    let listed = pushed(move || {
        let (options, chosen) = offered();
        let mut markup = Markup::new();
        for (index, option) in options.iter().enumerate() {
            let number = index.to_string();
            let mut attributes = vec![("value", number.as_str())];
            if index == chosen {
                attributes.push(("selected", ""));
            }
            markup.leaf("option", &attributes, option);
        }
        markup.done()
    });
    view! {
        <div class="field" class:bad=bad>
            <label for=id.clone()>{label}</label>
            <p class="error" id=described.clone()>{live(move || error.get())}</p>
            <select
                id=id
                aria-describedby=described
                aria-invalid=words(move || bad.get().to_string())
                on:change=move |event| {
                    if let Ok(index) = event_target_value(&event).parse() {
                        on_choose.run(index);
                    }
                }
                inner_html=words(move || listed.get())
            ></select>
        </div>
    }
    .into_any()
}

/// A labelled box for a name.
pub(crate) fn text_box(
    id: String,
    label: &'static str,
    value: Signal<String>,
    on_text: impl Fn(String) + Send + Sync + 'static,
) -> AnyView {
    let on_text = Callback::new(on_text);
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                id=id
                class="name"
                type="text"
                autocomplete="off"
                maxlength="200"
                prop:value=value
                on:input=move |event| on_text.run(event_target_value(&event))
            />
        </div>
    }
    .into_any()
}
