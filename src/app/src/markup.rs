//! Markup as text, for what is only looked at: drawings, tables, workings.
//!
//! A view would cost the download many times as much, and text can be tested without a browser.
//! Whatever is no markup of our own goes through the one escape below.

use crate::parts::words;
use leptos::prelude::*;

/// Markup under construction.
#[derive(Debug, Default)]
pub(crate) struct Markup(String);

impl Markup {
    pub(crate) fn new() -> Markup {
        Markup::default()
    }

    /// Opens an element.
    pub(crate) fn open(&mut self, tag: &str, attributes: &[(&str, &str)]) {
        self.0.push('<');
        self.0.push_str(tag);
        for (name, value) in attributes {
            self.0.push(' ');
            self.0.push_str(name);
            self.0.push_str("=\"");
            self.text(value);
            self.0.push('"');
        }
        self.0.push('>');
    }

    pub(crate) fn close(&mut self, tag: &str) {
        self.0.push_str("</");
        self.0.push_str(tag);
        self.0.push('>');
    }

    /// An element with nothing but text in it.
    pub(crate) fn leaf(&mut self, tag: &str, attributes: &[(&str, &str)], text: &str) {
        self.open(tag, attributes);
        self.text(text);
        self.close(tag);
    }

    /// Text, escaped.
    pub(crate) fn text(&mut self, text: &str) {
        for c in text.chars() {
            match c {
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '&' => self.0.push_str("&amp;"),
                '"' => self.0.push_str("&quot;"),
                c => self.0.push(c),
            }
        }
    }

    /// Markup that was made elsewhere.
    pub(crate) fn put(&mut self, markup: &str) {
        self.0.push_str(markup);
    }

    /// Whether a path of this shape was drawn.
    pub(crate) fn has_path(&self, d: &str) -> bool {
        // From one quotation mark to the next: one shape may begin as another does.
        self.0.match_indices(d).any(|(at, _)| {
            self.0[..at].ends_with(" d=\"") && self.0[at + d.len()..].starts_with('"')
        })
    }

    pub(crate) fn done(self) -> String {
        self.0
    }
}

/// A box of markup that follows signals.
pub(crate) fn live_markup(
    class: &'static str,
    markup: impl Fn() -> String + Send + Sync + 'static,
) -> AnyView {
    let markup = words(markup);
    view! { <div class=class inner_html=markup></div> }.into_any()
}

/// A box of markup that stays as it is.
pub(crate) fn still_markup(class: &'static str, markup: String) -> AnyView {
    view! { <div class=class inner_html=markup></div> }.into_any()
}

/// A row of figures: its name, the beginning of its figures' names, and each figure with the end of it.
#[derive(Debug)]
pub(crate) struct Row {
    pub(crate) name: String,
    pub(crate) key: String,
    pub(crate) cells: Vec<(&'static str, String)>,
}

/// A table of figures, each named for those who look it up.
pub(crate) fn figures(heads: &[&str], rows: &[Row]) -> String {
    let mut markup = Markup::new();
    markup.open("table", &[]);
    markup.open("tr", &[]);
    for head in heads {
        markup.leaf("th", &[("scope", "col")], head);
    }
    markup.close("tr");
    for row in rows {
        markup.open("tr", &[]);
        markup.leaf("th", &[("scope", "row")], &row.name);
        for (end, text) in &row.cells {
            let key = format!("{}.{end}", row.key);
            markup.leaf("td", &[("data-figure", &key)], text);
        }
        markup.close("tr");
    }
    markup.close("table");
    markup.done()
}

/// A table in a box that scrolls by itself where it is too wide.
pub(crate) fn scrolled(
    label: &'static str,
    table: impl Fn() -> String + Send + Sync + 'static,
) -> AnyView {
    let table = live_markup("", table);
    view! { <div class="scroll" tabindex="0" role="region" aria-label=label>{table}</div> }
        .into_any()
}

/// A coordinate: a tenth of a unit is finer than any screen.
pub(crate) fn num(value: f64) -> String {
    format!("{value:.1}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_and_attributes_are_escaped() {
        let mut markup = Markup::new();
        markup.leaf("b", &[("title", "\"><script>")], "<img src=x> & co");
        assert_eq!(
            markup.done(),
            "<b title=\"&quot;&gt;&lt;script&gt;\">&lt;img src=x&gt; &amp; co</b>"
        );
    }
}
