//! The working of an unheated space's temperature.
//!
//! The balance `sum G_i (T_i - T) = Q_swing` is written from outdoors on, so that it reads alike in
//! any unit: at the outdoor temperature so much heat would come in, and for each degree above it so
//! much goes out.

use super::{Formula, Part, Step, Steps};
use crate::building::{Path, PathLoss, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{LossCoefficient, Temperature};

pub(super) fn temperature(job: &Job, design: &Design, id: RoomId) -> Option<Vec<Step>> {
    let space = job.house.spaces.iter().find(|space| space.id == id)?;
    let balance = design.spaces.iter().find(|balance| balance.space == id)?;
    if space.temperature.is_some() {
        return None;
    }
    let outdoors = job.house.site.outdoors;
    // What is as warm as the space has no say.
    let says = |path: &&PathLoss| {
        !matches!(path.path, Path::GroundSwing(_))
            && (path.inside != path.beyond || path.beyond == outdoors)
            && path.conductance > LossCoefficient::ZERO
    };
    let paths: Vec<&PathLoss> = balance.paths.iter().filter(says).collect();
    let mut around: Vec<Temperature> = Vec::new();
    for path in &paths {
        if path.beyond != outdoors && !around.contains(&path.beyond) {
            around.push(path.beyond);
        }
    }
    let mut steps = Steps::default();
    let to = |steps: &mut Steps, which: &dyn Fn(Temperature) -> bool| {
        let paths = paths.iter().filter(|path| which(path.beyond));
        steps.sum(&mut paths.map(|path| ("G_i", path.conductance.si())), "G")
    };
    let mut heat: Vec<Part> = Vec::new();
    for there in around {
        let conductance = to(&mut steps, &|beyond| beyond == there);
        let numbers = [conductance, there.si(), outdoors.si()];
        heat.push(("Q_in", steps.add(Formula::HeatIn, &numbers, "Q_in")));
    }
    let swings = balance.paths.iter().filter(|path| matches!(path.path, Path::GroundSwing(_)));
    heat.extend(swings.map(|path| ("Q_swing", -path.loss.si())));
    let heat = steps.sum(&mut heat.into_iter(), "Q");
    let all = to(&mut steps, &|_| true);
    // A space without any surface or air is as cold as outdoors.
    if all <= 0.0 {
        return None;
    }
    let numbers = [outdoors.si(), heat, all];
    Some(steps.end(Formula::SpaceTemperature, &numbers, "T", balance.temperature.si()))
}
