//! The page before the app says what the app says, in both languages, and so does the way to the records
//! when the app does not run. Their words stand in `src/index.html` and `public/`, since the app is not
//! there to say them.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

use std::fs;
use std::path::{Path, PathBuf};

use perchlight::words::Language;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_owned()
}

fn page() -> String {
    fs::read_to_string(root().join("src/index.html")).expect("the page is there")
}

/// The longest text of the first screen stands on the page from the start: nothing jumps when the
/// program arrives, and who waits for it reads the caution.
#[test]
fn the_page_before_the_app_holds_the_whole_caution_in_every_language() {
    let page = page();
    assert!(page.contains(Language::English.caution_text()));
    let spanish = Language::Spanish.caution_text().replace('"', "&quot;");
    assert!(page.contains(&spanish));
}

fn has_letters(text: &str) -> bool {
    text.chars().filter(|letter| letter.is_alphabetic()).count() >= 2
}

/// Texts of a page's body that have no Spanish beside them: neither as `data-es` of their own tag, nor as
/// a paragraph of the same `noscript` in Spanish.
fn without_spanish(page: &str) -> Vec<String> {
    let (_, body) = page.split_once("<body>").unwrap();
    let mut alone = Vec::new();
    let (mut english, mut spanish) = (0, 0);
    let mut is_noscript = false;
    for part in body.split('<').skip(1) {
        let (tag, text) = part.split_once('>').unwrap();
        is_noscript = (is_noscript || tag == "noscript") && tag != "/noscript";
        let text = text.trim();
        if !has_letters(text) || text == "Perchlight" {
            continue;
        }
        let translated = tag.split_once("data-es=\"").map_or("", |(_, after)| after);
        if is_noscript {
            let count = if tag.contains("lang=\"es\"") {
                &mut spanish
            } else {
                &mut english
            };
            *count += 1;
        } else if !has_letters(translated.split('"').next().unwrap()) {
            alone.push(text.to_owned());
        }
        if tag.contains("aria-label=") || tag.contains("placeholder=") {
            alone.push(tag.to_owned());
        }
    }
    if english != spanish {
        alone.push(format!("noscript: {english} English, {spanish} Spanish"));
    }
    alone
}

#[test]
fn every_text_of_the_page_before_the_app_has_its_spanish() {
    assert_eq!(without_spanish(&page()), Vec::<String>::new());
}

#[test]
fn a_text_without_its_spanish_is_found() {
    let page = "<body><h1>Perchlight</h1><p data-es=\"Sí, claro\">Yes</p><p data-es=\"\">No</p>\
        <noscript><p>On</p></noscript><button>Late</button></body>";
    let wanted = ["No", "Late", "noscript: 1 English, 0 Spanish"];
    assert_eq!(without_spanish(page), wanted);
}

/// Sentences of a script that are not one of the two arguments of `say`, nor for the console.
fn said_in_one_language(script: &str) -> Vec<String> {
    let mut found = Vec::new();
    // The name before each open bracket, and how many texts stand in it.
    let mut calls: Vec<(String, usize)> = Vec::new();
    let mut name = String::new();
    let mut rest = script;
    while let Some(first) = rest.chars().next() {
        let mut length = first.len_utf8();
        match first {
            '/' if rest.starts_with("//") => length = rest.find('\n').unwrap_or(rest.len()),
            '\'' | '`' => {
                let inside = rest.get(1..).unwrap();
                let text = inside.get(..inside.find(first).unwrap()).unwrap();
                length = text.len() + 2;
                let (call, count) = calls
                    .last_mut()
                    .map_or(("", None), |(call, count)| (call.as_str(), Some(count)));
                if let Some(count) = count {
                    *count += 1;
                }
                let mut fixed = text.split("${");
                let start = fixed.next().unwrap_or_default().to_owned();
                let fixed = fixed.fold(start, |fixed, part| {
                    fixed + part.split_once('}').map_or("", |(_, after)| after)
                });
                let is_sentence = fixed.split(' ').filter(|word| has_letters(word)).count() >= 2;
                let is_code = text.contains('[') || text.contains("module");
                if is_sentence && !is_code && call != "say" && call != "warn" {
                    found.push(text.to_owned());
                }
            }
            '(' => calls.push((name.clone(), 0)),
            ')' => {
                if let Some((call, count)) = calls.pop()
                    && call == "say"
                    && count != 2
                {
                    found.push(format!("say with {count} texts"));
                }
            }
            _ => {}
        }
        if first.is_alphanumeric() {
            name.push(first);
        } else {
            name.clear();
        }
        rest = rest.get(length..).unwrap();
    }
    found
}

#[test]
fn every_sentence_of_the_scripts_outside_the_app_is_said_in_both_languages() {
    let mut read = 0;
    for entry in fs::read_dir(root().join("public")).expect("the folder is there") {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|extension| extension == "js") {
            let script = fs::read_to_string(&path).unwrap();
            let found = said_in_one_language(&script);
            assert!(found.is_empty(), "{}: {found:?}", path.display());
            read += 1;
        }
    }
    assert!(read >= 5, "{read} scripts");
}

#[test]
fn a_sentence_in_one_language_is_found() {
    let script = "// 'not this one'\nconsole.warn('nor this one', x);\nsay('Not now.', `Ahora no, ${x}.`);\n\
        show('Try it again', 'late'); say('Only one');\nconst a = `As of ${when}`;";
    let wanted = ["Try it again", "say with 1 texts", "As of ${when}"];
    assert_eq!(said_in_one_language(script), wanted);
}
