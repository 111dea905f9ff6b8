//! The job as typed.

use super::field::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, CircuitField, ElementField,
    Field, GroundField, HouseField, LayerField, OpeningField, PointField, RoomField, SurfaceField,
};
use crate::bills::Fuel;
use crate::building::{
    AirClass, Assembly, AssemblyId, BillId, Framing, Level, Material, OpenFlue, OpeningId,
    OpeningKind, Place, Placement, Position, RoomId, RoomUse, Shelter, SlabEdge, Soil, Storeys,
    SurfaceId, SurfaceKind,
};
use crate::climate::Station;
use crate::emitter::HeatingEffect;
use crate::named::{Named, find, names};
use crate::pipe::Tube;
use crate::quantity::{System, Unit, display_unit};
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::marker::PhantomData;

/// A field's text exactly as typed, and the unit that stood beside the box.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    pub text: String,
    pub unit: Unit,
}

/// The fields of one thing that hold text, in the order of the fields; a blank field has no entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entries<F>(Vec<(F, Entry)>);

impl<F> Default for Entries<F> {
    fn default() -> Self {
        Entries(Vec::new())
    }
}

impl<F: Named + Ord> Entries<F> {
    pub fn get(&self, field: F) -> Option<&Entry> {
        self.0.iter().find(|(at, _)| *at == field).map(|(_, entry)| entry)
    }

    /// Keeps `entry`, or forgets the field when only spaces are left.
    pub fn set(&mut self, field: F, entry: Entry) {
        self.0.retain(|(at, _)| *at != field);
        if !entry.text.trim().is_empty() {
            let place = self.0.partition_point(|(at, _)| *at < field);
            self.0.insert(place, (field, entry));
        }
    }

    /// For building a draft in code: `entries.with(RoomField::Height, "8", Unit::Foot)`.
    #[must_use]
    pub fn with(mut self, field: F, text: &str, unit: Unit) -> Self {
        self.set(field, Entry { text: text.to_string(), unit });
        self
    }
}

impl<F: Named + Ord> Serialize for Entries<F> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(field, entry)| (field.name(), entry)))
    }
}

impl<'de, F: Named + Ord> Deserialize<'de> for Entries<F> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct ByName<F>(PhantomData<F>);

        impl<'de, F: Named + Ord> Visitor<'de> for ByName<F> {
            type Value = Entries<F>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("fields by name")
            }

            fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Entries<F>, M::Error> {
                let mut entries = Entries::default();
                while let Some(name) = map.next_key::<String>()? {
                    let field = find(&name)
                        .ok_or_else(|| M::Error::custom(format_args!("unknown field `{name}`")))?;
                    entries.set(field, map.next_value()?);
                }
                Ok(entries)
            }
        }

        deserializer.deserialize_map(ByName(PhantomData))
    }
}

/// A job as typed: what is stored, shared and undone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Draft {
    pub name: String,
    /// The units that the page shows; entries keep their own.
    pub units: System,
    #[serde(default)]
    pub house: Entries<HouseField>,
    /// The climate station, copied into the job so that the job stands by itself.
    #[serde(default)]
    pub station: Option<Station>,
    #[serde(default)]
    pub design_hours: DesignHours,
    pub air_class: AirClass,
    #[serde(default)]
    pub air: AirDraft,
    #[serde(default)]
    pub ground: GroundDraft,
    /// In the order in which the water passes them.
    pub rooms: Vec<RoomDraft>,
    /// Garages, attics, crawl spaces and the like, drawn and built as rooms are.
    #[serde(default)]
    pub spaces: Vec<RoomDraft>,
    /// The user's own assemblies, layer by layer.
    #[serde(default)]
    pub assemblies: Vec<AssemblyDraft>,
    #[serde(default)]
    pub bills: BillsDraft,
    #[serde(default)]
    pub certainty: Entries<CertaintyField>,
    pub element: ElementDraft,
    pub tube: Tube,
    pub flow_basis: FlowBasis,
    #[serde(default)]
    pub circuit: Entries<CircuitField>,
    /// The next id to give out.
    pub next_id: u32,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ElementDraft {
    pub rating_basis: RatingBasis,
    pub heating_effect: HeatingEffect,
    #[serde(default)]
    pub entries: Entries<ElementField>,
    /// The maker's table, row by row.
    #[serde(default)]
    pub points: Vec<Entries<PointField>>,
    /// Whole-foot pieces that the shop has, ascending.
    pub stock_ft: Vec<u8>,
}

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
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
#[serde(default)]
pub struct AirDraft {
    pub basis: AirBasis,
    pub storeys: Storeys,
    pub shelter: Shelter,
    pub flue: OpenFlue,
    pub entries: Entries<AirField>,
}

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
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
#[serde(default)]
pub struct GroundDraft {
    pub soil: Soil,
    pub method: GroundMethod,
    pub edge: EdgeBasis,
    pub slab_edge: SlabEdge,
    pub entries: Entries<GroundField>,
}

