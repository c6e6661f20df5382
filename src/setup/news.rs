//! What a release tells of itself: its version and day, and what is new in it.

use std::process::Command;

use super::project::Project;

/// The file with what is new, which the page of the release before shows.
pub const NEWS: &str = "news.txt";

/// Most lines of it: they are read standing.
const MOST_LINES: usize = 6;
/// A line is cut at the end of its first sentence or clause that is at least this long.
const LEAST_LETTERS: usize = 24;

/// "0.1.0, 2026-11-27": the version, and the day of the last commit where that is known.
pub fn release_line(project: &Project) -> String {
    let version = env!("CARGO_PKG_VERSION");
    let day = Command::new("git")
        .args(["log", "-1", "--format=%cs"])
        .current_dir(project.root())
        .output();
    let day = day.ok().filter(|done| done.status.success());
    let day = day.and_then(|done| String::from_utf8(done.stdout).ok());
    match day.as_deref().map(str::trim) {
        Some(day) if !day.is_empty() => format!("{version}, {day}"),
        _ => version.to_owned(),
    }
}

/// The topmost lines of the list of changes, each to its first stop, under the release's own line.
pub fn news(changes: &str, release: &str) -> String {
    let newest = changes
        .lines()
        .skip_while(|line| !line.starts_with("## "))
        .skip(1);
    let newest = newest.take_while(|line| !line.starts_with("## "));
    let all: Vec<String> = newest
        .filter_map(|line| line.strip_prefix("- "))
        .map(first_words)
        .collect();
    let more = all.len().saturating_sub(MOST_LINES);
    let shown = all.into_iter().take(MOST_LINES);
    let more = (more > 0).then(|| format!("and {more} more"));
    let lines = std::iter::once(release.to_owned()).chain(shown).chain(more);
    lines.map(|line| line + "\n").collect()
}

/// A line without its emphasis, to its first stop.
fn first_words(line: &str) -> String {
    let plain: String = line.chars().filter(|letter| *letter != '*').collect();
    let stops = [". ", ": ", "; "].iter();
    let stop = stops
        .flat_map(|stop| plain.match_indices(stop).map(|(at, _)| at))
        .filter(|at| *at >= LEAST_LETTERS)
        .min();
    let cut = plain.get(..stop.unwrap_or(plain.len())).unwrap_or(&plain);
    format!("{}.", cut.trim_end_matches('.'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_newest_lines_are_told_to_their_first_stop() {
        let changes = "# Changes\n\nWhat a user notices.\n\n## Not released yet\n\n\
            - **Bond** knows shaft seals, core plugs and cones. Grease is an answer.\n\
            - **Oil goes in when it may, not later**: each kind has its time.\n- Short.\n\n\
            ## 0.1.0\n\n- Old.\n";
        assert_eq!(
            news(changes, "0.2.0, 2026-11-27"),
            "0.2.0, 2026-11-27\nBond knows shaft seals, core plugs and cones.\n\
             Oil goes in when it may, not later.\nShort.\n"
        );
    }

    #[test]
    fn a_long_list_says_how_much_more_there_is() {
        let lines: String = (1..=9).map(|n| format!("- Line {n}.\n")).collect();
        let told = news(&format!("## Newest\n{lines}"), "1");
        assert_eq!(told.lines().count(), 1 + MOST_LINES + 1);
        assert!(told.ends_with("Line 6.\nand 3 more\n"), "{told}");
    }
}
