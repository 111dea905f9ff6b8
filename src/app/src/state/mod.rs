//! What the page knows: the open draft, what follows from it, and how it got there.

mod climate;
mod history;
mod language;
mod offline;
pub mod prices;
pub mod store;
mod sync;

pub use climate::{Climate, fetch};
pub use history::{EditKey, Noted};
pub use store::Listed;
pub use sync::{focus_content, focus_on};

use crate::page::{JobKey, Page};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, Entry, Field, FieldError, Job, Problem, RoomField, read};
use finrun_engine::quantity::System;
use finrun_text::Language;
use history::History;
use leptos::prelude::*;
use std::sync::Arc;

/// Everything the components share. Small and `Copy`: signals only.
#[derive(Debug, Clone, Copy)]
pub struct App {
    pub page: RwSignal<Page>,
    pub shelf: RwSignal<Shelf>,
    pub language: RwSignal<Language>,
    open: RwSignal<Open>,
    pub outcome: Memo<Outcome>,
    /// The outcome's job and design: changes only when they do.
    pub solved: Memo<Arc<Solved>>,
    pub save: RwSignal<SaveState>,
    /// What went wrong with a file that was opened; empty for nothing.
    pub trouble: RwSignal<String>,
    /// Whether the page works without a network, in a sentence.
    pub offline: RwSignal<String>,
    /// A new version waits for consent.
    pub update: RwSignal<bool>,
    /// Whether the browser keeps the jobs, in a sentence.
    pub kept: RwSignal<&'static str>,
    /// The browser can install the page.
    pub installable: RwSignal<bool>,
    /// The climate stations, once they are asked for.
    pub climate: RwSignal<Climate>,
    /// A sentence for the live region.
    pub said: RwSignal<String>,
    /// Fields that were left as they are: their errors show.
    pub left: RwSignal<Vec<Field>>,
    /// Blanks that show as errors, since the reader said to be done.
    pub asked: RwSignal<Vec<Field>>,
}

/// The job that is open: its key, its draft, and how the draft came about.
#[derive(Debug, Clone)]
struct Open {
    key: Option<JobKey>,
    draft: Draft,
    history: History,
}

/// The jobs in storage, and what was taken off last.
#[derive(Debug, Clone, Default)]
pub struct Shelf {
    /// In the order of their keys.
    pub jobs: Vec<Listed>,
    pub deleted: Option<Deleted>,
}

/// A deleted job, which can be brought back.
#[derive(Debug, Clone)]
pub struct Deleted {
    key: JobKey,
    pub name: String,
    text: String,
}

/// How the open draft stands against storage.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SaveState {
    Saved,
    /// Typed, not yet written.
    Pending,
    /// Storage refused; the reason as the browser gives it.
    Failed(String),
    /// Another tab wrote this job; nothing is written until the reader chooses.
    Conflict,
    /// A newer program wrote this job, in a form that this one would spoil: nothing is written any more.
    Outdated,
}

impl SaveState {
    /// Whether nothing may be written.
    fn holds(&self) -> bool {
        matches!(self, SaveState::Conflict | SaveState::Outdated)
    }
}

/// The job of the rooms that are complete, with its design.
pub type Solved = Option<(Job, Design)>;

/// What follows from the draft.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    key: Option<JobKey>,
    pub solved: Arc<Solved>,
    pub errors: Vec<FieldError>,
    pub standing: Standing,
}

/// Which draft the results belong to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// This one.
    Current,
    /// An earlier one: a field holds something that cannot be read just now.
    LastGood,
}

impl App {
    pub fn new() -> App {
        let open = RwSignal::new(Open {
            key: None,
            draft: Draft::new("", System::Us),
            history: History::default(),
        });
        let outcome =
            Memo::new(move |before: Option<&Outcome>| open.with(|open| outcome(open, before)));
        App {
            page: RwSignal::new(Page::Jobs),
            shelf: RwSignal::new(Shelf::default()),
            language: RwSignal::new(language::first()),
            open,
            outcome,
            solved: Memo::new(move |_| outcome.with(|outcome| outcome.solved.clone())),
            save: RwSignal::new(SaveState::Saved),
            trouble: RwSignal::new(String::new()),
            offline: RwSignal::new(String::new()),
            update: RwSignal::new(false),
            kept: RwSignal::new(""),
            installable: RwSignal::new(false),
            climate: RwSignal::new(Climate::default()),
            said: RwSignal::new(String::new()),
            left: RwSignal::new(Vec::new()),
            asked: RwSignal::new(Vec::new()),
        }
    }

    /// Starts to follow the address, storage and other tabs.
    pub fn start(self) {
        self.refresh_jobs();
        sync::follow_hash(self);
        sync::save_when_changed(self);
        sync::follow_other_tabs(self);
        offline::follow_worker(self);
        sync::follow_keys(self);
    }

    /// The key of the open job.
    pub fn key_now(self) -> Option<JobKey> {
        self.open.with_untracked(|open| open.key.clone())
    }

    pub fn system(self) -> System {
        self.typed(|draft| draft.units)
    }

    /// Looks at the draft, and again whenever it changes.
    ///
    /// This and its like pass through one function for all callers: the page is full of them, and
    /// each copy of the signal's own code would be downloaded.
    pub fn typed<T>(self, look: impl FnOnce(&Draft) -> T) -> T {
        self.open.track();
        self.typed_now(look)
    }

    /// Looks at the draft once.
    pub fn typed_now<T>(self, look: impl FnOnce(&Draft) -> T) -> T {
        fn through(app: App, look: &mut dyn FnMut(&Draft)) {
            app.open.with_untracked(|open| look(&open.draft));
        }
        once(look, |look| through(self, look))
    }

