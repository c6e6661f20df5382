//! The tiles of each question; for a number, the bands they stand for.

use super::answers::{Apart, Face, Fluid, Held, Hole, ManualWord, Outside, Partner, PlugSeal};
use super::choice::{Choice, DONT_KNOW};

/// The tiles of a question.
pub(super) struct Tiles {
    /// In the order shown; "don't know" last.
    pub(super) choices: &'static [Choice],
    /// For a number: what each tile but the last stands for.
    pub(super) numbers: &'static [f64],
}

impl Tiles {
    const fn of(choices: &'static [Choice]) -> Self {
        Self {
            choices,
            numbers: &[],
        }
    }

    const fn bands(choices: &'static [Choice], numbers: &'static [f64]) -> Self {
        Self { choices, numbers }
    }
}

const UNKNOWN: Choice = Choice {
    id: DONT_KNOW,
    words: "Don't know",
};
pub(super) const YES_NO: Tiles = Tiles::of(&[
    Choice {
        id: "yes",
        words: "Yes",
    },
    Choice {
        id: "no",
        words: "No",
    },
    UNKNOWN,
]);

pub(super) const MANUAL_THREAD: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::LockLow.choice(),
    ManualWord::LockMedium.choice(),
    ManualWord::LockHigh.choice(),
    ManualWord::ThreadSealant.choice(),
    ManualWord::Oil.choice(),
    ManualWord::Grease.choice(),
    ManualWord::AntiSeize.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_PLUG: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::ThreadSealant.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_FACE: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::AnaerobicSealant.choice(),
    ManualWord::Silicone.choice(),
    ManualWord::LiquidGasket.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_GASKET: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::Silicone.choice(),
    ManualWord::LiquidGasket.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_BORE: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::Retaining.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_SEAL: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::LiquidGasket.choice(),
    ManualWord::Retaining.choice(),
    ManualWord::Grease.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_CORE_PLUG: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::Retaining.choice(),
    ManualWord::LiquidGasket.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_RING: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::Oil.choice(),
    ManualWord::Grease.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const MANUAL_ANTI_SEIZE: Tiles = Tiles::of(&[
    ManualWord::NotStated.choice(),
    ManualWord::AntiSeize.choice(),
    ManualWord::Dry.choice(),
    UNKNOWN,
]);
pub(super) const FACES: Tiles = Tiles::of(&[
    Face::BrassOrCopper.choice(),
    Face::SteelOrIron.choice(),
    Face::CastAluminium.choice(),
    Face::Stainless.choice(),
    Face::Plated.choice(),
    Face::Thermoplastic.choice(),
    UNKNOWN,
]);
pub(super) const HOLES: Tiles = Tiles::of(&[
    Hole::Blind.choice(),
    Hole::Through.choice(),
    Hole::ThroughToFluid.choice(),
    UNKNOWN,
]);
pub(super) const APARTS: Tiles = Tiles::of(&[
    Apart::Often.choice(),
    Apart::Service.choice(),
    Apart::Never.choice(),
    UNKNOWN,
]);
pub(super) const SEALS: Tiles = Tiles::of(&[
    PlugSeal::Taper.choice(),
    PlugSeal::Parallel.choice(),
    PlugSeal::Washer.choice(),
    PlugSeal::Ring.choice(),
    PlugSeal::Cone.choice(),
    UNKNOWN,
]);
pub(super) const SPARK_SEALS: Tiles =
    Tiles::of(&[PlugSeal::Washer.choice(), PlugSeal::Cone.choice(), UNKNOWN]);
pub(super) const PARTNERS: Tiles = Tiles::of(&[
    Partner::Stainless.choice(),
    Partner::Aluminium.choice(),
    Partner::Other.choice(),
    UNKNOWN,
]);
pub(super) const HELDS: Tiles = Tiles::of(&[
    Held::Race.choice(),
    Held::OnShaft.choice(),
    Held::Bush.choice(),
    UNKNOWN,
]);
pub(super) const OUTSIDES: Tiles = Tiles::of(&[
    Outside::Rubber.choice(),
    Outside::Coated.choice(),
    Outside::Metal.choice(),
    UNKNOWN,
]);
pub(super) const FLUIDS: Tiles = Tiles::of(&[
    Fluid::Nothing.choice(),
    Fluid::Oil.choice(),
    Fluid::Coolant.choice(),
    Fluid::Fuel.choice(),
    UNKNOWN,
]);

// Bands of a number: a tile each, and the number that the tile stands for. All but the last hold
// everything up to that number; the last holds the rest.
pub(super) const THREADS: Tiles = Tiles::bands(
    &[
        Choice {
            id: "to_m5",
            words: "M5 or smaller",
        },
        Choice {
            id: "to_m6",
            words: "M6",
        },
        Choice {
            id: "to_m8",
            words: "M8",
        },
        Choice {
            id: "to_m12",
            words: "M10 or M12",
        },
        Choice {
            id: "to_m20",
            words: "M14 to M20",
        },
        Choice {
            id: "over_m20",
            words: "Over M20",
        },
        UNKNOWN,
    ],
    &[5.0, 6.0, 8.0, 12.0, 20.0, 24.0],
);
pub(super) const GAPS: Tiles = Tiles::bands(
    &[
        Choice {
            id: "to_0_1",
            words: "Up to 0.1 mm",
        },
        Choice {
            id: "to_0_25",
            words: "Up to 0.25 mm",
        },
        Choice {
            id: "to_3",
            words: "Up to 3 mm",
        },
        Choice {
            id: "over_3",
            words: "More than 3 mm",
        },
        UNKNOWN,
    ],
    &[0.1, 0.25, 3.0, 6.0],
);
pub(super) const BORE_GAPS: Tiles = Tiles::bands(
    &[
        Choice {
            id: "press",
            words: "None: it presses in",
        },
        Choice {
            id: "to_0_05",
            words: "Slides in, up to 0.05 mm",
        },
        Choice {
            id: "to_0_1",
            words: "Slides in, up to 0.1 mm",
        },
        Choice {
            id: "to_0_13",
            words: "Loose, up to 0.13 mm",
        },
        Choice {
            id: "to_0_25",
            words: "Loose, up to 0.25 mm",
        },
        Choice {
            id: "over_0_25",
            words: "More than 0.25 mm",
        },
        UNKNOWN,
    ],
    &[0.0, 0.05, 0.1, 0.13, 0.25, 0.5],
);
pub(super) const HEATS: Tiles = Tiles::bands(
    &[
        Choice {
            id: "to_150",
            words: "Up to 150 °C",
        },
        Choice {
            id: "to_230",
            words: "Up to 230 °C",
        },
        Choice {
            id: "over_230",
            words: "Hotter",
        },
        UNKNOWN,
    ],
    &[150.0, 230.0, 300.0],
);
