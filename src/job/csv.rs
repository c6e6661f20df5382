//! A table as text, one row a line: commas, semicolons or tabs between, quotes around what holds them.
//!
//! After RFC 4180, and what spreadsheets write in practice: a mark of byte order, any line ending,
//! blank lines. Nothing of a user's file is guessed at: what can't be read is refused by its line.

use crate::trade::quantity::decimal;
use std::fmt;

/// More than this in one file is no table typed at a desk.
const MOST_ROWS: usize = 5_000;

/// One row, with the line of the file it begins on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Counted from 1.
    pub line: usize,
    /// Its cells, trimmed.
    pub cells: Vec<String>,
}

/// Why a text is no table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CsvError {
    /// Nothing in it.
    Empty,
    /// A quote is opened on that line and never closed.
    OpenQuote { line: usize },
    /// Something follows a closed quote.
    AfterQuote { line: usize },
    /// Too many rows.
    TooLong,
}

impl fmt::Display for CsvError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => {
                f.write_str("The file is empty: it needs a line of headings and a line for each size.")
            }
            Self::OpenQuote { line } => write!(f, "Line {line}: a quote is opened and never closed."),
            Self::AfterQuote { line } => write!(
                f,
                "Line {line}: after a closed quote the next cell must follow: double a quote that belongs to the text."
            ),
            Self::TooLong => write!(f, "The file has more than {MOST_ROWS} rows: split it."),
        }
    }
}

impl std::error::Error for CsvError {}

/// Reads a table; the separator is the one its first line uses.
///
/// # Errors
/// [`CsvError`], by line.
pub fn read(text: &str) -> Result<Vec<Row>, CsvError> {
    let text = text.trim_start_matches('\u{feff}');
    let separator = separator(text);
    let mut rows = Vec::new();
    let mut reader = Reader {
        left: text.chars().peekable(),
        line: 1,
    };
    while let Some(row) = reader.row(separator)? {
        if row.cells.iter().any(|cell| !cell.is_empty()) {
            rows.push(row);
        }
        if rows.len() > MOST_ROWS {
            return Err(CsvError::TooLong);
        }
    }
    if rows.is_empty() {
        Err(CsvError::Empty)
    } else {
        Ok(rows)
    }
}

/// Tab before semicolon before comma: a decimal comma makes many commas, nothing makes stray tabs.
fn separator(text: &str) -> char {
    let first = text
        .lines()
        .find(|line| !line.trim().is_empty())
        .unwrap_or_default();
    let mut quoted = false;
    let bare: String = first
        .chars()
        .filter(|c| {
            quoted ^= *c == '"';
            !quoted
        })
        .collect();
    ['\t', ';'].into_iter().find(|c| bare.contains(*c)).unwrap_or(',')
}

struct Reader<'a> {
    left: std::iter::Peekable<std::str::Chars<'a>>,
    line: usize,
}

impl Reader<'_> {
    /// The next row; `None` at the end.
    fn row(&mut self, separator: char) -> Result<Option<Row>, CsvError> {
        if self.left.peek().is_none() {
            return Ok(None);
        }
        let line = self.line;
        let mut cells = Vec::new();
        loop {
            cells.push(self.cell(separator)?);
            match self.left.next() {
                Some(c) if c == separator => {}
                Some('\r') => {
                    self.left.next_if_eq(&'\n');
                    break;
                }
                _ => break,
            }
        }
        self.line += 1;
        Ok(Some(Row { line, cells }))
    }

    /// One cell, up to its separator or the end of the line, which stay.
    fn cell(&mut self, separator: char) -> Result<String, CsvError> {
        while self.left.next_if(|c| *c == ' ' && *c != separator).is_some() {}
        if self.left.peek() == Some(&'"') {
            return self.quoted(separator);
        }
        let mut cell = String::new();
        while let Some(c) = self
            .left
            .next_if(|c| *c != separator && !matches!(*c, '\n' | '\r'))
        {
            cell.push(c);
        }
        Ok(bare(&cell))
    }

    fn quoted(&mut self, separator: char) -> Result<String, CsvError> {
        let opened = self.line;
        self.left.next();
        let mut cell = String::new();
        loop {
            match self.left.next() {
                None => return Err(CsvError::OpenQuote { line: opened }),
                Some('"') if self.left.next_if_eq(&'"').is_some() => cell.push('"'),
                Some('"') => break,
                Some(c) => {
                    self.line += usize::from(c == '\n');
                    cell.push(c);
                }
            }
        }
        while self.left.next_if(|c| *c == ' ' && *c != separator).is_some() {}
        match self.left.peek() {
            None | Some('\n' | '\r') => Ok(bare(&cell)),
            Some(c) if *c == separator => Ok(bare(&cell)),
            Some(_) => Err(CsvError::AfterQuote { line: self.line }),
        }
    }
}

/// Writes a table with commas, quoting what needs it; lines end as RFC 4180 has them.
pub fn write(rows: &[Vec<String>]) -> String {
    rows.iter()
        .map(|row| row.iter().map(|cell| quote(cell)).collect::<Vec<_>>().join(",") + "\r\n")
        .collect()
}

fn quote(cell: &str) -> String {
    let cell = match is_formula(cell) {
        true => format!("'{cell}"),
        false => cell.to_owned(),
    };
    if cell.contains([',', ';', '\t', '"', '\n', '\r']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell
    }
}

/// Whether a spreadsheet would reckon with that cell rather than show it, or would but for apostrophes
/// before it; a plain number is none. OWASP ASVS 5.0, 1.2.10, names all but the ends of lines and the full
/// width that some languages type (from memory: OWASP, "CSV Injection").
fn is_formula(cell: &str) -> bool {
    let bare = cell.trim_start_matches('\'');
    let begins = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠'];
    bare.starts_with(begins) && decimal(cell).is_none()
}

/// The cell as it was before [`write`] made it harmless.
fn bare(cell: &str) -> String {
    let cell = cell.trim();
    let inner = cell.strip_prefix('\'').filter(|inner| is_formula(inner));
    inner.unwrap_or(cell).to_owned()
}
