//! Reading JSON (RFC 8259) as far as the saved form needs it: whole numbers, words, lists, objects.
//!
//! Written for the start of the app, which reads every entry kept: texts without escapes are borrowed,
//! the fields of an object stand in one list, and nothing is built beyond the limits of the caller. The
//! tests compare it with another reader.

use std::borrow::Cow;

use crate::store::saved::SavedError;

/// A value, borrowed from the text where it can be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Json<'text> {
    /// `null`.
    Null,
    /// `true` or `false`.
    Flag(bool),
    /// A whole number from -2^63 to 2^63 - 1, written without fraction and exponent.
    Whole(i64),
    /// Any other number; the saved form has none.
    OtherNumber,
    /// A text.
    Text(Cow<'text, str>),
    /// A list.
    List(Vec<Json<'text>>),
    /// An object: its fields in the order of the text, of which a sound one holds none twice.
    Object(Vec<(Cow<'text, str>, Json<'text>)>),
}

/// How much is taken, so that nothing large is built from a hostile text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bounds {
    /// Most levels of lists and objects in each other.
    pub levels: usize,
    /// Most commas and opening brackets.
    pub marks: usize,
    /// The number of entries told when there are more marks.
    pub entries: usize,
}

impl<'text> Json<'text> {
    /// The value that `text` is.
    ///
    /// # Errors
    /// [`SavedError::NotJson`], [`SavedError::TooDeep`] or [`SavedError::TooMany`], whichever is met first.
    pub fn read(text: &'text str, bounds: Bounds) -> Result<Self, SavedError> {
        let mut reader = Reader {
            text,
            at: 0,
            level: 0,
            marks: 0,
            bounds,
        };
        let value = reader.value()?;
        if reader.peek().is_some() {
            return Err(SavedError::NotJson);
        }
        Ok(value)
    }

    /// A field of an object.
    pub fn get(&self, field: &str) -> Option<&Self> {
        let Self::Object(fields) = self else {
            return None;
        };
        let found = fields.iter().find(|(name, _)| name == field);
        found.map(|(_, value)| value)
    }

    /// A whole number.
    pub const fn whole(&self) -> Option<i64> {
        if let Self::Whole(number) = self {
            Some(*number)
        } else {
            None
        }
    }
}

struct Reader<'text> {
    text: &'text str,
    at: usize,
    level: usize,
    marks: usize,
    bounds: Bounds,
}

impl<'text> Reader<'text> {
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next byte that is no white space (RFC 8259, section 2), without going past it.
    fn peek(&mut self) -> Option<u8> {
        while let Some(b' ' | b'\t' | b'\n' | b'\r') = self.byte() {
            self.at += 1;
        }
        self.byte()
    }

    /// Goes past `wanted` when it comes next after white space.
    fn takes(&mut self, wanted: u8) -> bool {
        let is_there = self.peek() == Some(wanted);
        self.at += usize::from(is_there);
        is_there
    }

    fn expect(&mut self, wanted: u8) -> Result<(), SavedError> {
        if self.takes(wanted) {
            Ok(())
        } else {
            Err(SavedError::NotJson)
        }
    }

