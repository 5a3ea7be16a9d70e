//! Reads the pages that Perchlight writes, strictly: every tag closed, every attribute quoted.

/// One element with its attributes and the text directly in it.
#[derive(Clone, Debug, Default)]
pub struct Element {
    /// Its name in small letters as written.
    pub name: String,
    /// Names and values, entities resolved.
    pub attributes: Vec<(String, String)>,
    /// Text in it and in what it holds, entities resolved; as it stands for `script` and `style`.
    pub text: String,
}

impl Element {
    /// The value of an attribute.
    pub fn value(&self, name: &str) -> Option<&str> {
        let found = self.attributes.iter().find(|(known, _)| known == name);
        found.map(|(_, value)| value.as_str())
    }
}

/// Every element of a page in the order in which they end.
///
/// # Panics
/// When the page is not in order.
pub fn elements(page: &str) -> Vec<Element> {
    let mut rest = page.strip_prefix("<!doctype html>").expect("doctype");
    let mut open: Vec<Element> = Vec::new();
    let mut done = Vec::new();
    while !rest.is_empty() {
        let start = rest.find('<').unwrap_or(rest.len());
        let (text, tag) = rest.split_at(start);
        assert!(!text.contains('>'), "bare > in {text:?}");
        for element in &mut open {
            element.text.push_str(&resolved(text));
        }
        let Some(tag) = tag.strip_prefix('<') else {
            break;
        };
        if let Some(closing) = tag.strip_prefix('/') {
            let (name, after) = closing.split_once('>').expect("closing tag");
            let element = open.pop().expect("nothing is open");
            assert_eq!(element.name, name, "closed out of order");
            done.push(element);
            rest = after;
            continue;
        }
        let (element, is_closed, after) = opening(tag);
        rest = after;
        if is_closed || ["meta", "img"].contains(&element.name.as_str()) {
            done.push(element);
        } else if element.name == "script" || element.name == "style" {
            let end = format!("</{}", element.name);
            let (text, _) = rest.split_once(&end).expect("raw text ends");
            rest = &rest[text.len()..];
            open.push(Element {
                text: text.to_owned(),
                ..element
            });
        } else {
            open.push(element);
        }
    }
    assert!(open.is_empty(), "left open: {open:?}");
    done
}

fn opening(tag: &str) -> (Element, bool, &str) {
    let is_name = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | ':');
    let end = tag.find(|c| !is_name(c)).expect("tag ends");
    assert!(end > 0, "bare < before {:?}", tag.get(..20));
    let (name, mut rest) = tag.split_at(end);
    let mut element = Element {
        name: name.to_owned(),
        ..Element::default()
    };
    loop {
        rest = rest.trim_start();
        if let Some(after) = rest.strip_prefix("/>") {
            return (element, true, after);
        }
        if let Some(after) = rest.strip_prefix('>') {
            return (element, false, after);
        }
        let (name, after) = rest.split_once("=\"").expect("quoted attribute");
        assert!(name.chars().all(is_name), "attribute name {name:?}");
        let (value, after) = after.split_once('"').expect("attribute ends");
        assert!(!value.contains('<'), "bare < in {value:?}");
        element.attributes.push((name.to_owned(), resolved(value)));
        rest = after;
    }
}

fn resolved(text: &str) -> String {
    let mut rest = text;
    let mut whole = String::new();
    while let Some((before, after)) = rest.split_once('&') {
        let (name, after) = after.split_once(';').expect("entity ends");
        whole.push_str(before);
        whole.push_str(match name {
            "amp" => "&",
            "lt" => "<",
            "gt" => ">",
            "quot" | "#34" => "\"",
            "#39" | "apos" => "'",
            other => panic!("entity {other:?}"),
        });
        rest = after;
    }
    whole + rest
}
