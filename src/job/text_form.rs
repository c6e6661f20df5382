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
