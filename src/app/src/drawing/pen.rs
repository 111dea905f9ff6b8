//! What drawings share: lines, words that fit, the trade's line symbols.

use crate::markup::{Markup, num};
use finrun_engine::quantity::{Temperature, Unit};

/// Width of every drawing in its own units; a phone shows it at about one to one.
pub(super) const WIDTH: f64 = 360.0;

/// Where a text stands against its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Align {
    Start,
    Middle,
    End,
}

/// A text of 14 units height, cut with an ellipsis where it is longer than `room`.
pub(super) fn words(
    svg: &mut Markup,
    class: &str,
    align: Align,
    (x, y): (f64, f64),
    room: f64,
    text: &str,
) {
    let anchor = match align {
        Align::Start => "start",
        Align::Middle => "middle",
        Align::End => "end",
    };
    let place = [("class", class), ("text-anchor", anchor), ("x", &*num(x)), ("y", &*num(y))];
    svg.leaf("text", &place, &fit(text, room));
}

/// As much of a text as `room` takes.
pub(super) fn fit(text: &str, room: f64) -> String {
    // The ellipsis wants its place only where something is cut.
    if wide(text) <= room {
        return text.to_string();
    }
    let mut left = room - letter('m');
    let mut cut = String::new();
    for c in text.chars() {
        left -= letter(c);
        if left < 0.0 {
            break;
        }
        cut.push(c);
    }
    cut.truncate(cut.trim_end().len());
    cut.push('…');
    cut
}

/// Width of a text.
pub(super) fn wide(text: &str) -> f64 {
    text.chars().map(letter).sum()
}

/// Width of a letter, rather too much: a fallback font may be wider than ours.
fn letter(c: char) -> f64 {
    match c {
        ' ' | '\u{a0}' | '.' | ',' | '\'' | 'i' | 'j' | 'l' | '·' => 4.2,
        'A'..='Z' | 'm' | 'w' | '%' | '@' => 9.2,
        // Ideographs and signs beyond the alphabets fill a square.
        c if c > '\u{2e7f}' => 15.0,
        _ => 6.9,
    }
}

/// A path's commands, each with a number.
pub(super) fn way(steps: &[(&str, f64)]) -> String {
    let mut d = String::new();
    for (command, number) in steps {
        d.push_str(command);
        d.push_str(&num(*number));
    }
    d
}

pub(super) fn path(svg: &mut Markup, class: &str, d: &str) {
    svg.leaf("path", &[("class", class), ("d", d)], "");
}

pub(super) fn rect(svg: &mut Markup, class: &str, x: f64, y: f64, wide: f64, high: f64) {
    let (x, y, wide, high) = (num(x), num(y), num(wide), num(high));
    let shape = [("class", class), ("x", &*x), ("y", &y), ("width", &wide), ("height", &high)];
    svg.leaf("rect", &shape, "");
}

/// One of five steps of the water scale; the number beside it says the rest.
pub(super) fn warmth(water: Temperature) -> &'static str {
    match water.to(Unit::Fahrenheit) {
        f if f >= 175.0 => "water-4",
        f if f >= 160.0 => "water-3",
        f if f >= 140.0 => "water-2",
        f if f >= 115.0 => "water-1",
        _ => "water-0",
    }
}

/// A line symbol about its own middle, the water flowing to the right: its outline, and what of it
/// is solid. After the usual drawing symbols of the trade (in the manner of ISO 14617 and ASHRAE's
/// handbook), from memory.
pub(super) type Symbol = (&'static str, &'static str);

/// A circle with a triangle that points the way of the water.
pub(super) const CIRCULATOR: Symbol =
    ("M-10 0a10 10 0 1 0 20 0a10 10 0 1 0-20 0M-5 8.6L10 0L-5-8.6", "");
/// A bow tie with a motor on its stem.
pub(super) const ZONE_VALVE: Symbol =
    ("M-9-6L9 6V-6L-9 6zM0 0V-8M-5-13a5 5 0 1 0 10 0a5 5 0 1 0-10 0", "");
/// A bow tie with a wheel on its stem.
pub(super) const BALANCING_VALVE: Symbol = ("M-9-6L9 6V-6L-9 6zM0 0V-9M-5-9H5", "");
/// A bow tie, closed.
pub(super) const SHUT_VALVE: Symbol = ("", "M-9-6L9 6V-6L-9 6z");
/// A triangle against a bar.
pub(super) const FLOW_CHECK: Symbol = ("M-8-7V7L7 0zM8-7.5V7.5", "");
/// A box on the pipe with a vent on top.
pub(super) const AIR_ELIMINATOR: Symbol = ("M-8-8H8V8H-8zM0-8V-14M-4-14H4", "");
/// A vessel with a membrane, standing on the pipe.
pub(super) const EXPANSION_TANK: Symbol =
    ("M0 0V-8M-9-17a9 9 0 0 0 18 0v-9a9 9 0 0 0-18 0zM-9-22q9 7 18 0", "");
/// A tee with a scoop in it.
pub(super) const DIVERTER_TEE: Symbol = ("M-6-6H6V6H-6z", "M-6-6L6 0L-6 6z");
/// The way of the water.
pub(super) const ARROW: Symbol = ("", "M-5-4L4 0L-5 4z");

/// A symbol with its middle at a place, turned clockwise by so many degrees.
pub(super) fn symbol(svg: &mut Markup, (outline, solid): Symbol, (x, y): (f64, f64), turn: u32) {
    let turned = format!("translate({} {}) rotate({turn})", num(x), num(y));
    for (class, d) in [("symbol", outline), ("solid", solid)] {
        if !d.is_empty() {
            svg.leaf("path", &[("class", class), ("d", d), ("transform", &turned)], "");
        }
    }
}
