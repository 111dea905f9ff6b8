//! A job: as typed ([`Draft`]), where each typed thing stands ([`Field`]), and as calculated with
//! ([`Job`]).
//!
//! The draft is what is stored, shared and undone. It keeps every field's text and unit exactly as
//! typed, also text that cannot be read, so that nothing typed is lost and switching units loses
//! nothing. [`read`] turns it into a job, or says what stands in the way.

mod bounds;
mod choice;
mod control;
mod draft;
mod edit;
mod entries;
mod existing;
mod field;
mod file;
mod house_draft;
mod inputs;
mod outline;
mod own;
mod piping;
mod plant;
mod price_list;
mod progress;
mod read;
mod repipe;
mod resolve;
mod room_draft;
mod route;
mod shell;
mod shop;
mod shown;
mod table;
mod what_if;

pub use bounds::{Blank, Spec};
pub use choice::{Choice, Pick};
pub use control::{Control, ControlDraft, Holds, Mass, RoomMass, Setback, SupplyBy};
pub use draft::{
    AirBasis, AirDraft, AssemblyDraft, Behind, BillDraft, BillsDraft, DesignHours, Draft,
    EdgeBasis, ElementDraft, Entries, Entry, FlowBasis, GroundDraft, GroundMethod, LayerDraft,
    LayerMaterial, OpeningDraft, PipeCover, RatingBasis, RoomDraft, Shape, SurfaceDraft, UValue,
};
pub use existing::{ExistingDraft, Ran, Standing};
pub use field::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, ChangeField, CircuitField,
    ControlField, CutField, ElementField, Family, Field, GroundField, Group, HouseField,
    LayerField, LegField, MeasuredField, OpeningField, PartField, PlantField, PointField,
    PriceField, PumpPointField, RoomField, SizedField, SpotField, StockField, SurfaceField,
    ZoneField,
};
pub use file::{CURRENT_VERSION, File, Header, OpenError};
pub use inputs::{Input, InputOrigin, inputs};
pub use outline::{Outline, Side, outline};
pub use own::{layer_fields, own_build, own_transmittance};
pub use piping::{
    Arrangement, BackPath, Balancing, Diverters, Hung, LegDraft, LegKind, PumpDraft, PumpKind,
    PumpSet, ShutOff, ZoneDraft, Zoning,
};
pub use plant::{Antifreeze, BoilerKind, Plant, PlantDraft, TankHeating, ValveKind};
pub use price_list::{
    ListFault, ListedPrice, PriceList, RowFault, RowProblem, Typed, add_to_table, price_table,
    read_table,
};
pub use progress::{Done, Measured, ProgressDraft, Spot, SpotDraft, StepDraft, measured};
pub use read::{BillsRead, FieldError, Problem, Reading, read};
pub use resolve::{Resolved, WallShape, resolve, wall_shape};
pub use route::{PIPE_FIELDS, Way, pipe_fields, way_to};
pub use shop::{
    Cutting, CuttingDraft, Fixed, Objective, Prices, SizedDraft, Spare, Sticks, Stock, StockDraft,
};
pub use shown::{ReadBack, box_text, read_back};
pub use what_if::{ChangeDraft, ChangeKind, Counted, OutsideWalls, Whose};

use crate::building::{House, ZoneId};
use crate::emitter::Element;
use crate::fluid::Fluid;
use crate::network::PumpCurve;
use crate::pipe::{Cv, Insulation, Tube};
use crate::quantity::{
    Length, LinearPower, Temperature, TemperatureDifference, Transmittance, VolumeFlow,
};

/// A job with every value valid: what [`crate::design`] works on.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    pub house: House,
    /// How the water reaches each room, in the order of the house's rooms.
    pub approaches: Vec<Approach>,
    pub baseboard: Baseboard,
    pub circuit: Circuit,
    /// Those with rooms.
    pub zones: Vec<Zone>,
    /// Those without.
    pub empty_zones: Vec<ZoneId>,
    pub plant: Plant,
    pub prices: Prices,
    pub spare: Spare,
    pub cutting: Cutting,
    /// What the fuel bills say of the house.
    pub bills: Option<BillsRead>,
    pub standing: Standing,
    /// How it is run through night and year; none while that cannot be read. No design depends on it.
    pub control: Option<Control>,
}

