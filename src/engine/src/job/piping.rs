//! How the rooms are piped, as typed: zones, the way of each, the route to each room, circulators.

use super::control::Holds;
use super::draft::{Draft, RoomDraft};
use super::entries::Entries;
use super::field::{LegField, PumpPointField, ZoneField};
use crate::building::RoomId;
use crate::building::ZoneId;
use crate::named::names;
use crate::network::TypicalPump;
use crate::pipe::Tube;
use crate::stored::stored;

/// How the rooms of a zone hang on its water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Arrangement {
    /// One loop through each room in turn.
    #[default]
    Series,
    /// Two or more loops from a common trunk.
    Split,
    /// A main all the way round, each room on two tees, at least one of them a diverter.
    DiverterTees,
    /// A supply and a return main; the room nearest on the one is nearest on the other.
    DirectReturn,
    /// A supply and a return main; the room first on the one is last on the other.
    ReverseReturn,
    /// Each room by its own two tubes to a manifold.
    HomeRun,
}

names!(Arrangement {
    Series = "series",
    Split = "split",
    DiverterTees = "diverter-tees",
    DirectReturn = "direct-return",
    ReverseReturn = "reverse-return",
    HomeRun = "home-run",
});

impl Arrangement {
    /// Whether a main runs past its rooms, or to a trunk or manifold that they share.
    pub const fn has_main(self) -> bool {
        !matches!(self, Arrangement::Series)
    }

    /// Whether each room hangs between a supply and a return of its own.
    pub const fn has_branches(self) -> bool {
        !matches!(self, Arrangement::Series | Arrangement::Split)
    }
}

/// What starts and stops a zone, where there are several.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Zoning {
    /// An electric valve each; one circulator for all.
    #[default]
    Valves,
    /// A circulator each, with a flow check and a relay.
    Circulators,
}

names!(Zoning {
    Valves = "valves",
    Circulators = "circulators",
});

/// Whether each circuit of a zone has a balancing valve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Balancing {
    #[default]
    None,
    /// In each return, set to what is calculated.
    Valves,
}

names!(Balancing {
    None = "none",
    Valves = "valves",
});

/// Where the water of a loop goes back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BackPath {
    /// By pipe of its own.
    #[default]
    OwnWay,
    /// Above the elements, inside their enclosure.
    InEnclosure,
}

names!(BackPath {
    OwnWay = "own-way",
    InEnclosure = "in-enclosure",
});

/// A circulator's curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PumpKind {
    Typical(TypicalPump),
    /// Through the points that are typed.
    Points,
}

impl PumpKind {
    pub const ALL: [PumpKind; 4] = [
        PumpKind::Typical(TypicalPump::Small),
        PumpKind::Typical(TypicalPump::Medium),
        PumpKind::Typical(TypicalPump::HighHead),
        PumpKind::Points,
    ];
}

impl Default for PumpKind {
    fn default() -> PumpKind {
        PumpKind::Typical(TypicalPump::Small)
    }
}

crate::stored::stored_choice!(PumpKind {
    Typical(pump: TypicalPump) = "typical",
    Points = "points",
});

/// How many circulators push together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PumpSet {
    #[default]
    One,
    TwoInSeries,
    TwoInParallel,
}

names!(PumpSet {
    One = "one",
    TwoInSeries = "two-in-series",
    TwoInParallel = "two-in-parallel",
});

/// The circulator for all zones, and the points of a curve that is typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PumpDraft {
    pub kind: PumpKind,
    pub set: PumpSet,
    pub points: Vec<Entries<PumpPointField>>,
}

stored!(PumpDraft { kind: default, set: default, points: default });

/// A zone: rooms that one thermostat calls for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ZoneDraft {
    pub id: ZoneId,
    /// Empty for none; zones are then numbered.
    pub name: String,
    pub arrangement: Arrangement,
    /// What the rooms share.
    pub main: Tube,
    /// From room to room, or from the main to a room.
    pub pipe: Tube,
    pub balancing: Balancing,
    pub back: BackPath,
    /// Its own, where each zone has one.
    pub pump: PumpKind,
    /// What holds the temperature of its rooms.
    pub holds: Holds,
    pub entries: Entries<ZoneField>,
}

stored!(ZoneDraft {
    id,
    name: default,
    arrangement,
    main,
    pipe,
    balancing: default,
    back: default,
    pump: default,
    holds: default,
    entries: default,
});

/// Diverter tees at a room: two where its element stands below the main.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Diverters {
    #[default]
    One,
    Two,
}

names!(Diverters {
    One = "one",
    Two = "two",
});

/// The shut-off at a room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ShutOff {
    #[default]
    Open,
    Shut,
}

names!(ShutOff {
    Open = "open",
    Shut = "shut",
});