/// An assembly of the user's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AssemblyDraft {
    pub id: AssemblyId,
    pub name: String,
    pub position: Position,
    pub framing: Framing,
    #[serde(default)]
    pub entries: Entries<AssemblyField>,
    /// From inside to outside.
    #[serde(default)]
    pub layers: Vec<LayerDraft>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LayerDraft {
    pub material: LayerMaterial,
    pub place: Place,
    #[serde(default)]
    pub entries: Entries<LayerField>,
}

/// What a layer is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LayerMaterial {
    Listed(Material),
    /// A layer whose R is on its label.
    TypedR,
}

names!(Place {
    Through = "through",
    BetweenFraming = "between-framing",
});

/// What was paid for, to hold the calculation against.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
#[serde(default)]
pub struct BillsDraft {
    pub fuel: Fuel,
    pub entries: Entries<BillsField>,
    pub list: Vec<BillDraft>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BillDraft {
    pub id: BillId,
    /// Dates as a calendar writes them: 2025-12-31.
    #[serde(default)]
    pub from: String,
    #[serde(default)]
    pub to: String,
    #[serde(default)]
    pub entries: Entries<BillField>,
}

/// Where the element's rating comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RatingBasis {
    /// One output at one water temperature, with an exponent.
    Single,
    /// A maker's table, fitted.
    Table,
}

names!(RatingBasis {
    Single = "single",
    Table = "table",
});

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlowBasis {
    FromDrop,
    Typed,
}

names!(FlowBasis {
    FromDrop = "from-drop",
    Typed = "typed",
});

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoomDraft {
    pub id: RoomId,
    pub name: String,
    #[serde(default)]
    pub used: RoomUse,
    #[serde(default)]
    pub level: Level,
    #[serde(default)]
    pub shape: Shape,
    #[serde(default)]
    pub entries: Entries<RoomField>,
    #[serde(default)]
    pub surfaces: Vec<SurfaceDraft>,
}

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

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SurfaceDraft {
    pub id: SurfaceId,
    pub kind: SurfaceKind,
    /// Empty for none; walls are then numbered.
    #[serde(default)]
    pub name: String,
    pub behind: Behind,
    pub u_value: UValue,
    #[serde(default)]
    pub entries: Entries<SurfaceField>,
    #[serde(default)]
    pub openings: Vec<OpeningDraft>,
}

/// What lies behind a surface, as chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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

/// Where a U-value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UValue {
    Listed(Assembly),
    Own(AssemblyId),
    TypedU,
    TypedR,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpeningDraft {
    pub id: OpeningId,
    pub kind: OpeningKind,
    pub u_value: UValue,
    #[serde(default)]
    pub entries: Entries<OpeningField>,
}

/// The whole-foot pieces of the trade: common practice, no source.
pub(super) const STOCK_FT: std::ops::RangeInclusive<u8> = 2..=10;

impl ElementDraft {
    /// Puts a stock length on the list, or takes it off.
    pub fn toggle_stock(&mut self, feet: u8) {
        let place = self.stock_ft.partition_point(|known| *known < feet);
        match self.stock_ft.get(place) == Some(&feet) {
            true => drop(self.stock_ft.remove(place)),
            false => self.stock_ft.insert(place, feet),
        }
    }
}

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
        }
    }
}

