//! Cure clocks: recorded instants, from which every state is worked out. Nothing counts down.

use super::date::span_words;
pub use super::id::ClockId;
use super::id::{JobId, StepId};
use crate::trade::cure::{CureSpec, DoneAt, Milestone, NoCure, ShopHistory};
use crate::trade::moment::Moment;
use crate::trade::quantity::fixed;
use serde::{Deserialize, Serialize};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::millisecond;

/// Where a clock belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bound {
    /// The job.
    pub job: JobId,
    /// The step whose joint cures.
    pub step: StepId,
}

/// Why a clock no longer counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ended {
    /// Its start was undone.
    Undone,
    /// The joint was opened again; a new clock takes over.
    Reopened,
    /// Seen finished and put away.
    PutAway,
}

/// One joint curing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CureClock {
    /// Unique on this bench.
    pub id: ClockId,
    /// The joint, in words.
    pub name: String,
    /// The compound, in words.
    pub compound: String,
    /// How it cures.
    pub spec: CureSpec,
    /// When it was put on.
    pub started: Moment,
    /// How far, ms, the phone's clock was held to be ahead of ours then: what it is found to have been right
    /// about passed before this start.
    #[serde(default, skip_serializing_if = "is_nothing")]
    pub held_ms: i64,
    /// The job step it belongs to; none when free-standing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bound: Option<Bound>,
    /// Set when it no longer counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended: Option<Ended>,
}

/// Whether a span is none, and is left out of what is stored.
pub fn is_nothing(ms: &i64) -> bool {
    *ms == 0
}

impl CureClock {
    /// Whether it still stands for a joint.
    pub fn counts(&self) -> bool {
        !matches!(self.ended, Some(Ended::Undone | Ended::Reopened))
    }

    /// Whether it stands for a joint, or would again after an undo.
    pub fn may_count(&self) -> bool {
        self.ended != Some(Ended::Undone)
    }

    /// When that milestone is reached.
    ///
    /// # Errors
    /// [`NoCure`] when the shop is too cold for it, or the compound has no such milestone.
    pub fn reached_at(&self, milestone: Milestone, shop: &ShopHistory) -> Result<DoneAt, NoCure> {
        self.spec.reached_at(milestone, self.started, shop)
    }

    /// Its marks in the order of the milestones; see [`marks`]. While the phone's clock is ahead of ours by `doubted_ms`, and
    /// nobody has said which is right, the harsher clock counts for what must be done before a mark: a phone
    /// asleep gives a bead no more time.
    pub fn marks(&self, shop: &ShopHistory, doubted_ms: i64) -> Vec<Mark> {
        let mut marks = marks(&self.spec, self.started, shop);
        for mark in marks.iter_mut().filter(|mark| mark.last.is_deadline()) {
            mark.done.earliest = self.by_the_harsher(mark.done.earliest, doubted_ms);
        }
        marks
    }

    /// A deadline of this clock, `doubted_ms` as in [`marks`](CureClock::marks).
    pub fn by_the_harsher(&self, deadline: Moment, doubted_ms: i64) -> Moment {
        // What was in doubt already when it went on has not aged it.
        Moment(
            deadline
                .0
                .saturating_sub(doubted_ms.saturating_sub(self.held_ms).max(0)),
        )
    }

    /// Whether it has cured at `now`.
    pub fn ripe(&self, shop: &ShopHistory, now: Moment) -> bool {
        matches!(self.standing(shop, now, 0), Standing::Ripe { .. })
    }

    /// How the time of a milestone comes about, line by line; nothing where it has none.
    pub fn how(&self, milestone: Milestone, shop: &ShopHistory) -> Vec<String> {
        let (Some(label), Ok(done)) = (
            self.spec.label.time_to(milestone),
            self.reached_at(milestone, shop),
        ) else {
            return Vec::new();
        };
        let label_ms = label.get::<millisecond>();
        let spans = [done.earliest, done.latest].map(|at| at.0.saturating_sub(self.started.0));
        let [soon, late] = spans.map(|span| fixed(span as f64 / label_ms, 1));
        let times = match soon == late {
            true => soon,
            false => format!("{soon} to {late}"),
        };
        let air = match done.shop_unknown {
            true => "No shop temperature is told: the label’s is taken. ",
            false => "",
        };
        let damp = match self.spec.goes_by_humidity() {
            true => " Where no humidity is told, 40 to 50 % is taken.",
            false => "",
        };
        // Never told later than a deadline is, nor sooner than a wait is over.
        let end = match milestone.is_deadline() {
            true => format!("The early end counts: {}.", span_words(spans[0] - 30_000)),
            false => format!(
                "The late end counts: {}, and never less than the label.",
                span_words(spans[1].saturating_add(29_999))
            ),
        };
        let mut lines = vec![
            format!(
                "{}: {} {} at {} °C by the label, from when it was put on.",
                self.name,
                milestone.words(),
                span_words(label_ms as i64),
                fixed(self.spec.label.at.get::<degree_celsius>(), 0)
            ),
            format!("{air}Here {times} times as long.{damp}"),
            end,
            "Half as fast for each 10 K colder, slower on slow metals and across a gap: common practice, as a range; the label in your hand comes first.".to_owned(),
        ];
        if self.spec.from_outside() {
            lines.push("Between faces the edge has cured by then, and the edge is the seal: the middle of a wide land follows later.".to_owned());
        }
        lines
    }

