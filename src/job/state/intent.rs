//! One touch of the user, in typed values.

use super::Restore;
use crate::job::bottle::{Bottle, BottleId};
use crate::job::clock::ClockId;
use crate::job::kinds::{Gauged, Piece, Work};
use crate::job::night::Night;
use crate::job::parts::{PartKey, PartPlace};
use crate::job::reading::{Fact, What};
use crate::job::record::{EntryId, Instead, PhoneClock};
use crate::job::settings::Settings;
use crate::job::sheet::{JobId, Sheet, Step, StepId, Units};
use crate::trade::application::Application;
use crate::trade::cooling::TimeRange;
use crate::trade::quantity::Stated;
use crate::trade::wrench::Wrench;

/// What a reading was taken with.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct ReadWith {
    /// The tool, in words.
    pub tool: String,
    /// The part's temperature, °C.
    pub at_c: Option<f64>,
    /// The digits behind the point it was typed with, where somebody typed it.
    pub decimals: Option<u8>,
}

/// What the user wants. Steps, parts and lines are those of the job at hand.
#[derive(Debug, Clone, PartialEq)]
pub enum Intent {
    /// A caution of the step was read.
    Acknowledge { step: StepId, caution: String },
    /// The next fastener is at its torque.
    Tally(StepId),
    /// The fastener at that place, from 0, is at its torque: where the order is free, or it is the next.
    TallyAt { step: StepId, place: usize },
    /// What is used where no wrench on the bench can be set to the step's torque.
    WithoutWrench { step: StepId, instead: Instead },
    /// All fasteners of the step are loose again.
    Loosen(StepId),
    /// The compound is on the step's joint, after an activator or without.
    PutOn { step: StepId, activator: bool },
    /// Something was read, in that unit.
    Read {
        step: StepId,
        what: What,
        value: f64,
        unit: String,
        with: ReadWith,
    },
    /// What was found stays as it is, why, and who says so; without initials those of the bench.
    Accept {
        step: StepId,
        what: What,
        reason: String,
        initials: String,
    },
    /// A part for what was found is to be ordered; by its name, where it is not the part itself.
    Order { step: StepId, what: What, name: String },
    /// A part was looked at: fit where `unfit` is empty.
    Judge {
        step: StepId,
        part: PartKey,
        unfit: String,
    },
    /// New ones of a part are on.
    NewOn { step: StepId, part: PartKey },
    /// Something looked at holds or does not, and what more there is to say.
    Say {
        step: StepId,
        fact: Fact,
        holds: bool,
        words: String,
    },
    /// How something turns: freely where `tight_at` is empty.
    Feel { step: StepId, tight_at: String },
    /// The codes of a select step: down the side of its table, and across.
    Code {
        step: StepId,
        down: String,
        across: String,
    },
    /// What a select step chose is in.
    Choose { step: StepId, pieces: Vec<Piece> },
    /// So far a bearing is gauged.
    Gauge { step: StepId, done: Gauged },
    /// The depth a part sits at, mm, for a step or for the Seat screen's own numbers.
    ReadDepth { step: Option<StepId>, mm: Stated },
    /// The gap behind a part, mm.
    ReadGap { step: Option<StepId>, mm: Stated },
    /// The step is done.
    Close(StepId),
    /// The step is skipped, and why.
    Skip { step: StepId, reason: String },
    /// A closed step is open again.
    Reopen(StepId),
    /// A shut step is overridden, and why.
    Override { step: StepId, reason: String },
    /// Where a part is and how many are counted.
    Place {
        step: StepId,
        part: PartKey,
        place: PartPlace,
        here: u32,
    },
    /// All of a part is here.
    TickPart { step: StepId, part: PartKey },
    /// A remark on a line of the record, or on the whole job.
    Remark { about: Option<EntryId>, words: String },
    /// The whole job is done.
    CloseJob,

    /// The compound is on a joint that belongs to no step.
    PutOnFree {
        name: String,
        joint: Box<Application>,
        activator: bool,
    },
    /// The joint was opened again and the compound is on anew.
    Restart(ClockId),
    /// A clock goes out of sight.
    PutAway(ClockId),

    /// Steps behind `after`, or at the end, under numbers of their own.
    AddSteps { after: Option<StepId>, steps: Vec<Step> },
    /// One field of a step, by its path in the form.
    EditStep {
        step: StepId,
        field: String,
        value: String,
    },
    /// The step's numbers, or a screen's own; `what` names the change.
    SetWork {
        step: Option<StepId>,
        what: &'static str,
        work: Box<Work>,
    },
    /// Another kind of work.
    ChangeKind { step: StepId, work: Box<Work> },
    /// One place up or down.
    MoveStep { step: StepId, down: bool },
    /// A copy behind it.
    CopyStep(StepId),
    /// Out of the plan.
    RemoveStep(StepId),
    /// The machine's name.
    NameMachine(String),
    /// What the manual measures in.
    SetUnits(Units),

    /// A job with that sheet.
    BeginJob(Box<Sheet>),
    /// A job without steps.
    BeginEmpty(String),
    /// A job with the same sheet and an empty record.
    Duplicate(JobId),
    /// Another job to hand.
    TakeJob(JobId),
    /// A job's name.
    RenameJob { job: JobId, title: String },
    /// A job archived, or out of the archive again.
    ArchiveJob { job: JobId, away: bool },
    /// A job out of sight.
    DeleteJob(JobId),
    /// A deleted job back in sight.
    BringBackJob(JobId),
    /// The space of every deleted job.
    FreeDeleted,

    /// A wrench, and into the hand.
    AddWrench(Wrench),
    /// A wrench in the place of another.
    ChangeWrench { at: usize, wrench: Wrench },
    /// One place towards the front.
    MoveWrenchUp(usize),
    /// Off the bench.
    RemoveWrench(usize),
    /// Into the hand.
    TakeWrench(usize),
    /// A bottle onto the shelf, or its changed label.
    Shelve(Box<Bottle>),
    /// A bottle away for good.
    ThrowAway(BottleId),
    /// A bottle for its class from now on.
    TakeBottle(BottleId),
    /// None of these bottles: typical figures.
    TakeTypical(Vec<BottleId>),
    /// The shop's temperature as of now, °C.
    NoteShop(f64),
    /// The humidity of the shop's air as of now, %; none: not known.
    NoteHumidity(Option<f64>),
    /// The nights ahead.
    PlanNight(Night),
    /// No nights any more.
    UnplanNight,
    /// Settings as they are to be; `what` names the change.
    Set {
        what: &'static str,
        settings: Box<Settings>,
    },
    /// The same for what only remembers what was typed: there is no way back.
    Remember(Box<Settings>),
    /// The step's value and bolt to the Torque screen.
    Carry(StepId),
    /// A part is out of the oven or the freezer, `ahead_ms` after our time by the phone's clock.
    TakeOut {
        step: Option<StepId>,
        window: TimeRange,
        ahead_ms: i64,
    },

    /// What was agreed to of a backup.
    Restore(Box<Restore>),
    /// What was seen of the phone's clock.
    PhoneClock(PhoneClock),
    /// The last action back.
    Undo,
}
