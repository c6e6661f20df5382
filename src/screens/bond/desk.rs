//! What the Bond screen works on: a walk of its own, kept on the bench, or a step's joint, kept in the sheet.

use crate::bench::Bench;
use crate::device::place;
use crate::job::bonding::{BondAnswer, Walk};
use crate::job::sheet::StepId;
use crate::parts::dynamic::memo;
use crate::trade::application::JointKind;
use leptos::prelude::*;

/// The place of the question "what is joined", which stands before all others.
pub const KIND: &str = "kind";

/// The screen's state.
#[derive(Clone, Copy)]
pub struct Desk {
    pub bench: Bench,
    pub step: Option<StepId>,
    /// The walk as it stands.
    pub walk: Memo<Walk>,
    /// A question asked again.
    pub again: RwSignal<Option<String>>,
    /// An activator goes on first.
    pub activator: RwSignal<bool>,
    /// Something that cures goes on.
    pub cures: Memo<bool>,
    answer: Memo<Option<BondAnswer>>,
    met: RwSignal<Vec<String>>,
}

impl Desk {
    pub fn new(bench: Bench, step: Option<StepId>) -> Self {
        let met = RwSignal::new(Vec::new());
        let walk = memo(move || match step {
            None => bench.settings.with(|settings| settings.walk.clone()),
            Some(id) => Walk {
                joint: bench
                    .sheet
                    .with(|sheet| sheet.step(id)?.work.application().cloned()),
                met: met.get(),
            },
        });
        let activator = RwSignal::new(false);
        let answer = memo(move || {
            walk.with(|walk| {
                let joint = walk.joint.as_ref()?;
                Some(bench.bond(joint, activator.get()))
            })
        });
        Self {
            bench,
            step,
            walk,
            again: RwSignal::new(None),
            activator,
            cures: memo(move || {
                answer.with(|answer| answer.as_ref().is_some_and(|answer| answer.spec.is_some()))
            }),
            answer,
            met,
        }
    }

    /// What goes on, as far as the joint is known.
    pub fn answer(self) -> Option<BondAnswer> {
        self.answer.get()
    }

    /// The step's title, or the screen's name.
    pub fn title(self) -> String {
        let of_step = |id| {
            self.bench
                .sheet
                .with(|sheet| sheet.step(id).map(|step| step.title.clone()))
        };
        self.step.and_then(of_step).unwrap_or_else(|| "Bond".to_owned())
    }

    /// What is joined, in words.
    pub fn kind_words(self) -> &'static str {
        self.walk
            .with(|walk| walk.joint.as_ref().map_or("", |joint| joint.kind.words()))
    }

    /// Answers a question and goes on to the next.
    pub fn choose(self, question: &str, choice: &str) {
        self.again.set(None);
        self.change(|walk| {
            if question == KIND {
                if let Some(kind) = JointKind::from_id(choice) {
                    walk.choose_kind(kind);
                }
            } else {
                // The tiles are the question's own: it has such a choice.
                walk.choose(question, choice).ok();
            }
        });
        place::to_top();
    }

    /// Takes the questions left as not known.
    pub fn leave_the_rest(self) {
        self.again.set(None);
        self.change(Walk::leave_the_rest);
        place::to_top();
    }

    /// Begins with another joint.
    pub fn begin_again(self) {
        self.again.set(None);
        self.bench.walk("another joint", |walk| *walk = Walk::default());
        place::to_top();
    }

    fn change(self, change: impl FnOnce(&mut Walk)) {
        let Some(step) = self.step else {
            return self.bench.walk("answer", change);
        };
        let before = self.walk.get_untracked();
        let mut walk = before.clone();
        change(&mut walk);
        self.met.set(walk.met);
        match walk.joint {
            Some(joint) if before.joint.as_ref() != Some(&joint) => self.bench.answer_for(step, joint),
            _ => {}
        }
    }
}