    /// Looks at what follows from the draft, and again whenever that changes.
    pub fn follows<T>(self, look: impl FnOnce(&Outcome) -> T) -> T {
        fn through(app: App, look: &mut dyn FnMut(&Outcome)) {
            app.outcome.with(|outcome| look(outcome));
        }
        once(look, |look| through(self, look))
    }

    /// Looks at the job and its design, and again whenever they change.
    pub fn design<T>(self, look: impl FnOnce(&Solved) -> T) -> T {
        fn through(app: App, look: &mut dyn FnMut(&Solved)) {
            app.solved.with(|solved| look(solved));
        }
        once(look, |look| through(self, look))
    }

    /// Changes the draft as one undoable step; edits of one field in a row are one step.
    pub fn edit(self, key: EditKey, change: impl FnOnce(&mut Draft)) {
        let mut change = Some(change);
        self.edit_by(key, &mut |draft, _| {
            if let Some(change) = change.take() {
                change(draft);
            }
        });
    }

    /// `change` also sees the draft in which the step began. It must not look at the open job by other
    /// ways: the job is being written.
    fn edit_by(self, key: EditKey, change: &mut dyn FnMut(&mut Draft, &Draft)) {
        let mut changed = false;
        self.open.maybe_update(|open| {
            let before = open.draft.clone();
            change(&mut open.draft, open.history.begun(key).unwrap_or(&before));
            changed = open.draft != before;
            if changed {
                open.history.note(key, before);
            }
            changed
        });
        if changed {
            self.note_change();
        }
    }

    pub fn type_into(self, field: Field, entry: Entry) {
        self.edit_by(EditKey::Field(field), &mut |draft, began| {
            draft.type_entry(began, field, entry.clone());
        });
        // Once it can be read, the next slip waits again until the field is left.
        if !self.is_bad(field) {
            self.left.update(|left| left.retain(|known| *known != field));
        }
    }

    pub fn can_undo(self) -> bool {
        self.open.with(|open| open.history.can_undo())
    }

    pub fn can_redo(self) -> bool {
        self.open.with(|open| open.history.can_redo())
    }

    pub fn undo(self) {
        self.travel(History::undo);
    }

    pub fn redo(self) {
        self.travel(History::redo);
    }

    fn travel(self, step: fn(&mut History, Draft) -> Option<Draft>) {
        let now = self.typed_now(Draft::clone);
        self.open.update(|open| {
            if let Some(draft) = step(&mut open.history, now) {
                open.draft = draft;
            }
        });
        self.note_change();
    }

    fn note_change(self) {
        if !self.save.get_untracked().holds() {
            self.save.set(SaveState::Pending);
        }
    }

    pub fn mark_left(self, field: Field) {
        if self.is_bad(field) {
            self.left.update(|left| left.push(field));
        }
        // Points make a curve together: the last that is typed can show what is wrong with another.
        if matches!(field, Field::PumpPoint(..)) {
            let points = self.outcome.with_untracked(|outcome| {
                let wrong = outcome.errors.iter().filter(|error| {
                    matches!(error.field, Field::PumpPoint(..))
                        && !error.is_missing()
                        && error.problem != Problem::TooFewPumpPoints
                });
                wrong.map(|error| error.field).collect::<Vec<_>>()
            });
            self.left.update(|left| left.extend(points));
        }
    }

    fn is_bad(self, field: Field) -> bool {
        self.outcome.with_untracked(|outcome| outcome.errors.iter().any(|e| e.field == field))
    }

    /// Shows the errors of these fields, blanks included.
    pub fn ask_for(self, fields: Vec<Field>) {
        self.left.update(|left| left.extend_from_slice(&fields));
        self.asked.update(|asked| asked.extend(fields));
    }

    pub fn say(self, sentence: String) {
        self.said.set(sentence);
    }
}

/// Calls `look` by way of `through`, which takes it as a plain reference, and hands on its answer.
fn once<A: ?Sized, T>(look: impl FnOnce(&A) -> T, through: impl FnOnce(&mut dyn FnMut(&A))) -> T {
    let mut look = Some(look);
    let mut answer = None;
    through(&mut |seen| answer = look.take().map(|look| look(seen)));
    // `through` calls exactly once: a signal that is gone would have stopped before.
    answer.expect("the signal was read")
}

/// The context that `main` provides.
pub fn use_app() -> App {
    expect_context::<App>()
}

/// Results follow every keystroke. While a field holds something unreadable the last good results
/// stay; blanks that are still to be filled in only leave their room out.
fn outcome(open: &Open, before: Option<&Outcome>) -> Outcome {
    let key = open.key.clone();
    let reading = read(&open.draft);
    // Bills and readings are held against the design, how the house is run follows it, and changes are
    // only weighed; it does not wait for them.
    let beside = |error: &FieldError| {
        matches!(
            error.field,
            Field::Bill(..)
                | Field::Bills(_)
                | Field::Control(_)
                | Field::Room(_, RoomField::Damper)
                | Field::Measured(_)
                | Field::Spot(..)
                | Field::Change(..)
        )
    };
    let unreadable = reading.errors.iter().any(|error| !error.is_missing() && !beside(error));
    let kept = before.filter(|b| unreadable && b.key == key && b.solved.is_some());
    if let Some(before) = kept {
        return Outcome { errors: reading.errors, standing: Standing::LastGood, ..before.clone() };
    }
    let solved = reading.job.map(|job| {
        let design = design(&job);
        (job, design)
    });
    Outcome { key, solved: solved.into(), errors: reading.errors, standing: Standing::Current }
}
