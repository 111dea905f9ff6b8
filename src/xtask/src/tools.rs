//! The pinned tools that build the page, installed once into the user's cache folder.
//!
//! They stand in `finrun/tools/NAME-VERSION/`, so that every clone finds them. A tool is built in a
//! folder beside its place and moved there when it is whole; a lock lets a second clone wait for the
//! first instead of building the same again.

use std::env;
use std::ffi::OsString;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::{project, run};

const TRUNK: &str = "0.21.14";
const BINARYEN: &str = "132.0.0";
const AXE: &str = "4.14.1";
/// Later ones want a newer Node than many systems have.
const LIGHTHOUSE: &str = "12.2.3";

/// Where the tools stand.
pub(crate) struct Tools {
    pub(crate) trunk: PathBuf,
    /// PATH for Trunk: ours first, so that it finds the pinned wasm-bindgen and fetches nothing.
    pub(crate) path: OsString,
    /// wasm-opt as a program for Node.
    pub(crate) wasm_opt: PathBuf,
}

/// Finds every tool, installing what is missing.
pub(crate) fn ready() -> Result<Tools> {
    // Before anything that takes minutes.
    run::output(Command::new("node").arg("--version")).context("wasm-opt runs on Node")?;
    wasm_target()?;
    let bindgen_version = locked_version("wasm-bindgen")?;
    let trunk =
        kept(&format!("trunk-{TRUNK}"), "building Trunk, once, two to five minutes", |to| {
            cargo_install(to, "trunk", TRUNK, &["--locked", "--no-default-features"])
        })?;
    // Without --locked: its own lock file names a package that is no longer served.
    let bindgen = kept(
        &format!("wasm-bindgen-{bindgen_version}"),
        "building wasm-bindgen, once, one to two minutes",
        |to| cargo_install(to, "wasm-bindgen-cli", &bindgen_version, &[]),
    )?;
    let binaryen =
        kept(&format!("binaryen-{BINARYEN}"), "fetching wasm-opt, once, some seconds", |to| {
            npm_install(to, "binaryen", BINARYEN)
        })?;
    Ok(Tools {
        trunk: trunk.join("bin/trunk"),
        path: path_with(&bindgen.join("bin"))?,
        wasm_opt: binaryen.join("node_modules/binaryen/bin/wasm-opt"),
    })
}

/// The rules by which the tests judge whether everyone can use the page, as a script.
pub(crate) fn axe() -> Result<PathBuf> {
    let axe = kept(&format!("axe-core-{AXE}"), "fetching axe-core, once, some seconds", |to| {
        npm_install(to, "axe-core", AXE)
    })?;
    Ok(axe.join("node_modules/axe-core/axe.min.js"))
}

/// The packages by which `cargo xtask audit` measures: Lighthouse, and what it drives a browser with.
pub(crate) fn lighthouse() -> Result<PathBuf> {
    run::output(Command::new("node").arg("--version")).context("Lighthouse runs on Node")?;
    let name = format!("lighthouse-{LIGHTHOUSE}");
    let lighthouse = kept(&name, "fetching Lighthouse, once, a minute", |to| {
        npm_install(to, "lighthouse", LIGHTHOUSE)
    })?;
    Ok(lighthouse.join("node_modules"))
}

/// The standard library for wasm. Looked for first without rustup, which not every system has.
fn wasm_target() -> Result<()> {
    const TARGET: &str = "wasm32-unknown-unknown";
    let library =
        run::output(Command::new("rustc").args(["--print", "target-libdir", "--target", TARGET]))?;
    if Path::new(library.trim()).is_dir() {
        return Ok(());
    }
    eprintln!("adding the {TARGET} target to Rust, once");
    run::patient(
        Command::new("rustup").args(["target", "add", TARGET]).current_dir(project::root()),
        "adding the wasm target",
    )
}

fn cargo_install(to: &Path, name: &str, version: &str, options: &[&str]) -> Result<()> {
    let build = to.join("build");
    let mut cargo = project::cargo();
    cargo
        .args(["install", name, "--version", version])
        .args(options)
        .arg("--root")
        .arg(to)
        // Unoptimised builds are several times faster, and the tools run for seconds only.
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
        .env("CARGO_TARGET_DIR", &build)
        .env_remove("RUSTFLAGS");
    run::patient(&mut cargo, &format!("installing {name} {version}"))?;
    fs::remove_dir_all(&build).context("cannot remove the tool's build files")
}

fn npm_install(to: &Path, name: &str, version: &str) -> Result<()> {
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    let mut npm = Command::new(npm);
    // npm would wait for a minute before it says that there is no network.
    npm.args(["--fetch-retries=1", "--fetch-retry-mintimeout=1000"]);
    npm.args(["install", "--no-save", "--no-audit", "--no-fund", "--prefix"])
        .arg(to)
        .arg(format!("{name}@{version}"))
        .current_dir(to);
    run::patient(&mut npm, &format!("installing {name} with npm"))
}

/// The folder of a tool; `install` fills a fresh folder if there is none yet.
fn kept(name: &str, notice: &str, install: impl FnOnce(&Path) -> Result<()>) -> Result<PathBuf> {
    let shelf = shelf()?;
    let place = shelf.join(name);
    if place.is_dir() {
        return Ok(place);
    }
    fs::create_dir_all(&shelf).with_context(|| format!("cannot make {}", shelf.display()))?;
    let lock = File::create(shelf.join("lock"))
        .with_context(|| format!("cannot write in {}", shelf.display()))?;
    lock.lock().context("cannot lock the tools folder")?;
    if place.is_dir() {
        return Ok(place);
    }
    eprintln!("{name}: {notice}");
    let part = shelf.join(format!("{name}.part"));
    if part.exists() {
        fs::remove_dir_all(&part).with_context(|| format!("cannot remove {}", part.display()))?;
    }
    fs::create_dir_all(&part).with_context(|| format!("cannot make {}", part.display()))?;
    install(&part)?;
    fs::rename(&part, &place).with_context(|| format!("cannot move to {}", place.display()))?;
    Ok(place)
}

fn shelf() -> Result<PathBuf> {
    let set = |name: &str| env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    set("XDG_CACHE_HOME")
        .or_else(|| set("HOME").map(|home| home.join(".cache")))
        .or_else(|| set("LOCALAPPDATA"))
        .map(|cache| cache.join("finrun/tools"))
        .context("no place for the tools: neither XDG_CACHE_HOME nor HOME is set")
}

fn path_with(folder: &Path) -> Result<OsString> {
    let present = env::var_os("PATH").unwrap_or_default();
    let folders = std::iter::once(folder.to_owned()).chain(env::split_paths(&present));
    env::join_paths(folders).context("PATH cannot be extended")
}

/// The version that Cargo.lock holds: wasm-bindgen's tool and library must be the same one.
fn locked_version(package: &str) -> Result<String> {
    let file = project::root().join("Cargo.lock");
    let text =
        fs::read_to_string(&file).with_context(|| format!("cannot read {}", file.display()))?;
    let named = format!("name = \"{package}\"");
    text.lines()
        .skip_while(|line| *line != named)
        .nth(1)
        .and_then(|line| line.strip_prefix("version = \"")?.strip_suffix('"'))
        .map(str::to_owned)
        .with_context(|| format!("Cargo.lock names no {package}"))
}
