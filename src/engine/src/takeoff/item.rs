//! One thing that a design is built with: what it is, of which size, for whom and why.

use crate::building::{RoomId, ZoneId};
use crate::job::PriceField;
use crate::pipe::Tube;
use crate::quantity::{Length, Volume};
use serde::Serialize;

/// What is counted together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// A stock length of finned tube.
    Piece(Length),
    /// One that the user keeps where it is, whatever is chosen beside it.
    Kept(Length),
    Part(PriceField),
}

/// What a thing is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Whose {
    House,
    Zone(ZoneId),
    /// A loop of a zone, by its first room.
    Loop(ZoneId, RoomId),
    Room(RoomId),
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    Count(u32),
    #[serde(rename = "length_m")]
    Length(Length),
}

/// Which of several forms of one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Form {
    Only,
    /// Ends of an enclosure, as seen from the room.
    Left,
    Right,
    /// Corners of a wall, as seen from the room.
    Inside,
    Outside,
    /// Reduces to this tube's size.
    To(Tube),
}

/// Why a thing is there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reason {
    /// It heats.
    Heats,
    /// Enclosure over the pieces, and over pipe that runs on in it.
    OverPieces,
    OverPipe,
    EnclosureEnds,
    EnclosureTurns,
    /// Along a leg of the way without an element.
    EnclosureRunsOn,
    BetweenPieces,
    /// At a run's pieces: between them, and at its two ends.
    AtPieces,
    /// No farther apart than this.
    Every(Length),
    /// Where pipe passes a floor.
    Holes,
    /// The same where the way is not described: down and up once.
    HolesTaken,
    /// Of the way, as it is described or typed.
    Way,
    /// A straight that is longer than what pipe is sold in.
    LongStraight,
    /// Where ways part and join.
    Parts,
    /// Where a further zone leaves the boiler's pipe and comes back.
    FurtherZone,
    /// As typed for the boiler room.
    BoilerRoom,
    SizesMeet,
    /// Between copper and PEX.
    MaterialsMeet,
    /// Threads of boiler, flanges and air eliminator.
    Threads,
    /// So that a loop can be shut, purged and drained by itself.
    Purges,
    Balances,
    StartsZone,
    /// What a thermostat switches.
    Switches,
    /// Volt-amperes at 24 V.
    Feeds {
        volt_amperes: f64,
    },
    MeasuredWire,
    MovesWater,
    /// Of zones with circulators of their own.
    KeepsWay,
    ColdReturn,
    Manifold,
    TakesAirOut,
    /// The highest element of a loop, or each between mains.
    HighPoint,
    /// Grown water; the size that does, where it is known.
    TakesUp {
        #[serde(rename = "volume_m3", skip_serializing_if = "Option::is_none")]
        volume: Option<Volume>,
    },
    /// Filling, its safety, and what shows pressure.
    Fills,
    /// For so many soldered joints.
    Joints(u32),
    /// For so many threads.
    Threaded(u32),
    /// For so much glycol.
    Freezing {
        #[serde(rename = "glycol_m3")]
        glycol: Volume,
    },
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Item {
    pub class: Class,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tube: Option<Tube>,
    pub form: Form,
    pub whose: Whose,
    pub amount: Amount,
    pub reason: Reason,
}

impl Amount {
    /// Things, or metres.
    pub fn number(self) -> f64 {
        match self {
            Amount::Count(count) => f64::from(count),
            Amount::Length(length) => length.si(),
        }
    }

    /// Together with another of the same kind.
    pub(super) fn and(self, other: Amount) -> Amount {
        match (self, other) {
            (Amount::Count(a), Amount::Count(b)) => Amount::Count(a.saturating_add(b)),
            (Amount::Length(a), Amount::Length(b)) => Amount::Length(a + b),
            (own, _) => own,
        }
    }
}

/// Whether two stock lengths are the same one.
pub(super) fn alike(a: Length, b: Length) -> bool {
    // A sixteenth of an inch is the least that stock differs by.
    (a - b).abs() < Length::from_si(0.0254 / 32.0)
}
