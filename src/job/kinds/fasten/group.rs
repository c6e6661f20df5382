//! Some of the fasteners of a step, with a torque of their own.

use crate::job::text_form::said;
use crate::trade::order::MOST_BOLTS;
use crate::trade::quantity::{TorqueStatement, short};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

/// Some of the fasteners, and their torque.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Their places in the layout, from 0.
    pub places: Vec<usize>,
    /// Their torque, in the place of the step's.
    pub torque: TorqueStatement,
}

/// A group in a file: "5, 6: 12 N·m", by place from 1.
impl Serialize for Group {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.words(|place| (place + 1).to_string()))
    }
}

impl<'de> Deserialize<'de> for Group {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let place = |name: &str| name.parse::<usize>().ok()?.checked_sub(1);
        Self::read(&text, place).map_err(D::Error::custom)
    }
}

impl Group {
    /// Reads "1–4: 22 N·m" or "5, 6: 12 N·m"; `place` tells where the bolt of a number is.
    ///
    /// # Errors
    /// What to write.
    pub fn read(text: &str, place: impl Fn(&str) -> Option<usize>) -> Result<Self, String> {
        let (which, torque) = text
            .split_once(':')
            .ok_or("Write which bolts, a colon, and their torque: 5, 6: 12 N·m.")?;
        let said = said::read(torque, None)?;
        if !said.stages.is_empty() {
            return Err("Write the torque of these bolts alone; the angle is a stage of all.".to_owned());
        }
        Ok(Self {
            places: places(which, place)?,
            torque: said.torque,
        })
    }

    /// "5, 6: 12 N·m", each place by its `name`.
    pub fn words(&self, name: impl Fn(usize) -> String) -> String {
        format!("{}: {}", which(&self.places, name), self.torque.text())
    }
}

/// Those places by name: "5, 6".
pub fn which(places: &[usize], name: impl Fn(usize) -> String) -> String {
    places
        .iter()
        .map(|place| name(*place))
        .collect::<Vec<_>>()
        .join(", ")
}

/// Reads "1–4, 7": numbers of bolts, and from one to another.
///
/// # Errors
/// What to write.
pub fn places(text: &str, place: impl Fn(&str) -> Option<usize>) -> Result<Vec<usize>, String> {
    let find = |name: &str| place(name).ok_or_else(|| format!("There is no bolt “{}” here.", short(name)));
    let mut found = Vec::new();
    for part in text.split([',', ' ', ';']).filter(|part| !part.is_empty()) {
        let ends = part.split_once(['–', '-']).filter(|_| place(part).is_none());
        let (first, last) = match ends {
            Some((first, last)) => (find(first)?, find(last)?),
            None => (find(part)?, find(part)?),
        };
        if first > last || last >= MOST_BOLTS {
            return Err(format!(
                "“{}” is not from a lower bolt to a higher one.",
                short(part)
            ));
        }
        found.extend(
            (first..=last)
                .filter(|place| !found.contains(place))
                .collect::<Vec<_>>(),
        );
    }
    match found.as_slice() {
        [] => Err("Say which bolts, such as 5, 6.".to_owned()),
        _ => Ok(found),
    }
}
