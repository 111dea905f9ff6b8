//! `cargo xtask solve JOB.json --season`, `--design-day`, `--cooler` and `--nodes`.

use anyhow::{Context, Result, anyhow};
use finrun_engine::climate::{Bin, Season};
use finrun_engine::comfort::{Reliefs, Step};
use finrun_engine::cooler::{USUAL_SUPPLIES, cooler};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::season::{Burning, Controls, season};
use finrun_engine::transient::{design_day, exported};

/// The house through the typical year of its station, as it is controlled, with the fuel and the
/// efficiency of its bills.
pub(super) fn print(draft: &Draft, job: &Job) -> Result<()> {
    let bins = bins(draft)?;
    let design = design(job);
    let run = season(job, &design, &bins, &Controls::of(job, &design), Burning::of(job));
    let run = run.map_err(|why| anyhow!("there is no season: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&run)?);
    Ok(())
}

fn bins(draft: &Draft) -> Result<Vec<Bin>> {
    let station = draft.station.as_ref().context("the job has no weather station")?;
    Ok(Season::of(station).bins())
}

/// How cool the water may be, as the house is controlled.
pub(super) fn print_cooler(draft: &Draft, job: &Job) -> Result<()> {
    let design = design(job);
    let controls = Controls::of(job, &design);
    let found = cooler(job, &design, &bins(draft)?, &controls, &USUAL_SUPPLIES);
    let found = found.map_err(|why| anyhow!("nothing is found: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&found)?);
    Ok(())
}

/// What would leave rooms less cold or less warm through the year.
pub(super) fn print_comfort(draft: &Draft, job: &Job) -> Result<()> {
    let mut reliefs = Reliefs::begin(draft, job, &design(job)).context("there is no season")?;
    let before = reliefs.before();
    loop {
        match reliefs.step() {
            Step::Working => {}
            Step::Done => return Ok(()),
            Step::Found(relief) => {
                println!("{}", finrun_text::comfort_change(draft, relief.change));
                for (_, name, [now, then]) in
                    finrun_text::comfort_figures(draft, &before, &relief.after)
                {
                    println!("  {name:<28}{now:>24}{then:>24}");
                }
            }
        }
    }
}

/// The design day with the job's setback, in rooms built as they are.
pub(super) fn print_day(job: &Job) -> Result<()> {
    let design = design(job);
    let control = job.control.as_ref().context("how the house is run cannot be read")?;
    let controls = Controls::of(job, &design);
    let run = design_day(job, &design, &controls, &control.masses, control.setback);
    let run = run.map_err(|why| anyhow!("there is no design day: {why:?}"))?;
    println!("{}", serde_json::to_string_pretty(&run)?);
    Ok(())
}

/// The house and its loop on the design day, for `tests/reference/scripts/gen_j_house_in_time.py`.
pub(super) fn print_nodes(job: &Job) -> Result<()> {
    let (controls, outdoors) = (Controls::usual(job), job.house.site.outdoors);
    let nodes = exported(job, &design(job), &controls, &[], outdoors);
    let nodes = nodes.map_err(|why| anyhow!("there is no steady state: {why:?}"))?;
    let nodes = nodes.context("the house has more than one loop")?;
    println!("{}", serde_json::to_string_pretty(&nodes)?);
    Ok(())
}
