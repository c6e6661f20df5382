//! Run before all other tests, by its name: begins the release that the stories, nearly the last, play on.
//! wasm-opt from npm has one thread; alone it would leave a core idle for over a minute.

use std::fs::File;
use std::path::Path;
use std::process::{Command, Stdio};

/// Makes its child the first of a session of its own: on Linux it then gets as much of the processor as all the
/// test's threads together, and is ready when they are.
const APART: &str = "setsid";

#[test]
#[expect(
    clippy::zombie_processes,
    reason = "it outlives this program, and is waited for by its lock on the release"
)]
fn the_release_is_begun() {
    if std::env::var_os("HALFCASE_PAGE").is_some() {
        return;
    }
    let log = Path::new(env!("CARGO_TARGET_TMPDIR")).join("release.log");
    let begin = |program: &str, words: &[&str]| {
        let log = File::create(&log).expect("a file for its words");
        Command::new(program)
            .args(words)
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .stdin(Stdio::null())
            .stdout(log.try_clone().expect("the same file"))
            .stderr(log)
            .spawn()
    };
    // Nobody waits for it here: the stories ask for the release again, wait their turn, and say what went wrong.
    let own = env!("CARGO_BIN_EXE_halfcase");
    begin(APART, &[own, "build"])
        .or_else(|_| begin(own, &["build"]))
        .expect("the program begins");
}
