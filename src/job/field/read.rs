//! Reading what was entered in a field, and the refusals.

/// Why a field was not changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refused {
    /// The work has no such field.
    NoField,
    /// A sentence that says what to enter.
    Said(String),
}

/// What changing a field comes to.
pub type Set = Result<(), Refused>;

/// A refusal in words.
///
/// # Errors
/// Always: the words.
pub fn refuse<T>(words: impl Into<String>) -> Result<T, Refused> {
    Err(Refused::Said(words.into()))
}

/// "yes" or "no".
///
/// # Errors
/// Anything else.
pub fn yes(value: &str) -> Result<bool, Refused> {
    match value {
        "yes" => Ok(true),
        "no" => Ok(false),
        _ => refuse("Choose yes or no."),
    }
}

/// A name that may not be empty.
///
/// # Errors
/// Blanks.
pub fn named(value: &str) -> Result<String, Refused> {
    match value.trim() {
        "" => refuse("Give it a name."),
        name => Ok(name.to_owned()),
    }
}

/// One of `all` by its place in the list.
///
/// # Errors
/// A place that isn't there.
pub fn pick<T: Copy>(all: &[T], value: &str) -> Result<T, Refused> {
    let at = value.parse::<usize>().ok();
    at.and_then(|at| all.get(at))
        .copied()
        .ok_or_else(|| Refused::Said("Choose one of those shown.".to_owned()))
}

/// The same; empty for none.
///
/// # Errors
/// A place that isn't there.
pub fn pick_maybe<T: Copy>(all: &[T], value: &str) -> Result<Option<T>, Refused> {
    if value.is_empty() {
        Ok(None)
    } else {
        pick(all, value).map(Some)
    }
}
