//! From a draft to a job: every value resolved, every clash between values named.

mod bills;
mod control;
mod house;
mod measured;
mod openings;
mod piping;
mod plant;
mod shop;
mod surface;
mod what_if;

use super::draft::{Draft, RoomDraft, Shape};
use super::field::{ElementField, Field, RoomField};
use super::resolve::{Resolved, area_follows, resolve};
use super::table::read_baseboard;
use super::{Approach, Job};
use crate::building::{House, Room, RoomUse, Space, Surface};
use crate::emitter::FitError;
use crate::quantity::{Area, ChangeRate, Length, Power, ReadError, Temperature, Value};
pub use bills::BillsRead;
use serde::Serialize;
pub(super) use shop::read_stock;

/// What stands in the way of a value.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub enum Problem {
    /// Blank, and needed.
    Missing,
    Unreadable(ReadError),
    BelowLeast {
        least: Value,
    },
    AboveMost {
        most: Value,
    },
    /// A count with a fraction.
    NotWhole,
    /// The windows and doors are together larger than the surface they are in.
    OpeningsTooLarge {
        openings: Value,
        surface: Value,
    },
    /// An opening is taller than its wall.
    TallerThanWall {
        wall: Value,
    },
    /// An opening ends beyond the wall's right corner.
    PastWallEnd {
        end: Value,
        wall: Value,
    },
    /// Two openings of one kind overlap.
    Overlaps {
        ends: Value,
    },
    /// More free length than the wall has.
    LongerThanWall {
        wall: Value,
    },
    /// A wall reaches deeper into the ground than it is high.
    DeeperThanWall {
        wall: Value,
    },
    /// The corner cut out of a room is as long as the room's side, or longer.
    CutTooLarge {
        room: Value,
    },
    /// A heated room no warmer than the design day.
    NotAboveOutdoors {
        outdoors: Value,
    },
    /// The coldest month is warmer than the year.
    ColdestAboveMean {
        mean: Value,
    },
    /// A surface leads to its own room.
    BehindItself,
    /// A surface leads to a room that is gone.
    NeighbourGone,
    /// The user's own assembly that a surface was built of is gone.
    AssemblyGone,
    /// The user's own assembly has no layers and no typed value.
    NoLayers,
    /// A date that is none.
    NotADate,
    /// A bill of less than a week, or of more than a year and a month.
    PeriodTooShort,
    PeriodTooLong,
    /// Degree days that no weather of the place has.
    UnlikelyDegreeDays,
    /// A bill ends before it begins.
    EndsBeforeStart,
    /// Two bills cover the same days.
    BillsOverlap {
        /// The other bill, counted from one.
        other: usize,
    },
    /// A rating's water no warmer than its air.
    NotAboveAir {
        air: Value,
    },
    /// A maker's table of fewer than two complete rows.
    TooFewPoints,
    /// A maker's table that no curve of the form fits.
    NoFit(FitError),
    /// No stock length is chosen.
    NoStock,
    /// Pieces that stay on a stretch of wall that is gone.
    FixedRunGone,
    /// Pieces that stay are longer than their stretch of wall.
    FixedTooLong {
        pieces: Value,
        run: Value,
    },
    /// A circulator's curve of fewer than three points.
    TooFewPumpPoints,
    /// Two points of it at one flow.
    PumpFlowRepeated,
    /// More head than at a smaller flow.
    PumpCurveRises {
        head: Value,
    },
    /// The room that a change is for is gone.
    RoomGone,
    /// A circulator without head at any flow.
    PumpWithoutHead,
}

/// A problem, and the field that it is shown at.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FieldError {
    pub field: Field,
    /// What was typed there.
    pub typed: String,
    pub problem: Problem,
}

impl FieldError {
    /// Whether the field is only still to be filled in.
    pub fn is_missing(&self) -> bool {
        self.problem == Problem::Missing
    }
}

/// What a draft says.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// The job of all rooms that are complete; `None` while a value of the house, the element or
    /// the circuit is missing or bad.
    pub job: Option<Job>,
    pub errors: Vec<FieldError>,
}

/// Reads a draft. A room with an error is left out of the job and its errors are listed.
pub fn read(draft: &Draft) -> Reading {
    read_by(&mut Reader { draft, errors: Vec::new(), asked: Vec::new() })
}

