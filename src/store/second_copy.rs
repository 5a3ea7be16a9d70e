//! The second copy: an `IndexedDB` database that answers only when a line is on the disk.
//!
//! A killed browser loses up to a minute of `localStorage`, but no transaction that has completed. So
//! nothing is shown as kept before this copy has answered. The functions that decide what goes in and
//! what comes out are in [`crate::store::line`] and need no browser.

use std::collections::BTreeSet;

use js_sys::{Array, Function, Object, Promise, Reflect};
use thiserror::Error;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    DomException, Event, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest,
    IdbRequest, IdbTransaction, IdbTransactionMode,
};

use crate::domain::quantity::order::set_of;
use crate::store::browser::{error_name, method, text_of};
use crate::store::line::Name;

/// The database's name. A host may serve other pages from the same origin.
const DATABASE: &str = "perchlight";
/// The database's version; it changes only with the object stores, never with the saved form.
const DATABASE_VERSION: u32 = 1;
/// The object store: record lines under their names.
const ENTRIES: &str = "entries";
/// How long opening may take, in milliseconds. Ours: a damaged profile may never answer.
const OPEN_WITHIN_MS: i32 = 2_000;
/// How long a reading or writing may take, in milliseconds. Ours: long enough for years of entries on a
/// slow phone; "Keeping…" that never ends would leave a person waiting in vain.
const ANSWER_WITHIN_MS: i32 = 10_000;

/// Why the second copy does not do what was asked.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SecondCopyError {
    /// The browser has none here, or forbids it.
    #[error("the browser offers no database here")]
    Missing,
    /// Another tab holds an older version of it open.
    #[error("another tab holds the database open")]
    Blocked,
    /// It did not answer in time.
    #[error("the database did not answer in time")]
    TimedOut,
    /// It is closed: another tab needs a newer version of it, or the browser took it away.
    #[error("the database is closed")]
    Closed,
    /// There is no space left.
    #[error("the browser's space for this page is full")]
    Full,
    /// Anything else, by the name the browser gives it.
    #[error("the database answered: {0}")]
    Other(String),
}

/// The open database.
#[derive(Debug, Clone)]
pub struct SecondCopy {
    database: IdbDatabase,
    store: &'static str,
}

impl SecondCopy {
    /// Opens the database, and makes it on the first start.
    ///
    /// # Errors
    /// [`SecondCopyError`]; the first copy then goes on alone, and opening may be tried again later.
    pub async fn open() -> Result<Self, SecondCopyError> {
        Self::open_store(DATABASE, ENTRIES).await
    }

    /// Opens a database with one object store, and makes it on the first use.
    ///
    /// # Errors
    /// [`SecondCopyError`]; opening may be tried again later.
    pub(crate) async fn open_store(
        database: &str,
        store: &'static str,
    ) -> Result<Self, SecondCopyError> {
        let factory = factory()?;
        let request = factory
            .open_with_u32(database, DATABASE_VERSION)
            .map_err(|error| named(&error))?;
        let upgrade = {
            let request = request.clone();
            // Given to the browser for good: an upgrade that comes after the time is over must still
            // find it, or the database would stay without its object store.
            Closure::once_into_js(move || make_object_store(&request, store))
        };
        request.set_onupgradeneeded(upgrade.dyn_ref());
        let answer = JsFuture::from(first_answer(&request)).await;
        match answer.map(|event| event_name(&event)) {
            Ok(Some(name)) if name == "success" => {}
            Ok(Some(name)) if name == "blocked" => {
                close_when_open(&request);
                return Err(SecondCopyError::Blocked);
            }
            Ok(Some(_)) => return Err(error_of(&request)),
            Ok(None) | Err(_) => {
                close_when_open(&request);
                return Err(SecondCopyError::TimedOut);
            }
        }
        let result = request.result().map_err(|error| named(&error))?;
        let database: IdbDatabase = result.unchecked_into();
        // When another tab asks for a newer version, this one lets go.
        if let Ok(close) = method(&database, "close") {
            database.set_onversionchange(Some(&close.bind0(&database)));
        }
        Ok(Self { database, store })
    }

    /// Puts lines under their names, all or none. They are on their way to the disk when this returns;
    /// the answer comes when they are on it.
    ///
    /// # Errors
    /// [`SecondCopyError`]; nothing was then put.
    pub fn put_all(
        &self,
        lines: &[(String, String)],
    ) -> impl Future<Output = Result<(), SecondCopyError>> + use<> {
        let begun = self.begin_put(lines);
        async move {
            let (transaction, done) = begun?;
            match JsFuture::from(in_time(&done)).await {
                Ok(_) => Ok(()),
                Err(answer) if answer.is_undefined() => Err(SecondCopyError::TimedOut),
                Err(_) => {
                    let error = transaction.error();
                    Err(error.map_or(SecondCopyError::Closed, |error| named(&error)))
                }
            }
        }
    }

