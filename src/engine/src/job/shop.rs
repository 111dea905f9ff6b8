//! What the shop has and what it costs, what the pieces are chosen for, and choices that stay.

use super::draft::{Draft, ElementDraft};
use super::entries::{Entries, Entry};
use super::field::{PriceField, StockField};
use crate::building::{RoomId, SurfaceId, WallUse};
use crate::named::{Named, names};
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
}

impl Prices {
    pub(super) fn of(si: impl FnMut(PriceField) -> Option<f64>) -> Prices {
        Prices { si: PriceField::ALL.iter().copied().map(si).collect() }
    }

    fn get(&self, field: PriceField) -> Option<f64> {
        self.si.get(field as usize).copied().flatten()
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
