//! Bolts by the manual's own numbers, and groups of them with a torque of their own.

use super::data::Fasten;
use super::group::{Group, places, which};
use crate::job::field::{Entry, Form, Refused, Set, refuse};
use crate::job::text_form::said::{self, Said};
use std::borrow::Cow;

/// Longest number of a bolt that is drawn, letters and digits.
const LONGEST_NAME: usize = 4;

impl Fasten {
    /// What the bolt at that place is called: the manual's own number, else its place from 1.
    pub fn name(&self, place: usize) -> String {
        let own = self.labels.get(place);
        let own = own.filter(|_| self.labels.len() == self.layout.count());
        own.map_or_else(|| (place + 1).to_string(), String::clone)
    }

    fn place(&self, name: &str) -> Option<usize> {
        (0..self.layout.count()).find(|place| self.name(*place) == name)
    }

    /// The group that place is in.
    fn group(&self, place: usize) -> Option<&Group> {
        self.groups.iter().find(|group| group.places.contains(&place))
    }

    /// The step as the fastener at that place sees it: with its group's torque, where it is in one.
    pub fn at(&self, place: usize) -> Cow<'_, Self> {
        match self.group(place) {
            None => Cow::Borrowed(self),
            Some(group) => {
                let mut own = self.clone();
                own.groups.clear();
                own.say(Said {
                    torque: group.torque,
                    stages: Vec::new(),
                });
                Cow::Owned(own)
            }
        }
    }

    /// What the manual says, groups and all: "22 N·m; 5, 6: 12 N·m".
    pub fn torque_words(&self) -> String {
        match self.groups.as_slice() {
            [] => self.torque.text(),
            _ => format!("{}; {}", self.torque.text(), self.group_words()),
        }
    }

    /// The groups on one line: "1, 2: 22 N·m; 5, 6: 12 N·m".
    pub fn group_words(&self) -> String {
        let here = |place: &usize| *place < self.layout.count();
        let groups = self.groups.iter().filter_map(|group| {
            let places: Vec<usize> = group.places.iter().copied().filter(here).collect();
            let torque = group.torque;
            (!places.is_empty()).then(|| Group { places, torque }.words(|place| self.name(place)))
        });
        groups.collect::<Vec<_>>().join("; ")
    }

    /// Takes groups from such a line; empty for none.
    ///
    /// # Errors
    /// What to write.
    pub fn set_groups(&mut self, line: &str) -> Result<(), String> {
        let parts = line.split(';').map(str::trim).filter(|part| !part.is_empty());
        let groups: Result<Vec<Group>, String> = parts
            .map(|part| Group::read(part, |name| self.place(name)))
            .collect();
        let groups = groups?;
        apart(&groups)?;
        self.groups = groups;
        Ok(())
    }

    /// The manual's numbers on one line: "7 3 1 5".
    pub fn label_words(&self) -> String {
        self.labels.join(" ")
    }

    /// Takes them from such a line, in the order of the places; empty for none.
    ///
    /// # Errors
    /// What to write.
    pub fn set_labels(&mut self, line: &str) -> Result<(), String> {
        let labels: Vec<String> = line
            .split([' ', ',', ';'])
            .filter(|label| !label.is_empty())
            .map(str::to_owned)
            .collect();
        let twice = |label: &String| labels.iter().filter(|other| *other == label).count() > 1;
        let count = self.layout.count();
        if !labels.is_empty() && labels.len() != count {
            return Err(format!(
                "Write a number for each of the {count} fasteners, or none: {} are written.",
                labels.len()
            ));
        }
        let plain = |label: &String| label.chars().all(char::is_alphanumeric);
        if !labels
            .iter()
            .all(|label| plain(label) && label.chars().count() <= LONGEST_NAME)
        {
            return Err(format!(
                "A bolt’s number is at most {LONGEST_NAME} letters and digits."
            ));
        }
        if let Some(label) = labels.iter().find(|label| twice(label)) {
            return Err(format!(
                "Two fasteners have the number {label}: give each its own."
            ));
        }
        self.labels = labels;
        Ok(())
    }
}

/// No bolt is in two groups.
fn apart(groups: &[Group]) -> Result<(), String> {
    for (at, group) in groups.iter().enumerate() {
        let others = groups.iter().skip(at + 1);
        let shared = |other: &Group| other.places.iter().any(|place| group.places.contains(place));
        if others.into_iter().any(shared) {
            return Err("A bolt stands in two groups: leave it in one.".to_owned());
        }
    }
    Ok(())
}

/// Adds the groups to the form.
pub fn show(form: &mut Form, fasten: &Fasten) {
    for (group, number) in fasten.groups.iter().zip(1..) {
        let path = |field: &str| format!("group/{number}/{field}");
        form.head(&format!(
            "Group {number}: {}",
            group.words(|place| fasten.name(place))
        ));
        let which = which(&group.places, |place| fasten.name(place));
        form.add(path("which"), "which bolts", &which, Entry::Words);
        form.add(path("torque"), "to", &group.torque.text(), Entry::Torque);
        form.press(path("remove"), &format!("delete group {number}"));
    }
    if fasten.layout.count() > 1 {
        form.press("group/add", "some bolts have another torque");
    }
}

/// Changes the group of that path; where it is refused nothing is changed.
///
/// # Errors
/// A sentence that says what to enter; [`Refused::NoField`] for a path that leads nowhere.
pub fn set(fasten: &mut Fasten, path: &str, value: &str) -> Set {
    let mut groups = fasten.groups.clone();
    match path.split('/').collect::<Vec<_>>().as_slice() {
        ["group", "add"] => {
            let free = (0..fasten.layout.count())
                .rev()
                .find(|place| fasten.group(*place).is_none());
            match free {
                Some(place) if fasten.layout.count() > 1 => groups.push(Group {
                    places: vec![place],
                    torque: fasten.torque,
                }),
                _ => return refuse("Every bolt is in a group already."),
            }
        }
        ["group", number, field] => {
            let at = number
                .parse::<usize>()
                .ok()
                .and_then(|number| number.checked_sub(1));
            let at = at.filter(|at| *at < groups.len()).ok_or(Refused::NoField)?;
            match *field {
                "remove" => drop(groups.remove(at)),
                "which" => {
                    groups[at].places = places(value, |name| fasten.place(name)).map_err(Refused::Said)?
                }
                "torque" => {
                    let said = said::typed(value, None).map_err(Refused::Said)?;
                    if !said.stages.is_empty() {
                        return refuse("Write the torque alone here; the angle is a stage of all.");
                    }
                    groups[at].torque = said.torque;
                }
                _ => return Err(Refused::NoField),
            }
        }
        _ => return Err(Refused::NoField),
    }
    apart(&groups).map_err(Refused::Said)?;
    fasten.groups = groups;
    Ok(())
}
