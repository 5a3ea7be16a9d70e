//! Reading the fields of an object one by one, and writing them in a fixed order.

use std::borrow::Cow;

use crate::domain::journal::entries::{ChickId, EntryId};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::units::OutOfRange;
use crate::domain::time::moment::{Day, Moment, Offset, WallTime};
use crate::store::id_text::{id_from_text, id_to_text};
use crate::store::json::Json;
use crate::store::saved::tags::Tagged;
use crate::store::saved_error::SavedError;

/// The fields of an object that nobody has asked for yet.
pub(crate) struct Fields<'text>(Vec<(Cow<'text, str>, Json<'text>)>);

impl<'text> Fields<'text> {
    /// The fields of `value`, which stands in `field`.
    pub(crate) fn new(value: Json<'text>, field: &'static str) -> Result<Self, SavedError> {
        if let Json::Object(fields) = value {
            Ok(Self(fields))
        } else {
            Err(SavedError::WrongKind { field })
        }
    }

    /// Refuses whatever nobody has asked for, a field that stands there twice among it.
    pub(crate) fn finish(self) -> Result<(), SavedError> {
        let left = self.0.into_iter().next();
        left.map_or(Ok(()), |(field, _)| {
            let field = field.into_owned();
            Err(SavedError::UnknownField { field })
        })
    }

