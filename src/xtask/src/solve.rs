//! `cargo xtask solve JOB.json`: the design of a job file, its network, or the job in each arrangement.

use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::arrangement::lowered;
use finrun_engine::compare::{Arranged, side_by_side};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, File, Header, Job, read};
use finrun_engine::oversize::oversize;
use finrun_engine::quantity::{Kind, System, Value};
use finrun_engine::remedy::Remedies;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Design,
    Network,
    EveryArrangement,
    Remedies,
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
        What::Remedies => remedies(&draft, &job),
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

/// What would help the rooms that are short, or what is built beyond the loads.
fn remedies(draft: &Draft, job: &Job) {
    let (design, system) = (design(job), draft.units);
    for worked in Remedies::all(job, &design) {
        let room = finrun_text::room_name(draft, worked.room);
        println!("{room}: {}", finrun_text::worked(&worked, draft, system));
    }
    let Some(over) = oversize(job, &design) else { return };
    let text = |value: Value| finrun_text::value(value, system);
    let columns =
        [finrun_text::pieces_add(), finrun_text::pieces_give(), finrun_text::margin_gives()];
    println!(
        "{:<34}{}",
        finrun_text::oversize_title(),
        columns.map(|c| format!("{c:>14}")).concat()
    );
    for room in &over.rooms {
        let name = finrun_text::room_name(draft, room.room);
        let cells = [room.length.into(), room.pieces.into(), room.margin.into()].map(text);
        println!("{name:<34}{}", cells.map(|cell| format!("{cell:>14}")).concat());
    }
    println!("{}: {}", finrun_text::return_word(), text(over.back.into()));
    println!("{}: {}", finrun_text::return_exact(), text(over.back_exact.into()));
    println!("{}", finrun_text::supply_enough(&over, system));
    println!("{}", finrun_text::calls_at_half(&over, system));
    if let Some(burner) = &over.burner {
        println!("{}", finrun_text::burner_runs(burner));
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
