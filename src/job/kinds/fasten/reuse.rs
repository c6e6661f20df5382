//! Fasteners that may come again a few times, or up to a length.

use super::data::{Fasten, Reuse};
use super::lengths::Lengths;
use crate::job::part::PartKey;
use crate::job::progress::StepProgress;
use crate::job::reading::What;
use crate::trade::quantity::{Stated, Unit};

impl Fasten {
    /// How many times one may be tightened in all, where the manual says so and old ones may come again.
    pub fn most_uses(&self) -> Option<u32> {
        self.most_uses.filter(|_| self.reuse == Reuse::Again)
    }

    /// How long an old one may be over its ends, in [`Fasten::length_unit`].
    pub fn longest(&self) -> Option<Stated> {
        self.stated_lengths()
            .longest
            .filter(|_| self.reuse == Reuse::Again)
    }

    /// Whether an old one of that length may come again.
    pub fn length_holds(&self, value: f64) -> bool {
        Lengths::hold(value, None, self.longest())
    }

    /// Whether ones that were tightened so many times before may be tightened once more.
    pub fn used_holds(&self, uses: f64) -> bool {
        self.most_uses().is_none_or(|most| uses < f64::from(most))
    }

    /// Whether how often they were tightened must still be said.
    pub fn uses_unsaid(&self, progress: &StepProgress) -> bool {
        self.most_uses().is_some() && progress.uses.is_none()
    }

    /// Whether new ones must be on, as these were tightened as often as they may be.
    pub fn used_up(&self, progress: &StepProgress) -> bool {
        // What is tight in this step counts once it is loosened.
        progress.uses.is_some_and(|uses| !self.used_holds(uses))
    }

    /// "may be tightened 3 times; no longer than 45.4 mm"; empty where nothing is stated.
    pub fn reuse_words(&self) -> String {
        let times = self.most_uses().map(|most| match most {
            1 => "may be tightened once".to_owned(),
            most => format!("may be tightened {most} times in all"),
        });
        let length = self.longest().map(|most| {
            let unit = self.length_unit().symbol();
            format!("no longer than {} {unit}", most.text())
        });
        let words: Vec<String> = times.into_iter().chain(length).collect();
        words.join("; ")
    }
}

impl StepProgress {
    /// One more tightening is behind them, as they are loosened.
    pub(in crate::job) fn used_once_more(&mut self) {
        if !self.tallies.is_empty() {
            self.uses = self.uses.map(|uses| uses + 1.0);
        }
    }

    /// New ones are on: of the step's own fasteners none was ever tightened.
    pub(in crate::job) fn new_ones(&mut self, part: PartKey) {
        if part == PartKey::Own {
            // In the place of old ones that were tight, in a record that says nothing of their loosening.
            if self.uses.is_some_and(|uses| uses > 0.0) {
                self.tallies.clear();
            }
            self.uses = Some(0.0);
            let of_old = |what: &What| matches!(what, What::Uses | What::Running) || what.of_length();
            self.readings.retain(|reading| !of_old(&reading.what));
        }
    }
}
