//! Words for the list of prices: as a table, kept for other jobs, opened and saved.

use crate::fields::field_label;
use crate::problem;
use finrun_engine::csv::{Fault, LONGEST_CELL, MOST_CELLS, MOST_ROWS};
use finrun_engine::job::{Entry, Field, ListFault, RowFault, RowProblem};
use finrun_engine::quantity::{Kind, System, display_unit};

/// What a price is for, as it stands in the table.
pub fn price_item(field: Field) -> String {
    match field {
        Field::Stocked(feet, _) => format!("Piece of {feet} ft"),
        Field::SizedPrice(tube, _) => format!("{}, {}", field_label(field), crate::tube(tube)),
        _ => field_label(field).to_string(),
    }
}

/// How many kinds of material the job needs that have no price.
pub fn kinds_unpriced(count: usize) -> String {
    match count {
        0 => "Everything that this job needs has a price.".to_string(),
        1 => "One kind of material that this job needs has no price.".to_string(),
        count => format!("{count} kinds of material that this job needs have no price."),
    }
}

/// The list kept for other jobs beside what is typed here.
pub fn kept_prices(kept: usize, missing: usize, otherwise: usize) -> String {
    if kept == 0 {
        return "None are kept for other jobs yet.".to_string();
    }
    let mut said = format!("Kept for other jobs: {}.", prices(kept));
    if missing > 0 {
        said += &format!(" Blank here: {missing}.");
    }
    if otherwise > 0 {
        said += &format!(" Different here: {otherwise}.");
    }
    if missing + otherwise == 0 {
        said += " All of them stand here.";
    }
    said
}

/// After keeping: how many, and how many of them were kept otherwise before.
pub fn prices_kept(count: usize, changed: usize) -> String {
    let changed = match changed {
        0 => String::new(),
        1 => " One of them was different before.".to_string(),
        changed => format!(" {changed} of them were different before."),
    };
    match count {
        0 => "There is no price here to keep.".to_string(),
        1 => format!("One price is kept for other jobs. A new job starts with it.{changed}"),
        count => {
            format!("{count} prices are kept for other jobs. A new job starts with them.{changed}")
        }
    }
}

/// Storage refused.
pub fn cannot_keep_prices(reason: &str) -> String {
    let reason = if reason.is_empty() { String::new() } else { format!(" ({reason})") };
    format!(
        "The browser's storage is full or blocked{reason}: the prices are not kept for other jobs. \
         Save them as CSV to keep them."
    )
}

/// After filling in from a list.
pub fn prices_filled(count: usize) -> String {
    match count {
        0 => "There was nothing to fill in.".to_string(),
        1 => "One price was filled in. Undo takes it out again.".to_string(),
        count => format!("{count} prices were filled in. Undo takes them out again."),
    }
}

/// Over the prices that stayed because something else was typed.
pub fn prices_otherwise(count: usize) -> String {
    match count {
        1 => "One price is typed here and different on the list. It was left as it is:".to_string(),
        count => {
            format!(
                "{count} prices are typed here and different on the list. They were left as they are:"
            )
        }
    }
}

/// One price that is typed otherwise on a list. The list says its unit where the page has another.
pub fn price_otherwise(field: Field, here: &str, listed: &Entry, system: System) -> String {
    let unit = match display_unit(field.spec().kind, system) {
        shown if shown == listed.unit => String::new(),
        _ => format!(" {}", listed.unit.symbol()),
    };
    format!("{}: {here} here, {}{unit} on the list", price_item(field), listed.text.trim())
}

/// Over the rows that were not taken.
pub fn rows_not_taken(count: usize) -> String {
    match count {
        1 => "One row of the list was not taken:".to_string(),
        count => format!("{count} rows of the list were not taken:"),
    }
}

pub fn more_rows(count: usize) -> String {
    format!("and {count} more like these")
}

/// Why a row was not taken, and what to do.
pub fn row_problem(row: &RowProblem, system: System) -> String {
    let line = row.line;
    match &row.fault {
        RowFault::UnknownKey { key } if key.is_empty() => format!(
            "Line {line}: the key is missing. Save these prices as CSV and take the key from there."
        ),
        RowFault::UnknownKey { key } => format!(
            "Line {line}: “{}” is no key of a price. Save these prices as CSV and take the key from \
             there.",
            short(key)
        ),
        RowFault::Price(error) => {
            format!("Line {line}, {}: {}", price_item(error.field), problem(error, system))
        }
        RowFault::UnitMissing { field } => format!(
            "Line {line}, {}: the unit is missing. Write {}.",
            price_item(*field),
            units(*field)
        ),
        RowFault::UnknownUnit { field, unit } => format!(
            "Line {line}, {}: “{}” is no unit for this price. Write {}. If the price has a decimal \
             comma, put it in quotes or separate the cells by semicolons.",
            price_item(*field),
            short(unit),
            units(*field)
        ),
        RowFault::Repeated { field, before } => format!(
            "Line {line}, {}: it has a price on line {before} already, which counts. Take one of the \
             two out.",
            price_item(*field)
        ),
    }
}

/// Why a text is no list of prices, and what to do.
pub fn list_fault(fault: ListFault) -> String {
    match fault {
        ListFault::NoColumns => {
            "This is no list of prices: its first row must name the columns key, \
             price and unit. Save these prices as CSV to see how it looks."
                .to_string()
        }
        ListFault::Table(fault) => table_fault(fault),
    }
}

fn table_fault(fault: Fault) -> String {
    match fault {
        Fault::TooLarge => {
            "That file is too large for a list of prices: more than 1 MB.".to_string()
        }
        Fault::TooManyRows => {
            format!("That list has more than {MOST_ROWS} rows. Take out what is no price.")
        }
        Fault::TooManyCells { line } => format!(
            "Line {line} has more than {MOST_CELLS} cells. Choose a list of prices, saved as CSV."
        ),
        Fault::LongCell { line } => format!(
            "A cell that begins on line {line} is longer than {LONGEST_CELL} characters. Choose a \
             list of prices, saved as CSV."
        ),
        Fault::OpenQuote { line } => {
            format!("A quote mark opens on line {line} and never closes. Close it, or take it out.")
        }
        Fault::AfterQuote { line } => format!(
            "On line {line} something stands between a closing quote mark and the next cell. Take it \
             out, or write the quote mark twice."
        ),
        Fault::NotText { line } => format!(
            "This is no text (line {line}). Save the list as CSV in UTF-8, then open it again."
        ),
    }
}

/// Of the list in the browser's storage.
pub fn kept_prices_damaged(reason: &str) -> String {
    format!(
        "The prices kept for other jobs cannot be read. {reason} They stay as they are until you \
         keep others instead; download them first if you can mend them."
    )
}

fn prices(count: usize) -> String {
    if count == 1 { "1 price".to_string() } else { format!("{count} prices") }
}

fn units(field: Field) -> &'static str {
    match field.spec().kind {
        Kind::LinearMoney => "per ft or per m",
        Kind::AreaMoney => "per ft² or per m²",
        _ => "each",
    }
}

fn short(text: &str) -> String {
    let short: String = text.chars().take(40).collect();
    if short.len() < text.len() { format!("{short}…") } else { short }
}
