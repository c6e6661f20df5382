//! A select step in words.

use super::answer::{Advice, Aim, Offer, aim, sum};
use super::data::{Piece, Select};
use crate::job::progress::{Reading, StepProgress};
use crate::job::reading::Verdict;
use crate::job::text_form::code_table::no_part_words;
use crate::trade::quantity::Unit;
use crate::trade::selection::{Codes, NoPart, figures, tidy};

/// A size with its unit: "0.50 mm".
pub fn size_words(size: f64, unit: &str) -> String {
    format!("{} {unit}", figures(size, decimals(unit)))
}

/// How finely that unit is read: hundredths of a millimetre, thousandths of an inch.
fn decimals(unit: &str) -> u8 {
    match unit {
        "mm" => 2,
        "in" => 3,
        _ => 0,
    }
}

/// What was put in: "0.50 + 2 × 0.10 mm", "“green” 2.50 mm", "no shims".
pub fn pieces_words(pieces: &[Piece], unit: &str) -> String {
    if pieces.is_empty() {
        return "no shims".to_owned();
    }
    let mut measured = false;
    let mut words: Vec<String> = Vec::with_capacity(pieces.len());
    for piece in pieces {
        let times = if piece.count > 1 {
            format!("{} × ", piece.count)
        } else {
            String::new()
        };
        let code = match piece.code.as_str() {
            "" => String::new(),
            code => format!("“{code}”"),
        };
        let thick = piece.thick.map(|thick| figures(thick, decimals(unit)));
        measured |= thick.is_some();
        let what: Vec<String> = [code]
            .into_iter()
            .filter(|code| !code.is_empty())
            .chain(thick)
            .collect();
        words.push(format!("{times}{}", what.join(" ")));
    }
    let unit = if measured {
        format!(" {unit}")
    } else {
        String::new()
    };
    format!("{}{unit}", words.join(" + "))
}

/// What is said of what to put in: the large line, and the smaller ones.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Said {
    /// In large; empty where there is nothing to put in.
    pub head: String,
    /// More of it.
    pub lines: Vec<String>,
}

/// An advice in words.
pub fn advice_words(select: &Select, progress: &StepProgress, advice: &Advice) -> Said {
    let unit = select.unit.symbol();
    let only = |line: String| Said {
        head: String::new(),
        lines: vec![line],
    };
    let first = progress.rounds.is_empty() || select.trial.is_none();
    let gap = aim(select, progress).and_then(Result::ok).map(|aim| aim.gap);
    let offer = |offer: &Offer| {
        let pieces = pieces_words(&offer.pieces, unit);
        let sum = size_words(offer.sum, unit);
        if offer.pieces.len() > 1 || offer.pieces.first().is_some_and(|piece| piece.count > 1) {
            format!("{pieces}, together {sum}")
        } else {
            pieces
        }
    };
    match advice {
        Advice::Nothing => Said::default(),
        Advice::Pack(found) => Said {
            head: pieces_words(&found.pieces, unit),
            lines: pack_lines(select, found, gap.filter(|_| first)),
        },
        Advice::Miss { wanted, below, above } => {
            let near = [(below, "Nearest below"), (above, "Nearest above")];
            let near = near
                .into_iter()
                .filter_map(|(found, words)| Some(format!("{words}: {}.", offer(found.as_ref()?))));
            let cant = format!("The box can’t make {}.", size_words(*wanted, unit));
            Said {
                head: String::new(),
                lines: std::iter::once(cant).chain(near).collect(),
            }
        }
        Advice::Part(piece) => Said {
            head: pieces_words(std::slice::from_ref(piece), unit),
            lines: vec!["By the manual’s table.".to_owned()],
        },
        Advice::InElsewhere(piece) => only(format!(
            "The manual’s table says {}, and there is one of each in “{}”.",
            pieces_words(std::slice::from_ref(piece), unit),
            select.set
        )),
        Advice::OutOfTable(size) => only(format!(
            "{} stands in no row of the manual’s table: nothing is chosen. Measure again, and read the table again.",
            size_words(*size, unit)
        )),
        Advice::NoSuchCodes => only(no_such_codes(select, progress)),
        Advice::Change(change) => only(format!(
            "{} by {}: from {} to {} brings it within its limits.",
            thicker_words(change.by > 0.0),
            size_words(change.by.abs(), unit),
            size_words(change.from.abs().min(change.to.abs()), unit),
            size_words(change.from.abs().max(change.to.abs()), unit),
        )),
        Advice::Thicker(thicker) => only(format!(
            "{}: the manual’s figure for how much is not in the plan.",
            thicker_words(*thicker)
        )),
    }
}

