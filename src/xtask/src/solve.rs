//! `cargo xtask solve JOB.json`: the design of a job file, as JSON.

use std::path::Path;

use anyhow::{Result, bail};

pub(crate) fn solve(job: &Path) -> Result<()> {
    bail!("solve is not written yet ({})", job.display())
}