/// Every field that the reading asks for, each once, in its order.
pub(super) fn asked_for(draft: &Draft) -> Vec<Field> {
    let mut reader = Reader { draft, errors: Vec::new(), asked: Vec::new() };
    read_by(&mut reader);
    let mut asked = Vec::new();
    for field in reader.asked {
        if !asked.contains(&field) {
            asked.push(field);
        }
    }
    asked
}

fn read_by(reader: &mut Reader<'_>) -> Reading {
    let draft = reader.draft;
    let around = house::read_around(reader);
    let mut rooms = Vec::new();
    let mut approaches = Vec::new();
    let mut read = Vec::new();
    for room in &draft.rooms {
        let before = reader.errors.len();
        if let Some((heated, approach)) = read_room(reader, room)
            && reader.errors.len() == before
        {
            rooms.push(heated);
            approaches.push(approach);
            read.push(room);
        }
    }
    let mut spaces = Vec::new();
    for space in &draft.spaces {
        let before = reader.errors.len();
        if let Some(space) = read_space(reader, space)
            && reader.errors.len() == before
        {
            spaces.push(space);
        }
    }
    house::read_assemblies(reader);
    let baseboard = read_baseboard(reader);
    let circuit = piping::read_circuit(reader);
    let zones = piping::read_zones(reader, &read);
    let plant = plant::read_plant(reader);
    let prices = shop::read_prices(reader);
    let spare = shop::read_spare(reader);
    let cutting = shop::read_cutting(reader);
    let bills = bills::read_bills(reader);
    let control = control::read_control(reader, &read);
    measured::note_errors(reader);
    what_if::note_errors(reader);
    let job = match (around, baseboard, circuit, zones, plant) {
        (Some(around), Some(baseboard), Some(circuit), Some((zones, empty_zones)), Some(plant)) => {
            let house::Around { site, air, ground, ranges, margin } = around;
            let house = House { site, rooms, spaces, air, ground, ranges, margin };
            Some(Job {
                house,
                approaches,
                baseboard,
                circuit,
                zones,
                empty_zones,
                plant,
                prices,
                spare,
                cutting,
                bills,
                standing: reader.draft.existing.standing,
                control,
            })
        }
        _ => None,
    };
    Reading { job, errors: std::mem::take(&mut reader.errors) }
}

/// A draft with the errors found in it so far.
pub(super) struct Reader<'a> {
    pub(super) draft: &'a Draft,
    errors: Vec<FieldError>,
    /// What was asked for so far, some of it more than once.
    asked: Vec<Field>,
}

impl Reader<'_> {
    /// The value of `field` in SI; notes why there is none.
    pub(super) fn si(&mut self, field: Field) -> Option<f64> {
        self.asked.push(field);
        match resolve(self.draft, field) {
            Resolved::Typed { si, .. } | Resolved::Assumed { si } => Some(si),
            Resolved::Missing => {
                self.fail(field, Problem::Missing);
                None
            }
            Resolved::Bad(problem) => {
                self.fail(field, problem);
                None
            }
            // The field that this one waits for carries the error.
            Resolved::Waiting => None,
        }
    }

    pub(super) fn fail(&mut self, field: Field, problem: Problem) {
        let typed = self.draft.typed_text(field);
        // Two readers of one field report it once.
        if !self.errors.iter().any(|error| error.field == field) {
            self.errors.push(FieldError { field, typed, problem });
        }
    }

    /// The value of `field` for a message; notes nothing.
    fn value_of(&self, field: Field) -> Option<Value> {
        Some(Value::new(field.spec().kind, resolve(self.draft, field).si()?))
    }

    fn length(&mut self, field: Field) -> Option<Length> {
        self.si(field).map(Length::from_si)
    }

    pub(super) fn temperature(&mut self, field: Field) -> Option<Temperature> {
        self.si(field).map(Temperature::from_si)
    }

    /// A wall's length that end caps take of each run; what is wrong with it is said at its own field.
    fn end_allowance(&self) -> Length {
        let field = Field::Element(ElementField::EndAllowance);
        Length::from_si(resolve(self.draft, field).si().unwrap_or(0.0))
    }

    /// A count; its bounds are small, so the conversion is exact.
    fn count(&mut self, field: Field) -> Option<u32> {
        self.si(field).map(|si| si as u32)
    }
}

