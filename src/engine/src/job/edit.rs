//! Changes to a draft: one function a change, each leaving ids unique.

use super::draft::{Behind, Draft, Entry, OpeningDraft, RoomDraft, SurfaceDraft, UValue};
use super::field::{Field, RoomField, SurfaceField};
use crate::building::{Assembly, OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind};

impl Draft {
    fn fresh_id(&mut self) -> u32 {
        let id = self.next_id;
        self.next_id += 1;
        id
    }

    /// Keeps what was typed in `field`. A field of a thing that is gone is ignored.
    pub fn set_entry(&mut self, field: Field, entry: Entry) {
        match field {
            Field::House(f) => self.house.set(f, entry),
            Field::Element(f) => self.element.entries.set(f, entry),
            Field::Point(row, f) => {
                if let Some(point) = self.element.points.get_mut(row) {
                    point.set(f, entry);
                }
            }
            // Chosen from a list, not typed.
            Field::Stock => {}
            Field::Circuit(f) => self.circuit.set(f, entry),
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
        }
    }

    pub fn room_mut(&mut self, id: RoomId) -> Option<&mut RoomDraft> {
        self.rooms.iter_mut().find(|room| room.id == id)
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

    /// Adds an empty room at the end of the loop.
    pub fn add_room(&mut self, name: &str) -> RoomId {
        let id = RoomId(self.fresh_id());
        self.rooms.push(RoomDraft {
            id,
            name: name.to_string(),
            entries: Default::default(),
            surfaces: Vec::new(),
        });
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

    /// Removes a room; surfaces that led to it now lead to a space of the same temperature.
    pub fn remove_room(&mut self, id: RoomId) {
        self.rooms.retain(|room| room.id != id);
        for surface in self.rooms.iter_mut().flat_map(|room| &mut room.surfaces) {
            if surface.behind == Behind::Room(id) {
                surface.behind = Behind::SameTemperature;
            }
        }
    }

    /// Moves a room one place towards the boiler's supply.
    pub fn move_room_earlier(&mut self, id: RoomId) {
        if let Some(index @ 1..) = self.rooms.iter().position(|room| room.id == id) {
            self.rooms.swap(index, index - 1);
        }
    }

    /// Moves a room one place towards the boiler's return.
    pub fn move_room_later(&mut self, id: RoomId) {
        if let Some(index) = self.rooms.iter().position(|room| room.id == id)
            && index + 1 < self.rooms.len()
        {
            self.rooms.swap(index, index + 1);
        }
    }

    /// Adds a surface to outdoors, built like the last one of its kind in the job.
    pub fn add_surface(&mut self, room: RoomId, kind: SurfaceKind) -> Option<SurfaceId> {
        self.room(room)?;
        let u_value = self.last_u_value(kind);
        let id = SurfaceId(self.fresh_id());
        self.room_mut(room)?.surfaces.push(SurfaceDraft {
            id,
            kind,
            name: String::new(),
            behind: Behind::Outdoors,
            u_value,
            entries: Default::default(),
            openings: Vec::new(),
        });
        Some(id)
    }

    /// Adds the four walls of a rectangular room, as long as its floor is typed, all to outdoors:
    /// those that are not are changed afterwards.
    pub fn add_four_walls(&mut self, room: RoomId) {
        let side = |draft: &Draft, field| draft.room(room)?.entries.get(field).cloned();
        for field in [RoomField::FloorLength, RoomField::FloorWidth].repeat(2) {
            let length = side(self, field);
            let Some(wall) = self.add_surface(room, SurfaceKind::Wall) else { return };
            if let Some(entry) = length {
                self.set_entry(Field::Surface(room, wall, SurfaceField::Length), entry);
            }
        }
    }

    /// The listed assembly last used for `kind`; a typed value is not passed on without its number.
    fn last_u_value(&self, kind: SurfaceKind) -> UValue {
        let used = |u_value: &UValue| matches!(u_value, UValue::Listed(_));
        self.rooms
            .iter()
            .flat_map(|room| &room.surfaces)
            .filter(|surface| surface.kind == kind && surface.behind == Behind::Outdoors)
            .map(|surface| surface.u_value)
            .rfind(used)
            .unwrap_or(UValue::Listed(match kind {
                SurfaceKind::Wall => Assembly::FrameWallR11,
                SurfaceKind::Ceiling => Assembly::AtticCeilingR19,
                SurfaceKind::Floor => Assembly::JoistFloorEmpty,
            }))
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
            .rfind(|u_value| matches!(u_value, UValue::Listed(_)))
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
}
