//! The working of an unheated space's temperature.
//!
//! The balance `sum G_i (T_i - T) = Q_swing` is written from outdoors on, so that it reads alike in
//! any unit: at the outdoor temperature so much heat would come in, and for each degree above it so
//! much goes out.

use super::{Formula, Found, Steps};
use crate::building::{Path, PathLoss, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::Temperature;

pub(super) fn temperature(steps: &mut Steps, job: &Job, design: &Design, id: RoomId) -> Found {
    let space = job.house.spaces.iter().find(|space| space.id == id)?;
    let balance = design.spaces.iter().find(|balance| balance.space == id)?;
    if space.temperature.is_some() {
        return None;
    }
    let outdoors = job.house.site.outdoors;
    let mut around: Vec<Temperature> = Vec::new();
    for path in &balance.paths {
        if says(path, outdoors) && path.beyond != outdoors && !around.contains(&path.beyond) {
            around.push(path.beyond);
        }
    }
    let mut heat = Vec::new();
    for there in around {
        for path in &balance.paths {
            if says(path, outdoors) && path.beyond == there {
                steps.part("G_i", path.conductance.si());
            }
        }
        let conductance = steps.sum("G");
        heat.push(steps.add(Formula::HeatIn, &[conductance, there.si(), outdoors.si()], "Q_in"));
    }
    for heat in heat {
        steps.part("Q_in", heat);
    }
    for path in &balance.paths {
        if matches!(path.path, Path::GroundSwing(_)) {
            steps.part("Q_swing", -path.loss.si());
        }
    }
    let heat = steps.sum("Q");
    for path in &balance.paths {
        if says(path, outdoors) {
            steps.part("G_i", path.conductance.si());
        }
    }
    let all = steps.sum("G");
    // A space without any surface or air is as cold as outdoors.
    if all <= 0.0 {
        return None;
    }
    let numbers = [outdoors.si(), heat, all];
    steps.give(Formula::SpaceTemperature, &numbers, "T", balance.temperature.si())
}

/// Whether a path has a say: what is as warm as the space has none, nor what the balance takes as
/// given.
fn says(path: &PathLoss, outdoors: Temperature) -> bool {
    !matches!(path.path, Path::GroundSwing(_))
        && (path.inside != path.beyond || path.beyond == outdoors)
        && path.conductance.si() > 0.0
}
