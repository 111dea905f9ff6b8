//! What a page shows of the solved job once it has been worked out, in slices beside the typing.

use super::section;
use crate::markup::live_markup;
use crate::page::{JobKey, Section};
use crate::parts::{Slice, Work, in_slices, live_view, pace_said, yes};
use crate::state::{Solved, use_app};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::season::NoSeason;
use finrun_text as text;
use leptos::prelude::*;

/// A job as it stood when the work began.
pub(super) struct Seen {
    pub(super) draft: Draft,
    pub(super) job: Job,
    pub(super) design: Design,
}

/// Goes on each time it is called, and gives what is shown, as markup, once it is worked out.
pub(super) type Steps = Box<dyn FnMut() -> Option<Result<String, NoSeason>>>;

/// What is worked out, on a page of its own below its note and its settings. While it waits for a job, a
/// station or a field, it says so.
pub(super) fn page_of(
    job: &JobKey,
    of: Section,
    note: &'static str,
    settings: AnyView,
    working: &'static str,
    begin: fn(Seen) -> Steps,
    below: AnyView,
) -> AnyView {
    let app = use_app();
    let found = RwSignal::new(String::new());
    // What stands there is of an earlier job.
    let stale = RwSignal::new(false);
    let wants_station = of != Section::DesignDay;
    let pace = in_slices(move || {
        let draft = app.typed(Draft::clone);
        stale.set(true);
        let (job, design) = app.design(Solved::clone)?;
        let missing = missing(&draft, &job, wants_station);
        let seen = Seen { draft, job, design };
        if let Some(words) = missing {
            found.set(words);
            stale.set(false);
            return None;
        }
        let mut steps = begin(seen);
        let work: Work = Box::new(move || match steps() {
            None => Slice::More,
            Some(said) => {
                found.set(said.unwrap_or_else(|why| told(text::no_season(why))));
                stale.set(false);
                Slice::Last
            }
        });
        Some(work)
    });
    let solved = yes(move || app.design(|solved| solved.is_some()));
    let results = live_view(move || match solved.get() {
        true => {
            let class = move || if stale.get() { "stale" } else { "" };
            view! { <div class=class>{live_markup("worked-out", move || found.get())}</div> }
                .into_any()
        }
        false => view! { <p>{text::no_loop_yet()}</p> }.into_any(),
    });
    let inside = view! {
        <p class="note">{note}</p>
        {settings}
        {pace_said(pace, working)}
        {results}
        {below}
    }
    .into_any();
    section(job, of, inside)
}

/// What is lacking, in words.
fn missing(draft: &Draft, job: &Job, wants_station: bool) -> Option<String> {
    if job.control.is_none() {
        return Some(told(text::season_cannot_read()));
    }
    (wants_station && draft.station.is_none()).then(|| told(text::season_needs_station()))
}

fn told(words: &str) -> String {
    let mut markup = crate::markup::Markup::new();
    markup.leaf("p", &[("data-figure", "worked-out")], words);
    markup.done()
}
