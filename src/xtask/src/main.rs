//! Developer commands, run as `cargo xtask COMMAND`.

mod audit;
mod browser;
mod build;
mod one_file;
mod packed;
mod project;
mod reference;
mod run;
mod serve;
mod shell;
mod sizes;
mod solve;
mod suggest;
mod test;
mod tools;

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result, bail};
use finrun_text::Language;
use lexopt::prelude::*;

const USAGE: &str = "\
cargo xtask COMMAND

  serve [--port N] [--built]  build the page and serve it on 127.0.0.1 (port 8420; 0 picks a free one);
                              --built serves what stands in target/dist, --dist DIR what stands there;
                              --lan serves other devices of the network, too
  test                        everything that must pass: format, lints, tests, size, and the page in a browser
  dist                        build the page into target/dist and show the size of each file; finrun.html
                              there is all of it in one file; --record-size writes the size down
                              with which `test` compares the next ones
  audit                       measure how fast the page loads, answers and opens again, against its goals
  kills [N]                   kill the browser N times (500) as someone types, and tell what was lost
  solve JOB.json              print the design of a job file as JSON; --every-arrangement prints how its
                              rooms do in each arrangement, with --json as JSON; --network prints its
                              network as JSON; --remedies what would help short rooms, and what is built
                              beyond the loads; --suggest the loops that would be better; --choice each
                              circuit's choice of pieces, for another solver; --materials what to buy and how
                              the pipe is cut; --season the house through its station's year as JSON,
                              --design-day through the design day with the thermostats set back, --cooler
                              how cool its water may be, --comfort what would leave rooms less cold or
                              too warm, --nodes its heat as conductors, for another solver; --existing
                              what the rooms of a system that stands get, and what explains the readings
                              that the job keeps; --what-if
                              the job before and after the changes that are on, as JSON; --language es
                              says what is in words in Spanish
  reference [DIR]             run the engine on the check data in DIR (tests/reference)
  bench                       time the engine
";

enum Command {
    Help,
    Serve { port: u16, reach: serve::Reach, page: serve::Page },
    Test,
    Dist { record: bool },
    Audit,
    Kills { count: u64 },
    Solve { job: PathBuf, what: solve::What, language: Language },
    Reference { folder: PathBuf },
    Bench,
}

fn main() -> ExitCode {
    let outcome = parse(lexopt::Parser::from_env()).and_then(obey);
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("xtask: {failure:#}");
            ExitCode::FAILURE
        }
    }
}

fn obey(command: Command) -> Result<()> {
    match command {
        Command::Help => {
            print!("{USAGE}");
            Ok(())
        }
        Command::Serve { port, reach, page } => serve::serve(port, reach, page),
        Command::Test => test::test(),
        Command::Dist { record } => {
            let sizes = sizes::measure(&build::build()?)?;
            sizes.print();
            if record { sizes.record() } else { Ok(()) }
        }
        Command::Audit => audit::audit(),
        Command::Kills { count } => test::kills(count),
        Command::Solve { job, what, language } => solve::solve(&job, what, language),
        Command::Reference { folder } => reference::reference(&folder),
        Command::Bench => run::loud(
            project::cargo().args(["bench", "--package", "finrun-tests"]),
            "the benchmark",
        ),
    }
}

fn parse(mut arguments: lexopt::Parser) -> Result<Command> {
    let Some(first) = arguments.next()? else {
        return Ok(Command::Help);
    };
    let name = match first {
        Short('h') | Long("help") => return Ok(Command::Help),
        Value(name) => name.to_string_lossy().into_owned(),
        other => return Err(other.unexpected().into()),
    };
    match name.as_str() {
        "help" => Ok(Command::Help),
        "serve" => parse_serve(arguments),
        "test" => alone(arguments, Command::Test),
        "audit" => alone(arguments, Command::Audit),
        "dist" => match arguments.next()? {
            Some(Long("record-size")) => alone(arguments, Command::Dist { record: true }),
            None => Ok(Command::Dist { record: false }),
            Some(other) => Err(other.unexpected().into()),
        },
        "kills" => {
            let count = match at_most_one_path(arguments)? {
                Some(count) => count.to_str().and_then(|count| count.parse().ok()),
                None => Some(500),
            };
            let count = count.context("kills takes a number: cargo xtask kills 500")?;
            Ok(Command::Kills { count })
        }
        "bench" => alone(arguments, Command::Bench),
        "solve" => {
            let (mut job, mut what, mut json) = (None, solve::What::Design, false);
            let mut language = Language::English;
            let in_words = solve::What::InWords;
            while let Some(argument) = arguments.next()? {
                match argument {
                    Long("every-arrangement") => what = in_words(solve::Words::EveryArrangement),
                    Long("existing") => what = solve::What::Existing,
                    Long("json") => json = true,
                    Long("language") => {
                        let tag = arguments.value()?;
                        let known = tag.to_str().and_then(Language::of_tag);
                        language = known.with_context(|| {
                            format!("--language takes en or es, not `{}`", tag.display())
                        })?;
                    }
                    Long("remedies") => what = in_words(solve::Words::Remedies),
                    Long("network") => what = solve::What::Network,
                    Long("materials") => what = in_words(solve::Words::Materials),
                    Long("choice") => what = solve::What::Choice,
                    Long("cooler") => what = solve::What::Cooler,
                    Long("comfort") => what = solve::What::Comfort,
                    Long("design-day") => what = solve::What::DesignDay,
                    Long("nodes") => what = solve::What::Nodes,
                    Long("season") => what = solve::What::Season,
                    Long("suggest") => what = in_words(solve::Words::Suggest),
                    Long("what-if") => what = solve::What::Changed,
                    Value(path) if job.is_none() => job = Some(PathBuf::from(path)),
                    other => return Err(other.unexpected().into()),
                }
            }
            if json && what == in_words(solve::Words::EveryArrangement) {
                what = solve::What::EveryArrangementAsJson;
            }
            let job = job.context("solve needs a job file: cargo xtask solve JOB.json")?;
            Ok(Command::Solve { job, what, language })
        }
        "reference" => {
            let folder = at_most_one_path(arguments)?
                .unwrap_or_else(|| project::root().join("tests/reference"));
            Ok(Command::Reference { folder })
        }
        unknown => {
            bail!("there is no command `{unknown}`; `cargo xtask` alone lists the commands")
        }
    }
}

fn parse_serve(mut arguments: lexopt::Parser) -> Result<Command> {
    let mut port = 8420;
    let mut page = serve::Page::BuildFirst;
    let mut reach = serve::Reach::ThisMachine;
    while let Some(argument) = arguments.next()? {
        match argument {
            Long("port") => {
                let value = arguments.value()?;
                port = value.to_str().and_then(|port| port.parse().ok()).with_context(|| {
                    format!("--port takes a number from 0 to 65535, not `{}`", value.display())
                })?;
            }
            Long("lan") => reach = serve::Reach::Lan,
            Long("built") => page = serve::Page::AsBuilt(project::dist()),
            Long("dist") => page = serve::Page::AsBuilt(arguments.value()?.into()),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Command::Serve { port, reach, page })
}

fn alone(mut arguments: lexopt::Parser, command: Command) -> Result<Command> {
    match arguments.next()? {
        None => Ok(command),
        Some(extra) => Err(extra.unexpected().into()),
    }
}

fn at_most_one_path(mut arguments: lexopt::Parser) -> Result<Option<PathBuf>> {
    let mut path: Option<OsString> = None;
    while let Some(argument) = arguments.next()? {
        match argument {
            Value(value) if path.is_none() => path = Some(value),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(path.map(PathBuf::from))
}
