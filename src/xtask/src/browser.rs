//! Chromium or Chrome with the driver of the same version, for the tests in a browser; and what reads
//! a PDF that it printed.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Result, bail};

use crate::run;

pub(crate) struct Browser {
    pub(crate) chrome: PathBuf,
    pub(crate) driver: PathBuf,
}

const CHROMES: [&str; 7] = [
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "Google Chrome",
    "Chromium",
];

const USUAL_PLACES: [&str; 9] = [
    "/usr/bin",
    "/usr/local/bin",
    "/usr/lib/chromium",
    "/usr/lib/chromium-browser",
    "/opt/google/chrome",
    "/opt/homebrew/bin",
    "/Applications/Google Chrome.app/Contents/MacOS",
    "/Applications/Chromium.app/Contents/MacOS",
    "C:\\Program Files\\Google\\Chrome\\Application",
];

/// Variables by which a person names both; the browser tests are told by the same ones.
const CHROME: &str = "FINRUN_CHROME";
const DRIVER: &str = "FINRUN_CHROMEDRIVER";
/// The same for the program that reads a PDF's text.
const PDFTOTEXT: &str = "FINRUN_PDFTOTEXT";

/// Finds a browser and its driver, or installs Debian's where that needs no question.
pub(crate) fn ready() -> Result<Browser> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    if env::var_os(CHROME).is_some() || env::var_os(DRIVER).is_some() {
        bail!(
            "{CHROME} or {DRIVER} is set, but no browser and driver of the same version are found by it"
        );
    }
    if install_from_apt(&["chromium", "chromium-driver"])
        && let Some(browser) = find()
    {
        return Ok(browser);
    }
    bail!("no Chromium or Chrome with a chromedriver of the same version: {}", how_to_get())
}

/// Finds the program that reads the text of a PDF, or installs Debian's.
pub(crate) fn pdftotext() -> Result<PathBuf> {
    let find = || candidates(PDFTOTEXT, &["pdftotext"]).into_iter().find(|file| reads(file));
    if let Some(program) = find() {
        return Ok(program);
    }
    if env::var_os(PDFTOTEXT).is_some() {
        bail!("{PDFTOTEXT} is set, but no pdftotext of poppler is found by it");
    }
    if install_from_apt(&["poppler-utils"])
        && let Some(program) = find()
    {
        return Ok(program);
    }
    bail!(
        "no pdftotext, which reads what the report prints: {}",
        match env::consts::OS {
            "macos" => "brew install poppler",
            _ =>
                "install poppler (Debian's package is poppler-utils), or name it by FINRUN_PDFTOTEXT",
        }
    )
}

/// Poppler's says its version on the other output, and succeeds.
fn reads(program: &Path) -> bool {
    run::output(Command::new(program).arg("-v")).is_ok()
}

fn find() -> Option<Browser> {
    let chromes = candidates(CHROME, &CHROMES);
    let drivers = candidates(DRIVER, &["chromedriver"]);
    let pairs =
        chromes.iter().flat_map(|chrome| drivers.iter().map(move |driver| (chrome, driver)));
    let (chrome, driver) = pairs.into_iter().find(|(chrome, driver)| fit(chrome, driver))?;
    println!("{} with {}", chrome.display(), driver.display());
    Some(Browser { chrome: chrome.clone(), driver: driver.clone() })
}

/// What the person chose by a variable, and otherwise all that stand on PATH or in the usual places.
fn candidates(variable: &str, names: &[&str]) -> Vec<PathBuf> {
    if let Some(chosen) = env::var_os(variable) {
        return vec![PathBuf::from(chosen)];
    }
    let path = env::var_os("PATH").unwrap_or_default();
    // Hosted runners name the driver's folder in this variable.
    let named = env::var_os("CHROMEWEBDRIVER").map(PathBuf::from);
    let folders: Vec<PathBuf> =
        env::split_paths(&path).chain(named).chain(USUAL_PLACES.map(PathBuf::from)).collect();
    let suffix = env::consts::EXE_SUFFIX;
    names
        .iter()
        .flat_map(|name| folders.iter().map(move |folder| folder.join(format!("{name}{suffix}"))))
        .filter(|file| file.is_file())
        .collect()
}

/// A driver serves only the browser of its own main version. One that does not tell is tried.
fn fit(chrome: &Path, driver: &Path) -> bool {
    match (main_version(chrome), main_version(driver)) {
        (Some(chrome), Some(driver)) => chrome == driver,
        (None, Some(_)) => cfg!(windows),
        _ => false,
    }
}

fn main_version(program: &Path) -> Option<u32> {
    let said = run::output(Command::new(program).arg("--version")).ok()?;
    let version =
        said.split_whitespace().find(|word| word.starts_with(|c: char| c.is_ascii_digit()))?;
    version.split('.').next()?.parse().ok()
}

fn install_from_apt(packages: &[&str]) -> bool {
    if !cfg!(target_os = "linux") || !succeeds("apt-get", &["--version"]) {
        return false;
    }
    let before: &[&str] =
        if run::output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0") {
            &[]
        } else if succeeds("sudo", &["-n", "true"]) {
            &["sudo", "-n"]
        } else {
            return false;
        };
    println!("installing {} with apt-get, once", packages.join(" and "));
    let apt = |arguments: &[&str]| {
        let words: Vec<&str> =
            before.iter().chain(["apt-get"].iter()).chain(arguments).copied().collect();
        let mut command = Command::new(words[0]);
        command.args(&words[1..]).env("DEBIAN_FRONTEND", "noninteractive");
        run::patient(&mut command, "apt-get")
    };
    let outcome = apt(&["update"])
        .and_then(|()| apt(&[&["install", "--yes", "--no-install-recommends"], packages].concat()));
    if let Err(failure) = &outcome {
        eprintln!("{failure:#}");
    }
    outcome.is_ok()
}

fn succeeds(program: &str, arguments: &[&str]) -> bool {
    run::output(Command::new(program).args(arguments)).is_ok()
}

fn how_to_get() -> &'static str {
    match env::consts::OS {
        "linux" => {
            "install the packages chromium and chromium-driver (Debian), or chromium and chromedriver as your system names them"
        }
        "macos" => "brew install --cask google-chrome chromedriver",
        _ => {
            "install Google Chrome and the chromedriver of the same version, and put chromedriver on PATH"
        }
    }
}
