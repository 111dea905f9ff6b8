//! A page in a browser of its own: opening, waiting, and saying clearly what was seen instead.

use std::cell::{Cell, RefCell};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use std::{mem, thread};

use fantoccini::Client;
use serde_json::{Value, json};
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};

use super::driver::{self, Driver};
use super::network;
use super::server::Server;

const PAUSE: Duration = Duration::from_millis(30);

/// The sizes in which pages are looked at, in CSS pixels.
#[derive(Clone, Copy, Debug)]
pub(super) enum View {
    /// A usual phone, 390 by 844, touched.
    Phone,
    /// The narrowest phone that counts, 320 by 640, touched.
    Narrow,
    /// A small laptop, 1280 by 800, with a mouse.
    Desk,
}

impl View {
    pub(super) fn size(self) -> (u32, u32) {
        match self {
            Self::Phone => (390, 844),
            Self::Narrow => (320, 640),
            Self::Desk => (1280, 800),
        }
    }

    pub(super) fn touch(self) -> bool {
        matches!(self, Self::Phone | Self::Narrow)
    }
}

/// Fields are dropped from the top: the browser ends before its server and its profile.
pub(super) struct Page {
    pub(super) client: Client,
    runtime: Runtime,
    driver: Driver,
    pub(super) server: Server,
    pub(super) view: View,
    languages: &'static str,
    /// How long a person waits. Much longer than anything should take, so that a busy machine fails
    /// no test.
    pub(super) patience: Duration,
    /// The headings of the parts of the page that a person is looking at, the outer one first.
    pub(super) parts: RefCell<Vec<String>>,
    /// What a person has typed, pressed and chosen, counted.
    pub(super) steps: Cell<usize>,
    errors: RefCell<Vec<String>>,
    /// One log for each time the browser was opened.
    network_logs: Vec<PathBuf>,
    home: TempDir,
}

impl Page {
    #[track_caller]
    pub(super) fn start(view: View) -> Self {
        Self::start_in(view, "en-US,en")
    }

    /// Starts with a browser that is set to languages, the first one first.
    #[track_caller]
    pub(super) fn start_in(view: View, languages: &'static str) -> Self {
        let server = Server::start();
        let home =
            TempDir::with_prefix("finrun-browser-").expect("the temporary folder is writable");
        let runtime =
            Builder::new_current_thread().enable_all().build().expect("a runtime can be made");
        let driver = Driver::start();
        let log = home.path().join("network-0.json");
        let client =
            runtime.block_on(driver.open(view, languages, &home.path().join("profile"), &log));
        Self {
            client,
            runtime,
            driver,
            server,
            view,
            languages,
            patience: Duration::from_secs(10),
            parts: RefCell::default(),
            steps: Cell::default(),
            errors: RefCell::default(),
            network_logs: vec![log],
            home,
        }
    }

    /// Opens an address of the page, such as `/` or `/#rooms`.
    #[track_caller]
    pub(super) fn open(&self, path: &str) {
        let address = self.server.origin() + path;
        self.asked(&format!("opening {path}"), self.wait_on(self.client.goto(&address)));
    }

    /// Opens a file as from a disk.
    #[track_caller]
    pub(super) fn open_file(&self, file: &Path) {
        let address = format!("file://{}", file.display());
        self.asked(&format!("opening {address}"), self.wait_on(self.client.goto(&address)));
    }

    #[track_caller]
    pub(super) fn reload(&self) {
        self.asked("loading again", self.wait_on(self.client.refresh()));
    }

    /// Closes the browser and opens it anew on the same profile, as on another day, at a blank page.
    #[track_caller]
    pub(super) fn close_and_reopen(&mut self) {
        self.keep_console();
        self.reopen_after_death();
    }

    /// Opens the browser anew on the same profile; the one before cannot be asked any more.
    pub(super) fn reopen_after_death(&mut self) {
        // The first browser must have gone before another may use its profile.
        drop(mem::replace(&mut self.driver, Driver::start()));
        let log = self.home.path().join(format!("network-{}.json", self.network_logs.len()));
        let profile = self.home.path().join("profile");
        self.client =
            self.runtime.block_on(self.driver.open(self.view, self.languages, &profile, &log));
        self.network_logs.push(log);
    }

    /// The browser's processes with their commands, the first one first.
    pub(super) fn browser_processes(&self) -> Vec<(u32, String)> {
        self.driver.children()
    }

