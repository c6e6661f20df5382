//! The slip guard as the screen shows it: a mark, a line, bars, and keys that correct the entry.

use super::adapter::scaled;
use super::kinds::Fasten;
use super::kinds::fasten::sealing;
use crate::trade::guard::{Fastener, GuardError, Joint, Judgement, Slip, Verdict, judge, judge_snug};
use crate::trade::preload::{Condition, Preload, preload};
use crate::trade::quantity::{Force, TorqueStatement, TorqueUnit, significant};
use crate::trade::stages::{Act, Stage};
use crate::trade::strength::{Strength, proof_load};
use serde::{Deserialize, Serialize};
use uom::si::force::kilonewton;

/// Most readings offered as keys.
const MOST_READINGS: usize = 3;

/// The bolt as far as it is known, and what it is there for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct KnownBolt {
    /// Thread, what it is, class, material, condition.
    pub joint: Joint,
    /// It seals rather than clamps: all that an earlier form said of what it is.
    #[serde(default)]
    pub seal: bool,
}

impl KnownBolt {
    /// The bolt of a fasten step; none where its thread isn't stated.
    pub fn of(fasten: &Fasten) -> Option<Self> {
        Some(Self {
            joint: fasten.joint()?,
            seal: fasten.seal,
        })
    }

    /// The same with its thread's state only where that was told: what the user's own desk may take over.
    pub fn told(fasten: &Fasten) -> Option<Self> {
        let mut bolt = Self::of(fasten)?;
        bolt.joint.condition = fasten.condition;
        Some(bolt)
    }

    /// What it is, whichever form said so.
    pub fn what_it_is(&self) -> Fastener {
        sealing(self.joint.fastener, self.seal)
    }

    /// Takes what it is.
    pub fn take_fastener(&mut self, fastener: Fastener) {
        self.joint.fastener = fastener;
        self.seal = fastener == Fastener::Plug;
    }

    /// The joint as the guard sees it.
    fn seen(&self) -> Joint {
        Joint {
            fastener: self.what_it_is(),
            ..self.joint
        }
    }

    /// The bolt in words: "M6 8.8 in cast aluminium".
    pub fn words(&self) -> String {
        let class = self
            .joint
            .strength
            .map_or(String::new(), |class| format!(" {}", class.name()));
        let into = self
            .joint
            .material
            .map_or(String::new(), |material| format!(" in {}", material.words()));
        let what = self.what_it_is().behind();
        format!("{}{class}{what}{into}", self.joint.thread.name())
    }
}

/// A pull as a share of what something bears.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// What bears it, with its load: "proof load 11.6 kN".
    pub name: String,
    /// Least share; 1 is all of it.
    pub low: f64,
    /// Most.
    pub high: f64,
}

/// A reading that would make sense, ready to be taken.
#[derive(Debug, Clone, PartialEq)]
pub struct Correction {
    /// On its key: "9 N·m".
    pub words: String,
    /// What is then entered.
    pub statement: TorqueStatement,
}

/// The guard's answer, laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct GuardAnswer {
    /// How it sits.
    pub verdict: Verdict,
    /// A mark that needs no colour.
    pub mark: &'static str,
    /// The bolt and the verdict: "M6 8.8: plausible".
    pub line: String,
    /// What is wrong and what may have been meant.
    pub sentence: String,
    /// The pull: "7.1–13.2 kN"; empty where the torque tells none.
    pub pull: String,
    /// The pull against proof and strip load.
    pub bars: Vec<Bar>,
    /// Likely readings, none above what is entered.
    pub corrections: Vec<Correction>,
    /// What it may be, where that is asked first.
    pub what_is_it: &'static [Fastener],
}

impl GuardAnswer {
    /// Takes back what was said of the pull: an angle decides it, or the bolt is past its yield.
    pub fn claim_no_pull(&mut self) {
        self.pull.clear();
        self.bars.clear();
    }
}

/// What the guard says of `statement` on `bolt`; nothing where there is nothing to judge.
pub fn guard(statement: &TorqueStatement, bolt: &KnownBolt) -> Option<GuardAnswer> {
    guard_turned(statement, bolt, false)
}

