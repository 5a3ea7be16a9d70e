//! A sentence with names in it, each kept apart so that its direction of writing turns no other word.

use leptos::prelude::*;

/// The sentence with each `{word}` of it replaced by the name given for that word.
pub fn with_names(sentence: &'static str, names: &[(&str, String)]) -> Vec<AnyView> {
    let mut parts = Vec::new();
    let mut rest = sentence;
    while let Some((before, word, after)) = next_name(rest) {
        parts.push(before.into_any());
        let name = names.iter().find(|(known, _)| *known == word);
        let name = name.map(|(_, name)| name.clone()).unwrap_or_default();
        parts.push(view! { <bdi>{name}</bdi> }.into_any());
        rest = after;
    }
    parts.push(rest.into_any());
    parts
}

fn next_name(text: &'static str) -> Option<(&'static str, &'static str, &'static str)> {
    let (before, rest) = text.split_once('{')?;
    let (word, after) = rest.split_once('}')?;
    Some((before, word, after))
}
