//! The release: the page built with everything it needs found first.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::thread;
use std::time::Instant;

use super::bundle;
use super::error::SetupError;
use super::programs::{command, lasted, run, step};
use super::progress::{long, run_logged};
use super::project::Project;
use super::seal::{self, PREVIEW};
use super::toolchain::{Compiler, TARGET};
use super::tools::{self, Tools};

/// Names the program that seals the release, so that Trunk's hook need not build one.
pub const SEALER: &str = "HALFCASE_SEALER";

/// What is built of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finish {
    /// For this computer: the same code without wasm-opt and compression, in `target/preview`.
    Preview,
    /// For the world, in `dist`.
    Release,
}

impl Finish {
    fn name(self) -> &'static str {
        match self {
            Finish::Preview => "the page",
            Finish::Release => "the release",
        }
    }

    fn folder(self, project: &Project) -> PathBuf {
        match self {
            Finish::Preview => project.preview(),
            Finish::Release => project.dist(),
        }
    }
}

/// Sets up whatever is missing, builds the page and names the folder it is in.
///
/// # Errors
/// The first thing that is missing or fails, as a [`SetupError`].
pub fn build(project: &Project, finish: Finish) -> Result<PathBuf, SetupError> {
    let begun = Instant::now();
    // Given back when the file is closed.
    let _turn = turn(project)?;
    let compiler = Compiler::ready(project)?;
    let tools = match Tools::at_hand(project)? {
        Some(tools) => {
            compile(project, &compiler)?;
            tools
        }
        // What tools leave idle of the cores goes to the page, and the other way round.
        None => thread::scope(|scope| {
            let page = scope.spawn(|| compile(project, &compiler));
            let tools = Tools::ready(project);
            let page = page.join().unwrap_or(Ok(()));
            tools.and_then(|tools| page.map(|()| tools))
        })?,
    };
    if finish == Finish::Release {
        tools::ready_to_shrink(project);
    }
    let folder = finish.folder(project);
    match &tools.trunk {
        Some(trunk) => with_trunk(project, &compiler, &tools, trunk, finish)?,
        None => {
            let made = project.web_target().join("made");
            step(&format!("put {} together", finish.name()), || {
                bundle::build(project, &tools.wasm_bindgen, &made)?;
                seal::seal(project, &made, true, finish == Finish::Release)?;
                replace(&made, &folder)
            })?;
        }
    }
    let shown = folder.strip_prefix(project.root()).unwrap_or(&folder);
    println!(
        "{} is in {}, ready after {}.",
        finish.name().replacen('t', "T", 1),
        shown.display(),
        lasted(begun.elapsed())
    );
    Ok(folder)
}

/// Trunk finds the page compiled, puts it together, and calls this program to seal it.
fn with_trunk(
    project: &Project,
    compiler: &Compiler,
    tools: &Tools,
    trunk: &Path,
    finish: Finish,
) -> Result<(), SetupError> {
    step(&format!("build {} with Trunk", finish.name()), || {
        let mut trunk = command(trunk, project.root());
        trunk
            .args(["build", "--release", "--skip-version-check", "--dist"])
            .arg(finish.folder(project))
            .env("PATH", &tools.path);
        if let Ok(this) = std::env::current_exe() {
            trunk.env(SEALER, this);
        }
        if finish == Finish::Preview {
            trunk.env(PREVIEW, "1");
        }
        for_the_page(&mut trunk, project, compiler);
        run(&mut trunk, None)
    })
}

/// Puts a whole folder in the place of another one: a build that fails leaves the old page, and one that makes the
/// same does too, for somebody may be served from it. Trunk does
/// this itself, and leaves nothing. Copied, as the two may lie on two disks.
fn replace(made: &Path, folder: &Path) -> Result<(), SetupError> {
    if same(made, folder) {
        return Ok(());
    }
    if folder.is_dir() {
        fs::remove_dir_all(folder).map_err(SetupError::file(folder))?;
    }
    fs::create_dir_all(folder).map_err(SetupError::file(folder))?;
    bundle::copy(made, folder)
}

/// Whether two folders hold the same files, byte for byte; not where one can't be read.
fn same(one: &Path, other: &Path) -> bool {
    let names = |folder: &Path| -> Option<Vec<_>> {
        let mut names: Vec<_> = fs::read_dir(folder)
            .ok()?
            .map(|entry| entry.map(|entry| entry.file_name()))
            .collect::<Result<_, _>>()
            .ok()?;
        names.sort();
        Some(names)
    };
    let Some(all) = names(one).filter(|all| names(other).as_ref() == Some(all)) else {
        return false;
    };
    all.iter().all(|name| {
        let (one, other) = (one.join(name), other.join(name));
        match one.is_dir() {
            true => same(&one, &other),
            false => fs::read(one).is_ok_and(|bytes| fs::read(other).is_ok_and(|others| bytes == others)),
        }
    })
}

/// Compiles the page as Trunk will ask for it, so that Trunk finds it done.
fn compile(project: &Project, compiler: &Compiler) -> Result<(), SetupError> {
    long("compile the page", "2 to 5 min on two cores", |log| {
        let mut cargo = command("cargo", project.root());
        cargo.args(["build", "--release", "--target", TARGET, "--bin", "halfcase"]);
        cargo.args(["--no-default-features", "--features", "app"]);
        for_the_page(&mut cargo, project, compiler);
        run_logged(&mut cargo, log)
    })
}

/// What makes two builds of the page the same to Cargo.
fn for_the_page(command: &mut Command, project: &Project, compiler: &Compiler) {
    command
        .env("CARGO_TARGET_DIR", project.web_target())
        // Flags for another program would take the place of the page's own.
        .env_remove("RUSTFLAGS")
        .env_remove("CARGO_ENCODED_RUSTFLAGS");
    compiler.apply(command);
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_page_is_left_where_it_is_and_another_takes_its_place() {
        let root = std::env::temp_dir().join(format!("halfcase-replace-{}", std::process::id()));
        let (made, folder) = (root.join("made"), root.join("dist"));
        let inner = |folder: &Path| folder.join("type/numerals.woff2");
        for folder in [&made, &folder] {
            fs::create_dir_all(folder.join("type")).expect("a folder");
            fs::write(inner(folder), "numerals").expect("a file");
        }
        let lies_since = || fs::metadata(inner(&folder)).and_then(|it| it.modified()).ok();
        let before = lies_since();
        assert!(before.is_some());
        replace(&made, &folder).expect("the same");
        assert_eq!(lies_since(), before);
        fs::write(inner(&made), "numerala").expect("another");
        replace(&made, &folder).expect("another");
        assert_eq!(
            fs::read_to_string(inner(&folder)).ok().as_deref(),
            Some("numerala")
        );
        fs::write(made.join("more"), "").expect("one more");
        replace(&made, &folder).expect("one more");
        assert!(folder.join("more").is_file());
        drop(fs::remove_dir_all(root));
    }
}
