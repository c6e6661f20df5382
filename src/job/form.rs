//! A step as a form: its fields as plain data to lay out, and one way to change each by its path.
//!
//! What is the kind's own stands in the kind's table; here is what every step has. A reading, a bore and a
//! part are addressed by their own number ("reading/3/least"), so that taking one out moves no other.

use super::field::{self, Entry, Form, Set, Shown, refuse};
use super::kinds::{self, Kind, LiftWork, Work, free_name};
use super::part::{self, Part};
use super::planning::PlanRefused;
use super::sheet::{self, Sheet, Step, StepId};
use crate::trade::quantity::Unit;

/// Every field of `step`, a step of `sheet` or about to be.
pub fn fields(sheet: &Sheet, step: &Step) -> Vec<Shown> {
    let mut form = Form::default();
    form.add("title", "title", &step.title, Entry::Words);
    form.add("notes", "how it is done", &step.notes, Entry::Words);
    form.head(step.work.word());
    own_fields(sheet, step, &mut form);
    form.head("Parts it needs");
    for part in &step.parts {
        let under = format!("part/{}", part.id.0);
        field::show(&mut form, &under, &part::TABLE, part);
        form.press(format!("{under}/remove"), &format!("delete “{}”", part.name));
    }
    form.press("part/add", "add a part");
    form.head("Time and order");
    field::show(&mut form, "step", &sheet::TABLE, step);
    let before = before(sheet, step);
    torque_again(&mut form, before, step);
    let title = |id: StepId| {
        let found = before.iter().find(|step| step.id == id);
        found.map_or("", |step| step.title.as_str())
    };
    for bead in &step.before_skin {
        form.press(
            format!("skin/{}/remove", bead.0),
            &format!("no longer done before “{}” skins", title(*bead)),
        );
    }
    let beads: Vec<(String, String)> = before
        .iter()
        .filter(|earlier| earlier.work.cures() && !step.before_skin.contains(&earlier.id))
        .map(|earlier| (earlier.id.0.to_string(), earlier.title.clone()))
        .collect();
    if !beads.is_empty() {
        form.add(
            "skin/add",
            "done before this skins",
            "a step with a compound",
            Entry::Choice(beads),
        );
    }
    for wait in &step.waits_for {
        let title = before
            .iter()
            .find(|step| step.id == *wait)
            .map_or("", |step| step.title.as_str());
        form.press(
            format!("wait/{}/remove", wait.0),
            &format!("no longer wait for “{title}”"),
        );
    }
    let offered: Vec<(String, String)> = before
        .iter()
        .filter(|earlier| !step.waits_for.contains(&earlier.id))
        .map(|earlier| (earlier.id.0.to_string(), earlier.title.clone()))
        .collect();
    if !offered.is_empty() {
        form.add("wait/add", "waits for", "another step", Entry::Choice(offered));
    }
    form.fields
}

/// Changes the field of that path to what was entered; where it is refused nothing is changed.
///
/// # Errors
/// A sentence that says what to enter; [`PlanRefused::NoField`] for a path that leads nowhere.
pub fn set(sheet: &Sheet, step: &mut Step, path: &str, value: &str) -> Result<(), PlanRefused> {
    match path.split('/').collect::<Vec<_>>().as_slice() {
        ["title"] if value.trim().is_empty() => {
            return Err(PlanRefused::Field("A step needs a title.".to_owned()));
        }
        ["title"] => step.title = value.trim().to_owned(),
        ["notes"] => step.notes = value.trim().to_owned(),
        ["kind"] => {
            let blank = kinds::blank(value);
            step.work = blank.ok_or_else(|| PlanRefused::Field("Choose a kind of work.".to_owned()))?;
        }
        ["wait", "add"] => wait_for(sheet, step, value)?,
        ["wait", id, "remove"] => {
            let on = step.waits_for.iter().position(|on| on.0.to_string() == *id);
            step.waits_for.remove(on.ok_or(PlanRefused::NoField)?);
        }
        ["part", "add"] => {
            let name = free_name("part", step.parts.iter().map(|part| part.name.as_str()));
            step.parts.push(Part::named(&name));
        }
        ["skin", "add"] => {
            let bead = earlier(sheet, step, value)?;
            if !step.before_skin.contains(&bead) {
                step.before_skin.push(bead);
            }
        }
        ["skin", id, "remove"] => {
            let at = step.before_skin.iter().position(|on| on.0.to_string() == *id);
            step.before_skin.remove(at.ok_or(PlanRefused::NoField)?);
        }
        ["again"] => set_torque_again(sheet, step, value)?,
        ["reading", "add"] => {
            step.work.kind_mut().set(path, value)?;
            if let Work::Check(check) = &mut step.work
                && let Some(reading) = check.readings.last_mut()
            {
                sheet.units.length.symbol().clone_into(&mut reading.unit);
            }
        }
        ["part", id, field] => set_part(&mut step.parts, id, field, value)?,
        ["step", _] => field::set(&sheet::TABLE, step, "step", path, value)?,
        _ => set_own(sheet, step, path, value)?,
    }
    step.number();
    Ok(())
}

