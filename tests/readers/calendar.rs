//! Reads calendar files line by line, strictly.

use crate::readers::{unescaped, unfolded};

/// A property: its name and its value, escapes still in place.
pub type Property = (String, String);

/// A component with the properties and components directly in it, in their order.
#[derive(Clone, Debug, Default)]
pub struct Component {
    /// `VCALENDAR`, `VEVENT` or `VALARM`.
    pub name: String,
    /// Its own properties.
    pub properties: Vec<Property>,
    /// What it holds.
    pub parts: Vec<Component>,
}

impl Component {
    /// The value of the only property of that name.
    ///
    /// # Panics
    /// When there is none or more than one.
    pub fn value(&self, name: &str) -> &str {
        let values: Vec<&str> = self
            .properties
            .iter()
            .filter(|(property, _)| property == name)
            .map(|(_, value)| value.as_str())
            .collect();
        assert_eq!(values.len(), 1, "{name} in {}", self.name);
        values[0]
    }

    /// Whether it has a property of that name.
    pub fn has(&self, name: &str) -> bool {
        self.properties.iter().any(|(property, _)| property == name)
    }

    /// The value of a TEXT property as people wrote it.
    pub fn text(&self, name: &str) -> String {
        unescaped(self.value(name))
    }
}

/// The one component of a file, whose lines must all end in CR LF, hold 75 octets at most and
/// put a component's own properties before its parts.
///
/// # Panics
/// When the file is otherwise.
pub fn calendar(file: &str) -> Component {
    assert!(file.ends_with("\r\n"));
    for line in file.split_terminator("\r\n") {
        assert!(line.len() <= 75, "{line}");
        assert!(!line.is_empty() && !line.contains(['\r', '\n']), "{line:?}");
    }
    let mut open: Vec<Component> = vec![Component::default()];
    for line in unfolded(file).split_terminator("\r\n") {
        let (name, value) = line.split_once(':').expect(line);
        match name {
            "BEGIN" => open.push(Component {
                name: value.to_owned(),
                ..Component::default()
            }),
            "END" => {
                let closed = open.pop().unwrap();
                assert_eq!(closed.name, value);
                open.last_mut().expect(line).parts.push(closed);
            }
            _ => {
                let inner = open.last_mut().unwrap();
                assert!(inner.parts.is_empty(), "{line} after a part");
                inner.properties.push((name.to_owned(), value.to_owned()));
            }
        }
    }
    assert_eq!(open.len(), 1, "a component is left open");
    let root = open.remove(0);
    assert!(root.properties.is_empty() && root.parts.len() == 1);
    root.parts.into_iter().next().unwrap()
}
