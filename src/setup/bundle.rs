//! What Trunk makes of `index.html`, made here where there is no Trunk: building one takes longer than all
//! the rest of the set-up.
//!
//! It knows the three links this page has (style sheets, the app, a folder to copy) and leaves behind what
//! Trunk does, for the sealer to go on with.

use std::fs;
use std::ops::Range;
use std::path::{Path, PathBuf};

use super::error::SetupError;
use super::page::{self, Tag};
use super::programs::{command, run};
use super::project::Project;
use super::seal::short_hash;
use super::toolchain::TARGET;

/// The app's name among Cargo's products.
const APP: &str = "halfcase";

/// Builds the page into `folder`, which is made anew, from the WASM that Cargo left.
///
/// # Errors
/// [`SetupError::Page`] when `index.html` asks for what is not known here, [`SetupError::File`] when a file
/// can't be read or written, [`SetupError::Failed`] when wasm-bindgen refuses the WASM.
pub fn build(project: &Project, wasm_bindgen: &Path, folder: &Path) -> Result<(), SetupError> {
    if folder.is_dir() {
        fs::remove_dir_all(folder).map_err(SetupError::file(folder))?;
    }
    fs::create_dir_all(folder).map_err(SetupError::file(folder))?;
    let source = project.root().join("index.html");
    let mut page = fs::read_to_string(&source).map_err(SetupError::file(&source))?;
    let begin = begin(project, wasm_bindgen, folder)?;
    // From the last to the first, so that a place stays the same until its turn.
    for (place, put) in links(project, folder, &page, &begin)?.into_iter().rev() {
        page.replace_range(place, &put);
    }
    let path = folder.join("index.html");
    fs::write(&path, page::squeezed(&page)).map_err(SetupError::file(&path))
}

/// Where each of Trunk's links stands, and what comes in its place.
fn links(
    project: &Project,
    folder: &Path,
    page: &str,
    begin: &str,
) -> Result<Vec<(Range<usize>, String)>, SetupError> {
    page::tags(page, "link")
        .filter(|tag| tag.has("data-trunk"))
        .map(|tag| Ok((tag.place.clone(), link(project, folder, &tag, begin)?)))
        .collect()
}

/// What stands in the place of one of Trunk's links.
fn link(project: &Project, folder: &Path, tag: &Tag<'_>, begin: &str) -> Result<String, SetupError> {
    let unknown = |what: &str| SetupError::Page(format!("index.html {what}: {}", tag.text));
    match tag.value("rel") {
        Some("css") => {
            let sheet = tag.value("href").ok_or_else(|| unknown("names no style sheet"))?;
            let from = project.root().join(sheet);
            let words = fs::read(&from).map_err(SetupError::file(&from))?;
            let stem = from.file_stem().unwrap_or_default().to_string_lossy();
            let name = format!("{stem}-{}.css", short_hash(&words));
            let to = folder.join(&name);
            fs::write(&to, words).map_err(SetupError::file(&to))?;
            Ok(format!(r#"<link rel="stylesheet" href="./{name}">"#))
        }
        Some("rust") => Ok(begin.to_owned()),
        Some("copy-dir") => {
            let from = tag.value("href").ok_or_else(|| unknown("names no folder"))?;
            copy(&project.root().join(from), folder)?;
            Ok(String::new())
        }
        _ => Err(unknown("asks for what only Trunk can do")),
    }
}

/// Runs wasm-bindgen over the app; gives the tags that fetch and start it.
fn begin(project: &Project, wasm_bindgen: &Path, folder: &Path) -> Result<String, SetupError> {
    let product = project.web_target().join(TARGET).join("release");
    let wasm = product.join(format!("{APP}.wasm"));
    let bytes = fs::read(&wasm).map_err(SetupError::file(&wasm))?;
    let name = format!("{APP}-{}", short_hash(&bytes));
    let mut bind = command(wasm_bindgen, project.root());
    bind.args(["--target", "web", "--no-typescript", "--out-name", &name])
        .arg("--out-dir")
        .arg(folder)
        .arg(&wasm);
    run(&mut bind, None)?;
    Ok(format!(
        r#"<script type="module">
import init from './{name}.js';
await init({{ module_or_path: './{name}_bg.wasm' }});
</script><link rel="modulepreload" href="./{name}.js" crossorigin><link rel="preload" href="./{name}_bg.wasm" as="fetch" type="application/wasm" crossorigin>"#
    ))
}

/// All of a folder into another one.
///
/// # Errors
/// [`SetupError::File`] when something can't be read or written.
pub fn copy(from: &Path, to: &Path) -> Result<(), SetupError> {
    for entry in fs::read_dir(from).map_err(SetupError::file(from))? {
        let path: PathBuf = entry.map_err(SetupError::file(from))?.path();
        let there = to.join(path.file_name().unwrap_or_default());
        if path.is_dir() {
            fs::create_dir_all(&there).map_err(SetupError::file(&there))?;
            copy(&path, &there)?;
        } else {
            fs::copy(&path, &there).map_err(SetupError::file(&path))?;
        }
    }
    Ok(())
}
