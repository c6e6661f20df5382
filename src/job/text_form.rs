//! Values kept in files as a person writes them ("7.2 ft·lb", "M8×1", "N7"), by `#[serde(with = …)]`.

/// A torque as the manual states it.
pub mod torque {
    use crate::trade::quantity::{TorqueStatement, parse_torque};
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes the statement in its own words.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(value: &TorqueStatement, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&value.text())
    }

    /// Reads the statement; its unit must be written.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<TorqueStatement, D::Error> {
        parse_torque(&String::deserialize(from)?, None).map_err(D::Error::custom)
    }
}

/// A temperature as the manual states it, where it does.
pub mod temperature {
    use crate::trade::quantity::{TemperatureUnit, Typed, parse_temperature};
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes it with its unit, or null.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(
        value: &Option<Typed<TemperatureUnit>>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        match value {
            Some(value) => to.serialize_some(&value.text()),
            None => to.serialize_none(),
        }
    }

    /// Reads it; its unit must be written.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Option<Typed<TemperatureUnit>>, D::Error> {
        let text = Option::<String>::deserialize(from)?;
        let read = text.map(|text| parse_temperature(&text, None)).transpose();
        read.map_err(D::Error::custom)
    }
}

/// A thread by its designation.
pub mod thread {
    use crate::trade::thread::Thread;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes the designation.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(value: &Thread, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&value.name())
    }

    /// Reads a designation of the thread table.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Thread, D::Error> {
        Thread::parse(&String::deserialize(from)?).map_err(D::Error::custom)
    }
}

/// Tightening stages, one text each: "snug 10 N·m", "20 N·m", "60°".
pub mod stages {
    use crate::trade::quantity::{TextError, parse_angle, parse_torque};
    use crate::trade::stages::{Stage, check};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};
    use uom::si::angle::degree;

    const SNUG: &str = "snug ";

    /// Writes each stage as a person would.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(stages: &[Stage], to: S) -> Result<S::Ok, S::Error> {
        let words: Vec<String> = stages.iter().map(words).collect();
        words.serialize(to)
    }

    /// Reads stages that can be carried out; none at all is fine.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Stage>, D::Error> {
        let words = Vec::<String>::deserialize(from)?;
        let stages: Vec<Stage> = words
            .iter()
            .map(|words| read(words))
            .collect::<Result<_, _>>()
            .map_err(D::Error::custom)?;
        if !stages.is_empty() {
            check(&stages).map_err(D::Error::custom)?;
        }
        Ok(stages)
    }

    /// Stages on one line: "snug 10 N·m; 20 N·m; 60°".
    pub fn line(stages: &[Stage]) -> String {
        stages.iter().map(words).collect::<Vec<_>>().join("; ")
    }

    /// Reads such a line; empty for no stages.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn read_line(line: &str) -> Result<Vec<Stage>, String> {
        let parts = line.split(';').map(str::trim).filter(|part| !part.is_empty());
        let stages: Result<Vec<Stage>, TextError> = parts.map(read).collect();
        let stages = stages.map_err(|error| error.to_string())?;
        if !stages.is_empty() {
            check(&stages).map_err(|error| error.to_string())?;
        }
        Ok(stages)
    }

    fn words(stage: &Stage) -> String {
        match stage {
            Stage::Snug { torque } => format!("{SNUG}{}", torque.text()),
            Stage::Torque(torque) => torque.text(),
            Stage::Angle { degrees } => format!("{degrees}°"),
        }
    }

    fn read(words: &str) -> Result<Stage, TextError> {
        if let Some(rest) = words.trim().strip_prefix(SNUG) {
            return Ok(Stage::Snug {
                torque: parse_torque(rest, None)?,
            });
        }
        // What is no angle is a torque, and refused as one; so is a number without a unit.
        let bare = !words.contains(|c: char| c.is_alphabetic() || matches!(c, '°' | 'º'));
        match parse_angle(words) {
            Ok(angle) if !bare => Ok(Stage::Angle {
                degrees: (angle.angle().get::<degree>() * 1e6).round() / 1e6,
            }),
            _ => Ok(Stage::Torque(parse_torque(words, None)?)),
        }
    }
}
