//! A room as typed, heated or not: its outline, its surfaces, its windows and doors, where it hangs.

use super::control::RoomMass;
use super::entries::Entries;
use super::field::{OpeningField, RoomField, SurfaceField};
use super::piping::{Diverters, LegDraft, ShutOff};
use super::shop::Fixed;
use crate::building::{
    Assembly, AssemblyId, Level, OpeningId, OpeningKind, RoomId, RoomUse, SurfaceId, SurfaceKind,
    WallUse, ZoneId,
};
use crate::named::names;
use crate::stored::{stored, stored_choice};

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoomDraft {
    pub id: RoomId,
    pub name: String,
    pub used: RoomUse,
    pub level: Level,
    pub shape: Shape,
    pub entries: Entries<RoomField>,
    pub surfaces: Vec<SurfaceDraft>,
    pub zone: ZoneId,
    /// Which loop of a split zone, counted from zero.
    pub branch: u32,
    /// The way from the room before, or the main; empty while only its length is typed.
    pub route: Vec<LegDraft>,
    pub diverters: Diverters,
    pub shut_off: ShutOff,
    /// How heavy it is built.
    pub mass: RoomMass,
}

stored!(RoomDraft {
    id,
    name,
    used: default,
    level: default,
    shape: default,
    entries: default,
    surfaces: default,
    zone: default,
    branch: default,
    route: default,
    diverters: default,
    shut_off: default,
    mass: default,
});

/// The outline of a room's floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shape {
    #[default]
    Rectangle,
    /// A rectangle with a corner cut out of it.
    LShape,
}

names!(Shape {
    Rectangle = "rectangle",
    LShape = "l-shape",
});

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SurfaceDraft {
    pub id: SurfaceId,
    pub kind: SurfaceKind,
    /// Empty for none; walls are then numbered.
    pub name: String,
    pub behind: Behind,
    pub u_value: UValue,
    pub entries: Entries<SurfaceField>,
    pub openings: Vec<OpeningDraft>,
    /// Whether baseboard may stand at this wall.
    pub wall_use: WallUse,
    /// Pieces that stay where they are.
    pub fixed: Vec<Fixed>,
}

stored!(SurfaceDraft {
    id,
    kind,
    name: default,
    behind,
    u_value,
    entries: default,
    openings: default,
    wall_use: default,
    fixed: default,
});

/// What lies behind a surface, as chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Behind {
    Outdoors,
    /// Earth: under a floor, or against a wall down to a depth.
    Ground,
    /// A space whose temperature is typed, or taken halfway.
    Unheated,
    /// A heated room, or an unheated space whose temperature follows from its own balance.
    Room(RoomId),
    SameTemperature,
}

stored_choice!(Behind {
    Outdoors = "outdoors",
    Ground = "ground",
    Unheated = "unheated",
    Room(room: RoomId) = "room",
    SameTemperature = "same-temperature",
});

/// Where a U-value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UValue {
    Listed(Assembly),
    Own(AssemblyId),
    TypedU,
    TypedR,
}

stored_choice!(UValue {
    Listed(assembly: Assembly) = "listed",
    Own(assembly: AssemblyId) = "own",
    TypedU = "typed-u",
    TypedR = "typed-r",
});

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpeningDraft {
    pub id: OpeningId,
    pub kind: OpeningKind,
    pub u_value: UValue,
    pub entries: Entries<OpeningField>,
}

stored!(OpeningDraft { id, kind, u_value, entries: default });

impl RoomDraft {
    pub(super) fn new(id: RoomId, name: &str, used: RoomUse) -> RoomDraft {
        RoomDraft {
            id,
            name: name.to_string(),
            used,
            level: Level::default(),
            shape: Shape::default(),
            entries: Entries::default(),
            surfaces: Vec::new(),
            zone: ZoneId::default(),
            branch: 0,
            route: Vec::new(),
            diverters: Diverters::default(),
            shut_off: ShutOff::default(),
            mass: RoomMass::default(),
        }
    }
}
