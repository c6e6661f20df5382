//! The rules, as one table. The first row that fits a joint answers it; to add a rule, add a row.

use super::CompoundClass::{
    self, AnaerobicFlange, AnaerobicPipe, LightOil, PtfePaste, RetainingCompound, SemiDryingGasket,
    SiliconeNeutral, SiliconeSensorSafe, ThreadlockHigh, ThreadlockLow, ThreadlockMedium, ThreadlockWicking,
};
use super::limits::*;
use crate::trade::application::JointKind::{
    BondedOrCrushWasher, CaseHalves, Gasket, HoseSpigot, ORing, ThreadedFastener,
};
use crate::trade::application::{Apart, Fluid, Hole, Known, ManualWord, PlugSeal};

/// A rule: when it fits, what it answers and why.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name; kept in the record.
    pub id: &'static str,
    when: fn(&Known) -> bool,
    /// What goes on; `None` is "nothing, because".
    pub class: Option<CompoundClass>,
    /// Why.
    pub reason: &'static str,
    /// The neighbours and why not them.
    pub not: &'static [(CompoundClass, &'static str)],
}

impl Rule {
    /// Whether the rule fits.
    pub(crate) fn fits(&self, joint: &Known) -> bool {
        (self.when)(joint)
    }

    /// A row that fits everything and answers "nothing".
    pub(super) const fn nothing(id: &'static str, reason: &'static str) -> Self {
        Self {
            id,
            when: |_| true,
            class: None,
            reason,
            not: &[],
        }
    }
}

const COVER_NEEDS_GAP_FILLER: (CompoundClass, &str) = (
    AnaerobicFlange,
    "It cures only in a thin film between stiff metal faces.",
);
const PLASTIC_CRACKS: (CompoundClass, &str) = (ThreadlockMedium, "It cracks many plastics.");
const LOCKS_NOT_SEALS: (CompoundClass, &str) =
    (AnaerobicPipe, "It seals a thread; it is not made to hold one.");

