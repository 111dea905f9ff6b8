//! Plans, storey by storey: every heated room to scale, shaded by what a part of its floor loses.

use super::pen::way;
use crate::markup::{Markup, num};
use crate::parts::in_system;
use finrun_engine::building::{Level, RoomId};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job, Outline, outline};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Kind, Length, Power, System, Value};
use finrun_text as text;

/// Width of the picture in its own units; its height follows.
const WIDTH: f64 = 360.0;
/// Height of a line of text, and the width of a usual letter.
const LINE: f64 = 16.0;
const LETTER: f64 = 6.6;

/// A room on the plan: metres from the left and from the back.
pub(super) struct Placed {
    pub(super) id: RoomId,
    pub(super) name: String,
    pub(super) outline: Outline,
    load: Power,
    per_area: f64,
    pub(super) x: f64,
    pub(super) y: f64,
}

/// A plan of every storey that has a heated room, all to one scale.
pub(crate) fn plans(draft: &Draft, job: &Job, design: &Design) -> String {
    let most = densities(job, design).fold(1e-9, f64::max);
    let storeys: Vec<_> = Level::ALL
        .iter()
        .map(|&level| {
            let mut rooms = placed(draft, job, design, level);
            let size = arrange(&mut rooms);
            (level, rooms, size)
        })
        .filter(|(_, rooms, _)| !rooms.is_empty())
        .collect();
    let widest = storeys.iter().fold(1e-9, |widest: f64, (_, _, (wide, _))| widest.max(*wide));
    let scale = (WIDTH - 4.0) / widest;
    let mut out = Markup::new();
    for (level, rooms, (_, deep)) in &storeys {
        let label = text::plan_picture(text::level(*level));
        let view_box = format!("0 0 {} {}", num(WIDTH), num(deep * scale + 4.0));
        out.open("figure", &[]);
        out.leaf("figcaption", &[("class", "side")], &label);
        out.open(
            "svg",
            &[("class", "plan"), ("role", "img"), ("aria-label", &label), ("viewBox", &view_box)],
        );
        for room in rooms {
            draw(&mut out, room, scale, most, draft.units);
        }
        out.close("svg");
        out.close("figure");
    }
    out.done()
}

/// What a part of each room's floor loses.
fn densities(job: &Job, design: &Design) -> impl Iterator<Item = f64> {
    let rooms = job.house.rooms.iter().zip(&design.rooms);
    rooms.map(|(room, solved)| solved.load.total.si() / room.floor_area.si())
}

/// The rooms of one storey, not yet in their places.
pub(super) fn placed(draft: &Draft, job: &Job, design: &Design, level: Level) -> Vec<Placed> {
    job.house
        .rooms
        .iter()
        .zip(&design.rooms)
        .zip(densities(job, design))
        .filter(|((room, _), _)| room.level == level)
        .filter_map(|((room, solved), per_area)| {
            let outline = outline(draft, room.id)?;
            let name = text::room_name(draft, room.id);
            let load = solved.load.total;
            Some(Placed { id: room.id, name, outline, load, per_area, x: 0.0, y: 0.0 })
        })
        .collect()
}

/// Puts each room where it was said to lie, the others in rows behind those, and gives the width
/// and depth of all.
pub(super) fn arrange(rooms: &mut [Placed]) -> (f64, f64) {
    let ends = |room: &Placed| {
        let place = room.outline.place?;
        Some(((place.0 + room.outline.length).si(), (place.1 + room.outline.width).si()))
    };
    let known = rooms.iter().filter_map(ends);
    let (mut wide, mut deep) =
        known.fold((0.0, 0.0), |(x, y): (f64, f64), (right, back)| (x.max(right), y.max(back)));
    let area: f64 = rooms.iter().map(|r| r.outline.length.si() * r.outline.width.si()).sum::<f64>();
    let row_width = wide.max(1.5 * area.sqrt());
    let (mut x, mut row) = (0.0, 0.0);
    for room in rooms.iter_mut() {
        let (length, width) = (room.outline.length.si(), room.outline.width.si());
        if let Some((left, front)) = room.outline.place {
            (room.x, room.y) = (left.si(), front.si());
            continue;
        }
        if x > 0.0 && x + length > row_width {
            (x, deep, row) = (0.0, deep + row, 0.0);
        }
        (room.x, room.y) = (x, deep);
        x += length;
        row = f64::max(row, width);
        wide = wide.max(x);
    }
    deep += row;
    // The front lies at the foot of the sheet.
    for room in rooms.iter_mut() {
        room.y = deep - room.y - room.outline.width.si();
    }
    (wide, deep)
}

fn draw(svg: &mut Markup, room: &Placed, scale: f64, most: f64, system: System) {
    let at = |metres: f64| 2.0 + metres * scale;
    let (left, top) = (at(room.x), at(room.y));
    let (wide, high) = (room.outline.length.si() * scale, room.outline.width.si() * scale);
    let path = contour(&room.outline, (left, top), scale);
    // Five shades; the number says it for those who cannot tell them apart.
    let shade = ((room.per_area / most * 5.0) as usize).min(4);
    svg.leaf("path", &[("class", SHADES[shade]), ("d", &path)], "");
    let density = in_system(Value::new(Kind::PowerDensity, room.per_area), system);
    let lines = [room.name.as_str(), &density, &in_system(room.load, system)];
    let middle = num(left + wide / 2.0);
    // An L is as wide as its front part below the cut, where that is high enough for words.
    let front = room.outline.cut.map_or(0.0, |(_, width)| width.si() * scale);
    let (top, high) = match high - front > 3.0 * LINE {
        true => (top + front, high - front),
        false => (top, high),
    };
    // What does not fit is left to the table.
    let fit = ((high / LINE) as usize).min(lines.len());
    let shown: Vec<&str> = lines
        .into_iter()
        .filter(|line| line.chars().count() as f64 * LETTER < wide)
        .take(fit)
        .collect();
    let first = top + (high - LINE * shown.len() as f64) / 2.0 + 13.0;
    for (index, line) in shown.iter().enumerate() {
        let y = num(first + LINE * index as f64);
        svg.leaf("text", &[("text-anchor", "middle"), ("x", &middle), ("y", &y)], line);
    }
}

/// The path of an outline whose back left corner is at a place of the sheet.
pub(super) fn contour(outline: &Outline, (left, top): (f64, f64), scale: f64) -> String {
    let (wide, high) = (outline.length.si() * scale, outline.width.si() * scale);
    // The corner at the back right may be cut out.
    let cut = outline.cut.unwrap_or((Length::ZERO, Length::ZERO));
    let (cut_wide, cut_high) = (cut.0.si() * scale, cut.1.si() * scale);
    let mut path = way(&[("M", left), (" ", top), ("h", wide - cut_wide)]);
    path.push_str(&way(&[("v", cut_high), ("h", cut_wide), ("v", high - cut_high), ("h", -wide)]));
    path.push('z');
    path
}

const SHADES: [&str; 5] = ["heat-0", "heat-1", "heat-2", "heat-3", "heat-4"];
