//! What is looked at and said, in words: what it is called in its step, and what either answer says.

use super::kinds::Work;
use super::kinds::fasten::Lock;
use super::progress::StepProgress;
use super::reading::{Fact, What};
use super::sheet::Step;

impl Fact {
    /// What it is called in that step, as planned now.
    pub fn name(self, step: Option<&Step>) -> String {
        match self {
            Self::Level => match level(step) {
                "" => "level".to_owned(),
                level => format!("level: {level}"),
            },
            Self::Locked => match lock(step) {
                Lock::None => "lock".to_owned(),
                lock => lock.words().to_owned(),
            },
            Self::Runs => "start".to_owned(),
            Self::NoLeaks => "leaks".to_owned(),
            Self::Cooled => "cooling".to_owned(),
            Self::TorquedAgain => "fasteners".to_owned(),
        }
    }

    /// What it says where it holds, and where it doesn’t.
    pub fn answers(self) -> (&'static str, &'static str) {
        match self {
            Self::Locked => ("on", "not on"),
            Self::Level => ("reached", "not reached"),
            Self::Runs => ("it runs", "it does not run"),
            Self::NoLeaks => ("none seen", "it leaks"),
            Self::Cooled => ("cold enough to touch", "still hot"),
            Self::TorquedAgain => ("torqued again", "not torqued again"),
        }
    }

    /// Whether it must be said where it fails.
    pub fn asks_where(self) -> bool {
        match self {
            Self::NoLeaks => true,
            Self::Locked | Self::Level | Self::Runs | Self::Cooled | Self::TorquedAgain => false,
        }
    }

    /// The answer in words: "level: upper mark: reached".
    pub fn words(self, step: Option<&Step>, holds: bool, more: &str) -> String {
        let (good, bad) = self.answers();
        let said = format!("{}: {}", self.name(step), if holds { good } else { bad });
        if more.is_empty() {
            said
        } else {
            format!("{said} {more}")
        }
    }
}

/// What locks a step's fasteners.
fn lock(step: Option<&Step>) -> Lock {
    match step.map(|step| &step.work) {
        Some(Work::Fasten(fasten)) => fasten.lock,
        _ => Lock::None,
    }
}

/// The level a step fills to, in words.
fn level(step: Option<&Step>) -> &str {
    match step.map(|step| &step.work) {
        Some(Work::Fill(fill)) => &fill.level,
        Some(Work::Run(run)) => &run.level,
        _ => "",
    }
}

/// Whether a fact the step asks for was said not to hold.
pub fn fails(progress: &StepProgress, what: &What) -> bool {
    match what {
        What::Fact(fact) => progress.said(*fact).is_some_and(|said| !said.holds),
        _ => false,
    }
}
