//! From the oven to the bench: a countdown worked out from the instant the part came out.

use super::words::clock_text;
use crate::job::scale::{Ruler, on_line};
use crate::job::sheet::{JobId, StepId};
use crate::trade::cooling::TimeRange;
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use uom::si::time::second;

/// A part on its way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct OvenRun {
    /// When it came out.
    pub started: Moment,
    /// The step it is for; none for the Seat screen's own numbers.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<StepId>,
    /// The job of that step.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<JobId>,
    /// It is home: the run is over, and the step knows of it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub home: bool,
    /// How long it stays good in brisk air: the time to work by.
    #[serde(rename = "shortest_s", with = "stored::seconds")]
    pub shortest: Time,
    /// How long in still air.
    #[serde(rename = "longest_s", with = "stored::seconds")]
    pub longest: Time,
}

/// Where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OvenState {
    /// Good for so long at least.
    Open(Time),
    /// Good only if the air was still; for so long at most.
    Doubtful(Time),
    /// Too late, since so long.
    Shut(Time),
}

impl OvenRun {
    /// A part taken out at `started`.
    pub fn begun(started: Moment, step: Option<StepId>, window: TimeRange) -> Self {
        Self {
            started,
            step,
            job: None,
            home: false,
            shortest: window.shortest,
            longest: window.longest,
        }
    }

    fn gone(&self, now: Moment) -> Time {
        now.since(self.started).max(Time::new::<second>(0.0))
    }

    /// How much of its time is gone at `now`, on the line of all of it; the part that is good in still air
    /// only is out of bounds.
    pub fn ruler(&self, now: Moment) -> Option<Ruler> {
        let [gone, shortest, longest] =
            [self.gone(now), self.shortest, self.longest].map(|time| time.get::<second>());
        let words = format!(
            "{} gone of {}",
            clock_text(self.gone(now)),
            clock_text(self.longest)
        );
        let drawn = on_line((0.0, longest), gone, (shortest, longest), words)?;
        Some(Ruler {
            most: clock_text(self.longest),
            ..drawn
        })
    }

    /// Where it stands at `now`.
    pub fn state(&self, now: Moment) -> OvenState {
        let gone = self.gone(now);
        if gone < self.shortest {
            OvenState::Open(self.shortest - gone)
        } else if gone < self.longest {
            OvenState::Doubtful(self.longest - gone)
        } else {
            OvenState::Shut(gone - self.longest)
        }
    }
}
