//! The value of one field: as typed, assumed when blank, or in want of something.

use super::bounds::{Blank, usual_opening};
use super::draft::{Behind, Draft};
use super::draft::{DesignHours, RoomDraft, Shape, SurfaceDraft};
use super::field::{
    AirField, AssemblyField, BillsField, ChangeField, Field, GroundField, HouseField, LegField,
    OpeningField, RoomField, SurfaceField,
};
use super::own::own_transmittance;
use super::plant::follow_plant;
use super::read::Problem;
use super::route::{follow_leg, follow_pipe, follow_zone};
use crate::building::air::Leakage;
use crate::building::wall::{Placed, free_runs, place};
use crate::building::{OpeningKind, RoomId, RoomUse, SurfaceId, SurfaceKind};
use crate::quantity::{Area, Kind, Length, Unit, Value, read};

/// What a field holds.
#[derive(Debug, Clone, PartialEq)]
pub enum Resolved {
    /// Typed, read and within its bounds.
    Typed { si: f64, unit: Unit },
    /// Blank; this is taken instead.
    Assumed { si: f64 },
    /// Blank, and nothing can be taken instead.
    Missing,
    /// Blank, and follows from a field that holds no value itself.
    Waiting,
    /// Typed, but no value.
    Bad(Problem),
}

impl Resolved {
    pub fn si(&self) -> Option<f64> {
        match *self {
            Resolved::Typed { si, .. } | Resolved::Assumed { si } => Some(si),
            _ => None,
        }
    }
}

/// The value of `field` in `draft`.
pub fn resolve(draft: &Draft, field: Field) -> Resolved {
    let spec = field.spec();
    if let Some(entry) = draft.entry(field) {
        return match read(&entry.text, entry.unit) {
            Err(error) => Resolved::Bad(Problem::Unreadable(error)),
            Ok(reading) => match within(reading.si, field) {
                Some(problem) => Resolved::Bad(problem),
                None => Resolved::Typed { si: reading.si, unit: reading.unit },
            },
        };
    }
    if let Some(si) = from_station(draft, field) {
        return Resolved::Assumed { si };
    }
    match spec.blank {
        Blank::Required => Resolved::Missing,
        Blank::Assumed(si) => Resolved::Assumed { si },
        Blank::Follows => match follow(draft, field) {
            Some(si) => Resolved::Assumed { si },
            None => Resolved::Waiting,
        },
    }
}

/// What the chosen station knows.
pub(super) fn from_station(draft: &Draft, field: Field) -> Option<f64> {
    let station = draft.station.as_ref()?;
    let Field::House(field) = field else { return None };
    let fahrenheit = |value: i32| Some(Unit::Fahrenheit.to_si(f64::from(value)));
    match field {
        HouseField::Outdoors => match draft.design_hours {
            DesignHours::P99 => fahrenheit(station.t99_f),
            DesignHours::P996 => fahrenheit(station.t996_f),
        },
        HouseField::Altitude => Some(f64::from(station.elevation_m)),
        HouseField::MeanTemperature => fahrenheit(station.mean_f),
        HouseField::ColdestMonth => fahrenheit(station.coldest_month_f),
        HouseField::Wind => Some(Unit::MilePerHour.to_si(f64::from(station.wind_mph))),
        _ => None,
    }
}

/// The bound that `si` breaks, if any.
pub(super) fn within(si: f64, field: Field) -> Option<Problem> {
    let spec = field.spec();
    // A bound typed exactly, in whichever unit, is within; rounding must not refuse it.
    let slack = 1e-9 * (spec.most - spec.least);
    let limit = |si| Value::new(spec.kind, si);
    if si < spec.least - slack {
        Some(Problem::BelowLeast { least: limit(spec.least) })
    } else if si > spec.most + slack {
        Some(Problem::AboveMost { most: limit(spec.most) })
    } else if spec.kind == Kind::Count && si.fract() != 0.0 {
        Some(Problem::NotWhole)
    } else {
        None
    }
}

