//! What is chosen by size: the codes it goes by, and what was put in.

use super::draft::Draft;
use super::step::Outcome;
use super::{Ask, Intent, Name, Refused, State};
use crate::job::kinds::select::By;
use crate::job::kinds::select::answer::{self, Advice, aim, sum};
use crate::job::kinds::select::judge::verdict;
use crate::job::kinds::select::shared::same;
use crate::job::kinds::select::words::elsewhere_words;
use crate::job::kinds::{Piece, Select, Work};
use crate::job::record::Event;
use crate::job::sheet::{Step, StepId};
use crate::trade::quantity::Unit;
use crate::trade::selection::tidy;

/// More of one thickness than this was mistyped.
const MOST_OF_ONE: u32 = 99;
/// Thicker than this is no shim, in whatever unit.
const THICKEST: f64 = 1_000.0;

impl State {
    pub(super) fn select_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::Code { step, down, across } => self.code(draft, *step, down, across),
            Intent::Choose { step, pieces } => self.choose(draft, *step, pieces),
            _ => return None,
        })
    }

    /// What a select step would put in now, as far as anything can be said.
    pub fn advice(&self, step: &Step) -> Advice {
        match &step.work {
            Work::Select(select) => {
                let gone: Vec<Piece> = self.elsewhere(step).into_iter().map(|(piece, _)| piece).collect();
                answer::advice(select, &self.progress(step.id), &gone)
            }
            _ => Advice::Nothing,
        }
    }

    /// What other steps of the job have in out of that step's box, in its unit, each with the step's place
    /// in the plan from 1.
    pub fn elsewhere(&self, step: &Step) -> Vec<(Piece, usize)> {
        let Work::Select(select) = &step.work else {
            return Vec::new();
        };
        let job = self.job();
        let others = job
            .sheet
            .steps
            .iter()
            .zip(1..)
            .filter(|(other, _)| match &other.work {
                Work::Select(box_of) => other.id != step.id && select.shares_with(box_of),
                _ => false,
            });
        let in_others = others.flat_map(|(other, number)| {
            let last = job
                .progress
                .touched(other.id)
                .and_then(|progress| progress.rounds.last());
            let pieces = last.map_or(Vec::new(), |round| select.in_own_unit(&round.pieces, &round.unit));
            pieces.into_iter().map(move |piece| (piece, number))
        });
        in_others.collect()
    }

    /// What the step may take one more of.
    pub fn there(&self, step: &Step) -> Vec<Piece> {
        let Work::Select(select) = &step.work else {
            return Vec::new();
        };
        let gone: Vec<Piece> = self.elsewhere(step).into_iter().map(|(piece, _)| piece).collect();
        select.there(&gone)
    }

    /// Why something else is offered than the whole box would give: what of that is in elsewhere.
    pub fn missing_words(&self, step: &Step) -> Vec<String> {
        let Work::Select(select) = &step.work else {
            return Vec::new();
        };
        let elsewhere = self.elsewhere(step);
        let whole = match answer::advice(select, &self.progress(step.id), &[]) {
            advice if advice == self.advice(step) => return Vec::new(),
            Advice::Pack(offer) => offer.pieces,
            Advice::Part(piece) => vec![piece],
            // Nothing that was wanted is named: all that is gone may be what lacks.
            _ => Vec::new(),
        };
        let wanted = |piece: &Piece| whole.is_empty() || whole.iter().any(|own| same(own, piece));
        let unit = select.unit.symbol();
        let lines = elsewhere.iter().filter(|(piece, _)| wanted(piece));
        lines
            .map(|(piece, step)| format!("{}.", elsewhere_words(piece, unit, *step)))
            .collect()
    }

    /// What one touch of the key puts in; none where there is nothing that fits.
    pub fn offered(&self, step: &Step) -> Option<Vec<Piece>> {
        match self.advice(step) {
            Advice::Pack(offer) => Some(offer.pieces),
            Advice::Part(piece) => Some(vec![piece]),
            Advice::Nothing
            | Advice::Miss { .. }
            | Advice::InElsewhere(_)
            | Advice::OutOfTable(_)
            | Advice::NoSuchCodes
            | Advice::Change(_)
            | Advice::Thicker(_) => None,
        }
    }

    fn selecting(&self, step: StepId, draft: &Draft<'_>) -> Result<(&Select, Ask), Refused> {
        let (step, ask) = self.ready(step, draft)?;
        match &step.work {
            Work::Select(select) => Ok((select, ask)),
            _ => Err(Refused::NoStep),
        }
    }

    fn code(&self, draft: &mut Draft<'_>, step: StepId, down: &str, across: &str) -> Result<Name, Refused> {
        self.selecting(step, draft)?;
        let (down, across) = (down.trim().to_owned(), across.trim().to_owned());
        if down.is_empty() || across.is_empty() {
            return Err(Refused::NoCodes);
        }
        draft.line(Some(step), Event::Coded { down, across });
        Ok(Name::Lines)
    }

    fn choose(&self, draft: &mut Draft<'_>, step: StepId, pieces: &[Piece]) -> Result<Name, Refused> {
        let (select, ask) = self.selecting(step, draft)?;
        let progress = self.progress(step);
        // What it goes by comes first: the gap, or the codes.
        if progress.rounds.is_empty() && matches!(ask, Ask::Read(_) | Ask::Code) {
            let found = self.step(step).ok_or(Refused::NoStep)?;
            return Err(self.held(found, &ask).unwrap_or(Refused::NothingChosen));
        }
        let makes_sense = |piece: &Piece| {
            let thick = piece.thick.is_none_or(|thick| thick > 0.0 && thick <= THICKEST);
            let named = piece.thick.is_some() || !piece.code.trim().is_empty();
            thick && named && (1..=MOST_OF_ONE).contains(&piece.count)
        };
        if !pieces.iter().all(makes_sense) || (pieces.is_empty() && select.shims.is_empty()) {
            return Err(Refused::NoSense(
                "Say what was put in: a thickness above zero, or what the manual calls it.",
            ));
        }
        let aim = aim(select, &progress).and_then(Result::ok);
        // A size looked up in a table is no thickness that is wanted; after a trial its reading says more
        // than the gap.
        let first = progress.rounds.is_empty() || select.trial.is_none();
        let aim = aim.filter(|_| select.by == By::Gap && first);
        let left = |gap: f64| sum(pieces).map(|sum| tidy(gap - sum));
        let event = Event::Chosen {
            round: progress.rounds.len() as u32 + 1,
            pieces: pieces.to_vec(),
            unit: select.unit.symbol().to_owned(),
            aim: aim.map(|aim| aim.pack),
            leaves: aim.and_then(|aim| left(aim.gap)),
            verdict: verdict(select, &progress, pieces),
        };
        draft.line(Some(step), event);
        Ok(Name::Lines)
    }
}
