//! A Rust compiler for the browser: rustup's, else the distribution's own.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use super::error::SetupError;
use super::packages;
use super::programs::{ask, command, look, on_path, run, step};
use super::project::Project;

/// The browser, as a compiler calls it.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// Set to `distribution` to pass rustup by, as on a machine where it can't fetch the target.
const CHOICE: &str = "HALFCASE_COMPILER";

/// The name under which rustup knows the distribution's compiler.
const LINKED: &str = "halfcase-distribution";

/// A panic stops the app on the spot, and source places are left out: words that no phone shows.
const STOP_AT_ONCE: [&str; 3] = [
    "-Zunstable-options",
    "-Cpanic=immediate-abort",
    "-Zlocation-detail=none",
];

/// A hanging download falls through to the distribution's compiler.
const PATIENCE: Duration = Duration::from_secs(180);

/// Which compiler builds the page, and with which standard library.
#[derive(Clone, Debug, PartialEq)]
pub struct Compiler {
    origin: Origin,
    /// Whether the standard library is built anew, made for size.
    rebuilds_library: bool,
    /// Whether it may stop at a panic without words, which no phone shows anyway.
    stops_at_once: bool,
}

/// Where the compiler comes from.
#[derive(Clone, Debug, PartialEq)]
enum Origin {
    /// The one on PATH; it has the browser's standard library.
    Usual,
    /// The distribution's, whose standard library for the browser has to be built from source.
    Distribution { linker: PathBuf, through_rustup: bool },
}

impl Compiler {
    /// Finds or installs one.
    ///
    /// # Errors
    /// [`SetupError::Missing`] when neither way leads to a compiler.
    pub fn ready(project: &Project) -> Result<Compiler, SetupError> {
        let forced = std::env::var(CHOICE).is_ok_and(|choice| choice == "distribution");
        let (origin, rebuilds_library) = if !forced && usual(project) {
            (Origin::Usual, source(project))
        } else {
            (distribution(project)?, true)
        };
        let mut compiler = Compiler {
            origin,
            rebuilds_library,
            stops_at_once: false,
        };
        let mut asked = command("rustc", project.root());
        compiler.apply(&mut asked);
        asked.args(STOP_AT_ONCE).args(["--print", "cfg"]);
        compiler.stops_at_once = rebuilds_library && ask(&mut asked).is_some();
        Ok(compiler)
    }

    /// Tells a command that builds the page which compiler to use.
    pub fn apply(&self, command: &mut Command) {
        if let Origin::Distribution {
            linker,
            through_rustup,
        } = &self.origin
        {
            if *through_rustup {
                command.env("RUSTUP_TOOLCHAIN", LINKED);
            }
            command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker);
        }
        if self.rebuilds_library {
            // Building the standard library is an unstable Cargo option; a stable compiler takes it
            // with this word.
            command
                .env("RUSTC_BOOTSTRAP", "1")
                .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
                .env("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size");
        }
        if self.stops_at_once {
            // Cargo adds these to the flags in `.cargo/config.toml`.
            command.env(
                "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
                STOP_AT_ONCE.join(" "),
            );
        }
    }
}

/// Whether the library's source lies beside the compiler on PATH, or rustup can fetch it in time.
fn source(project: &Project) -> bool {
    let there = || {
        let sysroot = ask(command("rustc", project.root()).args(["--print", "sysroot"]))?;
        let library = Path::new(sysroot.trim()).join("lib/rustlib/src/rust/library/Cargo.toml");
        library
            .is_file()
            .then(|| ("the standard library's source, there already".to_owned(), ()))
    };
    if look(there).is_some() {
        return true;
    }
    if on_path("rustup", &[]).is_some() {
        let added = step("rustup component add rust-src", || {
            run(
                command("rustup", project.root()).args(["component", "add", "rust-src"]),
                Some(PATIENCE),
            )
        });
        if let Err(error) = added {
            println!("  {error}");
        }
    }
    let found = there().is_some();
    if !found {
        println!("  Without the standard library's source the release works but is a sixteenth larger.");
    }
    found
}

/// Whether the compiler on PATH has the target, or rustup can fetch it in time.
fn usual(project: &Project) -> bool {
    let found = || has_target(project).then(|| (format!("Rust for {TARGET}, there already"), ()));
    if look(found).is_some() {
        return true;
    }
    if on_path("rustup", &[]).is_none() {
        return false;
    }
    let added = step(&format!("rustup target add {TARGET}"), || {
        run(
            command("rustup", project.root()).args(["target", "add", TARGET]),
            Some(PATIENCE),
        )
    });
    if let Err(error) = added {
        println!("  {error} Trying the distribution's compiler.");
    }
    has_target(project)
}

fn has_target(project: &Project) -> bool {
    let mut asked = command("rustc", project.root());
    let library = ask(asked.args(["--print", "target-libdir", "--target", TARGET]));
    library.is_some_and(|folder| holds_core(Path::new(folder.trim())))
}

fn holds_core(folder: &Path) -> bool {
    let files = std::fs::read_dir(folder).into_iter().flatten().flatten();
    files
        .map(|file| file.file_name())
        .any(|name| name.to_string_lossy().starts_with("libcore-"))
}

/// The distribution's compiler with its source, its linker, and rustup's leave to call it.
fn distribution(project: &Project) -> Result<Origin, SetupError> {
    if library_source().is_none() || wasm_linker().is_none() {
        // An old list knows neither the newest compiler nor the linker that goes with it.
        packages::refresh();
        let lld = packages::newest("lld-").unwrap_or_else(|| "lld".to_owned());
        packages::install(&["rustc-web", "cargo-web", "rust-web-src", &lld]).map_err(|_| no_compiler())?;
    }
    let linker = wasm_linker().ok_or_else(no_compiler)?;
    let version = library_source().ok_or_else(no_compiler)?;
    println!("✓ {} with its library's source", version.trim());
    let through_rustup = on_path("rustup", &[]).is_some();
    if through_rustup {
        run(
            command("rustup", project.root()).args(["toolchain", "link", LINKED, "/usr"]),
            Some(PATIENCE),
        )?;
    }
    Ok(Origin::Distribution {
        linker,
        through_rustup,
    })
}

fn no_compiler() -> SetupError {
    SetupError::missing(
        "A Rust compiler for the browser",
        format!(
            "run `rustup target add {TARGET}`, or on Debian `sudo apt-get install rustc-web cargo-web rust-web-src lld`"
        ),
    )
}

/// The distribution's compiler's name and version, when its library's source lies beside it.
fn library_source() -> Option<String> {
    let source = Path::new("/usr/lib/rustlib/src/rust/library/Cargo.toml");
    let cargo = Path::new("/usr/bin/cargo");
    (source.is_file() && cargo.is_file()).then_some(())?;
    ask(Command::new("/usr/bin/rustc").arg("--version"))
}

/// The linker for WASM: on PATH, or in the newest of the distribution's LLVM folders.
fn wasm_linker() -> Option<PathBuf> {
    let versions = (14..40)
        .rev()
        .map(|version| PathBuf::from(format!("/usr/lib/llvm-{version}/bin")));
    on_path("wasm-ld", &versions.collect::<Vec<_>>())
}
