//! A job in an address: its file, deflated, behind the `#` that no browser sends to a server.

use crate::state::store::MOST_BYTES;
use js_sys::{Array, ArrayBuffer, Function, Reflect, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, ReadableStream, ReadableStreamDefaultReader, ReadableWritablePair, Response};

/// Why what stands in an address is no job's text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum LinkFault {
    /// Cut off or changed on its way.
    Damaged,
    /// It swells to more than any job.
    TooLarge,
}

/// A job's text as a part of an address.
pub(crate) async fn packed(text: &str) -> Option<String> {
    let through = through("CompressionStream", &text.into()).ok()?;
    let response = Response::new_with_opt_readable_stream(Some(&through)).ok()?;
    let bytes = JsFuture::from(response.array_buffer().ok()?).await.ok()?;
    let bytes = Uint8Array::new(bytes.unchecked_ref::<ArrayBuffer>()).to_vec();
    let latin: String = bytes.into_iter().map(char::from).collect();
    let base64 = window().btoa(&latin).ok()?;
    Some(base64.trim_end_matches('=').replace('+', "-").replace('/', "_"))
}

/// The text again; never more of it than a job may have.
pub(crate) async fn unpacked(packed: &str) -> Result<String, LinkFault> {
    if packed.len() > MOST_BYTES {
        return Err(LinkFault::TooLarge);
    }
    let base64 = packed.replace('-', "+").replace('_', "/");
    let latin = window().atob(&base64).map_err(damaged)?;
    // What `atob` gives is of one byte each.
    let bytes: Vec<u8> = latin.chars().map(|c| c as u8).collect();
    let bytes = Uint8Array::from(bytes.as_slice());
    let reader = through("DecompressionStream", &bytes).map_err(damaged)?.get_reader();
    let mut text = Vec::new();
    while let Some(chunk) = next(reader.unchecked_ref()).await.map_err(damaged)? {
        text.extend(chunk.to_vec());
        if text.len() > MOST_BYTES {
            return Err(LinkFault::TooLarge);
        }
    }
    String::from_utf8(text).map_err(|_| LinkFault::Damaged)
}

fn damaged(_: JsValue) -> LinkFault {
    LinkFault::Damaged
}

/// `content` on its way through one of the browser's own streams, by name: an older browser lacks it,
/// and then this fails.
fn through(stream: &str, content: &JsValue) -> Result<ReadableStream, JsValue> {
    let class: Function = Reflect::get(&window(), &stream.into())?.dyn_into()?;
    let ends = Reflect::construct(&class, &Array::of1(&"deflate-raw".into()))?;
    let end = |name: &str| Reflect::get(&ends, &name.into());
    let pair = ReadableWritablePair::new(
        end("readable")?.unchecked_ref(),
        end("writable")?.unchecked_ref(),
    );
    let content = Blob::new_with_blob_sequence(&Array::of1(content))?;
    Ok(content.stream().pipe_through(&pair))
}

/// The next bytes of a stream; none at its end.
async fn next(reader: &ReadableStreamDefaultReader) -> Result<Option<Uint8Array>, JsValue> {
    let step = JsFuture::from(reader.read()).await?;
    match Reflect::get(&step, &"done".into())?.is_truthy() {
        true => Ok(None),
        false => Ok(Some(Reflect::get(&step, &"value".into())?.unchecked_into())),
    }
}
