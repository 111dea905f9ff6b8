//! The loop as the water travels it: down the page from boiler to boiler, elements as long as
//! their feet, the temperature before and after each.

use super::wall::num;
use crate::parts::{in_system, live_view};
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
    live_view(move || {
        let system = app.system();
        app.solved.with(|solved| match solved {
            Some((_, design)) if !design.rooms.is_empty() => {
                app.draft.with(|draft| draw(draft, design, system))
            }
            _ => ().into_any(),
        })
    })
}

fn draw(draft: &Draft, design: &Design, system: System) -> AnyView {
    let circuit = &design.circuit;
    let mut y = 4.0 + BOILER;
    let mut parts = Vec::new();
    let mut from = circuit.supply;
    for room in &design.rooms {
        parts.push(tube(y, GAP, from));
        y += GAP;
        let (view, high) = element(draft, room, y, system);
        parts.push(view);
        y += high;
        from = room.element.water_out;
    }
    parts.push(tube(y, GAP, circuit.back));
    y += GAP;
    let supply = in_system(circuit.supply, system);
    let back = in_system(circuit.back, system);
    let flow = in_system(circuit.flow, system);
    let drop = in_system(circuit.drop(), system);
    view! {
        <svg
            class="loop"
            role="img"
            aria-label=text::loop_picture(&supply, &back)
            viewBox=format!("0 0 {} {}", num(WIDTH), num(y + BOILER + 4.0))
        >
            {boiler(4.0)}
            <text x="88" y="26">
                {text::supply()} " " <tspan class="strong">{supply.clone()}</tspan> " · " {flow}
            </text>
            {parts}
            {boiler(y)}
            <text x="88" y=num(y + 22.0)>
                {text::back_to_boiler()} " " <tspan class="strong">{back.clone()}</tspan>
                " · " {drop} " " {text::drop_word()}
            </text>
        </svg>
    }
    .into_any()
}

fn boiler(y: f64) -> AnyView {
    view! {
        <rect class="boiler" x="8" y=num(y) width="68" height=num(BOILER)/>
        <text class="on-iron" text-anchor="middle" x="42" y=num(y + 21.0)>{text::boiler()}</text>
    }
    .into_any()
}

fn tube(y: f64, high: f64, water: Temperature) -> AnyView {
    let class = format!("tube {}", warmth(water));
    view! { <rect class=class x=num(TUBE) y=num(y) width=num(TUBE_WIDE) height=num(high)/> }
        .into_any()
}

fn element(draft: &Draft, room: &RoomDesign, y: f64, system: System) -> (AnyView, f64) {
    let choice = &room.element.choice;
    let feet = choice.nominal.to(Unit::Foot);
    let high = (feet * FOOT).max(LEAST);
    let name = text::room_name(draft, room.room);
    let middle = y + high / 2.0;
    let short = room.short();
    let class = match short > Power::ZERO {
        true => "element short",
        false => "element",
    };
    let line = match (choice.nominal > Length::ZERO, short > Power::ZERO) {
        (false, _) => text::no_element().to_string(),
        (true, false) => {
            format!(
                "{} · {}",
                in_system(choice.nominal, system),
                in_system(room.element.output, system)
            )
        }
        (true, true) => format!(
            "{} · {}",
            in_system(choice.nominal, system),
            text::short_by(&in_system(short, system))
        ),
    };
    let body = match choice.nominal > Length::ZERO {
        true => {
            let left = TUBE + TUBE_WIDE / 2.0 - WIDE / 2.0;
            let mut fins = String::new();
            let mut at = y + 7.0;
            while at < y + high - 4.0 {
                fins.push_str(&format!("M{} {}h{}", num(left), num(at), num(WIDE)));
                at += 7.0;
            }
            view! {
                <rect class=class x=num(left) y=num(y) width=num(WIDE) height=num(high)/>
                <path class="fins" d=fins/>
            }
            .into_any()
        }
        false => tube(y, high, room.element.water_in),
    };
    let view = view! {
        {body}
        <text class="strong" x="88" y=num(middle - 3.0)>{name}</text>
        <text class="d" x="88" y=num(middle + 15.0)>{line}</text>
        <text class="d" text-anchor="end" x="354" y=num(y + 10.0)>
            {in_system(room.element.water_in, system)}
        </text>
        <text class="d" text-anchor="end" x="354" y=num(y + high - 1.0)>
            {in_system(room.element.water_out, system)}
        </text>
    }
    .into_any();
    (view, high)
}

/// One of five steps of the water scale; the number beside it says the rest.
pub(crate) fn warmth(water: Temperature) -> &'static str {
    match water.to(Unit::Fahrenheit) {
        f if f >= 175.0 => "water-4",
        f if f >= 160.0 => "water-3",
        f if f >= 140.0 => "water-2",
        f if f >= 115.0 => "water-1",
        _ => "water-0",
    }
}
