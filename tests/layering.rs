//! Which folder may name what, read from the source text. Features keep the browser out of the pure
//! part; this holds what features cannot, as `domain` naming `store` or a screen holding a sentence. Within
//! the domain it holds the order of the rooms, and everywhere that no files name one another in a circle.
//!
//! Comments, documentation and unit tests at the foot of a file are not read.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Attributes whose value nobody reads as words.
const UNREAD_ATTRIBUTES: &str = "class id for name type d points viewBox transform aria-describedby aria-labelledby autocomplete";

/// What no file below `folder` may name, apart from the files listed.
struct Rule {
    folder: &'static str,
    words: &'static [&'static str],
    apart_from: &'static [&'static str],
}

const BROWSER: &[&str] = &[
    "gloo",
    "gloo_storage",
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "wasm_bindgen_futures",
    "leptos",
];
const SERDE: &[&str] = &["serde", "serde_json", "Serialize", "Deserialize"];
const CLOCK: &[&str] = &["SystemTime", "Instant", "std::time::UNIX_EPOCH"];

const RULES: &[Rule] = &[
    // Paths are written from `crate::`, one a line, so that the rules below see every one of them.
    below(
        "src/",
        &["super::", "crate::{", "std::env", "std::fs", "std::net"],
    ),
    Rule {
        folder: "src/",
        words: &["chrono"],
        apart_from: &["src/domain/time/moment.rs"],
    },
    below("src/domain/", BROWSER),
    below("src/domain/", SERDE),
    below("src/domain/", CLOCK),
    below(
        "src/domain/",
        &["crate::store", "crate::share", "crate::words", "crate::ui"],
    ),
    Rule {
        folder: "src/store/",
        words: BROWSER,
        apart_from: &[
            "src/store/browser.rs",
            "src/store/photo_store.rs",
            "src/store/second_copy.rs",
        ],
    },
    below("src/store/", &["leptos"]),
    below("src/store/", CLOCK),
    below("src/store/", &["crate::share", "crate::words", "crate::ui"]),
    below("src/share/", BROWSER),
    below("src/share/", SERDE),
    below("src/share/", CLOCK),
    below("src/share/", &["crate::ui"]),
    below("src/words/", BROWSER),
    below("src/words/", SERDE),
    below("src/words/", CLOCK),
    below("src/words/", &["crate::share", "crate::ui"]),
    below("src/ui/", SERDE),
    below("src/ui/", CLOCK),
    below(
        "src/ui/",
        &["localStorage", "local_storage", "gloo_storage"],
    ),
    Rule {
        folder: "src/ui/",
        words: &["Date", "performance"],
        apart_from: &["src/ui/clock.rs"],
    },
    // Markup that is not built by `view!`: only pictures of our own, never typed text.
    Rule {
        folder: "src/ui/",
        words: &["inner_html"],
        apart_from: &[
            "src/ui/parts/chart_card.rs",
            "src/ui/screens/handover.rs",
            "src/ui/screens/weight.rs",
        ],
    },
    Rule {
        folder: "src/ui/",
        words: &["set_inner_html"],
        apart_from: &[],
    },
];

