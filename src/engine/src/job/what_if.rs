//! Changes to the house that are weighed before they are made: each as answered and typed, with the
//! user's own cost. What they make of the job is [`crate::what_if`]'s.

use super::choice::{Choice, Pick};
use super::draft::{AirBasis, Draft, UValue};
use super::entries::Entries;
use super::field::ChangeField;
use crate::building::{AirClass, Assembly, ChangeId, Level, RoomId, Used};
use crate::named::names;
use crate::stored::{stored, stored_choice};

/// One change. What its kind does not ask for is kept for when it does again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangeDraft {
    pub id: ChangeId,
    pub kind: ChangeKind,
    pub counted: Counted,
    pub whose: Whose,
    /// What surfaces or openings are to be built of.
    pub build: UValue,
    /// How the leakage that there will be is known.
    pub leaks: AirBasis,
    pub air_class: AirClass,
    /// Of a room that is added.
    pub name: String,
    pub level: Level,
    pub outside: OutsideWalls,
    pub entries: Entries<ChangeField>,
}

stored!(ChangeDraft {
    id,
    kind,
    counted: default,
    whose: default,
    build,
    leaks: default,
    air_class,
    name: default,
    level: default,
    outside: default,
    entries: default,
});

/// What a change changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChangeKind {
    Windows,
    OutsideWalls,
    /// To a garage or another space without heat.
    WallsToUnheated,
    Ceilings,
    Roofs,
    /// Over the open, or over a space without heat.
    Floors,
    Slabs,
    GroundWalls,
    Skylights,
    Doors,
    Air,
    /// One more room like an existing one.
    RoomLike,
    /// One more room, typed.
    NewRoom,
}

names!(ChangeKind {
    Windows = "windows",
    OutsideWalls = "outside-walls",
    WallsToUnheated = "walls-to-unheated",
    Ceilings = "ceilings",
    Roofs = "roofs",
    Floors = "floors",
    Slabs = "slabs",
    GroundWalls = "ground-walls",
    Skylights = "skylights",
    Doors = "doors",
    Air = "air",
    RoomLike = "room-like",
    NewRoom = "new-room",
});

/// Whether a change is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Counted {
    #[default]
    On,
    Off,
}

names!(Counted { On = "on", Off = "off" });

/// What a change is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Whose {
    #[default]
    House,
    /// A room or a space; of a room that is added, the one it is like.
    Room(RoomId),
}

stored_choice!(Whose { House = "house", Room(room: RoomId) = "room" });

/// How many of a new room's four walls lead outdoors; the others lead to rooms as warm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum OutsideWalls {
    /// The first, as long as the floor.
    One,
    /// That and the next, which meets it in a corner.
    #[default]
    Two,
    /// All but one as wide as the floor.
    Three,
    Four,
}

names!(OutsideWalls { One = "one", Two = "two", Three = "three", Four = "four" });

impl ChangeKind {
    /// Where it finds what to build of; none for air and rooms.
    pub fn used(self) -> Option<Used> {
        Some(match self {
            ChangeKind::Windows | ChangeKind::Skylights => Used::Window,
            ChangeKind::OutsideWalls | ChangeKind::WallsToUnheated => Used::Wall,
            ChangeKind::Ceilings => Used::Ceiling,
            ChangeKind::Roofs => Used::Roof,
            ChangeKind::Floors => Used::Floor,
            ChangeKind::Slabs => Used::Slab,
            ChangeKind::GroundWalls => Used::BasementWall,
            ChangeKind::Doors => Used::Door,
            ChangeKind::Air | ChangeKind::RoomLike | ChangeKind::NewRoom => return None,
        })
    }

    /// What such a change usually builds: judgement.
    fn usual(self) -> Assembly {
        match self {
            ChangeKind::Windows => Assembly::WindowLowE,
            ChangeKind::Skylights => Assembly::SkylightLowE,
            ChangeKind::OutsideWalls => Assembly::FrameWallBlown,
            ChangeKind::WallsToUnheated => Assembly::GarageWallR11,
            ChangeKind::Ceilings => Assembly::AtticCeilingR49,
            ChangeKind::Roofs => Assembly::RoofDeck,
            ChangeKind::Floors => Assembly::JoistFloorR30,
            ChangeKind::Slabs => Assembly::SlabR10,
            ChangeKind::GroundWalls => Assembly::BasementConcreteR10,
            ChangeKind::Doors => Assembly::DoorMetalInsulated,
            // Nothing is built of it.
            ChangeKind::Air | ChangeKind::RoomLike | ChangeKind::NewRoom => Assembly::WindowLowE,
        }
    }

    /// Whether it can be for one room.
    pub fn has_whose(self) -> bool {
        !matches!(self, ChangeKind::Air | ChangeKind::NewRoom)
    }
}

