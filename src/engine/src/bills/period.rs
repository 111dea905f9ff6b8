//! Bills checked and brought to their weather.

use super::{Bill, BillsError, Fuel};
use crate::climate::{Season, published_base};
use crate::numeric::root;
use crate::quantity::{Temperature, TemperatureDifference};

/// A bill that is sound.
#[derive(Debug, Clone, Copy)]
pub(super) struct Period {
    bill: Bill,
    pub(super) days: f64,
    /// Mean fuel, as the heat in it.
    pub(super) use_w: f64,
    /// The period's weather above that of the typical year.
    warmer: TemperatureDifference,
}

impl Period {
    /// Mean excess of the balance temperature over the outdoors, where that is colder.
    pub(super) fn cold_k(&self, season: &Season, balance: Temperature) -> f64 {
        // A warmer season is the same as a lower base.
        season.degree_days_k(self.bill.from, self.bill.to, balance - self.warmer) / self.days
    }
}

/// Shorter periods are weather only, longer ones no bill: judgement.
const DAYS: std::ops::RangeInclusive<i32> = 7..=400;

const SECONDS_A_DAY: f64 = 86_400.0;

pub(super) fn read_periods(
    bills: &[Bill],
    season: &Season,
    fuel: Fuel,
) -> Result<Vec<Period>, BillsError> {
    if bills.is_empty() {
        return Err(BillsError::NoBills);
    }
    for (index, bill) in bills.iter().enumerate() {
        check(bill, index)?;
    }
    for (second, bill) in bills.iter().enumerate() {
        let meets = |other: &Bill| other.from < bill.to && bill.from < other.to;
        if let Some(first) = bills[..second].iter().position(meets) {
            return Err(BillsError::Overlap { first, second });
        }
    }
    let mut out = Vec::new();
    for (index, &bill) in bills.iter().enumerate() {
        let days = f64::from(bill.to.days_after(bill.from));
        out.push(Period {
            bill,
            days,
            use_w: bill.amount * fuel.heat_content_j() / (days * SECONDS_A_DAY),
            warmer: warmer(&bill, season).ok_or(BillsError::UnlikelyDegreeDays { index })?,
        });
    }
    Ok(out)
}

fn check(bill: &Bill, index: usize) -> Result<(), BillsError> {
    let days = bill.to.days_after(bill.from);
    if days <= 0 {
        return Err(BillsError::Reversed { index });
    }
    if days < *DAYS.start() {
        return Err(BillsError::TooShort { index });
    }
    if days > *DAYS.end() {
        return Err(BillsError::TooLong { index });
    }
    // A summer without any fuel is sound.
    if !(bill.amount >= 0.0 && bill.amount < 1e9) {
        return Err(BillsError::Amount { index });
    }
    match bill.degree_days_65_k {
        Some(typed) if !(typed >= 0.0 && typed.is_finite()) => {
            Err(BillsError::DegreeDays { index })
        }
        _ => Ok(()),
    }
}

/// No month was ever so far from the usual (judgement; the farthest known are some 10 K).
const MOST_K: f64 = 15.0;

/// So few K·days are none.
const NONE_K: f64 = 1.0;

/// How much warmer than the typical year the period was by its degree-days.
///
/// Shifting the temperatures, and not scaling the degree-days at every base by one ratio, keeps to
/// what weather does: in a cold month those at 57 °F grow by as many as those at 65 °F, which is a
/// larger share.
fn warmer(bill: &Bill, season: &Season) -> Option<TemperatureDifference> {
    let Some(typed) = bill.degree_days_65_k else { return Some(TemperatureDifference::ZERO) };
    let over = |warmer_k: f64| {
        let base = published_base() - TemperatureDifference::from_si(warmer_k);
        season.degree_days_k(bill.from, bill.to, base) - typed
    };
    let at_most = over(MOST_K);
    let warmer_k = if at_most >= 0.0 {
        // A summer's degree-days never fall to zero quite.
        if at_most <= NONE_K { Some(MOST_K) } else { None }
    } else {
        root(over, -MOST_K, MOST_K, 1e-6)
    };
    warmer_k.map(TemperatureDifference::from_si)
}
