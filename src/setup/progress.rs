//! Long work in sight: on a terminal one line that changes, elsewhere a line a minute.

use std::fs::{self, File};
use std::io::{self, IsTerminal, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

use super::error::SetupError;
use super::programs::{lasted, spoken};
use super::say::{WIPE, say};

/// What is going on, in the order it began.
static RUNNING: Mutex<Vec<Stage>> = Mutex::new(Vec::new());

/// How often the line is drawn anew where there is a terminal, and where there is none.
const ON_TERMINAL: Duration = Duration::from_secs(1);
const IN_FILE: Duration = Duration::from_secs(60);

struct Stage {
    what: String,
    usual: String,
    begun: Instant,
}

impl Stage {
    fn line(&self) -> String {
        let so_far = lasted(Duration::from_secs(self.begun.elapsed().as_secs()));
        format!("{}: {so_far} (usually {})", self.what, self.usual)
    }
}

/// Does work of minutes: says what begins and what is usual, how it goes meanwhile, and how long it
/// took. `work` is handed the file for its program's words.
pub fn long(
    what: &str,
    usual: &str,
    work: impl FnOnce(&Path) -> Result<(), SetupError>,
) -> Result<(), SetupError> {
    let begun = Instant::now();
    say(&format!("→ {what} (usually {usual})"));
    running().push(Stage {
        what: what.to_owned(),
        usual: usual.to_owned(),
        begun,
    });
    let name = what.replace(|c: char| !c.is_ascii_alphanumeric(), "-");
    let log = std::env::temp_dir().join(format!("halfcase-{}-{name}.log", std::process::id()));
    let done = thread::scope(|scope| {
        let (stop, stopped) = std::sync::mpsc::channel::<()>();
        scope.spawn(move || {
            let (pause, terminal) = match io::stdout().is_terminal() {
                true => (ON_TERMINAL, true),
                false => (IN_FILE, false),
            };
            while stopped.recv_timeout(pause) == Err(std::sync::mpsc::RecvTimeoutError::Timeout) {
                // The oldest stage shows them all, so that each stands there once.
                if running().first().is_some_and(|stage| stage.what == what) {
                    show(terminal);
                }
            }
        });
        let done = work(&log);
        drop(stop);
        done
    });
    running().retain(|stage| stage.what != what);
    if done.is_err() {
        say(&fs::read_to_string(&log).unwrap_or_default());
    }
    drop(fs::remove_file(&log));
    done?;
    say(&format!("✓ {what}: {}", lasted(begun.elapsed())));
    Ok(())
}

fn running() -> MutexGuard<'static, Vec<Stage>> {
    RUNNING.lock().unwrap_or_else(PoisonError::into_inner)
}

fn show(terminal: bool) {
    let stages = running().iter().map(Stage::line).collect::<Vec<_>>().join(" · ");
    if terminal {
        print!("{WIPE}  {stages}");
        // A line that can't be drawn is no reason to stop.
        let _ = io::stdout().flush();
    } else {
        println!("  {stages}");
    }
}

/// Runs to the end with its words in a file: two programs at once would write into each other's.
pub fn run_logged(command: &mut Command, log: &Path) -> Result<(), SetupError> {
    let program = spoken(command);
    let failed = |detail: String| SetupError::Failed {
        program: program.clone(),
        detail,
    };
    let file = File::create(log).map_err(SetupError::file(log))?;
    let words = file.try_clone().map_err(SetupError::file(log))?;
    let status = command
        .stdin(Stdio::null())
        .stdout(file)
        .stderr(words)
        .status()
        .map_err(|error| failed(error.to_string()))?;
    match status.success() {
        true => Ok(()),
        false => Err(failed(status.to_string())),
    }
}
