//! What was typed of a new chick before it was kept, as text, one field a line, so that a call, a locked screen or
//! a reload loses nothing. It is no record: nothing of the journal depends on it.
//!
//! Form: `field value`, the value without line ends. A line without a value is left out.

use std::collections::BTreeMap;

/// Longest draft that is kept, in fields and in characters a field. Ours: more than any form has.
const MOST: (usize, usize) = (60, 400);

/// What was typed, by field.
pub type Draft = BTreeMap<String, String>;

/// The draft of a text.
pub fn draft_from_text(text: &str) -> Draft {
    let lines = text.lines().filter_map(|line| line.split_once(' '));
    let fields = lines.map(|(field, value)| (field.to_owned(), short(value)));
    let mut draft = Draft::new();
    draft.extend(fields.take(MOST.0));
    draft
}

/// The draft as text; what is empty is left out.
pub fn draft_to_text(fields: &Draft) -> String {
    let typed = fields.iter().map(|(field, value)| (field, short(value)));
    let typed = typed.filter(|(_, value)| !value.is_empty());
    let lines = typed.map(|(field, value)| format!("{field} {value}"));
    lines.collect::<Vec<_>>().join("\n")
}

fn short(value: &str) -> String {
    let plain = value.chars().filter(|letter| !letter.is_control());
    plain.take(MOST.1).collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::store::draft_text::*;

    fn draft<const N: usize>(fields: [(&str, &str); N]) -> Draft {
        fields
            .map(|(field, value)| (field.to_owned(), value.to_owned()))
            .into()
    }

    #[test]
    fn what_was_typed_comes_back_as_it_was() {
        let fields = draft([
            ("name", "Ember II"),
            ("hatched", ""),
            ("breeder", "Ana 🦜 & sons"),
        ]);
        let draft = draft_from_text(&draft_to_text(&fields));
        assert_eq!(draft.get("name").map(String::as_str), Some("Ember II"));
        assert_eq!(
            draft.get("breeder").map(String::as_str),
            Some("Ana 🦜 & sons")
        );
        assert_eq!(draft.get("hatched"), None);
    }

    #[test]
    fn a_line_end_in_a_field_makes_no_other_field() {
        let text = draft_to_text(&draft([("name", "Ember\nhatched 2026-01-01")]));
        assert_eq!(draft_from_text(&text).len(), 1);
    }

    proptest! {
        #[test]
        fn any_text_is_read_without_a_panic(text in ".{0,200}") {
            let draft = draft_from_text(&text);
            prop_assert!(draft.len() <= MOST.0);
        }
    }
}
