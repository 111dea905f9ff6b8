//! Every place where something is chosen from a list: what is chosen, and choosing it. What may be
//! chosen stands in `list`.
//!
//! The counterpart of [`super::Field`] for what is not typed; the page draws a list from it.

mod id;
mod list;

use super::control::{Holds, Mass, RoomMass, SupplyBy};
use super::draft::{
    AirBasis, Behind, DesignHours, Draft, EdgeBasis, FlowBasis, GroundMethod, LayerMaterial,
    PipeCover, RoomDraft, Shape, UValue,
};
use super::existing::{Ran, Standing};
use super::piping::{
    Arrangement, BackPath, Balancing, Diverters, Hung, LegKind, PumpKind, PumpSet, ShutOff,
    ZoneDraft, Zoning,
};
use super::plant::{Antifreeze, BoilerKind, TankHeating, ValveKind};
use super::shop::{Objective, Sticks};
use super::what_if::{ChangeKind, OutsideWalls, Whose};
use crate::bills::Fuel;
use crate::building::{
    AirClass, AssemblyId, ChangeId, Framing, Level, OpenFlue, OpeningId, Place, Position, RoomId,
    Shelter, SlabEdge, Soil, Storeys, SurfaceId, WallUse, ZoneId,
};
use crate::pipe::Tube;
use crate::plant::expansion::Metal;

/// A place where something is chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Choice {
    DesignHours,
    AirClass,
    AirBasis,
    Storeys,
    Shelter,
    Flue,
    Soil,
    GroundMethod,
    Edge,
    SlabEdge,
    Fuel,
    Tube,
    Objective,
    Sticks,
    FlowBasis,
    PipeCover,
    Zoning,
    Pump,
    PumpSet,
    BoilerKind,
    TankHeating,
    Metal,
    ValveKind,
    Antifreeze,
    Standing,
    Ran,
    SupplyBy,
    Mass,
    Arrangement(ZoneId),
    Main(ZoneId),
    Pipe(ZoneId),
    Balancing(ZoneId),
    BackPath(ZoneId),
    ZonePump(ZoneId),
    Holds(ZoneId),
    /// Which zone a room hangs on, and which loop of a split one.
    Hung(RoomId),
    Diverters(RoomId),
    ShutOff(RoomId),
    RoomMass(RoomId),
    /// A step of a room's route, counted from zero.
    Leg(RoomId, usize),
    Level(RoomId),
    Shape(RoomId),
    Behind(RoomId, SurfaceId),
    WallUse(RoomId, SurfaceId),
    SurfaceBuild(RoomId, SurfaceId),
    OpeningBuild(RoomId, SurfaceId, OpeningId),
    Position(AssemblyId),
    Framing(AssemblyId),
    /// A layer of an assembly, counted from zero.
    LayerMaterial(AssemblyId, usize),
    LayerPlace(AssemblyId, usize),
    /// What a change that is only weighed changes.
    ChangeKind(ChangeId),
    /// The house, or one room of it.
    ChangeWhose(ChangeId),
    ChangeBuild(ChangeId),
    /// How the leakage is known that there will be.
    ChangeLeaks(ChangeId),
    ChangeAirClass(ChangeId),
    /// Of a new room.
    ChangeLevel(ChangeId),
    OutsideWalls(ChangeId),
}

/// Something that can be chosen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pick {
    DesignHours(DesignHours),
    AirClass(AirClass),
    AirBasis(AirBasis),
    Storeys(Storeys),
    Shelter(Shelter),
    Flue(OpenFlue),
    Soil(Soil),
    GroundMethod(GroundMethod),
    Edge(EdgeBasis),
    SlabEdge(SlabEdge),
    Fuel(Fuel),
    Tube(Tube),
    Objective(Objective),
    Sticks(Sticks),
    FlowBasis(FlowBasis),
    PipeCover(PipeCover),
    Zoning(Zoning),
    Pump(PumpKind),
    PumpSet(PumpSet),
    BoilerKind(BoilerKind),
    TankHeating(TankHeating),
    Metal(Metal),
    ValveKind(ValveKind),
    Antifreeze(Antifreeze),
    Standing(Standing),
    Ran(Ran),
    SupplyBy(SupplyBy),
    Mass(Mass),
    Holds(Holds),
    RoomMass(RoomMass),
    Arrangement(Arrangement),
    Balancing(Balancing),
    BackPath(BackPath),
    Hung(Hung),
    Diverters(Diverters),
    ShutOff(ShutOff),
    Leg(LegKind),
    Level(Level),
    Shape(Shape),
    Behind(Behind),
    WallUse(WallUse),
    Build(UValue),
    Position(Position),
    Framing(Framing),
    LayerMaterial(LayerMaterial),
    LayerPlace(Place),
    ChangeKind(ChangeKind),
    Whose(Whose),
    OutsideWalls(OutsideWalls),
}