/// The value that a blank field takes from others.
fn follow(draft: &Draft, field: Field) -> Option<f64> {
    let value = |field| resolve(draft, field).si();
    match field {
        Field::House(HouseField::AirChanges) => Some(draft.air_class.air_changes().si()),
        // NOAA's dispersion model takes this much gap for a square metre of floor.
        Field::Air(AirField::LeakageArea) => {
            let floors =
                draft.rooms.iter().map(|room| value(Field::Room(room.id, RoomField::FloorArea)));
            let floor: f64 = floors.flatten().sum();
            Some(Leakage::default_area(Area::from_si(floor)).area().si())
        }
        Field::Ground(GroundField::FFactor) => Some(draft.ground.slab_edge.f_factor().si()),
        Field::Bills(BillsField::Indoors) => value(Field::House(HouseField::Indoors)),
        Field::Assembly(id, AssemblyField::U) => Some(own_transmittance(draft, id)?.si()),
        Field::Assembly(id, AssemblyField::R) => {
            Some(own_transmittance(draft, id)?.resistance().si())
        }
        Field::Plant(field) => follow_plant(draft, field),
        Field::Zone(zone, field) => follow_zone(draft, zone, field),
        Field::Leg(room, row, LegField::Length) => follow_leg(draft, room, row),
        Field::Room(room, field) => follow_room(draft, draft.room(room)?, field),
        Field::Change(id, ChangeField::AirChanges) => {
            Some(draft.change(id)?.air_class.air_changes().si())
        }
        Field::Change(_, ChangeField::LeakageArea) => value(Field::Air(AirField::LeakageArea)),
        Field::Change(_, ChangeField::Height) => value(Field::House(HouseField::CeilingHeight)),
        Field::Surface(room, id, field) => follow_surface(draft, room, id, field),
        Field::Opening(room, surface, id, field) => {
            let opening = draft.opening(room, surface, id)?;
            let (width, height) = usual_opening(opening.kind);
            match field {
                OpeningField::Width => Some(width),
                OpeningField::Height => Some(height),
                OpeningField::FromLeft => {
                    let index = draft
                        .surface(room, surface)?
                        .openings
                        .iter()
                        .position(|opening| opening.id == id)?;
                    Some(places(draft, room, surface)?.get(index)?.si())
                }
                OpeningField::U | OpeningField::R => None,
            }
        }
        _ => None,
    }
}

fn follow_room(draft: &Draft, room: &RoomDraft, field: RoomField) -> Option<f64> {
    let own = |field| resolve(draft, Field::Room(room.id, field)).si();
    let house = |field| resolve(draft, Field::House(field)).si();
    let heated = room.used == RoomUse::Heated;
    match field {
        RoomField::FloorArea => {
            if !heated && !measured(room) {
                return area_beside(draft, room.id);
            }
            let whole = own(RoomField::FloorLength)? * own(RoomField::FloorWidth)?;
            match room.shape {
                Shape::Rectangle => Some(whole),
                Shape::LShape => {
                    Some(whole - own(RoomField::CutLength)? * own(RoomField::CutWidth)?)
                }
            }
        }
        // Judgement: the mean height under a roof, and of a crawl space.
        RoomField::Height => match room.used {
            RoomUse::Attic => Some(Unit::Foot.to_si(4.0)),
            RoomUse::CrawlSpace => Some(Unit::Foot.to_si(3.0)),
            _ => house(HouseField::CeilingHeight),
        },
        RoomField::Temperature if heated => house(HouseField::Indoors),
        RoomField::AirChanges => Some(room.used.air_changes().si()),
        _ => follow_pipe(draft, room, field),
    }
}

/// Whether either side of the floor is typed; then both are asked for.
fn measured(room: &RoomDraft) -> bool {
    [RoomField::FloorLength, RoomField::FloorWidth].iter().any(|&f| room.entries.get(f).is_some())
}

/// The area of the ceilings and floors of heated rooms that lead to a space.
fn area_beside(draft: &Draft, space: RoomId) -> Option<f64> {
    let mut sum = 0.0;
    for (room, surface) in leading_to(draft, space) {
        let area = Field::Surface(room, surface, SurfaceField::Area);
        sum += resolve(draft, area).si()?;
    }
    (sum > 0.0).then_some(sum)
}

