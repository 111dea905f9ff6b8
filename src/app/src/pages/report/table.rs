//! Tables that print: a head that each page repeats, rows that no page splits.

use crate::markup::Markup;

/// What stands in the cells.
#[derive(Clone, Copy)]
pub(super) enum Of {
    Numbers,
    Words,
}

/// A row by its name; its figures are named where others look them up, and otherwise "".
pub(super) struct Row {
    pub(super) name: String,
    pub(super) cells: Vec<(String, String)>,
}

impl Row {
    pub(super) fn plain(name: impl Into<String>, cells: Vec<String>) -> Row {
        Row {
            name: name.into(),
            cells: cells.into_iter().map(|text| (String::new(), text)).collect(),
        }
    }
}

/// A table under its title, in a box that scrolls by itself on a narrow screen.
pub(super) fn table(out: &mut Markup, of: Of, title: &str, heads: &[&str], rows: &[Row]) {
    if rows.is_empty() {
        return;
    }
    let class = match of {
        Of::Numbers => "scroll",
        Of::Words => "scroll worded",
    };
    out.open(
        "div",
        &[("class", class), ("tabindex", "0"), ("role", "group"), ("aria-label", title)],
    );
    out.open("table", &[]);
    out.open("thead", &[]);
    out.open("tr", &[]);
    for head in heads {
        out.leaf("th", &[("scope", "col")], head);
    }
    out.close("tr");
    out.close("thead");
    out.open("tbody", &[]);
    for row in rows {
        out.open("tr", &[]);
        out.leaf("th", &[("scope", "row")], &row.name);
        for (key, text) in &row.cells {
            match key.is_empty() {
                true => out.leaf("td", &[], text),
                false => out.leaf("td", &[("data-figure", key)], text),
            }
        }
        out.close("tr");
    }
    out.close("tbody");
    out.close("table");
    out.close("div");
}
