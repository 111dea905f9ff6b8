//! A list to choose from, and a box for a name.

use super::live_view;
use crate::state::{EditKey, use_app};
use finrun_engine::job::Choice;
use finrun_text as text;
use leptos::prelude::*;

/// A list for a place of the job where something is chosen.
pub(crate) fn choice_field(at: Choice) -> AnyView {
    let app = use_app();
    let options = Signal::derive(move || {
        app.typed(|draft| {
            let picks = draft.picks(at);
            picks.into_iter().map(|pick| text::pick(draft, pick)).collect::<Vec<_>>()
        })
    });
    let chosen = Signal::derive(move || {
        app.typed(|draft| {
            let now = draft.picked(at);
            draft.picks(at).into_iter().position(|pick| Some(pick) == now).unwrap_or(0)
        })
    });
    let choose = move |index: usize| {
        app.edit(EditKey::Single, |draft| {
            if let Some(pick) = draft.picks(at).get(index).copied() {
                draft.pick(at, pick);
            }
        });
    };
    choice(at.to_string(), text::choice_label(at), options, chosen, choose)
}

/// A labelled select. `chosen` is an index into `options`.
pub(crate) fn choice(
    id: String,
    label: &'static str,
    options: Signal<Vec<String>>,
    chosen: Signal<usize>,
    on_choose: impl Fn(usize) + Send + Sync + 'static,
) -> AnyView {
    let on_choose = Callback::new(on_choose);
    let list = live_view(move || {
        let chosen = chosen.get();
        let option = |(index, option): (usize, String)| {
            view! { <option value=index.to_string() selected=index == chosen>{option}</option> }
                .into_any()
        };
        options.get().into_iter().enumerate().map(option).collect_view().into_any()
    });
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select
                id=id
                on:change=move |event| {
                    if let Ok(index) = event_target_value(&event).parse() {
                        on_choose.run(index);
                    }
                }
            >
                {list}
            </select>
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
