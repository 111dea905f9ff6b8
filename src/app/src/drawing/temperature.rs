//! The water's temperature along each circuit, with the rooms that it passes.

use super::pen::{Align, WIDTH, fit, path, rect, way, words};
use super::plot::{self, FOOT, LINES, Plot};
use crate::markup::{Markup, live_markup};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::arrangement::CircuitDesign;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::network::{Passage, Place};
use finrun_engine::quantity::{Kind, Length, System, Unit, display_unit};
use finrun_text as text;
use leptos::prelude::*;

/// A circuit's water in the reader's units: how far along, and how warm.
#[derive(Debug, Default)]
struct Trail {
    water: Vec<(f64, f64)>,
    /// By way of an element that hangs on the main.
    aside: Vec<Vec<(f64, f64)>>,
    /// Where elements begin and end, and whose they are.
    elements: Vec<(f64, f64, usize)>,
    end: f64,
}

/// Height of the band for the air.
const AIR: f64 = 48.0;
/// Of a row below the chart, with its names beside, below, or below on two lines.
const LANES: [f64; 3] = [19.0, 30.0, 45.0];

pub(crate) fn temperature_chart() -> AnyView {
    let app = use_app();
    live_markup("drawing", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((job, design)) => app.typed(|draft| draw(draft, job, design, system)),
            None => String::new(),
        })
    })
}

pub(super) fn draw(draft: &Draft, job: &Job, design: &Design, system: System) -> String {
    let piping = &design.piping;
    let (feet, degrees) =
        (display_unit(Kind::Length, system), display_unit(Kind::Temperature, system));
    let trails: Vec<Trail> =
        piping.circuits.iter().map(|circuit| follow(job, design, circuit, feet, degrees)).collect();
    let along = trails.iter().fold(0.0, |most: f64, trail| most.max(trail.end));
    if piping.not_solved.is_some() || along <= 0.0 {
        return String::new();
    }
    let water = trails.iter().flat_map(|trail| trail.aside.iter().flatten().chain(&trail.water));
    let low = water.fold(f64::MAX, |least, point| least.min(point.1));
    let high = piping.supply.to(degrees).max(low + 1.0);
    let mut plot = Plot { foot: FOOT - AIR, from: 0.0, along, low, high };
    // The air is far colder than the water: it has a scale of its own below a break.
    let temperatures = job.house.rooms.iter().map(|room| room.temperature.to(degrees));
    let (least, most) = temperatures
        .fold((f64::MAX, f64::MIN), |(least, most), air| (least.min(air), most.max(air)));
    let air =
        Plot { foot: FOOT - 8.0, low: least, high: least + (most - least).max(1.0) * 8.0, ..plot };
    let lanes: f64 = trails.iter().map(lane).sum();
    let mut svg = Markup::new();
    plot::open(&mut svg, FOOT + 32.0 + lanes, text::temperature_picture());
    plot.axes(&mut svg, feet.symbol(), degrees.symbol());
    let mut y = FOOT + 34.0;
    let mut labels: Vec<(f64, f64)> = Vec::new();
    for (index, (trail, circuit)) in trails.iter().zip(&piping.circuits).enumerate() {
        let dash = LINES[index % LINES.len()];
        air_line(&mut svg, &air, trail, &|room| job.house.rooms[room].temperature.to(degrees));
        let aside = format!("{dash} aside");
        for points in &trail.aside {
            plot.line(&mut svg, &aside, points);
        }
        plot.line(&mut svg, dash, &trail.water);
        let number = match trails.len() {
            1 => String::new(),
            _ => (index + 1).to_string(),
        };
        let back = in_system(circuit.back, system);
        // A lone element's row has room for what its line ends at.
        let (ends, beside) = match (trails.len(), lines(trail)) {
            (1, _) => (back, String::new()),
            (_, 0) => (number.clone(), format!(" · {back}")),
            _ => (format!("{number} · {back}"), String::new()),
        };
        lane_of(&mut svg, draft, job, (trail, &plot), dash, (&number, y, &beside));
        y += lane(trail);
        let Some(&(end, water)) = trail.water.last() else { continue };
        let wide = 9.0 * ends.chars().count() as f64 + 6.0;
        let place = (plot.x(end).max(40.0 + wide), plot.y(water) + 17.0);
        let place = plot::free_place(&mut labels, place, (wide, 14.5), (0.0, 5.0));
        words(&mut svg, "halo strong", Align::End, place, 90.0, &ends);
    }
    for (at, temperature) in [(air.y(least), least), (air.y(most), most)] {
        if temperature == least || most > least {
            plot::up_label(&mut svg, at, &format!("{temperature:.0}"));
        }
    }
    let middle = FOOT - AIR + 10.0;
    path(
        &mut svg,
        "air",
        &way(&[("M", 28.0), (" ", middle), ("l12-5M", 28.0), (" ", middle + 5.0)]),
    );
    words(&mut svg, "halo d", Align::Start, (44.0, middle + 7.0), 200.0, text::air_of_rooms());
    svg.close("svg");
    svg.done()
}

