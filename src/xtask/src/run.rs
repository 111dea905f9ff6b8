//! Running other programs, and one clear line when one of them fails.

use std::collections::VecDeque;
use std::io::{self, BufRead, BufReader};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Result, anyhow, bail};

/// Runs a program whose own output tells the person what it does.
pub(crate) fn loud(command: &mut Command, what: &str) -> Result<()> {
    let status = command.status().map_err(|error| not_started(command, &error))?;
    if !status.success() {
        bail!("{what} failed ({status}); its message stands above");
    }
    Ok(())
}

/// Runs a program and returns what it wrote to standard output.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command.output().map_err(|error| not_started(command, &error))?;
    if !output.status.success() {
        let message = String::from_utf8_lossy(&output.stderr);
        bail!("{} failed: {}", name(command), message.trim());
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// Runs a program that takes minutes: a line now and then says that it goes on, and its own
/// output is shown only if it fails.
pub(crate) fn patient(command: &mut Command, what: &str) -> Result<()> {
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .map_err(|error| not_started(command, &error))?;
    let mut last = VecDeque::new();
    if let Some(stderr) = child.stderr.take() {
        let mut progress = Progress::new();
        for line in BufReader::new(stderr).lines().map_while(Result::ok) {
            progress.saw(&line);
            last.push_back(line);
            if last.len() > 40 {
                last.pop_front();
            }
        }
    }
    let status = child.wait()?;
    if status.success() {
        return Ok(());
    }
    let said: Vec<String> = last.into();
    if is_network_failure(&said) {
        bail!("{what} needs a network, this once, and found none");
    }
    for line in &said {
        eprintln!("    {line}");
    }
    bail!("{what} failed ({status}); its last lines stand above")
}

struct Progress {
    started: Instant,
    spoke: Instant,
    packages: usize,
}

impl Progress {
    fn new() -> Self {
        let now = Instant::now();
        Self { started: now, spoke: now, packages: 0 }
    }

    fn saw(&mut self, line: &str) {
        if line.trim_start().starts_with("Compiling ") {
            self.packages += 1;
        }
        if self.packages > 0 && self.spoke.elapsed() > Duration::from_secs(10) {
            self.spoke = Instant::now();
            let seconds = self.started.elapsed().as_secs();
            eprintln!("    {seconds} s, {} packages so far", self.packages);
        }
    }
}

fn is_network_failure(said: &[String]) -> bool {
    const SIGNS: [&str; 9] = [
        "could not resolve",
        "couldn't resolve",
        "failed to connect",
        "could not connect",
        "couldn't connect",
        "network failure",
        "enotfound",
        "eai_again",
        "econnrefused",
    ];
    said.iter().any(|line| {
        let line = line.to_lowercase();
        SIGNS.iter().any(|sign| line.contains(sign))
    })
}

fn not_started(command: &Command, error: &io::Error) -> anyhow::Error {
    let name = name(command);
    if error.kind() == io::ErrorKind::NotFound {
        anyhow!("{name} is not on PATH; {}", how_to_get(&name))
    } else {
        anyhow!("{name} could not be started: {error}")
    }
}

fn how_to_get(name: &str) -> &'static str {
    match name {
        "node" | "npm" | "npm.cmd" => {
            "install Node.js 18 or later with npm, from nodejs.org or your system's packages"
        }
        "cargo" | "rustc" | "rustup" => "install Rust from rustup.rs",
        _ => "install it and try again",
    }
}

fn name(command: &Command) -> String {
    command.get_program().to_string_lossy().into_owned()
}