fn read_room(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<(Room, Approach)> {
    let field = |field| Field::Room(draft.id, field);
    let floor_area = read_floor(reader, draft);
    let height = reader.length(field(RoomField::Height));
    let temperature = reader
        .temperature(field(RoomField::Temperature))
        .filter(|&inside| house::is_above_outdoors(reader, draft.id, inside));
    let least_air = reader.si(field(RoomField::AirChanges)).map(ChangeRate::from_si);
    let other_heat = reader.si(field(RoomField::OtherHeat)).map(Power::from_si);
    read_place(reader, draft);
    let approach = piping::read_approach(reader, draft);
    let surfaces = read_surfaces(reader, draft);
    let room = Room {
        id: draft.id,
        name: draft.name.clone(),
        level: draft.level,
        floor_area: floor_area?,
        height: height?,
        temperature: temperature?,
        least_air: least_air.filter(|rate| *rate > ChangeRate::ZERO),
        other_heat: other_heat?,
        surfaces: surfaces?,
    };
    Some((room, approach?))
}

fn read_space(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<Space> {
    let field = |field| Field::Room(draft.id, field);
    let floor_area = read_floor(reader, draft);
    let height = reader.length(field(RoomField::Height));
    // Blank, its own balance gives the temperature.
    let temperature = reader.temperature(field(RoomField::Temperature));
    let air_changes = reader.si(field(RoomField::AirChanges)).map(ChangeRate::from_si);
    read_place(reader, draft);
    let vent_area = match draft.used {
        RoomUse::CrawlSpace => reader.si(field(RoomField::VentArea)).map(Area::from_si),
        _ => Some(Area::ZERO),
    };
    let surfaces = read_surfaces(reader, draft);
    Some(Space {
        id: draft.id,
        name: draft.name.clone(),
        used: draft.used,
        floor_area: floor_area?,
        height: height?,
        temperature,
        air_changes: air_changes?,
        vent_area: vent_area?,
        surfaces: surfaces?,
    })
}

/// The place on the plan, for its errors: no load depends on it.
fn read_place(reader: &mut Reader<'_>, draft: &RoomDraft) {
    for field in [RoomField::FromLeft, RoomField::FromFront] {
        reader.si(Field::Room(draft.id, field));
    }
}

fn read_floor(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<Area> {
    let field = |field| Field::Room(draft.id, field);
    let area = reader.si(field(RoomField::FloorArea)).map(Area::from_si);
    if reader.draft.entry(field(RoomField::FloorArea)).is_some() {
        return area;
    }
    if area.is_none() && !area_follows(reader.draft, draft) {
        // Asked for by name, so that each missing one is listed.
        reader.si(field(RoomField::FloorLength));
        reader.si(field(RoomField::FloorWidth));
        if draft.shape == Shape::LShape {
            reader.si(field(RoomField::CutLength));
            reader.si(field(RoomField::CutWidth));
        }
    }
    match draft.shape {
        Shape::LShape if area.is_some() && !cut_fits(reader, draft) => None,
        _ => area,
    }
}

/// Whether the corner cut out of an L leaves something of both sides; names the side that it does
/// not.
fn cut_fits(reader: &mut Reader<'_>, draft: &RoomDraft) -> bool {
    let sides = [
        (RoomField::CutLength, RoomField::FloorLength),
        (RoomField::CutWidth, RoomField::FloorWidth),
    ];
    let mut fits = true;
    for (cut, side) in sides {
        let [cut, side] = [cut, side].map(|field| Field::Room(draft.id, field));
        if let (Some(taken), Some(room)) = (reader.value_of(cut), reader.value_of(side))
            && taken.si >= room.si
        {
            reader.fail(cut, Problem::CutTooLarge { room });
            fits = false;
        }
    }
    fits
}

/// All are read before one that failed ends it, so that every error is listed.
fn read_surfaces(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<Vec<Surface>> {
    let surfaces: Vec<Option<Surface>> = draft
        .surfaces
        .iter()
        .map(|surface| surface::read_surface(reader, draft.id, surface))
        .collect();
    surfaces.into_iter().collect()
}
