//! The server of the finished page, which a test may stop and start again.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::path_from;
use super::process::Process;

pub(super) struct Server {
    port: u16,
    /// The folder whose files are served.
    dist: PathBuf,
    process: Option<Process>,
}

impl Server {
    pub(super) fn start() -> Self {
        let dist = path_from("FINRUN_DIST");
        let (process, port) = serve(&dist, 0);
        Self { port, dist, process: Some(process) }
    }

    /// From now on there is no network, as far as the page can tell.
    pub(super) fn stop(&mut self) {
        self.process = None;
    }

    /// Starts again under the same address, so that the page's storage and worker still belong to it.
    pub(super) fn start_again(&mut self) {
        self.stop();
        self.process = Some(serve(&self.dist, self.port).0);
    }

    /// From now on the same address has the files of another folder, as after an update.
    pub(super) fn publish(&mut self, dist: &Path) {
        self.dist = dist.to_owned();
        self.start_again();
    }

    pub(super) fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

fn serve(dist: &Path, port: u16) -> (Process, u16) {
    let mut command = Command::new(path_from("FINRUN_XTASK"));
    command.args(["serve", "--port", &port.to_string(), "--dist"]).arg(dist);
    Process::start(&mut command, |line| {
        line.strip_prefix("http://127.0.0.1:")?.strip_suffix('/')?.parse().ok()
    })
}
