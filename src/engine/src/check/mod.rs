//! What holds and what does not: one function a rule, each finding with its values and remedies.

mod circuit;
mod house;
mod piping;
mod plant;
mod room;
mod shop;

pub use circuit::practice_length;
pub(crate) use circuit::{LEAST_VELOCITY, MOST_VELOCITY, most_carried};
pub(crate) use piping::PUMP_REACHES;

use crate::building::{RoomId, ZoneId};
use crate::design::Design;
use crate::job::Job;
use crate::network::NotSolved;
use crate::pipe::Tube;
use crate::quantity::{
    Length, Power, Pressure, Temperature, TemperatureDifference, Value, Velocity, Volume,
    VolumeFlow,
};
use serde::Serialize;

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    Holds,
    /// Works, but look at it.
    Watch,
    /// Does not work, or should not be built.
    Stop,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Subject {
    House,
    Room(RoomId),
    Loop,
    Zone(ZoneId),
    /// A zone's circuit, by the first room that it heats.
    Circuit(ZoneId, RoomId),
    Circulator,
    Boiler,
}

/// One rule's verdict on one subject.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    pub severity: Severity,
    pub subject: Subject,
    pub finding: Finding,
    pub remedies: Vec<Remedy>,
}

/// What was found, with the value and the limit it is held against.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Finding {
    /// Every room that has a load gets it.
    RoomsHeated { rooms: usize },
    /// The walls do not take the length that the room needs.
    DoesNotFit {
        #[serde(rename = "needed_m")]
        needed: Length,
        #[serde(rename = "fitted_m")]
        fitted: Length,
        #[serde(rename = "short_w")]
        short: Power,
    },
    /// No length would do: the water cools to the room before the load is met.
    WaterTooCool {
        #[serde(rename = "water_k")]
        water: Temperature,
        #[serde(rename = "room_k")]
        room: Temperature,
        #[serde(rename = "short_w")]
        short: Power,
    },
    /// The room loses heat and has no free wall.
    NoWall {
        #[serde(rename = "load_w")]
        load: Power,
    },
    /// The room loses no heat, or gains some.
    NoLoad {
        #[serde(rename = "load_w")]
        load: Power,
    },
    /// Other heat covers what the room loses, so that it has no baseboard.
    OtherHeatCovers {
        #[serde(rename = "load_w")]
        load: Power,
        #[serde(rename = "other_w")]
        other: Power,
    },
    /// The room would be heated, were it not for walls that are ruled out.
    WallsRuledOut {
        /// Free wall that is ruled out.
        #[serde(rename = "free_m")]
        free: Length,
        #[serde(rename = "short_w")]
        short: Power,
    },
    /// Every piece is longer than every free stretch of the room.
    NoPieceFits {
        #[serde(rename = "shortest_m")]
        shortest: Length,
        /// The longest stretch, less what its ends take.
        #[serde(rename = "takes_m")]
        takes: Length,
    },
    /// The walls would take what the room needs, but no more pieces are there.
    StockUsedUp {
        #[serde(rename = "needed_m")]
        needed: Length,
        #[serde(rename = "fitted_m")]
        fitted: Length,
        #[serde(rename = "short_w")]
        short: Power,
    },
    /// The least cost was asked for, and some stock lengths have no price.
    PricesMissing { lengths: usize },
    /// More pieces of a length stay than shop and user have of it.
    FixedExceedsStock {
        #[serde(rename = "length_m")]
        length: Length,
        fixed: u32,
        there: u32,
    },
    /// The whole load on each part of the heated floor, against what such houses show.
    PerArea {
        #[serde(rename = "per_area_w_m2")]
        per_area: Value,
        #[serde(rename = "least_w_m2")]
        least: Value,
        #[serde(rename = "most_w_m2")]
        most: Value,
    },
    /// One surface between two rooms was entered in both.
    EnteredTwice { other: RoomId },
    /// Against the drop that was planned: chosen, or what practice takes.
    Drop {
        #[serde(rename = "planned_k")]
        planned: TemperatureDifference,
        #[serde(rename = "drop_k")]
        drop: TemperatureDifference,
        #[serde(rename = "limit_k")]
        limit: TemperatureDifference,
    },
    /// Against the least and most of practice.
    Velocity {
        #[serde(rename = "velocity_m_s")]
        velocity: Velocity,
        #[serde(rename = "least_m_s")]
        least: Velocity,
        #[serde(rename = "most_m_s")]
        most: Velocity,
    },
    /// The element on the loop against what the tube carries.
    TubeCarries {
        #[serde(rename = "element_m")]
        element: Length,
        /// At the highest velocity and the drop of this loop.
        #[serde(rename = "carries_m")]
        carries: Length,
        /// Common practice, no source.
        #[serde(rename = "practice_m")]
        practice: Length,
    },
    /// The supply against the boiler's limit.
    Supply {
        #[serde(rename = "supply_k")]
        supply: Temperature,
        #[serde(rename = "limit_k")]
        limit: Temperature,
    },
    /// The return is cool enough for flue gas to condense in a boiler not made for it.
    ReturnCool {
        #[serde(rename = "back_k")]
        back: Temperature,
        #[serde(rename = "least_k")]
        least: Temperature,
    },
    /// Water hotter or colder than the property data.
    OutsideData {
        #[serde(rename = "water_k")]
        water: Temperature,
        #[serde(rename = "most_k")]
        most: Temperature,
    },
    /// The flows were not found.
    NotSolved { reason: NotSolved },
    /// No room hangs on it.
    EmptyZone,
    /// A main narrower than the pipe that hangs on it.
    MainSmaller { main: Tube, branch: Tube },
    /// The circulator moves less than is meant.
    PumpShort {
        #[serde(rename = "meant_m3_s")]
        meant: VolumeFlow,
        #[serde(rename = "flow_m3_s")]
        flow: VolumeFlow,
        #[serde(rename = "head_m")]
        head: Length,
    },
    /// A circuit gets much more or less than is meant.
    Uneven {
        #[serde(rename = "flow_m3_s")]
        flow: VolumeFlow,
        #[serde(rename = "meant_m3_s")]
        meant: VolumeFlow,
    },
    /// A circuit gets as good as nothing.
    NoFlow {
        #[serde(rename = "meant_m3_s")]
        meant: VolumeFlow,
    },
    /// A zone is heard when it runs alone.
    FastAlone {
        #[serde(rename = "velocity_m_s")]
        velocity: Velocity,
        #[serde(rename = "most_m_s")]
        most: Velocity,
    },
    /// The boiler's output against what is needed.
    BoilerSize {
        #[serde(rename = "output_w")]
        output: Power,
        #[serde(rename = "needed_w")]
        needed: Power,
        /// That it should not be above.
        #[serde(rename = "most_w")]
        most: Power,
    },
    /// The burner stops soon while the smallest zone calls alone.
    ShortCycle {
        on_s: f64,
        least_s: f64,
        #[serde(rename = "load_w")]
        load: Power,
        #[serde(rename = "output_w")]
        output: Power,
    },
    /// Water boils at the highest place, or nearly.
    Boils {
        #[serde(rename = "supply_k")]
        supply: Temperature,
        #[serde(rename = "boils_at_k")]
        boils_at: Temperature,
    },
    /// Too little pressure is left at the highest place for air to go out.
    FillLow {
        #[serde(rename = "fill_pa")]
        fill: Pressure,
        #[serde(rename = "at_top_pa")]
        at_top: Pressure,
        #[serde(rename = "least_pa")]
        least: Pressure,
    },
    /// The relief valve weeps or lifts.
    ReliefNear {
        #[serde(rename = "pressure_pa")]
        pressure: Pressure,
        #[serde(rename = "setting_pa")]
        setting: Pressure,
    },
    /// Water that stands still in this air may freeze.
    MayFreeze {
        #[serde(rename = "air_k")]
        air: Temperature,
        #[serde(rename = "freezes_at_k")]
        freezes_at: Temperature,
    },
    /// The room's shut-off is shut.
    ShutOff {
        #[serde(rename = "load_w")]
        load: Power,
    },
    /// A result is no number; nothing that follows from it is to be trusted.
    NotFinite,
}

