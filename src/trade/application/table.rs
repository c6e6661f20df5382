//! The questions as one table: who is asked what, in what order, and what "don't know" is taken as.

use super::Application;
use super::answers::{Face, Fluid, Hole, JointKind, ManualWord};
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
    /// The name its question is answered by.
    const fn id(self) -> &'static str {
        match self {
            Self::Manual => "manual",
            Self::Precoated => "precoated",
            Self::Locked => "locked",
            Self::Face => "face",
            Self::Assembled => "assembled",
            Self::Thread => "thread",
            Self::Hole => "hole",
            Self::Apart => "apart",
            Self::Vibration => "vibration",
            Self::Seal => "seal",
            Self::Rigid => "rigid",
            Self::Gap => "gap",
            Self::Fluid => "fluid",
            Self::Temperature => "temperature",
            Self::OxygenSensor => "oxygen_sensor",
            Self::OilWays => "oil_ways",
        }
    }

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
    /// The answers so far that make the question pointless.
    pub(super) pointless: fn(&Application) -> bool,
    /// What "don't know" is taken as.
    pub(super) assumed: &'static str,
}

const ALL_BUT_WASHERS: &[JointKind] = &[
    ThreadedFastener,
    Stud,
    PlugOrPipeThread,
    FlangeRigid,
    FlangeFlexible,
    CaseHalves,
    ThreeWay,
    Cylindrical,
    Gasket,
];
use JointKind::{
    CaseHalves, Cylindrical, FlangeFlexible, FlangeRigid, Gasket, PlugOrPipeThread, Stud, ThreadedFastener,
    ThreeWay,
};
const PLUG: &[JointKind] = &[PlugOrPipeThread];
const BORE: &[JointKind] = &[Cylindrical];
const BOLTS: &[JointKind] = &[ThreadedFastener, Stud];
const FLAT: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay];
const FLAT_AND_GASKET: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Gasket];

/// A row that always matters and settles nothing.
const fn row(
    field: Field,
    kinds: &'static [JointKind],
    words: &'static str,
    tiles: Tiles,
    assumed: &'static str,
) -> Row {
    Row {
        field,
        id: field.id(),
        kinds,
        words,
        tiles,
        ends: &[],
        pointless: |_| false,
        assumed,
    }
}

impl Row {
    /// Some answers settle the matter.
    const fn ending(self, ends: &'static [&'static str]) -> Self {
        Self { ends, ..self }
    }

    /// Some answers to other questions make this one pointless.
    const fn unless(self, pointless: fn(&Application) -> bool) -> Self {
        Self { pointless, ..self }
    }
}

/// The manual names something for the thread that no size or use of it changes.
fn thread_named(joint: &Application) -> bool {
    use ManualWord::{LockLow, LockMedium, Oil, ThreadSealant};
    matches!(joint.manual, Some(LockLow | LockMedium | ThreadSealant | Oil))
}

/// The manual names something for the faces.
fn face_named(joint: &Application) -> bool {
    use ManualWord::{AnaerobicSealant, LiquidGasket, Silicone};
    matches!(joint.manual, Some(AnaerobicSealant | Silicone | LiquidGasket))
}

/// It is settled that no silicone goes on.
fn no_silicone(joint: &Application) -> bool {
    let named = face_named(joint) && joint.manual != Some(ManualWord::Silicone);
    named || joint.fluid == Some(Fluid::Fuel)
}

const MANUAL: &str = "What does the manual name here?";
const MANUAL_ASSUMED: &str =
    "Manual not looked up: taken as naming nothing. Look it up; its word comes first.";
const THREADS_OF: &str = "What are the threads made of? If two, the lower one here.";
const FACES_OF: &str = "What are the faces made of? If two, the lower one here.";
const PARTS_OF: &str = "What are the parts made of? If two, the lower one here.";
const METAL_ASSUMED: &str =
    "Taken as slow-curing metal, not plastic. On plastic nothing of this kind may be used.";
const COATING_ASSUMED: &str =
    "Taken as a bare thread. Look for a dry band or patch on it: with one, no liquid.";
const HEAT_ASSUMED: &str = "Taken as hot, up to 230 °C: choose a grade rated for that, or find out.";
const APART_ASSUMED: &str = "Taken as coming apart at a service.";

