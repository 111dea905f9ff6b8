//! What is to be done: each kind of step with its numbers, its phase and its danger.

use crate::pipe::Tube;
use crate::plant::design::Control;
use crate::plant::movement::Movement;
use crate::plant::reset::Setting;
use crate::quantity::{Length, Pressure, Temperature, Volume, VolumeFlow};
use crate::sizing::RunPieces;

/// The phases, in working order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    Prepare,
    Enclosures,
    DryFit,
    Movement,
    Soldering,
    Doorways,
    Plastic,
    Test,
    Fill,
    Electrical,
    Boiler,
    HandOver,
}

/// What can hurt someone at a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Danger {
    /// Hot water under pressure.
    Scald,
    /// What a relief valve lets out.
    Relief,
    Fire,
    /// Gas, flue gas, carbon monoxide.
    Gas,
    Mains,
    /// Asbestos and lead in old houses.
    OldHouse,
    Freezing,
    /// Holes and notches in what carries the house.
    Structure,
    /// Heating water in the drinking water.
    DrinkingWater,
    /// A test that bursts.
    Pressure,
}

/// A task with its numbers.
#[derive(Debug, Clone, PartialEq)]
pub enum Task {
    CheckOldHouse,
    ShutDown,
    Protect,
    /// Holes through the floor on the way to a room.
    Bore {
        /// None where the way is not described.
        holes: Option<u32>,
        tube: Tube,
        /// Across, so that the pipe moves freely.
        wide: Length,
    },
    /// The back plates of a room's enclosures.
    Brackets {
        long: Length,
        brackets: u32,
    },
    /// A room's pieces, wall by wall.
    DryFit(Vec<RunPieces>),
    /// A straight run of element.
    LeaveRoom {
        long: Length,
        growth: Movement,
        /// At each end, as it is measured out.
        gap: Length,
    },
    /// Copper pipe outside the rooms: the growth of each straight `each` of it.
    PipeMoves {
        each: Length,
        growth: Length,
    },
    ReadyForFire,
    /// A room's joints at its pieces.
    Solder {
        joints: u32,
    },
    WatchFire,
    /// Under doors on the way to a room.
    Doorways {
        count: u32,
    },
    /// A zone's plastic tube keeps oxygen out.
    OxygenBarrier,
    /// A zone's joints between plastic and copper.
    Transitions {
        count: u32,
        supply: Temperature,
    },
    /// Plastic tube: the growth of each straight `each` of it.
    PlasticMoves {
        each: Length,
        growth: Length,
    },
    PressureTest {
        /// Between fill and relief; none where they are too near each other.
        test: Option<Pressure>,
        fill: Pressure,
        relief: Pressure,
    },
    Insulate,
    Flush,
    TankAir {
        pre_charge: Pressure,
    },
    Glycol {
        glycol: Volume,
        water: Volume,
    },
    Fill {
        pressure: Pressure,
        volume: Option<Volume>,
    },
    /// A zone, or a circuit of one that has several.
    Purge {
        tube: Tube,
        /// That carries air along.
        flow: VolumeFlow,
    },
    Wire {
        circulators: u32,
        zone_valves: u32,
        control: Option<Control>,
    },
    Thermostat,
    Alarms,
    ReliefPipe {
        setting: Pressure,
    },
    Start {
        limit: Temperature,
        supply: Temperature,
    },
    ResetControl(Setting),
    FirstHeat {
        supply: Temperature,
    },
    /// A circuit's balancing valve.
    Balance {
        /// In which turn, from one.
        order: u32,
        /// None for the valve that stays open.
        cv: Option<f64>,
    },
    Measure,
    HandOver,
}

impl Task {
    /// The name under which a step is kept: it never changes.
    pub const fn name(&self) -> &'static str {
        match self {
            Task::CheckOldHouse => "check-old-house",
            Task::ShutDown => "shut-down",
            Task::Protect => "protect",
            Task::Bore { .. } => "bore",
            Task::Brackets { .. } => "brackets",
            Task::DryFit(_) => "dry-fit",
            Task::LeaveRoom { .. } => "leave-room",
            Task::PipeMoves { .. } => "pipe-moves",
            Task::ReadyForFire => "ready-for-fire",
            Task::Solder { .. } => "solder",
            Task::WatchFire => "watch-fire",
            Task::Doorways { .. } => "doorways",
            Task::OxygenBarrier => "oxygen-barrier",
            Task::Transitions { .. } => "transitions",
            Task::PlasticMoves { .. } => "plastic-moves",
            Task::PressureTest { .. } => "pressure-test",
            Task::Insulate => "insulate",
            Task::Flush => "flush",
            Task::TankAir { .. } => "tank-air",
            Task::Glycol { .. } => "glycol",
            Task::Fill { .. } => "fill",
            Task::Purge { .. } => "purge",
            Task::Wire { .. } => "wire",
            Task::Thermostat => "thermostat",
            Task::Alarms => "alarms",
            Task::ReliefPipe { .. } => "relief-pipe",
            Task::Start { .. } => "start",
            Task::ResetControl(_) => "reset-control",
            Task::FirstHeat { .. } => "first-heat",
            Task::Balance { .. } => "balance",
            Task::Measure => "measure",
            Task::HandOver => "hand-over",
        }
    }

    pub const fn phase(&self) -> Phase {
        match self {
            Task::CheckOldHouse | Task::ShutDown | Task::Protect | Task::Bore { .. } => {
                Phase::Prepare
            }
            Task::Brackets { .. } => Phase::Enclosures,
            Task::DryFit(_) => Phase::DryFit,
            Task::LeaveRoom { .. } | Task::PipeMoves { .. } => Phase::Movement,
            Task::ReadyForFire | Task::Solder { .. } | Task::WatchFire => Phase::Soldering,
            Task::Doorways { .. } => Phase::Doorways,
            Task::OxygenBarrier | Task::Transitions { .. } | Task::PlasticMoves { .. } => {
                Phase::Plastic
            }
            Task::PressureTest { .. } | Task::Insulate => Phase::Test,
            Task::Flush
            | Task::TankAir { .. }
            | Task::Glycol { .. }
            | Task::Fill { .. }
            | Task::Purge { .. } => Phase::Fill,
            Task::Wire { .. } | Task::Thermostat => Phase::Electrical,
            Task::Alarms | Task::ReliefPipe { .. } | Task::Start { .. } | Task::ResetControl(_) => {
                Phase::Boiler
            }
            Task::FirstHeat { .. } | Task::Balance { .. } | Task::Measure | Task::HandOver => {
                Phase::HandOver
            }
        }
    }

    /// What to heed, where something can hurt.
    pub const fn danger(&self) -> Option<Danger> {
        Some(match self {
            Task::CheckOldHouse => Danger::OldHouse,
            Task::ShutDown | Task::FirstHeat { .. } => Danger::Scald,
            Task::Bore { .. } => Danger::Structure,
            Task::ReadyForFire => Danger::Fire,
            Task::PressureTest { .. } => Danger::Pressure,
            Task::Insulate => Danger::Freezing,
            Task::Fill { .. } => Danger::DrinkingWater,
            Task::Wire { .. } => Danger::Mains,
            Task::ReliefPipe { .. } => Danger::Relief,
            Task::Start { .. } => Danger::Gas,
            _ => return None,
        })
    }
}
