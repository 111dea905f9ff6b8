//! Changes to a draft: one function a change, each leaving ids unique.

use super::draft::{
    AssemblyDraft, Behind, BillDraft, Draft, Entry, LayerDraft, LayerMaterial, OpeningDraft,
    RoomDraft, SurfaceDraft, UValue,
};
use super::field::Field;
use crate::building::{
    Assembly, AssemblyId, BillId, Framing, Material, OpeningId, OpeningKind, Place, Position,
    RoomId, RoomUse, SurfaceId, SurfaceKind, Used,
};
use std::iter;

impl Draft {
    pub(super) fn fresh_id(&mut self) -> u32 {
        let id = self.next_id;
        self.next_id += 1;
        id
    }

    /// Every name that was given: of the job, rooms, spaces, surfaces, assemblies, zones and changes.
    pub fn names_mut(&mut self) -> impl Iterator<Item = &mut String> {
        let rooms = self.rooms.iter_mut().chain(&mut self.spaces).flat_map(|room| {
            iter::once(&mut room.name).chain(room.surfaces.iter_mut().map(|s| &mut s.name))
        });
        iter::once(&mut self.name)
            .chain(rooms)
            .chain(self.assemblies.iter_mut().map(|assembly| &mut assembly.name))
            .chain(self.zones.iter_mut().map(|zone| &mut zone.name))
            .chain(self.what_if.iter_mut().map(|change| &mut change.name))
    }

    /// Keeps what was typed in `field`. A field of a thing that is gone is ignored.
    pub fn set_entry(&mut self, field: Field, entry: Entry) {
        match field {
            Field::House(f) => self.house.set(f, entry),
            Field::Air(f) => self.air.entries.set(f, entry),
            Field::Ground(f) => self.ground.entries.set(f, entry),
            Field::Certainty(f) => self.certainty.set(f, entry),
            Field::Assembly(id, f) => {
                if let Some(assembly) = self.assembly_mut(id) {
                    assembly.entries.set(f, entry);
                }
            }
            Field::Layer(id, row, f) => {
                if let Some(layer) = self.layer_mut(id, row) {
                    layer.entries.set(f, entry);
                }
            }
            Field::Bills(f) => self.bills.entries.set(f, entry),
            Field::Bill(id, f) => {
                if let Some(bill) = self.bill_mut(id) {
                    bill.entries.set(f, entry);
                }
            }
            Field::Element(f) => self.element.entries.set(f, entry),
            Field::Point(row, f) => {
                if let Some(point) = self.element.points.get_mut(row) {
                    point.set(f, entry);
                }
            }
            // Chosen from a list, not typed.
            Field::Stock => {}
            Field::Stocked(feet, f) => self.element.set_stocked(feet, f, entry),
            Field::Price(f) => self.prices.set(f, entry),
            Field::SizedPrice(tube, f) => self.set_sized_price(tube, f, entry),
            Field::Spare(group) => self.spare.set(group, entry),
            Field::Cut(f) => self.cutting.entries.set(f, entry),
            Field::Circuit(f) => self.circuit.set(f, entry),
            Field::Part(f) => self.part.set(f, entry),
            Field::Plant(f) => self.plant.entries.set(f, entry),
            Field::Control(f) => self.control.entries.set(f, entry),
            Field::Zone(id, f) => {
                if let Some(zone) = self.zone_mut(id) {
                    zone.entries.set(f, entry);
                }
            }
            Field::PumpPoint(row, f) => {
                if let Some(point) = self.pump.points.get_mut(row) {
                    point.set(f, entry);
                }
            }
            Field::Leg(room, row, f) => {
                if let Some(leg) = self.room_mut(room).and_then(|room| room.route.get_mut(row)) {
                    leg.entries.set(f, entry);
                }
            }
            Field::Room(room, f) => {
                if let Some(room) = self.room_mut(room) {
                    room.entries.set(f, entry);
                }
            }
            Field::Surface(room, surface, f) => {
                if let Some(surface) = self.surface_mut(room, surface) {
                    surface.entries.set(f, entry);
                }
            }
            Field::Opening(room, surface, opening, f) => {
                if let Some(opening) = self.opening_mut(room, surface, opening) {
                    opening.entries.set(f, entry);
                }
            }
            Field::Measured(f) => self.progress.measured.set(f, entry),
            Field::Spot(room, f) => self.progress.set_spot(room, f, entry),
            Field::Change(id, f) => {
                if let Some(change) = self.change_mut(id) {
                    change.entries.set(f, entry);
                }
            }
        }
    }

    pub fn room_mut(&mut self, id: RoomId) -> Option<&mut RoomDraft> {
        self.rooms.iter_mut().chain(&mut self.spaces).find(|room| room.id == id)
    }

