//! A run that lasts no longer than the one it was begun for.

use std::path::Path;
use std::process::Command;
use std::thread;
use std::time::Duration;

/// Names the process that this run is for.
pub const FOR: &str = "HALFCASE_FOR";

const LOOK_AGAIN: Duration = Duration::from_secs(1);

/// Ends this run, and what it has begun, once the process it is for is gone. False where it is gone already. Where
/// no process is named, or none is listed under `/proc`, the run is its own.
pub fn tie() -> bool {
    let processes = Path::new("/proc");
    let named = std::env::var_os(FOR).filter(|_| processes.join("self").exists());
    let Some(process) = named.map(|process| processes.join(process)) else {
        return true;
    };
    if !process.is_dir() {
        return false;
    }
    thread::spawn(move || {
        while process.is_dir() {
            thread::sleep(LOOK_AGAIN);
        }
        // Begun apart it leads a group of its own: with it ends whatever it waits for.
        // Every shell has `kill`; a slim system may have no program of that name.
        let end = format!("kill -- -{}", std::process::id());
        drop(Command::new("sh").args(["-c", &end]).status());
        std::process::exit(1);
    });
    true
}
