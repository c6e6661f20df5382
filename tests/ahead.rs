//! Run after the library's own tests and before all other files here, by its name: begins the release that the
//! stories, nearly the last, play on. wasm-opt from npm has one thread: run while nothing else does, it leaves a
//! core idle for some forty seconds.
#![cfg(unix)]

use std::fs::{self, File};
use std::os::unix::process::parent_id;
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use halfcase::setup::tied::FOR;

/// Makes its child the first of a session of its own. Linux, where it groups processes so, then shares the processor
/// evenly between the release and all threads of the tests together.
const APART: &str = "setsid";

/// The first words come once the build has its turn, or waits for it.
const PATIENCE: Duration = Duration::from_secs(60);

/// Begun when all tests are asked for: one alone has no use for it. It outlives this program, and ends with the cargo
/// that runs it.
#[test]
fn the_release_is_begun() {
    let some_alone = std::env::args().skip(1).any(|word| !word.starts_with('-'));
    let log = Path::new(env!("CARGO_TARGET_TMPDIR")).join("release.log");
    // A build that is still at it keeps its own.
    drop(fs::remove_file(&log));
    if some_alone || std::env::var_os("HALFCASE_PAGE").is_some() {
        return;
    }
    let begin = |program: &str, words: &[&str]| {
        let log = File::create(&log).expect("a file for its words");
        Command::new(program)
            .args(words)
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .env(FOR, parent_id().to_string())
            .stdin(Stdio::null())
            .stdout(log.try_clone().expect("the same file"))
            .stderr(log)
            .spawn()
    };
    let own = env!("CARGO_BIN_EXE_halfcase");
    let mut build = begin(APART, &[own, "build"])
        .or_else(|_| begin(own, &["build"]))
        .expect("the program begins");
    // The stories ask for the release again, wait their turn, and say what went wrong later.
    let begun = Instant::now();
    while fs::metadata(&log).map_or(0, |log| log.len()) == 0 {
        assert!(begun.elapsed() < PATIENCE, "no word of the build");
        thread::sleep(Duration::from_millis(20));
    }
    let ended = build.try_wait().expect("its state");
    if ended.is_some_and(|how| !how.success()) {
        panic!("the build: {}", fs::read_to_string(&log).unwrap_or_default());
    }
}

#[test]
fn a_run_for_a_process_that_is_gone_does_nothing() {
    // Without it no run is tied, and this would make a whole release.
    if !Path::new("/proc/self").exists() {
        return;
    }
    let mut gone = Command::new("true").spawn().expect("`true` begins");
    gone.wait().expect("it ends");
    let run = Command::new(env!("CARGO_BIN_EXE_halfcase"))
        .arg("build")
        .env(FOR, gone.id().to_string())
        .output()
        .expect("the program begins");
    assert!(!run.status.success() && run.stdout.is_empty());
    assert!(String::from_utf8_lossy(&run.stderr).contains(FOR));
}
