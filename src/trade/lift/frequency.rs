//! The frequency multiplier (DHHS (NIOSH) 94-110, table 5).

use super::{Duration, KNUCKLES_CM};

/// Lifts a minute; FM for up to 1, 2 and 8 hours, each for hands below 75 cm and from 75 cm up.
type Row = (f64, [[f64; 2]; 3]);

#[rustfmt::skip]
const TABLE: [Row; 17] = [
    ( 0.2, [[1.00, 1.00], [0.95, 0.95], [0.85, 0.85]]),
    ( 0.5, [[0.97, 0.97], [0.92, 0.92], [0.81, 0.81]]),
    ( 1.0, [[0.94, 0.94], [0.88, 0.88], [0.75, 0.75]]),
    ( 2.0, [[0.91, 0.91], [0.84, 0.84], [0.65, 0.65]]),
    ( 3.0, [[0.88, 0.88], [0.79, 0.79], [0.55, 0.55]]),
    ( 4.0, [[0.84, 0.84], [0.72, 0.72], [0.45, 0.45]]),
    ( 5.0, [[0.80, 0.80], [0.60, 0.60], [0.35, 0.35]]),
    ( 6.0, [[0.75, 0.75], [0.50, 0.50], [0.27, 0.27]]),
    ( 7.0, [[0.70, 0.70], [0.42, 0.42], [0.22, 0.22]]),
    ( 8.0, [[0.60, 0.60], [0.35, 0.35], [0.18, 0.18]]),
    ( 9.0, [[0.52, 0.52], [0.30, 0.30], [0.00, 0.15]]),
    (10.0, [[0.45, 0.45], [0.26, 0.26], [0.00, 0.13]]),
    (11.0, [[0.41, 0.41], [0.00, 0.23], [0.00, 0.00]]),
    (12.0, [[0.37, 0.37], [0.00, 0.21], [0.00, 0.00]]),
    (13.0, [[0.00, 0.34], [0.00, 0.00], [0.00, 0.00]]),
    (14.0, [[0.00, 0.31], [0.00, 0.00], [0.00, 0.00]]),
    (15.0, [[0.00, 0.28], [0.00, 0.00], [0.00, 0.00]]),
];

/// FM, straight between the rows; 0 above 15 lifts a minute. Where a row falls to 0 the span before
/// it already counts as 0, since the table gives no way down.
pub(super) fn multiplier(lifts_per_minute: f64, duration: Duration, height_cm: f64) -> f64 {
    let at = |(_, columns): &Row| {
        let [low, high] = match (columns, duration) {
            ([short, _, _], Duration::Short) => *short,
            ([_, moderate, _], Duration::Moderate) => *moderate,
            ([_, _, long], Duration::Long) => *long,
        };
        if height_cm < KNUCKLES_CM { low } else { high }
    };
    let Some(next) = TABLE.iter().position(|(f, _)| lifts_per_minute <= *f) else {
        return 0.0;
    };
    let Some((after, before)) = TABLE
        .get(next)
        .zip(next.checked_sub(1).and_then(|n| TABLE.get(n)))
    else {
        // At or under the first row.
        return TABLE.first().map_or(0.0, at);
    };
    let (low, high) = (at(before), at(after));
    if high == 0.0 {
        return 0.0;
    }
    low + (high - low) * (lifts_per_minute - before.0) / (after.0 - before.0)
}
