//! What pulls in a bolt that is tightened by angle or by stretch, and what has to be said of it.

use super::data::{Fasten, Reuse};
use crate::trade::application::JointKind;
use crate::trade::compound::{CompoundClass, recommend};
use crate::trade::preload::{Condition, Preload};
use crate::trade::quantity::{Angle, Length, Unit, significant};
use crate::trade::stages::total_angle;
use crate::trade::stretch::{Shank, StretchError, drawn};
use crate::trade::thread::Thread;
use uom::si::angle::degree;
use uom::si::force::kilonewton;
use uom::si::length::millimeter;

impl Fasten {
    /// Whether its torque says nothing of its pull: an angle follows it, or it is stretched past its yield.
    pub fn torque_tells_no_pull(&self) -> bool {
        self.turned() || self.to_yield
    }

    /// The bolt as a spring, where thread and grip are told.
    pub fn shank(&self) -> Option<Shank> {
        Some(Shank {
            thread: self.thread.filter(|thread| !thread.is_pipe())?,
            strength: self.strength,
            grip: Length::new::<millimeter>(self.grip_mm?),
            plain: Length::new::<millimeter>(self.plain_mm.unwrap_or(0.0)),
            diameter: self.shank_mm.map(Length::new::<millimeter>),
        })
    }

    /// "it pulls 22–28 kN", for a stretch in mm; what is wrong where it gives no pull; none where the grip
    /// isn't told, or the bolt is past its yield.
    pub fn pull_of_stretch(&self, mm: f64) -> Option<String> {
        let shank = self.shank().filter(|_| !self.to_yield)?;
        Some(stretch_words(&shank, mm))
    }

    /// What the manual's stretch pulls, and what the turn draws: everything that stands beside the torque.
    pub fn pull_words(&self) -> Vec<String> {
        let mut lines = Vec::new();
        let stated = self.stated_lengths();
        let stretches = [stated.stretch_least, stated.stretch_most];
        let pulls = stretches.into_iter().flatten().filter_map(|stretch| {
            let words = self.pull_of_stretch(stated.millimetres(Some(stretch))?)?;
            let unit = stated.unit.symbol();
            Some(format!("At {} {unit} of stretch {words}.", stretch.text()))
        });
        lines.extend(pulls);
        let turn = total_angle(&self.stages);
        if let Some(thread) = self.thread.filter(|_| self.turned()) {
            lines.extend(turn_words(thread, turn));
        }
        if self.torque_tells_no_pull() {
            lines.push(NO_PULL.to_owned());
        }
        lines.extend(self.once_words().map(str::to_owned));
        lines.extend(self.by_compound_words());
        lines.extend(self.thread_condition().note().map(str::to_owned));
        lines
    }

    /// The state of the thread that its pull goes by: as told, else as the compound leaves it that the
    /// manual names or that goes on it for sure; else not known.
    pub fn thread_condition(&self) -> Condition {
        match self.condition {
            Condition::Unknown => self
                .by_compound()
                .map_or(Condition::Unknown, |(_, condition)| condition),
            told => told,
        }
    }

    /// What goes on its thread, and the state that leaves it in; none where nothing does, or nobody knows.
    fn by_compound(&self) -> Option<(CompoundClass, Condition)> {
        let joint = self.compound.as_ref()?;
        // Of a plug's or a washer's the oil goes on the ring.
        let on_thread = [
            JointKind::ThreadedFastener,
            JointKind::Stud,
            JointKind::SparkPlug,
            JointKind::Exhaust,
        ];
        let answer = recommend(joint);
        let class = answer.class.filter(|_| on_thread.contains(&joint.kind))?;
        let named = joint.manual.is_some_and(|word| class.named_by(word));
        let condition = class.thread_condition()?;
        // An open answer may yet choose another: then the wider range holds. Paste pulls hardest, so it counts.
        let sure = named || answer.assumed.is_empty() || condition == Condition::Paste;
        sure.then_some((class, condition))
    }

    /// What its pull goes by, where nobody told the thread's state.
    pub fn supposed_by(&self) -> Option<CompoundClass> {
        let supposed = self
            .by_compound()
            .filter(|_| self.condition == Condition::Unknown)?;
        Some(supposed.0)
    }

    /// That the pull goes by what is put on, where nobody told the thread's state.
    fn by_compound_words(&self) -> Option<String> {
        let class = self.supposed_by()?;
        let condition = class.thread_condition()?;
        Some(format!(
            "With {} on it the thread is taken as {}: the pull goes by that, the manual’s torque stays.",
            class.name(),
            match condition {
                Condition::Paste => format!("one {}", condition.of_thread()),
                other => other.of_thread(),
            }
        ))
    }

    /// That they are used once, where the manual hasn't said how often.
    fn once_words(&self) -> Option<&'static str> {
        let limited = self.most_uses.is_some() || self.stated_lengths().longest.is_some();
        (self.torque_tells_no_pull() && self.reuse == Reuse::Again && !limited).then_some(ONCE)
    }
}

/// Of a bolt that is turned on, or stretched past its yield.
pub const NO_PULL: &str = "Nothing is said of its pull: here the torque doesn’t decide it.";

/// Of a bolt that is turned on (common practice).
pub const ONCE: &str =
    "Bolts turned on by an angle or past their yield are used once, unless the manual says otherwise.";

/// "The turn of 90° draws 0.38 mm (a quarter of the pitch and so on)": P·φ/360.
pub fn turn_words(thread: Thread, turn: Angle) -> Option<String> {
    let drawn = drawn(thread, turn).ok()?;
    Some(format!(
        "Turning on by {}° draws {} mm on {}: the bolt’s stretch and the squeeze of the parts together.",
        significant(turn.get::<degree>(), 3),
        significant(drawn.get::<millimeter>(), 2),
        thread.name()
    ))
}

/// "it pulls 22–28 kN".
pub fn stretch_words(shank: &Shank, mm: f64) -> String {
    match shank.pull(Length::new::<millimeter>(mm)) {
        Ok(Preload { low, high }) => format!(
            "it pulls {}–{} kN while it is elastic",
            significant(low.get::<kilonewton>(), 2),
            significant(high.get::<kilonewton>(), 2)
        ),
        Err(StretchError::Stretch) if mm <= 0.0 => "it pulls nothing".to_owned(),
        Err(why) => why.to_string(),
    }
}
