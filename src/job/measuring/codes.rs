//! A bearing shell by two codes: the manual's table typed once, both codes read, the shell's class.

use super::Calculation;
use super::answer::{Answer, Asked, Trouble};
use super::field::Field;
use crate::job::text_form::code_table::{MOST_CODES, line_label, list, no_part_words, side, whole_line};
use crate::trade::selection::{Codes, NoPart, place};

macro_rules! lines {
    ($($row:literal)*) => {
        [$((concat!("line_", $row), concat!("line ", $row, " of the table"))),*]
    };
}

/// The id and the name of each line there can be.
const LINES: [(&str, &str); MOST_CODES] = lines!(1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20);

static FIELDS: [Field; MOST_CODES + 4] = fields();

/// The codes of either side, a line for each down the side, the two codes read.
const fn fields() -> [Field; MOST_CODES + 4] {
    let mut all = [Field::words("down", "codes down the side, with commas"); MOST_CODES + 4];
    all[1] = Field::words("across", "codes across the top, with commas");
    let mut at = 0;
    while at < MOST_CODES {
        let (id, name) = LINES[at];
        all[at + 2] = Field::line(id, name, at);
        at += 1;
    }
    all[at + 2] = Field::words("read_down", "code read, one of those down the side");
    all[at + 3] = Field::words("read_across", "code read, one of those across the top");
    all
}

/// A shell's class by the codes on case and crankshaft.
pub static CODES: Calculation = Calculation {
    id: "codes",
    name: "Shell by its codes",
    how: "Enter the manual’s table: its codes, then the line of each, – where it has nothing. Then read both codes off the clean parts, one on the case or rod, one on the crankshaft.",
    model: "the manual’s table as entered; nothing is reckoned",
    fields: &FIELDS,
    reading: None,
    answer: by_codes,
};

fn by_codes(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let table = table(asked)?;
    let down = asked.word("read_down");
    if down.is_empty() {
        return Err(first_line_missing(asked, &table).unwrap_or_else(|| asked.missing("read_down")));
    }
    let across = asked.word("read_across");
    let no_part = |why| Trouble::Said(no_part_words(&table, why, down, across));
    let row = place(&table.down, down).ok_or_else(|| no_part(NoPart::Down))?;
    if let Some(missing) = line_missing(asked, &table, row) {
        return Err(missing);
    }
    if across.is_empty() {
        return Err(asked.missing("read_across"));
    }
    let class = table.part(down, across).map_err(no_part)?;
    Ok(Answer {
        says: "shell class",
        number: class.to_owned(),
        unit: "",
        reckoned: None,
        verdict: "By the manual’s table. Then measure the clearance.".to_owned(),
        refused: false,
        open: false,
        rows: vec![("by the codes", format!("{down}, {across}"))],
    })
}

/// The table, every line of it that was entered.
fn table(asked: &Asked<'_>) -> Result<Codes, Trouble> {
    let codes = |id: &str| match side(asked.word(id)).map_err(Trouble::Said)? {
        none if none.is_empty() => Err(asked.missing(id)),
        codes => Ok(codes),
    };
    let (down, across) = (codes("down")?, codes("across")?);
    let typed = |code: &str| asked.word(&kept_under(code, &across)).to_owned();
    let lines = down.iter();
    let cells = lines.map(|code| whole_line(code, &across, &typed(code)).map_err(Trouble::Said));
    Ok(Codes {
        down_name: "code down the side".to_owned(),
        across_name: "code across the top".to_owned(),
        cells: cells.collect::<Result<_, _>>()?,
        down,
        across,
    })
}

fn first_line_missing(asked: &Asked<'_>, table: &Codes) -> Option<Trouble> {
    (0..table.down.len()).find_map(|row| line_missing(asked, table, row))
}

fn line_missing(asked: &Asked<'_>, table: &Codes, row: usize) -> Option<Trouble> {
    let empty = table.cells.get(row).is_none_or(Vec::is_empty);
    empty.then(|| Trouble::Line(label(asked, row).unwrap_or_default()))
}

/// What a line is stored under: its code and those across, so that it goes with no others when one is put in, or
/// another engine's table is entered.
fn kept_under(code: &str, across: &[String]) -> String {
    format!("line {code} of {}", across.join(" ")).to_ascii_uppercase()
}

/// What the line of that row is stored under; none where there is no such code.
pub fn stored(asked: &Asked<'_>, row: usize) -> Option<String> {
    let across: Vec<String> = list(asked.word("across")).map(str::to_owned).collect();
    let code = list(asked.word("down")).nth(row)?;
    Some(kept_under(code, &across))
}

/// What the line of that row is called: by its code and what goes with it; none where there is no such code.
pub fn label(asked: &Asked<'_>, row: usize) -> Option<String> {
    let across = list(asked.word("across")).collect::<Vec<_>>().join(", ");
    let code = list(asked.word("down")).nth(row)?;
    (!across.is_empty()).then(|| line_label(code, &across))
}
