//! Imports point downwards only, and the trade knows neither browser nor clock.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The layers from the lowest up; each may import itself and those before it.
const LAYERS: [&str; 6] = ["trade", "job", "device", "bench", "parts", "screens"];

/// The set-up stands beside the app: neither imports the other.
const APART: &str = "setup";

/// What no file of `trade` or `job` may name: the time, chance and the outside come in as values.
const OUTSIDE: [&str; 13] = [
    "SystemTime",
    "std::time::Instant",
    "std::fs",
    "std::env",
    "std::net",
    "std::process",
    "leptos::",
    "reactive_graph::",
    "web_sys::",
    "js_sys::",
    "wasm_bindgen::",
    "gloo_storage::",
    "unsafe ",
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A source file: the path of its module and its text without comments and quoted words.
struct Source {
    module: Vec<String>,
    code: String,
}

impl Source {
    fn new(path: &str, text: &str) -> Source {
        let module = path.trim_end_matches(".rs").trim_end_matches("/mod");
        Source {
            module: module.split('/').map(str::to_owned).collect(),
            code: bare(text),
        }
    }

    fn layer(&self) -> &str {
        self.module.first().map_or("", String::as_str)
    }

    /// Every module path this file names from the crate's root: `["job", "step"]`.
    fn imports(&self) -> Vec<Vec<String>> {
        let mut found = Vec::new();
        for (place, word) in self
            .code
            .match_indices("crate::")
            .chain(self.code.match_indices("super::"))
        {
            let before = self.code.get(..place).unwrap_or_default();
            if before.ends_with(|c: char| c.is_alphanumeric() || c == '_') || before.ends_with("super::") {
                continue;
            }
            let rest = self.code.get(place..).unwrap_or_default();
            let ups = if word == "crate::" {
                self.module.len()
            } else {
                count_supers(rest)
            };
            let base = self
                .module
                .get(..self.module.len().saturating_sub(ups))
                .unwrap_or_default();
            let rest = rest.trim_start_matches("crate::").trim_start_matches("super::");
            for tail in tails(rest) {
                found.push(base.iter().cloned().chain(tail).collect());
            }
        }
        found
    }
}

fn count_supers(text: &str) -> usize {
    let mut rest = text;
    let mut count = 0;
    while let Some(after) = rest.strip_prefix("super::") {
        rest = after;
        count += 1;
    }
    count
}

/// The first two names of each path that begins here; a brace opens several.
fn tails(text: &str) -> Vec<Vec<String>> {
    let Some(inside) = text.strip_prefix('{') else {
        let path = text
            .split(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':'))
            .next()
            .unwrap_or_default();
        return vec![
            path.split("::")
                .filter(|name| !name.is_empty())
                .take(2)
                .map(str::to_owned)
                .collect(),
        ];
    };
    let mut depth = 0;
    let mut parts = vec![String::new()];
    for c in inside.chars() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => parts.push(String::new()),
            _ => {}
        }
        if depth == 0 && c != ',' && !c.is_whitespace() {
            parts.last_mut().expect("never empty").push(c);
        }
    }
    parts
        .iter()
        .filter(|part| !part.is_empty())
        .flat_map(|part| tails(part))
        .collect()
}

/// The code alone: no comments, nothing in quotation marks.
fn bare(text: &str) -> String {
    let lines = text.lines().map(|line| {
        let code = line.split("//").next().unwrap_or_default();
        code.split('"').step_by(2).collect::<Vec<_>>().join("\"\"")
    });
    lines.collect::<Vec<_>>().join("\n")
}

