//! Workings of the heat loss.

use super::{Formula, Part as Symbol, Step, Steps, air, ground, term};
use crate::building::{Band, Behind, Part, Path, PathLoss, RoomId, Surface};
use crate::design::Design;
use crate::job::Job;

/// A symbol for each of the first rooms; sums of more are shown with the last symbol repeated.
const ROOM_SYMBOLS: [&str; 12] =
    ["Q_1", "Q_2", "Q_3", "Q_4", "Q_5", "Q_6", "Q_7", "Q_8", "Q_9", "Q_10", "Q_11", "Q_12"];

pub(super) fn house_load(design: &Design) -> Vec<Step> {
    let symbol = |index: usize| ROOM_SYMBOLS.get(index).copied().unwrap_or("Q_n");
    let rooms = design.rooms.iter().enumerate();
    whole(&mut rooms.map(|(i, room)| (symbol(i), room.load.total.si())), ("Q", design.load.si()))
}

/// A sum with all of its parts, also where there is but one.
pub(super) fn whole(parts: &mut dyn Iterator<Item = Symbol>, sum: Symbol) -> Vec<Step> {
    vec![Step { formula: Formula::Sum, terms: parts.map(term).collect(), result: term(sum) }]
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
    let parts = Part::ALL.into_iter();
    let there = parts.filter(|&part| load.paths.iter().any(|path| path.part == part));
    Some(whole(
        &mut there.map(|part| (part_symbol(part), load.of(part).si())),
        ("Q", load.total.si()),
    ))
}

pub(super) fn per_area(job: &Job, design: &Design, room: RoomId) -> Option<Vec<Step>> {
    let load = design.room(room)?.load.total.si();
    let area = job.house.rooms.iter().find(|r| r.id == room)?.floor_area.si();
    Some(Steps::default().end(Formula::PerArea, &[load, area], "q_A", load / area))
}

pub(super) fn path_loss(job: &Job, design: &Design, room: RoomId, path: Path) -> Option<Vec<Step>> {
    let paths = match design.room(room) {
        Some(solved) => &solved.load.paths,
        None => &design.spaces.iter().find(|space| space.space == room)?.paths,
    };
    let loss = paths.iter().find(|p| p.path == path)?;
    match path {
        Path::Surface(_) | Path::Opening(..) | Path::Neighbour(..) => transmission(job, room, loss),
        Path::Ground(surface) => ground::steady(job, room, surface, loss),
        Path::GroundSwing(surface) => ground::swing(job, room, surface, loss),
        Path::SlabEdge(_) => ground::slab_edge(job, room, loss),
        Path::Air => air::leaked(job, room, loss),
        Path::Ventilation => air::ventilated(job, room, loss),
    }
}

fn transmission(job: &Job, room: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let (area, u) = (loss.area?.si(), loss.transmittance?.si());
    let mut steps = Steps::default();
    net_area(job, room, loss.path, &mut steps);
    steps.add(Formula::Reciprocal, &[u], "R");
    Some(along(steps, Formula::Transmission, &[u, area], loss))
}

/// The steps, ended by the heat between the two ends of a path.
pub(super) fn along(
    steps: Steps,
    formula: Formula,
    conductance: &[f64],
    loss: &PathLoss,
) -> Vec<Step> {
    let numbers = [conductance, &[loss.inside.si(), loss.beyond.si()]].concat();
    steps.end(formula, &numbers, "Q", loss.loss.si())
}

/// The area of a surface with openings, or with a part in the earth, as a sum with those negative.
fn net_area(job: &Job, room: RoomId, path: Path, steps: &mut Steps) -> Option<()> {
    let Path::Surface(id) = path else { return None };
    let surface = surfaces(job, room)?.iter().find(|s| s.id == id)?;
    let buried = match surface.behind {
        Behind::Ground { depth } => {
            let sides = [surface.along.si(), depth.si()];
            Some(("A_w", -steps.add(Formula::WallArea, &sides, "A_w")))
        }
        _ => None,
    };
    let openings = surface.openings.iter().map(|opening| ("A_opening", -opening.area().si()));
    let whole = ("A_gross", surface.gross_area.si());
    steps.sum(&mut [whole].into_iter().chain(buried).chain(openings), "A");
    Some(())
}

/// The surfaces entered in a room or an unheated space.
fn surfaces(job: &Job, room: RoomId) -> Option<&[Surface]> {
    let house = &job.house;
    let rooms = house.rooms.iter().map(|r| (r.id, &r.surfaces));
    let spaces = house.spaces.iter().map(|s| (s.id, &s.surfaces));
    rooms.chain(spaces).find(|(id, _)| *id == room).map(|(_, surfaces)| surfaces.as_slice())
}

/// Half the band is the root of the squares of what each input does alone.
pub(super) fn band(design: &Design) -> Vec<Step> {
    let alone = design.certainty.effects.iter().map(|effect| effect.alone.si());
    let alone: Vec<f64> = alone.filter(|alone| *alone > 0.0).collect();
    let mut steps = Steps::default();
    if alone.is_empty() {
        return steps.0;
    }
    let half = Formula::RootOfSquares.evaluate(&alone);
    let terms = alone.into_iter().map(|alone| term(("Q_alone", alone))).collect();
    steps.push(Formula::RootOfSquares, terms, ("Q_half", half));
    let Band { low, high } = design.certainty.house;
    for (symbol, half, end) in [("Q_low", -half, low), ("Q_high", half, high)] {
        let terms = [("Q", design.load.si()), ("Q_half", half)];
        steps.push(Formula::Sum, terms.map(term).to_vec(), (symbol, end.si()));
    }
    steps.0
}
