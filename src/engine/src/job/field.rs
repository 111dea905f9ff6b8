//! Every place where a number is typed. The page's element ids and the job file's names follow from
//! it; what each takes stands in [`super::bounds`].

mod family;
mod house;
mod id;
mod shop;
mod system;

pub use family::Family;
pub use house::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, ChangeField, GroundField,
    HouseField, LayerField, OpeningField, RoomField, SurfaceField,
};
pub use shop::{CutField, Group, PriceField, SizedField, StockField};
pub use system::{
    CircuitField, ControlField, ElementField, LegField, MeasuredField, PartField, PlantField,
    PointField, PumpPointField, SpotField, ZoneField,
};

use crate::building::{AssemblyId, BillId, ChangeId, OpeningId, RoomId, SurfaceId, ZoneId};
use crate::pipe::Tube;
use serde::Serialize;

/// A place where a number is typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Field {
    House(HouseField),
    Air(AirField),
    Ground(GroundField),
    Certainty(CertaintyField),
    Assembly(AssemblyId, AssemblyField),
    /// A layer of an assembly, counted from zero.
    Layer(AssemblyId, usize, LayerField),
    Bills(BillsField),
    Bill(BillId, BillField),
    Element(ElementField),
    /// A row of the maker's table, counted from zero.
    Point(usize, PointField),
    /// A stock length in whole feet.
    Stocked(u8, StockField),
    Price(PriceField),
    /// A price for one size of tube.
    SizedPrice(Tube, SizedField),
    Spare(Group),
    Cut(CutField),
    /// The choice of stock lengths, which is no text but has an error of its own.
    Stock,
    Circuit(CircuitField),
    Part(PartField),
    Plant(PlantField),
    Control(ControlField),
    Zone(ZoneId, ZoneField),
    /// A point of the circulator's curve, counted from zero.
    PumpPoint(usize, PumpPointField),
    /// A step of a room's route, counted from zero.
    Leg(RoomId, usize, LegField),
    Room(RoomId, RoomField),
    Surface(RoomId, SurfaceId, SurfaceField),
    Opening(RoomId, SurfaceId, OpeningId, OpeningField),
    Measured(MeasuredField),
    Spot(RoomId, SpotField),
    Change(ChangeId, ChangeField),
}
