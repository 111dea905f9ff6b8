//! `cargo xtask solve JOB.json`: the design of a job file, its network, the job in each arrangement, or
//! other loops.

mod existing;
mod materials;
mod remedies;
mod season;

use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::arrangement::{exported_choices, lowered};
use finrun_engine::compare::{Arranged, Column, side_by_side};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, File, Header, Job, read};
use finrun_engine::named::Named;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Design,
    Network,
    EveryArrangement,
    Suggest,
    EveryArrangementAsJson,
    Remedies,
    Choice,
    Season,
    DesignDay,
    Cooler,
    Nodes,
    Existing,
    Materials,
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
        What::Suggest => crate::suggest::print(&draft),
        What::EveryArrangementAsJson => {
            println!("{}", serde_json::to_string_pretty(&side_by_side(&draft))?);
        }
        What::Remedies => remedies::print(&draft, &job),
        What::Choice => choice(&job)?,
        What::Season => season::print(&draft, &job)?,
        What::DesignDay => season::print_day(&job)?,
        What::Cooler => season::print_cooler(&draft, &job)?,
        What::Nodes => season::print_nodes(&job)?,
        What::Existing => existing::print(&draft, &job)?,
        What::Materials => materials::print(&draft, &job),
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

/// A column for each layout of the house, what it is compared by down the side; the best marked.
fn every_arrangement(draft: &Draft) {
    let rows = side_by_side(draft);
    let names: Vec<String> =
        rows.iter().map(|row| finrun_text::layout(draft, row.layout)).collect();
    let cells = |column: Column| -> Vec<String> {
        let best = finrun_text::best_cell(column, &rows, draft.units);
        let cell = |row: &Arranged| {
            let shown = finrun_text::cell(column, row, draft.units);
            if best.as_ref() == Some(&shown) { format!("* {shown}") } else { shown }
        };
        rows.iter().map(cell).collect()
    };
    let table: Vec<Vec<String>> = Column::ALL.iter().map(|&column| cells(column)).collect();
    let longest = |at: usize| {
        let cells = table.iter().filter_map(|row| row.get(at)).chain(names.get(at));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let line = |title: &str, cells: &[String]| {
        let cells = cells.iter().enumerate().map(|(at, cell)| format!("  {cell:>0$}", longest(at)));
        println!("{title:<26}{}", cells.collect::<String>());
    };
    line(&draft.name, &names);
    for (&column, cells) in Column::ALL.iter().zip(&table) {
        line(finrun_text::column(column), cells);
    }
    println!("* best");
}

/// Each circuit's choice of pieces, for `tests/benches/joint_highs.py`.
fn choice(job: &Job) -> Result<()> {
    let loads: Vec<_> = design(job).rooms.into_iter().map(|room| room.load).collect();
    let mut all = Vec::new();
    for (instance, cost_cents) in exported_choices(job, &loads) {
        let mut one = serde_json::to_value(&instance)?;
        one["cost_cents"] = cost_cents.into();
        all.push(one);
    }
    println!("{}", serde_json::to_string(&all)?);
    Ok(())
}
