//! Every text of `src/words`, English and Spanish side by side, read from the source itself, so that no
//! list of them is kept by hand.

use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

/// A text as the source writes it, in both languages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Found {
    /// The file below `src/words`, such as `weaning/mod.rs`.
    pub(crate) file: String,
    /// The line of the English text, from 1.
    pub(crate) line: usize,
    /// The name before it: the row of `texts!`, else the last arm or function.
    pub(crate) name: String,
    /// The English texts: one, or all of a sentence's forms.
    pub(crate) english: Vec<String>,
    /// The Spanish ones.
    pub(crate) spanish: Vec<String>,
}

/// A piece of Rust that matters here.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Token {
    Word(String),
    Text(String),
    Sign(char),
}

/// Every text a person can meet: all files below `src/words`, in the order of their names.
///
/// # Errors
///
/// Fails when a file cannot be read.
pub(crate) fn all_texts() -> Result<Vec<Found>, Box<dyn Error>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/words");
    let mut files = Vec::new();
    collect(&root, &mut files)?;
    files.sort();
    let mut found = Vec::new();
    for path in files {
        let source = fs::read_to_string(&path)?;
        let file = path.strip_prefix(&root)?.display().to_string();
        let before_tests = source.split("#[cfg(test)]").next().unwrap_or_default();
        if file.ends_with("spanish.rs") {
            continue;
        }
        if file.ends_with("english.rs") {
            let other = fs::read_to_string(path.with_file_name("spanish.rs"))?;
            found.extend(cards(&file, before_tests, &other));
        } else {
            found.extend(texts_of(&file, before_tests));
        }
    }
    Ok(found)
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) -> Result<(), Box<dyn Error>> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            collect(&path, files)?;
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            files.push(path);
        }
    }
    Ok(())
}

/// The tokens of a source with the line each begins in; comments and marks of lifetimes left out.
fn tokens(source: &str) -> Vec<(usize, Token)> {
    let mut tokens = Vec::new();
    let mut line = 1;
    let mut letters = source.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '\n' => line += 1,
            '/' if letters.peek() == Some(&'/') => {
                while letters.next_if(|next| *next != '\n').is_some() {}
            }
            '\'' => {
                // A character in quotes; a lifetime has no second quote.
                let mut ahead = letters.clone();
                let first = ahead.next();
                if first == Some('\\') {
                    while letters.next_if(|next| *next != '\'').is_some() {}
                    letters.next();
                } else if ahead.next() == Some('\'') {
                    letters.next();
                    letters.next();
                }
            }
            '"' => {
                let start = line;
                let mut text = String::new();
                while let Some(letter) = letters.next() {
                    match letter {
                        '"' => break,
                        '\\' => escaped(&mut letters, &mut text, &mut line),
                        _ => {
                            line += usize::from(letter == '\n');
                            text.push(letter);
                        }
                    }
                }
                tokens.push((start, Token::Text(text)));
            }
            _ if letter.is_alphanumeric() || letter == '_' => {
                let mut word = String::from(letter);
                while let Some(next) =
                    letters.next_if(|next| next.is_alphanumeric() || *next == '_')
                {
                    word.push(next);
                }
                tokens.push((line, Token::Word(word)));
            }
            _ if letter.is_whitespace() => {}
            _ => tokens.push((line, Token::Sign(letter))),
        }
    }
    tokens
}

/// What follows a backslash in a text (Rust reference, "Tokens").
fn escaped(
    letters: &mut std::iter::Peekable<std::str::Chars<'_>>,
    text: &mut String,
    line: &mut usize,
) {
    match letters.next() {
        Some('n') => text.push('\n'),
        Some('\n') => {
            *line += 1;
            while let Some(blank) = letters.next_if(|next| next.is_whitespace()) {
                *line += usize::from(blank == '\n');
            }
        }
        Some('u') => {
            let digits: String = letters
                .by_ref()
                .take_while(|next| *next != '}')
                .filter(char::is_ascii_hexdigit)
                .collect();
            let code = u32::from_str_radix(&digits, 16).ok();
            text.extend(code.and_then(char::from_u32));
        }
        Some(other) => text.push(other),
        None => {}
    }
}

fn is_for_people(text: &str) -> bool {
    let mut plain = text.to_owned();
    while let Some((before, after)) = plain.split_once('{') {
        let rest = after.split_once('}').map_or("", |(_, rest)| rest);
        plain = format!("{before} {rest}");
    }
    let letters = plain.chars().filter(|letter| letter.is_alphabetic());
    letters.count() >= 2
}

/// The language whose texts follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    English,
    Spanish,
}

