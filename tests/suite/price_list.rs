//! The list of prices as a table: out of one job and into another, with nothing lost on the way.

use finrun_engine::csv::{Fault, read};
use finrun_engine::job::{
    Draft, Entry, Field, ListFault, PriceField, PriceList, Problem, RowFault, SizedField,
    StockField, Typed, add_to_table, price_table, read_table,
};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{ReadError, System, Unit, display_unit};
use finrun_text as text;

fn words(field: Field) -> String {
    text::price_item(field)
}

fn new(units: System) -> Draft {
    Draft::new("Prices", units)
}

fn type_in(draft: &mut Draft, field: Field, typed: &str, unit: Unit) {
    draft.set_entry(field, Entry { text: typed.to_string(), unit });
}

/// Every place for a price that there is: nine lengths of piece, each material, each size.
fn all_fields() -> Vec<Field> {
    let pieces = (2..=10).map(|feet| Field::Stocked(feet, StockField::Price));
    let kinds = PriceField::ALL.iter().copied().map(Field::Price);
    let sized = Tube::ALL
        .into_iter()
        .flat_map(|tube| SizedField::ALL.iter().map(move |field| Field::SizedPrice(tube, *field)));
    pieces.chain(kinds).chain(sized).collect()
}

/// A job with a price of our own invention at each of them, no two the same.
fn full(units: System) -> Draft {
    let mut draft = new(units);
    for (place, field) in all_fields().into_iter().enumerate() {
        let typed = match place % 4 {
            0 => format!("{place}.5"),
            1 => format!("{place},25"),
            2 => format!(" {place} "),
            _ => format!("1.{place:03},75").replace("1.", "0"),
        };
        type_in(&mut draft, field, &typed, display_unit(field.spec().kind, units));
    }
    draft
}

fn entries(draft: &Draft) -> Vec<(Field, Option<Entry>)> {
    all_fields().into_iter().map(|field| (field, draft.entry(field).cloned())).collect()
}

fn list(table: &str) -> PriceList {
    read_table(table).expect("a list")
}

#[test]
fn every_price_goes_out_and_comes_back_to_the_letter() {
    for units in [System::Us, System::Si] {
        let job = full(units);
        let table = price_table(&job, &words);
        let read = list(&table);
        assert_eq!(read.problems, []);
        assert_eq!(read.prices.len(), all_fields().len());
        // Also into a job in the other units: an entry keeps its own.
        for other in [System::Us, System::Si] {
            let mut draft = new(other);
            read.put_into(&mut draft, Typed::Stay);
            assert_eq!(entries(&draft), entries(&job));
            assert_eq!(draft.price_fields().len(), all_fields().len());
        }
    }
}

/// Read by the `csv` crate, as a spreadsheet would: the keys and units of the columns.
#[test]
fn the_table_is_what_a_spreadsheet_reads() {
    let mut job = new(System::Us);
    type_in(&mut job, Field::Price(PriceField::Elbow), "=1+1", Unit::Currency);
    type_in(&mut job, Field::Price(PriceField::Wire), ".12", Unit::CurrencyPerFoot);
    type_in(
        &mut job,
        Field::SizedPrice(Tube::CopperMThreeQuarter, SizedField::Pipe),
        "9 per m",
        Unit::CurrencyPerFoot,
    );
    let table = price_table(&job, &words);
    // The crate refuses rows that are not as long as their heading.
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let heading = reader.headers().expect("a heading").clone();
    assert_eq!(heading, vec!["key", "item", "price", "unit", "remark"]);
    let rows: Vec<csv::StringRecord> =
        reader.records().map(|record| record.expect("a row")).collect();
    let row = |key: &str| {
        let row = rows.iter().find(|row| &row[0] == key).expect("a row of this key");
        row.iter().map(str::to_string).collect::<Vec<_>>()
    };
    assert_eq!(row("elbow"), ["elbow", "Elbow, soldered in", "'=1+1", "each", ""]);
    assert_eq!(row("wire"), ["wire", "Thermostat wire", ".12", "per ft", ""]);
    assert_eq!(row("piece.6-ft"), ["piece.6-ft", "Piece of 6 ft", "", "each", ""]);
    let pipe = row("pipe.copper-m-3/4");
    assert_eq!(pipe[1..4], ["Pipe, ¾ in copper, type M", "9 per m", "per ft"]);
    assert_eq!(row("insulation")[3], "per ft²");
    // Nine pieces, all kinds, and the one size that the job is piped in.
    assert_eq!(rows.len(), 9 + PriceField::ALL.len() + SizedField::ALL.len());
}

