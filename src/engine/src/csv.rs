//! Comma-separated tables as spreadsheets have them: RFC 4180, and what is found beside it.
//!
//! Our own code, since the engine depends on serde and libm only; the suite holds it against a
//! library made for the purpose. One pass over the text, so that the time grows with its length.
//!
//! **Cells that a spreadsheet would take for a formula** begin with `=`, `+`, `-`, `@`, a tab or a
//! line break (OWASP, CSV injection; from memory, with the wide forms of the four signs). They are
//! written with an apostrophe before them, and it is taken off again on reading. A sign with
//! nothing behind it but digits, points and commas is a number and stays as it is: `-5`. So that
//! every text comes back as it was, one that already has such an apostrophe gets another.

/// What stands between two cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Separator {
    Comma,
    /// Where the comma is the decimal mark.
    Semicolon,
    Tab,
}

/// A row, and the line of the text on which it begins, counted from one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    pub line: u32,
    pub cells: Vec<String>,
}

/// Why a text is no table. Lines are counted from one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// More than [`MOST_BYTES`].
    TooLarge,
    /// More than [`MOST_ROWS`].
    TooManyRows,
    /// More than [`MOST_CELLS`] in a row.
    TooManyCells { line: u32 },
    /// More than [`LONGEST_CELL`] bytes.
    LongCell { line: u32 },
    /// A quote that opens on this line and never closes.
    OpenQuote { line: u32 },
    /// Something other than a separator behind a closing quote.
    AfterQuote { line: u32 },
    /// A zero byte: a program's own file, not a text.
    NotText { line: u32 },
}

pub const MOST_BYTES: usize = 1_000_000;
pub const MOST_ROWS: usize = 10_000;
pub const MOST_CELLS: usize = 100;
pub const LONGEST_CELL: usize = 10_000;

/// By this a spreadsheet knows that the text is UTF-8.
const BYTE_ORDER_MARK: char = '\u{feff}';

impl Separator {
    /// Those that are wanted least in prose first: with as many of each, it is the first.
    const ALL: [Separator; 3] = [Separator::Tab, Separator::Semicolon, Separator::Comma];

    pub const fn mark(self) -> char {
        match self {
            Separator::Comma => ',',
            Separator::Semicolon => ';',
            Separator::Tab => '\t',
        }
    }
}

/// Writes a table for spreadsheets. Zero bytes, which no text has, are left out.
///
/// ```
/// use finrun_engine::csv::{Separator, read, write};
/// let rows = vec![vec!["Elbow, 3/4\"".to_string(), "=2+3".to_string(), "-5".to_string()]];
/// let text = write(&rows, Separator::Comma);
/// assert_eq!(text, "\u{feff}\"Elbow, 3/4\"\"\",'=2+3,-5\r\n");
/// assert_eq!(read(&text).expect("a table")[0].cells, rows[0]);
/// ```
pub fn write(rows: &[Vec<String>], separator: Separator) -> String {
    let mut text = String::from(BYTE_ORDER_MARK);
    for row in rows {
        for (place, cell) in row.iter().enumerate() {
            if place > 0 {
                text.push(separator.mark());
            }
            // Without quotes a row of one blank cell would be a blank line.
            write_cell(&mut text, cell, row.len() == 1);
        }
        text.push_str("\r\n");
    }
    text
}

fn write_cell(text: &mut String, cell: &str, alone: bool) {
    // Every separator is quoted, so that the one in use is found again. Some readers trim spaces.
    let quoted = cell.contains(['"', ',', ';', '\t', '\r', '\n'])
        || cell.starts_with([' ', BYTE_ORDER_MARK])
        || cell.ends_with(' ')
        || (alone && cell.is_empty());
    if quoted {
        text.push('"');
    }
    if needs_apostrophe(cell) {
        text.push('\'');
    }
    for c in cell.chars().filter(|c| *c != '\0') {
        if c == '"' {
            text.push('"');
        }
        text.push(c);
    }
    if quoted {
        text.push('"');
    }
}

/// Whether a spreadsheet might calculate with it, or would but for its apostrophes.
fn needs_apostrophe(cell: &str) -> bool {
    let bare = cell.trim_start_matches('\'');
    bare.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])
        && !is_number(bare)
}

fn is_number(text: &str) -> bool {
    let digits = text.strip_prefix(['+', '-']).unwrap_or(text);
    digits.contains(|c: char| c.is_ascii_digit())
        && digits.chars().all(|c| c.is_ascii_digit() || c == '.' || c == ',')
}

/// Reads a table whose separator is found from the text. Blank lines are passed over.
pub fn read(text: &str) -> Result<Vec<Row>, Fault> {
    read_with(text, separator_of(text))
}

