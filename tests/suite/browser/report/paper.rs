//! How the report lies on its paper: in its margins, whole, in order, without dark grounds.

use std::collections::HashMap;

use finrun_text as text;
use serde_json::json;

use crate::browser::page::Page;
use crate::browser::pdf::Sheet;

/// Points of 1/72 in: ANSI/ASME Y14.1 size A, and ISO 216 A4 of 210 by 297 mm.
pub(super) const LETTER: (f64, f64) = (612.0, 792.0);
pub(super) const A4: (f64, f64) = (595.28, 841.89);

/// The least margin of both papers in `style.css`: 15 mm.
const MARGIN: f64 = 42.0;

/// In print nothing has a ground of its own, also where the screen is dark.
#[track_caller]
pub(super) fn nothing_is_dark(page: &Page) {
    let media = |media: &str| {
        let dark = json!([{ "name": "prefers-color-scheme", "value": "dark" }]);
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": media, "features": dark }));
    };
    media("print");
    let script = "
        const shown = [...document.querySelectorAll('html, body, main, main *')].filter((e) => e.checkVisibility() && !e.closest('svg'));
        const light = (colour) => { const [r, g, b, a = 1] = colour.match(/[\\d.]+/g).map(Number); return a === 0 || Math.min(r, g, b) > 250; };
        const ink = getComputedStyle(document.querySelector('.report p')).color;
        const high = Math.max(...[...document.querySelectorAll('.sheet')].map((sheet) => sheet.offsetHeight));
        return [shown.filter((e) => !light(getComputedStyle(e).backgroundColor)).map((e) => e.localName + '.' + e.className), ink, high];";
    let seen = page.script(script, Vec::new());
    media("");
    assert_eq!(seen[0], json!([]), "dark in print");
    assert_eq!(seen[1], "rgb(0, 0, 0)");
    // 9.8 in of Letter lie between the margins; a drawing that is higher would be cut.
    assert!(seen[2].as_f64().is_some_and(|high| high > 100.0 && high < 9.8 * 96.0), "{seen}");
}

/// Each page has the size that was chosen, and no word reaches into its margins but the page's number.
pub(super) fn lies_on_paper(of: &str, sheets: &[Sheet], size: (f64, f64)) {
    // A page that does not fit is printed smaller: the title's 15 pt must have stayed so, in lines of 1.2.
    let title = sheets.first().and_then(|sheet| sheet.words.first()).expect("a title");
    let high = title.at[3] - title.at[1];
    assert!((high - 18.0).abs() < 0.3, "{of}: {} is {high} pt high", title.text);
    for (nth, sheet) in sheets.iter().enumerate() {
        let off = (sheet.size.0 - size.0).abs().max((sheet.size.1 - size.1).abs());
        assert!(off < 1.0, "{of}, page {}: {:?}", nth + 1, sheet.size);
        let (wide, high) = sheet.size;
        let outside: Vec<&str> = sheet
            .words
            .iter()
            .filter(|word| {
                let [left, top, right, bottom] = word.at;
                left < MARGIN
                    || top < MARGIN - 2.0
                    || right > wide - MARGIN
                    || bottom > high - MARGIN + 2.0
            })
            .map(|word| word.text.as_str())
            .collect();
        let number = format!("{} / {}", nth + 1, sheets.len());
        assert_eq!(outside.join(" "), number, "{of}, page {}", nth + 1);
    }
}

/// Every word of every heading, table cell and drawing of the page is on the paper, as often as on the
/// page; and no drawing has a word beyond its edge.
#[track_caller]
pub(super) fn is_whole(page: &Page, of: &str, sheets: &[Sheet]) {
    let script = "
        const texts = [...document.querySelectorAll('.report :is(h2, h3, h4, th, td, dt, dd, svg text)')]
            .filter((e) => !e.matches('.sheets > h2')).map((e) => e.textContent);
        const beyond = [...document.querySelectorAll('.report svg text')].filter((e) => {
            const [inner, outer] = [e, e.closest('svg')].map((one) => one.getBoundingClientRect());
            return inner.left < outer.left - 1 || inner.right > outer.right + 1 || inner.top < outer.top - 1 || inner.bottom > outer.bottom + 1;
        }).map((e) => e.textContent);
        return [texts, beyond];";
    let seen = page.script(script, Vec::new());
    assert_eq!(seen[1], json!([]), "{of}: beyond the edge of a drawing");
    let mut left: HashMap<&str, i64> = HashMap::new();
    for word in sheets.iter().flat_map(|sheet| &sheet.words) {
        *left.entry(&word.text).or_default() += 1;
    }
    let texts = seen[0].as_array().expect("texts");
    assert!(texts.len() > 40, "{of}: {}", texts.len());
    let mut missing = Vec::new();
    for text in texts.iter().filter_map(|text| text.as_str()) {
        for word in text.split_whitespace() {
            let count = left.entry(word).or_default();
            *count -= 1;
            if *count < 0 {
                missing.push(format!("{word} of {text:?}"));
            }
        }
    }
    assert!(missing.is_empty(), "{of}: not on paper: {missing:?}");
}

pub(super) fn headings_in_order(of: &str, sheets: &[Sheet]) {
    let lines: Vec<String> = sheets.iter().flat_map(Sheet::lines).collect();
    let mut at = 0;
    for heading in [
        text::report_results(),
        text::season_sums_title(),
        text::report_inputs(),
        text::report_assumptions(),
        text::report_worked(),
        text::report_drawings(),
        text::section_materials(),
        text::cut_plan_title(),
        text::report_checks(),
        text::report_limits(),
    ] {
        let found = lines[at..].iter().position(|line| line == heading);
        at += found.unwrap_or_else(|| panic!("{of}: no {heading} behind line {at}"));
    }
}

/// The longest table goes over pages: each begins anew with its head, and then with the name of a row.
pub(super) fn heads_repeat_and_rows_stay_whole(of: &str, sheets: &[Sheet]) {
    let heads = [
        text::room(),
        text::column_area(),
        text::column_u(),
        text::column_difference(),
        text::heat(),
    ];
    let head = heads.join(" ");
    let pages: Vec<Vec<String>> = sheets.iter().map(Sheet::lines).collect();
    // Its rows end with the heat between two temperatures.
    let is_row = |line: &str| line.contains(" → ") && line.contains(": ");
    let mut begun = 0;
    for (nth, lines) in pages.iter().enumerate() {
        let rows: Vec<&String> = lines.iter().filter(|line| is_row(line)).collect();
        if rows.is_empty() {
            continue;
        }
        begun += 1;
        let at = lines.iter().position(|line| *line == head);
        let at = at.unwrap_or_else(|| panic!("{of}, page {}: no head over {rows:?}", nth + 1));
        assert!(is_row(&lines[at + 1]), "{of}, page {}: {:?}", nth + 1, lines[at + 1]);
    }
    assert!(begun > 1, "{of}: the table stands on {begun} pages");
}
