//! The list of prices: what is kept, filled in, and not taken.

use super::{Book, in_both};
use finrun_engine::csv::Fault;
use finrun_engine::job::{Entry, Field, ListFault, PriceField, SizedField, StockField, read_table};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{System, display_unit};
use finrun_text as text;

#[test]
fn prices_kept_and_filled_in() {
    let tell = |book: &mut Book| {
        for count in [0, 1, 3] {
            book.add(format!("unpriced {count}"), text::kinds_unpriced(count));
            book.add(format!("kept {count}, none changed"), text::prices_kept(count, 0));
            book.add(format!("filled {count}"), text::prices_filled(count));
        }
        for count in [1, 3] {
            book.add(format!("kept 9, {count} changed"), text::prices_kept(9, count));
            book.add(format!("otherwise {count}"), text::prices_otherwise(count));
            book.add(format!("not taken {count}"), text::rows_not_taken(count));
        }
        for (kept, missing, otherwise) in [(0, 0, 0), (1, 0, 0), (9, 4, 0), (9, 0, 2), (9, 4, 2)] {
            let said = text::kept_prices(kept, missing, otherwise);
            book.add(format!("kept {kept}, {missing} blank here, {otherwise} different"), said);
        }
        book.add("full", text::cannot_keep_prices("QuotaExceededError"));
        book.add("blocked", text::cannot_keep_prices(""));
        book.add("more", text::more_rows(12));
        let tube = Tube::CopperMThreeQuarter;
        for field in [
            Field::Price(PriceField::Elbow),
            Field::SizedPrice(tube, SizedField::Pipe),
            Field::Stocked(6, StockField::Price),
        ] {
            book.add(field, text::price_item(field));
            let unit = display_unit(field.spec().kind, System::Us);
            let listed = Entry { text: "2,60".to_string(), unit };
            for system in [System::Us, System::Si] {
                let said = text::price_otherwise(field, "2.40", &listed, system);
                book.add(format!("{field} otherwise, {}", system.name()), said);
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn rows_and_lists_that_are_not_taken() {
    let tell = |book: &mut Book| {
        let table = "key,price,unit\nelbow,5,each\nelbow,6,each\nelbw,5,\n,5,\ntee,four,\ngauge,-1,\n\
        pipe,5,\nwire,5,each\ninsulation,5,\npipe.pex-1/2,5,a roll\ncorner,\"1,234\",\n";
        for row in read_table(table).expect("a list").problems {
            book.add(format!("line {}", row.line), text::row_problem(&row, System::Us));
        }
        book.add("no columns", text::list_fault(ListFault::NoColumns));
        for fault in [
            Fault::TooLarge,
            Fault::TooManyRows,
            Fault::TooManyCells { line: 3 },
            Fault::LongCell { line: 3 },
            Fault::OpenQuote { line: 3 },
            Fault::AfterQuote { line: 3 },
            Fault::NotText { line: 3 },
        ] {
            book.add(format!("{fault:?}"), text::list_fault(ListFault::Table(fault)));
        }
        let reason = text::list_fault(ListFault::NoColumns);
        book.add("kept and damaged", text::kept_prices_damaged(&reason));
    };
    insta::assert_snapshot!(in_both(tell));
}
