//! Pages that only say something: the cautions, and what the calculation rests on.

use crate::markup::{Markup, still_markup};
use crate::parts::{foot, listed};
use finrun_text as text;
use leptos::prelude::*;

pub(crate) fn safety() -> AnyView {
    let mut markup = Markup::new();
    for caution in text::CAUTIONS {
        markup.leaf("h2", &[], caution.title());
        markup.leaf("p", &[], caution.text());
    }
    plain_page(text::safety_title(), markup.done())
}

pub(crate) fn about() -> AnyView {
    let mut markup = Markup::new();
    for paragraph in text::about_paragraphs() {
        markup.leaf("p", &[], paragraph);
    }
    markup.open("p", &[]);
    markup.leaf("a", &[("href", "NOTICES.txt"), ("class", "act")], text::notices());
    markup.close("p");
    plain_page(text::about_title(), markup.done())
}

pub(crate) fn terms() -> AnyView {
    plain_page(text::terms_title(), listed(&text::glossary::terms()))
}

fn plain_page(title: &'static str, markup: String) -> AnyView {
    view! {
        <header class="top">
            <a class="home" href="#/" aria-label=text::jobs_title()>"‹"</a>
            <p class="job">{text::app_name()}</p>
        </header>
        <main id="content" tabindex="-1" class="plain">
            <h1>{title}</h1>
            {still_markup("", markup)}
            {foot()}
        </main>
    }
    .into_any()
}
