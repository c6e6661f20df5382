//! The questions as one table: who is asked what, in what order, and what "don't know" is taken as.

use super::answers::JointKind;
use super::tiles::*;

/// The part of an application that a question fills.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Field {
    Manual,
    Precoated,
    Locked,
    Face,
    Assembled,
    Thread,
    Hole,
    Apart,
    Vibration,
    Seal,
    Rigid,
    Gap,
    Fluid,
    Temperature,
    OxygenSensor,
    OilWays,
}

impl Field {
    pub(super) const ALL: [Self; 16] = [
        Self::Manual,
        Self::Precoated,
        Self::Locked,
        Self::Face,
        Self::Assembled,
        Self::Thread,
        Self::Hole,
        Self::Apart,
        Self::Vibration,
        Self::Seal,
        Self::Rigid,
        Self::Gap,
        Self::Fluid,
        Self::Temperature,
        Self::OxygenSensor,
        Self::OilWays,
    ];
}

/// A row of the table of questions.
pub(super) struct Row {
    pub(super) field: Field,
    pub(super) id: &'static str,
    pub(super) words: &'static str,
    pub(super) kinds: &'static [JointKind],
    pub(super) tiles: Tiles,
    /// Answers after which no later question matters.
    pub(super) ends: &'static [&'static str],
    /// What "don't know" is taken as.
    pub(super) assumed: &'static str,
}

use JointKind::{
    CaseHalves, Cylindrical, FlangeFlexible, FlangeRigid, Gasket, PlugOrPipeThread, Stud, ThreadedFastener,
    ThreeWay,
};
const BOLTS: &[JointKind] = &[ThreadedFastener, Stud];
const FLAT: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay];
const FLAT_AND_GASKET: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Gasket];

/// A row without "ends", for brevity.
const fn row(
    field: Field,
    id: &'static str,
    kinds: &'static [JointKind],
    words: &'static str,
    tiles: Tiles,
    assumed: &'static str,
) -> Row {
    Row {
        field,
        id,
        words,
        kinds,
        tiles,
        ends: &[],
        assumed,
    }
}

/// A row some of whose answers settle the matter.
const fn ending(ends: &'static [&'static str], row: Row) -> Row {
    Row { ends, ..row }
}

const MANUAL: &str = "What does the manual name here?";
const MANUAL_ASSUMED: &str =
    "Manual not looked up: taken as naming nothing. Look it up; its word comes first.";
const OVER_230: &[&str] = &["over_230"];

