//! The working of a U from layers.

use super::{Formula, Step, Steps};
use crate::building::assembly::{Build, Layer};

/// The steps from the layers of an assembly to its U.
pub fn built_u(build: &Build) -> Vec<Step> {
    let layers = build.resistances();
    let (inside, outside) = build.position.films();
    let films = [("R_si", inside.si()), ("R_se", outside.si())];
    let mut steps = Steps::default();
    let along = |steps: &mut Steps, layers: &[f64], symbol| {
        let layers = layers.iter().map(|layer| ("R_i", *layer));
        steps.sum(&mut films.into_iter().chain(layers), symbol)
    };
    let share = build.framing;
    let mut cavity = Vec::new();
    let mut wood = Vec::new();
    let mut framed = false;
    for layer in layers {
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
        false => along(&mut steps, &cavity, "R"),
        true => {
            let paths = [along(&mut steps, &cavity, "R_cav"), along(&mut steps, &wood, "R_wood")];
            let [beside, within] = paths;
            let upper = steps.add(Formula::SideBySide, &[share, beside, within], "R_upper");
            let mut mixed = Vec::new();
            for (&beside, &within) in cavity.iter().zip(&wood) {
                mixed.push(match beside == within {
                    true => beside,
                    false => steps.add(Formula::SideBySide, &[share, beside, within], "R_i"),
                });
            }
            let lower = along(&mut steps, &mixed, "R_lower");
            steps.add(Formula::MeanOfLimits, &[upper, lower], "R")
        }
    };
    steps.end(Formula::OfResistance, &[resistance], "U", build.transmittance().si())
}
