//! How a story ends badly: one sentence.

use std::fmt;

use thirtyfour::error::WebDriverError;

/// What a step of a story returns.
pub type Told<T = ()> = Result<T, Failure>;

/// Why a story could not go on, in words.
pub struct Failure(String);

impl Failure {
    pub fn new(words: impl Into<String>) -> Failure {
        Failure(words.into())
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<WebDriverError> for Failure {
    fn from(error: WebDriverError) -> Failure {
        Failure(format!("the browser refused: {error}"))
    }
}

impl From<serde_json::Error> for Failure {
    fn from(error: serde_json::Error) -> Failure {
        Failure(format!("the browser's answer can't be read: {error}"))
    }
}

impl From<std::io::Error> for Failure {
    fn from(error: std::io::Error) -> Failure {
        Failure(format!("a file can't be used: {error}"))
    }
}

impl From<halfcase::setup::SetupError> for Failure {
    fn from(error: halfcase::setup::SetupError) -> Failure {
        Failure(error.to_string())
    }
}
