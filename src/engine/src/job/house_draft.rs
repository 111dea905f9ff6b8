//! The house as typed, but for its rooms: air, ground, assemblies of the user's own, fuel bills.

use super::entries::Entries;
use super::field::{AirField, AssemblyField, BillField, BillsField, GroundField, LayerField};
use crate::bills::Fuel;
use crate::building::{
    AssemblyId, BillId, Framing, Material, OpenFlue, Place, Placement, Position, Shelter, SlabEdge,
    Soil, Storeys,
};
use crate::named::names;
use crate::stored::{stored, stored_choice};

/// Which share of the year's hours stays above the design temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DesignHours {
    #[default]
    P99,
    P996,
}

names!(DesignHours {
    P99 = "99",
    P996 = "99.6",
});

/// How the house's leakage is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AirBasis {
    /// A class of tightness, or typed air changes.
    #[default]
    Class,
    /// A blower door's flow at 50 Pa.
    BlowerDoor,
    /// A leakage area at 4 Pa.
    LeakageArea,
}

names!(AirBasis {
    Class = "class",
    BlowerDoor = "blower-door",
    LeakageArea = "leakage-area",
});

/// Air through the whole house.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AirDraft {
    pub basis: AirBasis,
    pub storeys: Storeys,
    pub shelter: Shelter,
    pub flue: OpenFlue,
    pub entries: Entries<AirField>,
}

stored!(AirDraft {
    basis: default,
    storeys: default,
    shelter: default,
    flue: default,
    entries: default,
});

/// How the loss of a slab on the ground is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum GroundMethod {
    /// ISO 13370.
    #[default]
    Iso,
    /// The F-factor of US codes, along the slab's edge.
    FFactor,
}

names!(GroundMethod {
    Iso = "iso-13370",
    FFactor = "f-factor",
});

/// Insulation at a slab's edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum EdgeBasis {
    #[default]
    None,
    Horizontal,
    Vertical,
}

names!(EdgeBasis {
    None = "none",
    Horizontal = "horizontal",
    Vertical = "vertical",
});

impl EdgeBasis {
    pub fn placement(self) -> Option<Placement> {
        match self {
            EdgeBasis::None => None,
            EdgeBasis::Horizontal => Some(Placement::Horizontal),
            EdgeBasis::Vertical => Some(Placement::Vertical),
        }
    }
}

/// What a new house is taken to be until it is said: judgement.
macro_rules! starts_as {
    ($($type:ident: $start:ident),+ $(,)?) => {$(
        impl Default for $type {
            fn default() -> $type {
                $type::$start
            }
        }
    )+};
}

starts_as! {
    Storeys: One,
    Shelter: Moderate,
    OpenFlue: None,
    SlabEdge: Uninsulated,
}

/// The ground under and around the house.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct GroundDraft {
    pub soil: Soil,
    pub method: GroundMethod,
    pub edge: EdgeBasis,
    pub slab_edge: SlabEdge,
    pub entries: Entries<GroundField>,
}

stored!(GroundDraft {
    soil: default,
    method: default,
    edge: default,
    slab_edge: default,
    entries: default,
});

/// An assembly of the user's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AssemblyDraft {
    pub id: AssemblyId,
    pub name: String,
    pub position: Position,
    pub framing: Framing,
    pub entries: Entries<AssemblyField>,
    /// From inside to outside.
    pub layers: Vec<LayerDraft>,
}

stored!(AssemblyDraft { id, name, position, framing, entries: default, layers: default });

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayerDraft {
    pub material: LayerMaterial,
    pub place: Place,
    pub entries: Entries<LayerField>,
}

stored!(LayerDraft { material, place, entries: default });

/// What a layer is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayerMaterial {
    Listed(Material),
    /// A layer whose R is on its label.
    TypedR,
}

stored_choice!(LayerMaterial {
    Listed(material: Material) = "listed",
    TypedR = "typed-r",
});

names!(Place {
    Through = "through",
    BetweenFraming = "between-framing",
});

/// What was paid for, to hold the calculation against.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BillsDraft {
    pub fuel: Fuel,
    pub entries: Entries<BillsField>,
    pub list: Vec<BillDraft>,
}

stored!(BillsDraft { fuel: default, entries: default, list: default });

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BillDraft {
    pub id: BillId,
    /// Dates as a calendar writes them: 2025-12-31.
    pub from: String,
    pub to: String,
    pub entries: Entries<BillField>,
}

stored!(BillDraft { id, from: default, to: default, entries: default });