impl Draft {
    /// What is chosen; `None` when the thing is gone.
    pub fn picked(&self, choice: Choice) -> Option<Pick> {
        Some(match choice {
            Choice::DesignHours => Pick::DesignHours(self.design_hours),
            Choice::AirClass => Pick::AirClass(self.air_class),
            Choice::AirBasis => Pick::AirBasis(self.air.basis),
            Choice::Storeys => Pick::Storeys(self.air.storeys),
            Choice::Shelter => Pick::Shelter(self.air.shelter),
            Choice::Flue => Pick::Flue(self.air.flue),
            Choice::Soil => Pick::Soil(self.ground.soil),
            Choice::GroundMethod => Pick::GroundMethod(self.ground.method),
            Choice::Edge => Pick::Edge(self.ground.edge),
            Choice::SlabEdge => Pick::SlabEdge(self.ground.slab_edge),
            Choice::Fuel => Pick::Fuel(self.bills.fuel),
            Choice::Tube => Pick::Tube(self.tube),
            Choice::Objective => Pick::Objective(self.element.objective),
            Choice::Sticks => Pick::Sticks(self.cutting.sticks),
            Choice::FlowBasis => Pick::FlowBasis(self.flow_basis),
            Choice::PipeCover => Pick::PipeCover(self.pipe_cover),
            Choice::Zoning => Pick::Zoning(self.zoning),
            Choice::Pump => Pick::Pump(self.pump.kind),
            Choice::PumpSet => Pick::PumpSet(self.pump.set),
            Choice::BoilerKind => Pick::BoilerKind(self.plant.boiler),
            Choice::TankHeating => Pick::TankHeating(self.plant.tank),
            Choice::Metal => Pick::Metal(self.plant.metal),
            Choice::ValveKind => Pick::ValveKind(self.plant.valve),
            Choice::Antifreeze => Pick::Antifreeze(self.plant.antifreeze),
            Choice::Standing => Pick::Standing(self.existing.standing),
            Choice::Ran => Pick::Ran(self.existing.ran),
            Choice::SupplyBy => Pick::SupplyBy(self.control.supply),
            Choice::Mass => Pick::Mass(self.control.mass),
            Choice::Arrangement(zone) => Pick::Arrangement(self.zone(zone)?.arrangement),
            Choice::Main(zone) => Pick::Tube(self.zone(zone)?.main),
            Choice::Pipe(zone) => Pick::Tube(self.zone(zone)?.pipe),
            Choice::Balancing(zone) => Pick::Balancing(self.zone(zone)?.balancing),
            Choice::BackPath(zone) => Pick::BackPath(self.zone(zone)?.back),
            Choice::ZonePump(zone) => Pick::Pump(self.zone(zone)?.pump),
            Choice::Holds(zone) => Pick::Holds(self.zone(zone)?.holds),
            Choice::Hung(room) => Pick::Hung(self.hung(self.heated_room(room)?)),
            Choice::Diverters(room) => Pick::Diverters(self.heated_room(room)?.diverters),
            Choice::ShutOff(room) => Pick::ShutOff(self.heated_room(room)?.shut_off),
            Choice::RoomMass(room) => Pick::RoomMass(self.heated_room(room)?.mass),
            Choice::Leg(room, row) => Pick::Leg(self.room(room)?.route.get(row)?.kind),
            Choice::Level(room) => Pick::Level(self.room(room)?.level),
            Choice::Shape(room) => Pick::Shape(self.room(room)?.shape),
            Choice::Behind(room, surface) => Pick::Behind(self.surface(room, surface)?.behind),
            Choice::WallUse(room, surface) => Pick::WallUse(self.surface(room, surface)?.wall_use),
            Choice::SurfaceBuild(room, surface) => {
                Pick::Build(self.surface(room, surface)?.u_value)
            }
            Choice::OpeningBuild(room, surface, opening) => {
                Pick::Build(self.opening(room, surface, opening)?.u_value)
            }
            Choice::Position(id) => Pick::Position(self.assembly(id)?.position),
            Choice::Framing(id) => Pick::Framing(self.assembly(id)?.framing),
            Choice::LayerMaterial(id, row) => {
                Pick::LayerMaterial(self.assembly(id)?.layers.get(row)?.material)
            }
            Choice::LayerPlace(id, row) => {
                Pick::LayerPlace(self.assembly(id)?.layers.get(row)?.place)
            }
            Choice::ChangeKind(id) => Pick::ChangeKind(self.change(id)?.kind),
            Choice::ChangeWhose(id) => Pick::Whose(self.change(id)?.whose),
            Choice::ChangeBuild(id) => Pick::Build(self.change(id)?.build),
            Choice::ChangeLeaks(id) => Pick::AirBasis(self.change(id)?.leaks),
            Choice::ChangeAirClass(id) => Pick::AirClass(self.change(id)?.air_class),
            Choice::ChangeLevel(id) => Pick::Level(self.change(id)?.level),
            Choice::OutsideWalls(id) => Pick::OutsideWalls(self.change(id)?.outside),
        })
    }

