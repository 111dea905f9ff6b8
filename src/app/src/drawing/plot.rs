//! A chart: axes with round numbers, and lines told apart by their dashes.

use super::pen::{Align, WIDTH, path, way, words};
use crate::markup::{Markup, num};
use finrun_text::in_units;

/// Dashes of lines that share a chart; more lines than these begin anew, and their numbers tell.
pub(super) const LINES: [&str; 6] = ["line-0", "line-1", "line-2", "line-3", "line-4", "line-5"];

const LEFT: f64 = 34.0;
const RIGHT: f64 = WIDTH - 6.0;
const TOP: f64 = 26.0;
/// The foot of every chart; what explains it follows below.
pub(super) const FOOT: f64 = 216.0;

/// What the axes reach, in the reader's units.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plot {
    /// Where the upright axis begins.
    pub(super) foot: f64,
    /// Where the level axis begins, and where it ends.
    pub(super) from: f64,
    pub(super) along: f64,
    pub(super) low: f64,
    pub(super) high: f64,
}

impl Plot {
    pub(super) fn x(&self, along: f64) -> f64 {
        LEFT + (along - self.from) / (self.along - self.from) * (RIGHT - LEFT)
    }

    pub(super) fn y(&self, up: f64) -> f64 {
        self.foot - (up - self.low) / (self.high - self.low) * (self.foot - TOP)
    }

    /// Widens the upright axis to round numbers, and draws both with their units.
    pub(super) fn axes(&mut self, svg: &mut Markup, along: &str, up: &str) {
        let step = round_step((self.high - self.low) / 6.0);
        // What is a round number but for rounding stays one.
        self.low = (self.low / step + 1e-6).floor() * step;
        self.high = (self.high / step - 1e-6).ceil() * step;
        let mut grid = String::new();
        let mut at = self.low;
        while at <= self.high + step * 0.01 {
            let y = self.y(at);
            grid.push_str(&way(&[("M", LEFT), (" ", y), ("H", RIGHT)]));
            up_label(svg, y, &in_units(&tick(at, step)));
            at += step;
        }
        words(svg, "d", Align::Start, (2.0, 15.0), WIDTH, &in_units(up));
        let step = round_step((self.along - self.from) / 7.0);
        let mut at = (self.from / step - 1e-6).ceil() * step;
        while at <= self.along {
            let x = self.x(at);
            grid.push_str(&way(&[("M", x), (" ", FOOT), ("v", 5.0)]));
            // The last one says the unit.
            let label = in_units(&match at + step > self.along {
                true => format!("{} {along}", tick(at, step)),
                false => tick(at, step),
            });
            let middle = x.min(RIGHT - 18.0);
            words(svg, "d", Align::Middle, (middle, FOOT + 19.0), 60.0, &label);
            at += step;
        }
        path(svg, "grid", &grid);
    }

    pub(super) fn line(&self, svg: &mut Markup, class: &str, points: &[(f64, f64)]) {
        let mut d = String::new();
        for &(along, up) in points {
            let command = if d.is_empty() { "M" } else { "L" };
            d.push_str(&way(&[(command, self.x(along)), (" ", self.y(up))]));
        }
        path(svg, class, &d);
    }
}

/// A number beside the upright axis.
pub(super) fn up_label(svg: &mut Markup, y: f64, text: &str) {
    words(svg, "d", Align::End, (LEFT - 5.0, y + 5.0), LEFT, text);
}

/// Moves a label by `step` until none that was placed before lies within `size` of it.
pub(super) fn free_place(
    taken: &mut Vec<(f64, f64)>,
    (mut x, mut y): (f64, f64),
    size: (f64, f64),
    step: (f64, f64),
) -> (f64, f64) {
    while taken.iter().any(|at| (at.0 - x).abs() < size.0 && (at.1 - y).abs() < size.1) {
        (x, y) = (x + step.0, y + step.1);
    }
    taken.push((x, y));
    (x, y)
}

/// The row of the key that says what a line is, or a point without one.
pub(super) fn key(svg: &mut Markup, y: f64, line: &str, number: &str, text: &str) {
    match line.is_empty() {
        true => point(svg, 17.0, y - 5.0),
        false => path(svg, line, &way(&[("M", 2.0), (" ", y - 5.0), ("h", 30.0)])),
    }
    words(svg, "strong", Align::Start, (40.0, y), 20.0, number);
    let indent = if number.is_empty() { 40.0 } else { 56.0 };
    words(svg, "d", Align::Start, (indent, y), WIDTH - indent - 4.0, text);
}

pub(super) fn point(svg: &mut Markup, x: f64, y: f64) {
    let place = [("class", "symbol"), ("cx", &*num(x)), ("cy", &*num(y)), ("r", "4.5")];
    svg.leaf("circle", &place, "");
}

/// The least of 1, 2 and 5 times a power of ten that is not below `least`.
fn round_step(least: f64) -> f64 {
    let mut step = 0.01;
    let mut by = 0;
    while step < least && step < 1e9 {
        step *= [2.0, 2.5, 2.0][by % 3];
        by += 1;
    }
    step
}

fn tick(at: f64, step: f64) -> String {
    let decimals = match step {
        step if step >= 0.99 => 0,
        step if step >= 0.099 => 1,
        _ => 2,
    };
    match at < -0.5 * step {
        true => format!("−{:.decimals$}", -at),
        false => format!("{:.decimals$}", at.abs()),
    }
}

/// Opens the picture of a chart that is so high with all that explains it.
pub(super) fn open(svg: &mut Markup, high: f64, label: &str) {
    let view_box = format!("0 0 {} {}", num(WIDTH), num(high));
    svg.open(
        "svg",
        &[("class", "chart"), ("role", "img"), ("aria-label", label), ("viewBox", &view_box)],
    );
}
