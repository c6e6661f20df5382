//! Clocks handed over to the phone's own calendar.

use crate::bench::Bench;
use crate::device::files::hand_out;
use crate::job::calendar::MEDIA_TYPE;
use crate::job::clock::ClockId;

/// Hands out the calendar file of one clock, or of all that run, and says what to do with it.
pub fn hand_over_calendar(bench: Bench, which: Option<ClockId>) {
    if hand_out("halfcase-clocks.ics", MEDIA_TYPE, &bench.calendar(which)) {
        bench.say(
            "The calendar file is exported: open it, and check in the calendar that its alarm is set.",
            false,
        );
    } else {
        bench.say(
            "This browser gives out no file: set the end in the phone’s own clock.",
            true,
        );
    }
}
