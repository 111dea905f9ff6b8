//! The heating plant: as typed, as calculated with, and what a blank takes from the rest of the job.

use super::draft::Draft;
use super::entries::Entries;
use super::field::{Field, PlantField};
use super::resolve::resolve;
use crate::building::Level;
use crate::fluid::Fluid;
use crate::named::names;
use crate::plant::boiler::IndirectTank;
use crate::plant::expansion::Metal;
use crate::plant::fill::{USUAL_AT_TOP, fill_pressure};
use crate::quantity::{Length, Power, Pressure, Temperature, TemperatureDifference, Unit, Volume};
use crate::stored::stored;

/// A job's plant with every value valid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plant {
    pub boiler: BoilerKind,
    /// None while it is not known.
    pub output: Option<Power>,
    /// The least that the burner gives.
    pub least_output: Option<Power>,
    pub boiler_volume: Volume,
    /// Between the temperatures at which the burner starts and stops.
    pub differential: TemperatureDifference,
    /// The coolest return that a boiler which must not condense takes.
    pub least_return: Temperature,
    pub tank: IndirectTank,
    pub metal: Metal,
    pub valve: ValveKind,
    /// Of the highest water above the gauge, beside which the expansion tank stands.
    pub top_height: Length,
    /// Cold, at the gauge.
    pub fill: Pressure,
    pub relief: Pressure,
    /// A buffer, the coil of an indirect tank, whatever else is filled.
    pub other_volume: Volume,
    /// Of the liquid when filled.
    pub cold: Temperature,
    /// Outdoors, from where on the house needs no heat.
    pub balance: Temperature,
}

/// Whether flue gas may condense in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BoilerKind {
    #[default]
    NonCondensing,
    Condensing,
}

names!(BoilerKind {
    NonCondensing = "non-condensing",
    Condensing = "condensing",
});

/// An indirect tank of tap water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TankHeating {
    #[default]
    None,
    /// Heated while the house is.
    AtOnce,
    /// The house waits meanwhile.
    Priority,
}

names!(TankHeating {
    None = "none",
    AtOnce = "at-once",
    Priority = "priority",
});

/// What drives the zone valves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ValveKind {
    #[default]
    Motor,
    HeatedElement,
}

names!(ValveKind {
    Motor = "motor",
    HeatedElement = "heated-element",
});

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Antifreeze {
    #[default]
    None,
    PropyleneGlycol,
}

names!(Antifreeze {
    None = "none",
    PropyleneGlycol = "propylene-glycol",
});

/// The plant as typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PlantDraft {
    pub boiler: BoilerKind,
    pub tank: TankHeating,
    pub metal: Metal,
    pub valve: ValveKind,
    pub antifreeze: Antifreeze,
    pub entries: Entries<PlantField>,
}

stored!(PlantDraft {
    boiler: default,
    tank: default,
    metal: default,
    valve: default,
    antifreeze: default,
    entries: default,
});

/// What a blank takes; nothing where it is then not known.
pub(super) fn follow_plant(draft: &Draft, field: PlantField) -> Option<f64> {
    let value = |field| resolve(draft, Field::Plant(field)).si();
    match field {
        // One that does not modulate.
        PlantField::LeastOutput => value(PlantField::Output),
        // Judgement: cast iron, and a small heat exchanger.
        PlantField::BoilerVolume => Some(Unit::LiquidGallon.to_si(match draft.plant.boiler {
            BoilerKind::NonCondensing => 10.0,
            BoilerKind::Condensing => 2.0,
        })),
        PlantField::TopHeight => Some(usual_height_m(draft)),
        PlantField::Fill => {
            let cold = Temperature::from_si(value(PlantField::ColdFill)?);
            let height = Length::from_si(value(PlantField::TopHeight)?);
            Some(fill_pressure(fluid(draft)?, cold, height, USUAL_AT_TOP).si())
        }
        _ => None,
    }
}

/// Judgement: the boiler stands in a basement, and each storey above it is 9 ft high. Beside the
/// boiler itself the pipes still go up to the joists.
fn usual_height_m(draft: &Draft) -> f64 {
    let top = draft.rooms.iter().map(|room| room.level).max().unwrap_or_default();
    Unit::Foot.to_si(match top {
        Level::Basement => 5.0,
        Level::First => 9.0,
        Level::Second => 18.0,
        Level::Third => 27.0,
    })
}

/// What the loop is filled with; none while its share of glycol cannot be read.
pub(super) fn fluid(draft: &Draft) -> Option<Fluid> {
    match draft.plant.antifreeze {
        Antifreeze::None => Some(Fluid::Water),
        Antifreeze::PropyleneGlycol => {
            let share = resolve(draft, Field::Plant(PlantField::GlycolShare)).si()?;
            Some(Fluid::PropyleneGlycol { share })
        }
    }
}
