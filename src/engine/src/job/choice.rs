//! Every place where something is chosen from a list: what may be chosen, what is, and choosing it.
//!
//! The counterpart of [`super::Field`] for what is not typed; the page draws a list from it.

mod id;

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
    AirClass, Assembly, AssemblyId, ChangeId, Framing, Level, Material, OpenFlue, OpeningId,
    OpeningKind, Place, Position, RoomId, RoomUse, Shelter, SlabEdge, Soil, Storeys, SurfaceId,
    SurfaceKind, Used, WallUse, ZoneId,
};
use crate::named::Named;
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

fn all<T: Named>(pick: fn(T) -> Pick) -> Vec<Pick> {
    T::ALL.iter().copied().map(pick).collect()
}

impl Draft {
    /// What may be chosen, in the order of the list; empty when the thing is gone.
    pub fn picks(&self, choice: Choice) -> Vec<Pick> {
        match choice {
            Choice::DesignHours => all(Pick::DesignHours),
            Choice::AirClass => all(Pick::AirClass),
            Choice::AirBasis => all(Pick::AirBasis),
            Choice::Storeys => all(Pick::Storeys),
            Choice::Shelter => all(Pick::Shelter),
            Choice::Flue => all(Pick::Flue),
            Choice::Soil => all(Pick::Soil),
            Choice::GroundMethod => all(Pick::GroundMethod),
            Choice::Edge => all(Pick::Edge),
            Choice::SlabEdge => all(Pick::SlabEdge),
            Choice::Fuel => all(Pick::Fuel),
            Choice::Tube | Choice::Main(_) | Choice::Pipe(_) => all(Pick::Tube),
            Choice::Objective => all(Pick::Objective),
            Choice::Sticks => all(Pick::Sticks),
            Choice::FlowBasis => all(Pick::FlowBasis),
            Choice::PipeCover => all(Pick::PipeCover),
            Choice::Zoning => all(Pick::Zoning),
            Choice::Pump | Choice::ZonePump(_) => PumpKind::ALL.map(Pick::Pump).to_vec(),
            Choice::PumpSet => all(Pick::PumpSet),
            Choice::BoilerKind => all(Pick::BoilerKind),
            Choice::TankHeating => all(Pick::TankHeating),
            Choice::Metal => all(Pick::Metal),
            Choice::ValveKind => all(Pick::ValveKind),
            Choice::Antifreeze => all(Pick::Antifreeze),
            Choice::Standing => all(Pick::Standing),
            Choice::Ran => all(Pick::Ran),
            Choice::SupplyBy => all(Pick::SupplyBy),
            Choice::Mass => all(Pick::Mass),
            Choice::Holds(zone) => self.holds_picks(zone),
            Choice::RoomMass(_) => RoomMass::ALL.map(Pick::RoomMass).to_vec(),
            Choice::Arrangement(_) => all(Pick::Arrangement),
            Choice::Balancing(_) => all(Pick::Balancing),
            Choice::BackPath(_) => all(Pick::BackPath),
            Choice::Hung(room) => self.hung_picks(room),
            Choice::Diverters(_) => all(Pick::Diverters),
            Choice::ShutOff(_) => all(Pick::ShutOff),
            Choice::Leg(..) => all(Pick::Leg),
            Choice::Level(_) => all(Pick::Level),
            Choice::Shape(_) => all(Pick::Shape),
            Choice::Behind(room, surface) => self.behind_picks(room, surface),
            Choice::WallUse(..) => all(Pick::WallUse),
            Choice::SurfaceBuild(room, surface) => self
                .surface(room, surface)
                .map(|s| self.builds(&[self.used_at(room, s.kind, s.behind)], s.u_value))
                .unwrap_or_default(),
            Choice::OpeningBuild(room, surface, opening) => {
                let garage = self.room(room).is_some_and(|room| room.used == RoomUse::Garage);
                self.opening(room, surface, opening)
                    .map(|o| match o.kind {
                        OpeningKind::Window => self.builds(&[Used::Window], o.u_value),
                        OpeningKind::Door if garage => {
                            self.builds(&[Used::GarageDoor, Used::Door], o.u_value)
                        }
                        OpeningKind::Door => self.builds(&[Used::Door], o.u_value),
                    })
                    .unwrap_or_default()
            }
            Choice::Position(_) => all(Pick::Position),
            Choice::Framing(_) => all(Pick::Framing),
            Choice::LayerMaterial(..) => {
                let listed = Material::ALL.iter().copied().map(LayerMaterial::Listed);
                listed.chain([LayerMaterial::TypedR]).map(Pick::LayerMaterial).collect()
            }
            Choice::LayerPlace(..) => all(Pick::LayerPlace),
            Choice::ChangeKind(_) => all(Pick::ChangeKind),
            Choice::ChangeWhose(id) => self.whose_picks(id),
            Choice::ChangeBuild(id) => match self.change(id) {
                Some(change) => self.builds(change.kind.used().as_slice(), change.build),
                None => Vec::new(),
            },
            Choice::ChangeLeaks(_) => all(Pick::AirBasis),
            Choice::ChangeAirClass(_) => all(Pick::AirClass),
            Choice::ChangeLevel(_) => all(Pick::Level),
            Choice::OutsideWalls(_) => all(Pick::OutsideWalls),
        }
    }

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

