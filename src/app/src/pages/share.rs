//! A job on its way to another device or another person: as a file, a link, a QR code.

use super::section;
use crate::files::{self, Placed};
use crate::link::packed;
use crate::markup::Markup;
use crate::page::{JobKey, Page, Section};
use crate::parts::{button, live, live_view};
use crate::state::{store, use_app};
use finrun_text as text;
use leptos::prelude::*;
use leptos::task::spawn_local;
use qrcodegen::{QrCode, QrCodeEcc};
use wasm_bindgen::JsCast;

pub(super) fn share(job: &JobKey) -> AnyView {
    let app = use_app();
    // Empty until it is packed; the browser does that by and by.
    let link = RwSignal::new(String::new());
    let failed = RwSignal::new(false);
    Effect::new(move |_| {
        let file = app.typed(store::to_text);
        spawn_local(async move {
            match packed(&file).await {
                Some(packed) => {
                    let here = window().location();
                    let page = here.href().unwrap_or_default();
                    let page = page.split('#').next().unwrap_or_default();
                    // The signals are gone when the page was left meanwhile.
                    let _ = link.try_set(format!("{page}{}", Page::Offered(packed).to_hash()));
                }
                None => drop(failed.try_set(true)),
            }
        });
    });
    let copy = move || {
        files::copy(&link.get_untracked());
        app.say(text::link_copied().to_string());
        select("job-link");
    };
    let long = live(move || match link.with(String::len) {
        0 => String::new(),
        letters => text::link_letters(letters),
    });
    let code = live_view(move || link.with(|link| qr_code(link)));
    // A page that was opened as a file has no address that would lead anybody else to it.
    let has_address = window().location().protocol().is_ok_and(|protocol| protocol != "file:");
    let by_link = has_address.then(|| view! {
        <h2>{text::share_link()}</h2>
        <p>{text::share_link_note()}</p>
        {live_view(move || failed.get().then(|| view! { <p class="banner" role="alert">{text::link_failed()}</p> }).into_any())}
        <div class="field">
            <label for="job-link">{text::share_link()}</label>
            <input id="job-link" class="name" type="text" readonly prop:value=move || link.get()/>
            <p class="note">{long}</p>
        </div>
        <div class="acts">{button("", text::copy_link(), copy)}</div>
        <h2>{text::share_code()}</h2>
        <p>{text::share_code_note()}</p>
        {code}
    }.into_any());
    let no_link =
        (!has_address).then(|| view! { <p class="note">{text::no_link_from_a_file()}</p> });
    let not_kept = RwSignal::new(String::new());
    let keep = move || {
        let file = app.typed_now(|draft| (files::file_name(&draft.name), store::to_text(draft)));
        spawn_local(async move {
            let said = match files::keep_in_place(&file.0, &file.1).await {
                Placed::Kept => {
                    app.say(text::file_kept().to_string());
                    String::new()
                }
                Placed::Declined => String::new(),
                Placed::Failed(reason) => text::file_not_kept(&reason),
            };
            // The page may have been left meanwhile.
            let _ = not_kept.try_set(said);
        });
    };
    let not_kept = live_view(move || match not_kept.get() {
        said if said.is_empty() => ().into_any(),
        said => view! { <p class="banner loud" role="alert">{said}</p> }.into_any(),
    });
    let inside = view! {
        <p class="note">{text::share_note()}</p>
        <h2>{text::share_file()}</h2>
        <p>{text::share_file_note()}</p>
        <div class="acts">
            {button("", text::download(), move || app.download_open())}
            {files::can_choose_place().then(|| button("", text::keep_in_place(), keep))}
            {files::can_hand_over().then(|| button("", text::hand_over_file(), move || app.hand_over_open()))}
        </div>
        {not_kept}
        {by_link}
        {no_link}
    }
    .into_any();
    section(job, Section::Share, inside)
}

fn select(id: &str) {
    if let Some(input) = document().get_element_by_id(id) {
        input.unchecked_into::<web_sys::HtmlInputElement>().select();
    }
}

fn qr_code(link: &str) -> AnyView {
    if link.is_empty() {
        return ().into_any();
    }
    match QrCode::encode_text(link, QrCodeEcc::Low) {
        Ok(code) => {
            let svg = drawn(&code);
            view! { <div class="code" inner_html=svg></div> }.into_any()
        }
        Err(_) => view! { <p class="banner" role="status">{text::code_too_long()}</p> }.into_any(),
    }
}

/// Dark squares on white whatever the page's colours: cameras want it so. The standard asks for a
/// margin of four squares.
fn drawn(code: &QrCode) -> String {
    const MARGIN: i32 = 4;
    let size = code.size();
    let whole = size + 2 * MARGIN;
    let mut squares = String::new();
    for y in 0..size {
        for x in (0..size).filter(|&x| code.get_module(x, y)) {
            squares += &format!("M{} {}h1v1h-1z", x + MARGIN, y + MARGIN);
        }
    }
    let mut svg = Markup::new();
    let view_box = format!("0 0 {whole} {whole}");
    svg.open("svg", &[("role", "img"), ("aria-label", text::share_code()), ("viewBox", &view_box)]);
    let whole = whole.to_string();
    svg.leaf("rect", &[("width", &whole), ("height", &whole), ("fill", "#fff")], "");
    svg.leaf("path", &[("d", &squares), ("fill", "#000"), ("shape-rendering", "crispEdges")], "");
    svg.close("svg");
    svg.done()
}