    pub fn assembly_mut(&mut self, id: AssemblyId) -> Option<&mut AssemblyDraft> {
        self.assemblies.iter_mut().find(|assembly| assembly.id == id)
    }

    pub(super) fn layer_mut(&mut self, id: AssemblyId, row: usize) -> Option<&mut LayerDraft> {
        self.assembly_mut(id)?.layers.get_mut(row)
    }

    pub fn bill_mut(&mut self, id: BillId) -> Option<&mut BillDraft> {
        self.bills.list.iter_mut().find(|bill| bill.id == id)
    }

    pub fn surface_mut(&mut self, room: RoomId, id: SurfaceId) -> Option<&mut SurfaceDraft> {
        self.room_mut(room)?.surfaces.iter_mut().find(|surface| surface.id == id)
    }

    pub fn opening_mut(
        &mut self,
        room: RoomId,
        surface: SurfaceId,
        id: OpeningId,
    ) -> Option<&mut OpeningDraft> {
        self.surface_mut(room, surface)?.openings.iter_mut().find(|opening| opening.id == id)
    }

    /// Adds an empty room at the end of the last one's loop, on its storey.
    pub fn add_room(&mut self, name: &str) -> RoomId {
        let id = RoomId(self.fresh_id());
        let mut room = RoomDraft::new(id, name, RoomUse::Heated);
        if let Some(last) = self.rooms.last() {
            (room.level, room.zone, room.branch) = (last.level, last.zone, last.branch);
        }
        self.rooms.push(room);
        id
    }

    /// Adds an unheated space.
    pub fn add_space(&mut self, used: RoomUse, name: &str) -> RoomId {
        let id = RoomId(self.fresh_id());
        self.spaces.push(RoomDraft::new(id, name, used));
        id
    }

    /// Adds a copy of a room behind it, with ids of its own.
    pub fn copy_room(&mut self, id: RoomId, name: &str) -> Option<RoomId> {
        let index = self.rooms.iter().position(|room| room.id == id)?;
        let mut copy = self.rooms.get(index)?.clone();
        copy.id = RoomId(self.fresh_id());
        copy.name = name.to_string();
        for surface in &mut copy.surfaces {
            surface.id = SurfaceId(self.fresh_id());
            for opening in &mut surface.openings {
                opening.id = OpeningId(self.fresh_id());
            }
        }
        let new = copy.id;
        self.rooms.insert(index + 1, copy);
        Some(new)
    }

    /// Removes a room or space. Surfaces that led to it say so, until something else is chosen.
    pub fn remove_room(&mut self, id: RoomId) {
        self.rooms.retain(|room| room.id != id);
        self.spaces.retain(|space| space.id != id);
    }

    /// Adds a surface to outdoors, built like the last one of its kind in the job.
    pub fn add_surface(&mut self, room: RoomId, kind: SurfaceKind) -> Option<SurfaceId> {
        self.add_surface_to(room, kind, Behind::Outdoors)
    }

    /// Adds a surface built like the last one in the job that lies in the same place.
    pub fn add_surface_to(
        &mut self,
        room: RoomId,
        kind: SurfaceKind,
        behind: Behind,
    ) -> Option<SurfaceId> {
        self.room(room)?;
        let u_value = self.last_u_value(room, kind, behind);
        let id = SurfaceId(self.fresh_id());
        self.room_mut(room)?.surfaces.push(SurfaceDraft {
            id,
            kind,
            name: String::new(),
            behind,
            u_value,
            entries: Default::default(),
            openings: Vec::new(),
            wall_use: Default::default(),
            fixed: Vec::new(),
        });
        Some(id)
    }

    /// What lies behind a surface. One that now lies elsewhere is built as is usual there.
    pub fn set_behind(&mut self, room: RoomId, surface: SurfaceId, behind: Behind) {
        let Some(now) = self.surface(room, surface) else { return };
        let kind = now.kind;
        let moved = self.used_at(room, kind, now.behind) != self.used_at(room, kind, behind);
        let u_value = match (moved, now.u_value) {
            (true, UValue::Listed(_) | UValue::Own(_)) => {
                Some(self.last_u_value(room, kind, behind))
            }
            _ => None,
        };
        if let Some(surface) = self.surface_mut(room, surface) {
            surface.behind = behind;
            if let Some(u_value) = u_value {
                surface.u_value = u_value;
            }
        }
    }

    /// The assembly last used in the same place; a typed value is not passed on without its number.
    fn last_u_value(&self, room: RoomId, kind: SurfaceKind, behind: Behind) -> UValue {
        let used = self.used_at(room, kind, behind);
        let inside = |behind: Behind| behind == Behind::SameTemperature;
        let alike = self.all_rooms().flat_map(|other| {
            other.surfaces.iter().filter(|s| {
                self.used_at(other.id, s.kind, s.behind) == used
                    && inside(s.behind) == inside(behind)
            })
        });
        let known = alike.map(|surface| surface.u_value).filter(|&built| self.can_pass_on(built));
        known.last().unwrap_or(UValue::Listed(match (used, behind) {
            (Used::Wall, Behind::SameTemperature) => Assembly::Partition,
            _ => usual_assembly(used),
        }))
    }

