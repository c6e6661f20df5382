//! Turns a built page into a release: no inline script, all of it small, a worker that keeps it.
//!
//! Called on the folder that [`bundle`](super::bundle) made, or by Trunk's one `post_build` hook on its staging
//! folder, before that becomes `dist`.

use std::env;
use std::fs;
use std::io::Write;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::process::Command;

use sha2::{Digest, Sha256};

use super::error::SetupError;
use super::licences::{self, LICENCES};
use super::news;
use super::page::tags;
use super::programs::{run, step};
use super::project::Project;
use super::tools::{FEATURES, FROM_NPM, PASSES, esbuild, wasm_opt};
use super::worker::{Release, WORKER};

/// Tells the sealer to leave the page as large as it is.
pub const PREVIEW: &str = "HALFCASE_PREVIEW";

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
    let small = release && env::var_os(PREVIEW).is_none();
    seal(&Project::find()?, &folder, release, small)
}

/// Seals a folder. A debug build is only made to work; a release is kept offline too, and made small
/// where that is worth the wait.
///
/// # Errors
/// [`SetupError::Page`] when the page isn't as expected, [`SetupError::File`] when it can't be read or
/// written.
pub fn seal(project: &Project, folder: &Path, release: bool, small: bool) -> Result<(), SetupError> {
    move_inline_scripts(folder)?;
    say_release(project, folder)?;
    if release {
        join_styles(folder)?;
        write(&folder.join(LICENCES), licences::file(project)?.as_bytes())?;
    }
    if small {
        shrink_wasm(project, folder)?;
        shrink_text(project, folder)?;
    }
    let template = fs::read_to_string(project.root().join("public").join(WORKER))
        .map_err(SetupError::file(&project.root().join("public").join(WORKER)))?;
    let whole = if release {
        Release::read(folder)?
    } else {
        Release::empty()
    };
    let worker = whole.worker(&template)?;
    let path = folder.join(WORKER);
    write(&path, worker.as_bytes())?;
    if small {
        minify(project, &path, worker.as_bytes())?;
        let worker = fs::read(&path).map_err(SetupError::file(&path))?;
        step("compress for the wire", || {
            write_brotli(project, folder, WORKER, &worker)?;
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

/// The app is started by an inline module, which the page's Content-Security-Policy forbids; `trunk serve`
/// adds a second script that reloads the page.
fn move_inline_scripts(folder: &Path) -> Result<(), SetupError> {
    let path = folder.join("index.html");
    let mut page = fs::read_to_string(&path).map_err(SetupError::file(&path))?;
    if inline_script(&page).is_none() {
        return Err(SetupError::Page("index.html holds no start script".to_owned()));
    }
    while let Some(found) = inline_script(&page) {
        let name = format!("begin-{}.js", short_hash(found.code.as_bytes()));
        write(&folder.join(&name), found.code.as_bytes())?;
        let tag = format!(r#"<script type="module" src="./{name}"></script>"#);
        page.replace_range(found.place, &tag);
    }
    write(&path, page.as_bytes())
}

/// Which release it is goes into the page, and what is new in it into a file beside.
fn say_release(project: &Project, folder: &Path) -> Result<(), SetupError> {
    let line = news::release_line(project);
    let changes = project.root().join("CHANGELOG.md");
    let changes = fs::read_to_string(&changes).map_err(SetupError::file(&changes))?;
    write(&folder.join(news::NEWS), news::news(&changes, &line).as_bytes())?;
    let path = folder.join("index.html");
    let mut page = fs::read_to_string(&path).map_err(SetupError::file(&path))?;
    let place = page
        .find("<title")
        .ok_or_else(|| SetupError::Page("index.html has no title".to_owned()))?;
    page.insert_str(place, &format!(r#"<meta name="release" content="{line}">"#));
    write(&path, page.as_bytes())
}

/// Puts the style sheets, one a screen in the source, into one file: one request, and brotli finds
/// what they share.
fn join_styles(folder: &Path) -> Result<(), SetupError> {
    let path = folder.join("index.html");
    let mut page = fs::read_to_string(&path).map_err(SetupError::file(&path))?;
    let mut all = String::new();
    let mut first = None;
    while let Some(link) = style_link(&page) {
        let sheet = folder.join(&link.name);
        all += &fs::read_to_string(&sheet).map_err(SetupError::file(&sheet))?;
        fs::remove_file(&sheet).map_err(SetupError::file(&sheet))?;
        first.get_or_insert(link.place.start);
        page.replace_range(link.place, "");
    }
    let place =
        first.ok_or_else(|| SetupError::Page("index.html names no style sheet of ours".to_owned()))?;
    let name = format!("style-{}.css", short_hash(all.as_bytes()));
    write(&folder.join(&name), all.as_bytes())?;
    page.insert_str(place, &format!(r#"<link rel="stylesheet" href="./{name}">"#));
    write(&path, page.as_bytes())
}

/// A style sheet that the page names.
#[derive(Debug, PartialEq)]
struct StyleLink {
    /// Its whole tag.
    place: Range<usize>,
    /// Its file, in the page's folder.
    name: String,
}

/// The first link to a style sheet beside the page; with quotes round its values or without.
fn style_link(page: &str) -> Option<StyleLink> {
    let tag = tags(page, "link").find(|tag| tag.value("rel") == Some("stylesheet"))?;
    Some(StyleLink {
        name: tag.value("href")?.trim_start_matches("./").to_owned(),
        place: tag.place,
    })
}

/// A script that stands in the page itself.
#[derive(Debug, PartialEq)]
struct InlineScript {
    /// From its opening tag to its closing one.
    place: Range<usize>,
    code: String,
}

/// The first script whose tag names no address.
fn inline_script(page: &str) -> Option<InlineScript> {
    const END: &str = "</script>";
    let tag = tags(page, "script").find(|tag| !tag.has("src"))?;
    let (code, _) = page.get(tag.place.end..)?.split_once(END)?;
    Some(InlineScript {
        place: tag.place.start..tag.place.end + code.len() + END.len(),
        code: format!("{}\n", code.trim()),
    })
}

/// Runs wasm-opt over the WASM, where there is one.
fn shrink_wasm(project: &Project, folder: &Path) -> Result<(), SetupError> {
    let Some(program) = wasm_opt(project) else {
        println!("  wasm-opt is missing or too old: the release works but is larger.");
        return Ok(());
    };
    for (name, bytes) in Release::read(folder)?
        .files()
        .filter(|(name, _)| name.ends_with(".wasm"))
    {
        let path = folder.join(name);
        let small = kept(
            project,
            bytes,
            "wasm",
            &[&FEATURES[..], &PASSES[..]].concat().concat(),
            |part| {
                step("shrink the WASM with wasm-opt", || {
                    run(
                        Command::new(&program)
                            .args(FEATURES)
                            .args(PASSES)
                            .arg(&path)
                            .arg("-o")
                            .arg(part),
                        None,
                    )
                })
            },
        )?;
        fs::copy(&small, &path).map_err(SetupError::file(&path))?;
    }
    Ok(())
}

/// Makes the style sheet and the scripts small, but for the worker, which is still to be written.
fn shrink_text(project: &Project, folder: &Path) -> Result<(), SetupError> {
    for (name, bytes) in Release::read(folder)?.files() {
        if [".css", ".js"].iter().any(|end| name.ends_with(end)) {
            minify(project, &folder.join(name), bytes)?;
        }
    }
    Ok(())
}

/// Writes a style sheet or a script anew as small as esbuild makes it; without esbuild it stays as it is.
fn minify(project: &Project, path: &Path, bytes: &[u8]) -> Result<(), SetupError> {
    let Some(program) = esbuild(project) else {
        return Ok(());
    };
    let recipe = [&FROM_NPM[..], &MINIFY[..]].concat().concat();
    let small = kept(project, bytes, "min", &recipe, |part| {
        run(
            Command::new(&program)
                .arg(path)
                .args(MINIFY)
                .arg(format!("--outfile={}", part.display())),
            None,
        )
    })?;
    fs::copy(&small, path).map_err(SetupError::file(path))?;
    Ok(())
}

/// How style sheets and scripts are made small: every name another file asks for stays.
const MINIFY: [&str; 3] = ["--minify", "--log-level=warning", "--charset=utf8"];

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
        // Renamed when whole, so that a broken-off run leaves nothing half done; of its own name, so that two
        // runs don't take it from each other.
        let part = there.with_extension(format!("{}.part", std::process::id()));
        make(&part)?;
        fs::rename(&part, &there).map_err(SetupError::file(&there))?;
    }
    Ok(there)
}

/// The first 16 hex digits of SHA-256.
pub(super) fn short_hash(bytes: &[u8]) -> String {
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
    fn an_inline_script_is_found_and_one_with_an_address_is_not() {
        let page = r#"<head><script src="a.js" defer></script><script type="module" nonce="x">
import init from './app.js';
</script></head>"#;
        let found = inline_script(page).expect("the second one");
        assert_eq!(found.code, "import init from './app.js';\n");
        let mut page = page.to_owned();
        page.replace_range(found.place, "-");
        assert_eq!(page, r#"<head><script src="a.js" defer></script>-</head>"#);
        assert_eq!(inline_script(&page), None);
    }

    #[test]
    fn a_style_sheet_is_found_with_its_quotes_or_without() {
        for (page, tag, name) in [
            (
                r#"<link rel="icon" href="i.svg"><link rel="stylesheet" href="./a-1.css" integrity="x"/><p>"#,
                r#"<link rel="stylesheet" href="./a-1.css" integrity="x"/>"#,
                "a-1.css",
            ),
            (
                "<link href=b.css rel=stylesheet>",
                "<link href=b.css rel=stylesheet>",
                "b.css",
            ),
        ] {
            let found = style_link(page).expect("there is one");
            assert_eq!((&page[found.place], found.name.as_str()), (tag, name));
        }
        assert_eq!(style_link(r#"<link rel="icon" href="i.svg">"#), None);
    }
}
