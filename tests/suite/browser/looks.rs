//! What a person sees of a page: its words, its picture, its print.

use std::fs;
use std::path::{Path, PathBuf};

use fantoccini::wd::PrintConfiguration;
use serde_json::{Value, json};

use super::page::Page;

#[derive(Clone, Copy, Debug)]
pub(super) enum Theme {
    Light,
    Dark,
}

impl Page {
    /// The words of the first visible element that a selector finds.
    #[track_caller]
    pub(super) fn text_of(&self, css: &str) -> String {
        self.wait(&format!("the text of {css}"), || self.visible(css)?.next().ok_or_else(nothing))
    }

    /// The words of all visible elements that a selector finds now, which may be none.
    #[track_caller]
    pub(super) fn texts_of(&self, css: &str) -> Vec<String> {
        self.asked(css, self.visible(css)).collect()
    }

    /// Opens all that opens, and what comes to light in it.
    #[track_caller]
    pub(super) fn unfold(&self) {
        const OPEN: &str = "const closed = document.querySelectorAll('details:not([open])');
            closed.forEach((part) => { part.open = true; });
            return closed.length";
        self.wait("opening all that opens", || {
            let opened = self.script(OPEN, vec![]);
            // Only now is there what stands in them.
            self.settle();
            if opened == 0 { Ok(()) } else { Err(format!("{opened} were closed")) }
        });
    }

    /// Waits until a selector finds something visible.
    #[track_caller]
    pub(super) fn wait_for(&self, css: &str) {
        self.wait(&format!("waiting for {css}"), || {
            self.visible(css)?.next().map(drop).ok_or_else(nothing)
        });
    }

    #[track_caller]
    pub(super) fn wait_for_text(&self, text: &str) {
        self.wait(&format!("waiting for {text:?}"), || {
            if self.shows(text)? { Ok(()) } else { Err("the page does not show it".to_owned()) }
        });
    }

    #[track_caller]
    pub(super) fn wait_until_gone(&self, text: &str) {
        self.wait(&format!("waiting until {text:?} is gone"), || {
            if self.shows(text)? { Err("the page still shows it".to_owned()) } else { Ok(()) }
        });
    }

    fn shows(&self, text: &str) -> Result<bool, String> {
        Ok(self.visible("body")?.any(|seen| seen.contains(text)))
    }

    /// The words of visible elements, with each run of white space as one space.
    fn visible(&self, css: &str) -> Result<impl Iterator<Item = String> + use<>, String> {
        let script = "return [...document.querySelectorAll(arguments[0])]
            .filter((element) => element.checkVisibility({ visibilityProperty: true }))
            .map((element) => element.innerText ?? element.textContent)";
        let found = self
            .wait_on(self.client.execute(script, vec![json!(css)]))
            .map_err(|error| error.to_string())?;
        let Value::Array(texts) = found else { return Err("the page did not answer".to_owned()) };
        Ok(texts.into_iter().map(|text| {
            let words: Vec<_> = text.as_str().unwrap_or_default().split_whitespace().collect();
            words.join(" ")
        }))
    }

    /// What reaches past the right edge; empty when nothing has to be scrolled sideways.
    ///
    /// A phone zooms out for what is too wide, so that its own width tells nothing: that of the view
    /// does.
    #[track_caller]
    pub(super) fn sideways(&self) -> String {
        const SCRIPT: &str = "
            const [width] = arguments;
            const beyond = document.documentElement.scrollWidth - width;
            if (beyond <= 0) return '';
            const out = [...document.querySelectorAll('body *')]
              .filter((e) => e.getBoundingClientRect().right > width + 0.5 && !e.closest('.scroll'))
              .map((e) => `${e.localName}.${e.className?.baseVal ?? e.className} ${e.textContent.trim().slice(0, 30)}`);
            return `${beyond} px past the right edge, by ${out.slice(-3).join('; ')}`;";
        let answer = self.script(SCRIPT, vec![json!(self.view.size().0)]);
        answer.as_str().unwrap_or_default().to_owned()
    }

    /// How the page looks to a person whose system is light or dark; a fresh browser is light.
    #[track_caller]
    pub(super) fn emulate(&self, theme: Theme) {
        let value = match theme {
            Theme::Light => "light",
            Theme::Dark => "dark",
        };
        let features = json!([{ "name": "prefers-color-scheme", "value": value }]);
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": features }));
    }

    /// The visible part of the page as target/browser/NAME.png.
    #[track_caller]
    pub(super) fn screenshot(&self, name: &str) -> PathBuf {
        let png = self.asked("a picture", self.wait_on(self.client.screenshot()));
        self.asked("keeping a picture", keep(&format!("{name}.png"), &png))
    }

    /// The page from top to bottom as target/browser/NAME.png, at one pixel a point.
    #[track_caller]
    pub(super) fn picture_of_all(&self, name: &str) -> PathBuf {
        let (width, height) = self.view.size();
        let metrics = |height: u32, scale: u32| {
            let mobile = self.view.touch();
            let values = json!({
                "width": width, "height": height, "deviceScaleFactor": scale, "mobile": mobile,
            });
            self.devtools("Emulation.setDeviceMetricsOverride", values);
        };
        let high = self.script("return document.documentElement.scrollHeight", vec![]);
        metrics(high.as_u64().and_then(|high| u32::try_from(high).ok()).unwrap_or(height), 1);
        let picture = self.screenshot(name);
        metrics(height, 2);
        picture
    }

    /// The page as it prints, as target/browser/NAME.pdf.
    #[track_caller]
    pub(super) fn print_pdf(&self, name: &str) -> PathBuf {
        let print = self.client.print(PrintConfiguration::default());
        let pdf = self.asked("printing", self.wait_on(print));
        self.asked("keeping a print", keep(&format!("{name}.pdf"), &pdf))
    }
}

/// Keeps what a person may want to look at after the tests.
pub(super) fn keep(name: &str, bytes: &[u8]) -> Result<PathBuf, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).with_file_name("target").join("browser");
    let file = folder.join(name);
    fs::create_dir_all(&folder)
        .and_then(|()| fs::write(&file, bytes))
        .map_err(|error| format!("{}: {error}", file.display()))?;
    Ok(file)
}

fn nothing() -> String {
    "nothing visible is there".to_owned()
}
