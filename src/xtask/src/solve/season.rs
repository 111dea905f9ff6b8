//! `cargo xtask solve JOB.json --season`, `--design-day`, `--cooler` and `--nodes`.

use anyhow::{Context, Result, anyhow};
use finrun_engine::climate::{Bin, Season};
use finrun_engine::cooler::{USUAL_SUPPLIES, cooler};
use finrun_engine::design::design;
use finrun_engine::job::{BillsField, Draft, Field, Job, resolve};
use finrun_engine::season::{Burning, Controls, season};
use finrun_engine::transient::{Mass, Setback, design_day, exported};

/// The house through the typical year of its station, by the usual controls, with the fuel and the
/// efficiency of its bills.
pub(super) fn print(draft: &Draft, job: &Job) -> Result<()> {
    let bins = bins(draft)?;
    let efficiency = resolve(draft, Field::Bills(BillsField::Efficiency)).si();
    let burning = efficiency.map(|efficiency| Burning { fuel: draft.bills.fuel, efficiency });
    let run = season(job, &design(job), &bins, &Controls::usual(job), burning);
    let run = run.map_err(|why| anyhow!("there is no season: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&run)?);
    Ok(())
}

fn bins(draft: &Draft) -> Result<Vec<Bin>> {
    let station = draft.station.as_ref().context("the job has no weather station")?;
    Ok(Season::of(station).bins())
}

/// How cool the water may be, by the usual controls.
pub(super) fn print_cooler(draft: &Draft, job: &Job) -> Result<()> {
    let controls = Controls::usual(job);
    let found = cooler(job, &design(job), &bins(draft)?, &controls, &USUAL_SUPPLIES);
    let found = found.map_err(|why| anyhow!("nothing is found: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&found)?);
    Ok(())
}

/// The design day with the usual setback, in a house of light build.
pub(super) fn print_day(job: &Job) -> Result<()> {
    let controls = Controls::usual(job);
    let run = design_day(job, &design(job), &controls, Mass::Light, Setback::USUAL);
    let run = run.map_err(|why| anyhow!("there is no design day: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&run)?);
    Ok(())
}

/// The house and its loop on the design day, for `tests/reference/scripts/gen_j_house_in_time.py`.
pub(super) fn print_nodes(job: &Job) -> Result<()> {
    let (controls, outdoors) = (Controls::usual(job), job.house.site.outdoors);
    let nodes = exported(job, &design(job), &controls, Mass::Light, outdoors);
    let nodes = nodes.map_err(|why| anyhow!("there is no steady state: {why:?}"))?;
    let nodes = nodes.context("the house has more than one loop")?;
    println!("{}", serde_json::to_string_pretty(&nodes)?);
    Ok(())
}
