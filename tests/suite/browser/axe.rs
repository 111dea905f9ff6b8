//! The accessibility rules of axe-core, run on the page as it stands.

use std::{fmt, fs};

use serde::Deserialize;
use serde_json::json;

use super::page::Page;
use super::path_from;

const TAGS: [&str; 6] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/// The rules that look at colours.
const COLOURS: [&str; 2] = ["color-contrast", "link-in-text-block"];

const RUN: &str = "
    const [type, values, done] = arguments;
    const inWords = ({ id, help, nodes }) => ({ rule: id, help, places: nodes.map((node) => node.html) });
    axe.run(document, { runOnly: { type, values }, resultTypes: ['violations'] })
      .then(({ violations }) => done({ violations: violations.map(inWords) }))
      .catch((error) => done({ error: String(error) }));
";

#[derive(Debug, Deserialize)]
pub(super) struct Violation {
    pub(super) rule: String,
    help: String,
    places: Vec<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.rule, self.help)?;
        self.places.iter().try_for_each(|place| write!(f, "\n    {place}"))
    }
}

/// What the rules find wrong. The page's security policy stays in force: the driver's scripts stand
/// outside it, as the browser's own tools do.
#[track_caller]
pub(super) fn axe(page: &Page) -> Vec<Violation> {
    judge(page, "tag", &TAGS)
}

/// What is wrong with the colours, for a page of which all else was judged in another theme.
#[track_caller]
pub(super) fn axe_on_colours(page: &Page) -> Vec<Violation> {
    judge(page, "rule", &COLOURS)
}

#[track_caller]
fn judge(page: &Page, by: &str, names: &[&str]) -> Vec<Violation> {
    let file = path_from("FINRUN_AXE");
    // It stays until the page is loaded anew.
    if page.script("return typeof axe === 'undefined'", Vec::new()) == json!(true) {
        let source = page.asked(&file.display().to_string(), fs::read_to_string(&file));
        page.script(&source, Vec::new());
    }
    let answer = page.wait_on(page.client.execute_async(RUN, vec![json!(by), json!(names)]));
    let mut answer = page.asked("axe", answer);
    let violations = serde_json::from_value(answer["violations"].take());
    page.asked(&format!("axe, which answered {answer}"), violations)
}
