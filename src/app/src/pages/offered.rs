//! A job that came with a link: shown first, and kept only when the reader wants it.

use crate::files::fault_text;
use crate::link::{LinkFault, unpacked};
use crate::page::Page;
use crate::parts::{button, foot, live_view};
use crate::state::store::{self, FileFault};
use crate::state::use_app;
use finrun_engine::job::Draft;
use finrun_text as text;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// What became of the link.
#[derive(Debug, Clone)]
enum Offer {
    Unpacking,
    Job(Box<Draft>),
    Nothing(String),
}

pub(super) fn offered(packed: String) -> AnyView {
    let offer = RwSignal::new(Offer::Unpacking);
    spawn_local(async move {
        let found = match unpacked(&packed).await {
            Ok(file) => store::parse(&file).map_err(|fault| fault_text(&fault)),
            Err(LinkFault::Damaged) => Err(text::link_damaged().to_string()),
            Err(LinkFault::TooLarge) => Err(fault_text(&FileFault::TooLarge)),
        };
        // The signal is gone when the page was left meanwhile.
        let _ = offer.try_set(match found {
            Ok(draft) => Offer::Job(Box::new(draft)),
            Err(why) => Offer::Nothing(why),
        });
    });
    let shown = live_view(move || match offer.get() {
        Offer::Unpacking => view! { <p role="status">{text::unpacking()}</p> }.into_any(),
        Offer::Nothing(why) => view! { <p class="banner loud" role="alert">{why}</p> }.into_any(),
        Offer::Job(draft) => preview(*draft),
    });
    view! {
        <header class="top start">
            <p class="job">{text::app_name()}</p>
        </header>
        <main id="content" tabindex="-1" class="start">
            <h1>{text::offered_title()}</h1>
            {shown}
            <p><a class="act" href=Page::Jobs.to_hash()>{text::to_the_jobs()}</a></p>
            {foot()}
        </main>
    }
    .into_any()
}

fn preview(draft: Draft) -> AnyView {
    let app = use_app();
    let facts = text::offered_facts(&draft);
    let same = app.shelf.with_untracked(|shelf| {
        shelf.jobs.iter().any(|listed| listed.name.as_ref() == Ok(&draft.name))
    });
    let draft = StoredValue::new(draft);
    view! {
        <p>{text::offered_note()}</p>
        <h2>{draft.with_value(|draft| draft.name.clone())}</h2>
        <p>{facts}</p>
        {same.then(|| view! { <p class="note">{text::offered_same_name()}</p> })}
        <div class="acts">{button("main-act", text::keep_offered(), move || app.add_job(draft.get_value()))}</div>
    }
    .into_any()
}