fn leading_to(draft: &Draft, space: RoomId) -> impl Iterator<Item = (RoomId, SurfaceId)> {
    draft.rooms.iter().flat_map(move |room| {
        let leads = move |surface: &&SurfaceDraft| {
            surface.behind == Behind::Room(space) && surface.kind != SurfaceKind::Wall
        };
        room.surfaces.iter().filter(leads).map(|surface| (room.id, surface.id))
    })
}

/// Whether a space's floor area is that of what leads to it, so that it may wait for a room's
/// measures.
pub(super) fn area_follows(draft: &Draft, room: &RoomDraft) -> bool {
    room.used != RoomUse::Heated && !measured(room) && leading_to(draft, room.id).next().is_some()
}

fn follow_surface(draft: &Draft, room: RoomId, id: SurfaceId, field: SurfaceField) -> Option<f64> {
    let surface = draft.surface(room, id)?;
    let own = |field| resolve(draft, Field::Surface(room, id, field)).si();
    let room_value = |field| resolve(draft, Field::Room(room, field)).si();
    match field {
        SurfaceField::Height => room_value(RoomField::Height),
        SurfaceField::Area => match surface.kind {
            SurfaceKind::Wall => Some(own(SurfaceField::Length)? * own(SurfaceField::Height)?),
            SurfaceKind::Ceiling | SurfaceKind::Floor => {
                let floor = room_value(RoomField::FloorArea)?;
                let attic = draft.room(room)?.used == RoomUse::Attic;
                // A roof that rises 6 in 12 is larger than the floor by this.
                Some(if attic && surface.kind == SurfaceKind::Ceiling {
                    floor * 1.118
                } else {
                    floor
                })
            }
        },
        // Judgement: an unheated space whose temperature is unknown lies halfway.
        SurfaceField::BehindTemperature => {
            if surface.behind != Behind::Unheated {
                return None;
            }
            let outdoors = resolve(draft, Field::House(HouseField::Outdoors)).si()?;
            Some(0.5 * (outdoors + room_value(RoomField::Temperature)?))
        }
        SurfaceField::Free => {
            Some(runs_between_doors(draft, room, id)?.iter().map(|run| run.length.si()).sum())
        }
        SurfaceField::Depth => match surface.kind {
            // Judgement: a foundation wall shows two feet of itself above the ground.
            SurfaceKind::Wall => {
                Some((own(SurfaceField::Height)? - Unit::Foot.to_si(2.0)).max(0.0))
            }
            _ => {
                let deepest =
                    draft.room(room)?.surfaces.iter().filter(|wall| {
                        wall.kind == SurfaceKind::Wall && wall.behind == Behind::Ground
                    });
                let depths = deepest.map(|wall| {
                    resolve(draft, Field::Surface(room, wall.id, SurfaceField::Depth)).si()
                });
                Some(depths.flatten().fold(0.0, f64::max))
            }
        },
        SurfaceField::Perimeter => Some(edge_m(draft, draft.room(room)?)),
        SurfaceField::Length
        | SurfaceField::U
        | SurfaceField::R
        | SurfaceField::Behind
        | SurfaceField::Fixed => None,
    }
}

/// The length of a floor's edge at walls to outdoors and earth, and of a slab on grade also at walls
/// to unheated spaces, on whichever side they were entered; as the heat loss counts it.
fn edge_m(draft: &Draft, room: &RoomDraft) -> f64 {
    let unheated = |id| draft.spaces.iter().any(|space| space.id == id);
    let heated = room.used == RoomUse::Heated;
    let in_earth = room.surfaces.iter().any(|surface| {
        let depth = Field::Surface(room.id, surface.id, SurfaceField::Depth);
        surface.behind == Behind::Ground && resolve(draft, depth).si().is_some_and(|si| si > 0.0)
    });
    let own = room.surfaces.iter().filter(|wall| match wall.behind {
        Behind::Ground | Behind::Outdoors => true,
        Behind::Unheated => heated && !in_earth,
        Behind::Room(id) => heated && !in_earth && unheated(id),
        Behind::SameTemperature => false,
    });
    let of_spaces = draft.spaces.iter().filter(|_| heated && !in_earth).flat_map(|space| {
        let here = space.surfaces.iter().filter(|wall| wall.behind == Behind::Room(room.id));
        here.map(|wall| (space.id, wall))
    });
    own.map(|wall| (room.id, wall))
        .chain(of_spaces)
        .filter(|(_, wall)| wall.kind == SurfaceKind::Wall)
        .filter_map(|(of, wall)| {
            resolve(draft, Field::Surface(of, wall.id, SurfaceField::Length)).si()
        })
        .sum()
}

