//! The manual's tables: by ranges of a measured size, and by two codes.

use super::millionths;
use crate::trade::quantity::decimals_of;
use serde::{Deserialize, Serialize};

/// The row whose range, both ends included, holds `value`; the first of several. None where none does. An
/// infinite end is open.
///
/// A value finer than the table's figures is rounded to them first, halves up, so that a mean of three
/// readings doesn't fall between 0.40 and 0.41 (common practice, no source).
pub fn row_of(rows: &[(f64, f64)], value: f64) -> Option<usize> {
    if !value.is_finite() {
        return None;
    }
    let ends = rows.iter().flat_map(|(from, to)| [*from, *to]);
    let ends = ends.filter(|end| end.is_finite());
    let decimals = ends.map(|end| decimals_of(end, 1e-7)).max().unwrap_or(0);
    let step = 10_f64.powi(i32::from(decimals.min(6)));
    // Half a millionth of a step: what binary rounding takes off a half.
    let value = millionths((value * step + 0.5 + 1e-7).floor() / step);
    rows.iter()
        .position(|(from, to)| (millionths(*from)..=millionths(*to)).contains(&value))
}

/// A table by two codes, such as the case's and the crankshaft's.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Codes {
    /// What the codes down the side are: "case code".
    pub down_name: String,
    /// What the codes across the top are: "crankshaft code".
    pub across_name: String,
    /// The codes down the side.
    pub down: Vec<String>,
    /// The codes across the top.
    pub across: Vec<String>,
    /// What the table says, a row a code down the side; empty where the manual has nothing.
    pub cells: Vec<Vec<String>>,
}

impl Codes {
    /// What the table says for two codes, without regard to case; none where it says nothing.
    pub fn at(&self, down: &str, across: &str) -> Option<&str> {
        self.part(down, across).ok()
    }

    /// The same.
    ///
    /// # Errors
    /// Which of the codes the table hasn't, or that it has nothing for both.
    pub fn part(&self, down: &str, across: &str) -> Result<&str, NoPart> {
        let row = place(&self.down, down).ok_or(NoPart::Down)?;
        let column = place(&self.across, across).ok_or(NoPart::Across)?;
        let cell = self.cells.get(row).and_then(|row| row.get(column));
        let cell = cell.map_or("", String::as_str);
        if cell.is_empty() {
            Err(NoPart::Cell)
        } else {
            Ok(cell)
        }
    }
}

/// Where a code stands among those of its side, without regard to case or to spaces around it.
pub fn place(all: &[String], code: &str) -> Option<usize> {
    all.iter().position(|own| own.eq_ignore_ascii_case(code.trim()))
}

/// Why a table has no part for two codes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoPart {
    /// The first code is none of those down the side.
    Down,
    /// The second code is none of those across the top.
    Across,
    /// It has nothing for both together.
    Cell,
}
