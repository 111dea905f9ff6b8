//! What can be tried for a short room, and what each changes.

use super::circuit::{Split, split};
use super::{Case, Circulator, Tried, Way};
use crate::arrangement::{gives, solve_piping};
use crate::building::{
    Behind, Built, RoomLoad, Run, Surface, SurfaceId, SurfaceKind, WallUse, losses,
};
use crate::check::MOST_VELOCITY;
use crate::job::{Flow, Job};
use crate::quantity::{
    Area, Length, Power, Resistance, Temperature, Transmittance, Unit, VolumeFlow,
};

/// A way out to try; how much of it is another number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Try {
    MoveFirst,
    /// The supply, in K.
    HotterWater,
    /// By which factor the rating rises.
    BetterElement,
    RuledOutWall(SurfaceId),
    /// The free length of a wall more, in m.
    NewWall,
    /// In m³/s.
    MoreFlow,
    /// Before the room at this place of its loop.
    SecondCircuit(usize),
    /// In W.
    LessLoss,
    /// The R-value in m² K/W.
    Insulate(SurfaceId),
}

/// How much may be tried: more than `low`, which is too little, up to `high`; found within `fine`. Where
/// there is no more and less, the two ends are the same.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reach {
    pub low: f64,
    pub high: f64,
    pub fine: f64,
}

const AS_IT_IS: Reach = Reach { low: 0.0, high: 0.0, fine: 0.0 };

/// Judgement: taller elements with larger fins give up to about twice as much a foot.
const MOST_FACTOR: f64 = 2.5;

/// Judgement: R-60, 18 in of loose fill, is about the most that is put into a house.
const MOST_R: f64 = 60.0;

/// What is worth trying for the room at `at`: without a wall there is nothing that water could help;
/// where the water is too cool, neither length nor output would do.
pub(super) fn tries(case: &Case, at: usize) -> Vec<Try> {
    let (Some(room), Some(solved)) = (case.job.house.rooms.get(at), case.design.rooms.get(at))
    else {
        return Vec::new();
    };
    let mut out = Vec::new();
    let walls = room.usable_runs().next().is_some();
    let warm = solved.element.needed.is_some();
    if walls {
        out.extend(place(case, at).is_some_and(|place| place > 0).then_some(Try::MoveFirst));
        out.push(Try::HotterWater);
        out.extend(warm.then_some(Try::BetterElement));
    }
    if warm || !walls {
        let ruled_out = room.surfaces.iter().filter(|wall| !room.allows(wall));
        let with_runs = ruled_out.filter(|wall| !wall.runs.is_empty());
        out.extend(with_runs.map(|wall| Try::RuledOutWall(wall.id)));
        out.push(Try::NewWall);
    }
    if walls {
        out.push(Try::MoreFlow);
        out.extend(split_places(case, at).into_iter().map(Try::SecondCircuit));
        out.push(Try::LessLoss);
        let outer = room.surfaces.iter().filter(|surface| loses(case, surface));
        out.extend(outer.map(|surface| Try::Insulate(surface.id)));
    }
    out
}

/// Its place in a loop that passes room after room.
fn place(case: &Case, at: usize) -> Option<usize> {
    let in_turn = case.job.zones.iter().filter(|zone| !zone.arrangement.has_branches());
    in_turn.flat_map(|zone| &zone.loops).find_map(|rooms| rooms.iter().position(|&r| r == at))
}

/// Before the room, and where the tube's limit is passed.
fn split_places(case: &Case, at: usize) -> Vec<usize> {
    let Some(before) = place(case, at) else { return Vec::new() };
    let rooms =
        case.job.zones.iter().flat_map(|zone| &zone.loops).find(|rooms| rooms.contains(&at));
    let limit = crate::check::practice_length(case.job.circuit.tube);
    let mut length = Length::ZERO;
    let mut passed = 0;
    for (place, &room) in rooms.into_iter().flatten().enumerate() {
        length += case.design.rooms.get(room).map_or(Length::ZERO, |r| r.element.choice.nominal);
        if length > limit {
            passed = place;
            break;
        }
    }
    let mut out: Vec<usize> = [before, passed].into_iter().filter(|&place| place > 0).collect();
    out.dedup();
    out
}

