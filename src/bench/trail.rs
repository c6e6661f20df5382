//! The way back: the last actions, each with what undoes it.

use crate::bench::{JobHead, Settings};
use crate::job::clock::CureClock;
use crate::job::record::EntryId;
use crate::job::sheet::{JobId, Sheet};
use crate::trade::moment::Moment;

/// How many actions can be taken back.
pub const TRAIL_LENGTH: usize = 20;

/// What undoes an action.
#[derive(Debug, Clone, PartialEq)]
pub enum Inverse {
    /// Take that line of that job's record back.
    Entry(JobId, EntryId),
    /// The settings as they were; what is typed on Torque only where the action changed it, as typing
    /// itself leaves no trail.
    Settings { before: Box<Settings>, entry: bool },
    /// The clocks as they were.
    Clocks(Vec<CureClock>),
    /// That job's sheet as it was.
    Sheet(JobId, Box<Sheet>),
    /// The list of jobs as it was, and the one that was at hand.
    Jobs(JobId, Vec<JobHead>),
    /// Everything kept, as the text of a backup.
    Everything(Box<str>),
}

/// One thing done.
#[derive(Debug, Clone, PartialEq)]
pub struct Action {
    /// When.
    pub at: Moment,
    /// What, in words: "bolt 3 of 4".
    pub words: String,
    /// What undoes it.
    pub inverse: Inverse,
}
