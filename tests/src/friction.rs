//! Kind b: friction factors.

use crate::table::rows;
use crate::tally::{Tally, Tolerance};
use finrun_engine::pipe::friction;

/// The band is held exactly; this is the rounding of the roughness and the band as printed.
const PRINTED: Tolerance = Tolerance::Share(1e-6);

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for row in rows(text)? {
        let roughness = row.number(&["rel_roughness"])?;
        let reynolds = row.number(&["Re"])?;
        let band = (row.number(&["band_lo", "f_ref"])?, row.number(&["band_hi", "f_ref"])?);
        let case = format!("{} Re {reynolds}", row.text("case").unwrap_or("unnamed"));
        let found = friction(reynolds, roughness).factor;
        tally.compare_band("friction factor beyond its band", PRINTED, &case, found, band);
        tally.case();
    }
    Ok(tally)
}
