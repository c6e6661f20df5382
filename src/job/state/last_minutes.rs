//! Whether something is in its last minutes, when nobody is to be asked about anything else.

use super::State;
use crate::job::kinds::seat::oven::OvenState;
use crate::job::skins;
use crate::trade::moment::Moment;

/// How long before its end a countdown is not to be disturbed.
const LAST_MS: i64 = 5 * 60_000;

impl State {
    /// Whether a clock is about to reach a mark, a bead about to skin or just skinned, or a part on its way
    /// from the oven.
    pub fn in_last_minutes(&self, now: Moment) -> bool {
        let near = |at: Moment| (0..=LAST_MS).contains(&at.0.saturating_sub(now.0));
        let mut running = self.clocks.iter().filter(|clock| clock.ended.is_none());
        let marks = running.any(|clock| {
            clock
                .marks(&self.settings.shop, self.doubted_ms)
                .iter()
                .any(|mark| near(mark.at()))
        });
        let pressing = skins::pressing(self.ground(), now);
        let mut skins = pressing.iter().filter_map(|deadline| deadline.until.ok());
        let oven = self.settings.seat.oven.as_ref().map(|run| run.state(now));
        marks
            || skins.any(|at| at.0.saturating_sub(now.0) <= LAST_MS)
            || matches!(oven, Some(OvenState::Open(_) | OvenState::Doubtful(_)))
    }
}