    /// Closes the browser, and tells what no test may leave behind: errors in the console, and
    /// requests to other origins.
    #[track_caller]
    pub(super) fn close(self) -> Vec<String> {
        let mut complaints: Vec<String> = self
            .console_errors()
            .into_iter()
            .map(|error| format!("in the console: {error}"))
            .collect();
        let Self { client, runtime, driver, server, network_logs, home, .. } = self;
        drop((client, runtime, driver));
        let origin = server.origin();
        let mut requests = network::requests(&network_logs, &origin);
        requests.retain(|url| !network::is_within(url, &origin));
        complaints
            .extend(requests.into_iter().map(|url| format!("asked of another origin: {url}")));
        drop(home);
        complaints
    }

    /// Every address that the page and its worker asked the network for, in order. The newest may
    /// come late; `close` misses none.
    pub(super) fn requests(&self) -> Vec<String> {
        network::requests(&self.network_logs, &self.server.origin())
    }

    /// Errors in the console, content that the security policy refused among them. Each is told once,
    /// so that a test which expects some takes them away by asking.
    #[track_caller]
    pub(super) fn console_errors(&self) -> Vec<String> {
        self.keep_console();
        self.errors.take()
    }

    #[track_caller]
    fn keep_console(&self) {
        let lines = self.asked("the console", self.wait_on(driver::console(&self.client)));
        let lines = lines.as_array().cloned().unwrap_or_default();
        let severe = lines.iter().filter(|line| line["level"] == "SEVERE");
        let messages = severe.map(|line| line["message"].as_str().unwrap_or_default().to_owned());
        self.errors.borrow_mut().extend(messages);
    }

    /// A file that the page has saved by download.
    #[track_caller]
    pub(super) fn downloaded(&self, name: &str) -> Vec<u8> {
        let file = self.home.path().join("profile/downloads").join(name);
        // An empty file keeps its place until it is whole.
        self.wait(&format!("the download {name}"), || match std::fs::read(&file) {
            Ok(bytes) if bytes.is_empty() => Err("it is empty".to_owned()),
            other => other.map_err(|error| error.to_string()),
        })
    }

    #[track_caller]
    pub(super) fn script(&self, script: &str, arguments: Vec<Value>) -> Value {
        self.asked("a script", self.wait_on(self.client.execute(script, arguments)))
    }

    #[track_caller]
    pub(super) fn devtools(&self, name: &str, values: Value) -> Value {
        self.asked(name, self.wait_on(driver::devtools(&self.client, name, values)))
    }

    pub(super) fn wait_on<T>(&self, work: impl Future<Output = T>) -> T {
        self.runtime.block_on(work)
    }

    /// Tries until it succeeds. What was missing at the last try stands in the failure.
    #[track_caller]
    pub(super) fn wait<T>(&self, what: &str, attempt: impl Fn() -> Result<T, String>) -> T {
        let started = Instant::now();
        loop {
            match attempt() {
                Ok(found) => return found,
                Err(_) if started.elapsed() < self.patience => thread::sleep(PAUSE),
                Err(missing) => self.fail(&format!("{what}: {missing}")),
            }
        }
    }

    #[track_caller]
    pub(super) fn asked<T>(&self, what: &str, answer: Result<T, impl ToString>) -> T {
        match answer {
            Ok(value) => value,
            Err(error) => self.fail(&format!("{what}: {}", error.to_string())),
        }
    }

    /// Ends the test with all that helps to understand why.
    #[track_caller]
    pub(super) fn fail(&self, message: &str) -> ! {
        let test = thread::current().name().unwrap_or("page").replace("::", "-");
        let picture = self
            .wait_on(self.client.screenshot())
            .map_err(|error| error.to_string())
            .and_then(|png| super::looks::keep(&format!("{test}-failed.png"), &png));
        let picture = picture.map_or_else(|error| error, |path| path.display().to_string());
        let seen = self.wait_on(
            self.client.execute("return [location.href, document.body?.innerText]", Vec::new()),
        );
        let seen = seen.unwrap_or_else(|error| json!([error.to_string(), ""]));
        let console = self.wait_on(driver::console(&self.client)).unwrap_or_default();
        panic!(
            "{message}\n  picture: {picture}\n  address: {}\n  console: {:?} {console}\n  text:\n{}",
            seen[0],
            self.errors.take(),
            seen[1].as_str().unwrap_or_default(),
        )
    }
}
