//! The house: rooms bounded by surfaces, and the heat each loses on the design day.

pub mod air;
pub mod assembly;
mod balance;
pub mod catalogue;
mod certainty;
mod conductor;
pub(crate) mod earth;
mod exchange;
pub(crate) mod flows;
pub mod ground;
mod loss;
pub mod material;
pub mod wall;

pub use air::{AirClass, OpenFlue, Shelter, Storeys, Ventilation, air_density, ventilation_loss};
pub use assembly::{Build, BuildLayer, Framing, Place, Position};
pub use catalogue::{Assembly, Used};
pub use certainty::{Band, Certainty, Effect, Ranges, Source, Subject};
pub use earth::{SlabCompared, slab_compared};
pub use exchange::{Day, Exchange};
pub use flows::{BlowerDoor, HouseAir, HouseFlow, Leaks, house_flow, mean_temperature};
pub use ground::{EdgeInsulation, Placement, SlabEdge, Soil};
pub use loss::{HouseLoss, Part, Path, PathLoss, RoomLoad, SpaceBalance, Through, losses};
pub use material::Material;
pub use wall::{FixedPieces, Run, WallUse, free_runs};

use crate::named::names;
use crate::quantity::{
    Area, ChangeRate, Length, LinearTransmittance, Power, Temperature, Transmittance, Unit,
    Velocity, Volume,
};
use crate::stored::{Slot, Stored, View, serde_through_stored};
use serde::{Deserialize, Serialize};

/// Identifies a thing within one job; never reused there.
macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident),+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
        pub struct $name(pub u32);

        impl Stored for $name {
            fn blank() -> $name {
                $name(0)
            }
            fn view(&self) -> View<'_> {
                self.0.view()
            }
            fn slot(&mut self) -> Slot<'_> {
                self.0.slot()
            }
        }

        serde_through_stored!($name);
    )+};
}

ids!(
    /// A room.
    RoomId,
    /// A wall, ceiling or floor.
    SurfaceId,
    /// A window or door.
    OpeningId,
    /// An assembly of the user's own.
    AssemblyId,
    /// A fuel bill.
    BillId,
    /// A change to the house that is only weighed.
    ChangeId,
    /// A zone of the piping; counted by itself, from zero.
    ZoneId
);

/// What a space is used for: heated, or one of the unheated spaces whose temperature follows from
/// their own balance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum RoomUse {
    #[default]
    Heated,
    Attic,
    Garage,
    CrawlSpace,
    Basement,
    Other,
}

names!(RoomUse {
    Heated = "heated",
    Attic = "attic",
    Garage = "garage",
    CrawlSpace = "crawl-space",
    Basement = "basement",
    Other = "other",
});

impl RoomUse {
    /// Air changes an hour of an unheated space on a cold day: judgement, no source; always
    /// editable. A ventilated attic changes its air several times an hour.
    pub fn air_changes(self) -> ChangeRate {
        ChangeRate::of(
            match self {
                RoomUse::Heated => 0.0,
                RoomUse::Attic => 3.0,
                RoomUse::Garage => 1.5,
                RoomUse::CrawlSpace | RoomUse::Other => 1.0,
                RoomUse::Basement => 0.3,
            },
            Unit::PerHour,
        )
    }
}

/// The storey that a room is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Level {
    Basement,
    #[default]
    First,
    Second,
    Third,
}

names!(Level {
    Basement = "basement",
    First = "first",
    Second = "second",
    Third = "third",
});

/// Everything that the heat loss follows from.
#[derive(Debug, Clone, PartialEq)]
pub struct House {
    pub site: Site,
    /// In the order in which the water passes them.
    pub rooms: Vec<Room>,
    pub spaces: Vec<Space>,
    pub air: HouseAir,
    pub ground: Ground,
    pub ranges: Ranges,
    /// Of its loss, that each room is to be heated beyond it.
    pub margin: f64,
}

/// The conditions around the house.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Site {
    /// Outdoor temperature on the design day.
    pub outdoors: Temperature,
    pub altitude: Length,
    /// Mean wind of the coldest month, at 10 m.
    pub wind: Velocity,
    /// Outdoor means of the year and of its coldest month. Both are the design temperature in a job
    /// without ground, which has no need of them.
    pub mean: Temperature,
    pub coldest_month: Temperature,
}

/// The earth, and what insulates a slab's edge from it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    pub soil: ground::Ground,
    /// Of the foundation wall.
    pub wall_thickness: Length,
    pub slab: SlabMethod,
    /// The other way, for comparison.
    pub other: SlabMethod,
}

