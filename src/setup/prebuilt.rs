//! A tool's own release archive: fetched with curl, held against its pinned checksum, unpacked.

use std::fs;
use std::path::Path;
use std::time::Duration;

use sha2::{Digest, Sha256};

use super::error::SetupError;
use super::programs::{command, run};

/// What curl may take; a network that lets nothing through is known after ten seconds.
const PATIENCE: Duration = Duration::from_secs(180);

/// One release archive, a `.tar.gz` with the program at its top.
pub struct Archive {
    tool: &'static str,
    version: &'static str,
    /// As `std::env::consts` names them.
    os: &'static str,
    machine: &'static str,
    url: &'static str,
    /// SHA-256 of the archive, in hexadecimal.
    sha256: &'static str,
}

/// The archives whose checksums are known. One is added here with the tool's new version, its sum
/// taken from two places that don't depend on each other; without one the tool comes by another way.
///
/// Checksums of Trunk: those that `taiki-e/install-action` pins for the same addresses.
const ARCHIVES: [Archive; 4] = [
    trunk(
        "linux",
        "x86_64",
        "https://github.com/trunk-rs/trunk/releases/download/v0.21.8/trunk-x86_64-unknown-linux-musl.tar.gz",
        "3c11e08c37a06e707db364be01f6d6568082ff5470e38565bfed21e45b742b8e",
    ),
    trunk(
        "linux",
        "aarch64",
        "https://github.com/trunk-rs/trunk/releases/download/v0.21.8/trunk-aarch64-unknown-linux-musl.tar.gz",
        "afc72ddbc526d2a793949e336a3811f65dfbfdd5d06a948e44b36c473e219ee9",
    ),
    trunk(
        "macos",
        "x86_64",
        "https://github.com/trunk-rs/trunk/releases/download/v0.21.8/trunk-x86_64-apple-darwin.tar.gz",
        "03404c0036561a38421b67ffd596a19868b96d9d34228d17e367005aebfa1070",
    ),
    trunk(
        "macos",
        "aarch64",
        "https://github.com/trunk-rs/trunk/releases/download/v0.21.8/trunk-aarch64-apple-darwin.tar.gz",
        "934e2fba770cfc20b4e3498e35fbe8a03b0e6e60580cdc36eb070002834bc208",
    ),
];

const fn trunk(os: &'static str, machine: &'static str, url: &'static str, sha256: &'static str) -> Archive {
    Archive {
        tool: "trunk",
        version: "0.21.8",
        os,
        machine,
        url,
        sha256,
    }
}

/// The archive of that tool in that version for this computer, where one is pinned.
pub fn archive(tool: &str, version: &str) -> Option<&'static Archive> {
    ARCHIVES.iter().find(|archive| {
        archive.tool == tool
            && archive.version == version
            && archive.os == std::env::consts::OS
            && archive.machine == std::env::consts::ARCH
    })
}

/// Fetches an archive and unpacks its program into `bin`.
///
/// # Errors
/// [`SetupError::Failed`] or [`SetupError::TooSlow`] when it can't be fetched or unpacked,
/// [`SetupError::Altered`] when it isn't what is pinned: nothing of it is unpacked then.
pub fn fetch(archive: &Archive, bin: &Path) -> Result<(), SetupError> {
    fs::create_dir_all(bin).map_err(SetupError::file(bin))?;
    let file = bin.join(format!("{}.tar.gz", archive.tool));
    let fetched = download(archive, &file).and_then(|()| unpack(archive, &file, bin));
    drop(fs::remove_file(&file));
    fetched
}

fn download(archive: &Archive, file: &Path) -> Result<(), SetupError> {
    let mut curl = command("curl", Path::new("."));
    curl.args(["--fail", "--silent", "--show-error", "--location"])
        .args(["--connect-timeout", "10", "--output"])
        .arg(file)
        .arg(archive.url);
    run(&mut curl, Some(PATIENCE))?;
    let bytes = fs::read(file).map_err(SetupError::file(file))?;
    let sum: String = Sha256::digest(&bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    if sum == archive.sha256 {
        Ok(())
    } else {
        Err(SetupError::Altered {
            url: archive.url.to_owned(),
        })
    }
}

fn unpack(archive: &Archive, file: &Path, bin: &Path) -> Result<(), SetupError> {
    let mut tar = command("tar", bin);
    tar.arg("-xzf").arg(file).arg(archive.tool);
    run(&mut tar, Some(PATIENCE))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::process::Command;

    /// A folder with a packed program that says 7, and the address and checksum of it.
    fn packed(name: &str) -> (std::path::PathBuf, &'static str, &'static str) {
        let folder = std::env::temp_dir().join(format!("halfcase-{name}-{}", std::process::id()));
        drop(fs::remove_dir_all(&folder));
        fs::create_dir_all(&folder).expect("a folder for the test");
        fs::write(folder.join("seven"), "#!/bin/sh\necho 7\n").expect("a program to pack");
        let file = folder.join("seven-packed.tar.gz");
        let done = Command::new("tar")
            .current_dir(&folder)
            .args(["-czf", "seven-packed.tar.gz", "seven"])
            .status();
        assert!(done.is_ok_and(|status| status.success()));
        let sum = Sha256::digest(fs::read(&file).expect("the archive"));
        let sum: String = sum.iter().map(|byte| format!("{byte:02x}")).collect();
        let url = format!("file://{}", file.display());
        (folder, url.leak(), sum.leak())
    }

    fn seven(url: &'static str, sha256: &'static str) -> Archive {
        Archive {
            tool: "seven",
            version: "1",
            os: "linux",
            machine: "x86_64",
            url,
            sha256,
        }
    }

    #[test]
    fn an_archive_that_is_what_is_pinned_brings_its_program() {
        let (folder, url, sum) = packed("pinned");
        let bin = folder.join("bin");
        fetch(&seven(url, sum), &bin).expect("the pinned archive is taken");
        assert_eq!(
            fs::read_to_string(bin.join("seven")).expect("the program"),
            "#!/bin/sh\necho 7\n"
        );
        assert!(!bin.join("seven.tar.gz").exists());
        drop(fs::remove_dir_all(&folder));
    }

    #[test]
    fn an_archive_that_is_another_is_thrown_away_unopened() {
        let (folder, url, sum) = packed("altered");
        let other: String = sum.chars().rev().collect();
        let bin = folder.join("bin");
        let refused = fetch(&seven(url, other.leak()), &bin);
        assert!(matches!(refused, Err(SetupError::Altered { .. })), "{refused:?}");
        assert_eq!(fs::read_dir(&bin).expect("the folder").count(), 0);
        drop(fs::remove_dir_all(&folder));
    }

    #[test]
    fn an_archive_that_cannot_be_fetched_leaves_nothing() {
        let (folder, _, sum) = packed("absent");
        let url = format!("file://{}/absent.tar.gz", folder.display());
        let bin = folder.join("bin");
        let refused = fetch(&seven(url.leak(), sum), &bin);
        assert!(matches!(refused, Err(SetupError::Failed { .. })), "{refused:?}");
        assert_eq!(fs::read_dir(&bin).expect("the folder").count(), 0);
        drop(fs::remove_dir_all(&folder));
    }

    #[test]
    fn the_trunk_that_is_built_with_has_its_archive() {
        // On a computer that none is made for, it is built.
        let made = ["x86_64", "aarch64"].contains(&std::env::consts::ARCH)
            && ["linux", "macos"].contains(&std::env::consts::OS);
        assert_eq!(archive("trunk", crate::setup::tools::TRUNK).is_some(), made);
        assert!(archive("trunk", "0.0.1").is_none());
    }
}
