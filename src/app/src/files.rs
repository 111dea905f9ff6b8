//! Job files in and out of the browser.

use crate::state::App;
use crate::state::store::{self, FileFault};
use finrun_text as text;
use js_sys::Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, HtmlInputElement, Url};

/// Hands `content` to the reader as a file.
pub(crate) fn download(name: &str, content: &str) {
    // Each step can only fail in a browser that cannot download at all.
    let _ = try_download(name, content);
}

fn try_download(name: &str, content: &str) -> Result<(), JsValue> {
    let parts = Array::of1(&content.into());
    let options = BlobPropertyBag::new();
    options.set_type("application/json");
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}

/// A file name from a job's name: its words, joined by dashes.
pub(crate) fn file_name(job: &str) -> String {
    let words: Vec<String> = job
        .split(|c: char| c.is_ascii() && !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_string)
        .collect();
    let name: String = words.join("-").chars().take(60).collect();
    match name.is_empty() {
        true => "job.finrun.json".to_string(),
        false => format!("{name}.finrun.json"),
    }
}

/// Reads the chosen file and adds it as a new job; nothing that is there is replaced.
pub(crate) fn open_chosen(app: App, input: &HtmlInputElement) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
    // The same file can be chosen again after it was mended.
    input.set_value("");
    if file.size() > store::MOST_BYTES as f64 {
        app.trouble.set(text::file_too_large().to_string());
        return;
    }
    spawn_local(async move { app.add_file(&file).await });
}

impl App {
    async fn add_file(self, file: &File) {
        let content = JsFuture::from(file.text()).await;
        let content = content.ok().and_then(|text| text.as_string()).unwrap_or_default();
        match store::parse(&content) {
            Ok(draft) => {
                self.trouble.set(String::new());
                self.add_job(draft);
            }
            Err(fault) => self.trouble.set(fault_text(&fault)),
        }
    }
}

pub(crate) fn fault_text(fault: &FileFault) -> String {
    match fault {
        FileFault::TooLarge => text::file_too_large().to_string(),
        FileFault::Damaged(reason) => text::bad_file(reason),
        FileFault::Open(error) => text::file_problem(error),
    }
}
