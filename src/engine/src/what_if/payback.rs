//! Simple payback: what the changes cost over what they save of fuel in a year.

use crate::quantity::Money;
use serde::Serialize;

/// In how many years fuel saved pays for the changes, by division alone: no interest, no change of the
/// fuel's price, no upkeep, and nothing of what the heating itself then costs less or more.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Payback {
    Years(f64),
    /// As much fuel as before, or more.
    NothingSaved,
    /// A change that is on has no cost.
    CostMissing,
    /// What a unit of fuel costs is not known.
    PriceMissing,
    /// Without a year there is no fuel.
    NoYear,
}

/// Of this cost and this saving in a year.
pub fn payback(cost: Money, saved_a_year: Money) -> Payback {
    let years = cost.si() / saved_a_year.si();
    match saved_a_year > Money::ZERO && years.is_finite() {
        true => Payback::Years(years),
        false => Payback::NothingSaved,
    }
}