/// What it says of a torque with or without a turn behind it: with one it is only where the turn starts.
pub fn guard_turned(statement: &TorqueStatement, bolt: &KnownBolt, turned: bool) -> Option<GuardAnswer> {
    let judgement = judged(statement, bolt, judge_of(turned))?;
    Some(said_of(statement, bolt, judgement, turned))
}

/// What it says of such a torque of a fasten step, whose thread may be in a state that nobody told.
fn guard_in(fasten: &Fasten, statement: &TorqueStatement, turned: bool) -> Option<GuardAnswer> {
    let (bolt, by) = (KnownBolt::of(fasten)?, judge_of(turned));
    let mut judgement = judged(statement, &bolt, by)?;
    if let Some(put_on) = fasten.supposed_by().filter(|_| judgement.too_high) {
        let told = judged(statement, &KnownBolt::told(fasten)?, by)?;
        if told.verdict == Verdict::Plausible {
            judgement = judgement.only_by(&bolt.seen(), put_on.name());
        }
    }
    Some(said_of(statement, &bolt, judgement, turned))
}

fn judge_of(turned: bool) -> Judge {
    if turned { judge_snug } else { judge }
}

fn said_of(statement: &TorqueStatement, bolt: &KnownBolt, judgement: Judgement, turned: bool) -> GuardAnswer {
    let mut answer = laid_out(statement, bolt, judgement);
    if turned && answer.verdict == Verdict::Plausible {
        answer.line = format!("{}: a start for the turn", bolt.words());
    }
    answer
}

/// What it says of a fasten step's torque.
pub fn guard_fasten(fasten: &Fasten) -> Option<GuardAnswer> {
    let mut answer = guard_in(fasten, &fasten.torque, fasten.turned())?;
    if fasten.torque_tells_no_pull() {
        answer.claim_no_pull();
    }
    Some(answer)
}

/// Why the guard says nothing of a fasten step's torque; none where it says something.
pub fn silent_words(fasten: &Fasten) -> Option<&'static str> {
    match fasten.thread {
        None => Some("Thread not stated: nobody checks this torque against it."),
        Some(thread) if thread.is_pipe() => Some("A pipe thread: nobody checks this torque against it."),
        Some(_) => None,
    }
}

/// What it says of the other torques of a fasten step that it doubts: a group's, or a stage's that is too
/// much, or no start for the turn behind it. "stage 1: That would hardly bring an M8 to its seat…"
pub fn guard_others(fasten: &Fasten) -> Vec<String> {
    let Some(bolt) = KnownBolt::of(fasten) else {
        return Vec::new();
    };
    let groups = fasten.groups.iter().filter_map(|group| {
        let place = *group.places.first()?;
        let said = guard_fasten(&fasten.at(place))?;
        (said.verdict != Verdict::Plausible)
            .then(|| format!("bolt {}: {}", fasten.name(place), said.sentence))
    });
    let stages = fasten.stages.iter().zip(1..).filter_map(|(stage, number)| {
        let torque = stage.act.torque().filter(|torque| **torque != fasten.torque)?;
        let turned = fasten.stages.iter().skip(number).any(is_angle);
        let said = match turned {
            true => guard_in(fasten, torque, true).filter(|said| said.verdict != Verdict::Plausible)?,
            // It is raised by the stages behind it.
            false => guard_in(fasten, torque, false).filter(|_| too_high(torque, &bolt))?,
        };
        Some(format!("stage {number}: {}", said.sentence))
    });
    groups.chain(stages).collect()
}

fn is_angle(stage: &Stage) -> bool {
    matches!(stage.act, Act::Angle { .. })
}

fn too_high(statement: &TorqueStatement, bolt: &KnownBolt) -> bool {
    judgement(statement, bolt).is_some_and(|judgement| judgement.too_high)
}

/// The bare judgement.
pub(super) fn judgement(statement: &TorqueStatement, bolt: &KnownBolt) -> Option<Judgement> {
    judged(statement, bolt, judge)
}

