//! A number as a manual states it, with the digits it is printed in: .0300 says more than .03.

use super::{decimal, fixed, no_number};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// More digits behind the point than any manual prints.
pub const MOST_DIGITS: u8 = 12;
const MOST: usize = MOST_DIGITS as usize;

/// A number and how many digits behind the point it was written with.
///
/// In a file it is a number where these are just the digits it needs, else a text: `"0.0300"`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stated {
    /// The number.
    pub value: f64,
    /// Digits behind the point, at most 12.
    pub decimals: u8,
}

impl Stated {
    /// With the digits it needs and no more.
    pub fn plain(value: f64) -> Self {
        let text = value.to_string();
        let behind = text.split_once('.').map_or(0, |(_, behind)| behind.len());
        let decimals = behind.min(MOST) as u8;
        Self { value, decimals }
    }

    /// As it was typed: with one point or comma, or none. `None` for what is no number.
    ///
    /// ```
    /// use halfcase::trade::quantity::Stated;
    ///
    /// assert_eq!(Stated::typed(".0300").map(Stated::text), Some("0.0300".to_owned()));
    /// ```
    pub fn typed(text: &str) -> Option<Self> {
        let value = decimal(text)?;
        let behind = text
            .trim()
            .split_once(['.', ','])
            .map_or(0, |(_, behind)| behind.len());
        let plain = Self::plain(value);
        // Never fewer than it needs: what is shown is what is meant.
        let decimals = (behind.min(MOST) as u8).max(plain.decimals);
        Some(Self { value, decimals })
    }

    /// Its digits, as it was stated.
    pub fn text(self) -> String {
        fixed(self.value, self.decimals)
    }
}

impl Serialize for Stated {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if self.decimals == Self::plain(self.value).decimals {
            to.serialize_f64(self.value)
        } else {
            to.serialize_str(&self.text().replace('−', "-"))
        }
    }
}

impl<'de> Deserialize<'de> for Stated {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader)
    }
}

struct Reader;

impl Visitor<'_> for Reader {
    type Value = Stated;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a number, or one in quotes with its digits, such as \"0.0300\"")
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Stated, E> {
        Ok(Stated::plain(value))
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Stated, E> {
        Ok(Stated::plain(value as f64))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Stated, E> {
        Ok(Stated::plain(value as f64))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Stated, E> {
        Stated::typed(text).ok_or_else(|| E::custom(no_number(text)))
    }
}