    /// The transaction that puts lines, and the promise of its end.
    fn begin_put(
        &self,
        lines: &[(String, String)],
    ) -> Result<(IdbTransaction, Promise), SecondCopyError> {
        let (transaction, done) = self.writing()?;
        let entries = self.store_of(&transaction)?;
        for (name, line) in lines {
            entries
                .put_with_key(&line.into(), &name.into())
                .map_err(|error| named(&error))?;
        }
        Ok((transaction, done))
    }

    /// Takes the lines of these names away, all or none; it answers when they are gone from the disk.
    ///
    /// # Errors
    /// [`SecondCopyError`]; every line is then still there.
    pub async fn remove_all(&self, names: &[String]) -> Result<(), SecondCopyError> {
        let (transaction, done) = self.writing()?;
        let entries = self.store_of(&transaction)?;
        for name in names {
            entries
                .delete(&name.into())
                .map_err(|error| named(&error))?;
        }
        match JsFuture::from(in_time(&done)).await {
            Ok(_) => Ok(()),
            Err(answer) if answer.is_undefined() => Err(SecondCopyError::TimedOut),
            Err(_) => Err(SecondCopyError::Closed),
        }
    }

    /// Every name of a line of ours.
    ///
    /// # Errors
    /// [`SecondCopyError`] when the database cannot be read.
    pub async fn names(&self) -> Result<BTreeSet<Name>, SecondCopyError> {
        let names = self.keys().await?;
        Ok(set_of(names.lines().filter_map(Name::from_text)))
    }

    /// The names and lines that follow the name `last`, in order of the names: `most` at most, none behind
    /// the last one.
    ///
    /// # Errors
    /// [`SecondCopyError`] when the database cannot be read.
    pub async fn lines_after(
        &self,
        last: Option<&str>,
        most: usize,
    ) -> Result<Vec<(String, String)>, SecondCopyError> {
        let transaction = self.reading()?;
        let entries = self.store_of(&transaction)?;
        let behind = match last {
            Some(name) => IdbKeyRange::lower_bound_with_open(&name.into(), true),
            // Every name is behind the empty one.
            None => IdbKeyRange::lower_bound(&"".into()),
        };
        let behind = behind.map_err(|error| named(&error))?;
        let most = u32::try_from(most).unwrap_or(u32::MAX);
        let names = entries
            .get_all_keys_with_key_and_limit(&behind, most)
            .map_err(|error| named(&error))?;
        let lines = entries
            .get_all_with_key_and_limit(&behind, most)
            .map_err(|error| named(&error))?;
        let (names_done, lines_done) = (answer(&names), answer(&lines));
        let names: Array = result(&names, names_done).await?.unchecked_into();
        let lines: Array = result(&lines, lines_done).await?.unchecked_into();
        let pairs = names.iter().zip(lines.iter());
        let texts = pairs.filter_map(|(name, line)| Some((name.as_string()?, line.as_string()?)));
        Ok(texts.collect())
    }

    /// Every key, a line each.
    pub(crate) async fn keys(&self) -> Result<String, SecondCopyError> {
        let transaction = self.reading()?;
        let names = self
            .store_of(&transaction)?
            .get_all_keys()
            .map_err(|error| named(&error))?;
        let names: Array = result(&names, answer(&names)).await?.unchecked_into();
        // As one text: thousands of small ones take long to hand over.
        Ok(text_of(&names.join("\n")).unwrap_or_default())
    }

    /// The value of a key; undefined for none.
    pub(crate) async fn value(&self, key: &str) -> Result<JsValue, SecondCopyError> {
        let transaction = self.reading()?;
        let request = self
            .store_of(&transaction)?
            .get(&key.into())
            .map_err(|error| named(&error))?;
        result(&request, answer(&request)).await
    }

    /// Puts a value under a key; the answer comes when it is on the disk.
    pub(crate) async fn put_value(
        &self,
        key: &str,
        value: &JsValue,
    ) -> Result<(), SecondCopyError> {
        let (transaction, done) = self.writing()?;
        self.store_of(&transaction)?
            .put_with_key(value, &key.into())
            .map_err(|error| named(&error))?;
        match JsFuture::from(in_time(&done)).await {
            Ok(_) => Ok(()),
            Err(answer) if answer.is_undefined() => Err(SecondCopyError::TimedOut),
            Err(_) => {
                let error = transaction.error();
                Err(error.map_or(SecondCopyError::Closed, |error| named(&error)))
            }
        }
    }

    /// Lets the database go.
    pub(crate) fn close(&self) {
        self.database.close();
    }