    fn value(&mut self) -> Result<Json<'text>, SavedError> {
        match self.peek() {
            Some(b'{') => self.object(),
            Some(b'[') => self.list(),
            Some(b'"') => Ok(Json::Text(self.string()?)),
            Some(b't') => self.word("true", Json::Flag(true)),
            Some(b'f') => self.word("false", Json::Flag(false)),
            Some(b'n') => self.word("null", Json::Null),
            Some(_) => self.number(),
            None => Err(SavedError::NotJson),
        }
    }

    fn word(&mut self, word: &str, value: Json<'text>) -> Result<Json<'text>, SavedError> {
        let rest = self.text.get(self.at..).unwrap_or_default();
        if !rest.starts_with(word) {
            return Err(SavedError::NotJson);
        }
        self.at += word.len();
        Ok(value)
    }

    /// One comma or opening bracket more.
    fn mark(&mut self) -> Result<(), SavedError> {
        self.marks += 1;
        if self.marks > self.bounds.marks {
            let limit = self.bounds.entries;
            return Err(SavedError::TooMany { limit });
        }
        Ok(())
    }

    fn open(&mut self) -> Result<(), SavedError> {
        self.at += 1;
        self.level += 1;
        if self.level > self.bounds.levels {
            let limit = self.bounds.levels;
            return Err(SavedError::TooDeep { limit });
        }
        self.mark()
    }

    /// Whether another element follows; goes past the comma or past `closing`.
    fn goes_on(&mut self, closing: u8) -> Result<bool, SavedError> {
        if self.takes(b',') {
            self.mark()?;
            return Ok(true);
        }
        self.expect(closing)?;
        self.level -= 1;
        Ok(false)
    }

    fn list(&mut self) -> Result<Json<'text>, SavedError> {
        self.open()?;
        let mut values = Vec::new();
        if self.takes(b']') {
            self.level -= 1;
            return Ok(Json::List(values));
        }
        loop {
            values.push(self.value()?);
            if !self.goes_on(b']')? {
                return Ok(Json::List(values));
            }
        }
    }

    fn object(&mut self) -> Result<Json<'text>, SavedError> {
        self.open()?;
        let mut fields = Vec::new();
        if self.takes(b'}') {
            self.level -= 1;
            return Ok(Json::Object(fields));
        }
        loop {
            if self.peek() != Some(b'"') {
                return Err(SavedError::NotJson);
            }
            let name = self.string()?;
            self.expect(b':')?;
            fields.push((name, self.value()?));
            if !self.goes_on(b'}')? {
                return Ok(Json::Object(fields));
            }
        }
    }

    /// A text, standing at its opening quotation mark (RFC 8259, section 7).
    fn string(&mut self) -> Result<Cow<'text, str>, SavedError> {
        self.at += 1;
        let mut unescaped: Option<String> = None;
        loop {
            let plain = self.plain();
            match self.byte() {
                Some(b'"') => {
                    self.at += 1;
                    return Ok(match unescaped {
                        None => Cow::Borrowed(plain),
                        Some(text) => Cow::Owned(text + plain),
                    });
                }
                Some(b'\\') => {
                    self.at += 1;
                    let letter = self.escape()?;
                    let text = unescaped.get_or_insert_default();
                    text.push_str(plain);
                    text.push(letter);
                }
                // A control character, or the end.
                Some(_) | None => return Err(SavedError::NotJson),
            }
        }
    }

    /// The letters up to the next that means something inside a text.
    fn plain(&mut self) -> &'text str {
        let start = self.at;
        while self
            .byte()
            .is_some_and(|byte| byte >= b' ' && byte != b'"' && byte != b'\\')
        {
            self.at += 1;
        }
        self.text.get(start..self.at).unwrap_or_default()
    }

    fn escape(&mut self) -> Result<char, SavedError> {
        let letter = self.byte().ok_or(SavedError::NotJson)?;
        self.at += 1;
        Ok(match letter {
            b'"' | b'\\' | b'/' => char::from(letter),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => return self.unicode(),
            _ => return Err(SavedError::NotJson),
        })
    }

    /// Four digits, or two times four for a pair of surrogates.
    fn unicode(&mut self) -> Result<char, SavedError> {
        let mut code = self.four_digits()?;
        if (0xD800..0xDC00).contains(&code) {
            let rest = self.text.get(self.at..).unwrap_or_default();
            if !rest.starts_with("\\u") {
                return Err(SavedError::NotJson);
            }
            self.at += 2;
            let low = self.four_digits()?;
            if !(0xDC00..0xE000).contains(&low) {
                return Err(SavedError::NotJson);
            }
            code = 0x1_0000 + ((code - 0xD800) << 10) + (low - 0xDC00);
        }
        char::from_u32(code).ok_or(SavedError::NotJson)
    }

    fn four_digits(&mut self) -> Result<u32, SavedError> {
        let mut code = 0;
        for _ in 0..4 {
            let digit = self.byte().and_then(|byte| char::from(byte).to_digit(16));
            code = code * 16 + digit.ok_or(SavedError::NotJson)?;
            self.at += 1;
        }
        Ok(code)
    }

    /// A number (RFC 8259, section 6).
    fn number(&mut self) -> Result<Json<'text>, SavedError> {
        let is_negative = self.byte() == Some(b'-');
        self.at += usize::from(is_negative);
        let start = self.at;
        // Counted down, as there is one negative number more.
        let mut whole = Some(0_i64);
        while let Some(digit) = self.byte().filter(u8::is_ascii_digit) {
            let digit = i64::from(digit - b'0');
            whole = whole.and_then(|sum| sum.checked_mul(10)?.checked_sub(digit));
            self.at += 1;
        }
        let digits = self.text.get(start..self.at).unwrap_or_default();
        if digits.is_empty() || (digits.len() > 1 && digits.starts_with('0')) {
            return Err(SavedError::NotJson);
        }
        let mut is_whole = !(is_negative && whole == Some(0));
        if self.byte() == Some(b'.') {
            is_whole = false;
            self.at += 1;
            self.digits()?;
        }
        if let Some(b'e' | b'E') = self.byte() {
            is_whole = false;
            self.at += 1;
            if let Some(b'+' | b'-') = self.byte() {
                self.at += 1;
            }
            self.digits()?;
        }
        let signed = whole.and_then(|sum| {
            if is_negative {
                Some(sum)
            } else {
                sum.checked_neg()
            }
        });
        Ok(signed
            .filter(|_| is_whole)
            .map_or(Json::OtherNumber, Json::Whole))
    }

    /// At least one digit.
    fn digits(&mut self) -> Result<(), SavedError> {
        let start = self.at;
        while self.byte().is_some_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        if self.at == start {
            return Err(SavedError::NotJson);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use std::borrow::Cow;

    use proptest::prelude::*;
    use serde_json::Value;

    use crate::store::json::{Bounds, Json};
    use crate::store::saved::SavedError;

    const WIDE: Bounds = Bounds {
        levels: 100,
        marks: 10_000,
        entries: 1,
    };

    fn read(text: &str) -> Result<Json<'_>, SavedError> {
        Json::read(text, WIDE)
    }

    /// What the other reader has found, in our words; objects in the order of their names.
    fn ours(value: &Value) -> Json<'static> {
        match value {
            Value::Null => Json::Null,
            Value::Bool(flag) => Json::Flag(*flag),
            Value::Number(number) => number.as_i64().map_or(Json::OtherNumber, Json::Whole),
            Value::String(text) => Json::Text(Cow::Owned(text.clone())),
            Value::Array(values) => Json::List(values.iter().map(ours).collect()),
            Value::Object(fields) => {
                let fields = fields.iter();
                let fields = fields.map(|(name, value)| (Cow::Owned(name.clone()), ours(value)));
                Json::Object(fields.collect())
            }
        }
    }

    fn in_order(value: Json<'_>) -> Json<'_> {
        match value {
            Json::List(values) => Json::List(values.into_iter().map(in_order).collect()),
            Json::Object(mut fields) => {
                fields.sort_by(|(one, _), (other, _)| one.cmp(other));
                let fields = fields.into_iter();
                Json::Object(
                    fields
                        .map(|(name, value)| (name, in_order(value)))
                        .collect(),
                )
            }
            Json::Null | Json::Flag(_) | Json::Whole(_) | Json::OtherNumber | Json::Text(_) => {
                value
            }
        }
    }

    fn any_value() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            any::<u64>().prop_map(Value::from),
            (-1e300_f64..1e300).prop_map(Value::from),
            ".{0,12}".prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 40, 5, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
                prop::collection::btree_map(".{0,6}", inner, 0..5)
                    .prop_map(|fields| Value::Object(fields.into_iter().collect())),
            ]
        })
    }

    proptest! {
        #[test]
        fn whatever_the_other_writer_writes_reads_the_same(value in any_value()) {
            for text in [value.to_string(), serde_json::to_string_pretty(&value).unwrap()] {
                prop_assert_eq!(read(&text).map(in_order), Ok(ours(&value)));
            }
        }

        #[test]
        fn a_damaged_text_is_taken_only_where_the_other_reader_takes_it(
            value in any_value(),
            place in any::<prop::sample::Index>(),
            put in "[\\[\\]{}\",:\\\\u0-9eE+. tfn-]{0,3}",
        ) {
            let mut text = value.to_string();
            let mut at = place.index(text.len());
            while !text.is_char_boundary(at) {
                at -= 1;
            }
            let length = text[at..].chars().next().map_or(0, char::len_utf8);
            text.replace_range(at..at + length, &put);
            let other = serde_json::from_str::<Value>(&text);
            // The other reader refuses numbers beyond its own range, which the standard allows.
            let is_too_large = other.as_ref().is_err_and(|error| error.to_string().contains("out of range"));
            prop_assert!(is_too_large || read(&text).is_ok() == other.is_ok(), "{}", text);
        }
    }

    /// RFC 8259: sections 6 (numbers), 7 (texts) and 2 (white space).
    #[test]
    fn edges_of_the_standard_are_kept() {
        let text = |text: &'static str| Ok(Json::Text(Cow::Borrowed(text)));
        assert_eq!(read("-9223372036854775808"), Ok(Json::Whole(i64::MIN)));
        assert_eq!(read("9223372036854775807"), Ok(Json::Whole(i64::MAX)));
        assert_eq!(read("9223372036854775808"), Ok(Json::OtherNumber));
        assert_eq!(read("-0"), Ok(Json::OtherNumber));
        assert_eq!(read("1.0"), Ok(Json::OtherNumber));
        assert_eq!(read("1e999"), Ok(Json::OtherNumber));
        assert_eq!(read("\"\\ud834\\udd1e\""), text("\u{1d11e}"));
        assert_eq!(read(" \t\r\n\"\\u00e9\\/\" "), text("\u{e9}/"));
        for wrong in [
            "",
            " ",
            "01",
            "+1",
            "1.",
            ".5",
            "1e",
            "-",
            "\"\u{1}\"",
            "\"",
            "\"\\x\"",
            "\"\\ud834\"",
            "\"\\udd1e\"",
            "\"\\ud834\\u0041\"",
            "[1,]",
            "[,1]",
            "{\"a\":1,}",
            "{a:1}",
            "tru",
            "1 2",
            "\u{a0}1",
        ] {
            assert_eq!(read(wrong), Err(SavedError::NotJson), "{wrong}");
        }
    }

    #[test]
    fn what_is_too_deep_or_too_much_is_refused_before_it_is_built() {
        let bounds = Bounds {
            levels: 2,
            marks: 4,
            entries: 7,
        };
        let read = |text| Json::read(text, bounds).map(drop);
        assert_eq!(read("[[1,2,3]]"), Ok(()));
        assert_eq!(read("[[1],[2]]"), Ok(()));
        assert_eq!(read("[[1,2,3],4]"), Err(SavedError::TooMany { limit: 7 }));
        assert_eq!(read("[{\"a\":[1]}]"), Err(SavedError::TooDeep { limit: 2 }));
    }
}
