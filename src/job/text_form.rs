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

pub mod said;
pub mod stages;
pub mod turn;
