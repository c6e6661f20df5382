//! The distribution's packages: installed when missing and when we may.

use std::process::Command;
use std::time::Duration;

use super::error::SetupError;
use super::programs::{ask, on_path, run, step};

/// Long enough for a slow mirror.
const LIMIT: Duration = Duration::from_secs(15 * 60);

/// Installs packages by `apt-get`, as root or through a `sudo` that asks for no password.
///
/// # Errors
/// [`SetupError::Missing`] with the command to type when there is no `apt-get` or no right to use it.
pub fn install(names: &[&str]) -> Result<(), SetupError> {
    let list = names.join(" ");
    let by_hand = || {
        SetupError::missing(
            list.clone(),
            format!("install by hand, on Debian `sudo apt-get install {list}`"),
        )
    };
    if on_path("apt-get", &[]).is_none() {
        return Err(by_hand());
    }
    let root = ask(Command::new("id").arg("-u")).is_some_and(|id| id.trim() == "0");
    if !root && ask(Command::new("sudo").args(["-n", "true"])).is_none() {
        return Err(by_hand());
    }
    let apt = || {
        let mut command = if root {
            Command::new("apt-get")
        } else {
            Command::new("sudo")
        };
        if !root {
            command.args(["-n", "DEBIAN_FRONTEND=noninteractive", "apt-get"]);
        }
        command
            .env("DEBIAN_FRONTEND", "noninteractive")
            .args(["-y", "-q"]);
        command
    };
    step(&format!("install {list} by apt-get"), || {
        let attempt = || {
            run(
                apt().args(["install", "--no-install-recommends"]).args(names),
                Some(LIMIT),
            )
        };
        // A fresh machine's package list is often empty or old.
        attempt().or_else(|_| run(apt().arg("update"), Some(LIMIT)).and_then(|()| attempt()))
    })
    .map_err(|_| by_hand())
}

/// The newest package whose name is `stem` and a number: "lld-22".
pub fn newest(stem: &str) -> Option<String> {
    let names = ask(Command::new("apt-cache").args(["search", "--names-only", &format!("^{stem}[0-9]+$")]))?;
    let number = |name: &str| name.strip_prefix(stem)?.parse::<u32>().ok();
    names
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .max_by_key(|name| number(name))
        .map(str::to_owned)
}