/// A step of the way from the room before, or the main, to this room.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LegKind {
    /// Straight on along the wall, inside the enclosure.
    Along,
    InsideCorner,
    OutsideCorner,
    /// Down before a door, under the floor, and up behind it.
    Doorway,
    /// To the storey above or below.
    ThroughFloor,
    /// Below the floor from one room to the next.
    Below,
}

names!(LegKind {
    Along = "along",
    InsideCorner = "inside-corner",
    OutsideCorner = "outside-corner",
    Doorway = "doorway",
    ThroughFloor = "through-floor",
    Below = "below",
});

impl LegKind {
    /// Elbows of a step: a corner has one; every time the pipe goes down and comes up again it has
    /// two at each end; a riser has one at each end.
    pub const fn elbows(self) -> u32 {
        match self {
            LegKind::Along => 0,
            LegKind::InsideCorner | LegKind::OutsideCorner => 1,
            LegKind::Doorway | LegKind::Below => 4,
            LegKind::ThroughFloor => 2,
        }
    }

    /// Whether the pipe stays in the enclosure, which then runs on without end caps.
    pub const fn is_inside(self) -> bool {
        matches!(self, LegKind::Along | LegKind::InsideCorner | LegKind::OutsideCorner)
    }

    /// Feet of pipe that a step is taken to have: judgement. A doorway is 3 ft and its two drops of
    /// a foot and a half each; a storey is 9 ft.
    pub const fn usual_ft(self) -> f64 {
        match self {
            LegKind::Along => 2.0,
            LegKind::InsideCorner | LegKind::OutsideCorner => 1.0,
            LegKind::Doorway => 6.0,
            LegKind::ThroughFloor => 9.0,
            LegKind::Below => 10.0,
        }
    }
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LegDraft {
    pub kind: LegKind,
    pub entries: Entries<LegField>,
}

stored!(LegDraft { kind, entries: default });

/// Where a room hangs: its zone, and which loop of a split one, counted from zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Hung {
    pub zone: ZoneId,
    pub branch: u32,
}

/// More zones than any house has.
pub(super) const MOST_ZONES: usize = 20;

impl ZoneDraft {
    /// A single loop of one tube.
    pub fn series(id: ZoneId, tube: Tube) -> ZoneDraft {
        ZoneDraft {
            id,
            name: String::new(),
            arrangement: Arrangement::Series,
            main: tube,
            pipe: tube,
            balancing: Balancing::None,
            back: BackPath::OwnWay,
            pump: PumpKind::default(),
            holds: Holds::default(),
            entries: Entries::default(),
        }
    }
}

impl Draft {
    pub fn zone(&self, id: ZoneId) -> Option<&ZoneDraft> {
        self.zones.iter().find(|zone| zone.id == id)
    }

    pub fn zone_mut(&mut self, id: ZoneId) -> Option<&mut ZoneDraft> {
        self.zones.iter_mut().find(|zone| zone.id == id)
    }

    /// The zone of a room: the one it names, or the first if that is gone.
    pub fn zone_of(&self, room: &RoomDraft) -> Option<&ZoneDraft> {
        self.zone(room.zone).or(self.zones.first())
    }

    /// The rooms of a zone, in the order in which the water passes them.
    pub fn rooms_of(&self, zone: ZoneId) -> impl Iterator<Item = &RoomDraft> {
        self.rooms.iter().filter(move |room| self.zone_of(room).is_some_and(|z| z.id == zone))
    }

    /// The heated rooms as the water passes them: zone by zone, loop by loop.
    pub fn in_order(&self) -> Vec<RoomId> {
        let mut rooms: Vec<(usize, u32, RoomId)> = Vec::new();
        for room in &self.rooms {
            let hung = self.hung(room);
            let zone = self.zones.iter().position(|zone| zone.id == hung.zone).unwrap_or(0);
            let behind =
                |(z, branch, _): &(usize, u32, RoomId)| (*z, *branch) > (zone, hung.branch);
            let at = rooms.iter().position(behind).unwrap_or(rooms.len());
            rooms.insert(at, (zone, hung.branch, room.id));
        }
        rooms.into_iter().map(|(_, _, id)| id).collect()
    }

    /// The loops of a zone that have rooms, from the first; one of a zone without.
    pub fn branches(&self, zone: ZoneId) -> Vec<u32> {
        let mut branches = Vec::new();
        for room in self.rooms_of(zone) {
            let branch = self.hung(room).branch;
            if !branches.contains(&branch) {
                let behind = branches.iter().position(|other| *other > branch);
                branches.insert(behind.unwrap_or(branches.len()), branch);
            }
        }
        if branches.is_empty() {
            branches.push(0);
        }
        branches
    }

    /// Where a room hangs; the loops count for a split zone only.
    pub fn hung(&self, room: &RoomDraft) -> Hung {
        match self.zone_of(room) {
            Some(zone) if zone.arrangement == Arrangement::Split => {
                Hung { zone: zone.id, branch: room.branch }
            }
            Some(zone) => Hung { zone: zone.id, branch: 0 },
            None => Hung::default(),
        }
    }
}
