//! The Darcy friction factor.

use crate::numeric::ln;
use serde::{Deserialize, Serialize};
use std::f64::consts::LN_10;

/// Up to this Reynolds number the flow is taken as laminar: convention.
pub const LAMINAR_END: f64 = 2000.0;
/// From this Reynolds number on the flow is taken as turbulent: convention.
pub const TURBULENT_START: f64 = 4000.0;

/// How the water moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Regime {
    Still,
    Laminar,
    /// Between the two, where nature decides; the value there is a convention.
    Transition,
    Turbulent,
}

/// A friction factor with the regime that it belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Friction {
    /// Darcy's (four times Fanning's); zero for still water, whose true value has no bound.
    pub factor: f64,
    pub regime: Regime,
}

/// The Darcy friction factor at a Reynolds number and a roughness given as a share of the diameter.
///
/// `64/Re` (Hagen and Poiseuille) to 2000, Colebrook (1939) from 4000. Between them `f` is linear
/// in Re from 0.032 to Colebrook's value at 4000: continuous, and with `Re² f` strictly increasing,
/// so that a pressure drop belongs to one flow only and a solver cannot swing between two.
///
/// ```
/// use finrun_engine::pipe::{Regime, friction};
/// assert_eq!(friction(1000.0, 0.0).factor, 0.064);
/// assert_eq!(friction(0.0, 0.0).regime, Regime::Still);
/// ```
pub fn friction(reynolds: f64, relative_roughness: f64) -> Friction {
    if reynolds == 0.0 {
        return Friction { factor: 0.0, regime: Regime::Still };
    }
    if reynolds <= LAMINAR_END {
        return Friction { factor: 64.0 / reynolds, regime: Regime::Laminar };
    }
    if reynolds < TURBULENT_START {
        let low = 64.0 / LAMINAR_END;
        let high = colebrook(TURBULENT_START, relative_roughness);
        let share = (reynolds - LAMINAR_END) / (TURBULENT_START - LAMINAR_END);
        return Friction { factor: low + (high - low) * share, regime: Regime::Transition };
    }
    Friction { factor: colebrook(reynolds, relative_roughness), regime: Regime::Turbulent }
}

/// Solves `1/sqrt f = -2 log10(e/3.7 + 2.51/(Re sqrt f))` for `f` to machine precision.
///
/// Newton on `x = 1/sqrt f` from 7, the middle of what occurs, with two more terms of the root's
/// series in value over slope: a step leaves about a ten thousandth of the error's fourth power.
/// Two or three are enough; the bound only guards against NaN.
fn colebrook(reynolds: f64, relative_roughness: f64) -> f64 {
    let (rough, smooth) = (relative_roughness / 3.7, 2.51 / reynolds);
    let c = 2.0 / LN_10;
    let mut x = 7.0;
    for _ in 0..30 {
        let inside = rough + smooth * x;
        let by_x = smooth / inside;
        let slope = 1.0 + c * by_x;
        let newton = (x + c * ln(inside)) / slope;
        let bend = 0.5 * c * by_x * by_x / slope;
        let step = newton * (1.0 - bend * newton * (1.0 - newton * (2.0 * bend - by_x / 1.5)));
        x -= step;
        if step.abs() < 1e-3 {
            break;
        }
    }
    1.0 / (x * x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric::log10;

    #[test]
    fn colebrook_satisfies_its_equation() {
        for roughness in [0.0, 1e-5, 7e-4, 0.05, 0.1] {
            for reynolds in [4000.0, 4100.0, 4500.0, 1e4, 3e5, 1e6, 1e8, 1e12] {
                let f = colebrook(reynolds, roughness);
                let right = -2.0 * log10(roughness / 3.7 + 2.51 / (reynolds * f.sqrt()));
                assert!((1.0 / f.sqrt() - right).abs() < 1e-14, "{reynolds} {roughness}");
            }
        }
    }

    #[test]
    fn the_bridge_meets_both_ends() {
        let below = friction(LAMINAR_END, 1e-4).factor;
        let above = friction(LAMINAR_END * (1.0 + 1e-12), 1e-4).factor;
        assert!((below - above).abs() < 1e-12);
        let below = friction(TURBULENT_START * (1.0 - 1e-12), 1e-4).factor;
        let above = friction(TURBULENT_START, 1e-4).factor;
        assert!((below - above).abs() < 1e-12);
    }

    #[test]
    fn regimes_begin_where_they_should() {
        let regime = |reynolds| friction(reynolds, 0.0).regime;
        assert_eq!(regime(2000.0), Regime::Laminar);
        assert_eq!(regime(2000.1), Regime::Transition);
        assert_eq!(regime(4000.0), Regime::Turbulent);
    }

    #[test]
    fn not_a_number_stays_not_a_number() {
        assert!(friction(f64::NAN, 0.0).factor.is_nan());
    }
}