const fn below(folder: &'static str, words: &'static [&'static str]) -> Rule {
    Rule {
        folder,
        words,
        apart_from: &[],
    }
}

/// A source text without comments and unit tests: the code with its string literals emptied, and the
/// literals apart, each with where it stood in the code.
struct Source {
    code: String,
    literals: Vec<(usize, String)>,
}

impl Source {
    fn read(text: &str) -> Self {
        let mut source = Self {
            code: String::new(),
            literals: Vec::new(),
        };
        let mut rest = text;
        while let Some(first) = rest.chars().next() {
            let is_in_name = source.code.ends_with(is_name);
            let taken = if rest.starts_with("//") {
                rest.find('\n').unwrap_or(rest.len())
            } else if rest.starts_with("/*") {
                source.skip(rest, block_comment(rest))
            } else if let Some((open, close)) = string_marks(rest, is_in_name) {
                source.literal(rest, open, &close)
            } else if let Some(length) = char_literal(rest) {
                source.code.push_str("' '");
                length
            } else {
                source.code.push(first);
                first.len_utf8()
            };
            rest = rest.get(taken..).unwrap();
        }
        source.cut_tests();
        source
    }

    /// Keeps the line ends of what is skipped, so that line numbers stay right.
    fn skip(&mut self, rest: &str, length: usize) -> usize {
        let skipped = rest.get(..length).unwrap();
        let ends = skipped.chars().filter(|character| *character == '\n');
        self.code.extend(ends);
        length
    }

    fn literal(&mut self, rest: &str, open: usize, close: &str) -> usize {
        let inside = rest.get(open..).unwrap();
        let mut length = 0;
        let mut is_escaped = false;
        for (at, character) in inside.char_indices() {
            length = at;
            if !is_escaped && inside.get(at..).unwrap().starts_with(close) {
                break;
            }
            // Only a string that opens with one mark, not a raw one, knows escapes.
            is_escaped = open == 1 && !is_escaped && character == '\\';
        }
        let content = inside.get(..length).unwrap();
        self.literals.push((self.code.len(), content.to_owned()));
        self.code.push('"');
        self.skip(content, content.len());
        self.code.push('"');
        open + length + close.len()
    }

    fn cut_tests(&mut self) {
        if let Some(at) = self.code.find("#[cfg(test)]\nmod tests {") {
            self.code.truncate(at);
            self.literals.retain(|(place, _)| *place < at);
        }
    }

    fn line_of(&self, place: usize) -> usize {
        1 + self.code.get(..place).unwrap().matches('\n').count()
    }

    /// Lines on which a word stands by itself, not as part of a longer name.
    fn lines_naming(&self, word: &str) -> Vec<usize> {
        let is_alone = |place: usize| {
            let before = self.code.get(..place).unwrap();
            let after = self.code.get(place + word.len()..).unwrap();
            let joins_before = word.starts_with(is_name) && before.ends_with(is_name);
            let joins_after = word.ends_with(is_name) && after.starts_with(is_name);
            !joins_before && !joins_after
        };
        let found = self.code.match_indices(word).map(|(place, _)| place);
        found
            .filter(|place| is_alone(*place))
            .map(|place| self.line_of(place))
            .collect()
    }

    /// Words for users that stand in the code of a screen: literals that hold two words in a row, unless
    /// they are the value of an attribute that nobody reads, a selector, a line for the console, or the
    /// reason of a lint; and text between two tags, quoted or not.
    fn sentences(&self) -> Vec<(usize, String)> {
        let mut found = Vec::new();
        for (place, literal) in &self.literals {
            if has_two_words(literal) && !self.is_for_machines(*place) {
                found.push((self.line_of(*place), literal.clone()));
            }
        }
        for (place, _) in self.code.match_indices("</") {
            let before = self.code.get(..place).unwrap().trim_end();
            let start = before.rfind(['>', '}']).map_or(0, |at| at + 1);
            let text = before.get(start..).unwrap();
            let literal = self
                .literals
                .iter()
                .find(|(at, _)| (start..place).contains(at) && before.ends_with('"'));
            let text = literal.map_or(text, |(_, literal)| literal);
            if text.chars().filter(|letter| letter.is_alphabetic()).count() >= 2 {
                found.push((self.line_of(place), text.trim().to_owned()));
            }
        }
        found
    }

    fn is_for_machines(&self, place: usize) -> bool {
        let before = self.code.get(..place).unwrap();
        if let Some(before) = before.strip_suffix('=') {
            let start = before.rfind(|letter| !is_name(letter) && letter != '-');
            let name = before.get(start.map_or(0, |at| at + 1)..).unwrap();
            return UNREAD_ATTRIBUTES.split(' ').any(|unread| unread == name);
        }
        ["query_selector(", "leptos::logging::warn!(", "reason = "]
            .iter()
            .any(|before_it| before.ends_with(before_it))
    }
}

fn is_name(character: char) -> bool {
    character.is_alphanumeric() || character == '_'
}

fn has_two_words(text: &str) -> bool {
    let letters: Vec<char> = text.chars().collect();
    letters.windows(4).any(|window| {
        let [first, second, space, next] = window else {
            return false;
        };
        first.is_alphabetic() && second.is_alphabetic() && *space == ' ' && next.is_alphabetic()
    })
}

fn block_comment(rest: &str) -> usize {
    let mut depth = 0_u32;
    for (at, _) in rest.char_indices() {
        let here = rest.get(at..).unwrap();
        if here.starts_with("/*") {
            depth += 1;
        } else if here.starts_with("*/") {
            depth -= 1;
            if depth == 0 {
                return at + 2;
            }
        }
    }
    rest.len()
}

/// The length of a string's opening mark, and its closing mark; `None` when no string opens here.
fn string_marks(rest: &str, is_in_name: bool) -> Option<(usize, String)> {
    if rest.starts_with('"') {
        return Some((1, "\"".to_owned()));
    }
    let marks = rest.strip_prefix('r').filter(|_| !is_in_name)?;
    let hashes = marks.chars().take_while(|mark| *mark == '#').count();
    let opens = marks.get(hashes..)?.starts_with('"');
    opens.then(|| (hashes + 2, format!("\"{}", "#".repeat(hashes))))
}

/// The length of a character literal; `None` for a lifetime and for anything else.
fn char_literal(rest: &str) -> Option<usize> {
    let inside = rest.strip_prefix('\'')?;
    if let Some(escape) = inside.strip_prefix('\\') {
        let first = escape.chars().next()?.len_utf8();
        return Some(2 + first + escape.get(first..)?.find('\'')? + 1);
    }
    let length = inside.chars().next()?.len_utf8();
    let closes = inside.get(length..)?.starts_with('\'');
    closes.then_some(length + 2)
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file below `folder` with its path from the top of the repository.
fn files_below(folder: &Path) -> Vec<(String, Source)> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(files_below(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            let name = path.strip_prefix(root()).unwrap();
            let name = name.to_str().unwrap().replace('\\', "/");
            files.push((name, Source::read(&fs::read_to_string(&path).unwrap())));
        }
    }
    files
}

fn broken(rules: &[Rule], name: &str, source: &Source) -> Vec<String> {
    let mut found = Vec::new();
    for rule in rules {
        if !name.starts_with(rule.folder) || rule.apart_from.contains(&name) {
            continue;
        }
        for word in rule.words {
            let lines = source.lines_naming(word);
            found.extend(lines.iter().map(|line| format!("{name}:{line}: {word}")));
        }
    }
    found
}

#[test]
fn no_folder_names_what_it_must_not() {
    let files = files_below(&root().join("src"));
    for folder in [
        "src/domain/",
        "src/store/",
        "src/share/",
        "src/words/",
        "src/ui/",
    ] {
        assert!(
            files.iter().any(|(name, _)| name.starts_with(folder)),
            "{folder}"
        );
    }
    let found: Vec<String> = files
        .iter()
        .flat_map(|(name, source)| broken(RULES, name, source))
        .collect();
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn every_exception_is_still_needed() {
    for rule in RULES {
        for name in rule.apart_from {
            let text = fs::read_to_string(root().join(name)).expect(name);
            let source = Source::read(&text);
            let is_needed = rule
                .words
                .iter()
                .any(|word| !source.lines_naming(word).is_empty());
            assert!(is_needed, "{name} names none of {:?} any more", rule.words);
        }
    }
}

#[test]
fn screens_hold_no_words_of_their_own() {
    let mut found = Vec::new();
    for (name, source) in files_below(&root().join("src/ui")) {
        for (line, text) in source.sentences() {
            found.push(format!("{name}:{line}: {text:?} belongs into src/words/"));
        }
    }
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

/// What leaves the phone gets its words from `src/words/` too. Errors are for logs; markup is read without
/// what stands in angle brackets, and a style sheet by its braces.
#[test]
fn exports_hold_no_words_of_their_own() {
    let mut found = Vec::new();
    for (name, source) in files_below(&root().join("src/share")) {
        for (place, literal) in &source.literals {
            let is_for_logs = source.code.get(..*place).unwrap().ends_with("#[error(");
            let is_reason = source.code.get(..*place).unwrap().ends_with("reason = ");
            let is_style = literal.contains("@media");
            if !is_for_logs && !is_reason && !is_style && has_two_words(&without_tags(literal)) {
                let line = source.line_of(*place);
                found.push(format!(
                    "{name}:{line}: {literal:?} belongs into src/words/"
                ));
            }
        }
    }
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

/// A text without what stands in angle brackets, also where only one of them is in it.
fn without_tags(text: &str) -> String {
    let text = text.split_once("\">").map_or(
        text,
        |(before, after)| if before.contains('<') { text } else { after },
    );
    let mut parts = text.split('<');
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |outside, part| {
        outside + part.split_once('>').map_or("", |(_, after)| after)
    })
}

#[test]
fn a_sentence_in_markup_is_seen_and_the_markup_is_not() {
    assert_eq!(
        without_tags("<p class=\"a long name\">Feed it</p><td rowspan=\""),
        "Feed it"
    );
    assert_eq!(without_tags("long name\">Feed <b>now</b>"), "Feed now");
}

#[test]
fn the_scanner_sees_words_in_code_and_not_in_comments_texts_or_tests() {
    let text = "//! leptos\nuse leptos::prelude; /* serde\n/* serde */ */\nlet a = \"serde \\\" serde\";\n\
        let b = r#\"serde \" serde\"#; let c = '\"'; let deserde = 1; // serde\nlet d: &'a str = serde::x;\n\
        #[cfg(test)]\nmod tests {\n    use serde;\n}\n";
    let source = Source::read(text);
    assert_eq!(source.lines_naming("leptos"), [2]);
    assert_eq!(source.lines_naming("serde"), [6]);
    let rules = [below("src/domain/", &["serde", "leptos"])];
    let found = broken(&rules, "src/domain/made_up.rs", &source);
    let wanted = [
        "src/domain/made_up.rs:6: serde",
        "src/domain/made_up.rs:2: leptos",
    ];
    assert_eq!(found, wanted);
    assert!(broken(&rules, "src/store/made_up.rs", &source).is_empty());
}

#[test]
fn the_scanner_sees_sentences_and_not_attributes() {
    let text = "view! {\n<p class=\"a long name\" title=\"Read this now\">{say.text()}</p>\n\
        <p>\"Late\"</p>\n<b>Feed it now</b>\n<path d=\"M ab cd\" /> <i>{move || x}</i>\n}\nlet a = \"Weigh it.\";";
    let found = Source::read(text).sentences();
    let wanted = [
        (2, "Read this now"),
        (7, "Weigh it."),
        (3, "Late"),
        (4, "Feed it now"),
    ];
    assert_eq!(found, wanted.map(|(line, text)| (line, text.to_owned())));
}

/// The rooms of the domain, lowest first: a room names only rooms before it.
const ROOMS: [&str; 13] = [
    "quantity",
    "time",
    "statistics",
    "plan",
    "journal",
    "weight",
    "homecoming",
    "formula",
    "feeding",
    "warnings",
    "weaning",
    "instruction",
    "outlook",
];

/// Circles that are still there: their files, and why.
const KNOWN_CIRCLES: &[(&[&str], &str)] = &[];

/// The file that a path from `crate::` leads into; `files` are paths from the top of the repository.
fn file_of(path: &str, files: &BTreeSet<String>) -> Option<String> {
    let mut path = path.to_owned();
    loop {
        let inside = path.replace("::", "/");
        let candidates = [format!("src/{inside}.rs"), format!("src/{inside}/mod.rs")];
        if let Some(file) = candidates.into_iter().find(|file| files.contains(file)) {
            return Some(file);
        }
        path = path.rsplit_once("::")?.0.to_owned();
    }
}

/// Every path from `crate::` in a code, groups in braces written out; without `crate::` itself.
fn paths_in(code: &str) -> Vec<String> {
    let mut paths = Vec::new();
    for rest in code.split("crate::").skip(1) {
        let end = rest.find(|letter| !is_name(letter) && letter != ':');
        let (head, tail) = rest.split_at(end.unwrap_or(rest.len()));
        let group = tail.strip_prefix('{').and_then(|tail| tail.split_once('}'));
        match group.filter(|_| head.ends_with("::")) {
            Some((names, _)) => {
                let names = names.split(',').map(str::trim);
                paths.extend(names.map(|name| format!("{head}{name}")));
            }
            None => paths.push(head.to_owned()),
        }
    }
    paths
}

/// Which file names which. A `mod` line is no arrow, so a parent may name its children.
fn arrows(sources: &[(String, Source)]) -> BTreeMap<String, BTreeSet<String>> {
    let files: BTreeSet<String> = sources.iter().map(|(name, _)| name.clone()).collect();
    let named = |(name, source): &(String, Source)| {
        let paths = paths_in(&source.code).into_iter();
        let found = paths.filter_map(|path| file_of(&path, &files));
        (name.clone(), found.filter(|file| file != name).collect())
    };
    sources.iter().map(named).collect()
}

/// Files that lead back to themselves, those of one circle together.
fn circles(arrows: &BTreeMap<String, BTreeSet<String>>) -> BTreeSet<BTreeSet<String>> {
    let reached = |from: &String| {
        let mut seen = BTreeSet::new();
        let mut open = vec![from];
        while let Some(file) = open.pop() {
            let next = arrows.get(file).into_iter().flatten();
            open.extend(next.filter(|next| seen.insert((*next).clone())));
        }
        seen
    };
    let reached: BTreeMap<&String, BTreeSet<String>> =
        arrows.keys().map(|file| (file, reached(file))).collect();
    let both_ways =
        |one: &String, other: &String| reached[one].contains(other) && reached[other].contains(one);
    let circle_of = |file: &String| -> BTreeSet<String> {
        let others = arrows.keys().filter(|other| both_ways(file, other));
        others.cloned().collect()
    };
    let all = arrows.keys().map(circle_of);
    all.filter(|circle| !circle.is_empty()).collect()
}

#[test]
fn no_file_leads_back_to_itself() {
    let found = circles(&arrows(&files_below(&root().join("src"))));
    let known: BTreeSet<BTreeSet<String>> = KNOWN_CIRCLES
        .iter()
        .map(|(files, _)| files.iter().map(|file| (*file).to_owned()).collect())
        .collect();
    let new: Vec<_> = found.difference(&known).collect();
    assert!(
        new.is_empty(),
        "files that name one another in a circle: {new:#?}"
    );
    let gone: Vec<_> = known.difference(&found).collect();
    assert!(gone.is_empty(), "no circle any more: {gone:#?}");
}

#[test]
fn a_room_of_the_domain_names_only_rooms_before_it() {
    let room_of = |path: &str| {
        let room = path.strip_prefix("src/domain/")?.split(['/', '.']).next()?;
        ROOMS.iter().position(|name| *name == room)
    };
    let mut found = Vec::new();
    for (file, named) in arrows(&files_below(&root().join("src/domain"))) {
        if file == "src/domain/mod.rs" {
            continue;
        }
        let room = room_of(&file).unwrap_or_else(|| panic!("{file} stands in no room"));
        let above = named.iter().filter(|named| room_of(named) > Some(room));
        found.extend(above.map(|named| format!("{file} names {named}")));
    }
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn a_circle_is_seen_through_groups_and_inline_paths_and_a_chain_is_none() {
    let source = |name: &str, text: &str| (name.to_owned(), Source::read(text));
    let sources = [
        source("src/a/mod.rs", "use crate::b::f;"),
        source("src/b.rs", "use crate::c::{d, x}; // crate::e"),
        source("src/c/d.rs", "fn g() { crate::a::h(); }"),
        source("src/e.rs", "use crate::b::f;\nuse crate::e::g;"),
    ];
    let circle = ["src/a/mod.rs", "src/b.rs", "src/c/d.rs"].map(str::to_owned);
    let found = circles(&arrows(&sources));
    assert_eq!(found, BTreeSet::from([BTreeSet::from(circle)]));
}
