//! Pairs of compound and joint that are wrong whatever else is true: no rule may answer with one, and a
//! bottle that makes one is refused.

use super::limits::{ANAEROBIC_GAP_MM, BOLTS, FACES_AND_GASKET, HIGH_FROM_MM, HOTTEST_CELSIUS, WHISKER};
use super::{CompoundClass, Family};
use crate::trade::application::{Apart, Application, Fluid, JointKind, Known, ManualWord, PlugSeal};

/// A pair that must not be.
#[derive(Debug, Clone, Copy)]
pub struct Forbidden {
    /// Its name.
    pub id: &'static str,
    class: fn(CompoundClass) -> bool,
    joint: fn(&Known) -> bool,
    /// Why, as a sentence.
    pub reason: &'static str,
}

fn anaerobic(class: CompoundClass) -> bool {
    class.family() == Family::Anaerobic
}

fn silicone(class: CompoundClass) -> bool {
    class.family() == Family::Silicone
}

fn not_oil(class: CompoundClass) -> bool {
    class != CompoundClass::LightOil
}

fn any(_: CompoundClass) -> bool {
    true
}

/// Every pair.
pub static FORBIDDEN: &[Forbidden] = &[
    Forbidden {
        id: "manual-dry",
        class: any,
        joint: |j| j.manual == ManualWord::Dry,
        reason: "The manual wants this joint dry.",
    },
    Forbidden {
        id: "liquid-on-precoated",
        class: any,
        joint: |j| j.precoated,
        reason: "The thread is coated at the factory; no liquid goes on top.",
    },
    Forbidden {
        id: "sealant-on-ring",
        class: not_oil,
        joint: |j| j.kind == JointKind::ORing || j.seal == Some(PlugSeal::Ring),
        reason: "An O-ring gets no sealant, only light oil.",
    },
    Forbidden {
        id: "sealant-on-washer",
        class: not_oil,
        joint: |j| j.kind == JointKind::BondedOrCrushWasher || j.seal == Some(PlugSeal::Washer),
        reason: "A crush or bonded washer gets no sealant, only light oil.",
    },
    Forbidden {
        id: "anything-on-hose",
        class: any,
        joint: |j| j.kind == JointKind::HoseSpigot,
        reason: "A hose seals dry under its clamp.",
    },
    Forbidden {
        id: "silicone-in-fuel",
        class: silicone,
        joint: |j| j.is(FACES_AND_GASKET) && j.fluid == Fluid::Fuel,
        reason: "Silicone swells and lets go in fuel.",
    },
    Forbidden {
        id: "anaerobic-on-plastic",
        class: anaerobic,
        joint: |j| j.plastic(),
        reason: "Anaerobic compounds crack many plastics.",
    },
    Forbidden {
        id: "solvent-on-plastic",
        class: |class| class.family() == Family::SolventDrying,
        joint: |j| j.plastic(),
        reason: "Its solvent attacks many plastics.",
    },
    Forbidden {
        id: "high-on-small",
        class: |class| class == CompoundClass::ThreadlockHigh,
        joint: |j| j.is(BOLTS) && j.thread_mm < HIGH_FROM_MM - WHISKER && j.apart != Apart::Never,
        reason: "High strength shears a fastener under M10 when it comes apart.",
    },
    Forbidden {
        id: "thick-on-assembled",
        class: |class| class != CompoundClass::ThreadlockWicking,
        joint: |j| j.assembled,
        reason: "It does not creep into a thread that is already together.",
    },
    Forbidden {
        id: "plain-silicone-near-sensor",
        class: |class| class == CompoundClass::SiliconeNeutral,
        joint: |j| j.oxygen_sensor && j.is(FACES_AND_GASKET),
        reason: "Its vapour can spoil the oxygen sensor; use a sensor-safe grade.",
    },
    Forbidden {
        id: "anaerobic-over-gap",
        class: |class| {
            matches!(
                class,
                CompoundClass::AnaerobicFlange | CompoundClass::RetainingCompound
            )
        },
        joint: |j| j.gap_mm.is_some_and(|gap_mm| gap_mm > ANAEROBIC_GAP_MM + WHISKER),
        reason: "It does not cure across a gap over 0.25 mm.",
    },
    Forbidden {
        id: "too-hot",
        class: |class| class.family() != Family::NonCuring,
        joint: |j| j.celsius > HOTTEST_CELSIUS + WHISKER,
        reason: "The joint gets hotter than the compound stands.",
    },
];

impl CompoundClass {
    /// Why this class must not go on this joint, if so; an open answer counts the cautious way.
    pub fn refused_for(self, joint: &Application) -> Option<&'static str> {
        let joint = Known::of(joint);
        FORBIDDEN
            .iter()
            .find(|pair| (pair.class)(self) && (pair.joint)(&joint))
            .map(|pair| pair.reason)
    }
}