impl Draft {
    pub fn new(name: &str, units: System) -> Draft {
        Draft {
            name: name.to_string(),
            units,
            house: Entries::default(),
            station: None,
            design_hours: DesignHours::default(),
            air_class: AirClass::Average,
            air: AirDraft::default(),
            ground: GroundDraft::default(),
            spaces: Vec::new(),
            assemblies: Vec::new(),
            bills: BillsDraft::default(),
            certainty: Entries::default(),
            rooms: Vec::new(),
            element: ElementDraft {
                rating_basis: RatingBasis::Single,
                heating_effect: HeatingEffect::Unknown,
                entries: Entries::default(),
                points: Vec::new(),
                stock_ft: STOCK_FT.collect(),
            },
            tube: Tube::CopperMThreeQuarter,
            flow_basis: FlowBasis::FromDrop,
            circuit: Entries::default(),
            next_id: 1,
        }
    }

    /// A heated room or an unheated space.
    pub fn room(&self, id: RoomId) -> Option<&RoomDraft> {
        self.all_rooms().find(|room| room.id == id)
    }

    /// Heated rooms, then unheated spaces.
    pub fn all_rooms(&self) -> impl Iterator<Item = &RoomDraft> {
        self.rooms.iter().chain(&self.spaces)
    }

    pub fn assembly(&self, id: AssemblyId) -> Option<&AssemblyDraft> {
        self.assemblies.iter().find(|assembly| assembly.id == id)
    }

    pub fn bill(&self, id: BillId) -> Option<&BillDraft> {
        self.bills.list.iter().find(|bill| bill.id == id)
    }

    pub fn surface(&self, room: RoomId, id: SurfaceId) -> Option<&SurfaceDraft> {
        self.room(room)?.surfaces.iter().find(|surface| surface.id == id)
    }

    pub fn opening(
        &self,
        room: RoomId,
        surface: SurfaceId,
        id: OpeningId,
    ) -> Option<&OpeningDraft> {
        self.surface(room, surface)?.openings.iter().find(|opening| opening.id == id)
    }

    /// What is typed in `field`; `None` for a blank one, or one of a thing that is gone.
    pub fn entry(&self, field: Field) -> Option<&Entry> {
        match field {
            Field::House(f) => self.house.get(f),
            Field::Air(f) => self.air.entries.get(f),
            Field::Ground(f) => self.ground.entries.get(f),
            Field::Certainty(f) => self.certainty.get(f),
            Field::Assembly(id, f) => self.assembly(id)?.entries.get(f),
            Field::Layer(id, row, f) => self.assembly(id)?.layers.get(row)?.entries.get(f),
            Field::Bills(f) => self.bills.entries.get(f),
            Field::Bill(id, f) => self.bill(id)?.entries.get(f),
            Field::Element(f) => self.element.entries.get(f),
            Field::Point(row, f) => self.element.points.get(row)?.get(f),
            Field::Stock => None,
            Field::Circuit(f) => self.circuit.get(f),
            Field::Room(room, f) => self.room(room)?.entries.get(f),
            Field::Surface(room, surface, f) => self.surface(room, surface)?.entries.get(f),
            Field::Opening(room, surface, opening, f) => {
                self.opening(room, surface, opening)?.entries.get(f)
            }
        }
    }

    /// What is typed in `field`, be it a number or a date.
    pub fn typed_text(&self, field: Field) -> String {
        let date = |id, pick: fn(&BillDraft) -> &String| self.bill(id).map(pick).cloned();
        match field {
            Field::Bill(id, BillField::From) => date(id, |bill| &bill.from),
            Field::Bill(id, BillField::To) => date(id, |bill| &bill.to),
            _ => self.entry(field).map(|entry| entry.text.clone()),
        }
        .unwrap_or_default()
    }

    /// The unit beside the box of `field`: the page's system, or inches for a small length.
    pub fn box_unit(&self, field: Field) -> Unit {
        display_unit(field.spec().kind, self.units)
    }
}