/// What is wrong with one file's imports. `screens` are the names of the screens' modules.
fn faults(source: &Source, screens: &BTreeSet<String>) -> Vec<String> {
    let here = source.module.join("::");
    let rank = |layer: &str| LAYERS.iter().position(|name| *name == layer);
    let mut faults = Vec::new();
    for import in source.imports() {
        let to = import.first().map_or("", String::as_str);
        let upward = matches!((rank(source.layer()), rank(to)), (Some(own), Some(other)) if other > own);
        let across = (source.layer() == APART && rank(to).is_some())
            || (to == APART && rank(source.layer()).is_some());
        if upward || across {
            faults.push(format!("{here} imports {}", import.join("::")));
        }
        if let (Some(own), Some(other)) = (source.module.get(1), import.get(1)) {
            let between =
                source.layer() == "screens" && to == "screens" && own != other && screens.contains(other);
            if between {
                faults.push(format!("{here} imports its neighbour {}", import.join("::")));
            }
        }
    }
    if ["trade", "job"].contains(&source.layer()) {
        let named = OUTSIDE.iter().filter(|word| source.code.contains(**word));
        faults.extend(named.map(|word| format!("{here} names {}", word.trim())));
    }
    faults
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("src can be read").flatten() {
        let path = entry.path();
        if path.is_dir() {
            files(&path, found);
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            found.push(path);
        }
    }
}

#[test]
fn imports_point_downwards_only() {
    let src = root().join("src");
    let mut paths = Vec::new();
    files(&src, &mut paths);
    let sources: Vec<Source> = paths
        .iter()
        .map(|path| {
            let name = path
                .strip_prefix(&src)
                .expect("under src")
                .to_string_lossy()
                .replace('\\', "/");
            Source::new(&name, &fs::read_to_string(path).expect("a source file"))
        })
        .collect();
    for layer in LAYERS {
        assert!(
            sources.iter().any(|source| source.layer() == layer),
            "src/{layer} is gone: correct this test"
        );
    }
    let screens = sources.iter().filter(|source| source.layer() == "screens");
    let screens: BTreeSet<String> = screens
        .filter_map(|source| source.module.get(1).cloned())
        .collect();
    let faults: Vec<String> = sources
        .iter()
        .flat_map(|source| faults(source, &screens))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_page_reads_and_writes_json_in_one_place() {
    let mut paths = Vec::new();
    for layer in LAYERS {
        files(&root().join("src").join(layer), &mut paths);
    }
    for path in paths {
        let text = fs::read_to_string(&path).expect("a source is text");
        let code = bare(text.split("#[cfg(test)]").next().unwrap_or_default());
        for call in ["serde_json::from_", "serde_json::to_", "serde_json::json!"] {
            assert!(!code.contains(call), "{} goes past job::json", path.display());
        }
    }
}

#[test]
fn a_wrong_import_is_found_however_it_is_written() {
    let screens = BTreeSet::from(["torque".to_owned(), "bond".to_owned()]);
    let found = |path: &str, text: &str| !faults(&Source::new(path, text), &screens).is_empty();
    for (path, text) in [
        ("trade/cure.rs", "use crate::job::Step;"),
        ("trade/cure.rs", "use crate::{trade::cure, job::{Step, Kind}};"),
        ("trade/quantity/mod.rs", "fn f() { super::super::bench::now() }"),
        ("job/mod.rs", "let now = std::time::SystemTime::now();"),
        ("device/time.rs", "use crate::bench;"),
        ("setup/serve.rs", "use crate::trade::torque;"),
        ("parts/plate.rs", "use crate::setup::main;"),
        ("screens/torque.rs", "use crate::screens::bond::Card;"),
        ("screens/torque/plate.rs", "use super::super::bond::Card;"),
        ("screens/torque.rs", "use super::bond;"),
    ] {
        assert!(found(path, text), "{path}: {text}");
    }
    for (path, text) in [
        ("trade/cure.rs", "use crate::trade::heat;\nuse super::growth;"),
        (
            "trade/cure.rs",
            "// as crate::job::Step does\nlet words = \"crate::job\";",
        ),
        ("bench/mod.rs", "use crate::{device::time, job, trade::cure};"),
        (
            "screens/torque/plate.rs",
            "use super::guard;\nuse crate::screens::Route;\nuse crate::parts::keypad;",
        ),
        (
            "screens/mod.rs",
            "use self::bond::Bond; use crate::screens::torque::Torque;",
        ),
    ] {
        assert!(!found(path, text), "{path}: {text}");
    }
}
