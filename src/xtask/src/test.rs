//! Everything that must pass before a change lands, in one command.

use std::env;
use std::path::PathBuf;
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};

use crate::{browser, build, project, run, sizes, tools};

/// The browser tests stand behind this feature: without a page and a browser there is nothing to run.
const BROWSER_FEATURE: &str = "finrun-tests/browser";

pub(crate) fn test() -> Result<()> {
    let started = Instant::now();
    // All that may be missing or need a network comes first, not after minutes of building.
    let (browser, axe, pdftotext) = step("tools and browser", || {
        tools::ready()?;
        build::fetch_packages()?;
        Ok((browser::ready()?, tools::axe()?, browser::pdftotext()?))
    })?;
    step("format", || cargo("the format check", &["fmt", "--all", "--check"]))?;
    step("lints", || {
        let native = [
            "clippy",
            "--workspace",
            "--all-targets",
            "--features",
            BROWSER_FEATURE,
            "--",
            "-Dwarnings",
        ];
        cargo("a lint", &native)
    })?;
    step("lints of the page as wasm", || {
        let wasm = [
            "clippy",
            "--package",
            "finrun",
            "--target",
            "wasm32-unknown-unknown",
            "--",
            "-Dwarnings",
        ];
        cargo("a lint", &wasm)
    })?;
    step("tests", || cargo("a test", &["test", "--workspace"]))?;
    let dist = step("release build", build::build)?;
    step("size", || {
        let sizes = sizes::measure(&dist)?;
        sizes.print();
        sizes.hold_limit()
    })?;
    step("tests in the browser", || {
        let tests = BrowserTests { dist, browser, axe, pdftotext };
        run::loud(&mut tests.command("browser")?, "a test in the browser")?;
        // A name that matches nothing would pass as well.
        let list = run::output(tests.command("browser")?.args(["--", "--list"]))?;
        ensure!(
            list.lines().any(|line| line.ends_with(": test")),
            "there is no test in the browser"
        );
        Ok(())
    })?;
    println!("\nall passed in {:.0} s", started.elapsed().as_secs_f64());
    Ok(())
}

/// Kills the browser so many times while it types, and tells what was lost.
pub(crate) fn kills(count: u64) -> Result<()> {
    tools::ready()?;
    let (browser, axe, pdftotext) = (browser::ready()?, tools::axe()?, browser::pdftotext()?);
    let tests = BrowserTests { dist: build::build()?, browser, axe, pdftotext };
    let mut command = tests.command("browser::kills")?;
    command.args(["--", "--nocapture"]).env("FINRUN_KILLS", count.to_string());
    run::loud(&mut command, "the kills")
}

/// What the tests in the browser are told.
struct BrowserTests {
    dist: PathBuf,
    browser: browser::Browser,
    axe: PathBuf,
    pdftotext: PathBuf,
}

impl BrowserTests {
    fn command(&self, filter: &str) -> Result<Command> {
        let xtask = env::current_exe().context("this program does not know where it stands")?;
        let mut cargo = project::cargo();
        cargo
            .args(["test", "--package", "finrun-tests", "--features", "browser", filter])
            .env("FINRUN_DIST", &self.dist)
            .env("FINRUN_XTASK", &xtask)
            .env("FINRUN_CHROME", &self.browser.chrome)
            .env("FINRUN_CHROMEDRIVER", &self.browser.driver)
            .env("FINRUN_AXE", &self.axe)
            .env("FINRUN_PDFTOTEXT", &self.pdftotext);
        Ok(cargo)
    }
}

fn cargo(what: &str, arguments: &[&str]) -> Result<()> {
    run::loud(project::cargo().args(arguments), what)
}

fn step<T>(name: &str, act: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("\n== {name}");
    let started = Instant::now();
    let outcome = act();
    let verdict = if outcome.is_ok() { "done" } else { "FAILED" };
    println!("== {name}: {verdict} in {:.1} s", started.elapsed().as_secs_f64());
    outcome
}
