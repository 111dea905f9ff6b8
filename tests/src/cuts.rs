//! Kind h: pipe cut from sticks of 10 and 20 ft.

use crate::tally::{Tally, Tolerance};
use finrun_engine::takeoff::cut_plan::{CutPlan, NODES, cut_plan};
use serde::Deserialize;

/// Whole sticks, so that any difference is far outside.
const EXACT: Tolerance = Tolerance::Share(1e-9);
const FOOT: u32 = 192;

#[derive(Debug, Deserialize)]
struct File {
    #[serde(alias = "cases")]
    instances: Vec<Instance>,
}

#[derive(Debug, Deserialize)]
struct Instance {
    id: String,
    lengths_16th_in: Vec<u32>,
    quantity: Vec<usize>,
    kerf_16th_in: u32,
    /// `None` where a piece is longer than a stick.
    optimal_sticks_10ft: Option<u64>,
    optimal_sticks_20ft: Option<u64>,
    optimal_mixed_total_ft: Option<u64>,
}

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let mut tally = Tally::default();
    for instance in &file.instances {
        let Instance { id, lengths_16th_in: lengths, quantity, .. } = instance;
        if lengths.len() != quantity.len() {
            return Err(format!("{id}: lengths and quantities differ in number"));
        }
        let each = lengths.iter().zip(quantity);
        let pieces: Vec<u32> =
            each.flat_map(|(&length, &number)| std::iter::repeat_n(length, number)).collect();
        let kerf = instance.kerf_16th_in;
        let mut compare = |what, sticks: &[u32], expected: Option<u64>, unit: u64| {
            let found = cut_plan(&pieces, sticks, kerf, NODES).ok();
            let Some(expected) = expected else {
                let refused = f64::from(u8::from(found.is_none()));
                return tally.compare("refused", EXACT, id, refused, 1.0);
            };
            let proven = found.filter(CutPlan::is_proven);
            let sum = proven.as_ref().map_or(f64::NAN, |plan| plan.total_sixteenths as f64);
            tally.compare(what, EXACT, id, sum / unit as f64, expected as f64);
            let valid = proven.is_some_and(|plan| fault(&plan, &pieces, sticks, kerf).is_none());
            tally.compare("valid", EXACT, id, f64::from(u8::from(valid)), 1.0);
        };
        let (short, long) = (10 * FOOT, 20 * FOOT);
        compare("sticks of 10 ft", &[short], instance.optimal_sticks_10ft, short.into());
        compare("sticks of 20 ft", &[long], instance.optimal_sticks_20ft, long.into());
        compare("mixed", &[short, long], instance.optimal_mixed_total_ft, FOOT.into());
        tally.case();
    }
    Ok(tally)
}

/// What is wrong with a plan, by the pieces and sticks alone.
pub fn fault(plan: &CutPlan, pieces: &[u32], sticks: &[u32], kerf: u32) -> Option<String> {
    let mut times = vec![0; pieces.len()];
    for stick in &plan.sticks {
        let length = stick.stick_sixteenths;
        if !sticks.contains(&length) {
            return Some(format!("{length} is no stick"));
        }
        for cut in &stick.cuts {
            match pieces.get(cut.piece) {
                Some(&piece) if piece == cut.length_sixteenths => times[cut.piece] += 1,
                _ => return Some(format!("{cut:?} is no piece")),
            }
        }
        let pieces: u32 = stick.cuts.iter().map(|cut| cut.length_sixteenths).sum();
        let number = stick.cuts.len() as u32;
        if number == 0 || pieces + (number - 1) * kerf > length {
            return Some(format!("{stick:?} does not hold its cuts"));
        }
        if stick.offcut_sixteenths != length.saturating_sub(pieces + number * kerf) {
            return Some(format!("{stick:?} has another offcut"));
        }
    }
    if times.iter().any(|&times| times != 1) {
        return Some(format!("pieces are cut {times:?} times"));
    }
    let total: u64 = plan.sticks.iter().map(|stick| u64::from(stick.stick_sixteenths)).sum();
    (total != plan.total_sixteenths).then(|| format!("sum {total}"))
}
