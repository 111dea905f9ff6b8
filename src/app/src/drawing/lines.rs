//! Several lines over one axis, each with its number and its name, told apart by number and dash.

use super::pen::{Align, path, rect, way, words};
use super::plot::{self, FOOT, LINES, Plot};
use crate::markup::Markup;

/// What is drawn, in the reader's units.
#[derive(Debug, Default)]
pub(crate) struct Lines {
    /// The whole picture in words.
    pub(crate) said: String,
    pub(crate) along: &'static str,
    pub(crate) up: &'static str,
    /// Each with its name, along from its first point.
    pub(crate) lines: Vec<(String, Vec<(f64, f64)>)>,
    /// Upright bars below the lines: from, to, how high.
    pub(crate) bars: Vec<(f64, f64, f64)>,
    /// What the tallest of them is.
    pub(crate) bars_said: String,
    /// A place on the level axis that is marked, and by what.
    pub(crate) mark: Option<(f64, String)>,
}

/// Height of the band for the bars.
const BAND: f64 = 44.0;
/// So many names of the key stand below one another before there are two columns.
const COLUMN: usize = 5;

/// Nothing where there is nothing to draw.
pub(crate) fn lines_chart(of: &Lines) -> String {
    let points = || of.lines.iter().flat_map(|(_, points)| points);
    let reach = |at: fn(&(f64, f64)) -> f64| {
        points()
            .map(at)
            .fold((f64::MAX, f64::MIN), |(least, most), at| (least.min(at), most.max(at)))
    };
    let ((from, along), (low, high)) = (reach(|p| p.0), reach(|p| p.1));
    if along <= from {
        return String::new();
    }
    let band = if of.bars.is_empty() { 0.0 } else { BAND };
    let ends = |edge: fn(f64, f64) -> f64, of_bar: fn(&(f64, f64, f64)) -> f64, own: f64| {
        of.bars.iter().map(of_bar).fold(own, edge)
    };
    let (from, along) = (ends(f64::min, |bar| bar.0, from), ends(f64::max, |bar| bar.1, along));
    let mut plot = Plot { foot: FOOT - band, from, along, low, high: high.max(low + 1.0) };
    let columns = if of.lines.len() > COLUMN { 2 } else { 1 };
    let rows = of.lines.len().div_ceil(columns);
    let mut svg = Markup::new();
    plot::open(&mut svg, FOOT + 36.0 + 20.0 * rows as f64, &of.said);
    plot.axes(&mut svg, of.along, of.up);
    bars(&mut svg, of, &plot);
    if let Some((at, what)) = &of.mark {
        let x = plot.x(*at);
        path(&mut svg, "air", &way(&[("M", x), (" ", plot.y(plot.high)), ("V", FOOT)]));
        words(&mut svg, "halo d", Align::Start, (x + 4.0, 26.0), 120.0, what);
    }
    let several = of.lines.len() > 1;
    for (nth, (_, points)) in of.lines.iter().enumerate() {
        plot.line(&mut svg, LINES[nth % LINES.len()], points);
    }
    for (nth, (name, points)) in of.lines.iter().enumerate() {
        let number = if several { (nth + 1).to_string() } else { String::new() };
        // Each at a place of its own along the axis, on its line, so that no two cover one another.
        let share = (nth as f64 + 0.5) / of.lines.len() as f64;
        let along = plot.from + share * (plot.along - plot.from);
        if let (true, Some(up)) = (several, on_line(points, along)) {
            let place = (plot.x(along), plot.y(up) + 4.5);
            words(&mut svg, "halo strong", Align::Middle, place, 24.0, &number);
        }
        let (column, row) = (nth / rows, nth % rows);
        let (x, y) = (180.0 * column as f64, FOOT + 52.0 + 20.0 * row as f64);
        path(
            &mut svg,
            LINES[nth % LINES.len()],
            &way(&[("M", x + 2.0), (" ", y - 5.0), ("h", 28.0)]),
        );
        words(&mut svg, "strong", Align::Start, (x + 36.0, y), 22.0, &number);
        let indent = if several { 54.0 } else { 38.0 };
        words(
            &mut svg,
            "d",
            Align::Start,
            (x + indent, y),
            176.0 * (3 - columns) as f64 - indent,
            name,
        );
    }
    svg.close("svg");
    svg.done()
}

/// How high a line is at a place along the axis; at its nearer end beyond it.
fn on_line(points: &[(f64, f64)], along: f64) -> Option<f64> {
    let (first, last) = (points.first()?, points.last()?);
    let step = points.windows(2).find(|pair| pair[0].0 <= along && along <= pair[1].0);
    match step {
        Some(pair) if pair[1].0 > pair[0].0 => {
            let share = (along - pair[0].0) / (pair[1].0 - pair[0].0);
            Some(pair[0].1 + share * (pair[1].1 - pair[0].1))
        }
        _ if along < first.0 => Some(first.1),
        _ => Some(last.1),
    }
}

fn bars(svg: &mut Markup, of: &Lines, plot: &Plot) {
    let tallest = of.bars.iter().fold(0.0, |most: f64, bar| most.max(bar.2));
    if tallest <= 0.0 {
        return;
    }
    for &(from, to, high) in &of.bars {
        let tall = high / tallest * (BAND - 18.0);
        let (x, right) = (plot.x(from), plot.x(to));
        rect(svg, "element", x + 0.5, FOOT - tall, (right - x - 1.0).max(0.5), tall);
    }
    words(svg, "halo d", Align::End, (352.0, FOOT - BAND + 13.0), 250.0, &of.bars_said);
}
