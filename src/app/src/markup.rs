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
