//! The table of rules in the README is the table of the code.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::warnings::rules::RULES;
use perchlight::words::Language;

const START: &str = "<!-- rules -->";
const END: &str = "<!-- /rules -->";

/// The table of every rule: name, limits, standing, source.
fn rule_table_markdown() -> String {
    let mut table = "| rule | limits | standing | source |\n| --- | --- | --- | --- |\n".to_owned();
    for rule in RULES {
        let standing = Language::English.standing(rule.standing);
        let cells = [rule.name, rule.limits, standing, rule.source];
        table.push_str("| ");
        table.push_str(&cells.map(|cell| cell.replace('|', "\\|")).join(" | "));
        table.push_str(" |\n");
    }
    table
}

#[test]
fn the_readme_lists_the_rules_as_they_are() {
    let path = format!("{}/README.md", env!("CARGO_MANIFEST_DIR"));
    let readme = std::fs::read_to_string(path).expect("README.md is there");
    let (_, rest) = readme
        .split_once(START)
        .expect("the table's start is marked");
    let (table, _) = rest.split_once(END).expect("the table's end is marked");
    let wanted = rule_table_markdown();
    assert!(
        table.trim() == wanted.trim(),
        "put this between the marks of README.md:\n\n{wanted}"
    );
}
