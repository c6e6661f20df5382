//! Which screen is shown, as the part of the address after `#`.

#[cfg(feature = "app")]
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
    /// The plan of the job, to change.
    Plan,
    /// One step of the plan.
    PlanStep(StepId),
    /// The parts of all steps.
    Parts,
    /// What was done.
    Record,
    /// The job on paper.
    Paper,
    /// The jobs of this bench.
    Jobs,
    /// Search across jobs.
    Find,
    /// The last actions.
    History,
    /// Torque conversion.
    Torque,
    /// Torque conversion of that step's value.
    TorqueOf(StepId),
    /// What goes on a joint: one of its own, or that step's.
    Bond(Option<StepId>),
    /// Every clock.
    Clocks,
    /// Wrenches, shop, display.
    Bench,
    /// A press fit: its own numbers, or that step's.
    Seat(Option<StepId>),
    /// A lift: its own numbers, or that step's.
    Lift(Option<StepId>),
    /// Calculations of what was measured.
    Measure,
    /// Every caution.
    Cautions,
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
            (Some("plan"), None) => Self::Plan,
            (Some("plan"), Some(id)) => id.parse().map_or(Self::Plan, |id| Self::PlanStep(StepId(id))),
            (Some("parts"), _) => Self::Parts,
            (Some("record"), _) => Self::Record,
            (Some("paper"), _) => Self::Paper,
            (Some("jobs"), _) => Self::Jobs,
            (Some("find"), _) => Self::Find,
            (Some("history"), _) => Self::History,
            (Some("torque"), _) => Self::Torque,
            (Some("bond"), id) => Self::Bond(id.and_then(|id| id.parse().ok()).map(StepId)),
            (Some("clocks"), _) => Self::Clocks,
            (Some("bench"), _) => Self::Bench,
            (Some("seat"), id) => Self::Seat(step_of(id)),
            (Some("lift"), id) => Self::Lift(step_of(id)),
            (Some("measure"), _) => Self::Measure,
            (Some("cautions"), _) => Self::Cautions,
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
            Self::Plan => "plan".to_owned(),
            Self::PlanStep(id) => format!("plan/{}", id.0),
            Self::Parts => "parts".to_owned(),
            Self::Record => "record".to_owned(),
            Self::Paper => "paper".to_owned(),
            Self::Jobs => "jobs".to_owned(),
            Self::Find => "find".to_owned(),
            Self::History => "history".to_owned(),
            Self::Torque => "torque".to_owned(),
            Self::TorqueOf(id) => format!("torque/{}", id.0),
            Self::Bond(None) => "bond".to_owned(),
            Self::Bond(Some(id)) => format!("bond/{}", id.0),
            Self::Clocks => "clocks".to_owned(),
            Self::Bench => "bench".to_owned(),
            Self::Seat(step) => with_step("seat", step),
            Self::Lift(step) => with_step("lift", step),
            Self::Measure => "measure".to_owned(),
            Self::Cautions => "cautions".to_owned(),
        }
    }

    /// The screen's key along the edge it belongs to.
    pub fn screen(self) -> &'static str {
        match self {
            Self::Job
            | Self::Step(_)
            | Self::JobEnd
            | Self::Steps
            | Self::Plan
            | Self::PlanStep(_)
            | Self::Parts
            | Self::Record
            | Self::Paper
            | Self::Jobs
            | Self::Find
            | Self::History => "job",
            Self::Torque | Self::TorqueOf(_) => "torque",
            Self::Bond(_) => "bond",
            Self::Clocks => "clocks",
            Self::Bench | Self::Measure | Self::Cautions => "bench",
            Self::Seat(_) => "seat",
            Self::Lift(_) => "lift",
        }
    }

    /// Its name, for the tab and for whoever hears the page.
    pub fn title(self) -> &'static str {
        match self {
            Self::Job | Self::JobEnd => "Job",
            Self::Step(_) => "Step",
            Self::Steps => "Steps",
            Self::Plan | Self::PlanStep(_) => "Plan",
            Self::Parts => "Parts",
            Self::Record => "Record",
            Self::Paper => "On paper",
            Self::Jobs => "Jobs",
            Self::Find => "Find",
            Self::History => "Last actions",
            Self::Torque | Self::TorqueOf(_) => "Torque",
            Self::Bond(_) => "Bond",
            Self::Clocks => "Clocks",
            Self::Bench => "Bench",
            Self::Seat(_) => "Seat",
            Self::Lift(_) => "Lift",
            Self::Measure => "Measure",
            Self::Cautions => "Cautions",
        }
    }

    /// Whether it shows the job at hand.
    pub fn of_a_job(self) -> bool {
        match self {
            Self::Job
            | Self::Step(_)
            | Self::JobEnd
            | Self::Steps
            | Self::Plan
            | Self::PlanStep(_)
            | Self::Parts
            | Self::Record
            | Self::Paper => true,
            Self::Jobs
            | Self::Find
            | Self::History
            | Self::Torque
            | Self::TorqueOf(_)
            | Self::Bond(_)
            | Self::Clocks
            | Self::Bench
            | Self::Seat(_)
            | Self::Lift(_)
            | Self::Measure
            | Self::Cautions => false,
        }
    }

    /// Goes there in the place of where we are: the back key skips it.
    #[cfg(feature = "app")]
    pub fn instead(self) {
        place::replace(&self.address());
    }

    /// Goes there.
    #[cfg(feature = "app")]
    pub fn go(self) {
        place::go(&self.address());
    }
}

fn step_of(id: Option<&str>) -> Option<StepId> {
    id?.parse().ok().map(StepId)
}

fn with_step(screen: &str, step: Option<StepId>) -> String {
    step.map_or(screen.to_owned(), |id| format!("{screen}/{}", id.0))
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
            Route::Plan,
            Route::PlanStep(StepId(7)),
            Route::Parts,
            Route::Record,
            Route::Paper,
            Route::Jobs,
            Route::Find,
            Route::History,
            Route::Torque,
            Route::TorqueOf(StepId(4)),
            Route::Bond(None),
            Route::Bond(Some(StepId(15))),
            Route::Clocks,
            Route::Bench,
            Route::Seat(None),
            Route::Seat(Some(StepId(8))),
            Route::Lift(None),
            Route::Lift(Some(StepId(14))),
            Route::Measure,
            Route::Cautions,
        ];
        for place in places {
            assert_eq!(Route::read(&place.address()), place);
        }
        assert_eq!(Route::read("step/x"), Route::Job);
        assert_eq!(Route::read(""), Route::Job);
    }
}
