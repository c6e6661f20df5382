//! The table of codes as a form: the codes of either side, then a line of answers for each.

use super::{Select, Set};
use crate::job::field::{Entry, Form, Refused};
use crate::job::text_form::code_table::{line, line_label, line_words, side, stood};
use crate::trade::selection::Codes;

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
        let label = line_label(code, &codes.across.join(", "));
        words(&format!("row/{at}"), &label, &line_words(cells));
    }
}

/// Changes the field of that path below "codes".
pub fn set(select: &mut Select, field: &[&str], value: &str) -> Set {
    let mut codes = select.codes.clone().unwrap_or_default();
    match field {
        ["down_name"] => value.trim().clone_into(&mut codes.down_name),
        ["across_name"] => value.trim().clone_into(&mut codes.across_name),
        ["down"] => {
            let down = side(value).map_err(Refused::Said)?;
            codes.cells = carried(&codes.cells, &stood(&codes.down, &down));
            codes.down = down;
        }
        ["across"] => {
            let across = side(value).map_err(Refused::Said)?;
            let stood = stood(&codes.across, &across);
            let lines = codes.cells.iter_mut().filter(|line| !line.is_empty());
            lines.for_each(|line| *line = carried(line, &stood));
            codes.across = across;
        }
        ["row", at] => {
            let row = (0..codes.down.len()).find(|own| own.to_string() == *at);
            let row = row.ok_or(Refused::NoField)?;
            let cells = line(&codes.down[row], &codes.across, value).map_err(Refused::Said)?;
            codes.cells.resize(codes.down.len(), Vec::new());
            codes.cells[row] = cells;
        }
        _ => return Err(Refused::NoField),
    }
    select.codes = Some(codes);
    Ok(())
}

/// What belongs to a code goes with it, wherever it stands now; one that is new has nothing yet.
fn carried<T: Clone + Default>(before: &[T], stood: &[Option<usize>]) -> Vec<T> {
    let of = |at: &Option<usize>| at.and_then(|at| before.get(at).cloned()).unwrap_or_default();
    stood.iter().map(of).collect()
}
