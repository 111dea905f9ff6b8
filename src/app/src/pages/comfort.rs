//! What would leave rooms less cold or less warm through the year, tried while one looks at it, each to be
//! made by a tap.

use super::season::open_scroll;
use crate::markup::{Markup, Row, figures, still_markup};
use crate::parts::{Pace, Slice, Work, button_on, in_slices, live_view, pace_said, when};
use crate::state::{App, EditKey, Solved, use_app};
use finrun_engine::comfort::{Comfort, Relief, Reliefs, Step};
use finrun_engine::job::Draft;
use finrun_text as text;
use leptos::prelude::*;

/// What was found so far of a draft, and how its year is as it stands.
#[derive(Debug, Clone, PartialEq)]
struct Found {
    of: Draft,
    before: Comfort,
    all: Vec<Relief>,
}

pub(super) fn comfort() -> AnyView {
    let app = use_app();
    let found: RwSignal<Option<Found>> = RwSignal::new(None);
    let pace = in_slices(move || {
        let draft = app.typed(Draft::clone);
        found.set(None);
        let (job, design) = app.design(Solved::clone)?;
        draft.station.as_ref()?;
        job.control.as_ref()?;
        let mut reliefs = None;
        let mut begun = false;
        let work: Work = Box::new(move || {
            if !begun {
                begun = true;
                reliefs = Reliefs::begin(&draft, &job, &design);
                let before = reliefs.as_ref().map(Reliefs::before);
                let of = draft.clone();
                found.set(before.map(|before| Found { of, before, all: Vec::new() }));
                return Slice::More;
            }
            match reliefs.as_mut().map(Reliefs::step) {
                None | Some(Step::Done) => Slice::Last,
                Some(Step::Working) => Slice::More,
                Some(Step::Found(relief)) => {
                    found.update(|found| {
                        if let Some(found) = found {
                            found.all.push(*relief);
                        }
                    });
                    Slice::More
                }
            }
        });
        Some(work)
    });
    // Without a solved year there is nothing to better.
    let begun = move || found.with(Option::is_some);
    when(begun, move || {
        view! {
            <section class="reliefs">
                <h2>{text::comfort_title()}</h2>
                <p class="note">{text::comfort_note()}</p>
                {pace_said(pace, text::comfort_working())}
                {live_view(move || list(app, pace.get(), found.get()))}
            </section>
        }
        .into_any()
    })
}

fn list(app: App, pace: Pace, found: Option<Found>) -> AnyView {
    match found {
        None => ().into_any(),
        Some(found) if !found.all.is_empty() => {
            let one = |nth: usize| card(app, &found, nth);
            (0..found.all.len()).map(one).collect_view().into_any()
        }
        Some(_) if pace == Pace::Done => {
            view! { <p data-figure="comfort">{text::comfort_nothing()}</p> }.into_any()
        }
        Some(_) => ().into_any(),
    }
}

fn card(app: App, found: &Found, nth: usize) -> AnyView {
    let Some(relief) = found.all.get(nth).cloned() else { return ().into_any() };
    let title = text::comfort_change(&found.of, relief.change);
    let rows: Vec<Row> = text::comfort_figures(&found.of, &found.before, &relief.after)
        .into_iter()
        .map(|(end, name, [before, after])| Row {
            name: name.to_string(),
            key: format!("comfort-{nth}.{end}"),
            cells: vec![("before", before), ("after", after)],
        })
        .collect();
    let heads = [text::this_house(), text::comfort_now(), text::comfort_then()];
    let mut boxed = Markup::new();
    open_scroll(&mut boxed, &title);
    boxed.put(&figures(&heads, &rows));
    boxed.close("div");
    let boxed = boxed.done();
    let of = found.of.clone();
    let make = move || {
        let (of, after) = (of.clone(), relief.draft.clone());
        app.edit(EditKey::Single, |draft| {
            // What was found is of this draft and of no other.
            if *draft == of {
                *draft = after;
            }
        });
    };
    let name = title.clone();
    let said = move || format!("{}: {name}", text::make_change());
    view! {
        <section class="relief">
            <h3 data-figure=format!("comfort-{nth}")>{title}</h3>
            {still_markup("", boxed)}
            <div class="acts">{button_on("", text::make_change(), said, make)}</div>
        </section>
    }
    .into_any()
}