    /// What `read` makes of a field; `None` when it is not there.
    pub(crate) fn optional<T>(
        &mut self,
        field: &'static str,
        read: fn(&mut Self, &'static str) -> Result<T, SavedError>,
    ) -> Result<Option<T>, SavedError> {
        if self.place(field).is_some() {
            read(self, field).map(Some)
        } else {
            Ok(None)
        }
    }

    fn place(&self, field: &str) -> Option<usize> {
        self.0.iter().position(|(name, _)| name == field)
    }

    fn take(&mut self, field: &'static str) -> Result<Json<'text>, SavedError> {
        let place = self.place(field).ok_or(SavedError::Missing { field })?;
        Ok(self.0.swap_remove(place).1)
    }

    pub(crate) fn object(&mut self, field: &'static str) -> Result<Self, SavedError> {
        Self::new(self.take(field)?, field)
    }

    pub(crate) fn list(&mut self, field: &'static str) -> Result<Vec<Json<'text>>, SavedError> {
        if let Json::List(values) = self.take(field)? {
            Ok(values)
        } else {
            Err(SavedError::WrongKind { field })
        }
    }

    pub(crate) fn number(&mut self, field: &'static str) -> Result<i64, SavedError> {
        let value = self.take(field)?;
        value.whole().ok_or(SavedError::WrongKind { field })
    }

    pub(crate) fn flag(&mut self, field: &'static str) -> Result<bool, SavedError> {
        if let Json::Flag(flag) = self.take(field)? {
            Ok(flag)
        } else {
            Err(SavedError::WrongKind { field })
        }
    }

    /// A text of at most [`CarePlan::LONG_TEXT`] characters.
    pub(crate) fn text(&mut self, field: &'static str) -> Result<String, SavedError> {
        self.borrowed(field).map(Cow::into_owned)
    }

    fn borrowed(&mut self, field: &'static str) -> Result<Cow<'text, str>, SavedError> {
        let Json::Text(text) = self.take(field)? else {
            return Err(SavedError::WrongKind { field });
        };
        if text.chars().count() > CarePlan::LONG_TEXT {
            return Err(SavedError::BadText { field });
        }
        Ok(text)
    }

    pub(crate) fn tag<T: Tagged>(&mut self, field: &'static str) -> Result<T, SavedError> {
        tag_of(&self.take(field)?, field)
    }

    pub(crate) fn tags<T: Tagged>(&mut self, field: &'static str) -> Result<Vec<T>, SavedError> {
        let values = self.list(field)?;
        values.iter().map(|value| tag_of(value, field)).collect()
    }

    pub(crate) fn id(&mut self, field: &'static str) -> Result<[u8; 12], SavedError> {
        id_from_text(&self.borrowed(field)?).ok_or(SavedError::BadText { field })
    }

    pub(crate) fn ids(&mut self, field: &'static str) -> Result<Vec<EntryId>, SavedError> {
        let id = |value: &Json<'_>| match value {
            Json::Text(text) => id_from_text(text)
                .map(EntryId)
                .ok_or(SavedError::BadText { field }),
            Json::Null
            | Json::Flag(_)
            | Json::Whole(_)
            | Json::OtherNumber
            | Json::List(_)
            | Json::Object(_) => Err(SavedError::WrongKind { field }),
        };
        self.list(field)?.iter().map(id).collect()
    }

    /// A quantity in tenths, through its checked constructor.
    pub(crate) fn tenths<T>(
        &mut self,
        field: &'static str,
        make: fn(i64) -> Result<T, OutOfRange>,
    ) -> Result<T, SavedError> {
        let value = self.number(field)?;
        make(value).or(Err(SavedError::OutOfRange { field, value }))
    }

    /// A small whole number.
    pub(crate) fn small<T: TryFrom<i64>>(&mut self, field: &'static str) -> Result<T, SavedError> {
        let value = self.number(field)?;
        T::try_from(value).or(Err(SavedError::OutOfRange { field, value }))
    }

    pub(crate) fn moment(&mut self, field: &'static str) -> Result<Moment, SavedError> {
        let value = self.number(field)?;
        moment_at(value).ok_or(SavedError::OutOfRange { field, value })
    }

    pub(crate) fn offset(&mut self, field: &'static str) -> Result<Offset, SavedError> {
        let minutes: i32 = self.small(field)?;
        let offset = Offset::from_minutes(minutes);
        if offset.minutes() == minutes {
            Ok(offset)
        } else {
            let value = i64::from(minutes);
            Err(SavedError::OutOfRange { field, value })
        }
    }

    /// A day as `YYYY-MM-DD` and in no other spelling.
    pub(crate) fn day(&mut self, field: &'static str) -> Result<Day, SavedError> {
        let text = self.borrowed(field)?;
        let day = Day::parse_iso(&text).filter(|day| day.iso() == text);
        day.ok_or(SavedError::BadText { field })
    }

    /// A wall time as `HH:MM` and in no other spelling.
    pub(crate) fn wall_time(&mut self, field: &'static str) -> Result<WallTime, SavedError> {
        let text = self.borrowed(field)?;
        let time = WallTime::parse(&text).filter(|time| time.text() == text);
        time.ok_or(SavedError::BadText { field })
    }
}

/// An id as text in a list.
pub(crate) fn id_of(value: &Json<'_>, field: &'static str) -> Result<[u8; 12], SavedError> {
    let Json::Text(text) = value else {
        return Err(SavedError::WrongKind { field });
    };
    id_from_text(text).ok_or(SavedError::BadText { field })
}

/// The moment of a number of seconds; `None` outside the range taken.
pub(crate) fn moment_at(seconds: i64) -> Option<Moment> {
    let moment = Moment::from_seconds(seconds);
    (moment.seconds() == seconds).then_some(moment)
}

fn tag_of<T: Tagged>(value: &Json<'_>, field: &'static str) -> Result<T, SavedError> {
    let Json::Text(text) = value else {
        return Err(SavedError::WrongKind { field });
    };
    T::from_tag(text).ok_or_else(|| SavedError::UnknownTag {
        field,
        tag: text.clone().into_owned(),
    })
}

/// The text of an object in the making; fields stand in the order in which they are given.
pub(crate) struct ObjectText(String);

impl ObjectText {
    pub(crate) fn new() -> Self {
        Self("{".to_owned())
    }

    pub(crate) fn finish(mut self) -> String {
        self.0.push('}');
        self.0
    }

    /// A field whose value is JSON text already.
    pub(crate) fn json(&mut self, field: &str, value: &str) {
        if self.0.len() > 1 {
            self.0.push(',');
        }
        push_quoted(&mut self.0, field);
        self.0.push(':');
        self.0.push_str(value);
    }

    pub(crate) fn number(&mut self, field: &str, value: i64) {
        self.json(field, &value.to_string());
    }

    pub(crate) fn flag(&mut self, field: &str, value: bool) {
        self.json(field, if value { "true" } else { "false" });
    }

    pub(crate) fn tenths(&mut self, field: &str, value: i32) {
        self.number(field, i64::from(value));
    }

    pub(crate) fn text(&mut self, field: &str, value: &str) {
        self.json(field, &quoted(value));
    }

    pub(crate) fn text_if_any(&mut self, field: &str, value: &str) {
        if !value.is_empty() {
            self.text(field, value);
        }
    }

    pub(crate) fn list(&mut self, field: &str, values: &[String]) {
        self.json(field, &format!("[{}]", values.join(",")));
    }

    pub(crate) fn ids(&mut self, field: &str, ids: &[EntryId]) {
        let values: Vec<String> = ids.iter().map(|id| quoted(&id_to_text(id.0))).collect();
        self.list(field, &values);
    }

    pub(crate) fn chicks(&mut self, field: &str, chicks: &[ChickId]) {
        let values: Vec<String> = chicks.iter().map(|id| quoted(&id_to_text(id.0))).collect();
        self.list(field, &values);
    }

    pub(crate) fn tag<T: Tagged>(&mut self, field: &str, value: T) {
        self.text(field, value.tag());
    }

    pub(crate) fn tags<T: Tagged>(&mut self, field: &str, values: impl Iterator<Item = T>) {
        let values: Vec<String> = values.map(|value| quoted(value.tag())).collect();
        self.list(field, &values);
    }
}

fn quoted(text: &str) -> String {
    let mut quoted = String::with_capacity(text.len() + 2);
    push_quoted(&mut quoted, text);
    quoted
}

/// A JSON string. Source: RFC 8259, section 7: quotation mark, backslash and U+0000 to U+001F must be
/// escaped. The two line separators of ECMAScript are escaped as well, so that the text stays one line
/// for every reader.
fn push_quoted(out: &mut String, text: &str) {
    out.push('"');
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\u{0}'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{2028}' | '\u{2029}' => {
                let escape = format!("\\u{:04x}", u32::from(letter));
                out.push_str(&escape);
            }
            _ => out.push(letter),
        }
    }
    out.push('"');
}