/// Where each opening of a wall stands, typed or assumed, in the order of the openings.
fn places(draft: &Draft, room: RoomId, id: SurfaceId) -> Option<Vec<Length>> {
    let surface = draft.surface(room, id)?;
    let wall = resolve(draft, Field::Surface(room, id, SurfaceField::Length)).si()?;
    let placed = surface
        .openings
        .iter()
        .map(|opening| {
            let field = |field| Field::Opening(room, id, opening.id, field);
            let from_left = match draft.entry(field(OpeningField::FromLeft)) {
                Some(_) => Some(resolve(draft, field(OpeningField::FromLeft)).si()?),
                None => None,
            };
            Some(Placed {
                width: Length::from_si(resolve(draft, field(OpeningField::Width)).si()?),
                from_left: from_left.map(Length::from_si),
            })
        })
        .collect::<Option<Vec<_>>>()?;
    Some(place(Length::from_si(wall), &placed))
}

/// The stretches of a wall that no door interrupts.
pub(super) fn runs_between_doors(
    draft: &Draft,
    room: RoomId,
    id: SurfaceId,
) -> Option<Vec<crate::building::Run>> {
    let surface = draft.surface(room, id)?;
    let wall = resolve(draft, Field::Surface(room, id, SurfaceField::Length)).si()?;
    let places = places(draft, room, id)?;
    let doors = surface
        .openings
        .iter()
        .zip(places)
        .filter(|(opening, _)| opening.kind == OpeningKind::Door)
        .map(|(opening, left)| {
            let width = Field::Opening(room, id, opening.id, OpeningField::Width);
            Some((left, Length::from_si(resolve(draft, width).si()?)))
        })
        .collect::<Option<Vec<_>>>()?;
    Some(free_runs(Length::from_si(wall), &doors))
}

/// A wall as one stands before it.
#[derive(Debug, Clone, PartialEq)]
pub struct WallShape {
    pub length: Length,
    pub height: Length,
    /// Kind, distance from the left corner, width, height.
    pub openings: Vec<(OpeningKind, Length, Length, Length)>,
    /// Where baseboard can stand.
    pub runs: Vec<crate::building::Run>,
}

/// The shape of a wall, while every measure in it has a value.
pub fn wall_shape(draft: &Draft, room: RoomId, id: SurfaceId) -> Option<WallShape> {
    let surface = draft.surface(room, id)?;
    let own = |field| resolve(draft, Field::Surface(room, id, field)).si().map(Length::from_si);
    let openings = surface
        .openings
        .iter()
        .zip(places(draft, room, id)?)
        .map(|(opening, left)| {
            let size = |field| {
                let field = Field::Opening(room, id, opening.id, field);
                resolve(draft, field).si().map(Length::from_si)
            };
            Some((opening.kind, left, size(OpeningField::Width)?, size(OpeningField::Height)?))
        })
        .collect::<Option<Vec<_>>>()?;
    let runs = match draft.entry(Field::Surface(room, id, SurfaceField::Free)) {
        Some(_) => {
            let length = own(SurfaceField::Free)?;
            vec![crate::building::Run { start: Length::ZERO, length }]
        }
        None => runs_between_doors(draft, room, id)?,
    };
    Some(WallShape {
        length: own(SurfaceField::Length)?,
        height: own(SurfaceField::Height)?,
        openings,
        runs,
    })
}
