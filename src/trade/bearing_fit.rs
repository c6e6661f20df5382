//! What a fit, and the heat it is made with, does to a rolling bearing.

use crate::trade::fit::Interference;
use crate::trade::quantity::Length;

/// The hottest a bearing with seals or shields of its own, and its grease, may become, °C (a bearing maker's
/// mounting guide).
pub const SEALED_LIMIT_C: f64 = 80.0;

/// Which ring of a bearing is fitted tight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ring {
    /// The inner one, which the fit stretches.
    Inner,
    /// The outer one, which the fit squeezes.
    Outer,
}

impl Ring {
    /// The share of the interference by which the raceway grows or shrinks (handbook practice, from memory;
    /// thin shafts and thin housings take less of it off the bearing).
    pub const fn share(self) -> f64 {
        match self {
            Self::Inner => 0.8,
            Self::Outer => 0.7,
        }
    }
}

/// How much of its radial internal clearance a bearing loses with a fit: (least, most), nothing where it is
/// loose.
pub fn clearance_lost(ring: Ring, fit: &Interference) -> (Length, Length) {
    let lost = |tight: Length| tight.max(Length::default()) * ring.share();
    (lost(fit.least), lost(fit.most))
}
