//! From a draft to a job: every value resolved, every clash between values named.

mod openings;

use super::draft::{Behind, Draft, FlowBasis, RoomDraft, SurfaceDraft, UValue};
use super::field::{CircuitField, Field, HouseField, RoomField, SurfaceField};
use super::resolve::{Resolved, resolve, runs_between_doors};
use super::table::read_baseboard;
use super::{Circuit, Flow, Job, PipeLeg};
use crate::building::{self, Room, RoomId, Run, Site, Surface, SurfaceKind};
use crate::emitter::FitError;
use crate::quantity::{
    Area, ChangeRate, Kind, Length, ReadError, Resistance, Temperature, TemperatureDifference,
    Transmittance, Value, VolumeFlow,
};
use serde::Serialize;

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
    let mut reader = Reader { draft, errors: Vec::new() };
    let site = read_site(&mut reader);
    let mut rooms = Vec::new();
    let mut approaches = Vec::new();
    for room in &draft.rooms {
        let before = reader.errors.len();
        if let Some((room, approach)) = read_room(&mut reader, room)
            && reader.errors.len() == before
        {
            rooms.push(room);
            approaches.push(approach);
        }
    }
    let baseboard = read_baseboard(&mut reader);
    let circuit = read_circuit(&mut reader);
    let job = match (site, baseboard, circuit) {
        (Some(site), Some(baseboard), Some(circuit)) => {
            Some(Job { site, rooms, approaches, baseboard, circuit })
        }
        _ => None,
    };
    Reading { job, errors: reader.errors }
}

/// A draft with the errors found in it so far.
pub(super) struct Reader<'a> {
    pub(super) draft: &'a Draft,
    errors: Vec<FieldError>,
}

impl Reader<'_> {
    /// The value of `field` in SI; notes why there is none.
    pub(super) fn si(&mut self, field: Field) -> Option<f64> {
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
        let typed = self.draft.entry(field).map(|e| e.text.clone()).unwrap_or_default();
        // Two readers of one field report it once.
        if !self.errors.iter().any(|error| error.field == field) {
            self.errors.push(FieldError { field, typed, problem });
        }
    }

    fn length(&mut self, field: Field) -> Option<Length> {
        self.si(field).map(Length::from_si)
    }

    pub(super) fn temperature(&mut self, field: Field) -> Option<Temperature> {
        self.si(field).map(Temperature::from_si)
    }

    /// A count; its bounds are small, so the conversion is exact.
    fn count(&mut self, field: Field) -> Option<u32> {
        self.si(field).map(|si| si as u32)
    }
}

fn read_site(reader: &mut Reader<'_>) -> Option<Site> {
    let outdoors = reader.temperature(Field::House(HouseField::Outdoors));
    let altitude = reader.length(Field::House(HouseField::Altitude));
    // Read for their errors: the rooms take them when they have none of their own.
    let indoors = reader.si(Field::House(HouseField::Indoors));
    let air_changes = reader.si(Field::House(HouseField::AirChanges));
    indoors.and(air_changes)?;
    Some(Site { outdoors: outdoors?, altitude: altitude? })
}

