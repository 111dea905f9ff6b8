//! Workings of the heat loss.

use super::{Formula, Step, Steps, Term, air, ground, of, step, term};
use crate::building::{Band, Behind, Part, Path, PathLoss, RoomId, Surface};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Kind, Power, Value};

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

/// The ends of a path.
pub(super) fn ends(loss: &PathLoss) -> [Term; 2] {
    [term("T_in", loss.inside), term("T_out", loss.beyond)]
}

fn transmission(job: &Job, room: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let (area, u) = (term("A", loss.area?), term("U", loss.transmittance?));
    let mut steps = Steps::default();
    net_area(job, room, loss.path, &mut steps);
    steps.add(Formula::Reciprocal, &[u], "R", Kind::Resistance);
    let [inside, beyond] = ends(loss);
    let terms = [u, area, inside, beyond];
    Some(steps.end(Formula::Transmission, &terms, term("Q", loss.loss)))
}

/// The area of a surface with openings, or with a part in the earth, as a sum with those negative.
fn net_area(job: &Job, room: RoomId, path: Path, steps: &mut Steps) -> Option<()> {
    let Path::Surface(id) = path else { return None };
    let surface = surfaces(job, room)?.iter().find(|s| s.id == id)?;
    let mut terms = vec![term("A_gross", surface.gross_area)];
    if let Behind::Ground { depth } = surface.behind {
        let buried = [term("L", surface.along), term("z", depth)];
        let buried = steps.add(Formula::WallArea, &buried, "A_w", Kind::Area);
        terms.push(of("A_w", Kind::Area, -buried.value.si));
    }
    terms.extend(surface.openings.iter().map(|opening| term("A_opening", -opening.area())));
    steps.sum(&terms, "A");
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
    let effects = design.certainty.effects.iter().filter(|effect| effect.alone > Power::ZERO);
    let alone: Vec<Term> = effects.map(|effect| term("Q_alone", effect.alone)).collect();
    if alone.is_empty() {
        return Vec::new();
    }
    let load = term("Q", design.load);
    let Band { low, high } = design.certainty.house;
    let mut steps = Steps::default();
    let half = steps.add(Formula::RootOfSquares, &alone, "Q_half", Kind::Power);
    let less = of("Q_half", Kind::Power, -half.value.si);
    steps.0.push(step(Formula::Sum, vec![load, less], term("Q_low", low)));
    steps.end(Formula::Sum, &[load, half], term("Q_high", high))
}
