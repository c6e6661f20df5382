//! Imports point downwards only, and the trade knows neither browser nor clock.

use std::collections::{BTreeMap, BTreeSet};
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
    /// It is a folder's `mod.rs`: its `super` is one further down.
    folder: bool,
    code: String,
}

impl Source {
    fn new(path: &str, text: &str) -> Source {
        let module = path.trim_end_matches(".rs").trim_end_matches("/mod");
        Source {
            module: module.split('/').map(str::to_owned).collect(),
            folder: path.ends_with("/mod.rs"),
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

/// Circles of files that stand for now, each by one of its files.
const KNOWN_CIRCLES: [&str; 0] = [];

/// Which files import which, by their module paths.
///
/// A name counts for the longest module path it begins with: `crate::job::record::Event` is an import of
/// `job/record.rs`, `crate::job::Sheet` of `job/mod.rs`. A folder's `mod.rs` that names its own children
/// (`mod x;`, `pub use x::Item`) imports nothing by that, and a child that names an item through its
/// folder's `mod.rs` imports the child that item is re-exported from, where the `mod.rs` says so.
fn graph(sources: &[Source]) -> BTreeMap<String, BTreeSet<String>> {
    let known: BTreeSet<String> = sources.iter().map(|source| source.module.join("::")).collect();
    let exports: BTreeMap<String, Vec<(String, String)>> = sources
        .iter()
        .map(|source| (source.module.join("::"), source.exports()))
        .collect();
    sources
        .iter()
        .map(|source| {
            let here = source.module.join("::");
            let imports = source.whole_imports().into_iter();
            let files = imports
                .filter_map(|path| file_of(&path, &known, &exports))
                .filter(|file| *file != here && !file.starts_with(&format!("{here}::")));
            (here.clone(), files.collect())
        })
        .collect()
}

/// The file that a path names.
fn file_of(
    path: &[String],
    known: &BTreeSet<String>,
    exports: &BTreeMap<String, Vec<(String, String)>>,
) -> Option<String> {
    let length = (1..=path.len())
        .rev()
        .find(|length| known.contains(&path[..*length].join("::")))?;
    let file = path[..length].join("::");
    let item = path.get(length);
    let from = item.and_then(|item| {
        let named = exports.get(&file)?.iter().find(|(name, _)| name == item)?;
        Some(format!("{file}::{}", named.1))
    });
    Some(from.filter(|child| known.contains(child)).unwrap_or(file))
}

/// Groups of files that reach each other.
fn circles(graph: &BTreeMap<String, BTreeSet<String>>) -> Vec<Vec<String>> {
    let reached = |from: &String| {
        let mut seen: BTreeSet<String> = BTreeSet::new();
        let mut open = vec![from.clone()];
        while let Some(file) = open.pop() {
            for next in graph.get(&file).into_iter().flatten() {
                if seen.insert(next.clone()) {
                    open.push(next.clone());
                }
            }
        }
        seen
    };
    let all: BTreeMap<&String, BTreeSet<String>> = graph.keys().map(|file| (file, reached(file))).collect();
    let mut found: Vec<Vec<String>> = Vec::new();
    for (file, reaches) in &all {
        if !reaches.contains(*file) || found.iter().any(|circle| circle.contains(file)) {
            continue;
        }
        let back = |other: &&String| all.get(other).is_some_and(|reaches| reaches.contains(*file));
        found.push(reaches.iter().filter(back).cloned().collect());
    }
    found
}

impl Source {
    /// Every module path this file names from the crate's root, whole.
    fn whole_imports(&self) -> Vec<Vec<String>> {
        let mut found = Vec::new();
        for word in ["crate::", "super::", "self::"] {
            for (place, _) in self.code.match_indices(word) {
                let before = self.code.get(..place).unwrap_or_default();
                if before.ends_with(|c: char| c.is_alphanumeric() || c == '_' || c == ':') {
                    continue;
                }
                let rest = self.code.get(place..).unwrap_or_default();
                let ups = match word {
                    "crate::" => self.module.len(),
                    "super::" => count_supers(rest) - usize::from(self.folder),
                    _ => 0,
                };
                let base = self
                    .module
                    .get(..self.module.len().saturating_sub(ups))
                    .unwrap_or_default();
                let rest = rest.trim_start_matches(word);
                for tail in whole_tails(rest) {
                    found.push(base.iter().cloned().chain(tail).collect());
                }
            }
        }
        found
    }

    /// What a `mod.rs` re-exports from its children: (item, child).
    fn exports(&self) -> Vec<(String, String)> {
        let mut found = Vec::new();
        for (place, word) in self.code.match_indices("pub use ") {
            let rest = self.code.get(place + word.len()..).unwrap_or_default();
            for path in whole_tails(rest) {
                if let (Some(child), Some(item)) = (path.first(), path.last()) {
                    found.push((item.clone(), child.clone()));
                }
            }
        }
        found
    }
}

/// Each path that begins here, whole; a brace opens several.
fn whole_tails(text: &str) -> Vec<Vec<String>> {
    let end = text
        .find(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':'))
        .unwrap_or(text.len());
    let (path, rest) = text.split_at(end);
    let mut base: Vec<String> = path
        .split("::")
        .filter(|name| !name.is_empty())
        .map(str::to_owned)
        .collect();
    let opens = rest.starts_with('{') && (path.is_empty() || path.ends_with("::"));
    if !opens {
        if rest.starts_with(" as ") || base.last().is_some_and(|name| name == "self") {
            base.retain(|name| name != "self");
        }
        return vec![base];
    }
    let mut depth = 0;
    let mut parts = vec![String::new()];
    for c in rest.chars().skip(1) {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => {
                parts.push(String::new());
                continue;
            }
            _ => {}
        }
        if !c.is_whitespace() {
            parts.last_mut().expect("never empty").push(c);
        }
    }
    parts
        .iter()
        .filter(|part| !part.is_empty())
        .flat_map(|part| whole_tails(part))
        .map(|tail| {
            let tail = tail.into_iter().filter(|name| name != "self");
            base.iter().cloned().chain(tail).collect()
        })
        .collect()
}

fn sources() -> Vec<Source> {
    let src = root().join("src");
    let mut paths = Vec::new();
    files(&src, &mut paths);
    let named = |path: &PathBuf| {
        let name = path.strip_prefix(&src).expect("under src").to_string_lossy();
        let text = fs::read_to_string(path).expect("a source file");
        let text = text
            .split("#[cfg(test)]\nmod tests")
            .next()
            .unwrap_or_default()
            .to_owned();
        Source::new(&name.replace('\\', "/"), &text)
    };
    let sources = paths.iter().map(named);
    sources
        .filter(|source| !["lib", "main"].contains(&source.layer()))
        .collect()
}

#[test]
fn no_files_import_each_other_in_a_circle() {
    let sources = sources();
    let found = circles(&graph(&sources));
    let graph = graph(&sources);
    let told: Vec<String> = found
        .iter()
        .filter(|circle| !circle.iter().any(|file| KNOWN_CIRCLES.contains(&file.as_str())))
        .map(|circle| {
            let inside = |file: &String| {
                let imports = graph[file].iter().filter(|to| circle.contains(to));
                format!(
                    "  {file} imports {}",
                    imports.cloned().collect::<Vec<_>>().join(", ")
                )
            };
            format!(
                "a circle:\n{}",
                circle.iter().map(inside).collect::<Vec<_>>().join("\n")
            )
        })
        .collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
    for known in KNOWN_CIRCLES {
        let there = found.iter().any(|circle| circle.iter().any(|file| file == known));
        assert!(there, "the circle of {known} is gone: take it off the list");
    }
}

#[test]
fn a_circle_is_found_and_a_chain_is_none() {
    let made = |files: &[(&str, &str)]| {
        let sources: Vec<Source> = files.iter().map(|(path, text)| Source::new(path, text)).collect();
        circles(&graph(&sources))
    };
    let chain = [
        ("job/a.rs", "use super::b::B;"),
        ("job/b.rs", "use crate::job::c::{C, D};"),
        ("job/c.rs", "use crate::trade::t;"),
        ("trade/t.rs", ""),
    ];
    assert_eq!(made(&chain), Vec::<Vec<String>>::new());
    let mut ring = chain;
    ring[2].1 = "use crate::{trade::t, job::{a::A}};";
    assert_eq!(made(&ring), [["job::a", "job::b", "job::c"]]);
    // Through the folder's own file a name leads to where it stands.
    let folder = [
        ("job/k/mod.rs", "mod x; mod y; pub use x::X; pub use y::{Y, Z};"),
        ("job/k/x.rs", "use super::Y;"),
        ("job/k/y.rs", "fn f() {}"),
    ];
    assert_eq!(made(&folder), Vec::<Vec<String>>::new());
    let mut both = folder;
    both[2].1 = "use super::X;";
    assert_eq!(made(&both), [["job::k::x", "job::k::y"]]);
}

/// What decides, in a view: words of the bare code, and what to do instead.
///
/// A view shows what the core says and sends what is touched. So it asks for no cure, no limit and no
/// closing by itself, and judges no typed number: a range of literals that is asked whether it contains a
/// number, or a typed number held against a literal, is a rule that belongs to `src/job` (`sense.rs`, a
/// field's row, `state/`). Geometry of drawings and the words of a span of time are no such rules.
const DECISIONS: [(&str, &str); 9] = [
    (".needs_cured(", "ask State::ask what the step wants"),
    (".cures(", "ask State::ask what the step wants"),
    (".holds(", "ask readings::judge, or show the verdict kept"),
    ("recommend(", "ask State::bond"),
    ("situation::cautions", "ask State::cautions"),
    ("next_fastener(", "ask State::ask"),
    (".unfit(", "ask State::bond: its shelf says so"),
    ("gate::waits(", "ask State::ask"),
    ("Event::", "the record's lines are words by journal::words"),
];

/// Names of what was just typed.
const TYPED: [&str; 8] = ["number", "value", "typed", "celsius", "kn", "kg", "mm", "degrees"];

/// Decisions that stand in a view for now: the file, and the word.
const KNOWN_DECISIONS: [(&str, &str); 7] = [
    ("screens::job::fasten", "next_fastener("),
    ("screens::parts_list", "number < 0.0"),
    ("screens::lift::boom", "typed > 0.0"),
    ("screens::bench::wrenches", "value > 0.0"),
    ("screens::bench::wrenches", "value <= 20.0"),
    (
        "parts::shop",
        "let hour = if number.fract() == 0.0 && (0.0..24.0).contains(",
    ),
    ("screens::torque::extras", "number > 0.0"),
];

fn decisions(source: &Source) -> Vec<(String, String)> {
    let here = source.module.join("::");
    let drawing = ["drawing", "gauge", "drawn", "when"]
        .iter()
        .any(|word| here.contains(word));
    if !["parts", "screens"].contains(&source.layer()) || drawing {
        return Vec::new();
    }
    let mut found: Vec<String> = DECISIONS
        .iter()
        .filter(|(word, _)| source.code.contains(word))
        .map(|(word, _)| (*word).to_owned())
        .collect();
    for line in source.code.lines() {
        let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
        if let Some((range, _)) = line.split_once(".contains(&") {
            let literal = range.split_once("..").is_some_and(|(least, most)| {
                digit(least.chars().last()) && digit(most.trim_start_matches(['=', '-']).chars().next())
            });
            if literal {
                found.push(format!("{}.contains(", range.trim()));
            }
        }
        for name in TYPED {
            for sign in [" < ", " > ", " <= ", " >= "] {
                if let Some((before, after)) = line.split_once(&format!("{name}{sign}"))
                    && !before.ends_with(|c: char| c.is_alphanumeric() || c == '_' || c == '.')
                    && digit(after.trim_start_matches('-').chars().next())
                {
                    let end = after.find(|c: char| !(c.is_ascii_digit() || "._-".contains(c)));
                    let literal = after.get(..end.unwrap_or(after.len())).unwrap_or_default();
                    found.push(format!("{name}{sign}{literal}"));
                }
            }
        }
    }
    found.into_iter().map(|word| (here.clone(), word)).collect()
}

#[test]
fn no_view_decides() {
    let found: Vec<(String, String)> = sources().iter().flat_map(decisions).collect();
    let known = |(file, word): &(String, String)| KNOWN_DECISIONS.contains(&(file.as_str(), word.as_str()));
    let told: Vec<String> = found
        .iter()
        .filter(|one| !known(one))
        .map(|(file, word)| {
            let instead = DECISIONS.iter().find(|(own, _)| own == word);
            let instead = instead.map_or("give it a Sense in src/job/sense.rs", |(_, instead)| instead);
            format!("{file} decides by `{word}`: {instead}")
        })
        .collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
    for (file, word) in KNOWN_DECISIONS {
        let there = found.iter().any(|(own, found)| own == file && found == word);
        assert!(
            there,
            "{file} no longer decides by `{word}`: take it off the list"
        );
    }
}

#[test]
fn a_decision_in_a_view_is_found_however_it_looks() {
    let found = |path: &str, text: &str| !decisions(&Source::new(path, text)).is_empty();
    for text in [
        "if step.work.cures() { }",
        "if !(0.1..1_000.0).contains(&value) { }",
        "kn if kn > 0.0 && kn <= 5_000.0 => {}",
        "let late = recommend(joint);",
    ] {
        assert!(found("screens/job/x.rs", text), "{text}");
        assert!(!found("job/x.rs", text), "{text}");
    }
    for text in [
        "let number = sense::RUNNING.of(number)?;",
        "if names.contains(&name) { }",
        "(range.least..=range.most).contains(&x)",
        "if count > 1 { }",
    ] {
        assert!(!found("screens/job/x.rs", text), "{text}");
    }
}

#[test]
fn the_readme_shows_pictures_that_the_stories_make() {
    let readme = fs::read_to_string(root().join("README.md")).expect("a README");
    let mut stories = String::new();
    for file in fs::read_dir(root().join("tests/stories")).expect("stories") {
        stories.push_str(&fs::read_to_string(file.expect("a file").path()).unwrap_or_default());
    }
    let shown: Vec<&str> = readme
        .split(".pictures/")
        .skip(1)
        .filter_map(|rest| rest.split_once(".png").map(|(name, _)| name))
        .collect();
    assert!(!shown.is_empty());
    for name in &shown {
        assert!(root().join(format!(".pictures/{name}.png")).exists(), "{name}");
        // A story names the picture, or the screen of which one is made of each size.
        let screen = name.rsplit_once('-').map_or(*name, |(screen, _)| screen);
        let each_size = format!("{screen}-{{name}}");
        let made = [*name, screen, &each_size]
            .iter()
            .any(|name| stories.contains(&format!("\"{name}\"")));
        assert!(made, "no story makes {name}");
    }
    // And none lies there for nothing.
    for file in fs::read_dir(root().join(".pictures")).expect("pictures") {
        let name = file.expect("a file").file_name();
        let name = name.to_string_lossy().replace(".png", "");
        assert!(shown.contains(&name.as_str()), "{name} is shown nowhere");
    }
}

/// What is generic over a closure is compiled for each closure: the views have one way to each of these.
#[test]
fn views_make_signals_in_one_way() {
    let mut found = Vec::new();
    for layer in ["parts", "screens"] {
        let mut all = Vec::new();
        files(&root().join("src").join(layer), &mut all);
        for file in all {
            let text = fs::read_to_string(&file).expect("a source file");
            let own = file.ends_with("parts/dynamic.rs");
            for word in ["Memo::new(", "Signal::derive("] {
                if text.contains(word) && !own {
                    found.push(format!("{} has {word}: use parts::dynamic", file.display()));
                }
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// Fractions are printed by `trade::quantity`, which knows the decimal mark. What prints one by itself draws a path or
/// sets a style, or counts digits.
#[test]
fn fractions_for_people_are_printed_in_one_place() {
    const OWN: [&str; 10] = [
        "trade/quantity/print.rs",
        "trade/guard/readings.rs",
        "job/kinds/fasten/passes.rs",
        "parts/plate.rs",
        "parts/angle_gauge.rs",
        "parts/bolts.rs",
        "parts/lift/drawing.rs",
        "parts/clock_bar.rs",
        "parts/progress_bar.rs",
        "parts/drawn.rs",
    ];
    let fraction = |text: &str| {
        let mut places = text
            .match_indices(":.")
            .map(|(at, _)| text.get(at + 2..).unwrap_or_default());
        places.any(|behind| {
            let digits = behind.split('}').next().unwrap_or_default();
            let precise = digits.len() < 10 && !digits.is_empty() && !digits.contains(char::is_whitespace);
            behind.contains('}') && precise && digits != "0" && !digits.contains(['"', '(', ')', '/'])
        })
    };
    assert!(fraction("format!(\"{:.1} mm\")") && fraction("{mm:.3}") && !fraction("{share:.0} %"));
    let mut found = Vec::new();
    for layer in ["trade", "job", "bench", "parts", "screens"] {
        let mut all = Vec::new();
        files(&root().join("src").join(layer), &mut all);
        for file in all {
            let text = fs::read_to_string(&file).expect("a source file");
            if fraction(&text) && !OWN.iter().any(|own| file.ends_with(own)) {
                found.push(format!("{}: use fixed, or one of its neighbours", file.display()));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}
