//! What ships in the page, from where and under what terms: the file of licences, and the check of them.
//!
//! Goes by `cargo metadata`, which knows every package of the lock file with its source and its licence.
//! A tool for it would take longer to build than all the tests; this asks the same of licences, sources and
//! doubles. Known faults of packages want a database from the network: whoever has one runs it beside.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::error::SetupError;
use super::programs::{ask, command};
use super::project::Project;

/// The file in the release.
pub const LICENCES: &str = "licences.txt";

/// What may ship: free to use, change and pass on, with their notices and nothing more asked.
pub const FOR_THE_PAGE: [&str; 6] = ["Apache-2.0", "BSL-1.0", "MIT", "Unicode-3.0", "Unlicense", "Zlib"];

/// What may be used beside it by tests and tools that stay on the computer.
pub const FOR_TOOLS: [&str; 2] = ["BSD-3-Clause", "MPL-2.0"];

/// The one place packages come from.
pub const SOURCE: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// One package of the lock file.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Package {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
    /// Its terms, as an SPDX expression; empty where it names none.
    pub licence: String,
    /// Where it comes from; none for our own.
    pub source: Option<String>,
    /// Who made it, as it says itself.
    pub authors: String,
    folder: PathBuf,
}

impl Package {
    fn read(found: &Value) -> Option<Self> {
        let text = |name: &str| found[name].as_str().map(str::to_owned);
        let authors = found["authors"].as_array()?.iter().filter_map(Value::as_str);
        Some(Self {
            name: text("name")?,
            version: text("version")?,
            licence: text("license").unwrap_or_default().replace('/', " OR "),
            source: text("source"),
            authors: authors.collect::<Vec<_>>().join(", "),
            folder: Path::new(found["manifest_path"].as_str()?)
                .parent()?
                .to_path_buf(),
        })
    }

    /// The texts of the terms we take it under, from its own folder; MIT's where there is a choice.
    fn texts(&self) -> Vec<String> {
        let files = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let mut files: Vec<(String, PathBuf)> = files
            .map(|file| (file.file_name().to_string_lossy().to_uppercase(), file.path()))
            .filter(|(name, path)| {
                let starts = ["LICENSE", "LICENCE", "NOTICE"];
                path.is_file() && starts.iter().any(|start| name.starts_with(start))
            })
            .collect();
        files.sort();
        if files.iter().any(|(name, _)| name.contains("MIT")) {
            files.retain(|(name, _)| !name.contains("APACHE"));
        }
        let texts = files.iter().filter_map(|(_, path)| fs::read_to_string(path).ok());
        texts
            .map(|text| text.replace('\r', "").trim().to_owned())
            .collect()
    }
}

/// Whether a licence expression can be met by the terms of a list. `AND` binds before `OR`.
pub fn allowed(expression: &str, list: &[&str]) -> bool {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut at = 0;
    either(&words, &mut at, list) && at == words.len()
}

fn either(words: &[&str], at: &mut usize, list: &[&str]) -> bool {
    let mut any = all(words, at, list);
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        any |= all(words, at, list);
    }
    any
}

fn all(words: &[&str], at: &mut usize, list: &[&str]) -> bool {
    let mut all = one(words, at, list);
    while words.get(*at) == Some(&"AND") {
        *at += 1;
        all &= one(words, at, list);
    }
    all
}

fn one(words: &[&str], at: &mut usize, list: &[&str]) -> bool {
    let word = words.get(*at).copied().unwrap_or_default();
    *at += 1;
    if word == "(" {
        let inside = either(words, at, list);
        let shut = words.get(*at) == Some(&")");
        *at += 1;
        return inside && shut;
    }
    // An exception only adds to what is allowed.
    if words.get(*at) == Some(&"WITH") {
        *at += 2;
    }
    list.contains(&word)
}

/// The packages whose code is in the page, and no others.
///
/// # Errors
/// [`SetupError::Failed`] when Cargo can't say.
pub fn shipped(project: &Project) -> Result<Vec<Package>, SetupError> {
    let page = [
        "--filter-platform",
        "wasm32-unknown-unknown",
        "--no-default-features",
        "--features",
        "app",
    ];
    metadata(project, &page).map(|told| reached(&told))
}

/// What is used on this computer, tests and tools included, and the names Cargo.toml itself asks for.
///
/// # Errors
/// [`SetupError::Failed`] when Cargo or the compiler can't say.
pub fn used_here(project: &Project) -> Result<(Vec<Package>, BTreeSet<String>), SetupError> {
    let compiler = ask(command("rustc", project.root()).arg("-vV")).unwrap_or_default();
    let host = compiler.lines().find_map(|line| line.strip_prefix("host: "));
    let host = host.ok_or_else(|| silent("rustc -vV"))?;
    let told = metadata(project, &["--filter-platform", host])?;
    let own = told["packages"].as_array().into_iter().flatten();
    let direct = own
        .filter(|package| package["name"] == "halfcase")
        .flat_map(|package| package["dependencies"].as_array().into_iter().flatten())
        .filter_map(|dependency| dependency["name"].as_str().map(str::to_owned));
    Ok((packages(&told).into_values().collect(), direct.collect()))
}

