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
    if apt().is_none() {
        return Err(by_hand());
    }
    step(&format!("install {list} by apt-get"), || {
        let attempt = || {
            let mut install = apt().ok_or_else(by_hand)?;
            install.args(["install", "--no-install-recommends"]).args(names);
            run(&mut install, Some(LIMIT))
        };
        attempt().or_else(|_| update().and_then(|()| attempt()))
    })
    .map_err(|_| by_hand())
}

/// Brings the list of packages up to date, where we may: a fresh machine's is often empty or old.
pub fn refresh() {
    if let Err(error) = step("apt-get update", update) {
        println!("  {error}");
    }
}

fn update() -> Result<(), SetupError> {
    let mut apt = apt()
        .ok_or_else(|| SetupError::missing("the right to use apt-get", "run `apt-get update` as root"))?;
    run(apt.arg("update"), Some(LIMIT))
}

/// `apt-get`, where there is one and we may use it.
fn apt() -> Option<Command> {
    on_path("apt-get", &[])?;
    let root = ask(Command::new("id").arg("-u"))?.trim() == "0";
    let mut command = Command::new(if root { "apt-get" } else { "sudo" });
    if !root {
        ask(Command::new("sudo").args(["-n", "true"]))?;
        command.args(["-n", "DEBIAN_FRONTEND=noninteractive", "apt-get"]);
    }
    command
        .env("DEBIAN_FRONTEND", "noninteractive")
        .args(["-y", "-q"]);
    Some(command)
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
