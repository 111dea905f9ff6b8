//! Ways out for rooms that are short, worked out a step at a time after the page stands.

use crate::markup::Markup;
use crate::parts::{Pace, Slice, Work, in_slices, pace_said};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::{Power, System};
use finrun_engine::remedy::{Remedies, Step, Worked};
use finrun_text as text;
use leptos::prelude::*;

/// What has been found so far. It is gone, and the work ends, with the view that it was begun in.
#[derive(Debug, Clone, Copy)]
pub(super) struct WorkedOut {
    found: RwSignal<Vec<Worked>>,
    pace: RwSignal<Pace>,
}

/// Begins the work, if a room is short.
pub(super) fn work_out(job: &Job, design: &Design) -> WorkedOut {
    let short = design.rooms.iter().any(|room| room.short() > Power::ZERO);
    let found = RwSignal::new(Vec::new());
    let work = StoredValue::new(short.then(|| Remedies::new(job, design)));
    let pace = in_slices(move || {
        let mut remedies = work.try_update_value(Option::take).flatten()?;
        let work: Work = Box::new(move || match remedies.step() {
            Step::Done => Slice::Last,
            Step::Found(worked) => {
                found.update(|found| worked.insert_into(found));
                Slice::More
            }
            Step::Working => Slice::More,
        });
        Some(work)
    });
    WorkedOut { found, pace }
}

impl WorkedOut {
    pub(super) fn seen(self, look: impl FnOnce(&[Worked])) {
        self.found.with(|found| look(found));
    }
}

/// A line that says so while there is something to wait for.
pub(super) fn busy(worked: WorkedOut) -> AnyView {
    pace_said(worked.pace, text::working_out())
}

/// The ways out of one room, each a list's item.
pub(super) fn list(markup: &mut Markup, found: &[&Worked], draft: &Draft, system: System) {
    for (nth, worked) in found.iter().enumerate() {
        let name = format!("room-{}.way-{nth}", worked.room.0);
        markup.leaf("li", &[("data-figure", &name)], &text::worked(worked, draft, system));
    }
}
