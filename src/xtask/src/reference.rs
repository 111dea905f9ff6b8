//! `cargo xtask reference [DIR]`: the engine against check data made outside it.

use std::path::Path;

use anyhow::{Result, bail};

pub(crate) fn reference(folder: &Path) -> Result<()> {
    bail!("reference is not written yet ({})", folder.display())
}
