//! What the project is made of: terms, sources, doubles, and why each is there.

use halfcase::setup::licences::{
    FOR_THE_PAGE, FOR_TOOLS, Package, SOURCE, allowed, file, shipped, used_here,
};
use halfcase::setup::project::Project;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

/// Packages of the page that are in it twice: someone else has yet to move on to the newer.
const TWICE: [&str; 2] = ["gloo-utils", "thiserror"];

fn project() -> Project {
    Project::find().unwrap()
}

fn outside(packages: &[Package]) -> impl Iterator<Item = &Package> {
    packages.iter().filter(|package| package.name != "halfcase")
}

#[test]
fn all_that_ships_is_free_to_pass_on_and_the_rest_free_to_use() {
    let shipped = shipped(&project()).unwrap();
    assert!(shipped.len() > 50, "{}", shipped.len());
    for package in outside(&shipped) {
        assert!(allowed(&package.licence, &FOR_THE_PAGE), "{package:?}");
    }
    let tools = [&FOR_THE_PAGE[..], &FOR_TOOLS[..]].concat();
    for package in outside(&used_here(&project()).unwrap().0) {
        assert!(allowed(&package.licence, &tools), "{package:?}");
    }
}

#[test]
fn everything_comes_from_the_one_registry() {
    let sources = include_str!("../Cargo.lock").lines();
    let sources: Vec<&str> = sources
        .filter_map(|line| line.strip_prefix("source = "))
        .collect();
    assert!(sources.len() > 100, "{}", sources.len());
    for source in sources {
        assert_eq!(source.trim_matches('"'), SOURCE);
    }
}

#[test]
fn the_page_has_nothing_twice_but_what_is_known() {
    let shipped = shipped(&project()).unwrap();
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for package in &shipped {
        *counts.entry(&package.name).or_default() += 1;
    }
    let twice: Vec<&str> = counts
        .iter()
        .filter(|(_, count)| **count > 1)
        .map(|(name, _)| *name)
        .collect();
    assert_eq!(twice, TWICE);
}

/// Whoever adds a dependency says why in the table of DEVELOPERS.md; whoever takes one away takes its line.
#[test]
fn each_dependency_has_its_reason() {
    let papers = include_str!("../DEVELOPERS.md");
    let table = papers.split("## What it is made of").nth(1).expect("the section");
    let table = table.split("\n## ").next().unwrap_or_default();
    let lines = table.lines().filter(|line| line.starts_with("| `"));
    let named: Vec<&str> = lines.filter_map(|line| line.split('`').nth(1)).collect();
    let asked: Vec<String> = used_here(&project()).unwrap().1.into_iter().collect();
    let mut sorted = named.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, asked);
}

/// Else the library, and all under it, is compiled once for `cargo run` and again for `cargo test`.
#[test]
fn the_program_and_its_tests_ask_the_same_features_of_what_they_share() {
    let asked = |edges: &str| -> BTreeSet<String> {
        let tree = Command::new(env!("CARGO"))
            .args([
                "tree", "--prefix", "none", "--format", "{p} {f}", "--edges", edges,
            ])
            .current_dir(project().root())
            .output()
            .unwrap();
        assert!(tree.status.success(), "{}", String::from_utf8_lossy(&tree.stderr));
        let told = String::from_utf8(tree.stdout).unwrap();
        told.lines()
            .map(|line| line.trim_end_matches(" (*)").to_owned())
            .collect()
    };
    let (alone, with_tests) = (asked("normal,build"), asked("normal,build,dev"));
    assert!(alone.len() > 50 && with_tests.len() > alone.len());
    let apart: Vec<&String> = alone.difference(&with_tests).collect();
    assert!(
        apart.is_empty(),
        "tests ask other features of these; see `alike` in Cargo.toml, and `cargo tree -e features -i NAME`: {apart:?}"
    );
}

#[test]
fn the_file_of_licences_names_all_that_ships_with_its_text() {
    let told = file(&project()).unwrap();
    for package in outside(&shipped(&project()).unwrap()) {
        let name = format!("{} {}", package.name, package.version);
        assert!(
            told.contains(&format!("\n{name}: {}\n", package.licence)),
            "{name}"
        );
        let texts = told.split("======== ").skip(1);
        let heads = texts.filter_map(|text| text.lines().next());
        assert!(
            heads.flat_map(|head| head.split(", ")).any(|own| own == name),
            "{name} has no text"
        );
    }
    assert!(told.contains("SIL Open Font License") || told.contains("SIL OPEN FONT LICENSE"));
    assert!(told.contains("Halfcase itself"));
}
