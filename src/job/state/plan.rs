//! Changes of the plan: each on a copy of the sheet, checked, and taken only when it is whole.

use super::draft::Draft;
use super::step::Outcome;
use super::{Intent, Name, Refused, State};
use crate::job::form;
use crate::job::kinds::Work;
use crate::job::kinds::seat::sense;
use crate::job::planning::{self, PlanRefused};
use crate::job::sheet::{Sheet, Step, StepId};

impl State {
    pub(super) fn plan_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::AddSteps { after, steps } => {
                let name = match steps.as_slice() {
                    [step] => Name::Of("new step", step.title.clone()),
                    steps => Name::Of("new steps:", steps.len().to_string()),
                };
                self.plan(draft, name, |sheet| {
                    let mut after = *after;
                    for step in steps {
                        let id = planning::insert(sheet, after, step.clone());
                        after = after.map(|_| id);
                    }
                    Ok(())
                })
            }
            Intent::EditStep { step, field, value } => {
                self.plan(draft, Name::Change("change of the plan"), |sheet| {
                    let mut changed = sheet.step(*step).cloned().ok_or(PlanRefused::NoStep)?;
                    form::set(sheet, &mut changed, field, value)?;
                    put(sheet, changed)
                })
            }
            Intent::SetWork {
                step: None,
                what,
                work,
            } => {
                match &**work {
                    Work::Seat(seat) => {
                        if let Err(words) = sense::changed(&self.settings.seat.work, seat) {
                            return Some(Err(PlanRefused::Field(words).into()));
                        }
                        draft.settings().seat.work.clone_from(seat);
                    }
                    Work::Lift(lift) => draft.settings().lift.work.clone_from(lift),
                    _ => return Some(Err(Refused::NoStep)),
                }
                Ok(Name::Change(what))
            }
            Intent::SetWork {
                step: Some(id),
                what,
                work,
            } => {
                let same_kind =
                    |step: &Step| std::mem::discriminant(&step.work) == std::mem::discriminant(&**work);
                if !self.step(*id).is_some_and(same_kind) {
                    return Some(Err(Refused::NoStep));
                }
                self.plan(draft, Name::Change(what), |sheet| set_work(sheet, *id, work))
            }
            Intent::ChangeKind { step, work } => self.not_in_record(*step).and_then(|()| {
                self.plan(draft, Name::Change("kind of work"), |sheet| {
                    set_work(sheet, *step, work)
                })
            }),
            Intent::MoveStep { step, down } => self.plan(draft, Name::Change("move of a step"), |sheet| {
                planning::shift(sheet, *step, *down)
            }),
            Intent::CopyStep(step) => self.plan(draft, Name::Change("copy of a step"), |sheet| {
                planning::copy(sheet, *step).map(drop)
            }),
            Intent::RemoveStep(step) => self.not_in_record(*step).and_then(|()| {
                self.plan(draft, Name::Change("removal of a step"), |sheet| {
                    planning::remove(sheet, *step)
                })
            }),
            Intent::NameMachine(words) => self.plan(draft, Name::Change("name of the machine"), |sheet| {
                words.trim().clone_into(&mut sheet.machine);
                Ok(())
            }),
            Intent::SetUnits(units) => self.plan(draft, Name::Change("units of the job"), |sheet| {
                sheet.units = *units;
                Ok(())
            }),
            _ => return None,
        })
    }

    fn plan(
        &self,
        draft: &mut Draft<'_>,
        name: Name,
        change: impl FnOnce(&mut Sheet) -> Result<(), PlanRefused>,
    ) -> Result<Name, Refused> {
        // What an earlier release let grow is changed as before; nothing grows past it.
        let within = self.job().sheet.check_size().is_ok();
        let sheet = draft.sheet();
        change(sheet)?;
        if within {
            sheet.check_size().map_err(PlanRefused::Sheet)?;
        }
        if !sheet.steps.is_empty() {
            sheet.check().map_err(PlanRefused::Sheet)?;
        }
        sheet.number();
        Ok(name)
    }

    fn not_in_record(&self, step: StepId) -> Result<(), Refused> {
        if self.spoken_of(step) {
            Err(PlanRefused::InRecord.into())
        } else {
            Ok(())
        }
    }
}

fn put(sheet: &mut Sheet, step: Step) -> Result<(), PlanRefused> {
    let at = sheet.place(step.id).ok_or(PlanRefused::NoStep)?;
    sheet.steps.splice(at..=at, [step]);
    Ok(())
}

fn set_work(sheet: &mut Sheet, step: StepId, work: &Work) -> Result<(), PlanRefused> {
    let step = sheet.step(step).cloned().ok_or(PlanRefused::NoStep)?;
    if let (Work::Seat(before), Work::Seat(after)) = (&step.work, work) {
        sense::changed(before, after).map_err(PlanRefused::Field)?;
    }
    let work = work.clone();
    put(sheet, Step { work, ..step })
}
