//! Torque and the pull it puts in the bolt.

use super::quantity::{Force, Length, Torque};
use super::strength::Strength;
use super::thread::Thread;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;
use std::fmt;
use uom::si::force::newton;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

/// Largest torque taken, N·m: room for the largest thread's torque in the smallest unit, read in the
/// largest.
pub const LARGEST_TORQUE_NM: f64 = 10_000_000.0;
/// Largest friction taken; bare metal in a vacuum aside, nothing on a bench comes near it.
const LARGEST_FRICTION: f64 = 1.0;
/// Largest pull taken, N, so that no product overflows.
const LARGEST_FORCE_N: f64 = 1e12;

/// How the thread and the underside of the head come together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Condition {
    /// Clean and dry, plain steel as received.
    Dry,
    /// Oiled with ordinary oil.
    Oiled,
    /// Zinc plated, dry.
    Plated,
    /// Wet with a locking compound.
    CompoundWet,
    /// Stainless on stainless, dry: it galls.
    StainlessDry,
    /// Anti-seize paste, with copper or molybdenum disulphide.
    Paste,
    /// Not known.
    Unknown,
}

/// One row of the friction table: the same coefficient for thread and head.
struct Friction {
    condition: Condition,
    words: &'static str,
    low: f64,
    usual: f64,
    high: f64,
    reason: &'static str,
}

/// Ranges after the friction classes of VDI 2230 (common practice); the usual value is the one
/// torque tables are worked at.
static FRICTION: [Friction; 7] = [
    Friction {
        condition: Condition::Dry,
        words: "clean and dry",
        low: 0.12,
        usual: 0.15,
        high: 0.24,
        reason: "as received, with the mill's thin film; the nut factor 0.2 of dry tables answers to 0.15",
    },
    Friction {
        condition: Condition::Oiled,
        words: "oiled",
        low: 0.08,
        usual: 0.12,
        high: 0.16,
        reason: "VDI 2230 class B; its tables are mostly read at 0.12",
    },
    Friction {
        condition: Condition::Plated,
        words: "zinc plated, dry",
        low: 0.12,
        usual: 0.15,
        high: 0.24,
        reason: "zinc varies as widely as dry steel",
    },
    Friction {
        condition: Condition::CompoundWet,
        words: "wet with locking compound",
        low: 0.10,
        usual: 0.15,
        high: 0.20,
        reason: "liquid until it cures: between oil and dry",
    },
    Friction {
        condition: Condition::StainlessDry,
        words: "stainless on stainless, dry",
        low: 0.30,
        usual: 0.35,
        high: 0.40,
        reason: "it galls (common practice, no source)",
    },
    Friction {
        condition: Condition::Paste,
        words: "moly or copper paste",
        low: 0.06,
        usual: 0.09,
        high: 0.12,
        reason: "solid lubricant between the flanks (common practice, no source)",
    },
    Friction {
        condition: Condition::Unknown,
        words: "not known",
        low: 0.08,
        usual: 0.15,
        high: 0.24,
        reason: "everything from oiled to dry",
    },
];

impl Condition {
    /// Every condition, in the order the screens show them.
    pub const ALL: [Self; 7] = [
        Self::Dry,
        Self::Oiled,
        Self::Plated,
        Self::CompoundWet,
        Self::StainlessDry,
        Self::Paste,
        Self::Unknown,
    ];

    /// Lowest and highest likely coefficient of friction, of thread and head alike.
    pub fn friction(self) -> (f64, f64) {
        (self.row().low, self.row().high)
    }

    /// The coefficient that torque tables for this condition are worked at.
    pub fn usual_friction(self) -> f64 {
        self.row().usual
    }

    /// The condition in words.
    pub fn words(self) -> &'static str {
        self.row().words
    }

    /// The condition behind "thread": "oiled", "with moly or copper paste".
    pub fn of_thread(self) -> String {
        match self {
            Self::Paste => format!("with {}", self.words()),
            other => other.words().to_owned(),
        }
    }

    /// Why its friction is taken so.
    pub fn reason(self) -> &'static str {
        self.row().reason
    }

    /// What has to be said of it, whatever the torque.
    pub const fn note(self) -> Option<&'static str> {
        match self {
            Self::StainlessDry => Some(
                "Stainless on stainless galls when dry and may seize before it is tight: turn it slowly, and put on \
                 what the manual names for it.",
            ),
            Self::Paste => Some(
                "Paste makes the same torque pull harder than oil does: go by a torque that the manual gives for paste.",
            ),
            Self::Dry | Self::Oiled | Self::Plated | Self::CompoundWet | Self::Unknown => None,
        }
    }

    fn row(self) -> &'static Friction {
        // The last row is the widest, and stands for any row that went missing.
        FRICTION
            .iter()
            .find(|row| row.condition == self)
            .unwrap_or(&FRICTION[FRICTION.len() - 1])
    }
}

