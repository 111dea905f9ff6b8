//! A list to choose from, and a box for a name.

use super::live_view;
use leptos::prelude::*;

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
