//! A printed PDF as poppler's `pdftotext` reads it: pages with their sizes, words with their places.

use std::path::Path;
use std::process::Command;

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use serde_json::json;

use super::page::Page;
use super::{looks, path_from};

/// A page of paper, in points of 1/72 in.
pub(super) struct Sheet {
    pub(super) size: (f64, f64),
    pub(super) words: Vec<Word>,
}

pub(super) struct Word {
    pub(super) text: String,
    /// Left, top, right, bottom.
    pub(super) at: [f64; 4],
}

impl Sheet {
    /// The words in lines from top to bottom, each from left to right across all columns.
    pub(super) fn lines(&self) -> Vec<String> {
        let mut words: Vec<&Word> = self.words.iter().collect();
        words.sort_by(|a, b| a.at[1].total_cmp(&b.at[1]));
        let mut lines: Vec<Vec<&Word>> = Vec::new();
        for word in words {
            match lines.last_mut() {
                Some(line) if (word.at[1] - line[0].at[1]).abs() < 2.5 => line.push(word),
                _ => lines.push(vec![word]),
            }
        }
        for line in &mut lines {
            line.sort_by(|a, b| a.at[0].total_cmp(&b.at[0]));
        }
        let text = |word: &&Word| word.text.clone();
        lines.iter().map(|line| line.iter().map(text).collect::<Vec<_>>().join(" ")).collect()
    }
}

impl Page {
    /// The page as it prints on the paper of its own choice, kept as target/browser/NAME.pdf and read.
    ///
    /// The standard's own command lays every page out on the paper that the driver names.
    #[track_caller]
    pub(super) fn printed(&self, name: &str) -> Vec<Sheet> {
        let asked = json!({ "preferCSSPageSize": true, "printBackground": true });
        let answer = self.devtools("Page.printToPDF", asked);
        let data = answer["data"].as_str().unwrap_or_default();
        let pdf = self.asked("the print", BASE64_STANDARD.decode(data));
        let file = self.asked("keeping a print", looks::keep(&format!("{name}.pdf"), &pdf));
        read(&file)
    }
}

#[track_caller]
fn read(pdf: &Path) -> Vec<Sheet> {
    let output =
        Command::new(path_from("FINRUN_PDFTOTEXT")).arg("-bbox").arg(pdf).arg("-").output();
    let output = output.expect("pdftotext starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).expect("pdftotext writes UTF-8");
    let mut sheets: Vec<Sheet> = Vec::new();
    for line in text.lines().map(str::trim) {
        if line.starts_with("<page ") {
            let size = (number(line, "width"), number(line, "height"));
            sheets.push(Sheet { size, words: Vec::new() });
        } else if line.starts_with("<word ") {
            let at = ["xMin", "yMin", "xMax", "yMax"].map(|name| number(line, name));
            let text = line.split_once('>').and_then(|(_, rest)| rest.strip_suffix("</word>"));
            let text = plain(text.unwrap_or_else(|| panic!("{line} is no word")));
            sheets.last_mut().expect("words stand on pages").words.push(Word { text, at });
        }
    }
    sheets
}

fn number(line: &str, name: &str) -> f64 {
    let value = line.split_once(&format!("{name}=\"")).and_then(|(_, rest)| rest.split('"').next());
    value.and_then(|value| value.parse().ok()).unwrap_or_else(|| panic!("no {name} in {line}"))
}

fn plain(text: &str) -> String {
    let text = text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"");
    text.replace("&apos;", "'").replace("&#39;", "'").replace("&amp;", "&")
}
