//! The page. Logic stands in `state`; components are thin; all words come from `finrun_text`.

// A binary exports nothing, and the component macro writes `pub` of its own.
#![allow(unreachable_pub)]

mod drawing;
mod files;
mod link;
mod markup;
mod page;
mod pages;
mod parts;
mod state;

use leptos::mount::mount_to;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

fn main() {
    // The boot file shows the rescue screen; the console keeps what happened and where.
    std::panic::set_hook(Box::new(|info| {
        web_sys::console::error_1(&info.to_string().into());
    }));
    let Some(root) = document().get_element_by_id("app") else { return };
    // The static shell has done its work.
    root.set_inner_html("");
    mount_to(root.unchecked_into(), pages::root).forget();
}
