//! The installation: the steps of this job, phase by phase, ticked and noted on site.

use super::section;
use crate::markup::{Markup, still_markup};
use crate::page::{JobKey, Section};
use crate::parts::{kept, live, live_view, text_box, when, words, yes};
use crate::state::{App, EditKey, Noted, use_app};
use finrun_engine::install::{Phase, Step, steps};
use finrun_engine::job::{Done, Draft, StepDraft};
use finrun_text as text;
use leptos::prelude::*;
use std::sync::Arc;
use web_sys::HtmlInputElement;

pub(super) fn install(job: &JobKey) -> AnyView {
    let app = use_app();
    let list = live_view(move || {
        let steps = app.design(|solved| match solved {
            Some((job, design)) => steps(job, design),
            None => Vec::new(),
        });
        match steps.is_empty() {
            true => view! { <p>{text::no_steps_yet()}</p> }.into_any(),
            false => phases(steps),
        }
    });
    let inside = view! { <p class="note">{text::install_note()}</p> {list} }.into_any();
    section(job, Section::Install, inside)
}

fn phases(steps: Vec<Step>) -> AnyView {
    let ids: Vec<String> = steps.iter().map(Step::id).collect();
    let mut phases: Vec<(Phase, Vec<Step>)> = Vec::new();
    for step in steps {
        let phase = step.task.phase();
        match phases.last_mut() {
            Some((last, list)) if *last == phase => list.push(step),
            _ => phases.push((phase, vec![step])),
        }
    }
    let phases = phases.into_iter().map(|(of, steps)| phase(of, steps)).collect_view();
    view! {
        <p class="verdict" data-figure="install.done">{done_line(ids)}</p>
        {phases}
    }
    .into_any()
}

/// How many of these steps are done, while they are ticked.
fn done_line(ids: Vec<String>) -> AnyView {
    let app = use_app();
    live(move || app.typed(|draft| text::steps_done(done(draft, &ids), ids.len())))
}

fn done(draft: &Draft, ids: &[String]) -> usize {
    ids.iter().filter(|id| draft.progress.is_done(id)).count()
}

fn phase(of: Phase, steps: Vec<Step>) -> AnyView {
    let mut heeds = Markup::new();
    let mut heeded = Vec::new();
    for danger in steps.iter().filter_map(|step| step.task.danger()) {
        if !heeded.contains(&danger) {
            heeds.leaf("p", &[], text::danger(danger));
            heeded.push(danger);
        }
    }
    let heeds = heeds.done();
    let heeds = (!heeds.is_empty()).then(|| still_markup("heed", heeds));
    let ids: Vec<String> = steps.iter().map(Step::id).collect();
    let mut kind = "";
    let mut items = Vec::new();
    for step in steps {
        // Said once for all rooms.
        let how = match step.task.name() == kind {
            true => Says::Numbers,
            false => Says::How,
        };
        kind = step.task.name();
        items.push(one_step(step, how));
    }
    view! {
        <section class="phase">
            <h2>{text::phase(of)} " " <small>{done_line(ids)}</small></h2>
            {heeds}
            <ul class="steps">{items}</ul>
        </section>
    }
    .into_any()
}

/// What stands below a step's title.
#[derive(Clone, Copy)]
enum Says {
    How,
    /// Only its own: how it is done stands at one before.
    Numbers,
}

fn one_step(step: Step, says: Says) -> AnyView {
    let app = use_app();
    let id: Arc<str> = step.id().into();
    let step = Arc::new(step);
    let title = {
        let step = step.clone();
        kept(move || app.typed(|draft| text::step_title(draft, &step)))
    };
    let how = kept(move || {
        app.typed(|draft| {
            let mut said = text::step_numbers(draft, &step, draft.units);
            if let Says::How = says {
                if !said.is_empty() {
                    said.push(' ');
                }
                said.push_str(&text::step_how(&step, draft.units));
            }
            said
        })
    });
    let ticked = {
        let id = id.clone();
        yes(move || app.typed(|draft| draft.progress.is_done(&id)))
    };
    let tick = {
        let id = id.clone();
        Callback::new(move |done: Done| app.tick(&id, done))
    };
    let open = RwSignal::new(false);
    let boxes = {
        let id = id.clone();
        when(move || open.get(), move || boxes(&id))
    };
    let said = {
        let id = id.clone();
        kept(move || app.typed(|draft| draft.progress.step(&id).map(noted).unwrap_or_default()))
    };
    let name = words(move || format!("{}: {}", text::step_more(), title.get()));
    view! {
        <li class:done=ticked>
            <label class="site-tick">
                <input
                    type="checkbox"
                    id=id.to_string()
                    prop:checked=ticked
                    on:change=move |event| {
                        let input: HtmlInputElement = event_target(&event);
                        tick.run(if input.checked() { Done::Done } else { Done::Open });
                    }
                />
                <b>{live(move || title.get())}</b>
            </label>
            <p class="how">{live(move || how.get())}</p>
            <p class="noted">{live(move || said.get())}</p>
            <details
                class="more"
                on:toggle=move |event| {
                    let details: web_sys::Element = event_target(&event);
                    open.set(details.has_attribute("open"));
                }
            >
                <summary aria-label=name>{text::step_more()}</summary>
                {boxes}
            </details>
        </li>
    }
    .into_any()
}

