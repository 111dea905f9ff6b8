//! The water's temperature along each circuit, with the rooms that it passes.

use super::pen::{Align, WIDTH, path, rect, way, words};
use super::plot::{self, FOOT, LINES, Plot};
use crate::markup::{Markup, live_markup};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::arrangement::CircuitDesign;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::network::{Passage, Place};
use finrun_engine::quantity::{
    Kind, Length, System, Temperature, TemperatureDifference, Unit, display_unit,
};
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

/// Of a row below the chart.
const LANE: f64 = 30.0;
/// Its second line of names.
const SECOND: f64 = 15.0;

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
    let air = |room: usize| job.house.rooms[room].temperature;
    let coldest = (0..job.house.rooms.len())
        .map(air)
        .fold(piping.supply, |least: Temperature, room| if room < least { room } else { least });
    let margin = TemperatureDifference::from_si(4.0);
    let low = coldest - margin;
    let mut plot = Plot { along, low: low.to(degrees), high: piping.supply.to(degrees) };
    let lane = |trail: &Trail| if crowded(trail) { LANE + SECOND } else { LANE };
    let lanes: f64 = trails.iter().map(lane).sum();
    let mut svg = Markup::new();
    plot::open(&mut svg, FOOT + 32.0 + lanes, text::temperature_picture());
    plot.axes(&mut svg, feet.symbol(), degrees.symbol());
    let mut y = FOOT + 34.0;
    let mut labels: Vec<(f64, f64)> = Vec::new();
    for (index, (trail, circuit)) in trails.iter().zip(&piping.circuits).enumerate() {
        let dash = LINES[index % LINES.len()];
        air_line(&mut svg, &plot, trail, &|room| air(room).to(degrees));
        let aside = format!("{dash} aside");
        for points in &trail.aside {
            plot.line(&mut svg, &aside, points);
        }
        plot.line(&mut svg, dash, &trail.water);
        let number = match trails.len() {
            1 => String::new(),
            _ => format!("{} ", index + 1),
        };
        lane_of(&mut svg, draft, job, (trail, &plot), dash, (number.trim(), y));
        y += lane(trail);
        let Some(&(end, water)) = trail.water.last() else { continue };
        let (x, mut base) = (plot.x(end).max(94.0), plot.y(water) + 17.0);
        // Below all labels that stand in its place.
        while let Some(other) = labels.iter().find(|(other, at)| near(*other - x, *at - base)) {
            base = other.1 + 15.0;
        }
        labels.push((x, base));
        let label = format!("{number}{}", in_system(circuit.back, system));
        words(&mut svg, "halo strong", Align::End, (x, base), 90.0, &label);
    }
    let base = plot.y(coldest.to(degrees)) + 15.0;
    words(&mut svg, "halo d", Align::Start, (plot.x(0.0) + 6.0, base), 200.0, text::air_of_rooms());
    svg.close("svg");
    svg.done()
}

/// Whether labels ending so far apart would lie on one another.
fn near(x: f64, y: f64) -> bool {
    x.abs() < 62.0 && y.abs() < 14.5
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

/// Whether the names of a circuit's elements want two lines.
fn crowded(trail: &Trail) -> bool {
    trail.elements.len() > 4
}

/// The elements of a circuit, under the place where the water passes them.
fn lane_of(
    svg: &mut Markup,
    draft: &Draft,
    job: &Job,
    (trail, plot): (&Trail, &Plot),
    dash: &str,
    (number, y): (&str, f64),
) {
    if !number.is_empty() {
        words(svg, "strong", Align::Start, (0.0, y + 9.0), 20.0, number);
        path(svg, dash, &way(&[("M", 12.0), (" ", y + 4.0), ("h", 20.0)]));
    }
    let lines = if crowded(trail) { 2 } else { 1 };
    for (nth, &(begin, end, room)) in trail.elements.iter().enumerate() {
        let x = plot.x(begin);
        rect(svg, "element", x, y, plot.x(end) - x, 8.0);
        let next = trail.elements.get(nth + lines).map_or(WIDTH, |next| plot.x(next.0));
        let base = y + 21.0 + SECOND * (nth % lines) as f64;
        let name = text::room_name(draft, job.house.rooms[room].id);
        words(svg, "d", Align::Start, (x, base), next - x - 5.0, &name);
    }
}
