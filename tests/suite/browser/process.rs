//! Other programs that a test needs, stopped with it.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, Instant};

/// A busy machine may start several browsers at once.
const PATIENCE: Duration = Duration::from_secs(30);
const ATTEMPTS: u32 = 3;

pub(super) struct Process {
    child: Child,
}

impl Process {
    /// Starts a program and waits until it writes a line that `read` understands. One that stays mute
    /// is started again: of some hundred starts on a busy machine, one may fail.
    pub(super) fn start<T: Send + 'static>(
        command: &mut Command,
        read: fn(&str) -> Option<T>,
    ) -> (Self, T) {
        let name = command.get_program().to_string_lossy().into_owned();
        (0..ATTEMPTS)
            .find_map(|_| Self::started(command, &name, read))
            .unwrap_or_else(|| panic!("{name} did not say that it is ready, {ATTEMPTS} times"))
    }

    /// None when the program ends or waits without such a line.
    fn started<T: Send + 'static>(
        command: &mut Command,
        name: &str,
        read: fn(&str) -> Option<T>,
    ) -> Option<(Self, T)> {
        let mut child = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap_or_else(|error| panic!("{name} could not be started: {error}"));
        let stdout = child.stdout.take();
        let process = Self { child };
        let (send, receive) = mpsc::channel();
        thread::spawn(move || {
            // Reading goes on to the end: a program whose output nobody takes comes to a halt.
            for line in BufReader::new(stdout?).lines().map_while(Result::ok) {
                if let Some(value) = read(&line) {
                    let _ = send.send(value);
                }
            }
            Some(())
        });
        receive.recv_timeout(PATIENCE).ok().map(|value| (process, value))
    }

    pub(super) fn id(&self) -> u32 {
        self.child.id()
    }

    /// Waits for the program to end by itself. Drop ends it if it does not.
    pub(super) fn wait(&mut self, patience: Duration) {
        let started = Instant::now();
        while started.elapsed() < patience && matches!(self.child.try_wait(), Ok(None)) {
            thread::sleep(Duration::from_millis(10));
        }
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // It may have ended already; then there is nothing to do.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