/// A judgement of the guard.
type Judge = fn(f64, TorqueUnit, &Joint) -> Result<Judgement, GuardError>;

fn judged(statement: &TorqueStatement, bolt: &KnownBolt, by: Judge) -> Option<Judgement> {
    // A pipe thread clamps nothing: there is nothing to judge its torque by.
    if bolt.joint.thread.is_pipe() {
        return None;
    }
    by(statement.target, statement.unit, &bolt.seen()).ok()
}

fn mark(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Plausible => "✓",
        Verdict::High => "▲",
        Verdict::Low => "▼",
        Verdict::Absurd => "✕",
    }
}

fn laid_out(statement: &TorqueStatement, bolt: &KnownBolt, judgement: Judgement) -> GuardAnswer {
    GuardAnswer {
        verdict: judgement.verdict,
        mark: mark(judgement.verdict),
        line: format!("{}: {}", bolt.words(), judgement.verdict.words()),
        pull: borne_words(bolt, judgement.preload),
        bars: bars(bolt, &judgement),
        corrections: judgement
            .readings
            .iter()
            .take(MOST_READINGS)
            .map(|reading| {
                let moved = scaled(statement, reading.value / statement.target);
                let statement = match reading.why {
                    Slip::OtherUnit => TorqueStatement {
                        unit: reading.unit,
                        ..*statement
                    },
                    Slip::DecimalPoint { shift } => TorqueStatement {
                        decimals: (i16::from(statement.decimals) - i16::from(shift)).clamp(0, 6) as u8,
                        ..moved
                    },
                };
                Correction {
                    words: statement.text(),
                    statement,
                }
            })
            .collect(),
        what_is_it: if judgement.what_is_it {
            &Fastener::ALL[1..]
        } else {
            &[]
        },
        sentence: judgement.sentence,
    }
}

/// The pull; of a hollow bolt, with what its class would have told of a solid one.
fn borne_words(bolt: &KnownBolt, pull: Preload) -> String {
    let words = pull_words(pull);
    let hollow = bolt.joint.strength.is_some() && bolt.what_it_is().is_hollow();
    match hollow {
        true => format!("{words}. It is hollow: its class does not tell what it bears."),
        false => words,
    }
}

fn bars(bolt: &KnownBolt, judgement: &Judgement) -> Vec<Bar> {
    let joint = &bolt.joint;
    let proof = judgement
        .proof_share
        .zip(joint.strength)
        .map(|((low, high), class)| Bar {
            name: format!("proof load {} kN", kilonewtons(proof_load(joint.thread, class))),
            low,
            high,
        });
    let strip = judgement
        .strip_share
        .zip(joint.strip_load())
        .map(|((low, high), (weak, strong))| Bar {
            name: format!("strip load {}–{} kN", kilonewtons(weak), kilonewtons(strong)),
            low,
            high,
        });
    proof.into_iter().chain(strip).collect()
}

/// "42–84 % of proof load 11.6 kN".
impl Bar {
    /// The bar in words, for those who don't see it.
    pub fn words(&self) -> String {
        format!(
            "{:.0}–{:.0} % of {}",
            self.low * 100.0,
            self.high * 100.0,
            self.name
        )
    }
}

/// The pull each condition of the thread would give at this torque: the torque stays, the pull changes.
pub fn pulls(statement: &TorqueStatement, joint: &Joint) -> Vec<(Condition, String)> {
    let stainless = joint.strength.is_none_or(Strength::is_stainless);
    Condition::ALL
        .into_iter()
        .filter(|condition| {
            *condition != Condition::StainlessDry || stainless || *condition == joint.condition
        })
        .filter_map(|condition| {
            let pull = preload(statement.torque(), joint.thread, condition).ok()?;
            Some((condition, pull_words(pull)))
        })
        .collect()
}

fn pull_words(pull: Preload) -> String {
    format!("{}–{} kN", kilonewtons(pull.low), kilonewtons(pull.high))
}

fn kilonewtons(force: Force) -> String {
    significant(force.get::<kilonewton>(), 3)
}
