//! Text made safe to stand in HTML, SVG and the data block of a page.

/// Text for the content of an element or for a quoted attribute, in HTML and in XML.
///
/// Characters that XML 1.0 has no place for (most control characters) become U+FFFD, so that a
/// pasted one cannot make a whole picture unreadable.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::share::markup::escape("Pip & \"Kiwi\" <b>"),
///     "Pip &amp; &quot;Kiwi&quot; &lt;b&gt;");
/// ```
///
/// Source: XML 1.0 (fifth edition), sections 2.2 and 2.4; HTML Living Standard, "Escaping a
/// string". The apostrophe is `&#39;`, which both know.
pub fn escape(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\t' | '\n' | '\r' => safe.push(character),
            '\0'..=' ' if character != ' ' => safe.push(char::REPLACEMENT_CHARACTER),
            '\u{FFFE}' | '\u{FFFF}' => safe.push(char::REPLACEMENT_CHARACTER),
            _ => safe.push(character),
        }
    }
    safe
}

/// JSON for a `<script type="application/json">` block: the same JSON, in which no text can end
/// the block or open a comment.
///
/// `<` stands in JSON only within strings, where its escape means the same.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::share::markup::json_in_script(r#"["</script>"]"#),
///     r#"["\u003c/script>"]"#);
/// ```
///
/// Source: HTML Living Standard, "Restrictions for contents of script elements", which
/// recommends this for `<!--`, `<script` and `</script`.
pub fn json_in_script(json: &str) -> String {
    json.replace('<', "\\u003c")
}

#[cfg(test)]
mod tests {
    use crate::share::markup::{escape, json_in_script};

    #[test]
    fn the_five_characters_of_markup_are_escaped_and_no_others() {
        assert_eq!(escape("a'b"), "a&#39;b");
        assert_eq!(escape("&amp;"), "&amp;amp;");
        assert_eq!(escape("37½ °C 🦜\r\n\té"), "37½ °C 🦜\r\n\té");
        assert_eq!(escape(""), "");
    }

    #[test]
    fn characters_that_xml_refuses_are_replaced() {
        assert_eq!(
            escape("a\0b\u{1F}c\u{FFFE} "),
            "a\u{FFFD}b\u{FFFD}c\u{FFFD} "
        );
    }

    #[test]
    fn json_for_a_page_means_the_same_json() {
        let value = serde_json::json!({"note": "<!-- <script> </script> & \\u003c"});
        let text = json_in_script(&value.to_string());
        assert!(!text.contains('<'));
        let again: serde_json::Value = serde_json::from_str(&text).unwrap();
        assert_eq!(again, value);
    }
}
