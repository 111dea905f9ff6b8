//! Comma-separated tables, read by the names of their columns.

use std::collections::HashMap;

/// A row: column name to text.
#[derive(Debug, Clone)]
pub(crate) struct Row(HashMap<String, String>);

impl Row {
    /// `None` where there is no such column or nothing stands in it.
    pub(crate) fn text(&self, column: &str) -> Option<&str> {
        self.0.get(column).map(String::as_str).filter(|text| !text.is_empty())
    }

    /// The number in the first of these columns that holds one.
    pub(crate) fn number(&self, columns: &[&str]) -> Result<f64, String> {
        let (column, text) = columns
            .iter()
            .find_map(|column| self.text(column).map(|text| (column, text)))
            .ok_or_else(|| format!("no value in column {}", columns.join(" or ")))?;
        text.parse().map_err(|_| format!("{text:?} in column {column} is no number"))
    }
}

/// Every row of a table whose first line names the columns.
pub(crate) fn rows(text: &str) -> Result<Vec<Row>, String> {
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(text.as_bytes());
    reader.deserialize().map(|row| row.map(Row).map_err(|error| error.to_string())).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_found_by_name_in_any_order() {
        let rows = rows("b, a\n2,1\n,3\n").expect("a table");
        let numbers: Vec<_> = rows.iter().map(|row| row.number(&["a"])).collect();
        assert_eq!(numbers, [Ok(1.0), Ok(3.0)]);
        assert_eq!(rows.last().map(|row| row.number(&["b", "a"])), Some(Ok(3.0)));
    }

    #[test]
    fn what_cannot_be_read_is_said() {
        let rows = rows("a,b\nx,\n").expect("a table");
        let row = rows.first().expect("one row");
        assert_eq!(row.number(&["a"]), Err("\"x\" in column a is no number".into()));
        assert_eq!(row.number(&["b"]), Err("no value in column b".into()));
        assert!(super::rows("a,b\n1\n").is_err());
    }
}
