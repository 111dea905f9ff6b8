//! The reader's own prices, kept in the browser for all jobs: the same table as in a file.

use super::store;
use finrun_engine::job::{
    Draft, ListFault, PriceList, Typed, add_to_table, price_table, read_table,
};
use finrun_text as text;

/// Where the table is kept. Another version of the table would stand under another number, so that
/// this one is never taken for it.
const KEY: &str = "finrun.prices.1";

/// What is kept.
#[derive(Debug, Clone, PartialEq)]
pub enum Kept {
    Nothing,
    List(PriceList),
    /// What cannot be read stays as it is until the reader keeps something else instead.
    Damaged(ListFault),
}

/// How many prices were kept, and how many of them were kept otherwise before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    pub kept: usize,
    pub changed: usize,
}

/// Why prices were not kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotKept {
    /// What is kept already cannot be read.
    Damaged,
    /// Storage refused; the reason as the browser gives it.
    Refused(String),
}

pub fn kept() -> Kept {
    match raw() {
        None => Kept::Nothing,
        Some(table) => match read_table(&table) {
            Ok(list) => Kept::List(list),
            Err(fault) => Kept::Damaged(fault),
        },
    }
}

/// The table as it stands in storage.
pub fn raw() -> Option<String> {
    store::entry(KEY)
}

/// Keeps the prices of a job beside those that are kept already.
pub fn keep(draft: &Draft) -> Result<Count, NotKept> {
    let changed = match kept() {
        Kept::List(list) => list.otherwise_in(draft).len(),
        Kept::Nothing | Kept::Damaged(_) => 0,
    };
    keep_in(&raw().unwrap_or_default(), draft, changed)
}

/// Keeps the prices of a job in the place of what cannot be read.
pub fn keep_instead(draft: &Draft) -> Result<Count, NotKept> {
    keep_in("", draft, 0)
}

fn keep_in(table: &str, draft: &Draft, changed: usize) -> Result<Count, NotKept> {
    let added = add_to_table(table, draft, &text::price_item);
    let (table, kept) = added.map_err(|_| NotKept::Damaged)?;
    if kept > 0 {
        store::set_entry(KEY, &table).map_err(NotKept::Refused)?;
    }
    Ok(Count { kept, changed })
}

pub fn forget() {
    store::delete_entry(KEY);
}

/// Brings back what was forgotten.
pub fn remember(table: &str) -> Result<(), String> {
    store::set_entry(KEY, table)
}

/// A new job begins with what is kept.
pub fn begin_with_kept(mut draft: Draft) -> Draft {
    if let Kept::List(list) = kept() {
        list.put_into(&mut draft, Typed::Stay);
    }
    draft
}

/// A job's prices as a table for a spreadsheet.
pub fn table(draft: &Draft) -> String {
    price_table(draft, &text::price_item)
}
