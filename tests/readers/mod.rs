//! Strict readers of the formats that Perchlight only writes, written for the tests from the
//! standards, and small helpers for check files.

pub mod calendar;
pub mod page;

use serde_json::Value;

/// The list under `name`.
///
/// # Panics
/// When there is none or it holds nothing.
pub fn cases<'a>(file: &'a Value, name: &str) -> &'a Vec<Value> {
    let list = file[name]
        .as_array()
        .unwrap_or_else(|| panic!("no list {name}"));
    assert!(!list.is_empty(), "{name} holds no case");
    list
}

/// The text under `name`.
///
/// # Panics
/// When there is none.
pub fn text_of<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name]
        .as_str()
        .unwrap_or_else(|| panic!("no text {name} in {value}"))
}

/// Bytes written as hexadecimal digits.
///
/// # Panics
/// When they are not.
pub fn bytes_of_hex(text: &str) -> Vec<u8> {
    assert!(text.len().is_multiple_of(2), "{text}");
    (0..text.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap())
        .collect()
}

/// Records of a CSV text by RFC 4180, section 2, with LF or CR LF and an optional last line break.
///
/// # Errors
/// What is wrong with the text.
pub fn csv_records(text: &str) -> Result<Vec<Vec<String>>, String> {
    let mut records = vec![];
    let mut rest = text;
    while !rest.is_empty() {
        let mut record = vec![];
        loop {
            let (field, after) = csv_field(rest)?;
            record.push(field);
            rest = after;
            match rest.strip_prefix(',') {
                Some(next) => rest = next,
                None => break,
            }
        }
        records.push(record);
        rest = match rest
            .strip_prefix("\r\n")
            .or_else(|| rest.strip_prefix('\n'))
        {
            Some(next) => next,
            None if rest.is_empty() => rest,
            None => return Err(format!("text after a field: {rest:?}")),
        };
    }
    Ok(records)
}

fn csv_field(text: &str) -> Result<(String, &str), String> {
    let Some(mut rest) = text.strip_prefix('"') else {
        let end = text.find([',', '\r', '\n']).unwrap_or(text.len());
        let (field, after) = text.split_at(end);
        if field.contains('"') {
            return Err(format!("quote within a field: {field:?}"));
        }
        return Ok((field.to_owned(), after));
    };
    let mut field = String::new();
    loop {
        let Some((piece, after)) = rest.split_once('"') else {
            return Err("quote without end".to_owned());
        };
        field.push_str(piece);
        match after.strip_prefix('"') {
            Some(more) => {
                field.push('"');
                rest = more;
            }
            None => return Ok((field, after)),
        }
    }
}

/// Folded lines made whole. RFC 5545, section 3.1.
pub fn unfolded(text: &str) -> String {
    text.replace("\r\n ", "").replace("\r\n\t", "")
}

/// The text that a value of type TEXT stands for. RFC 5545, section 3.3.11.
///
/// # Panics
/// When it is none.
pub fn unescaped(text: &str) -> String {
    let mut plain = String::new();
    let mut characters = text.chars();
    while let Some(character) = characters.next() {
        if character != '\\' {
            assert!(
                !";,\r\n".contains(character),
                "bare {character:?} in {text}"
            );
            plain.push(character);
            continue;
        }
        match characters.next() {
            Some('n' | 'N') => plain.push('\n'),
            Some(escaped @ ('\\' | ';' | ',')) => plain.push(escaped),
            other => panic!("escape of {other:?} in {text}"),
        }
    }
    plain
}

/// A DURATION in seconds by the grammar of RFC 5545, section 3.3.6: a unit may be left out only
/// at either end of the time part.
///
/// # Panics
/// When it is none.
pub fn seconds_of_duration(text: &str) -> i64 {
    let (sign, unsigned) = match text.strip_prefix('-') {
        Some(rest) => (-1, rest),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    let body = unsigned.strip_prefix('P').expect(text);
    let (date, time) = match body.split_once('T') {
        Some((date, time)) => {
            assert!(!time.is_empty(), "{text}");
            (date, time)
        }
        None => (body, ""),
    };
    let date_units = units(date);
    assert!(date_units.len() <= 1, "{text}");
    let time_units = units(time);
    let letters: String = time_units.iter().map(|(_, letter)| *letter).collect();
    assert!("HMS".contains(&letters), "{text}");
    assert!(!date_units.is_empty() || !time_units.is_empty(), "{text}");
    let seconds: i64 = date_units
        .into_iter()
        .map(|(count, letter)| match letter {
            'W' if time.is_empty() => count * 604_800,
            'D' => count * 86_400,
            _ => panic!("{text}"),
        })
        .chain(time_units.into_iter().map(|(count, letter)| match letter {
            'H' => count * 3_600,
            'M' => count * 60,
            _ => count,
        }))
        .sum();
    sign * seconds
}

fn units(text: &str) -> Vec<(i64, char)> {
    let mut rest = text;
    let mut units = vec![];
    while let Some(at) = rest.find(|c: char| !c.is_ascii_digit()) {
        let letter = rest[at..].chars().next().unwrap();
        units.push((rest[..at].parse().unwrap(), letter));
        rest = &rest[at + letter.len_utf8()..];
    }
    assert!(rest.is_empty(), "{text}");
    units
}
