//! Files in and out of the browser: jobs, and tables for spreadsheets.

use crate::state::App;
use crate::state::store::{self, FileFault};
use finrun_text as text;
use js_sys::Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, HtmlInputElement, ShareData,
    Url,
};

/// Hands `content` to the reader as a file.
pub(crate) fn download(name: &str, content: &str) {
    // Each step can only fail in a browser that cannot download at all.
    let _ = try_download(name, content);
}

fn try_download(name: &str, content: &str) -> Result<(), JsValue> {
    let parts = Array::of1(&content.into());
    let options = BlobPropertyBag::new();
    options.set_type(if name.ends_with(".csv") { "text/csv" } else { "application/json" });
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}

/// Whether the device has a way of its own to send a file with: phones do.
pub(crate) fn can_hand_over() -> bool {
    let navigator = window().navigator();
    // An older browser lacks either, and calling what is not there would stop the program.
    js_sys::Reflect::has(&navigator, &"canShare".into()).unwrap_or(false)
        && shared("job.txt", "{}").is_ok_and(|data| navigator.can_share_with_data(&data))
}

/// Opens the device's own way to send a file.
pub(crate) fn hand_over(name: &str, content: &str) {
    if let Ok(data) = shared(name, content) {
        // Refused or put off by the reader: nothing is left to be done.
        let sent = window().navigator().share_with_data(&data);
        spawn_local(async move { drop(JsFuture::from(sent).await) });
    }
}

/// As plain text, which is what every device lets through.
fn shared(name: &str, content: &str) -> Result<ShareData, JsValue> {
    let parts = Array::of1(&content.into());
    let options = FilePropertyBag::new();
    options.set_type("text/plain");
    let name = name.replace(".json", ".txt");
    let file = File::new_with_str_sequence_and_options(&parts, &name, &options)?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    Ok(data)
}

/// How keeping a file in a place of the reader's choice ended.
pub(crate) enum Placed {
    Kept,
    /// The reader closed the browser's window of files.
    Declined,
    /// The reason as the browser gives it.
    Failed(String),
}

/// Whether the browser lets the reader choose the folder, a memory stick's among them.
pub(crate) fn can_choose_place() -> bool {
    js_sys::Reflect::has(&window(), &PICKER.into()).unwrap_or(false)
}

/// Lets the reader choose where `content` is kept. To be called as a button is pressed.
pub(crate) async fn keep_in_place(name: &str, content: &str) -> Placed {
    match try_keep_in_place(name, content).await {
        Ok(()) => Placed::Kept,
        Err(error) => {
            // Whatever was thrown: it may be no error at all.
            let said = |what: &str| js_sys::Reflect::get(&error, &what.into()).ok()?.as_string();
            match said("name").as_deref() {
                Some("AbortError") => Placed::Declined,
                _ => Placed::Failed(said("message").unwrap_or_default()),
            }
        }
    }
}

/// Not every browser has the picker, so its functions are called by name.
const PICKER: &str = "showSaveFilePicker";

async fn try_keep_in_place(name: &str, content: &str) -> Result<(), JsValue> {
    let options = js_sys::Object::new();
    js_sys::Reflect::set(&options, &"suggestedName".into(), &name.into())?;
    let file = called(&window(), PICKER, &Array::of1(&options)).await?;
    let writer = called(&file, "createWritable", &Array::new()).await?;
    called(&writer, "write", &Array::of1(&content.into())).await?;
    // Only now does the file hold it: until then the old one stands whole.
    called(&writer, "close", &Array::new()).await?;
    Ok(())
}

async fn called(of: &JsValue, name: &str, arguments: &Array) -> Result<JsValue, JsValue> {
    let function = js_sys::Reflect::get(of, &name.into())?.dyn_into::<js_sys::Function>()?;
    JsFuture::from(js_sys::Promise::resolve(&function.apply(of, arguments)?)).await
}

/// Puts `text` into the clipboard, where the browser lets a page do so.
pub(crate) fn copy(text: &str) {
    let navigator = window().navigator();
    // Pages that came without encryption have none.
    if js_sys::Reflect::get(&navigator, &"clipboard".into()).is_ok_and(|found| found.is_object()) {
        let copied = navigator.clipboard().write_text(text);
        spawn_local(async move { drop(JsFuture::from(copied).await) });
    }
}

/// The name of a job's file.
pub(crate) fn file_name(job: &str) -> String {
    named(job, ".finrun.json")
}

/// The name of a table of a job: `what` says which.
pub(crate) fn table_name(job: &str, what: &str) -> String {
    named(job, &format!("-{what}.csv"))
}

/// A file name from a job's name: its words, joined by dashes.
fn named(job: &str, ending: &str) -> String {
    let words: Vec<String> = job
        .split(|c: char| c.is_ascii() && !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_string)
        .collect();
    let name: String = words.join("-").chars().take(60).collect();
    let name = if name.is_empty() { "job" } else { &name };
    format!("{name}{ending}")
}

/// Reads the chosen file and adds it as a new job; nothing that is there is replaced.
pub(crate) fn open_chosen(app: App, input: &HtmlInputElement) {
    read_chosen(input, store::MOST_BYTES, move |content| {
        let read = content.ok_or(FileFault::TooLarge).and_then(|text| store::parse(&text));
        match read {
            Ok(draft) => {
                app.trouble.set(String::new());
                app.add_job(draft);
            }
            Err(fault) => app.trouble.set(fault_text(&fault)),
        }
    });
}

/// Hands on the text of the chosen file, or nothing where it is larger than `most` bytes.
pub(crate) fn read_chosen(
    input: &HtmlInputElement,
    most: usize,
    then: impl FnOnce(Option<String>) + 'static,
) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
    // The same file can be chosen again after it was mended.
    input.set_value("");
    if file.size() > most as f64 {
        return then(None);
    }
    spawn_local(async move {
        let content = JsFuture::from(file.text()).await;
        then(Some(content.ok().and_then(|text| text.as_string()).unwrap_or_default()));
    });
}

pub(crate) fn fault_text(fault: &FileFault) -> String {
    match fault {
        FileFault::TooLarge => text::file_too_large().to_string(),
        FileFault::Damaged(reason) => text::bad_file(reason),
        FileFault::Open(error) => text::file_problem(error),
    }
}