/// The baseboard: its rating, and the pieces it is sold in.
#[derive(Debug, Clone, PartialEq)]
pub struct Baseboard {
    pub element: Element,
    /// The largest distance of a maker's table from its fitted curve; none without a table.
    pub worst_residual: Option<LinearPower>,
    /// Ascending, each length once; never empty.
    pub stock: Vec<Stock>,
    pub objective: Objective,
    /// Tube without fins on each piece.
    pub bare_per_piece: Length,
    /// Wall taken by end caps and fittings on each run.
    pub end_allowance: Length,
}

/// What all loops share: the water, the boiler room, the circulator.
#[derive(Debug, Clone, PartialEq)]
pub struct Circuit {
    pub fluid: Fluid,
    /// Of the elements.
    pub tube: Tube,
    pub supply: Temperature,
    pub boiler_limit: Temperature,
    pub flow: Flow,
    /// That a room's flow is meant to lose, also where the flow is fixed otherwise.
    pub drop: TemperatureDifference,
    /// Air around the pipe outside the rooms.
    pub pipe_surroundings: Temperature,
    /// Heat passed by the pipe's surface to that air.
    pub pipe_film: Transmittance,
    /// Around that pipe.
    pub cover: Option<Insulation>,
    /// Fittings in the boiler room.
    pub boiler_elbows: u32,
    pub boiler_tees: u32,
    pub boiler_valves: u32,
    /// Head lost in the boiler, the air eliminator and other equipment, at the flow that is meant.
    pub equipment_head: Length,
    pub zoning: Zoning,
    pub pump: PumpCurve,
    pub pumps: PumpSet,
    pub parts: Parts,
}

/// Valves, tees and circulators.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parts {
    pub zone_valve: Cv,
    pub flow_check: Cv,
    /// Fully open.
    pub balancing: Cv,
    /// Of one diverter tee, on the velocity in the main past it.
    pub diverter_k: f64,
    /// Share of a circulator's electric power that moves water.
    pub pump_efficiency: f64,
}

/// A zone with its rooms.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    pub id: ZoneId,
    pub arrangement: Arrangement,
    pub balancing: Balancing,
    pub back: BackPath,
    pub main: Tube,
    pub pipe: Tube,
    /// One way.
    pub trunk: PipeLeg,
    /// Of the thermostat, one way, where it is measured.
    pub wire: Option<Length>,
    /// Of its own, where each zone has one.
    pub pump: PumpCurve,
    /// The rooms of each loop in the order in which the water passes them, by their place in the
    /// house; all in one where it is not split. None is empty.
    pub loops: Vec<Vec<usize>>,
}

/// How the flow is fixed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Flow {
    /// The flow that loses this much temperature while it delivers the loads.
    FromDrop(TemperatureDifference),
    /// At the supply temperature's density.
    Typed(VolumeFlow),
    /// What the circulators move.
    FromPump,
}

/// The pipe of one room.
#[derive(Debug, Clone, PartialEq)]
pub struct Approach {
    /// Its way step by step; empty where it is not described. They are part of the pipe below.
    pub legs: Vec<Leg>,
    /// Outside the rooms: from the room before, the main or the manifold.
    pub outside: PipeLeg,
    /// In the enclosure.
    pub inside: PipeLeg,
    /// From the room back, outside the rooms.
    pub back: PipeLeg,
    /// From main to element and back, together.
    pub branch: PipeLeg,
    pub tee_spacing: Length,
    /// Ends of the enclosure on the way, and behind the last room of a loop.
    pub end_caps: u32,
    pub diverters: Diverters,
    pub shut_off: ShutOff,
    /// None where the way is not described step by step.
    pub crossings: Option<Crossings>,
}

/// A step of a room's way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leg {
    pub kind: LegKind,
    pub length: Length,
}

/// Where the way to a room leaves the enclosure, by how.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Crossings {
    /// Below a door.
    pub doorways: u32,
    /// Up or down through a floor.
    pub floors: u32,
    /// Below the floor from one room to the next.
    pub below: u32,
}

/// Pipe without fins, with its elbows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PipeLeg {
    pub length: Length,
    pub elbows: u32,
}
