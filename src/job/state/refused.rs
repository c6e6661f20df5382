//! Why nothing was done, as a type; the words say what to do.

use crate::job::kinds::Gauged;
use crate::job::night::NightError;
use crate::job::planning::PlanRefused;
use crate::trade::wrench::WrenchError;
use std::fmt;

/// Why an intent did nothing.
#[derive(Debug, Clone, PartialEq)]
pub enum Refused {
    /// There is no such step in the job at hand.
    NoStep,
    /// A stop-level caution is not acknowledged.
    Unacknowledged,
    /// The gate is shut.
    Shut,
    /// The step is closed already.
    Closed,
    /// So many fasteners are tighter than the plan now wants.
    TooTight(usize),
    /// Fasteners are left in this step.
    FastenersLeft(usize),
    /// The compound's clock was not started.
    ClockNotStarted,
    /// A reading is missing, by its name.
    ReadingMissing(String),
    /// A reading is outside its limits and no reason was given, by its name.
    OutsideLimits(String),
    /// There is nothing outside its limits to accept, by its name.
    NotOutside(String),
    /// A reason is asked for.
    NoReason,
    /// Steps are still open.
    StepsOpen(usize),
    /// It must be said how it turns.
    NotFelt,
    /// The codes were not read.
    NoCodes,
    /// That comes first of a gauging.
    NotGauged(Gauged),
    /// Nothing was chosen and put in.
    NothingChosen,
    /// A number that makes no sense, and what to enter.
    NoSense(&'static str),
    /// Nothing to take back.
    NothingToUndo,
    /// The bottle taken may not be used, and why.
    Bottle(String),
    /// The clock of what is on it runs already.
    ClockRuns,
    /// What goes on it does not cure: there is no clock to start.
    NothingCures,
    /// The browser did not keep it, which was said: nothing was changed.
    NotKept,
    /// What the plan says.
    Plan(PlanRefused),
    /// What the list of jobs says.
    Job(JobRefused),
    /// What the wrench says.
    Wrench(WrenchError),
    /// What the night says.
    Night(NightError),
}

/// Why nothing was done to a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JobRefused {
    /// A job needs a name.
    NoTitle,
    /// Its sheet can't be read.
    Gone,
    /// One job stays.
    LastOne,
}

impl fmt::Display for JobRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoTitle => "Give the job a name first.",
            Self::Gone => "That job’s sheet can’t be read: bring it back from a backup.",
            Self::LastOne => "One job stays on the bench: begin another first.",
        })
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoStep => PlanRefused::NoStep.fmt(f),
            Self::Unacknowledged => f.write_str("Read the STOP caution and acknowledge it first."),
            Self::Shut => f.write_str("This step is shut: see what it waits for."),
            Self::Closed => f.write_str("This step is closed: open it again first."),
            Self::TooTight(1) => {
                f.write_str("One fastener is tighter than the plan now says: loosen it, and begin again.")
            }
            Self::TooTight(n) => write!(
                f,
                "{n} fasteners are tighter than the plan now says: loosen them, and begin again."
            ),
            Self::FastenersLeft(1) => f.write_str("One fastener is not tallied yet."),
            Self::FastenersLeft(n) => write!(f, "{n} fasteners are not tallied yet."),
            Self::ClockNotStarted => f.write_str("Put the compound on and start its clock first."),
            Self::ReadingMissing(name) => write!(f, "Enter the reading of “{name}” first."),
            Self::OutsideLimits(name) => write!(
                f,
                "“{name}” is outside its limits: read it again, or accept it with a reason."
            ),
            Self::NotOutside(name) => write!(
                f,
                "“{name}” is not outside its limits: there is nothing to accept."
            ),
            Self::NoReason => f.write_str("Write the reason first: it goes into the record."),
            Self::StepsOpen(1) => f.write_str("One step is still open."),
            Self::StepsOpen(n) => write!(f, "{n} steps are still open."),
            Self::NotFelt => f.write_str("Say first how it turns: freely, or where it binds."),
            Self::NoCodes => f.write_str("Read both codes first: on the case, on the shaft."),
            Self::NothingChosen => f.write_str("Choose what goes in first, and say that it is in."),
            Self::NotGauged(Gauged::Laid(_)) => {
                f.write_str("Lay the gauging plastic along the journal first.")
            }
            Self::NotGauged(Gauged::Tight) => f.write_str("Put the cap on and tighten it fully first."),
            Self::NotGauged(Gauged::Off) => f.write_str("Take the cap off first."),
            Self::NotGauged(Gauged::Wiped) => f.write_str("Wipe all of the gauging plastic away first."),
            Self::NoSense(words) => f.write_str(words),
            Self::NothingToUndo => f.write_str("Nothing to take back."),
            Self::Bottle(why) => write!(f, "{why} Take another on Bond, or typical figures."),
            Self::ClockRuns => {
                f.write_str("Its clock runs already: say on Clocks that the joint was opened again.")
            }
            Self::NothingCures => f.write_str("Nothing that cures goes on here: there is no clock to start."),
            Self::NotKept => f.write_str("The browser did not keep it: nothing was changed."),
            Self::Plan(why) => why.fmt(f),
            Self::Job(why) => why.fmt(f),
            Self::Wrench(why) => why.fmt(f),
            Self::Night(why) => why.fmt(f),
        }
    }
}

impl From<PlanRefused> for Refused {
    fn from(why: PlanRefused) -> Self {
        Self::Plan(why)
    }
}

impl From<JobRefused> for Refused {
    fn from(why: JobRefused) -> Self {
        Self::Job(why)
    }
}

impl From<WrenchError> for Refused {
    fn from(why: WrenchError) -> Self {
        Self::Wrench(why)
    }
}

impl From<NightError> for Refused {
    fn from(why: NightError) -> Self {
        Self::Night(why)
    }
}
