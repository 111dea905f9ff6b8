//! The release build of the page: Trunk, then wasm-opt, then the service worker.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::tools::Tools;
use crate::{one_file, project, run, shell, tools};

/// Builds the page into target/dist, which is replaced only by a finished build.
pub(crate) fn build() -> Result<PathBuf> {
    let tools = tools::ready()?;
    fetch_packages()?;
    let next = project::root().join("target/dist-next");
    clear(&next)?;
    trunk(&tools, &next)?;
    shrink(&tools, &next.join("finrun_bg.wasm"))?;
    shell::complete(&next)?;
    one_file::write(&next)?;
    let dist = project::dist();
    clear(&dist)?;
    fs::rename(&next, &dist).with_context(|| format!("cannot move to {}", dist.display()))?;
    Ok(dist)
}

/// All that the build takes from the network, so that the rest runs without one.
pub(crate) fn fetch_packages() -> Result<()> {
    run::patient(project::cargo().args(["fetch", "--locked"]), "fetching the Rust packages")
}

fn trunk(tools: &Tools, next: &Path) -> Result<()> {
    let mut trunk = Command::new(&tools.trunk);
    trunk
        .args(["--log", "warn", "build", "--offline", "--dist"])
        .arg(next)
        .current_dir(project::root())
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", page_flags())
        .env("PATH", &tools.path)
        // Trunk takes NO_COLOR for a switch and stops at the usual value 1.
        .env_remove("NO_COLOR");
    run::loud(&mut trunk, "the release build")
}

/// How the page is compiled: as by `.cargo/config.toml`, and with the paths of this machine, which
/// every panic message would carry, cut short.
fn page_flags() -> String {
    let mut flags = "--cfg=erase_components".to_string();
    let cargo_home = std::env::var("CARGO_HOME").map(PathBuf::from).ok();
    let home = std::env::var("HOME").map(PathBuf::from).ok();
    let cargo_home = cargo_home.or_else(|| home.map(|home| home.join(".cargo")));
    let sources = cargo_home.map(|home| home.join("registry/src"));
    // Each registry has a folder of its own below; a path with a space cannot be told to rustc here.
    let folders = sources.and_then(|path| fs::read_dir(path).ok()).into_iter().flatten().flatten();
    for folder in folders {
        let folder = folder.path().display().to_string();
        if !folder.contains(' ') {
            flags.push_str(&format!(" --remap-path-prefix={folder}/="));
        }
    }
    flags
}

fn shrink(tools: &Tools, wasm: &Path) -> Result<()> {
    let smaller = wasm.with_extension("smaller");
    let mut node = Command::new("node");
    node.arg(&tools.wasm_opt).arg("-Oz").arg(wasm).arg("--output").arg(&smaller);
    run::loud(&mut node, "wasm-opt")?;
    fs::rename(&smaller, wasm).context("cannot replace the wasm by its smaller form")
}

fn clear(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("cannot clear {}", folder.display()))?;
    }
    Ok(())
}
