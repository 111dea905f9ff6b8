//! What the return does to the boiler: water in the flue gas that should not condense, or should.

use crate::quantity::{Temperature, TemperatureDifference};
use serde::Serialize;

/// What the boiler asks of its return.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Boiler {
    /// Flue gas that condenses eats its metal.
    NonCondensing { least: Temperature },
    /// It saves fuel by condensing.
    Condensing { dew_point: Temperature },
}

/// 130 °F for gas: common practice, no source.
pub const LEAST_RETURN: Temperature = Temperature::from_si(327.594);

/// Of natural gas burnt with usual excess air, 57 °C or 135 °F: from memory. Oil's is near 47 °C.
pub const GAS_DEW_POINT: Temperature = Temperature::from_si(330.15);

/// What the supply does over the year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supply {
    Constant,
    /// Cooler on mild days, or started from cold each time.
    Varying,
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    Protected {
        #[serde(rename = "margin_k")]
        margin: TemperatureDifference,
    },
    Cold {
        #[serde(rename = "below_k")]
        below: TemperatureDifference,
        advice: Advice,
    },
    Condenses {
        #[serde(rename = "below_k")]
        below: TemperatureDifference,
    },
    DoesNotCondense {
        #[serde(rename = "above_k")]
        above: TemperatureDifference,
    },
}

/// How to warm the return.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Advice {
    /// A balanced bypass: it mixes the same share at all times.
    Bypass(Mixing),
    /// A valve that mixes by the temperature at the boiler's inlet.
    MixingValve(Mixing),
    /// The supply is no warmer than the limit: a hotter boiler, mixed down for the loop.
    HotterBoiler,
}

/// Supply water led back into the return.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Mixing {
    /// The share of the boiler's flow that comes back past the loop.
    pub supply_share: f64,
    /// The boiler's flow over the loop's.
    pub boiler_flow: f64,
}

/// At this share the boiler's flow is twice the loop's; what a bypass would have to pass beyond it is
/// better left to a valve: judgement.
const MOST_BYPASS: f64 = 0.5;

/// The return against what the boiler asks; `None` if a temperature is not finite, or the supply is
/// below the return.
pub fn judge(
    boiler: Boiler,
    supply: Temperature,
    back: Temperature,
    over_the_year: Supply,
) -> Option<Verdict> {
    if !(supply >= back && supply.is_finite() && back.is_finite()) {
        return None;
    }
    Some(match boiler {
        Boiler::NonCondensing { least } if back >= least => {
            Verdict::Protected { margin: back - least }
        }
        Boiler::NonCondensing { least } => Verdict::Cold {
            below: least - back,
            advice: match mixing(supply, back, least) {
                None => Advice::HotterBoiler,
                Some(mixing) if over_the_year == Supply::Constant => {
                    if mixing.supply_share <= MOST_BYPASS {
                        Advice::Bypass(mixing)
                    } else {
                        Advice::MixingValve(mixing)
                    }
                }
                Some(mixing) => Advice::MixingValve(mixing),
            },
        },
        Boiler::Condensing { dew_point } if back < dew_point => {
            Verdict::Condenses { below: dew_point - back }
        }
        Boiler::Condensing { dew_point } => Verdict::DoesNotCondense { above: back - dew_point },
    })
}

/// The share `x` of supply water that brings the return to `wanted`: `x T_s + (1 - x) T_r`, weighted by
/// flow, with one specific heat for both. `None` unless `wanted` lies from the return to below the
/// supply.
///
/// The loop's own flow goes round once, `x` goes through the boiler besides: its flow is `1/(1 - x)`
/// of the loop's.
pub fn mixing(supply: Temperature, back: Temperature, wanted: Temperature) -> Option<Mixing> {
    if !(wanted >= back && wanted < supply) {
        return None;
    }
    let supply_share = (wanted - back) / (supply - back);
    Some(Mixing { supply_share, boiler_flow: 1.0 / (1.0 - supply_share) })
}
