//! What a job was worked out from: every number that it takes, and how each came about.

use super::bounds::Blank;
use super::draft::{AirBasis, Behind, Draft, EdgeBasis, GroundMethod, PipeCover, Shape};
use super::field::{
    AirField, CircuitField, ElementField, Field, GroundField, HouseField, OpeningField, PartField,
    PlantField, PriceField, RoomField, SurfaceField,
};
use super::piping::{Arrangement, Balancing, Zoning};
use super::read::asked_for;
use super::resolve::{Resolved, from_station, resolve};
use super::route::pipe_fields;
use super::shop::Objective;
use crate::building::{RoomId, RoomUse, SurfaceKind};
use crate::quantity::{Kind, Value};

/// A number that the job takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Input {
    pub field: Field,
    pub value: Value,
    pub origin: InputOrigin,
}

/// How a number came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InputOrigin {
    /// With tape, thermometer or test, or counted; typed.
    Measured,
    /// From a label, a data sheet or a drawing of the maker's; typed.
    Label,
    /// As the user wants it, or knows it; typed.
    Given,
    /// From the climate station, or a class that was picked.
    Table,
    /// Follows from other numbers.
    Worked,
    /// Stands for a blank.
    Assumed,
}

/// Every number that the job takes and that matters to it, in the order in which it is read.
///
/// What cannot be read is left out, as are fuel bills, how the house is run, what was measured afterwards
/// and what only counts for buying: none of them changes the design.
pub fn inputs(draft: &Draft) -> Vec<Input> {
    let mut fields = Vec::new();
    for field in asked_for(draft) {
        if let Field::Room(id, RoomField::FloorArea) = field {
            fields.extend(sides(draft, id).into_iter().map(|side| Field::Room(id, side)));
        }
        fields.push(field);
    }
    let mut inputs = Vec::new();
    for field in fields {
        if let Some(si) = resolve(draft, field).si().filter(|_| matters(draft, field)) {
            let value = Value::new(field.spec().kind, si);
            inputs.push(Input { field, value, origin: origin(draft, field) });
        }
    }
    inputs
}

/// The sides that a floor's area follows from.
fn sides(draft: &Draft, id: RoomId) -> Vec<RoomField> {
    use RoomField::{CutLength, CutWidth, FloorArea, FloorLength, FloorWidth};
    let typed = |field| draft.entry(Field::Room(id, field)).is_some();
    let cut = draft.room(id).is_some_and(|room| room.shape == Shape::LShape);
    match typed(FloorArea) || !typed(FloorLength) {
        true => Vec::new(),
        false if cut => vec![FloorLength, FloorWidth, CutLength, CutWidth],
        false => vec![FloorLength, FloorWidth],
    }
}

/// Whether anything follows from a field, as the job's choices stand.
fn matters(draft: &Draft, field: Field) -> bool {
    let heated = |id| draft.rooms.iter().any(|room| room.id == id);
    let zone = |is: fn(Arrangement, Balancing) -> bool| {
        draft.zones.iter().any(|zone| is(zone.arrangement, zone.balancing))
    };
    match field {
        // Blank, nothing follows from them.
        Field::Stocked(..) => typed(draft, field),
        // What pieces are chosen by; other prices only count what is bought.
        Field::Price(PriceField::Joint | PriceField::Enclosure | PriceField::EndCap) => {
            typed(draft, field) && draft.element.objective == Objective::LeastCost
        }
        Field::Price(_)
        | Field::SizedPrice(..)
        | Field::Spare(_)
        | Field::Cut(_)
        | Field::Stock
        | Field::Bill(..)
        | Field::Bills(_)
        | Field::Control(_)
        | Field::Measured(_)
        | Field::Spot(..)
        | Field::Change(..) => false,
        Field::House(field) => house_matters(draft, field),
        Field::Ground(field) => on_ground(draft) && ground_matters(draft, field),
        Field::Circuit(CircuitField::ReturnPipe | CircuitField::ReturnElbows) => {
            draft.rooms.iter().any(|room| {
                let back = Field::Room(room.id, RoomField::PipeBack);
                pipe_fields(draft, room.id).contains(&RoomField::PipeBack)
                    && draft.entry(back).is_none()
            })
        }
        Field::Part(field) => match field {
            PartField::ZoneValveCv => several(draft) && draft.zoning == Zoning::Valves,
            PartField::FlowCheckCv => several(draft) && draft.zoning == Zoning::Circulators,
            PartField::BalancingCv => zone(|_, balancing| balancing == Balancing::Valves),
            PartField::DiverterK => zone(|way, _| way == Arrangement::DiverterTees),
            PartField::PumpEfficiency => true,
            PartField::InsulationThickness => draft.pipe_cover == PipeCover::Insulated,
        },
        Field::Zone(id, _) => draft.zone(id).is_some_and(|zone| {
            matches!(zone.arrangement, Arrangement::Split | Arrangement::HomeRun)
                || draft.entry(field).is_some()
        }),
        Field::Room(id, field) => match field {
            RoomField::FromLeft | RoomField::FromFront | RoomField::Damper => false,
            RoomField::PipeTo | RoomField::Elbows => {
                heated(id) && (!described(draft, id) || typed(draft, Field::Room(id, field)))
            }
            RoomField::PipeBack
            | RoomField::ElbowsBack
            | RoomField::BranchPipe
            | RoomField::BranchElbows
            | RoomField::TeeSpacing => pipe_fields(draft, id).contains(&field),
            _ => true,
        },
        _ => true,
    }
}

fn typed(draft: &Draft, field: Field) -> bool {
    draft.entry(field).is_some()
}