    /// Whether a new surface or opening may be built alike: not of an assembly that is gone, nor of a
    /// typed value without its number.
    fn can_pass_on(&self, built: UValue) -> bool {
        match built {
            UValue::Listed(_) => true,
            UValue::Own(id) => self.assembly(id).is_some(),
            UValue::TypedU | UValue::TypedR => false,
        }
    }

    pub fn remove_surface(&mut self, room: RoomId, id: SurfaceId) {
        if let Some(room) = self.room_mut(room) {
            room.surfaces.retain(|surface| surface.id != id);
        }
    }

    /// Adds a window or door, built like the last one of its kind in the job.
    pub fn add_opening(
        &mut self,
        room: RoomId,
        surface: SurfaceId,
        kind: OpeningKind,
    ) -> Option<OpeningId> {
        self.surface(room, surface)?;
        let u_value = self
            .rooms
            .iter()
            .flat_map(|room| &room.surfaces)
            .flat_map(|surface| &surface.openings)
            .filter(|opening| opening.kind == kind)
            .map(|opening| opening.u_value)
            .rfind(|&built| self.can_pass_on(built))
            .unwrap_or(UValue::Listed(match kind {
                OpeningKind::Window => Assembly::WindowWoodDouble,
                OpeningKind::Door => Assembly::DoorWood,
            }));
        let id = OpeningId(self.fresh_id());
        let opening = OpeningDraft { id, kind, u_value, entries: Default::default() };
        self.surface_mut(room, surface)?.openings.push(opening);
        Some(id)
    }

    pub fn remove_opening(&mut self, room: RoomId, surface: SurfaceId, id: OpeningId) {
        if let Some(surface) = self.surface_mut(room, surface) {
            surface.openings.retain(|opening| opening.id != id);
        }
    }

    /// Adds an assembly of the user's own, without layers.
    pub fn add_assembly(&mut self, position: Position, name: &str) -> AssemblyId {
        let id = AssemblyId(self.fresh_id());
        self.assemblies.push(AssemblyDraft {
            id,
            name: name.to_string(),
            position,
            framing: usual_framing(position),
            entries: Default::default(),
            layers: Vec::new(),
        });
        id
    }

    /// Removes an assembly. What was built of it says so, until something else is chosen.
    pub fn remove_assembly(&mut self, id: AssemblyId) {
        self.assemblies.retain(|assembly| assembly.id != id);
    }

    /// Adds a layer on the outside.
    pub fn add_layer(&mut self, id: AssemblyId) {
        if let Some(assembly) = self.assembly_mut(id) {
            assembly.layers.push(LayerDraft {
                material: LayerMaterial::Listed(Material::GypsumBoard),
                place: Place::Through,
                entries: Default::default(),
            });
        }
    }

    pub fn remove_layer(&mut self, id: AssemblyId, row: usize) {
        if let Some(assembly) = self.assembly_mut(id)
            && row < assembly.layers.len()
        {
            assembly.layers.remove(row);
        }
    }

    /// Adds a bill that begins where the last one ends.
    pub fn add_bill(&mut self) -> BillId {
        let from = self.bills.list.last().map(|bill| bill.to.clone()).unwrap_or_default();
        let id = BillId(self.fresh_id());
        self.bills.list.push(BillDraft {
            id,
            from,
            to: String::new(),
            entries: Default::default(),
        });
        id
    }

    pub fn remove_bill(&mut self, id: BillId) {
        self.bills.list.retain(|bill| bill.id != id);
    }
}

/// What a place is built of until it is said: judgement.
fn usual_assembly(used: Used) -> Assembly {
    match used {
        Used::Wall => Assembly::FrameWallR11,
        Used::Ceiling => Assembly::AtticCeilingR19,
        Used::Floor => Assembly::JoistFloorEmpty,
        Used::Window => Assembly::WindowWoodDouble,
        Used::Door => Assembly::DoorWood,
        Used::GarageDoor => Assembly::GarageDoorMetal,
        Used::Slab => Assembly::SlabBare,
        Used::BasementWall => Assembly::BasementConcrete,
        Used::Roof => Assembly::RoofDeck,
    }
}

fn usual_framing(position: Position) -> Framing {
    match position {
        Position::Wall | Position::Partition => Framing::StandardWall,
        Position::Ceiling => Framing::CeilingJoists,
        Position::Roof => Framing::RoofRafters,
        Position::Floor => Framing::FloorJoists,
        Position::Slab | Position::GroundWall => Framing::None,
    }
}