/// The same price by both customs of writing numbers: 1234.56 for one, 2.40 for a metre.
#[test]
fn decimal_commas_and_points_read_as_the_job_reads_them() {
    let euro = "key;item;price;unit\r\ncirculator;;1.234,56;each\r\npipe;;2,40;per m\r\n";
    let us = "key,item,price,unit\r\ncirculator,,\"1,234.56\",\r\npipe,,2.40,/m\r\n";
    for table in [euro, us] {
        let mut draft = new(System::Us);
        let list = list(table);
        assert_eq!(list.problems, []);
        list.put_into(&mut draft, Typed::Stay);
        let si = |field| {
            let value = finrun_engine::job::resolve(&draft, Field::Price(field));
            value.si().expect("a value")
        };
        assert_eq!(si(PriceField::Circulator), 1234.56);
        assert_eq!(si(PriceField::Pipe), 2.4);
        let typed = draft.typed_text(Field::Price(PriceField::Circulator));
        assert!(table.contains(&typed), "kept as typed: {typed}");
    }
    // A job with a decimal comma is saved with semicolons, one without with commas.
    let first_line = |typed: &str| {
        let mut draft = new(System::Si);
        type_in(&mut draft, Field::Price(PriceField::Circulator), typed, Unit::Currency);
        price_table(&draft, &words).lines().next().map(str::to_string)
    };
    assert_eq!(first_line("2,40").as_deref(), Some("\u{feff}key;item;price;unit;remark"));
    assert_eq!(first_line("1,234.56").as_deref(), Some("\u{feff}key,item,price,unit,remark"));
}

#[test]
fn rows_that_cannot_be_taken_are_named_and_keep_no_other_from_it() {
    let table = "price,unit,key\n\
        5,each,elbow\n\
        ,,tee\n\
        6,,elbw\n\
        \"1,234\",,circulator\n\
        7,,pipe\n\
        8,each,enclosure\n\
        -1,,end-cap\n\
        99999,,corner\n\
        9,,elbow\n\
        9,each,\n\
        four,,gauge\n\
        5,,piece.11-ft\n\
        ,,\n\
        5,per ft,pipe.copper-m-3/4\n";
    let list = list(table);
    let taken: Vec<Field> = list.prices.iter().map(|price| price.field).collect();
    let sized = Field::SizedPrice(Tube::CopperMThreeQuarter, SizedField::Pipe);
    assert_eq!(taken, [Field::Price(PriceField::Elbow), sized]);
    let of_line = |line: u32| {
        let row = list.problems.iter().find(|row| row.line == line);
        row.map(|row| row.fault.clone()).unwrap_or_else(|| panic!("line {line} says nothing"))
    };
    let price = |field| Field::Price(field);
    assert_eq!(of_line(4), RowFault::UnknownKey { key: "elbw".to_string() });
    let RowFault::Price(error) = of_line(5) else { panic!("{:?}", of_line(5)) };
    assert!(matches!(error.problem, Problem::Unreadable(ReadError::AmbiguousComma { .. })));
    assert_eq!(of_line(6), RowFault::UnitMissing { field: price(PriceField::Pipe) });
    let unit = "each".to_string();
    assert_eq!(of_line(7), RowFault::UnknownUnit { field: price(PriceField::Enclosure), unit });
    assert!(
        matches!(of_line(8), RowFault::Price(error) if matches!(error.problem, Problem::BelowLeast { .. }))
    );
    assert!(
        matches!(of_line(9), RowFault::Price(error) if matches!(error.problem, Problem::AboveMost { .. }))
    );
    assert_eq!(of_line(10), RowFault::Repeated { field: price(PriceField::Elbow), before: 2 });
    assert_eq!(of_line(11), RowFault::UnknownKey { key: String::new() });
    assert!(matches!(of_line(12), RowFault::Price(error) if error.typed == "four"));
    assert_eq!(of_line(13), RowFault::UnknownKey { key: "piece.11-ft".to_string() });
    assert_eq!(list.problems.len(), 10);
    for row in &list.problems {
        let said = text::row_problem(row, System::Us);
        assert!(said.starts_with(&format!("Line {}", row.line)), "{said}");
    }
}

