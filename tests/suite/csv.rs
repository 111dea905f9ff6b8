//! Tables for spreadsheets, against the `csv` crate as the other reader and writer.

use std::time::Instant;

use finrun_engine::csv::{
    Fault, LONGEST_CELL, MOST_BYTES, MOST_CELLS, MOST_ROWS, Separator, read, read_with,
    separator_of, write,
};
use proptest::prelude::*;

const SEPARATORS: [Separator; 3] = [Separator::Comma, Separator::Semicolon, Separator::Tab];

fn rows_of(text: &str) -> Vec<Vec<String>> {
    read(text).expect("a table").into_iter().map(|row| row.cells).collect()
}

fn table(rows: &[&[&str]]) -> Vec<Vec<String>> {
    rows.iter().map(|row| row.iter().map(|cell| cell.to_string()).collect()).collect()
}

/// As the crate reads it, which knows nothing of apostrophes.
fn read_by_crate(text: &str, separator: Separator) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator.mark() as u8)
        .from_reader(text.as_bytes());
    let records = reader.records().map(|record| record.expect("the crate reads it"));
    records.map(|record| record.iter().map(str::to_string).collect()).collect()
}

fn written_by_crate(rows: &[Vec<String>], separator: Separator, ends: csv::Terminator) -> String {
    let mut writer = csv::WriterBuilder::new()
        .flexible(true)
        .delimiter(separator.mark() as u8)
        .terminator(ends)
        .from_writer(Vec::new());
    for row in rows {
        writer.write_record(row).expect("memory takes it");
    }
    String::from_utf8(writer.into_inner().expect("memory takes it")).expect("strings went in")
}

/// OWASP's list, stated anew: the apostrophe stands before these, unless they are one signed number.
fn is_formula(cell: &str) -> bool {
    let bare: Vec<char> = cell.chars().skip_while(|c| *c == '\'').collect();
    let Some((first, rest)) = bare.split_first() else { return false };
    let signed = matches!(first, '+' | '-');
    let digits = rest.iter().filter(|c| c.is_ascii_digit()).count();
    let marks = rest.iter().filter(|c| matches!(c, '.' | ',')).count();
    let number = signed && digits > 0 && digits + marks == rest.len();
    "=+-@\t\r\n＝＋－＠".contains(*first) && !number
}

/// Texts made of what matters here, and of anything at all but zero bytes.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        "[-ab1',;\t\"\r\n=+@. ½\u{feff}]{0,8}",
        "[-+][0-9.,]{1,6}",
        "[^\0]{0,12}",
        Just(String::new()),
    ]
}

fn rows() -> impl Strategy<Value = Vec<Vec<String>>> {
    prop::collection::vec(prop::collection::vec(cell(), 1..5), 0..6)
}

fn separator() -> impl Strategy<Value = Separator> {
    prop::sample::select(SEPARATORS.to_vec())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn what_is_written_comes_back(rows in rows(), separator in separator()) {
        let text = write(&rows, separator);
        let back: Vec<_> = read(&text).expect("a table").into_iter().map(|row| row.cells).collect();
        prop_assert_eq!(back, rows);
    }

    /// The crate reads what we write: the same cells, formulas with their apostrophe.
    #[test]
    fn the_crate_reads_what_we_write(rows in rows(), separator in separator()) {
        let text = write(&rows, separator);
        let seen = read_by_crate(&text, separator);
        let guarded = |cell: &String| match is_formula(cell) {
            true => format!("'{cell}"),
            false => cell.clone(),
        };
        let expected: Vec<Vec<String>> =
            rows.iter().map(|row| row.iter().map(guarded).collect()).collect();
        prop_assert_eq!(seen, expected);
    }

    /// We read what the crate writes; an apostrophe before a formula is taken off.
    #[test]
    fn we_read_what_the_crate_writes(
        rows in rows(),
        separator in separator(),
        crlf in any::<bool>(),
    ) {
        let ends = if crlf { csv::Terminator::CRLF } else { csv::Terminator::Any(b'\n') };
        let text = written_by_crate(&rows, separator, ends);
        // A byte-order mark is not for the crate to write.
        let begins_with_mark = text.starts_with('\u{feff}');
        let mut expected: Vec<Vec<String>> = rows
            .iter()
            .map(|row| row.iter().map(|cell| match cell.strip_prefix('\'') {
                Some(bare) if is_formula(bare) => bare.to_string(),
                _ => cell.clone(),
            }).collect())
            .collect();
        if begins_with_mark {
            expected[0][0] = expected[0][0].trim_start_matches('\u{feff}').to_string();
            prop_assume!(!rows[0][0].contains(['\'', '"']) && rows[0][0].matches('\u{feff}').count() == 1);
            prop_assume!(rows[0].len() > 1 || !expected[0][0].is_empty());
        }
        let read = read_with(&text, separator).expect("a table");
        let seen: Vec<_> = read.into_iter().map(|row| row.cells).collect();
        prop_assert_eq!(seen, expected);
    }

    /// Whatever the text, there is an answer; and where both read it, it is the crate's.
    #[test]
    fn any_text_has_an_answer(text in "[-a1',;\t\"\r\n=\0 ]{0,40}") {
        for separator in SEPARATORS {
            if let Ok(rows) = read_with(&text, separator) {
                let seen: Vec<_> = rows.into_iter().map(|row| row.cells).collect();
                let theirs: Vec<Vec<String>> = read_by_crate(&text, separator)
                    .into_iter()
                    .map(|row| row.into_iter().map(|cell| match cell.strip_prefix('\'') {
                        Some(bare) if is_formula(bare) => bare.to_string(),
                        _ => cell,
                    }).collect())
                    .collect();
                prop_assert_eq!(seen, theirs);
            }
        }
    }
}

