//! The table: who is asked what, in what order, and what "don't know" is taken as.

use super::Application;
use super::answers::JointKind;
use super::field::Field;
use super::pointless as p;
use super::tiles::*;

/// A row of the table of questions.
pub(super) struct Row {
    pub(super) field: Field,
    pub(super) id: &'static str,
    pub(super) words: &'static str,
    pub(super) kinds: &'static [JointKind],
    pub(super) tiles: Tiles,
    /// Answers after which no later question matters.
    pub(super) ends: &'static [&'static str],
    /// The answers so far make the question pointless.
    pub(super) pointless: fn(&Application) -> bool,
    /// What "don't know" is taken as.
    pub(super) assumed: &'static str,
}

use JointKind::{
    BondedOrCrushWasher, CaseHalves, CorePlug, Cylindrical, Exhaust, FlangeFlexible, FlangeRigid, Gasket,
    ORing, PlugOrPipeThread, ShaftSeal, SparkPlug, Stud, TaperSeat, ThreadedFastener, ThreeWay,
};
const PLUG: &[JointKind] = &[PlugOrPipeThread];
const BORE: &[JointKind] = &[Cylindrical];
const BOLTS: &[JointKind] = &[ThreadedFastener, Stud];
const THREADED: &[JointKind] = &[ThreadedFastener, Stud, PlugOrPipeThread, Exhaust];
const STIFF: &[JointKind] = &[FlangeRigid, CaseHalves];
const LOOSE: &[JointKind] = &[FlangeFlexible, ThreeWay];
const FLAT: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay];
const FLAT_AND_GASKET: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Gasket];
const SEAL: &[JointKind] = &[ShaftSeal];
const CORE: &[JointKind] = &[CorePlug];
const TAPER: &[JointKind] = &[TaperSeat];
const RINGS: &[JointKind] = &[ORing, BondedOrCrushWasher];
const SPARK: &[JointKind] = &[SparkPlug];
const EXHAUST: &[JointKind] = &[Exhaust];

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

    /// Some answers before it make this one pointless.
    const fn unless(self, pointless: fn(&Application) -> bool) -> Self {
        Self { pointless, ..self }
    }
}

const MANUAL: &str = "What does the manual name here?";
const MANUAL_ASSUMED: &str =
    "Manual not looked up: taken as naming nothing. Look it up; its word comes first.";
const THREADS_OF: &str = "What are the threads made of? Two? Choose the one further down.";
const FACES_OF: &str = "What are the faces made of? Two? Choose the one further down.";
const PARTS_OF: &str = "What are the parts made of? Two? Choose the one further down.";
const METAL_ASSUMED: &str =
    "Taken as slow-curing metal, not plastic. On plastic nothing of this kind may be used.";
const COATING_ASSUMED: &str =
    "Taken as a bare thread. Look for a dry band or patch on it: with one, no liquid.";
const HEAT: &str = "How hot does it get?";
const HEAT_ASSUMED: &str = "Taken as hot, up to 230 °C: choose a grade rated for that, or find out.";
const APART: &str = "Does it have to come apart?";
const APART_ASSUMED: &str = "Taken as coming apart at a service.";
const OIL_WAYS: &str = "Are oil ways, jets or bearings close by?";
const SENSOR: &str = "Is there an oxygen sensor in the exhaust?";

