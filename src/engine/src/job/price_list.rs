//! The user's prices as a table of their own, to be kept for other jobs and opened in a spreadsheet.
//!
//! One row a price: a key that stays, what it is in words, the price as typed, what it is for, and a
//! remark. Words and remarks are for people and are not read. Prices that are blank say nothing: what
//! is typed in a job stays.

use super::draft::{Draft, Entry, STOCK_FT};
use super::field::{Field, PriceField, SizedField, StockField};
use super::read::{FieldError, Problem};
use super::resolve::within;
use crate::csv::{self, Separator};
use crate::named::{Named, find};
use crate::pipe::Tube;
use crate::quantity::{Kind, System, Unit, display_unit, read};

/// The columns, by their names in the first row; they may stand in any order.
const COLUMNS: [&str; 5] = ["key", "item", "price", "unit", "remark"];

/// What the price of a single thing is for.
const EACH: &str = "each";

/// A price as typed, and the line of the table on which it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListedPrice {
    pub line: u32,
    pub field: Field,
    pub entry: Entry,
}

/// What a table says.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PriceList {
    pub prices: Vec<ListedPrice>,
    pub problems: Vec<RowProblem>,
}

/// A row that was not taken, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct RowProblem {
    pub line: u32,
    pub fault: RowFault,
}

#[derive(Debug, Clone, PartialEq)]
pub enum RowFault {
    UnknownKey {
        key: String,
    },
    /// No price, or none that such a thing has.
    Price(FieldError),
    /// Of what is sold by length or area: for how much of it?
    UnitMissing {
        field: Field,
    },
    UnknownUnit {
        field: Field,
        unit: String,
    },
    /// The key stood on an earlier line, which counts.
    Repeated {
        field: Field,
        before: u32,
    },
}

/// Why a text is no price list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ListFault {
    Table(csv::Fault),
    /// No first row that names the columns.
    NoColumns,
}

/// What is done with prices that are typed otherwise already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Typed {
    Stay,
    AreReplaced,
}

/// The table of a job: every price that it has a place for, typed or not, so that the blanks can be
/// filled in elsewhere. `words` says what a field is.
pub fn price_table(draft: &Draft, words: &dyn Fn(Field) -> String) -> String {
    let mut rows = vec![heading()];
    rows.extend(draft.price_fields().into_iter().map(|field| {
        let unit = draft.box_unit(field);
        let blank = Entry { text: String::new(), unit };
        row(field, draft.entry(field).unwrap_or(&blank), words)
    }));
    write(&rows)
}

/// A table with the typed prices of a job put in; all else that stands there stays, also what could
/// not be read. A blank table begins anew. With how many were put in.
pub fn add_to_table(
    table: &str,
    draft: &Draft,
    words: &dyn Fn(Field) -> String,
) -> Result<(String, usize), ListFault> {
    let mut rows: Vec<Vec<String>> =
        csv::read(table).map_err(ListFault::Table)?.into_iter().map(|row| row.cells).collect();
    if rows.is_empty() {
        rows.push(heading());
    }
    let columns = Columns::of(&rows[0]).ok_or(ListFault::NoColumns)?;
    let (width, mut count) = (rows[0].len(), 0);
    for field in draft.price_fields() {
        let Some(entry) = draft.entry(field).filter(|entry| taken(field, entry).is_ok()) else {
            continue;
        };
        count += 1;
        let new = row(field, entry, words);
        let known = |row: &&mut Vec<String>| Columns::cell(row, columns.key) == new[0];
        match rows.iter_mut().skip(1).find(known) {
            Some(row) => columns.put(row, &new),
            None => {
                let mut row = vec![String::new(); width];
                columns.put(&mut row, &new);
                rows.push(row);
            }
        }
    }
    Ok((write(&rows), count))
}

