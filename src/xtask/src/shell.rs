//! The part that works without a network: completes the service worker with the list of all files
//! and a version made from all contents.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::prelude::{BASE64_STANDARD, Engine};
use sha2::{Digest, Sha256};

use crate::sizes;

const WORKER: &str = "sw.js";
const UNBUILT: [&str; 2] = ["const VERSION = 'unbuilt';", "const FILES = [];"];

pub(crate) fn complete(dist: &Path) -> Result<()> {
    let file = dist.join(WORKER);
    let template =
        fs::read_to_string(&file).context("cannot read the service worker's template")?;
    for line in UNBUILT {
        ensure!(template.contains(line), "public/{WORKER} no longer has the line `{line}`");
    }

    // The worker's own text counts too: a cache is never shared by two workers that differ.
    let mut all = Sha256::new_with_prefix(&template);
    let mut list = Vec::new();
    for name in sizes::files_in(dist)?.into_iter().filter(|name| name != WORKER) {
        let digest = Sha256::digest(fs::read(dist.join(&name))?);
        all.update(&name);
        all.update(digest);
        // Hosts may redirect index.html to its folder, and a redirected page cannot be kept.
        let address = if name == "index.html" { "" } else { &name };
        let digest = BASE64_STANDARD.encode(digest);
        list.push(format!("  ['./{address}', 'sha256-{digest}'],\n"));
    }
    let version: String = all.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect();

    let [version_line, files_line] = UNBUILT;
    let worker = template
        .replace(version_line, &format!("const VERSION = '{version}';"))
        .replace(files_line, &format!("const FILES = [\n{}];", list.concat()));
    fs::write(&file, worker).context("cannot write the service worker")
}