/// Every question, in the order it is asked.
pub(super) static ROWS: &[Row] = &[
    row(Field::Manual, BOLTS, MANUAL, MANUAL_THREAD, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, PLUG, MANUAL, MANUAL_PLUG, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, FLAT, MANUAL, MANUAL_FACE, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, &[Gasket], MANUAL, MANUAL_GASKET, MANUAL_ASSUMED).ending(&["dry", "not_stated"]),
    row(Field::Manual, BORE, MANUAL, MANUAL_BORE, MANUAL_ASSUMED).ending(&["dry"]),
    row(
        Field::Precoated,
        &[ThreadedFastener, Stud, PlugOrPipeThread],
        "Is there a dry factory coating on the thread?",
        YES_NO,
        COATING_ASSUMED,
    )
    .ending(&["yes"]),
    row(
        Field::Seal,
        PLUG,
        "What makes it tight?",
        SEALS,
        "Not known what makes it tight: unless the manual names a sealant, nothing goes on until that is found out.",
    )
    .ending(&["washer", "ring"]),
    row(Field::Face, BOLTS, THREADS_OF, FACES, METAL_ASSUMED).ending(&["plastic"]),
    row(Field::Face, PLUG, THREADS_OF, FACES, METAL_ASSUMED),
    row(
        Field::Face,
        FLAT_AND_GASKET,
        FACES_OF,
        FACES,
        "Taken as slow-curing metal, not plastic. On plastic no anaerobic and no solvent may be used.",
    ),
    row(Field::Face, BORE, PARTS_OF, FACES, METAL_ASSUMED).ending(&["plastic"]),
    row(
        Field::Locked,
        BOLTS,
        "Does a lock plate, wire, split pin or self-locking nut hold it?",
        YES_NO,
        "Taken as held by nothing else. Where something else locks it, no compound.",
    )
    .ending(&["yes"]),
    row(Field::Temperature, ALL_BUT_WASHERS, "How hot does it get?", HEATS, HEAT_ASSUMED).ending(&["over_230"]),
    row(Field::Assembled, BOLTS, "Is it already together, to stay together?", YES_NO, "Taken as still apart."),
    row(
        Field::Thread,
        BOLTS,
        "Which thread?",
        THREADS,
        "Thread not known: taken as about M8, and never high strength.",
    )
    .unless(thread_named),
    row(Field::Apart, BOLTS, "Does it have to come apart?", APARTS, APART_ASSUMED)
        .unless(|joint| thread_named(joint) || joint.assembled == Some(true)),
    row(Field::Apart, PLUG, "Does it have to come apart?", APARTS, APART_ASSUMED)
        .unless(|joint| joint.manual == Some(ManualWord::ThreadSealant)),
    row(Field::Apart, BORE, "Does it have to come apart?", APARTS, APART_ASSUMED)
        .unless(|joint| joint.manual == Some(ManualWord::Retaining)),
    row(
        Field::Hole,
        BOLTS,
        "Where does the hole end?",
        HOLES,
        "Taken as reaching oil or coolant: the thread is sealed as well.",
    )
    .unless(|joint| joint.assembled == Some(true)),
    row(Field::Vibration, &[ThreadedFastener], "Does it shake, or does its load change?", YES_NO, "Taken as shaken.")
        .unless(|joint| {
            thread_named(joint)
                || joint.manual == Some(ManualWord::LockHigh)
                || joint.assembled == Some(true)
                || joint.hole == Some(Hole::ThroughToFluid)
        }),
    row(
        Field::Rigid,
        &[CaseHalves],
        "Are both faces stiff, machined and flat?",
        YES_NO,
        "Taken as not flat enough for an anaerobic sealant.",
    )
    .unless(|joint| face_named(joint) || joint.face == Some(Face::Thermoplastic)),
    row(
        Field::Gap,
        &[FlangeRigid, CaseHalves],
        "How wide is the gap at its widest, faces dry and closed?",
        GAPS,
        "Gap not measured: taken as 0.25 mm. Close the faces dry and try a feeler gauge.",
    ),
    row(
        Field::Gap,
        &[FlangeFlexible, ThreeWay],
        "How wide is the gap at its widest, parts dry and closed?",
        GAPS,
        "Gap not measured: taken as 3 mm.",
    ),
    row(
        Field::Gap,
        BORE,
        "How loose is it, on the diameter?",
        BORE_GAPS,
        "Fit not measured: nothing goes on until it is.",
    ),
    row(Field::Fluid, FLAT_AND_GASKET, "What wets it?", FLUIDS, "Taken as wetted by fuel: no silicone.")
        .unless(|joint| face_named(joint) && joint.manual != Some(ManualWord::Silicone)),
    row(
        Field::OxygenSensor,
        FLAT_AND_GASKET,
        "Is there an oxygen sensor in the exhaust?",
        YES_NO,
        "Taken as having one: sensor-safe silicone only.",
    )
    .unless(no_silicone),
    row(
        Field::OilWays,
        &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Cylindrical],
        "Are oil ways, jets or bearings close by?",
        YES_NO,
        "Taken as close to oil ways or bearings: a thin film, kept away from them.",
    ),
];
