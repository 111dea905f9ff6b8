//! Head against flow: what the circulator gives, what the system asks, and where they meet.

use super::pen::{Align, words};
use super::plot::{self, FOOT, LINES, Plot};
use crate::markup::{Markup, live_markup};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::arrangement::{PumpDesign, curve_points, system_curve};
use finrun_engine::building::ZoneId;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Flow, Job};
use finrun_engine::quantity::{
    Kind, Length, MassFlow, System, Unit, Value, VolumeFlow, display_unit,
};
use finrun_text as text;
use leptos::prelude::*;

/// Zones that call together, and where the circulator then stands.
struct Case {
    name: String,
    zones: Vec<ZoneId>,
    flow: VolumeFlow,
    head: Length,
}

pub(crate) fn pump_charts() -> AnyView {
    let app = use_app();
    live_markup("drawing", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((job, design)) => app.typed(|draft| draw(draft, job, design, system)),
            None => String::new(),
        })
    })
}

/// A chart for each circulator that turns.
pub(super) fn draw(draft: &Draft, job: &Job, design: &Design, system: System) -> String {
    let mut svg = Markup::new();
    if design.piping.not_solved.is_none() {
        for (index, pump) in design.piping.pumps.iter().enumerate() {
            if pump.flow > VolumeFlow::ZERO {
                chart(&mut svg, (draft, job, design), system, index, pump);
            }
        }
    }
    svg.done()
}

fn chart(
    svg: &mut Markup,
    (draft, job, design): (&Draft, &Job, &Design),
    system: System,
    index: usize,
    pump: &PumpDesign,
) {
    let units = (display_unit(Kind::VolumeFlow, system), display_unit(Kind::Head, system));
    let curve: Vec<(f64, f64)> =
        curve_points(job, index).into_iter().map(|point| shown(point, units)).collect();
    let cases = cases(draft, job, design, pump);
    let points: Vec<(f64, f64)> =
        cases.iter().map(|case| shown((case.flow, case.head), units)).collect();
    let (mut along, mut high) = (0.0, 0.0);
    for &(flow, head) in curve.iter().chain(&points) {
        (along, high) = (f64::max(along, flow), f64::max(high, head));
    }
    if along <= 0.0 || high <= 0.0 {
        return;
    }
    let several = cases.len() > 1;
    let planned = !matches!(job.circuit.flow, Flow::FromPump);
    let rows: Vec<(String, String)> = cases
        .iter()
        .map(|case| {
            let head = Value::new(Kind::Head, case.head.si());
            let (flow, head) = (in_system(case.flow, system), in_system(head, system));
            let row = text::operating_point(&case.name, &flow, &head, planned);
            (format!("{flow} · {head}"), row)
        })
        .collect();
    let title = match pump.zone {
        Some(zone) => text::zone_name(draft, zone),
        None => text::symbol_circulator().to_string(),
    };
    let mut plot = Plot { foot: FOOT, from: 0.0, along: along * 1.04, low: 0.0, high: high * 1.04 };
    let total = FOOT + 36.0 + 20.0 * (rows.len() + 1) as f64;
    let mut label = text::pump_picture(&title);
    for (_, row) in &rows {
        label.push(' ');
        label.push_str(row);
        label.push('.');
    }
    plot::open(svg, total, &label);
    plot.axes(svg, units.0.symbol(), units.1.symbol());
    words(svg, "strong", Align::End, (354.0, 15.0), 300.0, &title);
    plot.line(svg, "curve", &curve);
    let mut y = FOOT + 44.0;
    plot::key(svg, y, "curve", "", text::circulator_curve());
    for (nth, (case, (_, row))) in cases.iter().zip(&rows).enumerate() {
        // Other circulators do not keep to their share: what one of them meets then is no one line.
        let strays = case.zones.len() > 1 && pump.zone.is_some() && !planned;
        let dash = if strays { "" } else { LINES[(nth + 1) % LINES.len()] };
        let number = if several { (nth + 1).to_string() } else { String::new() };
        if !strays {
            let line = system_line(job, design, case, index, (along, plot.high), units);
            plot.line(svg, dash, &line);
        }
        y += 20.0;
        plot::key(svg, y, dash, &number, row);
    }
    // Points lie over all lines, the number of each beside those of others.
    let mut taken: Vec<(f64, f64)> = Vec::new();
    for (nth, &(flow, head)) in points.iter().enumerate() {
        let (x, y) = (plot.x(flow), plot.y(head));
        plot::point(svg, x, y);
        let place = (x + 7.0, y - 6.0);
        let (at, base) = plot::free_place(&mut taken, place, (11.0, 16.0), (11.0, 0.0));
        let number = (nth + 1).to_string();
        let label = if several { &number } else { &rows[nth].0 };
        let (align, at) = if at < 200.0 { (Align::Start, at) } else { (Align::End, x - 7.0) };
        words(svg, "halo strong", align, (at, base), 150.0, label);
    }
    svg.close("svg");
}

fn shown((flow, head): (VolumeFlow, Length), units: (Unit, Unit)) -> (f64, f64) {
    (flow.to(units.0), units.1.from_si(head.si()))
}

/// All zones of a circulator, and each of them alone where there are several.
fn cases(draft: &Draft, job: &Job, design: &Design, pump: &PumpDesign) -> Vec<Case> {
    let several = job.zones.len() > 1;
    let name = if several { text::all_zones() } else { text::the_system() };
    let all = Case {
        name: name.to_string(),
        zones: job.zones.iter().map(|zone| zone.id).collect(),
        flow: pump.flow,
        head: pump.head,
    };
    let alone = design.piping.alone.iter().filter(|run| match pump.zone {
        Some(own) => run.zones.contains(&own),
        None => true,
    });
    let alone = alone.map(|run| {
        let zone = run.zones.first().copied().unwrap_or_default();
        Case {
            name: text::alone(&text::zone_name(draft, zone)),
            zones: run.zones.clone(),
            flow: run.flow,
            head: run.head,
        }
    });
    std::iter::once(all).chain(alone).collect()
}

/// What the system asks at other flows, as far as the chart reaches.
fn system_line(
    job: &Job,
    design: &Design,
    case: &Case,
    index: usize,
    (along, high): (f64, f64),
    units: (Unit, Unit),
) -> Vec<(f64, f64)> {
    let pump = design.piping.pumps.get(index).and_then(|pump| pump.zone);
    let own = |zone: ZoneId| case.zones.contains(&zone) && pump.is_none_or(|own| own == zone);
    let circuits = design.piping.circuits.iter().filter(|circuit| own(circuit.zone));
    let meant: MassFlow = circuits.map(|circuit| circuit.target).sum();
    let circuit = &job.circuit;
    let meant = (meant / circuit.fluid.density(circuit.supply)).to(units.0);
    let (flow, head) = shown((case.flow, case.head), units);
    if meant <= 0.0 || head <= 0.0 {
        return Vec::new();
    }
    // Head goes by nearly the square of the flow.
    let last = (flow * (high / head).sqrt()).min(along);
    let points = system_curve(job, design, &case.zones, index, last / meant);
    points.into_iter().map(|point| shown(point, units)).filter(|point| point.1 <= high).collect()
}
