//! What a gauging still wants, which plastic to lay, and what its readings say.

use super::data::{Gauge, Gauged};
use crate::job::progress::{Reading, StepProgress};
use crate::job::reading::What;
use crate::trade::gauging::{Plastic, Take, take};
use crate::trade::quantity::Unit;
use crate::trade::selection::tidy;

/// What is wanted next.
#[derive(Debug, Clone, PartialEq)]
pub enum Wants {
    /// Do this.
    Do(Gauged),
    /// Read this.
    Read(What),
}

/// Every reading the step asks for, in order: where it is squeezed widest the clearance is least.
pub const ASKED: [What; 2] = [What::Widest, What::Narrow];

/// What is missing, in its order; none when only the findings are left.
pub fn wants(gauge: &Gauge, progress: &StepProgress) -> Option<Wants> {
    let unread = ASKED
        .into_iter()
        .find(|what| taken(gauge, progress, what).is_none());
    let lay = || Gauged::Laid(plastic(gauge).map_or(Plastic::Fine, |take| take.plastic));
    match (progress.gauged.last(), unread) {
        (None, _) => Some(Wants::Do(lay())),
        (Some(Gauged::Laid(_)), _) => Some(Wants::Do(Gauged::Tight)),
        (Some(Gauged::Tight), _) => Some(Wants::Do(Gauged::Off)),
        (Some(Gauged::Off), Some(what)) => Some(Wants::Read(what)),
        (Some(Gauged::Off), None) => Some(Wants::Do(Gauged::Wiped)),
        // Wiped away before it was read: nothing is left to read.
        (Some(Gauged::Wiped), Some(_)) => Some(Wants::Do(lay())),
        (Some(Gauged::Wiped), None) => None,
    }
}

/// Whether that may be done now: in its order; another is laid on a journal that is wiped, or instead of
/// one that was not tightened yet.
pub fn may(progress: &StepProgress, done: Gauged) -> bool {
    let last = progress.gauged.last();
    match done {
        Gauged::Laid(_) => matches!(last, None | Some(Gauged::Laid(_) | Gauged::Wiped)),
        Gauged::Tight => matches!(last, Some(Gauged::Laid(_))),
        Gauged::Off => last == Some(&Gauged::Tight),
        Gauged::Wiped => last == Some(&Gauged::Off),
    }
}

/// Whether there is something to read: the cap is off, or it was read before it was wiped away.
pub fn readable(gauge: &Gauge, progress: &StepProgress, what: &What) -> bool {
    match progress.gauged.last() {
        Some(Gauged::Off) => true,
        Some(Gauged::Wiped) => taken(gauge, progress, what).is_some(),
        None | Some(Gauged::Laid(_) | Gauged::Tight) => false,
    }
}

/// The latest reading of that since it was laid, in the unit the plan now asks for.
pub fn taken<'a>(gauge: &Gauge, progress: &'a StepProgress, what: &What) -> Option<&'a Reading> {
    let reading = progress.reading(what)?;
    (reading.unit == gauge.unit.symbol()).then_some(reading)
}

/// Which plastic to lay for the limits: up to the worn one where a card tells it too; none without limits.
pub fn plastic(gauge: &Gauge) -> Option<Take> {
    let most = gauge.most.or(gauge.worn)?;
    let length = |size: f64| gauge.unit.length(size);
    let least = length(gauge.least.unwrap_or(most));
    let worn = gauge.worn.map(|worn| take(least, length(worn)));
    let worn = worn.filter(|take| take.whole);
    Some(worn.unwrap_or_else(|| take(least, length(most))))
}

/// Whether the limits hold a clearance: the worn one where there is one. None where there are none.
pub fn holds(gauge: &Gauge, value: f64) -> Option<bool> {
    let most = gauge.worn.or(gauge.most);
    let limits = gauge.least.is_some() || most.is_some();
    limits.then(|| gauge.least.is_none_or(|least| value >= least) && most.is_none_or(|most| value <= most))
}

/// By how much the ends differ: the narrow one tells the greater clearance.
pub fn taper(gauge: &Gauge, progress: &StepProgress) -> Option<f64> {
    let [widest, narrow] = ASKED.map(|what| taken(gauge, progress, &what));
    Some(tidy(narrow?.value - widest?.value))
}

/// What of its readings the card of the plastic that was laid can't tell.
pub fn off_card(gauge: &Gauge, progress: &StepProgress) -> Vec<What> {
    let Some(Gauged::Laid(plastic)) = progress.gauged.first() else {
        return Vec::new();
    };
    let off = |what: &What| {
        taken(gauge, progress, what).is_some_and(|reading| !plastic.tells(gauge.unit.length(reading.value)))
    };
    ASKED.into_iter().filter(off).collect()
}

/// What is wrong beyond the clearance's own limits: a reading its card can't tell, ends that differ by too
/// much or the wrong way round.
pub fn findings(gauge: &Gauge, progress: &StepProgress) -> Vec<What> {
    let off = off_card(gauge, progress);
    let over = |taper: f64| taper < 0.0 || gauge.taper.is_some_and(|most| taper > most);
    let uneven = taper(gauge, progress).is_some_and(over);
    // Out of its limits it is found already.
    let widest = off.contains(&What::Widest)
        && taken(gauge, progress, &What::Widest)
            .is_some_and(|reading| holds(gauge, reading.value) != Some(false));
    let narrow = uneven || off.contains(&What::Narrow);
    let found = [(widest, What::Widest), (narrow, What::Narrow)];
    found
        .into_iter()
        .filter(|(is, _)| *is)
        .map(|(_, what)| what)
        .collect()
}
