//! A wire thread insert: the hole it goes into, how deep, and what strips it.

use super::{MeasuringError, size_mm};
use crate::trade::quantity::{Force, Length};
use crate::trade::strip::{FemaleMaterial, insert_strip_load};
use crate::trade::thread::Thread;
use uom::si::length::millimeter;

/// How the tap ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tap {
    /// With a lead of four threads.
    Plug,
    /// For a blind hole, with two.
    Bottoming,
}

/// Sizes of the hole for an insert that takes a bolt of a thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InsertHole {
    /// The smallest drilled hole: nominal + 0.2165 P.
    pub drill_least: Length,
    /// The largest: the same and the tolerance of the minor diameter.
    pub drill_most: Length,
    /// The tap's pitch diameter: nominal + 0.6495 P.
    pub pitch_diameter: Length,
    /// Across the crests of the tapped hole, where it strips: nominal + 1.2990 P.
    pub major: Length,
    /// How deep the full thread goes: insert and one pitch.
    pub tapped: Length,
    /// How deep to drill.
    pub drilled: Length,
}

/// Steps from the nominal diameter in pitches, as the insert's wire fills one more thread (ISO 68-1 profile on
/// the enlarged diameter): 3/2 H major, 3/4 H pitch, 1/4 H minor, H = 0.866 025 P.
const MAJOR_STEP: f64 = 1.299_038;
const PITCH_STEP: f64 = 0.649_519;
const MINOR_STEP: f64 = 0.216_506;

/// The hole for a wire insert of this nominal length (1, 1.5, 2, 2.5 or 3 diameters are usual).
///
/// Depths: ASME B18.29.8M: plug tap insert + 6 P, and half a diameter up to 8 mm; bottoming tap insert + 4 P.
/// The drill's upper end has the minor diameter's tolerance, grade 5 of ISO 965-1: 0.8·230·P^0.7 µm from 1 mm
/// of pitch, 0.8·(433·P − 190·P^1.22) below (from memory). The insert's own paper goes before it.
///
/// # Errors
/// A pipe thread, or a length that is not above zero.
pub fn hole(thread: Thread, insert: Length, tap: Tap) -> Result<InsertHole, MeasuringError> {
    if thread.is_pipe() {
        return Err(MeasuringError::Pipe);
    }
    size_mm(insert)?;
    let (major, pitch) = (thread.major(), thread.pitch());
    let drill_least = major + MINOR_STEP * pitch;
    let drilled = match tap {
        Tap::Plug if major.get::<millimeter>() <= 8.0 => insert + 6.0 * pitch + 0.5 * major,
        Tap::Plug => insert + 6.0 * pitch,
        Tap::Bottoming => insert + 4.0 * pitch,
    };
    Ok(InsertHole {
        drill_least,
        drill_most: drill_least + minor_tolerance(pitch),
        pitch_diameter: major + PITCH_STEP * pitch,
        major: major + MAJOR_STEP * pitch,
        tapped: insert + pitch,
        drilled,
    })
}

fn minor_tolerance(pitch: Length) -> Length {
    let mm = pitch.get::<millimeter>();
    let grade_6_um = if mm < 1.0 {
        433.0 * mm - 190.0 * mm.powf(1.22)
    } else {
        230.0 * mm.powf(0.7)
    };
    Length::new::<millimeter>(0.8 * grade_6_um / 1000.0)
}

/// The pull that strips the insert out of the part, weak end and strong end
/// ([`insert_strip_load`]); the insert counts less half to three quarters of a pitch, as it sits.
///
/// # Errors
/// As [`hole`].
pub fn strip(
    thread: Thread,
    insert: Length,
    material: FemaleMaterial,
) -> Result<(Force, Force), MeasuringError> {
    hole(thread, insert, Tap::Plug)?;
    let sits = insert - 0.75 * thread.pitch();
    Ok(insert_strip_load(thread, MAJOR_STEP, material, sits))
}
