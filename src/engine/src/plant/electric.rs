//! The transformer for zone valves and relays. Apparent power, in volt-amperes, is not heat: it stays
//! a plain number.

use serde::Serialize;

/// What such a control circuit runs on.
pub const VOLTS: f64 = 24.0;

/// Coils or motors of one sort.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coils {
    pub count: u32,
    pub each: Draw,
}

/// As the label says it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Draw {
    VoltAmperes(f64),
    /// At [`VOLTS`].
    Amperes(f64),
}

impl Draw {
    fn volt_amperes(self) -> f64 {
        match self {
            Draw::VoltAmperes(value) => value,
            Draw::Amperes(amperes) => amperes * VOLTS,
        }
    }
}

/// Usual draws, for whoever has no label at hand: common practice, no source.
pub const ZONE_VALVE_WITH_MOTOR: Draw = Draw::Amperes(0.32);
pub const ZONE_VALVE_WITH_HEATED_ELEMENT: Draw = Draw::Amperes(0.9);
pub const RELAY: Draw = Draw::VoltAmperes(5.0);

/// Sizes in which transformers are sold, VA: common practice, no source. The last is also the most
/// that a class 2 circuit may have (NFPA 70, article 725, from memory).
pub const USUAL_VA: [f64; 5] = [20.0, 40.0, 50.0, 75.0, 100.0];

/// What feeds the coils when all of them are on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Transformers {
    pub load_va: f64,
    pub each_va: f64,
    /// More than one where no usual size is enough; the coils are then shared among them.
    pub count: u32,
}

/// The next larger transformer for all coils together, or as many of the largest as it takes. `None`
/// if a draw is below zero or not finite, or there are more coils than anyone has.
///
/// Several are counted as if the coils could be shared evenly: with few large coils one more may be
/// needed.
pub fn transformers(coils: &[Coils]) -> Option<Transformers> {
    let mut load_va = 0.0;
    for coil in coils {
        let each = coil.each.volt_amperes();
        if !(each >= 0.0 && each.is_finite()) {
            return None;
        }
        load_va += f64::from(coil.count) * each;
    }
    // So that three times 0.1 A is no more than 0.3 A.
    let enough = |size: f64| load_va <= size * (1.0 + 1e-9);
    if let Some(each_va) = USUAL_VA.into_iter().find(|&size| enough(size)) {
        return Some(Transformers { load_va, each_va, count: 1 });
    }
    let [.., each_va] = USUAL_VA;
    let count = (2..=MOST_TRANSFORMERS).find(|&count| enough(f64::from(count) * each_va))?;
    Some(Transformers { load_va, each_va, count })
}

const MOST_TRANSFORMERS: u32 = 100;
