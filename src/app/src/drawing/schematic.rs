//! The piping as a schematic: boiler, circulator and zones by the trade's symbols, with the water's
//! numbers where they belong.
//!
//! Supply runs down on the left, return up on the right; a return is dashed, so that the two are
//! told apart without colour. Rooms lie one below the other, elements as long as their feet.

mod boiler;
mod zone;

use super::pen::{ARROW, Align, path, symbol, warmth, way, words};
use crate::markup::{Markup, live_markup, num};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::arrangement::CircuitDesign;
use finrun_engine::building::RoomId;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job, Zoning};
use finrun_engine::quantity::{Kind, Length, MassFlow, System, Temperature, Value};
use finrun_text as text;
use leptos::prelude::*;

/// The riser on the right.
const RETURN: f64 = 350.0;

/// A drawing in the making.
pub(super) struct Sheet<'a> {
    svg: Markup,
    draft: &'a Draft,
    job: &'a Job,
    design: &'a Design,
    system: System,
    /// How far down it has come.
    y: f64,
    /// The supply of the zone at hand, and how far down it is drawn.
    left: f64,
    drawn: f64,
    /// Where the circuits of a zone join, and at which heights.
    right: f64,
    joins: Vec<f64>,
    /// How far down the risers reach, of the supply and of the return.
    risers: (f64, f64),
}

pub(crate) fn schematic() -> AnyView {
    let app = use_app();
    live_markup("drawing", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((job, design)) if !design.rooms.is_empty() => {
                app.typed(|draft| draw(draft, job, design, system))
            }
            _ => String::new(),
        })
    })
}

pub(crate) fn draw(draft: &Draft, job: &Job, design: &Design, system: System) -> String {
    let mut sheet = Sheet {
        svg: Markup::new(),
        draft,
        job,
        design,
        system,
        y: 0.0,
        left: 0.0,
        drawn: 0.0,
        right: RETURN,
        joins: Vec::new(),
        risers: (boiler::LINE, boiler::LINE),
    };
    sheet.boiler();
    for index in 0..job.zones.len() {
        sheet.zone(index);
    }
    let (_, lowest) = sheet.risers;
    if lowest > boiler::LINE {
        let back = [("M", RETURN), (" ", lowest), ("V", boiler::LINE)];
        sheet.return_pipe(design.piping.back, &back);
        symbol(&mut sheet.svg, ARROW, (RETURN, boiler::LINE + 20.0), 270);
    }
    sheet.key();
    let mut svg = Markup::new();
    let label =
        text::loop_picture(&sheet.shown(design.piping.supply), &sheet.shown(design.piping.back));
    let view_box = format!("0 0 360 {}", num(sheet.y));
    svg.open(
        "svg",
        &[("class", "loop"), ("role", "img"), ("aria-label", &label), ("viewBox", &view_box)],
    );
    let mut svg = svg.done();
    svg.push_str(&sheet.svg.done());
    svg.push_str("</svg>");
    svg
}

impl<'a> Sheet<'a> {
    /// A value in the reader's units; none while the flows were not found.
    fn shown(&self, value: impl Into<Value>) -> String {
        let value = value.into();
        match self.design.piping.not_solved {
            None => in_system(value, self.system),
            Some(_) => "–".to_string(),
        }
    }

    /// A mass flow as the gallons or litres that it is at supply temperature.
    fn flow(&self, flow: MassFlow) -> String {
        let circuit = &self.job.circuit;
        self.shown(flow / circuit.fluid.density(circuit.supply))
    }

    fn head(&self, head: Length) -> String {
        self.shown(Value::new(Kind::Head, head.si()))
    }

    fn several(&self) -> bool {
        self.job.zones.len() > 1
    }

    fn own_pumps(&self) -> bool {
        self.several() && self.job.circuit.zoning == Zoning::Circulators
    }

    /// The circuit that heats one of these rooms.
    fn circuit(&self, rooms: &[usize]) -> Option<&'a CircuitDesign> {
        let heats = |id: &RoomId| rooms.iter().any(|&at| self.job.house.rooms[at].id == *id);
        self.design.piping.circuits.iter().find(|circuit| circuit.rooms.iter().any(heats))
    }

    fn supply_pipe(&mut self, water: Temperature, steps: &[(&str, f64)]) {
        path(&mut self.svg, &format!("pipe {}", warmth(water)), &way(steps));
    }

    fn return_pipe(&mut self, water: Temperature, steps: &[(&str, f64)]) {
        path(&mut self.svg, &format!("pipe back {}", warmth(water)), &way(steps));
    }

    fn say(&mut self, class: &str, at: (f64, f64), room: f64, text: &str) {
        words(&mut self.svg, class, Align::Start, at, room, text);
    }

    /// The same, ending at a place.
    fn say_to(&mut self, class: &str, at: (f64, f64), room: f64, text: &str) {
        words(&mut self.svg, class, Align::End, at, room, text);
    }
}
