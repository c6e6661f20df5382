//! What Seat and Lift share: a screen that works out its answer from its own numbers or from a step's.

use super::dynamic::{memo, press, text, whether};
use super::field_table::field_table;
use super::picker::picker;
use super::work_keys::UndoKey;
use crate::bench::Bench;
use crate::job::field::Number;
use crate::job::kinds::Work;
use crate::job::sheet::StepId;
use crate::trade::caution::Caution;
use leptos::prelude::*;

/// One kind of work that such a screen answers for.
pub trait Worked: Clone + PartialEq + Send + Sync + 'static {
    /// The screen's title where no step has lent its own.
    const TITLE: &'static str;
    /// Said for a step of another kind.
    const NOT_THIS_STEP: &'static str;

    /// The work at hand: that of a step, or the screen's own.
    fn at_hand(bench: Bench, step: Option<StepId>) -> Option<Self>;

    /// Changes the work at hand; `words` name the change for undo.
    ///
    /// # Errors
    /// What makes no sense, and what to do.
    fn change(
        bench: Bench,
        step: Option<StepId>,
        words: &'static str,
        change: &dyn Fn(&mut Self),
    ) -> Result<(), String>;

    /// The same as a step holds it.
    fn into_work(self) -> Work;
}

/// What every part of the form needs.
pub struct Form<W: Worked> {
    pub bench: Bench,
    pub step: Option<StepId>,
    pub work: Memo<Option<W>>,
}

impl<W: Worked> Clone for Form<W> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<W: Worked> Copy for Form<W> {}

impl<W: Worked> Form<W> {
    /// The form of a step, or the screen's own.
    pub fn of(step: Option<StepId>) -> Self {
        let bench = Bench::here();
        Self {
            bench,
            step,
            work: memo(move || W::at_hand(bench, step)),
        }
    }

    /// A choice among words: what holds, and what a pick changes.
    pub fn choice(
        self,
        name: &'static str,
        options: &[&'static str],
        holds: fn(&W) -> usize,
        change: fn(&mut W, usize),
    ) -> AnyView {
        let words: Vec<String> = options.iter().map(|&words| words.to_owned()).collect();
        let shown = words.clone();
        let value = text(move || {
            let at = self.work.with(|work| work.as_ref().map(holds));
            at.and_then(|at| shown.get(at).cloned()).unwrap_or_default()
        });
        let pick = Callback::new(move |at: usize| {
            if let Err(words) = W::change(self.bench, self.step, name, &|work| change(work, at)) {
                self.bench.say(words, false);
            }
        });
        picker(name, value, words, pick)
    }

    /// Numbers to type.
    pub fn numbers(self, table: &'static [Number<W>]) -> AnyView {
        let change = Callback::new(move |(field, kept): (&'static Number<W>, f64)| {
            W::change(self.bench, self.step, field.name, &|work| (field.set)(work, kept))
        });
        field_table(table, self.work, change)
    }

    /// The cautions of the work at hand.
    pub fn cautions(self) -> Memo<Vec<Caution>> {
        memo(move || {
            let work = self.work.get();
            work.map_or(Vec::new(), |work| {
                self.bench.cautions_of(&work.into_work(), self.step)
            })
        })
    }

    /// The screen: its answer beside the form it comes from; `back` goes to the step that lent its numbers.
    pub fn screen(self, back: fn(StepId), answer: Vec<AnyView>, fields: Vec<AnyView>) -> AnyView {
        let none = whether(move || self.work.with(Option::is_none));
        view! {
            <div class="worked">
                <div class="worked-answer">
                    {head(self.bench, self.step, W::TITLE, back)}
                    <p class="trouble-line" hidden=whether(move || !none.get())>{W::NOT_THIS_STEP}</p>
                    {answer}
                </div>
                <div class="worked-form" hidden=none>
                    {fields}
                    <UndoKey />
                </div>
            </div>
        }
        .into_any()
    }
}

/// The screen's title, or the step's with the way back to it.
fn head(bench: Bench, step: Option<StepId>, name: &'static str, back: fn(StepId)) -> AnyView {
    let Some(id) = step else {
        return view! { <h1>{name}</h1> }.into_any();
    };
    let title = text(move || {
        bench
            .sheet
            .with(|sheet| sheet.step(id).map_or(String::new(), |step| step.title.clone()))
    });
    view! {
        <header class="of-step">
            <h1>{title}</h1>
            <button class="side-key" on:click=press(move || back(id))>
                "back to the step"
            </button>
        </header>
    }
    .into_any()
}