/// Whether heat is lost through a surface that could be insulated.
fn loses(case: &Case, surface: &Surface) -> bool {
    let outside = match surface.behind {
        Behind::Outdoors | Behind::Ground { .. } | Behind::Unheated(..) => true,
        Behind::Room(id) => case.job.house.spaces.iter().any(|space| space.id == id),
        Behind::SameTemperature => false,
    };
    outside && surface.net_area() > Area::ZERO && surface.transmittance > Transmittance::ZERO
}

impl Try {
    /// `None` where nothing of it can be had.
    pub(super) fn reach(self, case: &Case, at: usize) -> Option<Reach> {
        let Case { job, design, .. } = case;
        let reach = match self {
            Try::MoveFirst | Try::RuledOutWall(_) | Try::SecondCircuit(_) => return Some(AS_IT_IS),
            // Finer than any boiler control.
            Try::HotterWater => Reach {
                low: job.circuit.supply.si(),
                high: job.circuit.boiler_limit.si(),
                fine: 0.25,
            },
            Try::BetterElement => Reach { low: 1.0, high: MOST_FACTOR, fine: 0.01 },
            Try::NewWall => {
                let needed = design.rooms.get(at)?.element.needed.unwrap_or(Length::from_si(20.0));
                let longest = job.baseboard.stock.last()?.length;
                let most = needed * 1.5 + longest + job.baseboard.end_allowance;
                // An inch, as one measures a wall.
                Reach { low: 0.0, high: most.si(), fine: 0.0254 }
            }
            Try::MoreFlow => {
                let flow = design.piping.flow.si();
                let high = flow * (MOST_VELOCITY / design.piping.velocity);
                Reach { low: flow, high, fine: 0.01 * flow }
            }
            Try::LessLoss => {
                let loss = case.loads.get(at)?.total.si();
                Reach { low: 0.0, high: loss, fine: 0.005 * loss }
            }
            Try::Insulate(id) => {
                let room = job.house.rooms.get(at)?;
                let surface = room.surfaces.iter().find(|surface| surface.id == id)?;
                let most = Resistance::of(MOST_R, Unit::UsR).si();
                Reach { low: surface.transmittance.resistance().si(), high: most, fine: 0.02 }
            }
        };
        (reach.high > reach.low && reach.high.is_finite()).then_some(reach)
    }

    /// Whether it is worth saying that the most of it is too little: a reader would think of it.
    pub(super) fn is_told_when_too_little(self) -> bool {
        !matches!(self, Try::Insulate(_) | Try::LessLoss | Try::NewWall)
    }

    /// The job, and its loads, with so much of it.
    pub(super) fn made(self, case: &Case, at: usize, amount: f64) -> (Job, Vec<RoomLoad>) {
        let mut job = case.job.clone();
        let mut loads = case.loads.clone();
        let room = job.house.rooms.get_mut(at);
        match self {
            Try::MoveFirst => {
                for rooms in job.zones.iter_mut().flat_map(|zone| &mut zone.loops) {
                    if let Some(place) = rooms.iter().position(|&room| room == at) {
                        rooms[..=place].rotate_right(1);
                    }
                }
            }
            Try::HotterWater => job.circuit.supply = Temperature::from_si(amount),
            Try::BetterElement => {
                let rating = &mut job.baseboard.element.rating;
                rating.output = rating.output * amount;
            }
            Try::RuledOutWall(id) => {
                if let Some(room) = room {
                    let only = only(&room.surfaces);
                    if let Some(wall) = room.surfaces.iter_mut().find(|wall| wall.id == id) {
                        wall.wall_use = only;
                    }
                }
            }
            Try::NewWall => {
                if let Some(room) = room {
                    room.surfaces.push(inside_wall(Length::from_si(amount), only(&room.surfaces)));
                }
            }
            Try::MoreFlow => job.circuit.flow = Flow::Typed(VolumeFlow::from_si(amount)),
            Try::SecondCircuit(place) => {
                if let Some(split) = split(case, at, place) {
                    split.apply(&mut job);
                }
            }
            Try::LessLoss => {
                if let Some(load) = loads.get_mut(at) {
                    let left = 1.0 - amount / load.total.si();
                    (load.total, load.margin) = (load.total * left, load.margin * left);
                }
            }
            Try::Insulate(id) => {
                let surfaces = room.map(|room| &mut room.surfaces).into_iter().flatten();
                for surface in surfaces.filter(|surface| surface.id == id) {
                    surface.transmittance = Resistance::from_si(amount).transmittance();
                }
                loads = losses(&job.house).rooms;
            }
        }
        (job, loads)
    }

