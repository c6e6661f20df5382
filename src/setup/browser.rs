//! The browser the tests drive, and its driver.

use std::path::PathBuf;

use super::error::SetupError;
use super::packages;
use super::programs::on_path;

/// Where the two programs are.
#[derive(Clone, Debug)]
pub struct Browser {
    /// Chromium itself.
    pub chromium: PathBuf,
    /// Chromium without a window, where there is one: it wants a fifth less of the processor than the whole
    /// browser does without one.
    pub shell: Option<PathBuf>,
    /// The program that speaks WebDriver for it, of the same version.
    pub driver: PathBuf,
}

/// Finds Chromium and its driver; installs Debian's packages when they are missing.
///
/// # Errors
/// [`SetupError::Missing`] when they are neither there nor to be had.
pub fn ready() -> Result<Browser, SetupError> {
    // Several stories begin at once; one of them installs, the others find it done.
    static ONE_AT_A_TIME: std::sync::Mutex<()> = std::sync::Mutex::new(());
    let _turn = ONE_AT_A_TIME
        .lock()
        .unwrap_or_else(std::sync::PoisonError::into_inner);
    if let Some(browser) = find() {
        return Ok(browser);
    }
    let both = ["chromium", "chromium-driver"];
    // Where the distribution has no shell, the whole browser does.
    packages::install(&[both[0], both[1], SHELL]).or_else(|_| packages::install(&both))?;
    find().ok_or_else(|| {
        SetupError::missing(
            "chromium",
            "it was installed but is not on PATH; look in /usr/bin",
        )
    })
}

/// Where Debian has the program itself: what stands on PATH is a script that starts it, and the driver would
/// end the script alone.
const SHELL_ITSELF: &str = "/usr/lib/chromium/chromium-headless-shell";

/// The package.
const SHELL: &str = "chromium-headless-shell";

fn find() -> Option<Browser> {
    let debian = [PathBuf::from("/usr/bin")];
    let chromium = ["chromium", "chromium-browser"]
        .iter()
        .find_map(|name| on_path(name, &debian))?;
    Some(Browser {
        chromium,
        shell: Some(PathBuf::from(SHELL_ITSELF)).filter(|shell| shell.is_file()),
        driver: on_path("chromedriver", &debian)?,
    })
}
