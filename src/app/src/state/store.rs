//! Jobs in the browser's storage: one entry a job, each a versioned job file. Other entries go
//! through here too.

use crate::page::JobKey;
use finrun_engine::job::{Draft, File, Header, OpenError};
use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::JsCast;
use web_sys::Storage;

const PREFIX: &str = "finrun.job.";

/// A job in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listed {
    pub key: JobKey,
    /// Its name, or why it cannot be opened.
    pub name: Result<String, FileFault>,
}

/// Why a text is no job file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileFault {
    /// Larger than any job.
    TooLarge,
    /// Not a job file at all, or a damaged one; where the reader stopped.
    Damaged(String),
    Open(OpenError),
}

/// A job of two hundred rooms is about half of this.
pub const MOST_BYTES: usize = 2_000_000;

/// Reads a job file.
pub fn parse(text: &str) -> Result<Draft, FileFault> {
    if text.len() > MOST_BYTES {
        return Err(FileFault::TooLarge);
    }
    let damaged = |error: serde_json::Error| FileFault::Damaged(error.to_string());
    let header: Header = serde_json::from_str(text).map_err(damaged)?;
    header.check().map_err(FileFault::Open)?;
    let file: File = serde_json::from_str(text).map_err(damaged)?;
    file.open().map_err(FileFault::Open)
}

/// Whether a newer program wrote a job file.
pub fn is_newer(text: &str) -> bool {
    let header = serde_json::from_str::<Header>(text).map(Header::check);
    matches!(header, Ok(Err(OpenError::Newer { .. })))
}

/// Writes a job file.
pub fn to_text(draft: &Draft) -> String {
    // A draft is strings, numbers and lists: there is nothing that JSON cannot hold.
    serde_json::to_string(&File::new(draft.clone())).unwrap_or_default()
}

fn storage_key(key: &JobKey) -> String {
    format!("{PREFIX}{}", key.0)
}

/// The job that a storage key belongs to.
pub fn job_of(storage_key: &str) -> Option<JobKey> {
    storage_key.strip_prefix(PREFIX).map(|key| JobKey(key.to_string()))
}

/// The browser's storage, if it lets us have any.
fn storage() -> Option<Storage> {
    // Asked first because gloo takes a refusal for a programming error and panics.
    web_sys::window()?.local_storage().ok().flatten()?;
    Some(LocalStorage::raw())
}

/// All jobs, in the order of their keys, which is that of their making.
pub fn list() -> Vec<Listed> {
    let Some(storage) = storage() else { return Vec::new() };
    let count = storage.length().unwrap_or(0);
    let found = (0..count)
        .filter_map(|index| storage.key(index).ok().flatten())
        .filter_map(|key| job_of(&key))
        .map(|key| {
            let name = named(&key).unwrap_or(Err(FileFault::Damaged(String::new())));
            Listed { key, name }
        });
    let mut jobs: Vec<Listed> = Vec::new();
    for job in found {
        let place = jobs.partition_point(|before| before.key < job.key);
        jobs.insert(place, job);
    }
    jobs
}

/// The name of a stored job, or why it cannot be opened.
pub fn named(key: &JobKey) -> Option<Result<String, FileFault>> {
    raw(key).map(|text| parse(&text).map(|draft| draft.name))
}

/// The stored text of a job.
pub fn raw(key: &JobKey) -> Option<String> {
    entry(&storage_key(key))
}

/// The text under a storage key.
pub(super) fn entry(storage_key: &str) -> Option<String> {
    storage()?.get_item(storage_key).ok().flatten()
}

pub fn load(key: &JobKey) -> Option<Result<Draft, FileFault>> {
    raw(key).map(|text| parse(&text))
}

/// Writes a job, or gives the browser's reason why not.
pub fn write(key: &JobKey, text: &str) -> Result<(), String> {
    let key = storage_key(key);
    set_entry(&key, text)?;
    tell_written(&key);
    Ok(())
}

pub(super) fn set_entry(storage_key: &str, text: &str) -> Result<(), String> {
    storage()
        .ok_or_else(String::new)?
        .set_item(storage_key, text)
        .map_err(|error| js_sys::Error::from(error).message().into())
}

pub fn delete(key: &JobKey) {
    let key = storage_key(key);
    delete_entry(&key);
    tell_written(&key);
}

pub(super) fn delete_entry(storage_key: &str) {
    if storage().is_some() {
        LocalStorage::delete(storage_key);
    }
}

/// Browsers put storage on the disk seconds later; the boot file keeps a copy that is there at once.
fn tell_written(key: &str) {
    let event = web_sys::CustomEventInit::new();
    event.set_detail(&key.into());
    if let Ok(event) = web_sys::CustomEvent::new_with_event_init_dict("finrun-job-written", &event)
    {
        // Refused only when a listener cancels it, and none does.
        let _ = leptos::prelude::window().dispatch_event(event.unchecked_ref());
    }
}

/// A key that no stored job has: the time in base 36, so that keys sort by age.
pub fn fresh_key() -> JobKey {
    let mut time = js_sys::Date::now() as u64;
    loop {
        let key = JobKey(base36(time));
        if raw(&key).is_none() {
            return key;
        }
        time += 1;
    }
}

fn base36(mut number: u64) -> String {
    const DIGITS: &[u8; 36] = b"0123456789abcdefghijklmnopqrstuvwxyz";
    let mut digits = Vec::new();
    while number > 0 || digits.is_empty() {
        digits.push(char::from(DIGITS[(number % 36) as usize]));
        number /= 36;
    }
    digits.iter().rev().collect()
}
