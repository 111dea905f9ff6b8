//! Keeps address, storage and other tabs in step with the state.

use super::store::{self, FileFault, Listed};
use super::{App, Deleted, Open, SaveState, offline};
use crate::page::{JobKey, Page, Section, Station};
use crate::parts::open_folds_of;
use finrun_engine::job::{
    CircuitField, Draft, Field, HouseField, MeasuredField, RoomField, SpotField, SurfaceField, read,
};
use finrun_text as text;
use leptos::ev;
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsCast;

/// Writes at most this long after the first input that is not written yet: someone who types without
/// a rest must not lose all of it.
const SAVE_AFTER: Duration = Duration::from_millis(150);

/// By then a page or a fold is drawn.
const DRAWN: Duration = Duration::from_millis(60);

pub(super) fn follow_hash(app: App) {
    let read = move || {
        let hash = window().location().hash().unwrap_or_default();
        let page = Page::from_hash(&hash);
        app.show(page);
    };
    read();
    window_event_listener(ev::hashchange, move |_| {
        read();
        // A new page begins at its beginning for those who hear it, too.
        set_timeout(focus_content, Duration::ZERO);
    });
}

pub(super) fn save_when_changed(app: App) {
    let timer = StoredValue::new(false);
    Effect::new(move |_| {
        app.open.track();
        if app.save.get_untracked() != SaveState::Pending {
            return;
        }
        if !timer.get_value() {
            timer.set_value(true);
            let write = move || {
                timer.set_value(false);
                app.save_now();
            };
            set_timeout(write, SAVE_AFTER);
        }
    });
    // A phone that switches away may never come back: what is typed is written first.
    window_event_listener(ev::visibilitychange, move |_| {
        if document().hidden() {
            app.save_now();
        }
    });
}

/// Undo and redo by keys, outside of boxes, which have an undo of their own.
pub(super) fn follow_keys(app: App) {
    window_event_listener(ev::keydown, move |event| {
        let in_box = document()
            .active_element()
            .is_some_and(|element| matches!(element.tag_name().as_str(), "INPUT" | "TEXTAREA"));
        if in_box || !(event.ctrl_key() || event.meta_key()) {
            return;
        }
        match (event.key().to_ascii_lowercase().as_str(), event.shift_key()) {
            ("z", false) => app.undo(),
            ("z", true) | ("y", false) => app.redo(),
            _ => return,
        }
        event.prevent_default();
    });
}

/// Moves the focus to the page's content, past what repeats on every page.
pub fn focus_content() {
    focus_on("content");
}

/// Moves the focus to an element, without moving the page.
pub fn focus_on(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        let options = web_sys::FocusOptions::new();
        options.set_prevent_scroll(true);
        // An element that cannot take the focus leaves it where it is, which is no harm.
        let _ = element.unchecked_into::<web_sys::HtmlElement>().focus_with_options(&options);
    }
}

/// Puts the focus into a field, opening what it is folded into.
fn focus_field(field: Field) {
    let id = field.to_string();
    // How a thing is built stands in a list, unless a U is typed.
    let list = format!("{}.build", id.trim_end_matches(".u"));
    let find = move || [&id, &list].iter().find_map(|id| document().get_element_by_id(id));
    match find() {
        Some(element) => focus_folded(element),
        None if open_folds_of(&field.to_string()) => set_timeout(
            move || {
                if let Some(element) = find() {
                    focus_folded(element);
                }
            },
            DRAWN,
        ),
        None => {}
    }
}

fn focus_folded(element: web_sys::Element) {
    let mut above = element.parent_element();
    while let Some(parent) = above {
        if parent.tag_name() == "DETAILS" {
            // An attribute without a value; setting it cannot fail.
            let _ = parent.set_attribute("open", "");
        }
        above = parent.parent_element();
    }
    let _ = element.unchecked_into::<web_sys::HtmlElement>().focus();
}

pub(super) fn follow_other_tabs(app: App) {
    window_event_listener(ev::storage, move |event: web_sys::StorageEvent| {
        let changed = event.key().as_deref().and_then(store::job_of);
        match &changed {
            Some(key) => app.relist(key, store::named(key)),
            // All was cleared.
            None if event.key().is_none() => app.refresh_jobs(),
            None => {}
        }
        let open = app.key_now();
        if changed.is_none() || changed != open {
            return;
        }
        let ours = app.typed_now(store::to_text);
        let theirs = event.new_value();
        if theirs.as_deref() != Some(ours.as_str()) {
            let is_newer = theirs.is_some_and(|text| store::is_newer(&text));
            app.save.set(if is_newer { SaveState::Outdated } else { SaveState::Conflict });
        }
    });
}

