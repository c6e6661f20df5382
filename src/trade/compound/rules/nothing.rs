//! What nothing may go on, however cool it stays: the manual’s word, coatings, plastics, what seals by itself.

use super::Rule;
use crate::trade::application::JointKind::{CorePlug, Exhaust, HoseSpigot, TaperSeat};
use crate::trade::application::{ManualWord, Outside, PlugSeal};
use crate::trade::compound::CompoundClass::{
    self, AnaerobicPipe, LightOil, RetainingCompound, SemiDryingGasket, SiliconeNeutral, ThreadlockMedium,
};
use crate::trade::compound::limits::*;

const PLASTIC_CRACKS: (CompoundClass, &str) = (ThreadlockMedium, "It cracks many plastics.");

/// Whatever else is true.
pub(super) static NOTHING: &[Rule] = &[
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
        id: "manual-dry",
        when: |j| named(j, ManualWord::Dry),
        class: None,
        reason: "The manual wants it dry, and the manual comes first.",
        not: &[],
    },
    Rule {
        id: "precoated",
        when: |j| (j.is(THREADS) || j.is(&[Exhaust])) && j.precoated,
        class: None,
        reason: "The thread is coated at the factory; liquid on top spoils the coating. Used once, the fastener is replaced.",
        not: &[(ThreadlockMedium, "It would soften or lift the factory coating.")],
    },
    Rule {
        id: "core-plug-coated",
        when: |j| j.is(&[CorePlug]) && j.precoated,
        class: None,
        reason: "Its rim is coated at the factory; the coating is its sealant, and liquid on top spoils it.",
        not: &[(RetainingCompound, "It would soften or lift the factory coating.")],
    },
    Rule {
        id: "plug-conflict",
        when: |j| {
            plug(j)
                && named(j, ManualWord::ThreadSealant)
                && matches!(j.seal, Some(PlugSeal::Washer | PlugSeal::Ring | PlugSeal::Cone))
        },
        class: None,
        reason: "The manual names a thread sealant, and a washer, ring or cone seals the plug: check the page before anything goes on.",
        not: &[(AnaerobicPipe, "Beside a washer, ring or cone it does harm.")],
    },
    Rule {
        id: "plug-cone",
        when: |j| plug(j) && j.seal == Some(PlugSeal::Cone),
        class: None,
        reason: "The cone is the seal, metal on metal: clean, dry and without a nick. Sealant keeps the cones apart, and its crumbs go with the fluid.",
        not: &[(
            AnaerobicPipe,
            "On a cone it keeps the metal apart and does not seal the thread that needs no seal.",
        )],
    },
    Rule {
        id: "plug-find-out",
        when: |j| plug(j) && j.seal.is_none() && !named(j, ManualWord::ThreadSealant),
        class: None,
        reason: "Find out what makes it tight first: a tapered thread takes sealant, a washer or ring takes none.",
        not: &[(AnaerobicPipe, "Wrong on a plug that seals by a washer or ring.")],
    },
    Rule {
        id: "thread-plastic-soft",
        when: |j| {
            bolt(j)
                && j.plastic()
                && matches!(
                    j.manual,
                    ManualWord::Oil | ManualWord::Grease | ManualWord::AntiSeize
                )
        },
        class: None,
        reason: "The manual names oil, grease or paste and a thread is plastic: many of them attack plastic. Check the page and which it allows.",
        not: &[(LightOil, "It may soften or crack the plastic.")],
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
        id: "seal-conflict",
        when: |j| seal_named(j) && matches!(j.outside, Some(Outside::Rubber | Outside::Coated)),
        class: None,
        reason: "The manual names a compound, and the seal’s outside is rubber or coated, which seals by itself: check the page and the part.",
        not: &[
            (
                SemiDryingGasket,
                "Its solvent attacks rubber and lifts the coating.",
            ),
            (RetainingCompound, "It swells rubber and does not cure on it."),
        ],
    },
    Rule {
        id: "seal-plastic",
        when: |j| seal(j) && !seal_dry(j) && j.manual != ManualWord::Grease && j.plastic(),
        class: None,
        reason: "Anaerobic compounds and solvents crack many plastics. A seal in a plastic bore holds by its fit alone.",
        not: &[(SemiDryingGasket, "Its solvent attacks many plastics.")],
    },
    Rule {
        id: "core-plug-plastic",
        when: |j| j.is(&[CorePlug]) && j.plastic(),
        class: None,
        reason: "A core plug belongs in metal; compounds for it crack many plastics. Check what it is.",
        not: &[(RetainingCompound, "It cracks many plastics.")],
    },
    Rule {
        id: "taper-plastic",
        when: |j| j.is(&[TaperSeat]) && named(j, ManualWord::Retaining) && j.plastic(),
        class: None,
        reason: "The manual names a retaining compound, which cracks many plastics. Check the page.",
        not: &[(RetainingCompound, "It cracks many plastics.")],
    },
];
