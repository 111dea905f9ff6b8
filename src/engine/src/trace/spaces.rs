//! The working of an unheated space's temperature.
//!
//! The balance `sum G_i (T_i - T) = Q_swing` is written from outdoors on, so that it reads alike in
//! any unit: at the outdoor temperature so much heat would come in, and for each degree above it so
//! much goes out.

use super::{Formula, Step, Steps, Term, of, term};
use crate::building::{Path, PathLoss, RoomId};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Kind, LossCoefficient, Temperature};

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
        let terms: Vec<Term> = paths.map(|path| term("G_i", path.conductance)).collect();
        match terms.is_empty() {
            true => term("G", LossCoefficient::ZERO),
            false => steps.sum(&terms, "G"),
        }
    };
    let mut heat: Vec<Term> = Vec::new();
    for there in around {
        let terms =
            [to(&mut steps, &|beyond| beyond == there), term("T_i", there), term("T_0", outdoors)];
        heat.push(steps.add(Formula::HeatIn, &terms, "Q_in", Kind::Power));
    }
    let swings = balance.paths.iter().filter(|path| matches!(path.path, Path::GroundSwing(_)));
    heat.extend(swings.map(|path| term("Q_swing", -path.loss)));
    let heat = match heat.is_empty() {
        true => of("Q", Kind::Power, 0.0),
        false => steps.sum(&heat, "Q"),
    };
    let all = to(&mut steps, &|_| true);
    // A space without any surface or air is as cold as outdoors.
    if all.value.si <= 0.0 {
        return None;
    }
    let terms = [term("T_0", outdoors), heat, all];
    Some(steps.end(Formula::SpaceTemperature, &terms, term("T", balance.temperature)))
}
