//! Work that takes as long as many designs, done in slices between which the page lives.

use crate::parts::live;
use leptos::prelude::*;
use std::time::Duration;

/// How far the work is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Pace {
    /// Nobody asked for it.
    Still,
    Working,
    /// For so long that it has to be said.
    Slow,
    Done,
}

/// What a slice says of the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Slice {
    More,
    Last,
}

/// Does a little each time it is called, well below 50 ms, and keeps what it finds to itself.
pub(crate) type Work = Box<dyn FnMut() -> Slice>;

/// Who types is not disturbed: the work begins when nothing has changed for so long.
const WAIT: Duration = Duration::from_millis(100);
/// One slice after another until the page wants a frame.
const SLICE_MS: f64 = 12.0;
const SLOW_MS: f64 = 200.0;

/// Begins whatever work `begin` gives, anew whenever a signal changes that it follows; what is under way
/// then, or when the page is left, is dropped.
pub(crate) fn in_slices(
    begin: impl Fn() -> Option<Work> + Send + Sync + 'static,
) -> RwSignal<Pace> {
    fn boxed(begin: Box<dyn Fn() -> Option<Work> + Send + Sync>) -> RwSignal<Pace> {
        let pace = RwSignal::new(Pace::Still);
        let turn = StoredValue::new(0_u32);
        Effect::new(move |_| {
            let work = begin();
            let mine = turn.get_value().wrapping_add(1);
            turn.set_value(mine);
            let Some(work) = work else { return pace.set(Pace::Still) };
            pace.set(Pace::Working);
            let since = js_sys::Date::now();
            let task = Task { work, turn, mine, pace, since };
            set_timeout(move || slice(task), WAIT);
        });
        pace
    }
    boxed(Box::new(begin))
}

struct Task {
    work: Work,
    turn: StoredValue<u32>,
    mine: u32,
    pace: RwSignal<Pace>,
    since: f64,
}

fn slice(mut task: Task) {
    // The turn is gone with the page.
    if task.turn.try_get_value() != Some(task.mine) {
        return;
    }
    let begun = js_sys::Date::now();
    loop {
        if (task.work)() == Slice::Last {
            return task.pace.set(Pace::Done);
        }
        let now = js_sys::Date::now();
        if now - task.since > SLOW_MS && task.pace.get_untracked() == Pace::Working {
            task.pace.set(Pace::Slow);
        }
        if now - begun > SLICE_MS {
            break;
        }
    }
    set_timeout(move || slice(task), Duration::ZERO);
}

/// A line that says what is being done once it takes long, with something that turns.
pub(crate) fn pace_said(pace: RwSignal<Pace>, words: &'static str) -> AnyView {
    let said = live(move || match pace.get() {
        Pace::Slow => words.to_string(),
        _ => String::new(),
    });
    let turns = move || if pace.get() == Pace::Slow { "note turns" } else { "note" };
    view! { <p class=turns role="status">{said}</p> }.into_any()
}
