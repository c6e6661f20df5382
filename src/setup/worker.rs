//! The release as one whole: its files, its build id, its service worker.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::Path;

use sha2::{Digest, Sha256};

use super::error::SetupError;

/// The service worker's file; it is not part of what it keeps.
pub const WORKER: &str = "sw.js";

/// Where the worker's template takes the build id and the list of files.
const BUILD_SLOT: &str = "'BUILD'";
const FILES_SLOT: &str = "['FILES']";

/// Every file a visit needs, by its name relative to the release's folder.
#[derive(Debug)]
pub struct Release {
    files: BTreeMap<String, Vec<u8>>,
}

impl Release {
    /// Reads the folder; leaves out the worker, brotli copies and what no page asks for.
    ///
    /// # Errors
    /// [`SetupError::File`] when something can't be read.
    pub fn read(folder: &Path) -> Result<Release, SetupError> {
        let mut files = BTreeMap::new();
        gather(folder, "", &mut files)?;
        Ok(Release { files })
    }

    /// A release of no files, whose worker keeps nothing: a page under development changes too often.
    pub fn empty() -> Release {
        Release {
            files: BTreeMap::new(),
        }
    }

    /// The files' names, sorted.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.files.keys().map(String::as_str)
    }

    /// Each file with its name.
    pub fn files(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.files
            .iter()
            .map(|(name, bytes)| (name.as_str(), bytes.as_slice()))
    }

    /// One word for exactly these files under these names, kept by this worker: 16 hex digits
    /// of SHA-256.
    pub fn build_id(&self, template: &str) -> String {
        let mut hash = Sha256::new();
        for (name, bytes) in self.files().chain([(WORKER, template.as_bytes())]) {
            // Lengths keep a name and its content from running into the next.
            hash.update((name.len() as u64).to_le_bytes());
            hash.update(name);
            hash.update((bytes.len() as u64).to_le_bytes());
            hash.update(bytes);
        }
        hex(&hash.finalize()[..8])
    }

    /// The worker of this release, from its template.
    ///
    /// # Errors
    /// [`SetupError::Page`] when the template lacks a slot.
    pub fn worker(&self, template: &str) -> Result<String, SetupError> {
        for slot in [BUILD_SLOT, FILES_SLOT] {
            if template.matches(slot).count() != 1 {
                return Err(SetupError::Page(format!(
                    "public/{WORKER} needs {slot} exactly once"
                )));
            }
        }
        // The page itself goes by its folder's address: some hosts redirect index.html there,
        // and a redirected answer can't serve a navigation.
        let files = self.files().map(|(name, bytes)| {
            let name = if name == "index.html" { "./" } else { name };
            format!("\n  [{}, '{}'],", quoted(name), hex(&Sha256::digest(bytes)))
        });
        let files = files.collect::<String>();
        Ok(template
            .replace(BUILD_SLOT, &format!("'{}'", self.build_id(template)))
            .replace(FILES_SLOT, &format!("[{files}\n]")))
    }
}

/// Bytes as hexadecimal digits.
fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut digits, byte| {
        // Writing to a String does not fail.
        let _ = write!(digits, "{byte:02x}");
        digits
    })
}

/// A name as JavaScript writes a string.
fn quoted(name: &str) -> String {
    serde_json::Value::from(name).to_string()
}

fn gather(folder: &Path, prefix: &str, files: &mut BTreeMap<String, Vec<u8>>) -> Result<(), SetupError> {
    for entry in fs::read_dir(folder).map_err(SetupError::file(folder))? {
        let entry = entry.map_err(SetupError::file(folder))?;
        let path = entry.path();
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if path.is_dir() {
            gather(&path, &format!("{name}/"), files)?;
        } else if is_kept(&name) {
            files.insert(name, fs::read(&path).map_err(SetupError::file(&path))?);
        }
    }
    Ok(())
}

/// Served, but asked for by no visit: for people, for other programs, for installing the app.
const BESIDE: [&str; 6] = [
    "_headers",
    "icon-192.png",
    "icon-512.png",
    "job-form.schema.json",
    "licences.txt",
    "type/LICENSE.txt",
];

fn is_kept(name: &str) -> bool {
    let made = [".br", ".d.ts"].iter().any(|end| name.ends_with(end));
    name != WORKER && !made && !BESIDE.contains(&name)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str = "const BUILD = 'BUILD';\nconst FILES = ['FILES'];\n";

    fn release(files: &[(&str, &str)]) -> Release {
        let files = files
            .iter()
            .map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec()));
        Release {
            files: files.collect(),
        }
    }

    #[test]
    fn the_worker_names_every_file_and_the_page_by_its_folder() {
        let whole = release(&[("index.html", "page"), ("a b'c.js", "code")]);
        let id = whole.build_id(TEMPLATE);
        let worker = whole.worker(TEMPLATE).expect("both slots are there");
        // The sums are Python's hashlib's.
        assert_eq!(
            worker,
            format!(
                "const BUILD = '{id}';\nconst FILES = [\n  [\"a b'c.js\", \
                 '5694d08a2e53ffcae0c3103e5ad6f6076abd960eb1f8a56577040bc1028f702b'],\n  [\"./\", \
                 '3660315a9af3df255d8f19ab077e4797822b41488a0e2a04bc6af71213c23274'],\n];\n"
            )
        );
    }

    #[test]
    fn the_build_id_tells_apart_content_names_and_worker() {
        let ids = [
            release(&[("a", "bc")]).build_id(TEMPLATE),
            release(&[("ab", "c")]).build_id(TEMPLATE),
            release(&[("a", "b"), ("c", "")]).build_id(TEMPLATE),
            release(&[("a", "bc")]).build_id("another worker"),
        ];
        for (place, id) in ids.iter().enumerate() {
            assert_eq!(id.len(), 16);
            assert!(!ids.iter().skip(place + 1).any(|other| other == id), "{ids:?}");
        }
    }

    #[test]
    fn a_template_without_its_slots_is_refused() {
        assert!(matches!(
            release(&[]).worker("const BUILD = 'BUILD';"),
            Err(SetupError::Page(_))
        ));
    }
}
