//! What is wrong with what was put in.

use super::answer::{Advice, aim, first, result, round, sum};
use super::data::{By, Piece, Select, Shim};
use crate::job::progress::StepProgress;
use crate::job::reading::{Verdict, What};
use crate::trade::selection::tidy;

/// Whether shims that lie only between two others have one on either side.
pub fn stacks(shims: &[Shim], pieces: &[Piece]) -> bool {
    let same = |shim: &&Shim, piece: &Piece| piece.thick.is_some_and(|thick| tidy(shim.thick - thick) == 0.0);
    let outer = |piece: &&Piece| {
        let mut own = shims.iter().filter(|shim| same(shim, piece)).peekable();
        own.peek().is_none() || own.any(|shim| !shim.between)
    };
    let count = |all: &[&Piece]| all.iter().map(|piece| piece.count).sum::<u32>();
    let (outer, between): (Vec<&Piece>, Vec<&Piece>) = pieces.iter().partition(outer);
    count(&between) == 0 || count(&outer) >= 2
}

/// What the plan says of what is put in. Where it is tried afterwards the trial says the rest.
pub fn verdict(select: &Select, progress: &StepProgress, pieces: &[Piece]) -> Verdict {
    if !stacks(&select.shims, pieces) {
        return Verdict::Outside;
    }
    if select.trial.is_some() {
        return Verdict::Noted;
    }
    let one = |wanted: &Piece| match pieces {
        [piece] => {
            piece.code.eq_ignore_ascii_case(&wanted.code)
                && (piece.thick == wanted.thick || wanted.thick.is_none())
        }
        _ => false,
    };
    match (select.by, first(select, progress, &[])) {
        (By::Range | By::Code, Advice::Part(wanted) | Advice::InElsewhere(wanted)) => {
            Verdict::of(Some(one(&wanted)))
        }
        (By::Range | By::Code, _) => Verdict::Outside,
        (By::Trial, _) => Verdict::Noted,
        (By::Gap, _) => match aim(select, progress) {
            None => Verdict::Noted,
            Some(Err(_)) => Verdict::Outside,
            Some(Ok(aim)) => {
                let within = |(low, high): (f64, f64)| {
                    sum(pieces).is_some_and(|sum| tidy(sum - low) >= 0.0 && tidy(high - sum) >= 0.0)
                };
                Verdict::of(aim.window.map(within))
            }
        },
    }
}

/// What is wrong beyond a single reading: what is in, or a turning torque less its drag.
pub fn findings(select: &Select, progress: &StepProgress) -> Vec<What> {
    let Some(round) = round(select, progress) else {
        return Vec::new();
    };
    let pack = verdict(select, progress, &round.pieces) == Verdict::Outside;
    let trial = select.trial.as_ref().filter(|trial| trial.loose);
    let dragged = trial.is_some_and(|trial| {
        result(select, trial, progress).is_some_and(|read| trial.holds(read) == Some(false))
    });
    let found = [(pack, What::Pack), (dragged, What::Trial)];
    found
        .into_iter()
        .filter(|(is, _)| *is)
        .map(|(_, what)| what)
        .collect()
}