fn silent(program: &str) -> SetupError {
    SetupError::Failed {
        program: program.to_owned(),
        detail: "it tells nothing of use".to_owned(),
    }
}

/// As long as it takes: another Cargo may be at the packages.
fn metadata(project: &Project, more: &[&str]) -> Result<Value, SetupError> {
    let mut cargo = command("cargo", project.root());
    cargo.args(["metadata", "--format-version", "1"]).args(more);
    let told = cargo.output().ok().filter(|told| told.status.success());
    told.and_then(|told| serde_json::from_slice(&told.stdout).ok())
        .ok_or_else(|| silent("cargo metadata"))
}

fn packages(metadata: &Value) -> BTreeMap<String, Package> {
    let found = metadata["packages"].as_array().into_iter().flatten();
    let named =
        found.filter_map(|package| Some((package["id"].as_str()?.to_owned(), Package::read(package)?)));
    named.collect()
}

/// What is reached from our own package by ordinary dependencies; macros run on the computer and stay there.
fn reached(metadata: &Value) -> Vec<Package> {
    let list = |of: &Value| of.as_array().cloned().unwrap_or_default();
    let macros: BTreeSet<String> = list(&metadata["packages"])
        .iter()
        .filter(|package| {
            list(&package["targets"])
                .iter()
                .any(|target| target["kind"][0] == "proc-macro")
        })
        .filter_map(|package| package["id"].as_str().map(str::to_owned))
        .collect();
    let nodes = list(&metadata["resolve"]["nodes"]);
    let mut left: Vec<String> = metadata["resolve"]["root"]
        .as_str()
        .into_iter()
        .map(str::to_owned)
        .collect();
    let mut seen = BTreeSet::new();
    while let Some(id) = left.pop() {
        if macros.contains(&id) || !seen.insert(id.clone()) {
            continue;
        }
        let node = nodes.iter().find(|node| node["id"] == id.as_str());
        for dependency in node.map(|node| list(&node["deps"])).unwrap_or_default() {
            let ordinary = list(&dependency["dep_kinds"])
                .iter()
                .any(|kind| kind["kind"].is_null());
            left.extend(dependency["pkg"].as_str().filter(|_| ordinary).map(str::to_owned));
        }
    }
    let mut all = packages(metadata);
    let mut found: Vec<Package> = seen.iter().filter_map(|id| all.remove(id)).collect();
    found.sort();
    found
}

/// The file of licences: each package with its terms, then every text once, with those it is of.
///
/// # Errors
/// Cargo says nothing, or the typeface's own licence can't be read.
pub fn file(project: &Project) -> Result<String, SetupError> {
    let ours = read(&project.root().join("LICENSE"))?;
    let face = read(&project.root().join("public/type/LICENSE.txt"))?;
    let mut told = String::from(
        "Halfcase is made of these, each under its own terms, as its makers give them.\n\
         Rust's standard library is in it too: MIT OR Apache-2.0, https://www.rust-lang.org.\n\n",
    );
    let mut texts: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for package in shipped(project)?
        .iter()
        .filter(|package| package.source.is_some())
    {
        let name = format!("{} {}", package.name, package.version);
        told += &format!("{name}: {}\n", package.licence);
        let mut own = package.texts();
        if own.is_empty() {
            let by = match package.authors.as_str() {
                "" => "its authors",
                authors => authors,
            };
            own.push(format!("Copyright (c) {by}\n\n{MIT}"));
        }
        own.into_iter()
            .for_each(|text| texts.entry(text).or_default().push(name.clone()));
    }
    let mut add = |what: &str, text: &str| told += &format!("\n\n======== {what}\n\n{}\n", text.trim());
    add("Halfcase itself", &ours);
    add("the typeface of its figures, type/numerals.woff2", &face);
    for (text, of) in &texts {
        add(&of.join(", "), text);
    }
    Ok(told)
}

fn read(path: &Path) -> Result<String, SetupError> {
    fs::read_to_string(path).map_err(SetupError::file(path))
}

/// The MIT licence, for packages that name it and bring no text.
const MIT: &str = "Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the \"Software\"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:\n\nThe above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.\n\nTHE SOFTWARE IS PROVIDED \"AS IS\", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_expression_is_met_by_one_of_its_choices_and_all_of_its_parts() {
        let list = ["MIT", "Zlib"];
        for (expression, met) in [
            ("MIT", true),
            ("GPL-3.0-only", false),
            ("GPL-3.0-only OR MIT", true),
            ("GPL-3.0-only AND MIT", false),
            ("(MIT OR Apache-2.0) AND Zlib", true),
            ("(MIT OR Apache-2.0) AND Unicode-3.0", false),
            ("Zlib AND GPL-3.0-only OR MIT", true),
            ("MIT WITH Some-exception", true),
            ("", false),
            ("(MIT", false),
            ("MIT GPL-3.0-only", false),
        ] {
            assert_eq!(allowed(expression, &list), met, "{expression}");
        }
    }
}