/// A way out, with its value where it was worked out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Remedy {
    MoreWall {
        #[serde(rename = "length_m")]
        length: Length,
    },
    HigherOutputElement,
    ReduceLoss,
    AddFreeWall,
    /// One that is ruled out.
    AllowWall,
    LetPiecesGo,
    ShorterPieces,
    MorePieces,
    /// How many the shop has, or were bought already.
    CorrectStock,
    TypePrices,
    LessOtherHeat,
    AddSurfaces,
    RemoveOneEntry,
    MoreFlow {
        #[serde(rename = "flow_m3_s")]
        flow: VolumeFlow,
    },
    LessFlow {
        #[serde(rename = "flow_m3_s")]
        flow: VolumeFlow,
    },
    OtherTube {
        tube: Tube,
    },
    SmallerDrop,
    LargerDrop,
    SecondCircuit,
    LowerSupply {
        #[serde(rename = "supply_k")]
        supply: Temperature,
    },
    /// Of supply water into the return.
    Bypass {
        /// Of the boiler's flow.
        share: f64,
    },
    MixingValve,
    /// A boiler that is kept hotter, its water mixed down for the loop.
    HotterBoiler,
    CondensingBoiler,
    LargerBoiler,
    SmallerBoiler,
    /// One whose burner can give less.
    ModulatingBoiler,
    Buffer {
        #[serde(rename = "volume_m3")]
        volume: Volume,
    },
    JoinZones,
    Fill {
        #[serde(rename = "pressure_pa")]
        pressure: Pressure,
    },
    Glycol {
        share: f64,
    },
    WarmPipes,
    PurgeAtHighFlow,
    OpenValve,
    AddRooms,
    LargerPump,
    SmallerPump,
    /// One that slows down by itself.
    VariablePump,
    BalancingValves,
}

/// Every rule on a finished design, in a fixed order: rooms as the water passes them, then the
/// loop and its plant.
pub fn checks(job: &Job, design: &Design) -> Vec<Check> {
    let mut out = Vec::new();
    out.extend(house::not_finite(design));
    out.extend(room::rooms(job, design));
    out.extend(shop::checks(job, design));
    out.extend(house::entered_twice(job));
    out.extend(house::per_area(job, design));
    out.extend(piping::not_solved(design));
    out.extend(piping::empty_zones(job));
    out.extend(circuit::drop(job, design));
    out.extend(circuit::velocity(job, design));
    out.extend(circuit::tube_carries(job, design));
    out.extend(piping::mains(job));
    out.extend(piping::pumps(job, design));
    out.extend(piping::uneven(job, design));
    out.extend(piping::alone(design));
    out.extend(circuit::supply(job));
    out.extend(circuit::outside_data(job));
    out.extend(plant::checks(job, design));
    out
}
