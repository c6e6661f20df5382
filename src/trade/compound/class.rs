//! Classes of compound by what they are for, never by a maker's name, number or colour.

use crate::trade::application::ManualWord;
use crate::trade::preload::Condition;
use serde::{Deserialize, Serialize};

/// How a compound hardens, if it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Shut off from air, on metal.
    Anaerobic,
    /// By the moisture of the air, from outside inwards.
    Silicone,
    /// By losing its solvent.
    SolventDrying,
    /// Never.
    NonCuring,
}

/// A class of compound. Threadlockers are told apart by strength and use: the colour of a bottle is a
/// habit of the trade and no standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CompoundClass {
    /// Comes apart with small hand tools; threads to about M6.
    ThreadlockLow,
    /// Comes apart with hand tools; threads to about M20.
    ThreadlockMedium,
    /// Needs local heat to come apart; M10 and up.
    ThreadlockHigh,
    /// Thin; creeps into threads that are already together, to about M12.
    ThreadlockWicking,
    /// Holds bearings, bushes and sleeves that slide in.
    RetainingCompound,
    /// For stiff machined faces, gaps to 0.25 mm.
    AnaerobicFlange,
    /// Neutral-cure silicone, for covers and gaps of millimetres.
    SiliconeNeutral,
    /// The same with little vapour, for engines with an oxygen sensor in the exhaust.
    SiliconeSensorSafe,
    /// Liquid gasket that dries to a tacky film.
    SemiDryingGasket,
    /// Anaerobic sealant for tapered and straight pipe threads.
    AnaerobicPipe,
    /// Paste with PTFE; stays soft.
    PtfePaste,
    /// Clean light oil for rings, washers and lips.
    LightOil,
    /// Grease for the lips of seals and where the manual names it.
    Grease,
    /// Paste of metal or ceramic in grease: keeps hot and galling threads from seizing.
    AntiSeize,
}

impl CompoundClass {
    /// Every class.
    pub const ALL: [Self; 14] = [
        Self::ThreadlockLow,
        Self::ThreadlockMedium,
        Self::ThreadlockHigh,
        Self::ThreadlockWicking,
        Self::RetainingCompound,
        Self::AnaerobicFlange,
        Self::SiliconeNeutral,
        Self::SiliconeSensorSafe,
        Self::SemiDryingGasket,
        Self::AnaerobicPipe,
        Self::PtfePaste,
        Self::LightOil,
        Self::Grease,
        Self::AntiSeize,
    ];

    /// Its name in plain trade words, as it stands in a sentence.
    pub fn name(self) -> &'static str {
        match self {
            Self::ThreadlockLow => "low-strength threadlocker",
            Self::ThreadlockMedium => "medium-strength threadlocker",
            Self::ThreadlockHigh => "high-strength threadlocker",
            Self::ThreadlockWicking => "wicking threadlocker",
            Self::RetainingCompound => "retaining compound",
            Self::AnaerobicFlange => "anaerobic flange sealant",
            Self::SiliconeNeutral => "neutral-cure silicone",
            Self::SiliconeSensorSafe => "sensor-safe neutral-cure silicone",
            Self::SemiDryingGasket => "semi-drying liquid gasket",
            Self::AnaerobicPipe => "anaerobic pipe sealant",
            Self::PtfePaste => "PTFE thread paste",
            Self::LightOil => "light oil",
            Self::Grease => "grease",
            Self::AntiSeize => "anti-seize paste",
        }
    }

    /// How it hardens.
    pub fn family(self) -> Family {
        match self {
            Self::ThreadlockLow
            | Self::ThreadlockMedium
            | Self::ThreadlockHigh
            | Self::ThreadlockWicking
            | Self::RetainingCompound
            | Self::AnaerobicFlange
            | Self::AnaerobicPipe => Family::Anaerobic,
            Self::SiliconeNeutral | Self::SiliconeSensorSafe => Family::Silicone,
            Self::SemiDryingGasket => Family::SolventDrying,
            Self::PtfePaste | Self::LightOil | Self::Grease | Self::AntiSeize => Family::NonCuring,
        }
    }

    /// The state it leaves a thread in while that is tightened, where the table of friction has one: a threadlocker
    /// and a paste have their own rows; grease goes with oil, as in class B of VDI 2230 (from memory). A wicking one
    /// comes when the thread is tight.
    pub fn thread_condition(self) -> Option<Condition> {
        match self {
            Self::ThreadlockLow | Self::ThreadlockMedium | Self::ThreadlockHigh => {
                Some(Condition::CompoundWet)
            }
            Self::AntiSeize => Some(Condition::Paste),
            Self::LightOil | Self::Grease => Some(Condition::Oiled),
            Self::ThreadlockWicking
            | Self::RetainingCompound
            | Self::AnaerobicFlange
            | Self::SiliconeNeutral
            | Self::SiliconeSensorSafe
            | Self::SemiDryingGasket
            | Self::AnaerobicPipe
            | Self::PtfePaste => None,
        }
    }

    /// Whether the manual's word names this class, among those that leave a thread in a state of their own.
    pub fn named_by(self, word: ManualWord) -> bool {
        let named = match word {
            ManualWord::LockLow => Self::ThreadlockLow,
            ManualWord::LockMedium => Self::ThreadlockMedium,
            ManualWord::LockHigh => Self::ThreadlockHigh,
            ManualWord::Oil => Self::LightOil,
            ManualWord::Grease => Self::Grease,
            ManualWord::AntiSeize => Self::AntiSeize,
            _ => return false,
        };
        self == named
    }

    /// One of the four that lock threads.
    pub fn locks_threads(self) -> bool {
        matches!(
            self,
            Self::ThreadlockLow | Self::ThreadlockMedium | Self::ThreadlockHigh | Self::ThreadlockWicking
        )
    }
}
