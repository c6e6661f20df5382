//! The stages of a fastening as a list built by touch: each with its act, its numbers, its way round.

use super::data::Fasten;
use super::group::{Group, which};
use crate::job::field::{Entry, Form, Refused, Set, pick, refuse};
use crate::job::text_form::said::{self, Said};
use crate::job::text_form::stages::MOST_STAGES;
use crate::job::text_form::turn;
use crate::trade::quantity::TorqueStatement;
use crate::trade::stages::{Act, Deed, Stage, Way, angle_words, check};

impl Fasten {
    /// Takes a torque as it was said: angles behind it are the stages from now on; without any, stages
    /// that asked for the old torque ask for this one.
    pub fn say(&mut self, said: Said) {
        if said.stages.is_empty() {
            for stage in &mut self.stages {
                if stage.act == Act::Torque(self.torque) {
                    stage.act = Act::Torque(said.torque);
                }
            }
        } else {
            self.stages = said.stages;
        }
        self.torque = said.torque;
    }

    /// Why its stages can't be carried out as they stand, by all fasteners or by those of a group.
    pub fn stages_wrong(&self) -> Option<String> {
        if self.stages.is_empty() {
            return None;
        }
        let wrong = check(&self.stages).err().map(|error| error.to_string());
        wrong.or_else(|| self.groups.iter().find_map(|group| self.group_wrong(group)))
    }

    /// Why a group's torque reaches none of its fasteners, or makes no sense between the stages.
    fn group_wrong(&self, group: &Group) -> Option<String> {
        let which = which(&group.places, |place| self.name(place));
        let stands_for = Act::Torque(self.torque);
        if !self.stages.iter().any(|stage| stage.act == stands_for) {
            let (own, torque) = (group.torque.text(), self.torque.text());
            return Some(format!(
                "Bolts {which} have {own} in the place of {torque}, but no stage asks for {torque}: write it there."
            ));
        }
        let place = group.places.first()?;
        let wrong = check(&self.at(*place).stages).err()?;
        Some(format!("Bolts {which}: {wrong}"))
    }
}

/// What a stage may do, in the order it is offered.
const ACTS: [&str; 8] = [
    "oil the threads",
    "threads clean and dry",
    "snug by hand",
    "snug by a torque",
    "torque",
    "angle",
    "the same torque again: none may move",
    "loosen all fully",
];

/// Which of them it does.
fn act_at(act: &Act) -> usize {
    match act {
        Act::All(Deed::Oil) => 0,
        Act::All(Deed::Dry) => 1,
        Act::SnugByHand => 2,
        Act::Snug { .. } => 3,
        Act::Torque(_) => 4,
        Act::Angle { .. } => 5,
        Act::Again => 6,
        Act::All(Deed::Loosen) => 7,
    }
}

/// What a stage does that was just chosen: the torque and a quarter turn until other numbers are said.
fn act_of(value: &str, torque: TorqueStatement) -> Result<Act, Refused> {
    let acts = [
        Act::All(Deed::Oil),
        Act::All(Deed::Dry),
        Act::SnugByHand,
        Act::Snug { torque },
        Act::Torque(torque),
        Act::Angle {
            degrees: 90.0,
            off: 0.0,
        },
        Act::Again,
        Act::All(Deed::Loosen),
    ];
    pick(&acts, value)
}

fn offered() -> Entry {
    let acts = ACTS.iter().enumerate();
    Entry::Choice(
        acts.map(|(at, words)| (at.to_string(), (*words).to_owned()))
            .collect(),
    )
}

fn ways() -> Entry {
    let ways = Way::ALL.iter().enumerate();
    Entry::Choice(
        ways.map(|(at, way)| (at.to_string(), way.words().to_owned()))
            .collect(),
    )
}

