//! Which screen is shown, as the part of the address after `#`.

use crate::device::place;
use crate::job::sheet::StepId;

/// A place in the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Route {
    /// The job at its next open step.
    Job,
    /// The job at that step.
    Step(StepId),
    /// The job's end: every step is closed.
    JobEnd,
    /// All steps of the job.
    Steps,
    /// Torque conversion.
    Torque,
    /// What goes on a joint: one of its own, or that step's.
    Bond(Option<StepId>),
    /// Torque conversion of that step's value.
    TorqueOf(StepId),
    /// Every clock.
    Clocks,
    /// Wrenches, shop, display.
    Bench,
}

impl Route {
    /// Reads an address; an unknown one is the job.
    pub fn read(address: &str) -> Self {
        let mut parts = address.trim_matches('/').split('/');
        match (parts.next(), parts.next()) {
            (Some("step"), Some(id)) => id.parse().map_or(Self::Job, |id| Self::Step(StepId(id))),
            (Some("end"), _) => Self::JobEnd,
            (Some("steps"), _) => Self::Steps,
            (Some("torque"), Some(id)) => id.parse().map_or(Self::Torque, |id| Self::TorqueOf(StepId(id))),
            (Some("torque"), _) => Self::Torque,
            (Some("bond"), id) => Self::Bond(id.and_then(|id| id.parse().ok()).map(StepId)),
            (Some("clocks"), _) => Self::Clocks,
            (Some("bench"), _) => Self::Bench,
            _ => Self::Job,
        }
    }

    /// The address of this place.
    pub fn address(self) -> String {
        match self {
            Self::Job => "job".to_owned(),
            Self::Step(id) => format!("step/{}", id.0),
            Self::JobEnd => "end".to_owned(),
            Self::Steps => "steps".to_owned(),
            Self::Torque => "torque".to_owned(),
            Self::Bond(None) => "bond".to_owned(),
            Self::Bond(Some(id)) => format!("bond/{}", id.0),
            Self::TorqueOf(id) => format!("torque/{}", id.0),
            Self::Clocks => "clocks".to_owned(),
            Self::Bench => "bench".to_owned(),
        }
    }

    /// The screen's key along the edge it belongs to.
    pub fn screen(self) -> &'static str {
        match self {
            Self::Job | Self::Step(_) | Self::JobEnd | Self::Steps => "job",
            Self::Torque | Self::TorqueOf(_) => "torque",
            Self::Bond(_) => "bond",
            Self::Clocks => "clocks",
            Self::Bench => "bench",
        }
    }

    /// Goes there in the place of where we are: the back key skips it.
    pub fn instead(self) {
        place::replace(&self.address());
    }

    /// Goes there.
    pub fn go(self) {
        place::go(&self.address());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_address_leads_back_to_its_place() {
        let places = [
            Route::Job,
            Route::Step(StepId(7)),
            Route::Steps,
            Route::Torque,
            Route::Bond(None),
            Route::Bond(Some(StepId(15))),
            Route::TorqueOf(StepId(4)),
            Route::Clocks,
            Route::Bench,
        ];
        for place in places {
            assert_eq!(Route::read(&place.address()), place);
        }
        assert_eq!(Route::read("step/x"), Route::Job);
        assert_eq!(Route::read(""), Route::Job);
    }
}
