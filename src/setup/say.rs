//! Whole lines, above the one that changes.

use std::io::{self, IsTerminal};

/// Back to the line's beginning, and empty it.
pub const WIPE: &str = "\r\x1b[K";

/// Prints a whole line, above the one that changes.
pub fn say(line: &str) {
    let wipe = if io::stdout().is_terminal() { WIPE } else { "" };
    println!("{wipe}{line}");
}
