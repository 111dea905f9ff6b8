//! A cut plan to scale: each stick or coil as a bar with its cuts and what is left of it.

use super::pen::{Align, WIDTH, path, rect, way, wide, words};
use crate::markup::{Markup, num};
use finrun_engine::job::Draft;
use finrun_engine::quantity::System;
use finrun_engine::takeoff::cut_plan::CutStick;
use finrun_engine::takeoff::cutting::Cutting;
use finrun_text as text;

const LEFT: f64 = 8.0;
const BAR: f64 = 26.0;
const ROW: f64 = 19.0;

/// Above a bar its name, below it the names of its cuts.
const HEAD: f64 = 26.0;
const FOOT: f64 = 8.0;

/// A picture for each stick, so that paper can part them; nothing where there is no plan. Pieces are
/// numbered from stick to stick, and named below their bar.
pub(crate) fn cut_drawing(draft: &Draft, cutting: &Cutting, system: System) -> String {
    let Ok(plan) = &cutting.plan else { return String::new() };
    let longest = plan.sticks.iter().map(|stick| stick.stick_sixteenths).max().unwrap_or(1);
    let scale = (WIDTH - 2.0 * LEFT) / f64::from(longest.max(1));
    let mut svg = Markup::new();
    let mut number = 0;
    for (nth, stick) in plan.sticks.iter().enumerate() {
        let name = text::stick_name(nth, stick.stick_sixteenths, cutting.is_coil(), system);
        let high = HEAD + BAR + stick.cuts.len() as f64 * ROW + FOOT;
        let label = text::cut_picture(text::cut_title(cutting.tube), &name);
        let view_box = format!("0 0 {} {}", num(WIDTH), num(high));
        svg.open("svg", &[("role", "img"), ("aria-label", &label), ("viewBox", &view_box)]);
        words(&mut svg, "strong", Align::Start, (LEFT, HEAD - 6.0), 340.0, &name);
        bar(&mut svg, stick, (HEAD, scale), cutting.kerf_sixteenths, (number, system));
        for (place, cut) in stick.cuts.iter().enumerate() {
            number += 1;
            let y = HEAD + BAR + (place + 1) as f64 * ROW;
            let long = text::cut_length(cut.length_sixteenths, system);
            words(&mut svg, "strong", Align::End, (LEFT + 18.0, y), 24.0, &number.to_string());
            words(&mut svg, "d", Align::Start, (LEFT + 26.0, y), 90.0, &long);
            if let Some(piece) = cutting.pieces.get(cut.piece) {
                let what = text::cut_for(draft, piece);
                words(&mut svg, "d", Align::Start, (LEFT + 110.0, y), 236.0, &what);
            }
        }
        svg.close("svg");
    }
    svg.done()
}

/// A stick's cuts from its left end, a saw cut's line behind each, and the rest hatched.
fn bar(
    svg: &mut Markup,
    stick: &CutStick,
    (y, scale): (f64, f64),
    kerf: u32,
    (number, system): (usize, System),
) {
    let mut at = 0;
    for (nth, cut) in stick.cuts.iter().enumerate() {
        let (x, long) = (LEFT + f64::from(at) * scale, f64::from(cut.length_sixteenths) * scale);
        rect(svg, "element", x, y, long, BAR);
        let length = text::cut_length(cut.length_sixteenths, system);
        let number = (number + nth + 1).to_string();
        let full = format!("{number}: {length}");
        let middle = (x + long / 2.0, y + 18.0);
        if wide(&full) + 6.0 <= long {
            words(svg, "d", Align::Middle, middle, long, &full);
        } else if wide(&number) + 3.0 <= long {
            words(svg, "d", Align::Middle, middle, long, &number);
        }
        at += cut.length_sixteenths + kerf;
    }
    // The whole stick's outline, and the rest behind the last saw cut.
    let (x, left) = (LEFT + f64::from(at) * scale, f64::from(stick.offcut_sixteenths) * scale);
    if left > 0.5 {
        rect(svg, "dim", x, y, left, BAR);
        let said = text::offcut(stick.offcut_sixteenths, system);
        let room = wide(&said) + 8.0;
        let says = room <= left;
        let hatched = if says { left - room } else { left };
        let mut d = String::new();
        let mut step = 8.0;
        while step < hatched {
            let from = x + left - hatched + step;
            d.push_str(&way(&[("M", from - 8.0), (" ", y + BAR), ("L", from), (" ", y)]));
            step += 8.0;
        }
        path(svg, "dim", &d);
        if says {
            words(svg, "d", Align::Start, (x + 4.0, y + 18.0), left, &said);
        }
    }
}
