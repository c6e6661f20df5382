//! A bolt as a spring: its pull from how far it stretched, and how far an angle draws it.

use super::preload::Preload;
use super::quantity::{Angle, Force, Length};
use super::strength::Strength;
use super::thread::Thread;
use std::f64::consts::FRAC_PI_4;
use std::fmt;
use uom::si::angle::degree;
use uom::si::area::square_millimeter;
use uom::si::force::newton;
use uom::si::length::millimeter;

/// Young's modulus of bolt steels and of austenitic stainless steel, MPa (handbook values).
const STEEL_MPA: f64 = 207_000.0;
const STAINLESS_MPA: f64 = 195_000.0;

/// How far into head and nut, each, the pull reaches, in diameters: VDI 2230's substitute lengths come to
/// 0.4 to 0.5 for a head and 0.8 to 0.9 for the thread with its nut.
const INTO_HEAD: f64 = 0.5;
const INTO_NUT: f64 = 0.9;

/// A bolt as far as its spring goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shank {
    /// Its thread.
    pub thread: Thread,
    /// Its class, for its modulus.
    pub strength: Option<Strength>,
    /// What is clamped: from under the head to the nut or to the first thread of the hole.
    pub grip: Length,
    /// How much of the grip is plain shank; the rest is thread.
    pub plain: Length,
    /// The plain shank's diameter; the thread's own where none is told.
    pub diameter: Option<Length>,
}

/// Why a stretch gives no pull.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StretchError {
    /// The grip is not above zero, or absurd.
    Grip,
    /// The plain shank is longer than the grip, or negative.
    Plain,
    /// The shank is thinner than a third of its thread, or thicker than one and a half.
    Diameter,
    /// The stretch is not above zero, or over a twentieth of the grip.
    Stretch,
    /// The angle is not above zero.
    Angle,
}

impl fmt::Display for StretchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Grip => "Enter the grip, what the bolt clamps, from 1 to 1000 mm.",
            Self::Plain => "The plain shank can’t be longer than the grip: measure both again.",
            Self::Diameter => "That shank doesn’t belong to this thread: measure it again.",
            Self::Stretch => {
                "A stretch lies above zero and under a twentieth of the grip: read both lengths again."
            }
            Self::Angle => "Enter the angle, above 0°.",
        })
    }
}

impl std::error::Error for StretchError {}

impl Shank {
    fn modulus_mpa(&self) -> f64 {
        if self.strength.is_some_and(Strength::is_stainless) {
            STAINLESS_MPA
        } else {
            STEEL_MPA
        }
    }

    /// Stretch a newton of pull gives within the grip, mm/N: Σ l/(E·A) over plain shank (its own area) and
    /// thread (stress area), as bolts are reckoned in machine design and in VDI 2230-1.
    ///
    /// # Errors
    /// [`StretchError`] for sizes that make no sense.
    pub fn compliance(&self) -> Result<f64, StretchError> {
        let (grip, plain) = (self.grip.get::<millimeter>(), self.plain.get::<millimeter>());
        let major = self.thread.major().get::<millimeter>();
        if !(1.0..=1000.0).contains(&grip) {
            return Err(StretchError::Grip);
        }
        if !(0.0..=grip).contains(&plain) {
            return Err(StretchError::Plain);
        }
        let diameter = self
            .diameter
            .map_or(major, |diameter| diameter.get::<millimeter>());
        if !(major / 3.0..=major * 1.5).contains(&diameter) {
            return Err(StretchError::Diameter);
        }
        let thread_mm2 = self.thread.stress_area().get::<square_millimeter>();
        let plain_mm2 = FRAC_PI_4 * diameter * diameter;
        Ok((plain / plain_mm2 + (grip - plain) / thread_mm2) / self.modulus_mpa())
    }

    /// Stretch a newton gives in head and engaged thread besides, mm/N.
    fn ends_compliance(&self) -> f64 {
        let major = self.thread.major().get::<millimeter>();
        let thread_mm2 = self.thread.stress_area().get::<square_millimeter>();
        let nominal_mm2 = FRAC_PI_4 * major * major;
        (INTO_HEAD * major / nominal_mm2 + INTO_NUT * major / thread_mm2) / self.modulus_mpa()
    }

    /// The pull of a bolt that measures `stretch` longer over its ends than when it was free.
    ///
    /// From head and nut giving as VDI 2230-1 has them (least pull) to giving nothing (most). Holds while the
    /// bolt is elastic: one stretched past its yield pulls less.
    ///
    /// # Errors
    /// [`StretchError`].
    ///
    /// ```
    /// use halfcase::trade::quantity::Length;
    /// use halfcase::trade::stretch::Shank;
    /// use halfcase::trade::thread::Thread;
    /// use uom::si::{force::kilonewton, length::millimeter};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let thread = Thread::parse("M10").expect("a size of the table");
    /// let bolt = Shank { thread, strength: None, grip: mm(60.0), plain: mm(35.0), diameter: None };
    /// let pull = bolt.pull(mm(0.12))?;
    /// assert_eq!(pull.high.get::<kilonewton>().round(), 28.0);
    /// assert_eq!(pull.low.get::<kilonewton>().round(), 23.0);
    /// # Ok::<(), halfcase::trade::stretch::StretchError>(())
    /// ```
    pub fn pull(&self, stretch: Length) -> Result<Preload, StretchError> {
        let mm = stretch.get::<millimeter>();
        let grip = self.compliance()?;
        if !(mm > 0.0 && mm <= self.grip.get::<millimeter>() / 20.0) {
            return Err(StretchError::Stretch);
        }
        Ok(Preload {
            low: Force::new::<newton>(mm / (grip + self.ends_compliance())),
            high: Force::new::<newton>(mm / grip),
        })
    }
}

/// How far an angle draws the joint together: elongation of the bolt and compression of the parts together,
/// P·φ/360. How the two share it the parts decide; it is no stretch alone.
///
/// # Errors
/// [`StretchError::Angle`].
pub fn drawn(thread: Thread, turn: Angle) -> Result<Length, StretchError> {
    let degrees = turn.get::<degree>();
    if degrees > 0.0 && degrees.is_finite() {
        Ok(thread.pitch() * (degrees / 360.0))
    } else {
        Err(StretchError::Angle)
    }
}
