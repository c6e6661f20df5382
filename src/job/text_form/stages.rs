//! Tightening stages, one text each: "oil", "snug 10 N·m", "20 N·m", "60° ± 5°", "loosen", "again".

use super::said;
use super::turn::angle;
use crate::trade::quantity::shortest;
use crate::trade::stages::{Act, Deed, Stage, Way, check};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

/// Most stages that are asked for: more are a slip of the thumb.
pub const MOST_STAGES: usize = 20;

/// Acts that are words alone, as they are written and as others write them.
const ACTS: [(Act, &[&str]); 5] = [
    (
        Act::All(Deed::Oil),
        &["oil", "oil the threads", "oil threads", "threads oiled"],
    ),
    (
        Act::All(Deed::Dry),
        &["dry", "threads dry", "dry threads", "threads clean and dry"],
    ),
    (
        Act::SnugByHand,
        &["snug by hand", "snug", "by hand", "hand tight"],
    ),
    (
        Act::Again,
        &["again", "repeat", "same torque again", "check none moves"],
    ),
    (
        Act::All(Deed::Loosen),
        &["loosen", "loosen all", "loosen fully", "loosen all fully"],
    ),
];

/// How a stage goes round, behind it.
const WAYS: [(Way, &str); 3] = [
    (Way::AnyOrder, "in any order"),
    (Way::SameFastener, "on the same fastener"),
    (Way::Pattern, "by the pattern"),
];

/// Writes each stage as a person would.
///
/// # Errors
/// Whatever the format refuses.
pub fn serialize<S: Serializer>(stages: &[Stage], to: S) -> Result<S::Ok, S::Error> {
    let words: Vec<String> = stages.iter().map(words).collect();
    words.serialize(to)
}

/// Reads stages, whether or not they can be carried out: what is stored is opened as it is.
///
/// # Errors
/// The reader's sentence.
pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Stage>, D::Error> {
    let words = Vec::<String>::deserialize(from)?;
    let stages: Result<Vec<Stage>, String> = words.iter().map(|words| read(words)).collect();
    stages.map_err(D::Error::custom)
}

/// Stages on one line: "snug 10 N·m; 20 N·m; 60°".
pub fn line(stages: &[Stage]) -> String {
    stages.iter().map(words).collect::<Vec<_>>().join("; ")
}

/// Reads such a line of stages that can be carried out; empty for no stages. A part may be a torque with
/// its angles: "30 ft·lb + 120°".
///
/// # Errors
/// The reader's sentence.
pub fn read_line(line: &str) -> Result<Vec<Stage>, String> {
    let mut stages = Vec::new();
    for part in line.split(';').map(str::trim).filter(|part| !part.is_empty()) {
        match read(part) {
            Ok(stage) => stages.push(stage),
            Err(why) => match said::read(part, None) {
                Ok(said) if !said.stages.is_empty() => stages.extend(said.stages),
                _ => return Err(why),
            },
        }
    }
    if stages.len() > MOST_STAGES {
        return Err(format!(
            "At most {MOST_STAGES} stages are kept: make two steps of it."
        ));
    }
    if !stages.is_empty() {
        check(&stages).map_err(|error| error.to_string())?;
    }
    Ok(stages)
}

/// Reads a line that was typed: no angle is taken for a torque's tolerance.
///
/// # Errors
/// The reader's sentence.
pub fn typed_line(line: &str) -> Result<Vec<Stage>, String> {
    let stages = read_line(line)?;
    let mut torques = stages.iter().filter_map(|stage| stage.act.torque());
    torques.try_for_each(said::no_angle)?;
    Ok(stages)
}

/// A text with angles as the words of its torque and those of its stages; none where there is no angle.
pub fn parted(text: &str) -> Option<(String, Vec<String>)> {
    let said = said::read(text, None)
        .ok()
        .filter(|said| !said.stages.is_empty())?;
    Some((said.torque.text(), said.stages.iter().map(words).collect()))
}

/// A stage as it is written in a file: "snug 10 N·m", "90°, on the same fastener".
pub fn words(stage: &Stage) -> String {
    let act = match &stage.act {
        Act::Snug { torque } => format!("snug {}", torque.text()),
        Act::Torque(torque) => torque.text(),
        Act::Angle { degrees, off } if *off == 0.0 => format!("{}°", shortest(*degrees)),
        Act::Angle { degrees, off } => format!("{}° ± {}°", shortest(*degrees), shortest(*off)),
        plain @ (Act::All(_) | Act::SnugByHand | Act::Again) => {
            let row = ACTS.iter().find(|(act, _)| act == plain);
            row.map_or(String::new(), |(_, words)| {
                words.first().copied().unwrap_or_default().to_owned()
            })
        }
    };
    match stage.way {
        Way::Pattern => act,
        way => format!("{act}, {}", way.words()),
    }
}

/// Reads one stage.
///
/// # Errors
/// The reader's sentence.
pub fn read(words: &str) -> Result<Stage, String> {
    let mut act = words.trim();
    let mut way = Way::Pattern;
    for (one, ending) in WAYS {
        if let Some(before) = act.strip_suffix(ending) {
            act = before.trim_end_matches([',', ' ']);
            way = one;
        }
    }
    read_act(act).map(|act| Stage { act, way })
}

fn read_act(words: &str) -> Result<Act, String> {
    let plain = |own: &str| own.eq_ignore_ascii_case(words);
    if let Some((act, _)) = ACTS.iter().find(|(_, all)| all.iter().any(|own| plain(own))) {
        return Ok(*act);
    }
    let torque = |text: &str| {
        let said = said::read(text, None)?;
        match said.stages.as_slice() {
            [] => Ok(said.torque),
            _ => Err("Write the torque and the angle as a stage each: 30 ft·lb; 120°.".to_owned()),
        }
    };
    if let Some(rest) = words.strip_prefix("snug ") {
        let rest = rest.trim_start();
        return torque(rest.strip_prefix("to ").unwrap_or(rest)).map(|torque| Act::Snug { torque });
    }
    // What is no angle is a torque, and refused as one.
    match angle(words) {
        Some(angle) => Ok(angle),
        None => torque(words).map(Act::Torque),
    }
}
