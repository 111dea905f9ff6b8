//! A U-value from layers: ISO 6946, combined method.

mod build;

pub use build::{Build, BuildLayer, Fill, Framing, Place, Position};

use crate::quantity::{Resistance, Transmittance};

/// Which way the heat goes, for the inside film.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeatFlow {
    Horizontal,
    Upward,
    Downward,
}

impl HeatFlow {
    /// Inside surface resistance (ISO 6946, table of conventional surface resistances).
    pub fn inside_film(self) -> Resistance {
        Resistance::from_si(match self {
            HeatFlow::Horizontal => 0.13,
            HeatFlow::Upward => 0.10,
            HeatFlow::Downward => 0.17,
        })
    }
}

/// Outside surface resistance (ISO 6946).
pub const OUTSIDE_FILM: Resistance = Resistance::from_si(0.04);

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Layer {
    /// The same everywhere.
    Even(Resistance),
    /// Interrupted by framing: the cavity's and the wood's resistance over the same depth.
    Framed { cavity: Resistance, framing: Resistance },
}

/// U of `layers` between two films, with `framing` the share of area (0 to 1) that is framing.
///
/// `R = (R_upper + R_lower) / 2`: the upper limit takes the cavity and the framing as two paths
/// side by side, the lower limit takes every plane as isothermal.
pub fn combined(
    layers: &[Layer],
    framing: f64,
    inside_film: Resistance,
    outside_film: Resistance,
) -> Transmittance {
    let films = inside_film + outside_film;
    let along = |pick: fn(&Layer) -> Resistance| films + layers.iter().map(pick).sum();
    let cavity_path = along(|layer| match *layer {
        Layer::Even(r) => r,
        Layer::Framed { cavity, .. } => cavity,
    });
    let framing_path = along(|layer| match *layer {
        Layer::Even(r) => r,
        Layer::Framed { framing, .. } => framing,
    });
    // A path without area passes no heat, even if it resisted none.
    let path = |r: Resistance, share: f64| match share > 0.0 {
        true => r.transmittance() * share,
        false => Transmittance::ZERO,
    };
    let side_by_side = |cavity: Resistance, wood: Resistance| {
        (path(cavity, 1.0 - framing) + path(wood, framing)).resistance()
    };
    let upper = side_by_side(cavity_path, framing_path);
    let lower = films
        + layers
            .iter()
            .map(|layer| match *layer {
                Layer::Even(r) => r,
                Layer::Framed { cavity, framing } => side_by_side(cavity, framing),
            })
            .sum();
    ((upper + lower) / 2.0).transmittance()
}
