//! Trunk, wasm-bindgen and wasm-opt: those on PATH, prebuilt ones, or built here.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use super::error::SetupError;
use super::programs::{ask, command, look, on_path, run, step};
use super::project::Project;
use super::seal::{FEATURES, PASSES};

/// The Trunk this project is built with; the same in `Trunk.toml`.
const TRUNK: &str = "0.21.14";

/// wasm-opt's version as npm counts it.
const BINARYEN: &str = "132.0.0";

/// A prebuilt tool that isn't here by then is built instead.
const PREBUILT: Duration = Duration::from_secs(300);

/// A crate that brings a program.
struct Tool {
    name: &'static str,
    package: &'static str,
    version: String,
    /// Whether the versions its author locked are used: the newest ones of wasm-bindgen's
    /// dependencies build where its lock file is not published.
    locked: bool,
}

/// The tools as the build finds them.
#[derive(Clone, Debug)]
pub struct Tools {
    /// Trunk itself.
    pub trunk: PathBuf,
    /// `PATH` for Trunk, with the project's own tools first.
    pub path: OsString,
}

impl Tools {
    /// Finds or fetches them all.
    ///
    /// # Errors
    /// [`SetupError::Missing`] when one can't be had. A missing wasm-opt is only said: the
    /// release works without it, it is larger.
    pub fn ready(project: &Project) -> Result<Tools, SetupError> {
        let wasm_bindgen = Tool {
            name: "wasm-bindgen",
            package: "wasm-bindgen-cli",
            version: locked_version(project, "wasm-bindgen")?,
            locked: false,
        };
        let trunk = Tool {
            name: "trunk",
            package: "trunk",
            version: TRUNK.to_owned(),
            locked: true,
        };
        let own = bin(project);
        let mut folders = Vec::new();
        for tool in [&wasm_bindgen, &trunk] {
            folders.extend(ready(project, tool)?.parent().map(Path::to_path_buf));
        }
        let trunk = folders
            .last()
            .map(|folder| folder.join("trunk"))
            .unwrap_or_else(|| own.join("trunk"));
        folders.extend(std::env::split_paths(
            &std::env::var_os("PATH").unwrap_or_default(),
        ));
        let path = std::env::join_paths(folders).map_err(|_| {
            SetupError::missing(
                "a usable PATH",
                "move the project to a folder without `:` in its name",
            )
        })?;
        if wasm_opt(project).is_none() {
            fetch_wasm_opt(project);
        }
        Ok(Tools { trunk, path })
    }
}

fn bin(project: &Project) -> PathBuf {
    project.tools().join("bin")
}

/// The version `Cargo.lock` holds of a package.
fn locked_version(project: &Project, package: &str) -> Result<String, SetupError> {
    let path = project.root().join("Cargo.lock");
    let lock = fs::read_to_string(&path).map_err(SetupError::file(&path))?;
    let wanted = format!("name = \"{package}\"");
    lock.lines()
        .skip_while(|line| *line != wanted)
        .find_map(|line| {
            Some(
                line.strip_prefix("version = \"")?
                    .trim_end_matches('"')
                    .to_owned(),
            )
        })
        .ok_or_else(|| SetupError::missing(format!("{package} in Cargo.lock"), "run `cargo update`"))
}

/// Where a tool of the right version is, fetched when it isn't.
fn ready(project: &Project, tool: &Tool) -> Result<PathBuf, SetupError> {
    if let Some(there) = look(|| find(project, tool)) {
        return Ok(there);
    }
    if ask(command("cargo", project.root()).args(["binstall", "-V"])).is_some() {
        let prebuilt = step(&format!("{} {}, prebuilt", tool.name, tool.version), || {
            binstall(project, tool)
        });
        match prebuilt {
            Ok(()) => {}
            Err(error) => println!("  {error} Building it instead."),
        }
    }
    if find(project, tool).is_none() {
        let what = format!(
            "{} {}, built from crates.io (some minutes, once)",
            tool.name, tool.version
        );
        step(&what, || build(project, tool))?;
    }
    find(project, tool).map(|(_, there)| there).ok_or_else(|| {
        SetupError::missing(
            format!("{} {}", tool.name, tool.version),
            format!("run `cargo install {} --version {}`", tool.package, tool.version),
        )
    })
}

/// The tool in that version on PATH, else among the project's own.
fn find(project: &Project, tool: &Tool) -> Option<(String, PathBuf)> {
    let own = bin(project);
    let candidates = [
        (on_path(tool.name, &[]), "on PATH"),
        (Some(own.join(tool.name)), "in target/tools"),
    ];
    candidates.into_iter().find_map(|(program, place)| {
        let program = program?;
        let said = ask(Command::new(&program).arg("--version"))?;
        let fits = said.split_whitespace().any(|word| word == tool.version);
        fits.then(|| (format!("{} {}, {place}", tool.name, tool.version), program))
    })
}

fn binstall(project: &Project, tool: &Tool) -> Result<(), SetupError> {
    let what = format!("{}@{}", tool.package, tool.version);
    let mut install = command("cargo", project.root());
    install
        .args([
            "binstall",
            "--no-confirm",
            "--disable-strategies",
            "compile",
            "--root",
        ])
        .arg(project.tools())
        .arg(what);
    run(&mut install, Some(PREBUILT))
}

fn build(project: &Project, tool: &Tool) -> Result<(), SetupError> {
    let scratch = project.tools().join("build");
    let mut install = command("cargo", project.root());
    install
        .args([
            "install",
            tool.package,
            "--version",
            &tool.version,
            "--force",
            "--root",
        ])
        .arg(project.tools());
    if tool.locked {
        install.arg("--locked");
    }
    // Kept until it succeeds, so that a build that was broken off goes on where it was.
    run(install.env("CARGO_TARGET_DIR", &scratch), None)?;
    fs::remove_dir_all(&scratch).map_err(SetupError::file(&scratch))
}

/// wasm-opt, from PATH or from the project's own tools; one too old for our options is passed over.
pub fn wasm_opt(project: &Project) -> Option<PathBuf> {
    let own = project.tools().join("node_modules/.bin/wasm-opt");
    [on_path("wasm-opt", &[]), Some(own)]
        .into_iter()
        .flatten()
        .find(|program| ask(Command::new(program).arg("--help")).is_some_and(|help| takes_all(&help)))
}

/// Whether a wasm-opt that describes itself so knows every option the release is made small with.
fn takes_all(help: &str) -> bool {
    FEATURES.iter().chain(&PASSES).all(|option| help.contains(option))
}

/// Fetches wasm-opt through npm, where there is npm; else says what that means.
fn fetch_wasm_opt(project: &Project) {
    let without =
        "Without a recent wasm-opt (from binaryen, or through npm) the release works but is larger.";
    if on_path("npm", &[]).is_none() {
        return println!("  {without}");
    }
    let fetched = step(&format!("wasm-opt, from npm's binaryen {BINARYEN}"), || {
        let mut npm = command("npm", project.root());
        npm.args([
            "install",
            "--no-save",
            "--no-audit",
            "--no-fund",
            "--loglevel=error",
            "--prefix",
        ]);
        run(
            npm.arg(project.tools()).arg(format!("binaryen@{BINARYEN}")),
            Some(PREBUILT),
        )
    });
    if let Err(error) = fetched {
        println!("  {error} {without}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wasm_opt_that_lacks_an_option_is_passed_over() {
        let all = [&FEATURES[..], &PASSES[..]].concat().join("  \n");
        assert!(takes_all(&all));
        // As Debian 12's, of 2022.
        assert!(!takes_all(&all.replace("--enable-bulk-memory-opt", "")));
    }
}
