//! `cargo xtask solve JOB.json --season`.

use anyhow::{Context, Result, anyhow};
use finrun_engine::climate::Season;
use finrun_engine::design::design;
use finrun_engine::job::{BillsField, Draft, Field, Job, resolve};
use finrun_engine::season::{Burning, Controls, season};

/// The house through the typical year of its station, by the usual controls, with the fuel and the
/// efficiency of its bills.
pub(super) fn print(draft: &Draft, job: &Job) -> Result<()> {
    let station = draft.station.as_ref().context("the job has no weather station")?;
    let bins = Season::of(station).bins();
    let efficiency = resolve(draft, Field::Bills(BillsField::Efficiency)).si();
    let burning = efficiency.map(|efficiency| Burning { fuel: draft.bills.fuel, efficiency });
    let run = season(job, &design(job), &bins, &Controls::usual(job), burning);
    let run = run.map_err(|why| anyhow!("there is no season: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&run)?);
    Ok(())
}
