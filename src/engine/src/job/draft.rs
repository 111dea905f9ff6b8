//! The job as typed.

use super::field::{
    CircuitField, ElementField, Field, HouseField, OpeningField, PointField, RoomField,
    SurfaceField,
};
use crate::building::{AirClass, Assembly, OpeningId, OpeningKind, RoomId, SurfaceId, SurfaceKind};
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
    pub air_class: AirClass,
    /// In the order in which the water passes them.
    pub rooms: Vec<RoomDraft>,
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
    pub entries: Entries<RoomField>,
    #[serde(default)]
    pub surfaces: Vec<SurfaceDraft>,
}

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
    Unheated,
    Room(RoomId),
    SameTemperature,
}

/// Where a U-value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UValue {
    Listed(Assembly),
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

impl Draft {
    pub fn new(name: &str, units: System) -> Draft {
        Draft {
            name: name.to_string(),
            units,
            house: Entries::default(),
            air_class: AirClass::Average,
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

    pub fn room(&self, id: RoomId) -> Option<&RoomDraft> {
        self.rooms.iter().find(|room| room.id == id)
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

    /// The unit beside the box of `field`: the page's system, or inches for a small length.
    pub fn box_unit(&self, field: Field) -> Unit {
        display_unit(field.spec().kind, self.units)
    }
}
