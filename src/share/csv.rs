//! Tables as CSV that spreadsheets open without running what people typed.

use crate::words::names::harmless;

/// What stands in one cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cell<'a> {
    /// Numbers, dates and headings that the program itself wrote: never altered, so that -12.5
    /// stays a number.
    Exact(&'a str),
    /// What people typed. When it begins with `=`, `+`, `-`, `@`, tab or carriage return, which
    /// spreadsheets run as a formula, an apostrophe is put before it; a reader of the file who
    /// wants the text itself takes that apostrophe away. What would turn the text around is U+FFFD.
    Typed(&'a str),
}

/// Adds one row, ended by CR LF.
///
/// Fields with a comma, a quote or a line break are quoted, quotes are doubled, spaces are kept.
/// A row of one empty cell is written as `""`, as readers skip empty lines.
///
/// # Examples
/// ```
/// use perchlight::share::csv::{Cell, push_row};
///
/// let mut table = String::new();
/// push_row(&mut table, &[Cell::Exact("-12.5"), Cell::Typed("-12 \"g\"")]);
/// assert_eq!(table, "-12.5,\"'-12 \"\"g\"\"\"\r\n");
/// ```
///
/// Source: RFC 4180, section 2; for the apostrophe OWASP, "CSV Injection".
pub fn push_row(table: &mut String, cells: &[Cell<'_>]) {
    for (index, cell) in cells.iter().enumerate() {
        if index > 0 {
            table.push(',');
        }
        push_cell(table, *cell);
    }
    if let [Cell::Exact("") | Cell::Typed("")] = cells {
        table.push_str("\"\"");
    }
    table.push_str("\r\n");
}

fn push_cell(table: &mut String, cell: Cell<'_>) {
    let (text, is_typed) = match cell {
        Cell::Exact(text) => (text.to_owned(), false),
        Cell::Typed(text) => (harmless(text), true),
    };
    let is_formula = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let guard = if is_typed && is_formula { "'" } else { "" };
    if !text.contains([',', '"', '\r', '\n']) {
        table.push_str(guard);
        table.push_str(&text);
        return;
    }
    table.push('"');
    table.push_str(guard);
    for (index, piece) in text.split('"').enumerate() {
        if index > 0 {
            table.push_str("\"\"");
        }
        table.push_str(piece);
    }
    table.push('"');
}
