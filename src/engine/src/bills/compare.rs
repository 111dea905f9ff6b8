//! The calculated house against that of the bills.

use super::Fit;
use crate::quantity::LossCoefficient;
use serde::{Deserialize, Serialize};

/// Both coefficients, and whether they agree.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Compared {
    #[serde(rename = "calculated_w_per_k")]
    pub calculated: LossCoefficient,
    #[serde(rename = "from_bills_w_per_k")]
    pub from_bills: LossCoefficient,
    /// That of the bills over the calculated one.
    pub ratio: f64,
    /// They agree if the ratio is within this of one, either way.
    pub band: f64,
    pub verdict: Verdict,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    Agrees,
    /// The house burns less than its calculated loss would take.
    BillsLower,
    BillsHigher,
}

/// What a careful calculation of a house and a guessed efficiency leave open: judgement.
const BAND: f64 = 0.2;

/// What an assumed balance temperature, or no other use where there may be some, adds: judgement.
const ASSUMED: f64 = 0.15;

/// `None` unless the calculated coefficient is above zero.
pub fn compare(calculated: LossCoefficient, fit: &Fit) -> Option<Compared> {
    if !(calculated.si() > 0.0 && calculated.is_finite()) {
        return None;
    }
    let ratio = fit.coefficient / calculated;
    let assumed = |fitted: bool| if fitted { 0.0 } else { ASSUMED };
    let scatter = fit.coefficient_error.map_or(0.0, |error| 2.0 * (error / fit.coefficient));
    let parts = [BAND, assumed(fit.fitted.balance()), assumed(fit.fitted.other_use()), scatter];
    let band = parts.iter().map(|part| part * part).sum::<f64>().sqrt();
    // The same factor either way: half as much is as far off as twice.
    let verdict = if ratio > 1.0 + band {
        Verdict::BillsHigher
    } else if ratio < 1.0 / (1.0 + band) {
        Verdict::BillsLower
    } else {
        Verdict::Agrees
    };
    Some(Compared { calculated, from_bills: fit.coefficient, ratio, band, verdict })
}
