//! A browser with its driver, and commands that only Chrome's driver knows.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

use super::page::View;
use super::path_from;
use super::process::Process;

/// The driver's process, and through it the browser's.
pub(super) struct Driver {
    process: Process,
    port: u16,
}

impl Driver {
    pub(super) fn start() -> Self {
        let mut command = Command::new(path_from("FINRUN_CHROMEDRIVER"));
        command.arg("--port=0").stderr(Stdio::null());
        let (process, port) = Process::start(&mut command, |line| {
            line.split_once("successfully on port ")?.1.trim_end_matches('.').parse().ok()
        });
        Self { process, port }
    }

    /// Opens the browser on the profile in `profile`, whose reader would like pages in `languages`; what
    /// it asks of the network goes to `network_log`.
    pub(super) async fn open(
        &self,
        view: View,
        languages: &str,
        profile: &Path,
        network_log: &Path,
    ) -> Client {
        let capabilities = capabilities(view, languages, profile, network_log);
        let address = format!("http://127.0.0.1:{}", self.port);
        ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&address)
            .await
            .unwrap_or_else(|error| panic!("the browser did not start: {error}"))
    }

    /// All processes that come from the driver, with their commands, parents before children.
    pub(super) fn children(&self) -> Vec<(u32, String)> {
        let list = Command::new("ps").args(["-eo", "pid=,ppid=,args="]).output();
        let list = String::from_utf8_lossy(&list.expect("ps can be run").stdout).into_owned();
        let all = list.lines().filter_map(|line| {
            let (id, rest) = line.trim_start().split_once(' ')?;
            let (parent, command) = rest.trim_start().split_once(' ')?;
            Some((id.parse::<u32>().ok()?, parent.parse::<u32>().ok()?, command))
        });
        let all: Vec<_> = all.collect();
        let (mut family, mut found) = (vec![self.process.id()], Vec::new());
        let mut next = 0;
        while let Some(&parent) = family.get(next) {
            next += 1;
            for (id, _, command) in all.iter().filter(|(_, of, _)| *of == parent) {
                family.push(*id);
                found.push((*id, (*command).to_owned()));
            }
        }
        found
    }

    /// Asks for an orderly end. The browser writes its storage and its log, and goes with the driver;
    /// ended by force, the driver would leave the browser running.
    fn shut_down(&self) -> std::io::Result<()> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        stream
            .write_all(b"GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")?;
        stream.read_to_end(&mut Vec::new())?;
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // If this fails the driver is gone or stuck, and its process is ended by force.
        let _ = self.shut_down();
        self.process.wait(Duration::from_secs(10));
    }
}

fn capabilities(view: View, languages: &str, profile: &Path, network_log: &Path) -> Capabilities {
    let (width, height) = view.size();
    let touch = view.touch();
    let asked = json!({
        "goog:loggingPrefs": { "browser": "ALL" },
        "goog:chromeOptions": {
            "binary": path_from("FINRUN_CHROME"),
            "args": [
                "headless",
                "disable-gpu",
                "disable-quic",
                "no-first-run",
                "disable-background-networking",
                "disable-component-update",
                "disable-sync",
                // Its reporter outlives the browser.
                "disable-crash-reporter",
                "disable-breakpad",
                // Root and containers allow no sandbox and little shared memory; the only page is ours.
                "no-sandbox",
                "disable-dev-shm-usage",
                // What the browser itself calls home about ends at a closed port. This machine's own
                // addresses are exempt by rule.
                "proxy-server=http://127.0.0.1:9",
                format!("user-data-dir={}", profile.display()),
                format!("log-net-log={}", network_log.display()),
            ],
            "prefs": {
                // Some packages open a start page of their own, which asks for a hundred files.
                "session": { "restore_on_startup": 4, "startup_urls": ["about:blank"] },
                "intl": { "accept_languages": languages, "selected_languages": languages },
                "download": { "default_directory": profile.join("downloads") },
            },
            // A headless window has a least width above a phone's, and its frame takes some of the
            // height; emulated sizes are exact.
            "mobileEmulation": { "deviceMetrics": {
                "width": width, "height": height, "pixelRatio": 2, "mobile": touch, "touch": touch,
            } },
        },
    });
    match asked {
        Value::Object(capabilities) => capabilities,
        _ => Capabilities::new(),
    }
}

/// Lines of the browser's console since the last call.
pub(super) async fn console(client: &Client) -> Result<Value, String> {
    let command = Extra { path: "se/log", body: json!({ "type": "browser" }) };
    client.issue_cmd(command).await.map_err(|error| error.to_string())
}

/// A command of the browser's developer tools.
pub(super) async fn devtools(client: &Client, name: &str, values: Value) -> Result<Value, String> {
    let body = json!({ "cmd": name, "params": values });
    let command = Extra { path: "goog/cdp/execute", body };
    client.issue_cmd(command).await.map_err(|error| format!("{name}: {error}"))
}

/// A command beyond the WebDriver standard.
#[derive(Debug)]
struct Extra {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extra {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
