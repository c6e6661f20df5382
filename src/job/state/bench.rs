//! Wrenches, bottles, the shop, and what is typed.

use super::draft::Draft;
use super::step::Outcome;
use super::{Intent, Name, Refused, State};
use crate::job::bottle::{Bottle, BottleId};
use crate::job::desk::typed_words;
use crate::job::guarding::KnownBolt;
use crate::job::kinds::Work;
use crate::job::kinds::fasten::fastening;
use crate::job::kinds::seat::oven::OvenRun;
use crate::job::night;
use crate::job::sheet::StepId;
use crate::trade::compound::CompoundClass;
use crate::trade::moment::Moment;
use crate::trade::stages::total_angle;
use uom::si::angle::degree;

impl State {
    pub(super) fn bench_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        let now = draft.now;
        Some(match intent {
            Intent::Set { what, settings } => {
                *draft.settings() = (**settings).clone();
                Ok(Name::Change(what))
            }
            Intent::AddWrench(wrench) => wrench.check().map_err(Refused::from).map(|()| {
                let settings = draft.settings();
                settings.wrenches.push(wrench.clone());
                settings.in_hand = settings.wrenches.len() - 1;
                Name::Change("new wrench")
            }),
            Intent::ChangeWrench { at, wrench } => wrench.check().map_err(Refused::from).map(|()| {
                let old = draft.settings().wrenches.get_mut(*at);
                old.into_iter().for_each(|old| old.clone_from(wrench));
                Name::Change("change of a wrench")
            }),
            Intent::MoveWrenchUp(at) => {
                let settings = draft.settings();
                if *at > 0 && *at < settings.wrenches.len() {
                    settings.wrenches.swap(at - 1, *at);
                    settings.in_hand = match settings.in_hand {
                        held if held == *at => at - 1,
                        held if held + 1 == *at => *at,
                        held => held,
                    };
                }
                Ok(Name::Change("order of the wrenches"))
            }
            Intent::RemoveWrench(at) => {
                let settings = draft.settings();
                if *at < settings.wrenches.len() {
                    settings.wrenches.remove(*at);
                    let last = settings.wrenches.len().saturating_sub(1);
                    settings.in_hand = match settings.in_hand {
                        held if held > *at => held - 1,
                        held => held.min(last),
                    };
                }
                Ok(Name::Change("removed wrench"))
            }
            Intent::TakeWrench(at) => {
                draft.settings().in_hand = *at;
                Ok(Name::Change("choice of wrench"))
            }
            Intent::Shelve(bottle) => {
                shelve(&mut draft.settings().bottles, (**bottle).clone());
                Ok(Name::Change("bottle"))
            }
            Intent::ThrowAway(id) => {
                draft.settings().bottles.retain(|bottle| bottle.id != *id);
                Ok(Name::Change("throwing a bottle away"))
            }
            Intent::TakeBottle(id) => {
                let bottles = &mut draft.settings().bottles;
                let class = bottles.iter().find(|b| b.id == *id).map(|b| b.class);
                class.into_iter().for_each(|class| take(bottles, *id, class));
                Ok(Name::Change("choice of bottle"))
            }
            Intent::TakeTypical(ids) => {
                let bottles = draft.settings().bottles.iter_mut();
                bottles
                    .filter(|bottle| ids.contains(&bottle.id))
                    .for_each(|bottle| bottle.in_use = false);
                Ok(Name::Change("choice of bottle"))
            }
            Intent::NoteShop(celsius) => {
                let settings = draft.settings();
                let night = settings.night.as_mut();
                night::note(&mut settings.shop, night, *celsius, now.at, now.minute);
                Ok(Name::Change("shop temperature"))
            }
            Intent::NoteHumidity(told) => {
                let shop = &mut draft.settings().shop;
                let noted = night::note_humidity(shop, *told, now.at).map_err(Refused::from);
                noted.map(|()| Name::Change("humidity of the shop"))
            }
            Intent::PlanNight(plan) => {
                let settings = draft.settings();
                let before = settings.night;
                let planned = night::plan(&mut settings.shop, before, *plan, now.at, now.minute);
                planned.map_err(Refused::from).map(|night| {
                    draft.settings().night = Some(night);
                    Name::Change("plan of the night")
                })
            }
            Intent::UnplanNight => {
                let settings = draft.settings();
                if let Some(before) = settings.night.take() {
                    night::unplan(&mut settings.shop, before, now.at, now.minute);
                }
                Ok(Name::Change("plan of the night"))
            }
            Intent::TakeOut {
                step,
                window,
                ahead_ms,
            } => {
                // The later of our time and the phone's: a part cools while the phone sleeps, and a phone
                // set back gives it no more time.
                let out = Moment(now.at.0.saturating_add((*ahead_ms).max(0)));
                let job = step.map(|_| self.jobs.at_hand);
                draft.settings().seat.oven = Some(OvenRun {
                    job,
                    ..OvenRun::begun(out, *step, *window)
                });
                Ok(Name::Change("countdown from the oven"))
            }
            _ => return None,
        })
    }
}

impl Draft<'_> {
    /// Carries a fasten step's value and bolt to the Torque screen.
    pub(super) fn carry(&mut self, step: StepId) -> Result<(), Refused> {
        let step = self.state.step(step).ok_or(Refused::NoStep)?;
        let Work::Fasten(fasten) = &step.work else {
            return Err(Refused::NoStep);
        };
        // A nut's running torque counts on that screen too, as it was measured.
        let measured = fastening::running(&self.state.progress(step.id));
        let running = measured.filter(|_| !fasten.running_apart);
        let unit = fasten.torque.unit;
        let settings = self.settings();
        settings.torque_typed = typed_words(&fasten.torque);
        settings.torque_unit = unit;
        let desk = &mut settings.desk;
        desk.from = Some(step.id);
        desk.also_typed = String::new();
        desk.bolt = KnownBolt::told(fasten);
        // A millionth is dust from the units.
        desk.running = running.map(|running| (unit.value_of(running) * 1e6).round() / 1e6);
        (desk.stretch_mm, desk.grip_mm) = (None, fasten.grip_mm);
        (desk.plain_mm, desk.shank_mm) = (fasten.plain_mm, fasten.shank_mm);
        let turn = total_angle(&fasten.stages).get::<degree>();
        desk.turn_deg = Some(turn).filter(|turn| *turn > 0.0 && *turn <= 360.0);
        desk.remember(&fasten.torque);
        Ok(())
    }
}

fn shelve(bottles: &mut Vec<Bottle>, bottle: Bottle) {
    let (id, class, in_use) = (bottle.id, bottle.class, bottle.in_use);
    match bottles.iter_mut().find(|old| old.id == id) {
        Some(old) => *old = bottle,
        None => bottles.push(bottle),
    }
    if in_use {
        take(bottles, id, class);
    }
}

/// One bottle of a class is in use at a time.
fn take(bottles: &mut [Bottle], id: BottleId, class: CompoundClass) {
    bottles
        .iter_mut()
        .filter(|bottle| bottle.class == class)
        .for_each(|bottle| bottle.in_use = bottle.id == id);
}
