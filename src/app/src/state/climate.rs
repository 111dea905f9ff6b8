//! The table of climate stations: a file of its own, fetched once it is asked for.

use super::App;
use finrun_engine::climate::Table;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::Arc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

const FILE: &str = "climate.txt";

#[derive(Debug, Clone, Default)]
pub enum Climate {
    #[default]
    NotAsked,
    Coming,
    Here(Arc<Table>),
    /// Not to be had, and why.
    Failed(String),
}

impl App {
    /// Fetches the table, unless it is here or on its way.
    pub fn want_climate(self) {
        if matches!(self.climate.get_untracked(), Climate::Coming | Climate::Here(_)) {
            return;
        }
        self.climate.set(Climate::Coming);
        spawn_local(async move {
            let climate = match fetch(FILE).await {
                Ok(text) => match Table::parse(&text) {
                    Ok(table) => Climate::Here(Arc::new(table)),
                    Err(error) => Climate::Failed(format!("{FILE}, line {}", error.line)),
                },
                Err(reason) => Climate::Failed(reason),
            };
            self.climate.set(climate);
        });
    }
}

/// A file of this page's own, as text.
pub async fn fetch(path: &str) -> Result<String, String> {
    let why = |error: JsValue| format!("{path}: {error:?}");
    let response = JsFuture::from(window().fetch_with_str(path)).await.map_err(why)?;
    let response: web_sys::Response = response.unchecked_into();
    if !response.ok() {
        return Err(format!("{path}: {}", response.status()));
    }
    let text = JsFuture::from(response.text().map_err(why)?).await.map_err(why)?;
    Ok(text.as_string().unwrap_or_default())
}
