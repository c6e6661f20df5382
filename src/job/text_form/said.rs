//! A torque as it is typed or pasted: with its conversion in brackets, with the angles that follow.

use super::turn::angle;
use crate::trade::pair::{Agreement, agree};
use crate::trade::quantity::{
    StatementForm, TorqueStatement, TorqueUnit, parse_torque, parse_torques, print_torque, significant,
};
use crate::trade::stages::{Act, Stage};

/// Longest text that angles are looked for in, bytes: more is no torque.
const LONGEST: usize = 200;

/// Most angles behind one torque.
const MOST_ANGLES: usize = 6;

/// A torque, and what follows it.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// The torque.
    pub torque: TorqueStatement,
    /// The torque and its angles as stages; none where there is no angle.
    pub stages: Vec<Stage>,
}

/// Reads "30 ft·lb + 120°", "30 ft-lb then 90° then 90°", "30 ft·lb (41 N·m)", or a torque alone;
/// `fallback` is the unit where none is written.
///
/// # Errors
/// The reader's sentence, or that the conversion says something else.
pub fn read(text: &str, fallback: Option<TorqueUnit>) -> Result<Said, String> {
    let (mut head, mut turns) = (text.trim(), Vec::new());
    while let Some((before, turn)) = last_angle(head).filter(|_| turns.len() < MOST_ANGLES) {
        turns.insert(0, Stage::from(turn));
        head = before;
    }
    let torque = compared(head, fallback)?;
    if !turns.is_empty() {
        turns.insert(0, Stage::torque(torque));
    }
    Ok(Said {
        torque,
        stages: turns,
    })
}

/// [`read`], of what is typed anew: a number that only an angle without its sign can be is refused.
///
/// # Errors
/// As [`read`], and what to write instead.
pub fn typed(text: &str, fallback: Option<TorqueUnit>) -> Result<Said, String> {
    let said = read(text, fallback)?;
    no_angle(&said.torque)?;
    Ok(said)
}

/// Most that a torque may come out above its target by a tolerance, as a share of it; manuals state
/// up to a third.
const MOST_OVER: f64 = 0.5;

/// Refuses "30 +120": no torque has such a tolerance, and it must never be set for the angle that was
/// meant. What is stored is not asked: an earlier release may have kept one.
///
/// # Errors
/// What to write instead.
pub fn no_angle(torque: &TorqueStatement) -> Result<(), String> {
    let over = torque.high - torque.target;
    if torque.form != StatementForm::Tolerance || over <= MOST_OVER * torque.target {
        return Ok(());
    }
    Err(format!(
        "“{}” is no tolerance. An angle is written with its sign: {} {} + {}°.",
        torque.text(),
        significant(torque.target, 4),
        torque.unit.symbol(),
        significant(over, 3),
    ))
}

/// The text before its angles, and all of them together, degrees; none where there is none.
pub fn turn_behind(text: &str) -> (&str, Option<f64>) {
    let (mut head, mut sum) = (text.trim(), 0.0);
    while let Some((before, Act::Angle { degrees, .. })) = last_angle(head) {
        sum += degrees;
        head = before;
    }
    (head, Some(sum).filter(|sum| *sum > 0.0))
}

/// A torque whose other readings, in brackets or behind a comma, say the same.
fn compared(text: &str, fallback: Option<TorqueUnit>) -> Result<TorqueStatement, String> {
    let alone = parse_torque(text, fallback);
    let several = || parse_torques(text, fallback).ok();
    let Some(all) = alone.is_err().then(several).flatten() else {
        return alone.map_err(|error| error.to_string());
    };
    let [first, others @ ..] = all.as_slice() else {
        return alone.map_err(|error| error.to_string());
    };
    match others
        .iter()
        .find(|other| agree(first, other) != Agreement::Agree)
    {
        None => Ok(*first),
        Some(other) => {
            let same = print_torque(first.torque(), other.unit, 3);
            Err(format!(
                "{} and {} are not one torque: the first is {} {}. Look again, and write the right one alone.",
                first.text(),
                other.text(),
                same.number,
                same.unit
            ))
        }
    }
}

/// The text before its last angle, and the angle; none where no angle ends it.
fn last_angle(text: &str) -> Option<(&str, Act)> {
    if text.len() > LONGEST {
        return None;
    }
    // From the left: "120° ± 5°" is one angle, not 120° and then 5°.
    let parts = |c: char| c.is_whitespace() || PARTING.contains(&c);
    text.char_indices()
        .filter(|(at, c)| *at > 0 && parts(*c))
        .find_map(|(at, _)| {
            let (before, behind) = text.split_at(at);
            let turn = angle(without_words(behind))?;
            let before = before.trim_end_matches(parts);
            let before = without_then(before).trim_end_matches(parts);
            (!before.is_empty()).then_some((before, turn))
        })
}

/// What parts a torque from its angle.
const PARTING: [char; 6] = ['+', ',', ';', '/', '&', '→'];

/// Words between a torque and its angle.
const WORDS: [&str; 13] = [
    "then",
    "and",
    "plus",
    "turn",
    "tighten",
    "rotate",
    "further",
    "another",
    "additional",
    "on",
    "by",
    "a",
    "an",
];

fn without_words(text: &str) -> &str {
    let mut rest = text.trim_start_matches(|c: char| c.is_whitespace() || PARTING.contains(&c));
    while let Some((word, behind)) = rest.split_once(char::is_whitespace)
        && WORDS.iter().any(|own| own.eq_ignore_ascii_case(word))
    {
        rest = behind.trim_start();
    }
    rest
}

fn without_then(text: &str) -> &str {
    let mut rest = text;
    while let Some((before, word)) = rest.rsplit_once(char::is_whitespace)
        && WORDS.iter().any(|own| own.eq_ignore_ascii_case(word))
    {
        rest = before.trim_end();
    }
    rest
}
