//! Reading the shop's stock, prices, and pieces that stay.

use super::{Problem, Reader};
use crate::building::{FixedPieces, RoomId, Run};
use crate::job::draft::SurfaceDraft;
use crate::job::field::{CutField, Field, SizedField, StockField, SurfaceField};
use crate::job::shop::{Cutting, Prices, Spare, Stock};
use crate::named::Named;
use crate::quantity::{Kind, Length, Money, Unit, Value};

/// The lengths on the list with what is typed of them; notes when there is none.
pub(in crate::job) fn read_stock(reader: &mut Reader<'_>) -> Option<Vec<Stock>> {
    let mut stock = Vec::new();
    for &feet in &reader.draft.element.stock_ft {
        let field = |field| Field::Stocked(feet, field);
        stock.push(Stock {
            length: feet_long(feet),
            price: reader.si(field(StockField::Price)).map(Money::from_si),
            available: reader.count(field(StockField::Available)),
            have: reader.count(field(StockField::Have)).unwrap_or(0),
        });
    }
    if stock.iter().all(|stock| stock.available == Some(0) && stock.have == 0) {
        reader.fail(Field::Stock, Problem::NoStock);
        return None;
    }
    Some(stock)
}

/// What is not known, or typed wrong, is not counted; nothing else waits for it.
pub(super) fn read_prices(reader: &mut Reader<'_>) -> Prices {
    let mut sized = Vec::new();
    for of in &reader.draft.sized_prices {
        for &field in SizedField::ALL {
            if of.entries.get(field).is_some()
                && let Some(si) = reader.si(Field::SizedPrice(of.tube, field))
            {
                sized.push((of.tube, field, si));
            }
        }
    }
    Prices::of(|field| reader.si(Field::Price(field)), sized)
}

/// What is typed wrong counts as nothing to spare, and its error says so.
pub(super) fn read_spare(reader: &mut Reader<'_>) -> Spare {
    Spare::of(|group| reader.si(Field::Spare(group)).unwrap_or(0.0))
}

pub(super) fn read_cutting(reader: &mut Reader<'_>) -> Cutting {
    let kerf = reader.si(Field::Cut(CutField::Kerf)).map_or(Length::ZERO, Length::from_si);
    Cutting { sticks: reader.draft.cutting.sticks, kerf }
}

/// Pieces that stay, once they are known to fit.
pub(super) fn read_fixed(
    reader: &mut Reader<'_>,
    room: RoomId,
    draft: &SurfaceDraft,
    runs: &[Run],
) -> Option<Vec<FixedPieces>> {
    let mut all = Vec::new();
    let field = Field::Surface(room, draft.id, SurfaceField::Fixed);
    let ends = reader.end_allowance();
    for fixed in &draft.fixed {
        let pieces: Vec<Length> = fixed.pieces_ft.iter().copied().map(feet_long).collect();
        let Some(run) = runs.get(fixed.run as usize) else {
            reader.fail(field, Problem::FixedRunGone);
            return None;
        };
        let free = (run.length - ends).max(Length::ZERO);
        let long: Length = pieces.iter().copied().sum();
        // A sixteenth of an inch is no reason.
        if long.si() > free.si() + 0.0016 {
            let [pieces, run] = [long, free].map(|length| Value::new(Kind::Length, length.si()));
            reader.fail(field, Problem::FixedTooLong { pieces, run });
            return None;
        }
        all.push(FixedPieces { run: fixed.run as usize, pieces });
    }
    Some(all)
}

fn feet_long(feet: u8) -> Length {
    Length::of(f64::from(feet), Unit::Foot)
}