    fn reading(&self) -> Result<IdbTransaction, SecondCopyError> {
        let opened = self.database.transaction_with_str(self.store);
        opened.map_err(|error| named(&error))
    }

    /// A writing transaction and the promise of its end.
    fn writing(&self) -> Result<(IdbTransaction, Promise), SecondCopyError> {
        let transaction = self.transaction()?;
        let done = Promise::new(&mut |resolve, reject| {
            transaction.set_oncomplete(Some(&resolve));
            transaction.set_onabort(Some(&reject));
        });
        Ok((transaction, done))
    }

    fn store_of(&self, transaction: &IdbTransaction) -> Result<IdbObjectStore, SecondCopyError> {
        let store = transaction.object_store(self.store);
        store.map_err(|error| named(&error))
    }

    /// A writing transaction that completes only when the disk has it, where the browser knows how.
    ///
    /// Called by name, as the binding of its third argument is not stable. A browser that does not know
    /// the argument leaves it alone.
    fn transaction(&self) -> Result<IdbTransaction, SecondCopyError> {
        let options = Object::new();
        let is_set = Reflect::set(&options, &"durability".into(), &"strict".into());
        let mode = JsValue::from_str("readwrite");
        let strict = is_set
            .and_then(|_| method(&self.database, "transaction"))
            .and_then(|open| open.call3(&self.database, &self.store.into(), &mode, &options));
        match strict {
            Ok(transaction) => Ok(transaction.unchecked_into()),
            Err(_) => self
                .database
                .transaction_with_str_and_mode(self.store, IdbTransactionMode::Readwrite)
                .map_err(|error| named(&error)),
        }
    }
}

fn factory() -> Result<IdbFactory, SecondCopyError> {
    let window = web_sys::window().ok_or(SecondCopyError::Missing)?;
    match window.indexed_db() {
        Ok(Some(factory)) => Ok(factory),
        Ok(None) | Err(_) => Err(SecondCopyError::Missing),
    }
}

fn make_object_store(request: &IdbOpenDbRequest, store: &str) {
    if let Ok(database) = request.result() {
        let database: IdbDatabase = database.unchecked_into();
        // When this throws, the browser aborts the upgrade and the request answers with the error.
        drop(database.create_object_store(store));
    }
}

/// The first event of an opening request; rejected when none comes in time.
fn first_answer(request: &IdbOpenDbRequest) -> Promise {
    Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&resolve));
        request.set_onblocked(Some(&resolve));
        reject_after(&reject, OPEN_WITHIN_MS);
    })
}

/// Lets a database that opens too late close again, so that it stands in nobody's way.
fn close_when_open(request: &IdbOpenDbRequest) {
    let late = request.clone();
    let close = Closure::once_into_js(move || {
        if let Ok(database) = late.result() {
            database.unchecked_into::<IdbDatabase>().close();
        }
    });
    request.set_onsuccess(close.dyn_ref());
}

fn answer(request: &IdbRequest) -> Promise {
    Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    })
}

async fn result(request: &IdbRequest, answer: Promise) -> Result<JsValue, SecondCopyError> {
    match JsFuture::from(in_time(&answer)).await {
        Ok(_) => request.result().map_err(|error| named(&error)),
        Err(answer) if answer.is_undefined() => Err(SecondCopyError::TimedOut),
        Err(_) => Err(error_of(request)),
    }
}

/// The answer, or a rejection with `undefined` when it takes too long.
fn in_time(answer: &Promise) -> Promise {
    let late = Promise::new(&mut |_, reject| reject_after(&reject, ANSWER_WITHIN_MS));
    Promise::race(&Array::of2(answer, &late))
}

/// Calls `reject` after a time, or at once where there is no timer.
fn reject_after(reject: &Function, milliseconds: i32) {
    let timer = web_sys::window().map(|window| {
        window.set_timeout_with_callback_and_timeout_and_arguments_0(reject, milliseconds)
    });
    if !matches!(timer, Some(Ok(_))) {
        drop(reject.call0(&JsValue::UNDEFINED));
    }
}

fn event_name(event: &JsValue) -> Option<String> {
    event.dyn_ref::<Event>().map(Event::type_)
}

fn error_of(request: &IdbRequest) -> SecondCopyError {
    let error: Option<DomException> = request.error().ok().flatten();
    error.map_or(SecondCopyError::Closed, |error| named(&error))
}

/// The names are those of the Indexed Database API standard.
fn named(error: &JsValue) -> SecondCopyError {
    let name = error_name(error);
    match name.as_str() {
        "QuotaExceededError" => SecondCopyError::Full,
        "SecurityError" => SecondCopyError::Missing,
        "InvalidStateError" => SecondCopyError::Closed,
        _ => SecondCopyError::Other(name),
    }
}
