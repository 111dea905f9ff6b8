//! What several checks need: jobs from files, jobs typed in code, and their designs.

use finrun_engine::building::{OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, ChangeField, Choice,
    CircuitField, ControlField, CutField, Draft, ElementField, Entry, Field, File, GroundField,
    Header, HouseField, Job, LayerField, OpeningDraft, OpeningField, PointField, RoomField,
    SurfaceField, UValue, read,
};
use finrun_engine::job::{
    Group, LegField, MeasuredField, PartField, PlantField, PriceField, PumpPointField, SizedField,
    SpotField, StockField, ZoneField,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::System;

pub(crate) const DEMO: &str = include_str!("../../public/demo/bungalow.json");
pub(crate) const FOUR_ROOMS: &str = include_str!("../jobs/four-rooms.json");
pub(crate) const V1_FIXTURE: &str = include_str!("../jobs/v1-fixture.json");
pub(crate) const V6_FIXTURE: &str = include_str!("../jobs/v6-fixture.json");
pub(crate) const V5_FIXTURE: &str = include_str!("../jobs/v5-fixture.json");
pub(crate) const V4_FIXTURE: &str = include_str!("../jobs/v4-fixture.json");
pub(crate) const V3_FIXTURE: &str = include_str!("../jobs/v3-fixture.json");
pub(crate) const V2_FIXTURE: &str = include_str!("../jobs/v2-fixture.json");

/// Opens a job file as the page does: its header first.
pub(crate) fn open(text: &str) -> Draft {
    let header: Header = serde_json::from_str(text).expect("a header");
    header.check().expect("a version that is known");
    let file: File = serde_json::from_str(text).expect("a job file");
    file.open().expect("a sound job")
}

/// Types `text` into the box of `field`.
pub(crate) fn set(draft: &mut Draft, field: Field, text: &str) {
    let unit = draft.box_unit(field);
    draft.set_entry(field, Entry { text: text.to_string(), unit });
}

pub(crate) fn house(draft: &mut Draft, field: HouseField, text: &str) {
    set(draft, Field::House(field), text);
}

pub(crate) fn room(draft: &mut Draft, room: RoomId, field: RoomField, text: &str) {
    set(draft, Field::Room(room, field), text);
}

/// A draft with nothing wrong or missing, as a job.
pub(crate) fn job_of(draft: &Draft) -> Job {
    let reading = read(draft);
    assert!(reading.errors.is_empty(), "{:?}", reading.errors);
    reading.job.expect("a whole job")
}

pub(crate) fn solve(draft: &Draft) -> (Job, Design) {
    let job = job_of(draft);
    let design = design(&job);
    (job, design)
}

/// An empty job in US units for a day of 0 °F, in a house that lets no air in, so that a room's load
/// is that of its surfaces.
pub(crate) fn cold_day() -> Draft {
    let mut draft = Draft::new("Test", System::Us);
    house(&mut draft, HouseField::Outdoors, "0");
    house(&mut draft, HouseField::AirChanges, "0");
    draft
}

/// Adds a room of this floor.
pub(crate) fn add_room(draft: &mut Draft, name: &str, length: &str, width: &str) -> RoomId {
    let id = draft.add_room(name);
    room(draft, id, RoomField::FloorLength, length);
    room(draft, id, RoomField::FloorWidth, width);
    id
}

/// Adds an outside wall of a typed U, in Btu/(h ft2 F).
pub(crate) fn add_wall(draft: &mut Draft, room: RoomId, length: &str, u: &str) -> SurfaceId {
    let id = draft.add_surface(room, SurfaceKind::Wall).expect("the room is there");
    draft.surface_mut(room, id).expect("just added").u_value = UValue::TypedU;
    set(draft, Field::Surface(room, id, SurfaceField::Length), length);
    set(draft, Field::Surface(room, id, SurfaceField::U), u);
    id
}

pub(crate) fn add_opening(
    draft: &mut Draft,
    room: RoomId,
    wall: SurfaceId,
    kind: OpeningKind,
    fields: &[(OpeningField, &str)],
) -> OpeningId {
    let id = draft.add_opening(room, wall, kind).expect("the wall is there");
    for &(field, text) in fields {
        set(draft, Field::Opening(room, wall, id, field), text);
    }
    id
}

/// Whether a number is read from a field: not from a date, nor from a choice that has errors.
pub(crate) fn holds_number(field: Field) -> bool {
    !matches!(
        field,
        Field::Stock
            | Field::Bill(_, BillField::From | BillField::To)
            | Field::Surface(_, _, SurfaceField::Behind | SurfaceField::Fixed)
            | Field::Change(_, ChangeField::Whose)
    )
}

/// Every field of a draft.
pub(crate) fn fields(draft: &Draft) -> Vec<Field> {
    let mut out: Vec<Field> = HouseField::ALL.iter().copied().map(Field::House).collect();
    out.extend(AirField::ALL.iter().copied().map(Field::Air));
    out.extend(GroundField::ALL.iter().copied().map(Field::Ground));
    out.extend(CertaintyField::ALL.iter().copied().map(Field::Certainty));
    for assembly in &draft.assemblies {
        out.extend(AssemblyField::ALL.iter().map(|&field| Field::Assembly(assembly.id, field)));
        for row in 0..assembly.layers.len() {
            let of = |&field| Field::Layer(assembly.id, row, field);
            out.extend(LayerField::ALL.iter().map(of));
        }
    }
    out.extend(BillsField::ALL.iter().copied().map(Field::Bills));
    for bill in &draft.bills.list {
        out.extend(BillField::ALL.iter().map(|&field| Field::Bill(bill.id, field)));
    }
    out.extend(ElementField::ALL.iter().copied().map(Field::Element));
    for row in 0..draft.element.points.len() {
        out.extend(PointField::ALL.iter().map(|&field| Field::Point(row, field)));
    }
    for &feet in &draft.element.stock_ft {
        out.extend(StockField::ALL.iter().map(|&field| Field::Stocked(feet, field)));
    }
    out.extend(PriceField::ALL.iter().copied().map(Field::Price));
    for of in &draft.sized_prices {
        out.extend(SizedField::ALL.iter().map(|&field| Field::SizedPrice(of.tube, field)));
    }
    out.extend(Group::ALL.iter().copied().map(Field::Spare));
    out.extend(CutField::ALL.iter().copied().map(Field::Cut));
    out.extend(CircuitField::ALL.iter().copied().map(Field::Circuit));
    out.extend(PartField::ALL.iter().copied().map(Field::Part));
    out.extend(PlantField::ALL.iter().copied().map(Field::Plant));
    out.extend(ControlField::ALL.iter().copied().map(Field::Control));
    for zone in &draft.zones {
        out.extend(ZoneField::ALL.iter().map(|&field| Field::Zone(zone.id, field)));
    }
    for row in 0..draft.pump.points.len() {
        out.extend(PumpPointField::ALL.iter().map(|&field| Field::PumpPoint(row, field)));
    }
    for room in &draft.rooms {
        for row in 0..room.route.len() {
            out.extend(LegField::ALL.iter().map(|&field| Field::Leg(room.id, row, field)));
        }
    }
    out.extend(MeasuredField::ALL.iter().copied().map(Field::Measured));
    for room in &draft.rooms {
        out.extend(SpotField::ALL.iter().map(|&field| Field::Spot(room.id, field)));
    }
    for change in &draft.what_if {
        out.extend(ChangeField::ALL.iter().map(|&field| Field::Change(change.id, field)));
    }
    for room in draft.all_rooms() {
        out.extend(RoomField::ALL.iter().map(|&field| Field::Room(room.id, field)));
        for surface in &room.surfaces {
            let of = |&field| Field::Surface(room.id, surface.id, field);
            out.extend(SurfaceField::ALL.iter().map(of));
            for opening in &surface.openings {
                let of = |&field| Field::Opening(room.id, surface.id, opening.id, field);
                out.extend(OpeningField::ALL.iter().map(of));
            }
        }
    }
    out
}

/// Every place of a draft where something is chosen.
pub(crate) fn choices(draft: &Draft) -> Vec<Choice> {
    let mut out = vec![
        Choice::DesignHours,
        Choice::AirClass,
        Choice::AirBasis,
        Choice::Storeys,
        Choice::Shelter,
        Choice::Flue,
        Choice::Soil,
        Choice::GroundMethod,
        Choice::Edge,
        Choice::SlabEdge,
        Choice::Fuel,
        Choice::Tube,
        Choice::Objective,
        Choice::Sticks,
        Choice::FlowBasis,
        Choice::PipeCover,
        Choice::Zoning,
        Choice::Pump,
        Choice::PumpSet,
        Choice::BoilerKind,
        Choice::TankHeating,
        Choice::Metal,
        Choice::ValveKind,
        Choice::Antifreeze,
        Choice::Standing,
        Choice::Ran,
        Choice::SupplyBy,
        Choice::Mass,
    ];
    for zone in &draft.zones {
        let id = zone.id;
        out.extend([Choice::Arrangement(id), Choice::Main(id), Choice::Pipe(id)]);
        out.extend([Choice::Balancing(id), Choice::BackPath(id), Choice::ZonePump(id)]);
        out.push(Choice::Holds(id));
    }
    for room in &draft.rooms {
        let id = room.id;
        out.extend([Choice::Hung(id), Choice::Diverters(id), Choice::ShutOff(id)]);
        out.push(Choice::RoomMass(id));
        out.extend((0..room.route.len()).map(|row| Choice::Leg(id, row)));
    }
    for room in draft.all_rooms() {
        out.extend([Choice::Level(room.id), Choice::Shape(room.id)]);
        for surface in &room.surfaces {
            out.push(Choice::Behind(room.id, surface.id));
            out.push(Choice::WallUse(room.id, surface.id));
            out.push(Choice::SurfaceBuild(room.id, surface.id));
            let of = |o: &OpeningDraft| Choice::OpeningBuild(room.id, surface.id, o.id);
            out.extend(surface.openings.iter().map(of));
        }
    }
    for assembly in &draft.assemblies {
        out.extend([Choice::Position(assembly.id), Choice::Framing(assembly.id)]);
        for row in 0..assembly.layers.len() {
            out.push(Choice::LayerMaterial(assembly.id, row));
            out.push(Choice::LayerPlace(assembly.id, row));
        }
    }
    for change in &draft.what_if {
        let id = change.id;
        out.extend([Choice::ChangeKind(id), Choice::ChangeWhose(id), Choice::ChangeBuild(id)]);
        out.extend([Choice::ChangeLeaks(id), Choice::ChangeAirClass(id)]);
        out.extend([Choice::ChangeLevel(id), Choice::OutsideWalls(id)]);
    }
    // A new one does not compile until it stands above.
    for choice in &out {
        match choice {
            Choice::DesignHours
            | Choice::AirClass
            | Choice::AirBasis
            | Choice::Storeys
            | Choice::Shelter
            | Choice::Flue
            | Choice::Soil
            | Choice::GroundMethod
            | Choice::Edge
            | Choice::SlabEdge
            | Choice::Fuel
            | Choice::Tube
            | Choice::Objective
            | Choice::Sticks
            | Choice::FlowBasis
            | Choice::PipeCover
            | Choice::Zoning
            | Choice::Pump
            | Choice::PumpSet
            | Choice::BoilerKind
            | Choice::TankHeating
            | Choice::Metal
            | Choice::ValveKind
            | Choice::Antifreeze
            | Choice::Standing
            | Choice::Ran
            | Choice::SupplyBy
            | Choice::Mass
            | Choice::Arrangement(_)
            | Choice::Main(_)
            | Choice::Pipe(_)
            | Choice::Balancing(_)
            | Choice::BackPath(_)
            | Choice::ZonePump(_)
            | Choice::Hung(_)
            | Choice::Diverters(_)
            | Choice::ShutOff(_)
            | Choice::RoomMass(_)
            | Choice::Holds(_)
            | Choice::Leg(..)
            | Choice::Level(_)
            | Choice::Shape(_)
            | Choice::Behind(..)
            | Choice::WallUse(..)
            | Choice::SurfaceBuild(..)
            | Choice::OpeningBuild(..)
            | Choice::Position(_)
            | Choice::Framing(_)
            | Choice::LayerMaterial(..)
            | Choice::LayerPlace(..)
            | Choice::ChangeKind(_)
            | Choice::ChangeWhose(_)
            | Choice::ChangeBuild(_)
            | Choice::ChangeLeaks(_)
            | Choice::ChangeAirClass(_)
            | Choice::ChangeLevel(_)
            | Choice::OutsideWalls(_) => {}
        }
    }
    out
}