impl OutsideWalls {
    pub fn count(self) -> usize {
        self as usize + 1
    }
}

impl Draft {
    pub fn change(&self, id: ChangeId) -> Option<&ChangeDraft> {
        self.what_if.iter().find(|change| change.id == id)
    }

    pub fn change_mut(&mut self, id: ChangeId) -> Option<&mut ChangeDraft> {
        self.what_if.iter_mut().find(|change| change.id == id)
    }

    /// Adds a change that is on: of the whole house, built as is usual, or to a house that is tight.
    pub fn add_change(&mut self, kind: ChangeKind) -> ChangeId {
        let id = ChangeId(self.fresh_id());
        self.what_if.push(ChangeDraft {
            id,
            kind,
            counted: Counted::On,
            whose: self.usual_whose(kind),
            build: UValue::Listed(kind.usual()),
            leaks: AirBasis::Class,
            air_class: AirClass::Tight,
            name: String::new(),
            level: self.rooms.last().map(|room| room.level).unwrap_or_default(),
            outside: OutsideWalls::default(),
            entries: Entries::default(),
        });
        id
    }

    pub fn remove_change(&mut self, id: ChangeId) {
        self.what_if.retain(|change| change.id != id);
    }

    fn usual_whose(&self, kind: ChangeKind) -> Whose {
        match (kind, self.rooms.first()) {
            (ChangeKind::RoomLike, Some(room)) => Whose::Room(room.id),
            _ => Whose::House,
        }
    }

    /// The house, then every room and space; a room is only like a heated one.
    pub(super) fn whose_picks(&self, id: ChangeId) -> Vec<Pick> {
        let Some(change) = self.change(id) else { return Vec::new() };
        let mut picks: Vec<Whose> = match change.kind {
            ChangeKind::RoomLike => self.rooms.iter().map(|room| Whose::Room(room.id)).collect(),
            _ => {
                let rooms = self.all_rooms().map(|room| Whose::Room(room.id));
                std::iter::once(Whose::House).chain(rooms).collect()
            }
        };
        // What is chosen stays on the list, also when it is gone.
        if !picks.contains(&change.whose) {
            picks.push(change.whose);
        }
        picks.into_iter().map(Pick::Whose).collect()
    }

    pub(super) fn pick_for_change(&mut self, id: ChangeId, choice: Choice, pick: Pick) {
        let Some(now) = self.change(id) else { return };
        // Another kind is built of other things, and a room is like a room.
        let turned = match pick {
            Pick::ChangeKind(kind) if kind != now.kind => {
                let kept = kind.used().is_none() || kind.used() == now.kind.used();
                let build = if kept { now.build } else { UValue::Listed(kind.usual()) };
                let like = kind == ChangeKind::RoomLike && now.whose == Whose::House;
                let whose = if like { self.usual_whose(kind) } else { now.whose };
                Some((kind, build, whose))
            }
            _ => None,
        };
        let Some(change) = self.change_mut(id) else { return };
        match (choice, pick) {
            (Choice::ChangeKind(_), Pick::ChangeKind(_)) => {
                if let Some((kind, build, whose)) = turned {
                    (change.kind, change.build, change.whose) = (kind, build, whose);
                }
            }
            (Choice::ChangeWhose(_), Pick::Whose(p)) => change.whose = p,
            (Choice::ChangeBuild(_), Pick::Build(p)) => change.build = p,
            (Choice::ChangeLeaks(_), Pick::AirBasis(p)) => change.leaks = p,
            (Choice::ChangeAirClass(_), Pick::AirClass(p)) => change.air_class = p,
            (Choice::ChangeLevel(_), Pick::Level(p)) => change.level = p,
            (Choice::OutsideWalls(_), Pick::OutsideWalls(p)) => change.outside = p,
            _ => {}
        }
    }
}

impl ChangeDraft {
    /// The fields that it needs as it stands, but for its cost.
    pub fn asked(&self) -> &'static [ChangeField] {
        match (self.kind, self.kind.used(), self.build, self.leaks) {
            (_, Some(_), UValue::TypedU, _) => &[ChangeField::U],
            (_, Some(_), UValue::TypedR, _) => &[ChangeField::R],
            (ChangeKind::Air, _, _, AirBasis::Class) => &[ChangeField::AirChanges],
            (ChangeKind::Air, _, _, AirBasis::BlowerDoor) => &[ChangeField::BlowerFlow],
            (ChangeKind::Air, _, _, AirBasis::LeakageArea) => &[ChangeField::LeakageArea],
            (ChangeKind::NewRoom, ..) => &[
                ChangeField::FloorLength,
                ChangeField::FloorWidth,
                ChangeField::Height,
                ChangeField::Windows,
            ],
            _ => &[],
        }
    }
}
