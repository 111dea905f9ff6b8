//! `cargo xtask reference [DIR]`: the engine against check data made outside it.

use std::path::Path;

use anyhow::{Result, ensure};
use finrun_tests::{Verdict, run_all};

/// Prints a line a file. Fails unless every file is within its tolerances: a kind that is not
/// covered is not a success.
pub(crate) fn reference(folder: &Path) -> Result<()> {
    let reports = run_all(folder);
    for report in &reports {
        println!("{report}");
    }
    let open = reports.iter().filter(|report| report.verdict != Verdict::Within).count();
    ensure!(open == 0, "{open} of {} files not within their tolerances", reports.len());
    Ok(())
}