impl App {
    /// Shows a page and opens the job that it belongs to.
    pub fn show(self, page: Page) {
        if let Some(key) = page.job().cloned()
            && self.key_now().as_ref() != Some(&key)
        {
            self.save_now();
            match store::load(&key) {
                Some(Ok(draft)) => self.open(key, draft),
                _ => {
                    self.say(text::no_such_job().to_string());
                    self.page.set(Page::Jobs);
                    return;
                }
            }
        }
        if page.job().is_none() {
            self.save_now();
        }
        self.name_document(&page);
        self.page.set(page);
        window().scroll_to_with_x_and_y(0.0, 0.0);
    }

    /// The window's title says where the reader is, for those who hear it and for the history.
    fn name_document(self, page: &Page) {
        let title = self.typed_now(|draft| {
            let here = match page {
                Page::Jobs => return text::app_name().to_string(),
                Page::Safety => text::safety_title().to_string(),
                Page::About => text::about_title().to_string(),
                Page::Terms => text::terms_title().to_string(),
                Page::Offered(_) => text::offered_title().to_string(),
                Page::Station(_, station) => station.label().to_string(),
                Page::Section(_, section) => section.label().to_string(),
                Page::Room(_, room) => text::room_name(draft, *room),
            };
            match page.job() {
                Some(_) => text::title(&[&here, &draft.name, text::app_name()]),
                None => text::title(&[&here, text::app_name()]),
            }
        });
        document().set_title(&title);
    }

    fn open(self, key: JobKey, draft: Draft) {
        // What was bad when the job was closed says so at once.
        let errors = read(&draft).errors.into_iter();
        self.left.set(errors.filter(|error| !error.is_missing()).map(|e| e.field).collect());
        self.asked.set(Default::default());
        self.trouble.set(String::new());
        self.save.set(SaveState::Saved);
        self.open.set(Open { key: Some(key), draft, history: Default::default() });
    }

    /// Goes to a page through the address, so that the back button works.
    pub fn go(self, page: &Page) {
        // The hash is only text; assigning it cannot fail in a way that can be handled.
        drop(window().location().set_hash(&page.to_hash()));
    }

    /// Writes the open draft if it has changed.
    pub fn save_now(self) {
        if self.save.get_untracked().holds() {
            return;
        }
        self.write_draft();
    }

    /// Writes the open draft over whatever is stored: the reader's choice in a conflict.
    pub fn keep_mine(self) {
        self.save.set(SaveState::Pending);
        self.write_draft();
    }

    /// Drops the open draft for the one that another tab wrote.
    pub fn take_theirs(self) {
        if let Some(key) = self.key_now()
            && let Some(Ok(draft)) = store::load(&key)
        {
            self.open(key, draft);
        }
    }

    fn write_draft(self) {
        if self.save.get_untracked() == SaveState::Saved {
            return;
        }
        let Some(key) = self.key_now() else { return };
        let text = self.typed_now(store::to_text);
        match store::write(&key, &text) {
            Ok(()) => {
                self.save.set(SaveState::Saved);
                self.relist(&key, Some(Ok(self.typed_now(|draft| draft.name.clone()))));
            }
            Err(reason) => self.save.set(SaveState::Failed(reason)),
        }
    }

    /// Lists one job anew: to read all that are stored takes long, and typing writes often.
    fn relist(self, key: &JobKey, name: Option<Result<String, FileFault>>) {
        self.shelf.maybe_update(|shelf| {
            let jobs = &mut shelf.jobs;
            let at = jobs.partition_point(|listed| listed.key < *key);
            let known = jobs.get(at).filter(|listed| listed.key == *key);
            if known.map(|listed| &listed.name) == name.as_ref() {
                return false;
            }
            if known.is_some() {
                jobs.remove(at);
            }
            if let Some(name) = name {
                jobs.insert(at, Listed { key: key.clone(), name });
            }
            true
        });
    }

    pub fn refresh_jobs(self) {
        let jobs = store::list();
        self.shelf.update(|shelf| shelf.jobs = jobs);
    }

    /// Puts a draft into storage under a new key and goes there.
    pub fn add_job(self, draft: Draft) {
        offline::tell("finrun-job-made");
        let key = store::fresh_key();
        match store::write(&key, &store::to_text(&draft)) {
            Ok(()) => self.go(&Page::Station(key, Station::Rooms)),
            Err(reason) => {
                // Without storage the job still opens; the banner says that it will not be kept.
                self.open(key.clone(), draft);
                self.save.set(SaveState::Failed(reason));
                self.go(&Page::Station(key, Station::Rooms));
            }
        }
        self.refresh_jobs();
    }

