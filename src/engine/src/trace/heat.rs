//! Workings of the heat loss.

use super::{Formula, Step, Term, step, term};
use crate::building::{Part, Path, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Area, Kind, Value};

/// A symbol for each of the first rooms; sums of more are shown with the last symbol repeated.
const ROOM_SYMBOLS: [&str; 12] =
    ["Q_1", "Q_2", "Q_3", "Q_4", "Q_5", "Q_6", "Q_7", "Q_8", "Q_9", "Q_10", "Q_11", "Q_12"];

pub(super) fn house_load(design: &Design) -> Vec<Step> {
    let terms = design
        .rooms
        .iter()
        .enumerate()
        .map(|(i, room)| term(ROOM_SYMBOLS.get(i).copied().unwrap_or("Q_n"), room.load.total))
        .collect();
    vec![step(Formula::Sum, terms, term("Q", design.load))]
}

fn part_symbol(part: Part) -> &'static str {
    match part {
        Part::Wall => "Q_wall",
        Part::Window => "Q_window",
        Part::Door => "Q_door",
        Part::Ceiling => "Q_ceiling",
        Part::Floor => "Q_floor",
        Part::Ground => "Q_ground",
        Part::Air => "Q_air",
    }
}

pub(super) fn room_load(design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let load = &design.room(room)?.load;
    let terms = Part::ALL
        .into_iter()
        .filter(|&part| load.paths.iter().any(|path| path.part == part))
        .map(|part| term(part_symbol(part), load.of(part)))
        .collect();
    Some(vec![step(Formula::Sum, terms, term("Q", load.total))])
}

pub(super) fn per_area(job: &Job, design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let load = design.room(room)?.load.total;
    let area = job.house.rooms.iter().find(|r| r.id == room)?.floor_area;
    let result = Value::new(Kind::PowerDensity, load.si() / area.si());
    let terms = vec![term("Q", load), term("A", area)];
    Some(vec![step(Formula::PerArea, terms, Term { symbol: "q", value: result })])
}

pub(super) fn path_loss(job: &Job, design: &Design, room: RoomId, path: Path) -> Option<Vec<Step>> {
    let solved = design.room(room)?;
    let loss = solved.load.paths.iter().find(|p| p.path == path)?;
    let temperatures = [term("T_in", loss.inside), term("T_out", loss.beyond)];
    if let (Some(area), Some(u)) = (loss.area, loss.transmittance) {
        let terms = [vec![term("U", u), term("A", area)], temperatures.to_vec()].concat();
        let r = step(Formula::Reciprocal, vec![term("U", u)], term("R", u.resistance()));
        let mut steps = net_area(job, room, path, area).into_iter().collect::<Vec<_>>();
        steps.push(r);
        steps.push(step(Formula::Transmission, terms, term("Q", loss.loss)));
        return Some(steps);
    }
    let terms = [vec![term("H", loss.conductance)], temperatures.to_vec()].concat();
    Some(vec![step(Formula::Conductance, terms, term("Q", loss.loss))])
}

/// The area of a surface with openings, as a sum with the openings negative.
fn net_area(job: &Job, room: RoomId, path: Path, net: Area) -> Option<Step> {
    let Path::Surface(id) = path else { return None };
    let room = job.house.rooms.iter().find(|r| r.id == room)?;
    let surface = room.surfaces.iter().find(|s| s.id == id)?;
    if surface.openings.is_empty() {
        return None;
    }
    let mut terms = vec![term("A_gross", surface.gross_area)];
    terms.extend(surface.openings.iter().map(|opening| term("A_opening", -opening.area())));
    Some(step(Formula::Sum, terms, term("A", net)))
}
