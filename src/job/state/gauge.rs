//! A bearing gauged: what was done of it, in its order.

use super::draft::Draft;
use super::step::Outcome;
use super::{Intent, Name, Refused, State};
use crate::job::kinds::gauge::answer;
use crate::job::kinds::{Gauged, Work};
use crate::job::reading::What;
use crate::job::record::Event;
use crate::job::sheet::{Step, StepId};

impl State {
    pub(super) fn gauge_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::Gauge { step, done } => self.gauge(draft, *step, *done),
            _ => return None,
        })
    }

    fn gauge(&self, draft: &mut Draft<'_>, step: StepId, done: Gauged) -> Result<Name, Refused> {
        let (step, _) = self.ready(step, draft)?;
        let Work::Gauge(_) = &step.work else {
            return Err(Refused::NoStep);
        };
        let progress = self.progress(step.id);
        if !answer::may(&progress, done) {
            return Err(Refused::NotGauged(match progress.gauged.last() {
                None | Some(Gauged::Wiped) => Gauged::Laid(crate::trade::gauging::Plastic::Fine),
                Some(Gauged::Laid(_)) => Gauged::Tight,
                Some(Gauged::Tight) => Gauged::Off,
                Some(Gauged::Off) => Gauged::Wiped,
            }));
        }
        draft.line(Some(step.id), Event::Gauged(done));
        Ok(Name::Lines)
    }

    /// Whether there is anything to read: gauging plastic under a cap is not.
    ///
    /// # Errors
    /// What comes first.
    pub(super) fn can_be_read(&self, step: &Step, what: &What) -> Result<(), Refused> {
        let Work::Gauge(gauge) = &step.work else {
            return Ok(());
        };
        let progress = self.progress(step.id);
        if answer::readable(gauge, &progress, what) {
            return Ok(());
        }
        Err(match answer::wants(gauge, &progress) {
            Some(answer::Wants::Do(done)) => Refused::NotGauged(done),
            _ => Refused::NoStep,
        })
    }
}
