//! `cargo xtask solve JOB.json`: the design of a job file, as JSON.

use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, File, Header, read};

pub(crate) fn solve(job: &Path) -> Result<()> {
    let shown = job.display();
    let text = std::fs::read_to_string(job).with_context(|| format!("{shown} cannot be read"))?;
    let draft = open(&text).with_context(|| format!("{shown} is no job file"))?;
    let reading = read(&draft);
    if !reading.errors.is_empty() {
        let lines: Vec<String> = reading
            .errors
            .iter()
            .map(|error| {
                let what = finrun_text::problem_at(&draft, error, draft.units);
                format!("  {}: {what}", error.field)
            })
            .collect();
        bail!("{shown} has fields to mend:\n{}", lines.join("\n"));
    }
    let job = reading.job.with_context(|| format!("{shown} holds no whole job"))?;
    println!("{}", serde_json::to_string_pretty(&design(&job))?);
    Ok(())
}

fn open(text: &str) -> Result<Draft> {
    let refused = |error| anyhow!(finrun_text::file_problem(&error));
    serde_json::from_str::<Header>(text)?.check().map_err(refused)?;
    serde_json::from_str::<File>(text)?.open().map_err(refused)
}
