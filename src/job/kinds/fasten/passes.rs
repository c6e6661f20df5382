//! Passes as a line of text: the share of each in percent, "round" behind one that goes once round.

use crate::trade::order::Pass;
use crate::trade::quantity::{comma_is_decimal, decimal, in_mark};

/// Most passes that are asked for: more are a slip of the thumb.
const MOST_PASSES: usize = 9;

/// Behind a share: once round in turn, until none moves.
const ROUND: &str = "round";

/// What to write.
const WRITE: &str =
    "Write the share of each pass in percent, ending in 100: 30 60 100, or 30 60 100 100 round.";

/// What to write where a comma may be the mark or part two shares; said only to who chose it for the mark.
const UNCLEAR: &str = "The comma is your decimal mark: part the shares by blanks, 30 60 100, or put % behind each, \
                       33,33% 66,67% 100%.";

/// "30 60 100 100 round"; reads back the same.
pub fn words(passes: &[Pass]) -> String {
    let one = |pass: &Pass| {
        let mut share = in_mark(&percent(pass.share));
        if unclear_word(&share) {
            share.push('%');
        }
        if pass.round {
            format!("{share} {ROUND}")
        } else {
            share
        }
    };
    passes.iter().map(one).collect::<Vec<_>>().join(" ")
}

/// Reads such a line; blanks, slashes, commas and percent signs part the shares. Empty, or a lone 1 as
/// tables write it: one pass.
///
/// # Errors
/// What to write.
pub fn read(text: &str) -> Result<Vec<Pass>, &'static str> {
    if unclear(text) {
        return Err(UNCLEAR);
    }
    let mut passes: Vec<Pass> = Vec::new();
    for word in parted(text) {
        if word == ROUND {
            // "round" twice, or before any share, says nothing.
            let last = passes.last_mut().filter(|pass| !pass.round);
            last.ok_or(WRITE)?.round = true;
            continue;
        }
        let share = share(word).filter(|share| *share > 0.0 && *share <= 1.0);
        passes.push(Pass {
            share: share.ok_or(WRITE)?,
            round: false,
        });
    }
    match passes.as_slice() {
        [only] if Some(only.share) == share("1") && !only.round => Ok(Vec::new()),
        [] => Ok(passes),
        [.., last] if last.share == 1.0 && passes.len() <= MOST_PASSES => Ok(passes),
        _ => Err(WRITE),
    }
}

/// Whether a word beside others may be a number or two shares: "30,60 100". A percent sign behind it tells.
fn unclear(text: &str) -> bool {
    let text = text.trim().replace(" %", "%");
    let words: Vec<&str> = text.split([' ', ';', '/', '-', '–']).collect();
    comma_is_decimal() && words.len() > 1 && words.iter().any(|word| unclear_word(word.trim_matches(',')))
}

/// Two digits or more behind its only comma, and nothing else.
fn unclear_word(word: &str) -> bool {
    let behind = word.split_once(',').map_or("", |(_, behind)| behind);
    behind.len() > 1 && behind.chars().all(|c| c.is_ascii_digit())
}

/// What stands between blanks and the like. A comma parts shares too, but for a single one within a number of
/// who chose the comma for the decimal mark.
fn parted(text: &str) -> impl Iterator<Item = &str> {
    let words = text.split([' ', '%', ';', '/', '-', '–']);
    let parts = words.flat_map(|word| {
        let word = word.trim_matches(',');
        let inside = word.matches(',').count() == 1;
        word.split(move |c| c == ',' && !(inside && comma_is_decimal()))
    });
    parts.filter(|word| !word.is_empty())
}

/// The share that is so many percent, to the last bit: the point is moved, not divided, so that 33.3 is 0.333.
fn share(percent: &str) -> Option<f64> {
    decimal(percent)?;
    let (whole, fraction) = percent.split_once(['.', ',']).unwrap_or((percent, ""));
    let whole = format!("{whole:0>3}");
    let (units, hundredths) = whole.split_at_checked(whole.len() - 2)?;
    decimal(&format!("{units}.{hundredths}{fraction}"))
}

/// The fewest digits in percent that read back as that share.
fn percent(share: f64) -> String {
    let written = |digits: usize| {
        let text = format!("{:.digits$}", share * 100.0);
        match text.contains('.') {
            true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
            false => text,
        }
    };
    (0..=17)
        .map(written)
        .find(|text| self::share(text) == Some(share))
        .unwrap_or_else(|| written(17))
}
