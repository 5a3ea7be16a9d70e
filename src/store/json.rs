//! Reading JSON as far as the saved form needs it: whole numbers, words, lists, objects.
//!
//! The start of the app reads every entry kept: texts without escapes are borrowed, the fields of an
//! object stand in one list, and nothing is built beyond the limits of the caller. The standard itself
//! (RFC 8259) is left to `serde_json`.

use std::borrow::Cow;
use std::cell::Cell;
use std::fmt::{Formatter, Result as FormatResult};

use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};

use crate::store::saved_error::SavedError;

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
        let count = Count {
            bounds,
            marks: Cell::new(0),
            refused: Cell::new(None),
        };
        let place = Place {
            count: &count,
            level: 0,
        };
        let mut reader = serde_json::Deserializer::from_str(text);
        let value = place.deserialize(&mut reader);
        let whole = value.and_then(|value| reader.end().map(|()| value));
        whole.map_err(|_error| count.refused.take().unwrap_or(SavedError::NotJson))
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

/// What was read so far of a text, and why no more of it is.
struct Count {
    bounds: Bounds,
    marks: Cell<usize>,
    refused: Cell<Option<SavedError>>,
}

impl Count {
    fn refuse<E: Error>(&self, why: SavedError) -> E {
        self.refused.set(Some(why));
        E::custom("beyond the bounds")
    }

    /// One comma or opening bracket more.
    fn mark<E: Error>(&self) -> Result<(), E> {
        let marks = self.marks.get() + 1;
        self.marks.set(marks);
        if marks > self.bounds.marks {
            let limit = self.bounds.entries;
            return Err(self.refuse(SavedError::TooMany { limit }));
        }
        Ok(())
    }
}

/// The place of one value: how deep it lies in lists and objects.
#[derive(Clone, Copy)]
struct Place<'count> {
    count: &'count Count,
    level: usize,
}

impl Place<'_> {
    /// The place of what stands in this list or object.
    fn inner<E: Error>(self) -> Result<Self, E> {
        let level = self.level + 1;
        if level > self.count.bounds.levels {
            let limit = self.count.bounds.levels;
            return Err(self.count.refuse(SavedError::TooDeep { limit }));
        }
        self.count.mark()?;
        Ok(Self { level, ..self })
    }
}

impl<'text> DeserializeSeed<'text> for Place<'_> {
    type Value = Json<'text>;

    fn deserialize<D: Deserializer<'text>>(self, reader: D) -> Result<Json<'text>, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'text> Visitor<'text> for Place<'_> {
    type Value = Json<'text>;

    fn expecting(&self, formatter: &mut Formatter<'_>) -> FormatResult {
        formatter.write_str("a value")
    }

    fn visit_unit<E: Error>(self) -> Result<Json<'text>, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E: Error>(self, flag: bool) -> Result<Json<'text>, E> {
        Ok(Json::Flag(flag))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Json<'text>, E> {
        Ok(Json::Whole(number))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Json<'text>, E> {
        Ok(i64::try_from(number).map_or(Json::OtherNumber, Json::Whole))
    }

    fn visit_f64<E: Error>(self, _number: f64) -> Result<Json<'text>, E> {
        Ok(Json::OtherNumber)
    }

    fn visit_borrowed_str<E: Error>(self, text: &'text str) -> Result<Json<'text>, E> {
        Ok(Json::Text(Cow::Borrowed(text)))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Json<'text>, E> {
        Ok(Json::Text(Cow::Owned(text.to_owned())))
    }

    fn visit_seq<A: SeqAccess<'text>>(self, mut list: A) -> Result<Json<'text>, A::Error> {
        let inner = self.inner()?;
        let mut values = Vec::new();
        while let Some(value) = list.next_element_seed(inner)? {
            if !values.is_empty() {
                self.count.mark()?;
            }
            values.push(value);
        }
        Ok(Json::List(values))
    }

    fn visit_map<A: MapAccess<'text>>(self, mut object: A) -> Result<Json<'text>, A::Error> {
        let inner = self.inner()?;
        let mut fields = Vec::with_capacity(USUAL_FIELDS);
        while let Some(name) = object.next_key_seed(Name)? {
            if !fields.is_empty() {
                self.count.mark()?;
            }
            fields.push((name, object.next_value_seed(inner)?));
        }
        Ok(Json::Object(fields))
    }
}

/// How many fields most objects of the saved form have at most.
const USUAL_FIELDS: usize = 10;

/// The name of a field.
struct Name;

impl<'text> DeserializeSeed<'text> for Name {
    type Value = Cow<'text, str>;

    fn deserialize<D: Deserializer<'text>>(self, reader: D) -> Result<Cow<'text, str>, D::Error> {
        reader.deserialize_str(self)
    }
}

impl<'text> Visitor<'text> for Name {
    type Value = Cow<'text, str>;

    fn expecting(&self, formatter: &mut Formatter<'_>) -> FormatResult {
        formatter.write_str("a name")
    }

    fn visit_borrowed_str<E: Error>(self, name: &'text str) -> Result<Cow<'text, str>, E> {
        Ok(Cow::Borrowed(name))
    }

    fn visit_str<E: Error>(self, name: &str) -> Result<Cow<'text, str>, E> {
        Ok(Cow::Owned(name.to_owned()))
    }
}

#[cfg(test)]
mod tests {
    use std::borrow::Cow;

    use proptest::prelude::*;
    use serde_json::Value;

    use crate::store::json::{Bounds, Json};
    use crate::store::saved_error::SavedError;

    const WIDE: Bounds = Bounds {
        levels: 100,
        marks: 10_000,
        entries: 1,
    };

    fn read(text: &str) -> Result<Json<'_>, SavedError> {
        Json::read(text, WIDE)
    }

    /// The same value in our words; objects in the order of their names.
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
        fn whatever_was_written_reads_the_same(value in any_value()) {
            for text in [value.to_string(), serde_json::to_string_pretty(&value).unwrap()] {
                prop_assert_eq!(read(&text).map(in_order), Ok(ours(&value)));
            }
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
            "1e999",
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
        // Five brackets and commas: two and three.
        let too_many = Err(SavedError::TooMany { limit: 7 });
        assert_eq!(read("[[1,2,3],4]"), too_many);
        assert_eq!(read("{\"a\":1,\"b\":2,\"c\":3,\"d\":4}"), Ok(()));
        assert_eq!(read("{\"a\":1,\"b\":2,\"c\":3,\"d\":4,\"e\":5}"), too_many);
        assert_eq!(read("[{\"a\":[1]}]"), Err(SavedError::TooDeep { limit: 2 }));
    }
}
