//! How long an oven takes to bring a part through.

use crate::trade::cooling::TimeRange;
use crate::trade::quantity::{Length, Time};
use uom::si::length::millimeter;
use uom::si::time::minute;

/// Minutes for each 25 mm of the thickest section, least and most, once the oven is up to heat
/// (common practice, no source).
const MINUTES: (f64, f64) = (20.0, 30.0);
const SECTION_MM: f64 = 25.0;

/// Sections the rule is used for, mm.
const SECTIONS: (f64, f64) = (0.1, 500.0);

/// How long a part stays in an oven that is up to heat until it is warm right through, by its thickest
/// section; none where the section makes no sense.
pub fn oven_time(section: Length) -> Option<TimeRange> {
    let mm = section.get::<millimeter>();
    let (least, most) = SECTIONS;
    let minutes = |each: f64| Time::new::<minute>(mm / SECTION_MM * each);
    (least..=most).contains(&mm).then(|| TimeRange {
        shortest: minutes(MINUTES.0),
        longest: minutes(MINUTES.1),
    })
}
