//! The loop as the water travels it: down the page from boiler to boiler, elements as long as
//! their feet, the temperature before and after each.

use crate::markup::{Markup, live_markup, num};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::design::{Design, RoomDesign};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Length, Power, System, Temperature, Unit};
use finrun_text as text;
use leptos::prelude::*;

const WIDTH: f64 = 360.0;
/// The tube's left edge, and its width.
const TUBE: f64 = 38.0;
const TUBE_WIDE: f64 = 8.0;
/// An element's width.
const WIDE: f64 = 26.0;
/// Height of a foot of element, and the least that two lines of text need.
const FOOT: f64 = 3.6;
const LEAST: f64 = 40.0;
const GAP: f64 = 22.0;
const BOILER: f64 = 32.0;

pub(crate) fn loop_drawing() -> AnyView {
    let app = use_app();
    live_markup("drawing", move || {
        let system = app.system();
        app.design(|solved| match solved {
            Some((_, design)) if !design.rooms.is_empty() => {
                app.typed(|draft| draw(draft, design, system))
            }
            _ => String::new(),
        })
    })
}

fn draw(draft: &Draft, design: &Design, system: System) -> String {
    let circuit = &design.piping;
    let high: f64 = design.rooms.iter().map(|room| height(room) + GAP).sum();
    let end = 4.0 + BOILER + high + GAP;
    let supply = in_system(circuit.supply, system);
    let back = in_system(circuit.back, system);
    let mut svg = Markup::new();
    let view_box = format!("0 0 {} {}", num(WIDTH), num(end + BOILER + 4.0));
    let label = text::loop_picture(&supply, &back);
    svg.open(
        "svg",
        &[("class", "loop"), ("role", "img"), ("aria-label", &label), ("viewBox", &view_box)],
    );
    let flow = in_system(circuit.flow, system);
    boiler(&mut svg, 4.0, text::supply(), &supply, &format!(" · {flow}"));
    let mut y = 4.0 + BOILER;
    let mut from = circuit.supply;
    for room in &design.rooms {
        tube(&mut svg, y, GAP, from);
        y += GAP;
        element(&mut svg, draft, room, y, system);
        y += height(room);
        from = room.element.water_out;
    }
    tube(&mut svg, y, GAP, circuit.back);
    let drop = format!(" · {} {}", in_system(circuit.drop(), system), text::drop_word());
    boiler(&mut svg, end, text::back_to_boiler(), &back, &drop);
    svg.close("svg");
    svg.done()
}

fn height(room: &RoomDesign) -> f64 {
    (room.element.choice.nominal.to(Unit::Foot) * FOOT).max(LEAST)
}

fn boiler(svg: &mut Markup, y: f64, what: &str, water: &str, rest: &str) {
    let (top, base) = (num(y), num(y + 21.0));
    let high = num(BOILER);
    let shape = [("class", "boiler"), ("x", "8"), ("y", &top), ("width", "68"), ("height", &high)];
    svg.leaf("rect", &shape, "");
    let place = [("class", "on-iron"), ("text-anchor", "middle"), ("x", "42"), ("y", &base)];
    svg.leaf("text", &place, text::boiler());
    svg.open("text", &[("x", "88"), ("y", &base)]);
    svg.text(what);
    svg.text(" ");
    svg.leaf("tspan", &[("class", "strong")], water);
    svg.text(rest);
    svg.close("text");
}

fn tube(svg: &mut Markup, y: f64, high: f64, water: Temperature) {
    let class = format!("tube {}", warmth(water));
    let (x, y, wide, high) = (num(TUBE), num(y), num(TUBE_WIDE), num(high));
    let shape = [("class", &*class), ("x", &x), ("y", &y), ("width", &wide), ("height", &high)];
    svg.leaf("rect", &shape, "");
}

fn element(svg: &mut Markup, draft: &Draft, room: &RoomDesign, y: f64, system: System) {
    let nominal = room.element.choice.nominal;
    let high = height(room);
    let short = room.short() > Power::ZERO;
    let length = in_system(nominal, system);
    let line = match (nominal > Length::ZERO, short) {
        (false, _) => text::no_element().to_string(),
        (true, false) => format!("{length} · {}", in_system(room.element.output, system)),
        (true, true) => {
            format!("{length} · {}", text::short_by(&in_system(room.short(), system)))
        }
    };
    if nominal > Length::ZERO {
        let left = TUBE + TUBE_WIDE / 2.0 - WIDE / 2.0;
        let mut fins = String::new();
        let mut at = y + 7.0;
        while at < y + high - 4.0 {
            fins.push_str(&format!("M{} {}h{}", num(left), num(at), num(WIDE)));
            at += 7.0;
        }
        let class = if short { "element short" } else { "element" };
        let (x, top, wide, high) = (num(left), num(y), num(WIDE), num(high));
        let shape =
            [("class", class), ("x", &*x), ("y", &top), ("width", &wide), ("height", &high)];
        svg.leaf("rect", &shape, "");
        svg.leaf("path", &[("class", "fins"), ("d", &fins)], "");
    } else {
        tube(svg, y, high, room.element.water_in);
    }
    let middle = y + high / 2.0;
    let name = text::room_name(draft, room.room);
    svg.leaf("text", &[("class", "strong"), ("x", "88"), ("y", &num(middle - 3.0))], &name);
    svg.leaf("text", &[("class", "d"), ("x", "88"), ("y", &num(middle + 15.0))], &line);
    for (y, water) in [(y + 10.0, room.element.water_in), (y + high - 1.0, room.element.water_out)]
    {
        let place = [("class", "d"), ("text-anchor", "end"), ("x", "354"), ("y", &num(y))];
        svg.leaf("text", &place, &in_system(water, system));
    }
}

/// One of five steps of the water scale; the number beside it says the rest.
fn warmth(water: Temperature) -> &'static str {
    match water.to(Unit::Fahrenheit) {
        f if f >= 175.0 => "water-4",
        f if f >= 160.0 => "water-3",
        f if f >= 140.0 => "water-2",
        f if f >= 115.0 => "water-1",
        _ => "water-0",
    }
}
