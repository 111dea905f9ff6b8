//! The language of the page: the reader's choice, else the browser's.

use super::{App, store};
use finrun_text::{DecimalMark, Language, speak};
use leptos::prelude::*;

/// Where the reader's choice is kept.
const KEY: &str = "finrun.language";

/// What was chosen by hand, else the first of the browser's languages that is spoken here.
pub(super) fn first() -> Language {
    let chosen = store::entry(KEY).and_then(|tag| Language::of_tag(&tag));
    let browsers = || browser_tags().iter().find_map(|tag| Language::of_tag(tag));
    let language = chosen.or_else(browsers).unwrap_or(Language::English);
    begin(language);
    language
}

impl App {
    /// The whole page is made anew in `language`; nothing typed is touched.
    pub fn choose_language(self, language: Language) {
        // Where storage is blocked the choice holds until the page is left; that is loud elsewhere.
        let _ = store::set_entry(KEY, language.tag());
        begin(language);
        self.language.set(language);
    }
}

fn begin(language: Language) {
    speak(language, mark(language));
    if let Some(root) = document().document_element() {
        // Screen readers pronounce by it. An attribute of this name can always be set.
        let _ = root.set_attribute("lang", language.tag());
    }
}

/// The decimal mark of the language in the country of the browser, such as a point for es-US.
fn mark(language: Language) -> DecimalMark {
    if language == Language::English {
        return DecimalMark::Point;
    }
    let country = browser_tags().first().and_then(|tag| {
        let last = tag.rsplit('-').next()?;
        let letters = last.len() == 2 && last.bytes().all(|b| b.is_ascii_uppercase());
        let digits = last.len() == 3 && last.bytes().all(|b| b.is_ascii_digit());
        (letters || digits).then(|| format!("-{last}"))
    });
    let tag = format!("{}{}", language.tag(), country.unwrap_or_default());
    let shown = String::from(js_sys::Number::from(1.5).to_locale_string(&tag));
    if shown.contains(',') { DecimalMark::Comma } else { DecimalMark::Point }
}

fn browser_tags() -> Vec<String> {
    window().navigator().languages().iter().filter_map(|tag| tag.as_string()).collect()
}