/// What is noted, in one line.
fn noted(step: &StepDraft) -> String {
    let photo = match step.photo.trim() {
        "" => String::new(),
        photo => text::photo_number(photo),
    };
    let parts = [step.date.trim(), &photo, step.note.trim()];
    parts.iter().filter(|part| !part.is_empty()).copied().collect::<Vec<_>>().join(" · ")
}

fn boxes(id: &Arc<str>) -> AnyView {
    let one = |which: Noted| note_box(id.clone(), which);
    view! { {one(Noted::Note)} <div class="pair">{one(Noted::Photo)} {one(Noted::Date)}</div> }
        .into_any()
}

fn note_box(id: Arc<str>, which: Noted) -> AnyView {
    let app = use_app();
    let (end, label) = match which {
        Noted::Note => ("note", text::step_note()),
        Noted::Photo => ("photo", text::step_photo()),
        Noted::Date => ("date", text::step_date()),
    };
    let element = format!("{id}.{end}");
    let value = {
        let id = id.clone();
        words(move || {
            app.typed(|draft| {
                let step = draft.progress.step(&id).cloned();
                step.map(|mut step| std::mem::take(part(&mut step, which))).unwrap_or_default()
            })
        })
    };
    let set = Callback::new(move |text: String| app.note(&id, which, text));
    match which {
        Noted::Note | Noted::Photo => text_box(element, label, value, move |text| set.run(text)),
        Noted::Date => view! {
            <div class="field">
                <label for=element.clone()>{label}</label>
                <input
                    id=element
                    class="name"
                    type="date"
                    prop:value=value
                    on:input=move |event| {
                        // Half a date has no text, and writing that back would empty the whole box.
                        if event_target::<HtmlInputElement>(&event).check_validity() {
                            set.run(event_target_value(&event));
                        }
                    }
                />
            </div>
        }
        .into_any(),
    }
}

fn part(step: &mut StepDraft, which: Noted) -> &mut String {
    match which {
        Noted::Note => &mut step.note,
        Noted::Photo => &mut step.photo,
        Noted::Date => &mut step.date,
    }
}

impl App {
    /// How far the work is, for the list of pages.
    pub(super) fn install_fact(self) -> String {
        let ids: Vec<String> = self.design(|solved| match solved {
            Some((job, design)) => steps(job, design).iter().map(Step::id).collect(),
            None => Vec::new(),
        });
        match ids.len() {
            0 => String::new(),
            all => self.typed(|draft| text::steps_done(done(draft, &ids), all)),
        }
    }

    /// Ticks a step, on the day of today unless another is noted already.
    fn tick(self, id: &str, done: Done) {
        self.edit(EditKey::Single, |draft| {
            draft.note_step(id, &mut |step| {
                step.done = done;
                if done == Done::Done && step.date.is_empty() {
                    step.date = today();
                }
            });
        });
    }

    fn note(self, id: &str, which: Noted, text: String) {
        let place = self.typed_now(|draft| {
            let steps = &draft.progress.steps;
            steps.iter().position(|step| step.step == id).unwrap_or(steps.len())
        });
        self.edit(EditKey::Step(place, which), |draft| {
            draft.note_step(id, &mut |step| part(step, which).clone_from(&text));
        });
    }
}

/// The day by the reader's clock, such as "2026-03-01".
pub(super) fn today() -> String {
    let now = js_sys::Date::new_0();
    format!("{:04}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
}
