//! Elevations: each wall that holds baseboard as one stands before it, a sheet each, with windows,
//! doors, pieces, caps, corners, where the pipe leaves through the floor, and chains of dimensions.

use super::chain::{Across, chain, marks};
use super::follow::{Beyond, End, Step, Visit};
use super::key::Marks;
use super::pen::{Align, WIDTH, path, rect, way};
use super::sheet::Sheet;
use crate::parts::in_system;
use finrun_engine::building::{OpeningKind, RoomId, SurfaceId};
use finrun_engine::job::{BackPath, Draft, Field, LegKind, SurfaceField, WallShape, wall_shape};
use finrun_engine::quantity::{Length, System};
use finrun_text as text;
use finrun_text::Mark;

const MARGIN: f64 = 16.0;
/// A wall higher than this on the sheet is drawn smaller.
const HIGHEST: f64 = 210.0;
/// An enclosure is drawn higher than to scale, so that its parts can be told apart.
const HIGH: f64 = 16.0;
/// The head of a usual door; windows' heads stand in line with it, where there is room: 6 ft 8 in.
const HEAD_M: f64 = 2.032;

/// The chains of a wall, each from its left corner to its right: above it the windows, below it the
/// pieces and then the doors. Those that say nothing are left out.
pub(super) struct Chains {
    pub(super) windows: Vec<Length>,
    pub(super) pieces: Vec<Length>,
    pub(super) doors: Vec<Length>,
}

pub(super) fn chains(shape: &WallShape, steps: &[&Step]) -> Chains {
    let ends = vec![Length::ZERO, shape.length];
    let of = |wanted: OpeningKind| {
        let mut all = ends.clone();
        for (kind, left, width, _) in &shape.openings {
            if *kind == wanted {
                all.extend([*left, *left + *width]);
            }
        }
        all
    };
    let (windows, doors) = (of(OpeningKind::Window), of(OpeningKind::Door));
    let mut pieces = doors.clone();
    for step in steps {
        let mut at = step.start();
        pieces.push(at);
        for &piece in &step.pieces {
            at += piece;
            pieces.push(at);
        }
    }
    Chains { windows: marks(windows), pieces: marks(pieces), doors: marks(doors) }
}

/// The sheets of a room's walls, in the order of the water.
pub(super) fn elevations(draft: &Draft, id: RoomId, visit: &Visit, system: System) -> Vec<Sheet> {
    let mut walls: Vec<SurfaceId> = Vec::new();
    for step in &visit.steps {
        if !walls.contains(&step.surface) {
            walls.push(step.surface);
        }
    }
    let sheet = |wall: SurfaceId| {
        let shape = wall_shape(draft, id, wall)?;
        let steps: Vec<&Step> = visit.steps.iter().filter(|step| step.surface == wall).collect();
        Some(draw(draft, (id, wall), &shape, &steps, system))
    };
    walls.into_iter().filter_map(sheet).collect()
}

fn draw(
    draft: &Draft,
    (room, wall): (RoomId, SurfaceId),
    shape: &WallShape,
    steps: &[&Step],
    system: System,
) -> Sheet {
    let widest = (WIDTH - 2.0 * MARGIN) / shape.length.si();
    let scale = widest.min(HIGHEST / shape.height.si());
    let (wide, tall) = (shape.length.si() * scale, shape.height.si() * scale);
    let across = Across { left: (WIDTH - wide) / 2.0, scale, system };
    let chains = chains(shape, steps);
    let mut marks = Marks::default();
    let mut y = 2.0;
    if chains.windows.len() > 2 {
        y = chain(&mut marks.svg, y, &across, &chains.windows) + 4.0;
    }
    let (top, floor) = (y, y + tall);
    rect(&mut marks.svg, "plaster", across.left, top, wide, tall);
    for &(kind, left, width, height) in &shape.openings {
        let high = (height.si() * scale).min(tall);
        let (class, head) = match kind {
            OpeningKind::Door => ("door", floor - high),
            OpeningKind::Window => {
                ("window", (floor - HEAD_M * scale).max(top + 2.0).min(floor - high))
            }
        };
        rect(&mut marks.svg, class, across.x(left), head, width.si() * scale, high);
        let (name, class) = match kind {
            OpeningKind::Door => (text::door_short(), "d"),
            OpeningKind::Window => (text::window_short(), "d"),
        };
        let middle = (across.x(left + width / 2.0), head + high / 2.0 + 5.0);
        // A word that would be cut says nothing.
        if width.si() * scale > 52.0 && high > 18.0 {
            marks.say(class, Align::Middle, middle, width.si() * scale, name);
        }
    }
    for step in steps {
        baseboard(&mut marks, step, shape, &across, floor);
    }
    let line = way(&[("M", across.left - 10.0), (" ", floor), ("H", across.left + wide + 10.0)]);
    path(&mut marks.svg, "floor-line", &line);
    y = floor + 26.0;
    for one in [&chains.pieces, &chains.doors] {
        // Without doors the second would only repeat the wall.
        if one.len() > 2 {
            y = chain(&mut marks.svg, y, &across, one);
        }
    }
    y = chain(&mut marks.svg, y, &across, &[Length::ZERO, shape.length]);
    let high = marks.key(y + 4.0);
    let free_typed = draft.entry(Field::Surface(room, wall, SurfaceField::Free)).is_some();
    let mut notes = vec![text::elevation_note()];
    if steps.iter().any(|step| step.back == BackPath::InEnclosure) {
        notes.push(text::back_above_pieces());
    }
    if free_typed {
        notes.push(text::free_unplaced());
    }
    if steps.iter().flat_map(|step| step.ends).any(|end| matches!(end, End::Corner(_, Beyond::Cap)))
    {
        notes.push(text::ends_round_corner());
    }
    Sheet {
        title: text::elevation_title(
            &text::room_name(draft, room),
            &text::surface_name(draft, room, wall),
        ),
        label: said(shape, steps, system),
        notes,
        high,
        marks,
    }
}