/// Adds the stages to the form, each under its number in the list, and what adds one.
pub fn show(form: &mut Form, fasten: &Fasten) {
    let count = fasten.stages.len();
    for (stage, number) in fasten.stages.iter().zip(1..) {
        let path = |field: &str| format!("stage/{number}/{field}");
        form.head(&format!("Stage {number}: {}", stage.text()));
        let act = ACTS.get(act_at(&stage.act)).copied().unwrap_or_default();
        form.add(path("what"), &format!("stage {number}"), act, offered());
        if let Some(torque) = stage.act.torque() {
            form.add(path("torque"), "to", &torque.text(), Entry::Torque);
        }
        if let Act::Angle { degrees, off } = stage.act {
            let words = angle_words(degrees, off);
            form.add(path("angle"), "turn a further: 120° ± 5°", &words, Entry::Words);
        }
        if !stage.act.to_all() && fasten.layout.count() > 1 {
            form.add(path("way"), "goes round", stage.way.words(), ways());
        }
        if number > 1 {
            form.press(path("up"), &format!("stage {number} up"));
        }
        if number < count {
            form.press(path("down"), &format!("stage {number} down"));
        }
        form.press(path("remove"), &format!("delete stage {number}"));
    }
    if let Some(why) = fasten.stages_wrong() {
        form.head(&why);
    }
    form.add("stage/add", "add a stage", "of what?", offered());
}

/// Changes the stage of that path; where it is refused nothing is changed.
///
/// # Errors
/// A sentence that says what to enter; [`Refused::NoField`] for a path that leads nowhere.
pub fn set(fasten: &mut Fasten, path: &str, value: &str) -> Set {
    let torque = fasten.torque;
    let (at, field) = match path.split('/').collect::<Vec<_>>().as_slice() {
        ["stage", "add"] if fasten.stages.len() >= MOST_STAGES => {
            return refuse("There are stages enough: make two steps of it.");
        }
        ["stage", "add"] => {
            fasten.stages.push(act_of(value, torque)?.into());
            return Ok(());
        }
        ["stage", number, field] => {
            let at = number
                .parse::<usize>()
                .ok()
                .and_then(|number| number.checked_sub(1));
            let at = at
                .filter(|at| *at < fasten.stages.len())
                .ok_or(Refused::NoField)?;
            (at, *field)
        }
        _ => return Err(Refused::NoField),
    };
    match field {
        "remove" => drop(fasten.stages.remove(at)),
        "up" if at > 0 => fasten.stages.swap(at - 1, at),
        "down" if at + 1 < fasten.stages.len() => fasten.stages.swap(at, at + 1),
        _ => {
            let stage = fasten.stages.get_mut(at).ok_or(Refused::NoField)?;
            return set_stage(stage, torque, field, value);
        }
    }
    Ok(())
}

fn set_stage(stage: &mut Stage, torque: TorqueStatement, field: &str, value: &str) -> Set {
    match (field, &mut stage.act) {
        ("what", act) => {
            let new = act_of(value, act.torque().copied().unwrap_or(torque))?;
            // The same chosen again keeps its numbers.
            if act_at(&new) != act_at(act) {
                *act = new;
            }
        }
        ("way", _) => stage.way = pick(&Way::ALL, value)?,
        ("torque", Act::Snug { torque } | Act::Torque(torque)) => {
            let said = said::typed(value, None).map_err(Refused::Said)?;
            if !said.stages.is_empty() {
                return refuse("Write the torque alone here; the angle is a stage of its own.");
            }
            *torque = said.torque;
        }
        ("angle", act @ Act::Angle { .. }) => *act = angle(value)?,
        _ => return Err(Refused::NoField),
    }
    Ok(())
}

/// An angle with or without its tolerance; degrees where no unit is written.
fn angle(value: &str) -> Result<Act, Refused> {
    let bare = || turn::angle(&format!("{}°", value.trim()));
    let found = turn::angle(value).or_else(bare);
    let sound = |act: &Act| match act {
        Act::Angle { degrees, off } => degrees > off && degrees + off <= 360.0,
        _ => false,
    };
    found.filter(sound).ok_or_else(|| {
        Refused::Said("Write the angle, above 0° and at most 360° with its tolerance: 120° ± 5°.".to_owned())
    })
}