    /// Where it stands at `now`, `doubted_ms` as in [`marks`](CureClock::marks).
    pub fn standing(&self, shop: &ShopHistory, now: Moment, doubted_ms: i64) -> Standing {
        match self.reached_at(Milestone::FullCure, shop) {
            Err(why) => Standing::Stalled(why),
            Ok(full) if full.latest <= now => Standing::Ripe { since: full.latest },
            Ok(full) => {
                let mut marks = self.marks(shop, doubted_ms).into_iter();
                let next = marks.find(|mark| mark.at() > now);
                Standing::Running(next.unwrap_or(Mark {
                    first: Milestone::FullCure,
                    last: Milestone::FullCure,
                    done: full,
                    from_outside: self.spec.from_outside(),
                }))
            }
        }
    }

    /// The furthest mark reached at `now`, `doubted_ms` as in [`marks`](CureClock::marks).
    pub fn reached(&self, shop: &ShopHistory, now: Moment, doubted_ms: i64) -> Option<Mark> {
        let marks = self.marks(shop, doubted_ms).into_iter();
        marks.rev().find(|mark| mark.at() <= now)
    }
}

/// One mark on a clock: a milestone, or several the label names one time for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    /// The first of them.
    pub first: Milestone,
    /// The last of them.
    pub last: Milestone,
    /// When they are reached.
    pub done: DoneAt,
    /// It cures from outside inwards: by full cure its edge has.
    pub from_outside: bool,
}

impl Mark {
    /// The instant to go by: the early end of a deadline, the late end of anything else.
    pub fn at(&self) -> Moment {
        self.done.binding(self.last)
    }

    /// What it is called before its time: of several milestones the ones most asked for.
    pub fn words(&self) -> String {
        self.each(Milestone::words)
    }

    /// What it means once it is reached.
    pub fn reached_words(&self) -> String {
        self.each(Milestone::reached_words)
    }

    fn each(&self, words: fn(Milestone) -> &'static str) -> String {
        let oil = Milestone::FitForOil;
        let own = self.last.words_from_outside().filter(|_| self.from_outside);
        let last = own.unwrap_or_else(|| words(self.last));
        if self.first <= oil && oil < self.last {
            format!("{}, {last}", words(oil))
        } else {
            last.to_owned()
        }
    }
}

/// The marks on the way of a compound that went on at `started`. A milestone without a time has none.
pub fn marks(spec: &CureSpec, started: Moment, shop: &ShopHistory) -> Vec<Mark> {
    let mut marks: Vec<Mark> = Vec::new();
    for milestone in Milestone::ALL {
        let Ok(done) = spec.reached_at(milestone, started, shop) else {
            continue;
        };
        match marks.last_mut() {
            Some(mark) if mark.done == done && !mark.last.is_deadline() => mark.last = milestone,
            _ => marks.push(Mark {
                first: milestone,
                last: milestone,
                done,
                from_outside: spec.from_outside(),
            }),
        }
    }
    marks
}

/// The clocks that have not ended in the order to look at them: what is to be done before a mark first, then what
/// is waited for, each the soonest first; what does not cure; what is ripe, the latest first. `doubted_ms` as in
/// [`CureClock::marks`].
pub fn in_order(clocks: &[CureClock], shop: &ShopHistory, now: Moment, doubted_ms: i64) -> Vec<ClockId> {
    let rank = |clock: &CureClock| match clock.standing(shop, now, doubted_ms) {
        Standing::Running(mark) if mark.last.is_deadline() => (0, mark.at().0),
        Standing::Running(mark) => (1, mark.at().0),
        Standing::Stalled(_) => (2, 0),
        Standing::Ripe { since } => (3, since.0.saturating_neg()),
    };
    let live = clocks.iter().filter(|clock| clock.ended.is_none());
    let mut all: Vec<_> = live.map(|clock| (rank(clock), clock.id)).collect();
    all.sort_unstable();
    all.into_iter().map(|(_, id)| id).collect()
}

/// Where a clock stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Standing {
    /// Not ripe yet: what comes next.
    Running(Mark),
    /// Ripe for everything since then.
    Ripe { since: Moment },
    /// It does not get there as things are.
    Stalled(NoCure),
}