    /// What was tried, in words of the job.
    pub(super) fn way(self, case: &Case, at: usize, amount: f64, tried: &Tried) -> Way {
        let choices = || tried.elements.iter().map(|element| &element.choice);
        match self {
            Try::MoveFirst => Way::MoveFirst,
            Try::HotterWater => Way::HotterWater { supply: Temperature::from_si(amount) },
            Try::BetterElement => {
                let element = choices().map(|choice| choice.nominal).sum();
                Way::BetterElement { factor: amount, element }
            }
            Try::RuledOutWall(wall) => {
                let runs = choices().nth(at).into_iter().flat_map(|choice| &choice.runs);
                let there = runs.filter(|run| run.surface == wall);
                let pieces = there.flat_map(|run| run.pieces.iter().copied()).sum();
                Way::RuledOutWall { wall, pieces }
            }
            Try::NewWall => Way::NewWall { length: Length::from_si(amount) },
            Try::MoreFlow => {
                let (job, loads) = self.made(case, at, amount);
                let piping = solve_piping(&job, &loads).piping;
                let circulator = match gives(&job, &piping) {
                    true => Circulator::GivesIt,
                    false => Circulator::TooSmall,
                };
                Way::MoreFlow { flow: VolumeFlow::from_si(amount), circulator }
            }
            Try::SecondCircuit(place) => {
                let split = split(case, at, place);
                let from = split.as_ref().map(Split::from).unwrap_or_default();
                let pipe = split.map_or(Length::ZERO, |split| split.pipe);
                Way::SecondCircuit { from, pipe }
            }
            Try::LessLoss => Way::LessLoss { by: Power::from_si(amount) },
            Try::Insulate(surface) => {
                let rooms = case.job.house.rooms.get(at);
                let found = rooms.and_then(|r| r.surfaces.iter().find(|s| s.id == surface));
                Way::Insulate {
                    surface,
                    resistance: Resistance::from_si(amount),
                    area: found.map_or(Area::ZERO, Surface::net_area),
                }
            }
        }
    }
}

/// What a wall must be marked as to count beside the others.
fn only(walls: &[Surface]) -> WallUse {
    match walls.iter().any(|wall| wall.wall_use == WallUse::Only) {
        true => WallUse::Only,
        false => WallUse::AsNeeded,
    }
}

/// A wall through which no heat goes, free over this length.
fn inside_wall(length: Length, wall_use: WallUse) -> Surface {
    Surface {
        // Of no other: ids are counted from zero.
        id: SurfaceId(u32::MAX),
        kind: SurfaceKind::Wall,
        gross_area: Area::ZERO,
        along: length,
        transmittance: Transmittance::ZERO,
        built: Built::Typed,
        behind: Behind::SameTemperature,
        openings: Vec::new(),
        runs: vec![Run { start: Length::ZERO, length }],
        wall_use,
        fixed: Vec::new(),
    }
}
