//! What never sets, and so stands any heat these rules know of: oil, grease, anti-seize.

use super::Rule;
use crate::trade::application::JointKind::{BondedOrCrushWasher, Exhaust, ORing, SparkPlug};
use crate::trade::application::{ManualWord, PlugSeal};
use crate::trade::compound::CompoundClass::{
    AnaerobicFlange, AnaerobicPipe, AntiSeize, Grease, LightOil, RetainingCompound, SemiDryingGasket,
    SiliconeNeutral, ThreadlockHigh, ThreadlockMedium,
};
use crate::trade::compound::limits::*;

/// Oil, grease and anti-seize.
pub(super) static SOFT: &[Rule] = &[
    Rule {
        id: "ring-manual-grease",
        when: |j| j.is(&[ORing, BondedOrCrushWasher]) && named(j, ManualWord::Grease),
        class: Some(Grease),
        reason: "The manual names grease: a film, of a kind that the ring’s rubber stands.",
        not: &[(
            SiliconeNeutral,
            "Sealant keeps the ring from moving and tears it at the next opening.",
        )],
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
        id: "thread-manual-grease",
        when: |j| bolt(j) && named(j, ManualWord::Grease),
        class: Some(Grease),
        reason: "The manual wants the thread greased; its torque counts on that.",
        not: &[(
            ThreadlockMedium,
            "It does not hold on a greased thread, and the manual names grease.",
        )],
    },
    Rule {
        id: "thread-manual-anti-seize",
        when: |j| bolt(j) && named(j, ManualWord::AntiSeize),
        class: Some(AntiSeize),
        reason: "The manual names anti-seize; its torque counts on that.",
        not: &[
            (
                ThreadlockMedium,
                "It does not hold on a greased thread, and the manual names anti-seize.",
            ),
            (Grease, "It burns off where anti-seize stays."),
        ],
    },
    Rule {
        id: "held-galls",
        when: |j| held_dry(j) && j.galls() == Some(true),
        class: Some(AntiSeize),
        reason: "Its plate, wire, pin or nut locks it; stainless seizes on stainless and in aluminium, so it must not run dry.",
        not: &[
            (ThreadlockMedium, "Not beside lock wire or lock plates."),
            (LightOil, "The load squeezes it out of a stainless thread."),
        ],
    },
    Rule {
        id: "seal-manual-grease",
        when: |j| seal(j) && named(j, ManualWord::Grease),
        class: Some(Grease),
        reason: "The manual names grease for the seal.",
        not: &[(SemiDryingGasket, "The manual names grease.")],
    },
    Rule {
        id: "seal-lip",
        when: |j| seal_dry(j),
        class: Some(Grease),
        reason: "Its outside seals by its own squeeze and stays clean and dry; the lip wants grease, so that it does not start dry.",
        not: &[
            (
                SemiDryingGasket,
                "Its solvent attacks rubber, and a coated outside needs none; on bare metal only.",
            ),
            (RetainingCompound, "It swells rubber, and creeps to the lip."),
        ],
    },
    Rule {
        id: "spark-plug-manual",
        when: |j| j.is(&[SparkPlug]) && named(j, ManualWord::AntiSeize),
        class: Some(AntiSeize),
        reason: "The manual names anti-seize: a trace on the thread, and the torque it gives for that.",
        not: &[(LightOil, "It burns to a crust.")],
    },
    Rule {
        id: "exhaust-manual",
        when: |j| j.is(&[Exhaust]) && named(j, ManualWord::AntiSeize),
        class: Some(AntiSeize),
        reason: "The manual names anti-seize: what is hot and rusts has to come apart again.",
        not: &[(ThreadlockHigh, "It lets go above about 230 °C.")],
    },
    Rule {
        id: "exhaust",
        when: |j| j.is(&[Exhaust]),
        class: Some(AntiSeize),
        reason: "What sits on an exhaust runs hot, rusts and seizes: a paste rated for the heat lets it come apart again.",
        not: &[
            (ThreadlockHigh, "It lets go above about 230 °C."),
            (LightOil, "It burns to a crust that binds the thread."),
            (Grease, "It burns to a crust that binds the thread."),
        ],
    },
];
