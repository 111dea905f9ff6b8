//! Where things stand in this clone.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The folder of the workspace. Taken at compile time: the browser tests run this program with
/// another package's variables set.
pub(crate) fn root() -> PathBuf {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    package.ancestors().nth(2).map_or_else(|| package.to_owned(), Path::to_owned)
}

/// Where the finished page stands.
pub(crate) fn dist() -> PathBuf {
    root().join("target/dist")
}

/// Cargo, started in the workspace.
pub(crate) fn cargo() -> Command {
    let mut cargo = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.current_dir(root());
    cargo
}
