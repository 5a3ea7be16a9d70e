//! The pages for readers name only what exists, and every folder of the source is on the map.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

const PAGES: [&str; 2] = ["DEVELOPERS.md", "README.md"];
/// Longer than this nobody reads it in one go.
const MOST_LINES: usize = 250;
/// Made by the build, so that a fresh clone has none of them.
const BUILT: [&str; 2] = ["dist/", ".tools/"];
const ENDINGS: [&str; 11] = [
    "rs", "md", "toml", "json", "mjs", "js", "css", "html", "sh", "csv", "png",
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn page(name: &str) -> String {
    fs::read_to_string(root().join(name)).expect(name)
}

/// The texts between backticks, blocks of code left out.
fn quoted(text: &str) -> Vec<&str> {
    let prose = text.split("```").step_by(2);
    prose
        .flat_map(|part| part.split('`').skip(1).step_by(2))
        .collect()
}

/// Whether a quoted text means a path: a folder or a file by its form, no command and no code.
fn is_path(text: &str) -> bool {
    let is_plain = |letter: char| letter.is_ascii_alphanumeric() || "/._-".contains(letter);
    let has_ending = text
        .rsplit_once('.')
        .is_some_and(|(_, ending)| ENDINGS.contains(&ending));
    !text.is_empty() && text.chars().all(is_plain) && (text.contains('/') || has_ending)
}

fn missing(text: &str) -> Vec<String> {
    let paths = quoted(text).into_iter().filter(|text| is_path(text));
    paths
        .filter(|path| !BUILT.contains(path) && !root().join(path).exists())
        .map(str::to_owned)
        .collect()
}

/// Folders below `folder` that hold Rust files, as paths from the top that end in `/`.
fn folders_with_code(folder: &Path, found: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.unwrap().path();
        if path.is_dir() {
            folders_with_code(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let name = folder.strip_prefix(root()).unwrap().to_str().unwrap();
            found.insert(format!("{}/", name.replace('\\', "/")));
        }
    }
}

#[test]
fn every_path_that_a_page_names_exists() {
    for name in PAGES {
        let text = page(name);
        assert!(
            quoted(&text).iter().any(|text| is_path(text)),
            "{name} names no path"
        );
        assert_eq!(missing(&text), Vec::<String>::new(), "named in {name}");
    }
}

#[test]
fn every_folder_of_the_source_and_every_file_at_its_top_is_on_the_map() {
    let text = page("DEVELOPERS.md");
    let mut wanted = BTreeSet::new();
    folders_with_code(&root().join("src"), &mut wanted);
    assert!(wanted.remove("src/"));
    for entry in fs::read_dir(root().join("src")).unwrap() {
        let path = entry.unwrap().path();
        if path.is_file() {
            let name = path.file_name().unwrap().to_str().unwrap();
            wanted.insert(format!("src/{name}"));
        }
    }
    let named: BTreeSet<&str> = quoted(&text).into_iter().collect();
    wanted.retain(|path| !named.contains(path.as_str()));
    assert_eq!(wanted, BTreeSet::new(), "not in DEVELOPERS.md");
}

/// What people have written: without the tables that programs write between marks.
fn without_tables(text: &str) -> String {
    let mut is_table = false;
    let lines = text.lines().filter(|line| {
        let is_mark = line.starts_with("<!-- ") && line.ends_with(" -->");
        if is_mark {
            is_table = !line.starts_with("<!-- /");
        }
        !is_table && !is_mark
    });
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn the_developers_page_stays_short() {
    let lines = without_tables(&page("DEVELOPERS.md")).lines().count();
    assert!(lines < MOST_LINES, "{lines} lines");
    assert!(
        lines > MOST_LINES / 2,
        "the marks are not closed: {lines} lines"
    );
    assert_eq!(
        without_tables("a\n<!-- t -->\n| b |\n<!-- /t -->\nc"),
        "a\nc"
    );
}

#[test]
fn a_path_that_is_not_there_is_told_and_code_is_not() {
    let text = "See `src/nowhere.rs`, `src/domain/`, `make build`, `a/b c`, `outlook(now)` and `dist/`.\n\
        ```text\n`src/in_a_block.rs`\n```\nThen `missing.md`.";
    assert_eq!(missing(text), ["src/nowhere.rs", "missing.md"]);
}
