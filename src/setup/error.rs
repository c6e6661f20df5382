//! What can stop the set-up, each as one sentence with the way out.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Why the set-up, the build or the server can't go on.
#[derive(Debug)]
pub enum SetupError {
    /// A program isn't there and none of the ways to get it worked.
    Missing { what: String, fix: String },
    /// A program ran and reported failure.
    Failed { program: String, detail: String },
    /// A program was stopped after its time limit.
    TooSlow { program: String, limit: Duration },
    /// What was fetched is not what is pinned.
    Altered { url: String },
    /// A file or folder couldn't be read or written.
    File { path: PathBuf, source: io::Error },
    /// The built page isn't as the sealing step expects it.
    Page(String),
    /// No port in the tried range could be opened.
    NoPort {
        first: u16,
        last: u16,
        source: io::Error,
    },
    /// The release is over its bar; both in bytes.
    TooHeavy { total: u64, bar: u64 },
    /// The command line asks for something that isn't there.
    Usage(String),
}

impl SetupError {
    /// Wraps a file error with the path it happened at.
    pub fn file(path: &Path) -> impl FnOnce(io::Error) -> SetupError {
        let path = path.to_path_buf();
        move |source| SetupError::File { path, source }
    }

    /// A missing program and what to do about it.
    pub fn missing(what: impl Into<String>, fix: impl Into<String>) -> SetupError {
        SetupError::Missing {
            what: what.into(),
            fix: fix.into(),
        }
    }
}

impl fmt::Display for SetupError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SetupError::Missing { what, fix } => write!(f, "{what} is missing: {fix}."),
            SetupError::Failed { program, detail } => {
                write!(f, "`{program}` failed ({detail}); its own words are above.")
            }
            SetupError::TooSlow { program, limit } => {
                write!(
                    f,
                    "`{program}` gave no result within {} s and was stopped.",
                    limit.as_secs()
                )
            }
            SetupError::Altered { url } => {
                write!(
                    f,
                    "What came from {url} isn't what is pinned, and was thrown away."
                )
            }
            SetupError::File { path, source } => {
                write!(
                    f,
                    "{} can't be used ({source}); check that it exists and may be written.",
                    path.display()
                )
            }
            SetupError::Page(what) => {
                write!(
                    f,
                    "The built page can't be sealed: {what}; run `cargo run -- build` again."
                )
            }
            SetupError::NoPort { first, last, source } => {
                write!(
                    f,
                    "No port from {first} to {last} can be opened ({source}); stop the program that holds them."
                )
            }
            SetupError::TooHeavy { total, bar } => write!(
                f,
                "A first visit weighs {:.1} kB, over the bar of {:.1} kB: make the page lighter, or move BAR in src/setup/size.rs and say why.",
                *total as f64 / 1000.0,
                *bar as f64 / 1000.0
            ),
            SetupError::Usage(word) => {
                write!(
                    f,
                    "There is no command `{word}`; use build, size, seal, or none to build and serve."
                )
            }
        }
    }
}

impl std::error::Error for SetupError {}
