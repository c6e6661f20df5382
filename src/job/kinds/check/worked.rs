//! What a reading worked out from others of its step comes to, and which never could.

use super::calculated::{self, Outcome};
use super::how::How;
use super::limit::Limit;
use crate::job::id::ReadingId;
use crate::trade::quantity::convert;

/// What `limit` is worked out to be, in its own unit; none where it is measured, or one it is of is not
/// there. `read` tells a measured reading, in that reading's unit.
pub fn work_out(readings: &[Limit], limit: &Limit, read: impl Fn(ReadingId) -> Option<f64>) -> Option<f64> {
    let worked = limit.worked.as_ref()?;
    if let Some(outcome) = calculated::outcome(readings, limit, &read) {
        return match outcome {
            Outcome::Found(found) => Some(found.value),
            Outcome::Waiting | Outcome::Cannot(_) => None,
        };
    }
    let one = |id: &ReadingId| {
        let of = readings.iter().find(|of| of.id == *id && of.worked.is_none())?;
        convert(read(*id)?, &of.unit, &limit.unit)
    };
    let values: Option<Vec<f64>> = worked.of.iter().map(one).collect();
    worked.how.of(&values?)
}

/// Which of these worked-out readings could never be: of too few or too many, of what is not measured, of another
/// kind; or what is wrong with what feeds a calculation.
pub fn wrong(readings: &[Limit]) -> Option<String> {
    let measured = |id: &ReadingId, unit: &str| {
        // One without a number gets one later: nothing can name it.
        let mut of = readings.iter().filter(|of| of.id == *id && id.0 > 0);
        of.any(|of| of.worked.is_none() && convert(1.0, &of.unit, unit).is_some())
    };
    let good = |limit: &Limit| {
        limit.worked.as_ref().is_none_or(|worked| {
            let of = &worked.of;
            let count = worked.how.takes(of.len());
            let once = (0..of.len()).all(|at| !of[at + 1..].contains(&of[at]));
            let all = count && once && of.iter().all(|id| measured(id, &limit.unit));
            all || worked.how == How::Calculation
        })
    };
    if !readings.iter().all(good) {
        return Some(OF_READINGS.to_owned());
    }
    readings
        .iter()
        .find_map(|limit| calculated::wrong(readings, limit))
}

const OF_READINGS: &str = "A worked-out reading is of readings measured in this step, in units of one kind, two or as many as it takes: name these.";
