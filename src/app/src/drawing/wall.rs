//! A wall as one stands before it: windows, doors, what is free for baseboard, the pieces on it.

use crate::markup::{Markup, live_markup, num};
use crate::parts::in_system;
use crate::state::use_app;
use finrun_engine::building::{OpeningKind, RoomId, Run, SurfaceId};
use finrun_engine::design::Design;
use finrun_engine::job::{WallShape, wall_shape};
use finrun_engine::quantity::{Length, System};
use finrun_text as text;
use leptos::prelude::*;

/// Width of the picture in its own units; heights follow from the wall.
const WIDTH: f64 = 360.0;
/// Room on each side for the line of the wall.
const MARGIN: f64 = 2.0;
/// An enclosure is drawn higher than to scale, so that it is seen.
const BASEBOARD: f64 = 16.0;
/// Under the floor line: dimensions.
const BELOW: f64 = 20.0;

/// What the drawing shows besides the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shows {
    Free,
    Pieces,
}

pub(crate) fn wall_drawing(room: RoomId, surface: SurfaceId, shows: Shows) -> AnyView {
    let app = use_app();
    live_markup("drawing", move || {
        let system = app.system();
        let shape = app.typed(|draft| {
            let name = text::surface_name(draft, room, surface);
            let mut shape = wall_shape(draft, room, surface)?;
            shape.runs.retain(|_| draft.allows(room, surface));
            Some((name, shape))
        });
        let Some((name, shape)) = shape else { return String::new() };
        app.design(|solved| {
            let pieces = match (shows, solved) {
                (Shows::Pieces, Some((_, design))) => wall_pieces(design, room, surface),
                _ => Vec::new(),
            };
            draw(&name, &shape, &pieces, shows, system)
        })
    })
}

/// The pieces on the runs of one wall.
fn wall_pieces(design: &Design, room: RoomId, surface: SurfaceId) -> Vec<(Run, Vec<Length>)> {
    let Some(solved) = design.room(room) else { return Vec::new() };
    let runs = solved.element.choice.runs.iter().filter(|run| run.surface == surface);
    runs.map(|run| (run.run, run.pieces.clone())).collect()
}

fn draw(
    name: &str,
    shape: &WallShape,
    pieces: &[(Run, Vec<Length>)],
    shows: Shows,
    system: System,
) -> String {
    let scale = (WIDTH - 2.0 * MARGIN) / shape.length.si();
    // A very long wall would become a hair, a short one a tower: then the height is not to scale.
    let tall = (shape.height.si() * scale).clamp(56.0, 130.0);
    let upright = tall / shape.height.si();
    let x = |length: Length| num(MARGIN + length.si() * scale);
    let floor = MARGIN + tall;
    let mut svg = Markup::new();
    let view_box = format!("0 0 {} {}", num(WIDTH), num(floor + BELOW));
    let label = text::wall_picture(name);
    svg.open(
        "svg",
        &[("class", "wall"), ("role", "img"), ("aria-label", &label), ("viewBox", &view_box)],
    );
    let whole = num(WIDTH - 2.0 * MARGIN);
    rect(&mut svg, "plaster", &num(MARGIN), &num(MARGIN), &whole, &num(tall));
    for &(kind, left, width, height) in &shape.openings {
        let high = (height.si() * upright).min(tall);
        // Window heads stand in line with door heads, where there is room for it.
        let (class, head) = match kind {
            OpeningKind::Door => ("door", floor - high),
            OpeningKind::Window => {
                ("window", (floor - 2.032 * upright).max(MARGIN + 4.0).min(floor - high))
            }
        };
        rect(&mut svg, class, &x(left), &num(head), &num(width.si() * scale), &num(high));
    }
    let base = floor - BASEBOARD;
    match shows {
        Shows::Free => {
            for run in &shape.runs {
                let wide = run.length.si() * scale;
                let short = in_system(run.length, system);
                let words = match wide > 190.0 {
                    true => text::free_for_baseboard(&short),
                    false => short,
                };
                let high = num(BASEBOARD);
                rect(&mut svg, "free", &x(run.start), &num(base), &num(wide), &high);
                under(&mut svg, run.start + run.length / 2.0, &x, floor, &words);
            }
        }
        Shows::Pieces => {
            for (run, pieces) in pieces {
                let total: Length = pieces.iter().copied().sum();
                let mut at = run.start + (run.length - total) / 2.0;
                for &piece in pieces {
                    let wide = piece.si() * scale;
                    let high = num(BASEBOARD);
                    rect(&mut svg, "element", &x(at), &num(base), &num(wide), &high);
                    let fins = fins(MARGIN + at.si() * scale, wide, base);
                    svg.leaf("path", &[("class", "fins"), ("d", &fins)], "");
                    under(&mut svg, at + piece / 2.0, &x, floor, &in_system(piece, system));
                    at += piece;
                }
            }
        }
    }
    let line = format!("M0 {}H{}", num(floor), num(WIDTH));
    svg.leaf("path", &[("class", "floor-line"), ("d", &line)], "");
    svg.close("svg");
    svg.done()
}

fn rect(svg: &mut Markup, class: &str, x: &str, y: &str, width: &str, height: &str) {
    let attributes = [("class", class), ("x", x), ("y", y), ("width", width), ("height", height)];
    svg.leaf("rect", &attributes, "");
}

/// A dimension below the floor line.
fn under(svg: &mut Markup, middle: Length, x: &dyn Fn(Length) -> String, floor: f64, words: &str) {
    let (x, y) = (x(middle), num(floor + 15.0));
    svg.leaf("text", &[("class", "d"), ("text-anchor", "middle"), ("x", &x), ("y", &y)], words);
}

/// Strokes for fins, leaving bare tube at both ends.
fn fins(left: f64, width: f64, top: f64) -> String {
    let mut path = String::new();
    let mut at = left + 6.0;
    while at < left + width - 4.0 {
        path.push_str(&format!("M{} {}v{}", num(at), num(top + 4.0), num(BASEBOARD - 8.0)));
        at += 5.0;
    }
    path
}