    /// Puts a copy into storage without going there.
    pub fn add_copy(self, draft: Draft) {
        match store::write(&store::fresh_key(), &store::to_text(&draft)) {
            Ok(()) => self.trouble.set(String::new()),
            Err(reason) => self.trouble.set(text::cannot_save(&reason)),
        }
        self.refresh_jobs();
    }

    /// Hands the open draft to the reader as a file, as it stands on the page.
    pub fn download_open(self) {
        self.typed_now(|draft| {
            crate::files::download(&crate::files::file_name(&draft.name), &store::to_text(draft));
        });
    }

    /// Hands the open draft to whatever the device sends files with.
    pub fn hand_over_open(self) {
        self.typed_now(|draft| {
            crate::files::hand_over(&crate::files::file_name(&draft.name), &store::to_text(draft));
        });
    }

    /// Goes to the page of a field and puts the focus there.
    pub fn go_to_field(self, field: Field) {
        let Some(job) = self.key_now() else { return };
        let section = |section| Page::Section(job.clone(), section);
        let page = match field {
            Field::House(
                HouseField::Altitude
                | HouseField::MeanTemperature
                | HouseField::ColdestMonth
                | HouseField::Wind,
            ) => section(Section::Place),
            Field::Air(_) => section(Section::Air),
            Field::Ground(_) => section(Section::Ground),
            Field::Certainty(_) => section(Section::Certainty),
            Field::Assembly(..) | Field::Layer(..) => section(Section::Assemblies),
            Field::Bills(_) | Field::Bill(..) => section(Section::Bills),
            Field::Plant(_) => section(Section::Plant),
            Field::Control(_) => section(Section::DesignDay),
            Field::Change(..) => section(Section::WhatIf),
            Field::House(HouseField::Margin) => Page::Station(job, Station::HeatLoss),
            Field::House(_) => Page::Station(job, Station::Rooms),
            Field::Price(_) | Field::SizedPrice(..) | Field::Spare(_) | Field::Cut(_) => {
                section(Section::Prices)
            }
            Field::Element(_)
            | Field::Point(..)
            | Field::Stock
            | Field::Stocked(..)
            | Field::Surface(_, _, SurfaceField::Fixed) => Page::Station(job, Station::Lengths),
            Field::Circuit(
                CircuitField::Supply
                | CircuitField::BoilerLimit
                | CircuitField::Drop
                | CircuitField::Flow,
            ) => Page::Station(job, Station::Loop),
            Field::Circuit(CircuitField::ReturnPipe | CircuitField::ReturnElbows)
            | Field::Zone(..) => section(Section::Piping),
            Field::Circuit(_) | Field::Part(_) | Field::PumpPoint(..) => {
                section(Section::Circulator)
            }
            Field::Measured(MeasuredField::BoilerSupply | MeasuredField::BoilerBack)
            | Field::Spot(_, SpotField::WaterIn | SpotField::WaterOut) => {
                section(Section::Existing)
            }
            Field::Measured(_) | Field::Spot(..) => section(Section::Commission),
            Field::Room(_, RoomField::Damper) => section(Section::Season),
            Field::Leg(room, ..)
            | Field::Room(room, _)
            | Field::Surface(room, ..)
            | Field::Opening(room, ..) => Page::Room(job, room),
        };
        self.go(&page);
        // The page is drawn once the browser has told us of the new address.
        set_timeout(move || focus_field(field), DRAWN);
    }

    pub fn delete_job(self, key: JobKey, name: String) {
        if let Some(text) = store::raw(&key) {
            store::delete(&key);
            if self.key_now().as_ref() == Some(&key) {
                self.open.update(|open| open.key = None);
                self.save.set(SaveState::Saved);
            }
            self.say(text::deleted(&name));
            self.shelf.update(|shelf| shelf.deleted = Some(Deleted { key, name, text }));
            self.refresh_jobs();
        }
    }

    pub fn undelete_job(self) {
        if let Some(Deleted { key, name, text }) = self.shelf.get_untracked().deleted {
            match store::write(&key, &text) {
                Ok(()) => {
                    self.shelf.update(|shelf| shelf.deleted = None);
                    self.say(text::brought_back(&name));
                }
                Err(_) => self.say(text::storage_full().to_string()),
            }
            self.refresh_jobs();
        }
    }

    /// Changes a job that is not open.
    pub fn change_stored(self, key: &JobKey, change: impl FnOnce(&mut Draft)) {
        if let Some(Ok(mut draft)) = store::load(key) {
            change(&mut draft);
            if self.key_now().as_ref() == Some(key) {
                self.open(key.clone(), draft.clone());
            }
            if store::write(key, &store::to_text(&draft)).is_err() {
                self.say(text::storage_full().to_string());
            }
            self.refresh_jobs();
        }
    }
}
