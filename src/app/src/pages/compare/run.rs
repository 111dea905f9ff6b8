//! The comparison under way: a row each moment, so that the page stays alive.

use crate::state::App;
use finrun_engine::compare::{Arranged, Comparison, Layout, layouts};
use finrun_text as text;
use leptos::prelude::*;
use std::time::Duration;

/// Sooner than this nobody has to be told to wait.
const SLOW: Duration = Duration::from_millis(200);

/// Rows as they come. After a change the rows of before stay, marked, until theirs come anew.
#[derive(Debug, Clone, Copy)]
pub(super) struct Running {
    rows: RwSignal<Vec<Arranged>>,
    layouts: RwSignal<Vec<Layout>>,
    /// How many rows are of the draft of now.
    done: RwSignal<usize>,
    slow: RwSignal<bool>,
    work: StoredValue<Work>,
}

#[derive(Debug, Default)]
struct Work {
    comparison: Option<Comparison>,
    timers: Vec<TimeoutHandle>,
}

impl Work {
    fn stop(&mut self) {
        self.comparison = None;
        for timer in self.timers.drain(..) {
            timer.clear();
        }
    }
}

impl Running {
    /// Begins, and begins again whenever the draft changes, until the page is left.
    pub(super) fn start(app: App) -> Running {
        let running = Running {
            rows: RwSignal::new(Vec::new()),
            layouts: RwSignal::new(Vec::new()),
            done: RwSignal::new(0),
            slow: RwSignal::new(false),
            work: StoredValue::new(Work::default()),
        };
        Effect::new(move |_| {
            let (comparison, layouts) = app.typed(|draft| (Comparison::of(draft), layouts(draft)));
            running.begin(comparison, layouts);
        });
        on_cleanup(move || running.work.update_value(Work::stop));
        running
    }

    fn begin(self, comparison: Comparison, layouts: Vec<Layout>) {
        self.work.update_value(Work::stop);
        self.rows.update(|rows| rows.retain(|row| layouts.contains(&row.layout)));
        self.layouts.set(layouts);
        self.done.set(0);
        self.slow.set(false);
        self.work.update_value(|work| work.comparison = Some(comparison));
        self.after(SLOW, move || self.slow.set(true));
        self.after(Duration::ZERO, move || self.step());
    }

    fn after(self, wait: Duration, act: impl FnOnce() + 'static) {
        if let Ok(timer) = set_timeout_with_handle(act, wait) {
            self.work.update_value(|work| work.timers.push(timer));
        }
    }

    fn step(self) {
        let next = self.work.try_update_value(|work| work.comparison.as_mut()?.step()).flatten();
        let Some(row) = next else {
            // All are done; or the draft is no whole job, and its rows of before are of another one.
            self.work.update_value(Work::stop);
            let done = self.done.get_untracked();
            self.rows.update(|rows| rows.truncate(done));
            self.layouts.update(|layouts| layouts.truncate(done));
            return;
        };
        // Rows of now come before those of an earlier draft.
        let place = self.done.get_untracked();
        self.rows.update(|rows| {
            rows.retain(|old| old.layout != row.layout);
            rows.insert(place.min(rows.len()), row);
        });
        self.done.update(|done| *done += 1);
        self.after(Duration::ZERO, move || self.step());
    }

    pub(super) fn rows<T>(self, look: impl FnOnce(&[Arranged]) -> T) -> T {
        self.rows.with(|rows| look(rows))
    }

    pub(super) fn is_empty(self) -> bool {
        self.layouts.with(Vec::is_empty)
    }

    /// Whether a row is still that of an earlier draft.
    pub(super) fn is_stale(self, layout: Layout) -> bool {
        let done = self.done.get();
        self.layouts.with(|layouts| !layouts.iter().take(done).any(|other| *other == layout))
    }

    /// What is being done, once it takes long.
    pub(super) fn status(self) -> String {
        let (done, all) = (self.done.get(), self.layouts.with(Vec::len));
        match self.slow.get() && done < all {
            true => text::working_on(done, all),
            false => String::new(),
        }
    }
}
