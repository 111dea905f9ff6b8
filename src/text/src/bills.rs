//! What fuel bills say of a house.

use crate::value;
use finrun_engine::bills::{BillsError, Compared, Fit, Verdict};
use finrun_engine::quantity::{System, Value};

/// The house of the bills beside the calculated one, and what may lie between.
pub fn against_bills(fit: &Fit, compared: &Compared, system: System) -> String {
    let verdict = match compared.verdict {
        Verdict::Agrees => {
            "The two agree as well as a careful calculation and a guessed efficiency can."
        }
        Verdict::BillsLower => {
            "The house burns less than was calculated: it may be tighter, or its walls and ceiling \
             better insulated than entered; or rooms were kept cooler, or closed."
        }
        Verdict::BillsHigher => {
            "The house burns more than was calculated: it may be leakier, or insulated less than \
             entered; or the heating gives less out of its fuel, or windows stood open."
        }
    };
    let ratio = (compared.ratio - 1.0).abs();
    let apart = value(Value::share(ratio), system);
    let which = if compared.ratio < 1.0 { "less" } else { "more" };
    let balance = match fit.fitted.balance() {
        true => format!("heated from {} outdoors on down", value(fit.balance, system)),
        false => format!("taken as heated from {} outdoors on down", value(fit.balance, system)),
    };
    let other = match fit.fitted.other_use() {
        true => format!(", {} for other things", value(fit.other_use, system)),
        false => String::new(),
    };
    format!(
        "By its bills the house loses {}, {apart} {which} than the calculated {}: {balance}{other}. \
         {verdict}",
        value(compared.from_bills, system),
        value(compared.calculated, system)
    )
}

/// Why the bills as a whole tell nothing.
pub fn bills_tell_nothing(error: BillsError) -> &'static str {
    match error {
        BillsError::NoHeating => {
            "These months are too mild to tell the house's loss. Add a bill of the cold season."
        }
        BillsError::NotWithTheCold => {
            "What was burnt does not grow with the cold. Look for bills in the wrong order, or of \
             another fuel."
        }
        _ => "The bills cannot be used as they stand. Correct what is marked.",
    }
}