#[expect(clippy::too_many_lines, reason = "one arm a kind of token")]
fn texts_of(file: &str, source: &str) -> Vec<Found> {
    let tokens = tokens(source);
    let mut found: Vec<Found> = Vec::new();
    let (mut function, mut arm) = (String::new(), String::new());
    // A sentence in the arms of a match: where its function's forms are gathered.
    let mut forms: Option<Found> = None;
    let mut side = Side::English;
    // In a match whose English arms have the guard `if is_english`, the arms without it are Spanish.
    let (mut is_guarded, mut is_named) = (false, false);
    let mut at = 0;
    while let Some((line, token)) = tokens.get(at) {
        let word = |step: usize| match tokens.get(at + step) {
            Some((_, Token::Word(word))) => Some(word.as_str()),
            _ => None,
        };
        let sign = |step: usize, wanted: char| matches!(tokens.get(at + step), Some((_, Token::Sign(sign))) if *sign == wanted);
        let text = |step: usize| match tokens.get(at + step) {
            Some((_, Token::Text(text))) => Some(text.clone()),
            _ => None,
        };
        match token {
            Token::Word(name) if name == "fn" => {
                found.extend(forms.take());
                word(1).unwrap_or_default().clone_into(&mut function);
                arm.clear();
                side = Side::English;
                is_guarded = false;
            }
            Token::Word(name) if sign(1, ':') && sign(2, ':') => match (name.as_str(), word(3)) {
                ("Language" | "Self", Some("English")) => {
                    (side, is_named) = (Side::English, true);
                }
                ("Language" | "Self", Some("Spanish")) => {
                    (side, is_named) = (Side::Spanish, true);
                }
                (_, Some(variant)) => {
                    arm = format!("{name}::{variant}");
                }
                (_, None) => {}
            },
            Token::Word(name) if name == "is_english" => {
                is_guarded = true;
                (side, is_named) = (Side::English, true);
            }
            Token::Sign('=') if sign(1, '>') && is_guarded => {
                if !is_named {
                    side = Side::Spanish;
                }
                is_named = false;
            }
            // `let spanish = match …`; and the reason of a lint is no text.
            Token::Word(name) if name == "spanish" && sign(1, '=') => side = Side::Spanish,
            Token::Word(name) if name == "reason" && sign(1, '=') => at += 2,
            Token::Text(english) => {
                let row = at.checked_sub(2).and_then(|at| tokens.get(at));
                let next = text(2).filter(|_| sign(1, ','));
                let before = |back: usize| at.checked_sub(back).and_then(|at| tokens.get(at));
                let is_call = matches!(before(2), Some((_, Token::Word(name))) if name == "pick");
                let is_in_list = matches!(before(1), Some((_, Token::Sign('[' | ':'))));
                let is_pair = (is_call || is_in_list)
                    && next.is_some()
                    && (sign(3, ')')
                        || sign(3, ']')
                        || sign(3, ';')
                        || (sign(3, ',') && (sign(4, ')') || sign(4, ']'))));
                if let Some(spanish) = next.filter(|_| is_pair) {
                    let is_row = matches!(row, Some((_, Token::Word(_)))) && sign(3, ';');
                    let name = match row {
                        Some((_, Token::Word(name))) if is_row => name.clone(),
                        _ if arm.is_empty() => function.clone(),
                        _ => format!("{function} {arm}"),
                    };
                    if is_for_people(english) || is_for_people(&spanish) {
                        found.push(Found {
                            file: file.to_owned(),
                            line: *line,
                            name,
                            english: vec![english.clone()],
                            spanish: vec![spanish],
                        });
                    }
                    at += 3;
                    continue;
                }
                // Three of a rule: English in the first list, Spanish in the second.
                let is_list =
                    sign(1, ',') && text(2).is_some() && sign(3, ',') && text(4).is_some();
                if is_list
                    && file.ends_with("rules.rs")
                    && let Some(step) = (7..12).find(|step| text(*step).is_some())
                {
                    for third in [0, 2, 4] {
                        found.push(Found {
                            file: file.to_owned(),
                            line: *line,
                            name: arm.clone(),
                            english: text(third).into_iter().collect(),
                            spanish: text(step + third).into_iter().collect(),
                        });
                    }
                    at += step + 5;
                    continue;
                }
                if is_for_people(english) && !function.is_empty() {
                    let forms = forms.get_or_insert_with(|| Found {
                        file: file.to_owned(),
                        line: *line,
                        name: function.clone(),
                        english: Vec::new(),
                        spanish: Vec::new(),
                    });
                    match side {
                        Side::English => forms.english.push(english.clone()),
                        Side::Spanish => forms.spanish.push(english.clone()),
                    }
                }
            }
            Token::Word(_) | Token::Sign(_) => {}
        }
        at += 1;
    }
    found.extend(forms);
    // Units and the grammar of times, without a language or in one only.
    found.retain(|text| file != "format.rs" || text.english.len() == text.spanish.len());
    found.retain(|text| !(SAME_IN_BOTH.contains(&text.name.as_str()) && text.spanish.is_empty()));
    found
}

/// Functions whose text is the same in every language.
const SAME_IN_BOTH: [&str; 2] = ["clock_minutes", "from_tag"];

/// The lines of each card in the two files of a folder, without the words it is searched by.
fn cards(file: &str, english: &str, spanish: &str) -> Vec<Found> {
    let [english, spanish] = [english, spanish].map(lines_of_cards);
    let spanish_of = |name: &str| {
        let own = spanish.iter().find(|(_, card, _)| card == name);
        own.map(|(_, _, lines)| lines.clone()).unwrap_or_default()
    };
    let cards = english.iter().map(|(line, name, lines)| Found {
        file: file.to_owned(),
        line: *line,
        name: name.clone(),
        english: lines.clone(),
        spanish: spanish_of(name),
    });
    cards.collect()
}

fn lines_of_cards(source: &str) -> Vec<(usize, String, Vec<String>)> {
    let tokens = tokens(source);
    let mut cards: Vec<(usize, String, Vec<String>)> = Vec::new();
    let mut is_search = false;
    for (at, (line, token)) in tokens.iter().enumerate() {
        match token {
            Token::Word(word) if word == "Card" => {
                if let Some((_, Token::Word(card))) = tokens.get(at + 3) {
                    cards.push((*line, card.clone(), Vec::new()));
                }
            }
            Token::Word(word) => is_search = word == "search",
            Token::Text(text) if !is_search => {
                if let Some((_, _, lines)) = cards.last_mut() {
                    lines.push(text.clone());
                }
            }
            Token::Text(_) | Token::Sign(_) => {}
        }
    }
    cards.retain(|(_, _, lines)| !lines.is_empty());
    cards
}