    /// Chooses. A pick of another list, or for a thing that is gone, is ignored.
    pub fn pick(&mut self, choice: Choice, pick: Pick) {
        match (choice, pick) {
            (Choice::DesignHours, Pick::DesignHours(p)) => self.design_hours = p,
            (Choice::AirClass, Pick::AirClass(p)) => self.air_class = p,
            (Choice::AirBasis, Pick::AirBasis(p)) => self.air.basis = p,
            (Choice::Storeys, Pick::Storeys(p)) => self.air.storeys = p,
            (Choice::Shelter, Pick::Shelter(p)) => self.air.shelter = p,
            (Choice::Flue, Pick::Flue(p)) => self.air.flue = p,
            (Choice::Soil, Pick::Soil(p)) => self.ground.soil = p,
            (Choice::GroundMethod, Pick::GroundMethod(p)) => self.ground.method = p,
            (Choice::Edge, Pick::Edge(p)) => self.ground.edge = p,
            (Choice::SlabEdge, Pick::SlabEdge(p)) => self.ground.slab_edge = p,
            (Choice::Fuel, Pick::Fuel(p)) => self.bills.fuel = p,
            (Choice::Tube, Pick::Tube(p)) => self.set_tube(p),
            (Choice::Objective, Pick::Objective(p)) => self.element.objective = p,
            (Choice::Sticks, Pick::Sticks(p)) => self.cutting.sticks = p,
            (Choice::FlowBasis, Pick::FlowBasis(p)) => self.flow_basis = p,
            (Choice::PipeCover, Pick::PipeCover(p)) => self.pipe_cover = p,
            (Choice::Zoning, Pick::Zoning(p)) => self.zoning = p,
            (Choice::Pump, Pick::Pump(p)) => {
                self.pump.kind = p;
                self.begin_points(p);
            }
            (Choice::PumpSet, Pick::PumpSet(p)) => self.pump.set = p,
            (Choice::BoilerKind, Pick::BoilerKind(p)) => self.plant.boiler = p,
            (Choice::TankHeating, Pick::TankHeating(p)) => self.plant.tank = p,
            (Choice::Metal, Pick::Metal(p)) => self.plant.metal = p,
            (Choice::ValveKind, Pick::ValveKind(p)) => self.plant.valve = p,
            (Choice::Antifreeze, Pick::Antifreeze(p)) => self.plant.antifreeze = p,
            (Choice::Standing, Pick::Standing(p)) => self.existing.standing = p,
            (Choice::Ran, Pick::Ran(p)) => self.existing.ran = p,
            (Choice::SupplyBy, Pick::SupplyBy(p)) => self.control.supply = p,
            (Choice::Mass, Pick::Mass(p)) => self.control.mass = p,
            (Choice::Arrangement(zone), Pick::Arrangement(p)) => self.arrange(zone, p),
            (
                Choice::Main(zone)
                | Choice::Pipe(zone)
                | Choice::Balancing(zone)
                | Choice::BackPath(zone)
                | Choice::ZonePump(zone)
                | Choice::Holds(zone),
                pick,
            ) => {
                if let Some(zone) = self.zone_mut(zone) {
                    pick_for_zone(zone, choice, pick);
                }
                if let Pick::Pump(p) = pick {
                    self.begin_points(p);
                }
            }
            (Choice::Hung(room), Pick::Hung(p)) => {
                if let Some(room) = self.rooms.iter_mut().find(|r| r.id == room) {
                    (room.zone, room.branch) = (p.zone, p.branch);
                }
            }
            (Choice::Diverters(room), Pick::Diverters(p)) => {
                if let Some(room) = self.rooms.iter_mut().find(|r| r.id == room) {
                    room.diverters = p;
                }
            }
            (Choice::ShutOff(room), Pick::ShutOff(p)) => {
                if let Some(room) = self.rooms.iter_mut().find(|r| r.id == room) {
                    room.shut_off = p;
                }
            }
            (Choice::RoomMass(room), Pick::RoomMass(p)) => {
                if let Some(room) = self.rooms.iter_mut().find(|r| r.id == room) {
                    room.mass = p;
                }
            }
            (Choice::Leg(room, row), Pick::Leg(p)) => {
                if let Some(leg) = self.room_mut(room).and_then(|room| room.route.get_mut(row)) {
                    leg.kind = p;
                }
            }
            (Choice::Level(room), Pick::Level(p)) => {
                if let Some(room) = self.room_mut(room) {
                    room.level = p;
                }
            }
            (Choice::Shape(room), Pick::Shape(p)) => {
                if let Some(room) = self.room_mut(room) {
                    room.shape = p;
                }
            }
            (Choice::Behind(room, surface), Pick::Behind(p)) => {
                self.set_behind(room, surface, p);
            }
            (Choice::WallUse(room, surface), Pick::WallUse(p)) => {
                if let Some(surface) = self.surface_mut(room, surface) {
                    surface.wall_use = p;
                }
            }
            (Choice::SurfaceBuild(room, surface), Pick::Build(p)) => {
                if let Some(surface) = self.surface_mut(room, surface) {
                    surface.u_value = p;
                }
            }
            (Choice::OpeningBuild(room, surface, opening), Pick::Build(p)) => {
                if let Some(opening) = self.opening_mut(room, surface, opening) {
                    opening.u_value = p;
                }
            }
            (Choice::Position(id), Pick::Position(p)) => {
                if let Some(assembly) = self.assembly_mut(id) {
                    assembly.position = p;
                }
            }
            (Choice::Framing(id), Pick::Framing(p)) => {
                if let Some(assembly) = self.assembly_mut(id) {
                    assembly.framing = p;
                }
            }
            (Choice::LayerMaterial(id, row), Pick::LayerMaterial(p)) => {
                if let Some(layer) = self.layer_mut(id, row) {
                    layer.material = p;
                }
            }
            (
                Choice::ChangeKind(id)
                | Choice::ChangeWhose(id)
                | Choice::ChangeBuild(id)
                | Choice::ChangeLeaks(id)
                | Choice::ChangeAirClass(id)
                | Choice::ChangeLevel(id)
                | Choice::OutsideWalls(id),
                pick,
            ) => self.pick_for_change(id, choice, pick),
            (Choice::LayerPlace(id, row), Pick::LayerPlace(p)) => {
                if let Some(layer) = self.layer_mut(id, row) {
                    layer.place = p;
                }
            }
            _ => {}
        }
    }

    fn heated_room(&self, id: RoomId) -> Option<&RoomDraft> {
        self.rooms.iter().find(|room| room.id == id)
    }
}

fn pick_for_zone(zone: &mut ZoneDraft, choice: Choice, pick: Pick) {
    match (choice, pick) {
        (Choice::Main(_), Pick::Tube(p)) => zone.main = p,
        (Choice::Pipe(_), Pick::Tube(p)) => zone.pipe = p,
        (Choice::Balancing(_), Pick::Balancing(p)) => zone.balancing = p,
        (Choice::BackPath(_), Pick::BackPath(p)) => zone.back = p,
        (Choice::ZonePump(_), Pick::Pump(p)) => zone.pump = p,
        (Choice::Holds(_), Pick::Holds(p)) => zone.holds = p,
        _ => {}
    }
}
