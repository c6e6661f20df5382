//! Faces and gaskets.

use super::Rule;
use crate::trade::application::JointKind::CaseHalves;
use crate::trade::application::{Fluid, ManualWord};
use crate::trade::compound::CompoundClass::{
    self, AnaerobicFlange, SemiDryingGasket, SiliconeNeutral, SiliconeSensorSafe,
};
use crate::trade::compound::limits::*;

const COVER_NEEDS_GAP_FILLER: (CompoundClass, &str) = (
    AnaerobicFlange,
    "It cures only in a thin film between stiff metal faces.",
);

/// By the manual’s word, then without it.
pub(super) static FACE: &[Rule] = &[
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
        when: |j| faces(j) && named(j, ManualWord::AnaerobicSealant) && !gap_within(j, ANAEROBIC_GAP_MM),
        class: None,
        reason: "The manual names an anaerobic sealant, which does not suit a gap over 0.25 mm. Check the page and the gap.",
        not: &[(AnaerobicFlange, "It does not cure across a wide gap.")],
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
