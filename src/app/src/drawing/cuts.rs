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

/// Nothing where there is no plan. Pieces are numbered from stick to stick, and named below their bar.
pub(crate) fn cut_drawing(draft: &Draft, cutting: &Cutting, system: System) -> String {
    let Ok(plan) = &cutting.plan else { return String::new() };
    let longest = plan.sticks.iter().map(|stick| stick.stick_sixteenths).max().unwrap_or(1);
    let scale = (WIDTH - 2.0 * LEFT) / f64::from(longest.max(1));
    let rows: usize = plan.sticks.iter().map(|stick| stick.cuts.len()).sum();
    let high = 4.0 + plan.sticks.len() as f64 * (22.0 + BAR + 18.0) + rows as f64 * ROW;
    let mut svg = Markup::new();
    let label = text::cut_picture(text::cut_title(cutting.tube));
    let view_box = format!("0 0 {} {}", num(WIDTH), num(high));
    svg.open("svg", &[("role", "img"), ("aria-label", &label), ("viewBox", &view_box)]);
    let (mut y, mut number) = (0.0, 0);
    for (nth, stick) in plan.sticks.iter().enumerate() {
        y += 20.0;
        let name = text::stick_name(nth, stick.stick_sixteenths, cutting.is_coil(), system);
        words(&mut svg, "strong", Align::Start, (LEFT, y), 340.0, &name);
        y += 6.0;
        bar(&mut svg, stick, (y, scale), cutting.kerf_sixteenths, (number, system));
        y += BAR + 4.0;
        for cut in &stick.cuts {
            number += 1;
            y += ROW;
            let long = text::cut_length(cut.length_sixteenths, system);
            words(
                &mut svg,
                "strong",
                Align::End,
                (LEFT + 18.0, y - 4.0),
                24.0,
                &number.to_string(),
            );
            words(&mut svg, "d", Align::Start, (LEFT + 26.0, y - 4.0), 90.0, &long);
            if let Some(piece) = cutting.pieces.get(cut.piece) {
                let what = text::cut_for(draft, piece);
                words(&mut svg, "d", Align::Start, (LEFT + 110.0, y - 4.0), 236.0, &what);
            }
        }
        y += 14.0;
    }
    svg.close("svg");
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
