//! `cargo xtask solve JOB.json`: the design of a job file, its network, or the job in each arrangement.

use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::arrangement::lowered;
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Arrangement, Draft, File, Header, Job, read};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Kind, Power, System, Value};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Design,
    Network,
    EveryArrangement,
}

pub(crate) fn solve(job: &Path, what: What) -> Result<()> {
    let shown = job.display();
    let text = std::fs::read_to_string(job).with_context(|| format!("{shown} cannot be read"))?;
    let draft = open(&text).with_context(|| format!("{shown} is no job file"))?;
    let job = whole(&draft).with_context(|| shown.to_string())?;
    match what {
        What::Design => println!("{}", serde_json::to_string_pretty(&design(&job))?),
        What::Network => {
            println!("{}", serde_json::to_string_pretty(&lowered(&job, &design(&job)))?);
        }
        What::EveryArrangement => every_arrangement(&draft)?,
    }
    Ok(())
}

fn open(text: &str) -> Result<Draft> {
    let refused = |error| anyhow!(finrun_text::file_problem(&error));
    serde_json::from_str::<Header>(text)?.check().map_err(refused)?;
    serde_json::from_str::<File>(text)?.open().map_err(refused)
}

fn whole(draft: &Draft) -> Result<Job> {
    let reading = read(draft);
    if !reading.errors.is_empty() {
        let lines: Vec<String> = reading
            .errors
            .iter()
            .map(|error| {
                let what = finrun_text::problem_at(draft, error, draft.units);
                format!("  {}: {what}", error.field)
            })
            .collect();
        bail!("fields to mend:\n{}", lines.join("\n"));
    }
    reading.job.context("no whole job")
}

/// One line for each arrangement of all zones, the rooms as they are.
fn every_arrangement(draft: &Draft) -> Result<()> {
    let titles = ["flow", "head", "return", "fastest", "element", "least", "most", "short"];
    println!("{:<34}{}", draft.name, titles.map(|title| format!("{title:>12}")).concat());
    for &arrangement in Arrangement::ALL {
        let mut changed = draft.clone();
        for zone in draft.zones.iter().map(|zone| zone.id) {
            changed.arrange(zone, arrangement);
        }
        let solved = design(&whole(&changed)?);
        let cells = cells(&solved, draft.units).map(|cell| format!("{cell:>12}")).concat();
        println!("{:<34}{cells}", finrun_text::arrangement(arrangement));
    }
    println!("least and most: what a room's element gives of its load");
    Ok(())
}

fn cells(design: &Design, system: System) -> [String; 8] {
    let piping = &design.piping;
    let shares = design
        .rooms
        .iter()
        .filter(|room| room.load.total > Power::ZERO)
        .map(|room| room.element.output / room.load.total);
    let (least, most) = shares.fold((f64::INFINITY, 0.0), |(least, most): (f64, f64), share| {
        (least.min(share), most.max(share))
    });
    let text = |value: Value| finrun_text::value(value, system);
    let short = design.rooms.iter().filter(|room| room.short() > Power::ZERO).count();
    match piping.not_solved {
        Some(_) => std::array::from_fn(|_| "not solved".to_string()),
        None => [
            text(piping.flow.into()),
            text(Value::new(Kind::Head, piping.head.si())),
            text(piping.back.into()),
            text(piping.velocity.into()),
            text(design.element_length().into()),
            text(Value::share(least)),
            text(Value::share(most)),
            short.to_string(),
        ],
    }
}
