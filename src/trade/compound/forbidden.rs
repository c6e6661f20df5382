//! Pairs of compound and joint that are wrong whatever else is true: no rule may answer with one, and a
//! bottle that makes one is refused.

use super::limits::{
    ANAEROBIC_GAP_MM, BOLTS, FACES_AND_GASKET, HOTTEST_CELSIUS, WHISKER, bolt, bore, gap_within, lock_named,
    off_centre, shears, silent,
};
use super::{CompoundClass, Family};
use crate::trade::application::{Application, Fluid, JointKind, Known, ManualWord, Outside, PlugSeal};

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
    !matches!(class, CompoundClass::LightOil | CompoundClass::Grease)
}

fn cures(class: CompoundClass) -> bool {
    class.family() != Family::NonCuring
}

fn not_anti_seize(class: CompoundClass) -> bool {
    class != CompoundClass::AntiSeize
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
        reason: "An O-ring gets no sealant, only light oil or grease.",
    },
    Forbidden {
        id: "sealant-on-washer",
        class: not_oil,
        joint: |j| j.kind == JointKind::BondedOrCrushWasher || j.seal == Some(PlugSeal::Washer),
        reason: "A crush or bonded washer gets no sealant, only light oil or grease.",
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
        joint: |j| j.is(BOLTS) && shears(j),
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
        class: cures,
        joint: |j| j.celsius > HOTTEST_CELSIUS + WHISKER,
        reason: "The joint gets hotter than the compound stands.",
    },
    Forbidden {
        id: "high-in-aluminium",
        class: |class| class == CompoundClass::ThreadlockHigh,
        joint: |j| bolt(j) && j.may_be_aluminium() && !lock_named(j),
        reason: "The heat that takes high strength apart takes cast aluminium's temper.",
    },
    Forbidden {
        id: "locker-beside-lock",
        class: CompoundClass::locks_threads,
        joint: |j| bolt(j) && j.locked,
        reason: "Not beside a lock plate, wire, pin or self-locking nut.",
    },
    Forbidden {
        id: "wet-near-plastic-part",
        class: anaerobic,
        joint: |j| bolt(j) && j.plastic_part && silent(j),
        reason: "Wet compound cracks the plastic part beside the thread.",
    },
    Forbidden {
        id: "paste-on-shaken",
        class: |class| matches!(class, CompoundClass::AntiSeize | CompoundClass::Grease),
        joint: |j| bolt(j) && silent(j) && j.vibration && !j.locked,
        reason: "A greased thread that is shaken works loose.",
    },
    Forbidden {
        id: "sealant-on-cone",
        class: any,
        joint: |j| j.kind == JointKind::PlugOrPipeThread && j.seal == Some(PlugSeal::Cone),
        reason: "A cone seals clean and dry.",
    },
    Forbidden {
        id: "oil-on-spark-plug",
        class: any,
        joint: |j| j.kind == JointKind::SparkPlug && j.manual != ManualWord::AntiSeize,
        reason: "A spark plug goes in clean and dry.",
    },
    Forbidden {
        id: "other-than-paste-on-hot",
        class: not_anti_seize,
        joint: |j| j.is(&[JointKind::SparkPlug, JointKind::Exhaust]),
        reason: "It burns or lets go in such heat; at most anti-seize goes on.",
    },
    Forbidden {
        id: "anything-on-taper",
        class: any,
        joint: |j| j.kind == JointKind::TaperSeat && silent(j),
        reason: "A taper holds by clean, dry metal.",
    },
    Forbidden {
        id: "anything-soft-in-bore",
        class: |class| !cures(class),
        joint: |j| j.is(&[JointKind::Cylindrical, JointKind::CorePlug, JointKind::TaperSeat]),
        reason: "What never sets lets the part turn or creep.",
    },
    Forbidden {
        id: "retaining-off-centre",
        class: |class| class == CompoundClass::RetainingCompound,
        joint: |j| bore(j) && silent(j) && off_centre(j),
        reason: "A bearing or gear would sit off centre: 0.1 mm on the diameter at most.",
    },
    Forbidden {
        id: "loose-core-plug",
        class: any,
        joint: |j| j.kind == JointKind::CorePlug && !gap_within(j, 0.0),
        reason: "A core plug that slides in comes out under pressure.",
    },
    Forbidden {
        id: "sealant-on-rubber-seal",
        class: cures,
        joint: |j| {
            j.kind == JointKind::ShaftSeal && matches!(j.outside, Some(Outside::Rubber | Outside::Coated))
        },
        reason: "A seal with rubber or a coating outside goes in dry.",
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
