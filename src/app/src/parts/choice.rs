//! A list to choose from, and a box for a name.

use leptos::prelude::*;

/// A labelled select. `chosen` is an index into `options`.
#[component]
pub(crate) fn Choice(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    #[prop(into)] options: Signal<Vec<String>>,
    #[prop(into)] chosen: Signal<usize>,
    #[prop(into)] on_choose: Callback<usize>,
) -> impl IntoView {
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
                {move || {
                    let chosen = chosen.get();
                    options
                        .get()
                        .into_iter()
                        .enumerate()
                        .map(|(index, option)| view! {
                            <option value=index.to_string() selected=index == chosen>{option}</option>
                        })
                        .collect_view()
                }}
            </select>
        </div>
    }
    .into_any()
}

/// A labelled box for a name.
#[component]
pub(crate) fn TextBox(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    #[prop(into)] value: Signal<String>,
    #[prop(into)] on_text: Callback<String>,
) -> impl IntoView {
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                id=id
                class="name"
                type="text"
                autocomplete="off"
                maxlength="200"
                prop:value=move || value.get()
                on:input=move |event| on_text.run(event_target_value(&event))
            />
        </div>
    }
    .into_any()
}
