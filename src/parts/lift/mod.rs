//! A lift as it is shown on its step and on the Lift screen.

mod drawing;

pub use drawing::lift_drawing;

use super::dynamic::{memo, piece};
use super::facts::Facts;
use super::plate::told_plate;
use super::ruler::under;
use crate::bench::Bench;
use crate::job::kinds::LiftWork;
use crate::job::kinds::lift::how::how;
use crate::job::kinds::lift::ruler::ruler;
use crate::job::kinds::lift::words::{Headline, headline, rows};
use crate::job::kinds::lift::{self, LiftingAnswer, LiftingError};
use crate::job::scale::Ruler;
use crate::job::sheet::StepId;
use leptos::prelude::*;

/// The lift at hand and its answer; none where the step is no lift step.
pub type Answered = Memo<Option<(LiftWork, Result<LiftingAnswer, LiftingError>)>>;

/// Works the lift at hand out, and again whenever a number of it or the hoist changes.
pub fn answered(step: Option<StepId>) -> Answered {
    let bench = Bench::here();
    memo(move || {
        let work = bench.lift(step)?;
        let answer = bench.settings.with(|s| lift::answer(&work, s.hoist()));
        Some((work, answer))
    })
}

/// The plate with the verdict, and the figures behind it.
pub fn lift_plate(answered: Answered) -> AnyView {
    let bench = Bench::here();
    let told = RwSignal::new(false);
    let unit = memo(move || bench.settings.with(|s| s.lift.unit));
    piece(move || {
        let unit = unit.get();
        answered.with(|found| match found {
            Some((work, answer)) => {
                let facts = rows(work, answer, unit);
                let head = headline(answer, unit);
                let lines = how(work, answer, unit);
                let line = answer.as_ref().ok().and_then(|answer| ruler(work, answer, unit));
                view! {
                    {plate(head, told, lines, line)}
                    <Facts rows=facts />
                }
                .into_any()
            }
            None => ().into_any(),
        })
    })
    .into_any()
}

fn plate(head: Headline, told: RwSignal<bool>, lines: Vec<String>, line: Option<Ruler>) -> AnyView {
    let verdict = if head.refused { "trouble-line mid" } else { "mid" };
    // What may not be lifted by hand is no number to go by.
    let class = if head.refused { "goes not" } else { "goes" };
    view! {
        <div class=class>{told_plate(head.says.to_owned(), head.number, head.unit, told, move || lines.clone())}</div>
        {under(line)}
        <p class=verdict>{head.verdict}</p>
    }
    .into_any()
}
