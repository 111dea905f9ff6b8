//! A plan of one storey: every heated room to scale, shaded by what a part of its floor loses.

use crate::markup::{Markup, num};
use crate::parts::in_system;
use finrun_engine::building::Level;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job, Outline, outline};
use finrun_engine::quantity::{Kind, Power, System, Value};
use finrun_text as text;

/// Width of the picture in its own units; its height follows.
const WIDTH: f64 = 360.0;

/// A room on the plan: metres from the left and from the back.
struct Placed {
    name: String,
    outline: Outline,
    load: Power,
    per_area: f64,
    x: f64,
    y: f64,
}

/// The plan of a storey as markup; empty where no room lies on it.
pub(crate) fn plan(draft: &Draft, job: &Job, design: &Design, level: Level) -> String {
    let system = draft.units;
    let densities = || {
        job.house
            .rooms
            .iter()
            .zip(&design.rooms)
            .map(|(room, solved)| solved.load.total.si() / room.floor_area.si())
    };
    let most = densities().fold(1e-9, f64::max);
    let mut rooms: Vec<Placed> = job
        .house
        .rooms
        .iter()
        .zip(&design.rooms)
        .zip(densities())
        .filter(|((room, _), _)| room.level == level)
        .filter_map(|((room, solved), per_area)| {
            let outline = outline(draft, room.id)?;
            let name = text::room_name(draft, room.id);
            Some(Placed { name, outline, load: solved.load.total, per_area, x: 0.0, y: 0.0 })
        })
        .collect();
    if rooms.is_empty() {
        return String::new();
    }
    let (wide, deep) = arrange(&mut rooms);
    let scale = (WIDTH - 4.0) / wide;
    let mut svg = Markup::new();
    let view_box = format!("0 0 {} {}", num(WIDTH), num(deep * scale + 4.0));
    let label = text::plan_picture(text::level(level));
    svg.open(
        "svg",
        &[("class", "plan"), ("role", "img"), ("aria-label", &label), ("viewBox", &view_box)],
    );
    for room in &rooms {
        draw(&mut svg, room, scale, most, system);
    }
    svg.close("svg");
    svg.done()
}

/// Puts each room where it was said to lie, the others in rows behind those, and gives the width
/// and depth of all.
fn arrange(rooms: &mut [Placed]) -> (f64, f64) {
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
    let mut path = format!("M{} {}h{}", num(left), num(top), num(wide));
    match room.outline.cut {
        // The corner at the back right is cut out.
        Some((length, width)) => {
            let (cut_wide, cut_high) = (length.si() * scale, width.si() * scale);
            path = format!(
                "M{} {}h{}v{}h{}",
                num(left),
                num(top),
                num(wide - cut_wide),
                num(cut_high),
                num(cut_wide)
            );
            path.push_str(&format!("v{}", num(high - cut_high)));
        }
        None => path.push_str(&format!("v{}", num(high))),
    }
    path.push_str(&format!("h{}z", num(-wide)));
    // Five shades; the number says it for those who cannot tell them apart.
    let shade = ((room.per_area / most * 5.0) as usize).min(4);
    svg.leaf("path", &[("class", SHADES[shade]), ("d", &path)], "");
    let density = in_system(Value::new(Kind::PowerDensity, room.per_area), system);
    let lines = [room.name.as_str(), &density, &in_system(room.load, system)];
    let middle = num(left + wide / 2.0);
    // What does not fit is left to the table.
    let fit = ((high / 14.0) as usize).min(lines.len());
    let shown: Vec<&str> = lines
        .into_iter()
        .filter(|line| line.chars().count() as f64 * 5.4 < wide)
        .take(fit)
        .collect();
    let first = top + high / 2.0 - 6.5 * shown.len() as f64 + 10.0;
    for (index, line) in shown.iter().enumerate() {
        let y = num(first + 13.0 * index as f64);
        svg.leaf(
            "text",
            &[("class", "d"), ("text-anchor", "middle"), ("x", &middle), ("y", &y)],
            line,
        );
    }
}

const SHADES: [&str; 5] = ["heat-0", "heat-1", "heat-2", "heat-3", "heat-4"];