/// Unquoted decimal commas between commas: no price is taken for its part before the comma.
#[test]
fn a_price_cut_by_its_decimal_comma_is_not_taken() {
    let list = list("key,item,price,unit\nelbow,,2,40,each\npipe,,3,20,per ft\n");
    assert_eq!(list.prices, []);
    assert_eq!(list.problems.len(), 2);
}

#[test]
fn what_is_no_list_says_why() {
    assert_eq!(read_table(""), Err(ListFault::NoColumns));
    assert_eq!(read_table("date,amount\n1,2\n"), Err(ListFault::NoColumns));
    let open = Err(ListFault::Table(Fault::OpenQuote { line: 2 }));
    assert_eq!(read_table("key,price,unit\n\"elbow,5,each\n"), open);
}

#[test]
fn typed_prices_stay_unless_it_is_said() {
    let (elbow, tee) = (Field::Price(PriceField::Elbow), Field::Price(PriceField::Tee));
    let corner = Field::Price(PriceField::Corner);
    let list = list("key,price,unit\nelbow,2.50,each\ntee,4,each\ncorner,6,each\n");
    let mut draft = new(System::Us);
    type_in(&mut draft, elbow, "2,5", Unit::Currency);
    type_in(&mut draft, tee, "3", Unit::Currency);
    assert_eq!(list.missing_in(&draft), [corner]);
    let otherwise: Vec<Field> = list.otherwise_in(&draft).iter().map(|price| price.field).collect();
    assert_eq!(otherwise, [tee], "2,5 and 2.50 are the same");
    list.put_into(&mut draft, Typed::Stay);
    let typed = |draft: &Draft| [elbow, tee, corner].map(|field| draft.typed_text(field));
    assert_eq!(typed(&draft), ["2,5", "3", "6"]);
    list.put_into(&mut draft, Typed::AreReplaced);
    assert_eq!(typed(&draft), ["2,5", "4", "6"], "what is the same is left as typed");
}

/// The list kept for other jobs takes up a job's prices and loses nothing else.
#[test]
fn prices_are_added_to_a_table_and_nothing_of_it_is_lost() {
    let mut draft = new(System::Us);
    type_in(&mut draft, Field::Price(PriceField::Elbow), "2.75", Unit::Currency);
    type_in(&mut draft, Field::Price(PriceField::Pipe), "=3", Unit::CurrencyPerFoot);
    type_in(&mut draft, Field::Stocked(6, StockField::Price), "48", Unit::Currency);
    let (begun, count) = add_to_table("", &draft, &words).expect("a list");
    assert_eq!(count, 2, "a price that cannot be read is not kept");
    assert_eq!(list(&begun).prices.len(), 2);

    let before = "remark,unit,price,key,colour\n\
        from the corner shop,each,2.50,elbow,red\n\
        of a later version,each,7,gizmo\n\
        ,each,nine,gauge\n";
    let (after, _) = add_to_table(before, &draft, &words).expect("a list");
    let rows: Vec<Vec<String>> =
        read(&after).expect("a table").into_iter().map(|row| row.cells).collect();
    assert_eq!(rows[1], ["from the corner shop", "each", "2.75", "elbow", "red"]);
    assert_eq!(rows[2], ["of a later version", "each", "7", "gizmo"]);
    assert_eq!(rows[3], ["", "each", "nine", "gauge"]);
    assert_eq!(rows[4], ["", "each", "48", "piece.6-ft", ""]);
    assert_eq!(rows.len(), 5);
    // Twice is once.
    assert_eq!(add_to_table(&after, &draft, &words), Ok((after.clone(), 2)));
    assert_eq!(add_to_table("no list", &draft, &words), Err(ListFault::NoColumns));
}
