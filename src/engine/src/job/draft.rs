//! The job as typed.

use super::control::ControlDraft;
pub use super::entries::{Entries, Entry};
use super::existing::ExistingDraft;
use super::field::{
    BillField, CertaintyField, CircuitField, ElementField, Field, Group, HouseField, PartField,
    PointField, PriceField,
};
pub use super::house_draft::{
    AirBasis, AirDraft, AssemblyDraft, BillDraft, BillsDraft, DesignHours, EdgeBasis, GroundDraft,
    GroundMethod, LayerDraft, LayerMaterial,
};
use super::piping::{PumpDraft, ZoneDraft, Zoning};
use super::plant::PlantDraft;
use super::progress::ProgressDraft;
pub use super::room_draft::{Behind, OpeningDraft, RoomDraft, Shape, SurfaceDraft, UValue};
use super::shop::{CuttingDraft, Objective, SizedDraft, StockDraft};
use super::what_if::ChangeDraft;
use crate::building::{AirClass, AssemblyId, BillId, OpeningId, RoomId, SurfaceId, ZoneId};
use crate::climate::Station;
use crate::emitter::HeatingEffect;
use crate::named::names;
use crate::pipe::Tube;
use crate::quantity::{System, Unit, display_unit};
use crate::stored::stored;

/// A job as typed: what is stored, shared and undone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Draft {
    pub name: String,
    /// The units that the page shows; entries keep their own.
    pub units: System,
    pub house: Entries<HouseField>,
    /// The climate station, copied into the job so that the job stands by itself.
    pub station: Option<Station>,
    pub design_hours: DesignHours,
    pub air_class: AirClass,
    pub air: AirDraft,
    pub ground: GroundDraft,
    /// In the order in which the water passes them.
    pub rooms: Vec<RoomDraft>,
    /// Garages, attics, crawl spaces and the like, drawn and built as rooms are.
    pub spaces: Vec<RoomDraft>,
    /// The user's own assemblies, layer by layer.
    pub assemblies: Vec<AssemblyDraft>,
    pub bills: BillsDraft,
    pub certainty: Entries<CertaintyField>,
    pub element: ElementDraft,
    /// What things cost.
    pub prices: Entries<PriceField>,
    /// What things cost in one size of tube, by size.
    pub sized_prices: Vec<SizedDraft>,
    /// What is bought beyond the need.
    pub spare: Entries<Group>,
    pub cutting: CuttingDraft,
    /// Of the elements, and of what is piped in the same.
    pub tube: Tube,
    pub flow_basis: FlowBasis,
    pub circuit: Entries<CircuitField>,
    pub part: Entries<PartField>,
    pub pipe_cover: PipeCover,
    pub zoning: Zoning,
    pub pump: PumpDraft,
    /// Never empty.
    pub zones: Vec<ZoneDraft>,
    pub plant: PlantDraft,
    pub control: ControlDraft,
    /// The days on site.
    pub progress: ProgressDraft,
    /// Changes to the house that are only weighed; the rest of the draft knows nothing of them.
    pub what_if: Vec<ChangeDraft>,
    pub existing: ExistingDraft,
    /// The next id to give out.
    pub next_id: u32,
}

stored!(Draft {
    name,
    units,
    house: default,
    station: default,
    design_hours: default,
    air_class,
    air: default,
    ground: default,
    rooms,
    spaces: default,
    assemblies: default,
    bills: default,
    certainty: default,
    element,
    prices: default,
    sized_prices: default,
    spare: default,
    cutting: default,
    tube,
    flow_basis,
    circuit: default,
    part: default,
    pipe_cover: default,
    zoning: default,
    pump: default,
    zones: default,
    plant: default,
    control: default,
    progress: default,
    what_if: default,
    existing: default,
    next_id,
});

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ElementDraft {
    pub rating_basis: RatingBasis,
    pub heating_effect: HeatingEffect,
    pub entries: Entries<ElementField>,
    /// The maker's table, row by row.
    pub points: Vec<Entries<PointField>>,
    /// Whole-foot pieces that the shop has, ascending.
    pub stock_ft: Vec<u8>,
    /// What is typed of stock lengths, on the list or off it, ascending.
    pub stock: Vec<StockDraft>,
    /// What the pieces are chosen for.
    pub objective: Objective,
}

stored!(ElementDraft {
    rating_basis,
    heating_effect,
    entries: default,
    points: default,
    stock_ft,
    stock: default,
    objective: default,
});

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
    /// Whatever the circulator moves.
    FromPump,
}

names!(FlowBasis {
    FromDrop = "from-drop",
    Typed = "typed",
    FromPump = "from-pump",
});

/// Around pipe outside the rooms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PipeCover {
    #[default]
    Bare,
    Insulated,
}

names!(PipeCover {
    Bare = "bare",
    Insulated = "insulated",
});

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
                stock: Vec::new(),
                objective: Objective::default(),
            },
            prices: Entries::default(),
            sized_prices: Vec::new(),
            spare: Entries::default(),
            cutting: CuttingDraft::default(),
            tube: Tube::CopperMThreeQuarter,
            flow_basis: FlowBasis::FromDrop,
            circuit: Entries::default(),
            part: Entries::default(),
            pipe_cover: PipeCover::default(),
            zoning: Zoning::default(),
            pump: PumpDraft::default(),
            zones: vec![ZoneDraft::series(ZoneId(0), Tube::CopperMThreeQuarter)],
            plant: PlantDraft::default(),
            control: ControlDraft::default(),
            progress: ProgressDraft::default(),
            what_if: Vec::new(),
            existing: ExistingDraft::default(),
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
            Field::Stocked(feet, f) => self.element.stocked(feet)?.entries.get(f),
            Field::Price(f) => self.prices.get(f),
            Field::SizedPrice(tube, f) => self.sized_price(tube, f),
            Field::Spare(group) => self.spare.get(group),
            Field::Cut(f) => self.cutting.entries.get(f),
            Field::Circuit(f) => self.circuit.get(f),
            Field::Part(f) => self.part.get(f),
            Field::Plant(f) => self.plant.entries.get(f),
            Field::Control(f) => self.control.entries.get(f),
            Field::Zone(id, f) => self.zone(id)?.entries.get(f),
            Field::PumpPoint(row, f) => self.pump.points.get(row)?.get(f),
            Field::Leg(room, row, f) => self.room(room)?.route.get(row)?.entries.get(f),
            Field::Room(room, f) => self.room(room)?.entries.get(f),
            Field::Surface(room, surface, f) => self.surface(room, surface)?.entries.get(f),
            Field::Opening(room, surface, opening, f) => {
                self.opening(room, surface, opening)?.entries.get(f)
            }
            Field::Measured(f) => self.progress.measured.get(f),
            Field::Spot(room, f) => self.progress.spot(room)?.entries.get(f),
            Field::Change(id, f) => self.change(id)?.entries.get(f),
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