/// Why the table has no part for the codes that were read.
fn no_such_codes(select: &Select, progress: &StepProgress) -> String {
    let table = select.codes.clone().unwrap_or_default();
    let (down, across) = progress.codes.clone().unwrap_or_default();
    let why = table.part(&down, &across).err();
    no_part_words(&table, why.unwrap_or(NoPart::Cell), &down, &across)
}

/// What another step has in: "0.50 mm is in: step 7".
pub fn elsewhere_words(piece: &Piece, unit: &str, step: usize) -> String {
    let is = if piece.count > 1 { "are" } else { "is" };
    format!(
        "{} {is} in: step {step}",
        pieces_words(std::slice::from_ref(piece), unit)
    )
}

fn thicker_words(thicker: bool) -> &'static str {
    if thicker {
        "A thicker pack"
    } else {
        "A thinner pack"
    }
}

/// What a pack comes to, what is left of the gap, and how it lies.
fn pack_lines(select: &Select, found: &Offer, gap: Option<f64>) -> Vec<String> {
    let unit = select.unit.symbol();
    let sum = format!("Together {}.", size_words(found.sum, unit));
    let leaves = gap.map(|gap| leaves_words(gap - found.sum, unit));
    let outer = select
        .shims
        .iter()
        .any(|shim| shim.between && found.pieces.iter().any(|piece| piece.thick == Some(shim.thick)));
    let outer = outer.then(|| "Those that go only between two others: never outermost.".to_owned());
    [Some(sum), leaves, outer].into_iter().flatten().collect()
}

/// What a pack leaves of the gap, or how tight it is.
fn leaves_words(left: f64, unit: &str) -> String {
    let left = tidy(left);
    if left < 0.0 {
        format!(
            "Thicker than the gap by {}: so much preload.",
            size_words(-left, unit)
        )
    } else {
        format!("It leaves {} of the gap.", size_words(left, unit))
    }
}

/// The aim in words: what was measured, what the pack is to come to.
pub fn aim_words(aim: &Aim, unit: &str) -> Vec<String> {
    let mut lines = vec![
        format!("Measured: {}.", size_words(aim.gap, unit)),
        format!("Wanted: {}.", size_words(aim.pack, unit)),
    ];
    if let Some((low, high)) = aim.window.filter(|(low, high)| low < high) {
        let (low, high) = (figures(low, decimals(unit)), size_words(high, unit));
        lines.push(format!("From {low} to {high} will do."));
    }
    lines
}

/// A pack with what it comes to: "0.50 + 0.20 mm, together 0.70 mm".
pub fn sum_words(pieces: &[Piece], unit: &str) -> String {
    let words = pieces_words(pieces, unit);
    let several = pieces.iter().map(|piece| piece.count).sum::<u32>() > 1;
    match sum(pieces).filter(|_| several) {
        Some(sum) => format!("{words}, together {}", size_words(sum, unit)),
        None => words,
    }
}

/// The record's line of what was put in.
pub fn chosen_words(
    round: u32,
    pieces: &[Piece],
    unit: &str,
    (aim, leaves): (Option<f64>, Option<f64>),
    verdict: Verdict,
) -> String {
    let mut words = format!("round {round}: {}", sum_words(pieces, unit));
    if let Some(aim) = aim {
        words += &format!(", wanted {}", size_words(aim, unit));
    }
    if let Some(left) = leaves {
        words += &format!(", leaves {}", size_words(left, unit));
    }
    match verdict {
        Verdict::Noted => words,
        Verdict::Within | Verdict::Worn | Verdict::Outside => format!("{words}: {}", verdict.words()),
    }
}

/// The record's line of the codes: "case code B, crankshaft code 2".
pub fn code_words(codes: Option<&Codes>, down: &str, across: &str) -> String {
    let name = |name: Option<&str>, or: &'static str| match name {
        Some(name) if !name.is_empty() => name.to_owned(),
        _ => or.to_owned(),
    };
    let first = name(codes.map(|codes| codes.down_name.as_str()), "first code");
    let second = name(codes.map(|codes| codes.across_name.as_str()), "second code");
    format!("{first} {down}, {second} {across}")
}

/// What was read in a round: "2.4 N·m, outside limits".
pub fn round_words(readings: &[Reading]) -> String {
    let read = readings.iter().filter(|reading| reading.what.of_round());
    let words = read.map(|reading| {
        let verdict = match reading.verdict {
            Verdict::Noted => String::new(),
            Verdict::Within | Verdict::Worn | Verdict::Outside => format!(", {}", reading.verdict.words()),
        };
        format!("{} {}{verdict}", reading.text(), reading.unit)
    });
    words.collect::<Vec<_>>().join("; ")
}