/// Every question, in the order it is asked.
pub(super) static ROWS: &[Row] = &[
    row(Field::Manual, BOLTS, MANUAL, MANUAL_THREAD, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, PLUG, MANUAL, MANUAL_PLUG, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, FLAT, MANUAL, MANUAL_FACE, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, &[Gasket], MANUAL, MANUAL_GASKET, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, BORE, MANUAL, MANUAL_BORE, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, TAPER, MANUAL, MANUAL_BORE, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, SEAL, MANUAL, MANUAL_SEAL, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, CORE, MANUAL, MANUAL_CORE_PLUG, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, RINGS, MANUAL, MANUAL_RING, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, SPARK, MANUAL, MANUAL_ANTI_SEIZE, MANUAL_ASSUMED).ending(&["dry"]),
    row(Field::Manual, EXHAUST, MANUAL, MANUAL_ANTI_SEIZE, MANUAL_ASSUMED).ending(&["dry"]),
    row(
        Field::Precoated,
        THREADED,
        "Is there a dry factory coating on the thread?",
        YES_NO,
        COATING_ASSUMED,
    )
    .ending(&["yes"]),
    row(
        Field::Precoated,
        CORE,
        "Is there a dry factory coating on its rim?",
        YES_NO,
        "Taken as bare metal. Look for a coloured band round the rim: with one, no liquid.",
    )
    .ending(&["yes"]),
    row(
        Field::Seal,
        PLUG,
        "What makes it tight?",
        SEALS,
        "Not known what makes it tight: unless the manual names a sealant, nothing goes on until that is found out.",
    )
    .ending(&["washer", "ring", "cone"]),
    row(
        Field::Seal,
        SPARK,
        "What does it seat on?",
        SPARK_SEALS,
        "Look at the plug: a loose washer on it, or a cone. Either way it goes in dry.",
    )
    .unless(p::spark_seal),
    row(
        Field::Outside,
        SEAL,
        "What is its outside?",
        OUTSIDES,
        "Taken as one that needs nothing: unless the manual names a compound, its outside stays dry.",
    )
    .unless(p::seal_outside),
    row(Field::Face, BOLTS, THREADS_OF, FACES, METAL_ASSUMED).ending(&["plastic"]),
    row(Field::Face, PLUG, THREADS_OF, FACES, METAL_ASSUMED).unless(p::plug_settled),
    row(
        Field::Face,
        FLAT_AND_GASKET,
        FACES_OF,
        FACES,
        "Taken as slow-curing metal, not plastic. On plastic no anaerobic and no solvent may be used.",
    )
    .unless(p::face),
    row(Field::Face, BORE, PARTS_OF, FACES, METAL_ASSUMED).ending(&["plastic"]),
    row(Field::Face, CORE, PARTS_OF, FACES, METAL_ASSUMED).ending(&["plastic"]),
    row(Field::Face, SEAL, PARTS_OF, FACES, METAL_ASSUMED)
        .ending(&["plastic"])
        .unless(p::seal_dry),
    row(Field::Face, TAPER, PARTS_OF, FACES, METAL_ASSUMED)
        .ending(&["plastic"])
        .unless(p::not_retained),
    row(
        Field::Locked,
        BOLTS,
        "Does a lock plate, wire, split pin or self-locking nut hold it?",
        YES_NO,
        "Taken as held by nothing else. Where something else locks it, no compound.",
    )
    .unless(p::lock),
    row(Field::Assembled, BOLTS, "Is it already together, to stay together?", YES_NO, "Taken as still apart.")
        .unless(p::assembled),
    row(
        Field::Thread,
        BOLTS,
        "Which thread?",
        THREADS,
        "Thread not known: taken as about M8, and never high strength.",
    )
    .unless(p::thread),
    row(Field::Apart, BOLTS, APART, APARTS, APART_ASSUMED).unless(p::thread_apart),
    row(
        Field::Partner,
        BOLTS,
        "What does it run in?",
        PARTNERS,
        "Taken as what suits it worst: as if it may seize, and as if it were aluminium.",
    )
    .unless(p::partner),
    row(
        Field::Hole,
        BOLTS,
        "Where does the hole end?",
        HOLES,
        "Taken as reaching oil or coolant: what locks the thread seals it as well. Look, if a part locks it: the thread may still have to be sealed.",
    )
    .unless(p::hole),
    row(Field::Temperature, BOLTS, HEAT, HEATS, HEAT_ASSUMED)
        .ending(&["over_230"])
        .unless(p::thread_heat),
    row(
        Field::Vibration,
        &[ThreadedFastener],
        "Does it shake, or does its load change?",
        YES_NO,
        "Taken as shaken.",
    )
    .unless(p::vibration),
    row(
        Field::PlasticPart,
        BOLTS,
        "Does it clamp or touch a plastic part?",
        YES_NO,
        "Taken as touching metal alone. Look: wet compound cracks many plastics under load.",
    )
    .unless(p::plastic_part),
    row(Field::Temperature, PLUG, HEAT, HEATS, HEAT_ASSUMED)
        .ending(&["over_230"])
        .unless(p::plug_settled),
    row(Field::Apart, PLUG, APART, APARTS, APART_ASSUMED).unless(p::plug_apart),
    row(
        Field::Gap,
        BORE,
        "How loose is it, on the diameter?",
        BORE_GAPS,
        "Fit not measured: nothing goes on until it is.",
    ),
    row(
        Field::Gap,
        SEAL,
        "How loose is it, on the diameter?",
        BORE_GAPS,
        "Taken as one that has to be pressed in. One that slides in says that the bore or the seal is wrong.",
    )
    .unless(p::seal_dry),
    row(
        Field::Gap,
        CORE,
        "How loose is it, on the diameter?",
        BORE_GAPS,
        "Taken as one that has to be pressed in. One that slides in does not hold.",
    ),
    row(
        Field::Held,
        BORE,
        "What slides in or on?",
        HELDS,
        "Taken as a bearing or gear, which has to run true: no more than 0.1 mm on the diameter.",
    )
    .unless(p::bore_held),
    row(Field::Apart, BORE, APART, APARTS, APART_ASSUMED)
        .ending(&["often"])
        .unless(p::bore_apart),
    row(Field::Temperature, BORE, HEAT, HEATS, HEAT_ASSUMED)
        .ending(&["over_230"])
        .unless(p::bore_unfit),
    row(Field::Temperature, SEAL, HEAT, HEATS, HEAT_ASSUMED).unless(p::seal_heat),
    row(Field::Temperature, CORE, HEAT, HEATS, HEAT_ASSUMED).unless(p::press_in_loose),
    row(Field::Temperature, TAPER, HEAT, HEATS, HEAT_ASSUMED).unless(p::not_retained),
    row(Field::Temperature, FLAT_AND_GASKET, HEAT, HEATS, HEAT_ASSUMED)
        .ending(&["over_230"])
        .unless(p::face_settled),
    row(
        Field::Rigid,
        &[CaseHalves],
        "Are both faces stiff, machined and flat?",
        YES_NO,
        "Taken as not flat enough for an anaerobic sealant.",
    )
    .unless(p::rigid),
    row(
        Field::Gap,
        STIFF,
        "How wide is the gap at its widest, faces dry and closed?",
        GAPS,
        "Gap not measured: taken as 0.25 mm. Close the faces dry and try a feeler gauge.",
    )
    .ending(&["over_3"])
    .unless(p::face_settled),
    row(
        Field::Gap,
        LOOSE,
        "How wide is the gap at its widest, parts dry and closed?",
        GAPS,
        "Gap not measured: taken as 3 mm.",
    )
    .ending(&["over_3"])
    .unless(p::face_settled),
    row(Field::Fluid, FLAT_AND_GASKET, "What wets it?", FLUIDS, "Taken as wetted by fuel: no silicone.")
        .unless(p::fluid),
    row(
        Field::OxygenSensor,
        FLAT_AND_GASKET,
        SENSOR,
        YES_NO,
        "Taken as having one: sensor-safe silicone only.",
    )
    .unless(p::oxygen_sensor),
    row(
        Field::OxygenSensor,
        EXHAUST,
        SENSOR,
        YES_NO,
        "Taken as having one: only a paste whose label spares it.",
    ),
    row(
        Field::OilWays,
        FLAT,
        OIL_WAYS,
        YES_NO,
        "Taken as close to oil ways or bearings: a thin film, kept away from them.",
    )
    .unless(p::oil_ways),
    row(
        Field::OilWays,
        BORE,
        OIL_WAYS,
        YES_NO,
        "Taken as close to oil ways or bearings: a thin film, kept away from them.",
    )
    .unless(p::bore_unfit),
];
