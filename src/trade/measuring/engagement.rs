//! How far a bolt goes into its thread, and whether it bottoms.

use super::{MeasuringError, size_mm};
use crate::trade::quantity::{Length, Ratio};
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;

/// A bolt's point doesn't carry: so many pitches of it are chamfer (common practice).
const POINT_PITCHES: f64 = 1.0;

/// What holds the bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// What the thread is cut in.
    pub material: FemaleMaterial,
    /// Its full thread, from the face on; none where that is not known.
    pub threaded: Option<Length>,
    /// It goes through: the bolt's point may stand out behind.
    pub through: bool,
}

/// How a bolt sits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Engaged {
    /// Full thread in mesh.
    pub length: Length,
    /// The same in turns of the thread.
    pub turns: f64,
    /// The same in bolt diameters.
    pub diameters: Ratio,
    /// What the material wants: 2 diameters in aluminium, 1.25 in steel and iron (handbooks).
    pub wanted: Length,
    /// Nothing less than wanted.
    pub enough: bool,
    /// The hole's thread ends there, or its bottom is reached: a longer bolt holds no better.
    pub all_of_hole: bool,
    /// How deep the full thread has to be for that bolt: in a blind hole its point wants room too.
    pub deep: Length,
    /// In a blind hole, what is left under the point: below zero it bottoms and clamps nothing.
    pub left: Option<Length>,
}

/// A bolt of this length under its head, through a stack (parts, washers, gasket) of that height.
///
/// Full thread in mesh is length less stack less one pitch of point, at most the threaded depth: a point that
/// stands out behind a through hole costs nothing.
///
/// # Errors
/// A pipe thread, a length not above zero, a bolt that does not reach the thread.
pub fn engaged(bolt: Length, stack: Length, thread: Thread, hole: Hole) -> Result<Engaged, MeasuringError> {
    if thread.is_pipe() {
        return Err(MeasuringError::Pipe);
    }
    size_mm(bolt)?;
    size_mm(stack)?;
    let reach = bolt - stack;
    size_mm(reach).map_err(|_| MeasuringError::Stack)?;
    let full = reach - POINT_PITCHES * thread.pitch();
    let full = full.max(Length::default());
    if let Some(threaded) = hole.threaded {
        size_mm(threaded)?;
    }
    let deep = if hole.through { full } else { reach };
    let left = hole
        .threaded
        .filter(|_| !hole.through)
        .map(|threaded| threaded - reach);
    let length = hole.threaded.map_or(full, |threaded| full.min(threaded));
    let wanted = hole.material.recommended_engagement(thread);
    Ok(Engaged {
        length,
        turns: (length / thread.pitch()).value,
        diameters: length / thread.major(),
        wanted,
        enough: length >= wanted * (1.0 - 1e-9),
        all_of_hole: hole.threaded.is_some_and(|threaded| deep >= threaded),
        deep,
        left,
    })
}
