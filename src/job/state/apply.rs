//! The one function that decides.

use super::draft::Draft;
use super::{Intent, Name, Now, Refused, State, Transaction, Way};
use crate::job::id::MOST;
use crate::trade::quantity::printed_with_point;

impl State {
    /// What `intent` changes at `now`; nothing is changed yet.
    ///
    /// # Errors
    /// [`Refused`]: why it changes nothing, and what to do.
    pub fn apply(&self, intent: &Intent, now: Now) -> Result<Transaction, Refused> {
        // What is decided is kept, so its words have the point; a refusal is shown, so its words are made anew
        // with the user's mark.
        printed_with_point(|| self.settle(intent, now))
            .map_err(|refused| self.settle(intent, now).err().unwrap_or(refused))
    }

    fn settle(&self, intent: &Intent, now: Now) -> Result<Transaction, Refused> {
        let done = self.decide(intent, now)?;
        // A line of a greater number could not be read back.
        if done.lines.iter().any(|(_, entry)| entry.id.0 > MOST) {
            return Err(Refused::RecordFull);
        }
        Ok(done)
    }

    fn decide(&self, intent: &Intent, now: Now) -> Result<Transaction, Refused> {
        let mut draft = Draft::new(self, now);
        let (name, way) = match intent {
            Intent::Undo => return self.undo(draft),
            Intent::Remember(settings) => {
                *draft.settings() = (**settings).clone();
                (Name::Change(""), Way::Unlisted)
            }
            Intent::PhoneClock(seen) => {
                self.move_starts(&mut draft, *seen);
                draft.line(None, crate::job::record::Event::PhoneClock(*seen));
                (Name::Lines, Way::Unlisted)
            }
            Intent::Carry(step) => {
                draft.carry(*step)?;
                (Name::Change(""), Way::Unlisted)
            }
            Intent::Restore(restore) => {
                draft.restore(restore);
                (Name::Change("taking in the backup"), Way::Forward)
            }
            other => {
                let name = self
                    .step_intent(&mut draft, other)
                    .or_else(|| self.select_intent(&mut draft, other))
                    .or_else(|| self.gauge_intent(&mut draft, other))
                    .or_else(|| self.clock_intent(&mut draft, other))
                    .or_else(|| self.plan_intent(&mut draft, other))
                    .or_else(|| self.job_intent(&mut draft, other))
                    .or_else(|| self.bench_intent(&mut draft, other));
                (name.unwrap_or(Err(Refused::NoStep))?, Way::Forward)
            }
        };
        Ok(draft.finish(name, way))
    }
}
