//! The clock itself: label time used up, stretch by stretch, at the rate of each.

use super::pace::{self, Pace};
use super::{CureSpec, DoneAt, Milestone, NoCure, ShopHistory};
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use uom::si::time::second;

impl CureSpec {
    /// When a milestone is reached, as a range.
    ///
    /// `start` is the moment the joint was closed. Never earlier than `start` plus the label's time,
    /// except [`Milestone::AssemblyLimit`], a deadline, which warmth brings nearer and nothing puts off.
    /// Rate by temperature: about half per 10 K below the label's (range 1.7 to 2.5), none below 5 °C,
    /// never more than the label's. Silicone's depth grows with the root of time and its rate with
    /// humidity up to 50 %, which not told is 40 % at the late end. Without a shop reading the label's own
    /// temperature is taken. The ends of independent causes are combined in quadrature: late is
    /// likely × exp √Σ ln²(slow/likely), in each stretch of air by itself.
    ///
    /// # Errors
    /// When it doesn't get there in this air, or the figures make no sense.
    pub fn reached_at(
        &self,
        milestone: Milestone,
        start: Moment,
        shop: &ShopHistory,
    ) -> Result<DoneAt, NoCure> {
        self.label.check().map_err(NoCure::Label)?;
        let label = self.label.time_to(milestone).ok_or(NoCure::NoFigure)?;
        let at = |pace| {
            if milestone.is_deadline() {
                let reached = self.walk(start, label.get::<second>(), shop, |air| {
                    pace::hurry(&self.chemistry, &self.label, air, pace)
                })?;
                Ok(reached.min(after(start, label)))
            } else {
                let joint = pace::of_joint(&self.chemistry, &self.label)?;
                let reached = self.walk(start, label.get::<second>(), shop, |air| {
                    pace::rate(joint, &self.chemistry, &self.label, air, pace)
                })?;
                Ok(reached.max(after(start, label)))
            }
        };
        Ok(DoneAt {
            earliest: at(Pace::Quick)?,
            likely: at(Pace::Likely)?,
            latest: at(Pace::Slow)?,
            shop_unknown: shop.is_empty(),
        })
    }

    /// The instant at which `needed_s` label seconds are used up.
    fn walk(
        &self,
        start: Moment,
        needed_s: f64,
        shop: &ShopHistory,
        rate: impl Fn(Option<&super::ShopReading>) -> f64,
    ) -> Result<Moment, NoCure> {
        let stretches = shop.stretches(start);
        let mut left_s = needed_s;
        let mut next = stretches.iter().skip(1).map(|next| next.0);
        for (from, air) in &stretches {
            let rate = rate(Some(air));
            match next.next() {
                Some(to) => {
                    let used_s = rate * to.since(*from).get::<second>();
                    if used_s >= left_s {
                        return Ok(after(*from, Time::new::<second>(left_s / rate)));
                    }
                    left_s -= used_s;
                }
                None if rate > 0.0 => return Ok(after(*from, Time::new::<second>(left_s / rate))),
                None => return Err(pace::hindrance(air)),
            }
        }
        Ok(after(start, Time::new::<second>(left_s / rate(None))))
    }
}

/// `span` after `from`, to the next whole millisecond.
fn after(from: Moment, span: Time) -> Moment {
    let milliseconds = (span.get::<second>() * 1000.0).ceil();
    // A float turned integer saturates, and so does the sum: far off is the end of time.
    Moment(from.0.saturating_add(milliseconds as i64))
}
