//! What changes while it is looked at, each kind compiled once.
//!
//! Leptos makes code anew for every closure in a view; boxing them here keeps the download small.
//! For the same reason the page is made of plain functions that return a view.

use leptos::prelude::*;
use std::sync::Arc;

/// A text that follows signals.
pub(crate) fn live(text: impl Fn() -> String + Send + Sync + 'static) -> AnyView {
    fn boxed(text: Box<dyn Fn() -> String + Send + Sync>) -> AnyView {
        (move || text()).into_any()
    }
    boxed(Box::new(text))
}

/// A view that follows signals; it is made anew when they change.
pub(crate) fn live_view(view: impl Fn() -> AnyView + Send + Sync + 'static) -> AnyView {
    fn boxed(view: Box<dyn Fn() -> AnyView + Send + Sync>) -> AnyView {
        (move || view()).into_any()
    }
    boxed(Box::new(view))
}

/// A view that is there while a condition holds; made anew only when that changes.
pub(crate) fn when(
    condition: impl Fn() -> bool + Send + Sync + 'static,
    view: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let holds = yes(condition);
    live_view(move || if holds.get() { view() } else { ().into_any() })
}

/// A condition that tells its readers only of changes.
pub(crate) fn yes(condition: impl Fn() -> bool + Send + Sync + 'static) -> Memo<bool> {
    fn boxed(condition: Box<dyn Fn() -> bool + Send + Sync>) -> Memo<bool> {
        Memo::new(move |_| condition())
    }
    boxed(Box::new(condition))
}

/// A text that tells its readers only of changes.
pub(crate) fn kept(text: impl Fn() -> String + Send + Sync + 'static) -> Memo<String> {
    fn boxed(text: Box<dyn Fn() -> String + Send + Sync>) -> Memo<String> {
        Memo::new(move |_| text())
    }
    boxed(Box::new(text))
}

/// A value that is worked out whenever what it follows changes, and tells its readers only when it came
/// out different. Readers of a memo are all asked first; a page has hundreds of them, and most of what
/// they show stays as it is at a key.
pub(crate) fn pushed<T: PartialEq + Send + Sync + 'static>(
    value: impl Fn() -> T + Send + Sync + 'static,
) -> RwSignal<T> {
    let signal = RwSignal::new(untrack(&value));
    Effect::new(move |_| {
        let now = value();
        signal.maybe_update(|known| {
            let differs = *known != now;
            *known = now;
            differs
        });
    });
    signal
}

/// One view for each number of a list; those that stay are kept as they are, with their focus.
pub(crate) fn each(
    numbers: impl Fn() -> Vec<u32> + Send + Sync + 'static,
    view: impl Fn(u32) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    fn boxed(
        numbers: Box<dyn Fn() -> Vec<u32> + Send + Sync>,
        view: Arc<dyn Fn(u32) -> AnyView + Send + Sync>,
    ) -> AnyView {
        let numbers = Memo::new(move |_| numbers());
        For(ForProps::builder()
            .each(move || numbers.get())
            .key(|number| *number)
            .children(move |number| view(number))
            .build())
        .into_any()
    }
    boxed(Box::new(numbers), Arc::new(view))
}

/// A text signal from a closure.
pub(crate) fn words(text: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    fn boxed(text: Box<dyn Fn() -> String + Send + Sync>) -> Signal<String> {
        Signal::derive(text)
    }
    boxed(Box::new(text))
}

/// A button that says what it does.
pub(crate) fn button(
    class: &'static str,
    label: &str,
    press: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    pressed(class, label.to_string().into_any(), None, Callback::new(move |()| press()))
}

/// A button that acts on one of many: `name` says on which to those who cannot see it.
pub(crate) fn button_on(
    class: &'static str,
    label: &str,
    name: impl Fn() -> String + Send + Sync + 'static,
    press: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    let label = label.to_string().into_any();
    pressed(class, label, Some(words(name)), Callback::new(move |()| press()))
}

/// A button whose label follows signals.
pub(crate) fn live_button(
    class: &'static str,
    label: AnyView,
    press: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    pressed(class, label, None, Callback::new(move |()| press()))
}

fn pressed(
    class: &'static str,
    label: AnyView,
    name: Option<Signal<String>>,
    press: Callback<()>,
) -> AnyView {
    view! {
        <button type="button" class=class aria-label=name on:click=move |_| press.run(())>
            {label}
        </button>
    }
    .into_any()
}
