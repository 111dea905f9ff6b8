//! Headings, buttons and sentences of the page.

pub fn no_such_job() -> &'static str {
    "That job is not in this browser."
}
pub fn deleted(name: &str) -> String {
    format!("Deleted {name}.")
}
pub fn brought_back(name: &str) -> String {
    format!("{name} is back.")
}
pub fn storage_full() -> &'static str {
    "The browser's storage is full or blocked. Download the job to keep it."
}