#[test]
fn formulas_are_written_as_text_and_numbers_as_numbers() {
    let rows = table(&[
        &["=SUM(A1:A9)", "+1+2", "-2+cmd|' /C calc'!A0", "@SUM(1)", "\t=1", "\r=1"],
        &["-5", "+5.50", "-1.234,56", "-", "'=x", "it's"],
    ]);
    let text = write(&rows, Separator::Comma);
    let cells = read_by_crate(&text, Separator::Comma);
    assert!(cells[0].iter().all(|cell| cell.starts_with('\'')), "{cells:?}");
    assert_eq!(cells[1], ["-5", "+5.50", "-1.234,56", "'-", "''=x", "it's"]);
    assert_eq!(rows_of(&text), rows);
}

/// As spreadsheets of countries with a decimal comma save it, and as they save copied cells.
#[test]
fn the_separator_is_found() {
    let semicolons = "key;item;price\r\nelbow;Elbow, 3/4\";1.234,56\r\ntee;;2,40\r\n";
    assert_eq!(separator_of(semicolons), Separator::Semicolon);
    assert_eq!(
        rows_of(semicolons),
        table(&[
            &["key", "item", "price"],
            &["elbow", "Elbow, 3/4\"", "1.234,56"],
            &["tee", "", "2,40"]
        ])
    );
    assert_eq!(separator_of("key\titem, in words\tprice"), Separator::Tab);
    assert_eq!(separator_of("\u{feff}key,item,price\n1;2;3;4;5"), Separator::Comma);
    assert_eq!(separator_of("\"a;b;c\",d"), Separator::Comma);
    assert_eq!(separator_of("\"say \"\"a;b;c\"\"\",d"), Separator::Comma);
    assert_eq!(separator_of("6\"\" pipe;a,b;c"), Separator::Semicolon);
    assert_eq!(separator_of("alone"), Separator::Comma);
}

#[test]
fn rows_know_their_lines() {
    let text = "\u{feff}a,b\r\n\r\n\"two\r\nlines\",c\rd,e\n";
    let rows = read(text).expect("a table");
    let lines: Vec<u32> = rows.iter().map(|row| row.line).collect();
    assert_eq!(lines, [1, 3, 5]);
    assert_eq!(rows[1].cells, ["two\r\nlines", "c"]);
}

#[test]
fn what_is_no_table_says_where() {
    let cases = [
        ("a,b\nc,\"open\nand on", Fault::OpenQuote { line: 2 }),
        ("a,b\n\"c\"d,e", Fault::AfterQuote { line: 2 }),
        ("a\nb\0c", Fault::NotText { line: 2 }),
        ("\"\0", Fault::NotText { line: 1 }),
    ];
    for (text, fault) in cases {
        assert_eq!(read(text), Err(fault), "{text:?}");
    }
    let long = |bytes: usize| "x".repeat(bytes);
    assert_eq!(read(&long(MOST_BYTES)), Err(Fault::LongCell { line: 1 }));
    assert_eq!(read(&long(MOST_BYTES + 1)), Err(Fault::TooLarge));
    assert_eq!(
        read(&format!("a\n\"{}\"", long(LONGEST_CELL + 1))),
        Err(Fault::LongCell { line: 2 })
    );
    assert!(read(&long(LONGEST_CELL)).is_ok());
    assert_eq!(read(&",".repeat(MOST_CELLS)), Err(Fault::TooManyCells { line: 1 }));
    assert!(read(&",".repeat(MOST_CELLS - 1)).is_ok());
    assert_eq!(read(&"a\n".repeat(MOST_ROWS + 1)), Err(Fault::TooManyRows));
    assert!(read(&"a\n".repeat(MOST_ROWS)).is_ok());
    assert_eq!(read(""), Ok(vec![]));
    assert_eq!(read("\n\r\n\r"), Ok(vec![]));
}

/// Ten times the text takes about ten times the time; quadratic would be a hundred times.
#[test]
fn time_grows_with_length_only() {
    let once = |quotes: usize| {
        let text = format!("\"{}\"\n", "\"\"".repeat(4_000)).repeat(quotes);
        let begun = Instant::now();
        assert_eq!(read(&text).expect("a table").len(), quotes);
        begun.elapsed().as_secs_f64()
    };
    let best = |quotes| (0..5).map(|_| once(quotes)).fold(f64::INFINITY, f64::min);
    let (small, large) = (best(10), best(100));
    assert!(large < small * 40.0, "{small} s and {large} s");
}