fn read_room(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<(Room, PipeLeg)> {
    let field = |field| Field::Room(draft.id, field);
    if reader.draft.entry(field(RoomField::FloorArea)).is_none() {
        // Asked for by name, so that each missing one is listed.
        reader.si(field(RoomField::FloorLength));
        reader.si(field(RoomField::FloorWidth));
    }
    let floor_area = reader.si(field(RoomField::FloorArea)).map(Area::from_si);
    let height = reader.length(field(RoomField::Height));
    let temperature = reader.temperature(field(RoomField::Temperature));
    let air_changes = reader.si(field(RoomField::AirChanges)).map(ChangeRate::from_si);
    let pipe = reader.length(field(RoomField::PipeTo));
    let elbows = reader.count(field(RoomField::Elbows));
    // All are read before one that failed ends it, so that every error is listed.
    let surfaces: Vec<Option<Surface>> =
        draft.surfaces.iter().map(|surface| read_surface(reader, draft.id, surface)).collect();
    let room = Room {
        id: draft.id,
        name: draft.name.clone(),
        floor_area: floor_area?,
        height: height?,
        temperature: temperature?,
        air_changes: air_changes?,
        surfaces: surfaces.into_iter().collect::<Option<Vec<_>>>()?,
    };
    Some((room, PipeLeg { length: pipe?, elbows: elbows? }))
}

fn read_surface(reader: &mut Reader<'_>, room: RoomId, draft: &SurfaceDraft) -> Option<Surface> {
    let field = |field| Field::Surface(room, draft.id, field);
    let is_wall = draft.kind == SurfaceKind::Wall;
    let area_typed = reader.draft.entry(field(SurfaceField::Area)).is_some();
    let wall_length = match is_wall {
        // A wall whose area is typed needs no length, unless baseboard is to stand there.
        true if !area_typed || reader.draft.entry(field(SurfaceField::Length)).is_some() => {
            reader.length(field(SurfaceField::Length))
        }
        _ => None,
    };
    let wall_height = match is_wall {
        true => reader.length(field(SurfaceField::Height)),
        false => None,
    };
    let gross_area = reader.si(field(SurfaceField::Area)).map(Area::from_si);
    let transmittance =
        read_u(reader, draft.u_value, field(SurfaceField::U), field(SurfaceField::R));
    let behind = match draft.behind {
        Behind::Outdoors => Some(building::Behind::Outdoors),
        Behind::SameTemperature => Some(building::Behind::SameTemperature),
        Behind::Room(id) => Some(building::Behind::Room(id)),
        Behind::Unheated => reader
            .temperature(field(SurfaceField::BehindTemperature))
            .map(building::Behind::Unheated),
    };
    let openings =
        openings::read_openings(reader, room, draft, wall_length, wall_height, gross_area);
    let runs = match is_wall {
        true => read_runs(reader, room, draft, wall_length),
        false => Some(Vec::new()),
    };
    Some(Surface {
        id: draft.id,
        kind: draft.kind,
        gross_area: gross_area?,
        transmittance: transmittance?,
        behind: behind?,
        openings: openings?,
        runs: runs?,
    })
}

fn read_u(reader: &mut Reader<'_>, value: UValue, u: Field, r: Field) -> Option<Transmittance> {
    match value {
        UValue::Listed(assembly) => Some(assembly.transmittance()),
        UValue::TypedU => reader.si(u).map(Transmittance::from_si),
        UValue::TypedR => reader.si(r).map(|si| Resistance::from_si(si).transmittance()),
    }
}

/// The runs between doors, or the one free length that the user typed instead.
fn read_runs(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    wall: Option<Length>,
) -> Option<Vec<Run>> {
    let field = Field::Surface(room, draft.id, SurfaceField::Free);
    if reader.draft.entry(field).is_none() {
        return match wall {
            Some(_) => runs_between_doors(reader.draft, room, draft.id),
            None => Some(Vec::new()),
        };
    }
    let length = reader.length(field)?;
    if let Some(wall) = wall
        && length.si() > wall.si() + 1e-6
    {
        let wall = Value::new(Kind::Length, wall.si());
        reader.fail(field, Problem::LongerThanWall { wall });
        return None;
    }
    match length.si() > 0.0 {
        true => Some(vec![Run { start: Length::ZERO, length }]),
        false => Some(Vec::new()),
    }
}

fn read_circuit(reader: &mut Reader<'_>) -> Option<Circuit> {
    use CircuitField::*;
    let supply = reader.temperature(Field::Circuit(Supply));
    let boiler_limit = reader.temperature(Field::Circuit(BoilerLimit));
    let flow = match reader.draft.flow_basis {
        FlowBasis::FromDrop => reader
            .si(Field::Circuit(Drop))
            .map(|si| self::Flow::FromDrop(TemperatureDifference::from_si(si))),
        FlowBasis::Typed => reader
            .si(Field::Circuit(CircuitField::Flow))
            .map(|si| self::Flow::Typed(VolumeFlow::from_si(si))),
    };
    let pipe_surroundings = reader.temperature(Field::Circuit(PipeSurroundings));
    let pipe_film = reader.si(Field::Circuit(PipeFilm)).map(Transmittance::from_si);
    let return_pipe = reader.length(Field::Circuit(ReturnPipe));
    let return_elbows = reader.count(Field::Circuit(ReturnElbows));
    let boiler_elbows = reader.count(Field::Circuit(BoilerElbows));
    let boiler_tees = reader.count(Field::Circuit(BoilerTees));
    let boiler_valves = reader.count(Field::Circuit(BoilerValves));
    let equipment_head = reader.length(Field::Circuit(EquipmentHead));
    Some(Circuit {
        tube: reader.draft.tube,
        supply: supply?,
        boiler_limit: boiler_limit?,
        flow: flow?,
        pipe_surroundings: pipe_surroundings?,
        pipe_film: pipe_film?,
        back: PipeLeg { length: return_pipe?, elbows: return_elbows? },
        boiler_elbows: boiler_elbows?,
        boiler_tees: boiler_tees?,
        boiler_valves: boiler_valves?,
        equipment_head: equipment_head?,
    })
}
