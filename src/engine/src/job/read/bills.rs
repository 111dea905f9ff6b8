//! The fuel bills: each read, then held against the others.

use super::{Problem, Reader};
use crate::bills::{Bill, BillsError, Fit, fit};
use crate::building::BillId;
use crate::climate::{Day, Season};
use crate::job::draft::BillDraft;
use crate::job::field::{BillField, BillsField, Field};

/// What the bills came to.
pub type BillsRead = Result<Fit, BillsError>;

/// Fits the bills; `None` without bills, without a station, or while one of them has an error.
pub(super) fn read_bills(reader: &mut Reader<'_>) -> Option<BillsRead> {
    let draft = reader.draft;
    if draft.bills.list.is_empty() {
        return None;
    }
    let efficiency = reader.si(Field::Bills(BillsField::Efficiency));
    let indoors = reader.temperature(Field::Bills(BillsField::Indoors));
    let bills: Vec<Option<Bill>> =
        draft.bills.list.iter().map(|bill| read_bill(reader, bill)).collect();
    let bills = bills.into_iter().collect::<Option<Vec<Bill>>>()?;
    let season = Season::of(draft.station.as_ref()?);
    let fitted = fit(&bills, &season, draft.bills.fuel, efficiency?, indoors?);
    match fitted {
        Err(error) if told_at_a_bill(reader, error) => None,
        fitted => Some(fitted),
    }
}

fn read_bill(reader: &mut Reader<'_>, bill: &BillDraft) -> Option<Bill> {
    let field = |field| Field::Bill(bill.id, field);
    let from = read_day(reader, field(BillField::From), &bill.from);
    let to = read_day(reader, field(BillField::To), &bill.to);
    let amount = reader.si(field(BillField::Amount));
    let typed = reader.draft.entry(field(BillField::DegreeDays)).is_some();
    let degree_days = match typed {
        true => reader.si(field(BillField::DegreeDays)).map(Some),
        false => Some(None),
    };
    Some(Bill { from: from?, to: to?, amount: amount?, degree_days_65_k: degree_days? })
}

fn read_day(reader: &mut Reader<'_>, field: Field, text: &str) -> Option<Day> {
    if text.trim().is_empty() {
        reader.fail(field, Problem::Missing);
        return None;
    }
    let day = Day::parse(text).ok();
    if day.is_none() {
        reader.fail(field, Problem::NotADate);
    }
    day
}

/// Whether an error of the fit belongs to one bill; then it is listed there.
fn told_at_a_bill(reader: &mut Reader<'_>, error: BillsError) -> bool {
    let id = |index: usize| reader.draft.bills.list.get(index).map(|bill| bill.id);
    let at: (Option<BillId>, BillField, Problem) = match error {
        BillsError::Reversed { index } => (id(index), BillField::To, Problem::EndsBeforeStart),
        BillsError::TooShort { index } => (id(index), BillField::To, Problem::PeriodTooShort),
        BillsError::TooLong { index } => (id(index), BillField::To, Problem::PeriodTooLong),
        BillsError::Overlap { first, second } => {
            (id(second), BillField::From, Problem::BillsOverlap { other: first + 1 })
        }
        BillsError::DegreeDays { index } | BillsError::UnlikelyDegreeDays { index } => {
            (id(index), BillField::DegreeDays, Problem::UnlikelyDegreeDays)
        }
        _ => return false,
    };
    let (Some(id), field, problem) = at else { return false };
    reader.fail(Field::Bill(id, field), problem);
    true
}