/// The separator of which the first row that has any has the most, outside of quotes.
pub fn separator_of(text: &str) -> Separator {
    let text = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text);
    let mut found = [0_u32; Separator::ALL.len()];
    let (mut quoted, mut begins) = (false, true);
    for c in text.chars() {
        // A doubled quote closes and opens again, which comes to the same.
        let turns = c == '"' && (quoted || begins);
        quoted ^= turns;
        let breaks = matches!(c, '\r' | '\n') && !quoted;
        if breaks && found.iter().any(|count| *count > 0) {
            break;
        }
        let place = Separator::ALL.iter().position(|separator| separator.mark() == c);
        if let Some(place) = place.filter(|_| !quoted) {
            found[place] += 1;
        }
        begins = turns || breaks || place.is_some();
    }
    let most = found.iter().copied().max().unwrap_or(0);
    let first = Separator::ALL.iter().zip(found).find(|(_, count)| *count == most && most > 0);
    first.map_or(Separator::Comma, |(separator, _)| *separator)
}

/// Reads a table with this separator.
pub fn read_with(text: &str, separator: Separator) -> Result<Vec<Row>, Fault> {
    if text.len() > MOST_BYTES {
        return Err(Fault::TooLarge);
    }
    let text = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text);
    let mut reader = Reader { rest: text.chars().peekable(), line: 1, mark: separator.mark() };
    let mut rows: Vec<Row> = Vec::new();
    loop {
        let line = reader.line;
        let mut cells = Vec::new();
        let end = loop {
            let Cell { text, quoted, end } = reader.cell()?;
            if cells.len() == MOST_CELLS {
                return Err(Fault::TooManyCells { line });
            }
            let blank_line = cells.is_empty() && text.is_empty() && !quoted && end != End::Cell;
            if !blank_line {
                cells.push(text);
            }
            if end != End::Cell {
                break end;
            }
        };
        if !cells.is_empty() {
            if rows.len() == MOST_ROWS {
                return Err(Fault::TooManyRows);
            }
            rows.push(Row { line, cells });
        }
        if end == End::Text {
            return Ok(rows);
        }
    }
}

struct Reader<'a> {
    rest: std::iter::Peekable<std::str::Chars<'a>>,
    line: u32,
    mark: char,
}

struct Cell {
    text: String,
    quoted: bool,
    end: End,
}

/// What ends with a cell.
#[derive(Clone, Copy, PartialEq, Eq)]
enum End {
    Cell,
    Row,
    Text,
}

impl Reader<'_> {
    /// The next character, counting lines; a line break of two counts with its second.
    fn next(&mut self) -> Result<Option<char>, Fault> {
        let c = self.rest.next();
        match c {
            Some('\0') => return Err(Fault::NotText { line: self.line }),
            Some('\n') => self.line += 1,
            Some('\r') if self.rest.peek() != Some(&'\n') => self.line += 1,
            _ => {}
        }
        Ok(c)
    }

    /// What a character ends outside of quotes, if it ends anything.
    fn end(&mut self, c: Option<char>) -> Result<Option<End>, Fault> {
        Ok(match c {
            None => Some(End::Text),
            Some(c) if c == self.mark => Some(End::Cell),
            Some('\r') => {
                if self.rest.peek() == Some(&'\n') {
                    self.next()?;
                }
                Some(End::Row)
            }
            Some('\n') => Some(End::Row),
            Some(_) => None,
        })
    }

    /// A quote that does not begin its cell is a mark like any other: people write inches so.
    fn cell(&mut self) -> Result<Cell, Fault> {
        let mut text = String::new();
        let line = self.line;
        let push = |text: &mut String, c: char| {
            text.push(c);
            if text.len() > LONGEST_CELL { Err(Fault::LongCell { line }) } else { Ok(()) }
        };
        let quoted = self.rest.peek() == Some(&'"');
        if quoted {
            self.next()?;
            loop {
                match self.next()? {
                    None => return Err(Fault::OpenQuote { line }),
                    Some('"') if self.rest.peek() == Some(&'"') => {
                        self.next()?;
                        push(&mut text, '"')?;
                    }
                    Some('"') => break,
                    Some(c) => push(&mut text, c)?,
                }
            }
        }
        let end = loop {
            let c = self.next()?;
            match (self.end(c)?, c) {
                (Some(end), _) => break end,
                (None, Some(c)) if !quoted => push(&mut text, c)?,
                _ => return Err(Fault::AfterQuote { line: self.line }),
            }
        };
        Ok(Cell { text: without_apostrophe(text), quoted, end })
    }
}

fn without_apostrophe(cell: String) -> String {
    match cell.strip_prefix('\'') {
        Some(bare) if needs_apostrophe(bare) => bare.to_string(),
        _ => cell,
    }
}
