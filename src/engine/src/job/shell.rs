//! What lies around a room: its walls from its floor, and what is usual over and under it.

use super::draft::{Behind, Draft, Entry, Shape};
use super::field::{Field, RoomField, SurfaceField};
use super::resolve::resolve;
use crate::building::{Level, RoomId, RoomUse, SurfaceId, SurfaceKind};

impl Draft {
    /// Adds the walls that a room's shape has, as long as its floor is typed, all to outdoors: those
    /// that are not are changed afterwards. An L has two walls more, along the corner cut out of it.
    pub fn add_walls(&mut self, room: RoomId) {
        let Some(shape) = self.room(room).map(|room| room.shape) else { return };
        let sides: &[RoomField] = match shape {
            Shape::Rectangle => &[
                RoomField::FloorLength,
                RoomField::FloorWidth,
                RoomField::FloorLength,
                RoomField::FloorWidth,
            ],
            // The two long ones whole; the two beside the cut are shortened below.
            Shape::LShape => &[
                RoomField::FloorLength,
                RoomField::FloorWidth,
                RoomField::FloorLength,
                RoomField::CutWidth,
                RoomField::CutLength,
                RoomField::FloorWidth,
            ],
        };
        let less = |side: usize| match (shape, side) {
            (Shape::LShape, 2) => Some(RoomField::CutLength),
            (Shape::LShape, 5) => Some(RoomField::CutWidth),
            _ => None,
        };
        for (index, &side) in sides.iter().enumerate() {
            let entry = match less(index) {
                None => self.room(room).and_then(|r| r.entries.get(side).cloned()),
                Some(cut) => self.difference(room, side, cut),
            };
            let Some(wall) = self.add_surface(room, SurfaceKind::Wall) else { return };
            if let Some(entry) = entry {
                self.set_entry(Field::Surface(room, wall, SurfaceField::Length), entry);
            }
        }
    }

    /// The length of one side without the cut, as a text for a box.
    fn difference(&self, room: RoomId, side: RoomField, cut: RoomField) -> Option<Entry> {
        let si = |field| resolve(self, Field::Room(room, field)).si();
        let unit = self.box_unit(Field::Room(room, side));
        let text = super::shown::in_unit(si(side)? - si(cut)?, unit);
        Some(Entry { text, unit })
    }

    /// Adds everything around a room in one step: its walls, and a ceiling and a floor like those of
    /// the last room on its storey, or as a house with such spaces has them.
    pub fn add_shell(&mut self, room: RoomId) {
        let Some((used, level)) = self.room(room).map(|r| (r.used, r.level)) else { return };
        if used != RoomUse::Attic {
            self.add_walls(room);
        }
        match used {
            RoomUse::Heated => {
                for kind in [SurfaceKind::Ceiling, SurfaceKind::Floor] {
                    match self.usual_behind(room, level, kind) {
                        Behind::SameTemperature => {}
                        behind => drop(self.add_surface_to(room, kind, behind)),
                    }
                }
            }
            RoomUse::Attic => drop(self.add_surface(room, SurfaceKind::Ceiling)),
            RoomUse::Garage | RoomUse::Other => {
                self.add_surface(room, SurfaceKind::Ceiling);
                self.add_surface_to(room, SurfaceKind::Floor, Behind::Ground);
            }
            RoomUse::CrawlSpace | RoomUse::Basement => {
                for wall in self.room(room).map(|r| r.surfaces.clone()).unwrap_or_default() {
                    self.set_behind(room, wall.id, Behind::Ground);
                }
                self.add_surface_to(room, SurfaceKind::Floor, Behind::Ground);
            }
        }
    }

    /// What lies over or under a room of this storey.
    fn usual_behind(&self, room: RoomId, level: Level, kind: SurfaceKind) -> Behind {
        let alike = self
            .rooms
            .iter()
            .filter(|other| other.level == level && other.id != room)
            .flat_map(|other| &other.surfaces)
            .rfind(|surface| surface.kind == kind && surface.behind != Behind::Room(room));
        if let Some(surface) = alike {
            return surface.behind;
        }
        let space = |uses: &[RoomUse]| {
            self.spaces.iter().find(|s| uses.contains(&s.used)).map(|s| Behind::Room(s.id))
        };
        let heated = |levels: &dyn Fn(Level) -> bool| self.rooms.iter().any(|r| levels(r.level));
        match kind {
            SurfaceKind::Ceiling if heated(&|other| other > level) => Behind::SameTemperature,
            SurfaceKind::Ceiling => space(&[RoomUse::Attic]).unwrap_or(Behind::Outdoors),
            _ if level == Level::Basement => Behind::Ground,
            _ if heated(&|other| other < level) => Behind::SameTemperature,
            _ => space(&[RoomUse::Basement, RoomUse::CrawlSpace]).unwrap_or(Behind::Ground),
        }
    }

    /// Keeps what was typed by someone who `began` with another draft: walls that were then as long
    /// as a side of the floor, to the letter, follow it. What stands there between two keys may be as
    /// long as anything.
    pub fn type_entry(&mut self, began: &Draft, field: Field, entry: Entry) {
        if let Field::Room(room, side @ (RoomField::FloorLength | RoomField::FloorWidth)) = field {
            for wall in began.walls_along(room, side) {
                self.set_entry(Field::Surface(room, wall, SurfaceField::Length), entry.clone());
            }
        }
        self.set_entry(field, entry);
    }

    /// The walls as long as a side of the floor, to the letter. In a square room they take the two
    /// sides in turn, as `add_walls` makes them.
    fn walls_along(&self, room: RoomId, side: RoomField) -> Vec<SurfaceId> {
        let Some(room) = self.room(room) else { return Vec::new() };
        let Some(length) = room.entries.get(side) else { return Vec::new() };
        let square =
            room.entries.get(RoomField::FloorLength) == room.entries.get(RoomField::FloorWidth);
        let odd = usize::from(side == RoomField::FloorWidth);
        let walls = room.surfaces.iter().filter(|surface| surface.kind == SurfaceKind::Wall);
        walls
            .enumerate()
            .filter(|(index, _)| !square || index % 2 == odd)
            .filter(|(_, wall)| wall.entries.get(SurfaceField::Length) == Some(length))
            .map(|(_, wall)| wall.id)
            .collect()
    }
}
