//! The pictures of photos: a database of their own, each under the SHA-256 of its bytes.
//!
//! Opened when a photo is kept or shown and at no other time, so that a start costs nothing more however many
//! there are. There is one copy only: a backup file is the other.

use js_sys::{Promise, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use crate::domain::journal::photo::PhotoHash;
use crate::store::browser::method;
use crate::store::second_copy::{SecondCopy, SecondCopyError};

/// The database's name; a host may serve other pages from the same origin.
const DATABASE: &str = "perchlight-photos";
/// Its object store: bytes under the hash's 64 digits.
const PHOTOS: &str = "photos";

/// The open database.
#[derive(Debug)]
pub struct PhotoStore(SecondCopy);

impl PhotoStore {
    /// Opens the database, and makes it on the first use.
    ///
    /// # Errors
    /// [`SecondCopyError`]; opening may be tried again later.
    pub async fn open() -> Result<Self, SecondCopyError> {
        SecondCopy::open_store(DATABASE, PHOTOS).await.map(Self)
    }

    /// Keeps a picture; the answer comes when it is on the disk.
    ///
    /// # Errors
    /// [`SecondCopyError`]; it was then not kept.
    pub async fn put(&self, hash: PhotoHash, picture: &[u8]) -> Result<(), SecondCopyError> {
        let bytes = Uint8Array::from(picture);
        self.0.put_value(&hash.to_hex(), &bytes).await
    }

    /// The picture of a hash; `None` when it is not here.
    ///
    /// # Errors
    /// [`SecondCopyError`] when the database cannot be read.
    pub async fn get(&self, hash: PhotoHash) -> Result<Option<Vec<u8>>, SecondCopyError> {
        let value = self.0.value(&hash.to_hex()).await?;
        let bytes = value.dyn_ref::<Uint8Array>();
        Ok(bytes.map(Uint8Array::to_vec))
    }

    /// The hashes of all that is kept.
    ///
    /// # Errors
    /// [`SecondCopyError`] when the database cannot be read.
    pub async fn hashes(&self) -> Result<Vec<PhotoHash>, SecondCopyError> {
        let keys = self.0.keys().await?;
        Ok(keys.lines().filter_map(PhotoHash::from_hex).collect())
    }

    /// Takes pictures away, all or none.
    ///
    /// # Errors
    /// [`SecondCopyError`]; every one is then still there.
    pub async fn remove(&self, hashes: &[PhotoHash]) -> Result<(), SecondCopyError> {
        let keys: Vec<String> = hashes.iter().map(|hash| hash.to_hex()).collect();
        self.0.remove_all(&keys).await
    }
}

impl Drop for PhotoStore {
    fn drop(&mut self) {
        self.0.close();
    }
}

/// The SHA-256 of bytes, by the browser; `None` where it offers none, as outside a secure context.
///
/// Source: Web Cryptography API, `SubtleCrypto.digest`.
pub async fn hash_of(bytes: &[u8]) -> Option<PhotoHash> {
    let crypto = js_sys::Reflect::get(&js_sys::global(), &"crypto".into()).ok()?;
    let subtle = js_sys::Reflect::get(&crypto, &"subtle".into()).ok()?;
    let digest = method(&subtle, "digest").ok()?;
    let data = Uint8Array::from(bytes);
    let promise = digest
        .call2(&subtle, &JsValue::from_str("SHA-256"), &data)
        .ok()?;
    let answer = JsFuture::from(Promise::from(promise)).await.ok()?;
    let hash = Uint8Array::new(&answer).to_vec();
    hash.try_into().ok().map(PhotoHash)
}
