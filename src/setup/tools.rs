//! wasm-bindgen, Trunk, wasm-opt and esbuild: those on PATH, prebuilt ones, or built here; without Trunk and
//! the last two the page is made too.

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

/// What comes from npm, in which versions: wasm-opt in binaryen, and what makes scripts and styles small.
pub const FROM_NPM: [&str; 2] = ["binaryen@132.0.0", "esbuild@0.28.2"];

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
/// compiler's; addresses below 1024 hold nothing, as the stack lies lowest. What is put into its one caller
/// is shorter, but brotli finds less of what repeats: 5 kB of the download.
pub const PASSES: [&str; 7] = [
    "--low-memory-unused",
    "--flatten",
    "--rereloop",
    "-Oz",
    "-Oz",
    "--one-caller-inline-max-function-size=8",
    "--always-inline-max-function-size=1",
];

/// A prebuilt tool that isn't here by then is built instead.
const PREBUILT: Duration = Duration::from_secs(300);

/// A crate that brings a program.
struct Tool {
    name: &'static str,
    package: &'static str,
    version: String,
}

/// How a tool that runs for seconds is built: quickly.
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
    /// What makes a page's glue of the WASM.
    pub wasm_bindgen: PathBuf,
    /// Trunk, where there is one.
    pub trunk: Option<PathBuf>,
    /// `PATH` for Trunk, with the project's own tools first.
    pub path: OsString,
}

impl Tools {
    /// Those that are here already, when wasm-bindgen is among them.
    ///
    /// # Errors
    /// [`SetupError::File`] or [`SetupError::Missing`] when `Cargo.lock` doesn't name its version.
    pub fn at_hand(project: &Project) -> Result<Option<Tools>, SetupError> {
        let Some(wasm_bindgen) = look(|| find(project, &bindgen(project).ok()?)) else {
            return Ok(None);
        };
        let trunk = look(|| find(project, &trunk()));
        Tools::of(wasm_bindgen, trunk).map(Some)
    }

    /// Finds or fetches them: wasm-bindgen in any way, Trunk where it can be had in seconds.
    ///
    /// # Errors
    /// [`SetupError::Missing`] when wasm-bindgen can't be had.
    pub fn ready(project: &Project) -> Result<Tools, SetupError> {
        let trunk = look(|| find(project, &trunk())).or_else(|| {
            fetch(project, &trunk());
            find(project, &trunk()).map(|(_, there)| there)
        });
        if trunk.is_none() {
            say("  Without Trunk the page is put together by this program.");
        }
        let wasm_bindgen = ready(project, &bindgen(project)?)?;
        let scratch = scratch(project);
        if scratch.is_dir() {
            fs::remove_dir_all(&scratch).map_err(SetupError::file(&scratch))?;
        }
        Tools::of(wasm_bindgen, trunk)
    }

    fn of(wasm_bindgen: PathBuf, trunk: Option<PathBuf>) -> Result<Tools, SetupError> {
        let own = wasm_bindgen.parent().map(Path::to_path_buf).into_iter();
        let usual = std::env::var_os("PATH").unwrap_or_default();
        let path = std::env::join_paths(own.chain(std::env::split_paths(&usual))).map_err(|_| {
            SetupError::missing(
                "a usable PATH",
                "move the project to a folder without `:` in its name",
            )
        })?;
        Ok(Tools {
            wasm_bindgen,
            trunk,
            path,
        })
    }
}

fn bindgen(project: &Project) -> Result<Tool, SetupError> {
    Ok(Tool {
        name: "wasm-bindgen",
        package: "wasm-bindgen-cli",
        version: locked_version(project, "wasm-bindgen")?,
    })
}

fn trunk() -> Tool {
    Tool {
        name: "trunk",
        package: "trunk",
        version: TRUNK.to_owned(),
    }
}

/// Fetches what makes a release small when it isn't here; without it the release works and is larger, which
/// is said.
pub fn ready_to_shrink(project: &Project) {
    if wasm_opt(project).is_none() || esbuild(project).is_none() {
        fetch_from_npm(project);
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
    fetch(project, tool);
    if find(project, tool).is_none() {
        let what = format!("build {} {} from crates.io", tool.name, tool.version);
        long(&what, "3/4 min on two idle cores, once", |log| {
            build(project, tool, log)
        })?;
    }
    find(project, tool).map(|(_, there)| there).ok_or_else(|| {
        SetupError::missing(
            format!("{} {}", tool.name, tool.version),
            format!("run `cargo install {} --version {}`", tool.package, tool.version),
        )
    })
}

/// Tries to have a tool in seconds: its own release archive, then what `cargo binstall` finds.
fn fetch(project: &Project, tool: &Tool) {
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
            Err(error) => say(&format!("  {error} Another way is tried.")),
        }
    }
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

/// Without default features: what wasm-bindgen's test runner needs is not asked for here. Its author's lock
/// file is not published, and the newest versions of its dependencies build.
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
    install.envs(QUICKLY);
    // Flags for another program would build all of it anew, and slowly.
    install
        .env_remove("RUSTFLAGS")
        .env_remove("CARGO_ENCODED_RUSTFLAGS");
    // Kept until it succeeds, so that a build that was broken off goes on where it was.
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
    let name = |option: &'static str| option.split('=').next().unwrap_or(option);
    let mut all = FEATURES.iter().chain(&PASSES);
    all.all(|option| help.contains(name(option)))
}

/// esbuild, from the project's own tools.
pub fn esbuild(project: &Project) -> Option<PathBuf> {
    let own = project.tools().join("node_modules/.bin/esbuild");
    own.is_file().then_some(own)
}

/// Fetches both through npm, where there is npm; else says what that means. At once: what npm isn't told to
/// install it takes away.
fn fetch_from_npm(project: &Project) {
    let without = "Without a recent wasm-opt and esbuild (through npm) the release works but is larger.";
    if on_path("npm", &[]).is_none() {
        return println!("  {without}");
    }
    let fetched = step(&format!("npm install {}", FROM_NPM.join(" ")), || {
        let mut npm = command("npm", project.root());
        npm.args([
            "install",
            "--no-save",
            "--no-audit",
            "--no-fund",
            "--loglevel=error",
            "--prefix",
        ]);
        run(npm.arg(project.tools()).args(FROM_NPM), Some(PREBUILT))
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
        assert!(!takes_all(
            &all.replace("--one-caller-inline-max-function-size", "")
        ));
        assert!(takes_all(&all.replace("size=8", "size")));
    }
}
