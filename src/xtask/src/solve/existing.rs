//! `cargo xtask solve JOB.json --existing`.

use anyhow::Result;
use finrun_engine::design::design;
use finrun_engine::existing::{explain, gets};
use finrun_engine::job::{Draft, Job, measured};
use serde_json::json;

/// What each room gets of what stands, and what explains the readings that the job keeps.
pub(super) fn print(draft: &Draft, job: &Job) -> Result<()> {
    let design = design(job);
    let explained = match explain(job, &design, &measured(draft)) {
        Ok(explained) => json!(explained),
        Err(why) => json!({ "nothing-explained": why }),
    };
    let all = json!({ "gets": gets(job, &design), "explained": explained });
    println!("{}", serde_json::to_string_pretty(&all)?);
    Ok(())
}
