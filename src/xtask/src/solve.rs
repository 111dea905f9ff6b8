//! `cargo xtask solve JOB.json`: the design of a job file, its network, the job in each arrangement, or
//! other loops.

use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::arrangement::lowered;
use finrun_engine::compare::{Arranged, side_by_side};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, File, Header, Job, read};
use finrun_engine::quantity::{Kind, System, Value};
use finrun_engine::suggest::{Verdict, suggest};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Design,
    Network,
    EveryArrangement,
    Suggest,
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
        What::EveryArrangement => every_arrangement(&draft),
        What::Suggest => suggest_loops(&draft),
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

/// What the page suggests for each zone, in its words.
fn suggest_loops(draft: &Draft) {
    let list = |head: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            println!("{head}");
        }
        lines.iter().for_each(|line| println!("  - {line}"));
    };
    for zone in draft.zones.iter().map(|zone| zone.id) {
        println!("{}", finrun_text::zone_name(draft, zone));
        match suggest(draft, zone) {
            None => println!("{}", finrun_text::no_loops()),
            Some(Verdict::Stays(figures)) => {
                println!("{}", finrun_text::loops_stay());
                list(finrun_text::what_stays(), finrun_text::troubles(draft, &figures));
            }
            Some(Verdict::Changes(change)) => {
                println!("{}", finrun_text::gain(&change));
                let loops = finrun_text::loop_lines(draft, &change.after, draft.units);
                list(finrun_text::suggested(), loops);
                let [before, after] =
                    [&change.before, &change.after].map(|f| finrun_text::troubles(draft, f));
                list(finrun_text::what_is_wrong(), before);
                list(finrun_text::what_stays(), after);
                let heads = [finrun_text::today(), finrun_text::suggested()];
                let heads = heads.map(|head| format!("{head:>14}")).concat();
                println!("{:<36}{heads}", finrun_text::this_zone());
                for (_, name, figures) in finrun_text::loop_figures(&change, draft.units) {
                    println!("{name:<36}{}", figures.map(|cell| format!("{cell:>14}")).concat());
                }
                println!("{}", finrun_text::figures_note());
                let measure = finrun_text::to_measure(draft, &change);
                list(finrun_text::before_piping(), measure);
            }
        }
        println!();
    }
}

/// One line for each arrangement of all zones, the rooms as they are.
fn every_arrangement(draft: &Draft) {
    let titles = ["flow", "head", "return", "fastest", "element", "least", "most", "short"];
    println!("{:<34}{}", draft.name, titles.map(|title| format!("{title:>12}")).concat());
    for arranged in side_by_side(draft) {
        let cells = cells(&arranged, draft.units).map(|cell| format!("{cell:>12}")).concat();
        println!("{:<34}{cells}", finrun_text::arrangement(arranged.arrangement));
    }
    println!("least and most: what a room's element gives of its load");
}

fn cells(arranged: &Arranged, system: System) -> [String; 8] {
    let text = |value: Value| finrun_text::value(value, system);
    if !arranged.solved {
        return std::array::from_fn(|_| "not solved".to_string());
    }
    [
        text(arranged.flow.into()),
        text(Value::new(Kind::Head, arranged.head.si())),
        text(arranged.back.into()),
        text(arranged.velocity.into()),
        text(arranged.element.into()),
        text(Value::share(arranged.least)),
        text(Value::share(arranged.most)),
        arranged.short.to_string(),
    ]
}
