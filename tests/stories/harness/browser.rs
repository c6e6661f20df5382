//! One browser: its driver process, its session, its screen.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use serde_json::json;
use thirtyfour::{ChromiumLikeCapabilities, DesiredCapabilities, LoggingPrefsLogLevel, WebDriver};

use super::{Failure, Told};

/// The size of the phone's screen in CSS pixels, and how it is held.
#[derive(Clone, Copy, Debug)]
pub struct Screen {
    pub width: u32,
    pub height: u32,
}

impl Screen {
    /// A usual phone, held upright.
    pub const UPRIGHT: Screen = Screen {
        width: 390,
        height: 844,
    };
    /// The same phone propped on its side.
    pub const SIDEWAYS: Screen = Screen {
        width: 844,
        height: 390,
    };
    /// The smallest phone we promise to work on.
    pub const SMALL: Screen = Screen {
        width: 320,
        height: 568,
    };

    /// What the browser is told to be.
    pub fn metrics(self) -> serde_json::Value {
        json!({ "width": self.width, "height": self.height, "deviceScaleFactor": 2, "mobile": true })
    }
}

/// The driver process; ends with the story.
pub struct DriverProcess {
    child: Child,
    port: u16,
}

impl DriverProcess {
    /// Starts a driver on a port of its own choice and waits until it says which.
    pub fn start(program: &Path) -> Told<DriverProcess> {
        let mut child = Command::new(program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()?;
        let words = child.stdout.take().map(BufReader::new);
        let mut started = DriverProcess { child, port: 0 };
        for line in words.into_iter().flat_map(BufRead::lines) {
            // The one line that matters: "... was started successfully on port 40123."
            if let Some(port) = line?
                .rsplit_once("successfully on port ")
                .map(|(_, port)| port.to_owned())
            {
                started.port = port
                    .trim_end_matches('.')
                    .parse()
                    .map_err(|_| Failure::new(format!("the driver named no port: {port}")))?;
                return Ok(started);
            }
        }
        Err(Failure::new(format!(
            "{} ended before it was ready",
            program.display()
        )))
    }

    /// Opens a browser with a fresh profile, a touch screen and a console that is kept; files that
    /// the page gives out go to `downloads`. With `profile`, what an earlier browser left there. Whatever is
    /// asked of another host, by page, worker or browser, goes to the port of the `trap`.
    pub async fn session(
        &self,
        chromium: &Path,
        screen: Screen,
        downloads: &Path,
        profile: Option<&Path>,
        trap: u16,
    ) -> Told<WebDriver> {
        let mut wanted = DesiredCapabilities::chrome();
        wanted.set_binary(&chromium.to_string_lossy())?;
        for flag in FLAGS {
            wanted.add_arg(flag)?;
        }
        // A story is short: the browser's first compiler does. Long plays run what a phone runs.
        if std::env::var_os("HALFCASE_FAULTS").is_none() {
            wanted.add_arg("--js-flags=--liftoff-only")?;
        }
        wanted.add_arg(&format!("--proxy-server=127.0.0.1:{trap}"))?;
        if let Some(profile) = profile {
            wanted.add_arg(&format!("--user-data-dir={}", profile.display()))?;
        }
        wanted.add_experimental_option(
            "mobileEmulation",
            json!({ "deviceMetrics": {
                "width": screen.width, "height": screen.height,
                "pixelRatio": 2.0, "touch": true, "mobile": true,
            }}),
        )?;
        let folder = downloads.to_string_lossy();
        wanted.add_experimental_option(
            "prefs",
            json!({ "download.default_directory": folder, "download.prompt_for_download": false }),
        )?;
        wanted.set_browser_log_level(LoggingPrefsLogLevel::All)?;
        Ok(WebDriver::new(format!("http://127.0.0.1:{}", self.port), wanted).await?)
    }
}

impl DriverProcess {
    /// Kills the driver and its browser with all of its helpers at once, as an empty battery does; tells
    /// where the browser's profile lies.
    pub fn kill_all(&mut self) -> Told<PathBuf> {
        let mut ours = vec![self.child.id()];
        let all = processes();
        // Children come after their parents often, but not always.
        while let Some((pid, _)) = all
            .iter()
            .find(|(pid, parent)| ours.contains(parent) && !ours.contains(pid))
        {
            ours.push(*pid);
        }
        let profile = ours.iter().find_map(|pid| profile_of(*pid));
        let pids = ours.iter().map(u32::to_string);
        Command::new("kill").arg("-9").args(pids).status()?;
        drop(self.child.wait());
        profile.ok_or_else(|| Failure::new("the browser named no profile"))
    }
}

/// Every process with its parent.
fn processes() -> Vec<(u32, u32)> {
    let names = std::fs::read_dir("/proc").into_iter().flatten().flatten();
    let pids = names.filter_map(|name| name.file_name().to_str()?.parse::<u32>().ok());
    pids.filter_map(|pid| {
        let stat = std::fs::read_to_string(format!("/proc/{pid}/stat")).ok()?;
        // "pid (name) state parent …", and a name may hold anything.
        let parent = stat.rsplit_once(')')?.1.split_whitespace().nth(1)?;
        Some((pid, parent.parse().ok()?))
    })
    .collect()
}

/// The profile that a browser was started with.
fn profile_of(pid: u32) -> Option<PathBuf> {
    let line = std::fs::read(format!("/proc/{pid}/cmdline")).ok()?;
    let mut words = line
        .split(|byte| *byte == 0)
        .filter_map(|word| std::str::from_utf8(word).ok());
    words
        .find_map(|word| word.strip_prefix("--user-data-dir="))
        .map(PathBuf::from)
}

impl Drop for DriverProcess {
    fn drop(&mut self) {
        drop(self.child.kill());
        drop(self.child.wait());
    }
}

/// Quiet and alone: no sandbox because tests may run as root, nothing fetched in the background.
const FLAGS: [&str; 12] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    // No process of its own for drawing.
    "--in-process-gpu",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    // The whole browser asks its maker about each form.
    "--disable-features=AutofillServerCommunication",
    "--window-size=1000,1000",
];
