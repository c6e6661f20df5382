//! The release: the page built by Trunk with everything it needs found first.

use std::fs::{self, File};
use std::time::Instant;

use super::error::SetupError;
use super::programs::{command, lasted, run, step};
use super::project::Project;
use super::toolchain::Compiler;
use super::tools::Tools;

/// Names the program that seals the release, so that Trunk's hook need not build one.
pub const SEALER: &str = "HALFCASE_SEALER";

/// Sets up whatever is missing and builds the release into `dist`.
///
/// # Errors
/// The first thing that is missing or fails, as a [`SetupError`].
pub fn build(project: &Project) -> Result<(), SetupError> {
    let begun = Instant::now();
    // Given back when the file is closed.
    let _turn = turn(project)?;
    let compiler = Compiler::ready(project)?;
    let tools = Tools::ready(project)?;
    step("build the release with Trunk", || {
        let mut trunk = command(&tools.trunk, project.root());
        trunk
            .args(["build", "--release", "--skip-version-check"])
            .env("PATH", &tools.path)
            .env("CARGO_TARGET_DIR", project.web_target())
            // Flags for another program would take the place of the page's own.
            .env_remove("RUSTFLAGS")
            .env_remove("CARGO_ENCODED_RUSTFLAGS");
        if let Ok(this) = std::env::current_exe() {
            trunk.env(SEALER, this);
        }
        compiler.apply(&mut trunk);
        run(&mut trunk, None)
    })?;
    println!("The release is in dist, ready after {}.", lasted(begun.elapsed()));
    Ok(())
}

/// Waits for our turn: two runs at once would sweep away each other's files in `dist` and `target/tools`.
fn turn(project: &Project) -> Result<File, SetupError> {
    let path = project.web_target().join("turn");
    fs::create_dir_all(project.web_target()).map_err(SetupError::file(&path))?;
    let turn = File::create(&path).map_err(SetupError::file(&path))?;
    if turn.try_lock().is_err() {
        println!("  Another run is at it: waiting for its end.");
        turn.lock().map_err(SetupError::file(&path))?;
    }
    Ok(turn)
}
