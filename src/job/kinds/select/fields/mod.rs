//! The fields of a select step; a place, a shim and a row of a table each under its own number.

mod codes;
mod tables;

use super::data::{By, Place, Row, Select, Shim, Trial};
use crate::job::field::{self, Field, Form, Refused, Seen, Set, refuse, yes};
use crate::job::id::{ReadingId, RowId};
use crate::job::kinds::check::free_name;
use tables::{GAP, HEAD, MEASURED, PLACE, ROW, SHARED, SHIM, TRIAL, WITH_TRIAL};

/// The most sizes a box is searched for.
const MOST_SIZES: usize = 12;

/// Adds the fields of a select step, as far as its way has them.
pub fn show(form: &mut Form, select: &Select) {
    field::show(form, "select", &HEAD, select);
    if select.by != By::Code {
        field::show(form, "select", &SHARED, select);
    }
    if select.measured() {
        for place in &select.places {
            let under = format!("place/{}", place.id.0);
            field::show(form, &under, &PLACE, place);
            form.press(format!("{under}/remove"), &format!("delete “{}”", place.name));
        }
        form.press("place/add", "measure at one more place");
        field::show(form, "select", &MEASURED, select);
    }
    if select.by == By::Gap {
        field::show(form, "select", &GAP, select);
    }
    if matches!(select.by, By::Gap | By::Trial) {
        form.head("The box of shims");
        rows(
            form,
            "shim",
            &SHIM,
            select.shims.iter().map(|shim| (shim.id, shim)),
        );
        form.press("shim/add", "add a thickness");
    }
    if select.measured() {
        form.head(match select.by {
            By::Gap => "The manual’s rounding",
            By::Trial | By::Range | By::Code => "The manual’s table",
        });
        rows(form, "row", &ROW, select.rows.iter().map(|row| (row.id, row)));
        form.press("row/add", "add a row");
    }
    if select.by == By::Code {
        codes::show(form, &select.codes.clone().unwrap_or_default());
    }
    form.head("After it is in");
    // What is only tried has nothing else to go by.
    if select.by != By::Trial {
        field::show(form, "select", &WITH_TRIAL, select);
    }
    if let Some(trial) = &select.trial {
        field::show(form, "trial", &TRIAL, trial);
    }
}

fn rows<'a, T: 'a>(
    form: &mut Form,
    kind: &str,
    table: &[Field<T>],
    all: impl Iterator<Item = (RowId, &'a T)>,
) {
    for ((id, row), number) in all.zip(1..) {
        let under = format!("{kind}/{}", id.0);
        field::show(form, &under, table, row);
        form.press(format!("{under}/remove"), &format!("delete {kind} {number}"));
    }
}

/// Changes the field of that path; where it is refused nothing is changed.
///
/// # Errors
/// As [`field::set`], and limits the wrong way round, a name that another has, a box too large.
pub fn set(select: &mut Select, path: &str, value: &str) -> Set {
    match path.split('/').collect::<Vec<_>>().as_slice() {
        ["place", "add"] => select.places.push(Place {
            id: ReadingId::default(),
            name: free_name("place", select.places.iter().map(|place| place.name.as_str())),
        }),
        ["shim", "add"] if select.shims.len() >= MOST_SIZES => {
            return refuse("A box has 12 sizes at most: delete one that is used up.");
        }
        ["shim", "add"] => select.shims.push(tables::no_shim()),
        ["row", "add"] => select.rows.push(Row::default()),
        ["place", id, "remove"] => {
            let at = place(select.places.iter().map(|place| place.id.0), id)?;
            select.places.remove(at);
        }
        ["shim", id, "remove"] => {
            let at = place(select.shims.iter().map(|shim| shim.id.0), id)?;
            select.shims.remove(at);
        }
        ["row", id, "remove"] => {
            let at = place(select.rows.iter().map(|row| row.id.0), id)?;
            select.rows.remove(at);
        }
        ["place", id, field] => return set_place(select, id, field, value),
        ["shim", id, field] => {
            let at = place(select.shims.iter().map(|shim| shim.id.0), id)?;
            let shim: &mut Shim = select.shims.get_mut(at).ok_or(Refused::NoField)?;
            return field::set(&SHIM, shim, "shim", &format!("shim/{field}"), value);
        }
        ["row", id, field] => return set_row(select, id, field, value),
        ["codes", field @ ..] => return codes::set(select, field, value),
        ["select", "trial"] if select.by == By::Trial && !yes(value)? => {
            return refuse("What is chosen by trial is read when it is in: choose another way first.");
        }
        // Said again, it keeps the trial there is.
        ["select", "trial"] if yes(value)? && select.trial.is_some() => {}
        ["trial", _] => {
            let mut changed = select.trial.clone().ok_or(Refused::NoField)?;
            field::set(&TRIAL, &mut changed, "trial", path, value)?;
            in_order(changed.least, changed.most)?;
            select.trial = Some(changed);
        }
        ["select", _] => return set_head(select, path, value),
        _ => return Err(Refused::NoField),
    }
    Ok(())
}

/// What stands under "select", wherever its way shows it.
fn set_head(select: &mut Select, path: &str, value: &str) -> Set {
    let tables = [&HEAD[..], &SHARED, &MEASURED, &GAP, &WITH_TRIAL];
    let mut found = Err(Refused::NoField);
    for table in tables {
        if found == Err(Refused::NoField) {
            found = field::set(table, select, "select", path, value);
        }
    }
    if found.is_ok() && select.by == By::Trial && select.trial.is_none() {
        select.trial = Some(Trial::default());
    }
    found
}

fn set_place(select: &mut Select, id: &str, field: &str, value: &str) -> Set {
    let at = place(select.places.iter().map(|place| place.id.0), id)?;
    let name = value.trim();
    let mut others = select.places.iter().enumerate();
    if others.any(|(other, place)| other != at && place.name == name) {
        return refuse("Another place of this step has that name.");
    }
    let place = select.places.get_mut(at).ok_or(Refused::NoField)?;
    field::set(&PLACE, place, "place", &format!("place/{field}"), value)
}

fn set_row(select: &mut Select, id: &str, field: &str, value: &str) -> Set {
    let at = place(select.rows.iter().map(|row| row.id.0), id)?;
    let row = select.rows.get_mut(at).ok_or(Refused::NoField)?;
    let mut changed = row.clone();
    field::set(&ROW, &mut changed, "row", &format!("row/{field}"), value)?;
    in_order(changed.least, changed.most)?;
    *row = changed;
    Ok(())
}

/// Shows every number of a select step.
pub fn visit(select: &Select, see: &mut dyn FnMut(Seen)) {
    field::visit(&GAP, select, None, see);
    let blank = tables::no_shim();
    for shim in &select.shims {
        field::visit(&SHIM, shim, Some(&blank), see);
    }
    for row in &select.rows {
        field::visit(&ROW, row, None, see);
    }
    if let Some(trial) = &select.trial {
        field::visit(&TRIAL, trial, None, see);
    }
}

/// Where the one of that number stands.
fn place(mut ids: impl Iterator<Item = u32>, id: &str) -> Result<usize, Refused> {
    ids.position(|own| own.to_string() == id).ok_or(Refused::NoField)
}

fn in_order(least: Option<f64>, most: Option<f64>) -> Set {
    match (least, most) {
        (Some(least), Some(most)) if least > most => refuse("The lower limit is above the upper one."),
        _ => Ok(()),
    }
}
