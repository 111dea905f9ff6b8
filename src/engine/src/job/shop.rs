//! What the shop has and what it costs, what the pieces are chosen for, and choices that stay.

use super::draft::{Draft, ElementDraft};
use super::entries::{Entries, Entry};
use super::field::{CutField, Group, PriceField, SizedField, StockField};
use crate::building::{RoomId, SurfaceId, WallUse};
use crate::named::{Named, names};
use crate::pipe::Tube;
use crate::quantity::{AreaMoney, Length, LinearMoney, Money};
use crate::stored::stored;

/// What the pieces of all rooms together are chosen for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Objective {
    /// The least heat beyond the loads: each element as short as does it.
    #[default]
    Closest,
    /// The least money, or where prices are missing the fewest pieces.
    LeastCost,
    FewestJoints,
    /// Every room as warm as the others in mild weather, as far as pieces allow.
    MostEven,
}

names!(Objective {
    Closest = "closest",
    LeastCost = "least-cost",
    FewestJoints = "fewest-joints",
    MostEven = "most-even",
});

/// What is typed of one stock length.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockDraft {
    pub feet: u8,
    pub entries: Entries<StockField>,
}

stored!(StockDraft { feet, entries: default });

/// Pieces that stay on one of a wall's free runs, counted from zero.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fixed {
    pub run: u32,
    /// Longest first.
    pub pieces_ft: Vec<u8>,
}

stored!(Fixed { run, pieces_ft });

/// What is typed of prices for one size of tube.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SizedDraft {
    pub tube: Tube,
    pub entries: Entries<SizedField>,
}

stored!(SizedDraft { tube, entries: default });

/// In which lengths hard pipe is sold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sticks {
    #[default]
    TenAndTwenty,
    Twenty,
    Ten,
}

names!(Sticks {
    TenAndTwenty = "10-and-20-ft",
    Twenty = "20-ft",
    Ten = "10-ft",
});

/// How pipe is bought and cut.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CuttingDraft {
    pub sticks: Sticks,
    pub entries: Entries<CutField>,
}

stored!(CuttingDraft { sticks: default, entries: default });

/// How pipe is bought and cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cutting {
    pub sticks: Sticks,
    /// What a cut takes.
    pub kerf: Length,
}

/// What is bought beyond the need, as a share of it, by kind of material.
#[derive(Debug, Clone, PartialEq)]
pub struct Spare {
    shares: Vec<f64>,
}

impl Spare {
    pub(super) fn of(share: impl FnMut(Group) -> f64) -> Spare {
        Spare { shares: Group::ALL.iter().copied().map(share).collect() }
    }

    pub fn share(&self, group: Group) -> f64 {
        self.shares.get(group as usize).copied().unwrap_or(0.0)
    }
}

/// A stock length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stock {
    pub length: Length,
    /// With its enclosure, unless that has a price of its own.
    pub price: Option<Money>,
    /// That the shop has; `None` is as many as wanted.
    pub available: Option<u32>,
    /// Bought already.
    pub have: u32,
}

/// What things cost, as far as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Prices {
    /// In the currency, for a metre or a square metre where the field says so; by the field's place.
    si: Vec<Option<f64>>,
    /// In the same, for one size of tube.
    sized: Vec<(Tube, SizedField, f64)>,
}

impl Prices {
    pub(super) fn of(
        si: impl FnMut(PriceField) -> Option<f64>,
        sized: Vec<(Tube, SizedField, f64)>,
    ) -> Prices {
        Prices { si: PriceField::ALL.iter().copied().map(si).collect(), sized }
    }

    fn get(&self, field: PriceField) -> Option<f64> {
        self.si.get(field as usize).copied().flatten()
    }

    /// For this size of tube, or else for any: in the currency, or for a metre where the field says
    /// so.
    pub fn sized(&self, tube: Tube, field: SizedField) -> Option<f64> {
        let own = self.sized.iter().find(|(of, what, _)| (*of, *what) == (tube, field));
        own.map(|(_, _, si)| *si).or_else(|| self.get(field.for_any_size()))
    }

    pub fn each(&self, field: PriceField) -> Option<Money> {
        self.get(field).map(Money::from_si)
    }

    /// Of what is sold by length.
    pub fn by_length(&self, field: PriceField) -> Option<LinearMoney> {
        self.get(field).map(LinearMoney::from_si)
    }

    /// Of what is sold by area.
    pub fn by_area(&self, field: PriceField) -> Option<AreaMoney> {
        self.get(field).map(AreaMoney::from_si)
    }
}

impl PriceField {
    pub fn is_by_length(self) -> bool {
        use PriceField::*;
        matches!(self, Enclosure | Pipe | BetterElement | PipeCover | Wire)
    }

