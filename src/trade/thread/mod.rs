//! Threads: ISO metric coarse and fine M2–M48, unified coarse, fine and extra fine #2–1 1/2 in, pipe
//! threads 1/16–1 in.

use super::quantity::{Area, Length};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::hash::{Hash, Hasher};
use uom::si::area::square_millimeter;
use uom::si::length::millimeter;

mod parse;
mod table;

pub use parse::ThreadError;
use table::{ROWS, Row};

/// Which family of threads a size belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Series {
    /// ISO metric, the pitch meant when none is named.
    MetricCoarse,
    /// ISO metric with a finer pitch.
    MetricFine,
    /// Unified coarse.
    Unc,
    /// Unified fine.
    Unf,
    /// Unified extra fine.
    Unef,
    /// Pipe, parallel: sealed by a washer or in a taper.
    PipeParallel,
    /// Pipe, taper: sealed in the thread.
    PipeTaper,
}

impl Series {
    /// Every series, in the order the screens show them.
    pub const ALL: [Self; 7] = [
        Self::MetricCoarse,
        Self::MetricFine,
        Self::Unc,
        Self::Unf,
        Self::Unef,
        Self::PipeParallel,
        Self::PipeTaper,
    ];

    /// The series in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::MetricCoarse => "metric coarse",
            Self::MetricFine => "metric fine",
            Self::Unc => "unified coarse",
            Self::Unf => "unified fine",
            Self::Unef => "unified extra fine",
            Self::PipeParallel => "pipe, parallel",
            Self::PipeTaper => "pipe, taper",
        }
    }
}

/// One thread size of the table: a 60° profile (ISO 68-1, ASME B1.1) with its diameter and pitch.
///
/// Stored as its designation ("M8", "M8×1", "1/4-20 UNC").
#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Thread(&'static Row);

impl Thread {
    /// Every thread, series by series in the order of [`Series::ALL`] but for the pipe ones, each by size.
    pub fn all() -> impl Iterator<Item = Self> {
        ROWS.iter().map(Self)
    }

    /// Reads a designation as a person writes it: `M6`, `M8x1.25`, `M10 × 1`, `1/4-20`,
    /// `#10-32 UNF`, `3/8 UNC`, `1-1/8-7`, `G 1/4`, `3/8 NPT`.
    ///
    /// # Errors
    /// [`ThreadError`] when the text is no designation, or names a size or pitch outside the table.
    ///
    /// ```
    /// use halfcase::trade::thread::Thread;
    /// assert_eq!(Thread::parse("m8 x 1,25").map(|t| t.name()), Ok("M8".to_owned()));
    /// ```
    pub fn parse(text: &str) -> Result<Self, ThreadError> {
        parse::read(text)
    }

    /// The designation: "M8" for coarse, "M8×1" for fine, "1/4-20 UNC".
    pub fn name(&self) -> String {
        self.0.name.to_owned()
    }

    /// Whether it is a pipe thread: it seals, and nothing is reckoned of what it clamps.
    pub fn is_pipe(&self) -> bool {
        matches!(self.0.series, Series::PipeParallel | Series::PipeTaper)
    }

    /// Every thread whose designation has `typed` in it, however it is written; those that begin with it
    /// first. Nothing typed fits none.
    pub fn found(typed: &str) -> Vec<Self> {
        parse::found(typed)
    }

    /// The family it belongs to.
    pub fn series(&self) -> Series {
        self.0.series
    }

    /// Nominal (major) diameter d, to the nanometre fraction it is stored with: an inch size times 25.4 has
    /// a last bit that would not come back.
    pub fn major(&self) -> Length {
        mm((self.0.major_mm * STORED_STEPS).round() / STORED_STEPS)
    }

    /// Pitch P.
    pub fn pitch(&self) -> Length {
        mm(self.0.pitch_mm)
    }

