//! Values kept in files as a person writes them ("7.2 ft·lb", "M8×1", "N7"), by `#[serde(with = …)]`.

/// A torque as the manual states it.
pub mod torque {
    use super::said;
    use crate::trade::quantity::TorqueStatement;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes the statement in its own words.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(value: &TorqueStatement, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&value.text())
    }

    /// Reads the statement; its unit must be written, and a conversion in brackets must agree with it.
    ///
    /// # Errors
    /// The reader's sentence; so is an angle behind it, which stands under the stages.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<TorqueStatement, D::Error> {
        let said = said::read(&String::deserialize(from)?, None).map_err(D::Error::custom)?;
        match said.stages.as_slice() {
            [] => Ok(said.torque),
            _ => Err(D::Error::custom(
                "the angle stands both behind the torque and under “stages”: write it in one of them",
            )),
        }
    }
}

/// A volume as the manual states it, where it states one.
pub mod volume {
    use crate::trade::quantity::{Typed, VolumeUnit, parse_volume};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

    /// Writes the number and its unit.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(value: &Option<Typed<VolumeUnit>>, to: S) -> Result<S::Ok, S::Error> {
        value.map(|value| value.text()).serialize(to)
    }

    /// Reads the number; its unit must be written.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Typed<VolumeUnit>>, D::Error> {
        let text = Option::<String>::deserialize(from)?;
        let read = text.map(|text| parse_volume(&text, None));
        read.transpose().map_err(D::Error::custom)
    }
}

/// A temperature as the manual states it, where it states one.
pub mod temperature {
    use crate::trade::quantity::{TemperatureUnit, Typed, parse_temperature};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

    /// Writes the number and its unit.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(
        value: &Option<Typed<TemperatureUnit>>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        value.map(|value| value.text()).serialize(to)
    }

    /// Reads the number; its unit must be written.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Option<Typed<TemperatureUnit>>, D::Error> {
        let text = Option::<String>::deserialize(from)?;
        let read = text.map(|text| parse_temperature(&text, None));
        read.transpose().map_err(D::Error::custom)
    }
}

/// A thread by its designation, or none.
pub mod thread {
    use crate::trade::thread::Thread;
    use serde::{Deserialize, Deserializer, Serializer, de::Error};

    /// Writes the designation.
    ///
    /// # Errors
    /// Whatever the format refuses.
    pub fn serialize<S: Serializer>(value: &Option<Thread>, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&value.map_or(String::new(), |thread| thread.name()))
    }

    /// Reads a designation of the thread table; "not stated" is none.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Thread>, D::Error> {
        read(&String::deserialize(from)?).map_err(D::Error::custom)
    }

    /// How a thread is written that the manual doesn't state.
    const NOT_STATED: &str = "not stated";

    /// The designation, or that it isn't stated.
    pub fn words(thread: Option<Thread>) -> String {
        thread.map_or(NOT_STATED.to_owned(), |thread| thread.name())
    }

    /// Reads a designation; blank, or "not stated": none.
    ///
    /// # Errors
    /// The reader's sentence.
    pub fn read(words: &str) -> Result<Option<Thread>, String> {
        match words.trim() {
            "" | NOT_STATED => Ok(None),
            words => Thread::parse(words).map(Some).map_err(|error| error.to_string()),
        }
    }
}

pub mod code_table;
pub mod said;
pub mod stages;
pub mod turn;
