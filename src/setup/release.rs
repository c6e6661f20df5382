//! The release: the page built by Trunk with everything it needs found first.

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
    let compiler = Compiler::ready(project)?;
    let tools = Tools::ready(project)?;
    step("build the release with Trunk", || {
        let mut trunk = command(&tools.trunk, project.root());
        trunk
            .args(["build", "--release", "--skip-version-check"])
            .env("PATH", &tools.path)
            .env("CARGO_TARGET_DIR", project.web_target());
        if let Ok(this) = std::env::current_exe() {
            trunk.env(SEALER, this);
        }
        compiler.apply(&mut trunk);
        run(&mut trunk, None)
    })?;
    println!("The release is in dist, ready after {}.", lasted(begun.elapsed()));
    Ok(())
}
