//! The working of a U from layers.

use super::{Formula, Steps};
use crate::building::assembly::{Build, Layer};

pub(super) fn built(steps: &mut Steps, build: &Build) {
    let share = build.framing;
    let mut cavity = Vec::new();
    let mut wood = Vec::new();
    let mut framed = false;
    for layer in build.resistances() {
        let (beside, within) = match layer {
            Layer::Even(r) => (r, r),
            Layer::Framed { cavity, framing } => {
                framed = share > 0.0;
                (cavity, framing)
            }
        };
        cavity.push(beside.si());
        wood.push(within.si());
    }
    let resistance = match framed {
        false => along(steps, build, &cavity, "R"),
        true => {
            let beside = along(steps, build, &cavity, "R_cav");
            let within = along(steps, build, &wood, "R_wood");
            let upper = steps.add(Formula::SideBySide, &[share, beside, within], "R_upper");
            for (r, within) in cavity.iter_mut().zip(wood) {
                if *r != within {
                    *r = steps.add(Formula::SideBySide, &[share, *r, within], "R_i");
                }
            }
            let lower = along(steps, build, &cavity, "R_lower");
            steps.add(Formula::MeanOfLimits, &[upper, lower], "R")
        }
    };
    steps.give(Formula::OfResistance, &[resistance], "U", build.transmittance().si());
}

/// Layers one behind the other, between their films.
fn along(steps: &mut Steps, build: &Build, layers: &[f64], symbol: &'static str) -> f64 {
    let (inside, outside) = build.position.films();
    steps.part("R_si", inside.si());
    for layer in layers {
        steps.part("R_i", *layer);
    }
    steps.part("R_se", outside.si());
    steps.sum(symbol)
}