/// Reads a table, row by row; a row that cannot be taken keeps no other from it.
pub fn read_table(table: &str) -> Result<PriceList, ListFault> {
    let rows = csv::read(table).map_err(ListFault::Table)?;
    let Some((first, rows)) = rows.split_first() else { return Err(ListFault::NoColumns) };
    let columns = Columns::of(&first.cells).ok_or(ListFault::NoColumns)?;
    let mut list = PriceList::default();
    for row in rows.iter().filter(|row| row.cells.iter().any(|cell| !cell.trim().is_empty())) {
        match read_row(&columns, &row.cells, &list.prices) {
            Ok(Some((field, entry))) => {
                list.prices.push(ListedPrice { line: row.line, field, entry });
            }
            Ok(None) => {}
            Err(fault) => list.problems.push(RowProblem { line: row.line, fault }),
        }
    }
    Ok(list)
}

impl PriceList {
    /// Fields that are blank in the job and have a price here.
    pub fn missing_in(&self, draft: &Draft) -> Vec<Field> {
        let blank = |price: &&ListedPrice| draft.entry(price.field).is_none();
        self.prices.iter().filter(blank).map(|price| price.field).collect()
    }

    /// Prices that the job has otherwise; 2.50 and 2,50 are the same.
    pub fn otherwise_in(&self, draft: &Draft) -> Vec<&ListedPrice> {
        let differs = |price: &&ListedPrice| {
            draft.entry(price.field).is_some_and(|typed| !alike(typed, &price.entry))
        };
        self.prices.iter().filter(differs).collect()
    }

    pub fn put_into(&self, draft: &mut Draft, typed: Typed) {
        for price in &self.prices {
            let replaces = match (draft.entry(price.field), typed) {
                (None, _) => true,
                (Some(_), Typed::Stay) => false,
                (Some(now), Typed::AreReplaced) => !alike(now, &price.entry),
            };
            if replaces {
                draft.set_entry(price.field, price.entry.clone());
            }
        }
    }
}

fn alike(one: &Entry, other: &Entry) -> bool {
    match (read(&one.text, one.unit), read(&other.text, other.unit)) {
        (Ok(one), Ok(other)) => one.si == other.si,
        _ => one == other,
    }
}

impl Draft {
    /// Sizes of tube that this job is piped in, or has prices for; each once.
    pub fn tubes_to_price(&self) -> Vec<Tube> {
        let of_zones = self.zones.iter().flat_map(|zone| [zone.main, zone.pipe]);
        let priced = self.sized_prices.iter().map(|sized| sized.tube);
        let known: Vec<Tube> = of_zones.chain(priced).chain([self.tube]).collect();
        Tube::ALL.into_iter().filter(|tube| known.contains(tube)).collect()
    }

    /// Every place for a price: of pieces, of materials, and of sizes of tube.
    pub fn price_fields(&self) -> Vec<Field> {
        let piece = |feet| Field::Stocked(feet, StockField::Price);
        let mut fields: Vec<Field> = STOCK_FT
            .filter(|feet| {
                self.element.stock_ft.contains(feet) || self.entry(piece(*feet)).is_some()
            })
            .map(piece)
            .collect();
        fields.extend(PriceField::ALL.iter().copied().map(Field::Price));
        for tube in self.tubes_to_price() {
            fields.extend(SizedField::ALL.iter().map(|&field| Field::SizedPrice(tube, field)));
        }
        fields
    }
}

/// Under which a price stands in a table, for good.
fn key(field: Field) -> String {
    match field {
        Field::Stocked(feet, _) => format!("piece.{feet}-ft"),
        Field::Price(field) => field.name().to_string(),
        Field::SizedPrice(tube, field) => format!("{}.{}", field.name(), tube.name()),
        // Nothing else has a price.
        field => field.to_string(),
    }
}

fn by_key(key: &str) -> Option<Field> {
    let Some((first, second)) = key.split_once('.') else { return find(key).map(Field::Price) };
    if first != "piece" {
        return Some(Field::SizedPrice(find(second)?, find(first)?));
    }
    let feet = second.strip_suffix("-ft")?.parse().ok()?;
    STOCK_FT.contains(&feet).then_some(Field::Stocked(feet, StockField::Price))
}

fn unit_name(unit: Unit) -> &'static str {
    if unit == Unit::Currency { EACH } else { unit.symbol() }
}

