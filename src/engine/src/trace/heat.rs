//! Workings of the heat loss.

use super::{Formula, Found, Steps, air, ground};
use crate::building::{Behind, Part, Path, PathLoss, RoomId, Surface};
use crate::design::Design;
use crate::job::Job;

/// A symbol for each of the first rooms; sums of more are shown with the last symbol repeated.
const ROOM_SYMBOLS: [&str; 12] =
    ["Q_1", "Q_2", "Q_3", "Q_4", "Q_5", "Q_6", "Q_7", "Q_8", "Q_9", "Q_10", "Q_11", "Q_12"];

pub(super) fn house_load(steps: &mut Steps, design: &Design) -> Found {
    for (index, room) in design.rooms.iter().enumerate() {
        let symbol = ROOM_SYMBOLS.get(index).copied().unwrap_or("Q_n");
        steps.part(symbol, room.load.total.si());
    }
    steps.total("Q", design.load.si())
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

pub(super) fn room_load(steps: &mut Steps, design: &Design, room: RoomId) -> Found {
    let load = &design.room(room)?.load;
    for part in Part::ALL {
        if load.paths.iter().any(|path| path.part == part) {
            steps.part(part_symbol(part), load.of(part).si());
        }
    }
    steps.total("Q", load.total.si())
}

pub(super) fn per_area(steps: &mut Steps, job: &Job, design: &Design, room: RoomId) -> Found {
    let load = design.room(room)?.load.total.si();
    let area = job.house.rooms.iter().find(|r| r.id == room)?.floor_area.si();
    steps.add(Formula::PerArea, &[load, area], "q_A");
    Some(())
}

pub(super) fn path_loss(
    steps: &mut Steps,
    job: &Job,
    design: &Design,
    room: RoomId,
    path: Path,
) -> Found {
    let paths = match design.room(room) {
        Some(solved) => &solved.load.paths,
        None => &design.spaces.iter().find(|space| space.space == room)?.paths,
    };
    let loss = paths.iter().find(|p| p.path == path)?;
    match path {
        Path::Surface(_) | Path::Opening(..) | Path::Neighbour(..) => {
            transmission(steps, job, room, loss)
        }
        Path::Ground(surface) => ground::steady(steps, job, room, surface, loss),
        Path::GroundSwing(surface) => ground::swing(steps, job, room, surface, loss),
        Path::SlabEdge(_) => ground::slab_edge(steps, job, room, loss),
        Path::Air => air::leaked(steps, job, room, loss),
        Path::Ventilation => air::ventilated(steps, job, room, loss),
    }
}

fn transmission(steps: &mut Steps, job: &Job, room: RoomId, loss: &PathLoss) -> Found {
    let (area, u) = (loss.area?.si(), loss.transmittance?.si());
    net_area(steps, job, room, loss.path);
    steps.add(Formula::Reciprocal, &[u], "R");
    along(steps, Formula::Transmission, &[u, area], loss)
}

/// The heat between the two ends of a path.
pub(super) fn along(
    steps: &mut Steps,
    formula: Formula,
    conductance: &[f64],
    loss: &PathLoss,
) -> Found {
    let mut numbers = conductance.to_vec();
    numbers.push(loss.inside.si());
    numbers.push(loss.beyond.si());
    steps.give(formula, &numbers, "Q", loss.loss.si())
}

/// The area of a surface with openings, or with a part in the earth, as a sum with those negative.
fn net_area(steps: &mut Steps, job: &Job, room: RoomId, path: Path) -> Found {
    let Path::Surface(id) = path else { return None };
    let surface = surfaces(job, room)?.iter().find(|s| s.id == id)?;
    steps.part("A_gross", surface.gross_area.si());
    if let Behind::Ground { depth } = surface.behind {
        let sides = [surface.along.si(), depth.si()];
        let buried = steps.add(Formula::WallArea, &sides, "A_w");
        steps.part("A_w", -buried);
    }
    for opening in &surface.openings {
        steps.part("A_opening", -opening.area().si());
    }
    steps.sum("A");
    Some(())
}

/// The surfaces entered in a room or an unheated space.
fn surfaces(job: &Job, room: RoomId) -> Option<&[Surface]> {
    let house = &job.house;
    match house.rooms.iter().find(|r| r.id == room) {
        Some(room) => Some(&room.surfaces),
        None => house.spaces.iter().find(|s| s.id == room).map(|s| s.surfaces.as_slice()),
    }
}

/// Half the band is the root of the squares of what each input does alone.
pub(super) fn band(steps: &mut Steps, design: &Design) -> Found {
    let mut squares = 0.0;
    for effect in &design.certainty.effects {
        let alone = effect.alone.si();
        if alone > 0.0 {
            squares += alone * alone;
            steps.part("Q_alone", alone);
        }
    }
    if squares <= 0.0 {
        return None;
    }
    let half = squares.sqrt();
    steps.spread(Formula::RootOfSquares, "Q_half", half);
    let band = &design.certainty.house;
    for (symbol, half, end) in [("Q_low", -half, band.low), ("Q_high", half, band.high)] {
        steps.part("Q", design.load.si());
        steps.part("Q_half", half);
        steps.total(symbol, end.si());
    }
    Some(())
}
