//! Running other programs, and saying what is going on meanwhile.

use std::env;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use super::error::SetupError;
use super::say::say;

/// Says what begins, does it, and says how long it took.
pub fn step<T>(what: &str, work: impl FnOnce() -> Result<T, SetupError>) -> Result<T, SetupError> {
    let begun = Instant::now();
    say(&format!("→ {what}"));
    let done = work()?;
    say(&format!("✓ {what}: {}", lasted(begun.elapsed())));
    Ok(done)
}

/// Looks for something that is usually there already; one line, with how long the look took.
pub fn look<T>(work: impl FnOnce() -> Option<(String, T)>) -> Option<T> {
    let begun = Instant::now();
    let (what, found) = work()?;
    say(&format!("✓ {what}: {}", lasted(begun.elapsed())));
    Some(found)
}

/// A duration as a person says it: "0.4 s", "3 min 12 s".
pub fn lasted(time: Duration) -> String {
    match time.as_secs() {
        0..60 => format!("{:.1} s", time.as_secs_f64()),
        seconds => format!("{} min {} s", seconds / 60, seconds % 60),
    }
}

/// Runs to the end, its output shown; stopped after `limit`.
pub fn run(command: &mut Command, limit: Option<Duration>) -> Result<(), SetupError> {
    let program = spoken(command);
    let could_not_start = |error: std::io::Error| SetupError::Failed {
        program: program.clone(),
        detail: error.to_string(),
    };
    let mut child = command.stdin(Stdio::null()).spawn().map_err(could_not_start)?;
    let begun = Instant::now();
    let status: ExitStatus = loop {
        match (child.try_wait().map_err(could_not_start)?, limit) {
            (Some(status), _) => break status,
            (None, Some(limit)) if begun.elapsed() > limit => {
                drop(child.kill());
                drop(child.wait());
                return Err(SetupError::TooSlow { program, limit });
            }
            (None, _) => thread::sleep(Duration::from_millis(20)),
        }
    };
    match status.success() {
        true => Ok(()),
        false => Err(SetupError::Failed {
            program,
            detail: status.to_string(),
        }),
    }
}

/// What a program prints when asked, or nothing when it isn't there, fails or takes over 20 s.
pub fn ask(command: &mut Command) -> Option<String> {
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    let mut stdout = child.stdout.take()?;
    let reader = thread::spawn(move || {
        let mut words = String::new();
        stdout.read_to_string(&mut words).ok().map(|_| words)
    });
    let begun = Instant::now();
    while begun.elapsed() < Duration::from_secs(20) {
        if let Some(status) = child.try_wait().ok()? {
            return reader.join().ok()?.filter(|_| status.success());
        }
        thread::sleep(Duration::from_millis(5));
    }
    drop(child.kill());
    drop(child.wait());
    None
}

/// The first program of that name in the folders of `PATH`, then in `more`.
pub fn on_path(name: &str, more: &[PathBuf]) -> Option<PathBuf> {
    let path = env::var_os("PATH").unwrap_or_default();
    env::split_paths(&path)
        .chain(more.iter().cloned())
        .map(|folder| folder.join(format!("{name}{}", env::consts::EXE_SUFFIX)))
        .find(|file| file.is_file())
}

/// A command of this project: in its folder, without the settings that Cargo or a test run left
/// in the environment for another build.
pub fn command(program: impl AsRef<std::ffi::OsStr>, folder: &Path) -> Command {
    let mut command = Command::new(program);
    command.current_dir(folder);
    for left in [
        "CARGO",
        "CARGO_TARGET_DIR",
        "CARGO_BUILD_TARGET",
        "LD_LIBRARY_PATH",
        "RUSTC",
        "RUSTDOC",
    ] {
        command.env_remove(left);
    }
    command
}

/// The command as a person would type it.
pub fn spoken(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words
        .map(|word| word.to_string_lossy())
        .collect::<Vec<_>>()
        .join(" ")
}
