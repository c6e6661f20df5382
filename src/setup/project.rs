//! Where things lie in the project's folder.

use std::path::{Path, PathBuf};

use super::error::SetupError;

/// The project's folder and the places in it that the set-up writes to.
#[derive(Clone, Debug)]
pub struct Project {
    root: PathBuf,
}

impl Project {
    /// The folder this program was built from, as Cargo or Trunk name it now or as it was then.
    ///
    /// # Errors
    /// [`SetupError::Missing`] when no such folder holds a `Trunk.toml`.
    pub fn find() -> Result<Project, SetupError> {
        let told = ["TRUNK_SOURCE_DIR", "CARGO_MANIFEST_DIR"].map(std::env::var_os);
        told.into_iter()
            .flatten()
            .map(PathBuf::from)
            .chain([PathBuf::from(env!("CARGO_MANIFEST_DIR"))])
            .find(|root| root.join("Trunk.toml").is_file())
            .map(|root| Project { root })
            .ok_or_else(|| SetupError::missing("Trunk.toml", "run this from the project's own folder"))
    }

    /// The project's folder itself.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Tools fetched for this project alone.
    pub fn tools(&self) -> PathBuf {
        self.root.join("target/tools")
    }

    /// Cargo's folder for the page. Its own, so that building the page and building the tests
    /// don't throw away each other's work.
    pub fn web_target(&self) -> PathBuf {
        self.root.join("target/web")
    }

    /// The page as `cargo run` serves it.
    pub fn preview(&self) -> PathBuf {
        self.root.join("target/preview")
    }

    /// The built release.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }
}
