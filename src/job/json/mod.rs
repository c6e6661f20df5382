//! The one reader and writer of JSON: a text becomes nodes once, and every type is read from those.
//!
//! Small on purpose: serde builds a copy of its code for each type and each way in, so there is one way
//! in (fields by name, words as `&str`) and whatever doesn't depend on the type is an ordinary function.
//! Numbers within words are read and written as files have them, whatever mark the user chose.

mod error;
mod indent;
mod inside;
mod node;
mod parse;
mod read;
mod write;

pub use error::JsonError;

pub use node::Parting;

use crate::trade::quantity::kept;
use node::Node;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

/// Reads one value; nothing may follow it.
///
/// # Errors
/// What is wrong and where: a line, and the names of the fields that lead there.
///
/// ```
/// use halfcase::job::json;
/// use halfcase::job::sheet::Step;
///
/// let error = json::read::<Vec<Step>>("[\n {\"id\": 1, \"title\": 5}\n]").unwrap_err();
/// assert_eq!(error.to_string(), "line 2 (1st, title): a text in quotes is needed here, not 5");
/// ```
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, JsonError> {
    let root = parse::parse(text)?;
    kept(|| read::read(&root)).map_err(|error| error.on_line_of(text))
}

/// Reads one value in which a text may say two things at once: wherever fields stand under the name
/// `under` without a `second`, words of `first` are given to `part`, and what it makes of them stands in
/// both.
///
/// # Errors
/// As [`read`].
pub fn read_parted<T: DeserializeOwned>(text: &str, parting: &Parting) -> Result<T, JsonError> {
    let mut root = parse::parse(text)?;
    kept(|| {
        root.part(parting);
        read::read(&root)
    })
    .map_err(|error| error.on_line_of(text))
}

/// Reads one value out of what was read before.
///
/// # Errors
/// As [`read`], without a line.
pub fn from_value<T: DeserializeOwned>(value: &Value) -> Result<T, JsonError> {
    kept(|| read::read(&Node::of(value, &mut 0)))
}

/// Writes a value on one line.
///
/// # Errors
/// Bytes, or a map whose keys are neither words nor numbers.
pub fn write<T: Serialize + ?Sized>(value: &T) -> Result<String, JsonError> {
    let mut text = String::new();
    kept(|| value.serialize(write::Writer(&mut text)))?;
    Ok(text)
}

/// Writes a value over lines, to be read by people.
///
/// # Errors
/// As [`write`].
pub fn pretty<T: Serialize + ?Sized>(value: &T) -> Result<String, JsonError> {
    write(value).map(|text| indent::indent(&text))
}
