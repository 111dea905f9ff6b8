//! What the page asked of the network, read from the browser's own log.
//!
//! The driver's log of a page leaves out its service worker; this one has every request of the
//! browser with the origin that made it, also those that found nobody.

use std::fs::File;
use std::io::{BufRead, BufReader};
use std::path::PathBuf;

use serde::Deserialize;

/// The log's word for a request that the browser or the person made, not a page.
const NO_PAGE: &str = "not an origin";

#[derive(Deserialize)]
struct Event {
    params: Request,
}

#[derive(Deserialize)]
struct Request {
    url: String,
    initiator: String,
}

/// All addresses asked for by pages and workers, and by the person within `origin`. The browser writes
/// some events later than it makes them; after it has closed, none is missing.
pub(super) fn requests(logs: &[PathBuf], origin: &str) -> Vec<String> {
    logs.iter()
        .filter_map(|log| File::open(log).ok())
        .flat_map(|file| BufReader::new(file).lines().map_while(Result::ok))
        // Each line is an event and a comma. One without this word is no request; the last may be
        // half written.
        .filter(|line| line.contains("\"initiator\""))
        .filter_map(|line| {
            serde_json::Deserializer::from_str(&line).into_iter::<Event>().next()?.ok()
        })
        .map(|event| event.params)
        .filter(|request| request.initiator != NO_PAGE || is_within(&request.url, origin))
        .map(|request| request.url)
        .collect()
}

pub(super) fn is_within(url: &str, origin: &str) -> bool {
    url.strip_prefix(origin).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}
