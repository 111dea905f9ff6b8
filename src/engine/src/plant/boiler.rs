//! How large a boiler has to be, whether one is too large, and how it runs against the smallest zone.

use crate::fluid::Fluid;
use crate::quantity::{Power, Temperature, TemperatureDifference, Volume};
use serde::Serialize;

/// What a boiler must give on the design day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Duty {
    /// Sum of what the rooms lose.
    pub loads: Power,
    /// From pipes outside the heated space.
    pub pipe_loss: Power,
    pub tank: IndirectTank,
}

/// A tank of tap water that the boiler heats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum IndirectTank {
    None,
    /// Heated while the house is.
    AtOnce(Power),
    /// The house waits meanwhile, so the larger of the two counts.
    Priority(Power),
}

/// `Q = loads + pipe loss + tank`, with nothing hidden on top.
pub fn needed_output(duty: &Duty) -> Power {
    let house = duty.loads + duty.pipe_loss;
    match duty.tank {
        IndirectTank::None => house,
        IndirectTank::AtOnce(tank) => house + tank,
        IndirectTank::Priority(tank) => house.max(tank),
    }
}

/// A boiler against what is needed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Judged {
    /// Of the boiler's output to the one needed.
    pub ratio: f64,
    pub verdict: Size,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum Size {
    /// Below what is needed.
    Short,
    Fits,
    /// Above [`OVERSIZED`] times what is needed.
    Oversized,
}

/// A usual limit for fossil fuel (ACCA Manual S), from memory.
pub const OVERSIZED: f64 = 1.4;

/// `None` unless both outputs are above zero and finite.
pub fn judge(output: Power, needed: Power) -> Option<Judged> {
    let sound = |power: Power| power > Power::ZERO && power.is_finite();
    if !(sound(output) && sound(needed)) {
        return None;
    }
    let ratio = output / needed;
    let verdict = if ratio < 1.0 {
        Size::Short
    } else if ratio > OVERSIZED {
        Size::Oversized
    } else {
        Size::Fits
    };
    Some(Judged { ratio, verdict })
}

/// A boiler that serves one small load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartLoad {
    /// The least that the burner gives; all of it, where it does not modulate.
    pub least_output: Power,
    /// What the smallest zone takes.
    pub load: Power,
    /// Of what circulates then: boiler, that zone, buffer tank.
    pub volume: Volume,
    pub fluid: Fluid,
    /// Between the temperatures at which the control starts and stops the burner.
    pub differential: TemperatureDifference,
    /// Midway between them.
    pub water: Temperature,
}

/// How the burner runs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Running {
    /// The load takes all that the burner gives at its least.
    Throughout,
    Cycling(Cycle),
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Cycle {
    pub on_s: f64,
    pub off_s: f64,
    pub per_hour: f64,
    pub verdict: CycleVerdict,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum CycleVerdict {
    Long,
    /// The burner stops before [`LEAST_ON_S`].
    Short,
}

/// A burner should run at least ten minutes at a time: common practice, no source.
pub const LEAST_ON_S: f64 = 600.0;

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum PartLoadError {
    /// The burner's output is not above zero.
    Output,
    /// The load is not above zero: the burner would never start again.
    Load,
    /// Nothing to warm, or no differential to warm it by.
    Store,
}

/// On and off times by the energy balance of the water that circulates: with `C = rho c_p V`,
/// `t_on = C dT/(P - Q)` and `t_off = C dT/Q`.
///
/// Assumes all of that water mixed and warmed through the whole differential, a load that stays the
/// same, and metal that stores nothing: 20 kg of cast iron store as much as 2 kg of water, so a heavy
/// boiler does better. Against that, water that is warmed before the rest comes round stops the
/// burner sooner.
pub fn part_load(plant: &PartLoad) -> Result<Running, PartLoadError> {
    let stored_j = stored_j(plant)?;
    let surplus = plant.least_output - plant.load;
    if surplus <= Power::ZERO {
        return Ok(Running::Throughout);
    }
    let on_s = stored_j / surplus.si();
    let off_s = stored_j / plant.load.si();
    let verdict = if on_s < LEAST_ON_S { CycleVerdict::Short } else { CycleVerdict::Long };
    Ok(Running::Cycling(Cycle { on_s, off_s, per_hour: 3600.0 / (on_s + off_s), verdict }))
}

/// The volume with which the burner would run for `on_s` at a time: `V = t_on (P - Q)/(rho c_p dT)`.
/// Zero where it runs throughout.
pub fn volume_for(plant: &PartLoad, on_s: f64) -> Result<Volume, PartLoadError> {
    let per_volume = stored_j(&PartLoad { volume: Volume::from_si(1.0), ..*plant })?;
    let surplus = (plant.least_output - plant.load).max(Power::ZERO);
    Ok(Volume::from_si(on_s * surplus.si() / per_volume))
}

/// Heat that the differential stores in the water.
fn stored_j(plant: &PartLoad) -> Result<f64, PartLoadError> {
    let PartLoad { least_output, load, volume, fluid, differential, water } = *plant;
    let positive = |value: f64| value > 0.0 && value.is_finite();
    if !positive(least_output.si()) {
        return Err(PartLoadError::Output);
    }
    if !positive(load.si()) {
        return Err(PartLoadError::Load);
    }
    let mass_kg = fluid.density(water).si() * volume.si();
    let stored_j = mass_kg * fluid.specific_heat(water).si() * differential.si();
    if positive(volume.si()) && positive(stored_j) {
        Ok(stored_j)
    } else {
        Err(PartLoadError::Store)
    }
}
