//! `--what-if`: the job before and after the changes that are on.

use anyhow::{Context, Result, bail};
use finrun_engine::job::Draft;
use finrun_engine::what_if::{NotWeighed, Weighing};

pub(super) fn print(draft: &Draft) -> Result<()> {
    let weighing = match Weighing::of(draft) {
        Ok(weighing) => weighing,
        Err(NotWeighed::Wrong(changed, errors)) => {
            let lines = errors.iter().map(|error| {
                format!("  {}", finrun_text::problem_at(&changed, error, draft.units))
            });
            let lines: Vec<String> = lines.collect();
            bail!("with its changes the job has errors:\n{}", lines.join("\n"));
        }
        Err(why) => bail!("{}", finrun_text::not_weighed(&why)),
    };
    let weighed = weighing.all().context("there is no comparison")?;
    println!("{}", serde_json::to_string_pretty(&weighed)?);
    Ok(())
}