/// Every question, in the order it is asked.
pub(super) static ROWS: &[Row] = &[
    ending(
        &["dry"],
        row(
            Field::Manual,
            "manual",
            BOLTS,
            MANUAL,
            MANUAL_THREAD,
            MANUAL_ASSUMED,
        ),
    ),
    ending(
        &["dry"],
        row(
            Field::Manual,
            "manual",
            &[PlugOrPipeThread],
            MANUAL,
            MANUAL_PLUG,
            MANUAL_ASSUMED,
        ),
    ),
    ending(
        &["dry"],
        row(Field::Manual, "manual", FLAT, MANUAL, MANUAL_FACE, MANUAL_ASSUMED),
    ),
    ending(
        &["dry"],
        row(
            Field::Manual,
            "manual",
            &[Gasket],
            MANUAL,
            MANUAL_GASKET,
            MANUAL_ASSUMED,
        ),
    ),
    ending(
        &["dry"],
        row(
            Field::Manual,
            "manual",
            &[Cylindrical],
            MANUAL,
            MANUAL_BORE,
            MANUAL_ASSUMED,
        ),
    ),
    ending(
        &["yes"],
        row(
            Field::Precoated,
            "precoated",
            &[ThreadedFastener, Stud, PlugOrPipeThread],
            "Is there a dry factory coating on the thread?",
            YES_NO,
            "Taken as a bare thread. Look for a dry band or patch on it: with one, no liquid.",
        ),
    ),
    ending(
        &["washer", "ring"],
        row(
            Field::Seal,
            "seal",
            &[PlugOrPipeThread],
            "What makes it tight?",
            SEALS,
            "Not known what makes it tight: nothing goes on until that is found out.",
        ),
    ),
    ending(
        &["plastic"],
        row(
            Field::Face,
            "face",
            BOLTS,
            "What are the threads made of? If two, the lower one here.",
            FACES,
            "Taken as slow-curing metal, not plastic. On plastic nothing of this kind may be used.",
        ),
    ),
    row(
        Field::Face,
        "face",
        &[PlugOrPipeThread],
        "What are the threads made of? If two, the lower one here.",
        FACES,
        "Taken as slow-curing metal, not plastic. On plastic nothing of this kind may be used.",
    ),
    row(
        Field::Face,
        "face",
        FLAT_AND_GASKET,
        "What are the faces made of? If two, the lower one here.",
        FACES,
        "Taken as slow-curing metal, not plastic. On plastic no anaerobic and no solvent may be used.",
    ),
    ending(
        &["plastic"],
        row(
            Field::Face,
            "face",
            &[Cylindrical],
            "What are the parts made of? If two, the lower one here.",
            FACES,
            "Taken as slow-curing metal, not plastic. On plastic nothing of this kind may be used.",
        ),
    ),
    ending(
        &["yes"],
        row(
            Field::Locked,
            "locked",
            BOLTS,
            "Does a lock plate, wire, split pin or self-locking nut hold it?",
            YES_NO,
            "Taken as held by nothing else. Where something else locks it, no compound.",
        ),
    ),
    ending(
        OVER_230,
        row(
            Field::Temperature,
            "temperature",
            &[
                ThreadedFastener,
                Stud,
                PlugOrPipeThread,
                FlangeRigid,
                FlangeFlexible,
                CaseHalves,
                ThreeWay,
            ],
            "How hot does it get?",
            HEATS,
            "Taken as hot, up to 230 °C: choose a grade rated for that, or find out.",
        ),
    ),
    ending(
        OVER_230,
        row(
            Field::Temperature,
            "temperature",
            &[Cylindrical, Gasket],
            "How hot does it get?",
            HEATS,
            "Taken as hot, up to 230 °C: choose a grade rated for that, or find out.",
        ),
    ),
    row(
        Field::Assembled,
        "assembled",
        BOLTS,
        "Is it already together, to stay together?",
        YES_NO,
        "Taken as still apart.",
    ),
    row(
        Field::Thread,
        "thread",
        BOLTS,
        "Which thread?",
        THREADS,
        "Thread not known: taken as about M8, and never high strength.",
    ),
    row(
        Field::Apart,
        "apart",
        BOLTS,
        "Does it have to come apart?",
        APARTS,
        "Taken as coming apart at a service.",
    ),
    row(
        Field::Apart,
        "apart",
        &[PlugOrPipeThread, Cylindrical],
        "Does it have to come apart?",
        APARTS,
        "Taken as coming apart at a service.",
    ),
    row(
        Field::Hole,
        "hole",
        BOLTS,
        "Where does the hole end?",
        HOLES,
        "Taken as reaching oil or coolant: the thread is sealed as well.",
    ),
    row(
        Field::Vibration,
        "vibration",
        BOLTS,
        "Does it shake, or does its load change?",
        YES_NO,
        "Taken as shaken.",
    ),
    row(
        Field::Rigid,
        "rigid",
        &[CaseHalves],
        "Are both faces stiff, machined and flat?",
        YES_NO,
        "Taken as not flat enough for an anaerobic sealant.",
    ),
    row(
        Field::Gap,
        "gap",
        &[FlangeRigid, CaseHalves],
        "How wide is the gap at its widest, faces dry and closed?",
        GAPS,
        "Gap not measured: taken as 0.25 mm. Close the faces dry and try a feeler gauge.",
    ),
    row(
        Field::Gap,
        "gap",
        &[FlangeFlexible, ThreeWay],
        "How wide is the gap at its widest, parts dry and closed?",
        GAPS,
        "Gap not measured: taken as 3 mm.",
    ),
    row(
        Field::Gap,
        "gap",
        &[Cylindrical],
        "How loose is it, on the diameter?",
        BORE_GAPS,
        "Fit not measured: nothing goes on until it is.",
    ),
    row(
        Field::Fluid,
        "fluid",
        FLAT_AND_GASKET,
        "What wets it?",
        FLUIDS,
        "Taken as wetted by fuel: no silicone.",
    ),
    row(
        Field::OxygenSensor,
        "oxygen_sensor",
        FLAT_AND_GASKET,
        "Is there an oxygen sensor in the exhaust?",
        YES_NO,
        "Taken as having one: sensor-safe silicone only.",
    ),
    row(
        Field::OilWays,
        "oil_ways",
        &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Cylindrical],
        "Are oil ways, jets or bearings close by?",
        YES_NO,
        "Taken as close to oil ways or bearings: a thin film, kept away from them.",
    ),
];
