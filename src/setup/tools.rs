//! Trunk, wasm-bindgen and wasm-opt: those on PATH, prebuilt ones, or built here.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use super::error::SetupError;
use super::prebuilt;
use super::programs::{ask, command, look, on_path, run, step};
use super::progress::{long, run_logged};
use super::project::Project;
use super::say::say;

/// The Trunk this project is built with: the newest whose release archive's checksum is known.
pub(super) const TRUNK: &str = "0.21.8";

/// wasm-opt's version as npm counts it.
const BINARYEN: &str = "132.0.0";

/// The features browsers and the compiler agree on, one by one: allowing all makes a file that
/// browsers refuse.
pub const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// What the optimiser does, in order. Plain control flow found anew compresses better than the
/// compiler's; addresses below 1024 hold nothing, as the stack lies lowest.
pub const PASSES: [&str; 5] = ["--low-memory-unused", "--flatten", "--rereloop", "-Oz", "-Oz"];

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
    /// What to expect on two cores, when it has to be built.
    usual: &'static str,
}

/// How a tool that runs for seconds is built: quickly. On two idle cores Trunk took 590 s
/// optimised and takes 127 s so.
const QUICKLY: [(&str, &str); 5] = [
    ("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0"),
    ("CARGO_PROFILE_RELEASE_LTO", "off"),
    ("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16"),
    ("CARGO_PROFILE_RELEASE_DEBUG", "0"),
    ("CARGO_PROFILE_RELEASE_STRIP", "none"),
];

/// The tools as the build finds them.
#[derive(Clone, Debug)]
pub struct Tools {
    /// Trunk itself.
    pub trunk: PathBuf,
    /// `PATH` for Trunk, with the project's own tools first.
    pub path: OsString,
}

impl Tools {
    /// Those that are here already, when it is all of them.
    ///
    /// # Errors
    /// [`SetupError::File`] or [`SetupError::Missing`] when `Cargo.lock` doesn't name their versions.
    pub fn at_hand(project: &Project) -> Result<Option<Tools>, SetupError> {
        let mut programs = Vec::new();
        for tool in wanted(project)? {
            match look(|| find(project, &tool)) {
                Some(program) => programs.push(program),
                None => return Ok(None),
            }
        }
        Tools::of(programs).map(Some)
    }

    /// Finds or fetches them all.
    ///
    /// # Errors
    /// [`SetupError::Missing`] when one can't be had.
    pub fn ready(project: &Project) -> Result<Tools, SetupError> {
        let mut programs = Vec::new();
        for tool in wanted(project)? {
            programs.push(ready(project, &tool)?);
        }
        let scratch = scratch(project);
        if scratch.is_dir() {
            fs::remove_dir_all(&scratch).map_err(SetupError::file(&scratch))?;
        }
        Tools::of(programs)
    }

    /// Trunk is the last of `programs`; it finds the others by `PATH`.
    fn of(programs: Vec<PathBuf>) -> Result<Tools, SetupError> {
        let own = programs
            .iter()
            .filter_map(|program| program.parent())
            .map(Path::to_path_buf);
        let usual = std::env::var_os("PATH").unwrap_or_default();
        let path = std::env::join_paths(own.chain(std::env::split_paths(&usual))).map_err(|_| {
            SetupError::missing(
                "a usable PATH",
                "move the project to a folder without `:` in its name",
            )
        })?;
        let trunk = programs.last().cloned().unwrap_or_else(|| "trunk".into());
        Ok(Tools { trunk, path })
    }
}

/// The programs that are crates; Trunk last.
fn wanted(project: &Project) -> Result<[Tool; 2], SetupError> {
    Ok([
        Tool {
            name: "wasm-bindgen",
            package: "wasm-bindgen-cli",
            version: locked_version(project, "wasm-bindgen")?,
            locked: false,
            usual: "3/4 min",
        },
        Tool {
            name: "trunk",
            package: "trunk",
            version: TRUNK.to_owned(),
            locked: true,
            usual: "2 min",
        },
    ])
}

/// Fetches wasm-opt when it isn't here; without it the release works and is larger, which is said.
pub fn ready_wasm_opt(project: &Project) {
    if wasm_opt(project).is_none() {
        fetch_wasm_opt(project);
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
    if let Some(archive) = prebuilt::archive(tool.name, &tool.version) {
        let what = format!("{} {}, its release archive", tool.name, tool.version);
        if let Err(error) = step(&what, || prebuilt::fetch(archive, &bin(project))) {
            say(&format!("  {error} Another way is tried."));
        }
    }
    if find(project, tool).is_none()
        && ask(command("cargo", project.root()).args(["binstall", "-V"])).is_some()
    {
        let prebuilt = step(&format!("{} {}, prebuilt", tool.name, tool.version), || {
            binstall(project, tool)
        });
        match prebuilt {
            Ok(()) => {}
            Err(error) => say(&format!("  {error} Building it instead.")),
        }
    }
    if find(project, tool).is_none() {
        let what = format!("build {} {} from crates.io", tool.name, tool.version);
        let usual = format!("{} on two idle cores, once", tool.usual);
        long(&what, &usual, |log| build(project, tool, log))?;
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

/// Without default features: what Trunk would fetch over TLS, and what wasm-bindgen's test runner
/// needs, is not asked for here.
fn build(project: &Project, tool: &Tool, log: &Path) -> Result<(), SetupError> {
    let mut install = command("cargo", project.root());
    install
        .args([
            "install",
            tool.package,
            "--version",
            &tool.version,
            "--no-default-features",
            "--bin",
            tool.name,
            "--force",
            "--root",
        ])
        .arg(project.tools());
    if tool.locked {
        install.arg("--locked");
    }
    install.envs(QUICKLY);
    // Flags for another program would build all of it anew, and slowly.
    install
        .env_remove("RUSTFLAGS")
        .env_remove("CARGO_ENCODED_RUSTFLAGS");
    // One folder for all tools, for what they share; kept until the last succeeds, so that a build
    // that was broken off goes on where it was.
    run_logged(install.env("CARGO_TARGET_DIR", scratch(project)), log)
}

fn scratch(project: &Project) -> PathBuf {
    project.tools().join("build")
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
