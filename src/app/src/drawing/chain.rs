//! Chains of dimensions, as a drawing has them: a line with a stroke at each mark, and between two
//! marks what lies between them.

use super::pen::{Align, fit, path, way, wide, words};
use crate::markup::{Markup, num};
use crate::parts::in_system;
use finrun_engine::quantity::{Length, System};

/// A chain's own height, and how far apart words on end must stand.
const HIGH: f64 = 20.0;
const APART: f64 = 14.0;

/// Where a length lies across the sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Across {
    pub(super) left: f64,
    /// Units of the sheet to a metre.
    pub(super) scale: f64,
    pub(super) system: System,
}

impl Across {
    pub(super) fn x(&self, at: Length) -> f64 {
        self.left + at.si() * self.scale
    }
}

/// Marks in order and without those that fall together.
pub(super) fn marks(mut all: Vec<Length>) -> Vec<Length> {
    let mut out: Vec<Length> = Vec::new();
    // Few, so that the plainest order is enough.
    while !all.is_empty() {
        let least = (0..all.len()).fold(0, |best, at| if all[at] < all[best] { at } else { best });
        let mark = all.swap_remove(least);
        // A millimetre is no dimension.
        if out.last().is_none_or(|last| mark.si() - last.si() > 0.001) {
            out.push(mark);
        }
    }
    out
}

/// Draws a chain from `y` down, and gives where it ends.
pub(super) fn chain(svg: &mut Markup, y: f64, across: &Across, marks: &[Length]) -> f64 {
    let line = y + 16.0;
    let (Some(&first), Some(&last)) = (marks.first(), marks.last()) else { return y };
    let (from, to) = (across.x(first), across.x(last));
    let mut d = way(&[("M", from), (" ", line), ("H", to)]);
    for &mark in marks {
        d.push_str(&way(&[
            ("M", across.x(mark) - 3.5),
            (" ", line + 3.5),
            ("l", 7.0),
            (" ", -7.0),
        ]));
    }
    path(svg, "dim", &d);
    // Words that find no room between their marks stand on end below.
    let mut on_end: Vec<(f64, String)> = Vec::new();
    for pair in marks.windows(2) {
        let (a, b) = (across.x(pair[0]), across.x(pair[1]));
        let text = in_system(pair[1] - pair[0], across.system);
        match fit(&text, b - a - 4.0) == text {
            true => words(svg, "d", Align::Middle, ((a + b) / 2.0, line - 4.0), b - a, &text),
            false => on_end.push(((a + b) / 2.0, text)),
        }
    }
    spread(&mut on_end, to.max(from + APART));
    let mut deepest: f64 = 0.0;
    for (x, text) in &on_end {
        let turned = format!("rotate(-90 {} {})", num(*x + 5.0), num(line + 7.0));
        let place = [
            ("class", "d"),
            ("text-anchor", "end"),
            ("x", &*num(*x + 5.0)),
            ("y", &*num(line + 7.0)),
            ("transform", &*turned),
        ];
        svg.leaf("text", &place, text);
        deepest = deepest.max(11.0 + 0.9 * wide(text));
    }
    y + HIGH + deepest
}

/// Moves words apart that would stand on each other.
fn spread(all: &mut [(f64, String)], most: f64) {
    for at in 1..all.len() {
        all[at].0 = all[at].0.max(all[at - 1].0 + APART);
    }
    let mut limit = most;
    for word in all.iter_mut().rev() {
        word.0 = word.0.min(limit);
        limit = word.0 - APART;
    }
}