/// The pull in the bolt, from the highest likely friction to the lowest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preload {
    /// Pull at the highest likely friction.
    pub low: Force,
    /// Pull at the lowest likely friction.
    pub high: Force,
}

/// Why no preload can be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PreloadError {
    /// Zero, negative, or not a number.
    NotPositive,
    /// Beyond [`LARGEST_TORQUE_NM`].
    TooLarge,
}

impl fmt::Display for PreloadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NotPositive => "A torque must be more than zero: type it again.",
            Self::TooLarge => "That is more than 10 000 000 N·m: check the value and its unit.",
        })
    }
}

impl std::error::Error for PreloadError {}

/// The range of pull that `torque` gives over the likely friction of `condition`.
///
/// Valid while the bolt stays elastic; above its yield the pull no longer follows the torque.
///
/// # Errors
/// [`PreloadError`] for a torque that is not above zero, or beyond [`LARGEST_TORQUE_NM`].
pub fn preload(torque: Torque, thread: Thread, condition: Condition) -> Result<Preload, PreloadError> {
    let torque_nm = torque.get::<newton_meter>();
    if torque_nm > LARGEST_TORQUE_NM {
        return Err(PreloadError::TooLarge);
    }
    if torque_nm.is_nan() || torque_nm <= 0.0 {
        return Err(PreloadError::NotPositive);
    }
    let (slippery, rough) = condition.friction();
    let pull = |friction| Force::new::<newton>(torque_nm / lever(thread, friction, friction).get::<meter>());
    Ok(Preload {
        low: pull(rough),
        high: pull(slippery),
    })
}

/// The torque that gives `force`: T = F · [P/(2π) + μ_th·d2/(2·cos 30°) + μ_head·D_b/2].
///
/// Frictions are held to 0–1 and the pull to ±10¹² N. Source: VDI 2230-1, ISO 16047.
pub fn torque_for(force: Force, thread: Thread, friction_thread: f64, friction_head: f64) -> Torque {
    let force_n = force.get::<newton>().clamp(-LARGEST_FORCE_N, LARGEST_FORCE_N);
    Torque::new::<newton_meter>(force_n * lever(thread, friction_thread, friction_head).get::<meter>())
}

/// Highest sensible pull at assembly: 90 % of yield used up by pull and twist together.
///
/// F_M = A_s · 0.9·R_p0.2 / √(1 + 3·[1.5 · d2/d_s · (P/(π·d2) + 1.155·μ)]²), with d_s the stress
/// diameter and μ the thread friction, held to 0–1. Torsion is reckoned fully plastic (factor 1.5),
/// as in VDI 2230-1 since 2001; older tables run about 9 % lower.
pub fn assembly_ceiling(thread: Thread, strength: Strength, friction: f64) -> Force {
    let friction = held(friction);
    let pitch_mm = thread.pitch().get::<millimeter>();
    let pitch_diameter_mm = thread.pitch_diameter().get::<millimeter>();
    let stress_diameter_mm = thread.stress_diameter().get::<millimeter>();
    let area_mm2 = PI / 4.0 * stress_diameter_mm * stress_diameter_mm;
    let yield_mpa = strength.yield_strength(thread).get::<megapascal>();
    let climb = pitch_mm / (PI * pitch_diameter_mm) + flank_factor() * friction;
    let twist = PLASTIC_TWIST * pitch_diameter_mm / stress_diameter_mm * climb;
    Force::new::<newton>(area_mm2 * YIELD_SHARE * yield_mpa / (1.0 + 3.0 * twist * twist).sqrt())
}

/// The torque that brings the bolt to its [`assembly_ceiling`] at one friction for thread and head.
pub fn assembly_torque(thread: Thread, strength: Strength, friction: f64) -> Torque {
    torque_for(
        assembly_ceiling(thread, strength, friction),
        thread,
        friction,
        friction,
    )
}

/// Share of the yield strength used at assembly (VDI 2230-1).
const YIELD_SHARE: f64 = 0.9;
/// Torsional stress over pull stress for a fully plastic section (VDI 2230-1, 2001 on).
const PLASTIC_TWIST: f64 = 1.5;
/// Half the angle between the flanks of a 60° thread.
const HALF_FLANK_DEG: f64 = 30.0;

/// 1/cos 30°: how much harder the slanted flanks press than a flat face.
fn flank_factor() -> f64 {
    1.0 / HALF_FLANK_DEG.to_radians().cos()
}

fn held(friction: f64) -> f64 {
    if friction.is_nan() {
        0.0
    } else {
        friction.clamp(0.0, LARGEST_FRICTION)
    }
}

/// Torque over pull: the arm at which the pull seems to act.
fn lever(thread: Thread, friction_thread: f64, friction_head: f64) -> Length {
    thread.pitch() / (2.0 * PI)
        + held(friction_thread) * flank_factor() * thread.pitch_diameter() / 2.0
        + held(friction_head) * thread.mean_bearing_diameter() / 2.0
}
