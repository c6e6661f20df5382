//! Why nothing was done, as a type; the words say what to do.

use crate::job::kinds::Gauged;
use crate::job::night::NightError;
use crate::job::planning::PlanRefused;
use crate::trade::quantity::{in_mark, short_name};
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
    /// The wrench in the hand, by its name, can't be set to it; the other can.
    OtherWrench(String, String),
    /// No wrench on the bench can be set to that torque.
    NoWrench(String),
    /// That fastener stands at what the pass asks for, by its name.
    TalliedAlready(String),
    /// The order is not free: the fastener of that name is next.
    NotNext(String),
    /// The record has no room for another line.
    RecordFull,
    /// The compound's clock was not started.
    ClockNotStarted,
    /// A reading is missing, by its name.
    ReadingMissing(String),
    /// Something found is not settled, in words.
    Finding(String),
    /// What was found waits for a part on order, by its name.
    OnOrder(String),
    /// Of this part new ones must be on.
    NewWanted(String),
    /// There is nothing found to settle, by its name.
    NotFound(String),
    /// So many things found in the job are not settled.
    FindingsLeft(usize),
    /// What the step waits for is no cure: nobody opens it by hand.
    NotByHand,
    /// A decision is signed: initials are asked for.
    NoInitials,
    /// The part to order has no name.
    NoPart,
    /// The step does not ask for that, by its name.
    NotAsked(String),
    /// The bead of that step skinned before this one was done.
    Skinned(String),
    /// Where it leaks is not said.
    NoPlace,
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
    /// The plan asks for it in the first unit, and it was read in the second, which measures something else.
    OtherUnit(String, String),
    /// The stages of a fastening can't be carried out as planned, and why.
    Stages(String),
    /// A step, by its title, that was done before its plan changed and lacks what it now asks for.
    Undone(String),
    /// What is measured loose, of fasteners that are tight.
    TightAlready,
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
            Self::OtherWrench(in_hand, other) => {
                write!(f, "{in_hand} can’t be set to this: use {other}.")
            }
            Self::NoWrench(torque) => write!(
                f,
                "No wrench on your bench can be set to {torque}: say what you use, or add the wrench on Bench."
            ),
            Self::TalliedAlready(name) => write!(f, "Bolt {} is done in this pass.", short_name(name)),
            Self::NotNext(name) => write!(f, "The order is not free here: bolt {} is next.", short_name(name)),
            Self::RecordFull => f.write_str(
                "This job’s record has no room for another line: begin a new job with the same plan.",
            ),
            Self::ClockNotStarted => f.write_str("Put the compound on and start its clock first."),
            Self::ReadingMissing(name) => write!(f, "Enter the reading of “{}” first.", short_name(name)),
            Self::Finding(words) => {
                write!(f, "{words}. Do it again, accept it with a reason, or order a part.")
            }
            Self::OnOrder(name) => write!(f, "“{}” is on order: this step waits for it.", short_name(name)),
            Self::NewWanted(name) => write!(f, "“{}” must be new: say that new ones are on.", short_name(name)),
            Self::NotFound(name) => write!(f, "Nothing is wrong with “{}”: there is nothing to settle.", short_name(name)),
            Self::FindingsLeft(1) => f.write_str("One thing that was found is not settled: see all steps."),
            Self::FindingsLeft(n) => write!(f, "{n} things that were found are not settled: see all steps."),
            Self::Undone(title) => write!(
                f,
                "“{}” was done before its plan changed: open it again for what it asks now.",
                short_name(title)
            ),
            Self::TightAlready => f.write_str(
                "The running torque is measured while the nut turns freely: loosen the fasteners first.",
            ),
            Self::NotByHand => f.write_str(
                "Only a cure is overridden: do the open steps, or skip them with a reason, and settle what was found.",
            ),
            Self::NoInitials => f.write_str("Enter your initials too: the decision is signed with them."),
            Self::NoPart => f.write_str("Name the part to order."),
            Self::NotAsked(name) => write!(f, "“{}” is not asked in this step: see what it asks for.", short_name(name)),
            Self::Skinned(bead) => write!(
                f,
                "“{}” has skinned: wipe it off and put it on anew, as its label says, or accept it with a \
                 reason.",
                short_name(bead)
            ),
            Self::NoPlace => f.write_str("Say where it leaks: it goes into the record."),
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
            Self::NoSense(words) => f.write_str(&in_mark(words)),
            Self::OtherUnit(asked, read) => {
                let named = |unit: &str| match unit {
                    "" => "no unit".to_owned(),
                    unit => unit.to_owned(),
                };
                let (asked, read) = (named(asked), named(read));
                write!(f, "The plan asks for it in {asked}, and {read} can’t be turned into that: read it in {asked}.")
            }
            Self::Stages(why) => write!(f, "{why} Change its plan first."),
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
