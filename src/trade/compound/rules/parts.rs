//! Plugs and pipe threads; parts that slide or press together.

use super::Rule;
use crate::trade::application::JointKind::{CorePlug, TaperSeat};
use crate::trade::application::{Apart, ManualWord};
use crate::trade::compound::CompoundClass::{
    AnaerobicPipe, AntiSeize, PtfePaste, RetainingCompound, SemiDryingGasket, SiliconeNeutral, ThreadlockHigh,
};
use crate::trade::compound::limits::*;

/// Plugs, then bores.
pub(super) static PARTS: &[Rule] = &[
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
    Rule {
        id: "core-plug-manual-gasket",
        when: |j| j.is(&[CorePlug]) && named(j, ManualWord::LiquidGasket),
        class: Some(SemiDryingGasket),
        reason: "The manual names a liquid gasket for the plug.",
        not: &[(RetainingCompound, "The manual names a liquid gasket.")],
    },
    Rule {
        id: "core-plug",
        when: |j| j.is(&[CorePlug]),
        class: Some(RetainingCompound),
        reason: "The press holds it; a film that sets fills the scores of the bore, so that it does not weep.",
        not: &[
            (SiliconeNeutral, "The plug scrapes it off on its way in."),
            (
                ThreadlockHigh,
                "Made for threads; the label’s figures do not hold for a bore.",
            ),
        ],
    },
    Rule {
        id: "seal-manual-gasket",
        when: |j| seal(j) && named(j, ManualWord::LiquidGasket),
        class: Some(SemiDryingGasket),
        reason: "The manual names a liquid gasket for the seal’s outside.",
        not: &[(RetainingCompound, "The manual names a liquid gasket.")],
    },
    Rule {
        id: "seal-manual-retaining",
        when: |j| seal(j) && named(j, ManualWord::Retaining),
        class: Some(RetainingCompound),
        reason: "The manual names a retaining compound for the seal’s outside.",
        not: &[(SemiDryingGasket, "The manual names a compound that sets.")],
    },
    Rule {
        id: "seal-slides",
        when: |j| seal(j) && !gap_within(j, 0.0),
        class: Some(RetainingCompound),
        reason: "A metal seal that slides in by hand would turn and weep: the compound holds it and fills the gap.",
        not: &[(SemiDryingGasket, "It does not hold a seal that slides in.")],
    },
    Rule {
        id: "seal-metal",
        when: |j| seal(j),
        class: Some(SemiDryingGasket),
        reason: "Bare metal in a metal bore weeps along its scores: a thin film on its outside stops that.",
        not: &[
            (SiliconeNeutral, "The seal scrapes it off, on to its lip."),
            (RetainingCompound, "Needed only where it slides in."),
        ],
    },
    Rule {
        id: "taper-manual",
        when: |j| j.is(&[TaperSeat]),
        class: Some(RetainingCompound),
        reason: "The manual names a retaining compound on the taper.",
        not: &[(AntiSeize, "A greased taper climbs, and does not hold.")],
    },
];