/// What is seen, in words.
fn said(shape: &WallShape, steps: &[&Step], system: System) -> String {
    let count = |wanted| shape.openings.iter().filter(|opening| opening.0 == wanted).count();
    let mut pieces = String::new();
    for piece in steps.iter().flat_map(|step| &step.pieces) {
        if !pieces.is_empty() {
            pieces.push_str(", ");
        }
        pieces.push_str(&in_system(*piece, system));
    }
    text::elevation_picture(
        &in_system(shape.length, system),
        &in_system(shape.height, system),
        count(OpeningKind::Window),
        count(OpeningKind::Door),
        &pieces,
    )
}

/// The pieces of one stretch with all that ends and joins them.
fn baseboard(marks: &mut Marks, step: &Step, shape: &WallShape, across: &Across, floor: f64) {
    let (top, middle) = (floor - HIGH, floor - HIGH / 2.0);
    let mut at = step.start();
    let (left, right) = (across.x(at), across.x(at + step.length()));
    let corners = [across.x(Length::ZERO), across.x(shape.length)];
    let mut out = [left, right];
    // What runs on lies behind the caps and corners that end it.
    for (side, &end) in step.ends.iter().enumerate() {
        let away = if side == 0 { -1.0 } else { 1.0 };
        let from = out[side];
        let reach = match end {
            End::Capped | End::Turned => continue,
            End::Corner(..) => corners[side],
            End::Stub(long) | End::RunsOn(long) => from + away * long.si() * across.scale,
        };
        out[side] = reach.clamp(corners[0], corners[1]);
        marks.note(Mark::Enclosure);
        let (a, b) = (from.min(out[side]), from.max(out[side]));
        rect(&mut marks.svg, "symbol", a, top, b - a, HIGH);
    }
    for (nth, &piece) in step.pieces.iter().enumerate() {
        let (x, wide) = (across.x(at), piece.si() * across.scale);
        marks.note(Mark::Element);
        rect(&mut marks.svg, "element", x, top, wide, HIGH);
        let mut fins = String::new();
        let mut fin = x + 6.0;
        while fin < x + wide - 4.0 {
            fins.push_str(&way(&[("M", fin), (" ", top + 4.0), ("v", HIGH - 8.0)]));
            fin += 5.0;
        }
        path(&mut marks.svg, "fins", &fins);
        if nth > 0 {
            marks.symbol(Mark::Splice, (x, middle), 0);
        }
        at += piece;
    }
    let turn = if step.forward { 0 } else { 180 };
    marks.symbol(Mark::Flow, ((left + right) / 2.0, middle), turn);
    for (side, &end) in step.ends.iter().enumerate() {
        let x = out[side];
        match end {
            End::Corner(LegKind::OutsideCorner, _) => {
                marks.symbol(Mark::OutsideCorner, (x, middle), 0)
            }
            End::Corner(..) => marks.symbol(Mark::InsideCorner, (x, middle), 0),
            End::RunsOn(_) => {}
            End::Capped | End::Turned | End::Stub(_) => {
                let cap = if side == 0 { Mark::CapLeft } else { Mark::CapRight };
                let inside = if side == 0 { 6.0 } else { -6.0 };
                let leaving = (side == 1) == step.forward;
                let pipe = |leaving| if leaving { Mark::PipeDown } else { Mark::PipeUp };
                let back = step.back == BackPath::InEnclosure;
                match end == End::Turned {
                    true => {
                        let turn = if side == 0 { 180 } else { 0 };
                        marks.symbol(Mark::ReturnBend, (x + 2.0 * inside, middle), turn);
                    }
                    false => marks.symbol(pipe(leaving), (x + inside, floor + 2.0), 0),
                }
                // What goes back above the pieces passes the floor beside what comes.
                if back && end != End::Turned {
                    marks.symbol(pipe(!leaving), (x + 3.0 * inside, floor + 2.0), 0);
                }
                marks.symbol(cap, (x, middle), 0);
            }
        }
    }
}