fn heading() -> Vec<String> {
    COLUMNS.map(str::to_string).to_vec()
}

/// In the order of [`COLUMNS`].
fn row(field: Field, entry: &Entry, words: &dyn Fn(Field) -> String) -> Vec<String> {
    let unit = unit_name(entry.unit).to_string();
    vec![key(field), words(field), entry.text.clone(), unit, String::new()]
}

/// With semicolons where a price has a decimal comma: so do the spreadsheets of its country.
fn write(rows: &[Vec<String>]) -> String {
    let decimal_comma = |text: &String| match (text.rfind(','), text.rfind('.')) {
        (Some(comma), point) => point.is_none_or(|point| point < comma),
        (None, _) => false,
    };
    let price = rows.first().and_then(|row| Columns::of(row)).map_or(0, |columns| columns.price);
    let euro = rows.iter().skip(1).filter_map(|row| row.get(price)).any(decimal_comma);
    csv::write(rows, if euro { Separator::Semicolon } else { Separator::Comma })
}

/// Where each column stands.
struct Columns {
    key: usize,
    item: Option<usize>,
    price: usize,
    unit: usize,
}

impl Columns {
    fn of(first: &[String]) -> Option<Columns> {
        let place = |name| first.iter().position(|cell| cell.trim().eq_ignore_ascii_case(name));
        let [key, item, price, unit, _] = COLUMNS;
        Some(Columns {
            key: place(key)?,
            item: place(item),
            price: place(price)?,
            unit: place(unit)?,
        })
    }

    fn cell(row: &[String], place: usize) -> &str {
        row.get(place).map_or("", |cell| cell.trim())
    }

    /// Puts a new row's cells where this table has them.
    fn put(&self, row: &mut Vec<String>, new: &[String]) {
        let places = [Some(self.key), self.item, Some(self.price), Some(self.unit)];
        for (place, text) in places.into_iter().zip(new) {
            let Some(place) = place else { continue };
            if row.len() <= place {
                row.resize(place + 1, String::new());
            }
            row[place] = text.clone();
        }
    }
}

/// The price of a row, if it has one.
fn read_row(
    columns: &Columns,
    row: &[String],
    known: &[ListedPrice],
) -> Result<Option<(Field, Entry)>, RowFault> {
    let key = Columns::cell(row, columns.key);
    let Some(field) = by_key(key) else {
        return Err(RowFault::UnknownKey { key: key.to_string() });
    };
    let text = row.get(columns.price).cloned().unwrap_or_default();
    if text.trim().is_empty() {
        return Ok(None);
    }
    let unit = read_unit(field, Columns::cell(row, columns.unit))?;
    let entry = Entry { text, unit };
    taken(field, &entry).map_err(RowFault::Price)?;
    match known.iter().find(|price| price.field == field) {
        Some(before) => Err(RowFault::Repeated { field, before: before.line }),
        None => Ok(Some((field, entry))),
    }
}

fn read_unit(field: Field, name: &str) -> Result<Unit, RowFault> {
    let kind = field.spec().kind;
    let default = display_unit(kind, System::Us);
    match (name, kind) {
        ("", Kind::Money) => Ok(default),
        ("", _) => Err(RowFault::UnitMissing { field }),
        (name, Kind::Money) if name.eq_ignore_ascii_case(EACH) => Ok(default),
        // As it would be read behind a price.
        (name, _) => match read(&format!("1 {name}"), default) {
            Ok(reading) => Ok(reading.unit),
            Err(_) => Err(RowFault::UnknownUnit { field, unit: name.to_string() }),
        },
    }
}

/// Whether a price can be read and lies within its bounds.
fn taken(field: Field, entry: &Entry) -> Result<(), FieldError> {
    let problem = match read(&entry.text, entry.unit) {
        Err(error) => Some(Problem::Unreadable(error)),
        Ok(reading) => within(reading.si, field),
    };
    match problem {
        Some(problem) => Err(FieldError { field, typed: entry.text.clone(), problem }),
        None => Ok(()),
    }
}
