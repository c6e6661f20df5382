//! What a bolt's head marking promises: proof stress and yield strength.

use super::quantity::{Force, Length, Pressure};
use super::thread::Thread;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;
use uom::si::pressure::{megapascal, pascal};

/// A strength class of bolt, as marked on its head.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Strength {
    /// Property class 4.6.
    #[serde(rename = "4.6")]
    Class4_6,
    /// Property class 4.8.
    #[serde(rename = "4.8")]
    Class4_8,
    /// Property class 5.8.
    #[serde(rename = "5.8")]
    Class5_8,
    /// Property class 8.8.
    #[serde(rename = "8.8")]
    Class8_8,
    /// Property class 10.9.
    #[serde(rename = "10.9")]
    Class10_9,
    /// Property class 12.9.
    #[serde(rename = "12.9")]
    Class12_9,
    /// Inch grade 2.
    #[serde(rename = "grade 2")]
    Grade2,
    /// Inch grade 5.
    #[serde(rename = "grade 5")]
    Grade5,
    /// Inch grade 8.
    #[serde(rename = "grade 8")]
    Grade8,
    /// Austenitic stainless, class 50 (A2-50, A4-50).
    #[serde(rename = "stainless 50")]
    Stainless50,
    /// Austenitic stainless, class 70 (A2-70, A4-70).
    #[serde(rename = "stainless 70")]
    Stainless70,
    /// Austenitic stainless, class 80 (A2-80, A4-80).
    #[serde(rename = "stainless 80")]
    Stainless80,
}

impl Strength {
    /// Every class, in the order the screens show them.
    pub const ALL: [Self; 12] = [
        Self::Class4_6,
        Self::Class4_8,
        Self::Class5_8,
        Self::Class8_8,
        Self::Class10_9,
        Self::Class12_9,
        Self::Grade2,
        Self::Grade5,
        Self::Grade8,
        Self::Stainless50,
        Self::Stainless70,
        Self::Stainless80,
    ];

    /// The class as it is said: "8.8", "grade 5", "stainless 70".
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// Proof stress: the pull per stress area the bolt bears without lasting stretch.
    ///
    /// Stainless classes: R_p0.2 of ISO 3506-1, which stands in for a proof stress.
    pub fn proof_stress(self, thread: Thread) -> Pressure {
        self.row().step(thread.major()).proof.pressure()
    }

    /// Least yield strength (R_p0.2, R_pf or R_eL).
    pub fn yield_strength(self, thread: Thread) -> Pressure {
        self.row().step(thread.major()).yielding.pressure()
    }

    /// Whether it is austenitic stainless steel.
    pub const fn is_stainless(self) -> bool {
        matches!(self, Self::Stainless50 | Self::Stainless70 | Self::Stainless80)
    }

    const fn row(self) -> &'static Row {
        match self {
            Self::Class4_6 => &CLASS_4_6,
            Self::Class4_8 => &CLASS_4_8,
            Self::Class5_8 => &CLASS_5_8,
            Self::Class8_8 => &CLASS_8_8,
            Self::Class10_9 => &CLASS_10_9,
            Self::Class12_9 => &CLASS_12_9,
            Self::Grade2 => &GRADE_2,
            Self::Grade5 => &GRADE_5,
            Self::Grade8 => &GRADE_8,
            Self::Stainless50 => &STAINLESS_50,
            Self::Stainless70 => &STAINLESS_70,
            Self::Stainless80 => &STAINLESS_80,
        }
    }
}

/// Proof load: proof stress times stress area (ISO 898-1, SAE J429, ISO 3506-1).
pub fn proof_load(thread: Thread, strength: Strength) -> Force {
    strength.proof_stress(thread) * thread.stress_area()
}

/// A stress in the unit its standard prints.
#[derive(Clone, Copy)]
enum Stress {
    Mpa(f64),
    Ksi(f64),
}

/// Pascals in 1 000 pound-force per square inch, from the exact pound-force and inch.
const PASCALS_PER_KSI: f64 = 4_448.221_615_260_5 / (0.025_4 * 0.025_4);

impl Stress {
    fn pressure(self) -> Pressure {
        match self {
            Self::Mpa(value) => Pressure::new::<megapascal>(value),
            Self::Ksi(value) => Pressure::new::<pascal>(value * PASCALS_PER_KSI),
        }
    }
}

/// Strengths up to a diameter.
struct Step {
    proof: Stress,
    yielding: Stress,
}

struct Row {
    name: &'static str,
    /// Largest diameter, mm, that the first step holds for; the second holds above.
    first_to_mm: f64,
    first: Step,
    above: Step,
}

impl Row {
    fn step(&self, major: Length) -> &Step {
        // A hair of room, so that 3/4 in counts as 19.05 mm however it was reckoned.
        if major.get::<millimeter>() <= self.first_to_mm + 1e-6 {
            &self.first
        } else {
            &self.above
        }
    }
}

const fn mpa(proof: f64, yielding: f64) -> Step {
    Step {
        proof: Stress::Mpa(proof),
        yielding: Stress::Mpa(yielding),
    }
}

const fn ksi(proof: f64, yielding: f64) -> Step {
    Step {
        proof: Stress::Ksi(proof),
        yielding: Stress::Ksi(yielding),
    }
}

/// One strength for every diameter of the table.
const fn all(name: &'static str, step: Step, same: Step) -> Row {
    Row {
        name,
        first_to_mm: f64::INFINITY,
        first: step,
        above: same,
    }
}

macro_rules! uniform {
    ($name:literal, $step:expr) => {
        all($name, $step, $step)
    };
}

// ISO 898-1: proof stress S_p and least yield.
static CLASS_4_6: Row = uniform!("4.6", mpa(225.0, 240.0));
static CLASS_4_8: Row = uniform!("4.8", mpa(310.0, 340.0));
static CLASS_5_8: Row = uniform!("5.8", mpa(380.0, 420.0));
static CLASS_8_8: Row = Row {
    name: "8.8",
    first_to_mm: 16.0,
    first: mpa(580.0, 640.0),
    above: mpa(600.0, 660.0),
};
static CLASS_10_9: Row = uniform!("10.9", mpa(830.0, 940.0));
static CLASS_12_9: Row = uniform!("12.9", mpa(970.0, 1100.0));
// SAE J429; grade 5 holds to 1 in, beyond the table.
static GRADE_2: Row = Row {
    name: "grade 2",
    first_to_mm: 19.05,
    first: ksi(55.0, 57.0),
    above: ksi(33.0, 36.0),
};
static GRADE_5: Row = uniform!("grade 5", ksi(85.0, 92.0));
static GRADE_8: Row = uniform!("grade 8", ksi(120.0, 130.0));
// ISO 3506-1: R_p0.2 for both.
static STAINLESS_50: Row = uniform!("stainless 50", mpa(210.0, 210.0));
static STAINLESS_70: Row = uniform!("stainless 70", mpa(450.0, 450.0));
static STAINLESS_80: Row = uniform!("stainless 80", mpa(600.0, 600.0));