/// Along a circuit from the circulator to where it joins others, or back to the boiler.
fn follow(job: &Job, design: &Design, circuit: &CircuitDesign, feet: Unit, degrees: Unit) -> Trail {
    let piping = &design.piping;
    let mut trail = Trail::default();
    let mut at = Length::ZERO;
    let shared = piping.circuits.len() > 1;
    // Adds a stretch to a line, and gives where it ends.
    let add = |line: &mut Vec<(f64, f64)>, at: Length, passage: &Passage, length: Length| {
        line.push((at.to(feet), passage.water_in.to(degrees)));
        line.push(((at + length).to(feet), passage.water_out.to(degrees)));
        at + length
    };
    for &index in &circuit.path {
        let passage = &piping.passages[index];
        match passage.place {
            Place::ReturnMain(_) | Place::TrunkBack(_) if shared => break,
            Place::Between(room) => {
                let from = at;
                let mut aside = Vec::new();
                for place in [Place::Branch(room), Place::Element(room), Place::BranchBack(room)] {
                    let Some(passage) = piping.passage(place) else { continue };
                    let begin = at;
                    at = add(&mut aside, at, passage, passage.length);
                    note_element(job, &mut trail, passage, begin.to(feet), at.to(feet));
                }
                trail.aside.push(aside);
                add(&mut trail.water, from, passage, at - from);
            }
            _ => {
                let begin = at;
                at = add(&mut trail.water, at, passage, passage.length);
                note_element(job, &mut trail, passage, begin.to(feet), at.to(feet));
            }
        }
    }
    trail.end = at.to(feet);
    trail
}

fn note_element(job: &Job, trail: &mut Trail, passage: &Passage, begin: f64, end: f64) {
    let Place::Element(id) = passage.place else { return };
    let room = job.house.rooms.iter().position(|room| room.id == id);
    if let (Some(room), true) = (room, end > begin) {
        trail.elements.push((begin, end, room));
    }
}

/// The air of the rooms that a circuit passes, from element to element.
fn air_line(svg: &mut Markup, plot: &Plot, trail: &Trail, air: &dyn Fn(usize) -> f64) {
    let mut steps = Vec::new();
    for &(begin, end, room) in &trail.elements {
        // It holds from the element before on.
        let held = steps.last().map_or(begin, |&(before, _): &(f64, f64)| before);
        steps.extend([(held, air(room)), (end, air(room))]);
    }
    plot.line(svg, "air", &steps);
}

/// Lines that the names of a circuit's elements want below them.
fn lines(trail: &Trail) -> usize {
    match trail.elements.len() {
        0 | 1 => 0,
        2..=4 => 1,
        _ => 2,
    }
}

fn lane(trail: &Trail) -> f64 {
    LANES[lines(trail)]
}

/// The elements of a circuit, under the place where the water passes them.
fn lane_of(
    svg: &mut Markup,
    draft: &Draft,
    job: &Job,
    (trail, plot): (&Trail, &Plot),
    dash: &str,
    (number, y, beside): (&str, f64, &str),
) {
    if !number.is_empty() {
        words(svg, "strong", Align::Start, (0.0, y + 9.0), 20.0, number);
        path(svg, dash, &way(&[("M", 12.0), (" ", y + 4.0), ("h", 20.0)]));
    }
    let lines = lines(trail);
    for (nth, &(begin, end, room)) in trail.elements.iter().enumerate() {
        let (x, right) = (plot.x(begin), plot.x(end));
        rect(svg, "element", x, y, right - x, 8.0);
        let mut name = text::room_name(draft, job.house.rooms[room].id);
        if lines == 0 {
            // On the side that has more room.
            let (align, at, left) = match 350.0 - right > x - 40.0 {
                true => (Align::Start, right + 5.0, 350.0 - right),
                false => (Align::End, x - 5.0, x - 40.0),
            };
            name = fit(&name, left - 60.0);
            name.push_str(beside);
            words(svg, "d", align, (at, y + 9.0), left, &name);
            continue;
        }
        let next = trail.elements.get(nth + lines).map_or(WIDTH, |next| plot.x(next.0));
        let base = y + 21.0 + 15.0 * (nth % lines) as f64;
        words(svg, "d", Align::Start, (x, base), next - x - 5.0, &name);
    }
}
