//! Plans with the way of the water: each storey that is heated, its pieces along their walls, and how
//! the zones' water passes them.
//!
//! Supply is a thick line with solid arrows, return a thin one with open arrows; a zone has its dashes
//! and its letter. So all is told apart without colour.

mod ways;

use super::follow::Loop;
use super::key::Marks;
use super::pen::{Align, WIDTH, path, way, wide as wide_of};
use super::plan::{Placed, arrange, contour, placed};
use super::sheet::Sheet;
use super::stand::stands;
use crate::parts::in_system;
use finrun_engine::building::{Level, OpeningKind};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job, wall_shape};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Length, System};
use finrun_text as text;
use finrun_text::Mark;

/// Around the plan.
const PAD: f64 = 4.0;
const LINE: f64 = 16.0;

/// Lines of the zones, told apart by their dashes.
const ZONES: [&str; 6] = ["line-0", "line-1", "line-2", "line-3", "line-4", "line-5"];

/// A storey in the making.
pub(super) struct Plan<'a> {
    marks: Marks,
    job: &'a Job,
    rooms: &'a [Placed],
    level: Level,
    scale: f64,
    /// Of the zone at hand.
    zone: usize,
    letter: String,
    /// Where a mark stands already.
    taken: Vec<(f64, f64)>,
}

pub(super) fn route_plans(
    draft: &Draft,
    job: &Job,
    design: &Design,
    loops: &[Loop],
    system: System,
) -> Vec<Sheet> {
    let mut storeys = Vec::new();
    let mut widest: f64 = 1e-9;
    for &level in Level::ALL {
        let mut rooms = placed(draft, job, design, level);
        let (wide, deep) = arrange(&mut rooms);
        if !rooms.is_empty() {
            widest = widest.max(wide);
            storeys.push((level, rooms, deep));
        }
    }
    // All to one scale, as storeys lie on each other.
    let scale = (WIDTH - 2.0 * PAD) / widest;
    let sheet = |(level, rooms, deep): &(Level, Vec<Placed>, f64)| {
        let plan = Plan {
            marks: Marks::default(),
            job,
            rooms,
            level: *level,
            scale,
            zone: 0,
            letter: String::new(),
            taken: Vec::new(),
        };
        plan.draw(draft, design, loops, *deep, system)
    };
    storeys.iter().map(sheet).collect()
}