/// Every rule; the order is the precedence.
pub static RULES: &[Rule] = &[
    // What nothing may go on, whatever else is true.
    Rule {
        id: "manual-dry",
        when: |j| named(j, ManualWord::Dry),
        class: None,
        reason: "The manual wants it dry, and the manual comes first.",
        not: &[],
    },
    Rule {
        id: "precoated",
        when: |j| j.is(THREADS) && j.precoated,
        class: None,
        reason: "The thread is coated at the factory; liquid on top spoils the coating. Used once, the fastener is replaced.",
        not: &[(ThreadlockMedium, "It would soften or lift the factory coating.")],
    },
    Rule {
        id: "o-ring",
        when: |j| j.is(&[ORing]),
        class: Some(LightOil),
        reason: "An O-ring seals by its own squeeze; a film of the oil it will live in lets it seat without a twist.",
        not: &[
            (
                SiliconeNeutral,
                "Sealant keeps the ring from moving and tears it at the next opening.",
            ),
            (
                AnaerobicFlange,
                "It attacks some rubbers and does not cure on them.",
            ),
        ],
    },
    Rule {
        id: "plug-conflict",
        when: |j| {
            plug(j)
                && named(j, ManualWord::ThreadSealant)
                && matches!(j.seal, Some(PlugSeal::Washer | PlugSeal::Ring))
        },
        class: None,
        reason: "The manual names a thread sealant, and a washer or ring seals the plug: check the page before anything goes on.",
        not: &[(AnaerobicPipe, "Beside a washer or ring it does harm.")],
    },
    Rule {
        id: "washer",
        when: |j| j.is(&[BondedOrCrushWasher]) || (plug(j) && j.seal == Some(PlugSeal::Washer)),
        class: Some(LightOil),
        reason: "The washer is the seal: new, clean, with a trace of oil on its faces.",
        not: &[
            (
                AnaerobicPipe,
                "Sealant under or beside the washer keeps it from crushing evenly.",
            ),
            (
                SiliconeNeutral,
                "Silicone squeezes out and lets the washer creep.",
            ),
        ],
    },
    Rule {
        id: "plug-ring",
        when: |j| plug(j) && j.seal == Some(PlugSeal::Ring),
        class: Some(LightOil),
        reason: "The O-ring is the seal; a film of oil lets it seat.",
        not: &[(
            AnaerobicPipe,
            "Sealant on the thread reaches the ring and is not needed.",
        )],
    },
    Rule {
        id: "hose",
        when: |j| j.is(&[HoseSpigot]),
        class: None,
        reason: "A hose seals dry under its clamp; sealant makes it slip off and hard to remove.",
        not: &[(
            SiliconeNeutral,
            "It acts as grease until it cures and as glue after.",
        )],
    },
    Rule {
        id: "thread-plastic",
        when: |j| bolt(j) && j.plastic(),
        class: None,
        reason: "Anaerobic compounds crack many plastics, and do not cure without metal. Lock it another way.",
        not: &[PLASTIC_CRACKS],
    },
    Rule {
        id: "bore-plastic",
        when: |j| bore(j) && j.plastic(),
        class: None,
        reason: "Anaerobic compounds crack many plastics. The fit or a ring has to hold it.",
        not: &[(RetainingCompound, "It cracks many plastics.")],
    },
    Rule {
        id: "thread-take-out",
        when: |j| {
            bolt(j)
                && j.assembled
                && (!named(j, ManualWord::NotStated) || j.thread_mm > WICKING_TO_MM + WHISKER)
        },
        class: None,
        reason: "It is together already, and what it needs goes on a clean, dry thread: take it out first.",
        not: &[(
            ThreadlockWicking,
            "It creeps only into threads to about M12, and is not what the manual names.",
        )],
    },
    Rule {
        id: "thread-manual-oil",
        when: |j| bolt(j) && named(j, ManualWord::Oil),
        class: Some(LightOil),
        reason: "The manual wants the thread oiled; its torque counts on that.",
        not: &[(
            ThreadlockMedium,
            "It does not hold on an oiled thread, and the manual names oil.",
        )],
    },
    Rule {
        id: "held-conflict",
        when: |j| bolt(j) && j.locked && !named(j, ManualWord::NotStated),
        class: None,
        reason: "The manual names a compound and the fastener is locked by a part as well: check the page before anything goes on.",
        not: &[(
            ThreadlockMedium,
            "Not beside lock wire or lock plates, unless the manual says both.",
        )],
    },
    Rule {
        id: "held-otherwise",
        when: |j| bolt(j) && j.locked,
        class: None,
        reason: "It is locked by its plate, wire, pin or nut; one lock, properly fitted, is enough.",
        not: &[(ThreadlockMedium, "Not beside lock wire or lock plates.")],
    },
    Rule {
        id: "too-hot",
        when: |j| j.celsius > HOTTEST_CELSIUS + WHISKER,
        class: None,
        reason: "Hotter than these compounds stand. Use the lock or gasket the manual names.",
        not: &[
            (ThreadlockHigh, "It lets go above about 230 °C."),
            (SiliconeNeutral, "It does not last above about 230 °C."),
        ],
    },
    // Threads: together already, or by the manual's word.
    Rule {
        id: "thread-wicking",
        when: |j| bolt(j) && j.assembled,
        class: Some(ThreadlockWicking),
        reason: "It is together and stays together: a thin grade creeps in from outside.",
        not: &[
            (ThreadlockMedium, "Too thick to creep into a closed thread."),
            (ThreadlockHigh, "Too thick to creep into a closed thread."),
        ],
    },
    Rule {
        id: "thread-high-conflict",
        when: |j| {
            bolt(j)
                && named(j, ManualWord::LockHigh)
                && j.thread_mm < HIGH_FROM_MM - WHISKER
                && j.apart != Apart::Never
        },
        class: None,
        reason: "The manual's word and the other answers disagree: high strength shears a thread under M10 when it comes apart. Check the page and the thread before anything goes on.",
        not: &[(ThreadlockHigh, "Taking it out would shear the fastener.")],
    },
    Rule {
        id: "thread-manual-high",
        when: |j| bolt(j) && named(j, ManualWord::LockHigh),
        class: Some(ThreadlockHigh),
        reason: "The manual names high strength.",
        not: &[(ThreadlockMedium, "Weaker than the manual asks for.")],
    },
    Rule {
        id: "thread-manual-medium",
        when: |j| bolt(j) && named(j, ManualWord::LockMedium),
        class: Some(ThreadlockMedium),
        reason: "The manual names medium strength.",
        not: &[
            (
                ThreadlockHigh,
                "Stronger than the manual asks for: it needs heat to come apart.",
            ),
            (ThreadlockLow, "Weaker than the manual asks for."),
        ],
    },
    Rule {
        id: "thread-manual-low",
        when: |j| bolt(j) && named(j, ManualWord::LockLow),
        class: Some(ThreadlockLow),
        reason: "The manual names low strength.",
        not: &[(ThreadlockMedium, "Stronger than the manual asks for.")],
    },
    Rule {
        id: "thread-manual-sealant",
        when: |j| bolt(j) && named(j, ManualWord::ThreadSealant),
        class: Some(AnaerobicPipe),
        reason: "The manual names a thread sealant: the hole reaches oil or coolant.",
        not: &[(ThreadlockMedium, "It locks more than the manual asks for.")],
    },
    // Threads of which the manual says nothing.
    Rule {
        id: "thread-clamp-holds",
        when: |j| {
            j.is(&[ThreadedFastener]) && !j.vibration && matches!(j.hole, Some(Hole::Blind | Hole::Through))
        },
        class: None,
        reason: "The manual names nothing and nothing shakes it: the right torque holds it.",
        not: &[(
            ThreadlockMedium,
            "Not needed, and it changes the friction under the torque.",
        )],
    },
    Rule {
        id: "thread-never-large",
        when: |j| bolt(j) && j.apart == Apart::Never && j.thread_mm > HIGH_FROM_MM - WHISKER,
        class: Some(ThreadlockHigh),
        reason: "A large thread that stays for good.",
        not: &[
            (ThreadlockMedium, "Holds less, and coming apart is not asked for."),
            LOCKS_NOT_SEALS,
        ],
    },
    Rule {
        id: "thread-small",
        when: |j| {
            bolt(j)
                && ((j.thread_mm < LOW_TO_MM - WHISKER && j.apart != Apart::Never)
                    || (j.apart == Apart::Often && j.thread_mm < LOW_TO_MM + WHISKER))
        },
        class: Some(ThreadlockLow),
        reason: "A small thread, or one that is often adjusted: it must come loose without shearing.",
        not: &[
            (ThreadlockMedium, "It can shear a small fastener at removal."),
            (ThreadlockHigh, "It shears a small fastener at removal."),
        ],
    },
    Rule {
        id: "thread-medium",
        when: |j| bolt(j) && j.thread_mm < MEDIUM_TO_MM + WHISKER,
        class: Some(ThreadlockMedium),
        reason: "Holds against shaking and still comes apart with hand tools.",
        not: &[
            (ThreadlockLow, "For threads to about M6 that are often adjusted."),
            (
                ThreadlockHigh,
                "It needs 230 to 320 °C to come apart, which oil, seals and paint may not stand.",
            ),
            LOCKS_NOT_SEALS,
        ],
    },
    Rule {
        id: "thread-medium-large",
        when: bolt,
        class: Some(ThreadlockMedium),
        reason: "It has to come apart again. Over about M20 ask the label whether the grade fills the thread.",
        not: &[(
            ThreadlockHigh,
            "A thread this large, locked hard, needs much heat to come apart.",
        )],
    },
    // Plugs, fittings and pipe threads.
    Rule {
        id: "plug-find-out",
        when: |j| plug(j) && j.seal.is_none() && !named(j, ManualWord::ThreadSealant),
        class: None,
        reason: "Find out what makes it tight first: a tapered thread takes sealant, a washer or ring takes none.",
        not: &[(AnaerobicPipe, "Wrong on a plug that seals by a washer or ring.")],
    },
    Rule {
        id: "plug-plastic",
        when: |j| plug(j) && j.plastic(),
        class: Some(PtfePaste),
        reason: "Of the thread sealants only a soft paste leaves plastic whole; its label must allow that plastic.",
        not: &[(AnaerobicPipe, "It cracks many plastics.")],
    },
    Rule {
        id: "plug-often",
        when: |j| plug(j) && j.apart == Apart::Often && !named(j, ManualWord::ThreadSealant),
        class: Some(PtfePaste),
        reason: "It comes apart often: a paste that stays soft lets it.",
        not: &[(
            AnaerobicPipe,
            "It sets, and has to be cleaned off at every opening.",
        )],
    },
    Rule {
        id: "plug-thread",
        when: plug,
        class: Some(AnaerobicPipe),
        reason: "The thread itself has to seal: an anaerobic sealant fills it and leaves no shreds.",
        not: &[
            (
                PtfePaste,
                "Second best: it never sets, so it can creep under pressure.",
            ),
            (ThreadlockHigh, "It locks; a plug has to come out again."),
            (
                SiliconeNeutral,
                "It squeezes out of a thread and its crumbs wander.",
            ),
        ],
    },
    // Parts that slide or press together.
    Rule {
        id: "bore-manual",
        when: |j| bore(j) && named(j, ManualWord::Retaining) && gap_within(j, ANAEROBIC_GAP_MM),
        class: Some(RetainingCompound),
        reason: "The manual names a retaining compound.",
        not: &[(
            ThreadlockHigh,
            "Made for threads; the label's figures do not hold for a bore.",
        )],
    },
    Rule {
        id: "bore-measure",
        when: |j| bore(j) && j.gap_mm.is_none(),
        class: None,
        reason: "Measure the fit first: a press fit needs no compound, a worn bore more than compound.",
        not: &[(RetainingCompound, "It holds only in a small, known gap.")],
    },
    Rule {
        id: "bore-press",
        when: |j| bore(j) && gap_within(j, 0.0),
        class: None,
        reason: "A press fit holds by itself.",
        not: &[(
            RetainingCompound,
            "Not needed, and it can be pushed into the bearing.",
        )],
    },
    Rule {
        id: "bore-worn",
        when: |j| bore(j) && !gap_within(j, ANAEROBIC_GAP_MM),
        class: None,
        reason: "Too loose for a compound to hold or to centre: the bore needs a repair.",
        not: &[(RetainingCompound, "Trusted to about 0.25 mm on the diameter.")],
    },
    Rule {
        id: "bore-often",
        when: |j| bore(j) && j.apart == Apart::Often,
        class: None,
        reason: "It comes apart often, and a retaining compound needs heat or a press to let go: a ring or plate has to hold it.",
        not: &[(RetainingCompound, "It needs heat or a press to come apart.")],
    },
    Rule {
        id: "bore-slide",
        when: bore,
        class: Some(RetainingCompound),
        reason: "It slides in and must not turn or creep: the compound fills the gap and holds.",
        not: &[
            (
                ThreadlockHigh,
                "Made for threads; the label's figures do not hold for a bore.",
            ),
            (SiliconeNeutral, "Too soft to hold a part in place."),
        ],
    },
    // Faces and gaskets, by the manual's word.
    Rule {
        id: "gap-too-wide",
        when: |j| faces(j) && !gap_within(j, SILICONE_GAP_MM),
        class: None,
        reason: "Wider than any sealant bridges for long: find out why the faces do not meet, or fit a gasket.",
        not: &[(SiliconeNeutral, "For gaps of a few millimetres at most.")],
    },
    Rule {
        id: "manual-silicone-fuel",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::Silicone) && j.fluid == Fluid::Fuel,
        class: None,
        reason: "The manual names silicone and fuel wets the joint, or may: silicone swells in fuel. Check the page and what wets it.",
        not: &[(SiliconeNeutral, "It swells and lets go in fuel.")],
    },
    Rule {
        id: "manual-silicone-sensor",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::Silicone) && j.oxygen_sensor,
        class: Some(SiliconeSensorSafe),
        reason: "The manual names silicone, and the vapour of plain grades spoils an oxygen sensor.",
        not: &[(SiliconeNeutral, "Its vapour can spoil the oxygen sensor.")],
    },
    Rule {
        id: "manual-silicone",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::Silicone),
        class: Some(SiliconeNeutral),
        reason: "The manual names silicone; neutral cure does not corrode metal.",
        not: &[(AnaerobicFlange, "The manual names silicone.")],
    },
    Rule {
        id: "manual-solvent-plastic",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::LiquidGasket) && j.plastic(),
        class: None,
        reason: "The manual names a liquid gasket and a face is plastic: its solvent can attack that. Check the page.",
        not: &[(SemiDryingGasket, "Its solvent attacks many plastics.")],
    },
    Rule {
        id: "manual-liquid-gasket",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::LiquidGasket),
        class: Some(SemiDryingGasket),
        reason: "The manual names a liquid gasket.",
        not: &[(
            SiliconeNeutral,
            "The manual names a liquid gasket, which makes a thinner film.",
        )],
    },
    Rule {
        id: "manual-anaerobic-unfit",
        when: |j| {
            faces(j)
                && named(j, ManualWord::AnaerobicSealant)
                && (j.plastic() || !gap_within(j, ANAEROBIC_GAP_MM))
        },
        class: None,
        reason: "The manual names an anaerobic sealant, which does not suit plastic or a gap over 0.25 mm. Check the page and the gap.",
        not: &[(
            AnaerobicFlange,
            "It cracks plastics and does not cure across a wide gap.",
        )],
    },
    Rule {
        id: "manual-anaerobic",
        when: |j| faces(j) && named(j, ManualWord::AnaerobicSealant),
        class: Some(AnaerobicFlange),
        reason: "The manual names an anaerobic sealant.",
        not: &[(
            SiliconeNeutral,
            "The manual names an anaerobic sealant, which leaves the faces metal to metal.",
        )],
    },
    Rule {
        id: "gasket-dry",
        when: |j| j.is(&[Gasket]),
        class: None,
        reason: "A gasket goes on dry unless the manual names something: sealant lets it slip and squeeze out.",
        not: &[
            (SiliconeNeutral, "It lets the gasket slide out under load."),
            (SemiDryingGasket, "Only where the manual names it."),
        ],
    },
    // Faces of which the manual says nothing.
    Rule {
        id: "faces-machined",
        when: |j| metal_to_metal(j) && gap_within(j, ANAEROBIC_GAP_MM) && !j.plastic(),
        class: Some(AnaerobicFlange),
        reason: "Stiff machined metal faces that meet: it cures in the thin film and keeps them metal to metal; what squeezes inside stays liquid and washes away.",
        not: &[
            (
                SiliconeNeutral,
                "It keeps the faces apart, and its crumbs can block an oil way.",
            ),
            (
                SemiDryingGasket,
                "Needed only where the faces are not flat enough.",
            ),
        ],
    },
    Rule {
        id: "faces-fuel",
        when: |j| faces(j) && j.fluid == Fluid::Fuel,
        class: None,
        reason: "Fuel wets it, or may, and the joint does not suit an anaerobic sealant: fit the fuel-proof gasket the manual names.",
        not: &[
            (SiliconeNeutral, "It swells and lets go in fuel."),
            COVER_NEEDS_GAP_FILLER,
        ],
    },
    Rule {
        id: "case-oil-ways",
        when: |j| j.kind == CaseHalves && j.oil_ways && gap_within(j, ANAEROBIC_GAP_MM) && !j.plastic(),
        class: Some(SemiDryingGasket),
        reason: "Faces that meet, with oil ways close by: a thin film leaves no loose crumbs.",
        not: &[
            (
                SiliconeNeutral,
                "Squeezed-out silicone breaks off and blocks oil ways.",
            ),
            COVER_NEEDS_GAP_FILLER,
        ],
    },
    Rule {
        id: "cover-sensor",
        when: |j| faces(j) && j.oxygen_sensor,
        class: Some(SiliconeSensorSafe),
        reason: "It fills what the faces leave open and gives with them, and its vapour spares the oxygen sensor.",
        not: &[
            (SiliconeNeutral, "Its vapour can spoil the oxygen sensor."),
            COVER_NEEDS_GAP_FILLER,
        ],
    },
    Rule {
        id: "cover",
        when: faces,
        class: Some(SiliconeNeutral),
        reason: "It fills what the faces leave open and gives with them.",
        not: &[
            COVER_NEEDS_GAP_FILLER,
            (SemiDryingGasket, "Its film is too thin for the gap."),
        ],
    },
];
