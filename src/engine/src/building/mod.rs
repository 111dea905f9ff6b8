//! The house: rooms bounded by surfaces, and the heat each loses on the design day.

pub mod air;
pub mod assembly;
pub mod catalogue;
mod loss;
pub mod material;
pub mod wall;

pub use air::{
    AirClass, Leakage, OpenFlue, Shelter, Storeys, Ventilation, air_density, ventilation_loss,
};
pub use assembly::{Build, BuildLayer, Framing};
pub use catalogue::{Assembly, Used};
pub use loss::{Part, Path, PathLoss, RoomLoad, Through, loads};
pub use material::Material;
pub use wall::{Run, free_runs};

use crate::named::names;
use crate::quantity::{Area, ChangeRate, Length, Temperature, Transmittance, Volume};
use serde::{Deserialize, Serialize};

/// Identifies a thing within one job; never reused there.
macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident),+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub u32);
    )+};
}

ids!(
    /// A room.
    RoomId,
    /// A wall, ceiling or floor.
    SurfaceId,
    /// A window or door.
    OpeningId
);

/// The conditions around the house.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Site {
    /// Outdoor temperature on the design day.
    pub outdoors: Temperature,
    pub altitude: Length,
}

/// A heated room with everything that its heat loss and its baseboard need.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    pub id: RoomId,
    pub name: String,
    pub floor_area: Area,
    pub height: Length,
    /// Design temperature.
    pub temperature: Temperature,
    pub air_changes: ChangeRate,
    pub surfaces: Vec<Surface>,
}

impl Room {
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
    /// An unheated space, or the ground, at a temperature that the user knows or assumes.
    Unheated(Temperature),
    /// A room of this job.
    Room(RoomId),
    /// A heated space as warm as this room: no heat passes.
    SameTemperature,
}

/// A wall, ceiling or floor with its windows and doors.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    pub id: SurfaceId,
    pub kind: SurfaceKind,
    /// The area with its openings.
    pub gross_area: Area,
    pub transmittance: Transmittance,
    pub behind: Behind,
    pub openings: Vec<Opening>,
    /// Where baseboard can stand, from left to right as seen from the room; empty for a ceiling or floor.
    pub runs: Vec<Run>,
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
}

impl Opening {
    pub fn area(&self) -> Area {
        self.width * self.height
    }
}
