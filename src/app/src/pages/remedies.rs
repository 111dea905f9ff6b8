//! Ways out for rooms that are short, worked out a step at a time after the page stands.

use crate::markup::Markup;
use crate::parts::live;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::{Power, System};
use finrun_engine::remedy::{Remedies, Step, Worked};
use finrun_text as text;
use leptos::prelude::*;
use std::time::Duration;

/// What has been found so far. It is gone, and the work ends, with the view that it was begun in.
#[derive(Debug, Clone, Copy)]
pub(super) struct WorkedOut {
    found: RwSignal<Vec<Worked>>,
    busy: RwSignal<bool>,
    work: StoredValue<Option<Remedies>>,
}

/// Who is typing is left alone so long; what takes longer than this is said to be going on.
const WAIT: Duration = Duration::from_millis(200);

/// Begins the work, if a room is short.
pub(super) fn work_out(job: &Job, design: &Design) -> WorkedOut {
    let short = design.rooms.iter().any(|room| room.short() > Power::ZERO);
    let worked = WorkedOut {
        found: RwSignal::new(Vec::new()),
        busy: RwSignal::new(false),
        work: StoredValue::new(short.then(|| Remedies::new(job, design))),
    };
    if short {
        set_timeout(move || worked.tick(), WAIT);
    }
    worked
}

impl WorkedOut {
    pub(super) fn seen(self, look: impl FnOnce(&[Worked])) {
        self.found.with(|found| look(found));
    }

    fn tick(self) {
        // Nothing once the page was left or the job changed: the values went with the view.
        let step = self.work.try_update_value(|work| work.as_mut().map(Remedies::step));
        match step.flatten() {
            None => return,
            Some(Step::Done) => {
                self.busy.set(false);
                return;
            }
            Some(Step::Found(worked)) => self.found.update(|found| worked.insert_into(found)),
            Some(Step::Working) => {}
        }
        if !self.busy.get_untracked() {
            self.busy.set(true);
        }
        set_timeout(move || self.tick(), Duration::ZERO);
    }
}

/// A line that says so while there is something to wait for.
pub(super) fn busy(worked: WorkedOut) -> AnyView {
    let said = live(move || match worked.busy.get() {
        true => text::working_out().to_string(),
        false => String::new(),
    });
    let turns = move || if worked.busy.get() { "note turns" } else { "note" };
    view! { <p class=turns role="status">{said}</p> }.into_any()
}

/// The ways out of one room, each a list's item.
pub(super) fn list(markup: &mut Markup, found: &[&Worked], draft: &Draft, system: System) {
    for (nth, worked) in found.iter().enumerate() {
        let name = format!("room-{}.way-{nth}", worked.room.0);
        markup.leaf("li", &[("data-figure", &name)], &text::worked(worked, draft, system));
    }
}
