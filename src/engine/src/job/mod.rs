//! A job: as typed ([`Draft`]), where each typed thing stands ([`Field`]), and as calculated with
//! ([`Job`]).
//!
//! The draft is what is stored, shared and undone. It keeps every field's text and unit exactly as
//! typed, also text that cannot be read, so that nothing typed is lost and switching units loses
//! nothing. [`read`] turns it into a job, or says what stands in the way.

mod choice;
mod draft;
mod edit;
mod entries;
mod field;
mod file;
mod outline;
mod own;
mod read;
mod resolve;
mod shell;
mod shown;
mod table;

pub use choice::{Choice, Pick};
pub use draft::{
    AirBasis, AirDraft, AssemblyDraft, Behind, BillDraft, BillsDraft, DesignHours, Draft,
    EdgeBasis, ElementDraft, Entries, Entry, FlowBasis, GroundDraft, GroundMethod, LayerDraft,
    LayerMaterial, OpeningDraft, RatingBasis, RoomDraft, Shape, SurfaceDraft, UValue,
};
pub use field::{
    AirField, AssemblyField, BillField, BillsField, Blank, CertaintyField, CircuitField,
    ElementField, Family, Field, GroundField, HouseField, LayerField, OpeningField, PointField,
    RoomField, Spec, SurfaceField,
};
pub use file::{CURRENT_VERSION, File, Header, OpenError};
pub use outline::{Outline, outline};
pub use own::{layer_fields, own_build, own_transmittance};
pub use read::{BillsRead, FieldError, Problem, Reading, read};
pub use resolve::{Resolved, WallShape, resolve, wall_shape};
pub use shown::{assumed_text, box_text, echo};

use crate::building::House;
use crate::emitter::Element;
use crate::pipe::Tube;
use crate::quantity::{
    Length, LinearPower, Temperature, TemperatureDifference, Transmittance, VolumeFlow,
};

/// A job with every value valid: what [`crate::design`] works on.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    pub house: House,
    /// How the water reaches each room, in the order of the house's rooms.
    pub approaches: Vec<PipeLeg>,
    pub baseboard: Baseboard,
    pub circuit: Circuit,
    /// What the fuel bills say of the house.
    pub bills: Option<BillsRead>,
}

/// The baseboard: its rating, and the pieces it is sold in.
#[derive(Debug, Clone, PartialEq)]
pub struct Baseboard {
    pub element: Element,
    /// The largest distance of a maker's table from its fitted curve; none without a table.
    pub worst_residual: Option<LinearPower>,
    /// Nominal lengths in stock, ascending, each once; never empty.
    pub stock: Vec<Length>,
    /// Tube without fins on each piece.
    pub bare_per_piece: Length,
    /// Wall taken by end caps and fittings on each run.
    pub end_allowance: Length,
}

/// A single series loop from the boiler through each room in turn and back.
#[derive(Debug, Clone, PartialEq)]
pub struct Circuit {
    pub tube: Tube,
    pub supply: Temperature,
    pub boiler_limit: Temperature,
    pub flow: Flow,
    /// Air around the pipe between rooms.
    pub pipe_surroundings: Temperature,
    /// Heat passed by the pipe's surface to that air.
    pub pipe_film: Transmittance,
    pub back: PipeLeg,
    /// Fittings in the boiler room.
    pub boiler_elbows: u32,
    pub boiler_tees: u32,
    pub boiler_valves: u32,
    /// Head lost in the boiler, the air eliminator and other equipment.
    pub equipment_head: Length,
}

/// How the flow is fixed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Flow {
    /// The flow that loses this much temperature while it delivers the loads.
    FromDrop(TemperatureDifference),
    /// At the supply temperature's density.
    Typed(VolumeFlow),
}

/// Pipe without fins, with its elbows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PipeLeg {
    pub length: Length,
    pub elbows: u32,
}
