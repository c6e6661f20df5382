//! A torque printed twice: whether the two agree, and which is off.

use super::guarding::{KnownBolt, judgement};
use crate::trade::guard::Verdict;
use crate::trade::pair::{Agreement, Likely, Side, agree};
use crate::trade::quantity::{TorqueStatement, print_torque, significant};

/// Most ways out offered as keys.
const MOST_FIXES: usize = 3;
/// Most ways out named in words.
const MOST_NAMED: usize = 2;

/// A way out of a disagreement.
#[derive(Debug, Clone, PartialEq)]
pub struct Fix {
    /// On its key: "10.3 ft·lb".
    pub words: String,
    /// The first statement then.
    pub first: TorqueStatement,
    /// The second.
    pub second: TorqueStatement,
}

/// The two against each other.
#[derive(Debug, Clone, PartialEq)]
pub struct PairAnswer {
    /// They state one torque.
    pub agree: bool,
    /// What to make of it.
    pub sentence: String,
    /// Likely readings that would agree, none that raises a torque: those are named in the sentence.
    pub fixes: Vec<Fix>,
}

/// Compares two statements of one torque; the bolt, when known, tells which is off.
pub fn pair(first: &TorqueStatement, second: &TorqueStatement, bolt: Option<&KnownBolt>) -> PairAnswer {
    match agree(first, second) {
        Agreement::Agree => PairAnswer {
            agree: true,
            sentence: format!("{} and {} agree.", first.text(), second.text()),
            fixes: Vec::new(),
        },
        Agreement::Unsound => PairAnswer {
            agree: false,
            sentence: "One of the two is no torque: type it again.".to_owned(),
            fixes: Vec::new(),
        },
        Agreement::Differ { ratio, likely } => differ(first, second, bolt, ratio, likely),
    }
}

fn differ(
    first: &TorqueStatement,
    second: &TorqueStatement,
    bolt: Option<&KnownBolt>,
    ratio: f64,
    mut likely: Vec<Likely>,
) -> PairAnswer {
    let off = bolt.and_then(|bolt| off(first, second, bolt));
    let times = significant(if ratio < 1.0 { 1.0 / ratio } else { ratio }, 2);
    let same = print_torque(first.torque(), second.unit, 3);
    let raises = |likely: &Likely| {
        let was = if likely.side == Side::First { first } else { second };
        likely.statement.torque() > was.torque()
    };
    let told = match (off, bolt) {
        (Some(side), Some(bolt)) => {
            likely.retain(|likely| likely.side == side);
            let bad = if side == Side::First { first } else { second };
            format!("{} is off: not plausible on {}.", bad.text(), bolt.words())
        }
        (None, Some(_)) => "One of them is off, and the bolt doesn’t tell which: look again.".to_owned(),
        (_, None) => "One of them is off; choose the bolt, or look again.".to_owned(),
    };
    let (named, likely): (Vec<Likely>, Vec<Likely>) = likely.into_iter().partition(raises);
    let named: Vec<String> = named
        .iter()
        .take(MOST_NAMED)
        .map(|likely| fix(first, second, likely).words)
        .collect();
    let named = match named.join(", or ") {
        words if words.is_empty() => words,
        words => format!(" Perhaps {words}: if the manual says so, type it."),
    };
    PairAnswer {
        agree: false,
        sentence: format!(
            "{} and {} are {times} times apart: the first is {} {}. {told}{named}",
            first.text(),
            second.text(),
            same.number,
            same.unit
        ),
        fixes: likely
            .into_iter()
            .take(MOST_FIXES)
            .map(|likely| fix(first, second, &likely))
            .collect(),
    }
}

/// The side that the thread can't bear or hardly feels, where it takes the other.
fn off(first: &TorqueStatement, second: &TorqueStatement, bolt: &KnownBolt) -> Option<Side> {
    let absurd = |statement| judgement(statement, bolt).map(|j| j.verdict == Verdict::Absurd);
    match (absurd(first)?, absurd(second)?) {
        (true, false) => Some(Side::First),
        (false, true) => Some(Side::Second),
        _ => None,
    }
}

fn fix(first: &TorqueStatement, second: &TorqueStatement, likely: &Likely) -> Fix {
    let words = likely.statement.text();
    match likely.side {
        Side::First => Fix {
            words: format!("the first is {words}"),
            first: likely.statement,
            second: *second,
        },
        Side::Second => Fix {
            words: format!("the second is {words}"),
            first: *first,
            second: likely.statement,
        },
    }
}