    /// Each zone, a split one by its loops, with one loop more to begin.
    fn hung_picks(&self, room: RoomId) -> Vec<Pick> {
        let mut picks = Vec::new();
        if self.heated_room(room).is_none() {
            return picks;
        }
        for zone in &self.zones {
            let loops = match zone.arrangement {
                Arrangement::Split => {
                    let used = self.rooms_of(zone.id).map(|room| room.branch + 1).max();
                    (used.unwrap_or(0) + 1).min(MOST_LOOPS)
                }
                _ => 1,
            };
            picks.extend((0..loops).map(|branch| Pick::Hung(Hung { zone: zone.id, branch })));
        }
        picks
    }

    /// A thermostat in the first room or in another, and valves where each room has a way of its own.
    fn holds_picks(&self, id: ZoneId) -> Vec<Pick> {
        let Some(zone) = self.zone(id) else { return Vec::new() };
        let mut picks = vec![Holds::FirstRoom];
        picks.extend(self.rooms_of(id).map(|room| Holds::Thermostat(room.id)));
        picks.extend(zone.arrangement.has_branches().then_some(Holds::RoomValves));
        // What is chosen stays on the list, also when it is gone.
        if !picks.contains(&zone.holds) {
            picks.push(zone.holds);
        }
        picks.into_iter().map(Pick::Holds).collect()
    }

    /// Outdoors and ground, then guesses, then every other room and space.
    fn behind_picks(&self, room: RoomId, surface: SurfaceId) -> Vec<Pick> {
        let mut picks = vec![Behind::Outdoors];
        // Nothing but birds lies under the earth over a ceiling.
        if self.surface(room, surface).is_none_or(|s| s.kind != SurfaceKind::Ceiling) {
            picks.push(Behind::Ground);
        }
        picks.extend([Behind::Unheated, Behind::SameTemperature]);
        picks.extend(self.all_rooms().map(|r| r.id).filter(|id| *id != room).map(Behind::Room));
        // What is chosen stays on the list, also when it is wrong.
        if let Some(now) = self.surface(room, surface).map(|s| s.behind)
            && !picks.contains(&now)
        {
            picks.push(now);
        }
        picks.into_iter().map(Pick::Behind).collect()
    }

    /// Where a surface of this kind finds its assemblies on the list.
    pub(super) fn used_at(&self, room: RoomId, kind: SurfaceKind, behind: Behind) -> Used {
        let attic = self.room(room).is_some_and(|r| r.used == RoomUse::Attic);
        match (kind, behind) {
            (SurfaceKind::Wall, Behind::Ground) => Used::BasementWall,
            (SurfaceKind::Wall, _) => Used::Wall,
            (SurfaceKind::Ceiling, Behind::Outdoors) if attic => Used::Roof,
            (SurfaceKind::Ceiling, _) => Used::Ceiling,
            (SurfaceKind::Floor, Behind::Ground) => Used::Slab,
            (SurfaceKind::Floor, _) => Used::Floor,
        }
    }

    /// The user's own assemblies of these places, the listed ones, and the two ways to type a value.
    fn builds(&self, used: &[Used], now: UValue) -> Vec<Pick> {
        let own =
            self.assemblies.iter().filter(|a| used.iter().any(|&used| fits(a.position, used)));
        let mut builds: Vec<UValue> = own.map(|a| UValue::Own(a.id)).collect();
        for &used in used {
            builds.extend(Assembly::used_in(used).map(UValue::Listed));
        }
        builds.extend([UValue::TypedU, UValue::TypedR]);
        // What is chosen stays on the list, also when it is gone or meant for another place.
        if !builds.contains(&now) {
            builds.push(now);
        }
        builds.into_iter().map(Pick::Build).collect()
    }
}

/// More loops than any zone is split into.
const MOST_LOOPS: u32 = 12;

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

/// Whether an assembly of the user's own can stand there.
fn fits(position: Position, used: Used) -> bool {
    match used {
        Used::Wall => matches!(position, Position::Wall | Position::Partition),
        // A ceiling and roof in one stands over a room as over an attic.
        Used::Ceiling => matches!(position, Position::Ceiling | Position::Roof),
        Used::Roof => position == Position::Roof,
        Used::Floor => position == Position::Floor,
        Used::Slab => position == Position::Slab,
        Used::BasementWall => position == Position::GroundWall,
        Used::Window | Used::Door | Used::GarageDoor => false,
    }
}