/// The kind's own fields; lengths of which nothing is stated begin in the job's unit.
fn own_fields(sheet: &Sheet, step: &Step, form: &mut Form) {
    match &step.work {
        Work::Fasten(fasten) => {
            let mut begun = fasten.clone();
            begun.begin_lengths(sheet.units.length);
            begun.fields(form);
        }
        Work::Lift(lift) => lift.told_by(sheet.units).fields(form),
        work => work.kind().fields(form),
    }
}

fn set_own(sheet: &Sheet, step: &mut Step, path: &str, value: &str) -> Set {
    match &mut step.work {
        Work::Fasten(fasten) => {
            let mut changed = fasten.clone();
            changed.begin_lengths(sheet.units.length);
            changed.set(path, value)?;
            changed.end_lengths(sheet.units.length);
            *fasten = changed;
            Ok(())
        }
        Work::Lift(lift) => {
            let mut changed = lift.told_by(sheet.units);
            changed.set(path, value)?;
            // What the job says anyway is not said again.
            let unsaid = LiftWork {
                weighs_in: None,
                ..changed.clone()
            };
            let same = unsaid.told_by(sheet.units).told_in() == changed.told_in();
            *lift = if same { unsaid } else { changed };
            Ok(())
        }
        work => work.kind_mut().set(path, value),
    }
}

/// The fasteners a run has brought to torque again, chosen among the steps before it.
fn torque_again(form: &mut Form, before: &[Step], step: &Step) {
    let Work::Run(run) = &step.work else {
        return;
    };
    let fastened = before.iter().filter(|step| step.fastens());
    let offered = fastened.map(|step| (step.id.0.to_string(), step.title.clone()));
    let none = (String::new(), "none".to_owned());
    let named = before.iter().find(|step| run.torque_again == Some(step.id));
    form.add(
        "again",
        "torqued again afterwards",
        named.map_or("none", |step| step.title.as_str()),
        Entry::Choice(std::iter::once(none).chain(offered).collect()),
    );
}

fn set_torque_again(sheet: &Sheet, step: &mut Step, value: &str) -> Result<(), PlanRefused> {
    let before = before(sheet, step).iter();
    let mut fastened = before.filter(|step| step.fastens()).map(|step| step.id);
    let named = match value {
        "" => None,
        id => Some(
            fastened
                .find(|own| own.0.to_string() == id)
                .ok_or(PlanRefused::NoStep)?,
        ),
    };
    match &mut step.work {
        Work::Run(run) => run.torque_again = named,
        _ => return Err(PlanRefused::NoField),
    }
    Ok(())
}

fn set_part(parts: &mut Vec<Part>, id: &str, field: &str, value: &str) -> Set {
    let at = parts.iter().position(|part| part.id.0.to_string() == id);
    let at = at.ok_or(field::Refused::NoField)?;
    if field == "remove" {
        parts.remove(at);
        return Ok(());
    }
    match parts.get_mut(at) {
        Some(part) => field::set(&part::TABLE, part, "part", &format!("part/{field}"), value),
        None => refuse("There is no such part in this step."),
    }
}

fn wait_for(sheet: &Sheet, step: &mut Step, value: &str) -> Result<(), PlanRefused> {
    let id = earlier(sheet, step, value)?;
    if !step.waits_for.contains(&id) {
        step.waits_for.push(id);
    }
    Ok(())
}

/// The step of that number, which must come before this one.
fn earlier(sheet: &Sheet, step: &Step, value: &str) -> Result<StepId, PlanRefused> {
    let id = value.parse().map(StepId).map_err(|_| PlanRefused::NoStep)?;
    if before(sheet, step).iter().any(|earlier| earlier.id == id) {
        Ok(id)
    } else {
        Err(PlanRefused::Order)
    }
}

/// The steps before it; all of them for one that is about to be put behind.
fn before<'a>(sheet: &'a Sheet, step: &Step) -> &'a [Step] {
    match sheet.place(step.id) {
        Some(_) => sheet.before(step.id),
        None => &sheet.steps,
    }
}