    /// Pitch diameter d2 = d − 0.649 519 P (ISO 724, ASME B1.1).
    pub fn pitch_diameter(&self) -> Length {
        mm(self.0.major_mm - PITCH_DIAMETER_STEP * self.0.pitch_mm)
    }

    /// Minor diameter of the bolt: d3 = d − 1.226 869 P (metric, ISO 898-1), or
    /// D − 1.190 785/n (unified with a rounded root, ASME B1.1).
    pub fn minor_diameter(&self) -> Length {
        let step = match self.0.series {
            Series::MetricCoarse | Series::MetricFine => METRIC_MINOR_STEP,
            Series::Unc | Series::Unf | Series::Unef => UNIFIED_MINOR_STEP,
            // 2 · 0.640 327 P (ISO 7-1); the American form is within a twelfth of it.
            Series::PipeParallel | Series::PipeTaper => PIPE_MINOR_STEP,
        };
        mm(self.0.major_mm - step * self.0.pitch_mm)
    }

    /// Diameter of the circle with the tensile stress area.
    ///
    /// Metric: (d2 + d3)/2 (ISO 898-1). Unified: D − 0.9743/n (ASME B1.1).
    pub fn stress_diameter(&self) -> Length {
        match self.0.series {
            Series::MetricCoarse | Series::MetricFine => {
                (self.pitch_diameter() + self.minor_diameter()) / 2.0
            }
            Series::Unc | Series::Unf | Series::Unef => {
                mm(self.0.major_mm - UNIFIED_STRESS_STEP * self.0.pitch_mm)
            }
            Series::PipeParallel | Series::PipeTaper => self.minor_diameter(),
        }
    }

    /// Tensile stress area A_s = π/4 · (stress diameter)².
    pub fn stress_area(&self) -> Area {
        let diameter_mm = self.stress_diameter().get::<millimeter>();
        Area::new::<square_millimeter>(std::f64::consts::FRAC_PI_4 * diameter_mm * diameter_mm)
    }

    /// Clearance hole: ISO 273 medium, or ASME B18.2.8 normal.
    pub fn clearance_hole(&self) -> Length {
        mm(self.0.hole_mm)
    }

    /// Outside diameter of the bearing face under a plain hexagon head: ISO 4014 d_w (least), or
    /// 0.95 of the width across flats of an inch screw. Flanged heads are larger.
    pub fn head_bearing(&self) -> Length {
        mm(self.0.head_mm)
    }

    /// Mean bearing diameter under the head: halfway between hole and bearing face.
    pub fn mean_bearing_diameter(&self) -> Length {
        (self.head_bearing() + self.clearance_hole()) / 2.0
    }
}

/// Lengths are stored with nine decimals of a millimetre.
const STORED_STEPS: f64 = 1e9;
/// d − d2 in pitches: 3/4 of the height of the sharp triangle (ISO 68-1).
const PITCH_DIAMETER_STEP: f64 = 0.649_519;
/// d − d3 in pitches: 17/12 of that height (ISO 898-1).
const METRIC_MINOR_STEP: f64 = 1.226_869;
/// D − minor diameter in pitches: 11/8 of that height (ASME B1.1, UNR form).
const UNIFIED_MINOR_STEP: f64 = 1.190_785;
/// D − minor diameter in pitches of a pipe thread (ISO 7-1, 55°).
const PIPE_MINOR_STEP: f64 = 1.280_654;
/// D − stress diameter in pitches (ASME B1.1).
const UNIFIED_STRESS_STEP: f64 = 0.974_3;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

impl PartialEq for Thread {
    fn eq(&self, other: &Self) -> bool {
        self.0.name == other.0.name
    }
}

impl Eq for Thread {}

impl Hash for Thread {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.name.hash(state);
    }
}

impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0.name)
    }
}

impl From<Thread> for String {
    fn from(thread: Thread) -> Self {
        thread.name()
    }
}

impl TryFrom<String> for Thread {
    type Error = ThreadError;

    fn try_from(text: String) -> Result<Self, ThreadError> {
        Self::parse(&text)
    }
}
