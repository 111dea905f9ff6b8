//! `cargo xtask solve JOB.json`: the design of a job file, its network, the job in each arrangement, or
//! other loops.

mod existing;
mod materials;
mod remedies;
mod season;
mod what_if;

use std::fmt::Write;
use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use finrun_engine::arrangement::{exported_choices, lowered};
use finrun_engine::compare::{Arranged, Column, side_by_side};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, File, Header, Job, read};
use finrun_engine::named::Named;
use finrun_text::{DecimalMark, Language, speak};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Design,
    Network,
    EveryArrangementAsJson,
    InWords(Words),
    Choice,
    Season,
    DesignDay,
    Cooler,
    Comfort,
    Nodes,
    Changed,
    Existing,
}

/// What is printed for people rather than for programs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Words {
    EveryArrangement,
    Suggest,
    Remedies,
    Materials,
}

pub(crate) fn solve(job: &Path, what: What, language: Language) -> Result<()> {
    speak(language, DecimalMark::Point);
    let shown = job.display();
    let text = std::fs::read_to_string(job).with_context(|| format!("{shown} cannot be read"))?;
    let draft = open(&text).with_context(|| format!("{shown} is no job file"))?;
    let job = whole(&draft).with_context(|| shown.to_string())?;
    match what {
        What::Design => println!("{}", serde_json::to_string_pretty(&design(&job))?),
        What::Network => {
            println!("{}", serde_json::to_string_pretty(&lowered(&job, &design(&job)))?);
        }
        What::InWords(words) => print!("{}", in_words(words, &draft, &job)?),
        What::EveryArrangementAsJson => {
            println!("{}", serde_json::to_string_pretty(&side_by_side(&draft))?);
        }
        What::Choice => choice(&job)?,
        What::Season => season::print(&draft, &job)?,
        What::DesignDay => season::print_day(&job)?,
        What::Cooler => season::print_cooler(&draft, &job)?,
        What::Comfort => season::print_comfort(&draft, &job)?,
        What::Nodes => season::print_nodes(&job)?,
        What::Changed => what_if::print(&draft)?,
        What::Existing => existing::print(&draft, &job)?,
    }
    Ok(())
}

fn in_words(words: Words, draft: &Draft, job: &Job) -> Result<String> {
    match words {
        Words::EveryArrangement => every_arrangement(draft),
        Words::Suggest => crate::suggest::said(draft),
        Words::Remedies => remedies::said(draft, job),
        Words::Materials => materials::said(draft, job),
    }
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
fn every_arrangement(draft: &Draft) -> Result<String> {
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
        format!("{title:<26}{}\n", cells.collect::<String>())
    };
    let mut out = line(&draft.name, &names);
    for (&column, cells) in Column::ALL.iter().zip(&table) {
        out += &line(finrun_text::column(column), cells);
    }
    writeln!(out, "* {}", finrun_text::best())?;
    Ok(out)
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Words without which no English sentence does, and which no Spanish one has.
    const ENGLISH: [&str; 14] = [
        "the", "of", "and", "is", "are", "with", "for", "from", "not", "it", "to", "by", "at", "in",
    ];

    /// The first English word of what each command says of a shipped house.
    fn english_word(language: Language) -> Vec<Option<String>> {
        let house = include_str!("../../../public/demo/two-storey.json");
        let draft = open(house).expect("a shipped house");
        let job = whole(&draft).expect("a whole job");
        speak(language, DecimalMark::Point);
        let all = [Words::EveryArrangement, Words::Suggest, Words::Remedies, Words::Materials];
        let word = |words| {
            let said = in_words(words, &draft, &job).expect("words").to_lowercase();
            assert!(said.lines().count() > 3, "{words:?}: {said}");
            let mut found = said.split(|c: char| !c.is_alphabetic());
            found.find(|word| ENGLISH.contains(word)).map(str::to_string)
        };
        all.map(word).to_vec()
    }

    #[test]
    fn a_shipped_house_is_told_in_spanish() {
        assert_eq!(english_word(Language::Spanish), vec![None; 4]);
        // The words are those of English: each command uses some.
        assert!(english_word(Language::English).iter().all(Option::is_some));
    }
}
