//! The server of the finished page, which a test may stop and start again.

use std::process::Command;

use super::path_from;
use super::process::Process;

pub(super) struct Server {
    port: u16,
    process: Option<Process>,
}

impl Server {
    pub(super) fn start() -> Self {
        let (process, port) = serve(0);
        Self { port, process: Some(process) }
    }

    /// From now on there is no network, as far as the page can tell.
    pub(super) fn stop(&mut self) {
        self.process = None;
    }

    /// Starts again under the same address, so that the page's storage and worker still belong to it.
    pub(super) fn start_again(&mut self) {
        self.stop();
        self.process = Some(serve(self.port).0);
    }

    pub(super) fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

fn serve(port: u16) -> (Process, u16) {
    let mut command = Command::new(path_from("FINRUN_XTASK"));
    command.args(["serve", "--built", "--port", &port.to_string()]);
    Process::start(&mut command, |line| {
        line.strip_prefix("http://127.0.0.1:")?.strip_suffix('/')?.parse().ok()
    })
}