impl Plan<'_> {
    fn draw(
        mut self,
        draft: &Draft,
        design: &Design,
        loops: &[Loop],
        deep_m: f64,
        system: System,
    ) -> Sheet {
        let high = deep_m * self.scale + 2.0 * PAD;
        for room in self.rooms {
            let corner = (PAD + room.x * self.scale, PAD + room.y * self.scale);
            path(&mut self.marks.svg, "plaster", &contour(&room.outline, corner, self.scale));
        }
        for room in self.rooms {
            self.openings(draft, room, deep_m);
        }
        let mut order = String::new();
        let mut all_known = true;
        for (at, one) in loops.iter().enumerate() {
            self.zone = one.zone;
            self.letter = letter(loops, at);
            let here = |room: usize| self.job.house.rooms[room].level == self.level;
            for visit in one.visits.iter().filter(|visit| here(visit.room)) {
                let Some(room) = self.job.house.rooms.get(visit.room) else { continue };
                order.push_str(if order.is_empty() { "" } else { ", " });
                order.push_str(&text::room_name(draft, room.id));
                all_known &= visit.steps.iter().all(|step| step.known);
            }
            self.one_loop(one);
        }
        for room in self.rooms {
            self.words(room, design, system);
        }
        let y = self.zones(draft, high + 4.0);
        let high = self.marks.key(y);
        let level = text::level(self.level);
        let mut notes = vec![text::route_note()];
        if !all_known {
            notes.push(text::walls_unplaced());
        }
        Sheet {
            title: text::route_title(level),
            label: text::route_picture(level, &order),
            notes,
            marks: self.marks,
            high,
        }
    }

    /// Windows and doors in the walls whose places are known.
    fn openings(&mut self, draft: &Draft, placed: &Placed, deep_m: f64) {
        let Some(room) = draft.room(placed.id) else { return };
        for (wall, stand) in stands(draft, room, placed, deep_m) {
            let (Some(stand), Some(shape)) = (stand, wall_shape(draft, room.id, wall)) else {
                continue;
            };
            for &(kind, left, width, _) in &shape.openings {
                let at = |along: Length| {
                    let (x, y) = stand.edge.at(stand.from_m + along.si());
                    (PAD + x * self.scale, PAD + y * self.scale)
                };
                let (from, to) = (at(left), at(left + width));
                let d = way(&[("M", from.0), (" ", from.1), ("L", to.0), (" ", to.1)]);
                let mark = if kind == OpeningKind::Door { Mark::Door } else { Mark::Window };
                self.marks.line(mark, "gap", &d);
                if kind == OpeningKind::Window {
                    path(&mut self.marks.svg, "dim", &d);
                }
            }
        }
    }

    /// A room's name, its measures, and the length of its element, as far as there is place.
    fn words(&mut self, room: &Placed, design: &Design, system: System) {
        let outline = &room.outline;
        let (wide, high) = (outline.length.si() * self.scale, outline.width.si() * self.scale);
        let front = outline.cut.map_or(0.0, |(_, width)| width.si() * self.scale);
        let element = design.room(room.id).map_or(Length::ZERO, |room| room.element.choice.nominal);
        let (length, width) = (in_system(outline.length, system), in_system(outline.width, system));
        let sides = text::by(&length, &width);
        let fits = |line: &str| wide_of(line) <= wide - 16.0;
        let most = (((high - front - 26.0) / LINE).max(1.0) as usize).max(1);
        let mut lines = vec![room.name.clone()];
        if fits(&sides) {
            lines.push(sides);
        } else if most > 2 {
            // Two lines, where one is too long.
            lines.extend(text::by_lines(&length, &width));
        }
        lines.push(match element > Length::ZERO {
            true => text::element_of(&in_system(element, system)),
            false => text::no_element().to_string(),
        });
        // What does not fit is left to the elevations; a name is cut.
        lines.retain(|line| *line == room.name || fits(line));
        lines.truncate(most);
        let middle = PAD + room.x * self.scale + wide / 2.0;
        let y = PAD + room.y * self.scale + front + (high - front) / 2.0;
        let first = y - LINE * lines.len() as f64 / 2.0 + 12.0;
        for (at, line) in lines.iter().enumerate() {
            let class = if at == 0 { "strong halo" } else { "d halo" };
            let place = (middle, first + LINE * at as f64);
            self.marks.say(class, Align::Middle, place, wide - 16.0, line);
        }
    }

    /// The letter and the line of each zone.
    fn zones(&mut self, draft: &Draft, y: f64) -> f64 {
        let mut y = y;
        for (at, zone) in self.job.zones.iter().enumerate() {
            y += 22.0;
            let class = ZONES[at % ZONES.len()];
            path(&mut self.marks.svg, class, &way(&[("M", 10.0), (" ", y - 5.0), ("h", 40.0)]));
            let (name, kind) =
                (text::zone_name(draft, zone.id), text::arrangement(zone.arrangement));
            let line = text::zone_line(&zone_letter(at), &name, kind);
            self.marks.say("d", Align::Start, (60.0, y), 296.0, &line);
        }
        y + 4.0
    }
}

/// A zone's letter, and the number of a loop that it has beside others.
fn letter(loops: &[Loop], at: usize) -> String {
    let zone = loops[at].zone;
    let mut letter = zone_letter(zone);
    if loops.iter().filter(|other| other.zone == zone).count() > 1 {
        let before = loops[..at].iter().filter(|other| other.zone == zone).count();
        letter.push_str(&(before + 1).to_string());
    }
    letter
}

fn zone_letter(zone: usize) -> String {
    char::from(b'A' + (zone % 26) as u8).to_string()
}