fn several(draft: &Draft) -> bool {
    draft.zones.len() > 1
}

/// Whether the way to a room is given step by step.
fn described(draft: &Draft, id: RoomId) -> bool {
    draft.room(id).is_some_and(|room| !room.route.is_empty())
}

fn on_ground(draft: &Draft) -> bool {
    draft.all_rooms().flat_map(|room| &room.surfaces).any(|s| s.behind == Behind::Ground)
}

fn house_matters(draft: &Draft, field: HouseField) -> bool {
    let blank = |field| {
        let mut rooms = draft.all_rooms();
        rooms.any(|room| draft.entry(Field::Room(room.id, field)).is_none())
    };
    match field {
        HouseField::Indoors => blank(RoomField::Temperature),
        HouseField::CeilingHeight => blank(RoomField::Height),
        HouseField::MeanTemperature | HouseField::ColdestMonth => on_ground(draft),
        HouseField::Wind => {
            let vented = draft.spaces.iter().any(|space| space.used == RoomUse::CrawlSpace);
            draft.air.basis != AirBasis::Class || vented
        }
        _ => true,
    }
}

fn ground_matters(draft: &Draft, field: GroundField) -> bool {
    let edge = draft.ground.edge != EdgeBasis::None;
    match field {
        GroundField::WallThickness => true,
        GroundField::FFactor => draft.ground.method == GroundMethod::FFactor,
        GroundField::EdgeDepth | GroundField::EdgeR | GroundField::EdgeThickness => {
            edge && draft.ground.method == GroundMethod::Iso
        }
    }
}

fn origin(draft: &Draft, field: Field) -> InputOrigin {
    if let Resolved::Typed { .. } = resolve(draft, field) {
        return typed_origin(field);
    }
    if from_station(draft, field).is_some() {
        return InputOrigin::Table;
    }
    match field.spec().blank {
        Blank::Follows => followed_origin(draft, field),
        Blank::Assumed(_) | Blank::Required => InputOrigin::Assumed,
    }
}

/// What people read, measure or want, by what it is.
fn typed_origin(field: Field) -> InputOrigin {
    use InputOrigin::{Given, Label, Measured};
    match field {
        Field::House(HouseField::CeilingHeight) => Measured,
        Field::House(_) | Field::Certainty(_) | Field::Price(_) | Field::Bills(_) => Given,
        Field::Air(AirField::BlowerFlow | AirField::BlowerExponent | AirField::LeakageArea) => {
            Measured
        }
        Field::Air(_) | Field::Point(..) | Field::PumpPoint(..) | Field::Part(_) => Label,
        Field::Ground(GroundField::EdgeR | GroundField::FFactor) => Label,
        Field::Element(ElementField::Derate) => Given,
        Field::Element(_) | Field::Assembly(..) => Label,
        Field::Circuit(
            CircuitField::ReturnPipe
            | CircuitField::ReturnElbows
            | CircuitField::BoilerElbows
            | CircuitField::BoilerTees
            | CircuitField::BoilerValves,
        ) => Measured,
        Field::Circuit(CircuitField::EquipmentHead) => Label,
        Field::Circuit(_) => Given,
        Field::Plant(PlantField::TopHeight) => Measured,
        Field::Plant(
            PlantField::Output
            | PlantField::LeastOutput
            | PlantField::BoilerVolume
            | PlantField::OtherVolume
            | PlantField::LeastReturn
            | PlantField::TankOutput
            | PlantField::Relief,
        ) => Label,
        Field::Plant(_) => Given,
        Field::Room(_, RoomField::Temperature | RoomField::AirChanges | RoomField::OtherHeat) => {
            Given
        }
        _ => match field.spec().kind {
            Kind::Transmittance | Kind::Resistance => Label,
            _ => Measured,
        },
    }
}

/// Where the value of a blank field comes from that follows from others: other numbers, a class that
/// was picked, or what is usual.
fn followed_origin(draft: &Draft, field: Field) -> InputOrigin {
    use InputOrigin::{Assumed, Table, Worked};
    let used = |id| draft.room(id).map(|room| room.used);
    match field {
        Field::House(HouseField::AirChanges) | Field::Ground(GroundField::FFactor) => Table,
        Field::Assembly(..) | Field::Plant(PlantField::Fill | PlantField::LeastOutput) => Worked,
        Field::Room(id, RoomField::Height) => match used(id) {
            Some(RoomUse::Attic | RoomUse::CrawlSpace) => Assumed,
            _ => Worked,
        },
        Field::Room(_, RoomField::FloorArea | RoomField::Temperature) => Worked,
        Field::Room(_, RoomField::PipeBack | RoomField::ElbowsBack) => Worked,
        // The slope of a roof is nobody's measure.
        Field::Surface(id, surface, SurfaceField::Area) => {
            let ceiling =
                draft.surface(id, surface).is_some_and(|s| s.kind == SurfaceKind::Ceiling);
            match used(id) {
                Some(RoomUse::Attic) if ceiling => Assumed,
                _ => Worked,
            }
        }
        Field::Surface(
            _,
            _,
            SurfaceField::Height | SurfaceField::Free | SurfaceField::Perimeter,
        ) => Worked,
        Field::Surface(id, surface, SurfaceField::Depth) => {
            match draft.surface(id, surface).map(|s| s.kind) {
                Some(SurfaceKind::Wall) => Assumed,
                _ => Worked,
            }
        }
        Field::Opening(_, _, _, OpeningField::U | OpeningField::R) => Worked,
        _ => Assumed,
    }
}