/// How the loss of a slab on the ground is found; what lies deeper always follows ISO 13370.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SlabMethod {
    Iso(Option<EdgeInsulation>),
    /// Heat lost a kelvin from a metre of edge.
    FFactor(LinearTransmittance),
}

/// A heated room with everything that its heat loss and its baseboard need.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    pub id: RoomId,
    pub name: String,
    pub level: Level,
    pub floor_area: Area,
    pub height: Length,
    /// Design temperature.
    pub temperature: Temperature,
    /// The least that leaks in, if the user knows it.
    pub least_air: Option<ChangeRate>,
    /// That it has from elsewhere on the design day.
    pub other_heat: Power,
    pub surfaces: Vec<Surface>,
}

impl Room {
    pub fn volume(&self) -> Volume {
        self.floor_area * self.height
    }

    /// Whether baseboard may stand at one of its walls.
    pub fn allows(&self, wall: &Surface) -> bool {
        match self.surfaces.iter().any(|other| other.wall_use == WallUse::Only) {
            true => wall.wall_use == WallUse::Only,
            false => wall.wall_use != WallUse::Never,
        }
    }

    /// The runs on which pieces may be chosen, each with its wall.
    pub fn usable_runs(&self) -> impl Iterator<Item = (&Surface, Run)> {
        let walls = self.surfaces.iter().filter(|wall| self.allows(wall));
        walls.flat_map(|wall| wall.runs.iter().map(move |&run| (wall, run)))
    }
}

/// An unheated space. What it shares with a room is entered once, on either side.
#[derive(Debug, Clone, PartialEq)]
pub struct Space {
    pub id: RoomId,
    pub name: String,
    pub used: RoomUse,
    pub floor_area: Area,
    pub height: Length,
    /// Its temperature, where it was measured; otherwise its own balance gives it.
    pub temperature: Option<Temperature>,
    pub air_changes: ChangeRate,
    /// All vents of a crawl space together.
    pub vent_area: Area,
    pub surfaces: Vec<Surface>,
}

impl Space {
    pub fn volume(&self) -> Volume {
        self.floor_area * self.height
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SurfaceKind {
    Wall,
    Ceiling,
    Floor,
}

names!(SurfaceKind {
    Wall = "wall",
    Ceiling = "ceiling",
    Floor = "floor",
});

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OpeningKind {
    Window,
    Door,
}

names!(OpeningKind {
    Window = "window",
    Door = "door",
});

/// What lies on the other side of a surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Behind {
    Outdoors,
    /// Earth. A wall stands in it down to `depth` below the ground outside, and in the open above;
    /// a floor lies at `depth`.
    Ground {
        depth: Length,
    },
    /// An unheated space, or the ground, at a temperature that the user knows or assumes.
    Unheated(Temperature, Known),
    /// A room or an unheated space of this job.
    Room(RoomId),
    /// A heated space as warm as this room: no heat passes.
    SameTemperature,
}

/// Whether a value was typed or taken in its stead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    Typed,
    Assumed,
}

/// Where a U comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Built {
    Listed(Assembly),
    /// An assembly of the user's own.
    Own(AssemblyId),
    /// Typed, as a label or a data sheet has it.
    Typed,
}

/// A wall, ceiling or floor with its windows and doors.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    pub id: SurfaceId,
    pub kind: SurfaceKind,
    /// The area with its openings.
    pub gross_area: Area,
    /// Length of a wall; zero for a ceiling. Of a floor on the ground, the length of its edge at outside
    /// walls where it was typed.
    pub along: Length,
    pub transmittance: Transmittance,
    pub built: Built,
    pub behind: Behind,
    pub openings: Vec<Opening>,
    /// Where baseboard can stand, from left to right as seen from the room; empty for a ceiling or floor.
    pub runs: Vec<Run>,
    pub wall_use: WallUse,
    /// Pieces that stay where they are.
    pub fixed: Vec<FixedPieces>,
}

impl Surface {
    /// The area without its openings.
    pub fn net_area(&self) -> Area {
        self.gross_area - self.openings.iter().map(Opening::area).sum()
    }
}

#[derive(Debug, Clone, PartialEq)]
pub struct Opening {
    pub id: OpeningId,
    pub kind: OpeningKind,
    pub width: Length,
    pub height: Length,
    /// Distance from the wall's left corner, as seen from the room.
    pub from_left: Length,
    pub transmittance: Transmittance,
    pub built: Built,
    /// Whether both width and height were measured.
    pub size: Known,
}

impl Opening {
    pub fn area(&self) -> Area {
        self.width * self.height
    }
}
