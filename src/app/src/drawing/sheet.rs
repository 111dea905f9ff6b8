//! A sheet: a figure with its title, its drawing, and what must be said beside it.

use super::key::Marks;
use super::pen::WIDTH;
use crate::markup::{Markup, num};

pub(super) struct Sheet {
    pub(super) title: String,
    /// What is seen, in words.
    pub(super) label: String,
    pub(super) notes: Vec<&'static str>,
    pub(super) marks: Marks,
    pub(super) high: f64,
}

impl Sheet {
    pub(super) fn into_markup(self) -> String {
        let view_box = format!("0 0 {} {}", num(WIDTH), num(self.high));
        let mut svg = Markup::new();
        let named = [("role", "img"), ("aria-label", &*self.label), ("viewBox", &*view_box)];
        svg.open("svg", &named);
        let mut svg = svg.done();
        svg.push_str(&self.marks.svg.done());
        svg.push_str("</svg>");
        figure(&self.title, &svg, &self.notes)
    }
}

/// A drawing under its title, with notes.
pub(super) fn figure(title: &str, svg: &str, notes: &[&str]) -> String {
    let mut out = Markup::new();
    out.open("figure", &[("class", "sheet")]);
    out.open("figcaption", &[]);
    out.leaf("h3", &[], title);
    out.close("figcaption");
    let mut figure = out.done();
    figure.push_str(svg);
    let mut out = Markup::new();
    for note in notes {
        out.leaf("p", &[("class", "note")], note);
    }
    out.close("figure");
    figure.push_str(&out.done());
    figure
}
