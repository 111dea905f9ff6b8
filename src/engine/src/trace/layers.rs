//! The working of a U from layers.

use super::{Formula, Step, Steps, Term, number, term};
use crate::building::assembly::{Build, Layer};
use crate::quantity::{Kind, Resistance};

/// The steps from the layers of an assembly to its U.
pub fn built_u(build: &Build) -> Vec<Step> {
    let layers = build.resistances();
    let (inside, outside) = build.position.films();
    let films = [term("R_si", inside), term("R_se", outside)];
    let mut steps = Steps::default();
    let along = |steps: &mut Steps, pick: &mut dyn FnMut(&mut Steps, &Layer) -> Term, symbol| {
        let [first, last] = films;
        let mut terms = vec![first];
        terms.extend(layers.iter().map(|layer| pick(steps, layer)));
        terms.push(last);
        steps.sum(&terms, symbol)
    };
    let framed = layers.iter().any(|layer| matches!(layer, Layer::Framed { .. }));
    let share = number("f_wood", build.framing);
    let beside = |steps: &mut Steps, cavity, wood, symbol| {
        steps.add(Formula::SideBySide, &[share, cavity, wood], symbol, Kind::Resistance)
    };
    let resistance = match framed && build.framing > 0.0 {
        false => along(&mut steps, &mut |_, layer| cavity(layer, "R_i"), "R"),
        true => {
            let empty = along(&mut steps, &mut |_, layer| cavity(layer, "R_i"), "R_cav");
            let wood = along(&mut steps, &mut |_, layer| term("R_i", framing(layer)), "R_wood");
            let upper = beside(&mut steps, empty, wood, "R_upper");
            let lower = along(
                &mut steps,
                &mut |steps, layer| match *layer {
                    Layer::Even(r) => term("R_i", r),
                    Layer::Framed { framing, .. } => {
                        beside(steps, cavity(layer, "R_cav"), term("R_wood", framing), "R_i")
                    }
                },
                "R_lower",
            );
            steps.add(Formula::MeanOfLimits, &[upper, lower], "R", Kind::Resistance)
        }
    };
    steps.end(Formula::OfResistance, &[resistance], term("U", build.transmittance()))
}

/// What heat meets beside the framing.
fn cavity(layer: &Layer, symbol: &'static str) -> Term {
    match *layer {
        Layer::Even(r) => term(symbol, r),
        Layer::Framed { cavity, .. } => term(symbol, cavity),
    }
}

/// What it meets in the framing.
fn framing(layer: &Layer) -> Resistance {
    match *layer {
        Layer::Even(r) => r,
        Layer::Framed { framing, .. } => framing,
    }
}