    /// In whose price this is as long as it has none of its own.
    pub fn bundle(self) -> Option<PriceField> {
        use PriceField::*;
        Some(match self {
            Coupling | Solder | Flux | Gas => Joint,
            ShutOffValve | PurgeValve | DrainValve => LoopValves,
            Flanges | Relay => Circulator,
            Wire => Thermostat,
            _ => return None,
        })
    }

    pub fn group(self) -> Group {
        use PriceField::*;
        match self {
            Joint | Insulation => Group::Labor,
            BetterElement => Group::Element,
            Enclosure | EndCap | Corner | SpliceCover | Cradle => Group::Enclosure,
            Pipe => Group::Pipe,
            Elbow | Tee | DiverterTee | Coupling | Reducer | Adapter | Transition
            | ManifoldPorts => Group::Fittings,
            ExpansionPad | Hanger | PipeCover => Group::Supports,
            BalancingValve | ZoneValve | LoopValves | ShutOffValve | PurgeValve | DrainValve
            | FlowCheck | MixingValve => Group::Valves,
            Circulator | Flanges | AirEliminator | AirVent | ExpansionTank | FillValve
            | BackflowPreventer | ReliefValve | Gauge => Group::BoilerRoom,
            Thermostat | Relay | Transformer | Wire => Group::Controls,
            Solder | Flux | Sealant | Gas | Glycol => Group::Supplies,
        }
    }
}

impl SizedField {
    /// The price that stands where this size has none.
    pub fn for_any_size(self) -> PriceField {
        use PriceField::*;
        match self {
            SizedField::Pipe => Pipe,
            SizedField::Elbow => Elbow,
            SizedField::Tee => Tee,
            SizedField::DiverterTee => DiverterTee,
            SizedField::Coupling => Coupling,
            SizedField::Adapter => Adapter,
            SizedField::Transition => Transition,
            SizedField::Hanger => Hanger,
            SizedField::PipeCover => PipeCover,
            SizedField::BalancingValve => BalancingValve,
            SizedField::ZoneValve => ZoneValve,
            SizedField::ShutOffValve => ShutOffValve,
            SizedField::PurgeValve => PurgeValve,
            SizedField::FlowCheck => FlowCheck,
        }
    }
}

impl ElementDraft {
    pub fn stocked(&self, feet: u8) -> Option<&StockDraft> {
        self.stock.iter().find(|stock| stock.feet == feet)
    }

    pub(super) fn set_stocked(&mut self, feet: u8, field: StockField, entry: Entry) {
        let place = self.stock.partition_point(|known| known.feet < feet);
        if self.stock.get(place).is_none_or(|known| known.feet != feet) {
            self.stock.insert(place, StockDraft { feet, entries: Entries::default() });
        }
        if let Some(stock) = self.stock.get_mut(place) {
            stock.entries.set(field, entry);
        }
        self.stock.retain(|stock| stock.entries != Entries::default());
    }
}

impl Draft {
    pub(super) fn sized_price(&self, tube: Tube, field: SizedField) -> Option<&Entry> {
        self.sized_prices.iter().find(|sized| sized.tube == tube)?.entries.get(field)
    }

    pub(super) fn set_sized_price(&mut self, tube: Tube, field: SizedField, entry: Entry) {
        let place = self.sized_prices.partition_point(|sized| sized.tube < tube);
        if self.sized_prices.get(place).is_none_or(|sized| sized.tube != tube) {
            self.sized_prices.insert(place, SizedDraft { tube, entries: Entries::default() });
        }
        if let Some(sized) = self.sized_prices.get_mut(place) {
            sized.entries.set(field, entry);
        }
        self.sized_prices.retain(|sized| sized.entries != Entries::default());
    }

    /// Whether baseboard may stand at a wall, by what is chosen for it and for the room's others.
    pub fn allows(&self, room: RoomId, wall: SurfaceId) -> bool {
        let Some(room) = self.room(room) else { return false };
        let only = room.surfaces.iter().any(|other| other.wall_use == WallUse::Only);
        let allowed = |wall_use| match wall_use {
            WallUse::Only => true,
            WallUse::AsNeeded => !only,
            WallUse::Never => false,
        };
        room.surfaces.iter().any(|other| other.id == wall && allowed(other.wall_use))
    }

    /// Makes pieces of a wall's run stay, or with none lets them go.
    pub fn fix_pieces(&mut self, room: RoomId, wall: SurfaceId, run: u32, pieces_ft: Vec<u8>) {
        if let Some(wall) = self.surface_mut(room, wall) {
            wall.fixed.retain(|fixed| fixed.run != run);
            if !pieces_ft.is_empty() {
                let place = wall.fixed.partition_point(|fixed| fixed.run < run);
                wall.fixed.insert(place, Fixed { run, pieces_ft });
            }
        }
    }
}
