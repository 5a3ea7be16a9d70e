//! The first copy's place in a browser: `localStorage`.

use gloo_storage::{LocalStorage, Storage};
use js_sys::{Array, Function, JsString, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::DomException;

use crate::domain::quantity::order::sorted;
use crate::store::key_value::{KeyValue, KeyValueError, ROOT, SETTING};

/// `localStorage` of the page's origin, looked for anew at each use: a person may forbid it at any time.
#[derive(Debug, Clone, Copy, Default)]
pub struct LocalKeyValue;

impl LocalKeyValue {
    /// The raw storage, after making sure that there is one: the crate's own way panics where the
    /// browser forbids it.
    fn raw() -> Result<web_sys::Storage, KeyValueError> {
        let window = web_sys::window().ok_or(KeyValueError::Blocked)?;
        match window.local_storage() {
            Ok(Some(_)) => Ok(LocalStorage::raw()),
            Ok(None) | Err(_) => Err(KeyValueError::Blocked),
        }
    }
}

impl LocalKeyValue {
    /// Whether there may be anything besides settings; so where the place does not answer.
    pub fn may_hold_records(self) -> bool {
        let any = || {
            let storage = Self::raw().ok()?;
            let mut keys =
                (0..storage.length().ok()?).filter_map(|index| storage.key(index).ok()?);
            Some(keys.any(|key| key.starts_with(ROOT) && !key.starts_with(SETTING)))
        };
        any() != Some(false)
    }
}

impl KeyValue for LocalKeyValue {
    fn get(&self, key: &str) -> Result<Option<String>, KeyValueError> {
        let storage = Self::raw()?;
        let found = method(&storage, "getItem")
            .and_then(|get| get.call1(&storage, &key.into()))
            .map_err(|error| named(&error))?;
        Ok(text_of(&found))
    }

    fn set(&self, key: &str, text: &str) -> Result<(), KeyValueError> {
        let storage = Self::raw()?;
        storage.set_item(key, text).map_err(|error| named(&error))
    }

    fn remove(&self, key: &str) -> Result<(), KeyValueError> {
        Self::raw()?.remove_item(key).map_err(|error| named(&error))
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, KeyValueError> {
        let storage = Self::raw()?;
        let count = storage.length().map_err(|error| named(&error))?;
        let mut keys = Vec::new();
        for index in 0..count {
            let key = storage.key(index).map_err(|error| named(&error))?;
            keys.extend(key.filter(|key| key.starts_with(prefix)));
        }
        Ok(sorted(keys))
    }
}

/// The text that a value is; `None` for any other value.
///
/// A long one goes through the browser's own encoder: the crates take a text over letter by letter,
/// which takes twice as long.
pub(crate) fn text_of(value: &JsValue) -> Option<String> {
    let text = value.dyn_ref::<JsString>()?;
    let encoded = (text.length() >= LONG).then(|| encoded(text)).flatten();
    encoded.or_else(|| text.as_string())
}

/// From this many UTF-16 units on the encoder is worth its asking. Ours.
const LONG: u32 = 512;

/// The text by the Encoding standard's `TextEncoder`; `None` where there is none.
fn encoded(text: &JsString) -> Option<String> {
    let maker: Function = method(&js_sys::global(), "TextEncoder").ok()?;
    let encoder = Reflect::construct(&maker, &Array::new()).ok()?;
    let bytes = method(&encoder, "encode")
        .ok()?
        .call1(&encoder, text)
        .ok()?;
    let bytes: Uint8Array = bytes.dyn_into().ok()?;
    String::from_utf8(bytes.to_vec()).ok()
}

/// A method, or whatever else that can be called, by its name.
pub(crate) fn method(object: &JsValue, name: &str) -> Result<Function, JsValue> {
    Reflect::get(object, &name.into())?.dyn_into()
}

/// The name of a browser's error, `Error` for anything without one.
pub(crate) fn error_name(error: &JsValue) -> String {
    error
        .dyn_ref::<DomException>()
        .map_or_else(|| "Error".to_owned(), DomException::name)
}

/// The names are those of the HTML and Web IDL standards; the second for a full place is an older
/// engine's.
fn named(error: &JsValue) -> KeyValueError {
    let name = error_name(error);
    match name.as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => KeyValueError::Full,
        "SecurityError" => KeyValueError::Blocked,
        _ => KeyValueError::Other(name),
    }
}
