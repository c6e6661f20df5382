//! The clock itself: label time used up, stretch by stretch, at the rate of each.

use super::pace::{self, Pace};
use super::{Chemistry, CureSpec, DoneAt, Milestone, NoCure, ShopHistory};
use crate::trade::moment::Moment;
use crate::trade::quantity::{Ratio, Time};
use uom::si::ratio::ratio;
use uom::si::time::second;

impl CureSpec {
    /// When a milestone is reached, as a range.
    ///
    /// `start` is the moment the joint was closed. Never earlier than `start` plus the label's time,
    /// except [`Milestone::AssemblyLimit`], a deadline, which warmth brings nearer and nothing puts off.
    /// Rate by temperature: about half per 10 K below the label's (range 1.7 to 2.5), none below 5 °C,
    /// never more than the label's. Silicone's depth grows with the root of time and its rate with
    /// humidity up to 50 %. Without a shop reading the label's own air is taken.
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
                let needed_s = label.get::<second>() * pace::stretch(&self.chemistry, &self.label, pace)?;
                let reached = self.walk(start, needed_s, shop, |air| self.rate(air, pace))?;
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

    /// How far it has cured, 0 to 1, by the harshest figures: 1 exactly when [`Self::reached_at`] says
    /// that full cure is reached at the latest. Of silicone it is the share of its depth.
    ///
    /// 0 where the figures make no sense or it doesn't cure at all.
    pub fn degree(&self, start: Moment, now: Moment, shop: &ShopHistory) -> Ratio {
        Ratio::new::<ratio>(self.degree_as_number(start, now, shop))
    }

    fn degree_as_number(&self, start: Moment, now: Moment, shop: &ShopHistory) -> f64 {
        if now <= start || self.label.check().is_err() {
            return 0.0;
        }
        let Ok(stretch) = pace::stretch(&self.chemistry, &self.label, Pace::Slow) else {
            return 0.0;
        };
        let reached = self
            .reached_at(Milestone::FullCure, start, shop)
            .map(|done| done.latest);
        if reached.is_ok_and(|done| now >= done) {
            return 1.0;
        }
        let share = self.used_s(start, now, shop) / (self.label.full.get::<second>() * stretch);
        let degree = match self.chemistry {
            Chemistry::MoistureSilicone { .. } => share.max(0.0).sqrt(),
            _ => share,
        };
        // Short of the end it is short of 1, whatever the last bit of a sum says.
        degree.clamp(0.0, 1.0 - f64::EPSILON)
    }

    fn rate(&self, air: Option<&super::ShopReading>, pace: Pace) -> f64 {
        air.map_or(1.0, |air| pace::rate(&self.chemistry, &self.label, air, pace))
    }

    /// Label seconds used up between two instants, at the slow pace.
    fn used_s(&self, start: Moment, now: Moment, shop: &ShopHistory) -> f64 {
        let stretches = shop.stretches(start);
        if stretches.is_empty() {
            return now.since(start).get::<second>();
        }
        let ends = stretches
            .iter()
            .skip(1)
            .map(|next| next.0)
            .chain([Moment(i64::MAX)]);
        stretches
            .iter()
            .zip(ends)
            .filter(|(stretch, _)| stretch.0 < now)
            .map(|((from, air), to)| {
                self.rate(Some(air), Pace::Slow) * to.min(now).since(*from).get::<second>()
            })
            .sum()
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
