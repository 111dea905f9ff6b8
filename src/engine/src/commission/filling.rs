//! Pressures, cold, and the weather of the day.

use crate::design::Design;
use crate::job::{Job, Measured};
use crate::plant::fill::LEAST_AT_TOP;
use crate::quantity::{Pressure, Temperature};

/// What a gauge of such a system may be off, 1 psi: judgement.
const GAUGE: Pressure = Pressure::from_si(6_894.757);

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FillingFinding {
    FillFits {
        measured: Pressure,
    },
    /// Less than planned; `at_top` is what is left at the highest place.
    FillLow {
        measured: Pressure,
        planned: Pressure,
        at_top: Pressure,
        air_comes_in: AtTop,
    },
    FillHigh {
        measured: Pressure,
        planned: Pressure,
        relief: Pressure,
    },
    ChargeFits {
        measured: Pressure,
    },
    /// The tank takes in water before the system is warm, and has less room for what it is for.
    ChargeLow {
        measured: Pressure,
        planned: Pressure,
    },
    /// The tank holds no water to give back when the system cools.
    ChargeHigh {
        measured: Pressure,
        planned: Pressure,
    },
    /// Rooms may stay cool on a day colder than the design day.
    ColderThanPlanned {
        measured: Temperature,
        planned: Temperature,
    },
}

/// Whether enough pressure is left at the top to keep air out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AtTop {
    Enough,
    TooLittle,
}

pub(super) fn filling(job: &Job, design: &Design, measured: &Measured) -> Vec<FillingFinding> {
    let mut found = Vec::new();
    let planned = job.plant.fill;
    if let Some(measured) = measured.fill {
        let off = measured - planned;
        found.push(if off.abs() <= GAUGE {
            FillingFinding::FillFits { measured }
        } else if off > Pressure::ZERO {
            FillingFinding::FillHigh { measured, planned, relief: job.plant.relief }
        } else {
            // What the plan leaves there, less what is missing below.
            let at_top = design.plant.as_ref().map_or(Pressure::ZERO, |p| p.filling.at_top) + off;
            let air_comes_in = if at_top < LEAST_AT_TOP { AtTop::TooLittle } else { AtTop::Enough };
            FillingFinding::FillLow { measured, planned, at_top, air_comes_in }
        });
    }
    let tank = design.plant.as_ref().and_then(|plant| plant.tank);
    if let (Some(measured), Some(tank)) = (measured.pre_charge, tank) {
        let planned = tank.pre_charge;
        let off = measured - planned;
        found.push(if off.abs() <= GAUGE {
            FillingFinding::ChargeFits { measured }
        } else if off > Pressure::ZERO {
            FillingFinding::ChargeHigh { measured, planned }
        } else {
            FillingFinding::ChargeLow { measured, planned }
        });
    }
    let planned = job.house.site.outdoors;
    if let Some(measured) = measured.outdoors
        && measured < planned
    {
        found.push(FillingFinding::ColderThanPlanned { measured, planned });
    }
    found
}
