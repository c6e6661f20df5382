//! `cargo run` on a computer: fetch the tools, build the release, serve it.
//!
//! | command | does |
//! | --- | --- |
//! | `cargo run` | sets up, builds the page quickly, serves it on <http://localhost:8080> or the next free port |
//! | `cargo run -- build` | sets up and builds the release into `dist`, as small as it gets |
//! | `cargo run -- size` | the same, then prints what a first visit transfers, and fails above its bar |
//! | `cargo run -- seal` | turns Trunk's output into a release; Trunk's hook calls it |

mod bundle;
mod error;
pub mod licences;
mod news;
mod packages;
mod page;
mod prebuilt;
mod programs;
mod progress;
pub mod project;
mod release;
mod say;
mod seal;
mod size;
pub mod tied;
mod toolchain;
mod tools;
pub mod worker;

pub mod browser;
pub mod serve;

use std::process::ExitCode;

pub use error::SetupError;

use project::Project;
use release::Finish;

/// The first port tried, and the last.
const PORTS: (u16, u16) = (8080, 8119);

/// Runs the command the arguments name; a failure is one sentence on standard error.
pub fn main() -> ExitCode {
    if !tied::tie() {
        eprintln!(
            "The process that {} names is gone: unset it and try again.",
            tied::FOR
        );
        return ExitCode::FAILURE;
    }
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        [] | ["serve"] => run(),
        ["build"] => Project::find()
            .and_then(|project| release::build(&project, Finish::Release))
            .map(drop),
        ["size"] => Project::find().and_then(|project| size::report(&project)),
        ["seal"] => seal::from_hook(),
        other => Err(SetupError::Usage(other.join(" "))),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), SetupError> {
    let project = Project::find()?;
    let folder = release::build(&project, Finish::Preview)?;
    let (first, last) = PORTS;
    let server = serve::Server::start_from(&folder, first, last)?;
    println!(
        "Halfcase is at {} (this computer only; Ctrl-C stops it).",
        server.url()
    );
    server.wait();
    Ok(())
}
