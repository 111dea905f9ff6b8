//! Other loops for a zone, suggested while one looks at it, and what the last move of a room changed.

use super::piping::asked;
use crate::markup::{Markup, Row, figures, live_markup};
use crate::parts::{Pace, Slice, Work, button, in_slices, live, pace_said, when};
use crate::state::{App, EditKey, Standing, use_app};
use finrun_engine::arrangement::zone_head;
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::quantity::{Power, System};
use finrun_engine::suggest::{Change, Suggestion, Verdict};
use finrun_text as text;
use leptos::prelude::*;

/// What was found; nothing for a zone without anything to split.
type Found = RwSignal<Option<Verdict>>;

pub(super) fn suggestion(zone: ZoneId) -> AnyView {
    when(asked(zone, |_, of| !of.arrangement.has_branches()), move || block(zone))
}

fn block(zone: ZoneId) -> AnyView {
    let app = use_app();
    let open = RwSignal::new(false);
    let found: Found = RwSignal::new(None);
    let pace = in_slices(move || open.get().then(|| search(app.typed(Draft::clone), zone, found)));
    let done = move || pace.get() == Pace::Done;
    let said = live_markup("", move || match done() {
        true => found.with(|found| app.typed(|draft| told(draft, zone, found.as_ref()))),
        false => String::new(),
    });
    let changes = move || done() && found.with(|found| matches!(found, Some(Verdict::Changes(_))));
    let apply = when(changes, move || {
        let press = move || use_loops(app, zone, found);
        view! { <div class="acts">{button("main-act", text::use_loops(), press)}</div> }.into_any()
    });
    view! {
        <details
            class="more"
            on:toggle=move |event| {
                let details: web_sys::Element = event_target(&event);
                open.set(details.has_attribute("open"));
            }
        >
            <summary>{text::suggest_loops()}</summary>
            <p class="note">{text::suggest_note()}</p>
            {pace_said(pace, text::trying_loops())}
            {said}
            {apply}
        </details>
    }
    .into_any()
}

fn search(draft: Draft, zone: ZoneId, found: Found) -> Work {
    // Made by the first slice.
    let mut made: Option<Suggestion> = None;
    Box::new(move || {
        if let Some(suggestion) = &mut made {
            let Some(verdict) = suggestion.step() else { return Slice::More };
            found.set(Some(verdict));
            return Slice::Last;
        }
        made = Suggestion::begin(&draft, zone);
        if made.is_some() {
            return Slice::More;
        }
        found.set(None);
        Slice::Last
    })
}

fn use_loops(app: App, zone: ZoneId, found: Found) {
    let loops: Option<Vec<Vec<RoomId>>> = found.with_untracked(|found| match found {
        Some(Verdict::Changes(change)) => {
            Some(change.loops.iter().map(|one| one.rooms.clone()).collect())
        }
        _ => None,
    });
    if let Some(loops) = loops {
        let loops: Vec<&[RoomId]> = loops.iter().map(Vec::as_slice).collect();
        app.edit(EditKey::Single, |draft| draft.hang_on_loops(zone, &loops));
        app.say(text::loops_used().to_string());
    }
}

/// What was found, in words and figures.
fn told(draft: &Draft, zone: ZoneId, found: Option<&Verdict>) -> String {
    let system = draft.units;
    let mut markup = Markup::new();
    let key = format!("suggest-{}", zone.0);
    let strong = |markup: &mut Markup, words: &str| {
        markup.open("p", &[]);
        markup.leaf("b", &[("data-figure", &format!("{key}.verdict"))], words);
        markup.close("p");
    };
    match found {
        None => markup.leaf("p", &[], text::no_loops()),
        Some(Verdict::Stays(figures)) => {
            strong(&mut markup, text::loops_stay());
            list(&mut markup, text::what_stays(), &text::troubles(draft, figures));
        }
        Some(Verdict::Changes(change)) => {
            strong(&mut markup, text::gain(change));
            list(&mut markup, text::suggested(), &text::loop_lines(draft, &change.after, system));
            list(&mut markup, text::what_is_wrong(), &text::troubles(draft, &change.before));
            list(&mut markup, text::what_stays(), &text::troubles(draft, &change.after));
            let mut all = markup.done();
            all.push_str(&table(change, &key, system));
            markup = Markup::new();
            markup.leaf("p", &[("class", "note")], text::figures_note());
            list(&mut markup, text::before_piping(), &text::to_measure(draft, change));
            all.push_str(&markup.done());
            return all;
        }
    }
    markup.done()
}

fn list(markup: &mut Markup, head: &str, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    markup.leaf("h3", &[], head);
    markup.open("ul", &[]);
    for line in lines {
        markup.leaf("li", &[], line);
    }
    markup.close("ul");
}

fn table(change: &Change, key: &str, system: System) -> String {
    let rows: Vec<Row> = text::loop_figures(change, system)
        .into_iter()
        .map(|(end, name, [before, after])| Row {
            name: name.to_string(),
            key: format!("{key}.{end}"),
            cells: vec![("before", before), ("after", after)],
        })
        .collect();
    figures(&[text::this_zone(), text::today(), text::suggested()], &rows)
}

/// A draft with what its zones come to, and what they came to before a room was moved.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Watched {
    draft: Draft,
    zones: Vec<(ZoneId, text::Zoned)>,
    before: Option<Vec<(ZoneId, text::Zoned)>>,
}

/// Remembers the figures from before the last move, until something else is changed.
pub(super) fn watch_moves() -> Memo<Watched> {
    let app = use_app();
    Memo::new(move |last: Option<&Watched>| {
        let draft = app.typed(Draft::clone);
        let zones = app.follows(|outcome| match (outcome.solved.as_ref(), outcome.standing) {
            (Some((job, design)), Standing::Current) => zoned(job, design),
            _ => Vec::new(),
        });
        let before = last.and_then(|last| match last.draft == draft {
            true => last.before.clone(),
            false => last.draft.only_moved(&draft).then(|| last.zones.clone()),
        });
        Watched { draft, zones, before }
    })
}

fn zoned(job: &Job, design: &Design) -> Vec<(ZoneId, text::Zoned)> {
    let short = |rooms: &[usize]| {
        let of = rooms.iter().filter_map(|&room| design.rooms.get(room));
        of.filter(|room| room.short() > Power::ZERO).count()
    };
    let one = |of: &finrun_engine::arrangement::ZoneDesign| {
        let zone = job.zones.iter().find(|zone| zone.id == of.zone)?;
        Some((
            of.zone,
            text::Zoned {
                element: of.element,
                head: zone_head(job, design, of.zone),
                back: of.back,
                short: zone.loops.iter().map(|rooms| short(rooms)).sum(),
            },
        ))
    };
    design.piping.zones.iter().filter_map(one).collect()
}

/// What the last move changed in a zone.
pub(super) fn moved_line(zone: ZoneId, watched: Memo<Watched>) -> AnyView {
    let app = use_app();
    let said = live(move || {
        watched.with(|watched| {
            let of = |zones: &[(ZoneId, text::Zoned)]| {
                zones.iter().find(|(id, _)| *id == zone).map(|(_, zoned)| *zoned)
            };
            match (watched.before.as_deref().and_then(of), of(&watched.zones)) {
                (Some(before), Some(after)) => text::moved(&before, &after, app.system()),
                _ => String::new(),
            }
        })
    });
    view! { <p class="note moved" role="status">{said}</p> }.into_any()
}
