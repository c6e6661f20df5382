//! The table of codes as a form: the codes of either side, then a line of answers for each.

use super::{Select, Set};
use crate::job::field::{Entry, Form, Refused, refuse};
use crate::trade::quantity::short;
use crate::trade::selection::Codes;

/// More codes than any case has, on either side.
const MOST_CODES: usize = 20;
/// What stands for a cell in which the manual has nothing.
const EMPTY: &str = "–";

/// Adds its fields.
pub fn show(form: &mut Form, codes: &Codes) {
    form.head("The manual’s table");
    let mut words = |id: &str, label: &str, value: &str| {
        form.add(format!("codes/{id}"), label, value, Entry::Words);
    };
    words("down_name", "the first code is the", &codes.down_name);
    words("down", "its codes, with commas", &codes.down.join(", "));
    words("across_name", "the second code is the", &codes.across_name);
    words("across", "its codes, with commas", &codes.across.join(", "));
    for (at, code) in codes.down.iter().enumerate() {
        let cells = codes.cells.get(at).map(Vec::as_slice).unwrap_or_default();
        let cells = cells.iter().map(|cell| match cell.as_str() {
            "" => EMPTY,
            cell => cell,
        });
        let label = format!("{code}: what goes with {}", codes.across.join(", "));
        words(
            &format!("row/{at}"),
            &label,
            &cells.collect::<Vec<_>>().join(", "),
        );
    }
}

/// Changes the field of that path below "codes".
pub fn set(select: &mut Select, field: &[&str], value: &str) -> Set {
    let mut codes = select.codes.clone().unwrap_or_default();
    match field {
        ["down_name"] => value.trim().clone_into(&mut codes.down_name),
        ["across_name"] => value.trim().clone_into(&mut codes.across_name),
        ["down"] => {
            codes.down = own(value)?;
            codes.cells.resize(codes.down.len(), Vec::new());
        }
        ["across"] => codes.across = own(value)?,
        ["row", at] => {
            let row = (0..codes.down.len()).find(|own| own.to_string() == *at);
            let row = row.ok_or(Refused::NoField)?;
            let cells = list(value).map(|cell| if cell == EMPTY { "" } else { cell });
            let cells: Vec<String> = cells.map(str::to_owned).collect();
            if cells.len() > codes.across.len() {
                return refuse("The line has more parts than there are codes: one for each, with commas.");
            }
            codes.cells.resize(codes.down.len(), Vec::new());
            codes.cells[row] = cells;
        }
        _ => return Err(Refused::NoField),
    }
    select.codes = Some(codes);
    Ok(())
}

/// Codes of one side: each once.
fn own(value: &str) -> Result<Vec<String>, Refused> {
    let codes: Vec<String> = list(value).map(str::to_owned).collect();
    let twice = |at: usize, code: &String| codes[..at].iter().any(|other| other.eq_ignore_ascii_case(code));
    if codes.len() > MOST_CODES {
        return refuse("A side has 20 codes at most.");
    }
    match codes.iter().enumerate().find(|(at, code)| twice(*at, code)) {
        Some((_, code)) => refuse(format!("“{}” stands there twice.", short(code))),
        None => Ok(codes),
    }
}

fn list(value: &str) -> impl Iterator<Item = &str> {
    value.split(',').map(str::trim).filter(|part| !part.is_empty())
}
