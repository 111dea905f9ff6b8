//! A wall as one stands before it: windows, doors, what is free for baseboard, the pieces on it.

use crate::parts::{in_system, live_view};
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
/// A baseboard enclosure is some 8 in high, judgement: enough to be seen and to carry its length.
const BASEBOARD: f64 = 18.0;
/// Under the floor line: dimensions.
const BELOW: f64 = 22.0;

/// The pieces on the runs of one wall.
fn wall_pieces(design: &Design, room: RoomId, surface: SurfaceId) -> Vec<(Run, Vec<Length>)> {
    design
        .room(room)
        .map(|solved| {
            solved
                .element
                .choice
                .runs
                .iter()
                .filter(|run| run.surface == surface)
                .map(|run| (run.run, run.pieces.clone()))
                .collect()
        })
        .unwrap_or_default()
}

/// What the drawing shows besides the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shows {
    Free,
    Pieces,
}

pub(crate) fn wall_drawing(room: RoomId, surface: SurfaceId, shows: Shows) -> AnyView {
    let app = use_app();
    let picture = move || {
        let shape = app.draft.with(|draft| wall_shape(draft, room, surface))?;
        let pieces = app.solved.with(|solved| {
            let (_, design) = solved.as_ref()?;
            Some(wall_pieces(design, room, surface))
        });
        Some((shape, pieces.unwrap_or_default()))
    };
    live_view(move || {
        let name = app.draft.with(|draft| text::surface_name(draft, room, surface));
        match picture() {
            Some((shape, pieces)) => draw(&name, &shape, &pieces, shows, app.system()),
            None => ().into_any(),
        }
    })
}

fn draw(
    name: &str,
    shape: &WallShape,
    pieces: &[(Run, Vec<Length>)],
    shows: Shows,
    system: System,
) -> AnyView {
    // Very long walls would become a hair: their height is drawn larger than to scale.
    let scale = (WIDTH - 2.0 * MARGIN) / shape.length.si();
    let tall = (shape.height.si() * scale).clamp(56.0, 170.0);
    let upright = tall / shape.height.si();
    let x = |length: Length| MARGIN + length.si() * scale;
    let floor = MARGIN + tall;
    let openings = shape.openings.iter().map(|&(kind, left, width, height)| {
        let high = (height.si() * upright).min(tall);
        // Window heads stand in line with door heads, where there is room for it.
        let head = match kind {
            OpeningKind::Door => floor - high,
            OpeningKind::Window => (floor - 2.032 * upright).max(MARGIN + 4.0).min(floor - high),
        };
        let class = match kind {
            OpeningKind::Door => "door",
            OpeningKind::Window => "window",
        };
        view! {
            <rect class=class x=num(x(left)) y=num(head) width=num(width.si() * scale) height=num(high)/>
        }
    });
    let openings = openings.collect_view();
    let base = floor - BASEBOARD;
    let on_floor = match shows {
        Shows::Free => shape
            .runs
            .iter()
            .map(|run| {
                let width = run.length.si() * scale;
                let said = text::free_for_baseboard(&in_system(run.length, system));
                let short = in_system(run.length, system);
                let label = if width > 190.0 { said } else { short };
                view! {
                    <rect class="free" x=num(x(run.start)) y=num(base) width=num(width) height=num(BASEBOARD)/>
                    <text class="d" text-anchor="middle" x=num(x(run.start) + width / 2.0) y=num(floor + 16.0)>
                        {label}
                    </text>
                }
            })
            .collect_view()
            .into_any(),
        Shows::Pieces => pieces
            .iter()
            .flat_map(|(run, pieces)| {
                let total: Length = pieces.iter().copied().sum();
                let mut at = run.start + (run.length - total) / 2.0;
                pieces.iter().map(move |&piece| {
                    let here = at;
                    at += piece;
                    (here, piece)
                })
            })
            .map(|(at, piece)| {
                let width = piece.si() * scale;
                view! {
                    <rect class="element" x=num(x(at)) y=num(base) width=num(width) height=num(BASEBOARD)/>
                    <path class="fins" d=fins(x(at), width, base)/>
                    <text class="piece" text-anchor="middle" x=num(x(at) + width / 2.0) y=num(floor + 16.0)>
                        {in_system(piece, system)}
                    </text>
                }
            })
            .collect_view()
            .into_any(),
    };
    view! {
        <svg
            class="wall"
            role="img"
            aria-label=text::wall_picture(name)
            viewBox=format!("0 0 {} {}", num(WIDTH), num(floor + BELOW))
        >
            <rect class="plaster" x=num(MARGIN) y=num(MARGIN) width=num(WIDTH - 2.0 * MARGIN) height=num(tall)/>
            {openings}
            {on_floor}
            <path class="floor-line" d=format!("M0 {}H{}", num(floor), num(WIDTH))/>
        </svg>
    }
    .into_any()
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

/// A coordinate: a tenth of a unit is finer than any screen.
pub(super) fn num(value: f64) -> String {
    format!("{value:.1}")
}
