//! The release under test, built once for the whole run by the program's own `build` command.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use halfcase::setup::browser;

/// The folder of the built release. The first call builds it; the others wait.
pub fn built() -> &'static Path {
    static BUILT: OnceLock<Result<PathBuf, String>> = OnceLock::new();
    match BUILT.get_or_init(build) {
        Ok(folder) => folder,
        Err(words) => panic!("{words}"),
    }
}

fn build() -> Result<PathBuf, String> {
    // A page that stands already: for looking at one story again and again while it is written.
    if let Some(page) = std::env::var_os("HALFCASE_PAGE") {
        return Ok(PathBuf::from(page));
    }
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    // A missing browser comes meanwhile; what stands in its way, the first story says.
    std::thread::spawn(|| drop(browser::ready()));
    let done = Command::new(env!("CARGO_BIN_EXE_halfcase"))
        .arg("build")
        .current_dir(root)
        .status()
        .map_err(|error| format!("`halfcase build` can't be started: {error}"))?;
    if done.success() {
        Ok(root.join("dist"))
    } else {
        Err("The release under test was not built; the reason is in the output above.".to_owned())
    }
}
