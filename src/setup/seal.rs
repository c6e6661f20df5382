//! Turns Trunk's output into a release: no inline script, a small WASM, a worker that keeps it.
//!
//! Called by Trunk's one `post_build` hook on the staging folder, before it becomes `dist`.

use std::env;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

use sha2::{Digest, Sha256};

use super::error::SetupError;
use super::programs::{run, step};
use super::project::Project;
use super::tools::wasm_opt;
use super::worker::{Release, WORKER};

/// Seals the folder Trunk names.
///
/// # Errors
/// [`SetupError::Missing`] when not called by Trunk; else those of [`seal`].
pub fn from_hook() -> Result<(), SetupError> {
    let folder = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .ok_or_else(|| {
            SetupError::missing(
                "TRUNK_STAGING_DIR",
                "seal is called by Trunk; run `cargo run -- build`",
            )
        })?;
    let release = env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "release");
    seal(&Project::find()?, &folder, release)
}

/// Seals a folder. Only a release is made small; a debug build is only made to work.
///
/// # Errors
/// [`SetupError::Page`] when Trunk's output isn't as expected, [`SetupError::File`] when it
/// can't be read or written.
pub fn seal(project: &Project, folder: &Path, release: bool) -> Result<(), SetupError> {
    move_start_script(folder)?;
    if release {
        shrink_wasm(project, folder)?;
    }
    let template = fs::read_to_string(project.root().join("public").join(WORKER))
        .map_err(SetupError::file(&project.root().join("public").join(WORKER)))?;
    let whole = Release::read(folder)?;
    let worker = whole.worker(&template)?;
    write(&folder.join(WORKER), worker.as_bytes())?;
    if release {
        step("compress for the wire", || {
            write_brotli(project, folder, WORKER, worker.as_bytes())?;
            whole
                .files()
                .try_for_each(|(name, bytes)| write_brotli(project, folder, name, bytes))
        })?;
    }
    println!("✓ sealed as {}", whole.build_id(&template));
    Ok(())
}

fn write(path: &Path, bytes: &[u8]) -> Result<(), SetupError> {
    fs::write(path, bytes).map_err(SetupError::file(path))
}

/// Trunk starts the app by an inline module, which the page's Content-Security-Policy forbids.
fn move_start_script(folder: &Path) -> Result<(), SetupError> {
    let path = folder.join("index.html");
    let page = fs::read_to_string(&path).map_err(SetupError::file(&path))?;
    let (page, script) = split_start_script(&page)?;
    let name = format!("begin-{}.js", short_hash(script.as_bytes()));
    write(&folder.join(&name), script.as_bytes())?;
    let page = page.replace(
        START_SLOT,
        &format!(r#"<script type="module" src="./{name}"></script>"#),
    );
    write(&path, page.as_bytes())
}

const START_SLOT: &str = "<!--start-->";

/// Takes the one inline module out of the page and leaves a slot for it.
fn split_start_script(page: &str) -> Result<(String, String), SetupError> {
    let lacks = || SetupError::Page("index.html holds no inline start script from Trunk".to_owned());
    let begin = inline_module(page).ok_or_else(lacks)?;
    let (before, rest) = page.split_at_checked(begin).ok_or_else(lacks)?;
    let (_, rest) = rest.split_once('>').ok_or_else(lacks)?;
    let (script, after) = rest.split_once("</script>").ok_or_else(lacks)?;
    if inline_module(after).is_some() {
        return Err(SetupError::Page(
            "index.html holds more than one inline script".to_owned(),
        ));
    }
    Ok((
        format!("{before}{START_SLOT}{after}"),
        format!("{}\n", script.trim()),
    ))
}

/// Where the first script tag without an address begins.
fn inline_module(page: &str) -> Option<usize> {
    page.match_indices("<script")
        .map(|(place, _)| place)
        .find(|place| {
            let tag = page.get(*place..).and_then(|rest| rest.split('>').next());
            tag.is_some_and(|tag| !tag.contains("src="))
        })
}

/// The features browsers and the compiler agree on, one by one: allowing all makes a file that
/// browsers refuse.
const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// Runs wasm-opt over the WASM, where there is one.
fn shrink_wasm(project: &Project, folder: &Path) -> Result<(), SetupError> {
    let Some(program) = wasm_opt(project) else {
        println!("  wasm-opt is missing: the release works but is larger.");
        return Ok(());
    };
    for (name, bytes) in Release::read(folder)?
        .files()
        .filter(|(name, _)| name.ends_with(".wasm"))
    {
        let path = folder.join(name);
        let small = kept(project, bytes, "wasm", &FEATURES.concat(), |part| {
            step("shrink the WASM with wasm-opt", || {
                run(
                    Command::new(&program)
                        .arg("-Oz")
                        .args(FEATURES)
                        .arg(&path)
                        .arg("-o")
                        .arg(part),
                    None,
                )
            })
        })?;
        fs::copy(&small, &path).map_err(SetupError::file(&path))?;
    }
    Ok(())
}

/// Writes the brotli copy a server may send, unless it saves nothing.
fn write_brotli(project: &Project, folder: &Path, name: &str, bytes: &[u8]) -> Result<(), SetupError> {
    let (buffer, quality, window) = (4096, 11, 22);
    let small = kept(project, bytes, "br", &format!("{quality} {window}"), |part| {
        let mut small = Vec::new();
        brotli::CompressorWriter::new(&mut small, buffer, quality, window)
            .write_all(bytes)
            .map_err(SetupError::file(part))?;
        write(part, &small)
    })?;
    let size = fs::metadata(&small).map_err(SetupError::file(&small))?.len();
    if size < bytes.len() as u64 {
        let path = folder.join(format!("{name}.br"));
        fs::copy(&small, &path).map_err(SetupError::file(&path))?;
    }
    Ok(())
}

/// What was made of exactly these bytes by this recipe, made now if it wasn't before: the slow
/// steps are done once for each content.
fn kept(
    project: &Project,
    bytes: &[u8],
    kind: &str,
    recipe: &str,
    make: impl FnOnce(&Path) -> Result<(), SetupError>,
) -> Result<PathBuf, SetupError> {
    let folder = project.web_target().join("small");
    let there = folder.join(format!(
        "{}.{kind}",
        short_hash(&[bytes, recipe.as_bytes()].concat())
    ));
    if !there.is_file() {
        fs::create_dir_all(&folder).map_err(SetupError::file(&folder))?;
        // Renamed when whole, so that a broken-off run leaves nothing half done.
        let part = there.with_extension("part");
        make(&part)?;
        fs::rename(&part, &there).map_err(SetupError::file(&there))?;
    }
    Ok(there)
}

/// The first 16 hex digits of SHA-256.
fn short_hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_start_script_leaves_the_page() {
        let page = r#"<head><script src="a.js" defer></script><script type="module" nonce="x">
import init from './app.js';
</script></head>"#;
        let (page, script) = split_start_script(page).expect("one inline script");
        assert_eq!(
            page,
            r#"<head><script src="a.js" defer></script><!--start--></head>"#
        );
        assert_eq!(script, "import init from './app.js';\n");
    }

    #[test]
    fn a_second_inline_script_is_refused() {
        let page = "<script>a</script><script>b</script>";
        assert!(matches!(split_start_script(page), Err(SetupError::Page(_))));
        assert!(matches!(
            split_start_script("<p>none</p>"),
            Err(SetupError::Page(_))
        ));
    }
}
